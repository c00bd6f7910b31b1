"""A table as cells, whatever file it came in."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final

EMPTY, TEXT, RAW, NUMBER = "empty", "text", "raw", "number"
"""Kinds that can be read; ``raw`` is the text of a file that knows nothing but text."""
_ADDRESS: Final = re.compile(r"([A-Z]{1,3})([1-9][0-9]{0,6})", re.ASCII)
_ALPHABET: Final = 26


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell.

    kind   one of those above, or what it is instead: ``date``, ``formula``, ``error``, ``truth value``
    text   what is written in it; of a workbook's number its shortest decimal form, with a point
    marks  what is upon it: ``comment``, ``merged``, ``struck out``, ``format``
    """

    kind: str
    text: str = ""
    marks: tuple[str, ...] = ()


NOTHING: Final = Cell(EMPTY)


@dataclass(frozen=True)
class Grid:
    """The cells of one sheet, row by row; rows may be of different lengths."""

    sheet: str
    rows: tuple[tuple[Cell, ...], ...]
    hidden_rows: frozenset[int] = field(default_factory=frozenset)
    hidden_columns: frozenset[int] = field(default_factory=frozenset)

    def cell(self, row: int, column: int) -> Cell:
        """The cell of a row from 1 and a column from 0; an empty one beyond the table."""
        cells = self.rows[row - 1] if 0 < row <= len(self.rows) else ()
        return cells[column] if column < len(cells) else NOTHING

    def numbered(self) -> Iterator[tuple[int, tuple[Cell, ...]]]:
        """Every row with its number, from 1."""
        return enumerate(self.rows, start=1)


@dataclass(frozen=True)
class Book:
    """All a file holds: its sheets by name, and what is said of the file itself."""

    sheets: dict[str, Grid]
    hidden_sheets: frozenset[str] = frozenset()
    said: tuple[str, ...] = ()


def is_blank(cell: Cell) -> bool:
    """Whether nothing is in it."""
    return cell.kind == EMPTY or (cell.kind == RAW and cell.text == "")


def letter(column: int) -> str:
    """``"A"`` for 0, ``"AA"`` for 26."""
    letters = ""
    column += 1
    while column:
        column, rest = divmod(column - 1, _ALPHABET)
        letters = chr(ord("A") + rest) + letters
    return letters


def address(text: str) -> tuple[int, int] | None:
    """Row from 1 and column from 0 of ``"B3"``; None if it is no address."""
    match = _ADDRESS.fullmatch(text)
    if match is None:
        return None
    column = 0
    for sign in match[1]:
        column = column * _ALPHABET + ord(sign) - ord("A") + 1
    return int(match[2]), column - 1
