"""What the laboratory says beside the movements."""

import pytest
from tests.validator.wellposed.consistency.answering import told_of_setup
from tests.validator.wellposed.consistency.ordinary import rows

from wellposed.consistency import arches, bounds, leaving, measurements, quantities, setup_claims


def predicted(measure, value, unit="mm", **said):
    return {"measure": measure, "value": value, "unit": unit, **said}


@pytest.mark.parametrize(
    "claims, expected",
    **rows(
        ("In two units.", [predicted("overbite", 2), predicted("overbite", 25, "percent")], []),
        ("The same once more.", [predicted("overbite", 2), predicted("overbite", 2)], []),
        (
            "At two pairs.",
            [predicted("overjet", 2), predicted("overjet", 3, pair=["12", "42"])],
            [],
        ),
        (
            "At one pair, told in either order.",
            [predicted("overjet", 2, pair=["42", "12"]), predicted("overjet", 3, pair=["12", "42"])],
            [
                (
                    "/predicted/1/value",
                    (),
                    {"measure": "overjet", "value": 3, "expected": 2, "first": "/predicted/0/value"},
                )
            ],
        ),
    ),
)
def test_predicted_twice(claims, expected):
    assert told_of_setup(setup_claims.predicted_twice, predicted=claims) == expected


SHARED = [
    (quantities.unit_not_allowed, predicted("overjet", 4, "deg"), "/predicted/0/unit"),
    (arches.pair_not_meant, predicted("upper-midline", 1, pair=["11", "41"]), "/predicted/0/pair"),
    (arches.pair_not_one_of_each, predicted("overjet", 1, pair=["11", "21"]), "/predicted/0/pair"),
    (arches.side_mismatch, predicted("transverse-overlap-right", 1, pair=["26", "46"]), "/predicted/0/pair/0"),
    (leaving.tooth_not_meant, predicted("overbite", 1, pair=["16", "46"]), "/predicted/0/pair/0"),
    (bounds.negative_size, predicted("upper-crowding", -1), "/predicted/0/value"),
    (measurements.implausible_value, predicted("overjet", 75), "/predicted/0/value"),
]


@pytest.mark.parametrize("declared, claim, pointer", SHARED, ids=[rule.id for rule, *_ in SHARED])
def test_rules_about_measures_look_into_predictions(declared, claim, pointer):
    told = [where for where, *_ in told_of_setup(declared, predicted=[claim])]
    assert told[:1] == [pointer]
    assert told_of_setup(declared, predicted=[predicted("overjet", 2, pair=["12", "42"])]) == []


@pytest.mark.parametrize(
    "clauses, expected",
    **rows(
        ("Of two clauses.", ["b1", "b2"], []),
        (
            "Of one clause.",
            ["b1", "b2", "b1"],
            [("/statements/2/clause", ("b1",), {"name": "b1", "first": "/statements/0/clause"})],
        ),
    ),
)
def test_clause_answered_twice(clauses, expected):
    statements = [{"clause": clause, "standing": "done"} for clause in clauses]
    assert told_of_setup(setup_claims.clause_answered_twice, statements=statements) == expected
