"""Attachments that disagree, and orders that go in a circle."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed.consistency.whole import Written, mentions
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.making import AttachmentRest, Order, ProcessStep

_WANTS = ("must", "must_not", "may", "prefer", "prefer_not")
_IN_ORDER = ("before", "not-before-done")


@rule(
    "attachments-disagree",
    Severity.STOP,
    title="Two attachment clauses say different things of one tooth.",
    do="Name the tooth in one of them only.",
)
def attachments_disagree(whole: Written) -> Iterator[Told]:
    """A tooth stands in one kind of attachment list: must, must not, may, prefer or prefer not.

    Twice in the same kind is no fault: a tooth may carry two, for two reasons.

    Passes: {"attachments": [{"id": "t1", "must": ["13"]}, {"id": "t2", "must_not": ["11"]}]}
    Fails: {"attachments": [{"id": "t1", "must": ["13", "11"]}, {"id": "t2", "must_not": ["11"]}]}
    """
    seen: dict[str, tuple[str, str, str]] = {}
    for place in whole.of("attachments"):
        for tooth in mentions(place, _WANTS):
            kind, pointer, owner = seen.setdefault(tooth.name, (tooth.member, tooth.pointer, place.owner))
            if kind != tooth.member:
                facts = {"tooth": tooth.name, "name": tooth.member, "expected": kind, "first": pointer}
                yield told(tooth.pointer, owner, place.owner, **facts)


@rule(
    "otherwise-said-twice",
    Severity.STOP,
    title="Two clauses say what holds for all other teeth.",
    do="Leave one `otherwise`.",
)
def otherwise_said_twice(whole: Written) -> Iterator[Told]:
    """One attachment clause at most says `otherwise`.

    All teeth not named elsewhere can be dealt with in one way only; a second clause hides the first.

    Passes: {"attachments": [{"id": "t1", "otherwise": "none"}]}
    Fails: {"attachments": [{"id": "t1", "otherwise": "none"}, {"id": "t2", "otherwise": "laboratory-decides"}]}
    """
    rest = [place for place in whole.of("attachments") if isinstance(place.part, AttachmentRest)]
    for place in rest[1:]:
        first = f"{rest[0].pointer}/otherwise"
        yield told(f"{place.pointer}/otherwise", rest[0].owner, place.owner, first=first)


class Before(NamedTuple):
    """One thing comes before another, and the part that says so."""

    first: str
    then: str
    pointer: str
    owner: str


@rule(
    "order-cycle",
    Severity.STOP,
    title="The order asked for goes in a circle.",
    do="Take out one of the orders of the circle.",
)
def order_cycle(whole: Written) -> Iterator[Told]:
    """The orders `before` and `not-before-done`, and what a step of the process comes before, form no circle.

    In a circle each waits for another, and nothing can be first.

    Passes: {"keep": [{"id": "k1", "strength": "must", "hold": ["11"]},
                      {"id": "k2", "strength": "must", "hold": ["21"]}],
             "staging": {"id": "s1", "strength": "must", "order": [
                {"id": "o1", "first": "k1", "relation": "before", "then": "k2"}]}}
    Fails: {"keep": [{"id": "k1", "strength": "must", "hold": ["11"]},
                     {"id": "k2", "strength": "must", "hold": ["21"]}],
            "staging": {"id": "s1", "strength": "must", "order": [
                {"id": "o1", "first": "k1", "relation": "before", "then": "k2"},
                {"id": "o2", "first": "k2", "relation": "before", "then": "k1"}]}}
    """
    known: dict[str, dict[str, Before]] = {}
    for step in _steps(whole):
        back = _way(known, step.then, step.first)
        if back is None:
            known.setdefault(step.first, {}).setdefault(step.then, step)
        else:
            owners = (*(one.owner for one in back), step.owner)
            yield told(step.pointer, *owners, cycle=[step.first, *(one.first for one in back), step.first])


def _steps(whole: Written) -> Iterator[Before]:
    for place in whole.of("staging", "process"):
        part = place.part
        if isinstance(part, Order) and part.relation in _IN_ORDER:
            yield Before(part.first, part.then, place.pointer, part.id)
        if isinstance(part, ProcessStep) and part.before is not None:
            yield Before(part.id, part.before, f"{place.pointer}/before", part.id)


def _way(known: dict[str, dict[str, Before]], start: str, end: str) -> list[Before] | None:
    """The shortest way of orders from one id to another; None if there is none."""
    ways: dict[str, list[Before]] = {start: []}
    for here in (queue := [start]):
        if here == end:
            return ways[here]
        for there, step in known.get(here, {}).items():
            if there not in ways:
                ways[there] = [*ways[here], step]
                queue.append(there)
    return None


RULES = (attachments_disagree, otherwise_said_twice, order_cycle)
