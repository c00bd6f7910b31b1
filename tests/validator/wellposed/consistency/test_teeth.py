"""The teeth that are there, and the teeth that parts name."""

import pytest
from tests.validator.wellposed.consistency.ordinary import UPPER, allowed, expected, must, present, rows, told_by

from wellposed.consistency import teeth

WITHOUT_14 = [tooth for tooth in UPPER if tooth != "14"]


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "A movement names the tooth in its list.",
            {"movements": [must("m1", teeth=["11", "18"], motion="mesial", at_most=1, unit="mm")]},
            [("/movements/0/teeth/1", ("m1",), {"tooth": "18"})],
        ),
        (
            "A finding names it as a key.",
            {"findings": [{"id": "f1", "tooth_measure": "rotation", "values": {"18": 5, "17": 5}, "unit": "deg"}]},
            [("/findings/0/values/18", ("f1",), {"tooth": "18"})],
        ),
        (
            "A contact names two.",
            {"goals": [must("g1", close=["17-18"])]},
            [("/goals/0/close/0", ("g1",), {"tooth": "18", "contact": "17-18"})],
        ),
        (
            "A condition, an attachment, an appliance, a retainer and an expectation name teeth, too.",
            {
                "conditions": [{"condition": "thin-gingiva", "teeth": ["18"]}],
                "attachments": [{"id": "t1", "may": ["18"]}],
                "appliance": [{"id": "b1", "part": "elastic", "start": "18", "end": "48"}],
                "retention": [{"id": "r1", "arch": "upper", "retainer": "both", "teeth": ["18"]}],
                "expect": [expected("e1", "overjet", -1, ground="growth", tooth="18")],
            },
            [
                ("/conditions/0/teeth/0", (), {"tooth": "18"}),
                ("/expect/0/tooth", ("e1",), {"tooth": "18"}),
                ("/attachments/0/may/0", ("t1",), {"tooth": "18"}),
                ("/appliance/0/start", ("b1",), {"tooth": "18"}),
                ("/appliance/0/end", ("b1",), {"tooth": "48"}),
                ("/retention/0/teeth/0", ("r1",), {"tooth": "18"}),
            ],
        ),
        (
            "A tooth with particulars is there.",
            {"teeth": present(("18", "crown"))},
            [("/teeth/particulars/0/tooth", (), {"tooth": "18"})],
        ),
        (
            "An unerupted tooth need not be listed.",
            {"teeth": present(("18", "unerupted")), "allow": [allowed("a1", "extraction", teeth=["18"])]},
            [],
        ),
        (
            "Missing teeth are named as a problem, and a pontic takes their place.",
            {
                "problems": [{"id": "p1", "problem": "missing-teeth", "teeth": ["18"]}],
                "appliance": [{"id": "b1", "part": "pontic", "teeth": ["18"]}],
                "process": [{"id": "q1", "step": "surgery", "teeth": ["18"]}],
            },
            [],
        ),
        (
            "Another problem, part or step is about teeth that are there.",
            {
                "problems": [{"id": "p1", "problem": "rotated-teeth", "teeth": ["18"]}],
                "appliance": [{"id": "b1", "part": "bite-block", "teeth": ["18"]}],
                "process": [{"id": "q1", "step": "extraction", "teeth": ["18"]}],
            },
            [
                ("/problems/0/teeth/0", ("p1",), {"tooth": "18"}),
                ("/appliance/0/teeth/0", ("b1",), {"tooth": "18"}),
                ("/process/0/teeth/0", ("q1",), {"tooth": "18"}),
            ],
        ),
    ),
)
def test_tooth_not_present(changes, expected):
    assert told_by(teeth.tooth_not_present, **changes) == expected


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        (
            "The teeth present are listed once.",
            {"teeth": present(upper=["11", "21", "11"])},
            [("/teeth/upper/2", (), {"tooth": "11", "first": "/teeth/upper/0"})],
        ),
        (
            "They are listed in one arch.",
            {"teeth": present(upper=["11"], lower=["11"])},
            [("/teeth/lower/0", (), {"tooth": "11", "first": "/teeth/upper/0"})],
        ),
        (
            "Every list of a clause is looked at.",
            {"attachments": [{"id": "t1", "prefer_not": ["11", "12", "12", "11"]}]},
            [
                ("/attachments/0/prefer_not/2", ("t1",), {"tooth": "12", "first": "/attachments/0/prefer_not/1"}),
                ("/attachments/0/prefer_not/3", ("t1",), {"tooth": "11", "first": "/attachments/0/prefer_not/0"}),
            ],
        ),
        (
            "Of a pair another rule speaks.",
            {"keep": [must("k1", measure="overjet", pair=["11", "11"], within=1, unit="mm")]},
            [],
        ),
        ("Two clauses may name one tooth.", {"keep": [must("k1", hold=["11"]), must("k2", hold=["11"])]}, []),
    ),
)
def test_tooth_listed_twice(changes, expected):
    assert told_by(teeth.tooth_listed_twice, **changes) == expected


@pytest.mark.parametrize(
    "upper, lower, expected",
    **rows(
        (
            "Each is told with the arch it belongs to.",
            ["11", "41"],
            ["21"],
            [
                ("/teeth/upper/1", (), {"tooth": "41", "arch": "upper", "expected": "lower"}),
                ("/teeth/lower/0", (), {"tooth": "21", "arch": "lower", "expected": "upper"}),
            ],
        ),
        ("Primary teeth have an arch, too.", ["55", "65"], ["75", "85"], []),
    ),
)
def test_tooth_in_wrong_arch(upper, lower, expected):
    assert told_by(teeth.tooth_in_wrong_arch, teeth=present(upper=upper, lower=lower)) == expected


@pytest.mark.parametrize(
    "states, expected",
    **rows(
        (
            "The second entry is told with the first.",
            [("11", "crown"), ("12", "crown"), ("11", "crown")],
            [("/teeth/particulars/2/tooth", (), {"tooth": "11", "first": "/teeth/particulars/0/tooth"})],
        ),
        ("One entry may hold several states.", [("11", "crown", "root-filled"), ("12", "crown")], []),
    ),
)
def test_particulars_twice(states, expected):
    assert told_by(teeth.particulars_twice, teeth=present(*states)) == expected
