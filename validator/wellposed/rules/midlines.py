"""Midlines: far shifts without a side, and shifts that do not add up."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import inf

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.rules._bands import band
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.chart import Chart
from wellposed.vocabulary.contacts import normal, teeth_of
from wellposed.vocabulary.teeth import ARCHES, arch_of, is_incisor, is_molar, is_primary, mirrored

MIDLINE = "caution.midline"
RELEVANT = "achieved.relevant-error.mm"
_INCISORS, _CENTS = 8, 2


@rule(
    "midline-without-asymmetric-means",
    Severity.CAUTION,
    title="A midline is to move far, and all that is ordered and allowed is alike on both sides.",
    says="{asked:clause}: that is {shift:mm} from {present:mm} today, and nothing names one side more than the other;"
    " beyond {limit:mm} that is asked about.",
    do="Say on which side room is made or teeth go back, or let the midline stay.",
    change="A means on one side, a space on one side, or a shift of {limit:mm} or less, settles it.",
    figures=(MIDLINE,),
)
def midline_without_asymmetric_means(chart: Chart) -> Iterator[Told]:
    """No midline is moved by more than 2 mm without means that differ by side: extraction, reduction, space, movement
    or elastics.

    The incisors can only go where there is room on one side; room made alike on both leaves it to chance.

    Evidence: the amount is common practice. That a shift is possible by the arithmetic is weighed elsewhere.

    Passes: {"findings": [{"id": "f1", "measure": "upper-midline", "value": 2, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "measure": "upper-midline", "at_least": 0, "at_most": 0,
                        "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-midline", "value": 3, "unit": "mm"}],
            "goals": [{"id": "g1", "strength": "must", "measure": "upper-midline", "at_least": -0.5, "at_most": 0.5,
                       "unit": "mm"}]}
    """
    for place in chart.of("goals"):
        measure = str(place.said("measure") or "")
        present = chart.value(measure) if measure.endswith("-midline") else None
        shift = _shift(place, present or 0.0)
        if (
            present is not None
            and shift > chart.limit(MIDLINE)
            and not _is_lopsided(chart, measure.removesuffix("-midline"))
        ):
            facts = {"shift": shift, "present": present, "limit": chart.limit(MIDLINE), "figures": (MIDLINE,)}
            yield told(place.pointer, *chart.found(measure), place.owner, asked=said(place.part), **facts)


@rule(
    "midline-halves-do-not-add-up",
    Severity.ASK,
    title="The upper and the lower midline are to end apart.",
    says="{asked:clause}: the two end at least {apart:mm} from each other.",
    do="Look at the sides of both shifts, and say where the midlines are to meet.",
    change="Ends within {limit:mm} of each other settle it.",
    figures=(RELEVANT,),
)
def midline_halves_do_not_add_up(chart: Chart) -> Iterator[Told]:
    """Goals on both midlines let them end together, where all eight incisors stand.

    Two half-statements that do not add up to the difference measured are most often a side or a sign gone wrong.

    Evidence: arithmetic; half a millimetre is let pass, the usual limit of a relevant error.

    Passes: {"goals": [{"id": "g1", "strength": "must", "measure": "upper-midline", "at_least": -0.5, "at_most": 0.5,
                        "unit": "mm"},
                       {"id": "g2", "strength": "must", "measure": "lower-midline", "at_least": 0, "at_most": 1,
                        "unit": "mm"}]}
    Fails: {"goals": [{"id": "g1", "strength": "must", "measure": "upper-midline", "at_least": 0, "at_most": 0.5,
                       "unit": "mm"},
                      {"id": "g2", "strength": "must", "measure": "lower-midline", "at_least": 2, "at_most": 2.5,
                       "unit": "mm"}]}
    """
    upper, lower = (band(chart, f"{arch}-midline", kept=False) for arch in ARCHES)
    apart = round(max(upper.low - lower.high, lower.low - upper.high), _CENTS)
    if upper.places and lower.places and apart > chart.limit(RELEVANT) and _all_incisors(chart):
        places = (*upper.places, *lower.places)
        asked = [said(place.part) for place in places]
        facts = {"apart": apart, "limit": chart.limit(RELEVANT), "figures": (RELEVANT,)}
        yield told(places[0].pointer, *(place.owner for place in places), asked=asked, **facts)


def _shift(place: Place, present: float) -> float:
    """The least a goal moves a measure by."""
    least, most = place.said("at_least"), place.said("at_most")
    low, high = (-inf if least is None else least), (inf if most is None else most)
    return round(max(0.0, low - present, present - high), _CENTS)


def _all_incisors(chart: Chart) -> bool:
    standing = (tooth for arch in ARCHES for tooth in chart.mouth.rows[arch].teeth)
    return sum(is_incisor(tooth) and not is_primary(tooth) for tooth in standing) == _INCISORS


# alike on both sides


def _is_lopsided(chart: Chart, arch: str) -> bool:
    """Whether teeth, spaces, means or expectations of an arch differ by side, or the laboratory may choose."""
    counted = any(str(place.said("measure")).endswith("-midline") for place in chart.of("expect"))
    return counted or _gap(chart, arch) or any(_is_one_sided(place, arch) for place in _means(chart))


def _means(chart: Chart) -> Iterator[Place]:
    """Orders, allowances, and goals about spaces."""
    yield from chart.of("movements", "allow")
    yield from (place for place in chart.of("goals") if place.said("close") or place.said("leave"))


def _gap(chart: Chart, arch: str) -> bool:
    """Whether a tooth in front of the molars stands on one side alone, or the spaces measured lie on one side more."""
    standing = {tooth for tooth in chart.mouth.rows[arch].teeth if not is_molar(tooth)}
    spacing = chart.mouth.finding(f"{arch}-spacing")
    spaces = set(map(normal, spacing.contacts or ())) if spacing and spacing.value > 0 else set()
    return _differ(standing) or spaces != {_mirrored(contact) for contact in spaces}


def _is_one_sided(place: Place, arch: str) -> bool:
    use = place.said("use")
    if use == "laboratory-choice" or place.said("pattern") == "anterior-diagonal":
        return place.said("arch") in (None, arch)
    teeth = {tooth for tooth in place.said("teeth") or () if arch_of(tooth) == arch}
    named = (*(place.said("contacts") or ()), *(place.said("close") or ()), *filter(None, [place.said("leave")]))
    contacts = {normal(contact) for contact in named if arch_of(teeth_of(contact)[0]) == arch}
    one_side = len(place.said("sides") or ()) == 1 and place.said("arch") in (None, arch)
    return one_side or _differ(teeth) or contacts != {_mirrored(contact) for contact in contacts}


def _differ(teeth: Iterable[str]) -> bool:
    both = set(teeth)
    return both != {mirrored(tooth) for tooth in both}


def _mirrored(contact: str) -> str:
    return normal("-".join(mirrored(tooth) for tooth in teeth_of(contact)))


RULES = (midline_without_asymmetric_means, midline_halves_do_not_add_up)
