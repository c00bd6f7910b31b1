"""Incisors that the plan leaves inclined: the lower ones proclined, the upper ones upright."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed.findings import Severity
from wellposed.review.held import Facts, Held
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._gums import described, sound
from wellposed.rules._inclining import LOWER_ANGLE, UPPER_ANGLES, teeth_in
from wellposed.rules.inclination import UPRIGHT
from wellposed.rules.proclination import ASK, CHANGE, CONFIRM, WARN
from wellposed.vocabulary.teeth import LOWER, UPPER


class _End(NamedTuple):
    present: float
    end: float
    teeth: tuple[str, ...]


def _turned(held: Held, arch: str, angle: str) -> _End | None:
    """Where the torque of the plan takes the angle of the central incisors of an arch, deg."""
    present, centrals = held.chart.value(angle), teeth_in(held.chart, arch, 1)
    turned = [held.going(tooth, "torque") for tooth in centrals]
    if present is None or not turned:
        return None
    return _End(present, round(present + sum(turned) / len(turned), 2), centrals)


def _end(held: Held) -> _End | None:
    """Where the plan leaves the lower incisors to the mandibular plane, if it brings them forward."""
    end = _turned(held, LOWER, LOWER_ANGLE)
    return end if end and end.end > end.present else None


def _ended(held: Held, end: _End, key: str) -> Told:
    facts: Facts = {"present": end.present, "end": end.end, "limit": held.limit(key), "gums": described(held.chart)}
    facts |= {"next": held.limit(WARN)}
    turned = [tooth for tooth in end.teeth if held.going(tooth, "torque")]
    return told(held.at("torque", turned), *held.chart.found(LOWER_ANGLE), **facts, figures=(key,))


_ENDS = (
    "From {present:deg} to the mandibular plane the plan takes the lower incisors to {end:deg}; {limit:deg} is the"
    " limit. Gums there: {gums:words}."
)


@rule(
    "plan-proclines-lower-incisors",
    Severity.ASK,
    title="The plan leaves the lower incisors proclined.",
    says=_ENDS,
    do="Look at the bone and gums over these roots, and say that the inclination is meant, or ask for less.",
    change="With an end below {limit:deg} it no longer applies; over gums stated to be sound, below {next:deg}.",
    figures=(ASK, WARN, CONFIRM),
)
def plan_proclines_lower_incisors(held: Held) -> Iterator[Told]:
    """The plan does not leave the lower incisors at 99 degrees to the mandibular plane or above; over gums that are
    thin, receded or not described, not above 95.

    An allowance says how far they may go; how far they do go is seen in the plan only.

    Evidence: as for the orders: 95 is one study of the final inclination, recalled; 99 is where a published index
    begins to score. Peoples differ.

    Passes: {"prescription": {"findings": [{"id": "f1", "measure": "lower-incisor-to-mandibular-plane", "value": 90,
                                            "unit": "deg"}]},
             "movements": [{"variable": "torque", "unit": "deg", "values": {"41": 4, "31": 4}}]}
    Fails: {"prescription": {"findings": [{"id": "f1", "measure": "lower-incisor-to-mandibular-plane", "value": 95,
                                           "unit": "deg"}]},
            "movements": [{"variable": "torque", "unit": "deg", "values": {"41": 5, "31": 5}}]}
    """
    end = _end(held)
    if end is None or end.end > held.limit(CONFIRM):
        return
    if end.end >= held.limit(WARN):
        yield _ended(held, end, WARN)
    elif end.end > held.limit(ASK) and not sound(held.chart):
        yield _ended(held, end, ASK)


@rule(
    "plan-proclines-lower-incisors-far",
    Severity.STOP,
    title="The plan leaves the lower incisors far beyond the usual inclination.",
    says=_ENDS,
    do="Ask for another plan, or look at the present inclination again.",
    change="With an end of {limit:deg} or less it no longer applies.",
    figures=(CONFIRM,),
)
def plan_proclines_lower_incisors_far(held: Held) -> Iterator[Told]:
    """The plan does not leave the lower incisors above 105 degrees to the mandibular plane.

    Two spreads above the mean, a plan is more often a slip of the sense or the amount than meant.

    Evidence: common practice; no published cut-off was found.

    Passes: {"prescription": {"findings": [{"id": "f1", "measure": "lower-incisor-to-mandibular-plane", "value": 98,
                                            "unit": "deg"}]},
             "movements": [{"variable": "torque", "unit": "deg", "values": {"41": 6, "31": 6}}]}
    Fails: {"prescription": {"findings": [{"id": "f1", "measure": "lower-incisor-to-mandibular-plane", "value": 98,
                                           "unit": "deg"}]},
            "movements": [{"variable": "torque", "unit": "deg", "values": {"41": 8, "31": 8}}]}
    """
    end = _end(held)
    if end and end.end > held.limit(CONFIRM):
        yield _ended(held, end, CONFIRM)


@rule(
    "lower-incisors-torqued-far",
    Severity.CAUTION,
    title="The plan proclines lower incisors by an amount beyond which recession was seen.",
    says="{teeth:teeth}: up to {amount:deg} of proclination; {limit:deg} is the limit. Gums there: {gums:words}.",
    do="Look at the width of the bone of the chin and at the gums in front of these roots.",
    change="With {limit:deg} or less, or a wide bone and thick gums, it no longer applies.",
    figures=(CHANGE,),
)
def lower_incisors_torqued_far(held: Held) -> Iterator[Told]:
    """No lower incisor is torqued forward by more than 10 degrees.

    Beyond that, in patients with a narrow bone of the chin, more recession was seen than in those proclined less.

    Evidence: one study, recalled; others saw no difference.

    Passes: {"movements": [{"variable": "torque", "unit": "deg", "values": {"41": 8, "31": 8}}]}
    Fails: {"movements": [{"variable": "torque", "unit": "deg", "values": {"41": 12, "31": 12}}]}
    """
    turned = {tooth: held.going(tooth, "torque") for tooth in teeth_in(held.chart, LOWER)}
    far = {tooth: angle for tooth, angle in turned.items() if above(angle, held.limit(CHANGE))}
    if far:
        facts: Facts = {"teeth": list(far), "amount": max(far.values()), "limit": held.limit(CHANGE)}
        yield told(held.at("torque", far), **facts, gums=described(held.chart), figures=(CHANGE,))


@rule(
    "plan-leaves-upper-incisors-upright",
    Severity.CAUTION,
    title="The plan leaves the upper incisors more upright than is usual.",
    says="From {present:deg} the plan takes {measure:measure} to {end:deg}; usual from {least:deg}.",
    do="Look at the torque of the upper incisors, and say which inclination is meant at the end.",
    change="An end of {least:deg} or more settles it.",
    figures=UPRIGHT,
)
def plan_leaves_upper_incisors_upright(held: Held) -> Iterator[Told]:
    """The plan does not leave the upper incisors more upright than the usual spread, or upright ones more so.

    A retraction may be ordered without a word about the inclination; how upright it leaves the teeth is seen in the
    plan only. Upright upper incisors deepen the bite and take away the room that the lower ones need.

    Evidence: the spread of one school for each plane; peoples differ.

    Passes: {"prescription": {"findings": [{"id": "f1", "measure": "upper-incisor-to-palatal-plane", "value": 115,
                                            "unit": "deg"}]},
             "movements": [{"variable": "torque", "unit": "deg", "values": {"11": -8, "21": -8}}]}
    Fails: {"prescription": {"findings": [{"id": "f1", "measure": "upper-incisor-to-palatal-plane", "value": 109,
                                           "unit": "deg"}]},
            "movements": [{"variable": "torque", "unit": "deg", "values": {"11": -14, "21": -14}}]}
    """
    for measure in UPPER_ANGLES:
        end, key = _turned(held, UPPER, measure), f"normal.{measure}.least"
        if end and end.end < min(end.present, held.limit(key)):
            facts: Facts = {"measure": measure, "present": end.present, "end": end.end, "least": held.limit(key)}
            turned = [tooth for tooth in end.teeth if held.going(tooth, "torque")]
            yield told(held.at("torque", turned), *held.chart.found(measure), **facts, figures=(key,))
            return


RULES = (
    *(plan_proclines_lower_incisors, plan_proclines_lower_incisors_far, lower_incisors_torqued_far),
    plan_leaves_upper_incisors_upright,
)
