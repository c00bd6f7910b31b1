"""Places written with signs: Palmer's corners and crosses, what people type for them, Haderup's plus and minus."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from wellposed_converters.text.places.atom import UNKNOWN, Atom
from wellposed_converters.text.places.frame import frame
from wellposed_converters.text.places.meaning import Form, Meaning, of_form
from wellposed_converters.text.places.notation import (
    PALMER_CROSS,
    PALMER_LEFT,
    PALMER_RIGHT,
    from_haderup,
    from_palmer,
    in_mouth_order,
    segment,
)
from wellposed_converters.text.places.pieces import Scan

VARIANTS: Final = frozenset(chr(code) for code in range(0x23BE, 0x23CD)) - {*PALMER_LEFT, *PALMER_RIGHT, *PALMER_CROSS}
"""Corner signs with a circle, a triangle or a wave: they mean something more in some charts."""
DAMAGED: Final = frozenset(("\ufffd", "?"))
DRAWN: Final = frozenset(("\u0332", "\u0305", "_"))
"""A line under or over a digit carries the arch in some records."""


def sign(scan: Scan, index: int) -> Atom | None:
    """Any place written with a sign that begins at the index."""
    return (
        _corner(scan, index) or _cross(scan, index) or _odd(scan, index) or _haderup(scan, index) or _typed(scan, index)
    )


def _names(scan: Scan, index: int) -> str:
    """Digits 1 to 8 or a letter A to E, as they stand at a corner sign."""
    raw = scan.raw(index)
    if scan.sort(index) in ("number", "digits") and set(raw) <= set("12345678"):
        return raw
    return raw if scan.sort(index) == "word" and raw in tuple("ABCDE") else ""


def _corner(scan: Scan, index: int) -> Atom | None:
    names, after = _names(scan, index), scan.norm(index + 1)
    if names and after in PALMER_RIGHT and scan.tight(index + 1):
        return _of_corner(index, after, names)
    names = _names(scan, index + 1)
    if scan.norm(index) in PALMER_LEFT and names and scan.tight(index + 1):
        return _of_corner(index, scan.norm(index), names)
    return None


def _of_corner(index: int, corner: str, names: str) -> Atom:
    found = [tooth for name in names if (tooth := from_palmer(corner, name))]
    meaning = Meaning("Palmer", in_mouth_order(found))
    return Atom(index, index + 2, "tooth", (meaning,), evidence=frozenset(("Palmer",)), framed=True)


def _cross(scan: Scan, index: int) -> Atom | None:
    """``21|12``: the digits of both sides; the arch in words, unless the cross names it."""
    before = frame(scan, index)
    at = before.last
    if before.side or scan.norm(at + 1) not in PALMER_CROSS or not (scan.tight(at + 1) and scan.tight(at + 2)):
        return None
    right, left = _names(scan, at), _names(scan, at + 2)
    if not (right.isdecimal() and left.isdecimal()):
        return None
    form = _both_sides(right, left)
    if form is None:
        return Atom(index, at + 3, "tooth", (UNKNOWN,)).asked("cross", "notation")
    arch = PALMER_CROSS[scan.norm(at + 1)] or before.arch
    meaning = of_form(form, arch, "Palmer")
    return Atom(index, at + 3, "tooth", (meaning,), evidence=frozenset(("Palmer",)), framed=bool(arch))


def _both_sides(right: str, left: str) -> Form | None:
    """The digits fall towards the midline and rise after it; anything else is no cross."""
    one, two = [int(digit) for digit in right], [int(digit) for digit in left]
    falls = all(first > second for first, second in pairwise(one))
    rises = all(first < second for first, second in pairwise(two))
    return Form(tuple(one), tuple(two)) if falls and rises else None


def _odd(scan: Scan, index: int) -> Atom | None:
    """Signs beside a digit that copying has changed, and signs that mean more than a corner."""
    this, after = scan.norm(index), scan.norm(index + 1)
    if not scan.tight(index + 1):
        return None
    if _names(scan, index) and (after in VARIANTS or after in PALMER_LEFT) and not _names(scan, index + 2):
        return Atom(index, index + 2, "tooth", (UNKNOWN,)).asked("palmer-variant", "notation")
    if _names(scan, index + 1) and (this in VARIANTS or (this in PALMER_RIGHT and not _names(scan, index - 1))):
        return Atom(index, index + 2, "tooth", (UNKNOWN,)).asked("palmer-variant", "notation")
    marks = DAMAGED | DRAWN
    if scan.position(index) and (after in marks or after.startswith("â")):
        end = index + 3 if scan.norm(index + 2) == "|" and scan.tight(index + 2) else index + 2
        return Atom(index, end, "tooth", (UNKNOWN,), bare=after == "?").asked("lost-signs", "notation")
    if scan.position(index + 1) and (this in DAMAGED or this.startswith("â")) and not scan.tight(index):
        return Atom(index, index + 2, "tooth", (UNKNOWN,)).asked("lost-signs", "notation")
    return None


def _haderup(scan: Scan, index: int) -> Atom | None:
    """``2+``, ``-2``, ``4+4``, ``05+``: teeth if Haderup is stated; an amount or a lost sign otherwise."""
    this, after = scan.norm(index), scan.norm(index + 1)
    if not scan.tight(index + 1):
        return None
    if _digit(scan, index) and after == "+" and scan.tight(index + 2) and _digit(scan, index + 2):
        return _plus_between(scan, index)
    if _digit(scan, index) and _signs(scan, index + 1) and not _glued(scan, index + 2):
        return _haderup_atom(index, scan.norm(index), after, sign_first=False)
    if _signs(scan, index) and _digit(scan, index + 1) and not scan.tight(index) and not _glued(scan, index + 2):
        return _haderup_atom(index, scan.norm(index + 1), this, sign_first=True)
    return None


def _glued(scan: Scan, index: int) -> bool:
    return scan.tight(index) and scan.sort(index) in ("number", "digits", "amount", "word")


def _signs(scan: Scan, index: int) -> bool:
    return scan.norm(index) == "+" or scan.dash(index)


def _digit(scan: Scan, index: int) -> bool:
    norm = scan.norm(index)
    primary = scan.sort(index) == "number" and norm[:1] == "0" and norm[1:] in tuple("12345")
    return bool(scan.position(index)) or primary


def _haderup_atom(index: int, digit: str, mark: str, *, sign_first: bool) -> Atom | None:
    tooth = from_haderup(digit, "+" if mark == "+" else "-", sign_first=sign_first)
    meanings = (Meaning("Haderup", (tooth,)), UNKNOWN) if tooth else (UNKNOWN,)
    return Atom(index, index + 2, "haderup", meanings, bare=True)


def _plus_between(scan: Scan, index: int) -> Atom:
    right = from_haderup(scan.norm(index), "+", sign_first=False)
    left = from_haderup(scan.norm(index + 2), "+", sign_first=True)
    teeth: Sequence[int] = segment(right, left) or () if right and left else ()
    meaning = Meaning("Haderup", tuple(teeth), runs=(tuple(teeth),))
    return Atom(index, index + 3, "haderup", (meaning, UNKNOWN), bare=True)


def _typed(scan: Scan, index: int) -> Atom | None:
    """``6]``, ``[6``, ``|_6``, ``/6``, ``6/``: corners as people type them, or something else."""
    row = "".join(scan.norm(at) for at in range(index, index + 3))
    if row[:2] == "|_" and scan.position(index + 2) and scan.tight(index + 1) and scan.tight(index + 2):
        return _typed_atom(index, 3)
    opens = row[:1] in ("[", "/") and scan.position(index + 1) and scan.tight(index + 1) and not scan.tight(index)
    if opens and not _closed(scan, index + 2) and not _glued(scan, index + 2):
        return _typed_atom(index, 2)
    closes = scan.position(index) and scan.norm(index + 1) in ("]", "/") and scan.tight(index + 1)
    lone = not scan.tight(index) and not _glued(scan, index + 2)
    return _typed_atom(index, 2) if closes and lone and scan.norm(index - 1) != "[" else None


def _closed(scan: Scan, index: int) -> bool:
    return scan.norm(index) == "]"


def _typed_atom(index: int, length: int) -> Atom:
    return Atom(index, index + length, "tooth", (UNKNOWN,), bare=True).asked("typed-palmer", "notation")
