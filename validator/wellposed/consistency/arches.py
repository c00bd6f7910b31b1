"""Arches, sides and pairs of teeth: do the words agree with the numbers?"""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import CONTACT_MEMBERS, Place, Whole, Written, existing, mentions
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.means import AuxiliaryUse, Elastics, EnamelReduction
from wellposed.vocabulary.teeth import ARCHES, SIDES, arch_of, side_of

PAIRED = ("overbite", "overjet", "transverse-overlap-right", "transverse-overlap-left")
_TEETH = ("teeth", "align", "tooth")
_OF_AN_ARCH = ("arch", "level", "close_arch")


def _arch_in(name: object) -> str | None:
    """The arch a measure's own name speaks of."""
    return next((arch for arch in ARCHES if str(name).startswith(f"{arch}-")), None)


def _arch_said(place: Place) -> str | None:
    if isinstance(place.part, EnamelReduction):
        return None
    arch: str | None = place.said("arch") or _arch_in(place.said("measure"))
    return arch


@rule(
    "arch-mismatch",
    Severity.STOP,
    title="The arch and the teeth of a part disagree.",
    do="Correct the arch or the tooth.",
)
def arch_mismatch(whole: Written) -> Iterator[Told]:
    """Where a part names an arch, by `arch` or in its measure, its teeth and contacts are of that arch.

    One of the two is a slip, and nobody but the prescriber knows which.

    Passes: {"allow": [{"id": "a1", "use": "widening", "arch": "upper", "teeth": ["14", "24"],
                        "up_to": 1, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "widening", "arch": "upper", "teeth": ["14", "34"],
                       "up_to": 1, "unit": "mm"}]}
    """
    for place in whole.places:
        arch = _arch_said(place)
        if arch is None:
            continue
        for tooth in mentions(place, ("teeth", "tooth")):
            if arch_of(tooth.name) != arch:
                yield told(tooth.pointer, place.owner, tooth=tooth.name, arch=arch)
        for contact in mentions(place, ("contacts",)):
            if arch not in {arch_of(tooth) for tooth in existing(contact)} and existing(contact):
                yield told(contact.pointer, place.owner, contact=contact.name, arch=arch)


@rule(
    "side-mismatch",
    Severity.STOP,
    title="The side and the teeth of a part disagree.",
    do="Correct the side or the tooth. Sides are the patient's.",
)
def side_mismatch(whole: Written) -> Iterator[Told]:
    """Where a part names a side, its teeth are of that side; so is the tooth pair of a transverse overlap.

    Right and left are the patient's; seen from the front they are easily exchanged.

    Passes: {"findings": [{"id": "f1", "measure": "transverse-overlap-right", "pair": ["16", "46"],
                           "value": 2, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "transverse-overlap-right", "pair": ["26", "36"],
                          "value": 2, "unit": "mm"}]}
    """
    for place in whole.places:
        sides = _sides_said(place)
        members = ("teeth", "pair") if place.said("measure") in PAIRED else ("teeth",)
        for tooth in mentions(place, members):
            if sides and side_of(tooth.name) not in sides:
                yield told(tooth.pointer, place.owner, tooth=tooth.name, sides=sides)


def _sides_said(place: Place) -> list[str]:
    one = place.said("side")
    said = place.said("sides") or ([one] if one else [])
    measure = str(place.said("measure"))
    return [side for side in SIDES if side in said or measure == f"transverse-overlap-{side}"]


@rule(
    "arch-not-treated",
    Severity.STOP,
    title="A clause is about the arch that is not treated.",
    do="Treat both arches, or take the clause out.",
)
def arch_not_treated(whole: Whole) -> Iterator[Told]:
    """Where `treat` names one arch, no goal, movement or allowance is about the other.

    Elastics and auxiliaries may hold on to the other arch: they move nothing by themselves.

    Passes: {"treat": {"arches": "lower"}, "goals": [{"id": "g1", "strength": "must", "level": "lower"}]}
    Fails: {"treat": {"arches": "upper"}, "goals": [{"id": "g1", "strength": "must", "level": "lower"}]}
    """
    treat = whole.prescription.treat
    if treat is None or treat.arches == "both":
        return
    for place in whole.of("goals", "movements", "allow"):
        found = (pointer for pointer, arch in _concerned(place) if arch != treat.arches)
        pointer = next(found, None)
        if pointer is not None:
            yield told(pointer, place.owner, expected=treat.arches)


def _concerned(place: Place) -> Iterator[tuple[str, str]]:
    """Every arch a clause is about, and where it says so."""
    if isinstance(place.part, Elastics | AuxiliaryUse):
        return
    measured = _arch_in(place.said("measure"))
    if measured:
        yield f"{place.pointer}/measure", measured
    yield from ((arch.pointer, arch.name) for arch in mentions(place, _OF_AN_ARCH))
    yield from ((tooth.pointer, arch_of(tooth.name)) for tooth in mentions(place, _TEETH))
    for contact in mentions(place, CONTACT_MEMBERS):
        yield from ((contact.pointer, arch_of(tooth)) for tooth in existing(contact))


@rule(
    "pair-not-meant",
    Severity.STOP,
    title="This measure is not taken at a pair of teeth.",
    do="Leave `pair` out, or name the measure that is meant.",
)
def pair_not_meant(whole: Written) -> Iterator[Told]:
    """Only overbite, overjet and the transverse overlaps are taken at a named pair of teeth.

    Elsewhere a pair says nothing: either the measure or the pair was meant for something else.

    Passes: {"findings": [{"id": "f1", "measure": "overjet", "pair": ["12", "42"], "value": 2, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-midline", "pair": ["11", "41"], "value": 2, "unit": "mm"}]}
    """
    for place in whole.places:
        if place.said("pair") and place.said("measure") not in PAIRED:
            yield told(f"{place.pointer}/pair", place.owner, measure=place.said("measure"), expected=list(PAIRED))


@rule(
    "pair-not-one-of-each",
    Severity.STOP,
    title="A pair is not one upper and one lower tooth.",
    do="Name the upper tooth and the lower tooth the measure is taken at.",
)
def pair_not_one_of_each(whole: Written) -> Iterator[Told]:
    """The pair of teeth a measure is taken at is one upper and one lower tooth, in either order.

    Such a measure is how an upper tooth stands to the lower one; between two of one arch there is none.

    Passes: {"findings": [{"id": "f1", "measure": "overjet", "pair": ["42", "12"], "value": 2, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "overjet", "pair": ["12", "22"], "value": 2, "unit": "mm"}]}
    """
    for place in whole.places:
        pair = place.said("pair")
        if pair and place.said("measure") in PAIRED and {arch_of(tooth) for tooth in pair} != set(ARCHES):
            yield told(f"{place.pointer}/pair", place.owner, teeth=list(pair))


RULES = (arch_mismatch, side_mismatch, arch_not_treated, pair_not_meant, pair_not_one_of_each)
