"""Tooth references of a text: where they stand and everything that each can mean.

A place is as long as it goes, its arch words with it. Nothing is decided here that the words leave open: numbers
keep a meaning in every numbering that has them, and what no numbering would settle is a question of its own.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import Final

from wellposed_converters.text.places.atom import Atom
from wellposed_converters.text.places.meaning import Place
from wellposed_converters.text.places.pieces import Scan
from wellposed_converters.text.places.scan import scan
from wellposed_converters.text.places.whole import whole

NEAR: Final = 8
"""Characters on either side of a stretch that say where its first and last word end."""


def find_places(text: str, start: int = 0, end: int | None = None, *, dotted: bool = False) -> tuple[Place, ...]:
    """The places of ``text[start:end]`` in order, none overlapping another; ``dotted`` where ``1.1`` is a tooth."""
    last = len(text) if end is None else end
    first = max(0, start - NEAR)
    found = _found(text[first : last + NEAR], start - first, last - first, dotted)
    return tuple(replace(one, start=one.start + first, end=one.end + first) for one in found)


@lru_cache(maxsize=256)
def _found(text: str, start: int, end: int, dotted: bool) -> tuple[Place, ...]:
    """A stretch is looked at more than once: for the numbering of the whole text, and for what it says."""
    pieces = scan(text, start, end, dotted=dotted)
    found: list[Place] = []
    index = 0
    while index < len(pieces.pieces):
        atom = whole(pieces, index)
        if atom is None:
            index += 1
        else:
            found.append(_place(pieces, atom))
            index = atom.last
    return tuple(found)


def _place(pieces: Scan, atom: Atom) -> Place:
    quiet = atom.bare and atom.first in pieces.measured
    return Place(
        pieces.pieces[atom.first].start,
        pieces.pieces[atom.last - 1].end,
        atom.meanings,
        atom.asks,
        atom.why,
        atom.bare,
        frozenset() if quiet or (atom.bare and "Universal" in atom.evidence) else atom.evidence,
        atom.signs,
        atom.loose,
        atom.choice,
    )
