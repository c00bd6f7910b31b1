"""The front teeth as several rules look at them: what the lip shows, how deep the bite is, why they are intruded."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed.derive.display import display_at_rest, gingival_display
from wellposed.rules._acts import Act, above, acts
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import PERMANENT_TEETH, is_molar, is_premolar

UPPER_FRONT = ("12", "11", "21", "22")
LOWER_FRONT = ("42", "41", "31", "32")
MOLARS = ("17", "16", "26", "27", "47", "46", "36", "37")
BACK = tuple(tooth for tooth in PERMANENT_TEETH if is_premolar(tooth) or is_molar(tooth))
AT_REST, GUM, OVERBITE = "incisor-display-at-rest", "gingival-display-on-smiling", "overbite"
DEEP, GUMMY = "deep-bite", "excess-gingival-display"
LOW, AGE = "normal.incisor-display-at-rest.low", "normal.age.display-falls"
FORTIES, EITHER_SIDE = "normal.incisor-display-at-rest.by-age.forties", "normal.incisor-display-at-rest.either-side"
DEEP_FROM, DEEP_PERCENT = "normal.overbite.most", "normal.overbite-percent.acceptable"

_CENTRALS = frozenset(("11", "21"))
_OTHER_REASONS = (
    *("gingival-margin-unevenness", "wear", "infraocclusion", "tilted-teeth", "displaced-teeth"),
    *("deep-curve-of-spee", "relapse", "other"),
)


class Shown(NamedTuple):
    """A display that was measured, mm: its value, the most that is usual for age and sex, and the norms of that."""

    measure: str
    value: float
    most: float
    keys: tuple[str, ...]


def shown(chart: Chart) -> Iterator[Shown]:
    """Each display measured for which there is a norm."""
    patient, gum, rest = chart.rx.patient, chart.value(GUM), chart.value(AT_REST)
    usual = display_at_rest(patient.age_years, patient.sex)
    if gum is not None:
        keys = tuple(key for key in gingival_display(patient.sex).keys if key.endswith(".most"))
        yield Shown(GUM, gum, max(map(chart.limit, keys)), keys)
    if rest is not None and usual is not None:
        *means, side = usual.keys
        yield Shown(AT_REST, rest, max(map(chart.limit, means)) + chart.limit(side), usual.keys)


def little_shows(chart: Chart) -> bool:
    """Whether little of the upper incisors shows at rest, as measured."""
    display = chart.value(AT_REST)
    return display is not None and display <= chart.limit(LOW)


def past_forty(chart: Chart) -> bool:
    """Whether the age is past that from which display is low, and no more is known to show than is usual then."""
    display, old = chart.value(AT_REST), chart.age is not None and chart.age > chart.limit(AGE)
    return old and (display is None or not above(display, usual_past_forty(chart)))


def usual_past_forty(chart: Chart) -> float:
    """The most that is usual at rest in the forties, mm; later it is less."""
    return chart.limit(FORTIES) + chart.limit(EITHER_SIDE)


def is_deep(chart: Chart) -> bool:
    """Whether the overbite is above its norm in mm, or in percent of the lower crown, as far as it is known."""
    overbite, percent = chart.value(OVERBITE), chart.percent()
    in_mm = overbite is not None and above(overbite, chart.limit(DEEP_FROM))
    return in_mm or (percent is not None and above(percent, chart.limit(DEEP_PERCENT)))


def front_intrusions(chart: Chart) -> list[Act]:
    """The clauses that intrude upper incisors, if together they intrude both centrals: single teeth are aligned so."""
    found = list(acts(chart, "vertical", -1, UPPER_FRONT))
    return found if {tooth for act in found for tooth in act.teeth} >= _CENTRALS else []


def gum_intrusions(chart: Chart) -> list[Act]:
    """Those of them that are to show less gum: by their reasons, else because no other problem could be meant."""
    return [act for act in front_intrusions(chart) if _for_gum(chart, act)]


def unexplained_intrusions(chart: Chart) -> list[Act]:
    """Those of them for which no problem but a deep bite is stated, or none at all."""
    return [a for a in front_intrusions(chart) if not (_for_gum(chart, a) or _for_another_reason(chart, a))]


def gum_grounds(chart: Chart) -> tuple[str, ...]:
    """The ids of the complaint about gum, and of what was measured of it."""
    return (*(place.owner for place in chart.problems(GUMMY)), *chart.found(GUM))


def _for_gum(chart: Chart, act: Act) -> bool:
    reasons = set(chart.because(act.place))
    if reasons:
        return not reasons.isdisjoint(gum_grounds(chart))
    return any(chart.problems(GUMMY)) and not any(chart.problems(DEEP))


def _for_another_reason(chart: Chart, act: Act) -> bool:
    reasons = {place.owner for place in chart.of("problems")} & set(chart.because(act.place))
    if reasons:
        return not reasons <= {place.owner for place in chart.problems(DEEP, GUMMY)}
    return any(chart.problems(*_OTHER_REASONS))
