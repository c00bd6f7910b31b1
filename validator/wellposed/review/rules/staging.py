"""How the plan gets there: steps, number of aligners, there and back, days of wear."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil
from typing import NamedTuple

from wellposed.findings import Severity
from wellposed.review.held import Facts, Held, grouped
from wellposed.review.travel import JAWS, Leg, Trip, largest, motion_of, round_trip
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._stated import RELEVANT_DEG, RELEVANT_MM
from wellposed.rules.steps import stated_step, usual_step
from wellposed.vocabulary.motions import VARIABLE_UNITS, Motion, Variable
from wellposed.vocabulary.teeth import arch_of
from wellposed.vocabulary.units import MM

_STEPS = ("step.linear", "step.vertical", "step.rotation", "step.tip", "step.torque")
_SHORTEST = "step.wear-interval.least"
_NOISE = 1e-9


# steps and aligners


class _Step(NamedTuple):
    tooth: str
    variable: Variable
    leg: Leg


@rule(
    "aligner-step-beyond-usual",
    Severity.CAUTION,
    title="An aligner moves teeth further than is usual.",
    says="{teeth:teeth}: up to {step:{unit}} an aligner ({motion:words}), in {tooth} between aligners {first} and"
    " {last}; {limit:{unit}} is usual at the most.",
    do="Ask for these movements to be spread over more aligners, or accept the larger step.",
    change="A step of {limit:{unit}} or less would change it.",
    figures=_STEPS,
    sources=("large-step-study",),
)
def aligner_step_beyond_usual(held: Held) -> Iterator[Told]:
    """No step from one aligner of the path to the next is larger than texts give as usual for the tooth and the
    movement. A path told for some of the aligners gives the average between them; aligner 0 is the start.

    An aligner that is too far from the teeth does not seat, and the teeth fall behind the plan.

    Evidence: steps are custom; for rotation of premolars one simulation. In one study steps of 0.5 mm gave about 55 %
    of what was planned. Where the prescription states a largest step, its clause is what the setup is held to.

    Passes: {"movements": [{"variable": "out", "unit": "mm", "values": {"11": 1}}],
             "aligners": {"upper": 4},
             "stages": [{"aligner": 2, "arch": "upper",
                         "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0.5}}]}]}
    Fails: {"movements": [{"variable": "out", "unit": "mm", "values": {"11": 1}}],
            "aligners": {"upper": 4},
            "stages": [{"aligner": 1, "arch": "upper",
                        "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0.4}}]}]}
    """
    for key, steps in grouped(_large_steps(held)).items():
        worst = max(steps, key=lambda step: step.leg.each)
        leg, unit = worst.leg, VARIABLE_UNITS[worst.variable]
        facts: Facts = {"tooth": worst.tooth, "step": leg.each, "unit": unit, "limit": held.limit(key)}
        facts |= {"motion": _motions(steps), "first": leg.first, "last": leg.last}
        teeth = list(dict.fromkeys(step.tooth for step in steps))
        pointer = held.on_path(worst.tooth, worst.variable, leg.last)
        yield told(pointer, teeth=teeth, figures=(key,), **facts)


def _large_steps(held: Held) -> Iterator[tuple[str, _Step]]:
    for (tooth, variable), way in held.ways.items():
        leg, key = largest(way), usual_step(tooth, variable)
        if above(leg.each, held.limit(key)) and stated_step(held.chart, tooth, variable) is None:
            yield key, _Step(tooth, variable, leg)


def _motions(steps: list[_Step]) -> list[Motion]:
    return list(dict.fromkeys(motion_of(one.tooth, one.variable, one.leg.change) for one in steps))


class _Need(NamedTuple):
    tooth: str
    variable: Variable
    amount: float
    key: str
    aligners: int


@rule(
    "too-few-aligners-planned",
    Severity.CAUTION,
    title="The plan has fewer aligners than its movements take in usual steps.",
    says="The {arch} arch gets {planned:aligners}; in the usual steps of {limit:{unit}} at the most {tooth} takes"
    " {needed} for {amount:{unit}} ({motion:words}). Too few for: {teeth:teeth}.",
    do="Ask for more aligners, or for the path, to see how large the steps are.",
    change="{needed:aligners} or more would change it.",
    figures=_STEPS,
)
def too_few_aligners_planned(held: Held) -> Iterator[Told]:
    """An arch gets enough aligners for each movement planned in it, in usual steps evenly spread.

    With fewer, some aligner moves a tooth further than is usual, and which is not told.

    Evidence: arithmetic on steps that are custom; even steps are the kindest case. Teeth whose path is told are looked
    at step by step, and where the prescription states a largest step its clause is what counts.

    Passes: {"movements": [{"variable": "out", "unit": "mm", "values": {"11": 2}}], "aligners": {"upper": 8}}
    Fails: {"movements": [{"variable": "out", "unit": "mm", "values": {"11": 2}}], "aligners": {"upper": 7}}
    """
    for arch in JAWS:
        planned = held.plan.aligners(arch)
        short = [] if planned is None else [one for one in _needs(held, arch) if one.aligners > planned]
        if short:
            worst = max(short, key=lambda one: one.aligners)
            facts: Facts = {
                "amount": abs(worst.amount),
                "motion": motion_of(worst.tooth, worst.variable, worst.amount),
                "needed": worst.aligners,
            }
            facts |= {"unit": VARIABLE_UNITS[worst.variable], "limit": held.limit(worst.key), "planned": planned}
            facts |= {"tooth": worst.tooth, "arch": arch, "teeth": list(dict.fromkeys(one.tooth for one in short))}
            yield told(f"/aligners/{arch}", figures=(worst.key,), **facts)


def _needs(held: Held, arch: str) -> Iterator[_Need]:
    for (tooth, variable), amount in held.moved.items():
        on_path = (tooth, variable) in held.ways
        if arch_of(tooth) == arch and not on_path and stated_step(held.chart, tooth, variable) is None:
            key = usual_step(tooth, variable)
            yield _Need(tooth, variable, amount, key, ceil(abs(amount) / held.limit(key) - _NOISE))


# there and back


@rule(
    "round-trip-planned",
    Severity.CAUTION,
    title="Teeth go there and back.",
    says="{teeth:teeth}: there and back, {tooth} by {out:{unit}} ({motion:words}) until aligner {turned} and"
    " {back:{unit}} back until aligner {ended}.",
    do="Ask for the way from where these teeth stand to where they are to stand, once; or accept it as meant.",
    change="A way there and back of {limit:{unit}} or less would change it.",
    figures=(RELEVANT_MM, RELEVANT_DEG),
)
def round_trip_planned(held: Held) -> Iterator[Told]:
    """No tooth goes out and comes back along its path by more than what counts as an error: proclined then drawn back,
    moved away from its neighbour and back to it.

    It takes longer, and the root travels further, for nothing; total travel of the apex is a known risk of resorption.

    Evidence: textbooks agree; no figure was found from which it harms. What is small is taken from a trial's convention
    of a relevant error. An overcorrection that is taken back, or room made to turn a tooth in, can be meant.

    Passes: {"movements": [{"variable": "out", "unit": "mm", "values": {"11": 1}}],
             "stages": [{"aligner": 6, "arch": "upper",
                         "movements": [{"variable": "out", "unit": "mm", "values": {"11": 1.2}}]},
                        {"aligner": 8, "arch": "upper",
                         "movements": [{"variable": "out", "unit": "mm", "values": {"11": 1}}]}]}
    Fails: {"movements": [{"variable": "out", "unit": "mm", "values": {"11": 0.5}}],
            "stages": [{"aligner": 6, "arch": "upper",
                        "movements": [{"variable": "out", "unit": "mm", "values": {"11": 1.5}}]},
                       {"aligner": 12, "arch": "upper",
                        "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0.5}}]}]}
    """
    for (_, motion), trips in grouped(_trips(held)).items():
        tooth, variable, trip = max(trips, key=lambda one: one[2].amount)
        unit = VARIABLE_UNITS[variable]
        key = RELEVANT_MM if unit == MM else RELEVANT_DEG
        facts: Facts = {
            "motion": motion,
            "out": trip.out,
            "turned": trip.turned,
            "back": trip.back,
            "ended": trip.ended,
        }
        facts |= {"teeth": [one for one, *_ in trips], "tooth": tooth, "unit": unit, "limit": held.limit(key)}
        yield told(held.on_path(tooth, variable, trip.turned), figures=(key,), **facts)


def _trips(held: Held) -> Iterator[tuple[tuple[str, str], tuple[str, Variable, Trip]]]:
    """By arch and motion, the teeth that go there and back."""
    for (tooth, variable), way in held.ways.items():
        trip = round_trip(way)
        key = RELEVANT_MM if VARIABLE_UNITS[variable] == MM else RELEVANT_DEG
        if trip and above(trip.amount, held.limit(key)):
            yield (arch_of(tooth), motion_of(tooth, variable, trip.sign)), (tooth, variable, trip)


# wear


@rule(
    "wear-planned-short",
    Severity.CAUTION,
    title="The plan changes aligners sooner than has been studied.",
    says="Each aligner is to be worn {days:days}; the shortest time compared in a trial is {limit:days}.",
    do="Ask for a longer interval, or accept it as meant.",
    change="{limit:days} or more would change it.",
    figures=(_SHORTEST,),
)
def wear_planned_short(held: Held) -> Iterator[Told]:
    """No aligner is planned for fewer days than trials have compared, where the prescription leaves the interval open.

    Teeth that have not followed fall further behind with every aligner.

    Evidence: one randomised trial of 80 patients compared 7, 10 and 14 days and found the linear errors alike.

    Passes: {"wear_interval_days": 7}
    Fails: {"wear_interval_days": 5}
    """
    days, asked = held.setup.wear_interval_days, held.chart.rx.staging
    left_open = asked is None or asked.wear_interval_days is None
    if days is not None and left_open and days < held.limit(_SHORTEST):
        yield told("/wear_interval_days", days=days, limit=held.limit(_SHORTEST), figures=(_SHORTEST,))


RULES = (aligner_step_beyond_usual, too_few_aligners_planned, round_trip_planned, wear_planned_short)
