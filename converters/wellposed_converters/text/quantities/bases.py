"""What amounts are counted by, how often, and single places in the row of steps."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TypeVar

from wellposed_converters.text.quantities.kinds import Amount, Basis, Ordinal
from wellposed_converters.text.quantities.value import value
from wellposed_converters.text.quantities.words import Row, asks, phrases, row, words

T = TypeVar("T")


def find_bases(text: str, start: int, end: int) -> tuple[Basis, ...]:
    """The bases of ``text[start:end]`` in order, none overlapping another."""
    return tuple(_each(row(text, start, end), _basis))


def find_ordinals(text: str, start: int, end: int) -> tuple[Ordinal, ...]:
    """The single steps named in ``text[start:end]``."""
    return tuple(_each(row(text, start, end), _ordinal))


def _each(tokens: Row, reader: Callable[[Row, int], tuple[T, int] | None]) -> Iterator[T]:
    at = 0
    while at < len(tokens.row):
        found = reader(tokens, at)
        if found:
            yield found[0]
        at = found[1] if found else at + 1


def _basis(tokens: Row, at: int) -> tuple[Basis, int] | None:
    last = _every(tokens, at)
    if last:
        return _made(tokens, at, last, "interval")
    found = tokens.phrase(at, phrases("basis"))
    if found and _meant(tokens, at, found[1]):
        return _made(tokens, at, found[1], found[0])
    last = _adverb(tokens, at)
    return _made(tokens, at, last, "interval") if last else None


def _made(tokens: Row, at: int, last: int, measure: str) -> tuple[Basis, int]:
    return Basis(tokens.start(at), tokens.end(last), measure), last


def _meant(tokens: Row, at: int, last: int) -> bool:
    """Not ``each side of 12``, ``overall ratio``, ``in all cases``."""
    said, after = tokens.said(at, last), tokens.norm(last)
    if said in words("basis_rules", "open") and after in words("basis_rules", "not_before"):
        return False
    if said == "each" and after in words("basis_rules", "each_not_before"):
        return False
    closed = last == len(tokens.row) or tokens.broken(last) or tokens.sort(last) == "sign"
    return said not in words("basis_rules", "closed") or closed


def _every(tokens: Row, at: int) -> int:
    """The index behind ``every`` where a time follows; 0 where none does."""
    found = tokens.phrase(at, phrases("every"))
    if found is None:
        return 0
    last = found[1]
    timed = (one := _first_value(tokens, last)) is not None and one in words("unit_rules", "time")
    return last if timed or tokens.phrase(last, phrases("single")) else 0


def _first_value(tokens: Row, at: int) -> str | None:
    """The unit of the value at the token, or of the one it is joined to: ``7 to 10 days``."""
    one = value(tokens, at)
    if one is None or one.unit:
        return one.unit if one else None
    joined = tokens.dash(one.last) or tokens.norm(one.last) in ("to", "or")
    other = value(tokens, one.last + 1, joined=True) if joined else None
    return other.unit if other else None


def _adverb(tokens: Row, at: int) -> int:
    """The index behind ``weekly``, with or without a number before it."""
    found = tokens.phrase(at, phrases("adverb")) or tokens.phrase(at, phrases("interval"))
    return found[1] if found else 0


def whole_interval(tokens: Row, at: int) -> tuple[Amount, int] | None:
    """A time without a number: ``week`` after "every", ``fortnightly``."""
    after = at > 0 and tokens.norm(at - 1) in words("every", "every")
    found = tokens.phrase(at, phrases("single")) if after else None
    found = found or tokens.phrase(at, phrases("interval"))
    if found is None:
        return None
    number, unit = found[0].split()
    span = tokens.start(at), tokens.end(found[1])
    if number == "0":
        return Amount(*span, None, None, None, "exact", asks=asks(unit), why=unit), found[1]
    return Amount(*span, float(number), float(number), unit, "exact"), found[1]


def _ordinal(tokens: Row, at: int) -> tuple[Ordinal, int] | None:
    return _counted(tokens, at) or _numbered(tokens, at)


def _counted(tokens: Row, at: int) -> tuple[Ordinal, int] | None:
    """``third aligner``, ``3rd step``."""
    found = _rank(tokens, at)
    noun = tokens.phrase(found[1], phrases("noun")) if found else None
    row_of = tokens.norm(at - 1) in words("ordinal_rules", "goes_on") and _rank(tokens, at - 2) is not None
    row_of = row_of or tokens.norm(at - 1) in words("every", "every")
    if found is None or noun is None or row_of:
        return None
    return Ordinal(tokens.start(at), tokens.end(noun[1]), found[0], noun[0]), noun[1]


def _rank(tokens: Row, at: int) -> tuple[int, int] | None:
    said = tokens.phrase(at, phrases("ordinal"))
    if said:
        return int(said[0]), said[1]
    ending = tokens.tight(at + 1) and tokens.norm(at + 1) in words("ordinal_rules", "endings")
    return (int(tokens.norm(at)), at + 2) if tokens.sort(at) == "number" and ending else None


def _numbered(tokens: Row, at: int) -> tuple[Ordinal, int] | None:
    """``step 4``, ``aligner no. 5``; a row of them is none, and ``step 0.2 mm`` is a size."""
    noun = tokens.phrase(at, phrases("noun"))
    if noun is None or tokens.norm(at) not in words("noun_rules", "one"):
        return None
    if tokens.any_sort(at - 1) == "number" or tokens.norm(at - 1) in words("context", "per"):
        return None
    begin = noun[1]
    sign = tokens.phrase(begin, phrases("ordinal_rules", "numbered"))
    begin = sign[1] if sign else begin
    found = value(tokens, begin, joined=sign is not None)
    whole = found is not None and found.sign is None and found.why is None and found.number.form == "integer"
    if found is None or not whole or found.unit or _goes_on(tokens, found.last):
        return None
    return Ordinal(tokens.start(at), tokens.end(found.last), int(found.amount or 0), noun[0]), found.last


def _goes_on(tokens: Row, at: int) -> bool:
    """``steps 4 to 8``, ``stages 2, 3``; a comma before words ends it."""
    joins = tokens.norm(at) in words("ordinal_rules", "goes_on") or tokens.dash(at)
    return joins and tokens.any_sort(at + 1) == "number"
