"""Up and down in front: how far incisors are intruded and extruded, and what that does to the overbite."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.model.clauses import Reach
from wellposed.rules._acts import Act, above, acts, anchored, is_done
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._front import LOWER_FRONT, OVERBITE, UPPER_FRONT
from wellposed.rules.aids import CARRYING, helped, stance
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import ARCHES, PERMANENT_TEETH

_FRONT = {"upper": UPPER_FRONT, "lower": LOWER_FRONT}
_BITE_OPENERS = ("bite-plane", "bite-block", "elastic")


@rule(
    "upper-intrusion-beyond-means",
    Severity.CAUTION,
    title="More intrusion of upper incisors is ordered or allowed than treated groups reached on average.",
    says="{asked:clause}: groups treated reached {limit:mm} on average at the most.",
    do="Say that it is meant and by what means, or lessen it.",
    change="With bone screws named under the allowances, or at {limit:mm} or less, this no longer applies.",
    figures=("caution.intrusion.upper-incisors", "practice.intrusion.upper-incisors"),
)
def upper_intrusion_beyond_means(chart: Chart) -> Iterator[Told]:
    """No intrusion of an upper incisor is ordered or allowed beyond the highest mean of a treated group.

    What is planned beyond it is seldom reached, and roots pay for the attempt.

    Evidence: one pooled review of fixed appliances, mean 1.46 mm; removable aligners reached 0.72 mm. Where bone screws
    are named, what they add is allowed for.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "intrusion",
                            "at_least": 1, "unit": "mm"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11", "21"], "motion": "intrusion",
                           "at_least": 2.5, "unit": "mm"}]}
    """
    yield from _beyond_means(chart, "upper")


@rule(
    "lower-intrusion-beyond-means",
    Severity.CAUTION,
    title="More intrusion of lower incisors is ordered or allowed than treated groups reached on average.",
    says="{asked:clause}: groups treated reached {limit:mm} on average at the most.",
    do="Say that it is meant and by what means, or lessen it.",
    change="With bone screws named under the allowances, or at {limit:mm} or less, this no longer applies.",
    figures=("caution.intrusion.lower-incisors", "practice.intrusion.lower-incisors"),
)
def lower_intrusion_beyond_means(chart: Chart) -> Iterator[Told]:
    """No intrusion of a lower incisor is ordered or allowed beyond the highest mean of a treated group.

    What is planned beyond it is seldom reached, and part of what is reached comes back.

    Evidence: one pooled review of fixed appliances, mean 1.90 mm. Adults with a segmented arch came to 2.6 mm and lost
    0.8 mm of it in five years. Removable aligners reached 0.72 mm. Where bone screws are named, the limit of practice
    is used.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "intrusion",
                            "at_least": 2, "unit": "mm"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "intrusion",
                           "at_least": 3, "unit": "mm"}]}
    """
    yield from _beyond_means(chart, "lower")


def _beyond_means(chart: Chart, arch: str) -> Iterator[Told]:
    key = _means(chart, arch)
    for act in acts(chart, "vertical", -1, _FRONT[arch]):
        if act.amount > chart.limit(key):
            yield act.told(limit=chart.limit(key), figures=(key,))


def _means(chart: Chart, arch: str) -> str:
    """The norm of the most intrusion of incisors that was reached; with bone screws that of practice."""
    return f"{'practice' if anchored(chart) else 'caution'}.intrusion.{arch}-incisors"


@rule(
    "incisor-intrusion-large",
    Severity.CAUTION,
    title="More intrusion of an arch's incisors is ordered or allowed than aligners alone usually give.",
    says="{asked:clause}: more than {limit:mm} is asked about; aligners reached {reached:mm} on average.",
    do="Say by what means it is to be reached, or what else opens the bite.",
    change="With bone screws named under the allowances, or at {limit:mm} or less, this no longer applies.",
    figures=("caution.intrusion-in-all.incisors", "achieved.intrusion-mm"),
)
def incisor_intrusion_large(chart: Chart) -> Iterator[Told]:
    """No intrusion of an arch's incisors is left to aligners alone beyond what is usual.

    An aligner holds intruding teeth badly; what is not reached is missing from the overbite.

    Evidence: 2 mm is common practice, the mean of 0.72 mm is from one systematic review. Where the amount is beyond
    what any treated group reached, that is said instead.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["42", "41", "31", "32"], "motion": "intrusion",
                            "at_least": 1.5, "unit": "mm"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["42", "41", "31", "32"], "motion": "intrusion",
                           "at_least": 2.5, "unit": "mm"}]}
    """
    key, mean = "caution.intrusion-in-all.incisors", "achieved.intrusion-mm"
    for arch in () if anchored(chart) else ARCHES:
        for act in acts(chart, "vertical", -1, _FRONT[arch]):
            if chart.limit(key) < act.amount <= chart.limit(_means(chart, arch)):
                yield act.told(limit=chart.limit(key), reached=chart.limit(mean), figures=(key, mean))


@rule(
    "overbite-change-large",
    Severity.CAUTION,
    title="The overbite is to change by more than aligners alone usually give.",
    says="{asked:clause}: {amount:mm} from {overbite:mm} today; by aligners alone {limit:mm} is the usual most.",
    do="Say by what means beside the aligners, or look at the goal again.",
    change="With a bite plane, elastics, bone screws or surgery stated, or a smaller change, this no longer applies.",
    figures=("caution.overbite-change",),
)
def overbite_change_large(chart: Chart) -> Iterator[Told]:
    """No change of the overbite is left to aligners alone beyond 3 to 4 mm.

    Intrusion, extrusion and tipping of incisors each give part of it, and each is reached in part only.

    Evidence: common practice; the least of the range is used. Where a change is expected besides, or anything that
    opens or closes the bite is stated beside the aligners, the rule is silent.

    Passes: {"findings": [{"id": "f1", "measure": "overbite", "value": 5, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "measure": "overbite", "at_most": 3, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "laboratory-choice", "variables": ["vertical"]}]}
    Fails: {"findings": [{"id": "f1", "measure": "overbite", "value": 7, "unit": "mm"}],
            "goals": [{"id": "g1", "strength": "must", "measure": "overbite", "at_most": 3, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "laboratory-choice", "variables": ["vertical"]}]}
    """
    key = "caution.overbite-change"
    for place in () if _bite_helped(chart) else chart.of("goals"):
        amount = _overbite_asked(chart, place.part) if isinstance(place.part, Reach) else 0.0
        if above(amount, chart.limit(key)):
            facts = {"asked": said(place.part), "amount": amount, "overbite": chart.value(OVERBITE)}
            yield told(
                place.pointer, place.owner, *chart.found(OVERBITE), **facts, limit=chart.limit(key), figures=(key,)
            )


def _overbite_asked(chart: Chart, goal: Reach) -> float:
    """By how much the overbite must change at the least, mm; 0 where that is not known."""
    today, scale = chart.value(OVERBITE), chart.mouth.scale(OVERBITE, goal.unit)
    if goal.measure != OVERBITE or goal.pair or today is None or scale is None:
        return 0.0
    more = 0.0 if goal.at_least is None else goal.at_least * scale - today
    less = 0.0 if goal.at_most is None else today - goal.at_most * scale
    return max(more, less)


def _bite_helped(chart: Chart) -> bool:
    """Whether something beside the aligners changes the bite, or a change is counted on."""
    built = any(place.said("part") in _BITE_OPENERS for place in chart.of("appliance"))
    used = any(chart.allowed("elastics", "auxiliary", "class-ii-elastics", "class-iii-elastics"))
    expected = any(place.said("measure") == OVERBITE for place in chart.of("expect"))
    return built or used or expected or is_done(chart, "surgery")


@rule(
    "extrusion-without-attachment",
    Severity.NOTE,
    title="Teeth are extruded without an attachment.",
    says="{asked:clause}: no attachment is foreseen on {bare:teeth}; of extrusion aligners reached {reached:percent}.",
    do="Say whether these teeth carry an attachment, or how else they are to be extruded.",
    change="An attachment ordered, allowed or left to the laboratory on {bare:teeth} would change this.",
    figures=("auxiliary.extrusion.any", "achieved.extrusion.incisors"),
)
def extrusion_without_attachment(chart: Chart) -> Iterator[Told]:
    """An attachment is foreseen, or left to the laboratory, on every tooth whose extrusion is ordered or allowed.

    Extrusion is the movement aligners reach least of; on a smooth crown they slip.

    Evidence: incisors were extruded by 30 percent of what was planned in one review; that any extrusion asks for an
    attachment is common practice. Of an order against which an attachment is refused another rule speaks. Buttons,
    elastics and screws count as a hold.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["12"], "motion": "extrusion",
                            "at_least": 1, "unit": "mm"}],
             "attachments": [{"id": "t1", "must": ["12"]}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["12"], "motion": "extrusion",
                           "at_least": 1, "unit": "mm"}],
            "attachments": [{"id": "t1", "must": ["13"]}]}
    """
    key, share = "auxiliary.extrusion.any", "achieved.extrusion.incisors"
    for act in acts(chart, "vertical", 1, PERMANENT_TEETH):
        bare = [tooth for tooth in act.teeth if _without_hold(chart, act, tooth)]
        if bare and act.amount > chart.limit(key):
            missing = tuple(f"attachment on {tooth}" for tooth in bare if not stance(chart, tooth).member)
            yield act.told(bare=bare, reached=chart.limit(share), missing=missing, figures=(key, share))


def _without_hold(chart: Chart, act: Act, tooth: str) -> bool:
    """Whether nothing is said that would hold a tooth; an order that meets a refusal is told elsewhere."""
    member = stance(chart, tooth).member
    refused = bool(member) and act.place.section == "movements"
    return member not in CARRYING and not refused and not helped(chart, tooth)


RULES = (
    upper_intrusion_beyond_means,
    lower_intrusion_beyond_means,
    incisor_intrusion_large,
    overbite_change_large,
    extrusion_without_attachment,
)
