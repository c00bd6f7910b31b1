"""Every word that some part of the reader knows: none of them is ever taken for a slip of the keyboard."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from functools import cache
from importlib import resources
from typing import Any, Final

from wellposed_converters.text.lexicon import vocabulary
from wellposed_converters.text.lexicon.lexer import tokens

DATA: Final = ("places/groups.toml", "places/tooth_words.toml", "quantities/quantity.toml", "layout/layout.toml")


@cache
def known_words() -> frozenset[str]:
    """The words of the lexicon and of the other data files."""
    found = set(vocabulary())
    for name in DATA:
        text = resources.files("wellposed_converters.text").joinpath(name).read_text("utf-8")
        found |= {
            token.norm for word in _strings(tomllib.loads(text)) for token in tokens(word) if token.sort == "word"
        }
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
