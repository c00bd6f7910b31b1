"""Ids and what refers to them."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, found, must, present, rows, told_by

from wellposed.consistency import identity

HOLD = must("k1", hold=["11"])


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "An id may not serve in two sections.",
            {"findings": [found("k1", "overjet", 2)], "keep": [HOLD]},
            [("/keep/0/id", ("k1",), {"name": "k1", "first": "/findings/0/id"})],
        ),
        (
            "An order inside the staging has an id like any other.",
            {
                "keep": [HOLD],
                "staging": must("s1", order=[{"id": "k1", "first": "k1", "relation": "only-if", "then": "s1"}]),
            },
            [("/staging/order/0/id", ("k1",), {"name": "k1", "first": "/keep/0/id"})],
        ),
        (
            "Of three, the second and the third are told, each with the first.",
            {"keep": [HOLD, HOLD], "process": [{"id": "k1", "step": "surgery"}]},
            [
                ("/keep/1/id", ("k1",), {"name": "k1", "first": "/keep/0/id"}),
                ("/process/0/id", ("k1",), {"name": "k1", "first": "/keep/0/id"}),
            ],
        ),
        ("The document's own id is another matter.", {"id": "k1", "keep": [HOLD]}, []),
    ),
)
def test_duplicate_id(changes, expected):
    assert told_by(identity.duplicate_id, **changes) == expected


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "The nearest id is offered.",
            {"findings": [found("spacing", "overjet", 2)], "keep": [must("k1", hold=["11"], because=["spaceing"])]},
            [("/keep/0/because/0", ("k1",), {"name": "spaceing", "nearest": "spacing"})],
        ),
        (
            "Both ends of an order are looked up.",
            {"staging": must("s1", order=[{"id": "o1", "first": "m8", "relation": "before", "then": "m9"}])},
            [
                ("/staging/order/0/first", ("o1",), {"name": "m8"}),
                ("/staging/order/0/then", ("o1",), {"name": "m9"}),
            ],
        ),
        (
            "So is what a step of the process comes before.",
            {"process": [{"id": "q1", "step": "surgery", "before": "m9"}]},
            [("/process/0/before", ("q1",), {"name": "m9"})],
        ),
        (
            "What a note names is not repeated.",
            {"notes": [{"text": "x", "about": ["m9"]}]},
            [("/notes/0/about/0", (), {})],
        ),
        ("A clause may name any id there is.", {"keep": [HOLD, must("k2", hold=["21"], because=["k1"])]}, []),
    ),
)
def test_unknown_reference(changes, expected):
    assert told_by(identity.unknown_reference, **changes) == expected


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "A side twice may have been meant as both.",
            {"allow": [allowed("a1", "class-ii-elastics", sides=["left", "left"])]},
            [("/allow/0/sides/1", ("a1",), {"name": "left", "first": "/allow/0/sides/0"})],
        ),
        (
            "A state of a tooth is said once.",
            {"teeth": present(("11", "crown", "veneer", "crown"))},
            [("/teeth/particulars/0/states/2", (), {"name": "crown", "first": "/teeth/particulars/0/states/0"})],
        ),
        (
            "A variable is named once.",
            {"allow": [allowed("a1", "laboratory-choice", variables=["tip", "tip"])]},
            [("/allow/0/variables/1", ("a1",), {"name": "tip", "first": "/allow/0/variables/0"})],
        ),
        ("Two teeth may be in one state.", {"teeth": present(("11", "crown"), ("21", "crown"))}, []),
    ),
)
def test_term_listed_twice(changes, expected):
    assert told_by(identity.term_listed_twice, **changes) == expected
