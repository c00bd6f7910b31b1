"""Statements about the row of aligners: how many, how long each, how large a step."""

from __future__ import annotations

from dataclasses import replace

from wellposed_converters.text.clause import Clause
from wellposed_converters.text.grammar.items import Item
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.quantities import Amount
from wellposed_converters.text.statements.force import basis, force, measured
from wellposed_converters.text.statements.statement import Bag, Context, Read

INTERVALS = frozenset(("day", "week"))


def staging(bag: Bag, _: Context) -> Read:
    """The number of steps at the head. :raises Refused: when more is said of it."""
    bag.take("VERB", name="use")
    bag.take("BE")
    per = basis(bag)
    value: Amount | None = bag.head.value if bag.head else None
    strength = force(bag)
    if value is None or per or value.asks or strength.denied or strength.only:
        raise Refused("steps")
    mode = "do" if value.bound == "exact" else "limit"
    if strength.wished:
        mode = "prefer"
    bag.done()
    clause = Clause("staging", mode, bag.spans(), of="steps")
    return Read((measured(clause, value, "count"),))


def interval(bag: Bag) -> Read | None:
    """Change every so many days, so many days per step; so much per step. ``None`` if it is not about staging."""
    found = [item for item in bag.items if item.category == "AMOUNT"]
    bases = {item.value.measure for item in bag.items if item.category == "BASIS"}
    timed = bool(found) and all(item.value.unit in INTERVALS for item in found)
    if not found or not (bases & {"interval", "step"} or (timed and _before_change(bag, found[0]))):
        return None
    if any(item.value.asks or item.value.sign for item in found):
        raise Refused("doubtful-amount")
    if timed:
        return _interval(bag, found[0].value)
    if "interval" in bases:
        raise Refused("interval-of-what")
    first: Amount = found[0].value
    clauses = tuple(_step(bag, _bounded(item.value, first)) for item in found)
    bag.take("AMOUNT", "BASIS", "BE", "AND")
    bag.done()
    return Read(clauses)


def _before_change(bag: Bag, time: Item) -> bool:
    """Whether it says "7 day changes"."""
    return any(item.category == "VERB" and item.name == "change" and item.start >= time.end for item in bag.items)


def _bounded(value: Amount, first: Amount) -> Amount:
    """The bound holds for both in "not more than 0.2 mm and 2 degrees"."""
    if value.bound != "exact" or first.bound == "exact":
        return value
    exact = value.minimum
    low, high = (None, exact) if first.bound == "at_most" else (exact, None)
    return replace(value, minimum=low, maximum=high, bound=first.bound, max_open=first.max_open)


def _interval(bag: Bag, value: Amount) -> Read:
    bag.take("AMOUNT", "BASIS", "BE")
    if not bag.verbs() <= {"change", "use"}:
        raise Refused("interval-of-what")
    bag.done()
    clause = Clause("staging", "do" if value.bound == "exact" else "limit", bag.spans(), of="change_interval")
    return Read((measured(clause, value, "interval"),))


def _step(bag: Bag, value: Amount) -> Clause:
    mode = "do" if value.bound == "exact" else "limit"
    return measured(Clause("staging", mode, bag.spans(), of="movement_per_step"), value, "step")
