"""What a setup makes of teeth and measures, in words: never a bare sign."""

from __future__ import annotations

from wellposed.render.amounts import amount, bounded, change, changes, rounded, value, values
from wellposed.render.review.words import TRAVELS
from wellposed.render.sides import sided
from wellposed.review.result import Span
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.motions import VARIABLES

__all__ = ["is_variable", "measure_name", "reached", "travel"]


def is_variable(what: str) -> bool:
    """Whether a thing compared is a movement of a tooth."""
    return what in VARIABLES


def travel(variable: str, moved: float, unit: str) -> str:
    """A planned movement in words: ``1.2 mm of intrusion``, ``not moved``."""
    size = rounded(moved)
    return TRAVELS[variable, 1 if size > 0 else -1].format(amount(abs(size), unit)) if size else "not moved"


def measure_name(name: str, where: str) -> str:
    """A measure's name, with the pair of teeth it is taken at."""
    words = MEASURE_KINDS[name].words
    return f"{words} at {where}" if where else words


def reached(name: str, span: Span, unit: str, *, is_change: bool) -> str:
    """What a measure comes to, or by how much it changes; two ends where it is not known better."""
    if span.low is None or span.high is None:
        end = span.low if span.low is not None else span.high
        if end is not None and sided(name):
            return bounded(name, span.low, span.high, unit)
        told = change if is_change else value
        return "anything" if end is None else f"{_ONE_END[span.low is None]} {told(name, end, unit)}"
    if not is_change:
        return values(name, span.low, span.high, unit)
    told_change = changes(name, span.low, span.high, unit)
    moves = sided(name) and (rounded(span.low) or rounded(span.high))
    return f"a change of {told_change}" if moves else told_change


_ONE_END = {True: "at most", False: "at least"}
