"""One parameter kept and changed, with two targets, with a direction that its own numbers contradict."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from functools import cache

from wellposed_converters.text.checks.amounts import amount_said, apart, comparable, high, low
from wellposed_converters.text.checks.data import data, names
from wellposed_converters.text.checks.order import CONFIRM, STOP, WANTED, Numbered, Order, ask, pairs
from wellposed_converters.text.checks.reach import alike, overlap, same_sort, teeth
from wellposed_converters.text.clause import Clause, Question, quoted


def kept(order: Order) -> Iterator[Question]:
    """Kept and changed: "Keep overjet. Reduce overjet to 2."; or a correction that says that it is one."""
    for keep in order.of(None, ("keep",)):
        for change in order.of(names("parameters") & {keep.clause.kind}, WANTED):
            if _changes(order, keep.clause, change.clause):
                yield _asked(order, "keep-and-changed", keep, change)


def _changes(order: Order, keep: Clause, change: Clause) -> bool:
    sorts = None in (keep.of, change.of) or keep.of == change.of
    return sorts and overlap(keep, change) and not _is_as_now(order, change)


def _is_as_now(order: Order, change: Clause) -> bool:
    """Whether the target is the value it has already."""
    now = [state.clause for state in order.states(change.kind) if overlap(state.clause, change)]
    return change.measure == "target" and any(_equal(state, change) for state in now if state.measure == "current")


def _equal(one: Clause, other: Clause) -> bool:
    return (one.minimum, one.maximum, one.unit) == (other.minimum, other.maximum, other.unit)


def targets(order: Order) -> Iterator[Question]:
    """Two targets: "Overjet 2 mm at the end. Finish at 3 mm overjet." """
    for one, other in pairs(order.of(None, {*WANTED, "limit"})):
        if one.clause.measure == "target" and _two_targets(one.clause, other.clause):
            yield _asked(order, "two-targets", one, other)


def _two_targets(one: Clause, other: Clause) -> bool:
    refs = None in (one.ref, other.ref) or one.ref == other.ref
    return comparable(one, other) and alike(one, other) and refs and apart(one, other)


def direction(order: Order) -> Iterator[Question]:
    """A direction that the numbers contradict: "Overjet is 2, reduce to 3." """
    for change in order.of(None, WANTED):
        way = _way(order, change.clause) if change.clause.measure == "target" else None
        for now in order.states(change.clause.kind):
            if way and now.clause.measure == "current" and _against(now.clause, change.clause, way):
                yield ask("direction-against-target", STOP, [now, change], way=way, now=amount_said(now.clause))


def _against(now: Clause, change: Clause, way: str) -> bool:
    if now.unit != change.unit or not overlap(now, change) or not same_sort(now, change):
        return False
    if way == "reduce":
        return _not_below(low(change), high(now))
    return _not_below(low(now), high(change))


def _not_below(one: Fraction | None, other: Fraction | None) -> bool:
    return one is not None and other is not None and one >= other


def _way(order: Order, clause: Clause) -> str | None:
    """The direction as a member, or in the words: a target has no direction of its own."""
    words = quoted(order.text, clause.spans).lower()
    for way, forms in data()["way"].items():
        if clause.dir == way or any(form in words for form in forms):
            return str(way)
    return None


def sides(order: Order) -> Iterator[Question]:
    """Left against right: "Lower midline 1 mm to the left, move it to the left to coincide." """
    for now in order.states("midline"):
        for change in order.of(("midline",), WANTED):
            if _same_side(now.clause, change.clause):
                yield ask("same-side", STOP, [now, change], side=str(now.clause.dir).removeprefix("patient_"))


def _same_side(now: Clause, change: Clause) -> bool:
    refs = None in (now.ref, change.ref) or now.ref == change.ref
    same = now.dir is not None and now.dir == change.dir and refs and teeth(now) == teeth(change) != frozenset()
    return same and not _nearer(now, change)


def _nearer(now: Clause, wanted: Clause) -> bool:
    """Whether a value wanted at the end, on the same side, is less than the one now: it moves back."""
    ends = wanted.measure == "target" and now.measure == "current" and now.unit == wanted.unit
    return ends and _not_below(low(now), high(wanted))


def _asked(order: Order, asks: str, one: Numbered, other: Numbered) -> Question:
    """The question, or the one about a correction where the later of the two says that it corrects."""
    later = max(one, other, key=lambda numbered: numbered.clause.spans[0])
    if _takes_back(order.text, later.clause):
        return ask("corrected-later", CONFIRM, [one, other])
    return ask(asks, STOP, [one, other])


def _takes_back(text: str, clause: Clause) -> bool:
    start, end = clause.spans[0][0], clause.spans[-1][1]
    line = text[text.rfind("\n", 0, start) + 1 : end]
    return _corrections().search(line) is not None


@cache
def _corrections() -> re.Pattern[str]:
    words = "|".join(re.escape(word) for word in data()["corrected"]["words"])
    return re.compile(rf"(?<!\w)(?:{words})(?!\w)", re.IGNORECASE)
