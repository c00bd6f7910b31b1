"""Clauses looked at together, each with its number, and the question that several of them raise."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.wording import options_of

STOP = "stop"
CONFIRM = "confirm"
NOTE = "note"

WANTED = frozenset(("do", "prefer"))
ALLOWED = frozenset(("limit", "permit"))
ACTED = WANTED | ALLOWED


class Numbered(NamedTuple):
    """A clause and its place in the list."""

    at: int
    clause: Clause


@dataclass(frozen=True)
class Order:
    """Every clause of a note, and the note; without the note nothing that hangs on its words is found."""

    clauses: tuple[Clause, ...]
    text: str = ""

    def of(self, kinds: Iterable[str] | None, modes: Iterable[str]) -> Iterator[Numbered]:
        """The clauses of these kinds (None: of any) and modes."""
        known, forces = None if kinds is None else frozenset(kinds), frozenset(modes)
        for at, clause in enumerate(self.clauses):
            if (known is None or clause.kind in known) and clause.mode in forces:
                yield Numbered(at, clause)

    def states(self, kind: str, of: Iterable[str | None] | None = None) -> Iterator[Numbered]:
        """The findings of a kind, of these sorts if they are given."""
        sorts = None if of is None else frozenset(of)
        for one in self.of((kind,), ("state",)):
            if sorts is None or one.clause.of in sorts:
                yield one


Rule = Callable[[Order], Iterator[Question]]


def ask(asks: str, level: str, about: Sequence[Numbered], /, **facts: str) -> Question:
    """The question ``asks`` about clauses, in the order of the text, with its level."""
    ordered = sorted(set(about))
    spans = tuple(sorted({span for one in ordered for span in one.clause.spans}))
    told = (("level", level), *sorted(facts.items()))
    return Question("contradiction", asks, spans, options_of(asks), tuple(one.at for one in ordered), told)


def pairs(rows: Iterable[Numbered]) -> Iterator[tuple[Numbered, Numbered]]:
    """Every two of them, in the order of the text."""
    every = list(rows)
    for number, one in enumerate(every):
        for other in every[number + 1 :]:
            yield one, other


def exact(value: float) -> Fraction:
    """The number as written; sums of tenths stay tenths."""
    return Fraction(str(value))


def said(value: Fraction | float) -> str:
    """The number in a question."""
    return f"{float(value):g}"


def teeth_said(teeth: Iterable[int]) -> str:
    """Teeth as a fact of a question."""
    return " ".join(str(number) for number in teeth)
