"""Findings as Observations: one each; a finding of several teeth has one for each tooth besides, as its members."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed_converters.fhir.names import Object, concept, quantity, referred, tooth
from wellposed_converters.fhir.parts import Entry, Source
from wellposed_converters.fhir.sections import FINDING


def observations(source: Source) -> list[list[Entry]]:
    """For each finding its entries, the finding itself first."""
    return [list(_entries(source, finding, place)) for place, finding in source.entries("findings")]


def _entries(source: Source, finding: Object, place: str) -> Iterator[Entry]:
    name = f"finding/{finding['id']}"
    if "values" not in finding:
        value = {"valueQuantity": quantity(finding["value"], finding["unit"])}
        yield source.entry(name, _whole(source, finding, place, concept("measure", finding["measure"])) | value)
        return
    code = concept("tooth-measure", finding["tooth_measure"])
    members = [referred(source.name(f"{name}/{number}")) for number in sorted(finding["values"])]
    yield source.entry(name, _whole(source, finding, place, code) | {"hasMember": members})
    for number, value in sorted(finding["values"].items()):
        site = {"valueQuantity": quantity(value, finding["unit"]), "bodySite": tooth(number)}
        yield source.entry(f"{name}/{number}", _observation(source, code) | site)


def _whole(source: Source, finding: Object, place: str, code: Object) -> Object:
    said = source.text(finding, "method", place)
    return {
        **_observation(source, code),
        "extension": source.own(FINDING, finding, place),
        **source.day("effectiveDateTime", finding, "date", place),
        **({"method": {"text": said}} if said else {}),
    }


def _observation(source: Source, code: Object) -> Object:
    return {"resourceType": "Observation", "status": "final", "code": code, "subject": source.subject}
