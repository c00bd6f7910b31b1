"""Bounds that are there, in order, and not below nothing."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, expected, found, must, rows, told_by

from wellposed.consistency import bounds


def reduced(**said):
    return {"allow": [allowed("a1", "enamel-reduction", unit="mm", **said)]}


def reach(measure="overjet", unit="mm", **said):
    return {"goals": [must("g1", measure=measure, unit=unit, **said)]}


def moved(**said):
    return {"movements": [must("m1", teeth=["11"], motion="intrusion", unit="mm", **said)]}


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("A goal without.", reach(), [("/goals/0", ("g1",), {"expected": ["at_least", "at_most"]})]),
        ("A movement without.", moved(), [("/movements/0", ("m1",), {"expected": ["at_least", "at_most"]})]),
        ("One bound will do.", reach(at_least=2) | moved(at_most=1), []),
        ("Nothing is a bound.", reach(at_most=0) | moved(at_least=0), []),
        (
            "A reduction without: what it must reach at least is not what is permitted.",
            reduced(arch="upper", at_least=1),
            [("/allow/0", ("a1",), {"expected": ["per_contact", "in_all"]})],
        ),
        ("A reduction by the contact.", reduced(arch="upper", per_contact=0.2), []),
        ("A reduction in all.", reduced(arch="upper", in_all=0), []),
        ("Other allowances and goals have their own amount.", {"goals": [must("g1", align=["11", "21"])]}, []),
    ),
)
def test_bounds_missing(changes, expected):
    assert told_by(bounds.bounds_missing, **changes) == expected


def crossed(pointer, owner, least, most):
    return [(f"{pointer}/at_least", (owner,), {"least": least, "most": most, "unit": "mm"})]


THREE = ["13-12", "12-11", "11-21"]


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("A goal just above.", reach(at_least=2.01, at_most=2), crossed("/goals/0", "g1", 2.01, 2)),
        ("A goal at one value.", reach(at_least=2, at_most=2), []),
        ("Rounding is no crossing.", reach(at_least=0.1 + 0.2, at_most=0.3), []),
        ("A movement.", moved(at_least=1.5, at_most=1), crossed("/movements/0", "m1", 1.5, 1)),
        ("One bound crosses nothing.", moved(at_least=200), []),
        (
            "An expectation.",
            {"expect": [expected("e1", "overjet", 1, 0.5, ground="growth")]},
            crossed("/expect/0", "e1", 1, 0.5),
        ),
        (
            "A reduction above its whole.",
            reduced(arch="upper", in_all=1, at_least=1.2),
            crossed("/allow/0", "a1", 1.2, 1),
        ),
        (
            "A reduction just above what its three contacts permit.",
            reduced(contacts=THREE, per_contact=0.4, at_least=1.21),
            crossed("/allow/0", "a1", 1.21, 1.2),
        ),
        ("Just what they permit.", reduced(contacts=THREE, per_contact=0.4, at_least=1.2), []),
        (
            "An arch has eleven contacts from first molar to first molar.",
            reduced(arch="upper", per_contact=0.1, at_least=1.11),
            crossed("/allow/0", "a1", 1.11, 1.1),
        ),
        (
            "Of contacts that are none, another rule speaks.",
            reduced(contacts=["13-15"], per_contact=0.4, at_least=1),
            [],
        ),
        (
            "The smaller of the two permits.",
            reduced(contacts=THREE, per_contact=0.4, in_all=1, at_least=1.1),
            crossed("/allow/0", "a1", 1.1, 1),
        ),
    ),
)
def test_bounds_crossed(changes, expected):
    assert told_by(bounds.bounds_crossed, **changes) == expected


def below(pointer, owner, measure, value):
    return [(pointer, (owner,), {"measure": measure, "value": value, "unit": "mm"})]


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "Crowding just below nothing.",
            {"findings": [found("f1", "lower-crowding", -0.01)]},
            below("/findings/0/value", "f1", "lower-crowding", -0.01),
        ),
        ("No crowding.", {"findings": [found("f1", "lower-crowding", 0)]}, []),
        ("Overjet may be reversed.", {"findings": [found("f1", "overjet", -3)]}, []),
        (
            "A goal for a width.",
            reach("upper-inter-canine-width", at_most=-1),
            below("/goals/0/at_most", "g1", "upper-inter-canine-width", -1),
        ),
        (
            "A tooth's width.",
            {"findings": [{"id": "f1", "tooth_measure": "tooth-width", "values": {"11": 8, "21": -8}, "unit": "mm"}]},
            below("/findings/0/values/21", "f1", "tooth-width", -8),
        ),
        (
            "A displacement has a sense.",
            {"findings": [{"id": "f1", "tooth_measure": "displacement", "values": {"11": -2}, "unit": "mm"}]},
            [],
        ),
        (
            "Less crowding may be expected.",
            {"expect": [expected("e1", "lower-crowding", -2, ground="leeway-space")]},
            [],
        ),
    ),
)
def test_negative_size(changes, expected):
    assert told_by(bounds.negative_size, **changes) == expected
