"""Teeth of a named quadrant: ``UR3``, ``UL 1-3``, ``UR3-UL3``, ``UR3/2``, ``URE``."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from wellposed_converters.text.places.atom import UNKNOWN, Atom
from wellposed_converters.text.places.frame import Frame, frame
from wellposed_converters.text.places.meaning import Form, Meaning, linked, of_form
from wellposed_converters.text.places.notation import (
    BOTH,
    CORNERS,
    QUADRANTS,
    from_corner,
    in_mouth_order,
    neighbours,
    segment,
)
from wellposed_converters.text.places.pieces import TWO, Scan
from wellposed_converters.text.places.tooth_words import words

ROMAN: Final = frozenset(("ii", "iii", "iv", "v"))
AMBIGUOUS_LETTERS: Final = frozenset("AI")
"""URA, LLA and the like are also removable appliances and lingual arches."""


def in_quadrant(index: int, end: int, before: Frame, one: int, two: int) -> Atom:
    """``UL 1-3`` is one side's teeth; ``UL 3-3`` is U/L 3-3, or a slip."""
    arch, side = before.arch or "", before.side or ""
    if one == two:
        form = Form(tuple(range(one, 0, -1)), tuple(range(1, one + 1)), run=True)
        why = "ul-mirror" if before.letters else "mirror-in-quadrant"
        readings = [of_form(form, name, "position") for name in dict.fromkeys((BOTH, arch))]
        return Atom(index, end, "position", tuple(readings)).asked(why)
    quadrant = QUADRANTS[arch, side] * 10
    teeth = segment(quadrant + one, quadrant + two) or ()
    return Atom(index, end, "tooth", (Meaning("alphanumeric", teeth, runs=(teeth,)),), framed=True)


def letter(scan: Scan, index: int, before: Frame) -> Atom | None:
    """``URE``, ``UR E``, ``upper left E``; ``UR V`` may be a primary tooth in Roman letters."""
    glued = _glued_letter(scan, index)
    if glued:
        return glued
    at = before.last
    if not before.side or not before.arch or before.arch == BOTH or scan.sort(at) != "word" or scan.broken(at):
        return None
    if scan.norm(at) in ROMAN and scan.raw(at).isupper():
        return Atom(index, at + 1, "tooth", (UNKNOWN,)).asked("roman")
    name = scan.raw(at)
    corner = next(key for key, where in CORNERS.items() if where == (before.arch, before.side))
    tooth = from_corner(corner, name) if name.isupper() and name not in AMBIGUOUS_LETTERS else None
    return Atom(index, at + 1, "tooth", (Meaning("alphanumeric", (tooth,)),), framed=True) if tooth else None


def _glued_letter(scan: Scan, index: int) -> Atom | None:
    raw, norm = scan.raw(index), scan.norm(index)
    if scan.sort(index) != "word" or norm[:2] not in CORNERS or not raw.isupper() or not norm[2:]:
        return None
    if norm[2:] in ROMAN:
        return Atom(index, index + 1, "tooth", (UNKNOWN,)).asked("roman")
    tooth = from_corner(norm[:2], norm[2:])
    if not tooth:
        return None
    atom = Atom(index, index + 1, "tooth", (Meaning("alphanumeric", (tooth,)),), framed=True)
    return atom.asked("appliance-or-tooth", "meaning") if norm[2:] == "a" else atom


def of_quadrant(scan: Scan, index: int, before: Frame, digit: int) -> Atom | None:
    at = before.last
    tooth = QUADRANTS[before.arch or "", before.side or ""] * 10 + digit
    end, meaning = at + 1, Meaning("alphanumeric", (tooth,))
    atom = Atom(index, end, "tooth", (meaning,), bare=not before.letters, framed=True, single=True)
    if scan.sort(at) == "amount":
        return atom.asked("quadrant-or-amount", "meaning") if before.letters else None
    return _to_another(scan, atom, tooth) or _more_digits(scan, atom, tooth)


def _to_another(scan: Scan, atom: Atom, tooth: int) -> Atom | None:
    """``UR3-UL3``, ``UR3 to UL3``, ``UR3/UR2``, ``UR3/2``."""
    at = atom.last
    stroke = scan.norm(at) == "/"
    if not (stroke or scan.dash(at) or scan.norm(at) in words("join", "to")) or scan.broken(at + 1):
        return None
    after = frame(scan, at + 1)
    digit = scan.position(after.last)
    same = stroke and after.last == at + 1 and scan.tight(at + 1)
    if not digit or _grows(scan, after.last + 1) or not ((after.arch and after.side) or same):
        return None
    other = QUADRANTS[after.arch, after.side] * 10 + digit if after.arch and after.side else tooth // 10 * 10 + digit
    whole = replace(atom, last=after.last + 1, bare=False, single=False)
    if stroke:
        touching = neighbours(tooth, other)
        pair = in_mouth_order((tooth, other))
        meaning = Meaning("alphanumeric", contacts=((pair[0], pair[1]),)) if touching else Meaning("alphanumeric", pair)
        return replace(whole, sort="contact" if touching else "tooth", meanings=(meaning,))
    teeth = segment(tooth, other)
    if teeth is None:
        return whole.with_((linked("alphanumeric", tooth, other),)).asked("crosses-arches")
    return whole.with_((Meaning("alphanumeric", teeth, runs=(teeth,)),))


def _grows(scan: Scan, at: int) -> bool:
    return scan.tight(at) and scan.sort(at) in ("word", "number", "digits", "amount")


def _more_digits(scan: Scan, atom: Atom, tooth: int) -> Atom:
    """``UR3,4``: more teeth of the quadrant, written without space; with space (``UR3 and 4``) it is asked."""
    teeth, end, tight = [tooth], atom.last, True
    while (at := _next_digit(scan, end)) and not scan.broken(at):
        tight = tight and scan.tight(end) and scan.tight(at) and at == end + 1
        teeth, end = [*teeth, tooth // 10 * 10 + scan.position(at)], at + 1
    if len(teeth) == 1:
        return atom
    row = Meaning("alphanumeric", in_mouth_order(teeth))
    whole = replace(atom, last=end, meanings=(row,), single=False, bare=False)
    return whole if tight else whole.asked("quadrant-of-the-next")


def _next_digit(scan: Scan, end: int) -> int:
    """The index of one more position after a comma or a joining word, or 0."""
    comma = scan.norm(end) == ","
    joined = scan.norm(end + comma) in ("&", "+", *words("join", "list"))
    at = end + comma + joined
    ranged = scan.dash(at + 1) or scan.norm(at + 1) in ("/", "|", *words("join", "to"))
    return at if (comma or joined) and scan.position(at) and not _grows(scan, at + 1) and not ranged else 0


def glued_positions(scan: Scan, index: int, before: Frame) -> Atom | None:
    """``UR654``: positions without anything between them."""
    at = before.last
    digits = scan.norm(at) if scan.sort(at) in ("number", "digits") else ""
    known = before.letters and before.side and before.arch and scan.tight(at)
    if not known or len(digits) < TWO or not set(digits) <= set("12345678"):
        return None
    quadrant_ = QUADRANTS[before.arch or "", before.side or ""] * 10
    row = Meaning("alphanumeric", in_mouth_order(quadrant_ + int(digit) for digit in digits))
    return Atom(index, at + 1, "tooth", (row,)).asked("glued")
