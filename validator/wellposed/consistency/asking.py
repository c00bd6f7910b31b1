"""What an order leaves open: nothing asked, no reason given, instructions in a note."""

from __future__ import annotations

import re
from collections.abc import Iterator

from wellposed.consistency.whole import Whole, Written
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity

_INSTRUCTION = re.compile(
    r"\b(?:please|do not|don't|never|avoid|make sure|intrude|extrude|reduce|strip|expand|widen|narrow|retract"
    r"|advance|procline|retrocline|move|rotate|derotate|torque|tip|upright|distali[sz]e|mesiali[sz]e|close|open"
    r"|align|level|extract|keep|hold|leave|place|add|attach|bond|trim|correct|overcorrect|improve)\b",
    re.IGNORECASE,
)
_TRADE = re.compile(
    r"(?<![\w.,-])(?:[1-4][1-8]|[5-8][1-5])(?![\w])|\b(?:overbite|overjet|midline|crowding|spac(?:e|es|ing)|gaps?"
    r"|IPR|enamel|attachments?|aligners?|incisors?|canines?|premolars?|molars?|elastics?|arch(?:es)?|contacts?"
    r"|crossbite|bite|tooth|teeth|torque|buttons?|pontics?|stages?|cuspids?|bicuspids?)\b",
    re.IGNORECASE,
)


@rule(
    "treat-not-stated",
    Severity.NOTE,
    title="It is not said which arches are treated.",
    do="State `treat`; until then both arches are taken to be treated.",
)
def treat_not_stated(whole: Whole) -> Iterator[Told]:
    """`treat` says which arches get aligners.

    Where it is silent an order for one arch and an order for both look alike.

    Passes: {"treat": {"arches": "upper"}}
    Fails: {"treat": null}
    """
    if whole.prescription.treat is None:
        yield told("", name="treat", expected="treat")


@rule(
    "nothing-asked",
    Severity.NOTE,
    title="The order has no goal and no movement.",
    do="State what is to be reached, unless nothing is.",
)
def nothing_asked(whole: Whole) -> Iterator[Told]:
    """There is at least one goal or movement.

    Silence means no change: with neither, every tooth stays where it is.

    Passes: {"goals": [{"id": "g1", "strength": "must", "level": "lower"}]}
    Fails: {"goals": [], "movements": []}
    """
    if not whole.prescription.goals and not whole.prescription.movements:
        yield told("", expected=["goals", "movements"])


@rule(
    "answers-nothing",
    Severity.NOTE,
    title="Movements give no reason.",
    do="Name in `because` the finding or problem that a movement answers, or look whether it is needed.",
)
def answers_nothing(whole: Whole) -> Iterator[Told]:
    """Every movement says in `because` what it answers. One finding lists all that do not.

    A movement that answers nothing may be left over from an earlier order.

    Passes: {"findings": [{"id": "f1", "measure": "overbite", "value": 5, "unit": "mm"}],
             "movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "intrusion",
                            "at_least": 1, "unit": "mm", "because": ["f1"]}]}
    Fails: {"movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "intrusion",
                           "at_least": 1, "unit": "mm"}]}
    """
    silent = [movement.id for movement in whole.prescription.movements or () if movement.because is None]
    if silent:
        yield told("/movements", *silent, names=silent)


@rule(
    "note-may-instruct",
    Severity.CAUTION,
    title="A note seems to give an instruction; notes do not bind.",
    do="Say it as a clause, or leave it out of the note.",
)
def note_may_instruct(whole: Written) -> Iterator[Told]:
    """No note has a word of instruction together with a tooth number or a term of the trade.

    A note is for people and is not checked: an instruction in it may be overlooked, or stand against a clause.
    Only some common English words are known.

    Passes: {"notes": [{"text": "She travels a lot and prefers early visits."}]}
    Fails: {"notes": [{"text": "Please intrude 11 a little more."}]}
    """
    for place in whole.of("notes"):
        text = place.said("text")
        if _INSTRUCTION.search(text) and _TRADE.search(text):
            yield told(f"{place.pointer}/text")


RULES = (treat_not_stated, nothing_asked, answers_nothing, note_may_instruct)
