"""A file about keys: bytes to its model, or everything wrong with it. No value of it is ever told."""

from __future__ import annotations

from typing import TypeVar

from pydantic import ValidationError

from wellposed.findings import Finding
from wellposed.model.base import Part
from wellposed.reading.document import Document, read_document
from wellposed.reading.structure import structure_findings

__all__ = ["read_keys"]

P = TypeVar("P", bound=Part)
_ALL = ("",)


def read_keys(data: bytes, kind: type[P]) -> P | tuple[Finding, ...]:
    """The file as the model of its kind, or all that is wrong with it, by rule and place."""
    read = read_document(data)
    if not isinstance(read, Document):
        return read
    try:
        return kind.model_validate(read.value)
    except ValidationError as error:
        return read.placed(structure_findings(error, read.value, _ALL, root=kind))
