"""Arch and side words: alone, before the teeth they frame, and after them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from wellposed_converters.text.places.atom import Atom
from wellposed_converters.text.places.meaning import Meaning
from wellposed_converters.text.places.notation import BOTH, CORNERS, LAST, LEFT, LOWER, RIGHT, UPPER, tooth
from wellposed_converters.text.places.pieces import Scan
from wellposed_converters.text.places.tooth_words import Phrases, phrases, words

ALONE: Final[Phrases] = phrases("arch", UPPER, LOWER, BOTH)
BEFORE: Final[Phrases] = phrases("arch", "upper_before", "lower_before")
SIDES: Final[Phrases] = phrases("side", RIGHT, LEFT, BOTH, "undecided")
SIDES_BEFORE: Final[Phrases] = phrases("side", "right_before", "left_before", "both_before")
QUADRANTS: Final[Phrases] = phrases("quadrant", *CORNERS)
LETTERS: Final = {"U": UPPER, "L": LOWER}
FRACTIONS: Final = frozenset("½¼¾⅓⅔")


@dataclass(frozen=True)
class Frame:
    """What stands before the teeth: an arch, a side, or both; ``letters`` when abbreviated to U, L, UR and so on."""

    last: int
    arch: str | None = None
    side: str | None = None
    letters: bool = False


def frame(scan: Scan, index: int) -> Frame:
    """The arch and side words at the index, in either order; an empty frame where none stands."""
    corner = _corner(scan, index)
    if corner:
        return corner
    found = Frame(index)
    while True:
        more = _arch(scan, found.last) if not found.arch else None
        more = more or (_side(scan, found.last) if not found.side else None)
        if not more:
            return found
        found = Frame(more.last, more.arch or found.arch, more.side or found.side, more.letters or found.letters)


def _corner(scan: Scan, index: int) -> Frame | None:
    name = scan.norm(index)
    named = name in CORNERS and (scan.raw(index).isupper() or scan.tight(index + 1))
    if not named or (scan.tight(index) and scan.sort(index - 1) == "number"):
        return None
    arch, side = CORNERS[name]
    return Frame(index + 1, arch, side, letters=True)


def _arch(scan: Scan, index: int) -> Frame | None:
    said = scan.phrase(index, ALONE)
    if said:
        return Frame(said[1], said[0])
    before = scan.phrase(index, BEFORE)
    if before and not (scan.norm(index) == "max" and scan.sort(index - 1) in ("number", "amount", "word")):
        return Frame(before[1], before[0].removesuffix("_before"))
    letter = LETTERS.get(scan.raw(index) if not scan.tight(index + 1) else scan.raw(index).upper())
    if letter and _free(scan, index):
        return Frame(index + 1, letter, letters=True)
    return None


def _free(scan: Scan, index: int) -> bool:
    """Whether a single letter stands by itself or directly before a number, and not for ``unit``."""
    unit = scan.sort(index - 1) in ("number", "amount") and scan.tight(index)
    glued = (
        scan.tight(index + 1)
        and scan.sort(index + 1) != "number"
        and scan.norm(index + 1) not in (".", ",", ":", ";", ")")
    )
    return (
        not unit
        and not glued
        and scan.norm(index - 1) not in FRACTIONS
        and not (scan.tight(index) and scan.dash(index - 1))
    )


def _side(scan: Scan, index: int) -> Frame | None:
    said = scan.phrase(index, SIDES_BEFORE)
    return Frame(said[1], None, said[0].removesuffix("_before")) if said else None


def arch_alone(scan: Scan, index: int) -> Atom | None:
    """``upper arch``, ``U/L``, ``both arches``, ``lower``; ``lower the bite`` is a verb."""
    at = index
    filler = scan.phrase(index, phrases("arch", "fillers"))
    if filler and scan.phrase(filler[1], ALONE) and scan.norm(index) != "the":
        at = filler[1]
    said = scan.phrase(at, ALONE)
    if said and not (scan.norm(said[1]) == "the" and said[1] == at + 1):
        return Atom(index, said[1], "arch", (Meaning("words", arch=said[0]),))
    letter = LETTERS.get(scan.raw(index))
    if letter is None or not _free(scan, index):
        return None
    upper = (Meaning("words", arch=letter),)
    if letter == UPPER:
        return Atom(index, index + 1, "arch", upper)
    return Atom(index, index + 1, "letter", (*upper, Meaning("words", side=LEFT))).asked("letter-l", "meaning")


def side_alone(scan: Scan, index: int) -> Atom | None:
    """``right side``, ``both sides``, ``bilaterally``; ``to the right`` is a direction."""
    said = scan.phrase(index, SIDES)
    if not said or scan.norm(index - 1) == "to" or (scan.norm(index - 1) == "the" and scan.norm(index - 2) == "to"):
        return None
    if said[0] == "undecided":
        both = (Meaning("words", side=BOTH), Meaning("words", side=RIGHT), Meaning("words", side=LEFT))
        return Atom(index, said[1], "side", both).asked("either-side")
    return Atom(index, said[1], "side", (Meaning("words", side=said[0]),))


def quadrant(scan: Scan, index: int) -> Atom | None:
    """``upper right quadrant``, ``Q1``."""
    said = scan.phrase(index, QUADRANTS)
    return Atom(index, said[1], "group", (_all(said[0]),), framed=True) if said else None


def corner_alone(scan: Scan, index: int) -> Atom | None:
    """``UR`` alone is asked: ``UL`` may be ``U/L`` without its stroke, ``LL`` the lower lip."""
    corner = _corner(scan, index)
    if corner is None or not scan.raw(index).isupper():
        return None
    meanings: tuple[Meaning, ...] = (_all(scan.norm(index)),)
    if scan.norm(index) == "ul":
        meanings = (*meanings, Meaning("words", arch=BOTH))
    return Atom(index, index + 1, "letter", meanings).asked("quadrant-alone", "meaning")


def _all(corner: str) -> Meaning:
    arch, side = CORNERS[corner]
    teeth = [tooth(arch, side, position) for position in range(LAST, 0, -1)]
    row = tuple(one for one in (teeth if side == RIGHT else reversed(teeth)) if one)
    return Meaning("words", row)


def suffix(scan: Scan, index: int) -> Frame | None:
    """The arch or side that follows its teeth; only where nothing after it could claim the word."""
    at = index
    listed = scan.norm(at) == ","
    bracket = scan.norm(at + listed) == "("
    at += listed + bracket
    joined = scan.phrase(at, phrases("join", "suffix"))
    at = joined[1] if joined else at
    if scan.broken(at) and at > index:
        return None
    side = scan.phrase(index, SIDES)
    if side and side[0] != "undecided":
        return Frame(side[1], None, side[0])
    said = _longest(scan, at, needs_both=listed and not bracket)
    if said is None or (bracket and scan.norm(said.last) != ")"):
        return None
    return replace(said, last=said.last + 1) if bracket else said


def _longest(scan: Scan, at: int, *, needs_both: bool) -> Frame | None:
    """The longest arch phrase whose next piece leaves it alone."""
    found: Frame | None = None
    for parts, arch in sorted(ALONE.get(scan.norm(at), ()), key=lambda row: -len(row[0])):
        said = scan.phrase(at, {parts[0]: ((parts, arch),)})
        if said and _left_alone(scan, said[1]) and not (needs_both and arch != BOTH):
            found = Frame(said[1], arch)
            break
    return found


def _left_alone(scan: Scan, at: int) -> bool:
    closed = scan.at(at) is None or scan.broken(at) or scan.norm(at) in (".", ";", ":", ",", ")", "|")
    return closed or scan.sort(at) == "amount" or scan.norm(at) in words("join", "after_suffix")
