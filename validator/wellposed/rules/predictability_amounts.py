"""Travel and reduction that published groups reached only in part: widening, movement back, intrusion, enamel.

Silent, as the rules of ``predictability``, where something makes up for what is not reached.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.model.means import EnamelReduction
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.aids import short_of
from wellposed.rules.chart import Chart
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.teeth import LOWER, UPPER, arch_of, is_incisor, is_molar

_WIDTH = ("achieved.transverse", "auxiliary.widening-per-side")
_DISTAL = ("achieved.molar-distal", "auxiliary.bodily", "caution.distal.lower-molars")
_INTRUDED, _LARGE = "achieved.intrusion-mm", "caution.intrusion-in-all.incisors"
_DONE = {UPPER: "achieved.reduction.upper", LOWER: "achieved.reduction.lower"}
_REMAINDER = "space.remainder"
_WHOLE = 100


@rule(
    "adult-widening-partly-reached",
    Severity.NOTE,
    title="Side teeth of an adult are to go outward, and nothing makes up for what is usually not reached.",
    says="{asked:clause}: of transverse movement that was planned, {reached:percent} was reached, in adults less the "
    "further back, and crowns tip more than planned.",
    do="Look whether an overcorrection, buccal root torque or an auxiliary is wanted.",
    change="Overcorrection, root torque or an auxiliary on {teeth:list}, or {limit:mm} a side, would change it.",
    figures=_WIDTH,
)
def adult_widening_partly_reached(chart: Chart) -> Iterator[Told]:
    """No canine, premolar or molar of a patient whose growth is complete is ordered outward by more than is easily
    reached, unless something makes up for the rest.

    The suture no longer gives way, so teeth tip within the bone that is there.

    Evidence: one review for the percentage; that it falls towards the molars is recalled from several cohorts.

    Passes: {"patient": {"reference": "P-1", "growth": "growing"},
             "movements": [{"id": "m1", "strength": "must", "teeth": ["16", "26"], "motion": "buccal",
                            "at_least": 2.5, "unit": "mm"}]}
    Fails: {"patient": {"reference": "P-1", "growth": "complete"},
            "movements": [{"id": "m1", "strength": "must", "teeth": ["16", "26"], "motion": "buccal",
                           "at_least": 2.5, "unit": "mm"}]}
    """
    reached, limit = (chart.limit(key) for key in _WIDTH)
    if chart.growing is False:
        for short in short_of(chart, "out", 1, _WIDTH[1], lambda tooth: _tips(chart, tooth)):
            yield short.told(*_WIDTH, reached=reached, limit=limit)


def _tips(chart: Chart, tooth: str) -> bool:
    """Whether a canine, premolar or molar may tip outward, no clause torquing its root that way."""
    return not is_incisor(tooth) and not chart.reach(tooth, "torque", -1)


@rule(
    "lower-molar-distal-partly-reached",
    Severity.NOTE,
    title="Lower molars are to go back, and nothing makes up for what is usually not reached.",
    says="{asked:clause}: of upper molars' movement back {reached:percent} was reached, and lower molars' less.",
    do="Look whether an overcorrection or an anchor is wanted.",
    change="An overcorrection or an auxiliary on {teeth:list}, or at most {limit:mm}, would change it.",
    figures=_DISTAL,
)
def lower_molar_distal_partly_reached(chart: Chart) -> Iterator[Told]:
    """No lower molar is ordered back by more than a little without anything that makes up for what is not reached.

    The bone behind lower molars is dense and ends soon. Amounts above the one in the norms from which a colleague asks
    are asked about elsewhere.

    Evidence: a review gives the figure for upper molars, and says without a number that lower ones go back less.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["36", "46"], "motion": "distal",
                            "at_least": 1, "unit": "mm"}]}
    Fails: {"goals": [{"id": "g1", "strength": "must", "leave": "35-36", "amount": 1.5, "unit": "mm"},
                      {"id": "g2", "strength": "must", "leave": "45-46", "amount": 1.5, "unit": "mm"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["36", "37", "46", "47"], "motion": "distal",
                           "at_least": 1.5, "unit": "mm"}]}
    """
    reached, limit, most = (chart.limit(key) for key in _DISTAL)
    for short in short_of(
        chart, "along", -1, _DISTAL[1], lambda tooth: is_molar(tooth) and arch_of(tooth) == LOWER, most
    ):
        yield short.told(*_DISTAL, reached=reached, limit=limit)


@rule(
    "incisor-intrusion-partly-reached",
    Severity.NOTE,
    title="More intrusion of incisors is ordered than aligners reached on average.",
    says="{asked:clause}: aligners intruded front teeth by {reached:mm} on average.",
    do="Look whether an overcorrection or another auxiliary is wanted.",
    change="An overcorrection, or a hold on {teeth:list}, or at most {reached:mm}, would change it.",
    figures=(_INTRUDED, _LARGE, "caution.intrusion"),
)
def incisor_intrusion_partly_reached(chart: Chart) -> Iterator[Told]:
    """No more intrusion of an incisor is ordered than groups with aligners reached, unless something makes up for it.

    What is not reached is missing in the overbite. Larger amounts are asked about elsewhere.

    Evidence: one review; how much its studies had planned is not always given.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "intrusion",
                            "at_least": 0.5, "unit": "mm"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["31", "41"], "motion": "intrusion",
                           "at_least": 1.2, "unit": "mm"}]}
    """
    for arch in (UPPER, LOWER):
        most = min(chart.limit(key) for key in (f"caution.intrusion.{arch}-incisors", _LARGE))
        for short in short_of(chart, "vertical", -1, _INTRUDED, _incisors_of(arch), most):
            yield short.told(_INTRUDED, reached=chart.limit(_INTRUDED))


def _incisors_of(arch: str) -> Callable[[str], bool]:
    return lambda tooth: is_incisor(tooth) and arch_of(tooth) == arch


@rule(
    "reduction-partly-done",
    Severity.NOTE,
    title="So much enamel reduction is ordered that what is usually left undone would be missed.",
    says="{asked:clause}: of reduction that was planned, {done:percent} was done on average, which leaves "
    "{short:mm} missing.",
    do="Have each contact measured when it is reduced, and the rest done before the teeth need it.",
    change="A shortfall below {limit:mm} would change it.",
    figures=(*_DONE.values(), _REMAINDER),
)
def reduction_partly_done(chart: Chart) -> Iterator[Told]:
    """No more enamel reduction is ordered in an arch than that the share usually left undone is a small remainder.

    What was not taken off is missing as room: teeth collide in the aligners, or the front goes forward.

    Evidence: one study of patients measured before and after; the spread was as large as the mean.

    Passes: {"allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["43-42", "42-41", "41-31", "31-32"],
                        "per_contact": 0.4, "at_least": 1.2, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["43-42", "42-41", "41-31", "31-32", "32-33"],
                       "per_contact": 0.5, "at_least": 2.2, "unit": "mm"}]}
    """
    limit = chart.limit(_REMAINDER)
    for place in chart.allowed("enamel-reduction"):
        arches = {arch_of(tooth) for contact in _contacts(chart, place) for tooth in teeth_of(contact)}
        ordered = place.said("at_least") or 0.0
        for key in (_DONE[arch] for arch in sorted(arches) if len(arches) == 1):
            short = ordered * (1 - chart.limit(key) / _WHOLE)
            if short > limit:
                facts = {"done": chart.limit(key), "short": short, "limit": limit, "asked": said(place.part)}
                yield told(place.pointer, place.owner, figures=(key, _REMAINDER), **facts)


def _contacts(chart: Chart, place: Place) -> list[str]:
    return chart.whole.reduced(place.part) if isinstance(place.part, EnamelReduction) else []


RULES = (
    *(adult_widening_partly_reached, lower_molar_distal_partly_reached, incisor_intrusion_partly_reached),
    reduction_partly_done,
)
