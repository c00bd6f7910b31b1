"""A system of linear rows whose bounds belong to named members. Plain data; it knows no subject matter.

A *definition* always holds. A *member* owns bounds that hold only while it is active; where several
members bound the same thing the tightest counts. A *setting* overrides bounds for a variant of the whole.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from dataclasses import dataclass, field
from enum import IntEnum
from math import inf
from typing import NamedTuple

Key = Hashable
Terms = Mapping[int, float]
"""Column index to coefficient."""


class Kind(IntEnum):
    """What a member is; conflicts are sought in this order."""

    DEMAND = 0
    SILENCE = 1
    KEEP = 2
    CEILING = 3
    FIXED = 4
    LIMIT = 5
    BAN = 6


class Bound(NamedTuple):
    """One bound: of a row or a column, from below (side -1) or above (side 1)."""

    is_row: bool
    at: int
    side: int
    value: float


class Setting(NamedTuple):
    """Both bounds of a row or column in one variant, whatever the members say."""

    is_row: bool
    at: int
    low: float
    high: float


@dataclass(slots=True)
class Member:
    """A member and the bounds it owns."""

    key: Key
    kind: Kind
    bounds: list[Bound] = field(default_factory=list)


class StrainRow(NamedTuple):
    """low <= terms + rate * t <= high, where t is the strain."""

    terms: Terms
    rate: float
    low: float
    high: float


class Release(NamedTuple):
    """Bounds of one kind of member, at one place, lifted while a strain is measured."""

    kind: Kind
    is_row: bool
    at: int
    side: int


@dataclass(frozen=True, slots=True)
class Strain:
    """A way to loosen a system by a single amount t >= 0: what is lifted, and the rows that take its place."""

    drops: tuple[Key, ...] = ()
    releases: tuple[Release, ...] = ()
    rows: tuple[StrainRow, ...] = ()
    most: float = inf


@dataclass(slots=True)
class System:
    """Columns, rows, members and settings, filled by ``add`` calls in a fixed order."""

    column_low: list[float] = field(default_factory=list)
    column_high: list[float] = field(default_factory=list)
    row_low: list[float] = field(default_factory=list)
    row_high: list[float] = field(default_factory=list)
    row_terms: list[Terms] = field(default_factory=list)
    members: dict[Key, Member] = field(default_factory=dict)
    settings: dict[str, tuple[Setting, ...]] = field(default_factory=dict)

    def column(self, low: float = -inf, high: float = inf) -> int:
        """Add a column; its index."""
        self.column_low.append(low)
        self.column_high.append(high)
        return len(self.column_low) - 1

    def row(self, terms: Terms, low: float = -inf, high: float = inf) -> int:
        """Add a row; its index."""
        self.row_terms.append(terms)
        self.row_low.append(low)
        self.row_high.append(high)
        return len(self.row_low) - 1

    def member(self, key: Key, kind: Kind) -> Member:
        """The member of this key, made on first use."""
        found = self.members.get(key)
        if found is None:
            found = self.members[key] = Member(key, kind)
        return found

    def bind_column(self, key: Key, kind: Kind, index: int, low: float = -inf, high: float = inf) -> None:
        """Let a member bound a column."""
        self._bind(self.member(key, kind), False, index, low, high)

    def bind_side(self, key: Key, kind: Kind, at: int, sign: int, most: float) -> None:
        """Let a member bound a column in one sense."""
        self.member(key, kind).bounds.append(Bound(False, at, sign, sign * most))

    def bind_row(self, key: Key, kind: Kind, terms: Terms, low: float = -inf, high: float = inf) -> int:
        """Let a member bound a row of its own; the row's index."""
        index = self.row(terms)
        self._bind(self.member(key, kind), True, index, low, high)
        return index

    def bind_existing_row(self, key: Key, kind: Kind, at: int, low: float = -inf, high: float = inf) -> None:
        """Let a member bound a row that is there."""
        self._bind(self.member(key, kind), True, at, low, high)

    @staticmethod
    def _bind(member: Member, is_row: bool, index: int, low: float, high: float) -> None:
        if low > -inf:
            member.bounds.append(Bound(is_row, index, -1, low))
        if high < inf:
            member.bounds.append(Bound(is_row, index, 1, high))


def plus(*parts: Terms) -> dict[int, float]:
    """The sum of several terms."""
    total: dict[int, float] = {}
    for part in parts:
        for index, factor in part.items():
            total[index] = total.get(index, 0.0) + factor
    return total


def times(factor: float, terms: Terms) -> dict[int, float]:
    """Terms multiplied."""
    return {index: factor * value for index, value in terms.items()}


def mean(parts: list[Terms]) -> dict[int, float]:
    """The mean of several terms."""
    return times(1 / len(parts), plus(*parts))


def loosened(system: System, key: Key, rate: float = 1.0) -> tuple[StrainRow, ...]:
    """A member's bounds, each loosened by ``rate`` times the strain."""
    rows = []
    for bound in system.members[key].bounds:
        terms = system.row_terms[bound.at] if bound.is_row else {bound.at: 1.0}
        low, high = (bound.value, inf) if bound.side < 0 else (-inf, bound.value)
        rows.append(StrainRow(terms, -bound.side * rate, low, high))
    return tuple(rows)
