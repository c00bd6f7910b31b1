"""Planned movements of which published groups reached only a part, each kind asked about once."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import NamedTuple

from wellposed.findings import Severity
from wellposed.review.held import Facts, Held
from wellposed.review.rules.holds import moves_root, unheld
from wellposed.review.rules.roots import crowns
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._stated import amount
from wellposed.rules.aids import WANTED, helped, stance
from wellposed.vocabulary.motions import MOTIONS, VARIABLE_UNITS, Variable
from wellposed.vocabulary.teeth import LOWER, UPPER, arch_of, is_canine, is_incisor, is_molar, is_premolar


class Kind(NamedTuple):
    """A kind of movement that groups reached in part.

    name      a phrase with hyphens
    variable  which, in the sense ``sign``; 0 is either
    among     the teeth it is about
    least     the norm from whose amount on it is spoken of
    reached   the norm of what was reached; of two, the least and the most
    most      the norm from whose amount on it is asked about elsewhere; None: not
    """

    name: str
    variable: Variable
    sign: int
    among: Callable[[str], bool]
    least: str
    reached: tuple[str, ...]
    most: str | None = None


def _of(arch: str, is_kind: Callable[[str], bool]) -> Callable[[str], bool]:
    return lambda tooth: is_kind(tooth) and arch_of(tooth) == arch


def _front(tooth: str) -> bool:
    return is_incisor(tooth) or is_canine(tooth)


def _side(tooth: str) -> bool:
    return not is_incisor(tooth)


_REVIEW = ("achieved.rotation.review.least", "achieved.rotation.review.most")
_CANINES, _ROOTS, _WIDENED = "auxiliary.rotation.canines", "root-torque-of-front-teeth", "widening-in-an-adult"
_EXTRUDED, _TORQUED = ("achieved.extrusion.incisors",), ("achieved.torque.all",)
_UPPER_CANINE, _LOWER_CANINE = ("achieved.rotation.upper-canine",), ("achieved.rotation.lower-canine",)
_TURNED, _DISTAL, _WIDE = ("achieved.rotation.lower-incisors",), ("achieved.molar-distal",), ("achieved.transverse",)
_SUNK, _INTRUDED = "achieved.intrusion-mm", ("achieved.intrusion-mm",)
SELDOM = (
    Kind("extrusion-of-incisors", "vertical", 1, is_incisor, "auxiliary.extrusion.hard", _EXTRUDED),
    Kind("rotation-of-canines", "rotation", 0, _of(UPPER, is_canine), _CANINES, _UPPER_CANINE),
    Kind("rotation-of-canines", "rotation", 0, _of(LOWER, is_canine), _CANINES, _LOWER_CANINE),
    Kind("rotation-of-premolars", "rotation", 0, is_premolar, "auxiliary.rotation.premolars", _REVIEW),
    Kind(_ROOTS, "torque", 0, _front, "auxiliary.torque", _TORQUED),
)
_LOWER_TURNED, _PER_SIDE, _BODILY = (
    *("auxiliary.rotation.lower-incisors", "auxiliary.widening-per-side", "auxiliary.bodily"),
)
PARTLY = (
    Kind("rotation-of-lower-incisors", "rotation", 0, _of(LOWER, is_incisor), _LOWER_TURNED, _TURNED),
    Kind(_WIDENED, "out", 1, _side, _PER_SIDE, _WIDE),
    Kind("distal-movement", "along", -1, _of(LOWER, is_molar), _BODILY, _DISTAL, "caution.distal.lower-molars"),
    Kind("intrusion", "vertical", -1, _of(UPPER, is_incisor), _SUNK, _INTRUDED, "caution.intrusion.upper-incisors"),
    Kind("intrusion", "vertical", -1, _of(LOWER, is_incisor), _SUNK, _INTRUDED, "caution.intrusion.lower-incisors"),
)
_SAYS = (
    "{what:words}, {teeth:teeth}, up to {most:{unit}}: of what was planned in published groups, {reached} was reached."
)


@rule(
    "planned-movement-seldom-reached",
    Severity.CAUTION,
    title="The plan counts on movements that are seldom reached, and nothing makes up for it.",
    says=_SAYS,
    do="Ask for an overcorrection, an attachment or another auxiliary, or for less movement.",
    change="An overcorrection, or an attachment or another auxiliary on {teeth:list}, or at most {limit:{unit}}, would"
    " change it.",
    figures=tuple(key for kind in SELDOM for key in (kind.least, *kind.reached)),
    sources=("rossini-2015",),
)
def planned_movement_seldom_reached(held: Held) -> Iterator[Told]:
    """No incisor is extruded, canine or premolar turned, or front tooth's root torqued further than is easily reached
    without anything that makes up for the rest.

    What is not reached is missing at the end, and the next plan asks for it again.

    Evidence: reviews and pooled cohorts with wide intervals; their order is surer than the figures, and the percentage
    for torque is over all teeth. The amounts from which it is spoken of are those of textbooks. Where an attachment is
    asked for and missing, that is said instead.

    Passes: {"movements": [{"variable": "rotation", "unit": "deg", "values": {"13": 9}}]}
    Fails: {"movements": [{"variable": "rotation", "unit": "deg", "values": {"13": 20}}]}
    """
    loose = {(need.tooth, need.variable) for need in unheld(held)}
    yield from (_told(held, kind, found) for kind in SELDOM if (found := _short(held, kind, loose)))


@rule(
    "planned-movement-partly-reached",
    Severity.NOTE,
    title="The plan counts on movements that are reached in part, and nothing makes up for it.",
    says=_SAYS,
    do="Look whether an overcorrection or an auxiliary is wanted.",
    change="An overcorrection, or an attachment or another auxiliary on {teeth:list}, or at most {limit:{unit}}, would"
    " change it.",
    figures=tuple(key for kind in PARTLY for key in (kind.least, *kind.reached, kind.most) if key),
)
def planned_movement_partly_reached(held: Held) -> Iterator[Told]:
    """No lower incisor is turned far, side tooth of an adult moved outward, lower molar moved back, or incisor intruded
    further than groups reached without anything that makes up for the rest.

    What is not reached is missing at the end. Amounts beyond those of the norms are asked about elsewhere.

    Evidence: pooled cohorts and single reviews; that lower molars go back less than the upper ones of the figure is
    told without a number.

    Passes: {"movements": [{"variable": "rotation", "unit": "deg", "values": {"41": 12}}]}
    Fails: {"movements": [{"variable": "rotation", "unit": "deg", "values": {"41": 20}}]}
    """
    yield from (_told(held, kind, found) for kind in PARTLY if (found := _short(held, kind, ())))


def _short(held: Held, kind: Kind, elsewhere: Iterable[tuple[str, Variable]]) -> dict[str, float]:
    """The teeth that go further than is reached, with how far; those that something makes up for left out."""
    going = {tooth: mm for (tooth, variable), mm in held.moved.items() if variable == kind.variable}
    far = {
        tooth: mm for tooth, mm in going.items() if kind.among(tooth) and kind.sign * mm >= 0 and _far(held, kind, mm)
    }
    meant = {tooth: mm for tooth, mm in far.items() if _meant(held, kind, tooth)}
    skipped = set(elsewhere)
    return {t: mm for t, mm in meant.items() if (t, kind.variable) not in skipped and not _answered(held, kind, t)}


def _far(held: Held, kind: Kind, moved: float) -> bool:
    told_elsewhere = kind.most is not None and above(abs(moved), held.limit(kind.most))
    return above(abs(moved), held.limit(kind.least)) and not told_elsewhere


def _meant(held: Held, kind: Kind, tooth: str) -> bool:
    """Root torque only where the root is what moves; widening only in an adult, no root torqued outward."""
    if kind.name == _ROOTS:
        return any(moves_root(one) for one in crowns(held) if (one.tooth, one.turning) == (tooth, "torque"))
    return kind.name != _WIDENED or (held.chart.growing is False and held.going(tooth, "torque") >= 0)


def _answered(held: Held, kind: Kind, tooth: str) -> bool:
    """Whether an attachment, another auxiliary or an overcorrection makes up for what is not reached."""
    carriers = held.plan.carriers
    carries = tooth in carriers if carriers is not None else stance(held.chart, tooth).member in WANTED
    orders = (one for one in held.chart.rx.movements or () if tooth in one.teeth)
    more = (MOTIONS[one.motion].variable for one in orders if one.overcorrection is not None)
    return carries or helped(held.chart, tooth) or kind.variable in more


def _told(held: Held, kind: Kind, found: dict[str, float]) -> Told:
    unit = VARIABLE_UNITS[kind.variable]
    *least, most = (amount(held.limit(key), held.numbers.norm(key).unit) for key in kind.reached)
    facts: Facts = {"what": kind.name, "teeth": list(found), "most": max(map(abs, found.values())), "unit": unit}
    facts |= {"reached": " to ".join([*least, most]), "limit": held.limit(kind.least)}
    return told(held.at(kind.variable, found), **facts, figures=(kind.least, *kind.reached))


RULES = (planned_movement_seldom_reached, planned_movement_partly_reached)
