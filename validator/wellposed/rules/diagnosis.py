"""The diagnosis against the measurements: what every problem needs, and what is answered though it is usual.

The rules for single problems stand in the modules beside this one; ``RULES`` has them all.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Any

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.model.clauses import Reach
from wellposed.model.findings import Finding
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._stated import RELEVANT_MM, amount, arches, in_words, readings, sides, values
from wellposed.rules.chart import Chart
from wellposed.rules.diagnosis_angles import RULES as ANGLES
from wellposed.rules.diagnosis_bite import DEEP
from wellposed.rules.diagnosis_bite import RULES as BITE
from wellposed.rules.diagnosis_face import RULES as FACE
from wellposed.rules.diagnosis_front import RULES as FRONT
from wellposed.rules.diagnosis_relations import QUARTER
from wellposed.rules.diagnosis_relations import RULES as RELATIONS
from wellposed.rules.diagnosis_room import RULES as ROOM
from wellposed.rules.diagnosis_teeth import RULES as TEETH
from wellposed.rules.diagnosis_width import RULES as WIDTH
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.teeth import ARCHES, SIDES

_INCLINED = (
    *("upper-incisor-to-palatal-plane", "upper-incisor-to-sella-nasion", "lower-incisor-to-mandibular-plane"),
    *("interincisal-angle", "overjet"),
)
MEASURED_BY: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "deep-bite": ("overbite",),
        "open-bite-anterior": ("overbite",),
        "open-bite-posterior": ("posterior-open-bite",),
        "crowding": ("{arch}-crowding", "{arch}-irregularity"),
        "spacing": ("{arch}-spacing",),
        "class-i": ("molar-relation-{side}", "canine-relation-{side}"),
        "class-ii": ("molar-relation-{side}", "canine-relation-{side}", "anb-angle"),
        "class-iii": ("molar-relation-{side}", "canine-relation-{side}", "anb-angle"),
        "increased-overjet": ("overjet",),
        "reverse-overjet": ("overjet",),
        "midline-deviation": ("{arch}-midline",),
        "rotated-teeth": ("rotation",),
        "displaced-teeth": ("displacement", "{arch}-crowding", "{arch}-irregularity"),
        "deep-curve-of-spee": ("curve-of-spee",),
        "protrusive-incisors": _INCLINED,
        "retroclined-incisors": _INCLINED,
        "excess-gingival-display": ("gingival-display-on-smiling", "incisor-display-at-rest"),
        "low-incisor-display": ("incisor-display-at-rest",),
        "tooth-size-discrepancy": (
            *("tooth-width", "overall-tooth-size-ratio", "anterior-tooth-size-ratio"),
            *("{arch}-tooth-size-excess", "{arch}-spacing"),
        ),
    }
)
"""By problem, what measures it. Crossbites and narrow arches have rules of their own; other problems are seen."""


@rule(
    "problem-without-finding",
    Severity.NOTE,
    title="A problem rests on no measurement.",
    says="{stated:words} is stated, and nothing that measures it is among the findings: {needed:measure}.",
    do="Add the measurement, so that what is ordered can be compared with it.",
    change="A finding of it, or one named as its reason, settles it.",
)
def problem_without_finding(chart: Chart) -> Iterator[Told]:
    """A problem that can be measured names a finding it rests on, or one that measures it is stated.

    Without a number nobody can tell whether what is ordered is too little or too much.

    Evidence: none is needed.

    Passes: {"problems": [{"id": "p1", "problem": "crowding", "arch": "lower"}],
             "findings": [{"id": "f1", "measure": "lower-crowding", "value": 3, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "crowding", "arch": "lower"}],
            "findings": [{"id": "f1", "measure": "upper-crowding", "value": 3, "unit": "mm"}]}
    """
    for place in chart.problems(*MEASURED_BY):
        stated = str(place.said("problem"))
        named = [
            name.format(arch=a, side=s) for name in MEASURED_BY[stated] for a in arches(place) for s in sides(place)
        ]
        needed = list(dict.fromkeys(named))
        cited = any(chart.kind(one) == "measurement" for one in chart.because(place))
        if not cited and not chart.found(*needed):
            yield told(place.pointer, place.owner, stated=stated, needed=needed, missing=needed)


USUAL: Mapping[str, tuple[str | None, str | None]] = MappingProxyType(
    {
        "overbite": ("normal.overbite.least", "normal.overbite.most"),
        "overjet": ("normal.overjet.least", "normal.overjet.most"),
        "curve-of-spee": (None, "normal.curve-of-spee.most"),
        "interincisal-angle": ("normal.interincisal.least", "normal.interincisal.most"),
        **{measure: (f"normal.{measure}.least", f"normal.{measure}.most") for measure in _INCLINED[:3]},
        **{f"{arch}-midline": (RELEVANT_MM, RELEVANT_MM) for arch in ARCHES},
        **{f"{arch}-{room}": (None, None) for arch in ARCHES for room in ("crowding", "spacing")},
        **{f"{kind}-relation-{side}": (QUARTER, QUARTER) for kind in ("molar", "canine") for side in SIDES},
        "posterior-open-bite": (None, None),
    }
)
"""By measure, the norms between which it is usual; None where that is nothing. The same norm twice: either way."""
ANSWERING = ("movements", "allow", "goals")


@rule(
    "answers-a-normal-finding",
    Severity.CAUTION,
    title="What is ordered gives as its reason a measurement that is as usual.",
    says="{asked:clause}: the reason given is {measured:list}, and usual is {usual:list}.",
    do="Say what it is for, or take it out.",
    change="A problem or another finding named as the reason would change it.",
    figures=(*sorted({key for ends in USUAL.values() for key in ends if key}), DEEP),
)
def answers_a_normal_finding(chart: Chart) -> Iterator[Told]:
    """No movement, allowance, levelling or closing rests on measurements alone that are all inside their usual range
    and that no stated problem rests on.

    What is usual needs no treatment for its own sake; most often another finding was meant.

    Evidence: ranges by school, see each figure. A goal for the measure itself is a wish that is stated, and is not
    asked about.

    Passes: {"findings": [{"id": "f1", "measure": "overbite", "value": 5.5, "unit": "mm"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "intrusion",
                            "at_least": 1, "unit": "mm", "because": ["f1"]}]}
    Fails: {"findings": [{"id": "f1", "measure": "overbite", "value": 2.5, "unit": "mm"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "intrusion",
                           "at_least": 1, "unit": "mm", "because": ["f1"]}]}
    """
    for reasons, places in _answering(chart).items():
        found = tuple(one for one in readings(chart, *USUAL) if one.id in reasons)
        if len(found) == len(set(reasons)) and all(_is_usual(chart, one) for one in found):
            facts: dict[str, Any] = {"asked": [said(place.part) for place in places], "measured": in_words(found)}
            facts |= {"usual": [_range(chart, one) for one in found], "doubts": found[0].id}
            figures = tuple(key for one in found for key in _keys(chart, one))
            yield told(places[0].pointer, *reasons, *(place.owner for place in places), figures=figures, **facts)


def _answering(chart: Chart) -> dict[tuple[str, ...], list[Place]]:
    """Clauses by their reasons, where no problem is among these or rests on one of them."""
    diagnosed = {one for place in chart.of("problems") for one in (place.owner, *(place.said("because") or ()))}
    answering: dict[tuple[str, ...], list[Place]] = {}
    for place in chart.of(*ANSWERING):
        reasons = tuple(place.said("because") or ())
        if reasons and not diagnosed & set(reasons) and not place.said("align") and not isinstance(place.part, Reach):
            answering.setdefault(reasons, []).append(place)
    return answering


def _keys(chart: Chart, one: Finding) -> list[str]:
    """The norms of its usual range; of an overbite also the share of the lower crown, where that is known."""
    share = [DEEP] if one.measure == "overbite" and chart.percent() is not None else []
    return [*dict.fromkeys(key for key in USUAL[one.measure] if key), *share]


def _ends(chart: Chart, one: Finding) -> tuple[float, float]:
    least, most = (0.0 if key is None else chart.limit(key) for key in USUAL[one.measure])
    return (-least if least == most else least), most


def _is_usual(chart: Chart, one: Finding) -> bool:
    least, most = _ends(chart, one)
    share = chart.percent() if one.measure == "overbite" else None
    measured = values(chart, (one,))
    return bool(measured) and all(least <= value <= most for value in measured) and (share or 0.0) <= chart.limit(DEEP)


def _range(chart: Chart, one: Finding) -> str:
    """``2.0 to 4.0 mm``, or ``0.0 mm``."""
    least, most = _ends(chart, one)
    told_as = amount(most, MEASURE_KINDS[one.measure].unit)
    return told_as if least == most else f"{least} to {told_as}"


RULES = (
    *(*BITE, *FRONT, *ROOM, *RELATIONS, *WIDTH, *FACE, *ANGLES, *TEETH),
    problem_without_finding,
    answers_a_normal_finding,
)
