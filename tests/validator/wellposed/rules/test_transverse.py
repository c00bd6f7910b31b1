"""How far arches are widened: each rule alone, below, at and above its boundary."""

import pytest
from tests.validator.wellposed.consistency.ordinary import UPPER, allowed, found, must
from tests.validator.wellposed.rules.charts import Case, pointers, table
from tests.validator.wellposed.rules.charts import found as said

from wellposed.rules.transverse import RULES

ADVICE, JAW = "widening-beyond-advice", "skeletal-widening"
CANINES, CANINES_FAR = "lower-inter-canine-changed", "lower-inter-canine-changed-far"
ROOTS, HERE = "widening-without-root-control", ("/allow/0",)
PREMOLARS, MOLARS = ["14", "15", "24", "25"], ["16", "17", "26", "27"]


def wide(arch, amount, *teeth, use="widening", **more):
    """An arch, or some of its teeth, that may be widened."""
    named = {"teeth": list(teeth)} if teeth else {}
    return {"allow": [allowed("a1", use, arch=arch, up_to=amount, unit="mm", **named)], **more}


def moved(*teeth, amount=2.5, motion="buccal", **more):
    """Teeth moved in or out by order."""
    return {"movements": [must("m1", teeth=list(teeth), motion=motion, at_least=amount, unit="mm")], **more}


def width(measure, today, **goal):
    """A width and a goal on it."""
    return {"findings": [found("f1", measure, today)], "goals": [must("g1", measure=measure, unit="mm", **goal)]}


def kept_torque(*teeth):
    """A keep of the torque of these teeth."""
    return [must("k1", variable="torque", teeth=list(teeth), within=2, unit="deg")]


def torqued(*teeth, motion="buccal-root-torque"):
    """Torque of these teeth that may be made."""
    return allowed("a2", "movement", teeth=list(teeth), motion=motion, up_to=5, unit="deg")


def off_line(**values):
    """Teeth measured to stand off the arch line."""
    return [{"id": "f1", "tooth_measure": "displacement", "unit": "mm", "values": values}]


SCREW = allowed("a2", "auxiliary", auxiliary="expansion-screw")
LOWER_CANINES = "lower-inter-canine-width"
CASES = (
    # Common practice: 3 mm at upper canines and premolars, 4 mm at upper molars; Proffit: 2 to 3 mm at the lower ones.
    Case(ADVICE, "upper premolars below", wide("upper", 2.99, *PREMOLARS)),
    Case(ADVICE, "upper premolars at it", wide("upper", 3, *PREMOLARS)),
    Case(ADVICE, "upper premolars above", wide("upper", 3.01, *PREMOLARS), HERE),
    Case(ADVICE, "upper molars below", wide("upper", 3.99, *MOLARS)),
    Case(ADVICE, "upper molars at it", wide("upper", 4, *MOLARS)),
    Case(ADVICE, "upper molars above", wide("upper", 4.01, *MOLARS), HERE),
    Case(ADVICE, "a whole arch, its canines above", wide("upper", 3.5), HERE),
    Case(ADVICE, "lower premolars at it", wide("lower", 3, "34", "44")),
    Case(ADVICE, "lower premolars above", wide("lower", 3.01, "34", "44"), HERE),
    Case(ADVICE, "lower canines, told elsewhere", wide("lower", 2, "33", "43")),
    Case(ADVICE, "beyond practice, told elsewhere", wide("upper", 5.01, *MOLARS)),
    Case(ADVICE, "narrowed", wide("upper", 4, *PREMOLARS, use="narrowing")),
    Case(ADVICE, "both sides buccally by 2.5 mm", moved("16", "26"), ("/movements/0",)),
    Case(ADVICE, "one side by 2.5 mm", moved("16", "17")),
    Case(ADVICE, "lingually", moved("16", "26", motion="palatal")),
    Case(ADVICE, "one tooth by itself", moved("15", amount=4)),
    Case(ADVICE, "two teeth to the line", moved("15", "25", amount=2.5, findings=off_line(**{"15": -2, "25": -2}))),
    Case(ADVICE, "a goal 3 mm wider", width("upper-inter-first-premolar-width", 36, at_least=39)),
    Case(ADVICE, "a goal 3.01 mm wider", width("upper-inter-first-premolar-width", 36, at_least=39.01), ("/goals/0",)),
    Case(ADVICE, "a goal already met", width("upper-inter-first-premolar-width", 36, at_least=30, at_most=40)),
    # Korean J Orthod 2025;55:85-94: 5 mm was the most planned. Proffit: 4 to 5 mm by tipping in the lower arch.
    Case(JAW, "below the most", wide("upper", 4.99, *PREMOLARS)),
    Case(JAW, "at it", wide("upper", 5, *PREMOLARS)),
    Case(JAW, "above it", wide("upper", 5.01, *PREMOLARS), HERE),
    Case(JAW, "lower molars above it", wide("lower", 5.01, "36", "46"), HERE),
    Case(JAW, "lower canines, told elsewhere", wide("lower", 6, "33", "43")),
    Case(JAW, "with a screw", {"allow": [*wide("upper", 6)["allow"], SCREW]}),
    Case(JAW, "with surgery", wide("upper", 6, process=[{"id": "q1", "step": "surgery"}])),
    Case(JAW, "a goal 6 mm wider", width("upper-inter-first-molar-width", 44, at_least=50), ("/goals/0",)),
    # Blake and Bibby 1998, from memory: keep it, 1 mm, at most 2.
    Case(CANINES, "below the advice", wide("lower", 0.99)),
    Case(CANINES, "at it", wide("lower", 1)),
    Case(CANINES, "above it", wide("lower", 1.01), HERE),
    Case(CANINES, "at the most of practice", wide("lower", 2), HERE),
    Case(CANINES, "above that, told elsewhere", wide("lower", 2.01)),
    Case(CANINES, "narrowed", wide("lower", 1.5, use="narrowing"), HERE),
    Case(CANINES, "without the canines", wide("lower", 1.5, "34", "35", "44", "45")),
    Case(CANINES, "the upper canines", wide("upper", 1.5)),
    Case(CANINES, "a goal 1.5 mm narrower", width(LOWER_CANINES, 26.5, at_most=25), ("/goals/0",)),
    Case(CANINES, "a goal 1 mm wider", width(LOWER_CANINES, 24.1, at_least=25.1)),
    Case(
        CANINES, "a goal without a measurement", {"goals": [must("g1", measure=LOWER_CANINES, at_least=30, unit="mm")]}
    ),
    Case(CANINES_FAR, "at the most of practice", wide("lower", 2)),
    Case(CANINES_FAR, "above it", wide("lower", 2.01), HERE),
    Case(CANINES_FAR, "a goal 2.5 mm wider", width(LOWER_CANINES, 24, at_least=26.5), ("/goals/0",)),
    # Texts: from 2 to 3 mm a side; by tipping 2 mm is 9 degrees of a molar.
    Case(ROOTS, "below 2 mm a side", moved("16", "17", amount=1.99)),
    Case(ROOTS, "at 2 mm", moved("16", "17", amount=2)),
    Case(ROOTS, "above", moved("16", "17", amount=2.01), ("/movements/0",)),
    Case(ROOTS, "4 mm of a pair", wide("upper", 4)),
    Case(ROOTS, "4.01 mm of a pair", wide("upper", 4.01), HERE),
    Case(ROOTS, "of one side only, 3 mm", wide("upper", 3, "26", "27"), HERE),
    Case(ROOTS, "root torque allowed", {"allow": [*wide("upper", 3, "26", "27")["allow"], torqued("26", "27")]}),
    Case(ROOTS, "root torque of one of them", {"allow": [*wide("upper", 3, "26", "27")["allow"], torqued("26")]}, HERE),
    Case(
        ROOTS,
        "torque the other way",
        {"allow": [*wide("upper", 3, "26", "27")["allow"], torqued("26", "27", motion="palatal-root-torque")]},
        HERE,
    ),
    Case(ROOTS, "torque kept", wide("upper", 3, "26", "27", keep=kept_torque("26", "27"))),
    Case(ROOTS, "canines", wide("upper", 5, "13", "23")),
    Case(ROOTS, "the lower arch", moved("36", "37")),
    Case(ROOTS, "palatally", moved("16", "17", motion="palatal")),
)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers


# From the limits above: 4.5 mm is beyond 3 at canines and premolars and beyond 4 at molars.
def test_one_finding_of_a_clause_names_every_pair_and_its_limit():
    (finding,) = said(Case(ADVICE, "a whole arch", wide("upper", 4.5)), RULES)
    assert sorted(finding.facts["teeth"]) == sorted(set(UPPER) - {"12", "11", "21", "22"})
    assert finding.facts["limits"] == [3, 4]


# From the limits above: 3.5 mm is beyond that of canines and premolars only.
def test_only_the_pairs_beyond_their_limit_are_named():
    (finding,) = said(Case(ADVICE, "a whole arch", wide("upper", 3.5)), RULES)
    assert finding.facts["teeth"] == ["13", "23", "14", "24", "15", "25"]
