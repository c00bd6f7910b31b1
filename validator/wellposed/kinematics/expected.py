"""Changes that are counted on but not ordered: free within their bounds."""

from __future__ import annotations

from wellposed.kinematics.mouth import ArchRow, Mouth
from wellposed.kinematics.rows import Setting, System
from wellposed.model.means import Expectation
from wellposed.vocabulary.contacts import normal

Columns = dict[str, list[int]]
Leanings = dict[str, list[Setting]]
"""Per expectation its columns held as near to no change as it allows."""


def expectations(mouth: Mouth, system: System, measures: Columns, leanings: Leanings) -> Columns:
    """Columns for what is counted on: of a measure into ``measures``; of crowding and spacing by contact, as room."""
    room: Columns = {}
    for clause in mouth.prescription.expect or ():
        first = len(system.column_low)
        if clause.measure.endswith(("crowding", "spacing")):
            _expected_room(clause, mouth, system, room)
        else:
            measures.setdefault(clause.measure, []).append(system.column(clause.at_least, clause.at_most))
        leanings[clause.id] = [_unmoved(system, column) for column in range(first, len(system.column_low))]
    return room


def _unmoved(system: System, column: int) -> Setting:
    """A column as near to 0 as its bounds let it be."""
    nearest = min(max(0.0, system.column_low[column]), system.column_high[column])
    return Setting(False, column, nearest, nearest)


def _expected_room(clause: Expectation, mouth: Mouth, system: System, room: Columns) -> None:
    """Less crowding is more room, more spacing too."""
    sign = -1 if clause.measure.endswith("crowding") else 1
    places = _expected_at(clause, mouth.rows[clause.measure.partition("-")[0]])
    low, high = sorted((sign * clause.at_least, sign * clause.at_most))
    parts = [system.column(min(low, 0.0), max(high, 0.0)) for _ in places]
    if parts:
        system.row(dict.fromkeys(parts, 1.0), low, high)
    for name, part in zip(places, parts, strict=True):
        room.setdefault(name, []).append(part)


def _expected_at(clause: Expectation, row: ArchRow) -> list[str]:
    """The contacts at which an expected change of room happens: those named, else where the teeth crowd or gap."""
    if clause.contacts:
        named = {normal(contact) for contact in clause.contacts}
        return [contact.name for contact in row.contacts if contact.name in named]
    crowded = [contact.name for contact in row.contacts if contact.crowding > 0 or contact.spacing > 0]
    return crowded or [contact.name for contact in row.contacts]
