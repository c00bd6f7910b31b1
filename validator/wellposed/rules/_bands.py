"""Between which ends a measure is asked or kept, for the rules that look at several of them together."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf
from typing import NamedTuple

from wellposed.consistency.whole import Place
from wellposed.model.clauses import KeepMeasure, Reach
from wellposed.rules.chart import Chart

CLASS_I = "normal.relation.class-i"


class Band(NamedTuple):
    """The ends of a measure, in its unit; infinite where no clause bounds it.

    places  the clauses that bound it
    """

    low: float
    high: float
    places: tuple[Place, ...]


def band(chart: Chart, measure: str, kept: bool = True) -> Band:
    """Between what goals, and keeps if so asked, leave a measure at its usual teeth. Crossed where they disagree."""
    bounds = [(*ends, place) for place in chart.of("goals", "keep") for ends in _ends(chart, place, measure, kept)]
    low = max((low for low, _, _ in bounds), default=-inf)
    return Band(low, min((high for _, high, _ in bounds), default=inf), tuple(place for _, _, place in bounds))


def _ends(chart: Chart, place: Place, measure: str, kept: bool) -> Iterator[tuple[float, float]]:
    part = place.part
    if not isinstance(part, Reach | KeepMeasure) or part.measure != measure or part.pair:
        return
    if isinstance(part, Reach):
        yield (
            -inf if part.at_least is None else part.at_least,
            inf if part.at_most is None else part.at_most,
        )
        return
    present = chart.value(measure)
    if kept and present is not None:
        yield present - part.within, present + part.within


def is_class_i(chart: Chart, relation: Band) -> bool:
    """Whether a relation is asked or kept so that it takes in Class I, and does not reach half a unit beyond."""
    limit = chart.limit(CLASS_I)
    if not relation.places or not relation.low <= 0 <= relation.high:
        return False
    return relation.high <= limit or -limit <= relation.low
