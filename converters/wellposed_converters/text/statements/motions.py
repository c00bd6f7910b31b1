"""Statements about what teeth do: align, rotate, tip, torque, incline, intrude, extrude, move, widen, extract."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.statements.force import Force, conditional, force, only
from wellposed_converters.text.statements.motion_ways import directed, loose_number, with_amount
from wellposed_converters.text.statements.statement import Bag, Context, Read, Said
from wellposed_converters.text.statements.where import Where, placed, where

ARCHWISE: Final = frozenset(("archwidth", "align", "overcorrection", "extraction"))
"""Kinds that may name an arch, or no place at all, instead of teeth."""
TURNED: Final = {"rotate": "rotation", "tip": "tip", "incline": "inclination"}


def motion(bag: Bag, context: Context) -> Read:
    """What is said of the movement at the head. :raises Refused: when the words make no one statement of it."""
    facts = bag.facts()
    bag.take("BE")
    place = where(bag, context)
    manner, condition = bag.named("MANNER"), bag.one("COND")
    strength = _strength(bag)
    clause = Clause(facts["kind"], "do", bag.spans(), dir=facts.get("dir"), of=facts.get("of"))
    clause, asked = directed(bag, clause)
    asked += loose_number(bag, clause.kind)
    clause, open_ = _placed(bag, clause, place, strength, context)
    clause = with_amount(bag, clause, strength)
    clause, undecided = conditional(clause, condition, bag)
    clause = _refined(bag, clause, strength, context, manner)
    bag.done()
    clause, doubt = only(bag, clause, strength)
    return Read((clause,), (*place.questions, *asked, *open_, *undecided, *doubt))


def _strength(bag: Bag) -> Force:
    verbs = bag.verbs()
    if verbs == {"use"} and [item.category for item in bag.every[-2:]] == ["TO", "PLACE"]:
        bag.take("TO")
    if not verbs <= {"use", "fine"}:
        raise Refused("verb-does-not-fit")
    strength = force(bag)
    return replace(strength, allowed=True) if "fine" in verbs else strength


def _refined(bag: Bag, clause: Clause, strength: Force, context: Context, manner: str | None) -> Clause:
    """What the words around say of the movement: a way that is forbidden, what is overcorrected, how, what for."""
    if strength.denied and clause.kind == "movement" and clause.dir:
        clause = clause.with_(kind="move")
    if clause.kind == "overcorrection" and context.before is not None and context.before.clauses:
        clause = clause.with_(of=TURNED.get(context.before.clauses[-1].kind))
    if manner and clause.kind not in ("move", "movement"):
        raise Refused("manner")
    means = bag.join == "by" and clause.measure is None
    return clause.with_(of="means" if means else manner or clause.of)


def _placed(bag: Bag, clause: Clause, place: Where, strength: Force, context: Context) -> tuple[Clause, list[Question]]:
    clause = placed(clause, place, "teeth")
    if clause.teeth or place.open:
        return clause, []
    if clause.contacts:
        raise Refused("movement-of-a-contact")
    everywhere = strength.denied and clause.kind in ("archwidth", "extraction")
    subject = () if everywhere else _subject(clause, context.before)
    if subject:
        return clause.with_(teeth=subject), []
    if clause.kind in ARCHWISE:
        return _archwise(bag, clause, strength)
    if clause.arch or clause.side or clause.kind == "movement":
        raise Refused("which-teeth")
    if strength.denied and bag.join != "start" and context.before is not None and context.before.teeth:
        return clause.with_(teeth=context.before.teeth), []
    return _which_teeth(bag, clause)


def _subject(clause: Clause, before: Said | None) -> tuple[int, ...]:
    """The teeth of the statement just before: those it was a finding of, or those it moved and this overcorrects."""
    if before is None or before.head is None or before.far:
        return ()
    found = before.head.category == "STATE" and not clause.arch
    return before.teeth if found or clause.kind == "overcorrection" else ()


def _archwise(bag: Bag, clause: Clause, strength: Force) -> tuple[Clause, list[Question]]:
    if clause.arch or clause.side:
        return clause, []
    if clause.kind == "archwidth" and strength.denied:
        return clause.with_(arch="both"), []
    if clause.kind == "extraction" and strength.denied:
        return clause, []
    return _which_teeth(bag, clause)


def _which_teeth(bag: Bag, clause: Clause) -> tuple[Clause, list[Question]]:
    return clause.with_(pending=("teeth",)), [Question("teeth", "which-teeth", bag.spans())]
