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


PLACELESS: Final = frozenset(("patient", "notation"))
OF_TEETH: Final = frozenset(("tooth_status", "position", "rotate"))


def state(bag: Bag, context: Context) -> Read:
    """The fact at the head. :raises Refused: when the words make no one statement of it."""
    kind = bag.facts()["kind"]
    being = bool(bag.take("BE"))
    bag.take("WHEN", name="current")
    bag.take("YES")
    if bag.has("VERB"):
        return _acted_on(bag, context)
    place = where(bag, context)
    strength = force(bag)
    if strength.allowed or strength.wished or strength.only:
        raise Refused("force-of-a-fact")
    clause = placed(Clause(kind, "state", bag.spans(), of=_of(bag)), place, "teeth")
    _whose(clause, waiting=place.open)
    clause = _described(bag, clause)
    bag.done()
    if strength.denied:
        clause = _none(clause)
    if kind == "rotate" and context.section != "findings" and not being:
        return Read((), (*place.questions, Question("finding_or_request", "now-or-wanted", bag.spans())))
    return Read((clause,), place.questions)


def _of(bag: Bag) -> str | None:
    """The name of a status or of a fact of the patient is the head's own."""
    facts = bag.facts()
    own = facts["kind"] in ("tooth_status", "position") or facts["sort"] == "fact"
    return bag.head.name if own and bag.head else facts.get("of")


def _acted_on(bag: Bag, context: Context) -> Read:
    """A finding that is to be changed: "close the anterior open bite", "reduce the deep bite to 3 mm"."""
    if bag.facts()["kind"] not in ("openbite", "overbite", "overjet"):
        raise Refused("verb-of-a-fact")
    return measure(bag, context)


def _whose(clause: Clause, *, waiting: bool) -> None:
    if clause.kind in OF_TEETH:
        if clause.arch or clause.contacts or not (clause.teeth or waiting):
            raise Refused("whose-state")
    elif clause.kind not in WHOLE_ARCH | PLACELESS and not clause.teeth:
        raise Refused("whose-state")


def _described(bag: Bag, clause: Clause) -> Clause:
    """How much, how far, which way, which class."""
    grade = bag.named("GRADE")
    turn = bag.named("DIR") if clause.kind == "rotate" else None
    found = bag.named("CLASS") if clause.kind == "skeletal" else None
    if clause.kind == "skeletal" and found is None:
        raise Refused("no-class")
    value = amount(bag)[0] if clause.kind in MEASURED else None
    bag.take("BY")
    if value is not None and clause.kind == "tooth_status" and clause.of != "recession":
        raise Refused("amount-of-a-status")
    graded = clause.with_(dir=turn, relation=found, of=grade if grade and value is None else clause.of)
    return measured(graded, value, "current")


def _none(clause: Clause) -> Clause:
    """A denied finding is a finding of nothing; a denied status of a tooth is asked about."""
    if clause.measure is not None or clause.kind not in ("crowding", "space", "openbite"):
        raise Refused("denied-fact")
    return clause.with_(of="none")
