"""Teeth that go, are not in line, stand in another's place, or are not of the kind a clause is about."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.teeth import speaks_of_a_gap
from wellposed.consistency.whole import Mention, Place, Whole, Written, existing
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.making import AttachmentMustNot, AttachmentPreferNot
from wellposed.model.means import AuxiliaryUse, Elastics, Extraction, IncisorTravel, WidthChange
from wellposed.vocabulary.teeth import UPPER, arch_of, is_canine, is_incisor

_ACTING = ("goals", "keep", "movements", "allow", "expect", "attachments", "appliance")
_FRONT_MEASURES = ("overbite", "overjet")


def _acts(place: Place) -> bool:
    """Whether a part wants a tooth to be there at the end."""
    gone = isinstance(place.part, Extraction | AttachmentMustNot | AttachmentPreferNot)
    return place.section in _ACTING and not gone and not speaks_of_a_gap(place)


@rule(
    "tooth-leaves",
    Severity.STOP,
    title="A clause is about a tooth that is extracted.",
    do="Take the tooth out of the clause, or out of the extraction.",
)
def tooth_leaves(whole: Whole) -> Iterator[Told]:
    """No goal but `align`, no keep, movement, allowance, attachment or appliance names a tooth to be extracted.

    Nothing can be done to a tooth that is gone. A contact across an extraction site is named by the two teeth
    that meet there afterwards, such as `13-15` where 14 goes.

    Passes: {"allow": [{"id": "a1", "use": "extraction", "teeth": ["14"]}],
             "keep": [{"id": "k1", "strength": "must", "hold": ["15"]}]}
    Fails: {"allow": [{"id": "a1", "use": "extraction", "teeth": ["14"]}],
            "keep": [{"id": "k1", "strength": "must", "hold": ["14"]}]}
    """
    gone = whole.mouth.extracted
    for tooth in whole.teeth:
        if tooth.name in gone and _acts(tooth.place) and tooth.member != "align":
            yield told(tooth.pointer, tooth.owner, gone[tooth.name], tooth=tooth.name)
    for contact in whole.contacts:
        for name in existing(contact):
            if name in gone and _acts(contact.place):
                yield told(contact.pointer, contact.owner, gone[name], tooth=name, contact=contact.name)


@rule(
    "aligned-tooth-leaves",
    Severity.NOTE,
    title="A tooth among those to be aligned is extracted.",
    do="Nothing, if the others are to be aligned as if it had not been named.",
)
def aligned_tooth_leaves(whole: Whole) -> Iterator[Told]:
    """Names a tooth of an `align` that is to be extracted: the others are aligned without it.

    A whole row is often named although one tooth of it goes; there is only one way to read that.

    Passes: {"allow": [{"id": "a1", "use": "extraction", "teeth": ["14"]}],
             "goals": [{"id": "g1", "strength": "must", "align": ["13", "15"]}]}
    Fails: {"allow": [{"id": "a1", "use": "extraction", "teeth": ["14"]}],
            "goals": [{"id": "g1", "strength": "must", "align": ["13", "14", "15"]}]}
    """
    gone = whole.mouth.extracted
    for tooth in whole.teeth:
        if tooth.member == "align" and tooth.name in gone:
            yield told(tooth.pointer, tooth.owner, gone[tooth.name], tooth=tooth.name)


@rule(
    "tooth-not-in-line",
    Severity.ASK,
    title="A tooth that has not erupted is to be moved.",
    do="Say how it is brought into line first, or leave it out of the clause.",
)
def tooth_not_in_line(whole: Whole) -> Iterator[Told]:
    """No `align`, movement or allowance to move teeth names a tooth that is said to be unerupted.

    An aligner does not reach it, and the arithmetic leaves it out of the arch.

    Passes: {"movements": [{"id": "m1", "strength": "must", "teeth": ["12"], "motion": "mesial",
                            "at_least": 1, "unit": "mm"}]}
    Fails: {"teeth": {"upper": ["12", "11"], "lower": [], "particulars": [{"tooth": "12", "states": ["unerupted"]}]},
            "goals": [{"id": "g1", "strength": "must", "align": ["12", "11"]}]}
    """
    for tooth in whole.teeth:
        if _moves(tooth) and whole.stated(tooth.name, "unerupted"):
            yield told(tooth.pointer, tooth.owner, tooth=tooth.name)


def _moves(tooth: Mention) -> bool:
    section, part = tooth.place.section, tooth.place.part
    allowed = section == "allow" and not isinstance(part, Extraction | Elastics | AuxiliaryUse)
    return tooth.member == "align" or section == "movements" or allowed


@rule(
    "tooth-not-meant",
    Severity.STOP,
    title="The clause cannot be about this tooth.",
    do="Correct the tooth, or use the clause that is meant for it.",
)
def tooth_not_meant(whole: Written) -> Iterator[Told]:
    """Incisor advance and retraction, overbite and overjet name incisors or canines; widening and narrowing
    name no incisor; a palatal motion names no lower tooth.

    One of the two, the tooth or the clause, is a slip.

    Passes: {"allow": [{"id": "a1", "use": "incisor-advance", "arch": "upper", "teeth": ["11", "21"],
                        "up_to": 1, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "incisor-advance", "arch": "upper", "teeth": ["16", "21"],
                       "up_to": 1, "unit": "mm"}]}
    """
    for tooth in whole.teeth:
        expected = _expected(tooth.place, tooth)
        if expected:
            yield told(tooth.pointer, tooth.owner, tooth=tooth.name, expected=expected)


def _expected(place: Place, tooth: Mention) -> str:
    """What kind of tooth the part is about, where this one is not of that kind."""
    front = is_incisor(tooth.name) or is_canine(tooth.name)
    at_front = tooth.member == "pair" and place.said("measure") in _FRONT_MEASURES
    if (isinstance(place.part, IncisorTravel) or at_front) and not front:
        return "an incisor or a canine"
    if isinstance(place.part, WidthChange) and is_incisor(tooth.name):
        return "a canine, premolar or molar"
    palatal = str(place.said("motion")).startswith("palatal")
    return "an upper tooth" if palatal and arch_of(tooth.name) != UPPER else ""


@rule(
    "transposed-teeth",
    Severity.ASK,
    title="Teeth have changed places: the arithmetic takes neighbours by their numbers.",
    do="Look at every contact beside this tooth, and say in words what is meant there.",
)
def transposed_teeth(whole: Whole) -> Iterator[Told]:
    """No tooth is said to be transposed.

    Who touches whom is taken from the numbers. Beside a transposed tooth that is not so, and what is worked out
    for the contacts there does not hold.

    Passes: {"teeth": {"upper": ["13", "12"], "lower": [], "particulars": [{"tooth": "13", "states": ["crown"]}]}}
    Fails: {"teeth": {"upper": ["13", "12"], "lower": [], "particulars": [{"tooth": "13", "states": ["transposed"]}]}}
    """
    for number, entry in enumerate(whole.prescription.teeth.particulars or ()):
        if "transposed" in entry.states:
            where = entry.states.index("transposed")
            yield told(f"/teeth/particulars/{number}/states/{where}", tooth=entry.tooth)


RULES = (tooth_leaves, aligned_tooth_leaves, tooth_not_in_line, tooth_not_meant, transposed_teeth)
