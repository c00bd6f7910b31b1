"""Gum and incisors shown, called too much or too little, against what is usual at that age and for that sex."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.derive.display import display_at_rest, gingival_display, lip_still_grows
from wellposed.findings import Severity
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._stated import ids, readings
from wellposed.rules.chart import Chart

GUM, REST = "gingival-display-on-smiling", "incisor-display-at-rest"
EXCESS, EXCESS_LEAST = f"normal.{GUM}.excess", f"normal.{GUM}.excess.peck"
LOW, EITHER_SIDE = f"normal.{REST}.low", f"normal.{REST}.either-side"


@rule(
    "gum-display-not-supported",
    Severity.ASK,
    title="Excess gum display is stated, and the gum measured is usual or below every published limit.",
    says="Excess gum display is stated, yet {measured:mm} of gum show on smiling: at this age and sex up to "
    "{usual:mm} is usual, and excess begins at {excess:mm}.",
    do="Measure the gum on a full smile again, or take the diagnosis and what answers it alone out.",
    change="More gum on a full smile, or another age or sex than is stated, would change it.",
    figures=(f"normal.{GUM}", "normal.lip-growth-end"),
)
def gum_display_not_supported(chart: Chart) -> Iterator[Told]:
    """Gum display that is called excess is above what is usual for the sex and reaches the lowest limit of any school.

    Upper incisors are intruded for it, and with every decade less of them shows by itself. A lip that still grows will
    cover more.

    Evidence: women show 1 to 2 mm on a full smile, men 1.5 mm less. Schools call it excess from 2, 3 or 4 mm: the
    lowest is used, and the middle one while the upper lip still grows, to about 14 years in girls and 18 in boys. Where
    the sex is not stated the limit of women holds.

    Passes: {"patient": {"reference": "P-1", "age_years": 25, "sex": "female"},
             "problems": [{"id": "p1", "problem": "excess-gingival-display"}],
             "findings": [{"id": "f1", "measure": "gingival-display-on-smiling", "value": 4, "unit": "mm"}]}
    Fails: {"patient": {"reference": "P-1", "age_years": 25, "sex": "female"},
            "problems": [{"id": "p1", "problem": "excess-gingival-display"}],
            "findings": [{"id": "f1", "measure": "gingival-display-on-smiling", "value": 1.5, "unit": "mm"}]}
    """
    who, found = chart.rx.patient, readings(chart, GUM)
    excess = EXCESS if lip_still_grows(who.age_years, who.sex) else EXCESS_LEAST
    ends = gingival_display(who.sex).keys
    usual, from_ = max(chart.limit(key) for key in ends), chart.limit(excess)
    for place in chart.problems("excess-gingival-display"):
        if found and all(one.value <= usual or one.value < from_ for one in found):
            facts = {"measured": [one.value for one in found], "usual": usual, "excess": from_}
            rests = {"doubts": place.owner, "figures": (*ends, excess), "missing": _not_stated(chart)}
            yield told(place.pointer, place.owner, *ids(found), **rests, **facts)


def _not_stated(chart: Chart) -> list[str]:
    """Of age and sex, what is not stated."""
    return [name for name, said in (("age", chart.age), ("sex", chart.rx.patient.sex)) if said is None]


@rule(
    "low-display-not-supported",
    Severity.ASK,
    title="Low incisor display is stated, and what shows at rest is usual for the age and sex.",
    says="Low incisor display is stated, yet {measured:mm} show at rest: at this age and sex {least:mm} or more is "
    "usual, and low is {low:mm} or less.",
    do="Measure the display with the lips at rest again, or take the diagnosis and what answers it alone out.",
    change="Less shown at rest, or another age or sex than is stated, would change it.",
    figures=(f"normal.{REST}",),
)
def low_display_not_supported(chart: Chart) -> Iterator[Told]:
    """Incisor display that is called low is at most 1 mm at rest, or below what is usual at that age and for that sex.

    Upper incisors are extruded for it, which is the movement aligners reach worst, and the bite deepens.

    Evidence: means by decade, recalled, and by sex for the young and the old; no spread was published, so 1.5 mm either
    side of the mean counts as usual. Without age and sex nothing is said.

    Passes: {"patient": {"reference": "P-1", "age_years": 25},
             "problems": [{"id": "p1", "problem": "low-incisor-display"}],
             "findings": [{"id": "f1", "measure": "incisor-display-at-rest", "value": 1.5, "unit": "mm"}]}
    Fails: {"patient": {"reference": "P-1", "age_years": 25},
            "problems": [{"id": "p1", "problem": "low-incisor-display"}],
            "findings": [{"id": "f1", "measure": "incisor-display-at-rest", "value": 3, "unit": "mm"}]}
    """
    found, usual = readings(chart, REST), display_at_rest(chart.age, chart.rx.patient.sex)
    if usual is None:
        return
    means = [chart.limit(key) for key in usual.keys if key != EITHER_SIDE]
    least, low = min(means) - chart.limit(EITHER_SIDE), chart.limit(LOW)
    for place in chart.problems("low-incisor-display"):
        if found and all(one.value > low and one.value >= least for one in found):
            facts = {"measured": [one.value for one in found], "least": least, "low": low}
            rests = {"doubts": place.owner, "figures": (*usual.keys, LOW), "missing": _not_stated(chart)}
            yield told(place.pointer, place.owner, *ids(found), **rests, **facts)


RULES = (gum_display_not_supported, low_display_not_supported)
