"""A table as its cells, whatever file it came in."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final

from wellposed.findings import Finding
from wellposed.formats import Loss
from wellposed_converters.setups.grid import RAW, TEXT, Cell, is_blank
from wellposed_converters.tables.faults import Spot, fault

HALF: Final = "half a character"
"""The kind of a cell with an escape that stands for that."""


@dataclass(frozen=True, slots=True)
class Box:
    """A cell and where it stands."""

    cell: Cell
    spot: Spot

    @property
    def blank(self) -> bool:
        """Whether nothing is in it."""
        return is_blank(self.cell)

    @property
    def worded(self) -> bool:
        """Whether what is in it is text."""
        return self.cell.kind in (TEXT, RAW)

    @property
    def half(self) -> bool:
        """Whether an escape in it stands for half a character."""
        return self.cell.kind == HALF


@dataclass(frozen=True)
class Sheet:
    """The rows of a table, the header first.

    name    of the sheet, "" in separated values
    rows    of cells; rows may be of different lengths
    exact   whether each row must have as many cells as the header
    said    what is to be told of the file itself
    losses  what it holds that is not read
    """

    name: str
    rows: tuple[tuple[Box, ...], ...]
    exact: bool
    said: tuple[Finding, ...] = ()
    losses: tuple[Loss, ...] = ()
    hidden_rows: frozenset[int] = field(default_factory=frozenset)
    hidden_columns: frozenset[int] = field(default_factory=frozenset)

    def body(self) -> Iterator[tuple[Box, ...]]:
        """The rows below the header that have anything in them."""
        return (row for row in self.rows[1:] if not all(box.blank for box in row))

    def hidden(self) -> Iterator[Finding]:
        """What is filled and out of sight."""
        for row in self.rows:
            number = row[0].spot.row if row else 0
            if number in self.hidden_rows and not all(box.blank for box in row):
                yield fault("table-hidden", Spot(self.name, number), found="a hidden row")
        filled = {box.spot.column or 0 for row in self.rows for box in row if not box.blank}
        for column in sorted(filled & self.hidden_columns):
            yield fault("table-hidden", Spot(self.name, 1, column), found="a hidden column")
