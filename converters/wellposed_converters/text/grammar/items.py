"""The terminals of the grammar, each with its place in the text and what it stands for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import product
from typing import Any, Final

from wellposed_converters.text.clause import Span
from wellposed_converters.text.lexicon.conditions import Condition
from wellposed_converters.text.places import Place
from wellposed_converters.text.quantities import Amount, Basis, FromTo, Ordinal

HEADS: Final = frozenset(("MEASURE", "MEANS", "MOTION", "STATE", "FACT", "STEPS"))
"""What a statement can be about."""
MOST_DOUBTS: Final = 4
"""Lone numbers, each a tooth or an amount, that a segment may have."""


@dataclass(frozen=True)
class Named:
    """Words that state the numbering of the text."""

    start: int
    end: int
    system: str


Found = Place | Amount | FromTo | Basis | Ordinal | Condition | Named
"""What has a fixed shape and is found before the words are looked at."""


@dataclass(frozen=True)
class Item:
    """One terminal of the grammar."""

    category: str
    name: str
    start: int
    end: int
    value: Any = field(default=None, hash=False)
    words: str = ""


@dataclass(frozen=True)
class Cut:
    """The items of a segment; ``carried`` and ``glue`` are the words that fill no slot, ``unknown`` the rest."""

    items: tuple[Item, ...]
    carried: tuple[Span, ...]
    glue: tuple[Span, ...]
    unknown: tuple[Span, ...]


def alternatives(items: Sequence[Item]) -> Iterator[tuple[Item, ...]]:
    """The rows of items in which each lone number is a tooth or an amount; none when there are too many."""
    doubts = [item for item in items if item.category == "NUMBER"]
    if len(doubts) > MOST_DOUBTS:
        return
    choices = [item.value if item.category == "NUMBER" else (item,) for item in items]
    yield from product(*choices)
