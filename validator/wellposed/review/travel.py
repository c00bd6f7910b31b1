"""The way of a tooth through a setup: aligner by aligner, the largest step, there and back; and its sense in words."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Mapping
from itertools import accumulate
from operator import sub
from typing import NamedTuple

from wellposed.review.plan import Plan
from wellposed.vocabulary.motions import MOTIONS, Motion, Variable
from wellposed.vocabulary.teeth import UPPER, arch_of, is_canine, is_incisor
from wellposed.vocabulary.terms import Arch

_ROUNDING = 1e-6
"""What differences of hundredths may be off by."""
JAWS: tuple[Arch, ...] = ("upper", "lower")


class Way(NamedTuple):
    """Where a tooth stands in one variable, from the start on.

    aligners  in order; the first is 0, the start
    places    the movement from the start after each, mm or deg; the first is 0.0
    """

    aligners: tuple[int, ...]
    places: tuple[float, ...]

    @property
    def last(self) -> int:
        """The last aligner of which the place is told."""
        return self.aligners[-1]

    @property
    def end(self) -> float:
        """The place after it."""
        return self.places[-1]


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
    found: dict[Variable, dict[str, dict[int, float]]] = {}
    for stage in sorted(plan.setup.stages or (), key=lambda one: one.aligner):
        for table in stage.movements:
            rows = found.setdefault(table.variable, {})
            for tooth, amount in table.values.items():
                rows.setdefault(tooth, {0: 0.0})[stage.aligner] = amount
    named = (((tooth, variable), places) for variable, rows in found.items() for tooth, places in rows.items())
    return {at: _to_the_end(plan, at, places) for at, places in named}


def _to_the_end(plan: Plan, at: tuple[str, Variable], places: dict[int, float]) -> Way:
    way = Way(tuple(places), tuple(places.values()))
    last, end = next(plan.aligners(jaw) for jaw in JAWS if jaw == arch_of(at[0])), plan.movement(*at)
    if last is None or last <= way.last or end is None:
        return way
    return Way((*way.aligners, last), (*way.places, end))


def place_after(way: Way, aligner: int) -> float:
    """Where a tooth stands after the last aligner up to this one of which it is stated, mm or deg."""
    return way.places[bisect_right(way.aligners, aligner) - 1]


def arrived(way: Way, within: float) -> tuple[int, float]:
    """The aligner from which on a tooth stands, but for no more than ``within``, where it stays; and its place then."""
    end = way.end
    apart = (n for n in range(len(way.places) - 1, -1, -1) if abs(way.places[n] - end) > within + _ROUNDING)
    number = next(apart, -1) + 1
    return way.aligners[number], way.places[number]


def largest(way: Way) -> Leg:
    """The leg with the largest step."""
    changes = list(map(sub, way.places[1:], way.places))
    spans = map(sub, way.aligners[1:], way.aligners)
    steps = [abs(change) / span for change, span in zip(changes, spans, strict=True)]
    number = steps.index(max(steps))
    return Leg(way.aligners[number], way.aligners[number + 1], changes[number])


def round_trip(way: Way) -> Trip | None:
    """The longest way there and back; None where a tooth never turns."""
    rising = sorted(way.places)
    if way.places in (tuple(rising), tuple(rising[::-1])):
        return None
    trips = (trip for sign in (1, -1) for trip in _trips(way, sign))
    return max(trips, key=lambda trip: trip.amount)


def _trips(way: Way, sign: int) -> Iterator[Trip]:
    """At each place of a way, how far it was gone to in this sense, and how far back from it later."""
    places = [sign * amount for amount in way.places]
    before = list(accumulate(places, min))
    least, ended = places[-1], way.last
    for aligner, place, lowest in reversed(list(zip(way.aligners, places, before, strict=True))):
        if place < least:
            least, ended = place, aligner
        yield Trip(sign, place - lowest, aligner, place - least, ended)


def motion_of(tooth: str, variable: Variable, amount: float) -> Motion:
    """The trade's name for a movement of a tooth in this sense."""
    sign = 1 if amount > 0 else -1
    fitting = [name for name, sense in MOTIONS.items() if sense == (variable, sign) and "root" not in name]
    front = is_incisor(tooth) or is_canine(tooth)
    unfit = ("buccal" if front else "labial", "lingual" if arch_of(tooth) == UPPER else "palatal")
    return next(name for name in fitting if not name.startswith(unfit) or len(fitting) == 1)
