"""One linear model, asked many questions: can these members hold together, and how far must one give way?

Knows rows, columns and members only. Every answer is a function of the system and the question: the basis
left by one question only speeds up the next.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from math import inf
from typing import Any

import highspy
import numpy as np
from numpy.typing import NDArray

from wellposed.kinematics.rows import Key, Release, Strain, System, Terms

TOLERANCE = 1e-7
_RAY_TOLERANCE = 1e-9

Floats = NDArray[np.float64]
Ints = NDArray[np.int32]


@dataclass(frozen=True, slots=True)
class _Side:
    """Lower and upper bounds of all columns, or of all rows."""

    low: Floats
    high: Floats

    def copy(self) -> _Side:
        return _Side(self.low.copy(), self.high.copy())


class Model:
    """A system loaded once into the solver."""

    def __init__(self, system: System) -> None:
        self.system = system
        self.keys: tuple[Key, ...] = tuple(system.members)
        self.kinds = {key: member.kind for key, member in system.members.items()}
        self._number = {key: number for number, key in enumerate(self.keys)}
        self._entries()
        self._solver = self._loaded()
        self._shown_columns, self._shown_rows = self._base(False).copy(), self._base(True).copy()

    def _entries(self) -> None:
        entries = [
            (number, bound)
            for number, key in enumerate(self.keys)
            for bound in self.system.members[key].bounds
        ]
        self._owner = np.array([number for number, _ in entries], dtype=np.int32)
        self._is_row = np.array([bound.is_row for _, bound in entries], dtype=bool)
        self._index = np.array([bound.at for _, bound in entries], dtype=np.int32)
        self._side_of = np.array([bound.side for _, bound in entries], dtype=np.int32)
        self._value = np.array([bound.value for _, bound in entries], dtype=np.float64)
        self._kind_of = np.array([self.kinds[self.keys[number]] for number, _ in entries], dtype=np.int32)

    def _base(self, is_row: bool) -> _Side:
        return self._base_rows if is_row else self._base_columns

    @cached_property
    def _base_columns(self) -> _Side:
        return _Side(np.array(self.system.column_low), np.array(self.system.column_high))

    @cached_property
    def _base_rows(self) -> _Side:
        return _Side(np.array(self.system.row_low, dtype=float), np.array(self.system.row_high, dtype=float))

    def _loaded(self) -> Any:
        # The public class prints a banner from its constructor before it can be told not to.
        solver = highspy._core._Highs()
        for name, value in (("output_flag", False), ("presolve", "off"), ("threads", 1), ("parallel", "off")):
            solver.setOptionValue(name, value)
        solver.setOptionValue("solver", "simplex")
        terms = self.system.row_terms
        starts = np.cumsum([0, *(len(row) for row in terms)], dtype=np.int32)
        model = highspy.HighsLp()
        model.num_col_, model.num_row_ = len(self.system.column_low), len(terms)
        model.col_cost_ = np.zeros(model.num_col_)
        model.col_lower_, model.col_upper_ = self._base_columns.low, self._base_columns.high
        model.row_lower_, model.row_upper_ = self._base_rows.low, self._base_rows.high
        model.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
        model.a_matrix_.start_ = starts
        model.a_matrix_.index_ = np.array([index for row in terms for index in row], dtype=np.int32)
        model.a_matrix_.value_ = np.array(
            [value for row in terms for value in row.values()], dtype=np.float64
        )
        solver.passModel(model)
        return solver

    @cached_property
    def _by_row(self) -> list[tuple[Ints, Floats]]:
        return [
            (np.array(list(row), dtype=np.int32), np.array(list(row.values()), dtype=np.float64))
            for row in self.system.row_terms
        ]

    def _mask(self, active: Iterable[Key], releases: Iterable[Release] = ()) -> NDArray[np.bool_]:
        chosen = np.zeros(len(self.keys), dtype=bool)
        chosen[[self._number[key] for key in active]] = True
        mask = chosen[self._owner] if len(self._owner) else np.zeros(0, dtype=bool)
        for release in releases:
            mask &= ~self._released(release)
        return mask

    def _released(self, release: Release) -> NDArray[np.bool_]:
        place = (
            (self._is_row == release.is_row) & (self._index == release.at) & (self._side_of == release.side)
        )
        return np.asarray(place & (self._kind_of == release.kind))

    def _bounds(self, mask: NDArray[np.bool_], setting: str) -> tuple[_Side, _Side]:
        columns, rows = self._base_columns.copy(), self._base_rows.copy()
        for is_row, side in ((False, columns), (True, rows)):
            chosen = mask & (self._is_row == is_row)
            below, above = chosen & (self._side_of < 0), chosen & (self._side_of > 0)
            np.maximum.at(side.low, self._index[below], self._value[below])
            np.minimum.at(side.high, self._index[above], self._value[above])
        for change in self.system.settings.get(setting, ()):
            side = rows if change.is_row else columns
            side.low[change.at], side.high[change.at] = change.low, change.high
        return columns, rows

    def _show(self, columns: _Side, rows: _Side) -> None:
        changed = _differences(self._shown_columns, columns)
        if len(changed):
            self._solver.changeColsBounds(len(changed), changed, columns.low[changed], columns.high[changed])
        changed = _differences(self._shown_rows, rows)
        if len(changed):
            self._solver.changeRowsBounds(len(changed), changed, rows.low[changed], rows.high[changed])
        self._shown_columns, self._shown_rows = columns, rows

    def _crossed(self, columns: _Side, rows: _Side) -> tuple[bool, int] | None:
        """The first column or row whose bounds leave nothing; near misses are pulled together."""
        for is_row, side in ((False, columns), (True, rows)):
            crossed = side.low > side.high
            if crossed.any():
                apart = np.flatnonzero(side.low > side.high + TOLERANCE)
                if len(apart):
                    return is_row, int(apart[0])
                side.low[crossed] = side.high[crossed]
        return None

    def holds(self, active: Iterable[Key], setting: str) -> bool:
        """Whether these members can hold together in this variant."""
        columns, rows = self._bounds(self._mask(active), setting)
        if self._crossed(columns, rows):
            return False
        return self._solvable(columns, rows)

    def holds_with(
        self, active: Iterable[Key], settings: Iterable[str], fixed: Iterable[tuple[int, float, float]]
    ) -> bool:
        """Whether the members hold in one of the settings with some columns bounded otherwise."""
        mask = self._mask(active)
        for setting in settings:
            columns, rows = self._bounds(mask, setting)
            for column, low, high in fixed:
                columns.low[column], columns.high[column] = low, high
            if not self._crossed(columns, rows) and self._solvable(columns, rows):
                return True
        return False

    def _solvable(self, columns: _Side, rows: _Side) -> bool:
        self._show(columns, rows)
        self._solver.run()
        status = self._solver.getModelStatus()
        if status in (highspy.HighsModelStatus.kUnknown, highspy.HighsModelStatus.kSolveError):
            self._solver.clearSolver()
            self._solver.run()
            status = self._solver.getModelStatus()
        return bool(status == highspy.HighsModelStatus.kOptimal)

    def suspects(self, active: tuple[Key, ...], setting: str) -> tuple[Key, ...]:
        """Members that cannot hold together in this variant, by one proof; all of them if no proof is at hand.

        ``active`` must not hold together. The result is in the order of ``active``.
        """
        mask = self._mask(active)
        columns, rows = self._bounds(mask, setting)
        crossed = self._crossed(columns, rows)
        if crossed:
            is_row, index = crossed
            side = rows if is_row else columns
            owners = self._tightest(mask, side, is_row, {(index, -1), (index, 1)})
        else:
            owners = self._behind_ray(mask, columns, rows)
        found = tuple(key for key in active if key in owners)
        return found if owners and not self.holds(found, setting) else active

    def _behind_ray(self, mask: NDArray[np.bool_], columns: _Side, rows: _Side) -> set[Key]:
        if self._solvable(columns, rows):
            return set()
        _, there, ray = self._solver.getDualRay()
        if not there:
            return set()
        ray = np.asarray(ray) / max(float(np.abs(ray).max()), _RAY_TOLERANCE)
        weight = np.zeros(len(columns.low))
        touched = np.flatnonzero(np.abs(ray) > _RAY_TOLERANCE)
        for row in touched:
            index, value = self._by_row[row]
            weight[index] += ray[row] * value
        places = {(int(row), side) for row in touched for side in (-1, 1)}
        owners = self._tightest(mask, rows, True, places)
        bent = np.flatnonzero(np.abs(weight) > _RAY_TOLERANCE)
        return owners | self._tightest(
            mask, columns, False, {(int(j), side) for j in bent for side in (-1, 1)}
        )

    def _tightest(
        self, mask: NDArray[np.bool_], side: _Side, is_row: bool, places: set[tuple[int, int]]
    ) -> set[Key]:
        """For each place the first member that holds the bound in force."""
        owners: dict[tuple[int, int], Key] = {}
        for entry in np.flatnonzero(mask & (self._is_row == is_row)):
            place = int(self._index[entry]), int(self._side_of[entry])
            in_force = side.low[place[0]] if place[1] < 0 else side.high[place[0]]
            if place in places and abs(self._value[entry] - in_force) <= TOLERANCE:
                owners.setdefault(place, self.keys[self._owner[entry]])
        return set(owners.values())

    def least_strain(self, active: Iterable[Key], strain: Strain, setting: str) -> float | None:
        """The least t for which the members hold together with the strain; None if none does."""
        kept = [key for key in active if key not in strain.drops]
        columns, rows = self._bounds(self._mask(kept, strain.releases), setting)
        if self._crossed(columns, rows):
            return None
        self._show(columns, rows)
        number, first = len(columns.low), len(rows.low)
        self._solver.addCol(1.0, 0.0, strain.most, 0, np.zeros(0, np.int32), np.zeros(0))
        for row in strain.rows:
            terms = {**row.terms, number: row.rate} if row.rate else dict(row.terms)
            index = np.array(list(terms), dtype=np.int32)
            self._solver.addRow(row.low, row.high, len(index), index, np.array(list(terms.values())))
        self._solver.run()
        optimal = self._solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
        amount = float(self._solver.getInfo().objective_function_value) if optimal else None
        if strain.rows:
            added = np.arange(first, first + len(strain.rows), dtype=np.int32)
            self._solver.deleteRows(len(added), added)
        self._solver.deleteCols(1, np.array([number], dtype=np.int32))
        return amount

    def extreme(self, active: Iterable[Key], terms: Terms, sense: int, setting: str) -> float | None:
        """The least (sense 1) or most (sense -1) the terms can be; infinite if unbounded, None if nothing holds."""
        columns, rows = self._bounds(self._mask(active), setting)
        if self._crossed(columns, rows):
            return None
        self._show(columns, rows)
        index = np.array(list(terms), dtype=np.int32)
        self._solver.changeColsCost(len(index), index, sense * np.array(list(terms.values())))
        self._solver.run()
        status = self._solver.getModelStatus()
        value = float(self._solver.getInfo().objective_function_value) * sense
        self._solver.changeColsCost(len(index), index, np.zeros(len(index)))
        if status == highspy.HighsModelStatus.kOptimal:
            return value
        return -sense * inf if status == highspy.HighsModelStatus.kUnbounded else None


def _differences(shown: _Side, wanted: _Side) -> Ints:
    changed = (shown.low != wanted.low) | (shown.high != wanted.high)
    return np.flatnonzero(changed).astype(np.int32)
