"""Statements of what is: crowns, implants, missing teeth, crowding, deep bites, facts of the patient."""

from __future__ import annotations

from typing import Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.statements.force import amount, force, measured
from wellposed_converters.text.statements.measures import measure
from wellposed_converters.text.statements.statement import Bag, Context, Read
from wellposed_converters.text.statements.where import placed, where

WHOLE_ARCH: Final = frozenset(("crowding", "space", "archwidth", "overbite", "openbite", "overjet", "skeletal"))
MEASURED: Final = frozenset(
    ("crowding", "space", "overbite", "openbite", "overjet", "tooth_status", "position", "rotate")
)


def state(bag: Bag, context: Context) -> Read:
    """The fact at the head. :raises Refused: when the words make no one statement of it."""
    head = bag.head
    facts = head.value.facts  # type: ignore[union-attr]  # a state has a head
    kind, of = facts["kind"], facts.get("of")
    if kind in ("tooth_status", "position") or facts["sort"] == "fact":
        of = head.name if head else None
    being = bool(bag.take("BE"))
    bag.take("WHEN", "YES")
    if bag.has("VERB"):
        return _acted_on(bag, context)
    place = where(bag, context)
    strength = force(bag)
    clause = placed(Clause(kind, "state", bag.spans(), of=of), place, "teeth")
    clause = _whose(bag, clause, place.open)
    grade = bag.one("GRADE")
    turn = bag.one("DIR") if kind == "rotate" else None
    found = bag.one("CLASS") if kind == "skeletal" else None
    if kind == "skeletal" and found is None:
        raise Refused("no-class")
    value, by = amount(bag) if kind in MEASURED else (None, bool(bag.take("BY") and False))
    clause = measured(clause.with_(dir=turn.name if turn else None), value, "current")
    clause = clause.with_(relation=found.name if found else None)
    if value is not None and kind == "tooth_status" and of != "recession":
        raise Refused("amount-of-a-status")
    if grade and value is None:
        clause = clause.with_(of=grade.name)
    if strength.denied:
        clause = _none(clause, value is not None)
    if strength.allowed or strength.wished or strength.only:
        raise Refused("force-of-a-fact")
    bag.done()
    if kind == "rotate" and context.section != "findings" and not being:
        return Read((), (*place.questions, Question("finding_or_request", "now-or-wanted", bag.spans())))
    return Read((clause,), place.questions)


def _acted_on(bag: Bag, context: Context) -> Read:
    """A finding that is to be changed: "close the anterior open bite", "reduce the deep bite to 3 mm"."""
    facts = bag.head.value.facts  # type: ignore[union-attr]  # a state has a head
    if facts["kind"] not in ("openbite", "overbite", "overjet"):
        raise Refused("verb-of-a-fact")
    return measure(bag, context)


def _whose(bag: Bag, clause: Clause, waiting: bool) -> Clause:
    if clause.kind in ("tooth_status", "position", "rotate"):
        if clause.arch or clause.contacts or not (clause.teeth or waiting):
            raise Refused("whose-state")
    elif clause.kind not in WHOLE_ARCH and clause.kind not in ("patient", "notation") and not clause.teeth:
        raise Refused("whose-state")
    return clause


def _none(clause: Clause, measured_: bool) -> Clause:
    """A denied finding is a finding of nothing; a denied status of a tooth is asked about."""
    if measured_ or clause.kind not in ("crowding", "space", "openbite"):
        raise Refused("denied-fact")
    return clause.with_(of="none")
