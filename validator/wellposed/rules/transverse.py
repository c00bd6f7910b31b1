"""From side to side: how far arches are widened, and whether the roots come along."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.model.clauses import KeepMotion, KeepVariable
from wellposed.rules._acts import above, is_done
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._widths import CANINES, Width, advice, by_clause, most, width_measure, widths
from wellposed.rules.chart import Chart
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import LOWER, UPPER

_WIDENING, _PRACTICE = "caution.widening", "practice.widening"
_CANINE_ADVICE, _CANINE_MOST = f"{_WIDENING}.lower-canines", f"{_PRACTICE}.lower-canines"
_PER_SIDE = "auxiliary.widening-per-side"


@rule(
    "widening-beyond-advice",
    Severity.CAUTION,
    title="An arch is widened by more than is advised.",
    says="{asked:clause}: {amount:mm} between {teeth:teeth}; advice for these teeth ends at {limits:mm}.",
    do="Say that so much is meant, or lessen it.",
    change="At {limits:mm} or less this no longer applies.",
    figures=(
        f"{_WIDENING}.upper-canines-premolars",
        f"{_WIDENING}.upper-molars",
        f"{_WIDENING}.lower-premolars-molars",
    ),
)
def widening_beyond_advice(chart: Chart) -> Iterator[Told]:
    """No pair of teeth is moved apart by more than is advised for its place, lower canines left out.

    Wider means tipped: crowns move out, roots stay, cusps hang down, and part of the width is lost again.

    Evidence: advice of textbooks and common practice, 2 to 3 mm an arch and 4 at upper molars; of transverse goals
    45 percent were reached in one review. Lower canines have a rule of their own, and so has more than ordinary
    practice.

    Passes: {"allow": [{"id": "a1", "use": "widening", "arch": "upper", "teeth": ["14", "15", "24", "25"], "up_to": 2,
                        "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "widening", "arch": "upper", "teeth": ["14", "15", "24", "25"], "up_to": 4,
                       "unit": "mm"}]}
    """
    for place, changes in by_clause(one for one in widths(chart) if one.sign > 0 and not _lower_canines(one)):
        ordinary = [one for one in changes if not above(one.amount, chart.limit(most(one)))]
        beyond = [one for one in ordinary if above(one.amount, chart.limit(advice(one)))]
        if beyond:
            yield _told(chart, place, beyond, tuple(dict.fromkeys(map(advice, beyond))))


@rule(
    "skeletal-widening",
    Severity.ASK,
    title="An arch is widened by more than teeth alone are moved.",
    says="{asked:clause}: {amount:mm} between {teeth:teeth}; by teeth alone {limits:mm} is the most.",
    do="Confirm the cause of the narrowness, in the teeth or in the jaw, and the means.",
    change="With an expansion screw allowed or surgery stated, or at {limits:mm} or less, this no longer applies.",
    figures=(f"{_PRACTICE}.upper", f"{_PRACTICE}.lower-premolars-molars"),
)
def skeletal_widening(chart: Chart) -> Iterator[Told]:
    """No pair of teeth but the lower canines is moved apart beyond what teeth alone are moved without naming a means.

    So narrow an arch is mostly a narrow jaw: teeth tipped over its edge lose bone, and the width with it.

    Evidence: aligner trials planned 5 mm at the most; textbooks send more than 5 to 6 mm to sutural or surgical
    widening. Where such a means is stated, the rule is silent.

    Passes: {"allow": [{"id": "a1", "use": "widening", "arch": "upper", "teeth": ["14", "15", "24", "25"], "up_to": 5,
                        "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "widening", "arch": "upper", "teeth": ["14", "15", "24", "25"], "up_to": 6,
                       "unit": "mm"}]}
    """
    screw = any(place.said("auxiliary") == "expansion-screw" for place in chart.allowed("auxiliary"))
    if screw or is_done(chart, "surgery"):
        return
    for place, changes in by_clause(one for one in widths(chart) if one.sign > 0 and not _lower_canines(one)):
        beyond = [one for one in changes if above(one.amount, chart.limit(most(one)))]
        if beyond:
            yield _told(chart, place, beyond, tuple(dict.fromkeys(map(most, beyond))))


@rule(
    "lower-inter-canine-changed",
    Severity.CAUTION,
    title="The width between the lower canines is changed by more than is advised.",
    says="{asked:clause}: {amount:mm} between {teeth:teeth}; more than {limits:mm} is asked about, as it comes back.",
    do="Say that it is meant and how it is held, or leave the canines where they are.",
    change="Without the canines among its teeth, or at {limits:mm} or less, this no longer applies.",
    figures=(_CANINE_ADVICE,),
)
def lower_inter_canine_changed(chart: Chart) -> Iterator[Told]:
    """The width between the lower canines changes by no more than is advised, wider or narrower.

    It is the least stable of all widths: what was gained is lost after retention, and the incisors crowd again.

    Evidence: pooled from memory, 0.8 to 2.0 mm gained and 1.2 to 1.9 mm lost over 26 studies; of relapsed cases 23.9
    percent had lost it there. An allowance for the whole arch counts, as it includes the canines.

    Passes: {"allow": [{"id": "a1", "use": "widening", "arch": "lower", "up_to": 1, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "widening", "arch": "lower", "up_to": 1.5, "unit": "mm"}]}
    """
    for one in filter(_lower_canines, widths(chart)):
        if above(one.amount, chart.limit(_CANINE_ADVICE)) and not above(one.amount, chart.limit(_CANINE_MOST)):
            yield _told(chart, one.place, [one], (_CANINE_ADVICE,))


@rule(
    "lower-inter-canine-changed-far",
    Severity.ASK,
    title="The width between the lower canines is changed by more than ordinary practice.",
    says="{asked:clause}: {amount:mm} between {teeth:teeth}; {limits:mm} is the most in practice, and it comes back.",
    do="Say that it is meant and how it is held, or leave the canines where they are.",
    change="Without the canines among its teeth, or at {limits:mm} or less, this no longer applies.",
    figures=(_CANINE_MOST,),
)
def lower_inter_canine_changed_far(chart: Chart) -> Iterator[Told]:
    """The width between the lower canines changes by no more than ordinary practice allows, wider or narrower.

    Beyond it no study found that the width was kept without retention for life.

    Evidence: reviews of stability, from memory: keep it, 1 mm, at most 2.

    Passes: {"allow": [{"id": "a1", "use": "widening", "arch": "lower", "up_to": 1, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "widening", "arch": "lower", "up_to": 3, "unit": "mm"}]}
    """
    for one in filter(_lower_canines, widths(chart)):
        if above(one.amount, chart.limit(_CANINE_MOST)):
            yield _told(chart, one.place, [one], (_CANINE_MOST,))


@rule(
    "widening-without-root-control",
    Severity.CAUTION,
    title="Upper back teeth are moved buccally beyond what tipping allows, and no root control is ordered.",
    says="{asked:clause}: {amount:mm} a side at {teeth:teeth}; above {limits:mm} crowns tip unless roots are torqued.",
    do="Say what the roots are to do: buccal root torque, the torque kept, or tipping accepted.",
    change="Buccal root torque or a keep of the torque of these teeth, or less on each side, would change this.",
    figures=(_PER_SIDE,),
)
def widening_without_root_control(chart: Chart) -> Iterator[Told]:
    """Where upper premolars or molars move buccally by more than tipping allows, something is said of their roots.

    About its centre of resistance a molar tips 4.5 degrees for each mm: the palatal cusps come down and meet early, the
    roots go against the cortical plate. An aligner lets crowns tip more than planned.

    Evidence: the angle is computed; from 2 to 3 mm a side texts ask for root control. Where nothing is said of it the
    clauses mean that no tooth tips, which aligners alone do not reach.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["16", "17"], "motion": "buccal",
                            "at_least": 1.5, "unit": "mm"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["16", "17"], "motion": "buccal",
                           "at_least": 2.5, "unit": "mm"}]}
    """
    for place, changes in by_clause(one for one in widths(chart) if one.sign > 0 and _upper_back(one)):
        far = [one for one in changes if above(one.each, chart.limit(_PER_SIDE))]
        teeth = [tooth for one in far for tooth in one.teeth if not _root_said(chart, tooth)]
        if teeth:
            amount, limits = max(one.each for one in far), [chart.limit(_PER_SIDE)]
            facts = {"asked": said(place.part), "teeth": teeth, "amount": amount, "limits": limits}
            yield told(place.pointer, place.owner, **facts, figures=(_PER_SIDE,))


def _told(chart: Chart, place: Place, beyond: list[Width], keys: tuple[str, ...]) -> Told:
    """One finding of a clause: the teeth of every pair it moves too far, and the limits of these."""
    found = chart.found(*(width_measure(one.arch, one.number) for one in beyond))
    facts: dict[str, Any] = {"teeth": [tooth for one in beyond for tooth in one.teeth]}
    facts |= {"amount": max(one.amount for one in beyond), "limits": [chart.limit(key) for key in keys]}
    return told(place.pointer, place.owner, *found, asked=said(place.part), figures=keys, **facts)


def _lower_canines(one: Width) -> bool:
    return one.arch == LOWER and one.number == CANINES


def _upper_back(one: Width) -> bool:
    return one.arch == UPPER and one.number != CANINES


def _root_said(chart: Chart, tooth: str) -> bool:
    """Whether buccal root torque of a tooth is opened, or a keep says what its torque may do."""
    kept = (place.part for place in chart.of("keep"))
    of_torque = (
        part
        for part in kept
        if (isinstance(part, KeepVariable) and part.variable == "torque")
        or (isinstance(part, KeepMotion) and MOTIONS[part.motion].variable == "torque")
    )
    return chart.reach(tooth, "torque", -1) > 0 or any(tooth in part.teeth for part in of_torque)


RULES = (
    widening_beyond_advice,
    skeletal_widening,
    lower_inter_canine_changed,
    lower_inter_canine_changed_far,
    widening_without_root_control,
)
