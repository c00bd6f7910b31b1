"""Prescriptions as an orthodontist would write them, each with the verdict a colleague would give.

One file a topic, each a list of cases:

======== ===========================================================
name     the case in a sentence
verdict  the one expected, or a list where the meaning allows two
why      the reasoning, in the trade's arithmetic
asks     a rule that has to ask something beside the verdict, if any
document the members in which it differs from ``base.json``
======== ===========================================================
"""

import json
from pathlib import Path

import pytest

from wellposed.check import check

FOLDER = Path(__file__).parent / "prescriptions"
BASE = json.loads((FOLDER / "base.json").read_text("utf-8"))
CASES = [
    pytest.param(case, id=f"{file.stem}: {case['name']}")
    for file in sorted(FOLDER.glob("*.json"))
    if file.stem != "base"
    for case in json.loads(file.read_text("utf-8"))
]


def judged(case):
    return check(json.dumps(BASE | case["document"]).encode())


@pytest.mark.parametrize("case", CASES)
def test_the_verdict_is_the_one_a_colleague_would_give(case):
    expected = [case["verdict"]] if isinstance(case["verdict"], str) else case["verdict"]
    assert judged(case).verdict in expected, case["why"]


@pytest.mark.parametrize("case", [case for case in CASES if "asks" in case.values[0]])
def test_a_plan_that_leaves_something_open_is_asked_about(case):
    assert case["asks"] in {finding.rule for finding in judged(case).findings}, case["why"]


@pytest.mark.parametrize("case", CASES)
def test_the_document_itself_is_sound(case):
    assert judged(case).verdict not in ("unreadable", "refused")
