"""The document itself, attached: a DocumentReference under its digest."""

from __future__ import annotations

from base64 import b64decode, b64encode
from binascii import Error
from collections.abc import Iterator
from typing import Any

from wellposed.digests import canonical
from wellposed_converters.fhir.lexical import holds_moment
from wellposed_converters.fhir.names import DIGEST, DOCUMENT_ID, Object, concept, identified
from wellposed_converters.fhir.parts import Entry, entry

MEDIA_TYPE = "application/json"
DATA = ("content", 0, "attachment", "data")
"""Where the bytes stand in the resource."""


def original(content: Object, digest: str) -> Entry:
    """The entry that carries a document of any kind, in its canonical form."""
    resource: Object = {
        "resourceType": "DocumentReference",
        "masterIdentifier": {"system": DIGEST, "value": digest},
        "identifier": [{"system": DOCUMENT_ID, "value": content["id"]}],
        "status": "current",
        "type": concept("document", content["format"].removeprefix("wellposed/")),
        **_subject(content),
        **({"date": content["issued"]} if holds_moment(content["issued"]) else {}),
        "content": [{"attachment": {"contentType": MEDIA_TYPE, "data": b64encode(canonical(content)).decode()}}],
        **_answers(content),
    }
    return entry(digest, "original", resource)


def is_original(resource: Any) -> bool:
    """Whether a resource attaches a document under a digest of ours."""
    if resource.get("resourceType") != "DocumentReference":
        return False
    identifier = resource.get("masterIdentifier")
    return isinstance(identifier, dict) and identifier.get("system") == DIGEST


def attached(resource: Any) -> bytes | None:
    """The bytes attached, where they are here and in strict Base64 (RFC 4648, section 4). A url is never followed."""
    value = resource
    for step in DATA:
        value = value[step] if _holds(value, step) else None
    if not isinstance(value, str):
        return None
    try:
        data = b64decode(value, validate=True)
    except (Error, ValueError):
        return None
    return data if b64encode(data).decode() == value else None


def _holds(value: Any, step: str | int) -> bool:
    if isinstance(step, str):
        return isinstance(value, dict) and step in value
    return isinstance(value, list) and len(value) == 1


def _subject(content: Object) -> Object:
    patient = content.get("patient")
    return {"subject": identified("patient-reference", patient["reference"])} if patient else {}


def _answers(content: Object) -> Object:
    """What it answers, each by its digest."""
    found = [identified("sha256", answered["sha256"]) for answered in _answered(content)]
    return {"context": {"related": found}} if found else {}


def _answered(content: Object) -> Iterator[Object]:
    yield from (content[member] for member in ("answers", "prescription") if isinstance(content.get(member), dict))
