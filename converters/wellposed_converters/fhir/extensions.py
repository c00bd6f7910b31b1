"""A part of the document as a complex extension: a nested extension for each member, under the member's name."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from wellposed_converters.fhir.left import Left
from wellposed_converters.fhir.lexical import holds_date
from wellposed_converters.fhir.names import Object, extension, quantity, shortest
from wellposed_converters.fhir.shape import CODE, DATE, NUMBER, PART, TEXT, WHOLE, Slot

VALUES = {CODE: "valueCode", TEXT: "valueString", DATE: "valueDate", WHOLE: "valueInteger", NUMBER: "valueDecimal"}
QUANTITY = "valueQuantity"
UNIT = "unit"


def extensions(name: str, value: Object, slots: tuple[Slot, ...], place: str, left: Left) -> list[Object]:
    """The extension called ``name``, as a list of one; of none where it would hold nothing.

    value  the part as it stands in the document
    place  where it stands there
    """
    nested = list(_nested(value, slots, place, left))
    return [{"url": extension(name), "extension": nested}] if nested else []


def amounts(slots: tuple[Slot, ...]) -> tuple[str, ...]:
    """The members that carry the unit of their part."""
    return tuple(slot.name for slot in slots if slot.kind == NUMBER)


def _nested(value: Object, slots: tuple[Slot, ...], place: str, left: Left) -> Iterator[Object]:
    carried = any(name in value for name in amounts(slots))
    for slot in slots:
        if slot.name not in value or (slot.name == UNIT and carried):
            continue
        at, said = f"{place}/{slot.name}", value[slot.name]
        if slot.many and not said:
            left.empty.append(at)
        items = [(f"{at}/{number}", item) for number, item in enumerate(said)] if slot.many else [(at, said)]
        for where, item in items:
            yield from _one(slot, item, value.get(UNIT), where, left)


def _one(slot: Slot, item: Any, unit: str | None, place: str, left: Left) -> Iterator[Object]:
    if slot.kind == PART:
        yield {"url": slot.name, "extension": list(_nested(item, slot.parts, place, left))}
    elif slot.kind == NUMBER:
        yield {"url": slot.name} | ({QUANTITY: quantity(item, unit)} if unit else {VALUES[NUMBER]: shortest(item)})
    elif _held(slot, item, place, left):
        yield {"url": slot.name, VALUES[slot.kind]: item}


def _held(slot: Slot, item: Any, place: str, left: Left) -> bool:
    if slot.kind == TEXT:
        return left.text(item, place)
    held = slot.kind != DATE or holds_date(item)
    if not held:
        left.out.append(place)
    return held
