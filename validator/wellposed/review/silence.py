"""What moved though nothing opened it, and what went further than it was opened."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf
from typing import NamedTuple

from wellposed.kinematics.keys import silence
from wellposed.kinematics.means import reduction_contacts
from wellposed.kinematics.opened import silent_group
from wellposed.kinematics.openings import Sensed, sensed
from wellposed.kinematics.rows import Key
from wellposed.kinematics.ties import other_way
from wellposed.model.means import EnamelReduction
from wellposed.review.bite import GAP
from wellposed.review.matter import Matter
from wellposed.review.result import Unasked
from wellposed.review.weighing import ROUNDING
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.motions import VARIABLE_UNITS, VARIABLES, Variable
from wellposed.vocabulary.teeth import arch_of
from wellposed.vocabulary.units import MM


class Open(NamedTuple):
    """How far something is opened, and by which clause."""

    reach: float
    owner: str | None


_SHUT = Open(0.0, None)


def unasked(matter: Matter) -> Iterator[Unasked]:
    """Tooth by tooth in the order of the arches, then contact by contact, then the gap at the back."""
    for row in matter.mouth.rows.values():
        for tooth in row.teeth:
            for variable in VARIABLES:
                yield from _moved(matter, tooth, variable)
    yield from _reduced(matter)
    yield from _gap(matter)


def _moved(matter: Matter, tooth: str, variable: Variable) -> Iterator[Unasked]:
    value, unit = matter.plan.movement(tooth, variable), VARIABLE_UNITS[variable]
    tolerance = matter.within(unit)
    if value is None or abs(value) <= tolerance:
        return
    at = sensed(tooth, variable, 1 if value > 0 else -1)
    amount, shared = opened(matter, at)
    reach = min(amount.reach, shared)
    if abs(value) > reach + tolerance + ROUNDING:
        owner = amount.owner if abs(value) > amount.reach + tolerance + ROUNDING else None
        yield Unasked(variable, tooth, unit, value, reach, tolerance, owner)


def opened(matter: Matter, at: Sensed) -> tuple[Open, float]:
    """How far the prescription opens a variable of a tooth in one sense, the way to the line included.

    Then how far it may go for what it comes with: what only comes with another movement has its share of that.
    """
    if at.tooth in matter.mouth.locked:
        return _SHUT, 0.0
    found = matter.translation.opened.deciding(at)
    way = _way_open(matter, at) if at.variable == "out" else 0.0
    if found is None:
        return Open(way, None), inf
    return Open(found.amount + way, found.owner), _share(matter, at) + way


def _share(matter: Matter, at: Sensed) -> float:
    """What comes only with another movement reaches no further than its share of that; see ``kinematics.ties``."""
    sources = matter.translation.opened.sources(at)
    if not all(one.per for one in sources) or len({(one.by, one.per > 0) for one in sources}) != 1:
        return inf
    most = max(sources, key=lambda one: abs(one.per))
    if matter.translation.opened.sources(other_way(most, at)):
        return inf
    cause = matter.plan.movement(at.tooth, most.by)
    return inf if cause is None else max(0.0, most.per * cause)


def _way_open(matter: Matter, at: Sensed) -> float:
    """The way a displaced tooth may go to the line in this sense."""
    off = matter.mouth.tooth_values("displacement").get(at.tooth, 0.0)
    if -off * at.sign <= 0:
        return 0.0
    return abs(off) if at.tooth in matter.ended.aligned or matter.translation.opened.deciding(at) else 0.0


def _reduced(matter: Matter) -> Iterator[Unasked]:
    most, tolerance = reductions_opened(matter), matter.within(MM)
    for name, amount in matter.plan.reductions.items():
        found = most.get(name, _SHUT)
        if amount > found.reach + tolerance + ROUNDING:
            yield Unasked("reduction", name, MM, amount, found.reach, tolerance, found.owner)


def reductions_opened(matter: Matter) -> dict[str, Open]:
    """Per contact the most that may be taken there, and by which allowance; nothing at a locked tooth."""
    found: dict[str, Open] = {}
    for item in matter.prescription.allow or ():
        if isinstance(item, EnamelReduction):
            stated = [amount for amount in (item.per_contact, item.in_all) if amount is not None]
            for name in reduction_contacts(matter.mouth, item):
                if not any(tooth in matter.mouth.locked for tooth in teeth_of(name)):
                    found[name] = Open(min(stated, default=inf), item.id)
    return found


def gap_opened(matter: Matter) -> Open:
    """How much the gap at the back may grow: by an allowance, or by teeth that act as stops."""
    stops = ((amount, owner) for owner, (amount, _) in matter.translation.bounds.stops())
    amount, owner = max(stops, default=(0.0, None))
    return Open(amount, owner)


def _gap(matter: Matter) -> Iterator[Unasked]:
    gap, before, tolerance = matter.measures.closed.lesser, matter.mouth.amount(GAP), matter.within(MM)
    if gap is None or gap.low is None:
        return
    found, grown = gap_opened(matter), gap.low - before
    if grown > found.reach + tolerance + ROUNDING:
        yield Unasked("posterior-open-bite", "", MM, grown, found.reach, tolerance, found.owner)


def silent_key(one: Unasked) -> Key:
    """The silence that something unasked breaks, as a conflict names it."""
    if one.what == GAP:
        return silence("both", "gap")
    if one.what == "reduction":
        return silence(arch_of(teeth_of(one.where)[0]), "reduction")
    return silence(arch_of(one.where), silent_group(one.where, one.what))
