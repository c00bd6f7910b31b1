"""Conditions in a segment: kept word for word, and whether the order itself decides them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from wellposed_converters.text.tables import read_table


@dataclass(frozen=True)
class Condition:
    """The words of a condition, and whether anybody can decide it from the order."""

    start: int
    end: int
    name: str
    decidable: bool
    words: str


@cache
def _patterns() -> tuple[tuple[str, re.Pattern[str], bool], ...]:
    return tuple(
        (name, re.compile(facts["pattern"], re.IGNORECASE | re.DOTALL), facts["decidable"])
        for name, facts in read_table(__package__, "conditions.toml").items()
    )


def find_conditions(text: str, start: int, end: int) -> tuple[Condition, ...]:
    """The conditions of ``text[start:end]``, not overlapping, the first to start first."""
    found = sorted(_found(text, start, end), key=lambda one: (one.start, -one.end))
    kept: list[Condition] = []
    for one in found:
        if not kept or one.start >= kept[-1].end:
            kept.append(one)
    return tuple(kept)


def _found(text: str, start: int, end: int) -> Iterator[Condition]:
    for name, pattern, decidable in _patterns():
        for match in pattern.finditer(text, start, end):
            stop = match.start() + len(match.group().rstrip(" .;,"))
            yield Condition(match.start(), stop, name, decidable, text[match.start() : stop])
