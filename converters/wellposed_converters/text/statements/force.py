"""The force of a statement: wanted, kept, forbidden, limited, permitted, wished or a fact; and its amounts."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.items import Item
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.quantities import Amount
from wellposed_converters.text.statements.statement import Bag


@dataclass(frozen=True)
class Force:
    """``denied``, ``allowed`` and ``wished`` as the words say; ``only`` when everything else is excluded."""

    denied: bool = False
    allowed: bool = False
    wished: bool = False
    only: bool = False

    def stated(self) -> bool:
        """Whether anything of it is said."""
        return self.denied or self.allowed or self.wished or self.only


def force(bag: Bag) -> Force:
    """Negation, permission, wish and restriction. :raises Refused: for two negations, or two forces at once."""
    denials = len(bag.take("NEG")) + len(bag.take("VERB", name="avoid"))
    if bag.take("YES") and denials:
        raise Refused("yes-and-no")
    bag.take("TOO")
    allowed = bool(bag.take("PERMIT"))
    wished = bool(bag.take("PREFER"))
    only = bool(bag.take("ONLY"))
    if denials > 1 or (denials and (wished or only)):
        raise Refused("two-forces")
    return Force(bool(denials), allowed, wished, only)


def amount(bag: Bag) -> tuple[Amount | None, bool]:
    """The one amount, and whether "by" stands before it. :raises Refused: for two amounts, or one that is doubtful."""
    found = bag.take("AMOUNT")
    if len(found) > 1:
        raise Refused("two-amounts")
    by = bool(bag.take("BY"))
    if not found:
        return None, by
    value: Amount = found[0].value
    if value.asks or value.sign or (value.approx and value.bound == "range"):
        raise Refused("doubtful-amount")
    lone = value.unit is None and value.bound == "exact"
    if lone and not by and not _after_its_noun(bag, found[0]):
        raise Refused("lone-number")
    return value, by


LEADS_TO_A_NUMBER: Final = frozenset(("MEASURE", "PLACE", "TO", "MOTION", "MEANS", "STATE", "DIR", "BE"))


def _after_its_noun(bag: Bag, item: Item) -> bool:
    """A number without a unit is an amount only right after what it measures."""
    row = [one for one in bag.every if one.start < item.start]
    if not row or row[-1].category not in LEADS_TO_A_NUMBER:
        return False
    value: Amount = item.value
    like_a_tooth = value.maximum is not None and value.maximum.is_integer() and value.maximum >= LEAST_TOOTH
    return not (like_a_tooth and row[-1].category == "PLACE")


LEAST_TOOTH: Final = 11
"""A number from here on, after a tooth and without a unit, could be another tooth."""


def basis(bag: Bag) -> str | None:
    """Per contact, per surface, per side, total, step; "each" is the slot's own word for per."""
    found = {item.value.measure for item in bag.take("BASIS")} | {"each" for _ in bag.take("EACH")}
    if len(found - {"each"}) > 1:
        raise Refused("two-bases")
    named: list[str] = sorted(found - {"each"})
    return named[0] if named else ("each" if found else None)


def measured(clause: Clause, value: Amount | None, measure: str | None) -> Clause:
    """The clause with an amount of this measure."""
    if value is None:
        return clause
    return clause.with_(
        measure=measure,
        minimum=value.minimum,
        maximum=value.maximum,
        unit=value.unit,
        approx=value.approx,
        max_open=value.max_open,
    )


def of_amount(mode: str, value: Amount | None, strength: Force) -> str:
    """``do`` with only an upper bound is a limit; a permission with an upper bound is one too."""
    if strength.denied:
        return "forbid"
    if value is not None and value.bound == "at_most":
        return "limit"
    if strength.allowed:
        return "permit"
    return "prefer" if strength.wished else mode


def conditional(clause: Clause, condition: Item | None, bag: Bag) -> tuple[Clause, list[Question]]:
    """The clause under its condition, word for word; a condition that the order cannot decide is asked about (R13)."""
    if condition is None:
        return clause, []
    held = clause.with_(condition=condition.value.words)
    if condition.value.decidable:
        return held, []
    return held, [Question("condition", "who-decides", bag.spans(), facts=(("words", condition.value.words),))]


def only(bag: Bag, clause: Clause, strength: Force) -> tuple[Clause, list[Question]]:
    """The place is restricted in "IPR 3-3 only"; the means may be in "only IPR 3-3", which is asked."""
    if not strength.only:
        return clause, []
    row = [item.category for item in bag.every]
    first = next((at for at, category in enumerate(row) if category in ("MEANS", "MOTION")), -1)
    if row.index("ONLY") < first:
        return clause.with_(pending=(*clause.pending, "only")), [Question("scope", "only-what", bag.spans())]
    return clause.with_(only=True), []
