"""There and back, and what is done before there is room for it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.model.clauses import Align, Movement
from wellposed.model.making import Order
from wellposed.model.means import EnamelReduction
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.chart import Chart
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import arch_of

_ROOM = ("enamel-reduction", "extraction", "widening", "incisor-advance", "distal-movement")
_FIRST_THEN = ("before", "not-before-done")


@rule(
    "opposite-movements-of-one-tooth",
    Severity.CAUTION,
    title="One tooth is ordered to move there and back.",
    says="{first:clause}, and {then:clause}: {teeth:teeth} would go there and back.",
    do="Order the way from where the tooth stands to where it should stand, once.",
    change="One movement less, or both in one sense, would change it.",
)
def opposite_movements_of_one_tooth(chart: Chart) -> Iterator[Told]:
    """No tooth is ordered to move in both senses of one movement.

    A tooth that goes there and back takes longer, and its root travels further, for nothing.

    Evidence: textbooks agree; total travel of the apex is a known risk of root resorption. Two orders that must hold at
    once are proven contradictory elsewhere; here are wishes, orders put one after the other, and upper bounds in the
    sense opposite to what is ordered. Two upper bounds alone leave a tooth free and are not meant.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "labial", "at_most": 1,
                            "unit": "mm"},
                           {"id": "m2", "strength": "must", "teeth": ["11"], "motion": "lingual", "at_most": 1,
                            "unit": "mm"}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "labial", "at_least": 1,
                           "unit": "mm"},
                          {"id": "m2", "strength": "prefer", "teeth": ["11"], "motion": "lingual", "at_least": 1,
                           "unit": "mm"}]}
    """
    orders = [place for place in chart.of("movements") if isinstance(place.part, Movement)]
    for first, then in combinations(orders, 2):
        teeth = _opposed(first.part, then.part)
        if teeth and _meant(chart, first, then):
            facts = {"first": said(first.part), "then": said(then.part), "teeth": teeth}
            yield told(then.pointer, first.owner, then.owner, **facts)


def _opposed(one: object, other: object) -> list[str]:
    """The teeth two movements move in opposite senses."""
    if not isinstance(one, Movement) or not isinstance(other, Movement):
        return []
    (variable, sign), (second, against) = MOTIONS[one.motion], MOTIONS[other.motion]
    opposite = variable == second and sign == -against
    return [tooth for tooth in one.teeth if tooth in other.teeth] if opposite else []


def _meant(chart: Chart, first: Place, then: Place) -> bool:
    """Whether one of the two is a floor and the proof leaves them alone, or an order puts one after the other."""
    floors = [place for place in (first, then) if place.said("at_least")]
    proven = [place for place in floors if place.said("strength") == "must"]
    one_after_the_other = any({order.first, order.then} == {first.owner, then.owner} for order in _orders(chart))
    return bool(floors) and (proven != [first, then] or one_after_the_other)


def _orders(chart: Chart) -> list[Order]:
    parts = (place.part for place in chart.of("staging"))
    return [part for part in parts if isinstance(part, Order) and part.relation in _FIRST_THEN]


@rule(
    "round-trip-since-last",
    Severity.CAUTION,
    title="A tooth is ordered back the way an earlier revision sent it.",
    says="{asked:clause}; revision {revision} asked: {before:clause}. {teeth:teeth} would go there and back.",
    do="Look at what the earlier revision was to do, and say whether it was carried out.",
    change="If the earlier order was never carried out, this no longer applies.",
)
def round_trip_since_last(chart: Chart) -> Iterator[Told]:
    """No tooth is ordered to move against the sense in which an earlier revision ordered it.

    There and back takes longer, and the root travels further, for nothing; often the first way was the wrong one.

    Evidence: textbooks agree; total travel of the apex is a known risk of root resorption. Whether the earlier revision
    was carried out cannot be seen here.

    Passes: {"revision": 2, "replaces": "38b4fc66ec44cd20a9e0c3cf3387a6ead001de8c416bd2a4964cedc5bee2c104",
             "movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "labial", "at_least": 1,
                            "unit": "mm"}],
             "earlier": [{"movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "labial",
                                         "at_least": 2, "unit": "mm"}]}]}
    Fails: {"revision": 2, "replaces": "38b4fc66ec44cd20a9e0c3cf3387a6ead001de8c416bd2a4964cedc5bee2c104",
            "movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "lingual", "at_least": 1,
                           "unit": "mm"}],
            "earlier": [{"movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "labial",
                                        "at_least": 2, "unit": "mm"}]}]}
    """
    for place in chart.of("movements"):
        for revision, before in _floors(chart):
            teeth = _opposed(before, place.part) if place.said("at_least") else []
            if teeth:
                facts = {"asked": said(place.part), "before": said(before), "revision": revision, "teeth": teeth}
                yield told(place.pointer, place.owner, **facts)
                break


def _floors(chart: Chart) -> Iterator[tuple[int, Movement]]:
    """The movements that earlier revisions ordered, the latest first."""
    for rx in reversed(chart.earlier):
        yield from ((rx.revision, order) for order in rx.movements or () if order.at_least)


@rule(
    "reduction-after-space-needed",
    Severity.CAUTION,
    title="Crowded teeth are to be in line before the enamel is reduced that gives them room.",
    says="{first:clause} is to be done before {then:clause}, but {crowding:mm} of crowding is measured there.",
    do="Put the reduction first, or say where the room comes from until then.",
    change="The reduction first, or an arch without crowding, would change it.",
)
def reduction_after_space_needed(chart: Chart) -> Iterator[Told]:
    """No alignment of a crowded arch is to be done before the enamel reduction beside the teeth aligned.

    Without the room the teeth come forward first and are drawn back afterwards.

    Evidence: the review of Martinez-Lozano et al. (2024) puts room first. Some align a little first so that contacts
    can be reached; an order that merely begins with the alignment (`before`) is left alone.

    Passes: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 3, "unit": "mm"}],
             "goals": [{"id": "g1", "strength": "must", "align": ["42", "41", "31", "32"]}],
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["42-41", "41-31", "31-32"],
                        "per_contact": 0.4, "unit": "mm"}],
             "staging": {"id": "s1", "strength": "must",
                         "order": [{"id": "o1", "first": "a1", "relation": "not-before-done", "then": "g1"}]}}
    Fails: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 3, "unit": "mm"}],
            "goals": [{"id": "g1", "strength": "must", "align": ["42", "41", "31", "32"]}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["42-41", "41-31", "31-32"],
                       "per_contact": 0.4, "unit": "mm"}],
            "staging": {"id": "s1", "strength": "must",
                        "order": [{"id": "o1", "first": "g1", "relation": "not-before-done", "then": "a1"}]}}
    """
    for place, first, then in _in_turn(chart, "not-before-done"):
        if isinstance(first.part, Align) and isinstance(then.part, EnamelReduction):
            reduced = {tooth for contact in chart.whole.reduced(then.part) for tooth in teeth_of(contact)}
            yield from _without_room(chart, place, first, then, reduced & set(first.part.align))


@rule(
    "rotation-before-space",
    Severity.CAUTION,
    title="Teeth are to be turned before there is room for it.",
    says="{first:clause} comes before {then:clause}, but {crowding:mm} of crowding is measured there.",
    do="Put the means of room first, or say where the room comes from until then.",
    change="The means of room first, or an arch without crowding, would change it.",
)
def rotation_before_space(chart: Chart) -> Iterator[Told]:
    """No rotation in a crowded arch is put before the means that make room in that arch.

    A crowded tooth turns against its neighbours, and the aligner comes off it.

    Evidence: the review of Martinez-Lozano et al. (2024) on staging puts room first; no trial was found.

    Passes: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 3, "unit": "mm"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["43"], "motion": "mesiolingual-rotation",
                            "at_least": 15, "unit": "deg"}],
             "allow": [{"id": "a1", "use": "widening", "arch": "lower", "up_to": 2, "unit": "mm"}],
             "staging": {"id": "s1", "strength": "must",
                         "order": [{"id": "o1", "first": "a1", "relation": "before", "then": "m1"}]}}
    Fails: {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 3, "unit": "mm"}],
            "movements": [{"id": "m1", "strength": "must", "teeth": ["43"], "motion": "mesiolingual-rotation",
                           "at_least": 15, "unit": "deg"}],
            "allow": [{"id": "a1", "use": "widening", "arch": "lower", "up_to": 2, "unit": "mm"}],
            "staging": {"id": "s1", "strength": "must",
                        "order": [{"id": "o1", "first": "m1", "relation": "before", "then": "a1"}]}}
    """
    for place, first, then in _in_turn(chart, *_FIRST_THEN):
        turns = isinstance(first.part, Movement) and MOTIONS[first.part.motion].variable == "rotation"
        if turns and then.said("use") in _ROOM:
            arches = {arch_of(tooth) for tooth in _teeth(chart, then)} | {then.said("arch")}
            teeth = {tooth for tooth in first.said("teeth") if arch_of(tooth) in arches}
            yield from _without_room(chart, place, first, then, teeth)


def _in_turn(chart: Chart, *relations: str) -> Iterator[tuple[Place, Place, Place]]:
    """Each order of these relations with what comes first and what then."""
    for place in chart.of("staging"):
        if place.said("relation") in relations:
            first, then = chart.place(place.said("first")), chart.place(place.said("then"))
            if first and then:
                yield place, first, then


def _teeth(chart: Chart, place: Place) -> list[str]:
    if isinstance(place.part, EnamelReduction):
        return [tooth for contact in chart.whole.reduced(place.part) for tooth in teeth_of(contact)]
    return list(place.said("teeth") or ())


def _without_room(chart: Chart, place: Place, first: Place, then: Place, teeth: set[str]) -> Iterator[Told]:
    """One finding of an order whose teeth stand in an arch measured as crowded."""
    measures = [f"{arch}-crowding" for arch in sorted({arch_of(tooth) for tooth in teeth})]
    crowding = max((chart.value(measure) or 0.0 for measure in measures), default=0.0)
    if crowding > 0:
        facts = {"first": said(first.part), "then": said(then.part), "crowding": crowding}
        yield told(place.pointer, place.owner, first.owner, then.owner, *chart.found(*measures), **facts)


RULES = (
    *(opposite_movements_of_one_tooth, round_trip_since_last),
    *(reduction_after_space_needed, rotation_before_space),
)
