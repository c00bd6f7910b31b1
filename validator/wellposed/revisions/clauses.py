"""Clause by clause: what became of each over two revisions."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from wellposed.model.prescription import Prescription
from wellposed.revisions.direction import Direction, direction
from wellposed.revisions.matching import pairs
from wellposed.revisions.meaning import SECTIONS, Names, differing, items, referred
from wellposed.revisions.opposite import Side, opposite, opposites
from wellposed.revisions.result import Change, ClauseChange, Item, Member, Opposite
from wellposed.rules.chart import Chart

_NAMED = ("use", "motion", "variable", "teeth", "contacts", "close", "arch", "sides")
"""Members that may say the same thing in two ways."""

_ALIKE: tuple[Change, ...] = ("unchanged", "reworded")


class Matched:
    """Two prescriptions with their clauses told apart.

    pairs  the clauses that are in both
    names  ids of the old one to those of the same clauses in the new one
    """

    def __init__(self, old: Prescription, new: Prescription) -> None:
        self.revisions = old, new
        self.charts = Chart(old), Chart(new)
        self.old, self.new = items(old), items(new)
        self.pairs = pairs(self.old, self.new, self.charts)
        self.names: Names = {one.id: other.id for one, other in self.pairs}
        both = {one.id for one in self.old} & {one.id for one in self.new}
        self.reused = {name for name in both if self.names.get(name) != name}

    def changes(self) -> tuple[ClauseChange, ...]:
        """Every clause, in the order of the new document; what was dropped stands at the end of its section."""
        paired = (replace(self._pair(*two), reused=self._reused(*two)) for two in self.pairs)
        found = [*paired, *self._alone()]
        return tuple(sorted(found, key=_place))

    def _alone(self) -> Iterator[ClauseChange]:
        here, there = {one.pointer for one, _ in self.pairs}, {other.pointer for _, other in self.pairs}
        for item in self.old:
            if item.pointer not in here:
                yield ClauseChange("dropped", item, None, reused=self._reused(item))
        for item in self.new:
            if item.pointer not in there:
                yield ClauseChange("added", None, item, reused=self._reused(item))

    def _reused(self, *two: Item) -> bool:
        """Whether an id of these is that of something else in the other document."""
        return any(item.id in self.reused for item in two)

    def _pair(self, one: Item, other: Item) -> ClauseChange:
        if one.part == other.part and all(self.names.get(name) == name for name in referred(one.part)):
            return ClauseChange("unchanged", one, other)
        members = tuple(differing(one.part, other.part, self.names))
        if not members and one.section == other.section:
            return ClauseChange("reworded", one, other)
        if self._turned(one, other):
            return ClauseChange("reversed", one, other, "both", "both", members)
        found = direction(one.part, other.part, self.revisions, self.names)
        return ClauseChange(_told(found, members), one, other, found.asks, found.opens, members)

    def _turned(self, one: Item, other: Item) -> bool:
        sides = [Side(item.part, chart) for item, chart in zip((one, other), self.charts, strict=True)]
        return opposite(*sides)

    def opposites(self, changes: Iterable[ClauseChange]) -> tuple[Opposite, ...]:
        """Clauses that say the opposite of an earlier one; those that stand in both revisions are left out."""
        alike = [one for one in changes if one.change in _ALIKE]
        here = {one.before.pointer for one in alike if one.before}
        there = {one.after.pointer for one in alike if one.after}
        old = [(item, self.charts[0]) for item in self.old if item.pointer not in here]
        new = [(item, self.charts[1]) for item in self.new if item.pointer not in there]
        return tuple(opposites(old, new))


def _told(found: Direction, members: Sequence[Member]) -> Change:
    """The direction in a word; where nothing asked or opened changed, whether only the way it is said did."""
    if found.change != "unchanged":
        return found.change
    naming = not found.empty and all(one.name in _NAMED for one in members)
    return "reworded" if naming else "changed"


def _place(change: ClauseChange) -> tuple[int, int, int]:
    number = change.item.pointer.rpartition("/")[2]
    order = int(number) if number.isdecimal() else 0
    return SECTIONS.index(change.section), change.after is None, order
