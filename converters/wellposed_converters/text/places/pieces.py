"""The pieces of places: words, signs, numbers that may be teeth, numbers that are amounts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from wellposed_converters.text.places.notation import LAST
from wellposed_converters.text.places.tooth_words import Phrases, words

DASHES: Final = frozenset("-‐‑‒–—−")  # noqa: RUF001  # every dash that people write
TWO: Final = 2
"""Digits of a tooth number."""


@dataclass(frozen=True)
class Piece:
    """``sort`` is ``word``, ``sign``, ``number`` (up to two digits), ``digits`` (more) or ``amount``."""

    sort: str
    norm: str
    start: int
    end: int
    dotted: bool = False

    @property
    def value(self) -> int:
        """The number; -1 for what is none."""
        return int(self.norm) if self.sort in ("number", "digits") else -1


@dataclass(frozen=True)
class Scan:
    """The pieces of a text, with the questions that readers of places ask of them. Any index may be asked about."""

    text: str
    pieces: tuple[Piece, ...]

    def at(self, index: int) -> Piece | None:
        """The piece, if there is one."""
        return self.pieces[index] if 0 <= index < len(self.pieces) else None

    def sort(self, index: int) -> str:
        """Its sort, or nothing."""
        return self.pieces[index].sort if 0 <= index < len(self.pieces) else ""

    def norm(self, index: int) -> str:
        """Its text without case, or nothing."""
        return self.pieces[index].norm if 0 <= index < len(self.pieces) else ""

    def raw(self, index: int) -> str:
        """Its text as written."""
        piece = self.at(index)
        return self.text[piece.start : piece.end] if piece else ""

    def value(self, index: int) -> int:
        """Its number, if it may be a tooth; else -1."""
        return self.pieces[index].value if self.sort(index) == "number" else -1

    def position(self, index: int) -> int:
        """Its number, if that is a position 1 to 8 in one digit; else 0."""
        piece = self.at(index)
        single = piece is not None and piece.sort == "number" and len(piece.norm) == 1
        return piece.value if piece and single and 1 <= piece.value <= LAST else 0

    def tight(self, index: int) -> bool:
        """Whether nothing stands between the piece and the one before it."""
        before, this = self.at(index - 1), self.at(index)
        return before is not None and this is not None and before.end == this.start

    def broken(self, index: int) -> bool:
        """Whether a line ends between the piece and the one before it."""
        before, this = self.at(index - 1), self.at(index)
        return before is None or this is None or "\n" in self.text[before.end : this.start]

    def phrase(self, index: int, table: Phrases) -> tuple[str, int] | None:
        """The longest phrase that stands at the index, and the index after it."""
        for parts, name in table.get(self.norm(index), ()):
            end = self._after(index, parts)
            if end:
                return name, end
        return None

    def _after(self, index: int, parts: Sequence[str]) -> int:
        for nth, part in enumerate(parts):
            if (
                nth
                and self.norm(index) in DASHES
                and self.tight(index)
                and self.tight(index + 1)
                and part not in DASHES
            ):
                index += 1
            if self.norm(index) != part or (nth and self.broken(index)):
                return 0
            index += 1
        return index

    def dash(self, index: int) -> bool:
        """Whether it is a dash."""
        return self.norm(index) in DASHES

    @cached_property
    def measured(self) -> frozenset[int]:
        """Indexes of numbers before which a word stands that makes them say nothing about the numbering."""
        names = words("number", "measures")
        return frozenset(
            at for at, piece in enumerate(self.pieces) if piece.sort == "number" and self.norm(at - 1) in names
        )
