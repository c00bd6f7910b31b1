"""The order itself, as a ServiceRequest under a code of ours: whoever does not know the code does not act on it."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed_converters.fhir.lexical import holds_moment
from wellposed_converters.fhir.names import DIGEST, DOCUMENT_ID, Object, concept, extension, identified, referred
from wellposed_converters.fhir.parts import Entry, Source
from wellposed_converters.fhir.sections import ON_ORDER

STATED, ABOUT = "document", "note-about"


def order(source: Source, findings: list[str], problems: list[str], teeth: list[str]) -> Entry:
    """The order, once all else is projected.

    findings, problems, teeth  the full urls of their entries, in the order of the document
    """
    content = source.content
    made: Object = {
        "identifier": [
            {"system": DOCUMENT_ID, "value": content["id"]},
            {"system": DIGEST, "value": source.digest},
        ],
        **({"replaces": [identified("sha256", content["replaces"])]} if "replaces" in content else {}),
        "status": "active",
        "intent": "order",
        "code": concept("request", "clear-aligner-prescription"),
        "subject": source.subject,
        **_needed(source),
        **source.day("authoredOn", content, "issued", "", holds_moment),
        "requester": identified("prescriber", content["prescriber"]["id"]),
        "performer": [identified("laboratory", content["laboratory"]["id"])],
        **({"reasonReference": [referred(one) for one in problems]} if problems else {}),
        "supportingInfo": [referred(one) for one in (*findings, *teeth, source.name("original"))],
        **_notes(source),
    }
    clauses = source.extensions(ON_ORDER)
    head = {"resourceType": "ServiceRequest", "extension": [_stated(source), *clauses]}
    return source.entry("order", head | made)


def _needed(source: Source) -> Object:
    end = source.day("end", source.content["laboratory"], "needed_by", "/laboratory")
    return {"occurrencePeriod": end} if end else {}


def _notes(source: Source) -> Object:
    made = [note for place, one in source.entries("notes") for note in _note(source, one, place)]
    return {"note": made} if made else {}


def _note(source: Source, one: Object, place: str) -> Iterator[Object]:
    said = source.text(one, "text", place)
    about = [{"url": extension(ABOUT), "valueString": name} for name in one.get("about", ())]
    if said:
        yield {**({"extension": about} if about else {}), "text": said}


def _stated(source: Source) -> Object:
    """What FHIR has no element for: version and revision, what is not carried, what is said to be none."""
    if "extensions" in source.content:
        source.left.out.append("/extensions")
    return {
        "url": extension(STATED),
        "extension": [
            {"url": "version", "valueString": source.content["version"]},
            {"url": "revision", "valueInteger": source.content["revision"]},
            *({"url": "left-out", "valueString": place} for place in source.left.out),
            *({"url": "none", "valueString": place} for place in source.left.empty),
        ],
    }
