"""Intrusion of the upper front, as the lip shows it: each rule alone, below, at and above its boundary."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, found, must
from tests.validator.wellposed.rules.charts import Case, pointers, table

from wellposed.rules.vertical_display import RULES

NEED, LOW, FORTY = "upper-intrusion-without-need", "intrusion-with-low-display", "intrusion-past-forty"
FRONT = ["12", "11", "21", "22"]


def intruded(*findings, teeth=FRONT, because=None, age=None, sex=None, **more):
    """The upper front intruded, with these findings (measure, value), in a patient of this age and sex."""
    listed = [found(f"f{n}", *one) for n, one in enumerate(findings, 1)]
    reasons = {"because": because} if because else {}
    person = {"reference": "P-7F3A", **({} if age is None else {"age_years": age}), **({"sex": sex} if sex else {})}
    movement = must("m1", teeth=teeth, motion="intrusion", at_least=1, unit="mm", **reasons)
    return {"patient": person, "findings": listed, "movements": [movement], **more}


def shown(overbite, gum, **more):
    """The same with an overbite and gum on smiling."""
    return intruded(("overbite", overbite), ("gingival-display-on-smiling", gum), **more)


def at_rest(display, **more):
    """The same with a display at rest."""
    return intruded(("incisor-display-at-rest", display), **more)


def problem(term, **more):
    """A problem, by itself."""
    return {"problems": [{"id": "p1", "problem": term, **more}]}


HERE = ("/movements/0",)
CASES = (
    # Nanda, chapter on deep overbite: ideal 2 to 4 mm. Sabri 2005: women show 1 to 2 mm of gum.
    Case(NEED, "overbite below its most", shown(3.99, 1), HERE),
    Case(NEED, "overbite at its most", shown(4, 1), HERE),
    Case(NEED, "overbite above", shown(4.01, 1)),
    Case(NEED, "gum at the most of women", shown(3, 2), HERE),
    Case(NEED, "gum above", shown(3, 2.01)),
    # ... and men 1.5 mm less (Peck, Peck and Kataja 1992): 0.5 mm at the most.
    Case(NEED, "gum at the most of men", shown(3, 0.5, sex="male"), HERE),
    Case(NEED, "gum above the most of men", shown(3, 0.51, sex="male")),
    # ... above 40 percent of the lower crown the bite is deep: 3.2 of 8 mm is at it, 3.21 above.
    Case(
        NEED,
        "at 40 percent",
        intruded(("overbite", 3.2), ("lower-incisor-crown-height", 8), ("gingival-display-on-smiling", 1)),
        HERE,
    ),
    Case(
        NEED,
        "above 40 percent",
        intruded(("overbite", 3.21), ("lower-incisor-crown-height", 8), ("gingival-display-on-smiling", 1)),
    ),
    Case(NEED, "display not measured", intruded(("overbite", 3))),
    Case(NEED, "overbite not measured", intruded(("gingival-display-on-smiling", 1))),
    # Vig and Brundo 1978: under thirty 3.37 mm at rest; with the margin of 1.5 mm, 4.87.
    Case(
        NEED,
        "at rest at the most of the age",
        intruded(("overbite", 3), ("incisor-display-at-rest", 4.87), age=25),
        HERE,
    ),
    Case(NEED, "at rest above it", intruded(("overbite", 3), ("incisor-display-at-rest", 4.88), age=25)),
    Case(NEED, "at rest, no norm without age and sex", intruded(("overbite", 3), ("incisor-display-at-rest", 3))),
    Case(
        NEED,
        "allowed, not ordered",
        shown(3, 1, movements=None, allow=[allowed("a1", "intrusion", teeth=FRONT, up_to=1, unit="mm")]),
        ("/allow/0",),
    ),
    Case(NEED, "one central by itself", shown(3, 1, teeth=["11"])),
    Case(NEED, "the lower front", shown(3, 1, teeth=["31", "41"])),
    Case(NEED, "extruded", shown(3, 1, movements=[must("m1", teeth=FRONT, motion="extrusion", at_least=1, unit="mm")])),
    Case(
        NEED,
        "while drawn back",
        shown(3, 1, allow=[allowed("a1", "incisor-retraction", arch="upper", up_to=2, unit="mm")]),
    ),
    Case(NEED, "uneven gum line stated", shown(3, 1, **problem("gingival-margin-unevenness"))),
    Case(NEED, "worn teeth as the reason", shown(3, 1, because=["p1"], **problem("wear"))),
    Case(NEED, "deep bite as the reason", shown(3, 1, because=["p1"], **problem("deep-bite")), HERE),
    Case(NEED, "gum as the reason, told elsewhere", shown(3, 1, because=["p1"], **problem("excess-gingival-display"))),
    # Common practice: 1 mm or less at rest is little.
    Case(LOW, "below the limit", at_rest(0.99), HERE),
    Case(LOW, "at the limit", at_rest(1), HERE),
    Case(LOW, "above it", at_rest(1.01)),
    Case(LOW, "not measured", intruded(age=60)),
    Case(LOW, "the lower front", at_rest(0.5, teeth=["31", "41"])),
    # Common practice: over 40. Vig and Brundo 1978: 0.95 mm in the forties; with the margin of 1.5 mm, 2.45.
    Case(FORTY, "at 39.9", intruded(age=39.9)),
    Case(FORTY, "at 40", intruded(age=40)),
    Case(FORTY, "above it", intruded(age=40.1), HERE),
    Case(FORTY, "age not stated", intruded()),
    Case(FORTY, "usual display for the age", at_rest(2.45, age=45), HERE),
    Case(FORTY, "more than usual", at_rest(2.46, age=45)),
    Case(FORTY, "little, told elsewhere", at_rest(1, age=45)),
    Case(FORTY, "a lateral by itself", intruded(age=45, teeth=["12"])),
)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers
