"""Cephalometric angles that must come to a whole turn: four that do not, and the fourth that three leave."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.derive.cephalometric import FORMS, WHOLE_TURN, Fourth, closures, fourths
from wellposed.findings import Severity
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._stated import in_words, readings
from wellposed.rules.chart import Chart

TOLERANCE = "normal.closure-tolerance"
PLAUSIBLE = "plausible.deg"
_DECIMALS = 2


@rule(
    "angles-do-not-close",
    Severity.ASK,
    title="Four cephalometric angles that must come to 360 degrees do not.",
    says="{measured:list} come to {sum:deg}, {apart:deg} off the {turn:deg} they must make; {most:deg} is the error of "
    "tracing.",
    do="Look at the four angles and at the plane each is measured to again.",
    change="Angles that come within {most:deg} of {turn:deg} settle it; so does the right name of a plane.",
    figures=(TOLERANCE,),
)
def angles_do_not_close(chart: Chart) -> Iterator[Told]:
    """Upper incisor to the palatal plane or sella-nasion, lower incisor to the mandibular plane, that plane to the
    upper one and the interincisal angle come to 360 degrees.

    They are the inner angles of one figure. If they do not close, one of them is a slip or was measured to another
    plane, and every judgement of inclination that rests on it is too.

    Evidence: plane geometry. Each angle is traced with an error of about one degree; published means need not close.

    Passes: {"findings": [{"id": "f1", "measure": "upper-incisor-to-palatal-plane", "value": 110, "unit": "deg"},
                          {"id": "f2", "measure": "lower-incisor-to-mandibular-plane", "value": 93, "unit": "deg"},
                          {"id": "f3", "measure": "palatal-to-mandibular-plane", "value": 27, "unit": "deg"},
                          {"id": "f4", "measure": "interincisal-angle", "value": 131, "unit": "deg"}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-incisor-to-palatal-plane", "value": 110, "unit": "deg"},
                         {"id": "f2", "measure": "lower-incisor-to-mandibular-plane", "value": 93, "unit": "deg"},
                         {"id": "f3", "measure": "palatal-to-mandibular-plane", "value": 27, "unit": "deg"},
                         {"id": "f4", "measure": "interincisal-angle", "value": 141, "unit": "deg"}]}
    """
    for closed in closures(chart.rx):
        apart, most = round(abs(closed.gap), _DECIMALS), chart.limit(TOLERANCE)
        if apart > most:
            facts = {"measured": _told(chart, closed.form, closed.from_), "sum": closed.sum, "apart": apart}
            limits = {"most": most, "turn": WHOLE_TURN, "figures": (TOLERANCE,)}
            yield told(_pointer(chart, closed.from_), *closed.from_, **facts, **limits)


@rule(
    "three-angles-leave-no-fourth",
    Severity.ASK,
    title="Three cephalometric angles leave a fourth that no mouth has.",
    says="{measured:list} leave {derived:deg} for the {measure:measure}, and mouths have {least:deg} to {most:deg}.",
    do="Look at the three angles and at the plane each is measured to again.",
    change="Three angles that leave one between {least:deg} and {most:deg} settle it.",
    figures=(PLAUSIBLE,),
)
def three_angles_leave_no_fourth(chart: Chart) -> Iterator[Told]:
    """The angle that three stated ones leave to a whole turn is one that mouths have.

    Otherwise one of the three is a slip, or was measured to another plane.

    Evidence: plane geometry; the ranges are wide enough for the most severe mouths treated.

    Passes: {"findings": [{"id": "f1", "measure": "upper-incisor-to-palatal-plane", "value": 110, "unit": "deg"},
                          {"id": "f2", "measure": "lower-incisor-to-mandibular-plane", "value": 93, "unit": "deg"},
                          {"id": "f3", "measure": "palatal-to-mandibular-plane", "value": 27, "unit": "deg"}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-incisor-to-palatal-plane", "value": 82, "unit": "deg"},
                         {"id": "f2", "measure": "lower-incisor-to-mandibular-plane", "value": 63, "unit": "deg"},
                         {"id": "f3", "measure": "palatal-to-mandibular-plane", "value": 25, "unit": "deg"}]}
    """
    for one in fourths(chart.rx):
        if not _possible(chart, one):
            least, most = (chart.limit(key) for key in _ends(one))
            facts = {"measured": _told(chart, one.form, one.from_), "derived": one.value, "measure": one.measure}
            limits = {"least": least, "most": most, "figures": _ends(one)}
            yield told(_pointer(chart, one.from_), *one.from_, **facts, **limits)


def _possible(chart: Chart, one: Fourth) -> bool:
    """Whether mouths have such an angle."""
    least, most = (chart.limit(key) for key in _ends(one))
    return least <= round(one.value, _DECIMALS) <= most


def _ends(one: Fourth) -> tuple[str, str]:
    return f"{PLAUSIBLE}.{one.measure}.least", f"{PLAUSIBLE}.{one.measure}.most"


@rule(
    "fourth-angle",
    Severity.NOTE,
    title="Three cephalometric angles give the fourth.",
    says="{measured:list} leave {derived:deg} for the {measure:measure}: the four come to {turn:deg}.",
    do="Compare it with the tracing.",
    change="The fourth angle as measured takes its place.",
)
def fourth_angle(chart: Chart) -> Iterator[Told]:
    """Of the four angles between incisors and planes all are stated, or fewer than three.

    The fourth follows from three; shown beside the tracing it tells a slip at once.

    Evidence: plane geometry; the errors of three tracings add up in it.

    Passes: {"findings": [{"id": "f1", "measure": "lower-incisor-to-mandibular-plane", "value": 93, "unit": "deg"},
                          {"id": "f2", "measure": "interincisal-angle", "value": 130, "unit": "deg"}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-incisor-to-palatal-plane", "value": 110, "unit": "deg"},
                         {"id": "f2", "measure": "lower-incisor-to-mandibular-plane", "value": 93, "unit": "deg"},
                         {"id": "f3", "measure": "palatal-to-mandibular-plane", "value": 27, "unit": "deg"}]}
    """
    for one in fourths(chart.rx):
        if _possible(chart, one):
            facts = {"measured": _told(chart, one.form, one.from_), "derived": one.value, "measure": one.measure}
            yield told(_pointer(chart, one.from_), *one.from_, turn=WHOLE_TURN, **facts)


def _told(chart: Chart, form: str, from_: tuple[str, ...]) -> list[str]:
    return in_words(one for one in readings(chart, *FORMS[form]) if one.id in from_)


def _pointer(chart: Chart, from_: tuple[str, ...]) -> str:
    """The first of the findings, in the order of the document."""
    places = [place.pointer for place in chart.of("findings") if place.owner in from_]
    return places[0] if places else "/findings"


RULES = (angles_do_not_close, three_angles_leave_no_fourth, fourth_angle)
