"""Attachments that disagree, and orders that go in a circle."""

import pytest
from tests.validator.wellposed.consistency.ordinary import must, rows, told_by

from wellposed.consistency import making


@pytest.mark.parametrize(
    "attachments, expected",
    **rows(
        (
            "Must and must not.",
            [{"id": "t1", "must": ["13", "11"]}, {"id": "t2", "must_not": ["12", "11"]}],
            [
                (
                    "/attachments/1/must_not/1",
                    ("t1", "t2"),
                    {"tooth": "11", "name": "must_not", "expected": "must", "first": "/attachments/0/must/1"},
                )
            ],
        ),
        (
            "May leaves open what must decides.",
            [{"id": "t1", "may": ["11"]}, {"id": "t2", "must": ["11"]}],
            [
                (
                    "/attachments/1/must/0",
                    ("t1", "t2"),
                    {"tooth": "11", "name": "must", "expected": "may", "first": "/attachments/0/may/0"},
                )
            ],
        ),
        (
            "A wish for and a wish against.",
            [{"id": "t1", "prefer": ["11"]}, {"id": "t2", "prefer_not": ["11"]}],
            [
                (
                    "/attachments/1/prefer_not/0",
                    ("t1", "t2"),
                    {"tooth": "11", "name": "prefer_not", "expected": "prefer", "first": "/attachments/0/prefer/0"},
                )
            ],
        ),
        (
            "Two for two reasons.",
            [{"id": "t1", "must": ["11"], "reason": "movement"}, {"id": "t2", "must": ["11"], "reason": "retention"}],
            [],
        ),
    ),
)
def test_attachments_disagree(attachments, expected):
    assert told_by(making.attachments_disagree, attachments=attachments) == expected


def rest(name, said="none"):
    return {"id": name, "otherwise": said}


@pytest.mark.parametrize(
    "attachments, expected",
    **rows(
        ("One.", [rest("t1")], []),
        (
            "The same once more.",
            [rest("t1"), {"id": "t2", "may": ["11"]}, rest("t3")],
            [("/attachments/2/otherwise", ("t1", "t3"), {"first": "/attachments/0/otherwise"})],
        ),
        (
            "Three.",
            [rest("t1"), rest("t2", "laboratory-decides"), rest("t3")],
            [
                ("/attachments/1/otherwise", ("t1", "t2"), {"first": "/attachments/0/otherwise"}),
                ("/attachments/2/otherwise", ("t1", "t3"), {"first": "/attachments/0/otherwise"}),
            ],
        ),
    ),
)
def test_otherwise_said_twice(attachments, expected):
    assert told_by(making.otherwise_said_twice, attachments=attachments) == expected


def ordered(*steps):
    """Orders o1, o2 … written "first relation then"."""
    said = [dict(zip(("first", "relation", "then"), step.split(), strict=True)) for step in steps]
    orders = [{"id": f"o{number}", **one} for number, one in enumerate(said, start=1)]
    return {"staging": must("s1", order=orders)}


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("A row.", ordered("a before b", "b before c", "a before c"), []),
        (
            "A circle of three is told at the order that closes it.",
            ordered("a before b", "b not-before-done c", "x before a", "c before a"),
            [("/staging/order/3", ("o1", "o2", "o4"), {"cycle": ["c", "a", "b", "c"]})],
        ),
        (
            "A clause before itself.",
            ordered("a before a"),
            [("/staging/order/0", ("o1",), {"cycle": ["a", "a"]})],
        ),
        (
            "Two circles.",
            ordered("a before b", "b before a", "c before d", "d before c"),
            [
                ("/staging/order/1", ("o1", "o2"), {"cycle": ["b", "a", "b"]}),
                ("/staging/order/3", ("o3", "o4"), {"cycle": ["d", "c", "d"]}),
            ],
        ),
        ("What goes together or depends is no order.", ordered("a together-with b", "b before a", "a only-if b"), []),
        (
            "A step of the process comes before a clause that comes before the step.",
            {"process": [{"id": "q1", "step": "surgery", "before": "a"}]} | ordered("a before q1"),
            [("/process/0/before", ("o1", "q1"), {"cycle": ["q1", "a", "q1"]})],
        ),
    ),
)
def test_order_cycle(changes, expected):
    assert told_by(making.order_cycle, **changes) == expected
