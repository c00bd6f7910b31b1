"""Headers to columns, and the rows below them. A column or a row that nothing is declared of is told, never dropped."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from wellposed_converters.setups.cells import words
from wellposed_converters.setups.faults import Fault, Place, Tell
from wellposed_converters.setups.grid import RAW, Cell, Grid, is_blank, letter
from wellposed_converters.setups.mapping import Table


@dataclass(frozen=True)
class View:
    """A part of a table: its grid, and where its declared columns stand."""

    grid: Grid
    table: Table
    header_row: int
    at: Mapping[str, int]

    def cell(self, row: int, header: str) -> Cell:
        """The cell of a row under a header."""
        return self.grid.cell(row, self.at[header])

    def place(self, row: int, header: str) -> Place:
        """Where that is."""
        return Place(self.grid.sheet, row, letter(self.at[header]), header)

    def words(self, row: int, header: str, tell: Tell) -> str | None:
        """The text there; None where it is told that there is none to be had."""
        return words(self.cell(row, header), self.place(row, header), self.table, tell)


def view(
    grid: Grid, table: Table, header_row: int, wanted: Collection[str], ignored: Collection[str], tell: Tell
) -> View:
    """The declared columns of a grid; what is missing, doubled or not declared is told."""
    headers = dict(_headers(grid, table, header_row, tell))
    count = Counter(headers.values())
    at = {name: column for column, name in reversed(headers.items()) if name in wanted}
    for name in sorted(wanted):
        place = Place(grid.sheet, header_row, "", name)
        if not count[name]:
            do = "Look at the header, its row and its spelling; declare it as it stands there."
            tell(Fault("setup-table-header-missing", place, "no such header", f'a column "{name}"', do))
        elif count[name] > 1:
            do = "Give each its own header."
            tell(Fault("setup-table-header-twice", place, f"{count[name]} columns of that header", "one", do))
    _undeclared(grid, headers, header_row, {*wanted, *ignored}, tell)
    _hidden(grid, at, header_row, table, tell)
    return View(grid, table, header_row, at)


def _headers(grid: Grid, table: Table, header_row: int, tell: Tell) -> Iterator[tuple[int, str]]:
    for column, cell in enumerate(grid.rows[header_row - 1] if header_row <= len(grid.rows) else ()):
        text = words(cell, Place(grid.sheet, header_row, letter(column)), table, tell)
        name = cell.text.strip() if text is None else text
        if name:
            yield column, name


def _undeclared(grid: Grid, headers: Mapping[int, str], header_row: int, known: Collection[str], tell: Tell) -> None:
    width = max((len(row) for row in grid.rows[header_row - 1 :]), default=0)
    for column in range(width):
        name = headers.get(column)
        if name in known or (name is None and _is_empty(grid, column, header_row)):
            continue
        found = "a column of which nothing is declared" if name else "cells in a column without a header"
        do = "Declare what it is, or list its header under `ignore_columns`."
        place = Place(grid.sheet, header_row, letter(column))
        tell(Fault("setup-table-column-undeclared", place, found, "a declared column", do))


def _is_empty(grid: Grid, column: int, header_row: int) -> bool:
    return all(is_blank(grid.cell(row, column)) for row in range(header_row, len(grid.rows) + 1))


def _hidden(grid: Grid, at: Mapping[str, int], header_row: int, table: Table, tell: Tell) -> None:
    for name, column in at.items():
        if column in grid.hidden_columns and not table.hidden:
            place = Place(grid.sheet, header_row, letter(column), name)
            do = 'Show it, or declare `hidden = "read"`.'
            tell(Fault("setup-table-hidden", place, "a hidden column", "a column that is seen", do))


def body(seen: View, own: bool, tell: Tell) -> Iterator[int]:
    """The rows to read, by number. ``own`` is a sheet of its own, to which declared row numbers do not apply."""
    table = seen.table
    numbers = () if own else table.ignore_rows
    width = len(seen.grid.rows[seen.header_row - 1]) if seen.header_row <= len(seen.grid.rows) else 0
    filled = [(row, cells) for row, cells in seen.grid.numbered() if row not in numbers and not _blank(cells)]
    above = [row for row, _ in filled if row < seen.header_row]
    if above:
        do = "Look at `header_row`, or list such rows under `ignore_rows`."
        place, found = Place(seen.grid.sheet, above[0]), f"{len(above)} rows above the headers"
        tell(Fault("setup-table-row-undeclared", place, found, "nothing there", do))
    for row, cells in filled:
        if row > seen.header_row and not _ignored(seen, row) and _whole(seen, row, cells, width, tell):
            yield row


def _blank(cells: tuple[Cell, ...]) -> bool:
    return all(map(is_blank, cells))


def _ignored(seen: View, row: int) -> bool:
    """Whether a cell of the row carries a text by which rows are left out."""
    texts = seen.table.ignore_rows_with or {}
    return any(seen.cell(row, name).text.strip() in said for name, said in texts.items() if name in seen.at)


def _whole(seen: View, row: int, cells: tuple[Cell, ...], width: int, tell: Tell) -> bool:
    place = Place(seen.grid.sheet, row)
    if row in seen.grid.hidden_rows and not seen.table.hidden:
        do = 'Show it, leave it out by `ignore_rows`, or declare `hidden = "read"`.'
        tell(Fault("setup-table-hidden", place, "a hidden row", "a row that is seen", do))
        return False
    if len(cells) != width and cells[0].kind == RAW:
        do = "Look for a delimiter in an amount or a name, or one that is missing."
        tell(Fault("setup-table-row-length", place, f"{len(cells)} cells", f"{width}, as in the headers", do))
        return False
    return True
