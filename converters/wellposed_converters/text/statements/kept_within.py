"""How far a measure that is kept may change: "keep it within 0.5 mm", "keep it ± 0.5 mm"."""

from __future__ import annotations

from typing import Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.plausible import surely_of_change
from wellposed_converters.text.quantities import Amount
from wellposed_converters.text.statements.force import measured
from wellposed_converters.text.statements.measure_parts import Reading
from wellposed_converters.text.statements.statement import Bag

EITHER: Final = "either-way"


def says_kept(bag: Bag) -> bool:
    """Whether the words that bound an amount say that it is kept: "keep within"."""
    return any(item.value.kept for item in bag.items if item.category == "AMOUNT")


def spread(bag: Bag) -> Amount | None:
    """The one amount, taken out, if it may be of the change either way; ``None`` for any other, which stays."""
    found = [item for item in bag.items if item.category == "AMOUNT"]
    if len(found) != 1 or not (found[0].value.within or found[0].value.why == EITHER):
        return None
    bag.take("AMOUNT")
    value: Amount = found[0].value
    if value.why not in (None, EITHER) or value.sign or value.approx or value.bound != "at_most":
        raise Refused("doubtful-amount")
    return value


def of_change(kind: str, value: Amount) -> bool:
    """Whether it can only be an amount of change, not a value at the end."""
    if value.why == EITHER:
        return True
    return value.maximum is not None and surely_of_change(kind, value.maximum, value.unit)


def kept_within(bag: Bag, base: Clause, value: Amount, *, sure: bool) -> Reading:
    """Kept within the amount; of an amount that may be the greatest value at the end it is asked which.

    A place it is measured against makes it a value at the end: "within 1 mm of the facial midline".
    """
    bag.take("WHEN", name="current")
    bag.take("BE")
    if bag.has("TO") or bag.has("BY") or bag.has("DIR"):
        raise Refused("keep-to")
    ref = bag.named("REF")
    if ref:
        return _at_the_end(base.with_(ref=ref), value)
    if value.why == EITHER or (sure and of_change(base.kind, value)):
        return [measured(base.with_(mode="keep"), value, "change")], []
    return [], [Question("reference", "kept-or-bound", bag.spans())]


def _at_the_end(base: Clause, value: Amount) -> Reading:
    if value.why == EITHER:
        raise Refused("keep-to")
    return [measured(base.with_(mode="limit"), value, "target")], []
