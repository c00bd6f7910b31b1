"""What is said of a document that arrived and its signature, as text and as JSON, and the schema of that."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap
from typing import Any

from wellposed.exchange.verification import Verification
from wellposed.findings import CAUTION, Severity
from wellposed.model import DOCUMENTS
from wellposed.render.json_report import CLOSING, dumped, finding_object
from wellposed.render.schema_parts import TEXT, Schema, closing, listed, named, one_of, or_null, ref
from wellposed.render.text import numbered

__all__ = ["verification_json", "verification_schema", "verification_text"]

SCOPE = (
    "A good signature says who sent a document and that it is as it was sent. It does not say that the content is "
    "sound: that is for check. What it counts for in law is for local law to say."
)
_HEADINGS = {
    Severity.STOP: "What stops it",
    Severity.ASK: "What must be answered",
    Severity.CAUTION: "What to bear in mind",
    Severity.NOTE: "Notes",
}
_DIGEST: Schema = {"type": "string", "pattern": "^[0-9a-f]{64}$"}
_THUMBPRINT: Schema = {"type": "string", "pattern": "^[A-Za-z0-9_-]{43}$"}


def verification_text(told: Verification, name: str, now: str, width: int) -> str:
    """All of it, ending in a line break.

    name   what the document is called where it has no id of its own
    now    when it was received, as it was given
    width  longest line, in characters
    """
    blocks = [_head(told, name, now, width), *numbered(told.findings, width, headings=_HEADINGS), _foot(width)]
    return "\n".join(blocks) + "\n"


def _head(told: Verification, name: str, now: str, width: int) -> str:
    lines = wrap(f"{_title(told, name)}: {_outcome(told)}", width)
    return "\n".join([*lines, *(f"{label:<10}  {value}" for label, value in _facts(told, now))]) + "\n"


def _title(told: Verification, name: str) -> str:
    made = told.document
    return f"{made.id}, revision {made.revision}" if made is not None else name


def _outcome(told: Verification) -> str:
    if told.signer is None:
        return "not shown to come from whom it names."
    signed = f"signed by {told.signer}, and unchanged"
    return f"{signed}." if told.accepted else f"{signed}; but it is not to be worked from yet."


def _facts(told: Verification, now: str) -> Iterator[tuple[str, str]]:
    yield "received", now
    if told.key is not None:
        yield "key", told.key
    if told.digest is not None:
        yield "SHA-256", told.digest


def _foot(width: int) -> str:
    return "\n".join(line for part in (SCOPE, CAUTION) for line in wrap(part, width))


def verification_json(told: Verification, name: str, now: str) -> str:
    """The same as JSON, by ``verification.schema.json``."""
    made = told.document
    document: dict[str, Any] = {"name": name, "of": None, "id": None, "revision": None}
    if made is not None:
        kind = str(vars(made)["format"]).removeprefix("wellposed/")
        document |= {"of": kind, "id": made.id, "revision": made.revision}
    content = {
        "accepted": told.accepted,
        "authentic": told.authentic,
        "document": document,
        "received": now,
        "sha256": told.digest,
        "signer": told.signer,
        "key": told.key,
        "findings": [finding_object(one) for one in told.findings],
    }
    return dumped({**content, **CLOSING, "format": "wellposed/verification"}, indent=2)


def verification_schema() -> Schema:
    """What that holds to."""
    kinds = [name.removeprefix("wellposed/") for name in DOCUMENTS]
    return named(
        accepted={"type": "boolean", "description": "authentic, and nothing stops it or must be answered first"},
        authentic={"type": "boolean", "description": "unchanged, from the sender it names, for this receiver"},
        document=named(
            name={**TEXT, "description": "base name of the file"},
            of={**or_null(one_of(kinds)), "enum": [*kinds, None]},
            id=or_null(TEXT),
            revision=or_null({"type": "integer", "minimum": 1}),
        ),
        received={**TEXT, "description": "RFC 3339"},
        sha256=or_null(_DIGEST),
        signer=or_null({**TEXT, "description": "null where it is not authentic"}),
        key=or_null({**_THUMBPRINT, "description": "RFC 7638, of the trusted key that the signature fits"}),
        findings=listed(ref("Finding")),
        **closing("verification"),
    )
