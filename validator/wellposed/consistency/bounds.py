"""Bounds that are there, in order, and not below nothing."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from wellposed.consistency.whole import Place, Written
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.clauses import Movement, Reach
from wellposed.model.findings import ToothFinding
from wellposed.model.means import EnamelReduction
from wellposed.vocabulary.measures import SIZES

_ROUNDING = 1e-9
TOOTH_SIZES = ("tooth-width", "crown-height")


@rule(
    "bounds-missing",
    Severity.STOP,
    title="A clause gives no bound.",
    do="State at least one bound.",
)
def bounds_missing(whole: Written) -> Iterator[Told]:
    """A goal on a measure and a movement have `at_least` or `at_most`; a reduction `per_contact` or `in_all`.

    Without one nothing is said about how much, and the laboratory would have to guess.

    Passes: {"goals": [{"id": "g1", "strength": "must", "measure": "overjet", "at_most": 3, "unit": "mm"}]}
    Fails: {"goals": [{"id": "g1", "strength": "must", "measure": "overjet", "unit": "mm"}]}
    """
    for place in whole.of("goals", "movements", "allow"):
        taken = isinstance(place.part, EnamelReduction)
        members = ["per_contact", "in_all"] if taken else ["at_least", "at_most"]
        bounded = taken or isinstance(place.part, Reach | Movement)
        if bounded and all(place.said(member) is None for member in members):
            yield told(place.pointer, place.owner, expected=members)


@rule(
    "bounds-crossed",
    Severity.STOP,
    title="The lower bound lies above the upper one.",
    do="Exchange or correct the bounds.",
)
def bounds_crossed(whole: Written) -> Iterator[Told]:
    """`at_least` is not above `at_most`; of a reduction, not above what its contacts or `in_all` permit.

    Nothing lies between crossed bounds. They were exchanged, or one of them is a slip.

    Passes: {"goals": [{"id": "g1", "strength": "must", "measure": "overjet", "at_least": 2, "at_most": 2,
                        "unit": "mm"}]}
    Fails: {"goals": [{"id": "g1", "strength": "must", "measure": "overjet", "at_least": 3, "at_most": 2,
                       "unit": "mm"}]}
    """
    for place in whole.of("goals", "movements", "allow", "expect"):
        least, most = place.said("at_least"), _most(whole, place)
        if least is not None and least > most + _ROUNDING:
            facts = {"least": least, "most": most, "unit": place.said("unit")}
            yield told(f"{place.pointer}/at_least", place.owner, **facts)


def _most(whole: Written, place: Place) -> float:
    """The upper bound of a part; infinite where it has none."""
    part = place.part
    if not isinstance(part, EnamelReduction):
        most = place.said("at_most")
        return inf if most is None else float(most)
    contacts = len(whole.reduced(part))
    each = inf if part.per_contact is None or not contacts else round(part.per_contact * contacts, 6)
    return min(each, inf if part.in_all is None else part.in_all)


@rule(
    "negative-size",
    Severity.STOP,
    title="A size is below nothing.",
    do="Correct the number; crowding and spacing are two measures, both 0 or more.",
)
def negative_size(whole: Written) -> Iterator[Told]:
    """Crowding, spacing, widths, depths and heights are 0 or more.

    A minus before crowding is often meant as spacing, and the other way about: both readings are possible.

    Passes: {"findings": [{"id": "f1", "measure": "upper-crowding", "value": 0, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-crowding", "value": -2, "unit": "mm"}]}
    """
    for place in whole.of("findings", "goals", "predicted"):
        measure = place.said("measure") or place.said("tooth_measure")
        if measure in SIZES or measure in TOOTH_SIZES:
            yield from (
                told(pointer, place.owner, measure=measure, value=value, unit=place.said("unit"))
                for pointer, value in values_of(place)
                if value < 0
            )


def values_of(place: Place) -> Iterator[tuple[str, float]]:
    """Every value a finding, a goal or a prediction gives its measure, and where."""
    if isinstance(place.part, ToothFinding):
        yield from ((f"{place.pointer}/values/{tooth}", value) for tooth, value in place.part.values.items())
        return
    for member in ("value", "at_least", "at_most"):
        if place.said(member) is not None:
            yield f"{place.pointer}/{member}", place.said(member)


RULES = (bounds_missing, bounds_crossed, negative_size)
