"""What planned heights of the back teeth do to the bite in front."""

from __future__ import annotations

from typing import NamedTuple

from wellposed import norms
from wellposed.kinematics.hinge import Hinge
from wellposed.review.ended import Ended
from wellposed.review.result import Span
from wellposed.vocabulary.teeth import LOWER, SIDES, UPPER, tooth_at

_STOPS = (4, 5, 7)
GAP = "posterior-open-bite"


class Closed(NamedTuple):
    """How far the bite closes at the incisors, and the gap left at the back, mm; None: a height is not stated.

    lift    how far the jaw closes at the molars; the closing is that by the factor of the hinge
    gaps    the gap of each side, or one for both, as the hinge has them; none where it rests on nothing
    """

    closing: Span | None
    lift: Span | None = None
    gaps: tuple[Span, ...] = ()

    @property
    def gap(self) -> Span | None:
        """The mean of the sides."""
        ends = [[end or 0.0 for end in (one.low, one.high)] for one in self.gaps]
        return Span(*(sum(end) / len(end) for end in zip(*ends, strict=True))) if ends else None

    @property
    def lesser(self) -> Span | None:
        """That of the side with less of it: if it is no more than before, the bite still rests on that side."""
        return min(self.gaps, key=lambda one: one.low or 0.0, default=None)


def closed(ended: Ended, hinge: Hinge) -> Closed:
    """The jaw closes until the back teeth meet, or as far as the gap that the setup states at the back lets it.

    Premolars or second molars that are extruded further than the first molars may hold the bite open by as much. With
    no opposed first molars nothing is said to close.
    """
    if not hinge.rests:
        return Closed(Span(0.0, 0.0))
    heights = [_height(ended, side, 6) for side in SIDES if _opposed(ended, side, 6)]
    if any(height is None for height in heights):
        return Closed(None)
    known = [height for height in heights if height is not None]
    sides = known if len(hinge.gaps) > 1 else [sum(known) / len(known)]
    return _met(ended, sides, hinge.before, _held_open(ended, min(sides)))


def _met(ended: Ended, sides: list[float], before: float, more: float) -> Closed:
    """The side that meets first decides; the other is left with the difference as a gap."""
    shut = [max(0.0, before - height) if before > 0 else 0.0 for height in sides]
    lift = min(before - gap - height for gap, height in zip(shut, sides, strict=True))
    gaps = [before - height - lift for height in sides]
    mean = sum(gaps) / len(gaps)
    stated = _stated_gap(ended)
    if stated is not None:
        more = max(0.0, stated - mean)
    least = more if stated is not None else 0.0
    each = tuple(Span(gap + least, gap + more) for gap in gaps)
    return Closed(_spread(lift, Span(least, more)), Span(lift - more, lift - least), each)


def _spread(lift: float, grown: Span) -> Span:
    """Closing for every factor of the hinge and every growth of the gap."""
    factors = (norms.value("kinematics.hinge.least"), norms.value("kinematics.hinge.most"))
    ends = [k * (lift - more) for k in factors for more in (grown.low or 0.0, grown.high or 0.0)]
    return Span(min(ends), max(ends))


def _stated_gap(ended: Ended) -> float | None:
    predicted = ended.plan.setup.predicted or ()
    return next((one.value for one in predicted if one.measure == GAP), None)


def _held_open(ended: Ended, height: float) -> float:
    """How much other opposed back teeth are extruded, beyond what the first molars are, mm."""
    stops = (_height(ended, side, number) for side in SIDES for number in _STOPS if _opposed(ended, side, number))
    return max(0.0, max((stop for stop in stops if stop is not None), default=0.0) - max(0.0, height))


def _opposed(ended: Ended, side: str, number: int) -> bool:
    return all(ended.stands(tooth_at(arch, side, number)) for arch in (UPPER, LOWER))


def _height(ended: Ended, side: str, number: int) -> float | None:
    """Extrusion of an opposed pair, both teeth together."""
    upper, lower = (ended.plan.movement(tooth_at(arch, side, number), "vertical") for arch in (UPPER, LOWER))
    return None if upper is None or lower is None else upper + lower
