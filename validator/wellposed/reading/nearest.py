"""The known name a misspelt one was most likely meant to be."""

from __future__ import annotations

from collections.abc import Iterable

from rapidfuzz.distance import OSA

_LETTERS_NEEDED = (1, 4, 10)
"""For no edit, one, two. Opposites must not be offered: extrusion and intrusion are two apart, of nine."""

_LONGEST = 64
_SAME = str.maketrans("", "", " _-")


def nearest(name: str, known: Iterable[str]) -> str | None:
    """The one known name within two edits (case, hyphens and underscores aside); none where two are."""
    if len(name) > _LONGEST:
        return None
    ranked = sorted((distance, other) for other in known for distance in _distance(name, other))
    if not ranked or (len(ranked) > 1 and ranked[0][0] == ranked[1][0]):
        return None
    return ranked[0][1]


def _distance(name: str, other: str) -> list[int]:
    """How many edits apart, if close enough to count."""
    one, two = _plain(name), _plain(other)
    edits = OSA.distance(one, two)
    close = edits < len(_LETTERS_NEEDED) and max(len(one), len(two)) >= _LETTERS_NEEDED[edits]
    return [edits] if close else []


def _plain(name: str) -> str:
    return name.lower().translate(_SAME)
