"""Crowding against the means that are left to resolve it."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from wellposed_converters.text.checks.amounts import amount_said, high
from wellposed_converters.text.checks.data import data
from wellposed_converters.text.checks.order import ACTED, CONFIRM, STOP, Numbered, Order, ask, said
from wellposed_converters.text.checks.reach import contacts, is_everywhere, is_open, teeth
from wellposed_converters.text.checks.sums import SURFACES
from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.places.notation import ARCHES, arch_of

FORBIDDEN: Final = {"ipr": None, "archwidth": "expand", "incline": "procline", "extraction": None}
"""The usual sources of space: with all of them forbidden there is none."""


def _crowded(order: Order) -> Iterator[Numbered]:
    for one in order.of(("crowding",), ("state", "do")):
        if one.clause.unit == "mm" and one.clause.minimum is not None and one.clause.minimum > 0:
            yield one


def no_source(order: Order) -> Iterator[Question]:
    """No source of space: "No IPR, no expansion, no proclination, no extraction; resolve 5 mm crowding." """
    for crowding in _crowded(order):
        for arch in _arches(crowding.clause):
            denials = [_denial(order, kind, way, arch) for kind, way in FORBIDDEN.items()]
            if all(denials) and not _sources(order, arch):
                about = [crowding, *(no for no in denials if no)]
                yield ask("no-source-of-space", STOP, about, needed=amount_said(crowding.clause))
                break


def _arches(crowding: Clause) -> tuple[str, ...]:
    return tuple(arch for arch in ARCHES if any(arch_of(tooth) == arch for tooth in teeth(crowding)))


def _denial(order: Order, kind: str, way: str | None, arch: str) -> Numbered | None:
    for no in order.of((kind,), ("forbid",)):
        if no.clause.dir in (None, way) and no.clause.condition is None and _holds_in(no.clause, arch):
            return no
    return None


def _holds_in(no: Clause, arch: str) -> bool:
    """Whether a prohibition leaves nothing of the front of the arch open."""
    front = [tooth for tooth in teeth(no.with_(teeth=(), contacts=(), arch=arch)) if tooth % 10 in data()["front"]]
    return is_everywhere(no) or no.arch in (arch, "both") or set(front) <= teeth(no)


def _sources(order: Order, arch: str) -> list[Numbered]:
    """The clauses that gain space in the arch, besides enamel reduction."""
    gaining: dict[str, list[str]] = data()["gaining"]
    every = order.of(gaining, ACTED)
    return [one for one in every if _gains(one.clause, gaining[one.clause.kind]) and _meets(one.clause, arch)]


def _gains(one: Clause, ways: list[str]) -> bool:
    return not ways or one.dir in ways


def _meets(one: Clause, arch: str) -> bool:
    return is_open(one) or any(arch_of(tooth) == arch for tooth in teeth(one))


def budget(order: Order) -> Iterator[Question]:
    """Less enamel than crowding, and nothing else: "Crowding 6 mm, IPR total 1 mm, nothing else." """
    for crowding in _crowded(order):
        arches = _arches(crowding.clause)
        enamel = [one for one in order.of(("ipr",), ACTED) if any(_meets(one.clause, arch) for arch in arches)]
        gained, need = _gained(enamel), high(crowding.clause)
        short = gained is not None and need is not None and gained < need
        if gained is not None and short and not any(_sources(order, arch) for arch in arches):
            facts = {"needed": amount_said(crowding.clause), "gained": said(gained)}
            yield ask("space-budget", CONFIRM, [crowding, *enamel], **facts)


def _gained(enamel: list[Numbered]) -> Fraction | None:
    """The most that enamel reduction may give, as far as every clause of it is bounded; None if one is not."""
    totals = [high(one.clause) for one in enamel if one.clause.measure == "total"]
    each = [_most(one.clause) for one in enamel if one.clause.measure != "total"]
    if not enamel or None in totals or None in each:
        return None
    sums = [sum(values, Fraction(0)) for values in (_known(totals), _known(each)) if values]
    return min(sums)


def _known(values: list[Fraction | None]) -> list[Fraction]:
    return [value for value in values if value is not None]


def _most(one: Clause) -> Fraction | None:
    most = high(one)
    if one.measure not in ("per_contact", "per_surface") or not one.contacts or most is None:
        return None
    return most * len(contacts(one)) * (SURFACES if one.measure == "per_surface" else 1)
