"""Findings, problems and teeth read back from their resources."""

from __future__ import annotations

from typing import TypeAlias

from wellposed_converters.fhir.codes import code
from wellposed_converters.fhir.conditions import STATE
from wellposed_converters.fhir.cursor import Cursor
from wellposed_converters.fhir.entries import Entries
from wellposed_converters.fhir.names import Object, extension
from wellposed_converters.fhir.sections import FINDING, PROBLEM, Section
from wellposed_converters.fhir.unextended import amount, part

Names: TypeAlias = dict[str, str]
"""The ids of findings and problems, by the pointers of their resources in the bundle."""


def findings(found: list[Cursor], entries: Entries, names: Names) -> list[Object]:
    """Each Observation as a finding."""
    return [_finding(at, entries, names, f"/findings/{number}") for number, at in enumerate(found)]


def problems(found: list[Cursor], entries: Entries, names: Names) -> list[Object]:
    """Each Condition as a problem."""
    made = [_problem(at, names, f"/problems/{number}") for number, at in enumerate(found)]
    for number, (at, one) in enumerate(zip(found, made, strict=True)):
        details = [detail for evidence in at.each("evidence") for detail in evidence.each("detail")]
        led = [entries.follow(detail, "Observation", "Condition") for detail in details]
        if led:
            at.told.places[f"/problems/{number}/because"] = f"{at.pointer}/evidence"
            one["because"] = [names[one.pointer] for one in led if one and one.pointer in names]
    return made


def particulars(found: list[Cursor]) -> list[Object]:
    """Each BodyStructure as a tooth that is not ordinary."""
    return [_particular(at, f"/teeth/particulars/{number}") for number, at in enumerate(found)]


def _finding(at: Cursor, entries: Entries, names: Names, place: str) -> Object:
    made = _own(at, FINDING, names, place)
    tables = at.has("hasMember")
    kind, terms = ("tooth_measure", "tooth-measure") if tables else ("measure", "measure")
    said = {
        kind: code(at.need("code", "an object"), terms, f"{place}/{kind}"),
        "method": _text(at, "method", f"{place}/method"),
        "date": _string(at, "effectiveDateTime", f"{place}/date"),
    }
    made |= {name: value for name, value in said.items() if value is not None}
    if tables:
        _teeth(at, entries, made, place)
    elif value := at.need("valueQuantity", "an object"):
        amount(value, made, "value", place)
    return made


def _teeth(at: Cursor, entries: Entries, made: Object, place: str) -> None:
    """The members of an Observation, each a tooth and its amount."""
    values: Object = {}
    for reference in at.each("hasMember"):
        member = entries.follow(reference, "Observation")
        number = code(member.need("bodySite", "an object"), "tooth") if member else None
        value = member.need("valueQuantity", "an object") if member else None
        if number in values:
            reference.told.tell("too-many", reference.pointer, expected=1)
        elif number is not None and value is not None:
            one: Object = {"unit": made["unit"]} if "unit" in made else {}
            amount(value, one, number, f"{place}/values")
            values |= {name: said for name, said in one.items() if name != "unit"}
            made |= {"unit": one["unit"]} if "unit" in one else {}
    at.told.places[f"{place}/values"] = f"{at.pointer}/hasMember"
    made["values"] = values


def _problem(at: Cursor, names: Names, place: str) -> Object:
    made = _own(at, PROBLEM, names, place)
    coded = at.need("code", "an object")
    teeth = [code(site, "tooth", f"{place}/teeth/{number}") for number, site in enumerate(at.each("bodySite"))]
    said = {
        "problem": code(coded, "problem", f"{place}/problem"),
        "words": _string(coded, "text", f"{place}/words") if coded else None,
        "teeth": [one for one in teeth if one is not None] or None,
    }
    return made | {name: value for name, value in said.items() if value is not None}


def _particular(at: Cursor, place: str) -> Object:
    at.found(place)
    states = [one for one in at.each("extension") if one.value.get("url") == extension(STATE)]
    said = [_string(one, "valueCode", f"{place}/states/{number}") for number, one in enumerate(states)]
    made = {
        "tooth": code(at.need("location", "an object"), "tooth", f"{place}/tooth"),
        "states": [one for one in said if one is not None],
        "words": _string(at, "description", f"{place}/words"),
    }
    return {name: value for name, value in made.items() if value is not None}


def _own(at: Cursor, section: Section, names: Names, place: str) -> Object:
    """The extension of a finding or problem, and its id noted."""
    at.found(place)
    found = [one for one in at.each("extension") if one.value.get("url") == extension(section.name)]
    if len(found) > 1:
        at.told.tell("too-many", found[1].pointer, expected=1)
    made = part(found[0], section.slots, place) if found else {}
    if isinstance(made.get("id"), str):
        names[at.pointer] = made["id"]
    return made


def _text(at: Cursor, element: str, place: str) -> str | None:
    inner = at.maybe(element, "an object")
    return _string(inner, "text", place) if inner else None


def _string(at: Cursor, element: str, place: str) -> str | None:
    found = at.maybe(element, "a string")
    return str(found.found(place)) if found else None
