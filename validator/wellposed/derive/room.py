"""How much room along its arch a movement of teeth makes, by the geometry of the model."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wellposed.kinematics.arch import ArchLine
from wellposed.kinematics.mouth import ArchRow
from wellposed.vocabulary.teeth import RIGHT, side_of

Travel = Mapping[str, float]


class Moved(NamedTuple):
    """Travel of teeth, mm: outwards +, and along the arch, mesial +."""

    out: Travel
    along: Travel


def outwards(teeth: Iterable[str], amount: float = 1.0) -> Moved:
    """Each of these teeth ``amount`` mm labially or buccally."""
    return Moved(dict.fromkeys(teeth, amount), {})


def mesially(teeth: Iterable[str], amount: float = 1.0) -> Moved:
    """Each of these teeth ``amount`` mm mesially."""
    return Moved({}, dict.fromkeys(teeth, amount))


def apart(row: ArchRow, line: ArchLine, teeth: Iterable[str], width: float = 1.0) -> Moved:
    """Each of these teeth straight to its side, so that a pair of them stands ``width`` mm further apart."""
    out, along = {}, {}
    for tooth in teeth:
        face = line.facings[row.initial.index(tooth)]
        out[tooth] = abs(face.out_x) * width / 2
        along[tooth] = -abs(face.along_x) * width / 2
    return Moved(out, along)


def room(row: ArchRow, line: ArchLine, moved: Moved) -> float:
    """Room that the movement makes in all, mm; less than 0 where it takes room.

    Summed over the contacts between the teeth that stay, as the model counts it: ``out`` through the geometry of the
    arch, travel along it one to one.
    """
    return sum(_at(row, line, contact.first, contact.second, moved) for contact in row.contacts)


def _at(row: ArchRow, line: ArchLine, first: str, second: str, moved: Moved) -> float:
    loses, gains = line.chord(row.initial.index(first), row.initial.index(second))
    across = gains * moved.out.get(second, 0.0) - loses * moved.out.get(first, 0.0)
    return across + _slide(second, moved) - _slide(first, moved)


def _slide(tooth: str, moved: Moved) -> float:
    """Travel along the arch, to the patient's left +."""
    mesial = moved.along.get(tooth, 0.0)
    return mesial if side_of(tooth) == RIGHT else -mesial
