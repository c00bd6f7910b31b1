"""Whether two clauses say the opposite of each other."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import Any, NamedTuple

from wellposed.kinematics.excluded import excluded_senses
from wellposed.model.clauses import Close, Hold, KeepMotion, KeepVariable, Leave, Movement
from wellposed.model.making import Attachment
from wellposed.model.means import (
    AnyMovement,
    ArchSlide,
    ClassElastics,
    Exclusion,
    IncisorTravel,
    VerticalMovement,
    WidthChange,
)
from wellposed.revisions.admits import carrying
from wellposed.revisions.result import Item, Opposite
from wellposed.rules.chart import Chart
from wellposed.rules.clauses_kept import opposed
from wellposed.vocabulary.contacts import normal
from wellposed.vocabulary.motions import MOTIONS

SECTIONS = ("goals", "keep", "movements", "allow", "exclude", "attachments")
"""The sections in which a clause can say the opposite of another."""

_USES = (
    *({"widening", "narrowing"}, {"incisor-advance", "incisor-retraction"}),
    *({"distal-movement", "mesial-movement"}, {"intrusion", "extrusion"}, {"class-ii-elastics", "class-iii-elastics"}),
)


class Side(NamedTuple):
    """A part with the chart of its revision."""

    part: Any
    chart: Chart


def opposite(one: Side, other: Side) -> bool:
    """Whether two parts of two revisions say the opposite; the same whichever is the older."""
    if opposed(one.chart, one.part, other.chart, other.part):
        return True
    return any(_told(one, other, kinds, rule) for kinds, rule in _RULES)


def _told(one: Side, other: Side, kinds: tuple[Any, Any], rule: Callable[[Side, Side], bool]) -> bool:
    first, second = kinds
    if isinstance(one.part, first) and isinstance(other.part, second):
        return rule(one, other)
    return isinstance(other.part, first) and isinstance(one.part, second) and rule(other, one)


def opposites(old: Iterable[tuple[Item, Chart]], new: Iterable[tuple[Item, Chart]]) -> Iterator[Opposite]:
    """Every clause of the new revision that says the opposite of one of the old, with that one."""
    before = [(item, Side(item.part, chart)) for item, chart in old if item.section in SECTIONS]
    for item, chart in new:
        if item.section in SECTIONS:
            side = Side(item.part, chart)
            yield from (Opposite(was.id, item.id) for was, there in before if opposite(there, side))


# pair by pair


def _turned(one: Side, other: Side) -> bool:
    """Two orders that send a tooth opposite ways."""
    first, second = MOTIONS[one.part.motion], MOTIONS[other.part.motion]
    apart = (first.variable, first.sign) == (second.variable, -second.sign)
    return apart and _share(one.part.teeth, other.part.teeth)


def _moved_and_held(order: Side, held: Side) -> bool:
    """A tooth that was to move must now stay, or the reverse; without a floor nothing was to move."""
    return bool(order.part.at_least) and _share(order.part.teeth, held.part.hold)


def _moved_and_kept(order: Side, kept: Side) -> bool:
    """Likewise of one variable or motion, where the tolerance does not reach the floor."""
    variable, sign = MOTIONS[order.part.motion]
    same = variable == kept.part.variable if isinstance(kept.part, KeepVariable) else False
    if isinstance(kept.part, KeepMotion):
        same = MOTIONS[kept.part.motion] == (variable, sign)
    floor = order.part.at_least or 0.0
    return same and floor > kept.part.within and _share(order.part.teeth, kept.part.teeth)


def _moved_and_excluded(order: Side, excluded: Side) -> bool:
    """A tooth is sent the way that an exclusion forbids."""
    variable, sign = MOTIONS[order.part.motion]
    barred = {at.tooth for at in excluded_senses(excluded.chart.mouth, excluded.part) if at[1:] == (variable, sign)}
    return bool(order.part.at_least) and _share(order.part.teeth, barred)


def _allowed_back(one: Side, other: Side) -> bool:
    """Two means that move the same teeth opposite ways; where no teeth are named they are those of arch and side."""
    if {one.part.use, other.part.use} not in _USES:
        return False
    first, second = (set(getattr(side.part, "teeth", None) or ()) for side in (one, other))
    sides = [set(getattr(side.part, "sides", None) or ("right", "left")) for side in (one, other)]
    arches = [getattr(side.part, "arch", None) for side in (one, other)]
    one_arch = None in arches or arches[0] == arches[1]
    return one_arch and _share(*sides) and (not first or not second or _share(first, second))


def _left_and_closed(left: Side, closed: Side) -> bool:
    return left.part.amount > 0 and normal(left.part.leave) in {normal(one) for one in closed.part.close}


def _carried(one: Side, other: Side) -> bool:
    """A tooth that was to carry an attachment, or was wished to, is to carry none, or the reverse."""
    (teeth, carries), (others, carry) = carrying(one.part), carrying(other.part)
    return carries != carry and _share(teeth, others)


def _share(first: Iterable[str], second: Iterable[str]) -> bool:
    return not set(first).isdisjoint(second)


_SLIDING = (IncisorTravel, WidthChange, ArchSlide, VerticalMovement, ClassElastics)
_RULES: tuple[tuple[tuple[Any, Any], Callable[[Side, Side], bool]], ...] = (
    ((Movement, Movement), _turned),
    ((AnyMovement, AnyMovement), _turned),
    ((Movement, Hold), _moved_and_held),
    ((Movement, KeepVariable | KeepMotion), _moved_and_kept),
    ((Movement, Exclusion), _moved_and_excluded),
    ((_SLIDING, _SLIDING), _allowed_back),
    ((Leave, Close), _left_and_closed),
    ((Attachment, Attachment), _carried),
)
