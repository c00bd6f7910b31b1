"""What the series of aligners says: arches, staging, what is built."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed_converters.fhir.codes import code
from wellposed_converters.fhir.cursor import Cursor
from wellposed_converters.fhir.entries import Entries
from wellposed_converters.fhir.names import UCUM, Object
from wellposed_converters.fhir.series import COUNTS, TERMS


def of_series(entries: Entries) -> tuple[Cursor | None, Object]:
    """The one series of a bundle, and what its parameters say."""
    found = entries.of("DeviceRequest")
    for more in found[1:]:
        more.told.tell("too-many", more.pointer, expected=1)
    return (found[0], _parameters(found[0])) if found else (None, {})


def _parameters(series: Cursor) -> Object:
    made: Object = {}
    for at in series.each("parameter"):
        name = code(at.need("code", "an object"), "parameter")
        for section, member, value in _parameter(at, name):
            if member in made.setdefault(section, {}):
                at.told.tell("too-many", at.pointer, expected=1)
            made[section][member] = value
    return made


def _parameter(at: Cursor, name: str | None) -> Iterator[tuple[str, str, object]]:
    for member, parameter, terms in TERMS:
        if name == parameter:
            said = code(at.need("valueCodeableConcept", "an object"), terms, f"/treat/{member}")
            yield from [("treat", member, said)] if said is not None else []
    for member, parameter, unit in COUNTS:
        if name == parameter:
            yield from (("staging", member, value) for value in _count(at, unit, f"/staging/{member}"))


def _count(at: Cursor, unit: str, place: str) -> Iterator[object]:
    quantity = at.need("valueQuantity", "an object")
    value = quantity.need("value", "a number") if quantity else None
    if quantity is None or value is None:
        return
    if (quantity.text("system"), quantity.text("code")) != (UCUM, unit):
        at.told.tell("not-one-of", f"{quantity.pointer}/code", expected=[unit])
    else:
        yield value.found(place)
