"""What a segment says, and segments put together."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from wellposed_converters.text.clause import Clause, Question, Span
from wellposed_converters.text.statements.statement import Said


@dataclass(frozen=True)
class Segment:
    """What one segment says, and what the next may lean on."""

    clauses: tuple[Clause, ...]
    questions: tuple[Question, ...]
    said: Said | None = None


def joined(reads: Sequence[Segment]) -> Segment:
    """Several as one, what follows leaning on the last."""
    clauses: list[Clause] = []
    questions: list[Question] = []
    for read in reads:
        questions += [moved(question, len(clauses)) for question in read.questions]
        clauses += read.clauses
    return Segment(tuple(clauses), tuple(questions), reads[-1].said)


def moved(question: Question, by: int) -> Question:
    """The question with its clauses ``by`` places further on."""
    return replace(question, concerns=tuple(index + by for index in question.concerns))


def over(one: Span, other: Span) -> bool:
    """Whether two spans have a character in common."""
    return one[0] < other[1] and other[0] < one[1]


def not_understood(span: Span, why: str) -> Segment:
    """Nothing but the question what the words mean."""
    return Segment((), (Question("not_understood", why, (span,)),))
