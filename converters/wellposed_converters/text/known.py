"""Every word that some part of the reader knows: none of them is ever taken for a slip of the keyboard."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any, Final

from wellposed_converters.text.lexicon import vocabulary
from wellposed_converters.text.lexicon.lexer import tokens
from wellposed_converters.text.tables import read_table

DATA: Final = ("places/groups.toml", "places/tooth_words.toml", "quantities/quantity.toml", "layout/layout.toml")


@cache
def known_words() -> frozenset[str]:
    """The words of the lexicon and of the other data files."""
    found = set(vocabulary())
    for name in DATA:
        words = _strings(read_table(__package__, name))
        found |= {token.norm for word in words for token in tokens(word) if token.sort == "word"}
    return frozenset(found)


def _strings(data: Any) -> Iterator[str]:
    if isinstance(data, str):
        yield data
    elif isinstance(data, dict):
        for key, value in data.items():
            yield key
            yield from _strings(value)
    elif isinstance(data, list):
        for value in data:
            yield from _strings(value)
