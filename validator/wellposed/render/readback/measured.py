"""Measures and their values, what the sign of a value means beside it."""

from __future__ import annotations

from wellposed.render.readback.words import amount, pair
from wellposed.render.sides import direction, meaning
from wellposed.vocabulary.measures import MEASURE_KINDS, TOOTH_MEASURE_KINDS

__all__ = ["changed", "measure", "valued"]


def measure(name: str, two: tuple[str, ...] | None = None) -> str:
    """A measure's name in words, with the pair of teeth it is taken at."""
    kind = MEASURE_KINDS.get(name) or TOOTH_MEASURE_KINDS[name]
    return f"{kind.words} at {pair(two)}" if two else kind.words


def valued(name: str, value: float, unit: str) -> str:
    """``-1 mm (an open bite)``, ``2 mm (towards Class II)``, ``2.5 mm``."""
    return _with(amount(value, unit), meaning(name, value))


def changed(name: str, value: float, unit: str) -> str:
    """A change of a measure: ``-3 mm (less)``, ``1 mm (to the patient's left)``."""
    return _with(amount(value, unit), direction(name, value))


def _with(told: str, meaning: str) -> str:
    return f"{told} ({meaning})" if meaning else told
