"""Crowding and spacing as they are called, against what was measured."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Place
from wellposed.derive.indices import grade
from wellposed.findings import Severity
from wellposed.model.findings import Finding
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._stated import arches, ids, in_words, readings
from wellposed.rules.chart import Chart

MODERATE, SEVERE = "index.crowding.moderate.from", "index.crowding.severe.over"
GRADES = ("mild", "moderate", "severe")


@rule(
    "crowding-grade-differs",
    Severity.CAUTION,
    title="Crowding is graded otherwise than the millimetres measured are.",
    says="The crowding is called {stated}, yet {measured:list} is {graded}: moderate begins at {moderate:mm}, severe "
    "above {severe:mm}.",
    do="Measure the arch again, or set the grade and what was ordered for it right.",
    change="A crowding within the limits of the stated grade, or the grade {graded}, would settle it.",
    figures=(MODERATE, SEVERE),
)
def crowding_grade_differs(chart: Chart) -> Iterator[Told]:
    """The grade stated for crowding is that of the millimetres measured: mild below 4, moderate to 8, severe above.

    The grade is what reduction, widening and extraction are chosen by; overstated it costs enamel or teeth,
    understated the room ordered will not do.

    Evidence: a teaching text and its school; an American index cuts at 1, 3, 5 and 7 mm. Casts measured twice differ
    by up to 2 mm, so near a limit either grade may be meant.

    Passes: {"problems": [{"id": "p1", "problem": "crowding", "arch": "upper", "grade": "mild"}],
             "findings": [{"id": "f1", "measure": "upper-crowding", "value": 3, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "crowding", "arch": "upper", "grade": "severe"}],
            "findings": [{"id": "f1", "measure": "upper-crowding", "value": 2, "unit": "mm"}]}
    """
    for place in chart.problems("crowding"):
        stated, found = place.said("grade"), _of_arches(chart, place, "crowding")
        worst = max((one.value for one in found), default=0.0)
        graded = str(grade("crowding", max(worst, 0.0)))
        if not stated or worst <= 0 or graded == stated:
            continue
        limits = {"moderate": chart.limit(MODERATE), "severe": chart.limit(SEVERE), "figures": (MODERATE, SEVERE)}
        over = {"doubts": place.owner, "overstated": True} if GRADES.index(stated) > GRADES.index(graded) else {}
        facts = {"stated": stated, "graded": graded, "measured": in_words(found), **limits, **over}
        yield told(place.pointer, place.owner, *ids(found), **facts)


def _of_arches(chart: Chart, place: Place, what: str) -> tuple[Finding, ...]:
    """The readings of crowding or spacing in the arches of a problem; none where one of several is not measured."""
    per_arch = [readings(chart, f"{arch}-{what}") for arch in arches(place)]
    return tuple(one for found in per_arch for one in found) if all(per_arch) else ()


def _contradicted(chart: Chart, place: Place, what: str, other: str) -> tuple[Finding, ...]:
    """What says that no arch of a problem has any of this: a reading of 0, or of its opposite alone."""
    told_by: tuple[Finding, ...] = ()
    for arch in arches(place):
        found, opposite = readings(chart, f"{arch}-{what}"), readings(chart, f"{arch}-{other}")
        if any(one.value > 0 for one in found) or not (found or any(one.value > 0 for one in opposite)):
            return ()
        told_by += (*found, *opposite)
    return told_by


def _unmeasured(chart: Chart, place: Place, what: str) -> tuple[str, ...]:
    return tuple(f"{arch}-{what}" for arch in arches(place) if not readings(chart, f"{arch}-{what}"))


def _doubted(chart: Chart, what: str, other: str) -> Iterator[Told]:
    for place in chart.problems(what):
        found = _contradicted(chart, place, what, other)
        if found:
            facts = {"measured": in_words(found), "missing": _unmeasured(chart, place, what)}
            yield told(place.pointer, place.owner, *ids(found), doubts=place.owner, **facts)


@rule(
    "crowding-not-supported",
    Severity.ASK,
    title="Crowding is stated, and what is measured shows none.",
    says="Crowding is stated, yet measured is {measured:list}.",
    do="Measure the arch again and state the crowding, or take it and what answers it alone out.",
    change="Any crowding measured in the arch that the diagnosis names would bear it out.",
)
def crowding_not_supported(chart: Chart) -> Iterator[Told]:
    """An arch that is called crowded is not measured at 0 mm of crowding, nor at spacing alone.

    Room that is made without need opens spaces, or leaves contacts thin and the arch wide.

    Evidence: none is needed. Teeth may be turned or displaced without a lack of room; that has its own names.

    Passes: {"problems": [{"id": "p1", "problem": "crowding", "arch": "lower"}],
             "findings": [{"id": "f1", "measure": "lower-crowding", "value": 1, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "crowding", "arch": "lower"}],
            "findings": [{"id": "f1", "measure": "lower-crowding", "value": 0, "unit": "mm"}]}
    """
    yield from _doubted(chart, "crowding", "spacing")


@rule(
    "spacing-not-supported",
    Severity.ASK,
    title="Spacing is stated, and what is measured shows none.",
    says="Spacing is stated, yet measured is {measured:list}.",
    do="Measure the arch again and state the spacing, or take it and what answers it alone out.",
    change="Any spacing measured in the arch that the diagnosis names would bear it out.",
)
def spacing_not_supported(chart: Chart) -> Iterator[Told]:
    """An arch that is called spaced is not measured at 0 mm of spacing, nor at crowding alone.

    Teeth drawn together where there is no space are drawn back, or onto one another.

    Evidence: none is needed.

    Passes: {"problems": [{"id": "p1", "problem": "spacing", "arch": "upper"}],
             "findings": [{"id": "f1", "measure": "upper-spacing", "value": 2, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "spacing", "arch": "upper"}],
            "findings": [{"id": "f1", "measure": "upper-spacing", "value": 0, "unit": "mm"}]}
    """
    yield from _doubted(chart, "spacing", "crowding")


RULES = (crowding_grade_differs, crowding_not_supported, spacing_not_supported)
