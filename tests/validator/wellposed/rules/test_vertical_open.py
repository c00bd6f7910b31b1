"""Open and shallow bites: each rule alone, below, at and above its boundary."""

import pytest
from tests.validator.wellposed.consistency.ordinary import LOWER, UPPER, allowed, found, must
from tests.validator.wellposed.rules.charts import Case, pointers, table
from tests.validator.wellposed.rules.charts import found as said

from wellposed.rules.vertical_open import RULES

BACK, DISTAL = "posterior-intrusion-in-open-bite-tendency", "distal-movement-in-open-bite"
SECOND, LEVEL = "bite-closed-by-molars-second-molars-silent", "levelling-opens-shallow-bite"
HERE, OPEN = ("/allow/0",), {"problems": [{"id": "p1", "problem": "open-bite-anterior"}]}


def bite(overbite, *allowances, **more):
    """An overbite (None: not measured) and these allowances."""
    measured = [] if overbite is None else [found("f1", "overbite", overbite)]
    return {"findings": measured, "allow": list(allowances), **more}


def up(*teeth, amount=1.0, name="a1"):
    """Teeth that may be intruded."""
    return allowed(name, "intrusion", teeth=list(teeth), up_to=amount, unit="mm")


def back(use="distal-movement", arch="upper", **said):
    """An arch that may be moved along the jaw."""
    return allowed("a1", use, arch=arch, up_to=2, unit="mm", **said)


def levelled(overbite, arch="lower", **more):
    """An arch levelled under an overbite."""
    return bite(overbite, goals=[must("g1", level=arch)], **more)


def without(*teeth):
    """The mouth without these teeth."""
    return {"teeth": {arch: [t for t in line if t not in teeth] for arch, line in (("upper", UPPER), ("lower", LOWER))}}


SCREWS = allowed("a9", "auxiliary", auxiliary="bone-screw")
CASES = (
    # Common practice: aligners alone intrude back teeth by about 0.5 mm; 1 mm of overbite or less tends to open.
    Case(BACK, "below what aligners reach", bite(-1, up("16", "26", amount=0.49))),
    Case(BACK, "at it", bite(-1, up("16", "26", amount=0.5))),
    Case(BACK, "above it", bite(-1, up("16", "26", amount=0.51)), HERE),
    Case(BACK, "at the shallow limit", bite(1, up("36", "46")), HERE),
    Case(BACK, "above the shallow limit", bite(1.01, up("36", "46"))),
    Case(BACK, "premolars", bite(0, up("14", "24")), HERE),
    Case(BACK, "both arches, one clause", bite(-1, up("16", "26", "36", "46")), HERE),
    Case(BACK, "incisors", bite(0, up("11", "21"))),
    Case(BACK, "with screws", bite(-1, up("16", "26"), SCREWS)),
    Case(BACK, "diagnosed, not measured", bite(None, up("16", "26"), **OPEN), HERE),
    Case(BACK, "diagnosed, measured otherwise", bite(2, up("16", "26"), **OPEN)),
    Case(BACK, "neither", bite(None, up("16", "26"))),
    # The same limit of 1 mm.
    Case(DISTAL, "below the limit", bite(0.99, back()), HERE),
    Case(DISTAL, "at the limit", bite(1, back()), HERE),
    Case(DISTAL, "above it", bite(1.01, back())),
    Case(DISTAL, "one side of the lower arch", bite(0, back(arch="lower", sides=["left"])), HERE),
    Case(DISTAL, "mesially", bite(0, back("mesial-movement"))),
    Case(DISTAL, "canines only", bite(0, back(teeth=["13", "23"]))),
    Case(
        DISTAL,
        "one ordered molar",
        bite(0, movements=[must("m1", teeth=["16"], motion="distal", at_least=1, unit="mm")]),
        ("/movements/0",),
    ),
    Case(DISTAL, "diagnosed, not measured", bite(None, back(), **OPEN), HERE),
    # Geometry: second molars that stand opposed touch unless one of them is intruded.
    Case(SECOND, "first molars only", bite(-1, up("16", "26")), HERE),
    Case(SECOND, "second molars too", bite(-1, up("16", "17", "26", "27"))),
    Case(SECOND, "the opposing ones, by another clause", bite(-1, up("16", "26"), up("37", "47", name="a2"))),
    Case(SECOND, "of one side only", bite(-1, up("16", "26", "27")), HERE),
    Case(SECOND, "one side, its second molar too", bite(-1, up("46", "47"))),
    Case(SECOND, "no upper second molars", bite(-1, up("16", "26"), **without("17", "27"))),
    Case(SECOND, "none of one side", bite(-1, up("16", "26"), **without("17")), HERE),
    Case(SECOND, "at the shallow limit", bite(1, up("16", "26")), HERE),
    Case(SECOND, "above it", bite(1.01, up("16", "26"))),
    # The same limit of 1 mm.
    Case(LEVEL, "below the limit", levelled(0.99), ("/goals/0",)),
    Case(LEVEL, "at the limit", levelled(1), ("/goals/0",)),
    Case(LEVEL, "above it", levelled(1.01)),
    Case(LEVEL, "overbite kept", levelled(0.5, keep=[must("k1", measure="overbite", within=0.5, unit="mm")])),
    Case(LEVEL, "the upper arch", levelled(0.5, arch="upper")),
    Case(LEVEL, "overbite not measured", levelled(None)),
)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers


# By hand: of 16 and 26 the second molars are 17 on 47 and 27 on 37; 27 is intruded, so the left ones part.
def test_only_second_molars_that_still_touch_are_named():
    (finding,) = said(Case(SECOND, "27 intruded too", bite(-1, up("16", "26", "27"))), RULES)
    assert finding.facts["touching"] == ["17", "47"]
