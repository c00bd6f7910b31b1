"""Values of a review in words: never a bare sign, at most two decimals."""

from __future__ import annotations

from wellposed.render import phrases
from wellposed.render.phrases import number
from wellposed.render.readback.measured import direction, meaning
from wellposed.render.review.words import TRAVELS
from wellposed.review.result import Span
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.motions import VARIABLES

__all__ = ["amount", "change", "is_variable", "measure_name", "reached", "rounded", "travel", "value"]


def rounded(number_: float) -> float:
    """To hundredths, without a minus before nought."""
    return round(number_, 2) + 0.0


def amount(size: float, unit: str) -> str:
    """``1.3 mm``, ``5.0°``, ``20 aligners``."""
    return phrases.amount(rounded(size), unit)


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


def value(name: str, size: float, unit: str) -> str:
    """A value of a measure: ``2.5 mm``, ``-1.0 mm (an open bite)``, ``1.0 mm to the patient's right``."""
    size = rounded(size)
    if size and direction(name, size) not in _SIZES:
        return f"{amount(abs(size), unit)} {direction(name, size)}"
    told = "" if size > 0 else meaning(name, size)
    return amount(size, unit) + (f" ({told})" if told else "")


_SIZES = ("more", "less")


def change(name: str, size: float, unit: str) -> str:
    """A change of a measure: ``1.3 mm less``, ``no change``."""
    size = rounded(size)
    return f"{amount(abs(size), unit)} {direction(name, size)}" if size else "no change"


def reached(name: str, span: Span, unit: str, *, is_change: bool) -> str:
    """What a measure comes to, or by how much it changes; two ends where it is not known better."""
    told = change if is_change else value
    ends = [told(name, end, unit) for end in (span.low, span.high) if end is not None]
    if span.low is None or span.high is None:
        return f"{'at most' if span.low is None else 'at least'} {ends[0]}" if ends else "anything"
    if ends[0] == ends[1]:
        return ends[0]
    plain = all(end == amount(size, unit) for end, size in zip(ends, (span.low, span.high), strict=True))
    return f"{number(rounded(span.low))} to {ends[1]}" if plain else f"{ends[0]} to {ends[1]}"
