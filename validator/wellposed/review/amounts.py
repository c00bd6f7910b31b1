"""What a plan comes to where practice sets a limit: at teeth, contacts, pairs of teeth and arches."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from wellposed.kinematics.frame import Frame, Play
from wellposed.kinematics.limits import Limit, every_limit
from wellposed.norms import Norms
from wellposed.review.plan import Placed
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.motions import VARIABLES, Variable
from wellposed.vocabulary.teeth import ARCHES, tooth_at

if TYPE_CHECKING:
    from wellposed.review.ended import Ended

NARROWED = "narrowing"
_NAMES = {"distal": "distal-movement", "advance": "incisor-advance", "retraction": "incisor-retraction"}


class Amount(NamedTuple):
    """What the plan comes to, where a limit is set: mm or deg.

    norm      the key of the limit
    what      what is done there, a word or two with hyphens
    where     tooth, contact, pair of teeth or arch
    value     in the sense of the limit, so that more is further
    variable  the variable it is made of; None: enamel
    teeth     the teeth it is taken at
    """

    norm: str
    what: str
    where: str
    value: float
    variable: Variable | None
    teeth: tuple[str, ...]


def amounts(ended: Ended, moved: Placed, norms: Norms) -> Iterator[Amount]:
    """Every limited amount of a plan, in the sense of its limit; those in which nothing moves are left out.

    moved  the movements that count, mm or deg; of ``out`` what goes beyond a tooth's own way to the arch line is taken
    """
    every = [(tooth, variable) for tooth in _standing(ended) for variable in VARIABLES]
    frame = Frame(ended.mouth, every, Play(), False, 0.0)
    values, at_column = _values(ended, moved, frame), {column: at for at, column in frame.columns.items()}
    turned = {frame.columns[at] for at in moved if at[1] == "torque" and at in frame.columns}
    for limit in every_limit(frame, norms, turned):
        value = sum(factor * values.get(column, 0.0) for column, factor in limit.terms.items())
        if value:
            moving = (at_column[column][1] for column in limit.terms if column in at_column and values.get(column))
            said = (_what(limit), _where(limit), _sensed(limit, value))
            yield Amount(limit.norm, *said, next(moving, None), _teeth(limit))


def _standing(ended: Ended) -> tuple[str, ...]:
    return tuple(tooth for row in ended.mouth.rows.values() for tooth in row.teeth)


def _values(ended: Ended, moved: Placed, frame: Frame) -> dict[int, float]:
    """A plan in the columns of a frame."""
    movements = {at: amount for at, amount in moved.items() if at in frame.columns}
    beyond = {at: amount - ended.way_to_line(at[0]) for at, amount in movements.items() if at[1] == "out"}
    values = {frame.columns[at]: amount for at, amount in (movements | beyond).items()}
    taken = {frame.contacts[n].reduction: mm for n, mm in ended.plan.reductions.items() if n in frame.contacts}
    return values | taken


def _sensed(limit: Limit, value: float) -> float:
    """An amount so that more is further: a limit to one side counts that side, one to both sides either."""
    if limit.low == -float("inf"):
        return value
    return -value if limit.high == float("inf") else abs(value)


def _what(limit: Limit) -> str:
    _, what, *_ = limit.norm.split(".")
    return NARROWED if limit.place.endswith("narrowed") else _NAMES.get(what, what)


def _where(limit: Limit) -> str:
    return "/".join(_teeth(limit)) if "widening" in limit.norm else limit.place


def _teeth(limit: Limit) -> tuple[str, ...]:
    """The teeth a limit is for: of a pair both, of a contact both, of an arch none."""
    if "widening" in limit.norm:
        arch, number, *_ = limit.place.split()
        return tuple(tooth_at(arch, side, int(number)) for side in ("right", "left"))
    return () if limit.place in ARCHES else teeth_of(limit.place) if "-" in limit.place else (limit.place,)
