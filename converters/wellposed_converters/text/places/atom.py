"""One elementary place: a number, a range, a contact, a position, a sign, a tooth word or an arch word."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace

from wellposed_converters.text.places.meaning import Meaning
from wellposed_converters.text.places.pieces import Scan

UNKNOWN = Meaning("position", needs=("sign",))
"""The reading of what a lost or unstated sign would make certain; it keeps the other readings from being taken."""


@dataclass(frozen=True)
class Atom:
    """``first`` and ``last`` bound the pieces, ``last`` excluded; ``sort`` is what it may be listed with.

    framed: its arch is said, ``follows``: after it. single: one tooth in words. loose, choice: as in a Place.
    """

    first: int
    last: int
    sort: str
    meanings: tuple[Meaning, ...]
    asks: str | None = None
    why: str | None = None
    bare: bool = False
    evidence: frozenset[str] = field(default_factory=frozenset)
    signs: int = 0
    framed: bool = False
    single: bool = False
    loose: bool = False
    follows: bool = False
    choice: bool = False

    def with_(self, meanings: Iterable[Meaning]) -> Atom:
        """The same atom with other meanings."""
        return replace(self, meanings=tuple(meanings))

    def asked(self, why: str, asks: str = "teeth") -> Atom:
        """The same atom as a question."""
        return replace(self, asks=asks, why=why)


Reader = Callable[[Scan, int], Atom | None]
"""Reads the atom that begins at an index, if one does."""


def first_of(readers: Iterable[Reader], scan: Scan, index: int) -> Atom | None:
    """What the first reader that finds anything finds."""
    return next((atom for reader in readers if (atom := reader(scan, index))), None)
