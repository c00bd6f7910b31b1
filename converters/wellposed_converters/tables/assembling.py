"""Rows with their places to the text of a document, and every place of it back to its cell."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from wellposed.reading.pointer import pointer
from wellposed_converters.tables.addresses import Address, Placed
from wellposed_converters.tables.faults import Spot, Tell, fault
from wellposed_converters.tables.layout import DOCUMENT, ENTRY, INNER, KEYED, MANY, Section
from wellposed_converters.tables.sheet import Box
from wellposed_converters.tables.values import Spelled, value_of


@dataclass(frozen=True)
class Made:
    """A document made of rows, and where in the table its parts stand, by pointer.

    text   the document as JSON
    spots  of its members, entries and sections
    names  of the names that are not members of the format
    boxes  the cells of its members
    """

    text: str
    spots: Mapping[str, Spot]
    names: Mapping[str, Spot]
    boxes: Mapping[str, Box]

    def spot(self, place: str, of_name: bool) -> Spot | None:
        """Where a pointer leads in the table; for one to nothing, the nearest place above it."""
        if of_name and place in self.names:
            return self.names[place]
        while place not in self.spots and place:
            place = place.rpartition("/")[0]
        return self.spots.get(place)

    def box(self, place: str) -> tuple[str, Box | None]:
        """The cell a value stands in, by itself or in a list; with its pointer."""
        holder = place if place in self.boxes else place.rpartition("/")[0]
        return holder, self.boxes.get(holder)


def assembled(rows: Iterable[Placed], root: Section, tell: Tell) -> Made:
    """The document. What is wrong is told."""
    by = _once(rows, tell)
    tree = _Tree(by, tell)
    value = tree.object(root, (), ())
    for address, row in by.items():
        if address not in tree.used:
            tell(fault("table-row-alone", row.spot, expected=_holder(row.section)))
    return Made(spelled(value), tree.spots, tree.names, tree.boxes)


def _once(rows: Iterable[Placed], tell: Tell) -> dict[Address, Placed]:
    found = dict[Address, Placed]()
    for row in rows:
        first = found.setdefault(row.address, row)
        if first is not row:
            tell(fault("table-row-twice", row.spot, first=f"row {first.spot.row}"))
    return found


def _holder(section: Section) -> str:
    outer = section.name.rpartition("/")[0] or DOCUMENT
    return f"a row {outer} that it belongs to"


class _Tree:
    """Objects and lists made of rows; which rows were used, and where everything stands."""

    def __init__(self, rows: dict[Address, Placed], tell: Tell) -> None:
        self.rows, self.tell = rows, tell
        self.used = set[Address]()
        self.spots = dict[str, Spot]()
        self.names = dict[str, Spot]()
        self.boxes = dict[str, Box]()
        self.lists = dict[tuple[str, tuple[int, ...]], list[Placed]]()
        for address, row in rows.items():
            self.lists.setdefault((address.section, _outer(row)), []).append(row)

    def object(self, section: Section, numbers: tuple[int, ...], steps: tuple[str | int, ...]) -> dict[str, Any]:
        """What the row of an object says, and all sections within it."""
        row = self.rows[Address(section.name, numbers)]
        made: dict[str, Any] = self.cells(row, steps)
        for one in section.inner:
            found = self.lists.get((one.name, numbers))
            if found:
                made[one.member] = self.member(one, found, (*steps, one.member))
        return made

    def member(self, section: Section, found: list[Placed], steps: tuple[str | int, ...]) -> Any:
        """A member made of the rows of its section."""
        if section.form == KEYED:
            return self.named(section, found, steps)
        if section.form == MANY:
            return self.many(section, found, steps)
        return self.object(section, found[0].address.numbers, steps)

    def many(self, section: Section, found: list[Placed], steps: tuple[str | int, ...]) -> list[Any]:
        none = self.none(found, steps)
        rows = sorted((row for row in found if not row.address.empty), key=lambda row: row.address.numbers)
        if none and rows:
            self.tell(fault("table-row-twice", rows[0].spot, first=f"row {none.spot.row}"))
        for expected, row in enumerate(rows, 1):
            if row.address.numbers[-1] != expected:
                header = ENTRY if section.depth == 1 else INNER
                self.tell(fault("table-entry-missing", row.spot, name=header, expected=f"an entry {expected}"))
                break
        return [self.object(section, row.address.numbers, (*steps, place)) for place, row in enumerate(rows)]

    def named(self, section: Section, found: list[Placed], steps: tuple[str | int, ...]) -> dict[str, Any]:
        none = self.none(found, steps)
        rows = [row for row in found if not row.address.empty]
        if none and rows:
            self.tell(fault("table-row-twice", rows[0].spot, first=f"row {none.spot.row}"))
        bare = not section.columns[0].steps
        return {row.address.key: self.cells(row, (*steps, row.address.key), bare) for row in rows}

    def none(self, found: list[Placed], steps: tuple[str | int, ...]) -> Placed | None:
        """The row that says there is none, if there is one."""
        row = next((row for row in found if row.address.empty), None)
        if row is not None:
            self.used.add(row.address)
            self.spots[pointer(steps)] = row.spot
        return row

    def cells(self, row: Placed, steps: tuple[str | int, ...], bare: bool = False) -> Any:
        """The members a row states; of a row that is a value itself, that value."""
        self.used.add(row.address)
        self.spots[pointer(steps)] = row.spot
        self.names |= {} if row.named is None else {pointer(steps): row.named}
        made = dict[str, Any]()
        for name, box in row.boxes.items():
            column = row.section.column(name)
            within = (name,) if column is None else column.steps
            self.spots[pointer((*steps, *within))] = box.spot
            self.boxes[pointer((*steps, *within))] = box
            value = box.cell.text if column is None else value_of(box, column.kind, self.tell)
            if bare and not within:
                return value
            _put(made, within, value)
        return made


def _outer(row: Placed) -> tuple[int, ...]:
    """The numbers of the object that a row's list, names or object belong to."""
    address = row.address
    return address.numbers[:-1] if row.section.form == MANY and not address.empty else address.numbers


def _put(made: dict[str, Any], steps: tuple[str, ...], value: Any) -> None:
    for step in steps[:-1]:
        made = made.setdefault(step, {})
    made[steps[-1]] = value


def spelled(value: Any) -> str:
    """A value as JSON."""
    if isinstance(value, Spelled):
        return value.text
    if isinstance(value, dict):
        return (
            "{"
            + ",".join(f"{json.dumps(name, ensure_ascii=False)}:{spelled(one)}" for name, one in value.items())
            + "}"
        )
    if isinstance(value, list):
        return "[" + ",".join(map(spelled, value)) + "]"
    return json.dumps(value, ensure_ascii=False)
