"""When, how many, how far at a time: steps against each other."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil
from typing import Final

from wellposed_converters.text.checks.amounts import amount_said, high, is_exact, low
from wellposed_converters.text.checks.data import data
from wellposed_converters.text.checks.order import CONFIRM, STOP, WANTED, Numbered, Order, ask, exact, said
from wellposed_converters.text.checks.reach import overlap, same_sort
from wellposed_converters.text.checks.timing import not_before, starts
from wellposed_converters.text.clause import Clause, Question

MOVED: Final = frozenset(("change", "per_side"))
LATER: Final = "_not_before_step"
TOLERANCE: Final = Fraction(1, 2)
"""Half a month: a duration in months is a round number."""


def timing(order: Order) -> Iterator[Question]:
    """Begun before it may be: "Attachments from stage 1. No attachments before stage 4." """
    for act in order.of(None, {*WANTED, "permit", "limit"}):
        first = starts(act.clause)
        for no in order.of(None, ("forbid", "do", "limit")):
            allowed = _allowed(no.clause, act.clause)
            if first is not None and allowed is not None and first < allowed:
                yield ask("begun-before-allowed", STOP, [act, no], starts=str(first), allowed=str(allowed))


def _allowed(no: Clause, act: Clause) -> int | None:
    """The first step at which a prohibition, or an order about staging, lets the act begin."""
    if no.kind == "staging" and no.of == act.kind + LATER and no.minimum is not None:
        return int(no.minimum)
    same = no.mode == "forbid" and no.kind == act.kind and same_sort(no, act) and overlap(no, act)
    return not_before(no) if same else None


def _staging(order: Order, of: str) -> list[Numbered]:
    return [one for one in order.of(("staging",), ("do", "limit", "prefer")) if one.clause.of == of]


def too_few(order: Order) -> Iterator[Question]:
    """Too few steps for the way to go: "Max 10 steps; 0.1 mm per step; move 3 mm." """
    for count in _staging(order, "steps"):
        for step in _staging(order, "movement_per_step"):
            most, stride = high(count.clause), high(step.clause)
            far = _farthest(order, step.clause.unit)
            if far is None or most is None or not stride:
                continue
            needed = ceil((high(far.clause) or Fraction(0)) / stride)
            if needed > most:
                yield ask("steps-too-few", CONFIRM, [count, step, far], needed=str(needed), way=amount_said(far.clause))


def _farthest(order: Order, unit: str | None) -> Numbered | None:
    """The longest movement in that unit."""
    moves = [one for one in order.of(None, WANTED) if one.clause.measure in MOVED and one.clause.unit == unit]
    known = [one for one in moves if high(one.clause) is not None and one.clause.kind != "staging"]
    return max(known, key=lambda one: (high(one.clause) or Fraction(0), -one.at), default=None)


def too_long(order: Order) -> Iterator[Question]:
    """Longer than it may take: "20 steps, change every 14 days, done in 4 months" are about nine months."""
    for count in _staging(order, "steps"):
        for interval in _staging(order, "change_interval"):
            for whole in _durations(order):
                needed = _months(count.clause, interval.clause)
                granted = _in_months(high(whole.clause), whole.clause.unit)
                if needed is not None and granted is not None and needed > granted + TOLERANCE:
                    yield ask("duration-too-short", CONFIRM, [count, interval, whole], needed=said(round(needed)))


def _durations(order: Order) -> Iterator[Numbered]:
    for one in order.of(("staging",), ("do", "limit", "prefer")):
        if one.clause.measure == "duration":
            yield one


def _months(count: Clause, interval: Clause) -> Fraction | None:
    """The months a number of steps takes; None where the number is only bounded from above."""
    steps = low(count) if not is_exact(count) else high(count)
    each = _in_months(low(interval), interval.unit)
    return None if steps is None or each is None else steps * each


def _in_months(amount: Fraction | None, unit: str | None) -> Fraction | None:
    days = data()["days"]
    if amount is None or unit not in days:
        return None
    return amount * exact(days[unit]) / exact(days["month"])
