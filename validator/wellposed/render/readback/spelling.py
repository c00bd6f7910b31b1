"""British and American words: one table, and nothing but these words differs. Ids and quoted words stay as they are."""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType

__all__ = ["AMERICAN", "BRITISH", "USAGES", "WORDS", "spelt"]

BRITISH, AMERICAN = "british", "american"
USAGES = (BRITISH, AMERICAN)

WORDS: tuple[tuple[str, str], ...] = (
    ("centreline", "midline"),
    ("centrelines", "midlines"),
    ("levelling", "leveling"),
    ("bevelled", "beveled"),
    ("towards", "toward"),
    ("forwards", "forward"),
    ("backwards", "backward"),
    ("outwards", "outward"),
    ("inwards", "inward"),
    ("afterwards", "afterward"),
)
"""British, American."""

_INTO: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {usage: {word: pair[place] for pair in WORDS for word in pair} for place, usage in enumerate(USAGES)}
)
_GUARDED = re.compile(r"(“[^”]*”|\[[^\]]*\])")
_WORD = re.compile(r"[A-Za-z]+")


def spelt(text: str, usage: str) -> str:
    """A sentence in a usage. KeyError for another usage."""
    into = _INTO[usage]
    parts = _GUARDED.split(text)
    free = [_WORD.sub(lambda match: _word(match[0], into), part) for part in parts[::2]]
    return "".join(part for pair in zip(free, [*parts[1::2], ""], strict=True) for part in pair)


def _word(word: str, into: Mapping[str, str]) -> str:
    found = into.get(word.lower(), word)
    return found.capitalize() if word[0].isupper() and found != word else found
