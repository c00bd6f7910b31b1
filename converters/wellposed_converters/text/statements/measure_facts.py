"""A measure without a verb: a fact, an order, or a question, by the section and by the findings (R12)."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.quantities import Amount
from wellposed_converters.text.statements.force import Force, amount, basis, measured
from wellposed_converters.text.statements.kept_within import of_change
from wellposed_converters.text.statements.measure_parts import Reading, from_to, in_class
from wellposed_converters.text.statements.statement import Bag, Context

CLASSED: Final = ("sagittal", "skeletal")


@dataclass(frozen=True)
class _Tense:
    """What the words say of the time: ``when`` "current" or "target"; "to" before the amount; a form of "be"."""

    when: str | None
    to: bool
    being: bool


def without_verb(bag: Bag, base: Clause, strength: Force, context: Context) -> Reading:
    """The fact, the order or the question. :raises Refused: when the words make no one statement of it."""
    if strength.denied or strength.wished or strength.only:
        raise Refused("force-without-verb")
    being = bool(bag.take("BE"))
    if bag.one("COINCIDENT"):
        return _coincident(bag, base)
    tense = _Tense(bag.named("WHEN"), bool(bag.take("TO")), being)
    pair = bag.take("FROMTO")
    if pair:
        return from_to(base, pair[0].value.before, pair[0].value.after)
    clause = base.with_(dir=bag.named("DIR"), ref=bag.named("REF"))
    if base.kind in CLASSED:
        clause = in_class(bag, clause)
        if clause.relation is None:
            raise Refused("no-class")
        return _fact_or_order(bag, clause, None, tense, context)
    return _valued(bag, clause, strength, tense, context)


def _coincident(bag: Bag, base: Clause) -> Reading:
    ref = bag.named("REF")
    arch = base.arch or (None if ref else "both")
    return [base.with_(mode="state", of="coincident", arch=arch, ref=ref)], []


def _valued(bag: Bag, clause: Clause, strength: Force, tense: _Tense, context: Context) -> Reading:
    per = basis(bag)
    value, by = amount(bag)
    if per not in (None, "each") or by:
        raise Refused("basis-of-a-measure")
    return _allowed(clause, value) if strength.allowed else _timed(bag, clause, value, tense, context)


def _allowed(clause: Clause, value: Amount | None) -> Reading:
    if value is None or value.bound != "at_most":
        raise Refused("allowed-without-bound")
    return [measured(clause.with_(mode="limit"), value, "target")], []


def _timed(bag: Bag, clause: Clause, value: Amount | None, tense: _Tense, context: Context) -> Reading:
    if value is None:
        return [], [Question("vague", "no-action", bag.spans())]
    if tense.when == "target" or tense.to:
        return [measured(clause, value, "target")], []
    if tense.when == "current":
        return [measured(clause.with_(mode="state"), value, "current")], []
    if value.bound == "at_most" and context.section != "findings" and not tense.being:
        if value.within and of_change(clause.kind, value):
            return [], [Question("reference", "kept-or-bound", bag.spans())]
        return [measured(clause.with_(mode="limit"), value, "target")], []
    return _fact_or_order(bag, clause, value, tense, context)


def _fact_or_order(bag: Bag, clause: Clause, value: Amount | None, tense: _Tense, context: Context) -> Reading:
    fact = measured(clause.with_(mode="state"), value, "current")
    if context.section == "findings" or tense.being:
        return [fact], []
    if value is not None and context.section == "plan" and clause.kind in context.stated:
        return [measured(clause.with_(inferred=(*clause.inferred, "mode")), value, "target")], []
    if clause.kind in CLASSED:
        return [fact], []
    return [], [Question("finding_or_request", "now-or-wanted", bag.spans())]
