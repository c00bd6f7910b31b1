"""Numbers that exclude each other: bounds that cross, one amount asked twice, lists and directions that differ."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wellposed_converters.text.checks.amounts import apart, comparable, high, is_exact, low
from wellposed_converters.text.checks.data import opposite
from wellposed_converters.text.checks.order import NOTE, STOP, WANTED, Order, ask, pairs
from wellposed_converters.text.checks.reach import alike, is_open, overlap, reach
from wellposed_converters.text.clause import Clause, Question

NUMBERED: Final = frozenset(("do", "prefer", "limit"))
WHOLES: Final = frozenset(("total",))
"""Measures of all the places together: two are only compared for the same places."""
BOTH_WAYS: Final = frozenset(("intrude", "extrude"))


def crossed(order: Order) -> Iterator[Question]:
    """The least above the most: "At least 0.4, no more than 0.3." """
    for one in order.of(None, NUMBERED):
        least, most = low(one.clause), high(one.clause)
        if least is not None and most is not None and least > most:
            yield ask("least-above-most", STOP, [one])
    for one, other in pairs(order.of(None, NUMBERED)):
        if _compared(one.clause, other.clause) and not _both_exact(one.clause, other.clause):
            yield ask("bounds-cross", STOP, [one, other])


def asked_twice(order: Order) -> Iterator[Question]:
    """One thing with two amounts: "Intrude 11 0.5" and "Intrude 11 1 mm"."""
    for one, other in pairs(order.of(None, NUMBERED)):
        if _compared(one.clause, other.clause) and _both_exact(one.clause, other.clause):
            yield ask("asked-twice", STOP, [one, other])
        elif _two_limits(one.clause, other.clause):
            yield ask("two-limits", STOP, [one, other])


def _compared(one: Clause, other: Clause) -> bool:
    if one.measure == "target" or not comparable(one, other) or not alike(one, other):
        return False
    whole = one.measure in WHOLES and reach(one) != reach(other)
    return not whole and apart(one, other)


def _both_exact(one: Clause, other: Clause) -> bool:
    return is_exact(one) and is_exact(other)


def _two_limits(one: Clause, other: Clause) -> bool:
    """Two upper bounds for exactly the same places; for fewer places the one is an exception to the other."""
    limits = one.mode == other.mode == "limit" and one.minimum is None and other.minimum is None
    same = comparable(one, other) and alike(one, other) and not is_open(one) and reach(one) == reach(other)
    return limits and same and one.maximum != other.maximum


def extractions(order: Order) -> Iterator[Question]:
    """Two lists of extractions: "Extract 14 and 24", later "extract first premolars in all quadrants"."""
    for one, other in pairs(order.of(("extraction",), ("do",))):
        if overlap(one.clause, other.clause) and reach(one.clause) != reach(other.clause):
            yield ask("extraction-lists-differ", STOP, [one, other])


def opposed(order: Order) -> Iterator[Question]:
    """The same tooth both ways: intruded and extruded, proclined and retroclined, opened and closed."""
    for one, other in pairs(order.of(None, WANTED)):
        if _undoes(one.clause, other.clause) and overlap(one.clause, other.clause):
            yield ask("opposite-directions", STOP, [one, other])


def _undoes(one: Clause, other: Clause) -> bool:
    if {one.kind, other.kind} == BOTH_WAYS:
        return True
    return one.kind == other.kind and opposite(one.dir, other.dir)


def repeated(order: Order) -> Iterator[Question]:
    """The same clause twice; a remark, never a question."""
    for one, other in pairs(order.of(None, ("do", "prefer", "limit", "permit", "keep", "forbid"))):
        if _bare(one.clause) == _bare(other.clause) and not one.clause.pending:
            yield ask("said-twice", NOTE, [one, other])


def _bare(clause: Clause) -> Clause:
    return clause.with_(spans=(), inferred=(), rules=())
