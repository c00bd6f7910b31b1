"""What an order leaves open: nothing asked, no reason given, instructions in a note."""

import pytest
from tests.validator.wellposed.consistency.ordinary import must, rows, told_by

from wellposed.consistency import asking

MOVE = {"teeth": ["11"], "motion": "mesial", "at_most": 1, "unit": "mm"}


@pytest.mark.parametrize(
    "treat, expected",
    **rows(
        ("Not stated.", None, [("", (), {"name": "treat", "expected": "treat"})]),
        ("Stated.", {"arches": "both"}, []),
    ),
)
def test_treat_not_stated(treat, expected):
    assert told_by(asking.treat_not_stated, treat=treat) == expected


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Neither.", {}, [("", (), {"expected": ["goals", "movements"]})]),
        ("Only what is kept.", {"keep": [must("k1", hold=["11"])]}, [("", (), {"expected": ["goals", "movements"]})]),
        ("A goal.", {"goals": [must("g1", level="lower")]}, []),
        ("A movement.", {"movements": [must("m1", **MOVE)]}, []),
    ),
)
def test_nothing_asked(changes, expected):
    assert told_by(asking.nothing_asked, **changes) == expected


@pytest.mark.parametrize(
    "movements, expected",
    **rows(
        (
            "All that say nothing, in one finding.",
            [must("m1", **MOVE), must("m2", because=["m1"], **MOVE), must("m3", **MOVE)],
            [("/movements", ("m1", "m3"), {"names": ["m1", "m3"]})],
        ),
        ("No movements, no question.", [], []),
    ),
)
def test_answers_nothing(movements, expected):
    assert told_by(asking.answers_nothing, movements=movements) == expected


@pytest.mark.parametrize(
    "text, seems",
    **rows(
        ("A verb and a tooth.", "Intrude 11 by 1 mm", True),
        ("A verb and a term.", "do not touch the midline", True),
        ("A verb and a list of teeth.", "Keep 13,23", True),
        ("A verb alone.", "Please call me", False),
        ("A tooth alone.", "11 was injured years ago", False),
        ("A number that is no tooth.", "Please call 49 minutes before", False),
        ("A part of a longer number.", "Please call 0711-1234", False),
        ("A word inside another.", "The household keeps cats; archery on Mondays", False),
        ("A plain remark.", "The patient travels until May.", False),
    ),
)
def test_note_may_instruct(text, seems):
    expected = [("/notes/1/text", (), {})] if seems else []
    assert told_by(asking.note_may_instruct, notes=[{"text": "x"}, {"text": text}]) == expected
