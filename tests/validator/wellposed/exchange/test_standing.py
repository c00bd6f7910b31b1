"""How revisions stand to each other. Expectations are worked out by hand from spec/receipt.md, not by the program."""

from itertools import permutations

import pytest
from tests.validator.wellposed.consistency.ordinary import rows

from wellposed.exchange.arrival import Received
from wellposed.exchange.standing import Taken, standings


def kept(name, revision, replaces=None, counts=True, sound=True):
    """A document whose digest is its name."""
    return Taken(Received("wellposed/prescription", "dr-2", "HR-1", revision, name, replaces), counts, sound)


A1, B2, C3 = kept("a", 1), kept("b", 2, "a"), kept("c", 3, "b")


@pytest.mark.parametrize(
    "taken, withdrawn, expected",
    **rows(
        ("One.", [A1], (), {"a": "current"}),
        ("Two in a chain.", [A1, B2], (), {"a": "overtaken", "b": "current"}),
        ("A faulty one.", [kept("a", 1, sound=False)], (), {"a": "returned"}),
        (
            "A faulty later one overtakes: what it replaced does not come back.",
            [A1, kept("b", 2, "a", sound=False)],
            (),
            {"a": "overtaken", "b": "returned"},
        ),
        ("After a faulty one.", [kept("a", 1, sound=False), B2], (), {"a": "overtaken", "b": "current"}),
        ("The one before is not there.", [B2], (), {"b": "held"}),
        ("A gap below the last but one.", [B2, C3], (), {"b": "overtaken", "c": "current"}),
        ("A gap just below.", [A1, C3], (), {"a": "overtaken", "c": "held"}),
        ("It replaces another.", [A1, kept("b", 2, "x")], (), {"a": "overtaken", "b": "held"}),
        ("Two of one revision.", [A1, kept("d", 1)], (), {"a": "in-conflict", "d": "in-conflict"}),
        (
            "One of the two is faulty: it is still another content.",
            [A1, kept("d", 1, sound=False)],
            (),
            {"a": "in-conflict", "d": "in-conflict"},
        ),
        (
            "A conflict is settled by the next revision, which names one of the two.",
            [A1, kept("d", 1), B2],
            (),
            {"a": "in-conflict", "d": "in-conflict", "b": "current"},
        ),
        ("Withdrawn.", [A1], (1,), {"a": "withdrawn"}),
        ("The last of two withdrawn.", [A1, B2], (2,), {"a": "overtaken", "b": "withdrawn"}),
        ("An earlier one withdrawn.", [A1, B2], (1,), {"a": "withdrawn", "b": "current"}),
        ("A later one withdrawn that never came.", [A1], (2,), {"a": "overtaken"}),
        ("The next after a withdrawn one.", [A1, B2, C3], (2,), {"a": "overtaken", "b": "withdrawn", "c": "current"}),
        ("Withdrawn, and two of it.", [A1, kept("d", 1)], (1,), {"a": "withdrawn", "d": "withdrawn"}),
        ("Not from its sender.", [kept("a", 1, counts=False)], (), {"a": "set-aside"}),
        (
            "What does not count has no effect: no conflict, no overtaking, nothing to follow.",
            [A1, kept("d", 1, counts=False), kept("z", 99, counts=False)],
            (),
            {"a": "current", "d": "set-aside", "z": "set-aside"},
        ),
        (
            "What follows one that does not count.",
            [kept("a", 1, counts=False), B2],
            (),
            {"a": "set-aside", "b": "held"},
        ),
        ("None.", [], (3,), {}),
    ),
)
def test_how_each_stands(taken, withdrawn, expected):
    for orders in permutations(taken):
        assert standings(orders, withdrawn) == expected
