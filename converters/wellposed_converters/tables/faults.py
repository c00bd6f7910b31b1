"""What stands against reading a table, as findings with the place as its user counts."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any, Final

from wellposed.findings import Finding, Severity
from wellposed.reading.limits import MOST_FAULTS
from wellposed_converters.setups.grid import letter

RULES: Final[Mapping[str, str]] = {
    "table-byte-order-mark": "the text begins with a byte order mark; left out and noted",
    "table-damaged": "the file is no table of separated values, or no workbook",
    "table-sheet": "a workbook has no sheet with something in it, or several",
    "table-hidden": "a sheet, row or column with something in it is out of sight",
    "table-header-missing": "a header is not there",
    "table-header-unknown": "a header is none of the long table's",
    "table-header-twice": "a header stands over two columns",
    "table-row-length": "a row has more or fewer cells than the header",
    "table-section": "a row names no section of this kind of document",
    "table-entry": "a row is not counted or named as its section asks",
    "table-entry-missing": "an entry is left out in the counting",
    "table-row-alone": "a row belongs to one that is not there",
    "table-row-twice": "two rows are about one thing",
    "table-cell-kind": "a number, or a truth value of the spreadsheet, stands where text belongs",
    "table-date": "a spreadsheet has made a date of what was typed",
    "table-formula": "a cell is a formula, or begins like one",
    "table-error-value": "a cell holds an error value of a spreadsheet",
    "table-number-format": "a number is shown otherwise than it is stored",
    "table-merged": "a cell is part of others",
    "table-comment": "a comment lies upon a cell",
    "table-struck-out": "words are struck out",
    "table-not-a-number": "a cell is no number",
    "table-truth-value": "a cell is neither true nor false",
    "table-list": "the words of a list are not parted by single spaces",
    "table-content": "a cell is not one JSON value",
    "table-mark": "an apostrophe marks nothing",
    "table-escape": "an escape stands for half a character",
}
"""Every kind of fault of a table itself, and when it is told."""

Tell = Callable[[Finding], None]


@dataclass(frozen=True, slots=True)
class Spot:
    """A place in a table, as its user counts.

    sheet   name of the sheet, "" in separated values
    row     from 1, the header's being the first; 0 where the whole table is meant
    column  from 0; None where the whole row is meant
    header  what stands over the column, where that is known
    line    and ``at``: line and column in the text of separated values, from 1
    """

    sheet: str = ""
    row: int = 0
    column: int | None = None
    header: str = ""
    line: int | None = None
    at: int | None = None

    @property
    def facts(self) -> dict[str, Any]:
        """What a finding says of its place."""
        found = {
            "sheet": self.sheet,
            "row": self.row,
            "column": "" if self.column is None else letter(self.column),
            "header": self.header,
        }
        return {name: fact for name, fact in found.items() if fact}


def fault(rule: str, spot: Spot, **facts: Any) -> Finding:
    """A finding that stops the table."""
    return Finding(rule, Severity.STOP, "", {**facts, **spot.facts}, line=spot.line, column=spot.at)


def at(finding: Finding, spot: Spot) -> Finding:
    """A finding about a document, at the place of the table that it comes from."""
    return replace(finding, facts={**finding.facts, **spot.facts}, line=spot.line, column=spot.at)


class RefusedError(Exception):
    """Nothing can be read on from here."""

    def __init__(self, *findings: Finding) -> None:
        super().__init__()
        self.findings = findings


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Each once, heaviest first, then by row and column; no more than are told of any document."""
    found = sorted({repr(one): one for one in findings}.values(), key=_place)
    if len(found) <= MOST_FAULTS:
        return tuple(found)
    more = Finding("too-many-faults", Severity.STOP, "", {"expected": f"at most {MOST_FAULTS} faults"})
    return (*found[:MOST_FAULTS], more)


def _place(finding: Finding) -> tuple[int, int, int, str, str, str]:
    facts = finding.facts
    column = str(facts.get("column", ""))
    return finding.severity.rank, facts.get("row", 0), len(column), column, finding.rule, finding.pointer
