"""A workbook to cells: values as they are stored, formulas as formulas, and all that lies upon a cell."""

from __future__ import annotations

import io
import re
import warnings
import zipfile
import zlib
from collections.abc import Iterator
from decimal import Decimal
from typing import Any, Final

from openpyxl import load_workbook
from openpyxl.utils import column_index_from_string
from openpyxl.utils.exceptions import InvalidFileException

from wellposed_converters.setups.faults import Fault, Place, UnreadableError
from wellposed_converters.setups.grid import NOTHING, NUMBER, TEXT, Book, Cell, Grid
from wellposed_converters.setups.laid_out import laid_out

LARGEST_UNPACKED: Final = 20_000_000
MOST_ROWS: Final = 20_000
MOST_COLUMNS: Final = 400
MOST_CELLS: Final = 2_500_000
"""Of a sheet from its first to its last cell; a long table of every row and header there is has fewer."""
MOST_LAID_OUT: Final = 1_000_000
"""No 20,000,000 bytes say more than three quarters of it cell by cell."""
_CHUNK: Final = 65_536
_DECLARED: Final = b"<!DOCTYPE"
"""ECMA-376 part 2 forbids it; entities declared in one can grow without end."""
_SECTION: Final = r"[#,]*0(?:[.][0#]+)?"
PLAIN_FORMAT: Final = re.compile(rf"General|@|{_SECTION}|[+]?{_SECTION};-{_SECTION}(?:;{_SECTION})?", re.ASCII)
"""Number formats that show the number that is stored, its sign and nothing else."""
_DAMAGES: Final = (
    *(zipfile.BadZipFile, zlib.error, InvalidFileException, OSError, EOFError, RuntimeError),
    *(ArithmeticError, AttributeError, LookupError, SyntaxError, TypeError, ValueError),
)
"""What the libraries raise of a file that is none of theirs."""
_KINDS: Final = {"d": "date", "f": "formula", "e": "error", "b": "truth value"}


def workbook(data: bytes, name: str) -> Book:
    """Every sheet of an .xlsx file.

    Raises:
        UnreadableError: no workbook, a damaged one, or one too large
    """
    _guard(data, name)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # of features that hold no cells; they would name the machine's paths
            book = load_workbook(io.BytesIO(data), data_only=False, keep_links=False)
        sheets = {sheet.title: _grid(sheet, name) for sheet in book.worksheets}
    except _DAMAGES as fault:
        raise _damaged(name, "what no workbook holds", "Save it again as .xlsx without a password.") from fault
    hidden = frozenset(sheet.title for sheet in book.worksheets if sheet.sheet_state != "visible")
    said = ("pictures, charts and text boxes are not read",) if _drawn(data) else ()
    return Book(sheets, hidden, said)


def _guard(data: bytes, name: str) -> None:
    """Nothing is unpacked whose true size is not known first."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as packed:
            names = [entry.filename for entry in packed.infolist()]
            if len(set(names)) < len(names):
                raise _damaged(name, "two parts of one name", "Save it again as .xlsx.")
            left = LARGEST_UNPACKED
            for entry in packed.infolist():
                left -= _size(packed, entry, left)
                if left < 0:
                    do = "Leave out pictures and sheets that are not needed."
                    raise _damaged(name, "more than that", do, f"at most {LARGEST_UNPACKED} bytes unpacked")
            if sum(laid_out(packed.read(entry)) for entry in packed.infolist()) > MOST_LAID_OUT:
                do = "Look for merged cells, links and formats over whole columns."
                raise _damaged(name, "more than that", do, f"at most {MOST_LAID_OUT} cells")
    except _DAMAGES as fault:
        raise _damaged(name, "what no workbook holds", "Save it again as .xlsx without a password.") from fault


def _size(packed: zipfile.ZipFile, entry: zipfile.ZipInfo, most: int) -> int:
    """The true size of a part. A document type declaration, which no workbook may have, is no workbook."""
    size, tail = 0, b""
    with packed.open(entry) as part:
        while chunk := part.read(_CHUNK):
            size += len(chunk)
            plain = tail + chunk.replace(b"\0", b"")
            if _DECLARED in plain:
                raise ValueError(entry.filename)
            tail = plain[-len(_DECLARED) :]
            if size > most:
                break
    return size


def _drawn(data: bytes) -> bool:
    with zipfile.ZipFile(io.BytesIO(data)) as packed:
        return any(entry.filename.startswith("xl/drawings/drawing") for entry in packed.infolist())


def _grid(sheet: Any, name: str) -> Grid:
    rows, columns = sheet.max_row, sheet.max_column
    if rows > MOST_ROWS or columns > MOST_COLUMNS or rows * columns > MOST_CELLS:
        expected = f"at most {MOST_ROWS} rows, {MOST_COLUMNS} columns and {MOST_CELLS} cells"
        raise _damaged(name, "more than that", "Take the empty rows and columns away.", expected, sheet.title)
    merged = {at for held in sheet.merged_cells.ranges for at in _within(held)}
    cells = tuple(
        tuple(_cell(cell, (cell.row, cell.column) in merged) for cell in row)
        for row in sheet.iter_rows(min_row=1, min_col=1)
    )
    hidden = frozenset(number for number, found in sheet.row_dimensions.items() if found.hidden)
    return Grid(sheet.title, cells, hidden, frozenset(_hidden_columns(sheet)))


def _within(held: Any) -> Iterator[tuple[int, int]]:
    for row in range(held.min_row, held.max_row + 1):
        yield from ((row, column) for column in range(held.min_col, held.max_col + 1))


def _hidden_columns(sheet: Any) -> Iterator[int]:
    for name, found in sheet.column_dimensions.items():
        if found.hidden:
            first = found.min or column_index_from_string(name)
            yield from range(first - 1, min(found.max or first, MOST_COLUMNS))


def _cell(cell: Any, merged: bool) -> Cell:
    marks: tuple[str, ...] = ("merged",) if merged else ()
    marks += ("comment",) if cell.comment is not None else ()
    if cell.value is None:
        return Cell(NOTHING.kind, "", marks) if marks else NOTHING
    marks += ("struck out",) if cell.font is not None and cell.font.strike else ()
    if cell.data_type in _KINDS:
        return Cell(_KINDS[cell.data_type], "", marks)
    if isinstance(cell.value, int | float):
        marks += () if PLAIN_FORMAT.fullmatch(cell.number_format) else ("format",)
        return Cell(NUMBER, f"{Decimal(repr(cell.value)):f}", marks)
    return Cell(TEXT, str(cell.value), marks)


def _damaged(name: str, found: str, do: str, expected: str = "a workbook (.xlsx)", sheet: str = "") -> UnreadableError:
    place = Place(sheet or name)
    return UnreadableError([Fault("setup-table-damaged", place, found, expected, do)])
