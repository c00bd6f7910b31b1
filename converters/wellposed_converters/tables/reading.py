"""A table to a document, or everything that stands against it: first the cells, then the document they make."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import replace
from typing import Final

from wellposed.check import sound_document
from wellposed.findings import Finding
from wellposed.formats import Carried
from wellposed.model import DOCUMENTS
from wellposed.report import Report
from wellposed_converters.setups.cells import looks
from wellposed_converters.tables.addresses import placed
from wellposed_converters.tables.assembling import Made, assembled
from wellposed_converters.tables.faults import RefusedError, Spot, at, fault, in_order
from wellposed_converters.tables.header import Record, records
from wellposed_converters.tables.layout import DOCUMENT, SECTION, TEXT, layout, sections
from wellposed_converters.tables.sheet import Sheet
from wellposed_converters.tables.values import value_of

_FOLLOWS: Final = ("table-row-alone", "table-entry-missing")
_TURNED: Final = ("wrong-form", "not-one-of", "too-long")
_DATES: Final = frozenset({"date", "issued", "needed_by", "received"})
"""Columns in which a date is meant."""


def read(opened: Callable[[bytes], Sheet], data: bytes) -> tuple[Carried, ...]:
    """The one document of a table."""
    try:
        sheet = opened(data)
        return (_carried(sheet),)
    except RefusedError as refused:
        return (Carried(None, in_order(refused.findings)),)


def _carried(sheet: Sheet) -> Carried:
    told = list(sheet.hidden())
    found = records(sheet, told.append)
    if told and not found:
        raise RefusedError(*sheet.said, *told)
    named = _format(found, sheet)
    made = _document(found, named, told)
    if told:
        raise RefusedError(*sheet.said, *told)
    document = sound_document(made.text.encode("utf-8", "surrogatepass"))
    if isinstance(document, Report):
        return Carried(None, in_order([*sheet.said, *(_at(one, made) for one in document.findings)]), sheet.losses)
    return Carried(document, sheet.said, sheet.losses)


def _document(found: list[Record], named: str, told: list[Finding]) -> Made:
    """The document the rows make. Where one has no place, what others lack for that is not told."""
    rows = [row for one in found if (row := placed(one, sections(named), told.append)) is not None]
    if not any(row.section.name == DOCUMENT for row in rows):
        raise RefusedError(*told)
    lacking, more = bool(told), list[Finding]()
    made = assembled(rows, layout(named), more.append)
    told += [one for one in more if not (lacking and one.rule in _FOLLOWS)]
    return made


def _format(found: list[Record], sheet: Sheet) -> str:
    """What kind of document it is.

    Raises:
        RefusedError: no row says so, or it is no document of the conversation
    """
    row = next((one for one in found if _text(one) == DOCUMENT), None)
    if row is None:
        one = None if sheet.name else 1
        spot = Spot(sheet.name, 1, line=one, at=one)
        raise RefusedError(*sheet.said, fault("table-section", spot, expected=f"a row {DOCUMENT}"))
    box, told = row.boxes.get("format"), list[Finding]()
    named = None if box is None else value_of(box, TEXT, told.append)
    if isinstance(named, str) and named in DOCUMENTS:
        return named
    made = sound_document(json.dumps({"format": named} if box else {}).encode())
    stops = told or (made.findings if isinstance(made, Report) else ())
    raise RefusedError(*sheet.said, *(at(one, row.spot if box is None else box.spot) for one in stops))


def _text(record: Record) -> str | None:
    """What a row says of its section, as it stands."""
    box = record.boxes.get(SECTION)
    return None if box is None else box.cell.text


def _at(finding: Finding, made: Made) -> Finding:
    """A finding about the document, at its cell; one about what was a date in the spreadsheet says that."""
    spot = made.spot(finding.pointer, finding.facts.get("about") == "name")
    holder, box = made.box(finding.pointer)
    if finding.rule in _TURNED and box and box.spot.header not in _DATES and looks(box.cell.text) == "a date":
        finding = replace(finding, rule="table-date", pointer=holder, facts={"found": "a date"})
    return finding if spot is None else at(finding, spot)
