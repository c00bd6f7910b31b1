"""A document that was read, and the way it is read."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from wellposed.findings import Finding
from wellposed.reading.faults import Fault, finding, findings_of
from wellposed.reading.gate import fast
from wellposed.reading.limits import MOST_BYTES
from wellposed.reading.positions import Lines, Positions
from wellposed.reading.scan import scan

_BOM = "\ufeff"
_UTF_8 = "UTF-8 without a byte order mark"
_OTHER_MARKS = ((b"\xff\xfe", "a mark of UTF-16 or UTF-32"), (b"\xfe\xff", "a mark of UTF-16"))


@dataclass(frozen=True)
class Document:
    """A document without fault in its text: the parsed value and the bytes it came from."""

    value: Any = field(repr=False)
    data: bytes = field(repr=False)

    @cached_property
    def positions(self) -> Positions:
        """Where everything stands; the text is scanned when this is first asked."""
        text = self.data.decode()
        return Positions(text, scan(text).root)

    def place(self, pointer: str) -> tuple[int, int]:
        """Line and column of a value, or of the nearest parent that is there."""
        return self.positions.value(pointer)[1:]

    def placed(self, findings: Iterable[Finding]) -> tuple[Finding, ...]:
        """The findings with line and column, in the order given."""
        return tuple(one if one.line is not None else one.at(*self._place_of(one)) for one in findings)

    def _place_of(self, one: Finding) -> tuple[int, int]:
        if one.rule == "unknown-member" or one.facts.get("about") == "name":
            return self.positions.name(one.pointer)[1:]
        return self.place(one.pointer)


def read_document(data: bytes) -> Document | tuple[Finding, ...]:
    """The one way in: a strictly parsed document, or all that is wrong with its text."""
    value, accepted = fast(data)
    return Document(value, data) if accepted else _judged(data)


def _judged(data: bytes) -> Document | tuple[Finding, ...]:
    if len(data) > MOST_BYTES:
        return (finding("document-too-large", expected=f"at most {MOST_BYTES} bytes"),)
    try:
        text = data.decode()
    except UnicodeDecodeError as error:
        return (_not_utf_8(data, error.start),)
    marks = _marks(text)
    result = scan(text, len(marks))
    faults = (*marks, *result.faults)
    return findings_of(text, faults) if faults else Document(result.value, data)


def _marks(text: str) -> list[Fault]:
    return [Fault("byte-order-mark", 0, {"expected": _UTF_8})] if text.startswith(_BOM) else []


def _not_utf_8(data: bytes, offset: int) -> Finding:
    before = data[:offset].decode()
    place = Lines(before).place(len(before))
    found = next((words for start, words in _OTHER_MARKS if data.startswith(start)), "a byte out of place")
    return finding("not-utf-8", expected=_UTF_8, byte=offset, found=found).at(place.line, place.column)
