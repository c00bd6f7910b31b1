"""What a part says whatever its name, the order of its lists, and the names of what it refers to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from wellposed.consistency.whole import REFERENCE_MEMBERS, Whole
from wellposed.model.base import Part
from wellposed.model.making import Attachment
from wellposed.model.prescription import Prescription
from wellposed.revisions.result import Item, Member
from wellposed.rules.clauses_kept import plain, subject
from wellposed.vocabulary.motions import MOTIONS

SECTIONS = (
    *("findings", "problems", "goals", "keep", "movements", "allow", "exclude", "expect"),
    *("attachments", "staging", "appliance", "process", "retention"),
)
"""The sections whose parts have ids, in the order of the document."""

Names = Mapping[str, str]
"""Ids of one document to what they are called in the other."""

GONE = "gone:"
"""Begins what an id stands for that has no counterpart; no id has a colon."""


def items(prescription: Prescription) -> tuple[Item, ...]:
    """Every part with an id, a part once; the orders of a staging are parts of it."""
    whole = Whole(prescription)
    return tuple(
        Item(place.section, place.pointer, place.owner, place.part)
        for place in whole.of(*SECTIONS)
        if place.said("id") and not place.pointer.startswith("/staging/")
    )


def meaning(part: Part, names: Names | None = None) -> dict[str, Any]:
    """What a part says; references by the names of the other document, or left out where none are given."""
    said = plain(part, ("id",))
    if "motion" in said:
        said["motion"] = list(MOTIONS[said["motion"]])
    if "order" in said:
        said["order"] = sorted((_order(one, names) for one in said["order"]), key=str)
    for member in REFERENCE_MEMBERS:
        if member in said:
            said[member] = _named(said[member], names)
    return {name: value for name, value in said.items() if value is not None}


def _order(said: dict[str, Any], names: Names | None) -> dict[str, Any]:
    ends = {end: _named(said[end], names) for end in ("first", "then")}
    return {**said, **ends, "id": None}


def _named(value: Any, names: Names | None) -> Any:
    if names is None:
        return None
    if isinstance(value, list):
        return sorted(names.get(one, GONE + one) for one in value)
    return names.get(value, GONE + value)


def form(item: Item) -> str:
    """What kind of part it is; attachment clauses are of one kind."""
    return "Attachment" if isinstance(item.part, Attachment) else type(item.part).__name__


def about(item: Item) -> tuple[str, str]:
    """What an item is about, its amounts aside; a text, to be compared."""
    return form(item), repr(sorted(subject(item.part).items(), key=str))


def differing(before: Part, after: Part, names: Names) -> Iterator[Member]:
    """The members in which two parts differ, in the order of the model; references by what they mean."""
    here, there = meaning(before, names), meaning(after, {name: name for name in referred(after)})
    said = (before.model_dump(exclude_none=True, mode="json"), after.model_dump(exclude_none=True, mode="json"))
    for name in dict.fromkeys((*said[0], *said[1])):
        if name != "id" and here.get(name) != there.get(name):
            yield Member(name, said[0].get(name), said[1].get(name))


def referred(part: Part) -> Iterator[str]:
    """Every id a part refers to."""
    for member in REFERENCE_MEMBERS:
        value = getattr(part, member, None) or ()
        yield from (value,) if isinstance(value, str) else value
    for order in getattr(part, "order", None) or ():
        yield from (order.first, order.then)
