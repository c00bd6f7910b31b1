"""Two values joined: a range, a change from one to the other, or a doubt about which."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from wellposed_converters.text.quantities.numbers import TEN
from wellposed_converters.text.quantities.value import Value, fractional, value
from wellposed_converters.text.quantities.words import Row, phrases, words

COUNTED: Final = frozenset(("count", "day", "week", "month"))
"""Units that no tooth number stands before by accident."""


@dataclass(frozen=True)
class Pair:
    """Two values; ``form`` is range, change or asked, ``why`` what is asked."""

    one: Value
    other: Value
    form: str
    why: str | None = None


@dataclass(frozen=True)
class Join:
    """A joining sign or word: its kind, the index behind it, and on which sides space stands."""

    kind: str
    last: int
    before: bool = True
    behind: bool = True


def _join(row: Row, at: int) -> Join | None:
    for kind in ("arrow", "range", "or", "and"):
        found = row.phrase(at, phrases("join", kind))
        if found:
            return Join(kind, found[1])
    if row.dash(at):
        return Join("dash", at + 1, not row.tight(at), not row.tight(at + 1))
    return Join("slash", at + 1) if row.norm(at) == "/" else None


def pair(row: Row, one: Value, *, sure: bool) -> Pair | None:
    """What joins the value to the next, if anything does; ``sure`` where the first can only be an amount."""
    join = _join(row, one.last)
    other = value(row, join.last, joined=True, certain=sure) if join and not row.broken(join.last) else None
    if join is None or other is None or (one.unit and other.unit and one.unit != other.unit):
        return None
    if (one.noun and other.unit is None) or (other.plain and row.dash(other.last) and row.sort(other.last + 1)):
        return None
    form, why = RULES[join.kind](join, one, other, sure)
    return Pair(one, other, form, why) if form else None


def between(row: Row, at: int, *, sure: bool) -> Pair | None:
    """``between 0.2 and 0.3 mm``; two whole numbers without a unit are teeth."""
    if row.norm(at) not in words("around", "between"):
        return None
    one = value(row, at + 1, certain=sure)
    join = _join(row, one.last) if one else None
    other = value(row, join.last, joined=True, certain=sure) if join and join.kind in ("and", "range", "dash") else None
    if one is None or other is None or (one.unit and other.unit and one.unit != other.unit):
        return None
    if not (other.unit or fractional(one) or fractional(other) or sure):
        return None
    rises = _sizes(one, other) < 0
    return Pair(one, other, "range" if rises else "asked", None if rises else "equal-ends")


def from_to(row: Row, at: int, *, sure: bool) -> Pair | None:
    """``from 60 % to 30 %``; with a greater end it may as well be a range."""
    if row.norm(at) not in words("around", "from"):
        return None
    one = value(row, at + 1, certain=sure)
    join = _join(row, one.last) if one else None
    other = (
        value(row, join.last, joined=True, certain=sure) if join and join.kind in ("arrow", "range", "dash") else None
    )
    if one is None or other is None or (one.unit and other.unit and one.unit != other.unit):
        return None
    if not (one.unit or other.unit or fractional(one) or fractional(other) or sure):
        return None
    falls = _sizes(one, other) > 0 or (join is not None and join.kind == "arrow")
    return Pair(one, other, "change" if falls else "asked", None if falls else "range-or-change")


def _sizes(one: Value, other: Value) -> Fraction:
    return (one.amount or Fraction(0)) - (other.amount or Fraction(0))


def _settled(one: Value, other: Value, sure: bool) -> bool:
    """Whether the two are certain to be amounts together."""
    if one.unit and other.plain and not sure:
        return False
    return bool(other.unit or one.unit or fractional(one) or fractional(other) or sure)


Rule = tuple[str, str | None]


def _arrow(_join: Join, one: Value, other: Value, sure: bool) -> Rule:
    teeth = one.toothlike and other.plain and not sure
    return ("", None) if teeth else ("change", None)


def _to(_join: Join, one: Value, other: Value, sure: bool) -> Rule:
    if not _settled(one, other, sure):
        return "", None
    free = one.toothlike and not sure and other.unit not in COUNTED and not fractional(other)
    return _ordered(one, other, free, spaced=True, falling=("change", None))


def _dash(join: Join, one: Value, other: Value, sure: bool) -> Rule:
    if not _settled(one, other, sure):
        return "", None
    free = one.toothlike and not sure and other.unit not in COUNTED
    if join.before != join.behind and not one.unit:
        return ("", None) if free else ("asked", "dash")
    if free and _mirrored(one, other):
        return "asked", "range-or-tooth"
    spaced = join.before and join.behind
    return _ordered(one, other, free, spaced=spaced, falling=("asked", "range-or-change"))


def _mirrored(one: Value, other: Value) -> bool:
    """``12-22``, ``43-33``: tooth and fellow on the other side."""
    numbers = [int(half.amount or 0) for half in (one, other) if half.number.toothlike]
    return len({number % TEN for number in numbers}) == 1 and abs(numbers[0] - numbers[-1]) == TEN


def _ordered(one: Value, other: Value, free: bool, *, spaced: bool, falling: Rule) -> Rule:
    """``free``: the first may be a tooth that stands for itself."""
    if _sizes(one, other) == 0:
        return ("asked", "equal-ends") if one.unit or other.unit else ("", None)
    if _sizes(one, other) > 0:
        return ("", None) if free and spaced else falling
    return ("asked", "range-or-tooth") if free and spaced else ("range", None)


def _slash(_join: Join, one: Value, other: Value, _sure: bool) -> Rule:
    decimals = one.number.form == other.number.form == "decimal"
    return (
        ("range", None) if decimals and _sizes(one, other) < 0 else ("asked", "either-or") if decimals else ("", None)
    )


def _or(_join: Join, _one: Value, other: Value, sure: bool) -> Rule:
    return ("asked", "either-or") if other.unit or (sure and other.plain) or fractional(other) else ("", None)


def _and(_join: Join, one: Value, other: Value, _sure: bool) -> Rule:
    return ("asked", "two-amounts") if other.unit and one.unit is None else ("", None)


RULES: Final = {"arrow": _arrow, "range": _to, "dash": _dash, "slash": _slash, "or": _or, "and": _and}
