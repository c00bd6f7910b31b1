"""Rows to a workbook of one sheet: text stored as text, numbers as numbers, and the same bytes every time."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Sequence
from datetime import datetime
from typing import Any, Final

from openpyxl import Workbook
from openpyxl.styles import Alignment, Font
from openpyxl.utils import get_column_letter

from wellposed_converters.tables.cells import NONE, escaped
from wellposed_converters.tables.layout import NUMBER
from wellposed_converters.tables.rows import Row

_WRITER: Final = "wellposed"
_THEN: Final = (1980, 1, 1, 0, 0, 0)
_TEXT_FORMAT: Final = "@"
_MOMENT: Final = re.compile(rb"(<dcterms:modified[^>]*>)[^<]*")
_WIDEST, _NARROWEST = 40, 8
_WRAPPED: Final = Alignment(vertical="top", wrap_text=True)


def filled(rows: Sequence[Row], columns: Sequence[str], name: str) -> bytes:
    """The workbook: a header, then a row each, under the name of its sheet."""
    book = Workbook()
    sheet: Any = book.active
    sheet.title = name
    sheet.freeze_panes = "B2"
    for place, header in enumerate(columns, 1):
        _text(sheet.cell(1, place), header)
        sheet.cell(1, place).font = Font(bold=True)
        for number, row in enumerate(rows, 2):
            if header in row.cells:
                _cell(sheet.cell(number, place), *row.cells[header])
        _column(sheet, place, header, rows)
    book.properties.creator = _WRITER
    book.properties.created = datetime(*_THEN)
    stream = io.BytesIO()
    book.save(stream)
    return _settled(stream.getvalue())


def _cell(cell: Any, kind: str, text: str) -> None:
    if kind == NUMBER and text != NONE:
        cell.value = float(text) if "." in text else int(text)
    else:
        _text(cell, text)


def _text(cell: Any, text: str) -> None:
    """Text as text, whatever it looks like."""
    cell.value = escaped(text)
    cell.data_type = "s"
    cell.number_format = _TEXT_FORMAT
    if len(text) > _WIDEST:
        cell.alignment = _WRAPPED


def _column(sheet: Any, place: int, header: str, rows: Sequence[Row]) -> None:
    """Width, and in a column of text the format for what is typed below the last row."""
    found = [row.cells[header] for row in rows if header in row.cells]
    dimension = sheet.column_dimensions[get_column_letter(place)]
    dimension.width = min(max(_NARROWEST, len(header), *(len(text) for _, text in found)) + 2, _WIDEST)
    if all(kind != NUMBER for kind, _ in found):
        dimension.number_format = _TEXT_FORMAT


def _settled(data: bytes) -> bytes:
    """The same parts without the moment of writing."""
    stream = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as made, zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as packed:
        for entry in made.infolist():
            part = _MOMENT.sub(rb"\g<1>1980-01-01T00:00:00Z", made.read(entry))
            packed.writestr(zipfile.ZipInfo(entry.filename, _THEN), part, zipfile.ZIP_DEFLATED)
    return stream.getvalue()
