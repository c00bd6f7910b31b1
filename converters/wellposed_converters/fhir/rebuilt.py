"""A prescription read back from its projection alone: only what is there, each part with its place in the bundle."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import Any

from wellposed_converters.fhir.cursor import Cursor
from wellposed_converters.fhir.entries import Entries
from wellposed_converters.fhir.names import DIGEST, DOCUMENT_ID, Object, extension, system
from wellposed_converters.fhir.order import ABOUT, STATED
from wellposed_converters.fhir.rebuilt_findings import Names, findings, particulars, problems
from wellposed_converters.fhir.rebuilt_series import of_series
from wellposed_converters.fhir.sections import ON_ORDER, ON_SERIES, Section
from wellposed_converters.fhir.shape import TEXT, WHOLE, Slot
from wellposed_converters.fhir.unextended import part

_LIST = re.compile("(/[a-z_]+){1,3}")
STATEMENT = (
    Slot("version", TEXT, required=True),
    Slot("revision", WHOLE, required=True),
    Slot("left-out", TEXT, many=True),
    Slot("none", TEXT, many=True),
)


class Rebuilt:
    """What an order says.

    content   the prescription as far as it goes
    digest    the digest the order states, if it does
    left_out  pointers of what the order says it does not carry
    """

    def __init__(self, order: Cursor, entries: Entries) -> None:
        self.content: Object = {"format": "wellposed/prescription", "notation": "ISO 3950"}
        self.digest = _identifier(order, DIGEST)
        stated = _stated(order)
        self.left_out: list[str] = stated.pop("left-out", [])
        nothing = stated.pop("none", [])
        self.content |= {**stated, **_head(order), **_people(order)}
        merged(self.content, sections(order, ON_ORDER))
        series, parameters = of_series(entries)
        merged(self.content, parameters)
        merged(self.content, sections(series, ON_SERIES) if series else {})
        merged(self.content, _resources(order, entries))
        for pointer in nothing:
            if _LIST.fullmatch(pointer):
                put(self.content, pointer)
            else:
                order.told.tell("wrong-form", order.pointer, expected="a pointer to a list of the document")


def sections(at: Cursor, known: Iterable[Section]) -> Object:
    """What the extensions of a resource hold, section by section."""
    by_url = {extension(section.name): section for section in known}
    made: Object = {}
    for one in at.each("extension"):
        section = by_url.get(one.text("url") or "")
        if section is None:
            continue
        if section.many:
            entries = made.setdefault(section.member, [])
            entries.append(part(one, section.slots, f"/{section.member}/{len(entries)}"))
        elif section.member in made:
            one.told.tell("too-many", one.pointer, expected=1)
        else:
            made[section.member] = part(one, section.slots, f"/{section.member}")
    return made


def merged(into: Object, more: Object) -> None:
    """Add members, and the members of members both have."""
    for name, value in more.items():
        if isinstance(value, dict) and isinstance(into.get(name), dict):
            merged(into[name], value)
        else:
            into[name] = value


def put(content: Object, pointer: str) -> None:
    """An empty list at a place, where nothing stands yet."""
    *above, last = pointer.split("/")[1:]
    holder: Any = content
    for step in above:
        holder = holder.setdefault(step, {}) if isinstance(holder, dict) else {}
    if isinstance(holder, dict):
        holder.setdefault(last, [])


def _stated(order: Cursor) -> Object:
    for one in order.each("extension"):
        if one.value.get("url") == extension(STATED):
            made = part(one, STATEMENT, "")
            order.found("")
            return made
    return {}


def _identifier(order: Cursor, system: str, place: str = "") -> str | None:
    found = [one for one in order.each("identifier") if one.value.get("system") == system]
    if len(found) > 1:
        order.told.tell("too-many", found[1].pointer, expected=1)
    value = found[0].need("value", "a string") if found else None
    return None if value is None else str(value.found(place) if place else value.value)


def _head(order: Cursor) -> Object:
    issued, name = order.maybe("authoredOn", "a string"), _identifier(order, DOCUMENT_ID, "/id")
    replaced = [one for at in order.each("replaces") for one in _logical(at, "sha256", "/replaces")]
    return {
        **({"id": name} if name is not None else {}),
        **({"issued": issued.found("/issued")} if issued else {}),
        **({"replaces": replaced[0]} if len(replaced) == 1 else {}),
    }


def _people(order: Cursor) -> Object:
    """Prescriber, laboratory and patient, as far as FHIR names them."""
    made: Object = {"prescriber": {}, "laboratory": {}, "patient": {}, "teeth": {}}
    performers = list(order.each("performer"))
    if len(performers) > 1:
        order.told.tell("too-many", performers[1].pointer, expected=1)
    named = (
        ("prescriber", "id", order.maybe("requester", "an object"), "prescriber"),
        ("laboratory", "id", performers[0] if performers else None, "laboratory"),
        ("patient", "reference", order.maybe("subject", "an object"), "patient-reference"),
    )
    for member, inner, at, name in named:
        for value in _logical(at, name, f"/{member}/{inner}") if at else ():
            made[member][inner] = value
    period = order.maybe("occurrencePeriod", "an object")
    end = period.need("end", "a string") if period else None
    if end:
        made["laboratory"]["needed_by"] = end.found("/laboratory/needed_by")
    return made


def _logical(at: Cursor, name: str, place: str) -> Iterator[str]:
    """The identifier of a Reference, under the system called ``name``."""
    identifier = at.need("identifier", "an object")
    if identifier is None:
        return
    stated, value = identifier.text("system"), identifier.need("value", "a string")
    if stated is not None and stated != system(name):
        at.told.tell("not-one-of", f"{at.pointer}/identifier/system", expected=[system(name)])
    elif value:
        yield value.found(place)


def _resources(order: Cursor, entries: Entries) -> Object:
    """Findings, problems, teeth that are not ordinary, notes."""
    names: Names = {}
    kinds = ("Observation", "BodyStructure", "DocumentReference")
    led = [entries.follow(at, *kinds) for at in _supporting(order, entries)]
    found = findings([at for at in led if at and at.value["resourceType"] == "Observation"], entries, names)
    followed = [entries.follow(at, "Condition") for at in order.each("reasonReference")]
    said = problems([at for at in followed if at], entries, names)
    teeth = particulars([at for at in led if at and at.value["resourceType"] == "BodyStructure"])
    return {
        **({"findings": found} if found else {}),
        **({"problems": said} if said else {}),
        **({"teeth": {"particulars": teeth}} if teeth else {}),
        **_notes(order),
    }


def _supporting(order: Cursor, entries: Entries) -> list[Cursor]:
    """What the order rests on; the reference to a document that is not attached leads nowhere, and need not."""
    found = list(order.each("supportingInfo"))
    attached = entries.originals()
    return found if attached or not found else found[:-1] if _dangling(found[-1], entries) else found


def _dangling(at: Cursor, entries: Entries) -> bool:
    return at.value.get("reference") not in entries.by_url


def _notes(order: Cursor) -> Object:
    made = []
    for number, at in enumerate(order.each("note")):
        text = at.need("text", "a string")
        about = [one.text("valueString") for one in at.each("extension") if one.value.get("url") == extension(ABOUT)]
        if text:
            made.append({"text": text.found(f"/notes/{number}/text"), **({"about": about} if about else {})})
    return {"notes": made} if made else {}
