"""Numbers as people write them: in digits, decimals with a point or a comma, fractions, words."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from wellposed_converters.text.places.notation import from_fdi, from_universal
from wellposed_converters.text.quantities.words import DASHES, DECIMAL, Row, phrases, ratio, words

LONGEST: Final = 3
"""Digits of a number; more are a code or a year."""
TEN: Final = 10
TENS: Final = 20
"""From here on a unit may follow a number in words: twenty-four."""
LEAST: Final = 2
"""From here on two numbers in a row, with a stroke between them, may be a range instead of a fraction."""
BEFORE: Final = frozenset("(<>≤≥=~≈:;±[\"'*@|") | DASHES
"""Signs that may touch a number from before."""
BEHIND: Final = frozenset("|+#'_\\&\u2019⏌⎿⏋⎾┘└┘┐┌⏊⏉┴┬┼")
"""Signs that make a number before them something else."""


@dataclass(frozen=True)
class Number:
    """``form``: integer, decimal, fraction, word, share, chain (a date or a list) or vague; ``why``: what is odd."""

    first: int
    last: int
    value: Fraction | None
    form: str
    why: str | None = None
    comma: bool = False

    @property
    def toothlike(self) -> bool:
        """Whether it is written as a tooth can be."""
        return self.form == "integer" and self.value is not None and may_be_tooth(int(self.value))


def may_be_tooth(number: int) -> bool:
    """Whether any numbering has it."""
    return bool(from_fdi(number) or from_universal(number))


def number(row: Row, at: int) -> Number | None:
    """The number that begins at the token."""
    for reader in READERS:
        found = reader(row, at)
        if found:
            return found
    return None


def _digits(row: Row, at: int) -> Number | None:
    if row.sort(at) != "number":
        return None
    if row.norm(at + 1) in DECIMAL and _pair(row, at):
        return _decimal(row, at)
    if len(row.norm(at)) > LONGEST:
        return None
    if row.norm(at + 1) == "/" and _pair(row, at):
        return _stroke(row, at)
    return _mixed(row, Number(at, at + 1, Fraction(row.norm(at)), "integer", _lost_point(row.norm(at))))


def _pair(row: Row, at: int) -> bool:
    """Whether a sign and another number touch the number."""
    return row.tight(at + 1) and row.tight(at + 2) and row.sort(at + 2) == "number"


def _lost_point(digits: str) -> str | None:
    return "lost-point" if digits[0] == "0" and len(digits) > 1 else None


def _decimal(row: Row, at: int) -> Number:
    last = _chain(row, at + 3, DECIMAL)
    if last > at + 3:
        return Number(at, last, None, "chain", "decimal-or-list")
    value = Fraction(f"{row.norm(at)}.{row.norm(at + 2)}")
    return Number(at, last, value, "decimal", _lost_point(row.norm(at)), row.norm(at + 1) == ",")


def _chain(row: Row, last: int, signs: frozenset[str]) -> int:
    """The index behind further numbers joined without space: a date or a list."""
    while row.norm(last) in signs and _pair(row, last - 1):
        last += 2
    return last


def _stroke(row: Row, at: int) -> Number | None:
    """``3/10``; ``24/25`` are teeth, ``6/3`` is nothing that is certain."""
    last = _chain(row, at + 3, DECIMAL | {"/"})
    if last > at + 3:
        return Number(at, last, None, "chain", "decimal-or-list")
    over, under = int(row.norm(at)), int(row.norm(at + 2))
    if not 0 < over < TEN or not over < under <= TEN:
        return None
    ranging = over >= LEAST and under == over + 1
    return Number(at, at + 3, Fraction(over, under), "fraction", "fraction-or-range" if ranging else None)


def _mixed(row: Row, whole: Number) -> Number:
    """``1½``, ``1 1/2``, ``1 and a half``; after a number that may be a tooth the half may stand alone."""
    last = whole.last
    sign = row.phrase(last, phrases("sign"))
    stroke = (
        _stroke(row, last) if row.sort(last) == "number" and row.norm(last + 1) == "/" and _pair(row, last) else None
    )
    said = row.phrase(last, phrases("mixed"))
    if sign or said:
        part, last = ratio((sign or said or ("", 0))[0]), (sign or said or ("", 0))[1]
    elif stroke and stroke.value is not None:
        part, last = stroke.value, stroke.last
    else:
        return whole
    doubtful = whole.value is not None and whole.value > TEN - LEAST and whole.toothlike
    why = "fraction-or-tooth" if doubtful else whole.why
    return Number(whole.first, last, (whole.value or 0) + part, "fraction", why)


def _leading(row: Row, at: int) -> Number | None:
    """``.3``, ``,3``: after a word or number that it touches the sign may as well end something."""
    if row.norm(at) not in DECIMAL or not row.tight(at + 1) or row.sort(at + 1) != "number":
        return None
    if row.norm(at + 2) in DECIMAL and _pair(row, at + 1):
        return None
    comma = row.norm(at) == ","
    touches = row.tight(at) and row.row[at - 1].norm not in BEFORE
    listed = comma and row.any_sort(at - 1) == "number"
    why = "decimal-or-list" if listed else "decimal-or-stop" if touches else None
    return Number(at, at + 2, Fraction(f"0.{row.norm(at + 1)}"), "decimal", why)


def _sign(row: Row, at: int) -> Number | None:
    found = row.phrase(at, phrases("sign"))
    return Number(at, found[1], ratio(found[0]), "fraction") if found else None


def _words(row: Row, at: int) -> Number | None:
    """``two``, ``twenty-four``, ``one and a half``."""
    found = row.phrase(at, phrases("number"))
    if not found:
        return None
    value, last = ratio(found[0]), found[1]
    more = row.phrase(last + row.dash(last), phrases("number")) if value >= TENS else None
    if more and ratio(more[0]) < TEN:
        value, last = value + ratio(more[0]), more[1]
    return replace(_mixed(row, Number(at, last, value, "word")), form="word")


def _article(row: Row, at: int) -> Number | None:
    """``a millimetre``."""
    found = row.phrase(at, phrases("article"))
    unit = row.phrase(found[1], phrases("unit", "mm")) if found else None
    return Number(at, found[1], Fraction(1), "word") if found and unit else None


def _fraction(row: Row, at: int) -> Number | None:
    """``half a``, ``three quarters of a``."""
    found = row.phrase(at, phrases("fraction"))
    if not found:
        return None
    whole = ratio(found[0]) == 1
    if whole and row.norm(found[1]) not in words("fraction_rules", "full"):
        return None
    return Number(at, found[1], ratio(found[0]), "word" if whole else "fraction")


def _tenths(row: Row, at: int) -> Number | None:
    """``three tenths``, ``3 tenths of a``, ``a tenth of a``."""
    count = Fraction(1) if row.norm(at) in words("tenths", "one") else None
    said = row.phrase(at, phrases("number"))
    last = said[1] if said else at + 1
    if row.sort(at) == "number" and len(row.norm(at)) <= LONGEST:
        count = Fraction(row.norm(at))
    count = ratio(said[0]) if said else count
    after = row.phrase(last, phrases("tenths", "tenths"))
    return Number(at, after[1], count / TEN, "decimal") if count and after else None


def _point(row: Row, at: int) -> Number | None:
    """``point two``, ``nought point three``, ``point two five``."""
    nought = row.norm(at) in words("point", "nought") or (row.norm(at) == "0" and row.sort(at) == "number")
    start = at + nought
    if row.norm(start) not in words("point", "point"):
        return None
    digits, last = "", start + 1
    while (said := row.phrase(last, phrases("number"))) and ratio(said[0]) < TEN:
        digits, last = digits + said[0], said[1]
    if not digits and row.sort(last) == "number" and len(row.norm(last)) <= LONGEST:
        digits, last = row.norm(last), last + 1
    why = None if nought else "list-number-or-decimal"
    return Number(at, last, Fraction(f"0.{digits}"), "decimal", why) if digits else None


def _vague(row: Row, at: int) -> Number | None:
    found = row.phrase(at, phrases("vague"))
    return Number(at, found[1], None, "vague", found[0]) if found else None


def _share(row: Row, at: int) -> Number | None:
    """``a third``, ``half the crown``: a part of something that the words do not fix; not ``a third molar``."""
    found = row.phrase(at, phrases("share"))
    if found is None:
        return None
    last = found[1]
    whole = not row.said(at, last).endswith(("third", "thirds"))
    closed = last >= len(row.row) or row.broken(last) or row.any_sort(last) == "sign"
    if not (whole or closed or row.norm(last) in words("share_rules", "before")):
        return None
    return Number(at, last, ratio(found[0]), "share", "share-of-what")


READERS: Final[tuple[Callable[[Row, int], Number | None], ...]] = (
    _point,
    _tenths,
    _vague,
    _share,
    _fraction,
    _digits,
    _leading,
    _sign,
    _words,
    _article,
)
