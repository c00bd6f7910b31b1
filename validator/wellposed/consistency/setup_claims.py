"""What the laboratory says beside the movements: predicted measures, and how it dealt with clauses."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole_setup import WholeSetup
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.setup import Prediction


@rule(
    "predicted-twice",
    Severity.STOP,
    title="One measure is predicted twice, with different values.",
    do="Leave the value that holds.",
)
def predicted_twice(whole: WholeSetup) -> Iterator[Told]:
    """A measure, at one pair of teeth and in one unit, has one predicted value.

    Of two values nobody can tell which is to come. The same value twice is no fault.

    Passes: {"predicted": [{"measure": "overbite", "value": 2, "unit": "mm"},
                           {"measure": "overbite", "value": 25, "unit": "percent"}]}
    Fails: {"predicted": [{"measure": "overbite", "value": 2, "unit": "mm"},
                          {"measure": "overbite", "value": 3, "unit": "mm"}]}
    """
    seen: dict[tuple[object, ...], tuple[str, float]] = {}
    for at, one in enumerate(whole.document.predicted or ()):
        first, value = seen.setdefault(_what(one), (f"/predicted/{at}/value", one.value))
        if value != one.value:
            facts = {"measure": one.measure, "value": one.value, "expected": value, "first": first}
            yield told(f"/predicted/{at}/value", **facts)


def _what(one: Prediction) -> tuple[object, ...]:
    return one.measure, tuple(sorted(one.pair or ())), one.unit


@rule(
    "clause-answered-twice",
    Severity.STOP,
    title="Two statements are about one clause.",
    do="Say once how the clause was dealt with, or name the clause that was meant.",
)
def clause_answered_twice(whole: WholeSetup) -> Iterator[Told]:
    """A clause of the prescription has one statement.

    Of two that differ nobody can tell which holds; of two alike, one was probably meant for another clause.

    Passes: {"statements": [{"clause": "b1", "standing": "done"}, {"clause": "b2", "standing": "not-done"}]}
    Fails: {"statements": [{"clause": "b1", "standing": "done"}, {"clause": "b1", "standing": "not-done"}]}
    """
    seen: dict[str, str] = {}
    for at, one in enumerate(whole.document.statements or ()):
        first = seen.setdefault(one.clause, f"/statements/{at}/clause")
        if first != f"/statements/{at}/clause":
            yield told(f"/statements/{at}/clause", one.clause, name=one.clause, first=first)


RULES = (predicted_twice, clause_answered_twice)
