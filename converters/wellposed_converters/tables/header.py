"""The header of a table, and its rows as cells under names."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from wellposed.findings import Finding
from wellposed.reading.limits import LONGEST_NAME
from wellposed.reading.nearest import nearest
from wellposed_converters.tables.faults import Spot, Tell, fault
from wellposed_converters.tables.layout import SECTION, headers
from wellposed_converters.tables.separated import PUNCTUATION
from wellposed_converters.tables.sheet import Box, Sheet
from wellposed_converters.tables.values import upon


@dataclass(frozen=True)
class Record:
    """A row: where it stands, and its filled cells by their headers."""

    spot: Spot
    boxes: dict[str, Box]


def records(sheet: Sheet, tell: Tell) -> list[Record]:
    """The rows below the header; none where the header cannot be used. What is wrong is told."""
    wrong = list[Finding]()
    names = _names(sheet, wrong.append)
    for finding in wrong:
        tell(finding)
    rows = [] if wrong else [row for row in sheet.body() if _fits(row, names, sheet, tell)]
    return [Record(_row_spot(row), dict(_named(row, names, tell))) for row in rows]


def _names(sheet: Sheet, tell: Tell) -> tuple[str, ...]:
    """The header of each column, "" over one that is empty."""
    boxes = sheet.rows[0] if sheet.rows else ()
    names = tuple(_name(box, tell) for box in boxes)
    for place, (name, box) in enumerate(zip(names, boxes, strict=True)):
        if name in names[:place] and name:
            first = boxes[names.index(name)].spot
            tell(fault("table-header-twice", box.spot, name=name, first=_cell_name(first)))
    if SECTION not in names:
        tell(fault("table-header-missing", Spot(sheet.name, 1, line=1, at=1), expected=SECTION))
    return names


def _cell_name(spot: Spot) -> str:
    return f"{spot.facts['column']}{spot.row}"


def _name(box: Box, tell: Tell) -> str:
    """A header; what is none is told."""
    if box.blank and not box.cell.marks:
        return ""
    if not box.worded or box.half or box.cell.marks:
        upon(box, tell)
        tell(fault("table-header-unknown", box.spot, expected="one of the headers of the long table"))
        return ""
    text = box.cell.text
    if text not in headers():
        told = {"name": text} if len(text) <= LONGEST_NAME else {}
        marks = [words for sign, words in PUNCTUATION.items() if sign in text]
        told |= {"found": marks[0]} if marks else {}
        tell(fault("table-header-unknown", box.spot, nearest=nearest(text, headers()), **told))
    return text


def _fits(row: tuple[Box, ...], names: tuple[str, ...], sheet: Sheet, tell: Tell) -> bool:
    """Whether a row has a header over each of its cells, and in separated values as many as these."""
    if sheet.exact and len(row) != len(names):
        tell(fault("table-row-length", _row_spot(row), found=f"{len(row)} cells", expected=f"{len(names)}"))
        return False
    for place, box in enumerate(row):
        if not box.blank and (place >= len(names) or not names[place]):
            tell(fault("table-header-missing", box.spot, found="a cell without a header"))
            return False
    return True


def _named(row: tuple[Box, ...], names: tuple[str, ...], tell: Tell) -> Iterator[tuple[str, Box]]:
    for name, box in zip(names, row, strict=False):
        if not box.blank:
            yield name, Box(box.cell, replace(box.spot, header=name))
        elif box.cell.marks:
            upon(box, tell)


def _row_spot(row: tuple[Box, ...]) -> Spot:
    first = row[0].spot
    return Spot(first.sheet, first.row, None, "", first.line, first.at)
