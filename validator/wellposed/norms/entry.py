"""One number with its source, and its entry in a file read strictly: nothing unknown, nothing missing."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, Literal, get_args

Sure = Literal["published", "from memory", "common practice", "computed"]

UNITS = ("mm", "deg", "percent", "1", "mm/mm", "deg/mm", "mm/deg", "years", "months", "days", "hours")
GRADES = ("Grade A. ", "Grade B. ", "Grade C. ")
ENDS = (".least", ".most")

_WORDS = ("key", "unit", "sure", "note")
_NEEDED = frozenset(_WORDS)
_SURE = get_args(Sure)
_PLAIN = _NEEDED | {"value", "source"}
_ENDS_AND_SPREAD = ("low", "high", "spread")
_ALONE = _PLAIN | {*_ENDS_AND_SPREAD}
_TOGETHER = _NEEDED | {"values", "source"}


class NormError(ValueError):
    """A file of norms or a practice profile that cannot be used: where, which key, what is wrong."""

    def __init__(self, where: str, key: str, wrong: str) -> None:
        super().__init__(f"{where}: {key!r} {wrong}" if key else f"{where}: {wrong}")


@dataclass(frozen=True, slots=True)
class Norm:
    """One number.

    key      its name, dotted
    value    the number, in ``unit``
    unit     one of ``UNITS``
    sources  keys of the references it comes from; none for common practice
    sure     published (read in public text), from memory (the note grades it A, B or C),
             common practice (no source) or computed (the note says what from)
    note     what it is and how it was chosen
    low      least published, where a range is
    high     most published, where a range is
    spread   standard deviation, where one is published
    """

    key: str
    value: float
    unit: str
    sources: tuple[str, ...]
    sure: Sure
    note: str
    low: float | None = None
    high: float | None = None
    spread: float | None = None


def norms_of(where: str, entry: Mapping[str, Any]) -> Iterator[Norm]:
    """The norms of one entry of the file ``where``: a single one, or a family under one head."""
    if "values" in entry:
        yield from _together(where, entry)
    else:
        yield _alone(where, entry)


def number(where: str, key: str, amount: Any) -> float:
    """A finite number as a float."""
    if isinstance(amount, bool) or not isinstance(amount, int | float) or not math.isfinite(amount):
        raise NormError(where, key, f"must be a finite number, not {amount!r}")
    return float(amount)


def _number_if_any(where: str, key: str, amount: Any) -> float | None:
    return None if amount is None else number(where, key, amount)


def _alone(where: str, entry: Mapping[str, Any]) -> Norm:
    _check_members(where, entry, _ALONE, "value")
    norm = _described(where, entry, entry["value"])
    if entry.keys() <= _PLAIN:
        return norm
    low, high, spread = (_number_if_any(where, norm.key, entry.get(name)) for name in _ENDS_AND_SPREAD)
    return replace(norm, low=low, high=high, spread=spread)


def _together(where: str, entry: Mapping[str, Any]) -> Iterator[Norm]:
    _check_members(where, entry, _TOGETHER, "values")
    head = _described(where, entry, 0)
    if not isinstance(entry["values"], dict) or not entry["values"]:
        raise NormError(where, head.key, "must have a table of names and numbers as 'values'")
    for name, amount in entry["values"].items():
        for key, single in _singles(where, f"{head.key}.{name}", amount):
            yield Norm(key, number(where, key, single), head.unit, head.sources, head.sure, head.note)


def _singles(where: str, key: str, amount: Any) -> list[tuple[str, Any]]:
    """A number under its key, or a pair under ``key.least`` and ``key.most``."""
    if not isinstance(amount, list):
        return [(key, amount)]
    least_to_most = [number(where, key, single) for single in amount]
    if len(amount) != len(ENDS) or least_to_most != sorted(least_to_most):
        raise NormError(where, key, f"must be one number or a pair from least to most, not {amount!r}")
    return [(key + end, single) for end, single in zip(ENDS, amount, strict=True)]


def _check_members(where: str, entry: Mapping[str, Any], known: frozenset[str], amount: str) -> None:
    key = str(entry.get("key", ""))
    for unknown in sorted(entry.keys() - known):
        raise NormError(where, key, f"has an unknown member {unknown!r}")
    for missing in sorted((_NEEDED | {amount}) - entry.keys()):
        raise NormError(where, key, f"has no {missing!r}")
    for name in _WORDS:
        if not isinstance(entry[name], str) or not entry[name].strip():
            raise NormError(where, key, f"must have words as {name!r}")


def _described(where: str, entry: Mapping[str, Any], amount: Any) -> Norm:
    key, unit, sure, note = entry["key"], entry["unit"], entry["sure"], entry["note"]
    if unit not in UNITS:
        raise NormError(where, key, f"has an unknown unit {unit!r}; known are {', '.join(UNITS)}")
    if sure not in _SURE:
        raise NormError(where, key, f"is sure = {sure!r}; known are {', '.join(_SURE)}")
    if sure == "from memory" and not note.startswith(GRADES):
        raise NormError(where, key, "is from memory: its note must begin with its grade, such as 'Grade B. '")
    sources = _sources(where, key, sure, entry.get("source", []))
    return Norm(key, number(where, key, amount), unit, sources, sure, note)


def _sources(where: str, key: str, sure: str, source: Any) -> tuple[str, ...]:
    sources = tuple(source) if isinstance(source, list) else (source,)
    if not all(isinstance(name, str) and name for name in sources):
        raise NormError(where, key, f"must name its source in words, not {source!r}")
    if sure == "common practice" and sources:
        raise NormError(where, key, "is common practice, which has no source")
    if sure != "common practice" and not sources:
        raise NormError(where, key, "has no 'source'")
    return sources
