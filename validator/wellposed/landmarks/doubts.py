"""What in the points should be looked at again, though it can be measured."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from wellposed.landmarks.mouth import Mouth
from wellposed.landmarks.movements import shared
from wellposed.landmarks.result import Doubt, Moved
from wellposed.landmarks.rigid import in_line, rigid
from wellposed.landmarks.vectors import Array
from wellposed.vocabulary.teeth import ARCHES

LOOSE = 0.5
"""From this residual on, mm, points cannot be the same places of one tooth."""
AS_ONE = 0.05
"""Up to this residual, mm, a whole arch has moved as one piece ..."""
GOING = 0.3
"""... if it went at least so far, mm in the mean."""
_MANY = 4
_ROUND = 90.0


def doubts_of(moment: str, mouth: Mouth) -> Iterator[Doubt]:
    """About one moment."""
    for tooth, angle in mouth.rotations.items():
        if abs(angle) > _ROUND:
            yield Doubt("turned-round", tooth, moment, angle)
    for arch in ARCHES:
        row = [tooth for tooth in mouth.row(arch) if tooth in mouth.stands]
        for first, second in pairwise(row):
            behind = mouth.stands[first].along - mouth.stands[second].along
            if behind > 0:
                yield Doubt("out-of-order", f"{first}-{second}", moment, behind)


def doubts_between(before: Mouth, after: Mouth, moved: tuple[Moved, ...]) -> Iterator[Doubt]:
    """About the movement."""
    for one in moved:
        first, second = shared(one.tooth, before, after)
        if one.residual is None:
            continue
        if rigid(first, second).mirrored:
            yield Doubt("mirrored", one.tooth, amount=one.residual)
        elif one.residual > LOOSE:
            yield Doubt("loose-fit", one.tooth, amount=one.residual)
    for arch in ARCHES:
        yield from _as_one(arch, before, after)


def _as_one(arch: str, before: Mouth, after: Mouth) -> Iterator[Doubt]:
    """An arch of several teeth that went somewhere without any of them moving against the others."""
    teeth = [tooth for tooth in before.row(arch) if tooth in after.teeth]
    first: list[Array] = []
    second: list[Array] = []
    for tooth in teeth:
        earlier, later = shared(tooth, before, after)
        first, second = [*first, *earlier], [*second, *later]
    if len(teeth) < _MANY or in_line(first):
        return
    went = sum(float(((b - a) @ (b - a)) ** 0.5) for a, b in zip(first, second, strict=True)) / len(first)
    if went > GOING and rigid(first, second).residual < AS_ONE:
        yield Doubt("moved-as-one", arch, amount=went)
