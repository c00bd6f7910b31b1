"""Ordered and allowed movements that make room in an arch (+) or take it (-)."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.derive.room import Moved, apart, mesially, outwards
from wellposed.derive.space_parts import Asked, Part, moved
from wellposed.kinematics.means import width_teeth
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.openings import incisors, molars, standing
from wellposed.model.clauses import Movement
from wellposed.model.means import AnyMovement, ArchSlide, IncisorTravel, WidthChange
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import SIDES, arch_of, is_incisor

Signed = Iterator[tuple[int, Part]]


def moves(mouth: Mouth, arch: str) -> Signed:
    """Each movement as a line, with whether it makes room or takes it."""
    for item in mouth.prescription.movements or ():
        least = item.at_least or 0.0
        most = item.at_most if item.at_most is not None else item.at_least
        yield from _motion(mouth, arch, item, Asked(most, least, item.id))
    for allowance in mouth.prescription.allow or ():
        if isinstance(allowance, IncisorTravel | WidthChange | ArchSlide | AnyMovement):
            asked = Asked(allowance.up_to, 0.0, allowance.id)
            yield from _allowed(mouth, arch, allowance, asked)


def _allowed(
    mouth: Mouth, arch: str, clause: IncisorTravel | WidthChange | ArchSlide | AnyMovement, asked: Asked
) -> Signed:
    if isinstance(clause, AnyMovement):
        yield from _motion(mouth, arch, clause, asked)
    elif clause.arch == arch and (teeth := _teeth(mouth, clause)):
        sign = 1 if clause.use in ("incisor-advance", "widening", "distal-movement") else -1
        yield sign, moved(mouth, arch, clause.use, _each(mouth, clause, teeth, sign), asked)


def _teeth(mouth: Mouth, clause: IncisorTravel | WidthChange | ArchSlide) -> list[str]:
    """The teeth an allowance of an arch is about, of those that stand."""
    if isinstance(clause, WidthChange):
        return width_teeth(mouth, clause)
    if clause.teeth:
        return standing(mouth, clause.teeth)
    if isinstance(clause, IncisorTravel):
        return incisors(mouth, clause.arch)
    return molars(mouth, clause.arch, clause.sides or SIDES)


def _each(mouth: Mouth, clause: IncisorTravel | WidthChange | ArchSlide, teeth: list[str], sign: int) -> Moved:
    """1 mm of what is allowed."""
    if isinstance(clause, IncisorTravel):
        return outwards(teeth, sign)
    if isinstance(clause, WidthChange):
        row = mouth.rows[clause.arch]
        return apart(row, row.line(0.0), teeth, sign)
    return mesially(teeth, -sign)


def _motion(mouth: Mouth, arch: str, clause: Movement | AnyMovement, asked: Asked) -> Signed:
    """A named motion of named teeth: incisors apart from the others, as they go by other names."""
    variable, sign = MOTIONS[clause.motion]
    if variable not in ("out", "along"):
        return
    teeth = [tooth for tooth in standing(mouth, clause.teeth) if arch_of(tooth) == arch]
    front = [tooth for tooth in teeth if is_incisor(tooth)]
    side = [tooth for tooth in teeth if not is_incisor(tooth)]
    if variable == "along":
        named = [("distal-movement" if sign < 0 else "mesial-movement", teeth)]
    else:
        named = [("incisor-advance" if sign > 0 else "incisor-retraction", front)]
        named += [("widening" if sign > 0 else "narrowing", side)]
    for what, group in named:
        if group:
            each = mesially(group, sign) if variable == "along" else outwards(group, sign)
            yield (-sign if variable == "along" else sign), moved(mouth, arch, what, each, asked)
