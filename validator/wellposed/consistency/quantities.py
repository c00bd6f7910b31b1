"""Amounts and their units."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from wellposed.consistency.whole import Place, Written
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.clauses import Leave
from wellposed.model.making import Appliance
from wellposed.model.means import (
    ArchSlide,
    ClassElastics,
    EnamelReduction,
    IncisorTravel,
    PosteriorOpenBite,
    VerticalMovement,
    WidthChange,
)
from wellposed.model.setup import PlannedReduction
from wellposed.vocabulary.measures import allowed_units
from wellposed.vocabulary.motions import VARIABLE_UNITS, unit_of
from wellposed.vocabulary.units import MM, PERCENT

_BY_MILLIMETRE = (
    *(EnamelReduction, IncisorTravel, WidthChange, ArchSlide, VerticalMovement, PosteriorOpenBite),
    *(ClassElastics, Leave, PlannedReduction),
)


def units_of(place: Place) -> tuple[str, ...]:
    """The units a part may be given in; none where it has no unit, or any would do."""
    measure = place.said("measure") or place.said("tooth_measure")
    if measure:
        return allowed_units(measure)
    if place.said("motion"):
        return (unit_of(place.said("motion")),)
    if place.said("variable"):
        return (VARIABLE_UNITS[place.said("variable")],)
    return (MM,) if isinstance(place.part, _BY_MILLIMETRE) else ()


@rule(
    "unit-not-allowed",
    Severity.STOP,
    title="The unit is not one this quantity is given in.",
    do="Correct the unit, and see whether the number was meant in it.",
)
def unit_not_allowed(whole: Written) -> Iterator[Told]:
    """A measure, a motion, a movement or an allowance is given in the unit it is defined in.

    Only overbite has two, `mm` and `percent`. An overcorrection of a movement may also be in `percent` of it.
    Nothing is converted: the number may have been meant for something else.

    Passes: {"findings": [{"id": "f1", "measure": "overbite", "value": 40, "unit": "percent"}]}
    Fails: {"findings": [{"id": "f1", "measure": "overjet", "value": 4, "unit": "deg"}]}
    """
    for place in whole.places:
        expected, unit, more = units_of(place), place.said("unit"), place.said("overcorrection")
        if unit and expected and unit not in expected:
            yield told(f"{place.pointer}/unit", place.owner, unit=unit, expected=list(expected), **_of(place))
        if more and expected and more.unit not in (*expected, PERCENT):
            facts = {"unit": more.unit, "expected": [*expected, PERCENT], **_of(place)}
            yield told(f"{place.pointer}/overcorrection/unit", place.owner, **facts)


def _of(place: Place) -> dict[str, Any]:
    """What the quantity is of, under its own name."""
    names = ("measure", "tooth_measure", "motion", "variable", "use")
    return {name: place.said(name) for name in names}


@rule(
    "unit-missing",
    Severity.STOP,
    title="An amount has no unit.",
    do="State the unit.",
)
def unit_missing(whole: Written) -> Iterator[Told]:
    """The amount of elastics and the size of an appliance part carry their unit.

    A bare number may be millimetres, degrees or a share.

    Passes: {"appliance": [{"id": "b1", "part": "bite-plane", "arch": "upper", "size": 2, "unit": "mm"}]}
    Fails: {"appliance": [{"id": "b1", "part": "bite-plane", "arch": "upper", "size": 2}]}
    """
    for place, member in _loose(whole):
        if place.said(member) is not None and place.said("unit") is None:
            yield told(f"{place.pointer}/{member}", place.owner, name=member, expected="a unit")


@rule(
    "amount-missing",
    Severity.STOP,
    title="A unit stands without an amount.",
    do="State the amount, or leave the unit out.",
)
def amount_missing(whole: Written) -> Iterator[Told]:
    """Where elastics or an appliance part give a unit, they give the amount.

    The amount was forgotten, or the unit was left over: the usual amount may not be what was meant.

    Passes: {"allow": [{"id": "a1", "use": "class-ii-elastics", "sides": ["left"], "up_to": 1, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "class-ii-elastics", "sides": ["left"], "unit": "mm"}]}
    """
    for place, member in _loose(whole):
        if place.said(member) is None and place.said("unit") is not None:
            yield told(f"{place.pointer}/unit", place.owner, name=member, expected=member)


def _loose(whole: Written) -> Iterator[tuple[Place, str]]:
    """The parts whose amount and unit may both be left out, and the name of the amount."""
    for place in whole.of("allow", "appliance"):
        if isinstance(place.part, ClassElastics):
            yield place, "up_to"
        elif isinstance(place.part, Appliance):
            yield place, "size"


RULES = (unit_not_allowed, unit_missing, amount_missing)
