"""The depth of the lower curve of Spee from cusp tips."""

from __future__ import annotations

from wellposed.landmarks.mouth import Mouth
from wellposed.landmarks.result import Lack
from wellposed.landmarks.vectors import Array, middle
from wellposed.vocabulary.landmarks import crown_point
from wellposed.vocabulary.teeth import LOWER, SIDES, tooth_at

_CENTRALS = tuple(tooth_at(LOWER, side, 1) for side in SIDES)
_BETWEEN = (4, 5, 6)
_LAST = 7


def spee(mouth: Mouth) -> float | tuple[Lack, ...]:
    """The mean of both sides, mm: how deep, on each, the deepest cusp tip from first premolar to first molar lies under
    the straight line from the edges of the centrals to the cusp tip of the second molar, seen from the side."""
    teeth = [*_CENTRALS, *(tooth_at(LOWER, side, number) for side in SIDES for number in (*_BETWEEN, _LAST))]
    lacks = mouth.lacking((tooth, crown_point(tooth)) for tooth in teeth)
    if lacks:
        return lacks
    front = middle([mouth.crown(tooth) for tooth in _CENTRALS])
    depth = sum(_of_side(mouth, side, front) for side in SIDES) / len(SIDES)
    return depth if depth >= 0 else (Lack(LOWER, "reversed"),)


def _of_side(mouth: Mouth, side: str, front: Array) -> float:
    back = mouth.crown(tooth_at(LOWER, side, _LAST))
    tips = [mouth.crown(tooth_at(LOWER, side, number)) for number in _BETWEEN]
    return max(_under(front, back, tip) for tip in tips)


def _under(front: Array, back: Array, tip: Array) -> float:
    """How far a tip lies under the line between two points, seen from the side."""
    share = (front[1] - tip[1]) / (front[1] - back[1])
    return float(front[2] + share * (back[2] - front[2]) - tip[2])
