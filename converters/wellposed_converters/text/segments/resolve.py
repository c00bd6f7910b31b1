"""Which readings of a segment are left: named rules remove some, and what is left over one is asked.

No reading is preferred by a score. Each rule has a name and a reason, and removes a reading only where another one
stays.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Final

from wellposed_converters.text.clause import Clause, Question, Span
from wellposed_converters.text.statements.statement import Said


@dataclass(frozen=True)
class Outcome:
    """One reading of a segment; ``marks`` name what a rule may remove it for."""

    clauses: tuple[Clause, ...]
    questions: tuple[Question, ...]
    said: Said | None
    marks: frozenset[str] = frozenset()


REMOVES: Final = {
    "no-such-tooth": "a lone number that is no tooth in this numbering is an amount",
    "bare-parameter": "a parameter that stands alone belongs to the verb before it",
    "escaped-negation": "a negation covers both sides of 'or'",
    "comma-starts-anew": "after a comma alone a movement or a means begins anew, unless a negation may reach it",
    "object-shared": "a verb without teeth shares those of the verb it is joined to",
}
"""A reading that has the mark is removed when another one has it not."""


def settle_outcomes(outcomes: Sequence[Outcome], span: Span) -> Outcome:
    """The one reading that is left; what differs between several becomes a question about the segment."""
    left = list(outcomes)
    for mark in REMOVES:
        clean = [outcome for outcome in left if mark not in outcome.marks]
        left = clean or left
    distinct = list({_meaning(outcome): outcome for outcome in left}.values())
    if len(distinct) == 1:
        return distinct[0]
    return _undecided(distinct, span)


def _meaning(outcome: Outcome) -> tuple[Any, ...]:
    return (
        tuple(sorted(map(_bare, outcome.clauses), key=repr)),
        tuple(sorted((question.type, question.asks) for question in outcome.questions)),
    )


def _bare(clause: Clause) -> Clause:
    return clause.with_(spans=())


def _undecided(distinct: Sequence[Outcome], span: Span) -> Outcome:
    """The clauses all readings share stay; those that differ in a member wait for it; the rest is only asked."""
    first = distinct[0]
    shared = [clause for clause in first.clauses if all(_in(clause, other) for other in distinct[1:])]
    waiting = [
        clause
        for clause in first.clauses
        if clause not in shared and all(_alike(clause, other) for other in distinct[1:])
    ]
    half = [_half(clause, distinct) for clause in waiting]
    clauses = (*shared, *half)
    concerns = tuple(range(len(shared), len(clauses)))
    return Outcome(clauses, (Question("scope", "which-reading", (span,), concerns=concerns),), first.said)


def _in(clause: Clause, outcome: Outcome) -> bool:
    return _bare(clause) in map(_bare, outcome.clauses)


def _alike(clause: Clause, outcome: Outcome) -> bool:
    same = [other for other in outcome.clauses if (other.kind, other.mode) == (clause.kind, clause.mode)]
    return len(same) == 1


PLACES: Final = ("teeth", "contacts", "arch", "side")


def _half(clause: Clause, distinct: Sequence[Outcome]) -> Clause:
    """The clause without the members in which the readings differ."""
    others = [
        other
        for outcome in distinct
        for other in outcome.clauses
        if (other.kind, other.mode) == (clause.kind, clause.mode)
    ]
    differ = [
        name
        for name, value in vars(clause).items()
        if name not in ("spans", "rules", "inferred", "pending")
        and any(getattr(other, name) != value for other in others)
    ]
    empty: dict[str, Any] = {name: () if name in ("teeth", "contacts", "links") else None for name in differ}
    place = [name for name in differ if name in PLACES]
    member = "contacts" if clause.kind == "ipr" else "teeth"
    names = tuple(dict.fromkeys([*([member] if place else []), *(name for name in differ if name not in PLACES)]))
    return clause.with_(**empty, pending=(*clause.pending, *names))
