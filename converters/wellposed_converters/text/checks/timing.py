"""When something starts, as a condition says it: "from the third aligner on", "before stage 4"."""

from __future__ import annotations

import re
from functools import cache

from wellposed_converters.text.checks.data import data
from wellposed_converters.text.clause import Clause


@cache
def _patterns() -> dict[str, re.Pattern[str]]:
    words = {name: text for name, text in data()["timing"].items() if name != "ordinals"}
    return {name: re.compile(rf"\b{text}\b", re.IGNORECASE) for name, text in words.items()}


def is_timing(clause: Clause) -> bool:
    """Whether its condition only says when."""
    return any(_step(clause, name) is not None for name in _patterns())


def starts(clause: Clause) -> int | None:
    """The first step at which it is, or may be, carried out."""
    first, after = _step(clause, "from"), _step(clause, "after")
    return first if first is not None else None if after is None else after + 1


def not_before(clause: Clause) -> int | None:
    """The first step at which a prohibition no longer holds."""
    return _step(clause, "before")


def _step(clause: Clause, name: str) -> int | None:
    found = _patterns()[name].search(clause.condition or "")
    return _number(found["n"]) if found else None


def _number(word: str) -> int | None:
    if word.isdecimal():
        return int(word)
    ordinals: list[str] = data()["timing"]["ordinals"]
    return ordinals.index(word.lower()) + 1 if word.lower() in ordinals else None
