"""One value: a number with its unit, what it counts, and its sign."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from wellposed_converters.text.places.notation import from_fdi
from wellposed_converters.text.quantities.numbers import BEFORE, BEHIND, LEAST, Number, may_be_tooth, number
from wellposed_converters.text.quantities.words import POINTS, Row, phrases, words

ADVERBS: Final = ("day", "week", "month")
LAST_QUADRANT: Final = 8


@dataclass(frozen=True)
class Value:
    """``first`` and ``last`` bound the tokens, ``last`` excluded; ``why`` is what is odd about it."""

    first: int
    last: int
    number: Number
    unit: str | None = None
    noun: str | None = None
    why: str | None = None
    sign: str | None = None
    approx: bool = False

    @property
    def amount(self) -> Fraction | None:
        """The number itself; None if the words give none."""
        return self.number.value

    @property
    def plain(self) -> bool:
        """A whole number and nothing else."""
        return self.number.form == "integer" and self.unit is None and self.sign is None

    @property
    def toothlike(self) -> bool:
        """A whole number above 8 that any numbering has, without a unit: hardly ever meant as an amount."""
        value = self.amount
        return self.plain and self.number.toothlike and value is not None and value > LAST_QUADRANT


def value(row: Row, at: int, *, joined: bool = False, certain: bool = False) -> Value | None:
    """The value that begins at the token; ``joined`` behind a joining sign, ``certain`` where it can only be one."""
    sign, begin = ("", at) if joined else _signed(row, at, certain=certain)
    found = number(row, begin)
    if found is None or _times(row, found):
        return None
    made = _with_unit(row, found, certain=certain)
    fits = made is not None and _fits(row, made, begin, joined=joined, signed=bool(sign))
    if made is None or not fits:
        return None
    why = made.why or ("sign" if sign else None) or (None if joined else _dashed(row, begin, sign))
    return replace(made, first=at, sign=sign or None, why=why)


def _signed(row: Row, at: int, *, certain: bool) -> tuple[str, int]:
    """The sign before a number, and where the number begins."""
    worded = next(
        (sign for sign, name in (("+", "plus"), ("-", "minus")) if row.norm(at) in words("context", name)), ""
    )
    if worded:
        found = number(row, at + 1)
        made = _with_unit(row, found) if found else None
        sure = made is not None and (certain or made.unit is not None or made.number.form == "decimal")
        return (worded, at + 1) if sure else ("", at)
    written = "-" if row.dash(at) else "+" if row.norm(at) == "+" else ""
    apart = not row.tight(at) or row.any_sort(at - 1) == "word" or row.norm(at - 1) in ("(", ":", "=")
    signs = bool(written) and apart and row.tight(at + 1) and _own_sign(row, at)
    return (written, at + 1) if signs else ("", at)


def _own_sign(row: Row, at: int) -> bool:
    """Whether the sign belongs to the number behind it: never between two numbers of which the second has no unit."""
    found = number(row, at + 1)
    made = _with_unit(row, found) if found else None
    if made is None:
        return False
    measured = made.unit is not None or made.number.form == "decimal"
    glued = row.tight(at) and row.any_sort(at - 1) == "word"
    return measured or (row.any_sort(at - 1) != "number" and not glued)


def _dashed(row: Row, begin: int, sign: str) -> str | None:
    """A dash that touches both its neighbours: a range, a minus or a pause."""
    dash = not sign and row.tight(begin) and row.row[begin - 1].norm in BEFORE and _is_dash(row, begin - 1)
    return "dash" if dash and row.any_sort(begin - 2) in ("number", "word") and row.tight(begin - 1) else None


def _is_dash(row: Row, at: int) -> bool:
    return Row(row.text, row.row).dash(at)


def _times(row: Row, found: Number) -> bool:
    """``2 x 0.3``, ``4x4``."""
    signs = words("context", "times")
    after = row.norm(found.last) in signs and (row.sort(found.last + 1) == "number" or row.tight(found.last))
    before = row.norm(found.first - 1) in signs and row.any_sort(found.first - 2) == "number"
    return after or before


def _with_unit(row: Row, found: Number, *, certain: bool = False) -> Value | None:
    """The number with what follows it; None where it must have a unit and has none."""
    ish = _ish(row, found)
    given = replace(found, last=ish) if ish else found
    made = _unit(row, given) or _noun(row, given) or _adverb(row, given) or Value(found.first, found.last, found)
    made = replace(made, number=found, approx=bool(ish) and made.last > ish)
    bare = made.unit is None
    if bare and found.form in ("word", "vague", "chain"):
        return None
    if bare and found.comma and _listed(row, found):
        return None
    return replace(made, why=made.why or _number_why(row, made, certain))


def _ish(row: Row, found: Number) -> int:
    """The index behind the ending of ``2-ish mm``; 0 without one."""
    at = found.last + row.dash(found.last)
    return at + 1 if row.norm(at) == "ish" and row.tight(at) else 0


def _listed(row: Row, found: Number) -> bool:
    """``11,21``."""
    one, two = row.norm(found.first), row.norm(found.last - 1)
    return len(one) == len(two) == LEAST and may_be_tooth(int(one)) and may_be_tooth(int(two))


def _number_why(row: Row, made: Value, certain: bool) -> str | None:
    found = made.number
    if found.why == "list-number-or-decimal" and made.unit:
        return None
    if found.why:
        return found.why
    if found.form == "fraction" and made.unit is None:
        return "fraction-or-contact" if row.norm(found.first + 1) == "/" else "fraction-of-what"
    if found.form == "fraction" and made.unit in ("count", *ADVERBS):
        return "fraction-of-what"
    return "decimal-or-list" if _comma_doubt(row, made, certain) else None


def _comma_doubt(row: Row, made: Value, certain: bool) -> bool:
    """``1,2`` without a unit; ``12,5 mm``, where the tooth 12 may stand before 5 mm."""
    whole = row.norm(made.number.first)
    if not made.number.comma or certain or int(whole) == 0:
        return False
    return made.unit is None or (len(whole) == LEAST and may_be_tooth(int(whole)))


def _unit(row: Row, found: Number) -> Value | None:
    last = found.last + _hyphen(row, found.last)
    if found.form == "fraction":
        of = row.phrase(last, phrases("fraction_rules", "of"))
        last = of[1] if of else last
    said = row.phrase(last, phrases("unit"))
    if said is None and (found.form == "fraction" or found.value == 1):
        said = row.phrase(last, phrases("fraction_unit"))
        if said and found.form != "fraction" and said[0] != "unit":
            said = None
    if said is None or _glued(row, said[1]):
        return None
    if said[0].startswith("?"):
        return Value(found.first, said[1], found, None, None, said[0][1:])
    return Value(found.first, said[1], found, said[0])


def _hyphen(row: Row, at: int) -> bool:
    """``10-day``."""
    return row.dash(at) and row.tight(at) and row.tight(at + 1) and row.sort(at + 1) == "word"


def _glued(row: Row, at: int) -> bool:
    return row.tight(at) and row.any_sort(at) == "number"


def _noun(row: Row, found: Number) -> Value | None:
    """``12 steps``; what is counted is whole."""
    said = row.phrase(found.last + _hyphen(row, found.last), phrases("noun"))
    if said is None or found.form in ("decimal", "fraction") or _glued(row, said[1]):
        return None
    return Value(found.first, said[1], found, "count", said[0])


def _adverb(row: Row, found: Number) -> Value | None:
    """``2-weekly``: the adverb itself says what the number is for."""
    hyphen = _hyphen(row, found.last)
    last = found.last + hyphen
    said = row.phrase(last, phrases("adverb"))
    if said is None or found.form not in ("integer", "word"):
        return None
    doubtful = not hyphen and row.phrase(said[1], phrases("noun")) is not None
    return Value(found.first, last, found, said[0], None, "each-or-once" if doubtful else None)


def _fits(row: Row, made: Value, begin: int, *, joined: bool, signed: bool) -> bool:
    """Whether what touches the value leaves it an amount."""
    if made.number.form == "vague" or row.sort(begin) == "word":
        return True
    return (joined or signed or _free_before(row, made, begin)) and _free_behind(row, made)


def _free_before(row: Row, made: Value, begin: int) -> bool:
    if not row.tight(begin):
        return True
    before = row.row[begin - 1].norm
    leading = row.norm(begin) in (".", ",", "·") and made.number.why
    if leading:
        return made.unit is not None or (row.norm(begin) != "," and len(row.norm(begin + 1)) == 1)
    measured = made.unit is not None or made.number.form == "decimal"
    chained = row.any_sort(begin - 2) in ("number", "word") and row.tight(begin - 1)
    if before in BEFORE and before not in ("|",):
        return measured or not chained or before in ("(", "<", ">", "≤", "≥", "=", "~", "≈")
    return measured and (before == "," or (before == "/" and row.any_sort(begin - 2) != "number"))


def _free_behind(row: Row, made: Value) -> bool:
    last = made.last
    if made.unit is not None or not row.tight(last):
        return True
    if row.any_sort(last) == "word":
        return row.row[last].norm == "ish"
    behind = row.row[last].norm
    timed = behind in (":", ",", ".") and row.tight(last + 1) and row.any_sort(last + 1) == "number"
    stroke = behind == "/" and row.any_sort(last + 1) != "word" and made.number.form == "integer"
    named = _hyphen(row, last) and row.norm(last + 1) != "ish"
    return behind not in BEHIND and not (stroke or timed or named)


def fractional(found: Value) -> bool:
    """Whether it is written as no tooth is: with decimals, as a fraction."""
    return found.number.form in ("decimal", "fraction")


def dotted_tooth(row: Row, found: Value) -> bool:
    """``1.2`` without a unit, which some write for tooth 12."""
    at = found.number.first
    written = found.number.form == "decimal" and row.sort(at) == "number" and row.norm(at + 1) in POINTS
    if not written or found.unit:
        return False
    parts = row.norm(at), row.norm(at + 2)
    return max(map(len, parts)) == 1 and from_fdi(int("".join(parts))) is not None
