"""Front to back at the front teeth: canines and what stands before the molars, edges, very large crowding."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.model.clauses import Leave
from wellposed.rules._bands import CLASS_I, band, is_class_i
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.chart import Chart
from wellposed.vocabulary.contacts import contact_between, normal, teeth_of
from wellposed.vocabulary.teeth import ARCHES, SIDES, UPPER, arch_of, position, side_of, tooth_at

EDGE = "normal.overjet.us-survey.ideal.least"
CROWDED = "caution.crowding-without-extraction"
_CENTRAL, _LATERAL, _CANINE = 1, 2, 3
_PREMOLARS = (4, 5)
_ONE_ARCH = "premolars are out in one arch alone, and molars in Class I are asked too"


@rule(
    "edges-ahead-of-the-cingulum",
    Severity.ASK,
    title="Overlap and overjet asked put the lower edges in front of the upper cingulum, while Class I is asked.",
    says="{asked:clause}: with less than {limit:mm} of overjet the lower edges meet the upper ones in front of the"
    " cingulum, which is no Class I.",
    do="Look at the overjet, the overbite and the relation together, and say which holds.",
    change="An overjet of {limit:mm} or more, or no overlap, settles it.",
    figures=(EDGE, CLASS_I),
)
def edges_ahead_of_the_cingulum(chart: Chart) -> Iterator[Told]:
    """Where the incisors are to overlap in Class I, the overjet asked leaves the lower edges behind the upper teeth.

    With an overlap and hardly any overjet the lower incisors would stand inside the upper ones, or in front of them.

    Evidence: the incisor classes of the British Standard define Class I by the cingulum; the least overjet called ideal
    in a survey is taken as the limit, from memory.

    Passes: {"problems": [{"id": "p1", "problem": "class-i"}],
             "goals": [{"id": "g1", "strength": "must", "measure": "overjet", "at_least": 2, "unit": "mm"},
                       {"id": "g2", "strength": "must", "measure": "overbite", "at_least": 1, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "class-i"}],
            "goals": [{"id": "g1", "strength": "must", "measure": "overjet", "at_most": 0, "unit": "mm"},
                      {"id": "g2", "strength": "must", "measure": "overbite", "at_least": 2, "unit": "mm"}]}
    """
    over, lap = band(chart, "overjet"), band(chart, "overbite")
    relations = [band(chart, f"{what}-relation-{side}") for what in ("canine", "molar") for side in SIDES]
    class_i = [place for relation in relations if is_class_i(chart, relation) for place in relation.places]
    class_i += chart.problems("class-i")
    if over.high < chart.limit(EDGE) and lap.low > 0 and class_i:
        places = (*over.places, *lap.places)
        ids = (place.owner for place in (*places, *class_i))
        asked, figures = [said(place.part) for place in places], (EDGE, CLASS_I)
        yield told(places[0].pointer, *ids, asked=asked, limit=chart.limit(EDGE), figures=figures)


@rule(
    "class-i-canines-with-a-tooth-missing",
    Severity.ASK,
    title="Class I canines are asked on a side where the teeth in front of the molars do not match.",
    says="{asked:clause}: on the {side} {why}: {teeth:teeth}.",
    do="Say whether the space is left, or which relation of canines and molars is meant at the end.",
    change="A space left for the tooth, or another relation of the canines or the molars, settles it.",
    figures=(CLASS_I,),
)
def class_i_canines_with_a_tooth_missing(chart: Chart) -> Iterator[Told]:
    """Class I canines are asked only where the teeth allow them: the upper lateral incisor stands or its space is left,
    and with premolars out in one arch alone the molars are not asked in Class I as well.

    A canine in the lateral's place stands a tooth too far forward; a premolar less in one arch must show in front or
    behind.

    Evidence: counting of teeth. Widths that differ are not looked at.

    Passes: {"goals": [{"id": "g1", "strength": "must", "measure": "canine-relation-right", "at_least": -1,
                        "at_most": 1, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "extraction", "teeth": ["14", "24"]}]}
    Fails: {"goals": [{"id": "g1", "strength": "must", "measure": "canine-relation-right", "at_least": -1,
                       "at_most": 1, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "extraction", "teeth": ["12"]}]}
    """
    for side in SIDES:
        canines, molars = (band(chart, f"{what}-relation-{side}") for what in ("canine", "molar"))
        if not is_class_i(chart, canines):
            continue
        lateral = _lateral_closed(chart, side)
        premolars = _premolars_out(chart, side) if is_class_i(chart, molars) else []
        if lateral or premolars:
            places = canines.places if lateral else (*canines.places, *molars.places)
            facts = {"asked": [said(place.part) for place in places], "side": side, "teeth": lateral or premolars}
            why = "the lateral incisor is not there, and its place closes" if lateral else _ONE_ARCH
            yield told(places[0].pointer, *(p.owner for p in places), why=why, figures=(CLASS_I,), **facts)


@rule(
    "large-crowding-without-extraction",
    Severity.CAUTION,
    title="Very large crowding is to be resolved, and no tooth is taken out.",
    says="{asked:clause}: the {arch} crowding is {crowding:mm}; from {limit:mm} teeth are nearly always extracted.",
    do="Look at the room again, and at where the front teeth end without an extraction.",
    change="An extraction, or crowding below {limit:mm}, settles it.",
    figures=(CROWDED,),
)
def large_crowding_without_extraction(chart: Chart) -> Iterator[Told]:
    """Crowding of 10 mm or more in an arch is not resolved without an extraction there, or a change that is counted on.

    So much room out of widening, advance and reduction together leaves the teeth off their bone.

    Evidence: a textbook's guide, recalled; below it the face and the lips decide. Whether the room is enough by the
    arithmetic is weighed elsewhere.

    Passes: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 6, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "align": ["33", "32", "31", "41", "42", "43"]}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 11, "unit": "mm"}],
            "goals": [{"id": "g1", "strength": "must", "align": ["33", "32", "31", "41", "42", "43"]}]}
    """
    counted = {place.said("measure") for place in chart.of("expect")}
    for arch in ARCHES:
        crowding, measure = chart.value(f"{arch}-crowding"), f"{arch}-crowding"
        out = any(arch_of(tooth) == arch for tooth in chart.mouth.extracted)
        asked = [p for p in chart.of("goals") if any(arch_of(t) == arch for t in p.said("align") or ())]
        if asked and crowding and crowding >= chart.limit(CROWDED) and not out and measure not in counted:
            ids = (*chart.found(measure), *(place.owner for place in asked))
            facts = {"arch": arch, "crowding": crowding, "limit": chart.limit(CROWDED), "figures": (CROWDED,)}
            yield told(asked[0].pointer, *ids, asked=[said(place.part) for place in asked], **facts)


# teeth in front of the molars


def _lateral_closed(chart: Chart, side: str) -> list[str]:
    """The upper lateral of a side, if it does not stand, does not come, and no room stays for it."""
    central, lateral, canine = (tooth_at(UPPER, side, number) for number in (_CENTRAL, _LATERAL, _CANINE))
    row, between = chart.mouth.rows[UPPER], contact_between(central, canine)
    contact = row.contact(between)
    coming = lateral in chart.whole.present and lateral not in chart.mouth.extracted
    if contact is None or coming or _is_left(chart, between):
        return []
    open_now = contact.before > 0 and not contact.taken
    return [] if open_now and not _is_closed(chart, between) else [lateral]


def _is_left(chart: Chart, contact: str) -> bool:
    goals = (place.part for place in chart.of("goals"))
    return any(isinstance(goal, Leave) and normal(goal.leave) == contact and goal.amount > 0 for goal in goals)


def _is_closed(chart: Chart, contact: str) -> bool:
    goals = tuple(chart.of("goals"))
    named = any(contact in map(normal, place.said("close") or ()) for place in goals)
    return named or any(place.said("close_arch") == arch_of(teeth_of(contact)[0]) for place in goals)


def _premolars_out(chart: Chart, side: str) -> list[str]:
    """The premolars of a side that are to be extracted, if that leaves the arches a different number of them."""
    standing = [_premolars(chart, arch, side) for arch in ARCHES]
    if standing[0] == standing[1]:
        return []
    out = [t for t in chart.mouth.extracted if position(t) in _PREMOLARS and side_of(t) == side]
    spared = (goal for place in chart.of("goals") if (goal := place.said("leave")))
    left = {arch_of(teeth_of(contact)[0]) for contact in spared}
    return sorted(tooth for tooth in out if arch_of(tooth) not in left)


def _premolars(chart: Chart, arch: str, side: str) -> int:
    line = chart.mouth.rows[arch].teeth
    return sum(position(tooth) in _PREMOLARS and side_of(tooth) == side for tooth in line)


RULES = (edges_ahead_of_the_cingulum, class_i_canines_with_a_tooth_missing, large_crowding_without_extraction)
