"""Two rules that tell one cause of one clause stand as one finding."""

import json

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, document, found, must, present
from tests.validator.wellposed.rules.stories import moved, problem, teeth_of

from wellposed.catalogue import rules
from wellposed.check import check
from wellposed.findings import Finding, Severity
from wellposed.rules.alike import STRONGER, as_one

UPPER_FRONT = ["12", "11", "21", "22"]
SIDES = ("right", "left")
# Anterior ratio of Bolton 1958, 77.2 %: beside upper teeth of 45 mm, lower ones of 36.8 mm are 2 mm too wide.
WIDTHS = {"3": (7.5, 7.9), "2": (6.5, 5.5), "1": (8.5, 5)}
QUADRANTS = {"1": 0, "2": 0, "3": 1, "4": 1}
WIDE_BELOW = {f"_{side}{tooth}": WIDTHS[tooth][row] for side, row in QUADRANTS.items() for tooth in WIDTHS}
ALIKE = {
    ("extrusion-without-attachment", "incisor-extrusion-seldom-reached"): {
        "movements": [moved("m1", ["11", "21"], "extrusion", 1)]
    },
    ("adult-widening-partly-reached", "widening-without-root-control"): {
        "patient": {"reference": "P-1", "growth": "complete"},
        "movements": [moved("m1", ["16", "26"], "buccal", 2.5)],
    },
    ("class-left-as-it-is", "class-not-supported"): {
        "findings": [found(f"f{n}", f"molar-relation-{side}", 0) for n, side in enumerate(SIDES, 1)],
        "problems": [problem("p1", "class-ii")],
    },
    ("crossbite-without-width-change", "crossbite-not-supported"): {
        "findings": [found("f1", "transverse-overlap-right", 2)],
        "problems": [problem("p1", "crossbite-posterior", side="right")],
    },
    ("movement-nothing-needs", "answers-a-normal-finding"): {
        "findings": [found("f1", "overbite", 3)],
        "movements": [moved("m1", ["31", "41"], "intrusion", 0.6, "f1")],
    },
    ("movement-nothing-needs", "gum-intrusion-inside-norm"): {
        "findings": [found("f1", "gingival-display-on-smiling", 1)],
        "movements": [moved("m1", UPPER_FRONT, "intrusion", 1, "f1")],
    },
    ("problem-without-finding", "crowding-not-supported"): {
        "findings": [found("f1", "lower-spacing", 2)],
        "problems": [problem("p1", "crowding", arch="lower")],
    },
    ("problem-without-finding", "spacing-not-supported"): {
        "findings": [found("f1", "lower-crowding", 2)],
        "problems": [problem("p1", "spacing", arch="lower")],
    },
    ("midline-without-asymmetric-means", "means-not-said"): {
        "findings": [found("f1", "upper-midline", 3)],
        "goals": [must("g1", measure="upper-midline", at_least=-0.5, at_most=0.5, unit="mm")],
    },
    ("bare-number-in-words", "number-of-another-notation"): {"notes": [{"text": "Teeth 3 and 14 have crowns."}]},
    ("allowance-without-use", "reduction-at-an-implant"): {
        "teeth": present(("12", "implant")),
        "allow": [allowed("a1", "enamel-reduction", contacts=["13-12"], per_contact=0.3, unit="mm")],
    },
    ("allowance-without-use", "what-it-forces"): {
        "keep": [must("k1", hold=UPPER_FRONT)],
        "allow": [allowed("a1", "incisor-retraction", arch="upper", up_to=2, unit="mm")],
    },
    ("allowance-not-needed", "goals-already-met"): {
        "findings": [found("f1", "overbite", 3)],
        "goals": [must("g1", measure="overbite", at_most=4, unit="mm")],
        "allow": [allowed("a1", "intrusion", teeth=["42", "41", "31", "32"], up_to=1, unit="mm")],
    },
    ("reduction-without-reason", "reduction-in-the-small-arch"): {
        "findings": [teeth_of("tooth-width", "f1", **WIDE_BELOW), found("f2", "upper-crowding", 0)],
        "allow": [allowed("a1", "enamel-reduction", contacts=["11-21"], per_contact=0.3, unit="mm")],
    },
    ("skeletal-widening", "beyond-practice"): {"movements": [moved("m1", ["16", "26"], "buccal", 3)]},
}


def findings(**members):
    return check(json.dumps(document(**members)).encode()).findings


@pytest.mark.parametrize("weaker, stronger", ALIKE)
def test_what_says_less_goes_under_what_says_more(weaker, stronger):
    told = {one.rule: one for one in findings(**ALIKE[weaker, stronger])}
    assert told[weaker].under == told[stronger].name
    assert told[stronger].under is None


def test_alone_it_stands_by_itself():
    members = {"movements": [moved("m1", ["11", "21"], "extrusion", 1, overcorrection={"value": 0.5, "unit": "mm"})]}
    told = {one.rule: one for one in findings(**members)}
    assert told["extrusion-without-attachment"].under is None
    assert "incisor-extrusion-seldom-reached" not in told


def test_of_two_clauses_each_keeps_its_own():
    members = {
        "movements": [
            moved("m1", ["11", "21"], "extrusion", 1),
            moved("m2", ["13", "23"], "extrusion", 1),
        ]
    }
    lone = [one for one in findings(**members) if one.rule == "extrusion-without-attachment" and not one.under]
    assert [one.pointer for one in lone] == ["/movements/1"]


WEAK, STRONG = "extrusion-without-attachment", "incisor-extrusion-seldom-reached"


def test_what_weighs_more_is_not_hidden():
    heavy = Finding(WEAK, Severity.ASK, "/movements/0")
    light = Finding(STRONG, Severity.CAUTION, "/movements/0")
    assert list(as_one([heavy, light])) == [heavy, light]


def test_what_leads_stays_and_a_leader_under_another_passes_its_own_on():
    lead = Finding("deep-bite-not-supported", Severity.ASK, "/problems/0")
    strong = Finding(STRONG, Severity.CAUTION, "/movements/0", under=lead.name)
    weak = Finding(WEAK, Severity.NOTE, "/movements/0")
    below = Finding("age-not-stated", Severity.NOTE, "/patient", under=weak.name)
    assert [one.under for one in as_one([lead, strong, weak])] == [None, lead.name, lead.name]
    assert [one.under for one in as_one([weak, below, strong])] == [None, weak.name, lead.name]


def test_every_rule_named_is_there_and_none_stands_on_both_sides():
    stronger = {rule for rules in STRONGER.values() for rule in rules}
    assert {*STRONGER, *stronger} - {rule.id for rule in rules()} == set()
    assert stronger & set(STRONGER) == set()
    assert {(weaker, rule) for weaker, named in STRONGER.items() for rule in named} <= set(ALIKE)
