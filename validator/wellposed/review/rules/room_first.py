"""Room first: crowded teeth are not turned, or brought into line, before there is room beside them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from wellposed.findings import Severity
from wellposed.kinematics.mouth import Contact
from wellposed.review.held import Facts, Held, grouped
from wellposed.review.rules.path_room import made_by_enamel, made_by_movement
from wellposed.review.travel import Way, arrived
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._stated import RELEVANT_DEG, RELEVANT_MM
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.teeth import arch_of

_SHORT = "kinematics.shortfall"
_NO_ROOM = "review.within-mm"


class _Early(NamedTuple):
    """A crowded tooth that has gone ``amount``, mm or deg, after an aligner, before any room is made beside it."""

    tooth: str
    variable: Variable
    amount: float
    aligner: int


@rule(
    "turned-before-room",
    Severity.CAUTION,
    title="Crowded teeth are turned before there is room for it.",
    says="{teeth:teeth}: turned by up to {amount:deg}, {tooth} by aligner {aligner}, when no room has been made beside"
    " these teeth; that comes later.",
    do="Ask for the room first, or for the turn together with it.",
    change="Room made before or with the turn would change it.",
    figures=(RELEVANT_DEG, _SHORT, _NO_ROOM),
    sources=("martinez-lozano-2024",),
)
def turned_before_room(held: Held) -> Iterator[Told]:
    """No tooth with a crowded contact has done its whole turn on the path before any of the room beside it is made that
    the plan makes there in the end.

    A crowded tooth turns against its neighbours, and the aligner comes off it.

    Evidence: a review on staging puts room first; no trial was found. Only a turn
    that is finished too early is spoken of: some begin to turn a little first, so that contacts come into reach.

    Passes: {"prescription": {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 1, "unit": "mm",
                                            "contacts": ["41-31"]}]},
             "movements": [{"variable": "rotation", "unit": "deg", "values": {"41": 8}}], "unlisted": "unmoved",
             "reductions": [{"contact": "41-31", "amount": 0.4, "unit": "mm", "before_aligner": 1}],
             "stages": [{"aligner": 4, "arch": "lower",
                         "movements": [{"variable": "rotation", "unit": "deg", "values": {"41": 8}}]}]}
    Fails: {"prescription": {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 1, "unit": "mm",
                                           "contacts": ["41-31"]}]},
            "movements": [{"variable": "rotation", "unit": "deg", "values": {"41": 8}},
                          {"variable": "along", "unit": "mm", "values": {"31": -0.5}}], "unlisted": "unmoved",
            "stages": [{"aligner": 4, "arch": "lower",
                        "movements": [{"variable": "rotation", "unit": "deg", "values": {"41": 8}},
                                      {"variable": "along", "unit": "mm", "values": {"31": 0}}]},
                       {"aligner": 6, "arch": "lower",
                        "movements": [{"variable": "rotation", "unit": "deg", "values": {"41": 8}},
                                      {"variable": "along", "unit": "mm", "values": {"31": -0.5}}]}]}
    """
    turns = ((at[0], way) for at, way in held.ways.items() if at[1] == "rotation")
    yield from _told(held, _early(held, turns, "rotation", RELEVANT_DEG), RELEVANT_DEG)


@rule(
    "in-line-before-room",
    Severity.CAUTION,
    title="Crowded teeth are brought into line before there is room for them.",
    says="{teeth:teeth}: brought up to {amount:mm} towards the line of the arch, {tooth} by aligner {aligner}, when no"
    " room has been made beside these teeth; that comes later.",
    do="Ask for the room first, or for the reduction before the teeth need it.",
    change="Room made before or with this movement would change it.",
    figures=(RELEVANT_MM, _SHORT, _NO_ROOM),
    sources=("martinez-lozano-2024",),
)
def in_line_before_room(held: Held) -> Iterator[Told]:
    """No tooth that was measured off the line, with a crowded contact, has all but come to the line on the path before
    any of the room beside it is made that the plan makes there in the end.

    Enamel taken, or neighbours moved apart, after the tooth is in comes too late: the aligner asks for three teeth
    where two have room, and the tooth stays out or pushes its neighbours.

    Evidence: a review on staging puts room first; no trial was found. What is left to go counts as nothing up to a
    trial's convention of a relevant error.

    Passes: {"prescription": {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 1, "unit": "mm",
                                            "contacts": ["42-41"]},
                                           {"id": "f2", "tooth_measure": "displacement", "values": {"42": -2},
                                            "unit": "mm"}]},
             "movements": [{"variable": "out", "unit": "mm", "values": {"42": 2}}], "unlisted": "unmoved",
             "aligners": {"lower": 10},
             "reductions": [{"contact": "42-41", "amount": 0.4, "unit": "mm", "before_aligner": 1}],
             "stages": [{"aligner": 8, "arch": "lower",
                         "movements": [{"variable": "out", "unit": "mm", "values": {"42": 1.6}}]}]}
    Fails: {"prescription": {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 1, "unit": "mm",
                                           "contacts": ["42-41"]},
                                          {"id": "f2", "tooth_measure": "displacement", "values": {"42": -2},
                                           "unit": "mm"}]},
            "movements": [{"variable": "out", "unit": "mm", "values": {"42": 2}}], "unlisted": "unmoved",
            "aligners": {"lower": 10},
            "reductions": [{"contact": "42-41", "amount": 0.4, "unit": "mm", "before_aligner": 9}],
            "stages": [{"aligner": 8, "arch": "lower",
                        "movements": [{"variable": "out", "unit": "mm", "values": {"42": 1.6}}]}]}
    """
    off = ((at[0], _to_line(held, at[0], way)) for at, way in held.ways.items() if at[1] == "out")
    yield from _told(held, _early(held, off, "out", RELEVANT_MM), RELEVANT_MM)


def _to_line(held: Held, tooth: str, way: Way) -> Way:
    """The part of a way in or out that only brings a displaced tooth to the line; it comes first."""
    far = held.matter.ended.way_to_line(tooth)
    return way._replace(places=tuple(min(max(place, min(far, 0.0)), max(far, 0.0)) for place in way.places))


def _early(held: Held, ways: Iterable[tuple[str, Way]], variable: Variable, small: str) -> Iterator[_Early]:
    """The teeth that have all but arrived before there is room; ``small``: the norm of what is nothing."""
    least = held.limit(small)
    for tooth, way in ways:
        aligner, gone = arrived(way, least)
        if aligner < way.last and above(abs(gone), least) and _without_room(held, tooth, aligner, way.last):
            yield _Early(tooth, variable, abs(gone), aligner)


def _told(held: Held, early: Iterable[_Early], small: str) -> Iterator[Told]:
    """One finding an arch."""
    for found in grouped((arch_of(one.tooth), one) for one in early).values():
        worst = max(found, key=lambda one: one.amount)
        facts: Facts = {"teeth": [one.tooth for one in found], "tooth": worst.tooth, "amount": worst.amount}
        pointer = held.on_path(worst.tooth, worst.variable, worst.aligner)
        yield told(pointer, aligner=worst.aligner, figures=(small, _SHORT, _NO_ROOM), **facts)


def _without_room(held: Held, tooth: str, aligner: int, last: int) -> bool:
    """Whether no room is made at a tooth's crowded contacts after an aligner, though it is made there by the last."""
    beside = [one for one in held.mouth.rows[arch_of(tooth)].contacts if tooth in (one.first, one.second)]
    crowded = [one for one in beside if one.before < 0]
    now, then = ([_made(held, one, number) for one in crowded] for number in (aligner, last))
    if not crowded or None in now or None in then:
        return False
    none_yet = not any(above(room or 0.0, held.limit(_NO_ROOM)) for room in now)
    return none_yet and max(room or 0.0 for room in then) >= held.limit(_SHORT)


def _made(held: Held, contact: Contact, aligner: int) -> float | None:
    moved = made_by_movement(held, contact, aligner)
    return None if moved is None else moved + made_by_enamel(held, contact, aligner)


RULES = (turned_before_room, in_line_before_room)
