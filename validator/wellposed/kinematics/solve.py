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

from wellposed.kinematics.rows import Key, Setting, Strain, System, Terms
from wellposed.kinematics.sheet import Floats, Ints, Sheet, Spans

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
        places = [crossed] if crossed else self._behind_ray(spans)
        owners = self.sheet.owners(active, spans, places)
        found = tuple(key for key in active if key in owners)
        return found if owners and not self.holds(found, setting) else active

    def _behind_ray(self, spans: Spans) -> list[tuple[bool, int]]:
        """Rows and columns that a dual ray weighs."""
        if self._solvable(spans):
            return []
        _, there, ray = self._solver.getDualRay()
        if not there:
            return []
        ray = np.asarray(ray) / max(float(np.abs(ray).max()), _RAY_TOLERANCE)
        touched = np.flatnonzero(np.abs(ray) > _RAY_TOLERANCE)
        weight = np.zeros(len(spans.columns.low))
        for row in touched:
            at, value = self._by_row[row]
            weight[at] += ray[row] * value
        bent = np.flatnonzero(np.abs(weight) > _RAY_TOLERANCE)
        return [(True, int(row)) for row in touched] + [(False, int(column)) for column in bent]

    def least_strain(self, active: Iterable[Key], strain: Strain, setting: str) -> float | None:
        """The least t for which the members hold together with the strain; None if none does."""
        kept = [key for key in active if key not in strain.drops]
        spans = self.sheet.spans(kept, setting, strain.releases)
        if spans.crossed():
            return None
        self._show(spans)
        number, first = len(spans.columns.low), len(spans.rows.low)
        self._solver.addCol(1.0, 0.0, strain.most, 0, np.zeros(0, np.int32), np.zeros(0))
        for row in strain.rows:
            at, value = _arrays({**row.terms, number: row.rate} if row.rate else row.terms)
            self._solver.addRow(row.low, row.high, len(at), at, value)
        optimal = self._run() == highspy.HighsModelStatus.kOptimal
        amount = float(self._solver.getInfo().objective_function_value) if optimal else None
        if strain.rows:
            self._solver.deleteRows(len(strain.rows), np.arange(first, first + len(strain.rows), dtype=np.int32))
        self._solver.deleteCols(1, np.array([number], dtype=np.int32))
        return amount

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
