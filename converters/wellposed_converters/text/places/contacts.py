"""Contacts and surfaces in words: ``between 11 and 21``, ``each side of 12``, ``mesial of 34 to mesial of 44``."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Final

from wellposed_converters.text.places.atom import Atom, Reader, first_of
from wellposed_converters.text.places.lists import listed
from wellposed_converters.text.places.meaning import Meaning, in_order, inner_contacts
from wellposed_converters.text.places.notation import beside, neighbours, segment
from wellposed_converters.text.places.numbers import number, on_surface
from wellposed_converters.text.places.pieces import TWO, Scan
from wellposed_converters.text.places.positions import position
from wellposed_converters.text.places.several import combined
from wellposed_converters.text.places.signs import sign
from wellposed_converters.text.places.tooth_words import Phrases, phrases, words
from wellposed_converters.text.places.words import group

TEETH: Final[Sequence[Reader]] = (sign, position, number, group)
SURFACES: Final[Phrases] = phrases("surface", "mesial", "distal", "both")


def contact(scan: Scan, index: int) -> Atom | None:
    """Any contact or surface in words that begins at the index."""
    return _between(scan, index) if scan.norm(index) == "between" else _surfaces(scan, index)


def _between(scan: Scan, index: int) -> Atom | None:
    first = _tooth(scan, index + 1)
    if first is None:
        return None
    second = _tooth(scan, first.last + 1) if scan.norm(first.last) in ("and", "&") else None
    parts = [first, second] if second else [first]
    if not second and first.bare:
        return None
    meanings = combined([part.meanings for part in parts])
    found = [_contact(meaning) for meaning in meanings]
    fits = tuple(meaning for meaning in found if meaning)
    evidence = frozenset().union(*(part.evidence for part in parts)) | _speaks(meanings, fits)
    whole = Atom(
        index, parts[-1].last, "contact", fits or meanings, evidence=evidence, signs=sum(p.signs for p in parts)
    )
    asked = next((part for part in parts if part.asks), None)
    if asked:
        return replace(whole, asks=asked.asks, why=asked.why)
    return whole if fits else whole.asked("between-no-neighbours")


def _tooth(scan: Scan, index: int) -> Atom | None:
    return first_of(TEETH, scan, index + (scan.norm(index) == "the"))


def _contact(meaning: Meaning) -> Meaning | None:
    if meaning.contacts and not meaning.teeth:
        return meaning
    touching = len(meaning.teeth) == TWO and not meaning.needs and neighbours(*meaning.teeth)
    return (
        replace(meaning, teeth=(), runs=(), contacts=in_order([(meaning.teeth[0], meaning.teeth[1])]))
        if touching
        else None
    )


def _speaks(meanings: Iterable[Meaning], fits: Sequence[Meaning]) -> frozenset[str]:
    tried = {meaning.system for meaning in meanings}
    left = {meaning.system for meaning in fits}
    return frozenset(left) if {"FDI", "Universal"} <= tried and len(left) == 1 else frozenset()


def _surfaces(scan: Scan, index: int) -> Atom | None:
    start = index + 1 if scan.norm(index) == "from" else index
    first = _surface(scan, start)
    if first is None:
        return None
    at = first.last
    if scan.norm(at) in words("join", "to"):
        second = _surface(scan, at + 1 + (scan.norm(at + 1) == "the"))
        if second:
            return _from_to(index, first, second)
    return replace(first, first=index) if start == index else None


def _surface(scan: Scan, index: int) -> Atom | None:
    said = scan.phrase(index, SURFACES)
    if not said:
        return None
    inner = listed(scan, said[1] + (scan.norm(said[1]) == "the"), TEETH)
    if inner is None or inner.asks:
        return inner and replace(inner, first=index, sort="surface")
    meanings = tuple(on_surface(meaning, said[0]) for meaning in inner.meanings if meaning.teeth and not meaning.needs)
    if not meanings:
        return replace(inner, first=index, sort="surface").asked("contact-without-arch")
    return replace(
        inner, first=index, sort="contact" if said[0] == "both" else "surface", meanings=meanings, bare=False
    )


def _from_to(index: int, first: Atom, second: Atom) -> Atom:
    """Every contact between a surface of one tooth and a surface of another."""
    pairs = [(one, two) for one in first.meanings for two in second.meanings if one.system == two.system]
    meanings = [found for one, two in pairs if (found := _stretch(one, two))]
    evidence = first.evidence | second.evidence
    whole = Atom(index, second.last, "contact", tuple(meanings), evidence=evidence, signs=first.signs + second.signs)
    return whole if meanings else whole.asked("crosses-arches")


def _stretch(one: Meaning, two: Meaning) -> Meaning | None:
    if len(one.teeth) != 1 or len(two.teeth) != 1:
        return None
    teeth = segment(one.teeth[0], two.teeth[0])
    if teeth is None or len(teeth) == 1:
        return None
    outer = [(end.teeth[0], other) for end in (one, two) if (other := beside(end.teeth[0], end.surface or ""))]
    outside = [pair for pair in outer if pair[1] not in teeth]
    inside = inner_contacts(Meaning(one.system, runs=(teeth,)))
    return Meaning(one.system, contacts=in_order([*inside, *outside]))
