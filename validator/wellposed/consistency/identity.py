"""Ids and what refers to them."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Written, mentions
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model import PRIVATE
from wellposed.reading.nearest import nearest

_LISTS = ("sides", "variables", "states", "accepted", "revising")


@rule(
    "duplicate-id",
    Severity.STOP,
    title="Two parts of the document have the same id.",
    do="Give each finding, problem and clause an id of its own.",
)
def duplicate_id(whole: Written) -> Iterator[Told]:
    """Every id in the document is used once, whatever section it stands in.

    A receipt, a review or a `because` names a clause by its id alone. With two of a name, nobody can tell
    which is meant.

    Passes: {"keep": [{"id": "k1", "strength": "must", "hold": ["11"]},
                      {"id": "k2", "strength": "must", "hold": ["21"]}]}
    Fails: {"keep": [{"id": "k1", "strength": "must", "hold": ["11"]},
                     {"id": "k1", "strength": "must", "hold": ["21"]}]}
    """
    for place in whole.places:
        pointer = f"{place.pointer}/id"
        if place.said("id") and whole.ids[place.owner] != pointer:
            yield told(pointer, place.owner, name=place.owner, first=whole.ids[place.owner])


@rule(
    "unknown-reference",
    Severity.STOP,
    title="A part refers to an id that is not in the document.",
    do="Name an id that is there, or leave the reference out.",
)
def unknown_reference(whole: Written) -> Iterator[Told]:
    """Every id named in `because`, `about`, `first`, `then` or `before` stands in the document; in a review, so does
    every one in `accepted` and `revising`, among the clauses it lists.

    A reference that leads nowhere is most often a slip of the keyboard, or what it named was taken out.

    Passes: {"findings": [{"id": "f1", "measure": "overbite", "value": 3, "unit": "mm"}],
             "keep": [{"id": "k1", "strength": "must", "hold": ["11"], "because": ["f1"]}]}
    Fails: {"keep": [{"id": "k1", "strength": "must", "hold": ["11"], "because": ["f7"]}]}
    """
    for reference in whole.references:
        known = whole.named(reference)
        if reference.name in known:
            continue
        hidden = f"/{reference.place.section}" in PRIVATE
        facts = {} if hidden else {"name": reference.name, "nearest": nearest(reference.name, known)}
        yield told(reference.pointer, reference.owner, **facts)


@rule(
    "term-listed-twice",
    Severity.STOP,
    title="A list names the same thing twice.",
    do="Name each once, or write the one that was meant.",
)
def term_listed_twice(whole: Written) -> Iterator[Told]:
    """A list of sides, variables or states of a tooth, or of clauses accepted or revised, names each of them once.

    `["right", "right"]` may have been meant as both sides.

    Passes: {"allow": [{"id": "a1", "use": "class-ii-elastics", "sides": ["right", "left"]}]}
    Fails: {"allow": [{"id": "a1", "use": "class-ii-elastics", "sides": ["right", "right"]}]}
    """
    for place in whole.places:
        seen: dict[str, str] = {}
        for term in mentions(place, _LISTS):
            first = seen.setdefault(f"{term.member} {term.name}", term.pointer)
            if first != term.pointer:
                yield told(term.pointer, term.owner, name=term.name, first=first)


RULES = (duplicate_id, unknown_reference, term_listed_twice)
