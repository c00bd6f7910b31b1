"""Means said twice, allowed and excluded at once, or counted on without ground."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Iterator
from typing import TypeVar

from wellposed import norms
from wellposed.consistency.whole import Place, Whole, Written, mentions
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.base import Part
from wellposed.model.means import EnamelReduction, Expectation, WidthChange
from wellposed.vocabulary.contacts import contacts_of, normal, teeth_of
from wellposed.vocabulary.teeth import ARCHES, UPPER, arch_of, mirrored
from wellposed.vocabulary.units import MM

T = TypeVar("T", bound=Hashable)
_MEANS_OF = {
    "intrusion": "intrusion",
    "extrusion": "extrusion",
    "distal": "distal-movement",
    "mesial": "mesial-movement",
}
_FIRST_MOLARS = ("16", "26")
_ROUNDING = 1e-9


@rule(
    "reduction-said-twice",
    Severity.STOP,
    title="Two allowances reduce enamel at one contact.",
    do="Name each contact in one allowance, with the amount that holds.",
)
def reduction_said_twice(whole: Written) -> Iterator[Told]:
    """A contact stands in one enamel reduction only; an arch stands for its contacts from molar to molar.

    Enamel does not grow back: whether two amounts add up or one replaces the other must not be guessed.

    Passes: {"allow": [{"id": "a1", "use": "enamel-reduction", "arch": "upper", "in_all": 1, "unit": "mm"},
                       {"id": "a2", "use": "enamel-reduction", "arch": "lower", "in_all": 1, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["11-21"], "in_all": 0.2, "unit": "mm"},
                      {"id": "a2", "use": "enamel-reduction", "arch": "upper", "in_all": 1, "unit": "mm"}]}
    """
    for first, later, shared in _sharing(whole.of("allow"), lambda place: _reduced(whole, place.part)):
        yield told(later.pointer, first.owner, later.owner, contacts=shared, first=first.pointer)


def _reduced(whole: Written, part: Part) -> list[str]:
    """The contacts of a reduction that says where; of one that does not, another rule speaks."""
    if isinstance(part, EnamelReduction) and (part.contacts or part.arch):
        return whole.reduced(part)
    return []


def _sharing(places: Iterable[Place], what: Callable[[Place], Iterable[T]]) -> Iterator[tuple[Place, Place, list[T]]]:
    """Each part with the first earlier one that speaks of the same, and what they share."""
    owners: dict[T, Place] = {}
    for place in places:
        shared: dict[str, list[T]] = {}
        for one in dict.fromkeys(what(place)):
            first = owners.setdefault(one, place)
            if first != place:
                shared.setdefault(first.pointer, []).append(one)
        yield from ((owners[same[0]], place, same) for same in shared.values())


@rule(
    "width-said-twice",
    Severity.STOP,
    title="Two allowances widen, or two narrow, one pair of teeth.",
    do="Name each pair in one allowance, with the amount that holds.",
)
def width_said_twice(whole: Written) -> Iterator[Told]:
    """A pair of teeth stands in one widening, and in one narrowing, only.

    Whether two amounts add up or the larger counts must not be guessed.

    Passes: {"allow": [{"id": "a1", "use": "widening", "arch": "upper", "up_to": 2, "unit": "mm"},
                       {"id": "a2", "use": "widening", "arch": "lower", "up_to": 1, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "widening", "arch": "upper", "up_to": 2, "unit": "mm"},
                      {"id": "a2", "use": "widening", "arch": "upper", "teeth": ["13"], "up_to": 1, "unit": "mm"}]}
    """
    for first, later, shared in _sharing(whole.of("allow"), lambda place: _widened(whole, place.part)):
        teeth = sorted({tooth for _, pair in shared for tooth in pair})
        yield told(later.pointer, first.owner, later.owner, teeth=teeth, first=first.pointer, use=shared[0][0])


def _widened(whole: Written, part: Part) -> list[tuple[str, tuple[str, ...]]]:
    """What is done to which pairs of teeth."""
    if not isinstance(part, WidthChange):
        return []
    return [(part.use, tuple(sorted((tooth, mirrored(tooth))))) for tooth in whole.widened(part)]


@rule(
    "excluded-and-allowed",
    Severity.STOP,
    title="A means is allowed and excluded at the same place.",
    do="Take out the allowance or the exclusion, or part their teeth.",
)
def excluded_and_allowed(whole: Written) -> Iterator[Told]:
    """What is excluded is not allowed at the same teeth or in the same arch.

    An exclusion of named teeth beside an allowance for an arch is an exception to it, and no fault.

    Passes: {"allow": [{"id": "a1", "use": "widening", "arch": "upper", "up_to": 2, "unit": "mm"}],
             "exclude": [{"id": "x1", "means": "widening", "arch": "lower"}]}
    Fails: {"allow": [{"id": "a1", "use": "widening", "arch": "upper", "up_to": 2, "unit": "mm"}],
            "exclude": [{"id": "x1", "means": "widening"}]}
    """
    for allowed in whole.of("allow"):
        means = _MEANS_OF.get(allowed.said("motion"), allowed.said("use"))
        for excluded in whole.of("exclude"):
            if excluded.said("means") == means and _overlap(allowed, excluded):
                yield told(allowed.pointer, allowed.owner, excluded.owner, name=means, first=excluded.pointer)


def _overlap(allowed: Place, excluded: Place) -> bool:
    contacts = mentions(allowed, ("contacts",))
    named = {*(allowed.said("teeth") or ()), *(tooth for contact in contacts for tooth in teeth_of(contact.name))}
    if excluded.said("teeth"):
        return bool(named & set(excluded.said("teeth")))
    arches = {arch_of(tooth) for tooth in named} or {allowed.said("arch")} - {None} or set(ARCHES)
    return excluded.said("arch") is None or excluded.said("arch") in arches


@rule(
    "derotation-room",
    Severity.STOP,
    title="More room is expected from turning molars than they give, or at another place.",
    do="Expect it at the mesial contact of an upper first molar, within the limit, or not at all.",
)
def derotation_room(whole: Whole) -> Iterator[Told]:
    """Room from derotation is expected as less `upper-crowding` at the contact mesial of an upper first molar,
    and no more of it than was ever measured there.

    Published gains are small and uncertain, and part of them is taken from the tooth behind.

    Passes: {"expect": [{"id": "e1", "measure": "upper-crowding", "at_least": -2, "at_most": 0, "unit": "mm",
                         "ground": "derotation", "contacts": ["16-15"]}]}
    Fails: {"expect": [{"id": "e1", "measure": "upper-crowding", "at_least": -3, "at_most": 0, "unit": "mm",
                        "ground": "derotation", "contacts": ["16-15"]}]}
    """
    for place in whole.of("expect"):
        part = place.part
        if isinstance(part, Expectation) and part.ground == "derotation":
            yield from _derotation(whole, place, part)


def _derotation(whole: Whole, place: Place, part: Expectation) -> Iterator[Told]:
    expected = _mesial_of_molars(whole)
    if part.measure != "upper-crowding":
        yield told(f"{place.pointer}/measure", place.owner, measure=part.measure, expected="upper-crowding")
        return
    if part.contacts is None:
        yield told(place.pointer, place.owner, expected=expected)
    for contact in mentions(place, ("contacts",)):
        if normal(contact.name) not in expected:
            yield told(contact.pointer, place.owner, contact=contact.name, expected=expected)
    most = norms.value("kinematics.derotation-room") * len(part.contacts or ())
    if part.contacts and part.unit == MM and -part.at_least > most + _ROUNDING:
        facts = {"value": part.at_least, "most": most, "unit": part.unit}
        yield told(f"{place.pointer}/at_least", place.owner, **facts)


def _mesial_of_molars(whole: Whole) -> list[str]:
    """The contact mesial of each upper first molar that stands."""
    beside = contacts_of(whole.line(UPPER))
    right, left = _FIRST_MOLARS
    return [name for name in beside if name.startswith(f"{right}-") or name.endswith(f"-{left}")]


@rule(
    "ground-not-said",
    Severity.ASK,
    title="A change is counted on, and its ground is not said.",
    do="Say in `words` what the expectation rests on.",
)
def ground_not_said(whole: Whole) -> Iterator[Told]:
    """An expectation whose ground is `other` says in `words` what it rests on.

    What is expected is free room in the arithmetic; whoever reads it must be able to judge it.

    Passes: {"expect": [{"id": "e1", "measure": "overjet", "at_least": -2, "at_most": 0, "unit": "mm",
                         "ground": "growth"}]}
    Fails: {"expect": [{"id": "e1", "measure": "overjet", "at_least": -2, "at_most": 0, "unit": "mm",
                        "ground": "other"}]}
    """
    for place in whole.of("expect"):
        if place.said("ground") == "other" and not (place.said("words") or "").strip():
            yield told(f"{place.pointer}/ground", place.owner, expected="words")


RULES = (
    *(reduction_said_twice, width_said_twice, excluded_and_allowed),
    *(derotation_room, ground_not_said),
)
