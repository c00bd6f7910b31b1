"""The words of ``quantity.toml``, and a row of tokens in which they are looked for."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from typing import Any, Final

from wellposed_converters.text.lexicon.lexer import Token, tokens
from wellposed_converters.text.tables import read_table

DASHES: Final = frozenset("-‐‑‒–—−")  # noqa: RUF001  # every dash that people write
POINTS: Final = frozenset(".·∙⋅")
DECIMAL: Final = POINTS | {","}

Phrases = Mapping[str, tuple[tuple[tuple[str, ...], str], ...]]
"""First word to the phrases that begin with it, the longest first, each with what it stands for."""


@cache
def _data() -> dict[str, Any]:
    return read_table(__package__, "quantity.toml")


@cache
def words(section: str, name: str) -> frozenset[str]:
    """A list of the file."""
    return frozenset(_data()[section][name])


@cache
def phrases(section: str, *names: str) -> Phrases:
    """Lists of a section, all of them if none is named; each phrase stands for the name of its list."""
    table = _data()[section]
    return _by_first((form, name) for name in names or table for form in table[name])


@cache
def negated() -> Phrases:
    """``no more than``, ``must not be below``: every denial with every comparison."""
    table = _data()["negated"]
    pairs = (("at_most", "more"), ("at_least", "less"))
    return _by_first((f"{no} {form}", bound) for bound, way in pairs for no in table["not"] for form in table[way])


def asks(why: str) -> str:
    """The type of question that a doubt is."""
    return str(_data()["asks"][why])


def ratio(name: str) -> Fraction:
    """The number that a list is named after."""
    return Fraction(name)


def _by_first(rows: Iterable[tuple[str, str]]) -> Phrases:
    found: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for form, name in rows:
        parts = tuple(token.norm for token in _split(tokens(form)))
        found.setdefault(parts[0], []).append((parts, name))
    return {first: tuple(sorted(some, key=lambda row: -len(row[0]))) for first, some in found.items()}


def _split(row: Iterable[Token]) -> Iterator[Token]:
    """The tokens, a fraction sign written before letters by itself."""
    for token in row:
        if token.sort == "word" and len(token.norm) > 1 and not token.norm[0].isalpha():
            yield replace(token, norm=token.norm[0], end=token.start + 1)
            yield replace(token, norm=token.norm[1:], start=token.start + 1)
        else:
            yield token


@dataclass(frozen=True)
class Row:
    """The tokens of a stretch of text. ``blocked`` are indexes that something else has taken."""

    text: str
    row: tuple[Token, ...]
    blocked: frozenset[int] = frozenset()

    def norm(self, index: int) -> str:
        """Its text without case; nothing for an index outside or taken."""
        return self.row[index].norm if 0 <= index < len(self.row) and index not in self.blocked else ""

    def sort(self, index: int) -> str:
        """``word``, ``number`` or ``sign``; nothing for an index outside or taken."""
        return self.row[index].sort if 0 <= index < len(self.row) and index not in self.blocked else ""

    def any_sort(self, index: int) -> str:
        """The sort, taken or not."""
        return self.row[index].sort if 0 <= index < len(self.row) else ""

    def tight(self, index: int) -> bool:
        """Whether nothing stands between the token and the one before it."""
        return 0 < index < len(self.row) and self.row[index - 1].end == self.row[index].start

    def broken(self, index: int) -> bool:
        """Whether a line ends between the token and the one before it, or one of them is outside."""
        inside = 0 < index < len(self.row)
        return not inside or "\n" in self.text[self.row[index - 1].end : self.row[index].start]

    def dash(self, index: int) -> bool:
        """Whether it is a dash."""
        return self.norm(index) in DASHES

    def start(self, index: int) -> int:
        """Where the token begins."""
        return self.row[index].start

    def end(self, last: int) -> int:
        """Where the token before ``last`` ends."""
        return self.row[last - 1].end

    def phrase(self, index: int, table: Phrases) -> tuple[str, int] | None:
        """What the longest phrase at the index stands for, and the index after it."""
        for parts, name in table.get(self.norm(index), ()):
            last = self._after(index, parts)
            if last:
                return name, last
        return None

    def said(self, index: int, last: int) -> str:
        """The tokens with single spaces, a full stop joined to its word."""
        return " ".join(self.row[at].norm for at in range(index, last)).replace(" .", ".")

    def _after(self, index: int, parts: Sequence[str]) -> int:
        for nth, part in enumerate(parts):
            if nth and part not in DASHES and self.dash(index) and self.tight(index) and self.tight(index + 1):
                index += 1
            apart = nth and (self.broken(index) or (part == "." and not self.tight(index)))
            if self.norm(index) != part or apart:
                return 0
            index += 1
        return index


def row(text: str, start: int, end: int, taken: Collection[tuple[int, int]] = ()) -> Row:
    """The tokens of ``text[start:end]``; those that touch a span of ``taken`` are blocked."""
    some = tuple(_split(tokens(text, start, end)))
    blocked = frozenset(
        at for at, token in enumerate(some) if any(token.start < last and first < token.end for first, last in taken)
    )
    return Row(text, some, blocked)
