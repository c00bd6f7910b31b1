"""Where the order leaves the incisors' inclination, for the rules that look at it.

Travel without an ordered torque is taken as tipping: each mm turns the tooth by at least what it turns about its apex
(one over ``tooth-length``), and by at most ``kinematics.torque-per-advance``.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import degrees
from typing import NamedTuple

from wellposed.consistency.whole import Place
from wellposed.derive.inclination import Change, intersection, measure_bounds
from wellposed.model.clauses import KeepVariable
from wellposed.model.means import AnyMovement, IncisorTravel
from wellposed.rules.chart import Chart, Move
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import LOWER, UPPER, arch_of, is_incisor, is_primary, position

LOWER_ANGLE = "lower-incisor-to-mandibular-plane"
UPPER_ANGLES = ("upper-incisor-to-palatal-plane", "upper-incisor-to-sella-nasion")
PER_MM_MOST = "kinematics.torque-per-advance"
_DIGITS = 6


class End(NamedTuple):
    """An inclination now and at the end of the order, deg.

    low, high  the least and the most the orders bring
    clauses    ids of the clauses it comes from
    """

    measure: str
    present: float
    low: float
    high: float
    clauses: tuple[str, ...]


class Outward(NamedTuple):
    """Incisors that a clause moves or may move outwards: mm of travel, or deg of torque."""

    place: Place
    teeth: tuple[str, ...]
    travel: float
    torque: float


def teeth_in(chart: Chart, arch: str, number: int = 0) -> tuple[str, ...]:
    """The permanent incisors standing in an arch; of one number (1: centrals), or both."""
    line = chart.mouth.rows[arch].teeth
    return tuple(t for t in line if permanent_incisor(t) and number in (0, position(t)))


def permanent_incisor(tooth: str) -> bool:
    """Whether it is a permanent incisor."""
    return is_incisor(tooth) and not is_primary(tooth)


def per_mm(chart: Chart, tooth: str) -> float:
    """The least a permanent tooth tips per mm of its edge, deg/mm: about its apex."""
    return degrees(1 / chart.limit(f"tooth-length.{tooth}"))


def beyond_line(chart: Chart, move: Move, amount: float) -> float:
    """Travel of a tooth less its own way to the arch line, mm."""
    displaced = chart.tooth_values("displacement").get(move.tooth, 0.0)
    return max(0.0, amount - max(0.0, -move.sign * displaced))


def planned(chart: Chart, measure: str) -> End | None:
    """Where goals, keeps and ordered movements leave an inclination; None where it is not measured or not moved."""
    present = chart.value(measure)
    centrals = teeth_in(chart, UPPER if measure in UPPER_ANGLES else LOWER, 1)
    if present is None or not centrals:
        return None
    turned = [_turned(chart, tooth) for tooth in centrals]
    low, high = (present + sum(ends) / len(turned) for ends in ([t.low for t in turned], [t.high for t in turned]))
    ordered = Change(low, high, tuple(one for change in turned for one in change.clauses))
    end = intersection(ordered, measure_bounds(chart.rx, measure, present))
    ends = (_finite(end.low, end.high), _finite(end.high, end.low))
    return End(measure, present, *ends, end.clauses) if end.clauses else None


def _finite(bound: float, other: float) -> float:
    """A bound, or where a goal leaves it open the other one, without the noise of the last digits."""
    return round(bound if abs(bound) < float("inf") else other, _DIGITS)


def _turned(chart: Chart, tooth: str) -> Change:
    """The torque of one tooth: as ordered, else what ordered travel tips it by."""
    turned = list(chart.moved("torque", teeth=(tooth,)))
    if turned:
        move = max(turned, key=lambda one: one.reach)
        return _signed(move, move.sure, move.reach)
    for move in chart.moved("out", teeth=(tooth,)):
        least, most = (beyond_line(chart, move, amount) for amount in (move.sure, move.reach))
        held = _torque_kept(chart, tooth)
        return _signed(move, min(held, least * per_mm(chart, tooth)), min(held, most * chart.limit(PER_MM_MOST)))
    return Change(0.0, 0.0)


def _signed(move: Move, least: float, most: float) -> Change:
    low, high = sorted((move.sign * least, move.sign * most))
    return Change(low, high, (move.place.owner,))


def _torque_kept(chart: Chart, tooth: str) -> float:
    """Within what a keep holds the torque of a tooth, deg; infinite if none does."""
    kept = (p.part for p in chart.of("keep") if isinstance(p.part, KeepVariable))
    return min((k.within for k in kept if k.variable == "torque" and tooth in k.teeth), default=float("inf"))


# outwards, ordered or allowed


def outwards(chart: Chart, allowed: bool = True) -> Iterator[Outward]:
    """Every order, and every allowance if so asked, that moves incisors outwards beyond their line."""
    for place in chart.of("movements"):
        moves = [m for m in chart.moves if m.place == place and _proclines(m)]
        amounts = {m.tooth: _beyond(chart, m) for m in moves}
        yield from _outward(place, {tooth: amount for tooth, amount in amounts.items() if amount > 0}, moves)
    if allowed:
        yield from (one for place in chart.of("allow") for one in _permitted(chart, place))


def _proclines(move: Move) -> bool:
    return move.variable in ("out", "torque") and move.sign > 0 and permanent_incisor(move.tooth)


def _beyond(chart: Chart, move: Move) -> float:
    return beyond_line(chart, move, move.reach) if move.variable == "out" else move.reach


def _outward(place: Place, amounts: dict[str, float], moves: Iterable[Move]) -> Iterator[Outward]:
    if amounts:
        most = max(amounts.values())
        travels = any(move.variable == "out" for move in moves)
        yield Outward(place, tuple(amounts), most if travels else 0.0, 0.0 if travels else most)


def _permitted(chart: Chart, place: Place) -> Iterator[Outward]:
    part = place.part
    if isinstance(part, IncisorTravel) and part.use == "incisor-advance" and part.up_to > 0:
        teeth = tuple(filter(permanent_incisor, part.teeth or teeth_in(chart, part.arch)))
        yield Outward(place, teeth, part.up_to, 0.0)
    elif isinstance(part, AnyMovement) and part.up_to > 0:
        variable, sign = MOTIONS[part.motion]
        teeth = tuple(filter(permanent_incisor, part.teeth))
        if variable in ("out", "torque") and sign > 0 and teeth:
            travel = part.up_to if variable == "out" else 0.0
            yield Outward(place, teeth, travel, part.up_to - travel)


def of_lower(one: Outward) -> bool:
    """Whether lower incisors are among the teeth."""
    return any(arch_of(tooth) == LOWER for tooth in one.teeth)
