"""Up and down in front, as the lip shows it: intrusion of the upper incisors."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule
from wellposed.rules._front import (
    AGE,
    AT_REST,
    DEEP_FROM,
    DEEP_PERCENT,
    EITHER_SIDE,
    FORTIES,
    LOW,
    OVERBITE,
    front_intrusions,
    is_deep,
    little_shows,
    past_forty,
    shown,
    unexplained_intrusions,
    usual_past_forty,
)
from wellposed.rules.chart import Chart


@rule(
    "upper-intrusion-without-need",
    Severity.ASK,
    title="Upper incisors are intruded, but neither the overbite nor what the lip shows is above its norm.",
    says="{asked:clause}: the overbite is {overbite:mm}, deep above {deep:mm}; {shown:measure}: not above the norm.",
    do="Look at the overbite and the display again, and say what the intrusion is for.",
    change="An overbite above {deep:mm}, a display above its norm or another stated reason would change this.",
    figures=(DEEP_FROM, DEEP_PERCENT, "normal.incisor-display-at-rest", "normal.gingival-display-on-smiling"),
)
def upper_intrusion_without_need(chart: Chart) -> Iterator[Told]:
    """No intrusion of the upper front is ordered or allowed while overbite and display, as measured, are usual.

    It answers a deep bite that is not there or gum that does not show, and it takes away what shows at rest, as age
    does by itself.

    Evidence: an overbite of 2 to 4 mm is one school's ideal; others accept more. The display norms are means of age and
    sex with a margin. The rule is silent where the incisors are drawn back, as intrusion then keeps the bite from
    deepening; where another reason is stated; and where not both centrals are intruded.

    Passes: {"findings": [{"id": "f1", "measure": "overbite", "value": 5.5, "unit": "mm"},
                          {"id": "f2", "measure": "gingival-display-on-smiling", "value": 1, "unit": "mm"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["12", "11", "21", "22"], "motion": "intrusion",
                            "at_least": 1, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "overbite", "value": 3, "unit": "mm"},
                         {"id": "f2", "measure": "gingival-display-on-smiling", "value": 1, "unit": "mm"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["12", "11", "21", "22"], "motion": "intrusion",
                           "at_least": 1, "unit": "mm"}]}
    """
    overbite, displays = chart.value(OVERBITE), list(shown(chart))
    if overbite is None or is_deep(chart) or not displays or any(above(one.value, one.most) for one in displays):
        return
    measures = [one.measure for one in displays]
    figures = (DEEP_FROM, DEEP_PERCENT, *(key for one in displays for key in one.keys))
    facts = {"overbite": overbite, "deep": chart.limit(DEEP_FROM), "shown": measures, "figures": figures}
    drawn_back = chart.reach("11", "out", -1) > 0
    for act in () if drawn_back else unexplained_intrusions(chart):
        yield act.told(*chart.found(OVERBITE, *measures), **facts)


@rule(
    "intrusion-with-low-display",
    Severity.CAUTION,
    title="Upper incisors are intruded although little of them shows at rest.",
    says="{asked:clause}: {display:mm} shows at rest, and {limit:mm} or less is little; the intrusion takes from it.",
    do="Weigh what will show at rest after the intrusion, or intruding the lower incisors instead.",
    change="More than {limit:mm} at rest would change this.",
    figures=(LOW,),
)
def intrusion_with_low_display(chart: Chart) -> Iterator[Told]:
    """No intrusion of the upper front is ordered or allowed where little of it shows at rest.

    What shows at rest makes a face look young; a patient notices its loss before a deep bite.

    Evidence: 1 mm is common practice, about the mean of the forties in one study of 309 adults.

    Passes: {"findings": [{"id": "f1", "measure": "incisor-display-at-rest", "value": 3, "unit": "mm"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["12", "11", "21", "22"], "motion": "intrusion",
                            "at_least": 1, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "incisor-display-at-rest", "value": 0.5, "unit": "mm"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["12", "11", "21", "22"], "motion": "intrusion",
                           "at_least": 1, "unit": "mm"}]}
    """
    if little_shows(chart):
        for act in front_intrusions(chart):
            facts = {"display": chart.value(AT_REST), "limit": chart.limit(LOW), "figures": (LOW,)}
            yield act.told(*chart.found(AT_REST), **facts)


@rule(
    "intrusion-past-forty",
    Severity.CAUTION,
    title="Upper incisors are intruded at an age at which what shows at rest is little and falls.",
    says="{asked:clause}: past {age:years} upper incisors show {mean:mm} or less at rest on average, and ever less.",
    do="Weigh what will show at rest after the intrusion, now and later in life.",
    change="More than {usual:mm} measured at rest, or intrusion of the lower incisors instead, would change this.",
    figures=(AGE, FORTIES, EITHER_SIDE),
)
def intrusion_past_forty(chart: Chart) -> Iterator[Told]:
    """No intrusion of the upper front is ordered or allowed over 40 unless more shows at rest than is usual then.

    The upper incisors show less with every decade, as the lip sinks; to intrude them makes the smile older still.

    Evidence: means by decade of one study of 309 adults, from memory; another study finds the same fall. The age of 40
    and the margin beside the mean are common practice.

    Passes: {"patient": {"reference": "P-7F3A", "age_years": 25},
             "movements": [{"id": "m1", "strength": "must", "teeth": ["12", "11", "21", "22"], "motion": "intrusion",
                            "at_least": 1, "unit": "mm"}]}
    Fails: {"patient": {"reference": "P-7F3A", "age_years": 52},
            "movements": [{"id": "m1", "strength": "must", "teeth": ["12", "11", "21", "22"], "motion": "intrusion",
                           "at_least": 1, "unit": "mm"}]}
    """
    if past_forty(chart) and not little_shows(chart):
        facts = {"age": chart.limit(AGE), "mean": chart.limit(FORTIES), "usual": usual_past_forty(chart)}
        missing = () if chart.found(AT_REST) else (AT_REST,)
        for act in front_intrusions(chart):
            yield act.told(*chart.found(AT_REST), **facts, missing=missing, figures=(AGE, FORTIES, EITHER_SIDE))


RULES = (
    upper_intrusion_without_need,
    intrusion_with_low_display,
    intrusion_past_forty,
)
