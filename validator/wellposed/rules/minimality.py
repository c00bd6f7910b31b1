"""The least that will do: nothing to treat, instructions nothing calls for, means no plan needs."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.kinematics.means import allowance_opens
from wellposed.model.clauses import Reach
from wellposed.model.findings import Finding
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.chart import Chart
from wellposed.rules.usual import FIGURES, TEETH_FIGURES, figures_of, measured, of_teeth, unusual, usual
from wellposed.vocabulary.teeth import ARCHES

if TYPE_CHECKING:
    from wellposed.kinematics.judgement import Range

_NOISE = 1e-6
"""What the solver may leave of an amount of nought, mm or deg."""
_MEASURED_PROBLEMS = {
    "class-i": (),
    "deep-bite": ("overbite",),
    "open-bite-anterior": ("overbite",),
    "increased-overjet": ("overjet",),
    "reverse-overjet": ("overjet",),
    "deep-curve-of-spee": ("curve-of-spee",),
    "excess-gingival-display": ("gingival-display-on-smiling",),
    "midline-deviation": ("upper-midline", "lower-midline"),
    "crowding": ("upper-crowding", "lower-crowding"),
    "spacing": ("upper-spacing", "lower-spacing"),
}
"""Problems that are nothing but a measure out of range."""


@rule(
    "leave-as-it-is",
    Severity.NOTE,
    title="Nothing measured is out of range, and no goal is stated.",
    says="No goal is stated, and {measures:measure} are all within the usual range: to leave the teeth as they are is "
    "one option to discuss.",
    do="Discuss leaving the teeth as they are, or state what is to be better.",
    change="A goal, an ordered movement, or a measurement or problem that calls for treatment would change it.",
    figures=(*FIGURES, *TEETH_FIGURES),
)
def leave_as_it_is(chart: Chart) -> Iterator[Told]:
    """Something is out of its usual range, or a goal, a movement or a problem is stated.

    Where nothing is, treatment can only cost. A patient may still wish for it, and then should say for what.

    Evidence: the ranges are one school's where schools differ. The rule speaks only if each arch treated was measured
    for crowding or spacing, and the overbite or the overjet; a problem that no measure can show keeps it silent. Of
    goals that hold already `goals-already-met` says the same.

    Passes: {"findings": [{"id": "f1", "measure": "upper-crowding", "value": 0, "unit": "mm"},
                          {"id": "f2", "measure": "lower-crowding", "value": 3, "unit": "mm"},
                          {"id": "f3", "measure": "overbite", "value": 3, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-crowding", "value": 0, "unit": "mm"},
                         {"id": "f2", "measure": "lower-crowding", "value": 0, "unit": "mm"},
                         {"id": "f3", "measure": "overbite", "value": 3, "unit": "mm"}]}
    """
    if not _looked_at(chart) or any(unusual(chart)) or any(_beside_measures(chart)) or _asked(chart):
        return
    measures = [*measured(chart), *(name for name in ("rotation", "displacement") if chart.found(name))]
    yield told("", *chart.found(*measures), measures=measures, figures=figures_of(*measures))


def _looked_at(chart: Chart) -> bool:
    """Whether enough was measured to say that nothing is wrong."""
    treat = chart.rx.treat
    arches = [arch for arch in ARCHES if treat is None or treat.arches in (arch, "both")]
    bite = chart.value("overbite") is not None or chart.value("overjet") is not None
    return bite and all(chart.mouth.room_stated(arch) for arch in arches)


def _asked(chart: Chart) -> bool:
    """Whether a goal is stated, a tooth goes, or a movement gives no reason or one that has no usual range."""
    if chart.rx.goals or chart.mouth.extracted:
        return True
    return any(not place.said("because") or _beyond_ranges(chart, place) for place in chart.of("movements"))


def _beyond_ranges(chart: Chart, place: Place) -> bool:
    named = (chart.place(name) for name in place.said("because") or ())
    findings = (at.said("measure") or at.said("tooth_measure") for at in named if at and at.section == "findings")
    return any(usual(chart, measure) is None and not of_teeth(measure) for measure in findings)


def _beside_measures(chart: Chart) -> Iterator[Place]:
    """Problems that the measures do not show, or show to be there."""
    for place in chart.of("problems"):
        shown = _MEASURED_PROBLEMS.get(str(place.said("problem")))
        if shown is None or (shown and not any(usual(chart, measure) for measure in shown)):
            yield place


@rule(
    "movement-nothing-needs",
    Severity.NOTE,
    title="An instruction rests only on measurements that lie in their usual range.",
    says="{asked:clause} rests on {measures:measure} alone, within the usual range.",
    do="Name the problem or goal it serves, or look whether it is needed.",
    change="A problem or another measurement under `because`, or a goal on {measures:measure}, would change it.",
    figures=FIGURES,
)
def movement_nothing_needs(chart: Chart) -> Iterator[Told]:
    """No movement or allowance rests on nothing but measurements in their usual range, on which there is no goal.

    What answers no problem and serves no goal can be left out.

    Evidence: the ranges are one school's where schools differ. An instruction that gives no reason is told by
    `answers-nothing`; one that rests on a doubted problem is put under it.

    Passes: {"findings": [{"id": "f1", "measure": "overbite", "value": 5, "unit": "mm"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "intrusion",
                            "at_least": 1, "unit": "mm", "because": ["f1"]}]}
    Fails: {"findings": [{"id": "f1", "measure": "overbite", "value": 3, "unit": "mm"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "intrusion",
                           "at_least": 1, "unit": "mm", "because": ["f1"]}]}
    """
    wanted = {goal.measure for goal in chart.rx.goals or () if isinstance(goal, Reach)}
    for place in chart.of("movements", "allow"):
        measures = _reasons(chart, place)
        if measures and all(measure not in wanted and usual(chart, measure) for measure in measures):
            facts = {"asked": said(place.part), "measures": measures, "figures": figures_of(*measures)}
            yield told(place.pointer, place.owner, *place.said("because"), **facts)


def _reasons(chart: Chart, place: Place) -> list[str]:
    """The measures an instruction rests on, if it rests on measures of the mouth alone."""
    named = [chart.place(name) for name in place.said("because") or ()]
    measures = [at.part.measure for at in named if at and isinstance(at.part, Finding)]
    return list(dict.fromkeys(str(measure) for measure in measures)) if len(measures) == len(named) else []


@rule(
    "allowance-without-use",
    Severity.NOTE,
    title="No plan can make use of an allowance.",
    says="{asked:clause}: no plan that meets the other clauses can use any of it.",
    do="Leave it out, or look which clause stands in its way.",
    change="Room for it in the clauses that keep, hold or exclude would change it.",
)
def allowance_without_use(chart: Chart) -> Iterator[Told]:
    """Of every allowance some plan can use something.

    An allowance that nothing can use is most often left over, or another clause stands in its way unnoticed.

    Evidence: computed from the clauses, if the order as a whole can be met. Allowances of nought, and those that open
    several movements at once, are not looked at.

    Passes: {"findings": [{"id": "f1", "measure": "overjet", "value": 5, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "measure": "overjet", "at_most": 4, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "incisor-retraction", "arch": "upper", "up_to": 2, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "overjet", "value": 3, "unit": "mm"}],
            "keep": [{"id": "k1", "strength": "must", "hold": ["12", "11", "21", "22"]}],
            "allow": [{"id": "a1", "use": "incisor-retraction", "arch": "upper", "up_to": 2, "unit": "mm"}]}
    """
    for place, used in _uses(chart):
        if used.most <= _NOISE and _amount(place) > 0:
            yield told(place.pointer, place.owner, asked=said(place.part))


@rule(
    "allowance-not-needed",
    Severity.NOTE,
    title="Every goal holds already, and no plan needs these allowances.",
    says="No goal needs any of: {asked:clause}.",
    do="Leave them out, or state the goal they serve.",
    change="A goal that is not yet met would change it.",
)
def allowance_not_needed(chart: Chart) -> Iterator[Told]:
    """No means are allowed that every plan could do without, where every goal holds already.

    What is allowed may be used. Enamel that is taken without need does not come back.

    Evidence: computed from the clauses. Where a goal is open, what a plan must use at the least is told with the
    verdict.

    Passes: {"findings": [{"id": "f1", "measure": "overbite", "value": 4.5, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "measure": "overbite", "at_most": 4, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "intrusion", "teeth": ["42", "41", "31", "32"], "up_to": 1, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "overbite", "value": 3, "unit": "mm"}],
            "goals": [{"id": "g1", "strength": "must", "measure": "overbite", "at_most": 4, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "intrusion", "teeth": ["42", "41", "31", "32"], "up_to": 1, "unit": "mm"}]}
    """
    if not chart.rx.allow or not chart.judgement.already_met:
        return
    spare = [place for place, used in _uses(chart) if used.least <= _NOISE < used.most]
    if spare:
        asked = [said(place.part) for place in spare]
        yield told("/allow", *(place.owner for place in spare), asked=asked)


def _uses(chart: Chart) -> Iterator[tuple[Place, Range]]:
    """Each allowance of which it is known what a plan uses of it at the least and at the most."""
    if not chart.rx.allow:
        return
    used = {one.clause_id: one for one in chart.judgement.forced if one.what == "use"}
    for place in chart.of("allow"):
        if place.owner in used and _one_way(chart, place):
            yield place, used[place.owner]


def _one_way(chart: Chart, place: Place) -> bool:
    """Whether its mean use tells what each tooth uses: one tooth, or several that cannot go the other way."""
    if place.said("use") == "enamel-reduction":
        return True
    widths = place.said("use") in ("widening", "narrowing")
    _, opened = allowance_opens(chart.mouth, place.part)
    own = {o.at for o in opened if not o.soft and (o.at.variable == "out" if widths else o.rate == 1)}
    return len(own) == 1 or not any(chart.reach(at.tooth, at.variable, -at.sign) for at in own)


def _amount(place: Place) -> float:
    stated = (place.said(member) for member in ("up_to", "per_contact", "in_all"))
    return min((amount for amount in stated if amount is not None), default=1.0)


RULES = (leave_as_it_is, movement_nothing_needs, allowance_without_use, allowance_not_needed)
