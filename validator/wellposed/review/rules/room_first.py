"""Room first: crowded teeth are not turned before there is room beside them."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.kinematics.mouth import Contact
from wellposed.review.held import Facts, Held
from wellposed.review.rules.path_room import made_by_enamel, made_by_movement
from wellposed.review.travel import arrived
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._stated import RELEVANT_DEG
from wellposed.vocabulary.teeth import arch_of

_SHORT = "kinematics.shortfall"
_NO_ROOM = "review.within-mm"


@rule(
    "turned-before-room",
    Severity.CAUTION,
    title="Crowded teeth are turned before there is room for it.",
    says="{teeth:teeth}: turned by {turn:deg} after aligner {aligner}, when no room has been made beside it; that comes"
    " later.",
    do="Ask for the room first, or for the turn together with it.",
    change="Room made before or with the turn would change it.",
    figures=(RELEVANT_DEG, _SHORT, _NO_ROOM),
)
def turned_before_room(held: Held) -> Iterator[Told]:
    """No tooth with a crowded contact has done its whole turn on the path before any of the room beside it is made that
    the plan makes there in the end.

    A crowded tooth turns against its neighbours, and the aligner comes off it.

    Evidence: the review of Martinez-Lozano et al. (2024) on staging puts room first; no trial was found. Only a turn
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
    small, figures = held.limit(RELEVANT_DEG), (RELEVANT_DEG, _SHORT, _NO_ROOM)
    for (tooth, variable), way in held.ways.items():
        if variable == "rotation" and above(abs(way.end), small):
            aligner, turn = arrived(way, small)
            if aligner < way.last and above(abs(turn), small) and _without_room(held, tooth, aligner, way.last):
                facts: Facts = {"teeth": [tooth], "turn": abs(turn), "aligner": aligner}
                yield told(held.on_path(tooth, variable, aligner), figures=figures, **facts)


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


RULES = (turned_before_room,)
