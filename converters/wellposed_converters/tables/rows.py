"""A document to the rows of its table."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from wellposed.model.envelope import Envelope
from wellposed.reading.pointer import escape
from wellposed_converters.tables.cells import NONE, written
from wellposed_converters.tables.layout import KEYED, MANY, NUMBERS, SECTION, TEXT, Section, headers, layout


@dataclass(frozen=True, slots=True)
class Row:
    """A row: the pointer of its place, and its cells: header to kind and text."""

    pointer: str
    cells: Mapping[str, tuple[str, str]] = field(default_factory=dict)


def rows_of(document: Envelope) -> tuple[Row, ...]:
    """The rows of a document, in its order."""
    members = document.model_dump(exclude_unset=True, mode="json")
    return tuple(_rows(layout(members["format"]), members, "", ()))


def columns_of(rows: Sequence[Row]) -> tuple[str, ...]:
    """The headers of the columns that have anything in them, in their order."""
    used = {name for row in rows for name in row.cells}
    return tuple(name for name in headers() if name in used)


def _rows(section: Section, value: Any, pointer: str, numbers: tuple[str, ...]) -> Iterator[Row]:
    if section.form == KEYED:
        yield from _keyed(section, value, pointer, numbers)
    elif section.form == MANY:
        if not value:
            yield _row(section, pointer, (*numbers, NONE))
        for place, one in enumerate(value):
            yield from _whole(section, one, f"{pointer}/{place}", (*numbers, str(place + 1)))
    else:
        yield from _whole(section, value, pointer, numbers)


def _whole(section: Section, value: Any, pointer: str, numbers: tuple[str, ...]) -> Iterator[Row]:
    """The row of an object, and those of the sections within it."""
    yield _row(section, pointer, numbers, value)
    for one in section.inner:
        if one.member in value:
            yield from _rows(one, value[one.member], f"{pointer}/{one.member}", numbers)


def _keyed(section: Section, value: Any, pointer: str, numbers: tuple[str, ...]) -> Iterator[Row]:
    if not value:
        yield _row(section, pointer, numbers, key=NONE)
    for name, one in value.items():
        yield _row(section, f"{pointer}/{escape(name)}", numbers, one, name)


def _row(section: Section, pointer: str, numbers: tuple[str, ...], value: Any = None, key: str = "") -> Row:
    cells = {SECTION: (TEXT, section.name)}
    cells |= {name: ("number", number) for name, number in zip(NUMBERS, numbers, strict=False)}
    cells |= {section.key: (TEXT, key)} if key else {}
    found = {} if value is None else {one: _found(value, one.steps) for one in section.columns}
    cells |= {one.name: (one.kind, written(one.kind, it)) for one, (there, it) in found.items() if there}
    return Row(pointer, cells)


def _found(value: Any, steps: tuple[str, ...]) -> tuple[bool, Any]:
    """Whether there is a member, and what it holds; with no steps the value is meant."""
    for step in steps:
        if step not in value:
            return False, None
        value = value[step]
    return True, value
