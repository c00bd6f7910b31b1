"""Which tooth numbering a text uses: stated, or shown by what exists in one numbering only; never by habit."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from wellposed_converters.text.clause import Span
from wellposed_converters.text.lexicon.lexer import tokens
from wellposed_converters.text.places.meaning import NUMERIC, Meaning, Place
from wellposed_converters.text.places.notation import arch_of
from wellposed_converters.text.places.pieces import Piece, Scan
from wellposed_converters.text.places.tooth_words import phrases, words

SYSTEMS: Final = ("FDI", "Universal", "Palmer", "Haderup")
HEADING: Final = re.compile(
    r"(?im)(?:^|(?<=[.;])[ \t]+)[ \t]*(upper|lower|maxilla|mandible|maxillary|mandibular)[ \t]*:"
)
SENTENCE: Final = re.compile(r"\n|[.;](?=\s|$)")
UPPER_HEADS: Final = ("upper", "maxilla", "maxillary")


@dataclass(frozen=True)
class Numbering:
    """The numbering of a text.

    system        None while undecided
    stated        said in words, not only shown
    conflict      several are stated, or the evidence points both ways
    dotted        ``1.1`` is stated to be a tooth
    evidence      what speaks for which numbering, and where
    stated_spans  where it is said
    """

    system: str | None
    stated: bool = False
    conflict: bool = False
    dotted: bool = False
    evidence: tuple[tuple[str, int, int], ...] = ()
    stated_spans: tuple[Span, ...] = ()


def stated(text: str) -> Numbering:
    """What the words of the text say of its numbering, before any number is looked at."""
    scan = Scan(text, tuple(Piece(token.sort, token.norm, token.start, token.end) for token in tokens(text)))
    found: list[tuple[str, Span]] = []
    index = 0
    while index < len(scan.pieces):
        said = _stated_at(scan, index)
        if said:
            found.append((said[0], (scan.pieces[index].start, scan.pieces[said[1] - 1].end)))
        index = said[1] if said else index + 1
    systems = {"FDI" if name == "dotted" else name for name, _ in found}
    system = next(iter(systems)) if len(systems) == 1 else None
    dotted = any(name == "dotted" for name, _ in found)
    return Numbering(system, bool(found), len(systems) > 1, dotted, (), tuple(span for _, span in found))


def _stated_at(scan: Scan, index: int) -> tuple[str, int] | None:
    said = scan.phrase(index, phrases("stated", *SYSTEMS, "dotted", "Universal_alone"))
    if not said or scan.norm(index - 1) in words("stated", "not"):
        return None
    if said[0] != "Universal_alone":
        return said
    before, after = scan.norm(index - 1), scan.norm(said[1])
    alone = index == 0 or scan.broken(index) or before in (".", "(", ";", ":", "in", "using", "with", ",", "=")
    closed = scan.at(said[1]) is None or scan.broken(said[1]) or after in (".", ")", ";", ":", ",")
    return ("Universal", said[1]) if alone and closed else None


def settle(text: str, places: Sequence[Place]) -> Numbering:
    """The numbering of the text (R1, R2): stated, else the one that all evidence speaks for.

    Pass the places that are taken as teeth. A lone ``#`` is no evidence, for ``#13`` is also a fractured 13.
    """
    said = stated(text)
    evidence = tuple(sorted(_evidence(text, places), key=lambda row: row[1:]))
    if said.stated:
        return Numbering(said.system, True, said.conflict, said.dotted, evidence, said.stated_spans)
    systems = {system for system, _, _ in evidence if system in NUMERIC}
    if len(systems) > 1:
        return Numbering(None, conflict=True, evidence=evidence)
    return Numbering(next(iter(systems), None), evidence=evidence)


def _evidence(text: str, places: Sequence[Place]) -> list[tuple[str, int, int]]:
    found = [(system, place.start, place.end) for place in places for system in place.evidence]
    signed = [place for place in places if place.signs]
    if sum(place.signs for place in signed) > 1:
        found += [("Universal", place.start, place.end) for place in signed if "Universal" not in place.evidence]
    return found + [row for place in places for row in _under_heading(text, place)]


def _under_heading(text: str, place: Place) -> list[tuple[str, int, int]]:
    """A number after ``Upper:`` in the same sentence is an upper tooth."""
    arch = _heading(text, place.start)
    numeric = [meaning for meaning in place.meanings if meaning.system in ("FDI", "Universal") and not meaning.needs]
    if arch is None or len(numeric) == 1 or place.bare_number or place.asks:
        return []
    fits = [meaning.system for meaning in numeric if all(arch_of(tooth) == arch for tooth in meaning.named())]
    return [(fits[0], place.start, place.end)] if len(fits) == 1 else []


def _heading(text: str, at: int) -> str | None:
    heads = list(HEADING.finditer(text, 0, at))
    if not heads or SENTENCE.search(text, heads[-1].end(), at):
        return None
    return "upper" if heads[-1].group(1).lower() in UPPER_HEADS else "lower"


def resolve(place: Place, numbering: Numbering) -> tuple[Meaning, ...]:
    """The meanings that the numbering leaves.

    None: impossible in it, or (undecided numbering) possible in one that nothing speaks for. Several: to be asked.
    """
    exact = [one for one in place.meanings if one.system == numbering.system]
    free = [one for one in place.meanings if one.system not in NUMERIC]
    if numbering.system is None:
        return _undecided(place, numbering)
    if place.signs and numbering.system == "FDI":
        return ()
    if numbering.system in ("Universal", "Haderup") and exact:
        return tuple(exact)
    return tuple(dict.fromkeys((*exact, *free)))


def _undecided(place: Place, numbering: Numbering) -> tuple[Meaning, ...]:
    numeric = [one for one in place.meanings if one.system in NUMERIC]
    if not numeric or len(place.meanings) > 1:
        return place.meanings
    shown = len(place.evidence & NUMERIC) == 1 or place.bare_number
    return place.meanings if shown and not numbering.conflict else ()
