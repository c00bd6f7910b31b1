"""What stands against reading a table, and where: plain data."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Final

RULES: Final[Mapping[str, str]] = {
    "setup-columns-unreadable": "the declared reading is no TOML",
    "setup-columns-unknown": "it has a member that is not known",
    "setup-columns-missing": "a member it needs is not there",
    "setup-columns-value": "a member has a value that it cannot have",
    "setup-columns-amiss": "members do not go together",
    "setup-table-unreadable": "a file is not there, too large, or not what it should be",
    "setup-table-encoding": "bytes are not text in the encoding declared",
    "setup-table-damaged": "a file is no table of separated values, or no workbook",
    "setup-table-sheet": "a sheet is not there, or nothing is declared of it",
    "setup-table-hidden": "a sheet, column or row that is read is hidden",
    "setup-table-empty": "there is no movement",
    "setup-table-header-missing": "a declared header is not there",
    "setup-table-header-twice": "a declared header stands over several columns",
    "setup-table-column-undeclared": "nothing is declared of a column",
    "setup-table-row-undeclared": "something stands above the headers",
    "setup-table-row-length": "a row has more or fewer cells than the headers",
    "setup-table-blanks": "blanks stand before or after the words of a cell",
    "setup-table-cell-kind": "a cell of a workbook holds a date, a formula, an error value or a truth value",
    "setup-table-number-format": "a number is shown otherwise than it is stored",
    "setup-table-merged": "a cell is part of others",
    "setup-table-comment": "a comment lies upon a cell",
    "setup-table-struck-out": "words are struck out",
    "setup-table-not-a-number": "a cell is no number in the decimal mark declared",
    "setup-table-not-whole": "a cell is no whole number within bounds",
    "setup-table-decimals": "a number has more than two decimals in the format's unit",
    "setup-table-too-large": "a number is beyond what the format holds",
    "setup-table-negative": "enamel to be taken off is below 0",
    "setup-table-unit": "a cell or a row does not carry the unit declared",
    "setup-table-direction": "a number has no direction that is declared",
    "setup-table-direction-and-sign": "a number has both a sign and a direction",
    "setup-table-direction-of-tooth": "the direction is none of that variable at this tooth",
    "setup-table-not-a-tooth": "a cell names no tooth in the numbering declared",
    "setup-table-tooth-not-in-mouth": "a tooth is not in the prescription; asked",
    "setup-table-notation-questioned": "all teeth would fit in another numbering; asked",
    "setup-table-tooth-twice": "a tooth stands twice where it can stand once",
    "setup-table-tooth-not-told": "nothing is said of a tooth, and that is not declared to mean none",
    "setup-table-movement-unknown": "a row names a movement that is not declared",
    "setup-table-movement-twice": "one variable of a tooth is stated twice",
    "setup-table-step-missing": "a stage, or the end, leaves out what moves",
    "setup-table-contact": "two teeth do not touch, or a tooth has no neighbour there",
    "setup-table-contact-twice": "a contact stands twice",
    "setup-table-contact-not-told": "nothing is said of a contact, and that is not declared to mean none",
    "setup-table-contact-not-clear": "the cells of the two teeth at a contact do not make one amount",
    "setup-table-text-unknown": "a text is not declared",
    "setup-table-no-such-cell": "a declared cell is not there",
}
"""Every kind of fault, and when it is told."""
ASKS: Final = frozenset({"setup-table-tooth-not-in-mouth", "setup-table-notation-questioned"})
"""Faults that are questions: what is there can be read, but may mean something else."""


@dataclass(frozen=True, order=True)
class Place:
    """A place in a table as its user counts: rows from 1, columns by letter; "" and 0 where it is the whole.

    sheet   name of the sheet, or base name of the file
    header  the column's header, where the mapping names it
    """

    sheet: str = ""
    row: int = 0
    column: str = ""
    header: str = ""


@dataclass(frozen=True)
class Fault:
    """One thing that stands against it.

    rule      its kind, a short phrase
    place     where
    found     what kind of thing is there; never the text of a cell
    expected  what would have been read
    do        what to do
    """

    rule: str
    place: Place
    found: str
    expected: str
    do: str

    @property
    def asks(self) -> bool:
        """Whether it is a question."""
        return self.rule in ASKS


Tell = Callable[[Fault], None]


class RefusedError(Exception):
    """Nothing can be read on from here; with every fault found so far."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        super().__init__()
        self.faults = tuple(faults)


class UnreadableError(RefusedError):
    """A file that cannot be opened as what it should be."""


def in_order(faults: Iterable[Fault]) -> tuple[Fault, ...]:
    """By place, then by rule; each once."""
    return tuple(sorted(dict.fromkeys(faults), key=lambda one: (one.place.sheet, *_at(one), one.rule, one.found)))


def _at(fault: Fault) -> tuple[int, int, str]:
    return fault.place.row, len(fault.place.column), fault.place.column
