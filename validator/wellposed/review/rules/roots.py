"""Where the roots go: crowns tipped over roots that stay."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import radians
from typing import NamedTuple

from wellposed.findings import Severity
from wellposed.kinematics.opened import Source
from wellposed.kinematics.openings import sensed
from wellposed.model.clauses import Movement
from wellposed.model.means import AnyMovement, IncisorTravel
from wellposed.review.held import Facts, Held, grouped
from wellposed.review.travel import motion_of
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, told
from wellposed.vocabulary.motions import MOTIONS, Variable
from wellposed.vocabulary.teeth import arch_of, is_canine, is_incisor, is_primary, position

_BODILY = "auxiliary.bodily"
_TIPPED = {"torque": "auxiliary.torque", "tip": "auxiliary.tip"}
_STILL = "review.within-mm"
_PAIRS: tuple[tuple[Variable, Variable], ...] = (("out", "torque"), ("along", "tip"))
_THIRD_MOLAR = 8


class Crown(NamedTuple):
    """A crown that goes somewhere, and what its root does.

    travel  of the crown, mm
    angle   how far it turns, deg; its variable is ``turning``
    apex    travel of the root's end in the sense of the crown's, mm; less than 0: the other way
    """

    tooth: str
    variable: Variable
    turning: Variable
    travel: float
    angle: float
    apex: float


def crowns(held: Held) -> Iterator[Crown]:
    """Every permanent tooth that goes in or out, or along the arch, third molars left out; turned or not.

    The root's end goes ``travel - length x angle x pi / 180``.
    """
    for tooth in held.free:
        if is_primary(tooth) or position(tooth) == _THIRD_MOLAR:
            continue
        for variable, turning in _PAIRS:
            travel, angle = held.going(tooth, variable), held.going(tooth, turning)
            apex = travel - held.limit(f"tooth-length.{tooth}") * radians(angle)
            if travel or angle:
                yield Crown(tooth, variable, turning, travel, angle, apex if travel > 0 else -apex)


def _tipped(held: Held, among: Callable[[Crown], bool]) -> Iterator[Told]:
    """One finding of each arch and motion: crowns that travel and tip by more than a little, over roots that stay."""
    over = (one for one in crowns(held) if among(one) and _is_tipped(held, one))
    for (_, motion), found in grouped(
        ((arch_of(c.tooth), motion_of(c.tooth, c.variable, c.travel)), c) for c in over
    ).items():
        worst = max(found, key=lambda one: abs(one.angle))
        facts: Facts = {"teeth": [one.tooth for one in found], "motion": motion, "travel": abs(worst.travel)}
        facts |= {"angle": abs(worst.angle), "apex": max(0.0, -worst.apex), "limit": held.limit(_BODILY)}
        key = _TIPPED[worst.turning]
        pointer = held.at(worst.variable, facts["teeth"])
        yield told(pointer, **facts, most=held.limit(key), figures=(_BODILY, key, _STILL))


def _is_tipped(held: Held, one: Crown) -> bool:
    far = above(abs(one.travel), held.limit(_BODILY)) and above(abs(one.angle), held.limit(_TIPPED[one.turning]))
    left_behind = one.travel * one.angle > 0 and not above(one.apex, held.limit(_STILL))
    return far and left_behind and not _is_asked(held, one)


def _is_asked(held: Held, one: Crown) -> bool:
    """Whether some clause orders or allows so much of this turn by name, or an advance that comes with so much."""
    at, least = sensed(one.tooth, one.turning, 1 if one.angle > 0 else -1), abs(one.angle) - held.within(one.turning)
    sources = held.matter.translation.opened.sources(at)
    enough = (source for source in sources if not above(least, _reach(source, one)))
    places = (held.chart.place(source.owner) for source in enough)
    return any(place is not None and _turns(place.part, one.turning) for place in places)


def _reach(source: Source, one: Crown) -> float:
    """How far a source lets it turn, deg: where that comes only with the travel, its share of what is planned."""
    return min(source.amount, abs(source.per * one.travel)) if source.per else source.amount


def _turns(part: object, variable: Variable) -> bool:
    if isinstance(part, Movement | AnyMovement):
        return MOTIONS[part.motion].variable == variable
    return isinstance(part, IncisorTravel) and part.use == "incisor-advance"


def _widened(one: Crown) -> bool:
    """Whether a premolar or molar goes outward."""
    return one.variable == "out" and one.travel > 0 and not (is_incisor(one.tooth) or is_canine(one.tooth))


_SAYS = (
    "{teeth:teeth}: the crown goes up to {travel:mm} ({motion:words}) and tips by {angle:deg} with it, so the end of"
    " the root goes {apex:mm} the other way."
)
_CHANGE = "Less than {most:deg} of tipping, {limit:mm} of travel, or a root that comes along, would change it."
_FIGURES = (_BODILY, *_TIPPED.values(), _STILL, "tooth-length")


@rule(
    "crown-moved-without-root",
    Severity.CAUTION,
    title="Crowns are tipped where the roots stay behind.",
    says=_SAYS,
    do="Say that tipping is meant, or ask for root control.",
    change=_CHANGE,
    figures=_FIGURES,
)
def crown_moved_without_root(held: Held) -> Iterator[Told]:
    """No crown goes far in, out or along the arch by tipping alone, premolars and molars moved outward left out.

    A tooth that only tips ends inclined: incisors drawn back so end upright, and a space closed so opens again.

    Evidence: geometry with lengths of average teeth; the amounts from which it is spoken of are those from which texts
    ask for help with movement of crown and root, and with tip. Where the prescription names so much of the turn, or
    allows the advance that it comes with, tipping is what was asked for. A retraction says nothing of torque.

    Passes: {"movements": [{"variable": "out", "unit": "mm", "values": {"11": -3}},
                           {"variable": "torque", "unit": "deg", "values": {"11": -4}}]}
    Fails: {"movements": [{"variable": "out", "unit": "mm", "values": {"11": -3}},
                          {"variable": "torque", "unit": "deg", "values": {"11": -10}}]}
    """
    yield from _tipped(held, lambda one: not _widened(one))


@rule(
    "widened-by-tipping",
    Severity.CAUTION,
    title="Back teeth are moved outward by tipping.",
    says=_SAYS,
    do="Say that tipping is meant, or ask for buccal root torque.",
    change=_CHANGE,
    figures=_FIGURES,
)
def widened_by_tipping(held: Held) -> Iterator[Told]:
    """No premolar or molar goes far outward with its crown torqued outward so much that the root stays behind.

    The palatal cusps come down and meet early, the roots go against the outer plate, and the width comes back.

    Evidence: geometry with lengths of average teeth: about its centre of resistance a molar tips 4.5 degrees for each
    mm. In adults crowns tip more than was planned, so that what is planned here is the least to expect. Where the
    prescription names so much torque, it is what was asked for.

    Passes: {"movements": [{"variable": "out", "unit": "mm", "values": {"16": 2}},
                           {"variable": "torque", "unit": "deg", "values": {"16": 2}}]}
    Fails: {"movements": [{"variable": "out", "unit": "mm", "values": {"16": 2}},
                          {"variable": "torque", "unit": "deg", "values": {"16": 9}}]}
    """
    yield from _tipped(held, _widened)


RULES = (crown_moved_without_root, widened_by_tipping)
