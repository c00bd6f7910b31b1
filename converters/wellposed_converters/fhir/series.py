"""The aligners ordered, as a DeviceRequest: how they are staged, and what is built beside the movement."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wellposed_converters.fhir.names import Object, concept, counted, identified, referred
from wellposed_converters.fhir.parts import Entry, Source
from wellposed_converters.fhir.sections import ON_SERIES

COUNTS: Final = (("wear_interval_days", "wear-interval", "d"), ("most_aligners", "most-aligners", "1"))
"""Members of ``staging``, their parameter, and the UCUM code of what they count."""

TERMS: Final = (
    ("arches", "arches", "treat-arches"),
    ("passive_appliance", "passive-appliance", "treat-passive-appliance"),
)
"""Members of ``treat``, their parameter, and the list of their codes."""


def series(source: Source) -> Entry:
    """The one series a prescription orders."""
    content, parameters = source.content, list(_parameters(source.content))
    made = source.extensions(ON_SERIES)
    return source.entry(
        "series",
        {
            "resourceType": "DeviceRequest",
            **({"extension": made} if made else {}),
            "basedOn": [referred(source.name("order"))],
            "status": "active",
            "intent": "order",
            "codeCodeableConcept": concept("request", "clear-aligner-series"),
            **({"parameter": parameters} if parameters else {}),
            "subject": source.subject,
            "requester": identified("prescriber", content["prescriber"]["id"]),
            "performer": identified("laboratory", content["laboratory"]["id"]),
        },
    )


def _parameters(content: Object) -> Iterator[Object]:
    treat, staging = content.get("treat", {}), content.get("staging", {})
    for member, name, terms in TERMS:
        if member in treat:
            yield {"code": concept("parameter", name), "valueCodeableConcept": concept(terms, treat[member])}
    for member, name, unit in COUNTS:
        if member in staging:
            yield {"code": concept("parameter", name), "valueQuantity": counted(staging[member], unit)}
