"""Up and down in front where gum shows on smiling: what answers it, and what makes more of it."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.rules._acts import above, acts, is_done
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._front import (
    AT_REST,
    DEEP,
    DEEP_FROM,
    DEEP_PERCENT,
    GUM,
    GUMMY,
    LOWER_FRONT,
    MOLARS,
    OVERBITE,
    UPPER_FRONT,
    gum_grounds,
    gum_intrusions,
    is_deep,
    shown,
)
from wellposed.rules.chart import Chart


@rule(
    "gum-intrusion-inside-norm",
    Severity.ASK,
    title="Upper incisors are intruded to show less gum, but no more gum shows than is usual.",
    says="{asked:clause}: {gum:mm} of gum on smiling is within the norm, which ends at {limit:mm}.",
    do="Look at the display again: whether too much gum shows, and whether intrusion answers it.",
    change="More than {limit:mm} of gum, measured on a full smile, would change this.",
    figures=("normal.gingival-display-on-smiling.female.most", "normal.gingival-display-on-smiling.male.most"),
)
def gum_intrusion_inside_norm(chart: Chart) -> Iterator[Told]:
    """No intrusion of the upper front is ordered or allowed to lessen gum that is within the norm of the sex.

    A little gum on a full smile is usual and looks young; to intrude the front for it ages the smile.

    Evidence: 1 to 2 mm is given as usual in women, and 1.5 mm less in men. Studies of perception put the limit of what
    displeases at 2, 3 or 4 mm. Where the sex is not stated the norm of women, the wider, is used.

    Passes: {"findings": [{"id": "f1", "measure": "gingival-display-on-smiling", "value": 4, "unit": "mm"}],
             "problems": [{"id": "p1", "problem": "excess-gingival-display", "because": ["f1"]}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "intrusion",
                            "at_least": 1, "unit": "mm", "because": ["p1"]}]}
    Fails: {"findings": [{"id": "f1", "measure": "gingival-display-on-smiling", "value": 1, "unit": "mm"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "intrusion",
                           "at_least": 1, "unit": "mm", "because": ["f1"]}]}
    """
    gum = next((one for one in shown(chart) if one.measure == GUM), None)
    if gum is not None and not above(gum.value, gum.most):
        for act in gum_intrusions(chart):
            yield act.told(*gum_grounds(chart), gum=gum.value, limit=gum.most, figures=gum.keys)


@rule(
    "gum-intrusion-while-lip-grows",
    Severity.CAUTION,
    title="Upper incisors are intruded to show less gum while the upper lip still grows.",
    says="{asked:clause}: the lip grows longer until about {limit:years}, and the gum shown often lessens with it.",
    do="Weigh waiting until the lip has done growing.",
    change="Once the lip has done growing this no longer applies.",
    figures=("normal.lip-growth-end",),
)
def gum_intrusion_while_lip_grows(chart: Chart) -> Iterator[Told]:
    """No intrusion of the upper front is ordered or allowed to lessen gum before the upper lip has done growing.

    The lip grows longer in the teens, and what was taken from the display before is missed later.

    Evidence: growth studies, from memory; about 14 years in girls and 18 in boys, with a wide spread. Where the sex is
    not stated the earlier end is used. Where growth is stated to be complete the rule is silent.

    Passes: {"patient": {"reference": "P-7F3A", "age_years": 15, "sex": "female"},
             "problems": [{"id": "p1", "problem": "excess-gingival-display"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "intrusion",
                            "at_least": 1, "unit": "mm", "because": ["p1"]}]}
    Fails: {"patient": {"reference": "P-7F3A", "age_years": 13, "sex": "female"},
            "problems": [{"id": "p1", "problem": "excess-gingival-display"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "intrusion",
                           "at_least": 1, "unit": "mm", "because": ["p1"]}]}
    """
    sex = chart.rx.patient.sex
    key = min((f"normal.lip-growth-end.{one}" for one in ([sex] if sex else ("female", "male"))), key=chart.limit)
    if chart.age is not None and chart.age < chart.limit(key) and chart.growing is not False:
        for act in gum_intrusions(chart):
            yield act.told(*gum_grounds(chart), limit=chart.limit(key), figures=(key,))


@rule(
    "extrusion-with-gum-shown",
    Severity.CAUTION,
    title="Upper front teeth are extruded although much gum shows on smiling.",
    says="{asked:clause}: {gum:mm} of gum shows on smiling, {limit:mm} or more is much, and the gum follows the teeth.",
    do="Weigh closing the bite by other movements, or say that the gum is accepted.",
    change="Less than {limit:mm} of gum on a full smile would change this.",
    figures=("normal.gingival-display-on-smiling.excess",),
)
def extrusion_with_gum_shown(chart: Chart) -> Iterator[Told]:
    """No extrusion of upper incisors is ordered or allowed where much gum shows on smiling.

    The gum comes down with the teeth, and more of it is shown.

    Evidence: three schools put the limit at 2, 3 or 4 mm; 3 mm is used, as laypeople and orthodontists alike disliked
    it from there.

    Passes: {"findings": [{"id": "f1", "measure": "gingival-display-on-smiling", "value": 1, "unit": "mm"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["12", "11", "21", "22"], "motion": "extrusion",
                            "at_least": 1, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "gingival-display-on-smiling", "value": 4, "unit": "mm"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["12", "11", "21", "22"], "motion": "extrusion",
                           "at_least": 1, "unit": "mm"}]}
    """
    key, gum = "normal.gingival-display-on-smiling.excess", chart.value(GUM)
    if gum is not None and gum >= chart.limit(key):
        for act in acts(chart, "vertical", 1, UPPER_FRONT):
            yield act.told(*chart.found(GUM), gum=gum, limit=chart.limit(key), figures=(key,))


@rule(
    "gum-complaint-answered-below",
    Severity.ASK,
    title="Too much gum is the complaint, but the bite is opened by lower incisors or molars only.",
    says="{asked:clause}: this opens the bite and leaves the gum above as it is.",
    do="Say whether the gum is to be treated, by which means, or is accepted.",
    change="Intrusion of the upper incisors, or treatment of the gum stated as a step, would change this.",
    figures=(DEEP_FROM, DEEP_PERCENT),
)
def gum_complaint_answered_below(chart: Chart) -> Iterator[Told]:
    """A complaint of too much gum is not answered by intruding lower incisors or extruding molars alone.

    The overbite becomes less, the upper incisors and their gum stay, and the complaint with them.

    Evidence: geometry. Surgery or treatment of the gum, where it is stated, is taken as the answer; so is a goal on the
    display, which the arithmetic judges.

    Passes: {"problems": [{"id": "p1", "problem": "excess-gingival-display"}, {"id": "p2", "problem": "deep-bite"}],
             "allow": [{"id": "a1", "use": "intrusion", "teeth": ["42", "41", "31", "32"], "up_to": 1, "unit": "mm"},
                       {"id": "a2", "use": "intrusion", "teeth": ["12", "11", "21", "22"], "up_to": 1, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "excess-gingival-display"}, {"id": "p2", "problem": "deep-bite"}],
            "allow": [{"id": "a1", "use": "intrusion", "teeth": ["42", "41", "31", "32"], "up_to": 1, "unit": "mm"}]}
    """
    complaint = next(chart.problems(GUMMY), None)
    deep = [place.owner for place in chart.problems(DEEP)]
    if complaint is None or not (deep or is_deep(chart)) or _gum_treated(chart):
        return
    below = [*acts(chart, "vertical", -1, LOWER_FRONT), *acts(chart, "vertical", 1, MOLARS)]
    if below:
        ids, asked = [act.place.owner for act in below], [said(act.place.part) for act in below]
        yield told(complaint.pointer, complaint.owner, *deep, *chart.found(GUM, OVERBITE), *ids, asked=asked)


def _gum_treated(chart: Chart) -> bool:
    """Whether something is stated that moves or treats the upper front, or a goal says how the gum is to end."""
    if any(chart.reach(tooth, "vertical", -1) > 0 for tooth in UPPER_FRONT):
        return True
    aimed = any(place.said("measure") in (GUM, AT_REST) for place in chart.of("goals", "keep", "expect"))
    return aimed or is_done(chart, "surgery", "periodontal-treatment")


RULES = (
    gum_intrusion_inside_norm,
    gum_intrusion_while_lip_grows,
    extrusion_with_gum_shown,
    gum_complaint_answered_below,
)
