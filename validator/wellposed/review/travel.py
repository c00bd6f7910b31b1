"""The way of a tooth through a setup: aligner by aligner, the largest step, there and back; and its sense in words."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping
from itertools import accumulate, pairwise
from math import inf
from typing import NamedTuple

from wellposed.review.plan import Plan
from wellposed.vocabulary.motions import MOTIONS, Motion, Variable
from wellposed.vocabulary.teeth import UPPER, arch_of, is_canine, is_incisor
from wellposed.vocabulary.terms import Arch

Way = tuple[tuple[int, float], ...]
"""Aligner and movement from the start after it, mm or deg, in order; begins with (0, 0.0)."""

_START = (0, 0.0)
JAWS: tuple[Arch, ...] = ("upper", "lower")


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
    """The way of every tooth and variable on a path; it ends where the setup leaves the tooth, if that is stated."""
    found: dict[Variable, dict[str, list[tuple[int, float]]]] = {}
    for stage in sorted(plan.setup.stages or (), key=lambda one: one.aligner):
        for table in stage.movements:
            rows = found.setdefault(table.variable, {})
            for tooth, amount in table.values.items():
                rows.setdefault(tooth, [_START]).append((stage.aligner, amount))
    named = (((tooth, variable), way) for variable, rows in found.items() for tooth, way in rows.items())
    return {at: tuple(_to_the_end(plan, at, [*dict(way).items()])) for at, way in named}


def _to_the_end(plan: Plan, at: tuple[str, Variable], way: list[tuple[int, float]]) -> list[tuple[int, float]]:
    last = next(plan.aligners(jaw) for jaw in JAWS if jaw == arch_of(at[0]))
    if last is None or last <= way[-1][0] or at not in plan.moved:
        return way
    return [*way, (last, plan.moved[at])]


def place_after(way: Way, aligner: int) -> float:
    """Where a tooth stands after the last aligner up to this one of which it is stated, mm or deg."""
    return way[bisect_right(way, (aligner, inf)) - 1][1]


def largest(way: Way) -> Leg:
    """The leg with the largest step."""
    steps = [abs(after - before) / (last - first) for (first, before), (last, after) in pairwise(way)]
    number = steps.index(max(steps))
    (first, before), (last, after) = way[number : number + 2]
    return Leg(first, last, after - before)


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
