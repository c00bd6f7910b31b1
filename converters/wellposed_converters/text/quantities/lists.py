"""Whether a number without a unit stands in a row of numbers, where it is a tooth or a position and no amount."""

from __future__ import annotations

from typing import Final

from wellposed_converters.text.quantities.numbers import number
from wellposed_converters.text.quantities.value import Value, value
from wellposed_converters.text.quantities.words import DASHES, Row, words

JOINS: Final = DASHES | {"/", "~", "|", "to"}


def in_list(row: Row, one: Value) -> bool:
    """``14 and 24``, ``3-3``, ``11 21``, ``2, 3``; not ``13`` in ``13, 5 mm``."""
    if not one.plain:
        return False
    return _behind(row, one) or _before(row, one)


def _behind(row: Row, one: Value) -> bool:
    joined = _joins(row.norm(one.last))
    at = one.last + joined
    if row.broken(at) or row.sort(at) != "number":
        return False
    found = number(row, at)
    other = value(row, at, joined=True)
    measured = found is None or found.form != "integer" or (other is not None and other.unit is not None)
    return not measured and (joined or _alike(row, one.first, at))


def _before(row: Row, one: Value) -> bool:
    joined = _joins(row.norm(one.first - 1))
    at = one.first - 1 - joined
    if at < 0 or row.broken(at + 1):
        return False
    if row.any_sort(at) != "number":
        return False
    return joined or (at not in row.blocked and _alike(row, at, one.first))


def _joins(norm: str) -> bool:
    return norm in JOINS or norm in words("context", "lists")


def _alike(row: Row, one: int, other: int) -> bool:
    """Numbers of the same length side by side."""
    return len(row.norm(one)) == len(row.norm(other))
