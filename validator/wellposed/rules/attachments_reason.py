"""Attachments: whether anything is there to need them, whether the aligner holds without, and what shape is meant."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import fmean

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.aids import attached, helped, is_moved, openers, stance, turning
from wellposed.rules.chart import Chart
from wellposed.vocabulary.motions import VARIABLES, Variable
from wellposed.vocabulary.teeth import ARCHES, arch_of, is_molar, is_premolar, side_of

_CROWN = "auxiliary.retention.crown-height"
_SIZES: dict[Variable, str] = {
    "along": "auxiliary.bodily",
    "out": "auxiliary.bodily",
    "torque": "auxiliary.torque",
    "tip": "auxiliary.tip",
}


@rule(
    "attachment-without-reason",
    Severity.CAUTION,
    title="An attachment is asked for on a tooth that nothing moves, and retention is not given as the reason.",
    says="{asked:clause}: no clause moves {teeth:list}, and the reason is not stated as retention.",
    do="State retention as the reason if that is what it is for, or leave the attachment out.",
    change="A movement of {teeth:list}, or retention as the reason, would change it.",
)
def attachment_without_reason(chart: Chart) -> Iterator[Told]:
    """An attachment that must be placed is on a tooth that some clause moves, or its reason is retention.

    Each attachment is bonded, worn for months and ground off. One that serves nothing may be left over from another
    plan, or be meant for the tooth beside it. Teeth that hold elastics, and back teeth of an arch in which teeth go
    up or down, are taken to hold the aligner.

    Evidence: common practice; that an attachment costs nothing has not been shown either.

    Passes: {"attachments": [{"id": "t1", "must": ["15"], "reason": "retention"}]}
    Fails: {"attachments": [{"id": "t1", "must": ["15"]}]}
    """
    for place in chart.of("attachments"):
        idle = [tooth for tooth in _to_move(chart, place) if not is_moved(chart, tooth) and not _holds(chart, tooth)]
        if idle:
            yield told(place.pointer, place.owner, *_because(place), asked=said(place.part), teeth=idle)


@rule(
    "attachment-for-small-movement",
    Severity.NOTE,
    title="An attachment is asked for although no movement of the tooth is large enough to need one.",
    says="{asked:clause}: what moves {teeth:list} stays within what aligners usually reach without an attachment.",
    do="Leave it if it is meant; else leave the attachment out.",
    change="A movement above these amounts, or retention as the reason, would change it.",
    figures=("auxiliary.rotation.canines", "auxiliary.rotation.premolars", *sorted(set(_SIZES.values()))),
)
def attachment_for_small_movement(chart: Chart) -> Iterator[Told]:
    """An attachment that must be placed is on a tooth whose movement may pass an amount that asks for one.

    Small movements are usually reached without, and every attachment is bonded and ground off again.

    Evidence: the amounts are those of textbooks, without a source of their own; for the rotation of incisors and
    molars and for intrusion there is none, so any of these counts as a reason.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["13"], "motion": "mesiolingual-rotation",
                            "at_least": 12, "at_most": 15, "unit": "deg"}],
             "attachments": [{"id": "t1", "must": ["13"]}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["13"], "motion": "mesiolingual-rotation",
                           "at_least": 4, "at_most": 6, "unit": "deg"}],
            "attachments": [{"id": "t1", "must": ["13"]}]}
    """
    for place in chart.of("attachments"):
        teeth = [tooth for tooth in _to_move(chart, place) if openers(chart, tooth) and not _holds(chart, tooth)]
        small = {tooth: passed for tooth in teeth if (passed := _within(chart, tooth))}
        if small:
            owners = dict.fromkeys(one.owner for tooth in small for one in openers(chart, tooth))
            figures = tuple(dict.fromkeys(key for keys in small.values() for key in keys))
            yield told(place.pointer, place.owner, *owners, asked=said(place.part), teeth=list(small), figures=figures)


def _to_move(chart: Chart, place: Place) -> list[str]:
    """The teeth that must carry an attachment for a movement, or without a reason; not those that cannot move."""
    if place.said("reason") == "retention":
        return []
    return [t for t in attached(place, "must") if t not in chart.mouth.locked and not chart.state(t, "unerupted")]


def _because(place: Place) -> tuple[str, ...]:
    return tuple(place.said("because") or ())


def _holds(chart: Chart, tooth: str) -> bool:
    """Whether an attachment on a tooth holds the aligner against elastics, or against teeth that go up or down."""
    elastics = any(
        side_of(tooth) in one.said("sides") for one in chart.allowed("class-ii-elastics", "class-iii-elastics")
    )
    line = chart.mouth.rows[arch_of(tooth)].teeth
    upright = _is_back(tooth) and any(openers(chart, other, "vertical") for other in line if other != tooth)
    return elastics or upright or helped(chart, tooth)


def _is_back(tooth: str) -> bool:
    return is_premolar(tooth) or is_molar(tooth)


def _within(chart: Chart, tooth: str) -> tuple[str, ...]:
    """The norms within which all movements of a tooth stay; none if one of them passes its own, or has none."""
    sizes = {variable: _size(tooth, variable) for variable in VARIABLES if _most(chart, tooth, variable) > 0}
    small = [key for variable, key in sizes.items() if key and _most(chart, tooth, variable) <= chart.limit(key)]
    return tuple(small) if len(small) == len(sizes) else ()


def _most(chart: Chart, tooth: str, variable: Variable) -> float:
    return max(chart.reach(tooth, variable, sign) for sign in (1, -1))


def _size(tooth: str, variable: Variable) -> str | None:
    return turning(tooth) if variable == "rotation" else _SIZES.get(variable)


@rule(
    "no-attachments-and-short-crowns",
    Severity.CAUTION,
    title="No attachment may be placed in an arch whose back teeth are too short to hold an aligner well.",
    says="the measured back teeth of the {arch} arch are {height:mm} high on average, and no tooth there may carry an "
    "attachment; below {limit:mm} an aligner holds poorly.",
    do="Say what is to hold the aligner: attachments for retention, another cut of the edge, or nothing more.",
    change="Crowns of {limit:mm} or more, or leave to place attachments there, would change it.",
    figures=(_CROWN,),
)
def no_attachments_and_short_crowns(chart: Chart) -> Iterator[Told]:
    """Where every tooth of an arch is refused an attachment, its measured premolars and molars are high enough on
    average to hold an aligner.

    An aligner grips below the greatest width of the crowns. On short crowns it lifts, and what it lifts off does not
    move.

    Evidence: common practice; no published height was found. Only heights that are stated are looked at.

    Passes: {"findings": [{"id": "f1", "tooth_measure": "crown-height", "unit": "mm", "values": {"16": 6, "26": 6}}],
             "attachments": [{"id": "t1", "otherwise": "none"}]}
    Fails: {"findings": [{"id": "f1", "tooth_measure": "crown-height", "unit": "mm", "values": {"16": 4, "26": 4.5}}],
            "attachments": [{"id": "t1", "otherwise": "none"}]}
    """
    heights = chart.tooth_values("crown-height")
    for arch in ARCHES:
        line = [tooth for tooth in chart.mouth.rows[arch].teeth if not chart.state(tooth, "pontic", "implant")]
        measured = [heights[tooth] for tooth in line if tooth in heights and _is_back(tooth)]
        limit = chart.limit(_CROWN)
        if measured and fmean(measured) < limit and (refusing := _refusing(chart, arch)):
            owners = [place.owner for place in refusing]
            facts = {"arch": arch, "height": fmean(measured), "limit": limit, "figures": (_CROWN,)}
            yield told(refusing[-1].pointer, *owners, *chart.found("crown-height"), **facts)


def _refusing(chart: Chart, arch: str) -> list[Place]:
    """The clauses that refuse every tooth of a treated arch an attachment; none if a tooth may carry one."""
    treated = chart.rx.treat is None or chart.rx.treat.arches in (arch, "both")
    stances = [stance(chart, tooth) for tooth in chart.mouth.rows[arch].teeth if treated]
    if any(one.member not in ("must_not", "none") for one in stances):
        return []
    return list(dict.fromkeys(one.place for one in stances if one.place))


@rule(
    "attachment-shape-not-said",
    Severity.ASK,
    title="The shape of an attachment is to be as described, and nothing describes it.",
    says="{asked:clause}: the shape is to be as described, and no words describe it.",
    do="Describe the shape in words, name one, or leave it to the laboratory.",
    change="Words at the clause, or another shape, would change it.",
)
def attachment_shape_not_said(chart: Chart) -> Iterator[Told]:
    """An attachment whose shape is to be as described has words that describe it.

    The laboratory would have to guess, and the template is made with the guess.

    Evidence: none is needed.

    Passes: {"attachments": [{"id": "t1", "must": ["15"], "reason": "retention", "shape": "ellipsoid-vertical"}]}
    Fails: {"attachments": [{"id": "t1", "must": ["15"], "reason": "retention", "shape": "as-described"}]}
    """
    for place in chart.of("attachments"):
        if place.said("shape") == "as-described" and not place.said("words"):
            missing = ("words that describe the shape",)
            yield told(place.pointer, place.owner, asked=said(place.part), missing=missing)


RULES = (
    *(attachment_without_reason, attachment_for_small_movement, no_attachments_and_short_crowns),
    attachment_shape_not_said,
)
