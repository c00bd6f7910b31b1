"""Rows to the places of a document they are about."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from wellposed.reading.nearest import nearest
from wellposed_converters.tables.cells import NONE
from wellposed_converters.tables.faults import Spot, Tell, fault
from wellposed_converters.tables.header import Record
from wellposed_converters.tables.layout import KEYED, MANY, NUMBERS, SECTION, Section
from wellposed_converters.tables.sheet import Box
from wellposed_converters.tables.values import count_of, text_of

_COUNT: Final = re.compile("[1-9][0-9]{0,3}", re.ASCII)


@dataclass(frozen=True, slots=True)
class Address:
    """Which object a row is about.

    section  its name
    numbers  of the entries, from 1
    key      of a named one, "" for none
    empty    whether the row says that a list, or all the names, are none
    """

    section: str
    numbers: tuple[int, ...] = ()
    key: str = ""
    empty: bool = False


@dataclass(frozen=True)
class Placed:
    """A row whose place is known, with the cells that say something of it, and the one that names it."""

    section: Section
    address: Address
    spot: Spot
    boxes: dict[str, Box]
    named: Spot | None = None


def placed(record: Record, known: dict[str, Section], tell: Tell) -> Placed | None:
    """The place of a row; None where it is told that it has none."""
    boxes = dict(record.boxes)
    box = boxes.pop(SECTION, None)
    name = None if box is None else text_of(box, tell)
    if box is None:
        tell(fault("table-section", record.spot, expected="a section in every row"))
    if name is None:
        return None
    section = known.get(name)
    if section is None:
        spot = record.spot if box is None else box.spot
        tell(fault("table-section", spot, nearest=nearest(name, tuple(known)), expected=sorted(known)))
        return None
    return _addressed(section, boxes, record.spot, tell)


def _addressed(section: Section, boxes: dict[str, Box], spot: Spot, tell: Tell) -> Placed | None:
    """The numbers and the name of a row, taken out of its cells."""
    numbers, empty = list[int](), False
    for place, name in enumerate(NUMBERS):
        wanted, box = place < section.depth, boxes.pop(name, None)
        text = _counted(box, name, wanted, spot, tell)
        if text is None:
            return None
        last = place == section.depth - 1 and section.form == MANY
        if wanted and text == NONE and last:
            empty = True
        elif wanted and _COUNT.fullmatch(text):
            numbers.append(int(text))
        elif wanted and box is not None:
            expected = f"a number counted from 1{f', or {NONE}' if last else ''}"
            tell(fault("table-entry", box.spot, expected=expected))
            return None
    return _keyed(section, tuple(numbers), empty, Placed(section, Address(""), spot, boxes), tell)


def _counted(box: Box | None, name: str, wanted: bool, spot: Spot, tell: Tell) -> str | None:
    """The text of a cell that counts, "" where none is wanted; None where that is told to be wrong."""
    if wanted == (box is not None):
        return count_of(box, tell) if box is not None else ""
    where = spot if box is None else box.spot
    tell(fault("table-entry", where, name=name, expected="a number" if wanted else "nothing in this section"))
    return None


def _keyed(section: Section, numbers: tuple[int, ...], empty: bool, row: Placed, tell: Tell) -> Placed | None:
    key, boxes, named = "", dict(row.boxes), None
    if section.form == KEYED:
        box = boxes.pop(section.key, None)
        if box is None:
            tell(fault("table-entry", row.spot, name=section.key, expected="a name in each row of this section"))
            return None
        text = text_of(box, tell)
        if text is None:
            return None
        empty, key, named = text == NONE, "" if text == NONE else text, box.spot
    if empty and boxes:
        tell(fault("table-entry", row.spot, found=f"{NONE} and more", expected="nothing else in this row"))
        return None
    return Placed(section, Address(section.name, numbers, key, empty), row.spot, boxes, named)
