"""Amounts and their units."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, expected, found, must, rows, told_by

from wellposed.consistency import quantities

PERCENT_OF_MM = {"expected": ["mm"], "unit": "percent"}


def moved(motion, unit, **said):
    return {"movements": [must("m1", teeth=["11"], motion=motion, at_most=1, unit=unit, **said)]}


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "A measure in millimetres is not in degrees.",
            {"findings": [found("f1", "overjet", 2, "deg")]},
            [("/findings/0/unit", ("f1",), {"unit": "deg", "expected": ["mm"], "measure": "overjet"})],
        ),
        ("Overbite may be in percent.", {"findings": [found("f1", "overbite", 20, "percent")]}, []),
        (
            "But not in degrees.",
            {"keep": [must("k1", measure="overbite", within=1, unit="deg")]},
            [("/keep/0/unit", ("k1",), {"unit": "deg", "expected": ["mm", "percent"], "measure": "overbite"})],
        ),
        (
            "A rotation is in degrees.",
            {"findings": [{"id": "f1", "tooth_measure": "rotation", "values": {"11": 5}, "unit": "mm"}]},
            [("/findings/0/unit", ("f1",), {"unit": "mm", "expected": ["deg"], "tooth_measure": "rotation"})],
        ),
        (
            "A goal and an expectation are in the unit of the measure.",
            {
                "goals": [must("g1", measure="interincisal-angle", at_most=130, unit="mm")],
                "expect": [expected("e1", "anb-angle", -2, ground="growth")],
            },
            [
                ("/goals/0/unit", ("g1",), {"unit": "mm", "expected": ["deg"], "measure": "interincisal-angle"}),
                ("/expect/0/unit", ("e1",), {"unit": "mm", "expected": ["deg"], "measure": "anb-angle"}),
            ],
        ),
        ("Intrusion is in millimetres.", moved("intrusion", "mm"), []),
        (
            "Torque is not.",
            moved("labial-crown-torque", "mm"),
            [("/movements/0/unit", ("m1",), {"unit": "mm", "expected": ["deg"], "motion": "labial-crown-torque"})],
        ),
        (
            "A kept variable, a kept motion and a largest step have the unit of the variable.",
            {
                "keep": [
                    must("k1", variable="tip", teeth=["11"], within=1, unit="mm"),
                    must("k2", motion="mesial", teeth=["11"], within=1, unit="deg"),
                ],
                "staging": must("s1", largest_steps=[{"variable": "out", "amount": 0.2, "unit": "deg"}]),
            },
            [
                ("/keep/0/unit", ("k1",), {"unit": "mm", "expected": ["deg"], "variable": "tip"}),
                ("/keep/1/unit", ("k2",), {"unit": "deg", "expected": ["mm"], "motion": "mesial"}),
                ("/staging/largest_steps/0/unit", ("s1",), {"unit": "deg", "expected": ["mm"], "variable": "out"}),
            ],
        ),
        (
            "Allowances are in millimetres, a movement by its motion.",
            {
                "allow": [
                    allowed("a1", "enamel-reduction", arch="upper", in_all=1, unit="percent"),
                    allowed("a2", "widening", arch="upper", up_to=1, unit="percent"),
                    allowed("a3", "movement", teeth=["11"], motion="mesial-crown-tip", up_to=1, unit="deg"),
                    allowed("a4", "posterior-open-bite", up_to=1, unit="percent"),
                    allowed("a5", "class-ii-elastics", sides=["left"], up_to=1, unit="percent"),
                ]
            },
            [
                ("/allow/0/unit", ("a1",), PERCENT_OF_MM | {"use": "enamel-reduction"}),
                ("/allow/1/unit", ("a2",), PERCENT_OF_MM | {"use": "widening"}),
                ("/allow/3/unit", ("a4",), PERCENT_OF_MM | {"use": "posterior-open-bite"}),
                ("/allow/4/unit", ("a5",), PERCENT_OF_MM | {"use": "class-ii-elastics"}),
            ],
        ),
        (
            "Room to be left is in millimetres.",
            {"goals": [must("g1", leave="11-21", amount=1, unit="percent")]},
            [("/goals/0/unit", ("g1",), PERCENT_OF_MM)],
        ),
        (
            "An overcorrection has the unit of its movement, or is a share of it.",
            {
                "movements": [
                    must("m1", teeth=["11"], motion="mesial", at_most=1, unit="mm", overcorrection=over)
                    for over in (
                        {"value": 10, "unit": "percent"},
                        {"value": 1, "unit": "mm"},
                        {"value": 1, "unit": "deg"},
                    )
                ]
            },
            [
                (
                    "/movements/2/overcorrection/unit",
                    ("m1",),
                    {"unit": "deg", "expected": ["mm", "percent"], "motion": "mesial"},
                )
            ],
        ),
        (
            "That of an alignment may be in any.",
            {"goals": [must("g1", align=["11"], overcorrection={"value": 5, "unit": "deg"})]},
            [],
        ),
    ),
)
def test_unit_not_allowed(changes, expected):
    assert told_by(quantities.unit_not_allowed, **changes) == expected


def elastics(**said):
    return {"allow": [allowed("x1", "class-ii-elastics", sides=["left"], **said)]}


def plane(**said):
    return {"appliance": [{"id": "x1", "part": "bite-plane", "arch": "upper", **said}]}


@pytest.mark.parametrize(
    "changes, without_unit, without_amount",
    **rows(
        (
            "Elastics with an amount only.",
            elastics(up_to=1),
            [("/allow/0/up_to", ("x1",), {"name": "up_to", "expected": "a unit"})],
            [],
        ),
        (
            "Elastics with a unit only.",
            elastics(unit="mm"),
            [],
            [("/allow/0/unit", ("x1",), {"name": "up_to", "expected": "up_to"})],
        ),
        (
            "A size of nothing is an amount.",
            plane(size=0),
            [("/appliance/0/size", ("x1",), {"name": "size", "expected": "a unit"})],
            [],
        ),
        (
            "A part with a unit only.",
            plane(unit="mm"),
            [],
            [("/appliance/0/unit", ("x1",), {"name": "size", "expected": "size"})],
        ),
        ("Both.", plane(size=2, unit="mm") | elastics(up_to=2, unit="mm"), [], []),
        ("Neither.", plane() | elastics(), [], []),
    ),
)
def test_unit_missing_and_amount_missing(changes, without_unit, without_amount):
    assert told_by(quantities.unit_missing, **changes) == without_unit
    assert told_by(quantities.amount_missing, **changes) == without_amount
