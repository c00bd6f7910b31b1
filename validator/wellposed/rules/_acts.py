"""Clauses that move teeth one way, ordered or allowed, each with the teeth it moves and how far they may go."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from typing import Any, NamedTuple

from wellposed.consistency.whole import Place
from wellposed.kinematics.means import allowance_opens
from wellposed.kinematics.openings import sensed
from wellposed.model.clauses import Movement
from wellposed.model.means import AnyMovement, ArchSlide, VerticalMovement
from wellposed.rules._declare import Told, said, told
from wellposed.rules.chart import Chart
from wellposed.vocabulary.motions import MOTIONS, Variable

_ROUNDING = 1e-6
"""What sums and differences of hundredths may be off by."""


class Act(NamedTuple):
    """A movement or an allowance, and what it does to some teeth.

    teeth   those of the teeth asked about that it moves
    amount  how far they may go by it, mm or deg: the upper bound, else the lower one
    """

    place: Place
    teeth: tuple[str, ...]
    amount: float

    def told(self, *clauses: str, **facts: Any) -> Told:
        """What is said of the clause, with the clause itself as ``asked`` and its ``teeth``."""
        asked = {"asked": said(self.place.part), "teeth": list(self.teeth)}
        return told(self.place.pointer, self.place.owner, *clauses, **asked, **facts)


def acts(chart: Chart, variable: Variable, sign: int, among: Collection[str]) -> Iterator[Act]:
    """The clauses that move some of these teeth in this sense by an amount of their own, in the order of the document.

    An advance, a widening or an extraction also moves teeth in other senses than its own; that is not counted.
    """
    for place in chart.of("movements", "allow"):
        moved = tuple(tooth for tooth in _moved(chart, place, variable, sign) if tooth in among)
        amount = amount_of(place)
        if moved and amount > 0:
            yield Act(place, moved, amount)


def amount_of(place: Place) -> float:
    """How far a movement or an allowance may go, mm or deg; 0 where it states no amount."""
    said = (place.said(member) for member in ("at_most", "up_to", "at_least"))
    return float(next((amount for amount in said if amount is not None), 0.0))


def above(amount: float, limit: float) -> bool:
    """Whether an amount lies above a limit by more than rounding."""
    return amount > limit + _ROUNDING


def anchored(chart: Chart) -> bool:
    """Whether bone screws may be used."""
    return any(place.said("auxiliary") == "bone-screw" for place in chart.allowed("auxiliary"))


def is_done(chart: Chart, *steps: str) -> bool:
    """Whether one of these steps of treatment is stated."""
    return any(place.said("step") in steps for place in chart.of("process"))


def _moved(chart: Chart, place: Place, variable: Variable, sign: int) -> Iterator[str]:
    part = place.part
    if isinstance(part, Movement | AnyMovement):
        if MOTIONS[part.motion] == (variable, sign):
            yield from part.teeth
    elif isinstance(part, VerticalMovement | ArchSlide):
        _, opened = allowance_opens(chart.mouth, part)
        yield from dict.fromkeys(o.at.tooth for o in opened if o.at == sensed(o.at.tooth, variable, sign))
