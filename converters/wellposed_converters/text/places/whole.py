"""The whole place: a list with what it excepts, and with the words or numbers that name it a second time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from wellposed_converters.text.places.atom import Atom, Reader
from wellposed_converters.text.places.contacts import contact
from wellposed_converters.text.places.frame import arch_alone, corner_alone, quadrant, side_alone
from wellposed_converters.text.places.lists import listed
from wellposed_converters.text.places.meaning import NUMERIC, Meaning, except_for
from wellposed_converters.text.places.notation import BOTH, arch_of
from wellposed_converters.text.places.numbers import glued, number
from wellposed_converters.text.places.pieces import Scan
from wellposed_converters.text.places.positions import position
from wellposed_converters.text.places.several import combined
from wellposed_converters.text.places.signs import sign
from wellposed_converters.text.places.tooth_words import phrases
from wellposed_converters.text.places.words import group

READERS: Final[Sequence[Reader]] = (
    sign,
    contact,
    quadrant,
    position,
    group,
    number,
    glued,
    side_alone,
    arch_alone,
    corner_alone,
)
NUMBERS: Final = frozenset(("number", "contact", "surface"))


def whole(scan: Scan, index: int) -> Atom | None:
    """The longest place that begins at the index."""
    atom = listed(scan, index, READERS)
    if atom is None:
        return None
    return _moved(scan, _excepting(scan, _named_twice(scan, atom)))


def _named_twice(scan: Scan, atom: Atom) -> Atom:
    """``upper 11 21``, ``lower central incisors 31 41``, ``upper left canine (13)``, ``13 (upper right canine)``."""
    bracket = scan.norm(atom.last) == "("
    other = listed(scan, atom.last + bracket, READERS)
    if other is None or scan.broken(other.first) or (bracket and scan.norm(other.last) != ")"):
        return atom
    numbers, words_ = (atom, other) if atom.sort in NUMBERS else (other, atom)
    if (
        numbers.sort not in NUMBERS
        or words_.sort in NUMBERS
        or words_.sort == "side"
        or not _names(scan, numbers, words_, bracket)
    ):
        return atom
    return _agreed(numbers, words_, atom.first, other.last + bracket)


def _names(scan: Scan, numbers: Atom, words_: Atom, bracket: bool) -> bool:
    """Whether the two stand for each other, rather than side by side."""
    if words_.sort in ("arch", "letter"):
        return words_.first < numbers.first and not bracket and not scan.position(numbers.first)
    if bracket:
        return words_.sort in ("group", "tooth")
    return words_.single or (words_.sort == "group" and words_.first < numbers.first and not numbers.bare)


def _agreed(numbers: Atom, words_: Atom, first: int, last: int) -> Atom:
    """The meanings of the numbers that the words allow, and the numbering that this speaks for."""
    allowed = [meaning for meaning in numbers.meanings if any(_allows(one, meaning) for one in words_.meanings)]
    atom = replace(numbers, first=first, last=last, bare=numbers.bare and words_.sort in ("arch", "letter"))
    tried = {meaning.system for meaning in numbers.meanings} & NUMERIC
    left = {meaning.system for meaning in allowed} & NUMERIC
    if not allowed:
        silent = replace(atom, evidence=frozenset())
        return silent.asked(numbers.why or "words-against-number", numbers.asks or "teeth")
    speaks = numbers.evidence | (left if len(tried) > len(left) == 1 else frozenset())
    return replace(atom, meanings=tuple(allowed), evidence=speaks)


def _allows(words_: Meaning, numbers: Meaning) -> bool:
    named = numbers.named()
    if not named:
        return False
    if words_.arch:
        return words_.arch == BOTH or all(arch_of(tooth) == words_.arch for tooth in named)
    if words_.side and not words_.teeth:
        return False
    if words_.positions:
        return named <= {tooth for form in words_.positions for row in form.rows(BOTH) for tooth in row}
    return named <= set(words_.teeth)


def _excepting(scan: Scan, atom: Atom) -> Atom:
    """``all premolars except 15``, ``3-3 but not 11``: what is left."""
    comma = scan.norm(atom.last) == ","
    said = scan.phrase(atom.last + comma, phrases("join", "except"))
    if not said or atom.sort in ("letter", "side"):
        return atom
    inner = scan.phrase(said[1], phrases("join", "except_inner"))
    at = inner[1] if inner else said[1]
    other = listed(scan, at + (inner is not None and scan.norm(at) == "the"), READERS)
    if other is None or other.sort in ("arch", "side", "letter"):
        return atom
    return _less(atom, other)


def _less(atom: Atom, other: Atom) -> Atom:
    found = [left for one, two in _pairs(atom, other) if "teeth" not in (left := _left(one, two)).needs]
    rest = replace(
        atom, last=other.last, evidence=atom.evidence | other.evidence, signs=atom.signs + other.signs, bare=False
    )
    if atom.asks or other.asks:
        return replace(rest, asks=atom.asks or other.asks, why=atom.why or other.why)
    if not found:
        return rest.asked("exception-outside")
    tried = {two.system for two in other.meanings} & NUMERIC
    left_over = {one.system for one in found} & NUMERIC
    speaks = frozenset(left_over) if len(tried) > len(left_over) == 1 else frozenset()
    return replace(rest, meanings=tuple(found), evidence=rest.evidence | speaks)


def _pairs(atom: Atom, other: Atom) -> list[tuple[Meaning, Meaning]]:
    """What is meant with what is excepted from it, in one numbering."""
    systems = {one.system for one in (*atom.meanings, *other.meanings) if one.system in NUMERIC} or {""}
    return [
        (one, two)
        for system in sorted(systems)
        for one in atom.meanings
        for two in other.meanings
        if (one.system == system or one.system not in NUMERIC) and (two.system == system or two.system not in NUMERIC)
    ]


def _left(one: Meaning, two: Meaning) -> Meaning:
    system = next((name for name in (one.system, two.system) if name in NUMERIC), one.system)
    return replace(except_for(one, two), system=system)


def _moved(scan: Scan, atom: Atom) -> Atom:
    """``13 in place of 12``: the number goes with the tooth, not with its place; asked all the same."""
    said = scan.phrase(atom.last, phrases("join", "instead"))
    other = listed(scan, said[1], READERS) if said else None
    if other is None or other.sort not in ("number", "tooth"):
        return atom
    meanings = combined([atom.meanings, other.meanings])
    return replace(atom, last=other.last, meanings=meanings, evidence=atom.evidence | other.evidence, bare=False).asked(
        "transposed"
    )
