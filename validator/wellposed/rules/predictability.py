"""Movements that published groups reached only in part: named with the figure, so that something makes up for it.

Every rule is silent where an overcorrection is ordered, or where the tooth may carry an attachment or has a button,
a screw or an elastic on it.
"""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.rules._declare import Told, rule
from wellposed.rules.aids import short_of
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import LOWER, UPPER, arch_of, is_canine, is_incisor, is_premolar

_EXTRUSION, _HARD = "achieved.extrusion.incisors", "auxiliary.extrusion.hard"
_CANINES = {UPPER: "achieved.rotation.upper-canine", LOWER: "achieved.rotation.lower-canine"}
_REVIEW = ("achieved.rotation.review.least", "achieved.rotation.review.most")
_FLAT, _TURNED = "auxiliary.rotation.lower-incisors", "achieved.rotation.lower-incisors"
_TORQUE = ("achieved.torque.all", "auxiliary.torque")


@rule(
    "incisor-extrusion-seldom-reached",
    Severity.CAUTION,
    title="Extrusion of incisors is ordered, and nothing makes up for what is usually not reached.",
    says="{asked:clause}: of the extrusion of incisors that was planned, {reached:percent} was reached, least of all "
    "movements.",
    do="Order an overcorrection, an attachment or elastics, or lessen the movement.",
    change="An overcorrection, an attachment or elastics on {teeth:list}, or at most {limit:mm}, would change it.",
    figures=(_EXTRUSION, _HARD),
)
def incisor_extrusion_seldom_reached(chart: Chart) -> Iterator[Told]:
    """No more extrusion of an incisor is ordered than is easily reached, unless something makes up for the rest.

    An aligner slides off a crown that tapers towards its edge, and the tooth stays behind.

    Evidence: one review; its studies used few attachments, and later reports are somewhat better. The amount from which
    it is spoken of is that of textbooks.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "extrusion",
                            "at_least": 0.5, "unit": "mm"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "extrusion",
                           "at_least": 1, "unit": "mm"}]}
    """
    for short in short_of(chart, "vertical", 1, _HARD, is_incisor):
        yield short.told(_EXTRUSION, _HARD, reached=chart.limit(_EXTRUSION), limit=chart.limit(_HARD))


@rule(
    "canine-rotation-seldom-reached",
    Severity.CAUTION,
    title="A rotation of canines is ordered, and nothing makes up for what is usually not reached.",
    says="{asked:clause}: of the rotation of such canines that was planned, {reached:percent} was reached on average.",
    do="Order an overcorrection, an attachment or a button, or lessen the movement.",
    change="An overcorrection, an attachment or a button on {teeth:list}, or at most {limit:deg}, would change it.",
    figures=(*_CANINES.values(), "auxiliary.rotation.canines"),
)
def canine_rotation_seldom_reached(chart: Chart) -> Iterator[Told]:
    """No canine is to be turned by more than aligners easily reach, unless something makes up for the rest.

    A canine is round in cross-section, so the aligner slips round it.

    Evidence: pooled cohorts with wide intervals (for the upper canine 27 to 70 %); the order of the teeth is surer than
    the figures. The amount from which it is spoken of is that of textbooks.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["13"], "motion": "mesiolingual-rotation",
                            "at_least": 10, "unit": "deg"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["13"], "motion": "mesiolingual-rotation",
                           "at_least": 20, "unit": "deg"}]}
    """
    key = "auxiliary.rotation.canines"
    for short in short_of(chart, "rotation", 0, key, is_canine):
        reached = list(dict.fromkeys(_CANINES[arch_of(tooth)] for tooth in short.teeth))
        yield short.told(*reached, key, reached=[chart.limit(one) for one in reached], limit=chart.limit(key))


@rule(
    "premolar-rotation-seldom-reached",
    Severity.CAUTION,
    title="A rotation of premolars is ordered, and nothing makes up for what is usually not reached.",
    says="{asked:clause}: of rotations that were planned, {least:percent} to {most:percent} was reached on average, "
    "and premolars are among the round teeth that turn least.",
    do="Order an overcorrection, an attachment or a button, or lessen the movement.",
    change="An overcorrection, an attachment or a button on {teeth:list}, or at most {limit:deg}, would change it.",
    figures=(*_REVIEW, "auxiliary.rotation.premolars"),
)
def premolar_rotation_seldom_reached(chart: Chart) -> Iterator[Told]:
    """No premolar is to be turned by more than aligners easily reach, unless something makes up for the rest.

    A premolar is round in cross-section, so the aligner slips round it.

    Evidence: the range is that of a review over all teeth; a figure for premolars alone was not found. The amount from
    which it is spoken of is that of textbooks.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["35"], "motion": "mesiolingual-rotation",
                            "at_least": 10, "unit": "deg"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["35"], "motion": "mesiolingual-rotation",
                           "at_least": 20, "unit": "deg"}]}
    """
    key = "auxiliary.rotation.premolars"
    least, most = (chart.limit(one) for one in _REVIEW)
    for short in short_of(chart, "rotation", 0, key, is_premolar):
        yield short.told(*_REVIEW, key, least=least, most=most, limit=chart.limit(key))


@rule(
    "lower-incisor-rotation-partly-reached",
    Severity.NOTE,
    title="A large rotation of lower incisors is ordered without overcorrection.",
    says="{asked:clause}: of the rotation of lower incisors that was planned, {reached:percent} was reached.",
    do="Look whether an overcorrection is wanted.",
    change="An overcorrection or an attachment on {teeth:list}, or at most {limit:deg}, would change it.",
    figures=(_TURNED, _FLAT),
)
def lower_incisor_rotation_partly_reached(chart: Chart) -> Iterator[Told]:
    """No lower incisor is to be turned far without anything that makes up for what is not reached.

    Rotations of lower incisors are also those that come back first.

    Evidence: pooled cohorts, with an interval of 59 to 83 %; the amount from which it is spoken of is a convention.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["31"], "motion": "mesiolingual-rotation",
                            "at_least": 10, "unit": "deg"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["31"], "motion": "mesiolingual-rotation",
                           "at_least": 25, "unit": "deg"}]}
    """
    for short in short_of(chart, "rotation", 0, _FLAT, lambda tooth: is_incisor(tooth) and arch_of(tooth) == LOWER):
        yield short.told(_TURNED, _FLAT, reached=chart.limit(_TURNED), limit=chart.limit(_FLAT))


@rule(
    "front-root-torque-seldom-reached",
    Severity.CAUTION,
    title="Root torque of front teeth is ordered, and nothing makes up for what is usually not reached.",
    says="{asked:clause}: a review calls aligners not effective in it; over all teeth {reached:percent} of what was "
    "planned was reached.",
    do="Order an overcorrection or an auxiliary, or lessen the movement.",
    change="An overcorrection, or an attachment or another auxiliary on {teeth:list}, or at most {limit:deg}, would "
    "change it.",
    figures=_TORQUE,
    sources=("rossini-2015",),
)
def front_root_torque_seldom_reached(chart: Chart) -> Iterator[Told]:
    """No more root torque of an incisor or canine is ordered than is easily reached, unless something makes up for it.

    The aligner gives way at the gum, so the crown tips where the root was to move.

    Evidence: one review gives the judgement without a number for front teeth; the percentage is of one cohort, over all
    teeth. Tipping of the crown is not meant, and reached better.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "palatal-root-torque",
                            "at_least": 5, "unit": "deg"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "palatal-root-torque",
                           "at_least": 10, "unit": "deg"}]}
    """
    reached, limit = (chart.limit(key) for key in _TORQUE)
    for short in short_of(chart, "torque", 0, _TORQUE[1], lambda tooth: is_incisor(tooth) or is_canine(tooth)):
        if "root" in str(short.place.said("motion")):
            yield short.told(*_TORQUE, reached=reached, limit=limit)


RULES = (
    *(incisor_extrusion_seldom_reached, canine_rotation_seldom_reached, premolar_rotation_seldom_reached),
    *(lower_incisor_rotation_partly_reached, front_root_torque_seldom_reached),
)
