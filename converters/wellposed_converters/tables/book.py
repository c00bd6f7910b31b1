"""A workbook's one sheet as a table; what lies upon its cells or out of sight is refused."""

from __future__ import annotations

from wellposed.formats import Loss
from wellposed_converters.setups.faults import UnreadableError
from wellposed_converters.setups.grid import TEXT, Book, Cell, Grid, is_blank
from wellposed_converters.setups.workbook import LARGEST_UNPACKED, workbook
from wellposed_converters.tables.cells import unescaped
from wellposed_converters.tables.faults import RefusedError, Spot, fault
from wellposed_converters.tables.sheet import HALF, Box, Sheet


def from_workbook(data: bytes) -> Sheet:
    """The table in an .xlsx file.

    Raises:
        RefusedError: no workbook, or not one with one sheet that is seen
    """
    if len(data) > LARGEST_UNPACKED:
        raise RefusedError(fault("document-too-large", Spot(), expected=f"at most {LARGEST_UNPACKED} bytes"))
    try:
        book = workbook(data, "")
    except UnreadableError as error:
        facts = ({"found": one.found, "expected": one.expected} for one in error.faults)
        raise RefusedError(*(fault("table-damaged", Spot(), **one) for one in facts)) from None
    grid = _only(book)
    losses = tuple(Loss("", "not-in-cells", words) for words in book.said)
    rows = tuple(_boxes(grid, number, row) for number, row in grid.numbered())
    return Sheet(grid.sheet, rows, False, (), losses, grid.hidden_rows, grid.hidden_columns)


def _only(book: Book) -> Grid:
    """The one sheet that has anything in it."""
    hidden = [fault("table-hidden", Spot(name), found="a hidden sheet") for name in sorted(book.hidden_sheets)]
    filled = [grid for grid in book.sheets.values() if _filled(grid)]
    if len(filled) != 1:
        found = f"{len(filled)} sheets with something in them"
        raise RefusedError(*hidden, fault("table-sheet", Spot(), found=found, expected="one"))
    if hidden:
        raise RefusedError(*hidden)
    return filled[0]


def _filled(grid: Grid) -> bool:
    return any(not is_blank(cell) for row in grid.rows for cell in row)


def _boxes(grid: Grid, number: int, row: tuple[Cell, ...]) -> tuple[Box, ...]:
    return tuple(_box(grid, number, place, cell) for place, cell in enumerate(row))


def _box(grid: Grid, row: int, column: int, cell: Cell) -> Box:
    spot = Spot(grid.sheet, row, column)
    if cell.kind != TEXT:
        return Box(cell, spot)
    text = unescaped(cell.text)
    return Box(Cell(HALF, "", cell.marks) if text is None else Cell(TEXT, text, cell.marks), spot)
