"""The definitions of our extensions and codes as FHIR R4 resources, made from the table of sections."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from typing import Final

from wellposed_converters.fhir.conditions import STATE
from wellposed_converters.fhir.extensions import QUANTITY, UNIT, VALUES, amounts
from wellposed_converters.fhir.names import Object, extension, system, value_set
from wellposed_converters.fhir.order import ABOUT, STATED
from wellposed_converters.fhir.rebuilt import STATEMENT
from wellposed_converters.fhir.sections import FINDING, ON_ORDER, ON_SERIES, PROBLEM
from wellposed_converters.fhir.shape import CODE, NUMBER, PART, TEXT, Slot
from wellposed_converters.fhir.terms import in_plain, terms

_VERSION = "1.0"
_BASE_DEFINITION: Final = "http://hl7.org/fhir/StructureDefinition/Extension"
_ONE: Final = {STATE: ("BodyStructure", Slot(STATE, CODE, terms=STATE)), ABOUT: ("Annotation", Slot(ABOUT, TEXT))}
"""Extensions with a single value: the element they stand on, and what they hold."""


def definitions() -> Object:
    """All of them, as one bundle."""
    made = [*_extensions(), *(one for name, codes in terms().items() for one in _list(name, codes)), _rules()]
    entries = [{"fullUrl": one["url"], "resource": one} for one in made]
    return {"resourceType": "Bundle", "type": "collection", "entry": entries}


def text() -> str:
    """The file that is published."""
    return json.dumps(definitions(), indent=1) + "\n"


def _extensions() -> Iterator[Object]:
    yield _complex(STATED, "ServiceRequest", STATEMENT)
    for element, sections in (("ServiceRequest", ON_ORDER), ("DeviceRequest", ON_SERIES)):
        yield from (_complex(section.name, element, section.slots) for section in sections)
    for element, section in (("Observation", FINDING), ("Condition", PROBLEM)):
        yield _complex(section.name, element, section.slots)
    for name, (element, slot) in _ONE.items():
        yield _defined(name, element, [*_value("Extension", slot)])


def _complex(name: str, element: str, slots: tuple[Slot, ...]) -> Object:
    nested = [one for slot in slots for one in _nested("Extension", slot, amounts(slots))]
    return _defined(name, element, [*nested, _fixed("Extension", extension(name)), _none("Extension.value[x]")])


def _defined(name: str, element: str, elements: list[Object]) -> Object:
    return {
        "resourceType": "StructureDefinition",
        "url": extension(name),
        "version": _VERSION,
        "name": "".join(part.capitalize() for part in name.split("-")),
        "title": f"Wellposed {name.replace('-', ' ')}",
        "status": "active",
        "fhirVersion": "4.0.1",
        "kind": "complex-type",
        "abstract": False,
        "context": [{"type": "element", "expression": element}],
        "type": "Extension",
        "baseDefinition": _BASE_DEFINITION,
        "derivation": "constraint",
        "differential": {"element": [{"id": "Extension", "path": "Extension"}, *_with_url(elements, name)]},
    }


def _with_url(elements: list[Object], name: str) -> list[Object]:
    """An extension of a single value has its url fixed, and nothing nested."""
    if any(element["path"] == "Extension.url" for element in elements):
        return elements
    return [_none("Extension.extension"), _fixed("Extension", extension(name)), *elements]


def _nested(above: str, slot: Slot, amounts: Iterable[str]) -> Iterator[Object]:
    """The slice of one member, with all below it. The unit is a member of its own only where there is no amount."""
    here, path = f"{above}.extension:{slot.name}", f"{_path(above)}.extension"
    needed = slot.required and not (slot.name == UNIT and any(amounts))
    most = "*" if slot.many else "1"
    yield {"id": here, "path": path, "sliceName": slot.name, "min": int(needed and not slot.many), "max": most}
    if slot.kind == PART:
        inner = tuple(one.name for one in slot.parts if one.kind == NUMBER)
        yield from (one for part in slot.parts for one in _nested(here, part, inner))
    else:
        yield _none(f"{here}.extension")
    yield _fixed(here, slot.name)
    yield from [_none(f"{here}.value[x]")] if slot.kind == PART else _value(here, slot)


def _value(above: str, slot: Slot) -> Iterator[Object]:
    types = [VALUES[slot.kind], QUANTITY] if slot.kind == NUMBER else [VALUES[slot.kind]]
    made: Object = {
        "id": f"{above}.value[x]",
        "path": f"{_path(above)}.value[x]",
        "min": 1,
        "type": [{"code": _type(one)} for one in types],
    }
    yield made | ({"binding": {"strength": "required", "valueSet": value_set(slot.terms)}} if slot.terms else {})


def _type(value: str) -> str:
    """``valueCode`` is of the type ``code``, ``valueQuantity`` of ``Quantity``."""
    name = value.removeprefix("value")
    return name if name == "Quantity" else name[0].lower() + name[1:]


def _fixed(above: str, value: str) -> Object:
    return {"id": f"{above}.url", "path": f"{_path(above)}.url", "fixedUri": value}


def _none(identifier: str) -> Object:
    return {"id": identifier, "path": _path(identifier), "max": "0"}


def _path(identifier: str) -> str:
    """The path of an element, without the names of slices."""
    return ".".join(step.partition(":")[0] for step in identifier.split("."))


def _rules() -> Object:
    """The rules by name: they stand in the catalogue, and there are more with every version."""
    return {
        "resourceType": "CodeSystem",
        "url": system("rule"),
        "version": _VERSION,
        "name": "Rule",
        "title": "Wellposed rule",
        "status": "active",
        "caseSensitive": True,
        "content": "not-present",
    }


def _list(name: str, codes: tuple[str, ...]) -> Iterator[Object]:
    """A list of codes, and the set of all of them."""
    head = {"version": _VERSION, "title": f"Wellposed {name.replace('-', ' ')}", "status": "active"}
    label = "".join(part.capitalize() for part in name.split("-"))
    yield {
        "resourceType": "CodeSystem",
        "url": system(name),
        **head,
        "name": label,
        "caseSensitive": True,
        "valueSet": value_set(name),
        "content": "complete",
        "count": len(codes),
        "concept": [{"code": code, "display": in_plain(name, code)} for code in codes],
    }
    yield {
        "resourceType": "ValueSet",
        "url": value_set(name),
        **head,
        "name": f"AllOf{label}",
        "compose": {"include": [{"system": system(name)}]},
    }
