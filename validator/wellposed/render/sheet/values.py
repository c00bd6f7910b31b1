"""The values of a measure in words: what stands beside each mark."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal, NamedTuple

from wellposed.render.phrases import number
from wellposed.render.readback.words import amount
from wellposed.render.sheet.gauges import Bounds, Gauge
from wellposed.vocabulary.measures import MEASURE_KINDS

__all__ = ["Told", "told_of"]

_MM = "mm"


class Told(NamedTuple):
    """A value, or the bounds of a clause, and its words; ``none``: there is nothing to mark."""

    what: Literal["today", "asked", "planned", "none"]
    low: float | None
    high: float | None
    words: str


def told_of(one: Gauge) -> Iterator[Told]:
    """Today, each clause, and the setup, in this order."""
    name = f"{MEASURE_KINDS[one.measure].words.split()[0]} " if "midline" in one.measure else ""
    if one.today is None:
        yield Told("none", None, None, f"{name}today: not stated")
    else:
        yield Told("today", one.today, one.today, f"{name}today {_value(one.measure, one.today)}")
    for bounds in one.asked:
        yield Told("asked", bounds.low, bounds.high, f"{name}{_asked(one.measure, bounds)}")
    if one.planned is not None:
        low, high = one.planned
        told = _rounded(one.measure, low) if number(low) == number(high) else f"{number(low)} to {number(high)} {_MM}"
        yield Told("planned", low, high, f"{name}planned {told}")
    for bounds in one.counted:
        change = _between(one.measure, bounds)
        yield Told("none", None, None, f"{name}counted on besides: a change of {change} ({bounds.clause})")


def _asked(measure: str, bounds: Bounds) -> str:
    verb = "kept" if bounds.kept else "asked"
    return f"{verb} {_between(measure, bounds)} ({bounds.clause})"


def _between(measure: str, bounds: Bounds) -> str:
    low, high = bounds.low, bounds.high
    if low is None or high is None:
        end = low if low is not None else high if high is not None else 0.0
        return f"{'at least' if low is not None else 'at most'} {_value(measure, end)}"
    if low == high:
        return _value(measure, low)
    sides = {_side(measure, end) for end in (low, high) if end}
    if len(sides) == 1 and "midline" in measure:
        near, far = sorted((abs(low), abs(high)))
        return f"{_plain(near)} to {_plain(far)} {_MM} {sides.pop()}"
    if "midline" in measure:
        return f"{_value(measure, low)} to {_value(measure, high)}"
    return f"{_plain(low)} to {_plain(high)} {_MM}"


def _value(measure: str, value: float) -> str:
    side = _side(measure, value)
    if "midline" in measure:
        return f"{_plain(abs(value))} {_MM}{f' {side}' if side else ''}"
    return f"{_plain(value)} {_MM}{f' ({side})' if side else ''}"


def _rounded(measure: str, value: float) -> str:
    """What was computed, to two decimals."""
    return _value(measure, round(value, 2) + 0.0)


def _side(measure: str, value: float) -> str:
    """What the sign of a value means; nothing where the number says it all."""
    if "midline" in measure:
        return "left" if value > 0 else "right" if value < 0 else ""
    if value >= 0:
        return ""
    return "open bite" if measure == "overbite" else "reverse"


def _plain(value: float) -> str:
    return amount(round(value, 6), _MM).removesuffix(f" {_MM}")
