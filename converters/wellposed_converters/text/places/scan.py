"""A text cut into pieces, the numbers that belong to amounts told from those that may be teeth."""

from __future__ import annotations

from dataclasses import replace

from wellposed_converters.text.lexicon.lexer import tokens
from wellposed_converters.text.places.joined import joined, unit
from wellposed_converters.text.places.notation import LAST
from wellposed_converters.text.places.pieces import Piece, Scan
from wellposed_converters.text.places.tooth_words import words


def scan(text: str, start: int, end: int, *, dotted: bool = False) -> Scan:
    """The pieces of ``text[start:end]``; ``dotted`` where ``1.1`` is stated to be a tooth."""
    rough = Scan(
        text, tuple(Piece(token.sort, token.norm, token.start, token.end) for token in tokens(text, start, end))
    )
    return _with_amounts(Scan(text, tuple(joined(rough, dotted=dotted))))


def _with_amounts(plain: Scan) -> Scan:
    """The pieces, the numbers that are amounts marked as such."""
    amounts = {at for at, piece in enumerate(plain.pieces) if piece.sort == "amount"}
    for at in reversed(range(len(plain.pieces))):
        if plain.sort(at) == "number" and (unit(plain, at + 1) or _counts(plain, at)):
            amounts |= {at, *_range_before(plain, at)}
    for at in range(len(plain.pieces)):
        if plain.sort(at) in ("number", "amount"):
            amounts |= set(_bounded(plain, at, amounts))
    pieces = (replace(one, sort="amount") if at in amounts else one for at, one in enumerate(plain.pieces))
    return Scan(plain.text, tuple(pieces))


def _counts(plain: Scan, at: int) -> bool:
    """``2 premolars``: a single digit that counts teeth."""
    together = plain.dash(at - 1) or plain.norm(at - 1) in ("/", "#", "to", "|", ",", "and", "&") or plain.tight(at)
    if plain.position(at) and plain.norm(at - 1) in (",", "and", "&") and plain.value(at - 2) > LAST:
        together = False
    if together or plain.broken(at + 1) or plain.sort(at - 1) == "number":
        return False
    counted = bool(plain.position(at)) and plain.norm(at + 1) in words("number", "counted")
    return counted or plain.norm(at + 1) in words("number", "countable")


def _range_before(plain: Scan, at: int) -> list[int]:
    """The first number of ``2-3 mm``; a tooth before a dash with space round it is not one."""
    sign = plain.norm(at - 1)
    spaced = plain.dash(at - 1) and not plain.tight(at)
    joins = plain.dash(at - 1) or sign in ("to", "~", "/", "or", "x")
    between = sign == "and" and plain.norm(at - 3) == "between"
    if plain.sort(at - 2) not in ("number", "amount") or not (joins or between):
        return []
    return [] if spaced and not plain.position(at - 2) else [at - 2]


def _bounded(plain: Scan, at: int, amounts: set[int]) -> list[int]:
    before = plain.norm(at - 1)
    spans = plain.dash(at + 1) or plain.norm(at + 1) in ("to", "~")
    last = at + 2 if spans and plain.sort(at + 2) in ("number", "amount") else at
    if last in amounts and last != at and plain.sort(at) == "number" and plain.tight(at + 2):
        return [at, last]
    code = plain.dash(at - 1) and plain.tight(at) and plain.tight(at - 1) and plain.sort(at - 2) == "word"
    if before in words("number", "numbered") or (code and not _known_prefix(plain, at - 2)):
        return [at, last]
    teeth = last != at and _of_teeth(plain, at, last)
    return [at, last] if _bound(plain, at) and not teeth else []


def _bound(plain: Scan, at: int) -> bool:
    """Whether a word or sign before the number makes it a bound; ``max 6s`` is upper first molars."""
    before = plain.norm(at - 1)
    if plain.norm(at + 1) == "s" and plain.tight(at + 1):
        return False
    word = before in words("number", "bounds") or (before == "to" and plain.norm(at - 2) == "up")
    return word or (before in words("number", "bound_signs") and plain.value(at - 2) < 0)


def _known_prefix(plain: Scan, at: int) -> bool:
    """Letters that may be joined to a number by a dash: ``U-3`` is odd, ``A-102`` a code."""
    return plain.norm(at) in ("s", "m", "d") and plain.sort(at - 1) == "number"


def _of_teeth(plain: Scan, at: int, last: int) -> bool:
    one, two = plain.value(at), plain.value(last)
    return one == two or min(one, two) > LAST
