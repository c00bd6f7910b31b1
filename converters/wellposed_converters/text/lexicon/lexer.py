"""Words, numbers and signs of a text, with their offsets. Nothing but white space lies between two tokens."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

TOKEN: Final = re.compile(r"(?P<word>[^\W\d_]+(?:['\u2019][^\W\d_]+)*)|(?P<number>\d+)|(?P<sign>\S)")


@dataclass(frozen=True)
class Token:
    """One word, run of digits or sign; ``norm`` is what the lexicon is asked for."""

    sort: str
    norm: str
    start: int
    end: int


def tokens(text: str, start: int = 0, end: int | None = None) -> tuple[Token, ...]:
    """The tokens of ``text[start:end]``, offsets in ``text``."""
    stop = len(text) if end is None else end
    return tuple(
        Token(found.lastgroup or "", found.group().casefold().replace("\u2019", "'"), found.start(), found.end())
        for found in TOKEN.finditer(text, start, stop)
    )
