"""Teeth that the plan moves and cannot move, and teeth it says nothing of."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.review.held import Held
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, told
from wellposed.vocabulary.motions import Variable

_LEAVES, _NOT_IN_LINE, _NOT_LISTED = "taken-out", "unerupted", "not-listed-as-present"
_STILL = ("review.within-mm", "review.within-deg")


@rule(
    "locked-tooth-moved",
    Severity.STOP,
    title="The plan moves teeth that cannot be moved.",
    says="The plan moves {teeth:teeth}; by the prescription: {states:words}.",
    do="Ask for a plan without these movements, or correct the state of the tooth in the prescription.",
    change="No movement of {teeth:list}, or another state, would change it.",
    figures=_STILL,
)
def locked_tooth_moved(held: Held) -> Iterator[Told]:
    """No implant, ankylosed tooth, pontic or abutment of a pontic moves, in the end or on the way.

    They stay where they are, and the aligner pushes their neighbours instead.

    Evidence: none is needed; movements within the tolerance of the review count as none.

    Passes: {"prescription": {"teeth": {"upper": ["12", "11", "21"], "lower": ["41", "31"],
                                        "particulars": [{"tooth": "11", "states": ["implant"]}]}},
             "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0, "12": 1}}]}
    Fails: {"prescription": {"teeth": {"upper": ["12", "11", "21"], "lower": ["41", "31"],
                                       "particulars": [{"tooth": "11", "states": ["implant"]}]}},
            "movements": [{"variable": "out", "unit": "mm", "values": {"11": 0.5, "12": 1}}]}
    """
    moved = [at for at, far in _farthest(held) if at[0] in held.mouth.locked and above(far, held.within(at[1]))]
    if moved:
        teeth = list(dict.fromkeys(tooth for tooth, _ in moved))
        states = list(dict.fromkeys(held.mouth.locked[tooth] for tooth in teeth))
        yield told(held.at(moved[0][1], teeth), teeth=teeth, states=states, figures=_STILL)


def _farthest(held: Held) -> Iterator[tuple[tuple[str, Variable], float]]:
    """How far each tooth goes at the most, in the end or on the way, mm or deg."""
    on_path = held.every_way
    for at in dict.fromkeys((*held.plan.moved, *on_path)):
        places = (held.plan.moved.get(at, 0.0), *(on_path[at].places if at in on_path else ()))
        yield at, max(map(abs, places))


@rule(
    "absent-tooth-moved",
    Severity.STOP,
    title="The plan moves teeth that are not in line.",
    says="The plan moves {teeth:teeth}; by the prescription: {why:words}.",
    do="Ask which tooth is meant, or correct the list of teeth in the prescription.",
    change="Without a movement of {teeth:list}, or with another list of teeth, it no longer applies.",
)
def absent_tooth_moved(held: Held) -> Iterator[Told]:
    """The teeth the plan moves, in the end or on the way, are those the prescription lists as present, erupted and not
    taken out.

    A number too many is often a number confused: then another tooth gets this movement, or none.

    Evidence: none is needed. Teeth the setup itself takes out are looked at with its other parts.

    Passes: {"movements": [{"variable": "out", "unit": "mm", "values": {"17": 1}}]}
    Fails: {"movements": [{"variable": "out", "unit": "mm", "values": {"18": 1}}]}
    """
    known = {*held.standing, *(held.setup.extractions or ())}
    absent = [at for at, far in _farthest(held) if far and at[0] not in known]
    if absent:
        teeth = list(dict.fromkeys(tooth for tooth, _ in absent))
        why = list(dict.fromkeys(_why(held, tooth) for tooth in teeth))
        yield told(held.at(absent[0][1], teeth), teeth=teeth, why=why)


def _why(held: Held, tooth: str) -> str:
    if tooth in held.mouth.extracted:
        return _LEAVES
    return _NOT_IN_LINE if held.chart.state(tooth, "unerupted") else _NOT_LISTED


@rule(
    "teeth-left-unsaid",
    Severity.NOTE,
    title="The setup says nothing of some teeth.",
    says="The setup names no movement of {teeth:teeth}, and does not say whether the teeth it leaves out stay.",
    do="Ask whether the teeth that are not named stay where they are.",
    change='A movement of each, or `"unlisted": "unmoved"`, would change it.',
)
def teeth_left_unsaid(held: Held) -> Iterator[Told]:
    """Of each tooth in line the setup names a movement, or it says that the teeth it does not name stay.

    Left out can mean that a tooth stays, or that nobody looked at it; clauses about it cannot be told then.

    Evidence: none is needed.

    Passes: {"movements": [{"variable": "out", "unit": "mm", "values": {"11": 1}}], "unlisted": "unmoved"}
    Fails: {"movements": [{"variable": "out", "unit": "mm", "values": {"11": 1}}]}
    """
    named = {tooth for tooth, _ in held.plan.moved}
    unsaid = [tooth for tooth in held.free if tooth not in named]
    if unsaid and held.setup.unlisted is None:
        yield told("/movements", teeth=unsaid)


RULES = (locked_tooth_moved, absent_tooth_moved, teeth_left_unsaid)
