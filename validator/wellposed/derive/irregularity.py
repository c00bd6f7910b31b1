"""Irregularity of a front: the sum of five contact displacements, labiolingual, mm (Little 1975).

Only the labiolingual part counts, and the contacts are taken to stand half a width from the middle of the tooth.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from math import radians, sin
from typing import NamedTuple

from wellposed.kinematics.measured import Measured
from wellposed.model.prescription import Prescription
from wellposed.vocabulary.teeth import SIDES, along_arch, side_of, tooth_at

CONTACTS = 5
_MEASURES = ("displacement", "rotation", "tooth-width")


class Contact(NamedTuple):
    """One contact and how far its two points stand apart, mm, 0 or more."""

    name: str
    displacement: float


class Lacking(NamedTuple):
    """A tooth of the front and what is not stated of it: displacement, rotation or tooth-width."""

    tooth: str
    measure: str


def irregularity(displacements: Sequence[float]) -> float:
    """The sum of the five displacements of adjacent contact points, canine to canine, mm. ValueError for another count.

    Signs do not matter: each counts by its size.
    """
    if len(displacements) != CONTACTS:
        raise ValueError("a front has five contacts")
    return sum(abs(one) for one in displacements)


def front(arch: str) -> tuple[str, ...]:
    """Canine to canine, from the patient's right to left."""
    return along_arch([tooth_at(arch, side, number) for side in SIDES for number in (1, 2, 3)])


def offset(displacement: float, width: float, rotation: float, mesial: bool) -> float:
    """How far labially of the arch line a tooth's mesial or distal contact point stands, mm.

    displacement  of the tooth's middle, mm, labial +
    width         mesiodistal, mm
    rotation      deg, + turns the mesial surface towards the tongue
    """
    turned = width / 2 * sin(radians(rotation))
    return displacement - turned if mesial else displacement + turned


def contacts(values: Mapping[str, Mapping[str, float]], arch: str) -> tuple[Contact, ...]:
    """The five contacts of a front, from tooth measures by name (measure to tooth to value). KeyError if one lacks."""
    found = []
    for right, left in pairwise(front(arch)):
        apart = _facing(values, right, left) - _facing(values, left, right)
        found.append(Contact(f"{right}-{left}", abs(apart)))
    return tuple(found)


def _facing(values: Mapping[str, Mapping[str, float]], tooth: str, neighbour: str) -> float:
    """Where the surface of a tooth that faces this neighbour stands."""
    displacement, rotation, width = (values[measure][tooth] for measure in _MEASURES)
    mesial = side_of(tooth) != side_of(neighbour) or tooth[1] > neighbour[1]
    return offset(displacement, width, rotation, mesial)


def of_prescription(prescription: Prescription, arch: str) -> tuple[Contact, ...] | tuple[Lacking, ...]:
    """The contacts of a front as measured tooth by tooth, or everything that is not stated for them.

    A tooth whose displacement or rotation is not stated is not taken to stand straight.
    """
    measured = Measured(prescription)
    values = {measure: measured.tooth_values(measure) for measure in _MEASURES}
    lacking = tuple(
        Lacking(tooth, measure) for tooth in front(arch) for measure in _MEASURES if tooth not in values[measure]
    )
    return lacking or contacts(values, arch)


def begun(prescription: Prescription, arch: str) -> bool:
    """Whether a displacement or a rotation of a tooth of this front is measured at all."""
    measured = Measured(prescription)
    return any(tooth in measured.tooth_values(measure) for measure in _MEASURES[:2] for tooth in front(arch))
