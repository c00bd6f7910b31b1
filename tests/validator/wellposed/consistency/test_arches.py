"""Arches, sides and pairs of teeth: do the words agree with the numbers?"""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, expected, found, must, rows, told_by

from wellposed.consistency import arches


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "An allowance for an arch names teeth of it.",
            {"allow": [allowed("a1", "incisor-advance", arch="upper", teeth=["11", "31"], up_to=1, unit="mm")]},
            [("/allow/0/teeth/1", ("a1",), {"tooth": "31", "arch": "upper"})],
        ),
        (
            "So do an exclusion, a problem and a retainer.",
            {
                "problems": [{"id": "p1", "problem": "crowding", "arch": "lower", "teeth": ["11"]}],
                "exclude": [{"id": "x1", "means": "intrusion", "arch": "upper", "teeth": ["41"]}],
                "retention": [{"id": "r1", "arch": "upper", "retainer": "bonded", "teeth": ["43"]}],
            },
            [
                ("/problems/0/teeth/0", ("p1",), {"tooth": "11", "arch": "lower"}),
                ("/exclude/0/teeth/0", ("x1",), {"tooth": "41", "arch": "upper"}),
                ("/retention/0/teeth/0", ("r1",), {"tooth": "43", "arch": "upper"}),
            ],
        ),
        (
            "Crowding of an arch stands at its contacts.",
            {"findings": [found("f1", "upper-crowding", 1, contacts=["12-11", "42-41"])]},
            [("/findings/0/contacts/1", ("f1",), {"contact": "42-41", "arch": "upper"})],
        ),
        (
            "An expectation for an arch is about its teeth.",
            {"expect": [expected("e1", "upper-crowding", -1, ground="growth", tooth="46")]},
            [("/expect/0/tooth", ("e1",), {"tooth": "46", "arch": "upper"})],
        ),
        ("A pair is of both arches.", {"findings": [found("f1", "overjet", 2, pair=["11", "41"])]}, []),
        (
            "A contact that is no tooth's says nothing of an arch.",
            {"findings": [found("f1", "upper-crowding", 1, contacts=["86-87"])]},
            [],
        ),
    ),
)
def test_arch_mismatch(changes, expected):
    assert told_by(arches.arch_mismatch, **changes) == expected


def slide(*sides, teeth):
    return {
        "allow": [allowed("a1", "distal-movement", arch="upper", sides=list(sides), teeth=teeth, up_to=1, unit="mm")]
    }


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "An allowance for a side names teeth of it.",
            slide("right", teeth=["16", "26"]),
            [("/allow/0/teeth/1", ("a1",), {"tooth": "26", "sides": ["right"]})],
        ),
        ("One for both sides names any.", slide("left", "right", teeth=["16", "26"]), []),
        (
            "A problem of a side names teeth of it.",
            {"problems": [{"id": "p1", "problem": "crossbite-posterior", "side": "left", "teeth": ["16"]}]},
            [("/problems/0/teeth/0", ("p1",), {"tooth": "16", "sides": ["left"]})],
        ),
        (
            "A transverse overlap is taken at a pair of its side.",
            {"findings": [found("f1", "transverse-overlap-left", 2, pair=["26", "46"])]},
            [("/findings/0/pair/1", ("f1",), {"tooth": "46", "sides": ["left"]})],
        ),
        ("Overjet has no side.", {"findings": [found("f1", "overjet", 2, pair=["12", "31"])]}, []),
    ),
)
def test_side_mismatch(changes, expected):
    assert told_by(arches.side_mismatch, **changes) == expected


@pytest.mark.parametrize(
    "clauses, pointer",
    **rows(
        ("A tooth to be aligned.", {"goals": [must("g1", align=["41", "31"])]}, "/goals/0/align/0"),
        ("A whole arch to be closed.", {"goals": [must("g1", close_arch="lower")]}, "/goals/0/close_arch"),
        ("A contact to be left open.", {"goals": [must("g1", leave="41-31", amount=1, unit="mm")]}, "/goals/0/leave"),
        (
            "A measure of the arch.",
            {"goals": [must("g1", measure="lower-midline", at_most=1, unit="mm")]},
            "/goals/0/measure",
        ),
        (
            "A movement with one such tooth.",
            {"movements": [must("g1", teeth=["11", "41"], motion="mesial", at_most=1, unit="mm")]},
            "/movements/0/teeth/1",
        ),
        (
            "An allowance for the arch.",
            {"allow": [allowed("g1", "enamel-reduction", arch="lower", in_all=1, unit="mm")]},
            "/allow/0/arch",
        ),
        ("An extraction.", {"allow": [allowed("g1", "extraction", teeth=["44"])]}, "/allow/0/teeth/0"),
    ),
)
def test_arch_not_treated(clauses, pointer):
    finding = (pointer, ("g1",), {"expected": "upper"})
    assert told_by(arches.arch_not_treated, treat={"arches": "upper"}, **clauses) == [finding]
    assert told_by(arches.arch_not_treated, treat={"arches": "both"}, **clauses) == []
    assert told_by(arches.arch_not_treated, treat=None, **clauses) == []


@pytest.mark.parametrize(
    "clauses",
    **rows(
        ("Elastics may hold on to it.", {"allow": [allowed("a1", "elastics", pattern="cross", teeth=["16", "46"])]}),
        ("Its teeth may be kept.", {"keep": [must("k1", hold=["41"])]}),
        (
            "A measure of both arches is of this one, too.",
            {"goals": [must("g1", measure="overjet", at_most=3, unit="mm")]},
        ),
        (
            "So is one taken at a pair of teeth.",
            {"goals": [must("g1", measure="overjet", pair=["12", "42"], at_most=3, unit="mm")]},
        ),
    ),
)
def test_the_arch_not_treated_may_be_mentioned(clauses):
    assert told_by(arches.arch_not_treated, treat={"arches": "upper"}, **clauses) == []


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "A midline is not taken at a pair.",
            {"keep": [must("k1", measure="lower-midline", pair=["11", "41"], within=1, unit="mm")]},
            [("/keep/0/pair", ("k1",), {"measure": "lower-midline", "expected": list(arches.PAIRED)})],
        ),
        ("Overbite may be.", {"keep": [must("k1", measure="overbite", pair=["11", "41"], within=1, unit="mm")]}, []),
    ),
)
def test_pair_not_meant(changes, expected):
    assert told_by(arches.pair_not_meant, **changes) == expected


@pytest.mark.parametrize(
    "pair, expected",
    **rows(
        ("Two upper teeth.", ["11", "21"], [("/findings/0/pair", ("f1",), {"teeth": ["11", "21"]})]),
        ("One tooth twice.", ["41", "41"], [("/findings/0/pair", ("f1",), {"teeth": ["41", "41"]})]),
        ("The lower tooth may stand first.", ["41", "11"], []),
    ),
)
def test_pair_not_one_of_each(pair, expected):
    assert told_by(arches.pair_not_one_of_each, findings=[found("f1", "overjet", 2, pair=pair)]) == expected


def test_of_a_pair_that_is_not_meant_another_rule_speaks():
    findings = [found("f1", "upper-midline", 2, pair=["11", "21"])]
    assert told_by(arches.pair_not_one_of_each, findings=findings) == []
