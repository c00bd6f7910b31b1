"""Every measure that landmark points tell: what each needs, and its formula. Signs are those of the vocabulary."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import partial
from math import atan2, degrees
from typing import NamedTuple

from wellposed import norms
from wellposed.derive.overbite import percent_of
from wellposed.landmarks.front import irregularity
from wellposed.landmarks.mouth import ARCH_LINE, Mouth, leftward
from wellposed.landmarks.result import Lack
from wellposed.landmarks.spee import spee
from wellposed.landmarks.vectors import Array, distance, middle
from wellposed.vocabulary.landmarks import DISTAL, FACE, GROOVE, GUM, MESIAL, MIDLINE, ROOT, crown_point
from wellposed.vocabulary.measures import MEASURES
from wellposed.vocabulary.teeth import ARCHES, LOWER, SIDES, UPPER, tooth_at
from wellposed.vocabulary.units import DEG, MM, PERCENT

TOUCHING = "space.touching"
Result = float | tuple[Lack, ...]
_WIDTHS = {
    "inter-canine-width": 3,
    "inter-first-premolar-width": 4,
    "inter-second-premolar-width": 5,
    "inter-first-molar-width": 6,
    "inter-second-molar-width": 7,
}
_ORDER: dict[str, int] = {name: number for number, name in enumerate(MEASURES)}


class Formula(NamedTuple):
    """How a measure is taken: its value, or all that is missing for it."""

    measure: str
    unit: str
    of: Callable[[Mouth], Result]


def formulas() -> tuple[Formula, ...]:
    """Every measure of a mouth that points can tell, in the order of the vocabulary; overbite in both its units."""
    made = [
        Formula("overbite", MM, overbite),
        Formula("overbite", PERCENT, overbite_percent),
        Formula("overjet", MM, overjet),
        Formula("interincisal-angle", DEG, interincisal),
        Formula("curve-of-spee", MM, spee),
        Formula("lower-incisor-crown-height", MM, lower_crown),
        *(one for arch in ARCHES for one in _of_arch(arch)),
        *(one for side in SIDES for one in _of_side(side)),
    ]
    return tuple(sorted(made, key=lambda one: _ORDER[one.measure]))


def _of_arch(arch: str) -> Iterable[Formula]:
    yield Formula(f"{arch}-midline", MM, partial(midline, arch))
    yield from (Formula(f"{arch}-{name}", MM, partial(width, arch, number)) for name, number in _WIDTHS.items())
    yield Formula(f"{arch}-crowding", MM, partial(room, arch, -1))
    yield Formula(f"{arch}-spacing", MM, partial(room, arch, 1))
    yield Formula(f"{arch}-arch-depth", MM, partial(depth, arch))
    yield Formula(f"{arch}-irregularity", MM, partial(irregularity, arch))


def _of_side(side: str) -> Iterable[Formula]:
    yield Formula(f"molar-relation-{side}", MM, partial(molar_relation, side))
    yield Formula(f"canine-relation-{side}", MM, partial(canine_relation, side))
    yield Formula(f"transverse-overlap-{side}", MM, partial(transverse, side))


# the front


def _centrals(mouth: Mouth, arch: str) -> list[str]:
    """The central incisors that have points; both, where neither has, so that they are named as missing."""
    both = [tooth_at(arch, side, 1) for side in SIDES]
    return [tooth for tooth in both if tooth in mouth.teeth] or both


def _fronts(mouth: Mouth, *landmarks: str) -> tuple[list[str], list[str], tuple[Lack, ...]]:
    """Upper and lower centrals, and what they lack of these landmarks."""
    upper, lower = _centrals(mouth, UPPER), _centrals(mouth, LOWER)
    return upper, lower, mouth.lacking((tooth, name) for tooth in (*upper, *lower) for name in landmarks)


def _edges(mouth: Mouth, teeth: Iterable[str]) -> Array:
    return middle([mouth.crown(tooth) for tooth in teeth])


def overbite(mouth: Mouth) -> Result:
    """How far the edges of the upper centrals reach below those of the lower, square to the occlusal plane, mm."""
    upper, lower, lacks = _fronts(mouth, "edge")
    return lacks or float(_edges(mouth, lower)[2] - _edges(mouth, upper)[2])


def overjet(mouth: Mouth) -> Result:
    """How far the edges of the upper centrals stand in front of those of the lower, mm."""
    upper, lower, lacks = _fronts(mouth, "edge")
    return lacks or float(_edges(mouth, upper)[1] - _edges(mouth, lower)[1])


def overbite_percent(mouth: Mouth) -> Result:
    """Overbite in percent of the crown of the most overlapped lower central."""
    over, crown = overbite(mouth), lower_crown(mouth)
    if isinstance(over, tuple) or isinstance(crown, tuple):
        lacks = (*(over if isinstance(over, tuple) else ()), *(crown if isinstance(crown, tuple) else ()))
        return tuple(dict.fromkeys(lacks))
    return percent_of(over, crown)


def lower_crown(mouth: Mouth) -> Result:
    """Clinical crown height of the lower central whose edge stands higher, mm."""
    lower = _centrals(mouth, LOWER)
    lacks = mouth.lacking((tooth, name) for tooth in lower for name in ("edge", GUM))
    return lacks or mouth.heights[max(lower, key=lambda tooth: float(mouth.crown(tooth)[2]))]


def interincisal(mouth: Mouth) -> Result:
    """The angle between the long axes of upper and lower centrals towards the tongue, seen from the side, deg.

    Each arch by the mean of its centrals' inclinations.
    """
    upper, lower, lacks = _fronts(mouth, "edge", ROOT)
    if lacks:
        return lacks
    means = (sum(_inclined(mouth, tooth) for tooth in teeth) / len(teeth) for teeth in (upper, lower))
    return 180.0 - sum(means)


def _inclined(mouth: Mouth, tooth: str) -> float:
    """How far the crown of an incisor leans forward from the square to the occlusal plane, deg."""
    _, y, z = mouth.crown(tooth) - mouth.teeth[tooth][ROOT]
    return degrees(atan2(y, abs(z)))


def midline(arch: str, mouth: Mouth) -> Result:
    """How far the middle between the mesial contacts of the centrals is left of the facial midline, mm."""
    centrals = [tooth_at(arch, side, 1) for side in SIDES]
    lacks = mouth.lacking([*((tooth, MESIAL) for tooth in centrals), (FACE, MIDLINE)])
    if lacks or mouth.midline is None:
        return lacks
    return float(middle([mouth.teeth[tooth][MESIAL] for tooth in centrals])[0] - mouth.midline[0])


# the arch


def width(arch: str, number: int, mouth: Mouth) -> Result:
    """Straight from cusp to cusp of the same tooth of both sides, mm."""
    teeth = [tooth_at(arch, side, number) for side in SIDES]
    lacks = mouth.lacking((tooth, crown_point(tooth)) for tooth in teeth)
    return lacks or distance(*(mouth.crown(tooth) for tooth in teeth))


def depth(arch: str, mouth: Mouth) -> Result:
    """From the middle between the centrals' mesial contacts, square to the line through the second molars' distal
    contacts, seen from above, mm."""
    front, back = ([tooth_at(arch, side, number) for side in SIDES] for number in (1, 7))
    lacks = mouth.lacking([*((tooth, MESIAL) for tooth in front), *((tooth, DISTAL) for tooth in back)])
    if lacks:
        return lacks
    right, left = (mouth.teeth[tooth][DISTAL][:2] for tooth in back)
    way, ahead = left - right, middle([mouth.teeth[tooth][MESIAL] for tooth in front])[:2] - right
    return abs(float(way[0] * ahead[1] - way[1] * ahead[0])) / distance(left, right)


def room(arch: str, sign: int, mouth: Mouth) -> Result:
    """The sum of an arch's gaps (sign 1), or of its overlaps (sign -1), along the arch line, mm.

    Neighbours as near as points can tell count as touching.
    """
    row = mouth.row(arch)
    if not row:
        return (Lack(arch, "tooth"),)
    lacks = mouth.lacking([*((t, name) for t in row for name in (MESIAL, DISTAL)), (arch, ARCH_LINE)])
    return lacks or sum(sign * one for one in mouth.room(arch).values() if sign * one > norms.value(TOUCHING))


# upper against lower


def molar_relation(side: str, mouth: Mouth) -> Result:
    """How far the upper first molar's mesiobuccal cusp is mesial of the lower one's buccal groove, mm."""
    return _ahead(mouth, (tooth_at(UPPER, side, 6), "cusp"), (tooth_at(LOWER, side, 6), GROOVE))


def canine_relation(side: str, mouth: Mouth) -> Result:
    """How far the upper canine's cusp is mesial of the lower one's distal contact point, mm."""
    return _ahead(mouth, (tooth_at(UPPER, side, 3), "cusp"), (tooth_at(LOWER, side, 3), DISTAL))


def transverse(side: str, mouth: Mouth) -> Result:
    """How far the upper first molar's mesiobuccal cusp is buccal of the lower one's, square to the lower line, mm."""
    upper, lower = (tooth_at(arch, side, 6) for arch in ARCHES)
    lacks = mouth.lacking([(upper, "cusp"), (lower, "cusp"), (LOWER, ARCH_LINE)])
    line = mouth.lines[LOWER]
    return lacks if line is None or lacks else line.stand(mouth.crown(upper)).off - line.stand(mouth.crown(lower)).off


def _ahead(mouth: Mouth, upper: tuple[str, str], lower: tuple[str, str]) -> Result:
    """How far the upper point is mesial of the lower one, both brought to the lower arch line."""
    lacks = mouth.lacking([upper, lower, (LOWER, ARCH_LINE)])
    line = mouth.lines[LOWER]
    if line is None or lacks:
        return lacks
    ends = [line.stand(mouth.teeth[tooth][name]).along for tooth, name in (upper, lower)]
    return (ends[0] - ends[1]) * leftward(upper[0])
