"""The bounds in force: which members are active, which bounds are lifted, which setting overrides them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from wellposed.kinematics.rows import Bound, Key, Release, Setting, System

TOLERANCE = 1e-7

Place = tuple[bool, int, int]
"""A bound: of a row or a column, where, from below (-1) or above (1)."""

Floats = NDArray[np.float64]
Ints = NDArray[np.int32]


@dataclass(frozen=True, slots=True)
class Span:
    """Lower and upper bounds of all columns, or of all rows."""

    low: Floats
    high: Floats

    def copy(self) -> Span:
        """The same, to be changed."""
        return Span(self.low.copy(), self.high.copy())

    def changed(self, wanted: Span) -> Ints:
        """Where two spans differ."""
        return np.flatnonzero((self.low != wanted.low) | (self.high != wanted.high)).astype(np.int32)


@dataclass(frozen=True, slots=True)
class Spans:
    """The bounds of columns and of rows."""

    columns: Span
    rows: Span

    def of(self, is_row: bool) -> Span:
        """Those of the rows, or of the columns."""
        return self.rows if is_row else self.columns

    def crossed(self) -> tuple[bool, int] | None:
        """The first column or row whose bounds leave nothing; near misses are pulled together."""
        for is_row in (False, True):
            span = self.of(is_row)
            crossed = span.low > span.high
            if not crossed.any():
                continue
            apart = np.flatnonzero(span.low > span.high + TOLERANCE)
            if len(apart):
                return is_row, int(apart[0])
            span.low[crossed] = span.high[crossed]
        return None


class _Entries:
    """All bounds of one sort: of rows or columns, from below or above."""

    def __init__(self, found: list[tuple[int, int, Bound]]) -> None:
        self.owner = np.array([owner for owner, _, _ in found], dtype=np.int32)
        self.kind = np.array([kind for _, kind, _ in found], dtype=np.int32)
        self.at = np.array([bound.at for _, _, bound in found], dtype=np.int32)
        self.value = np.array([bound.value for _, _, bound in found], dtype=np.float64)


class Sheet:
    """A system's bounds as arrays."""

    def __init__(self, system: System) -> None:
        self.keys: tuple[Key, ...] = tuple(system.members)
        self._number = {key: number for number, key in enumerate(self.keys)}
        self._settings = system.settings
        self.base = Spans(
            Span(np.array(system.column_low, dtype=float), np.array(system.column_high, dtype=float)),
            Span(np.array(system.row_low, dtype=float), np.array(system.row_high, dtype=float)),
        )
        sorts: dict[tuple[bool, int], list[tuple[int, int, Bound]]] = {
            (is_row, side): [] for is_row in (False, True) for side in (-1, 1)
        }
        for number, member in enumerate(system.members.values()):
            for bound in member.bounds:
                sorts[bound.is_row, bound.side].append((number, member.kind, bound))
        self._entries = {sort: _Entries(found) for sort, found in sorts.items()}

    def chosen(self, active: Iterable[Key]) -> NDArray[np.bool_]:
        """Which members are active, as a mask."""
        mask = np.zeros(len(self.keys), dtype=bool)
        mask[[self._number[key] for key in active]] = True
        return mask

    def spans(self, active: Iterable[Key], setting: str, releases: Iterable[Release] = ()) -> Spans:
        """The bounds in force: the tightest of the active members', less what is lifted, then the setting's."""
        chosen = self.chosen(active)
        spans = Spans(self.base.columns.copy(), self.base.rows.copy())
        lifted = list(releases)
        for (is_row, side), entries in self._entries.items():
            kept = chosen[entries.owner]
            for release in lifted:
                if (release.is_row, release.side) == (is_row, side):
                    kept &= ~((entries.at == release.at) & (entries.kind == release.kind))
            span = spans.of(is_row)
            if side < 0:
                np.maximum.at(span.low, entries.at[kept], entries.value[kept])
            else:
                np.minimum.at(span.high, entries.at[kept], entries.value[kept])
        self.override(spans, self._settings.get(setting, ()))
        return spans

    @staticmethod
    def override(spans: Spans, changes: Iterable[Setting]) -> None:
        """Override bounds in place."""
        for change in changes:
            span = spans.of(change.is_row)
            span.low[change.at], span.high[change.at] = change.low, change.high

    def owners(self, active: Iterable[Key], spans: Spans, places: Iterable[Place]) -> set[Key]:
        """For each place the first member that holds the bound in force there."""
        chosen, wanted = self.chosen(active), set(places)
        owners: dict[Place, Key] = {}
        for (is_row, side), entries in self._entries.items():
            span = spans.of(is_row)
            in_force = (span.low if side < 0 else span.high)[entries.at]
            held = np.flatnonzero(chosen[entries.owner] & (np.abs(entries.value - in_force) <= TOLERANCE))
            for entry in held:
                place = (is_row, int(entries.at[entry]), side)
                if place in wanted:
                    owners.setdefault(place, self.keys[entries.owner[entry]])
        return set(owners.values())
