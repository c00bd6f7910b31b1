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
    return tuple(_on_line(one, place, line) for place, line in enumerate(lines) for one in _read(line))


def _on_line(one: Carried, before: int, line: bytes) -> Carried:
    return replace(one, findings=tuple(_moved(finding, before, line) for finding in one.findings))


def _moved(finding: Finding, before: int, line: bytes) -> Finding:
    """A finding about a line as one about the file."""
    facts = dict(finding.facts)
    if "first_line" in facts:
        facts["first_column"] = _column(line, facts["first_line"], facts["first_column"])
        facts["first_line"] = before + 1
    column = _column(line, finding.line, finding.column)
    return replace(finding, facts=facts, line=before + 1, column=column)


def _column(line: bytes, number: int | None, column: int | None) -> int:
    """The column in the line itself: here a carriage return ends no line."""
    parts = line.split(b"\r")[: (number or 1) - 1]
    return sum(len(part.decode(errors="replace")) + 1 for part in parts) + (column or 1)


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
