"""Aligners in steps: the usual step of a tooth, the stated one, and how many aligners an order takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import ceil
from typing import NamedTuple

from wellposed.consistency.whole import Place
from wellposed.model.clauses import Align, Movement
from wellposed.model.making import LargestStep, Order
from wellposed.rules.chart import Chart
from wellposed.vocabulary.motions import MOTIONS, Variable
from wellposed.vocabulary.teeth import is_canine, is_incisor, is_molar

_DISTANCES: Mapping[Variable, str] = {"along": "step.linear", "out": "step.linear", "vertical": "step.vertical"}
_ANY = "any tooth"
_NOISE = 1e-9
"""What a quotient of hundredths may be off by."""


def usual_step(tooth: str, variable: Variable) -> str:
    """The norm of the most one aligner is usually made to move this tooth."""
    if variable == "rotation":
        kind = "incisors" if is_incisor(tooth) else "canines" if is_canine(tooth) else "premolars"
        return f"step.rotation.{'molars' if is_molar(tooth) else kind}"
    return _DISTANCES.get(variable, f"step.{variable}")


def kind_of(key: str) -> str:
    """The teeth a usual step is for, in words."""
    return key.rpartition(".")[2] if key.startswith("step.rotation.") else _ANY


def stated_step(chart: Chart, tooth: str, variable: Variable) -> float | None:
    """The largest step stated for this tooth: of those that name it, else of those that name none. None: not stated."""
    named = [step.amount for step in _steps(chart, variable) if tooth in (step.teeth or ())]
    return min(named or [step.amount for step in _steps(chart, variable) if step.teeth is None], default=None)


def _steps(chart: Chart, variable: Variable) -> Iterator[LargestStep]:
    staging = chart.rx.staging
    return (step for step in (staging.largest_steps or () if staging else ()) if step.variable == variable)


def beyond(chart: Chart, step: LargestStep) -> tuple[str, ...]:
    """The norms a stated step passes on the teeth it is for; if it is for none in particular, the largest of them."""
    teeth = step.teeth or _ordered(chart, step)
    keys = dict.fromkeys(usual_step(tooth, step.variable) for tooth in teeth or ("11",))
    return tuple(key for key in keys if step.amount > chart.limit(key))


def _ordered(chart: Chart, step: LargestStep) -> tuple[str, ...]:
    """The teeth ordered to move so for which no other step is stated by name."""
    named = {tooth for other in _steps(chart, step.variable) for tooth in other.teeth or ()}
    return tuple(dict.fromkeys(move.tooth for move in chart.moved(step.variable) if move.tooth not in named))


class Link(NamedTuple):
    """A clause and the aligners its slowest tooth takes; ``key``: the usual step used, None if one is stated."""

    place: Place
    aligners: int
    key: str | None
    proven: bool = False


@dataclass(frozen=True)
class Chain:
    """Clauses that must be done one after the other."""

    links: tuple[Link, ...] = ()

    @property
    def aligners(self) -> int:
        """How many aligners all of it takes, one clause after the other."""
        return sum(link.aligners for link in self.links)

    @property
    def keys(self) -> tuple[str, ...]:
        """The usual steps it is reckoned with."""
        return tuple(dict.fromkeys(link.key for link in self.links if link.key))


def chains(chart: Chart) -> Iterator[Chain]:
    """Every clause that must hold with the longest chain of those done before it; a proven one alone is left out."""
    slowest = {place.owner: _slowest(chart, place) for place in chart.of("movements", "goals") if place.said("id")}
    links = {name: link for name, link in slowest.items() if link}
    before: dict[str, list[str]] = {}
    for place in chart.of("staging"):
        if isinstance(place.part, Order) and place.part.relation == "not-before-done":
            before.setdefault(place.part.then, []).append(place.part.first)
    for name in links:
        chain = _longest(name, links, before, ())
        if len(chain.links) > 1 or not chain.links[0].proven:
            yield chain


def _longest(name: str, links: Mapping[str, Link], before: Mapping[str, list[str]], seen: tuple[str, ...]) -> Chain:
    own = (links[name],) if name in links else ()
    firsts = [one for one in before.get(name, ()) if one not in (*seen, name)]
    led = [_longest(one, links, before, (*seen, name)) for one in firsts]
    return Chain((*max(led, key=lambda chain: chain.aligners, default=Chain()).links, *own))


def _slowest(chart: Chart, place: Place) -> Link | None:
    if place.said("strength") != "must":
        return None
    links = (_link(chart, place, *travel) for travel in _travels(chart, place))
    return max(links, key=lambda link: (link.aligners, not link.proven), default=None)


def _travels(chart: Chart, place: Place) -> Iterator[tuple[str, Variable, float]]:
    """Tooth, variable and amount planned: of a movement its floor and overcorrection, of alignment what is off line."""
    part = place.part
    if isinstance(part, Movement) and part.at_least:
        yield from ((tooth, MOTIONS[part.motion].variable, _planned(part)) for tooth in part.teeth)
    elif isinstance(part, Align):
        off = chart.tooth_values("displacement")
        yield from ((tooth, "out", abs(off[tooth])) for tooth in part.align if off.get(tooth))


def _planned(order: Movement) -> float:
    least, more = order.at_least or 0.0, order.overcorrection
    if more is None:
        return least
    return least + (least * more.value / 100 if more.unit == "percent" else more.value)


def _link(chart: Chart, place: Place, tooth: str, variable: Variable, amount: float) -> Link:
    key, step = usual_step(tooth, variable), stated_step(chart, tooth, variable)
    proven = step is not None and isinstance(place.part, Movement) and place.part.overcorrection is None
    aligners = ceil(amount / (step or chart.limit(key)) - _NOISE)
    return Link(place, aligners, key if step is None else None, proven)
