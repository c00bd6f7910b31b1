"""The teeth that are there, and the teeth that parts name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wellposed.consistency.whole import TOOTH_MEMBERS, Mention, Place, Whole, Written, existing, mentions
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.findings import Problem
from wellposed.model.making import Appliance, ProcessStep
from wellposed.vocabulary.teeth import ARCHES, arch_of

_LISTS = tuple(member for member in TOOTH_MEMBERS if member != "pair")
_SPEAK_OF_A_GAP = {
    Problem: ("problem", ("missing-teeth", "impacted-tooth", "other")),
    Appliance: ("part", ("pontic", "other")),
    ProcessStep: ("step", ("surgery", "other")),
}


def speaks_of_a_gap(place: Place) -> bool:
    """Whether a part may name a tooth to mean its place: a pontic stands where a tooth is missing."""
    member, terms = _SPEAK_OF_A_GAP.get(type(place.part), ("", ()))
    return place.said(member) in terms


@rule(
    "tooth-not-present",
    Severity.STOP,
    title="A tooth is named that is not in the list of teeth.",
    do="Correct the number, or list the tooth in `teeth`.",
)
def tooth_not_present(whole: Whole) -> Iterator[Told]:
    """Every tooth that a finding, a clause or a condition names is listed in `teeth`, or said to be unerupted.

    The number may be wrong, or the list; either way something would be done to the wrong tooth or to none.
    Missing teeth may be named as a problem, and a pontic in an appliance stands where one is missing.

    Passes: {"keep": [{"id": "k1", "strength": "must", "hold": ["17"]}]}
    Fails: {"keep": [{"id": "k1", "strength": "must", "hold": ["18"]}]}
    """
    for tooth in whole.teeth:
        if tooth.name not in whole.present and not speaks_of_a_gap(tooth.place):
            yield told(tooth.pointer, tooth.owner, tooth=tooth.name)
    for contact in whole.contacts:
        for name in existing(contact):
            if name not in whole.present:
                yield told(contact.pointer, contact.owner, tooth=name, contact=contact.name)


@rule(
    "tooth-listed-twice",
    Severity.STOP,
    title="A list names the same tooth twice.",
    do="Name each tooth once, or write the tooth that was meant.",
)
def tooth_listed_twice(whole: Written) -> Iterator[Told]:
    """The teeth present are listed once each, and so are the teeth of a clause.

    The second was probably meant to be another tooth, most often its neighbour or its mirror.

    Passes: {"keep": [{"id": "k1", "strength": "must", "hold": ["11", "21"]}]}
    Fails: {"keep": [{"id": "k1", "strength": "must", "hold": ["11", "11"]}]}
    """
    for place in whole.places:
        if place.pointer == "/teeth":
            yield from _twice(mentions(place, ARCHES))
        for member in _LISTS:
            yield from _twice(mentions(place, (member,)))


def _twice(named: Iterable[Mention]) -> Iterator[Told]:
    seen: dict[str, str] = {}
    for tooth in named:
        first = seen.setdefault(tooth.name, tooth.pointer)
        if first != tooth.pointer:
            yield told(tooth.pointer, tooth.owner, tooth=tooth.name, first=first)


@rule(
    "tooth-in-wrong-arch",
    Severity.STOP,
    title="A tooth is listed in the other arch.",
    do="Move the tooth to its own arch, or correct its number.",
)
def tooth_in_wrong_arch(whole: Whole) -> Iterator[Told]:
    """`teeth.upper` lists upper teeth only, `teeth.lower` lower teeth only.

    A lower number among the upper teeth may be a slip, or a number of another notation.

    Passes: {"teeth": {"upper": ["12", "11", "21"], "lower": ["41", "31"]}}
    Fails: {"teeth": {"upper": ["12", "11", "31"], "lower": ["41"]}}
    """
    place = next(whole.of("teeth"))
    for tooth in mentions(place, ARCHES):
        if arch_of(tooth.name) != tooth.member:
            yield told(tooth.pointer, tooth=tooth.name, arch=tooth.member, expected=arch_of(tooth.name))


@rule(
    "particulars-twice",
    Severity.STOP,
    title="One tooth has two entries of particulars.",
    do="Put all that is not ordinary about a tooth in one entry.",
)
def particulars_twice(whole: Whole) -> Iterator[Told]:
    """A tooth has one entry in `teeth.particulars`, with all its states.

    Of two entries one may belong to another tooth.

    Passes: {"teeth": {"upper": ["12", "11", "21"], "lower": ["41"],
                       "particulars": [{"tooth": "11", "states": ["crown", "root-filled"]}]}}
    Fails: {"teeth": {"upper": ["12", "11", "21"], "lower": ["41"],
                      "particulars": [{"tooth": "11", "states": ["crown"]}, {"tooth": "11", "states": ["veneer"]}]}}
    """
    entries = (tooth for place in whole.of("teeth") for tooth in mentions(place, ("tooth",)))
    yield from _twice(entries)


RULES = (tooth_not_present, tooth_listed_twice, tooth_in_wrong_arch, particulars_twice)
