"""What in the points should be looked at again, though it can be measured."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise
from math import degrees

from wellposed import norms
from wellposed.landmarks.mouth import Mouth
from wellposed.landmarks.movements import shared
from wellposed.landmarks.result import Doubt, Moved
from wellposed.landmarks.rigid import in_line, rigid
from wellposed.landmarks.vectors import Array
from wellposed.vocabulary.teeth import ARCHES, place

_LOOSE, _AS_ONE, _WENT, _ASIDE = "points.loose-fit", "points.as-one", "points.as-one-way", "points.faces-aside"
_MANY = 4
_ROUND = 90.0


def doubts_of(moment: str, mouth: Mouth) -> Iterator[Doubt]:
    """About one moment."""
    for tooth, angle in mouth.rotations.items():
        if abs(angle) > _ROUND:
            yield Doubt("turned-round", tooth, moment, angle)
    for tooth in mouth.teeth:
        if (least := min(mouth.rootward(tooth), default=0.0)) < 0:
            yield Doubt("upside-down", tooth, moment, -least)
    for arch in ARCHES:
        yield from _of_arch(arch, moment, mouth)


def _of_arch(arch: str, moment: str, mouth: Mouth) -> Iterator[Doubt]:
    """An arch that faces aside; neighbours in the other order, or with a place between them that has no points."""
    line = mouth.lines[arch]
    if line is not None and abs(aside := degrees(line.turned)) > norms.value(_ASIDE):
        yield Doubt("faces-aside", arch, moment, aside)
    row = [tooth for tooth in mouth.row(arch) if tooth in mouth.stands]
    for first, second in pairwise(row):
        behind = mouth.stands[first].along - mouth.stands[second].along
        if behind > 0:
            yield Doubt("out-of-order", f"{first}-{second}", moment, behind)
        elif _rank(second) - _rank(first) > 1:
            yield Doubt("places-without-points", f"{first}-{second}", moment, mouth.between(first, second))


def _rank(tooth: str) -> int:
    """Its place counted without a gap from right to left."""
    return place(tooth) - (place(tooth) > 0)


def doubts_of_values(moment: str, values: Iterable[tuple[str, str, float]]) -> Iterator[Doubt]:
    """About values, each with its measure and unit, that no mouth is likely to have."""
    for measure, unit, value in values:
        key = f"plausible.{unit}.{measure}"
        if not norms.value(f"{key}.least") <= value <= norms.value(f"{key}.most"):
            yield Doubt("not-plausible", measure, moment, value)


def doubts_between(before: Mouth, after: Mouth, moved: tuple[Moved, ...]) -> Iterator[Doubt]:
    """About the movement."""
    for one in moved:
        first, second = shared(one.tooth, before, after)
        if one.residual is None:
            continue
        if rigid(first, second).mirrored:
            yield Doubt("mirrored", one.tooth, amount=one.residual)
        elif one.residual > norms.value(_LOOSE):
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
    if went > norms.value(_WENT) and rigid(first, second).residual < norms.value(_AS_ONE):
        yield Doubt("moved-as-one", arch, amount=went)
