"""Statements about what is used or built: enamel reduction, attachments, elastics, ramps, pontics, retainers."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.items import Item
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.places import Meaning, resolve
from wellposed_converters.text.statements.force import (
    Force,
    amount,
    basis,
    conditional,
    force,
    measured,
    of_amount,
    only,
)
from wellposed_converters.text.statements.statement import Bag, Context, Read
from wellposed_converters.text.statements.where import Where, placed, where

MOUTH: Final = frozenset(("ipr",))
"""An unqualified prohibition covers both arches (R18)."""
FITTING: Final = frozenset(("use", "fine", "leave", "keep"))
SURFACES: Final = frozenset(("palatal", "lingual", "buccal", "labial"))


def use(bag: Bag, context: Context) -> Read:
    """What is said of the means at the head. :raises Refused: when the words make no one statement of it."""
    kind = bag.facts()["kind"]
    bag.take("BE")
    if kind == "staging":
        return _count(bag)
    if bag.has("ORDINAL"):
        return _not_before(bag, context, kind)
    if kind == "elastic" and bag.has("PLACE"):
        return _linked(bag, context)
    return _used(bag, context)


def _used(bag: Bag, context: Context) -> Read:
    facts = bag.facts()
    enamel = facts["kind"] == "ipr"
    place = where(bag, context, "contacts" if enamel else "teeth")
    strength = _forced(bag)
    clause = _formed(bag, Clause(facts["kind"], "do", bag.spans(), of=facts.get("of"), relation=facts.get("class")))
    if enamel and strength.denied and place.meaning is not None and _primary(place.meaning):
        clause, place = clause.with_(of="primary_teeth"), Where(said=True)
    if enamel and place.side:
        raise Refused("side-of-enamel")
    condition = bag.one("COND")
    clause = _everywhere(placed(clause, place, "contacts" if enamel else "teeth"), place, strength)
    clause = _with_amount(bag, clause, strength)
    clause, doubt = only(bag, clause, strength)
    clause, open_ = _conditional(bag, clause, condition)
    bag.done()
    return Read((clause,), (*place.questions, *doubt, *open_))


def _formed(bag: Bag, clause: Clause) -> Clause:
    """The shape or the surface of a part."""
    surface = bag.named("DIR")
    if surface and (surface not in SURFACES or clause.kind == "ipr"):
        raise Refused("direction-of-a-means")
    if clause.kind == "retainer":
        bag.take("WHEN", name="target")
        bag.take("REASON", name="retention")
    shape, ref = bag.named("SHAPE"), bag.named("REF")
    if (shape or ref) and clause.kind != "trim":
        raise Refused("shape-of-what")
    reason = bag.named("REASON") if clause.kind == "attachment" else None
    return clause.with_(of=surface or shape or clause.of, ref=reason)


def _conditional(bag: Bag, clause: Clause, condition: Item | None) -> tuple[Clause, list[Question]]:
    if condition is None:
        return clause, []
    if condition.name == "discretion":
        return _discretion(clause, condition, bag)
    if condition.value.decidable and clause.mode == "do" and not (clause.teeth or clause.contacts):
        clause = clause.with_(mode="permit")
    return conditional(clause, condition, bag)


FIRST_PRIMARY: Final = 51


def _primary(meaning: Meaning) -> bool:
    """Whether a group of primary teeth is named by words."""
    return meaning.system == "words" and bool(meaning.teeth) and all(tooth >= FIRST_PRIMARY for tooth in meaning.teeth)


def _forced(bag: Bag) -> Force:
    verbs = bag.verbs()
    if not verbs <= FITTING:
        raise Refused("verb-does-not-fit")
    strength = force(bag)
    if "fine" in verbs:
        if strength.denied:
            raise Refused("two-forces")
        strength = Force(allowed=True, wished=strength.wished, only=strength.only)
    if verbs & {"leave", "keep"} and not bag.has("AMOUNT"):
        raise Refused("keep-a-means")
    return strength


def _everywhere(clause: Clause, place: Where, strength: Force) -> Clause:
    nowhere = not (clause.teeth or clause.contacts or clause.arch or place.said)
    return clause.with_(arch="both") if nowhere and strength.denied and clause.kind in MOUTH else clause


def _with_amount(bag: Bag, clause: Clause, strength: Force) -> Clause:
    per = basis(bag)
    value, by = amount(bag)
    if value is None:
        bag.take("TO")
    if strength.denied and value is not None:
        raise Refused("amount-of-nothing")
    if value is None and per is not None:
        raise Refused("basis-without-amount")
    clause = clause.with_(mode=of_amount("do", value, strength))
    if clause.kind == "ipr":
        return measured(clause, value, _per(clause, per))
    if value is not None and (clause.kind != "trim" or per is not None or by):
        raise Refused("amount-of-a-part")
    return measured(clause, value, "target")


def _per(clause: Clause, per: str | None) -> str | None:
    """One contact has one basis; more need it written (R8)."""
    if per in ("per_tooth", "per_side", "per_arch"):
        raise Refused("basis-of-enamel")
    if per == "each" or (per is None and len(clause.contacts) == 1):
        return "per_contact"
    return per


def _discretion(clause: Clause, condition: Item, bag: Bag) -> tuple[Clause, list[Question]]:
    """Beside a bound, and of parts, "as needed" is harmless; of enamel without a bound it is asked about (R13)."""
    held = clause.with_(condition=condition.value.words, mode=clause.mode if clause.mode == "limit" else "permit")
    if clause.mode == "forbid":
        raise Refused("forbidden-as-needed")
    if clause.kind != "ipr" or clause.maximum is not None:
        return held, []
    return held.with_(pending=(*held.pending, "amount")), [Question("missing_amount", "how-much-enamel", bag.spans())]


def _count(bag: Bag) -> Read:
    """How many steps: "steps: 12 at most"."""
    value, _ = amount(bag)
    bag.done()
    if value is None or value.unit not in (None, "count"):
        raise Refused("how-many")
    mode = "do" if value.bound == "exact" else "limit"
    return Read((measured(Clause("staging", mode, bag.spans(), of="steps"), replace(value, unit="count"), "count"),))


def _not_before(bag: Bag, context: Context, kind: str) -> Read:
    """When it may begin: "IPR not before step 5", "leave the lower reduction until step 4"."""
    step = bag.one("ORDINAL")
    waits = bag.take("UNTIL")
    verbs = bag.verbs()
    place = where(bag, context, "contacts" if kind == "ipr" else "teeth")
    if step is None or not waits or not verbs <= {"leave", "use"} or place.open:
        raise Refused("when-of-a-means")
    bag.done()
    clause = placed(Clause("staging", "do", bag.spans(), of=f"{kind}_not_before_step"), place, "teeth")
    return Read((clause.with_(measure="step", minimum=float(step.value.value), unit="count"),))


def _linked(bag: Bag, context: Context) -> Read:
    """Elastics from tooth to tooth. :raises Refused: when a place names no pair of teeth."""
    bag.take("FROM", "TO")
    meanings = [resolve(item.value, context.numbering) for item in bag.take("PLACE")]
    if any(len(one) != 1 or not one[0].links for one in meanings):
        raise Refused("elastic-from-where")
    strength = force(bag)
    if strength.wished or strength.only:
        raise Refused("two-forces")
    bag.done()
    links = tuple(pair for one in meanings for pair in one[0].links)
    mode = of_amount("do", None, strength)
    return Read((Clause("elastic", mode, bag.spans(), of=bag.facts().get("of"), links=links),))
