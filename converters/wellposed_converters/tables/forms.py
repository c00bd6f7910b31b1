"""The two forms of the long table."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import Final

from wellposed.formats import Carried, Form, Loss, Written
from wellposed.model.envelope import Envelope
from wellposed_converters.tables.cells import escaped
from wellposed_converters.tables.faults import RULES
from wellposed_converters.tables.reading import read
from wellposed_converters.tables.rows import Row, columns_of, rows_of
from wellposed_converters.tables.separated import MOST_CHARACTERS, MOST_ROWS, separated, spelled

MOST_IN_WORKBOOK: Final = 32_767
"""Characters in a cell of a workbook, by the specification of the programs that open them."""
Fill = Callable[[Sequence[Row], Sequence[str], str], bytes]


def _one(documents: Sequence[Envelope], fill: Fill, most: int) -> Written:
    """One document as a table. A row that does not fit is left out and listed; a table that is too long is none.

    Only the content of an extension can be that long.

    Raises:
        ValueError: not just one document
    """
    (document,) = documents
    rows = rows_of(document)
    if len(rows) > MOST_ROWS:
        return Written(b"", (Loss("", "too-many-rows", str(MOST_ROWS)),))
    left = {row.pointer for row in rows if any(len(escaped(text)) > most for _, text in row.cells.values())}
    kept = [row for row in rows if row.pointer not in left]
    name = str(getattr(document, "format", "")).rpartition("/")[2]
    losses = tuple(Loss(pointer, "too-long-for-a-cell", f"more than {most} characters") for pointer in sorted(left))
    return Written(fill(kept, columns_of(kept), name), losses)


def _separated(rows: Sequence[Row], columns: Sequence[str], _name: str) -> bytes:
    lines = ([row.cells[column][1] if column in row.cells else "" for column in columns] for row in rows)
    return spelled([list(columns), *lines])


def _filled(rows: Sequence[Row], columns: Sequence[str], name: str) -> bytes:
    from wellposed_converters.tables.filling import filled  # noqa: PLC0415 - openpyxl only for a workbook

    return filled(rows, columns, name)


def _read_workbook(data: bytes) -> tuple[Carried, ...]:
    from wellposed_converters.tables.book import from_workbook  # noqa: PLC0415 - openpyxl only for a workbook

    return read(from_workbook, data)


CSV: Final = Form(
    name="csv",
    words="the long table in separated values (RFC 4180, UTF-8), one document",
    suffixes=(".csv",),
    read=partial(read, separated),
    write=partial(_one, fill=_separated, most=MOST_CHARACTERS),
    rules=RULES,
)
XLSX: Final = Form(
    name="xlsx",
    words="the long table in a workbook (ECMA-376), one document",
    suffixes=(".xlsx",),
    read=_read_workbook,
    write=partial(_one, fill=_filled, most=MOST_IN_WORKBOOK),
    rules=RULES,
)
