"""The values of a measure in words: what stands beside each mark."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal, NamedTuple

from wellposed.render.amounts import bounded, changes, value, values
from wellposed.render.sheet.gauges import Bounds, Gauge
from wellposed.render.sides import sided
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.units import MM

__all__ = ["Told", "told_of"]


class Told(NamedTuple):
    """A value, or the bounds of a clause, and its words; ``none``: there is nothing to mark."""

    what: Literal["today", "asked", "planned", "none"]
    low: float | None
    high: float | None
    words: str


def told_of(one: Gauge) -> Iterator[Told]:
    """Today, each clause, and the setup, in this order; left and right are the patient's, as everywhere."""
    name = f"{MEASURE_KINDS[one.measure].words.split()[0]} " if "midline" in one.measure else ""
    for what, low, high, words in _told(one):
        yield Told(what, low, high, name + words.replace("to the patient's ", ""))


def _told(one: Gauge) -> Iterator[Told]:
    if one.today is None:
        yield Told("none", None, None, "today: not stated")
    else:
        yield Told("today", one.today, one.today, f"today {value(one.measure, one.today, MM)}")
    for bounds in one.asked:
        verb = "kept" if bounds.kept else "asked"
        yield Told("asked", bounds.low, bounds.high, f"{verb} {_between(one.measure, bounds)} ({bounds.clause})")
    if one.planned is not None:
        yield Told("planned", *one.planned, f"planned {values(one.measure, *one.planned, MM)}")
    for bounds in one.counted:
        change = changes(one.measure, bounds.low or 0.0, bounds.high or 0.0, MM)
        yield Told("none", None, None, f"counted on besides: {change} ({bounds.clause})")


def _between(measure: str, bounds: Bounds) -> str:
    low, high = bounds.low, bounds.high
    if sided(measure):
        return bounded(measure, low, high, MM)
    if low is not None and high is not None:
        return values(measure, low, high, MM)
    end = low if low is not None else high or 0.0
    return f"{'at least' if low is not None else 'at most'} {value(measure, end, MM)}"
