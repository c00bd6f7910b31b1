"""A file of separated values to cells: strictly, in the encoding and with the delimiter that are declared."""

from __future__ import annotations

import codecs
import csv
import io
from collections.abc import Iterator
from typing import Final

from wellposed_converters.setups.faults import Fault, Place, UnreadableError
from wellposed_converters.setups.grid import RAW, Book, Cell, Grid

MOST_ROWS: Final = 20_000
_MARKS: Final = {
    codecs.BOM_UTF8: "utf-8",
    codecs.BOM_UTF16_LE: "utf-16",
    codecs.BOM_UTF16_BE: "utf-16",
}
ALLOWED: Final = "\t\n\r"


def csv_book(data: bytes, name: str, encoding: str | None, delimiter: str | None) -> Book:
    """The one sheet of the file, named after it.

    encoding   as declared; None is UTF-8, strictly
    delimiter  as declared

    Raises:
        UnreadableError: what is no table of separated values in that encoding
    """
    place = Place(name)
    if delimiter is None:
        found = "no delimiter is declared"
        raise UnreadableError(
            [Fault("setup-columns-missing", place, found, "`delimiter` under [table]", "Declare it.")]
        )
    text, said = _text(data, name, encoding)
    return Book({name: Grid(name, tuple(_rows(text, name, delimiter)))}, said=said)


def _text(data: bytes, name: str, encoding: str | None) -> tuple[str, tuple[str, ...]]:
    declared = encoding or "utf-8"
    mark = next((mark for mark in _MARKS if data.startswith(mark)), b"")
    if mark and _MARKS[mark] != declared:
        raise _encoding(Place(name), f"the byte order mark of {_MARKS[mark]}", declared)
    if declared == "utf-16" and not mark:
        raise _encoding(Place(name), "no byte order mark", "utf-16 with its mark")
    try:
        text = data.decode("utf-8-sig" if declared == "utf-8" else declared)
    except UnicodeDecodeError as fault:
        row = data[: fault.start].decode(declared, "ignore").count("\n") + 1
        raise _encoding(Place(name, row), f"byte 0x{data[fault.start]:02X}", declared) from fault
    said = (f"a byte order mark of {declared} at the beginning, left out",) if mark else ()
    return text, said


def _encoding(place: Place, found: str, expected: str) -> UnreadableError:
    do = "Declare the encoding the file has, or save it in UTF-8."
    return UnreadableError([Fault("setup-table-encoding", place, found, f"text in {expected}", do)])


def _rows(text: str, name: str, delimiter: str) -> Iterator[tuple[Cell, ...]]:
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    number = 0
    try:
        for number, row in enumerate(reader, start=1):
            if number > MOST_ROWS:
                raise _damaged(name, number, "more rows than that", f"at most {MOST_ROWS} rows", "Leave out the rest.")
            if any(_unseen(cell) for cell in row):
                raise _damaged(name, number, "a control character", "text", "Save the file again as plain text.")
            yield tuple(Cell(RAW, cell) for cell in row)
    except csv.Error as fault:
        do = "Look at the quotes of that row, and of those before it."
        raise _damaged(name, number + 1, "quotes or a line that do not end as they should", "a row", do) from fault


def _unseen(cell: str) -> bool:
    return any(sign < " " and sign not in ALLOWED for sign in cell)


def _damaged(name: str, row: int, found: str, expected: str, do: str) -> UnreadableError:
    return UnreadableError([Fault("setup-table-damaged", Place(name, row), found, expected, do)])
