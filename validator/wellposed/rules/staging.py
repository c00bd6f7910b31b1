"""Staging: how far one aligner goes, how many there are, and how long each is worn."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.model.making import LargestStep, Staging
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.chart import Chart
from wellposed.rules.steps import Chain, beyond, chains, kind_of, stated_step
from wellposed.vocabulary.units import DEG, MM

_SHORTEST, _LONGEST, _ROOT = "step.wear-interval.least", "step.wear-interval.most", "step.root-movement"
_WAYS = {"along": "along the arch", "out": "in or out", "vertical": "up or down"}


@rule(
    "step-above-limit",
    Severity.CAUTION,
    title="An aligner may move teeth further than is usual.",
    says="Staging lets one aligner move teeth {way} by {step:mm}; {limit:mm} is usual at the most.",
    do="Lower the step, or say that it is meant.",
    change="A step of {limit:mm} or less would change it.",
    figures=("step.linear", "step.vertical"),
    sources=("large-step-study",),
)
def step_above_limit(chart: Chart) -> Iterator[Told]:
    """No largest step along the arch, in or out, or up or down is longer than texts give as usual.

    An aligner that is too far from the teeth does not seat, and the teeth fall behind the plan.

    Evidence: steps are custom: texts give 0.1 to 0.33 mm, mostly 0.2 to 0.25. In one study steps of 0.5 mm gave about
    55 % of what was planned.

    Passes: {"staging": {"id": "s1", "strength": "must",
                         "largest_steps": [{"variable": "out", "amount": 0.25, "unit": "mm"}]}}
    Fails: {"staging": {"id": "s1", "strength": "must",
                        "largest_steps": [{"variable": "out", "amount": 0.4, "unit": "mm"}]}}
    """
    for place, step, keys in _steps(chart, MM):
        facts = {"way": _WAYS[step.variable], "step": step.amount, "limit": chart.limit(keys[0])}
        yield told(place.pointer, place.owner, figures=keys, **facts)


@rule(
    "turning-step-above-limit",
    Severity.CAUTION,
    title="An aligner may turn, tip or torque teeth further than is usual.",
    says="Staging lets one aligner go {step:deg} of {variable} on {kinds:list}; usual at the most: {limits:deg}.",
    do="Lower the step for these teeth, or say that it is meant.",
    change="At the most {limits:deg} on {kinds:list} would change it.",
    figures=("step.rotation", "step.tip", "step.torque"),
)
def turning_step_above_limit(chart: Chart) -> Iterator[Told]:
    """No largest step of rotation, tip or torque is larger than texts give as usual for the teeth it is for.

    Round teeth slip in an aligner that is turned too far ahead of them, and roots follow slowly.

    Evidence: for premolars one simulation, in which 1.2 degrees was kind to the ligament and 3 were not; canines are
    taken as premolars. The others are custom. A step for all teeth is held to those ordered to move so, and where none
    is, to the largest of these numbers.

    Passes: {"staging": {"id": "s1", "strength": "must",
                         "largest_steps": [{"variable": "rotation", "amount": 2, "unit": "deg", "teeth": ["11"]}]}}
    Fails: {"staging": {"id": "s1", "strength": "must",
                        "largest_steps": [{"variable": "rotation", "amount": 2, "unit": "deg", "teeth": ["34"]}]}}
    """
    for place, step, keys in _steps(chart, DEG):
        kinds = [kind_of(key) for key in keys]
        facts = {"variable": step.variable, "step": step.amount, "kinds": kinds, "limits": [*map(chart.limit, keys)]}
        yield told(place.pointer, place.owner, figures=keys, **facts)


def _steps(chart: Chart, unit: str) -> Iterator[tuple[Place, LargestStep, tuple[str, ...]]]:
    for place in chart.of("staging"):
        if isinstance(place.part, LargestStep) and place.part.unit == unit:
            keys = beyond(chart, place.part)
            if keys:
                yield place, place.part, keys


@rule(
    "too-few-aligners",
    Severity.CAUTION,
    title="The movements ordered need more aligners than may be made.",
    says="{asked:clause}: in the steps stated or usual that takes {needed:aligners}, and no more than {most:aligners} "
    "may be made.",
    do="Allow more aligners, order less, or state the steps that are meant.",
    change="{needed:aligners} or more, or larger steps stated under `largest_steps`, would change it.",
    figures=("step",),
)
def too_few_aligners(chart: Chart) -> Iterator[Told]:
    """The largest number of aligners is enough for every ordered movement in usual steps, overcorrection included; and
    for all those together that must be done one before the other.

    With fewer the laboratory must choose between larger steps and less movement, and nobody told it which.

    Evidence: arithmetic on steps that are custom. Teeth aligned count by their measured displacement. Where the steps
    are stated the proof already holds each movement to them, and only sequences and overcorrection are added here.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "labial", "at_least": 2,
                            "unit": "mm"}],
             "staging": {"id": "s1", "strength": "must", "most_aligners": 8}}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "labial", "at_least": 2.5,
                           "unit": "mm"}],
            "staging": {"id": "s1", "strength": "must", "most_aligners": 8}}
    """
    staging = chart.rx.staging
    if staging is None or staging.most_aligners is None or staging.strength != "must":
        return
    longest = max(chains(chart), key=lambda chain: chain.aligners, default=Chain())
    if longest.aligners > staging.most_aligners:
        asked = [said(link.place.part) for link in longest.links]
        facts = {"asked": asked, "needed": longest.aligners, "most": staging.most_aligners, "figures": longest.keys}
        yield told("/staging", staging.id, *(link.place.owner for link in longest.links), **facts)


@rule(
    "wear-interval-short",
    Severity.CAUTION,
    title="Aligners are changed sooner than has been studied.",
    says="Each aligner is worn {days:days}; the shortest time compared in a trial is {limit:days}.",
    do="Lengthen the interval, or say that it is meant.",
    change="{limit:days} or more would change it.",
    figures=(_SHORTEST,),
)
def wear_interval_short(chart: Chart) -> Iterator[Told]:
    """No aligner is worn for fewer days than trials have compared.

    Teeth that have not followed fall further behind with every aligner.

    Evidence: one randomised trial of 80 patients compared 7, 10 and 14 days and found the linear errors alike; a review
    found four of six studies without a difference and two in favour of 14.

    Passes: {"staging": {"id": "s1", "strength": "must", "wear_interval_days": 7}}
    Fails: {"staging": {"id": "s1", "strength": "must", "wear_interval_days": 5}}
    """
    staging, days = _interval(chart)
    if staging and days and days < chart.limit(_SHORTEST):
        facts = {"days": days, "limit": chart.limit(_SHORTEST), "figures": (_SHORTEST,)}
        yield told("/staging/wear_interval_days", staging.id, **facts)


@rule(
    "wear-interval-long",
    Severity.NOTE,
    title="Aligners are worn longer than has been studied.",
    says="Each aligner is worn {days:days}; the longest time compared in a trial is {limit:days}, so it takes longer.",
    do="Nothing, if a slower course is meant.",
    change="{limit:days} or less would change it.",
    figures=(_LONGEST,),
)
def wear_interval_long(chart: Chart) -> Iterator[Told]:
    """No aligner is worn for more days than trials have compared.

    A longer interval lengthens treatment; nothing is known to be gained by it, though worn teeth or slow bone may ask
    for it.

    Evidence: the same trial and review as for short intervals; some movements at the back did better with 14 days.

    Passes: {"staging": {"id": "s1", "strength": "must", "wear_interval_days": 14}}
    Fails: {"staging": {"id": "s1", "strength": "must", "wear_interval_days": 21}}
    """
    staging, days = _interval(chart)
    if staging and days and days > chart.limit(_LONGEST):
        facts = {"days": days, "limit": chart.limit(_LONGEST), "figures": (_LONGEST,)}
        yield told("/staging/wear_interval_days", staging.id, **facts)


def _interval(chart: Chart) -> tuple[Staging | None, int | None]:
    staging = chart.rx.staging
    return staging, staging.wear_interval_days if staging else None


@rule(
    "root-movement-stages",
    Severity.NOTE,
    title="A large movement of roots is staged in full steps.",
    says="{asked:clause}: above {limit:deg} roots are given more aligners than the usual step of {usual:deg} asks, and "
    "staging allows {step:deg} on {teeth:teeth}.",
    do="Consider a smaller step of torque for these teeth.",
    change="A step of torque below {usual:deg} for {teeth:teeth} would change it.",
    figures=(_ROOT, "step.torque"),
)
def root_movement_stages(chart: Chart) -> Iterator[Told]:
    """Roots that are ordered to move far are given steps smaller than the usual one.

    Roots follow more slowly than crowns; in full steps the crown is carried along instead.

    Evidence: textbooks, without a study; about 5 degrees. Torque named by the crown is left alone, and so
    are steps that are not stated.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "palatal-root-torque",
                            "at_least": 8, "unit": "deg"}],
             "staging": {"id": "s1", "strength": "must",
                         "largest_steps": [{"variable": "torque", "amount": 0.5, "unit": "deg"}]}}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "palatal-root-torque",
                           "at_least": 8, "unit": "deg"}],
            "staging": {"id": "s1", "strength": "must",
                        "largest_steps": [{"variable": "torque", "amount": 1, "unit": "deg"}]}}
    """
    usual = chart.limit("step.torque")
    for place in chart.of("movements"):
        if "root" not in str(place.said("motion")) or (place.said("at_least") or 0) <= chart.limit(_ROOT):
            continue
        steps = {tooth: stated_step(chart, tooth, "torque") or 0 for tooth in place.said("teeth")}
        full = [tooth for tooth, step in steps.items() if step >= usual]
        if full:
            facts = {"teeth": full, "limit": chart.limit(_ROOT), "usual": usual, "step": max(steps.values())}
            yield told(place.pointer, place.owner, asked=said(place.part), figures=(_ROOT, "step.torque"), **facts)


RULES = (
    *(step_above_limit, turning_step_above_limit, too_few_aligners),
    *(wear_interval_short, wear_interval_long, root_movement_stages),
)
