"""Teeth that go, are not in line, stand in another's place, or are not of the kind a clause is about."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, expected, must, present, rows, told_by

from wellposed.consistency import leaving

OUT = [allowed("a1", "extraction", teeth=["14"])]
GOING = present(("14", "to-be-extracted"))


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "An allowed extraction is named with the clause.",
            {"allow": OUT, "keep": [must("k1", hold=["13", "14"])]},
            [("/keep/0/hold/1", ("k1", "a1"), {"tooth": "14"})],
        ),
        (
            "So does the tooth's state say that it goes.",
            {"teeth": GOING, "movements": [must("m1", teeth=["14"], motion="mesial", at_most=1, unit="mm")]},
            [("/movements/0/teeth/0", ("m1",), {"tooth": "14"})],
        ),
        (
            "A contact of an extracted tooth is gone, too.",
            {"allow": OUT, "goals": [must("g1", close=["13-14"])]},
            [("/goals/0/close/0", ("g1", "a1"), {"tooth": "14", "contact": "13-14"})],
        ),
        (
            "Other allowances, attachments and appliances want the tooth.",
            {
                "teeth": GOING,
                "allow": [allowed("a2", "intrusion", teeth=["14"], up_to=1, unit="mm")],
                "attachments": [{"id": "t1", "must": ["14"]}],
                "appliance": [{"id": "b1", "part": "button-opening", "teeth": ["14"]}],
            },
            [
                ("/allow/0/teeth/0", ("a2",), {"tooth": "14"}),
                ("/attachments/0/must/0", ("t1",), {"tooth": "14"}),
                ("/appliance/0/teeth/0", ("b1",), {"tooth": "14"}),
            ],
        ),
        (
            "It may be measured, carry no attachment, be excluded from a means, and be replaced by a pontic.",
            {
                "allow": OUT,
                "findings": [{"id": "f1", "tooth_measure": "tooth-width", "values": {"14": 7}, "unit": "mm"}],
                "attachments": [{"id": "t1", "must_not": ["14"]}, {"id": "t2", "prefer_not": ["14"]}],
                "exclude": [{"id": "x1", "means": "intrusion", "teeth": ["14"]}],
                "appliance": [{"id": "b1", "part": "pontic", "teeth": ["14"]}],
                "process": [{"id": "q1", "step": "extraction", "teeth": ["14"]}],
            },
            [],
        ),
    ),
)
def test_tooth_leaves(changes, expected):
    assert told_by(leaving.tooth_leaves, **changes) == expected


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "It may not be aligned.",
            {"goals": [must("g1", align=["13", "12"])]},
            [("/goals/0/align/0", ("g1",), {"tooth": "13"})],
        ),
        (
            "It may not be moved.",
            {"movements": [must("m1", teeth=["13"], motion="extrusion", at_least=3, unit="mm")]},
            [("/movements/0/teeth/0", ("m1",), {"tooth": "13"})],
        ),
        (
            "Nor may that be allowed.",
            {"allow": [allowed("a1", "extrusion", teeth=["13"], up_to=3, unit="mm")]},
            [("/allow/0/teeth/0", ("a1",), {"tooth": "13"})],
        ),
        (
            "It may be extracted, or drawn by elastics.",
            {
                "allow": [
                    allowed("a1", "extraction", teeth=["13"]),
                    allowed("a2", "elastics", pattern="vertical", teeth=["13"]),
                    allowed("a3", "auxiliary", auxiliary="bonded-button", teeth=["13"]),
                ]
            },
            [],
        ),
    ),
)
def test_tooth_not_in_line(changes, expected):
    assert told_by(leaving.tooth_not_in_line, teeth=present(("13", "unerupted")), **changes) == expected


def test_a_partly_erupted_tooth_is_in_line():
    goals = [must("g1", align=["13", "12"])]
    assert told_by(leaving.tooth_not_in_line, teeth=present(("13", "partly-erupted")), goals=goals) == []


def travel(use, *teeth):
    return {"allow": [allowed("a1", use, arch="upper", teeth=list(teeth), up_to=1, unit="mm")]}


def pair(measure, *teeth):
    return {"keep": [must("k1", measure=measure, pair=list(teeth), within=1, unit="mm")]}


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Incisor advance may name canines.", travel("incisor-advance", "13", "12"), []),
        (
            "It may not name premolars.",
            travel("incisor-retraction", "13", "14"),
            [("/allow/0/teeth/1", ("a1",), {"tooth": "14", "expected": "an incisor or a canine"})],
        ),
        ("Widening begins at the canines.", travel("widening", "13", "18"), []),
        (
            "It may not name incisors.",
            travel("narrowing", "12"),
            [("/allow/0/teeth/0", ("a1",), {"tooth": "12", "expected": "a canine, premolar or molar"})],
        ),
        (
            "A lower tooth has no palatal side.",
            {"movements": [must("m1", teeth=["11", "41"], motion="palatal-root-torque", at_most=5, unit="deg")]},
            [("/movements/0/teeth/1", ("m1",), {"tooth": "41", "expected": "an upper tooth"})],
        ),
        (
            "An upper one may go lingually.",
            {"keep": [must("k1", motion="lingual", teeth=["11"], within=1, unit="mm")]},
            [],
        ),
        (
            "Overjet is not taken at molars.",
            pair("overjet", "16", "46"),
            [
                ("/keep/0/pair/0", ("k1",), {"tooth": "16", "expected": "an incisor or a canine"}),
                ("/keep/0/pair/1", ("k1",), {"tooth": "46", "expected": "an incisor or a canine"}),
            ],
        ),
        (
            "An expectation may name the tooth it rests on.",
            {"expect": [expected("e1", "overjet", -1, ground="growth", tooth="16")]},
            [],
        ),
        ("Transverse overlap is.", pair("transverse-overlap-right", "16", "46"), []),
    ),
)
def test_tooth_not_meant(changes, expected):
    assert told_by(leaving.tooth_not_meant, **changes) == expected


@pytest.mark.parametrize(
    "states, expected",
    **rows(
        (
            "Each is told, at the word that says so.",
            [("13", "crown", "transposed"), ("14", "transposed")],
            [
                ("/teeth/particulars/0/states/1", (), {"tooth": "13"}),
                ("/teeth/particulars/1/states/0", (), {"tooth": "14"}),
            ],
        ),
        ("Other states leave the order as it is.", [("13", "mobile")], []),
    ),
)
def test_transposed_teeth(states, expected):
    assert told_by(leaving.transposed_teeth, teeth=present(*states)) == expected


@pytest.mark.parametrize(
    "aligned, expected",
    [
        pytest.param(["13", "15"], [], id="the others alone"),
        pytest.param(["13", "14", "15"], [("/goals/0/align/1", ("g1", "a1"), {"tooth": "14"})], id="the whole row"),
    ],
)
def test_a_tooth_to_be_aligned_that_goes_is_named(aligned, expected):
    goals = [must("g1", align=aligned)]
    assert told_by(leaving.aligned_tooth_leaves, allow=OUT, goals=goals) == expected
    assert told_by(leaving.tooth_leaves, allow=OUT, goals=goals) == []
