"""Tooth sizes: whether an analysis can be made, bears out what is stated, and is answered by the order."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Place
from wellposed.derive.tooth_size import FRONT, UNFIT, WHOLE, Fault, of_prescription
from wellposed.findings import Severity
from wellposed.model.findings import Finding
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._sizes import EXCESS, PROBLEM, RATIOS, STRICT, USUAL, WIDTHS, analyses, reached, stated
from wellposed.rules._stated import RELEVANT_MM, amount, in_words
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import UPPER
from wellposed.vocabulary.units import MM, PERCENT

SPREADS = "tooth-size.spreads"
MEANS = {FRONT: "tooth-size.anterior", WHOLE: "tooth-size.overall"}
_NOT_THERE = ("missing", "primary", *UNFIT)
_ALL = 100


@rule(
    "tooth-size-problem-not-supported",
    Severity.ASK,
    title="A tooth-size discrepancy is stated, and the widths measured show none.",
    says="A tooth-size discrepancy is stated, yet the widths measured come to {measured:list}; from {strict:mm} on the"
    " stricter school calls it one, from {limit:mm} on the usual one.",
    do="Measure the widths again, or take the discrepancy and what answers it alone out.",
    change="An excess of {strict:mm}, or a ratio {spreads} standard deviations from the mean, would bear it out.",
    figures=(STRICT, USUAL, SPREADS, *MEANS.values()),
)
def tooth_size_problem_not_supported(chart: Chart) -> Iterator[Told]:
    """A stated tooth-size discrepancy is borne out by the widths, by the front six teeth or by all twelve.

    The eye is a poor judge of it, and enamel is then taken, or spaces are left, for a mismatch that is not there.

    Evidence: a population study found the eye insensitive and unspecific; the thresholds of 2 and of 1.5 mm are
    conventions of two schools, and the stricter is used here. Crowded casts measured twice differ by up to 2 mm.

    Passes: {"problems": [{"id": "p1", "problem": "tooth-size-discrepancy"}],
             "findings": [{"id": "f1", "tooth_measure": "tooth-width", "unit": "mm", "values": {
                "13": 7.8, "12": 5.2, "11": 8.6, "21": 8.5, "22": 5.1, "23": 7.9,
                "43": 6.9, "42": 5.9, "41": 5.4, "31": 5.4, "32": 6.0, "33": 6.8}}]}
    Fails: {"problems": [{"id": "p1", "problem": "tooth-size-discrepancy"}],
            "findings": [{"id": "f1", "tooth_measure": "tooth-width", "unit": "mm", "values": {
                "13": 7.5, "12": 6.5, "11": 8.5, "21": 8.5, "22": 6.5, "23": 7.5,
                "43": 7.0, "42": 5.5, "41": 5.0, "31": 5.0, "32": 5.5, "33": 7.0}}]}
    """
    sizes = list(analyses(chart))
    out = any(size.beyond_spread or reached(size.excess, chart.limit(STRICT)) for size in sizes)
    if not sizes or out or _stated_out(chart):
        return
    limits = {"strict": chart.limit(STRICT), "limit": chart.limit(USUAL), "spreads": f"{chart.limit(SPREADS):g}"}
    measured = [f"{amount(size.excess, MM)} of {size.larger or UPPER} excess over {size.teeth} teeth" for size in sizes]
    missing = () if any(size.teeth == WHOLE for size in sizes) else (WIDTHS,)
    for place in chart.problems(PROBLEM):
        facts = {"doubts": place.owner, "measured": measured, "missing": missing, **limits}
        figures = (STRICT, USUAL, SPREADS, *(MEANS[size.teeth] for size in sizes))
        yield told(place.pointer, place.owner, *chart.found(WIDTHS), **facts, figures=figures)


def _stated_out(chart: Chart) -> bool:
    """Whether a stated excess or ratio bears a discrepancy out."""
    excess = any(reached(one.value, chart.limit(STRICT)) for one in stated(chart, *EXCESS.values()))
    return excess or any(
        abs(one.value - chart.limit(MEANS[count]))
        > chart.limit(SPREADS) * (chart.numbers.norm(MEANS[count]).spread or 0)
        for count, measure in RATIOS.items()
        for one in stated(chart, measure)
    )


@rule(
    "tooth-size-not-analysable",
    Severity.CAUTION,
    title="A statement rests on a tooth-size analysis that cannot be made.",
    says="What is stated of tooth size rests on all of the teeth, but of {teeth:teeth} no natural width counts"
    " ({why:words}).",
    do="Say in words how these teeth were counted, or take the statement out.",
    change="With words that say how they were counted, or natural teeth in their place, this no longer applies.",
)
def tooth_size_not_analysable(chart: Chart) -> Iterator[Told]:
    """Where a discrepancy, a ratio or an excess is stated, every tooth of the set is there and has its natural width.

    A missing, primary or crowned tooth makes the sum mean nothing, unless it is said what width was put in its place.

    Evidence: the analysis was made on full sets of natural teeth, front teeth or first molar to first molar.

    Passes: {"teeth": {"upper": ["13", "12", "11", "21", "22", "23"], "lower": ["43", "42", "41", "31", "32", "33"]},
             "findings": [{"id": "f1", "measure": "anterior-tooth-size-ratio", "value": 80, "unit": "percent"}]}
    Fails: {"teeth": {"upper": ["13", "11", "21", "22", "23"], "lower": ["43", "42", "41", "31", "32", "33"]},
            "findings": [{"id": "f1", "measure": "anterior-tooth-size-ratio", "value": 80, "unit": "percent"}]}
    """
    for count, resting in _resting(chart).items():
        faults = _faults(chart, count)
        if faults and resting:
            teeth, why = [fault.tooth for fault in faults], list(dict.fromkeys(fault.reason for fault in faults))
            yield told(resting[0].pointer, *(one.owner for one in resting), teeth=teeth, why=why)
            return


def _resting(chart: Chart) -> dict[int, list[Place]]:
    """By set of teeth what rests on its analysis, without words of its own: a discrepancy, an excess on the front."""
    silent = [p for p in chart.of("problems", "findings") if not (p.said("words") or p.said("method"))]
    front = (RATIOS[FRONT], *EXCESS.values())
    return {
        FRONT: [p for p in silent if p.said("problem") == PROBLEM or p.said("measure") in front],
        WHOLE: [p for p in silent if p.said("measure") == RATIOS[WHOLE]],
    }


def _faults(chart: Chart, count: int) -> list[Fault]:
    """The teeth of a set that have no natural width."""
    size = of_prescription(chart.rx, count)
    return [fault for fault in size if fault.reason in _NOT_THERE] if isinstance(size, tuple) else []


@rule(
    "stated-tooth-size-differs",
    Severity.ASK,
    title="A stated tooth-size ratio or excess is not that of the widths measured.",
    says="Stated is {stated:list}; the widths measured come to {computed:list}.",
    do="Look which of the two holds: the widths, or what was worked out from them.",
    change="A stated value within {limit:mm} of what the widths come to would settle it.",
    figures=(RELEVANT_MM, *MEANS.values()),
)
def stated_tooth_size_differs(chart: Chart) -> Iterator[Told]:
    """A stated ratio or excess is what the stated widths come to.

    One of them is a slip, or the two arches were exchanged: then enamel would go where the teeth are small already.

    Evidence: arithmetic, with the means of Bolton. A difference is told where it comes to more than a clinically
    relevant error in mm; an excess may be that of six teeth or of twelve.

    Passes: {"findings": [{"id": "f1", "tooth_measure": "tooth-width", "unit": "mm", "values": {
                "13": 7.5, "12": 6.5, "11": 8.5, "21": 8.5, "22": 6.5, "23": 7.5,
                "43": 7.0, "42": 5.5, "41": 5.0, "31": 5.0, "32": 5.5, "33": 7.0}},
                {"id": "f2", "measure": "anterior-tooth-size-ratio", "value": 77.8, "unit": "percent"}]}
    Fails: {"findings": [{"id": "f1", "tooth_measure": "tooth-width", "unit": "mm", "values": {
                "13": 7.5, "12": 6.5, "11": 8.5, "21": 8.5, "22": 6.5, "23": 7.5,
                "43": 7.0, "42": 5.5, "41": 5.0, "31": 5.0, "32": 5.5, "33": 7.0}},
                {"id": "f2", "measure": "anterior-tooth-size-ratio", "value": 87.8, "unit": "percent"}]}
    """
    for one in stated(chart, *RATIOS.values(), *EXCESS.values()):
        computed = list(_computed(chart, one))
        limit = chart.limit(RELEVANT_MM)
        if computed and all(apart > limit for apart, _ in computed):
            facts = {"stated": in_words([one]), "computed": [words for _, words in computed], "limit": limit}
            at = chart.place(one.id)
            pointer = at.pointer if at else ""
            yield told(pointer, one.id, *chart.found(WIDTHS), **facts, figures=(RELEVANT_MM, *MEANS.values()))


def _computed(chart: Chart, one: Finding) -> Iterator[tuple[float, str]]:
    """How far what is stated lies from what the widths come to, mm beyond its stated error, and that in words."""
    for size in analyses(chart):
        per_unit = size.upper / _ALL if one.unit == PERCENT else 1.0
        value = (
            size.ratio
            if one.unit == PERCENT
            else size.upper_excess
            if one.measure == EXCESS[UPPER]
            else size.lower_excess
        )
        if one.unit == MM or one.measure == RATIOS[size.teeth]:
            apart = abs(one.value - value) - (one.error or 0.0)
            yield apart * per_unit, f"{amount(value, one.unit)} over {size.teeth} teeth"


RULES = (tooth_size_problem_not_supported, tooth_size_not_analysable, stated_tooth_size_differs)
