"""Irregularity of a front from its contact points: five displacements, canine to canine, summed (Little 1975)."""

from __future__ import annotations

from itertools import pairwise
from math import hypot

from wellposed.derive.irregularity import front
from wellposed.derive.irregularity import irregularity as summed
from wellposed.landmarks.mouth import ARCH_LINE, Mouth
from wellposed.landmarks.result import Lack
from wellposed.vocabulary.landmarks import DISTAL, MESIAL
from wellposed.vocabulary.teeth import arch_of, place


def irregularity(arch: str, mouth: Mouth) -> float | tuple[Lack, ...]:
    """The sum of five displacements, mm."""
    row = front(arch)
    needs = [(tooth, name) for tooth in row for name in (MESIAL, DISTAL)]
    lacks = mouth.lacking([*needs, (arch, ARCH_LINE)])
    return lacks or summed([displacement(mouth, *neighbours) for neighbours in pairwise(row)])


def displacement(mouth: Mouth, first: str, second: str) -> float:
    """How far the contact points of neighbours are apart, seen from above, mm; the first stands to the right.

    Along the arch line only an overlap counts: a gap between teeth that are in line is no irregularity.
    """
    line = mouth.lines[arch_of(first)]
    if line is None:
        raise ValueError("an arch without a line")
    here, there = (line.stand(mouth.teeth[tooth][_facing(tooth, last)]) for tooth, last in ((first, 0), (second, 1)))
    return hypot(min(0.0, there.along - here.along), there.off - here.off)


def _facing(tooth: str, second: int) -> str:
    """The contact point towards the patient's left of the first tooth, towards the right of the second."""
    left_of_middle = place(tooth) > 0
    return MESIAL if left_of_middle == bool(second) else DISTAL
