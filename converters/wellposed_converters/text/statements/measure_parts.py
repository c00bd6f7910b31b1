"""What the readers of measures share."""

from __future__ import annotations

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.quantities import Amount
from wellposed_converters.text.statements.force import measured
from wellposed_converters.text.statements.statement import Bag

Reading = tuple[list[Clause], list[Question]]
"""The clauses of a statement, and what it leaves open."""


def from_to(base: Clause, before: Amount, after: Amount) -> Reading:
    """A present value and the one wanted: "from 4 to 2 mm"."""
    return [
        measured(base.with_(mode="state"), before, "current"),
        measured(base, after, "target"),
    ], []


def in_class(bag: Bag, clause: Clause) -> Clause:
    """The clause with the class that is named."""
    return clause.with_(relation=bag.named("CLASS"))
