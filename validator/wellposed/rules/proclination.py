"""Lower incisors to the mandibular plane: where the order leaves them, and by how much it inclines them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from wellposed.findings import Severity
from wellposed.rules._declare import Told, rule
from wellposed.rules._gums import about, sound
from wellposed.rules._inclining import LOWER_ANGLE, End, Outward, of_lower, outwards, per_mm, planned
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import LOWER, arch_of, position

ASK, WARN, CONFIRM = (f"caution.lower-incisor-to-mandibular-plane.{step}" for step in ("ask", "warn", "confirm"))
CHANGE = "caution.torque.lower-incisors-labial"
_CENTS = 2
_SAYS = (
    "{asked:clause}: from {present:deg} to the mandibular plane the lower incisors end at {least:deg} at the least"
    " and {most:deg} at the most; {limit:deg} is the limit. Gums there: {gums:words}."
)


@rule(
    "lower-incisors-past-95",
    Severity.ASK,
    title="The lower incisors are to end proclined, and the gums are thin, receded or not described.",
    says=_SAYS,
    do="Look at the gums over these roots, state what is found, and confirm the inclination or lessen it.",
    change="State the conditions, an empty list for none: over gums that are not thin it is asked from {next:deg}.",
    figures=(ASK, WARN),
)
def lower_incisors_past_95(chart: Chart) -> Iterator[Told]:
    """No order leaves the lower incisors above 95 degrees to the mandibular plane over gums that are thin, receded or
    not described.

    Beyond it, over a thin gingival margin, recession was seen after treatment. Over sound gums it was not.

    Evidence: one study of the final inclination, recalled; reviews found no clear association of proclination with
    recession, so the limit is a question only. Travel ordered without a torque is taken as tipping.

    Passes: {"findings": [{"id": "f1", "measure": "lower-incisor-to-mandibular-plane", "value": 90, "unit": "deg"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "labial-crown-torque",
                            "at_least": 4, "unit": "deg"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-incisor-to-mandibular-plane", "value": 93, "unit": "deg"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "labial-crown-torque",
                           "at_least": 4, "unit": "deg"}]}
    """
    end = _ending(chart)
    if end and not sound(chart) and chart.limit(ASK) < end.low < chart.limit(WARN):
        yield _told(chart, end, ASK, next=chart.limit(WARN))


@rule(
    "lower-incisors-past-99",
    Severity.ASK,
    title="The lower incisors are to end strongly proclined.",
    says=_SAYS,
    do="Look at the bone and gums over these roots, and confirm the inclination or lessen it.",
    change="With an end below {limit:deg}, or a people whose usual inclination is as high, it no longer applies.",
    figures=(WARN, CONFIRM),
)
def lower_incisors_past_99(chart: Chart) -> Iterator[Told]:
    """No order leaves the lower incisors at 99 degrees to the mandibular plane or above.

    From there they stand outside the usual spread, whatever the gums; lips, bone and stability are to be weighed.

    Evidence: 99 is where a published index begins to score, no risk that was found; and peoples differ: means of 97
    and more are reported. Travel ordered without a torque is taken as tipping.

    Passes: {"findings": [{"id": "f1", "measure": "lower-incisor-to-mandibular-plane", "value": 100, "unit": "deg"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-incisor-to-mandibular-plane", "value": 95, "unit": "deg"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "labial-crown-torque",
                           "at_least": 6, "unit": "deg"}]}
    """
    end = _ending(chart)
    if end and chart.limit(WARN) <= end.low <= chart.limit(CONFIRM):
        yield _told(chart, end, WARN)


@rule(
    "lower-incisors-past-105",
    Severity.STOP,
    title="The lower incisors are to end far beyond the usual inclination.",
    says=_SAYS,
    do="Confirm the present inclination and the amount, or order another end.",
    change="With an end of {limit:deg} or less it no longer applies.",
    figures=(CONFIRM,),
)
def lower_incisors_past_105(chart: Chart) -> Iterator[Told]:
    """No order leaves the lower incisors above 105 degrees to the mandibular plane.

    Two spreads above the mean, an order is more often a slip of the sense or the amount than a plan.

    Evidence: common practice; no published cut-off was found. A practice that treats such patients often can weigh this
    rule otherwise in its profile.

    Passes: {"findings": [{"id": "f1", "measure": "lower-incisor-to-mandibular-plane", "value": 108, "unit": "deg"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "lingual-crown-torque",
                            "at_least": 2, "unit": "deg"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-incisor-to-mandibular-plane", "value": 98, "unit": "deg"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "labial-crown-torque",
                           "at_least": 8, "unit": "deg"}]}
    """
    end = _ending(chart)
    if end and end.low > chart.limit(CONFIRM):
        yield _told(chart, end, CONFIRM)


@rule(
    "advance-may-pass-99",
    Severity.CAUTION,
    title="What is allowed would leave the lower incisors strongly proclined, if it is used in full.",
    says="{asked:clause}: used in full it takes the lower incisors from {present:deg} to at least {least:deg} to the"
    " mandibular plane, if they tip; {limit:deg} is the limit. Gums there: {gums:words}.",
    do="Bound the inclination by a goal or a keep, or lessen the allowance.",
    change="A goal or a keep that holds the angle below {limit:deg} settles it.",
    figures=(WARN,),
)
def advance_may_pass_99(chart: Chart) -> Iterator[Told]:
    """No allowance, used in full, leaves the lower incisors at 99 degrees to the mandibular plane or above.

    An allowance is a permission to the laboratory, which does not see the bone in front of the roots.

    Evidence: as for an order; besides, the laboratory may use less of the allowance, or move the roots along.

    Passes: {"findings": [{"id": "f1", "measure": "lower-incisor-to-mandibular-plane", "value": 92, "unit": "deg"}],
             "allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 2, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-incisor-to-mandibular-plane", "value": 97, "unit": "deg"}],
            "allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 2, "unit": "mm"}]}
    """
    present, end = chart.value(LOWER_ANGLE), planned(chart, LOWER_ANGLE)
    allowed = [one for one in outwards(chart) if one.place.section == "allow" and _centrals(one)]
    if present is None or end or not allowed:
        return
    least = round(present + max(_tips(chart, one) for one in allowed), _CENTS)
    if least >= chart.limit(WARN):
        clauses = tuple(one.place.owner for one in allowed)
        yield _told(chart, End(LOWER_ANGLE, present, least, least, clauses), WARN)


@rule(
    "proclination-beyond-change",
    Severity.CAUTION,
    title="The lower incisors are proclined by an amount beyond which recession was seen.",
    says="{asked:clause}: that is {amount:deg} of proclination; {limit:deg} is the limit. Gums there: {gums:words}.",
    do="Look at the width of the bone of the chin and at the gums in front of these roots.",
    change="With {limit:deg} or less, or a wide bone and thick gums, it no longer applies.",
    figures=(CHANGE,),
)
def proclination_beyond_change(chart: Chart) -> Iterator[Told]:
    """No lower incisor is torqued forward by more than 10 degrees.

    Beyond that, in patients with a narrow bone of the chin, more recession was seen than in those proclined less.

    Evidence: one study, recalled; others saw no difference.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "labial-crown-torque",
                            "at_least": 8, "unit": "deg"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "labial-crown-torque",
                           "at_least": 12, "unit": "deg"}]}
    """
    beyond = {o.place.owner: o.torque for o in outwards(chart) if of_lower(o) and o.torque > chart.limit(CHANGE)}
    end = _ending(chart)
    inclined = round(end.low - end.present, _CENTS) if end else 0.0
    if end and inclined > chart.limit(CHANGE):
        beyond |= dict.fromkeys(end.clauses, inclined)
    if beyond:
        yield about(chart, beyond, amount=max(beyond.values()), limit=chart.limit(CHANGE), figures=(CHANGE,))


def _ending(chart: Chart) -> End | None:
    """Where the lower incisors end, if the order brings them forward."""
    end = planned(chart, LOWER_ANGLE)
    return end if end and end.low > end.present else None


def _told(chart: Chart, end: End, key: str, **more: Any) -> Told:
    facts = {"present": end.present, "least": end.low, "most": end.high, "limit": chart.limit(key), **more}
    return about(chart, end.clauses, *chart.found(end.measure), **facts, figures=(key,))


def _centrals(one: Outward) -> list[str]:
    return [tooth for tooth in one.teeth if arch_of(tooth) == LOWER and position(tooth) == 1]


def _tips(chart: Chart, one: Outward) -> float:
    """The least it tips the lower centrals by, used in full, deg."""
    return one.torque or one.travel * min(per_mm(chart, tooth) for tooth in _centrals(one))


RULES = (
    lower_incisors_past_95,
    lower_incisors_past_99,
    lower_incisors_past_105,
    advance_may_pass_99,
    proclination_beyond_change,
)
