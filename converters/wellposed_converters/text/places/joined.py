"""Numbers as they are written: decimals, dates and clock times are one piece, a stated ``1.1`` is a tooth."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from wellposed_converters.text.places.notation import CORNERS, from_fdi
from wellposed_converters.text.places.pieces import TWO, Piece, Scan
from wellposed_converters.text.places.tooth_words import phrases, words

DECIMAL: Final = frozenset(".·")


def joined(rough: Scan, *, dotted: bool) -> list[Piece]:
    """Decimals, dates and clock times as one piece; dotted teeth as the number they mean."""
    found: list[Piece] = []
    index = 0
    while index < len(rough.pieces):
        piece, end = _one(rough, index, dotted=dotted)
        found.append(piece)
        index = end
    return found


def _one(rough: Scan, index: int, *, dotted: bool) -> tuple[Piece, int]:
    piece = rough.pieces[index]
    if piece.sort != "number":
        leading = piece.norm in (".", ",") and rough.tight(index + 1) and rough.sort(index + 1) == "number"
        alone = not rough.tight(index) or rough.norm(index - 1) in ("(", "<", ">", "=", "≤", "≥", "/")
        return (_whole(rough, index, index + 2), index + 2) if leading and alone else (piece, index + 1)
    end = _chain(rough, index)
    if rough.tight(index) and rough.norm(index - 1) == rough.norm(index + 1):
        return _plain(piece), index + 1
    if end > index + 3:
        return (_whole(rough, index, end), end) if _date(rough, index, end) else (_plain(piece), index + 1)
    if end == index + 3:
        return _pair(rough, index, dotted=dotted)
    return _plain(piece), index + 1


def _pair(rough: Scan, index: int, *, dotted: bool) -> tuple[Piece, int]:
    """Two numbers with a point, comma, colon or slash between them."""
    sign, end = rough.norm(index + 1), index + 3
    if sign in DECIMAL and _tooth(rough, index) and (dotted or _beside_dotted(rough, index)) and not unit(rough, end):
        norm = rough.norm(index) + rough.norm(index + 2)
        return Piece("number", norm, rough.pieces[index].start, rough.pieces[end - 1].end, dotted=True), end
    listed = sign == "," and not unit(rough, end) and (_lettered(rough, index) or _two_digits(rough, index))
    timed = sign == ":" and len(rough.norm(index + 2)) == TWO and not unit(rough, end)
    if sign == "/" or listed or (sign == ":" and not timed):
        return _plain(rough.pieces[index]), index + 1
    return _whole(rough, index, end), end


def _lettered(rough: Scan, index: int) -> bool:
    """``UR3,4`` is a list."""
    return rough.tight(index) and rough.norm(index - 1) in CORNERS


def _two_digits(rough: Scan, index: int) -> bool:
    return len(rough.norm(index)) == len(rough.norm(index + 2)) == TWO


def _chain(rough: Scan, index: int) -> int:
    """The index after a row of numbers joined without space by one and the same sign."""
    sign, end = rough.norm(index + 1), index + 1
    while (
        sign in (".", "·", ",", ":", "/", "-")
        and rough.norm(end) == sign
        and rough.tight(end)
        and rough.tight(end + 1)
        and rough.sort(end + 1) == "number"
        and (sign != "-" or end > index + 1 or rough.norm(end + 2) == sign)
    ):
        end += 2
    return end


def _date(rough: Scan, index: int, end: int) -> bool:
    parts = [rough.norm(at) for at in range(index, end, 2)]
    sign = rough.norm(index + 1)
    return sign in ".-" or (sign == "/" and any(len(part) > TWO for part in parts)) or sign == ":"


def _tooth(rough: Scan, index: int) -> bool:
    one, two = rough.norm(index), rough.norm(index + 2)
    return len(one) == len(two) == 1 and (one + two).isdecimal() and from_fdi(int(one + two)) is not None


def _beside_dotted(rough: Scan, index: int) -> bool:
    """Whether a slash or a dash joins the number to another with a point that would be a tooth as well."""
    for other, sign in ((index + 4, index + 3), (index - 4, index - 1)):
        joined = (rough.norm(sign) == "/" or rough.dash(sign)) and rough.tight(sign) and rough.tight(sign + 1)
        if joined and rough.sort(other) == "number" and rough.norm(other + 1) in DECIMAL and _tooth(rough, other):
            return not unit(rough, max(other, index) + 3)
    return False


def _whole(rough: Scan, index: int, end: int) -> Piece:
    first, last = rough.pieces[index], rough.pieces[end - 1]
    return Piece("amount", rough.text[first.start : last.end], first.start, last.end)


def _plain(piece: Piece) -> Piece:
    return piece if len(piece.norm) <= TWO else replace(piece, sort="digits")


def unit(scan_: Scan, index: int) -> bool:
    """Whether a unit, or a noun that is counted, stands at the index."""
    if scan_.broken(index):
        return False
    at = index + 1 if scan_.dash(index) and scan_.tight(index) and scan_.tight(index + 1) else index
    if scan_.norm(at) in words("number", "signs") or scan_.phrase(at, phrases("number", "units")):
        return True
    if scan_.norm(at) in words("number", "loose_units"):
        return at == index and not scan_.tight(at) and scan_.norm(at + 1) != "of"
    quadrant = scan_.tight(at + 2) and scan_.sort(at + 2) == "number"
    return scan_.norm(at) == "/" and scan_.tight(at) and scan_.sort(at + 1) == "word" and not quadrant
