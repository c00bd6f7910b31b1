"""What a means opens, as rates an amount is multiplied into: the pieces the table of the specification is built of."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from math import inf
from typing import NamedTuple

from wellposed import norms
from wellposed.kinematics.mouth import Mouth
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.teeth import arch_of, is_incisor, is_molar, position, side_of


class Sensed(NamedTuple):
    """One variable of one tooth in one sense."""

    tooth: str
    variable: Variable
    sign: int


@cache
def sensed(tooth: str, variable: Variable, sign: int) -> Sensed:
    """The one of these, made once."""
    return Sensed(tooth, variable, sign)


class Opening(NamedTuple):
    """A sensed variable opened ``rate`` times the clause's amount; infinite: without bound.

    soft   yields to an amount stated for the same motion, teeth and sense
    drawn  the tooth is drawn distally by a means, so a canine may go straight back
    alike  the incisors of the arch move alike
    slack  no movement of its own that others could follow
    usual  the amount is the customary one, not stated
    per    comes only with ``by`` of the same tooth, at most this much per mm or degree of it: + with its positive
           sense, - with its negative
    """

    at: Sensed
    rate: float
    soft: bool = False
    drawn: bool = False
    alike: bool = False
    slack: bool = False
    usual: bool = False
    per: float = 0.0
    by: Variable = "out"


Openings = list[Opening]


def both(tooth: str, variable: Variable, rate: float = inf, soft: bool = False) -> Openings:
    """Both senses of a variable."""
    return [Opening(sensed(tooth, variable, sign), rate, soft) for sign in (1, -1)]


def motion(teeth: Iterable[str], variable: Variable, sign: int, rate: float = 1.0) -> Openings:
    """One motion of these teeth."""
    drawn = variable == "along" and sign < 0
    return [Opening(sensed(tooth, variable, sign), rate, drawn=drawn) for tooth in teeth]


def with_along(openings: Openings, mouth: Mouth) -> Openings:
    """Any opened ``out`` opens ``along`` of the same tooth, molars excepted; of a last molar a little."""
    return openings + [more for o in openings if o.at.variable == "out" for more in _along_of(o, mouth)]


def _along_of(opening: Opening, mouth: Mouth) -> Openings:
    tooth = opening.at.tooth
    if not is_molar(tooth):
        return both(tooth, "along", inf, opening.soft)
    line = mouth.rows[arch_of(tooth)].teeth
    if tooth not in (line[0], line[-1]):
        return []
    rate = opening.rate * norms.value("kinematics.last-molar-along-per-out")
    return [o._replace(slack=True) for o in both(tooth, "along", rate, opening.soft)]


def with_travel(openings: Openings) -> Openings:
    """Any torque opened by a clause opens ``out`` of the same tooth in the same sense."""
    travel = norms.value("kinematics.out-per-torque")
    turned = [o for o in openings if o.at.variable == "torque"]
    return openings + [
        Opening(sensed(o.at.tooth, "out", o.at.sign), o.rate * travel, o.soft, per=o.at.sign * travel, by="torque")
        for o in turned
    ]


def incisor_travel(mouth: Mouth, teeth: Iterable[str], sign: int, alike: bool = True) -> Openings:
    """Incisors forward (+) or back (-): ``out``, their torque with it, and the arc of their edges."""
    torque, arc = norms.value("kinematics.torque-per-advance"), norms.value("kinematics.sink-per-advance")
    opened: Openings = []
    for tooth in teeth:
        opened += [
            Opening(sensed(tooth, "out", sign), 1.0, alike=alike),
            Opening(sensed(tooth, "torque", sign), torque, per=sign * torque),
            Opening(sensed(tooth, "vertical", -sign), arc, per=sign * arc),
        ]
    return with_along(opened, mouth)


def width_change(mouth: Mouth, teeth: Iterable[str], sign: int) -> Openings:
    """Teeth of both sides apart (+) or together (-); the pair's width bounds them, not the single tooth."""
    slide = norms.value("kinematics.last-molar-along-per-out")
    opened = with_along(motion(teeth, "out", sign, inf), mouth)
    return [o._replace(rate=slide) if o.slack else o for o in opened]


def extraction_of(mouth: Mouth, tooth: str) -> Openings:
    """What the loss of one tooth opens: slide towards its place, and the front inwards."""
    line = mouth.rows[arch_of(tooth)].teeth
    front = [t for t in line if position(t) <= 3]
    sliding = front
    if not is_incisor(tooth):
        mesial = [t for t in line if side_of(t) == side_of(tooth) and position(t) < position(tooth)]
        sliding = [t for t in line if t in mesial or is_incisor(t)]
    opened = [Opening(sensed(t, "along", s), inf, True, drawn=s < 0) for t in sliding for s in (1, -1)]
    back = [Opening(sensed(t, "out", -1), inf, True, alike=is_incisor(t)) for t in front]
    return opened + with_along(back, mouth)


def slides_at(teeth: Iterable[str]) -> Openings:
    """``along`` and ``tip`` of these teeth, molars excepted."""
    variables: tuple[Variable, ...] = ("along", "tip")
    return [o for tooth in teeth if not is_molar(tooth) for variable in variables for o in both(tooth, variable)]


def follow_reduction(contacts: Iterable[tuple[str, str]], rate: float) -> Openings:
    """Non-molar teeth at reduced contacts may move along by the amount."""
    teeth = dict.fromkeys(tooth for contact in contacts for tooth in contact if not is_molar(tooth))
    return [o for tooth in teeth for o in both(tooth, "along", rate)]


# which teeth are meant


def incisors(mouth: Mouth, arch: str) -> list[str]:
    """The incisors standing in an arch."""
    return [tooth for tooth in mouth.rows[arch].teeth if is_incisor(tooth)]


def side_teeth(mouth: Mouth, arch: str) -> list[str]:
    """Canines to second molars of an arch."""
    return [tooth for tooth in mouth.rows[arch].teeth if 3 <= position(tooth) <= 7]


def molars(mouth: Mouth, arch: str, sides: Iterable[str]) -> list[str]:
    """First and second molars of these sides of an arch."""
    return [t for t in mouth.rows[arch].teeth if position(t) in (6, 7) and is_molar(t) and side_of(t) in sides]


def standing(mouth: Mouth, teeth: Iterable[str]) -> list[str]:
    """Those of the teeth that stand in line."""
    present = {tooth for row in mouth.rows.values() for tooth in row.teeth}
    return [tooth for tooth in teeth if tooth in present]


def usual_reduction_contacts(mouth: Mouth, arch: str) -> list[str]:
    """First molar to first molar."""
    return [c.name for c in mouth.rows[arch].contacts if position(c.first) <= 6 and position(c.second) <= 6]
