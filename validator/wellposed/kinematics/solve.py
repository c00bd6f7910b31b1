"""One linear model, asked many questions: can these members hold together, and how far must one give way?

Knows rows, columns and members only. Every answer is a function of the system and the question: the basis
left by one question only speeds up the next.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property
from math import inf
from typing import Any

import highspy
import numpy as np

from wellposed.kinematics.rows import Key, Setting, Strain, StrainRow, System, Terms
from wellposed.kinematics.sheet import Floats, Ints, Place, Sheet, Spans

_RAY_TOLERANCE = 1e-9
_OPTIONS = (
    ("output_flag", False),
    ("presolve", "off"),
    ("threads", 1),
    ("parallel", "off"),
    ("solver", "simplex"),
)


class Model:
    """A system loaded once into the solver."""

    def __init__(self, system: System) -> None:
        self.system = system
        self.sheet = Sheet(system)
        self._solver = self._loaded()
        self._shown = Spans(self.sheet.base.columns.copy(), self.sheet.base.rows.copy())

    def _loaded(self) -> Any:
        # The public class prints a banner from its constructor before it can be told not to.
        solver = highspy._core._Highs()
        for name, value in _OPTIONS:
            solver.setOptionValue(name, value)
        terms, base = self.system.row_terms, self.sheet.base
        model = highspy.HighsLp()
        model.num_col_, model.num_row_ = len(base.columns.low), len(terms)
        model.col_cost_ = np.zeros(model.num_col_)
        model.col_lower_, model.col_upper_ = base.columns.low, base.columns.high
        model.row_lower_, model.row_upper_ = base.rows.low, base.rows.high
        model.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
        model.a_matrix_.start_ = np.cumsum([0, *(len(row) for row in terms)], dtype=np.int32)
        model.a_matrix_.index_ = np.array([index for row in terms for index in row], dtype=np.int32)
        model.a_matrix_.value_ = np.array([value for row in terms for value in row.values()], dtype=np.float64)
        solver.passModel(model)
        return solver

    @cached_property
    def _by_row(self) -> list[tuple[Ints, Floats]]:
        return [_arrays(row) for row in self.system.row_terms]

    def _show(self, spans: Spans) -> None:
        changed = self._shown.columns.changed(spans.columns)
        if len(changed):
            low, high = spans.columns.low[changed], spans.columns.high[changed]
            self._solver.changeColsBounds(len(changed), changed, low, high)
        changed = self._shown.rows.changed(spans.rows)
        if len(changed):
            self._solver.changeRowsBounds(len(changed), changed, spans.rows.low[changed], spans.rows.high[changed])
        self._shown = spans

    def _run(self) -> Any:
        """Solve; once more from scratch if the solver lost its way."""
        self._solver.run()
        status = self._solver.getModelStatus()
        if status in (highspy.HighsModelStatus.kUnknown, highspy.HighsModelStatus.kSolveError):
            self._solver.clearSolver()
            self._solver.run()
            status = self._solver.getModelStatus()
        return status

    def holds(self, active: Iterable[Key], setting: str, changes: Iterable[Setting] = ()) -> bool:
        """Whether these members can hold together in this variant, with some bounds changed in it."""
        spans = self.sheet.spans(active, setting)
        self.sheet.override(spans, changes)
        return self._solvable(spans)

    def _solvable(self, spans: Spans) -> bool:
        if spans.crossed():
            return False
        self._show(spans)
        return bool(self._run() == highspy.HighsModelStatus.kOptimal)

    def suspects(self, active: tuple[Key, ...], setting: str) -> tuple[Key, ...]:
        """Members that cannot hold together in this variant, by one proof; all of them if no proof is at hand.

        ``active`` must not hold together. The result is in the order of ``active``.
        """
        spans = self.sheet.spans(active, setting)
        crossed = spans.crossed()
        places = [(*crossed, -1), (*crossed, 1)] if crossed else self._behind_ray(spans)
        owners = self.sheet.owners(active, spans, places)
        found = tuple(key for key in active if key in owners)
        return found if owners and not self.holds(found, setting) else active

    def _behind_ray(self, spans: Spans) -> list[Place]:
        """Rows and columns that a dual ray weighs."""
        if self._solvable(spans):
            return []
        return self._weighed([])

    def _weighed(self, added: list[StrainRow]) -> list[Place]:
        """The bounds of the system in a dual ray of the model; rows added to it count in the sum.

        A ray y weighs the rows and z = -(transposed matrix) y the columns: lower bounds where positive, upper bounds
        where negative, so that the weighted bounds exceed 0. Its sign is a matter of the solver's convention.
        """
        _, there, ray = self._solver.getDualRay()
        if not there:
            return []
        ray = np.asarray(ray) / max(float(np.abs(ray).max()), _RAY_TOLERANCE)
        rows = [*self._by_row, *(_arrays(row.terms) for row in added)]
        columns = np.zeros(len(self.sheet.base.columns.low))
        for row in np.flatnonzero(np.abs(ray) > _RAY_TOLERANCE):
            at, value = rows[row]
            columns[at] -= ray[row] * value
        own = ray[: len(self._by_row)]
        sign = 1 if self._exceeds(own, ray[len(own) :], columns, added) else -1
        return [*_places(True, sign * own), *_places(False, sign * columns)]

    def _exceeds(self, own: Floats, more: Floats, columns: Floats, added: list[StrainRow]) -> bool:
        """Whether the weighted bounds exceed 0 with this sign of the ray."""
        total = _weight(own, self._shown.rows.low, self._shown.rows.high)
        total += _weight(columns, self._shown.columns.low, self._shown.columns.high)
        low, high = np.array([row.low for row in added]), np.array([row.high for row in added])
        return total + _weight(more, low, high) > 0

    def least_strain(self, active: Iterable[Key], strain: Strain, setting: str) -> float | None:
        """The least t for which the members hold together with the strain; None if none does."""
        spans = self._strained(active, strain, setting)
        if spans.crossed():
            return None
        optimal = self._with_strain(spans, strain) == highspy.HighsModelStatus.kOptimal
        amount = float(self._solver.getInfo().objective_function_value) if optimal else None
        self._without_strain(strain)
        return amount

    def against(self, active: Iterable[Key], strain: Strain, setting: str) -> set[Key]:
        """Members that, by one proof, stand against the strain within its ``most``; none if it holds."""
        kept = [key for key in active if key not in strain.drops]
        spans = self._strained(active, strain, setting)
        crossed = spans.crossed()
        if crossed:
            return self.sheet.owners(kept, spans, [(*crossed, -1), (*crossed, 1)])
        holds = self._with_strain(spans, strain) == highspy.HighsModelStatus.kOptimal
        places = [] if holds else self._weighed(list(strain.rows))
        self._without_strain(strain)
        return self.sheet.owners(kept, spans, places)

    def _strained(self, active: Iterable[Key], strain: Strain, setting: str) -> Spans:
        kept = [key for key in active if key not in strain.drops]
        return self.sheet.spans(kept, setting, strain.releases)

    def _with_strain(self, spans: Spans, strain: Strain) -> Any:
        """Add the strain's column and rows, and solve for its least."""
        self._show(spans)
        number = len(spans.columns.low)
        self._solver.addCol(1.0, 0.0, strain.most, 0, np.zeros(0, np.int32), np.zeros(0))
        for row in strain.rows:
            at, value = _arrays({**row.terms, number: row.rate} if row.rate else row.terms)
            self._solver.addRow(row.low, row.high, len(at), at, value)
        return self._run()

    def _without_strain(self, strain: Strain) -> None:
        number, first = len(self.sheet.base.columns.low), len(self.sheet.base.rows.low)
        if strain.rows:
            self._solver.deleteRows(len(strain.rows), np.arange(first, first + len(strain.rows), dtype=np.int32))
        self._solver.deleteCols(1, np.array([number], dtype=np.int32))

    def extreme(self, active: Iterable[Key], terms: Terms, sense: int, setting: str) -> float | None:
        """The least (sense 1) or most (sense -1) the terms can be; infinite if unbounded, None if nothing holds."""
        spans = self.sheet.spans(active, setting)
        if spans.crossed():
            return None
        self._show(spans)
        at, value = _arrays(terms)
        self._solver.changeColsCost(len(at), at, sense * value)
        status = self._run()
        reached = float(self._solver.getInfo().objective_function_value) * sense
        self._solver.changeColsCost(len(at), at, np.zeros(len(at)))
        if status == highspy.HighsModelStatus.kOptimal:
            return reached
        return -sense * inf if status == highspy.HighsModelStatus.kUnbounded else None


def _arrays(terms: Terms) -> tuple[Ints, Floats]:
    return np.array(list(terms), dtype=np.int32), np.array(list(terms.values()), dtype=np.float64)


def _places(is_row: bool, weights: Floats) -> list[Place]:
    return [(is_row, int(at), -1 if weights[at] > 0 else 1) for at in np.flatnonzero(np.abs(weights) > _RAY_TOLERANCE)]


def _weight(weights: Floats, low: Floats, high: Floats) -> float:
    """Lower bounds weighed where positive, upper bounds where negative."""
    used = np.abs(weights) > _RAY_TOLERANCE
    return float((weights[used] * np.where(weights > 0, low, high)[used]).sum())
