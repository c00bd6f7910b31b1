"""Amounts put together from their values and the words around them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from wellposed_converters.text.quantities.frame import Frame, before, behind, certain, counted_by
from wellposed_converters.text.quantities.joins import Pair, between, from_to, pair
from wellposed_converters.text.quantities.kinds import Amount, FromTo
from wellposed_converters.text.quantities.lists import in_list
from wellposed_converters.text.quantities.value import Value, dotted_tooth, value
from wellposed_converters.text.quantities.words import Row, asks, phrases, words

Found = Amount | FromTo
BOUNDS: Final = {"at_most": "at_most", "at_most_open": "at_most", "at_least": "at_least", "either": "at_most"}


@dataclass(frozen=True)
class _Core:
    """What the bounding words bound: a lowest and a highest number, a unit, and the index behind it."""

    last: int
    low: Fraction | None
    high: Fraction | None
    value: Value
    unit: str | None
    why: str | None
    ranged: bool = False


def expression(row: Row, at: int) -> tuple[Found, int] | None:
    """The amount that begins at the token, and the index behind it."""
    first = before(row, at)
    sure = certain(row, at, bool(first))
    pairs = between(row, first.last, sure=sure) or from_to(row, first.last, sure=sure)
    if pairs is not None:
        return _pair(row, at, first, pairs, sure)
    bounded = bool(first.bounds) and not first.said & (
        words("context", "place_words") | words("context", "upper_words")
    )
    one = value(row, first.last, joined=bool(first), certain=sure or bounded)
    if one is None:
        return None
    sure = certain(row, at, bool(first), one.toothlike)
    tolerance = _tolerance(row, one)
    if tolerance is not None:
        return _amount(row, at, first, tolerance, sure)
    pairs = pair(row, one, sure=sure or bounded)
    return _pair(row, at, first, pairs, sure) if pairs else _single(row, at, first, one, sure)


def _pair(row: Row, at: int, first: Frame, pairs: Pair, sure: bool) -> tuple[Found, int]:
    framed = bool(first) or bool(behind(row, pairs.other.last))
    dotted = not sure and dotted_tooth(row, pairs.one) and dotted_tooth(row, pairs.other)
    core = _ranged(pairs, framed=bool(first.bounds) or (framed and pairs.form == "change"))
    if pairs.form == "change" and not (framed or dotted or core.why):
        return _change(row, at, pairs)
    return _amount(row, at, first, core, sure)


def _single(row: Row, at: int, first: Frame, one: Value, sure: bool) -> tuple[Found, int] | None:
    stroke = one.unit is None and row.norm(one.last) == "/" and row.any_sort(one.last + 1) == "number"
    if (not sure and in_list(row, one)) or stroke:
        return None
    return _amount(row, at, first, _Core(one.last, one.amount, one.amount, one, one.unit, one.why), sure)


def _ranged(pairs: Pair, *, framed: bool) -> _Core:
    one, other = pairs.one, pairs.other
    why = one.why or other.why or pairs.why or ("range-bounded" if framed else None)
    noun = other if other.noun else one
    return _Core(other.last, one.amount, other.amount, noun, one.unit or other.unit, why, ranged=True)


def _tolerance(row: Row, one: Value) -> _Core | None:
    """``2 ± 0.5 mm``, ``2 mm give or take 0.5``: a range; without the second number it is only about."""
    said = row.phrase(one.last + (row.norm(one.last) == ","), phrases("tolerance"))
    more = value(row, said[1], joined=True) if said else None
    if more is None or one.amount is None or more.amount is None:
        return None
    unit = one.unit or more.unit
    odd = (one.unit and more.unit and one.unit != more.unit) or more.amount > one.amount
    why = one.why or more.why or ("tolerance-of-what" if odd else None)
    return _Core(more.last, one.amount - more.amount, one.amount + more.amount, one, unit, why, ranged=True)


def _change(row: Row, at: int, pairs: Pair) -> tuple[Found, int]:
    unit = pairs.one.unit or pairs.other.unit
    first, second = (
        Amount(row.start(half.first), row.end(half.last), _float(half.amount), _float(half.amount), unit, "exact")
        for half in (pairs.one, pairs.other)
    )
    made = FromTo(
        row.start(at), second.end, replace(first, noun=pairs.one.noun), replace(second, noun=pairs.other.noun)
    )
    return made, pairs.other.last


def _amount(row: Row, at: int, first: Frame, core: _Core, sure: bool) -> tuple[Amount, int]:
    after = behind(row, core.last) if core.last < len(row.row) else Frame(core.last)
    bounds = {BOUNDS[name] for name in first.bounds | after.bounds}
    why = first.why or core.why or after.why or _why(row, first, core, after, bounds, sure)
    bound = "exact" if len(bounds) > 1 else next(iter(bounds), "exact")
    low, high = (None, None) if len(bounds) > 1 else (core.low, core.high)
    made = Amount(
        row.start(at),
        row.end(after.last),
        _float(low) if bound != "at_most" else None,
        _float(high) if bound != "at_least" else None,
        core.unit,
        "range" if core.ranged and bound == "exact" else bound,
        first.approx or after.approx or core.value.approx,
        "at_most_open" in first.bounds,
        core.value.noun,
        asks(why) if why else None,
        why,
        core.value.sign,
        _bare(row, core, sure) and not (first or after or why or core.ranged),
        within=bool(first.said & words("within", "words")),
        kept=bool(first.said & words("within", "kept")),
    )
    return made, after.last


def _float(number: Fraction | None) -> float | None:
    return None if number is None else float(number)


def _bare(row: Row, core: _Core, sure: bool) -> bool:
    found = core.value
    return found.plain and found.number.toothlike and not sure and not counted_by(row, core.last)


def _why(row: Row, first: Frame, core: _Core, after: Frame, bounds: set[str], sure: bool) -> str | None:
    """Doubts that only the words around a value raise."""
    if len(bounds) > 1:
        return "bounds-disagree"
    if "either" in first.bounds | after.bounds:
        return "either-way"
    if first.dotted and row.tight(core.value.first) and core.value.number.form == "integer":
        return "decimal-or-stop"
    if core.unit or sure or counted_by(row, core.last):
        return None
    if core.value.plain:
        return _lone_why(first, core, after)
    settled = bounds or first or after
    return "decimal-or-tooth" if dotted_tooth(row, core.value) and not settled else None


def _lone_why(first: Frame, core: _Core, after: Frame) -> str | None:
    """What a whole number without a unit may be besides, by the words around it."""
    if after.said & words("context", "minutes"):
        return "minimum-or-minutes"
    if not core.value.number.toothlike:
        return None
    if first.said & words("context", "upper_words"):
        return "maximum-or-maxillary"
    return "amount-or-tooth" if first.said & words("context", "place_words") else None


def merged(text: str, one: Found | None, other: Found) -> Amount | None:
    """``at least 1 mm and at most 2 mm`` as one range."""
    if not isinstance(one, Amount) or not isinstance(other, Amount):
        return None
    if (one.bound, other.bound) != ("at_least", "at_most") or one.noun != other.noun:
        return None
    apart = text[one.end : other.start].strip().casefold()
    same = one.unit is None or one.unit == other.unit
    if apart not in ("", ",", "and", "but", ", and", "/", "-", ", but") or not same or one.approx or other.approx:
        return None
    low, high = one.minimum, other.maximum
    crossed = low is not None and high is not None and low > high
    why = one.why or other.why or ("bounds-disagree" if crossed else None)
    return replace(
        other, start=one.start, minimum=low, bound="range", asks=asks(why) if why else None, why=why, bare=False
    )
