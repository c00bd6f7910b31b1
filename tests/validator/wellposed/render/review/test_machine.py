"""Reviews as JSON: as the published schema says, and all that a review says."""

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from tests.validator.wellposed.render.review.made import REVIEWS, SHORT_OF, order

from wellposed.render.review import review_json
from wellposed.render.schemas import schema_text

SCHEMA = Path(__file__).parents[5] / "spec" / "schema" / "1" / "setup-review.schema.json"
NAMES = ("order.json", "setup.json")


def told(name):
    reviewed, prescription, _ = REVIEWS[name]
    return json.loads(review_json(reviewed, prescription, NAMES))


def faults(value):
    return [error.message for error in Draft202012Validator(json.loads(SCHEMA.read_text())).iter_errors(value)]


@pytest.mark.parametrize("name", REVIEWS)
def test_every_review_is_as_its_schema_says(name):
    assert faults(told(name)) == []


def test_the_schema_published_is_the_one_generated():
    assert schema_text("setup-review") == SCHEMA.read_text("utf-8")


@pytest.mark.parametrize("name", REVIEWS)
def test_nothing_of_a_review_is_left_out(name):
    reviewed, _, _ = REVIEWS[name]
    found = told(name)
    clauses = [(one["clause"], one["outcome"], len(one["parts"])) for one in found["clauses"]]
    assert clauses == [(one.id, one.outcome, len(one.parts)) for one in reviewed.clauses]
    assert [one["where"] for one in found["unasked"]] == [one.where for one in reviewed.unasked]
    assert [one["measure"] for one in found["measures"]] == [one.measure for one in reviewed.measures]
    assert [one["rule"] for one in found["findings"]] == [one.rule for one in reviewed.findings]
    assert found["unmet"] == [one.id for one in reviewed.unmet]


def test_amounts_and_words_stand_side_by_side():
    found = next(one for one in told("short-of")["clauses"] if one["clause"] == "g2")
    assert found["delivered"] == ["4.5 mm → 3.3 mm, 0.3 mm more than asked"]
    assert found["parts"] == [
        {
            "what": "overbite",
            "where": "",
            "unit": "mm",
            "asked": {"least": 2.0, "most": 3.0},
            "before": 4.5,
            "delivered": {"least": 3.3, "most": 3.3},
            "difference": 0.3,
            "tolerance": 0.1,
            "met": False,
            "why": None,
            "counted_on": None,
        }
    ]


@pytest.mark.parametrize(
    "sentence, change",
    [
        ("a member nobody knows", {"colour": "blue"}),
        ("another caution", {"caution": "Trust it."}),
        ("a clause without an outcome", {"clauses": [{"clause": "g1"}]}),
        ("counts below nothing", {"unmet": [1]}),
    ],
)
def test_the_schema_is_closed(sentence, change):
    assert (sentence, faults(told("clean") | change) != []) == (sentence, True)


def test_the_same_review_gives_the_same_bytes():
    assert review_json(SHORT_OF, order(), NAMES) == review_json(SHORT_OF, order(), NAMES)
