"""An extension back to the part of the document it holds."""

from __future__ import annotations

from typing import Any

from wellposed_converters.fhir.cursor import Cursor
from wellposed_converters.fhir.extensions import QUANTITY, UNIT, VALUES
from wellposed_converters.fhir.names import UCUM, UCUM_CODES, Object
from wellposed_converters.fhir.shape import NUMBER, PART, WHOLE, Slot

_UNITS = {code: unit for unit, code in UCUM_CODES.items()}
_KINDS = {NUMBER: "a number", WHOLE: "a whole number"}


def part(at: Cursor, slots: tuple[Slot, ...], place: str) -> Object:
    """What a complex extension holds.

    at     the extension
    place  where the part goes in the document
    """
    known = {slot.name: slot for slot in slots}
    made: Object = {}
    at.found(place)
    for nested in at.each("extension"):
        slot = known.get(nested.text("url") or "")
        if slot is None:
            nested.told.tell("unknown-member", f"{nested.pointer}/url", expected=sorted(known))
        else:
            _add(made, nested, slot, place)
    return made


def amount(at: Cursor, made: Object, name: str, place: str) -> None:
    """A Quantity in UCUM, as an amount and the unit of the part ``made``; nothing where the two cannot be told."""
    value, unit = at.need("value", "a number"), _unit(at)
    if value is None or unit is None:
        return
    if made.setdefault(UNIT, unit) != unit:
        at.told.tell("bundle-units-differ", at.pointer, found=unit, expected=made[UNIT])
    made[name] = value.found(f"{place}/{name}")


def _unit(at: Cursor) -> str | None:
    system, code = at.text("system"), at.text("code")
    if system is not None and system != UCUM:
        at.told.tell("not-one-of", f"{at.pointer}/system", expected=[UCUM])
        return None
    if code is not None and code not in _UNITS:
        at.told.tell("not-one-of", f"{at.pointer}/code", expected=sorted(_UNITS))
    return _UNITS.get(code or "")


def _add(made: Object, nested: Cursor, slot: Slot, place: str) -> None:
    if slot.name in made and not slot.many:
        nested.told.tell("too-many", nested.pointer, expected=1)
        return
    at = f"{place}/{slot.name}"
    if slot.kind == NUMBER and nested.has(QUANTITY):
        if found := nested.maybe(QUANTITY, "an object"):
            amount(found, made, slot.name, place)
        return
    where = f"{at}/{len(made.get(slot.name, ()))}" if slot.many else at
    value = part(nested, slot.parts, where) if slot.kind == PART else _value(nested, slot, where)
    if value is None:
        return
    if slot.many:
        made.setdefault(slot.name, []).append(value)
    else:
        made[slot.name] = value


def _value(nested: Cursor, slot: Slot, place: str) -> Any:
    found = nested.need(VALUES[slot.kind], _KINDS.get(slot.kind, "a string"))
    return found.found(place) if found else None
