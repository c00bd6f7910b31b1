"""A document as a bundle."""

from __future__ import annotations

import json
from dataclasses import dataclass, field
from typing import Final

from wellposed.digests import digest_of
from wellposed_converters.fhir.conditions import conditions, structures
from wellposed_converters.fhir.lexical import holds_moment
from wellposed_converters.fhir.names import DIGEST, Object, concept, full_url, identified, referred
from wellposed_converters.fhir.observations import observations
from wellposed_converters.fhir.order import order
from wellposed_converters.fhir.original import original
from wellposed_converters.fhir.parts import Entry, Source, entry
from wellposed_converters.fhir.series import series

MOST_BYTES: Final = 8_000_000
"""Of a bundle: about three times the largest document in Base64."""

OUTCOMES: Final = {"accepted": "accepted", "returned": "rejected"}
"""The outcome of a receipt, and the status of a Task that says as much."""


@dataclass(frozen=True, slots=True)
class Bundle:
    """A bundle, and the pointers of what only the document attached to it says."""

    resource: Object
    left_out: tuple[str, ...] = field(default=())


def bundle(content: Object) -> Bundle:
    """The bundle of a document; of one that is too large, without the projection."""
    digest = digest_of(content)
    projected, left_out = _projected(content, digest)
    made = _collection(content, digest, projected)
    if len(written(made)) > MOST_BYTES:
        return Bundle(_collection(content, digest, []), ("",))
    return Bundle(made, left_out)


def written(resource: Object) -> bytes:
    """A resource as it is sent: UTF-8, each value on a line of its own."""
    return (json.dumps(resource, indent=2, ensure_ascii=False, allow_nan=False) + "\n").encode()


def _collection(content: Object, digest: str, projected: list[Entry]) -> Object:
    return {
        "resourceType": "Bundle",
        "identifier": {"system": DIGEST, "value": digest},
        "type": "collection",
        **({"timestamp": content["issued"]} if holds_moment(content["issued"]) else {}),
        "entry": [*projected, original(content, digest)],
    }


def _projected(content: Object, digest: str) -> tuple[list[Entry], tuple[str, ...]]:
    """What of a document FHIR says in its own words. Of a setup and a review, only that they are there."""
    if content["format"] == "wellposed/prescription":
        source = Source(content, digest)
        return _of_prescription(source), tuple(source.left.out)
    if content["format"] == "wellposed/receipt":
        return [_task(content, digest)], ("",)
    return [], ("",)


def _of_prescription(source: Source) -> list[Entry]:
    """The order first; it is made last, when it is known what has been left out."""
    found, problems, teeth = observations(source), conditions(source), structures(source)
    aligners = series(source)
    names = ([one["fullUrl"] for one in entries] for entries in ([group[0] for group in found], problems, teeth))
    below = [one for group in found for one in group]
    return [order(source, *names), aligners, *below, *problems, *teeth]


def _task(content: Object, digest: str) -> Entry:
    """The hand-over a receipt tells of."""
    outcome = content["outcome"]
    resource = {
        "resourceType": "Task",
        "status": OUTCOMES[outcome],
        "businessStatus": concept("receipt-outcome", outcome),
        "intent": "order",
        "focus": identified("sha256", content["answers"]["sha256"]),
        "output": [{"type": concept("document", "receipt"), "valueReference": referred(full_url(digest, "original"))}],
    }
    return entry(digest, "hand-over", resource)
