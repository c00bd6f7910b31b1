"""Overjet, midlines, curve and incisors that are called out of order, against what was measured."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.model.findings import Finding
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._stated import RELEVANT_MM, amount, arches, at_its_teeth, ids, in_words, readings
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import UPPER
from wellposed.vocabulary.units import MM

INCREASED = "index.iotn-overjet-lips-competent.two-a.over"
FLAT = "normal.curve-of-spee.most"
PROTRUSIVE, RETROCLINED = "protrusive-incisors", "retroclined-incisors"
ANGLES = {
    "upper": ("upper-incisor-to-palatal-plane", "upper-incisor-to-sella-nasion"),
    "lower": ("lower-incisor-to-mandibular-plane",),
}
_INTERINCISAL = "interincisal-angle"


@rule(
    "overjet-not-supported",
    Severity.ASK,
    title="An overjet is called increased or reverse, and what is measured is neither.",
    says="{stated:words} is stated, yet measured is {measured:list}; {expected}.",
    do="Measure the overjet again and say in which bite, or take the diagnosis and what answers it alone out.",
    change="A reading beyond that, at other teeth or in the other bite if need be, would bear it out.",
    figures=(INCREASED,),
)
def overjet_not_supported(chart: Chart) -> Iterator[Told]:
    """An overjet called increased measures more than 3.5 mm, and one called reverse is not above nothing.

    Incisors drawn back without need lean in and deepen the bite; brought forward without need they may leave the bone.

    Evidence: 3.5 mm is where a published index begins to score; British averages are 2 to 4 mm, an American survey
    calls 3 to 4 mild. An overjet between may be called either.

    Passes: {"problems": [{"id": "p1", "problem": "increased-overjet"}],
             "findings": [{"id": "f1", "measure": "overjet", "value": 5, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "increased-overjet"}],
            "findings": [{"id": "f1", "measure": "overjet", "value": 2.5, "unit": "mm"}]}
    """
    line = chart.limit(INCREASED)
    for place in chart.problems("increased-overjet", "reverse-overjet"):
        found = at_its_teeth(place, readings(chart, "overjet"))
        increased = place.said("problem") == "increased-overjet"
        if found and all(one.value <= line if increased else one.value > 0 for one in found):
            expected = f"up to {amount(line, MM)} it is not increased" if increased else "above 0 mm it is not reverse"
            facts = {"stated": place.said("problem"), "measured": in_words(found), "expected": expected}
            figures = (INCREASED,) if increased else ()
            yield told(place.pointer, place.owner, *ids(found), doubts=place.owner, figures=figures, **facts)


@rule(
    "midline-not-supported",
    Severity.ASK,
    title="A midline is said to be off, and what is measured is on the face.",
    says="A deviation of the {where:list} midline is stated, yet measured is {measured:list}; up to {error:mm} is the "
    "error of measuring.",
    do="Measure the midlines to the face again, or take the deviation and what answers it alone out.",
    change="A midline more than {error:mm} off, in the arch that the diagnosis names, would bear it out.",
    figures=(RELEVANT_MM,),
)
def midline_not_supported(chart: Chart) -> Iterator[Told]:
    """A midline that is said to deviate measures further off the face than the error of measuring.

    Shifting a midline moves six teeth a side by side and needs room on one side only; ordered for nothing it makes
    the asymmetry it was to cure.

    Evidence: half a millimetre counts as a clinically relevant error by convention. Whether a deviation is worth
    treating is another question: half of laypeople see 2 mm.

    Passes: {"problems": [{"id": "p1", "problem": "midline-deviation", "arch": "lower"}],
             "findings": [{"id": "f1", "measure": "lower-midline", "value": 1.5, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "midline-deviation", "arch": "lower"}],
            "findings": [{"id": "f1", "measure": "lower-midline", "value": 0, "unit": "mm"},
                         {"id": "f2", "measure": "upper-midline", "value": 1, "unit": "mm"}]}
    """
    error = chart.limit(RELEVANT_MM)
    both = readings(chart, "upper-midline", "lower-midline")
    for place in chart.problems("midline-deviation"):
        per_arch = [readings(chart, f"{arch}-midline") for arch in arches(place)]
        if all(per_arch) and all(abs(one.value) <= error for found in per_arch for one in found):
            where = {"where": list(arches(place)), "measured": in_words(both)}
            facts = {**where, "error": error, "figures": (RELEVANT_MM,)}
            yield told(place.pointer, place.owner, *ids(both), doubts=place.owner, **facts)


@rule(
    "curve-not-supported",
    Severity.ASK,
    title="A deep curve of Spee is stated, and the curve measured is flat.",
    says="A deep curve of Spee is stated, yet its depth is {measured:mm}: up to {most:mm} is that of a good occlusion.",
    do="Measure the depth again, or take the deep curve and what answers it alone out.",
    change="A depth above {most:mm} would bear the diagnosis out.",
    figures=(FLAT,),
)
def curve_not_supported(chart: Chart) -> Iterator[Told]:
    """A curve of Spee that is called deep is deeper than that of good occlusions.

    Levelling intrudes lower incisors or extrudes premolars, and leans the incisors forward; a flat arch needs none.

    Evidence: casts of 120 untreated good occlusions, 0 to 1.5 mm; one teaching text prints 2.5 for the most.

    Passes: {"problems": [{"id": "p1", "problem": "deep-curve-of-spee"}],
             "findings": [{"id": "f1", "measure": "curve-of-spee", "value": 3, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "deep-curve-of-spee"}],
            "findings": [{"id": "f1", "measure": "curve-of-spee", "value": 1, "unit": "mm"}]}
    """
    most, found = chart.limit(FLAT), readings(chart, "curve-of-spee")
    for place in chart.problems("deep-curve-of-spee"):
        if found and all(one.value <= most for one in found):
            facts = {"measured": [one.value for one in found], "most": most, "figures": (FLAT,)}
            yield told(place.pointer, place.owner, *ids(found), doubts=place.owner, **facts)


@rule(
    "incisor-inclination-not-supported",
    Severity.CAUTION,
    title="Incisors are called protrusive or retroclined, and their angles are as usual.",
    says="{stated:words} are stated, yet measured is {measured:list}; the usual range ends at {ends:deg}.",
    do="Look at the tracing and the profile again, or take the diagnosis and what answers it alone out.",
    change="An angle beyond that end, the usual range of another people, or incisors that lean as they should but "
    "stand too far forward, said in words, would change it.",
    figures=tuple(f"normal.{measure}" for measures in ANGLES.values() for measure in measures),
)
def incisor_inclination_not_supported(chart: Chart) -> Iterator[Told]:
    """Incisors called protrusive or retroclined have an angle, to their jaw or to each other, beyond its usual range.

    Retraction, reduction and torque are ordered for it, and incisors that stood well end upright or flared.

    Evidence: means of small samples, one standard deviation either way, recalled. Schools and peoples differ by as
    much: the lower incisors of Black Americans and southern Chinese stand at about 97 degrees. No angle tells how far
    forward a tooth stands; a large overjet is taken as a sign of it.

    Passes: {"problems": [{"id": "p1", "problem": "protrusive-incisors", "arch": "upper"}],
             "findings": [{"id": "f1", "measure": "upper-incisor-to-palatal-plane", "value": 118, "unit": "deg"}]}
    Fails: {"problems": [{"id": "p1", "problem": "protrusive-incisors", "arch": "upper"}],
            "findings": [{"id": "f1", "measure": "upper-incisor-to-palatal-plane", "value": 110, "unit": "deg"}]}
    """
    for place in chart.problems(PROTRUSIVE, RETROCLINED):
        per_arch = [readings(chart, *ANGLES[arch]) for arch in arches(place)]
        protrusive = place.said("problem") == PROTRUSIVE
        found = tuple(one for readings_of in per_arch for one in readings_of)
        if not all(per_arch) or _borne_out(chart, found, protrusive) or _forward(chart, place, protrusive):
            continue
        ends = [_end(one.measure, protrusive) for one in found]
        facts = {"stated": place.said("problem"), "measured": in_words(found), "ends": [chart.limit(e) for e in ends]}
        yield told(place.pointer, place.owner, *ids(found), doubts=place.owner, figures=tuple(ends), **facts)


def _end(measure: str, protrusive: bool) -> str:
    """The end of the usual range beyond which an angle is protrusive, or retroclined."""
    return f"normal.{measure}.{'most' if protrusive else 'least'}"


def _borne_out(chart: Chart, found: tuple[Finding, ...], protrusive: bool) -> bool:
    """Whether any inclination, or the interincisal angle, is beyond its usual range."""
    sign = 1 if protrusive else -1
    leaning = any(sign * (one.value - chart.limit(_end(one.measure, protrusive))) > 0 for one in found)
    key = f"normal.interincisal.{'least' if protrusive else 'most'}"
    return leaning or any(sign * (one.value - chart.limit(key)) < 0 for one in readings(chart, _INTERINCISAL))


def _forward(chart: Chart, place: Place, protrusive: bool) -> bool:
    """Whether the overjet says that upper incisors stand forward."""
    large = any(one.value > chart.limit(INCREASED) for one in readings(chart, "overjet"))
    return protrusive and large and UPPER in arches(place)


RULES = (overjet_not_supported, midline_not_supported, curve_not_supported, incisor_inclination_not_supported)
