"""The way of a tooth through a setup: aligner by aligner, the largest step, there and back; and its sense in words."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import accumulate, pairwise
from typing import NamedTuple

from wellposed.review.plan import Plan
from wellposed.vocabulary.motions import MOTIONS, Motion, Variable
from wellposed.vocabulary.teeth import UPPER, arch_of, is_canine, is_incisor

Way = tuple[tuple[int, float], ...]
"""Aligner and movement from the start after it, mm or deg, in order; begins with (0, 0.0)."""

_START = (0, 0.0)


class Leg(NamedTuple):
    """The part of a way between two stated places.

    change  mm or deg, in the sense of its variable
    """

    first: int
    last: int
    change: float

    @property
    def each(self) -> float:
        """How far one aligner goes on the average of the leg, which is the least its largest step can be."""
        return abs(self.change) / (self.last - self.first)


class Trip(NamedTuple):
    """There and back: how far out by which aligner, how far back by which; ``sign`` is the sense of going out."""

    sign: int
    out: float
    turned: int
    back: float
    ended: int

    @property
    def amount(self) -> float:
        """What was gone for nothing, one way."""
        return min(self.out, self.back)


def ways(plan: Plan) -> Mapping[tuple[str, Variable], Way]:
    """The way of every tooth and variable that a path names; it ends where the setup leaves the tooth, if it says so."""
    found: dict[tuple[str, Variable], list[tuple[int, float]]] = {}
    for stages in plan.path.values():
        for aligner, placed in stages.items():
            for at, amount in placed.items():
                found.setdefault(at, [_START]).append((aligner, amount))
    return {at: tuple(_to_the_end(plan, at, way)) for at, way in found.items()}


def _to_the_end(plan: Plan, at: tuple[str, Variable], way: list[tuple[int, float]]) -> list[tuple[int, float]]:
    arch = arch_of(at[0])
    last = plan.aligners("upper" if arch == UPPER else "lower")
    if last is None or last <= way[-1][0] or at not in plan.moved:
        return way
    return [*way, (last, plan.moved[at])]


def place_after(way: Way, aligner: int) -> float:
    """Where a tooth stands after the last aligner up to this one of which it is stated, mm or deg."""
    return next(amount for number, amount in reversed(way) if number <= aligner)


def largest(way: Way) -> Leg:
    """The leg with the largest step."""
    legs = (Leg(first, last, after - before) for (first, before), (last, after) in pairwise(way))
    return max(legs, key=lambda leg: leg.each)


def round_trip(way: Way) -> Trip | None:
    """The longest way there and back; None where a tooth never turns."""
    places = [amount for _, amount in way]
    rising = sorted(places)
    if places in (rising, rising[::-1]):
        return None
    trips = (trip for sign in (1, -1) for trip in _trips(way, sign))
    return max(trips, key=lambda trip: trip.amount)


def _trips(way: Way, sign: int) -> list[Trip]:
    """At each place of a way, how far it was gone to in this sense, and how far back from it later."""
    places = [sign * amount for _, amount in way]
    before = list(accumulate(places, min))
    least, ends = places[-1], way[-1][0]
    trips = []
    for number in range(len(way) - 1, -1, -1):
        if places[number] < least:
            least, ends = places[number], way[number][0]
        trips.append(Trip(sign, places[number] - before[number], way[number][0], places[number] - least, ends))
    return trips


def motion_of(tooth: str, variable: Variable, amount: float) -> Motion:
    """The trade's name for a movement of a tooth in this sense."""
    sign = 1 if amount > 0 else -1
    fitting = [name for name, sense in MOTIONS.items() if sense == (variable, sign) and "root" not in name]
    front = is_incisor(tooth) or is_canine(tooth)
    unfit = ("buccal" if front else "labial", "lingual" if arch_of(tooth) == UPPER else "palatal")
    return next(name for name in fitting if not name.startswith(unfit) or len(fitting) == 1)
