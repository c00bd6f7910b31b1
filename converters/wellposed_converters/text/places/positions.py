"""Places by position: ``3-3``, ``6s``, ``UR3``, ``UL 1-3``, ``U6``, ``URE``."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from wellposed_converters.text.places.atom import UNKNOWN, Atom
from wellposed_converters.text.places.frame import Frame, frame
from wellposed_converters.text.places.meaning import Form, Meaning, of_form
from wellposed_converters.text.places.notation import (
    BOTH,
    LAST,
    from_fdi,
    from_universal,
    neighbours,
    segment,
)
from wellposed_converters.text.places.numbers import POSITION
from wellposed_converters.text.places.pieces import Scan
from wellposed_converters.text.places.quadrants import glued_positions, in_quadrant, letter, of_quadrant
from wellposed_converters.text.places.tooth_words import phrases, words

PLURAL_LETTERS: Final = {"cs": 3, "ds": 4, "es": 5}


def position(scan: Scan, index: int) -> Atom | None:
    """Any place by position that begins at the index."""
    before = frame(scan, index)
    at = before.last
    if before.side == BOTH:
        before = replace(before, side=None)
    inside = scan.sort(at) == "number" and at == index and scan.tight(at) and scan.sort(at - 1) == "word"
    if inside or (at > index and scan.broken(at)):
        return None
    return (
        _fraction(scan, index)
        or _span(scan, index, before)
        or _range(scan, index, before)
        or _plural(scan, index, before)
        or letter(scan, index, before)
        or glued_positions(scan, index, before)
        or _single(scan, index, before)
    )


def _joined(scan: Scan, at: int) -> int:
    """The index of a second position joined to the first at ``at``, or 0."""
    joins = scan.dash(at + 1) or scan.norm(at + 1) in ("~", *words("join", "to"))
    ok = scan.position(at) and joins and scan.position(at + 2) and not scan.broken(at + 2)
    return at + 2 if ok and not (scan.tight(at + 3) and scan.sort(at + 3) == "word") else 0


def _fraction(scan: Scan, at: int) -> Atom | None:
    """``3/4``: a contact without its quadrant, or a fraction; ``3/16`` a fraction, or no contact."""
    if not (scan.position(at) and scan.norm(at + 1) == "/" and scan.tight(at + 1) and scan.value(at + 2) > 0):
        return None
    one, two = scan.position(at), scan.value(at + 2)
    more = scan.norm(at + 3) == "/" or (scan.tight(at) and scan.norm(at - 1) in ("#", "/"))
    first, second = from_universal(one), from_universal(two)
    if more or (two > LAST and first and second and neighbours(first, second)):
        return None
    atom = Atom(at, at + 3, "fraction", (POSITION,))
    if scan.norm(at + 3) in ("contact", "contacts"):
        return atom.asked("contact-without-arch")
    return replace(atom, bare=True).asked("fraction-or-contact", "meaning")


def _span(scan: Scan, index: int, before: Frame) -> Atom | None:
    """``4x4``, ``2x4``: a span of teeth of some appliance."""
    at = before.last
    if not (scan.position(at) and scan.norm(at + 1) == "x" and scan.tight(at + 1) and scan.tight(at + 2)):
        return None
    return Atom(index, at + 3, "position", (UNKNOWN,)).asked("span") if scan.position(at + 2) else None


def _range(scan: Scan, index: int, before: Frame) -> Atom | None:
    at = before.last
    second = _joined(scan, at)
    if not second:
        return None
    one, two = scan.position(at), scan.position(second)
    if before.side and before.arch in (None, BOTH):
        return Atom(index, second + 1, "position", (UNKNOWN,)).asked("side-of-a-range")
    if before.side:
        return in_quadrant(index, second + 1, before, one, two)
    if one == two:
        return _mirrored(index, second + 1, before.arch, one)
    if before.arch:
        return Atom(index, second + 1, "position", (UNKNOWN,)).asked("side-unsaid")
    return _loose_range(scan, index, second)


def _mirrored(index: int, end: int, arch: str | None, last: int) -> Atom:
    form = Form(tuple(range(last, 0, -1)), tuple(range(1, last + 1)), run=True)
    return Atom(index, end, "position", (of_form(form, arch, "position"),), framed=bool(arch))


def _loose_range(scan: Scan, index: int, second: int) -> Atom:
    """``1-6``: 16 with a dash, positions of some quadrant, 1 to 6 in the Universal numbering, or an amount."""
    one, two = scan.position(index), scan.position(second)
    after = scan.norm(second + 1)
    if after in ("contact", "contacts"):
        return Atom(index, second + 1, "contact", (POSITION,)).asked("contact-without-arch")
    meanings = []
    hyphen = from_fdi(one * 10 + two) if scan.dash(index + 1) and scan.tight(index + 1) and scan.tight(second) else None
    if hyphen:
        meanings.append(Meaning("FDI", (hyphen,)))
    ends = (from_universal(one), from_universal(two))
    teeth = segment(*[end for end in ends if end]) or ()
    meanings += [Meaning("Universal", teeth, runs=(teeth,)), POSITION]
    return Atom(index, second + 1, "loose-range", tuple(meanings), bare=True)


def _plural(scan: Scan, index: int, before: Frame) -> Atom | None:
    """``6s``, ``6's``, ``lower 6s``, ``U1s``, ``Es``."""
    at = before.last
    name = _letter_plural(scan, at, framed=bool(before.arch))
    digit = scan.position(at)
    if not name and not digit:
        return None
    end = at + 1 if name else _after_s(scan, at)
    if not end:
        return None
    place = name or digit
    form = Form((place,), (place,), primary=bool(name)).of_side(before.side or BOTH)
    meaning = of_form(form, before.arch, "position", whole=True)
    return Atom(index, end, "group", (meaning,), framed=bool(before.arch))


def _after_s(scan: Scan, at: int) -> int:
    apostrophe = scan.norm(at + 1) in ("'", "’") and scan.tight(at + 1)  # noqa: RUF001  # the typographic apostrophe
    end = at + 2 if apostrophe else at + 1
    return end + 1 if scan.norm(end) == "s" and scan.tight(end) else 0


def _letter_plural(scan: Scan, at: int, *, framed: bool) -> int:
    raw = scan.raw(at).replace("'", "").replace("’", "")  # noqa: RUF001  # the typographic apostrophe
    clear = raw[:1].isupper() and (raw[1:] == "s" or framed) and not scan.dash(at + 1)
    return PLURAL_LETTERS.get(raw.lower(), 0) if clear else 0


def _single(scan: Scan, index: int, before: Frame) -> Atom | None:
    """``UR3``, ``upper right 3``, ``U6``; a unit after it leaves open whether the digit is a tooth."""
    at = before.last
    digit = scan.position(at) or _amount_digit(scan, at)
    more = scan.dash(at + 1) and scan.value(at + 2) > LAST
    if not before.arch or not digit or more or (scan.tight(at + 1) and scan.sort(at + 1) == "word"):
        return None
    if before.side and before.arch != BOTH:
        return of_quadrant(scan, index, before, digit)
    spaced = before.letters and not scan.tight(at)
    if scan.sort(at) == "amount" or before.side or spaced:
        return None
    form = Form((digit,), (digit,))
    meaning = of_form(form, before.arch, "position")
    if not before.letters:
        return Atom(index, at + 1, "position", (meaning,), bare=True).asked("bare-position")
    if _plane(scan, at + 1):
        return Atom(index, at + 1, "position", (meaning,)).asked("cephalometric", "meaning")
    return Atom(index, at + 1, "group", (replace(meaning, inferred=("teeth",) if digit > 1 else ()),), framed=True)


def _amount_digit(scan: Scan, at: int) -> int:
    piece = scan.at(at)
    single = piece is not None and piece.sort == "amount" and piece.norm.isdecimal() and len(piece.norm) == 1
    return int(piece.norm) if piece and single and piece.norm in "12345678" else 0


def _plane(scan: Scan, at: int) -> bool:
    after = at + 1 if scan.dash(at) or scan.norm(at) in ("/", "to") else at
    after += scan.norm(after) == "the"
    return scan.norm(after) in words("number", "planes") or bool(scan.phrase(after, phrases("number", "planes")))
