"""Means of room that are counted where they do not count: twice, against an order, or far beyond the need."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.kinematics.means import width_teeth
from wellposed.kinematics.openings import incisors, molars, standing
from wellposed.model.means import AnyMovement, ArchSlide, IncisorTravel, WidthChange
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules._enamel import reasons
from wellposed.rules._room import SPACING, amount_of, ids_of, known, needed, pointer_of, rooms, uses_room
from wellposed.rules.chart import Chart
from wellposed.vocabulary.motions import MOTIONS, Sense
from wellposed.vocabulary.teeth import SIDES

MUCH, TIMES = "space.remainder-strong", "space.means-to-need"
_OUT, _IN, _MESIAL, _DISTAL = Sense("out", 1), Sense("out", -1), Sense("along", 1), Sense("along", -1)
_SENSES = {
    "incisor-advance": _OUT,
    "incisor-retraction": _IN,
    "widening": _OUT,
    "narrowing": _IN,
    "mesial-movement": _MESIAL,
    "distal-movement": _DISTAL,
}
_MAKING = (_OUT, _DISTAL)
_CROWDED = {"crowding"}
_ALL = 100


def _travel(chart: Chart, place: Place) -> tuple[Sense, frozenset[str]] | None:
    """In which sense along or across the arch an allowance moves which teeth; None if it does neither."""
    part, mouth = place.part, chart.mouth
    if isinstance(part, AnyMovement):
        sense = MOTIONS[part.motion]
        return (sense, frozenset(standing(mouth, part.teeth))) if sense.variable in ("out", "along") else None
    if isinstance(part, WidthChange):
        return _SENSES[part.use], frozenset(width_teeth(mouth, part))
    if isinstance(part, IncisorTravel | ArchSlide):
        whole = incisors(mouth, part.arch) if isinstance(part, IncisorTravel) else _molars(chart, part)
        return _SENSES[part.use], frozenset(standing(mouth, part.teeth) if part.teeth else whole)
    return None


def _molars(chart: Chart, part: ArchSlide) -> list[str]:
    return molars(chart.mouth, part.arch, part.sides or SIDES)


@rule(
    "means-counted-twice",
    Severity.CAUTION,
    title="Two allowances move the same teeth the same way; the larger counts, they do not add up.",
    says="{asked:clause}: both move {teeth:teeth} the same way, so that {most:mm} counts and not {sum:mm}.",
    do="Take one out, with the amount that holds in the other.",
    change="With the amount that holds in one allowance, or other teeth in the second, this no longer applies.",
)
def means_counted_twice(chart: Chart) -> Iterator[Told]:
    """No two allowances move the very same teeth in the same sense.

    Of two amounts for one movement the larger counts. Whoever adds them up counts room that is not there.

    Evidence: the format itself. A single displaced tooth beside an allowance for its whole front is ordinary.

    Passes: {"allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 1, "unit": "mm"},
                       {"id": "a2", "use": "movement", "teeth": ["32"], "motion": "labial", "up_to": 2, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 1, "unit": "mm"},
                      {"id": "a2", "use": "movement", "teeth": ["42", "41", "31", "32"], "motion": "labial", "up_to": 2,
                       "unit": "mm"}]}
    """
    moving = [(place, found) for place in chart.of("allow") if (found := _travel(chart, place)) and found[1]]
    for (first, one), (second, other) in combinations(moving, 2):
        if one == other and not (isinstance(first.part, WidthChange) and isinstance(second.part, WidthChange)):
            amounts = [first.said("up_to"), second.said("up_to")]
            facts = {"teeth": sorted(one[1]), "most": max(amounts), "sum": sum(amounts)}
            asked = [said(first.part), said(second.part)]
            yield told(second.pointer, first.owner, second.owner, asked=asked, **facts)


@rule(
    "means-used-up",
    Severity.CAUTION,
    title="A means of room is allowed for teeth that are ordered to move the other way.",
    says="{asked:clause} would make room, but {ordered:clause} takes the same teeth the other way.",
    do="Look whether both are meant, and from where the room then comes.",
    change="With only one of the two, or other teeth in one of them, this no longer applies.",
)
def means_used_up(chart: Chart) -> Iterator[Told]:
    """What is allowed to make room, advance, widening or distal movement, is not ordered the other way for its teeth.

    Room that another clause uses up is not there for crowding, however often it is counted.

    Evidence: arithmetic. Orders that begin at nought, and teeth of which only some are ordered back, are let through.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["41"], "motion": "lingual", "at_least": 1,
                            "unit": "mm"}],
             "allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 2, "unit": "mm"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["42", "41", "31", "32"], "motion": "lingual",
                           "at_least": 1, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 2, "unit": "mm"}]}
    """
    for place in chart.of("allow"):
        found = _travel(chart, place)
        if found and found[0] in _MAKING and found[1]:
            back = [m for m in chart.moved(found[0].variable, -found[0].sign, found[1]) if m.sure > 0]
            if {move.tooth for move in back} == found[1]:
                ordered = list(dict.fromkeys(move.place for move in back))
                facts = {"asked": said(place.part), "ordered": [said(one.part) for one in ordered]}
                yield told(place.pointer, place.owner, *(one.owner for one in ordered), **facts)


@rule(
    "more-means-than-need",
    Severity.NOTE,
    title="The means of an arch may make several times the room it needs.",
    says="The {arch} arch needs {need:mm} of room, and its means may make {made:mm}: {asked:clause}.",
    do="Say which of them is to be used first, or lessen them.",
    change="Less than {times:percent} of the need, or {limit:mm} beyond it at the most, would no longer be told.",
    figures=(TIMES, MUCH),
)
def more_means_than_need(chart: Chart) -> Iterator[Told]:
    """Permissions of room in an arch stay within a few times the room it needs.

    Which of them is used is then the laboratory's choice, and the one that costs the patient most may be it.

    Evidence: common practice, without a source. Said only where the need is known, no goal on overjet, midline, width
    or relation may use the rest, and no means is there for another stated problem than crowding.

    Passes: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 1, "unit": "mm"}],
             "allow": [{"id": "a1", "use": "enamel-reduction", "arch": "lower", "in_all": 1.5, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 1, "unit": "mm"}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "arch": "lower", "in_all": 2, "unit": "mm"},
                      {"id": "a2", "use": "incisor-advance", "arch": "lower", "up_to": 2, "unit": "mm"}]}
    """
    times, much = chart.limit(TIMES), chart.limit(MUCH)
    for room in rooms(chart):
        need, made = needed(room), known(line.amount for line in room.means if line.what != SPACING)
        if not need or made is None or uses_room(chart) or amount_of(room, "extraction"):
            continue
        places = [at for one in ids_of(chart, room) if (at := chart.place(one)) and at.section == "allow"]
        several = not above(need * times / _ALL, made) and above(made - need, much)
        if several and all(reasons(chart, at) <= _CROWDED for at in places):
            facts = {"arch": room.arch, "need": need, "made": made, "times": times, "limit": much}
            asked = [said(at.part) for at in places]
            yield told(pointer_of(chart, room), *ids_of(chart, room), asked=asked, **facts, figures=(TIMES, MUCH))


RULES = (means_counted_twice, means_used_up, more_means_than_need)
