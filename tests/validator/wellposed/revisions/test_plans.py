"""Two setups and two reviews: what differs beyond rounding, and what is left out."""

import pytest
from tests.validator.wellposed.consistency.ordinary import must
from tests.validator.wellposed.revisions.cases import SETUP

from wellposed.model import Review, Setup
from wellposed.revisions.plans import Amount, Other, setups_compared
from wellposed.revisions.reviews import Said, reviews_compared

ANSWERS = {"id": "HR-2031", "revision": 1, "sha256": "ab" * 32}


def setup(**members):
    said = {**SETUP, "id": "S-1", "revision": 1, "answers": ANSWERS, "movements": [], **members}
    return Setup.model_validate(said)


def out(**values):
    return [{"variable": "out", "unit": "mm", "values": {name.removeprefix("t"): v for name, v in values.items()}}]


def changed(old, new):
    found = setups_compared(setup(**old), setup(**new)).changed
    return [(one.what, one.where, one.before, one.after) for one in found]


def reduced(amount, **more):
    return {"reductions": [{"contact": "12-11", "amount": amount, "unit": "mm", **more}]}


def predicted(value):
    return {"predicted": [{"measure": "overjet", "value": value, "unit": "mm"}]}


@pytest.mark.parametrize(
    "old, new, expected",
    [
        ({"movements": out(t11=1)}, {"movements": out(t11=1)}, []),
        ({"movements": out(t11=1)}, {"movements": out(t11=1.01)}, []),
        ({"movements": out(t11=1)}, {"movements": out(t11=1.02)}, [("out", "11", 1.0, 1.02)]),
        ({"movements": out(t11=-0.5)}, {"movements": out(t11=0.5)}, [("out", "11", -0.5, 0.5)]),
        ({"movements": out(t11=1)}, {}, [("out", "11", 1.0, None)]),
        ({"movements": out(t11=1)}, {"unlisted": "unmoved"}, [("out", "11", 1.0, 0.0)]),
        ({"unlisted": "unmoved"}, {"movements": out(t11=0)}, []),
        (
            {"movements": out(t21=1, t11=1)},
            {"movements": out(t11=2, t21=2)},
            [("out", "11", 1, 2), ("out", "21", 1, 2)],
        ),
        (reduced(0.2), reduced(0.3), [("reduction", "12-11", 0.2, 0.3)]),
        (reduced(0.2), {"reductions": []}, [("reduction", "12-11", 0.2, 0.0)]),
        (reduced(0.2), {}, [("reduction", "12-11", 0.2, None)]),
        (
            {"aligners": {"upper": 20}},
            {"aligners": {"upper": 24, "lower": 0}},
            [("aligners", "upper", 20, 24), ("aligners", "lower", None, 0)],
        ),
        ({"wear_interval_days": 7}, {"wear_interval_days": 10}, [("wear-interval", "", 7, 10)]),
        (predicted(2.5), predicted(3), [("overjet", "", 2.5, 3.0)]),
        (predicted(2.5), {}, [("overjet", "", 2.5, None)]),
    ],
)
def test_amounts_that_differ_beyond_rounding(old, new, expected):
    assert changed(old, new) == expected


def test_a_difference_is_after_less_before():
    assert Amount("out", "11", "mm", 1.0, -0.5).difference == -1.5
    assert Amount("out", "11", "mm", None, 1.0).difference is None


def carried(**members):
    return {"attachments": [{"tooth": "13", **members}]}


@pytest.mark.parametrize(
    "old, new, expected",
    [
        (carried(), carried(), []),
        (
            carried(reason="movement"),
            carried(reason="retention"),
            [Other("attachment", "13", {"reason": "movement"}, {"reason": "retention"})],
        ),
        (carried(), {"attachments": []}, [Other("attachment", "13", {}, None)]),
        (carried(), {}, [Other("attachment", "13", {}, None), Other("stated", "attachments", True, False)]),
        (
            {"extractions": ["14"]},
            {"extractions": ["24"]},
            [Other("extraction", "14", {}, None), Other("extraction", "24", None, {})],
        ),
        (
            reduced(0.2, before_aligner=1),
            reduced(0.2, before_aligner=9),
            [Other("reduction-before-aligner", "12-11", {"aligner": 1}, {"aligner": 9})],
        ),
        ({}, {"unlisted": "unmoved"}, [Other("unlisted", "", None, "unmoved")]),
        ({"notes": [{"text": "x"}]}, {"notes": [{"text": "y"}]}, [Other("notes", "")]),
        ({}, {"predicted": []}, [Other("stated", "predicted", False, True)]),
        ({"statements": []}, {}, [Other("stated", "statements", True, False)]),
        (
            {"statements": [{"clause": "q1", "standing": "done"}]},
            {"statements": [{"clause": "q1", "standing": "not-done"}]},
            [Other("statement", "q1", {"standing": "done"}, {"standing": "not-done"})],
        ),
    ],
)
def test_what_else_differs(old, new, expected):
    assert list(setups_compared(setup(**old), setup(**new)).others) == expected


def path(*values):
    stages = [{"aligner": n, "arch": "upper", "movements": out(t11=value)} for n, value in enumerate(values, 1)]
    return {"stages": stages}


@pytest.mark.parametrize(
    "old, new, expected",
    [
        ({}, {}, None),
        (path(0.2, 0.4), path(0.2, 0.4), {"upper": (), "lower": ()}),
        (path(0.2, 0.4), path(0.2, 0.5), {"upper": (2,), "lower": ()}),
        (path(0.2, 0.4), path(0.2), {"upper": (2,), "lower": ()}),
        (path(0.2), {}, {"upper": (1,), "lower": ()}),
    ],
)
def test_where_the_path_differs(old, new, expected):
    assert setups_compared(setup(**old), setup(**new)).path == expected


def test_which_revision_each_answers_is_told():
    later = {**ANSWERS, "revision": 2}
    comparison = setups_compared(setup(), setup(revision=2, replaces="ab" * 32, answers=later))
    assert [one.revision for one in comparison.answers] == [1, 2]
    assert (comparison.lineage.next_one, comparison.lineage.replaces) == (True, False)


# reviews


def review(**members):
    head = {**SETUP, "format": "wellposed/review", "id": "V-1", "revision": 1, "answers": ANSWERS}
    said = {**head, "prescription": ANSWERS, "outcome": "returned", "clauses": [], **members}
    return Review.model_validate(said)


def outcomes(**told):
    return [{"clause": name, "outcome": outcome} for name, outcome in told.items()]


HOLD = {"keep": [must("r1", hold=["16", "26"])]}


@pytest.mark.parametrize(
    "old, new, expected",
    [
        ({}, {}, []),
        ({}, {"outcome": "approved"}, [Said("outcome", "", "returned", "approved")]),
        ({}, {"unopened": "accepted"}, [Said("unopened", "", None, "accepted")]),
        (
            {"clauses": outcomes(g1="met", g2="met")},
            {"clauses": outcomes(g2="not-met")},
            [Said("clause", "g1", "met", None), Said("clause", "g2", "met", "not-met")],
        ),
        (
            {"accepted": ["g1"]},
            {"revising": ["g1"]},
            [Said("accepted", "g1", True, None), Said("revising", "g1", None, True)],
        ),
        ({"requests": HOLD}, {"requests": {"keep": [must("r1", hold=["26", "16"])]}}, []),
        ({"requests": HOLD}, {}, [Said("request", "r1", {"id": "r1", "strength": "must", "hold": ["16", "26"]}, None)]),
        ({"notes": [{"text": "x"}]}, {}, [Said("notes", "")]),
    ],
)
def test_what_two_reviews_differ_in(old, new, expected):
    assert list(reviews_compared(review(**old), review(**new)).differences) == expected
