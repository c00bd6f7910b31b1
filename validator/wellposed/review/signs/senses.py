"""The one sense in which a prescription lets a tooth's variable go, where it says so: what signs are held to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from wellposed.kinematics.means import width_teeth
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.openings import incisors, molars, standing
from wellposed.model.clauses import Align
from wellposed.model.means import AnyMovement, ArchSlide, IncisorTravel, VerticalMovement, WidthChange
from wellposed.vocabulary.motions import MOTIONS, Variable
from wellposed.vocabulary.teeth import SIDES


class Asked(NamedTuple):
    """A sense, +1 or -1, and the clause that names it; ``back`` where a tooth turns back from how it was measured."""

    sign: int
    owner: str
    back: bool = False


At = tuple[str, Variable]
"""A variable of a tooth."""


def senses(mouth: Mouth) -> Mapping[At, Asked]:
    """Per variable of a tooth the sense in which it is ordered, allowed or has to come into line.

    Where clauses name both senses there is none.
    """
    found: dict[At, set[Asked]] = {}
    for at, asked in (*_movements(mouth), *_allowances(mouth), *_into_line(mouth)):
        found.setdefault(at, set()).add(asked)
    return {at: min(asked) for at, asked in found.items() if len({one.sign for one in asked}) == 1}


def _movements(mouth: Mouth) -> Iterator[tuple[At, Asked]]:
    for order in mouth.prescription.movements or ():
        sense = MOTIONS[order.motion]
        for tooth in standing(mouth, order.teeth):
            yield (tooth, sense.variable), Asked(sense.sign, order.id)


def _allowances(mouth: Mouth) -> Iterator[tuple[At, Asked]]:
    for one in mouth.prescription.allow or ():
        teeth, variable, sign = _directed(mouth, one)
        for tooth in teeth:
            yield (tooth, variable), Asked(sign, one.id)


def _directed(mouth: Mouth, one: object) -> tuple[list[str], Variable, int]:
    """What an allowance lets move, and in which sense; no teeth where it is more than one motion."""
    if isinstance(one, IncisorTravel):
        teeth = standing(mouth, one.teeth) if one.teeth else incisors(mouth, one.arch)
        return teeth, "out", 1 if one.use == "incisor-advance" else -1
    if isinstance(one, WidthChange):
        return width_teeth(mouth, one), "out", 1 if one.use == "widening" else -1
    if isinstance(one, ArchSlide):
        teeth = standing(mouth, one.teeth) if one.teeth else molars(mouth, one.arch, one.sides or SIDES)
        return teeth, "along", 1 if one.use == "mesial-movement" else -1
    if isinstance(one, VerticalMovement):
        return standing(mouth, one.teeth), "vertical", 1 if one.use == "extrusion" else -1
    if isinstance(one, AnyMovement):
        sense = MOTIONS[one.motion]
        return standing(mouth, one.teeth), sense.variable, sense.sign
    return [], "out", 0


def _into_line(mouth: Mouth) -> Iterator[tuple[At, Asked]]:
    """A tooth that was measured off the line or turned comes into it the other way."""
    measures: tuple[tuple[str, Variable], ...] = (("rotation", "rotation"), ("displacement", "out"))
    for goal in mouth.prescription.goals or ():
        for measure, variable in measures if isinstance(goal, Align) else ():
            values = mouth.tooth_values(measure)
            for tooth in standing(mouth, goal.align) if isinstance(goal, Align) else ():
                if values.get(tooth):
                    yield (tooth, variable), Asked(-1 if values[tooth] > 0 else 1, goal.id, measure == "rotation")
