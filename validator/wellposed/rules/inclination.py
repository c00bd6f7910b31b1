"""The front teeth to each other and to the face: interincisal angle, upper incisors that end upright."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.derive.cephalometric import Planned, planned_interincisal
from wellposed.findings import Severity
from wellposed.model.means import IncisorTravel
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._inclining import UPPER_ANGLES, beyond_line, per_mm, permanent_incisor, planned, teeth_in
from wellposed.rules.chart import Chart, Move
from wellposed.vocabulary.teeth import ARCHES, UPPER, arch_of

ANGLE = "interincisal-angle"
LEAST, MOST = "normal.interincisal.least", "normal.interincisal.most"
SCHOOLS = ("steiner", "downs", "ricketts", "eastman")
MEANS = tuple(f"normal.interincisal.{school}" for school in SCHOOLS)
TRAVEL = "caution.advance.lower-incisors"
UPRIGHT = tuple(f"normal.{measure}" for measure in UPPER_ANGLES)


@rule(
    "interincisal-angle-outside-norm",
    Severity.CAUTION,
    title="The plan takes the angle between the incisors out of what is usual.",
    says="{asked:clause}: from {present:deg} the interincisal angle ends at {end:deg} or {beyond}; usual {least:deg} to"
    " {most:deg}. Means by school: Steiner {steiner:deg}, Downs {downs:deg}, Ricketts {ricketts:deg}, Eastman"
    " {eastman:deg}.",
    do="Look at the torque of both arches together, and say which end is meant.",
    change="An end between {least:deg} and {most:deg}, or the norm of the patient's people, settles it.",
    figures=(LEAST, MOST, *MEANS),
)
def interincisal_angle_outside_norm(chart: Chart) -> Iterator[Told]:
    """No plan takes the interincisal angle out of the usual band, or further out than it is.

    Too wide an angle lets the bite deepen again; too narrow a one leaves the lips strained and the teeth unsupported.

    Evidence: schools differ by 5 degrees in the mean, and peoples by more; the band is one spread about the mean of one
    school, and holds the means of the others. An angle that is outside and comes nearer is not spoken of.

    Passes: {"findings": [{"id": "f1", "measure": "interincisal-angle", "value": 150, "unit": "deg"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "palatal-root-torque",
                            "at_least": 3, "at_most": 10, "unit": "deg"}]}
    Fails: {"findings": [{"id": "f1", "measure": "interincisal-angle", "value": 130, "unit": "deg"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "palatal-root-torque",
                           "at_least": 8, "at_most": 10, "unit": "deg"}]}
    """
    plan = planned_interincisal(chart.rx)
    end = _outside(chart, plan) if plan else None
    places = [place for one in (plan.clauses if plan else ()) if (place := chart.place(one))]
    if plan and end is not None and places:
        facts = {"present": plan.present, "end": end, "least": chart.limit(LEAST), "most": chart.limit(MOST)}
        facts |= {school: chart.limit(key) for school, key in zip(SCHOOLS, MEANS, strict=True)}
        asked, figures = [said(place.part) for place in places], (LEAST, MOST, *MEANS)
        beyond = "above" if end > plan.present else "below"
        yield told(places[0].pointer, *plan.from_, *plan.clauses, asked=asked, beyond=beyond, figures=figures, **facts)


@rule(
    "interincisal-angle-not-measured",
    Severity.NOTE,
    title="Incisors are inclined by order, and the angle between them is not measured.",
    says="{asked:clause}: the interincisal angle is not stated and does not follow, so its end cannot be told.",
    do="State the angle, or the three others that close with it.",
    change="A finding of the interincisal angle, or the other three angles, settles it.",
    figures=(TRAVEL,),
)
def interincisal_angle_not_measured(chart: Chart) -> Iterator[Told]:
    """Where incisors of both arches are tipped by order, or those of one by 2 mm or more, the interincisal angle is
    stated or follows from three other angles.

    Without it nobody can say whether the front teeth will support each other at the end.

    Evidence: common practice. Ordered torque and ordered travel in or out count, travel to a tooth's place in line not.

    Passes: {"findings": [{"id": "f1", "measure": "interincisal-angle", "value": 130, "unit": "deg"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "palatal",
                            "at_least": 3, "unit": "mm"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "palatal",
                           "at_least": 3, "unit": "mm"}]}
    """
    tipped = [move for move in chart.moves if _tips(chart, move) > 0]
    both = {arch_of(move.tooth) for move in tipped} == set(ARCHES)
    far = any(m.variable == "out" and _tips(chart, m) >= chart.limit(TRAVEL) for m in tipped)
    if tipped and (both or far) and planned_interincisal(chart.rx) is None:
        places = tuple(dict.fromkeys(move.place for move in tipped))
        asked = [said(place.part) for place in places]
        owners = (place.owner for place in places)
        yield told(places[0].pointer, *owners, asked=asked, missing=(ANGLE,), figures=(TRAVEL,))


@rule(
    "upper-incisors-end-retroclined",
    Severity.CAUTION,
    title="The upper incisors are to end more upright than is usual.",
    says="{asked:clause}: {measure:measure} goes from {present:deg} to {end:deg} at the most; usual from {least:deg}.",
    do="Look at the torque of the upper incisors, and say which inclination is meant at the end.",
    change="An end of {least:deg} or more settles it.",
    figures=UPRIGHT,
)
def upper_incisors_end_retroclined(chart: Chart) -> Iterator[Told]:
    """No order leaves the upper incisors more upright than the usual spread, or makes upright ones more so.

    Upright upper incisors deepen the bite, take away the room the lower ones need, and look flat under the lip.

    Evidence: the spread of one school for each plane; peoples differ. Travel ordered without a torque is taken as
    tipping.

    Passes: {"findings": [{"id": "f1", "measure": "upper-incisor-to-palatal-plane", "value": 118, "unit": "deg"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "palatal-crown-torque",
                            "at_least": 8, "unit": "deg"}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-incisor-to-palatal-plane", "value": 108, "unit": "deg"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "palatal-crown-torque",
                           "at_least": 8, "unit": "deg"}]}
    """
    for measure in UPPER_ANGLES:
        end, key = planned(chart, measure), f"normal.{measure}.least"
        if end and end.high < min(end.present, chart.limit(key)):
            facts = {"measure": measure, "present": end.present, "end": end.high, "least": chart.limit(key)}
            places = [place for one in end.clauses if (place := chart.place(one))]
            asked = [said(place.part) for place in places]
            ids = (*chart.found(measure), *end.clauses)
            yield told(places[0].pointer, *ids, asked=asked, figures=(key,), **facts)
            return


@rule(
    "retraction-may-end-retroclined",
    Severity.CAUTION,
    title="The retraction allowed would leave the upper incisors upright, if they tip and it is used in full.",
    says="{asked:clause}: used in full it takes {measure:measure} from {present:deg} to {end:deg} or less by tipping;"
    " two spreads below the mean is {limit:deg}.",
    do="Say whether the roots are to go back with the crowns, or bound the inclination.",
    change="A torque ordered or allowed, or a goal or keep on the inclination, settles it.",
    figures=UPRIGHT,
)
def retraction_may_end_retroclined(chart: Chart) -> Iterator[Told]:
    """No retraction of the upper incisors that is allowed, used in full and by tipping, leaves them two spreads more
    upright than the mean, unless their torque or their inclination is spoken of.

    Aligners tip incisors back more readily than they move the roots; spaces of extractions close at that price.

    Evidence: a review found aligners not effective for the inclination of front teeth; the spread is that of one school
    for each plane.

    Passes: {"findings": [{"id": "f1", "measure": "upper-incisor-to-palatal-plane", "value": 115, "unit": "deg"}],
             "allow": [{"id": "a1", "use": "incisor-retraction", "arch": "upper", "up_to": 4, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-incisor-to-palatal-plane", "value": 104, "unit": "deg"}],
            "allow": [{"id": "a1", "use": "incisor-retraction", "arch": "upper", "up_to": 4, "unit": "mm"}]}
    """
    measure = next((one for one in UPPER_ANGLES if chart.value(one) is not None), None)
    for place in () if measure is None or _torque_said(chart) else chart.allowed("incisor-retraction"):
        part, present = place.part, chart.value(str(measure)) or 0.0
        if isinstance(part, IncisorTravel) and part.arch == UPPER and teeth_in(chart, UPPER, 1):
            end = present - part.up_to * min(per_mm(chart, tooth) for tooth in teeth_in(chart, UPPER, 1))
            limit = _two_spreads(chart, str(measure))
            if end < limit:
                facts = {"measure": measure, "present": present, "end": round(end, 1), "limit": limit}
                ids, key = (*chart.found(str(measure)), place.owner), f"normal.{measure}"
                figures = (f"{key}.least", f"{key}.most")
                yield told(place.pointer, *ids, asked=said(part), figures=figures, **facts)


def _outside(chart: Chart, plan: Planned) -> float | None:
    """The end nearest to the usual, if all that the plan leaves lies outside and further out than today."""
    if plan.low is not None and plan.low > max(chart.limit(MOST), plan.present):
        return plan.low
    if plan.high is not None and plan.high < min(chart.limit(LEAST), plan.present):
        return plan.high
    return None


def _tips(chart: Chart, move: Move) -> float:
    """By how much an order tips or carries a permanent incisor, deg or mm; nothing to its place in line."""
    if not permanent_incisor(move.tooth) or move.variable not in ("torque", "out"):
        return 0.0
    return beyond_line(chart, move, move.reach) if move.variable == "out" else move.reach


def _torque_said(chart: Chart) -> bool:
    """Whether the torque or the inclination of the upper incisors is ordered, allowed, kept or a goal."""
    centrals = set(teeth_in(chart, UPPER, 1))
    for place in chart.of("movements", "allow", "keep", "goals"):
        named = centrals & set(place.said("teeth") or ())
        turned = "torque" in str(place.said("motion") or "") or place.said("variable") == "torque"
        if (named and turned) or place.said("measure") in (*UPPER_ANGLES, ANGLE):
            return True
    return False


def _two_spreads(chart: Chart, measure: str) -> float:
    """Two spreads below the mean, where the usual band is one to either side, deg."""
    least, most = (chart.limit(f"normal.{measure}.{end}") for end in ("least", "most"))
    return least - (most - least) / 2


RULES = (
    interincisal_angle_outside_norm,
    interincisal_angle_not_measured,
    upper_incisors_end_retroclined,
    retraction_may_end_retroclined,
)
