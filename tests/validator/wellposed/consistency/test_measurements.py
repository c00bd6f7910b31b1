"""Measurements: likely, given once, and of something teeth can change."""

import pytest
from tests.validator.wellposed.consistency.ordinary import found, must, rows, told_by

from wellposed import norms
from wellposed.consistency import measurements
from wellposed.vocabulary.measures import MEASURES, TOOTH_MEASURES, allowed_units


def odd(pointer, value, least, most, measure="overjet", unit="mm"):
    facts = {"measure": measure, "unit": unit, "least": least, "most": most, "value": value}
    return [(pointer, (pointer.split("/")[1][0] + "1",), facts)]


def overjet(value, unit="mm"):
    return {"findings": [found("f1", "overjet", value, unit)]}


def of_teeth(measure, values):
    return {"findings": [{"id": "f1", "tooth_measure": measure, "values": values, "unit": "mm"}]}


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Just above the most.", overjet(20.01), odd("/findings/0/value", 20.01, -10, 20)),
        ("At the most.", overjet(20), []),
        ("At the least.", overjet(-10), []),
        ("Just below the least.", overjet(-10.01), odd("/findings/0/value", -10.01, -10, 20)),
        (
            "Percent have a range of their own.",
            {"findings": [found("f1", "overbite", 151, "percent")]},
            odd("/findings/0/value", 151, -100, 150, "overbite", "percent"),
        ),
        ("Of a wrong unit another rule speaks.", overjet(100, "deg"), []),
        (
            "Of a negative size another rule speaks.",
            {"findings": [found("f1", "upper-crowding", -30)]},
            [],
        ),
        (
            "A goal is looked at, too.",
            {"goals": [must("g1", measure="overjet", at_least=2, at_most=25, unit="mm")]},
            odd("/goals/0/at_most", 25, -10, 20),
        ),
        ("A negative width is left to that rule, too.", of_teeth("tooth-width", {"11": -1}), []),
        (
            "No width at all is not likely.",
            of_teeth("tooth-width", {"11": 0}),
            odd("/findings/0/values/11", 0, 3, 14, "tooth-width"),
        ),
        (
            "Widths are looked at tooth by tooth.",
            of_teeth("tooth-width", {"11": 14, "21": 14.1}),
            odd("/findings/0/values/21", 14.1, 3, 14, "tooth-width"),
        ),
        (
            "So are crown heights.",
            of_teeth("crown-height", {"11": 1.9, "21": 2}),
            odd("/findings/0/values/11", 1.9, 2, 16, "crown-height"),
        ),
    ),
)
def test_implausible_value(changes, expected):
    assert told_by(measurements.implausible_value, **changes) == expected


def test_every_measure_has_a_range_in_each_of_its_units():
    kinds = [(measure, unit) for measure in (*MEASURES, *TOOTH_MEASURES) for unit in allowed_units(measure)]
    keys = [f"plausible.{unit}.{measure}" for measure, unit in kinds]
    assert [key for key in keys if not norms.value(f"{key}.least") < norms.value(f"{key}.most")] == []


@pytest.mark.parametrize(
    "findings, expected",
    **rows(
        (
            "Two values of one measure.",
            [found("f1", "overjet", 2), found("f2", "overjet", 3)],
            [
                (
                    "/findings/1/value",
                    ("f1", "f2"),
                    {"measure": "overjet", "unit": "mm", "value": 3, "first": "/findings/0/value"},
                )
            ],
        ),
        ("One value twice.", [found("f1", "overjet", 2), found("f2", "overjet", 2.0)], []),
        (
            "A pair may be written either way round.",
            [found("f1", "overjet", 2, pair=["12", "42"]), found("f2", "overjet", 3, pair=["42", "12"])],
            [
                (
                    "/findings/1/value",
                    ("f1", "f2"),
                    {"measure": "overjet", "unit": "mm", "value": 3, "first": "/findings/0/value"},
                )
            ],
        ),
        (
            "Two pairs.",
            [found("f1", "overjet", 2, pair=["12", "42"]), found("f2", "overjet", 3, pair=["11", "41"])],
            [],
        ),
        (
            "Two jaw positions.",
            [
                found("f1", "overjet", 2, jaw_position="intercuspal"),
                found("f2", "overjet", 3, jaw_position="retruded-contact"),
            ],
            [],
        ),
        ("Millimetres and percent.", [found("f1", "overbite", 2), found("f2", "overbite", 25, "percent")], []),
        (
            "Two widths of one tooth.",
            [
                {"id": "f1", "tooth_measure": "tooth-width", "values": {"11": 8, "12": 7}, "unit": "mm"},
                {"id": "f2", "tooth_measure": "tooth-width", "values": {"12": 6.5, "11": 8}, "unit": "mm"},
            ],
            [
                (
                    "/findings/1/values/12",
                    ("f1", "f2"),
                    {"measure": "tooth-width", "unit": "mm", "value": 6.5, "first": "/findings/0/values/12"},
                )
            ],
        ),
    ),
)
def test_measured_twice(findings, expected):
    assert told_by(measurements.measured_twice, findings=findings) == expected


def shift(first, second, **said):
    positions = (("f1", first, {"jaw_position": "intercuspal"}), ("f2", second, said))
    return [found(name, "overjet", value, **more) for name, value, more in positions]


KEEP = [must("k1", measure="overjet", within=1, unit="mm")]
RETRUDED = {"jaw_position": "retruded-contact"}


@pytest.mark.parametrize(
    "changes, second_position",
    **rows(
        ("Retruded contact and a keep.", {"findings": shift(0, 2, **RETRUDED), "keep": KEEP}, "retruded-contact"),
        ("A position not stated may be either.", {"findings": shift(0, 2), "keep": KEEP}, None),
    ),
)
def test_measured_in_two_jaw_positions(changes, second_position):
    measured = [
        {"id": "f1", "jaw_position": "intercuspal", "value": 0.0, "unit": "mm"},
        {"id": "f2", "jaw_position": second_position, "value": 2.0, "unit": "mm"},
    ]
    expected = [("/keep/0/measure", ("f1", "f2", "k1"), {"measure": "overjet", "measured": measured})]
    assert told_by(measurements.measured_in_two_jaw_positions, **changes) == expected


def test_the_pair_of_the_clause_is_that_of_the_findings():
    findings = [one | {"pair": ["12", "42"]} for one in shift(0, 2, **RETRUDED)]
    keep = [must("k1", measure="overjet", pair=["42", "12"], within=1, unit="mm")]
    told = told_by(measurements.measured_in_two_jaw_positions, findings=findings, keep=keep)
    assert [clauses for _, clauses, _ in told] == [("f1", "f2", "k1")]


@pytest.mark.parametrize(
    "changes",
    **rows(
        ("No clause rests on it.", {"findings": shift(0, 2, **RETRUDED)}),
        (
            "One position, of which another rule speaks.",
            {"findings": shift(0, 2, jaw_position="intercuspal"), "keep": KEEP},
        ),
        ("The jaw does not shift.", {"findings": shift(2, 2, **RETRUDED), "keep": KEEP}),
        ("The clause is on another pair.", {"findings": shift(0, 2, pair=["12", "42"], **RETRUDED), "keep": KEEP}),
        (
            "The clause is on another measure.",
            {"findings": shift(0, 2, **RETRUDED), "keep": [must("k1", measure="overbite", within=1, unit="mm")]},
        ),
        (
            "Two units are not compared.",
            {
                "findings": [
                    found("f1", "overbite", 2, jaw_position="intercuspal"),
                    found("f2", "overbite", 25, "percent", **RETRUDED),
                ],
                "keep": [must("k1", measure="overbite", within=1, unit="mm")],
            },
        ),
    ),
)
def test_one_measure_that_may_stand_in_two_jaw_positions(changes):
    assert told_by(measurements.measured_in_two_jaw_positions, **changes) == []


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "A jaw angle to be reached.",
            {"goals": [must("g1", measure="anb-angle", at_most=4, unit="deg")]},
            [("/goals/0/measure", ("g1",), {"measure": "anb-angle"})],
        ),
        (
            "A sum that is not worked out, to be kept.",
            {"keep": [must("k1", measure="upper-irregularity", within=1, unit="mm")]},
            [("/keep/0/measure", ("k1",), {"measure": "upper-irregularity"})],
        ),
        ("It may be found.", {"findings": [found("f1", "anb-angle", 4, "deg")]}, []),
        ("Overbite follows the teeth.", {"keep": [must("k1", measure="overbite", within=1, unit="mm")]}, []),
    ),
)
def test_measure_teeth_do_not_change(changes, expected):
    assert told_by(measurements.measure_teeth_do_not_change, **changes) == expected
