"""Components of published indices, each by what is measured. Nothing is summed to a total.

The cut-offs are ``index.<scale>.<grade>.over`` (the grade begins above the number) and ``.from`` (at it) of the norms.
Sources print steps of a tenth ("up to 3.5", then "3.6 to 6.0"): a grade begins just above the top of the one before,
so 3.51 is graded as 3.6 is. Amounts are compared to nine decimals; nothing is rounded to a tenth first.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import floor
from types import MappingProxyType
from typing import NamedTuple

from wellposed import norms

_DECIMALS = 9
_WORDS = ("none", "one", "two", "three", "four", "five", "six", "seven")

SCALES: Mapping[str, str] = MappingProxyType(
    {
        "iotn-overjet-lips-competent": "one",
        "iotn-overjet-lips-incompetent": "one",
        "iotn-reverse-overjet": "one",
        "iotn-reverse-overjet-with-trouble": "one",
        "iotn-overbite": "one",
        "iotn-open-bite": "one",
        "iotn-contact-displacement": "one",
        "iotn-crossbite-shift": "one",
        "par-contact-displacement": "none",
        "par-overjet": "none",
        "par-overbite": "none",
        "par-open-bite": "none",
        "par-centreline": "none",
        "abo-overjet": "none",
        "abo-overbite": "none",
        "abo-crowding": "none",
        "abo-midline": "none",
        "irregularity": "perfect",
        "crowding": "mild",
    }
)
"""Every scale of steps, and its lowest grade as a word."""

GROWING = (
    "abo-lower-incisor",
    "abo-mandibular-plane-high",
    "abo-mandibular-plane-low",
    "abo-anb-high",
    "abo-anb-low",
)
"""Every scale that goes on growing, by ``index.per-degree`` points for each whole degree beyond where it begins."""


class Step(NamedTuple):
    """Where a grade begins: above the number, or (``at``) at it."""

    begins: float
    at: bool
    grade: str


def grade(scale: str, value: float) -> str | int:
    """The grade of an amount: a number where the grade is one, else its name, such as 2a or moderate.

    scale  a name of SCALES or GROWING
    value  the size of what is graded, in the unit of the scale's norms: an open bite of 2 mm is 2, not -2

    KeyError for an unknown scale; ValueError for a negative amount on a scale of sizes.
    """
    if scale in GROWING:
        return _points(scale, round(value, _DECIMALS))
    lowest = SCALES[scale]
    if value < 0:
        raise ValueError("an index grades the size of an amount, 0 or more")
    exact = round(value, _DECIMALS)
    reached = [step.grade for step in _steps(scale) if exact > step.begins or (step.at and exact == step.begins)]
    return _written(reached[-1] if reached else lowest)


def keys(scale: str) -> tuple[str, ...]:
    """The norms of a scale."""
    found = tuple(f"index.{scale}.{name}" for name in norms.family(f"index.{scale}"))
    return (*found, f"index.per-degree.{scale}") if scale in GROWING else found


def _steps(scale: str) -> list[Step]:
    """The steps of a scale, upwards."""
    found = []
    for name, begins in norms.family(f"index.{scale}").items():
        word, _, kind = name.rpartition(".")
        found.append(Step(round(begins, _DECIMALS), kind == "from", word))
    return sorted(found, key=lambda step: (step.begins, not step.at))


def _points(scale: str, value: float) -> int:
    """Points from where the scale begins, and more for each whole degree beyond."""
    ((name, begins),) = norms.family(f"index.{scale}").items()
    word, _, kind = name.rpartition(".")
    beyond = value - begins if kind == "from" else begins - value
    per_degree = int(norms.value(f"index.per-degree.{scale}"))
    return _WORDS.index(word) + per_degree * floor(beyond) if beyond >= 0 else 0


def _written(word: str) -> str | int:
    """``4`` for four, ``"2a"`` for two-a, other words as they are."""
    first, _, letter = word.partition("-")
    if first not in _WORDS:
        return word
    number = _WORDS.index(first)
    return f"{number}{letter}" if letter else number
