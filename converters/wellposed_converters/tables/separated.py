"""Separated values by RFC 4180, and by nothing else: UTF-8, commas, quotation marks; with the place of every cell."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final

from wellposed.findings import Finding, Severity
from wellposed.reading.positions import Lines
from wellposed_converters.setups.grid import RAW, Cell
from wellposed_converters.tables.cells import escaped
from wellposed_converters.tables.faults import RefusedError, Spot, fault
from wellposed_converters.tables.sheet import Box, Sheet

MOST_BYTES: Final = 20_000_000
MOST_ROWS: Final = 20_000
MOST_CHARACTERS: Final = 131_072
"""What the common readers of separated values take in one cell."""
_CELL: Final = re.compile(
    '(?:"(?P<quoted>(?:[^"\x00-\x08\x0b\x0c\x0e-\x1f]|"")*)"|(?P<plain>[^",\r\n\x00-\x08\x0b-\x1f]*))'
    "(?P<end>,|\r\n|\n|\\Z)"
)
PUNCTUATION: Final = {";": "semicolons", "\t": "tabs", "|": "bars"}
"""What others put between cells; a header of one cell with it in is refused without a look at what follows."""
_QUOTED: Final = re.compile('[",\r\n]')
_MARK: Final = "\ufeff"
_OTHERS: Final = ((b"\xff\xfe", "a mark of UTF-16 or UTF-32"), (b"\xfe\xff", "a mark of UTF-16"))
_WRONG: Final = (
    ("\r", "a line that ends with a carriage return alone"),
    *((chr(code), "a control character") for code in range(0x20) if chr(code) not in "\t\r\n"),
)


def separated(data: bytes) -> Sheet:
    """The table in a file of separated values.

    Raises:
        RefusedError: no such file
    """
    text = _text(data)
    said: tuple[Finding, ...] = ()
    if text.startswith(_MARK):
        spot = Spot(row=1, line=1, at=1)
        said = (Finding("table-byte-order-mark", Severity.NOTE, "", spot.facts, line=1, column=1),)
    rows = _rows(text, len(_MARK) if said else 0)
    first = next(rows, ())
    other = len(first) == 1 and any(sign in first[0].cell.text for sign in PUNCTUATION)
    return Sheet("", (first,) if other else (first, *rows), exact=True, said=said)


def _text(data: bytes) -> str:
    if len(data) > MOST_BYTES:
        raise RefusedError(fault("document-too-large", Spot(), expected=f"at most {MOST_BYTES} bytes"))
    try:
        return data.decode()
    except UnicodeDecodeError as error:
        before = data[: error.start].decode()
        place = Lines(before).place(len(before))
        found = next((words for start, words in _OTHERS if data.startswith(start)), "a byte out of place")
        spot = Spot(line=place.line, at=place.column)
        raise RefusedError(fault("not-utf-8", spot, expected="UTF-8", byte=error.start, found=found)) from None


def _rows(text: str, start: int) -> Iterator[tuple[Box, ...]]:
    lines, row, number, at = Lines(text), list[Box](), 1, start
    while at < len(text) or row:
        place = lines.place(at)
        spot = Spot("", number, len(row), "", place.line, place.column - start * (place.line == 1))
        match = _CELL.match(text, at)
        if match is None:
            raise RefusedError(_damage(text, at, spot))
        row.append(Box(Cell(RAW, _content(match)), spot))
        at = match.end()
        if match["end"] != ",":
            yield tuple(row)
            row, number = [], number + 1
            if number > MOST_ROWS + 1:
                raise RefusedError(fault("table-damaged", spot, expected=f"at most {MOST_ROWS} rows"))


def _content(match: re.Match[str]) -> str:
    return str(match["plain"]) if match["quoted"] is None else match["quoted"].replace('""', '"')


def _damage(text: str, at: int, spot: Spot) -> Finding:
    """What keeps a cell from being read, and where it begins."""
    ended = re.compile('"(?:[^"]|"")*"').match(text, at) if text.startswith('"', at) else None
    if text.startswith('"', at) and ended is None:
        found = "quotation marks that are not closed"
    elif ended is not None and text[ended.end() : ended.end() + 1] not in (",", "\r", "\n", ""):
        found = "something behind closing quotation marks"
    else:
        cell = re.compile("[^,\n]*").match(text, at)
        inside = cell[0] if cell else ""
        found = next((words for sign, words in _WRONG if sign in (ended[0] if ended else inside)), "")
        found = found or "quotation marks within a cell that does not begin with them"
    return fault("table-damaged", spot, found=found, expected="separated values by RFC 4180")


def spelled(rows: Sequence[Sequence[str]]) -> bytes:
    """Rows of texts as a file, each line ended by CR LF."""
    return "".join(",".join(map(_spelled, row)) + "\r\n" for row in rows).encode()


def _spelled(text: str) -> str:
    plain = escaped(text)
    return '"' + plain.replace('"', '""') + '"' if _QUOTED.search(plain) or plain.strip() != plain else plain
