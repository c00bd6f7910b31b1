"""What needs room in an arch: crowding, levelling, retraction, space to leave, a midline."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise

from wellposed import norms
from wellposed.derive.space_moves import moves
from wellposed.derive.space_parts import Line, Part, exactly
from wellposed.kinematics.mouth import Mouth
from wellposed.model.clauses import KeepMeasure, Leave, Level, Reach
from wellposed.model.means import Expectation
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.teeth import LOWER, arch_of

STEPS = ("shallow", "middling", "deep")
"""The depths at which the convention gives an amount, by their names in the norms."""

_CURVE = "curve-of-spee"


def needs(mouth: Mouth, arch: str) -> Iterator[Part]:
    """Every need of the arch, in a fixed order."""
    yield from _crowding(mouth, arch)
    if arch == LOWER:
        yield from _levelling(mouth)
    yield from (part for sign, part in moves(mouth, arch) if sign < 0)
    yield from _left(mouth, arch)
    yield from _midline(mouth, arch)


def _crowding(mouth: Mouth, arch: str) -> Iterator[Part]:
    """As measured, whether or not a goal relieves it; unknown where neither crowding nor spacing is stated."""
    name = f"{arch}-crowding"
    finding = mouth.finding(name)
    if finding is not None:
        yield Part(exactly("crowding", mouth.amount(name), finding.id, error=mouth.error(name)))
    elif not mouth.room_stated(arch):
        yield Part(exactly("crowding", None))


# the curve of Spee


def levelling(depth: float) -> float:
    """Room that levelling a lower curve of this depth takes by the convention of space planning, mm; depth in mm."""
    depths, rooms = norms.family("space.levelling-depth"), norms.family("space.levelling")
    steps = sorted((depths[name], rooms[name]) for name in STEPS)
    if depth <= 0:
        return 0.0
    if depth <= steps[0][0]:
        return steps[0][1]
    for (shallow, less), (deep, more) in pairwise(steps):
        if depth <= deep:
            return less + (more - less) * (depth - shallow) / (deep - shallow)
    return steps[-1][1]


def _levelling(mouth: Mouth) -> Iterator[Part]:
    """Of the lower arch, where it is asked for."""
    asked = [goal.id for goal in mouth.prescription.goals or () if _levels(goal)]
    kept = any(isinstance(keep, KeepMeasure) and keep.measure == _CURVE for keep in mouth.prescription.keep or ())
    if not asked or kept:
        return
    finding, depth = mouth.finding(_CURVE), mouth.baseline(_CURVE)
    if finding is None or depth is None:
        yield Part(exactly("levelling", None, *asked))
        return
    low, usual = norms.value("space.levelling-per-depth") * depth, levelling(depth)
    yield Part(Line("levelling", usual, min(low, usual), usual, (finding.id, *asked), min(low, usual)))


def _levels(goal: object) -> bool:
    return (isinstance(goal, Level) and goal.level == LOWER) or (isinstance(goal, Reach) and goal.measure == _CURVE)


# room to be left, and a midline


def _left(mouth: Mouth, arch: str) -> Iterator[Part]:
    for goal in mouth.prescription.goals or ():
        if isinstance(goal, Leave) and arch_of(teeth_of(goal.leave)[0]) == arch:
            yield Part(exactly("space-left", goal.amount, goal.id))


def _midline(mouth: Mouth, arch: str) -> Iterator[Part]:
    """A midline takes on one side what it gives on the other: nothing in all."""
    name = f"{arch}-midline"
    for goal in mouth.prescription.goals or ():
        if isinstance(goal, Reach) and goal.measure == name:
            counted = [one for one in mouth.prescription.expect or () if one.measure == name]
            shift = _shift(goal, mouth.baseline(name), counted)
            if shift is None or shift > 0:
                ids = (goal.id, *(one.id for one in counted))
                yield Part(Line("midline", 0.0, 0.0, 0.0, ids, 0.0, one_side=shift))


def _shift(goal: Reach, present: float | None, counted: Iterable[Expectation]) -> float | None:
    """How far teeth must move a measure for it to lie between the bounds of a goal, the changes counted on being what
    suits the goal best; None where it is not stated where it stands.
    """
    if present is None:
        return None
    low, high = present, present
    for one in counted:
        low, high = low + one.at_least, high + one.at_most
    least = high if goal.at_least is None else goal.at_least
    most = low if goal.at_most is None else goal.at_most
    return max(least - high, low - most, 0.0)
