"""A parsed value as the model of its format, or everything wrong with its structure."""

from __future__ import annotations

from typing import Any

from pydantic import ValidationError

from wellposed.findings import Finding, Severity
from wellposed.model import DOCUMENTS, PRIVATE
from wellposed.model.envelope import Envelope
from wellposed.model.review import REVIEW_PRIVATE
from wellposed.reading.document import Document
from wellposed.reading.nearest import nearest
from wellposed.reading.structure import structure_findings


def structured(document: Document) -> Envelope | tuple[Finding, ...]:
    """The document as its model, or everything wrong with its structure."""
    named = document.value.get("format")
    model = DOCUMENTS.get(named) if isinstance(named, str) else None
    if model is None:
        return (_unknown_format(document.value, named),)
    try:
        return model.model_validate(document.value)
    except ValidationError as error:
        return structure_findings(error, document.value, (*PRIVATE, *REVIEW_PRIVATE), root=model)


def _unknown_format(value: dict[str, Any], named: object) -> Finding:
    expected = list(DOCUMENTS)
    if "format" not in value:
        return Finding("missing-member", Severity.STOP, "/format", {"name": "format", "expected": expected})
    facts: dict[str, Any] = {"expected": expected}
    if isinstance(named, str):
        facts["nearest"] = nearest(named, tuple(DOCUMENTS))
    return Finding("unknown-format", Severity.STOP, "/format", facts)
