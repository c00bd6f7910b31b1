"""The forms in JSON: one document, and many documents with one on each line."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Any, Final

from wellposed.check import sound_document
from wellposed.digests import canonical
from wellposed.findings import Finding
from wellposed.formats import Carried, Form, Written
from wellposed.model.envelope import Envelope
from wellposed.report import Report

__all__ = ["JSON", "JSON_LINES"]


def _read(data: bytes) -> tuple[Carried, ...]:
    found = sound_document(data)
    return (Carried(None, found.findings) if isinstance(found, Report) else Carried(found),)


def _read_lines(data: bytes) -> tuple[Carried, ...]:
    """Each line by itself: what is wrong with one is told with its number, and stops no other."""
    lines = data.removesuffix(b"\n").split(b"\n")
    return tuple(_on_line(one, place) for place, line in enumerate(lines) for one in _read(line))


def _on_line(one: Carried, before: int) -> Carried:
    return replace(one, findings=tuple(_moved(finding, before) for finding in one.findings))


def _moved(finding: Finding, before: int) -> Finding:
    """A finding about a line as one about the file. Line breaks other than line feeds end no line here."""
    facts = {name: before + 1 if name == "first_line" else fact for name, fact in finding.facts.items()}
    column = finding.column if finding.line == 1 else None
    return replace(finding, facts=facts, line=before + 1, column=column or 1)


def _write(documents: Sequence[Envelope]) -> Written:
    """One document, laid out. ValueError for none or several."""
    (document,) = documents
    text = json.dumps(_plain(_members(document)), ensure_ascii=False, allow_nan=False, indent=2)
    return Written(f"{text}\n".encode())


def _write_lines(documents: Sequence[Envelope]) -> Written:
    """Each document on its line in its canonical form: the bytes of which its digest is made, and a line feed."""
    return Written(b"".join(_lines(documents)))


def _lines(documents: Sequence[Envelope]) -> Iterator[bytes]:
    return (canonical(_members(document)) + b"\n" for document in documents)


def _members(document: Envelope) -> dict[str, Any]:
    return document.model_dump(exclude_unset=True, mode="json")


def _plain(value: Any) -> Any:
    """The same with whole numbers written without a point, as in the canonical form."""
    if isinstance(value, dict):
        return {name: _plain(one) for name, one in value.items()}
    if isinstance(value, list):
        return [_plain(one) for one in value]
    return int(value) if isinstance(value, float) and value.is_integer() else value


JSON: Final = Form("json", "the format's own: one JSON document, laid out", (".json",), _read, _write)
JSON_LINES: Final = Form(
    name="jsonl",
    words="JSON Lines: a document a line, each in its canonical form",
    suffixes=(".jsonl",),
    read=_read_lines,
    write=_write_lines,
    many=True,
)
