"""Sums: enamel reduction by contact against its total and against surfaces, and one value in two units."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from wellposed_converters.text.checks.amounts import amount_said, high, low
from wellposed_converters.text.checks.order import CONFIRM, NOTE, STOP, Numbered, Order, ask, exact, said
from wellposed_converters.text.checks.reach import contacts, is_open
from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.plausible import crown_heights

SURFACES: Final = 2
"""The surfaces that meet in a contact."""
PERCENT: Final = 100


@dataclass(frozen=True)
class Sum:
    """A total, the amounts per contact inside it, and what they come to over all contacts that are named."""

    total: Numbered
    parts: tuple[Numbered, ...]
    contacts: int
    least: Fraction
    most: Fraction | None

    def ask(self, asks: str, level: str) -> Question:
        """The question, with the arithmetic."""
        shown = self.least if self.most is None else self.most
        parts = " and ".join(amount_said(part.clause) for part in self.parts)
        facts = {"parts": parts, "contacts": str(self.contacts), "sum": said(shown)}
        return ask(asks, level, [self.total, *self.parts], total=amount_said(self.total.clause), **facts)


def _enamel(order: Order, measure: str) -> Iterator[Numbered]:
    for one in order.of(("ipr",), ("do", "prefer", "limit")):
        if one.clause.measure == measure and one.clause.unit in ("mm", None) and not is_open(one.clause):
            yield one


def _sums(order: Order) -> Iterator[Sum]:
    for total in _enamel(order, "total"):
        inside = contacts(total.clause)
        parts = [one for one in _enamel(order, "per_contact") if one.clause.contacts and contacts(one.clause) <= inside]
        named = frozenset(pair for part in parts for pair in contacts(part.clause))
        if parts and (named == inside or not total.clause.contacts):
            yield _added(total, parts, len(named))


def _added(total: Numbered, parts: list[Numbered], count: int) -> Sum:
    least = sum((_times(low(part.clause), part.clause) or Fraction(0) for part in parts), Fraction(0))
    mosts = [_times(high(part.clause), part.clause) for part in parts]
    most = None if None in mosts else sum((value for value in mosts if value is not None), Fraction(0))
    return Sum(total, tuple(parts), count, least, most)


def _times(amount: Fraction | None, clause: Clause) -> Fraction | None:
    return None if amount is None else amount * len(contacts(clause))


def never_reached(order: Order) -> Iterator[Question]:
    """A total that the contacts can never reach: "Max 0.3 per contact, five contacts; total 2 mm." """
    for one in _sums(order):
        bound = high(one.total.clause)
        if one.total.clause.mode == "limit" and bound is not None and one.most is not None and one.most < bound:
            yield one.ask("total-never-reached", CONFIRM)


def sum_against_total(order: Order) -> Iterator[Question]:
    """Exact amounts that do not come to the total: "0.3 at each of five contacts, total 1 mm." """
    for one in _sums(order):
        most, least = high(one.total.clause), low(one.total.clause)
        over = most is not None and one.least > most
        under = least is not None and one.most is not None and one.most < least
        if over or under:
            yield one.ask("sum-against-total", STOP)


def total_governs(order: Order) -> Iterator[Question]:
    """A total below the sum of the bounds, which therefore governs; a remark, never a question."""
    for one in _sums(order):
        bound = high(one.total.clause)
        if bound is not None and one.most is not None and one.least <= bound < one.most:
            yield one.ask("total-governs", NOTE)


def surfaces(order: Order) -> Iterator[Question]:
    """Per contact against per surface: "0.5 per surface, 0.5 per contact."; a contact has two surfaces."""
    for side in _enamel(order, "per_surface"):
        for whole in _enamel(order, "per_contact"):
            met = contacts(side.clause) & contacts(whole.clause)
            if met and _doubled(side.clause) != high(whole.clause):
                facts = {"surface": amount_said(side.clause), "contact": amount_said(whole.clause)}
                yield ask("contact-against-surface", STOP, [side, whole], **facts)


def _doubled(side: Clause) -> Fraction | None:
    most = high(side)
    return None if most is None else most * SURFACES


def two_units(order: Order) -> Iterator[Question]:
    """One overbite in two units that disagree: "Overbite 6 mm (20 %)" makes a lower incisor 30 mm high."""
    for mm in order.of(("overbite",), ("state", "do")):
        for pct in order.of(("overbite",), ("state", "do")):
            height = _height(mm.clause, pct.clause)
            if height is not None and not crown_heights()[0] <= height <= crown_heights()[1]:
                yield ask("units-disagree", CONFIRM, [mm, pct], height=said(round(height, 1)))


def _height(mm: Clause, pct: Clause) -> Fraction | None:
    """How high the crown would be that is covered by so many millimetres and so much per cent."""
    same = (mm.unit, pct.unit) == ("mm", "pct") and (mm.mode, mm.measure) == (pct.mode, pct.measure)
    if not same or mm.maximum is None or not pct.maximum:
        return None
    return exact(mm.maximum) * PERCENT / exact(pct.maximum)
