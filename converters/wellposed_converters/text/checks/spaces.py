"""Spaces closed and left, spaces kept too small, widths kept and changed."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed_converters.text.checks.amounts import amount_said, high, low
from wellposed_converters.text.checks.order import CONFIRM, STOP, WANTED, Numbered, Order, ask
from wellposed_converters.text.checks.reach import contacts, is_named, is_open, overlap, teeth
from wellposed_converters.text.clause import Clause, Question


def closed_and_left(order: Order) -> Iterator[Question]:
    """Spaces closed, and one of them left: "Close all spaces. Leave 1 mm distal 12 22." """
    left = [one for one in order.of(("space",), {*WANTED, "keep"}) if _leaves(one.clause)]
    for close in order.of(("space",), WANTED):
        about = [one for one in left if close.clause.dir == "close" and overlap(close.clause, one.clause)]
        same = [one for one in about if _same(close.clause, one.clause)]
        rest = [one for one in about if one not in same]
        if same:
            yield ask("closed-and-left", STOP, [close, *same])
        if rest:
            yield ask("closed-with-exception", CONFIRM, [close, *rest])


def _leaves(clause: Clause) -> bool:
    return clause.mode == "keep" or clause.dir in ("leave", "open")


def _same(close: Clause, left: Clause) -> bool:
    return is_named(close) and contacts(close) <= contacts(left)


def too_small(order: Order) -> Iterator[Question]:
    """A space kept that is smaller than what is to stand in it: "Space 12 now 5 mm, keep; implant needs 7." """
    for now in order.states("space"):
        for keep in order.of(("space",), ("keep",)):
            for need in order.of(("space", "restoration", "clearance"), ("do", "state", "limit")):
                if _too_small(now.clause, keep.clause, need.clause):
                    facts = {"now": amount_said(now.clause), "need": amount_said(need.clause)}
                    yield ask("space-too-small", STOP, [now, keep, need], **facts)


def _too_small(now: Clause, keep: Clause, need: Clause) -> bool:
    room, needed = high(now), low(need)
    if now.measure != "current" or need.measure == "current" or room is None or needed is None:
        return False
    return room < needed and now.unit == need.unit and _meet(now, keep) and _meet(now, need)


def _meet(one: Clause, other: Clause) -> bool:
    return bool(contacts(one) & contacts(other))


def space_kept(order: Order) -> Iterator[Question]:
    """One space kept and made another width: "Keep the space at 12. Open 7 mm at 12." """
    for keep in order.of(("space",), ("keep",)):
        opened = [one for one in order.of(("space",), WANTED) if one.clause.dir == "open"]
        about = [one for one in opened if _one_space(keep.clause, one.clause)]
        if about:
            yield ask("keep-and-changed", STOP, [keep, *about])


def _one_space(keep: Clause, change: Clause) -> bool:
    return is_named(keep) and is_named(change) and overlap(keep, change)


def widths(order: Order) -> Iterator[Question]:
    """Widths kept and changed: "Expand 2 mm per side, keep intercanine and intermolar width." """
    for change in order.of(("archwidth",), WANTED):
        if is_open(change.clause):
            continue
        kept = [keep for keep in order.of(("archwidth",), ("keep",)) if overlap(keep.clause, change.clause)]
        if kept and _leaves_nothing(kept, change.clause):
            yield ask("width-kept-and-changed", STOP, [change, *kept])


def _leaves_nothing(kept: list[Numbered], change: Clause) -> bool:
    """A change that names teeth meets what is kept; one of a whole arch only if its two ends are kept."""
    sorts = {keep.clause.of for keep in kept}
    plain = any(keep.clause.of is None and teeth(change) <= teeth(keep.clause) for keep in kept)
    return is_named(change) or change.of in sorts - {None} or plain or sorts >= {"intercanine", "intermolar"}
