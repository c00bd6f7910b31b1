"""Gum on smiling: each rule alone, below, at and above its boundary."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, found, must
from tests.validator.wellposed.rules.charts import Case, pointers, table

from wellposed.rules.vertical_gum import RULES

INSIDE, GROWING = "gum-intrusion-inside-norm", "gum-intrusion-while-lip-grows"
MORE, BELOW = "extrusion-with-gum-shown", "gum-complaint-answered-below"
FRONT, HERE = ["12", "11", "21", "22"], ("/movements/0",)
COMPLAINT = {"id": "p1", "problem": "excess-gingival-display"}
DEEP = {"id": "p2", "problem": "deep-bite"}


def intruded(gum=None, because=("p1",), problems=(COMPLAINT,), teeth=FRONT, motion="intrusion", **person):
    """The upper front intruded for the gum, in a person."""
    measured = [] if gum is None else [found("f1", "gingival-display-on-smiling", gum)]
    reasons = {"because": list(because)} if because else {}
    movement = must("m1", teeth=teeth, motion=motion, at_least=1, unit="mm", **reasons)
    patient = {"reference": "P-7F3A", **person}
    return {"patient": patient, "findings": measured, "problems": list(problems), "movements": [movement]}


def extruded(gum, teeth=FRONT):
    """Upper teeth extruded with so much gum."""
    return intruded(gum, because=(), problems=(), teeth=teeth, motion="extrusion")


def may(use, *teeth, name="a1"):
    """Teeth that may go up or down."""
    return allowed(name, use, teeth=list(teeth), up_to=1, unit="mm")


def complained(*allowances, problems=(COMPLAINT, DEEP), **more):
    """A complaint about gum with these allowances."""
    return {"problems": list(problems), "allow": list(allowances), **more}


LOWER = may("intrusion", "42", "41", "31", "32")
CASES = (
    # Sabri 2005: women show 1 to 2 mm on a full smile; men 1.5 mm less (Peck, Peck and Kataja 1992).
    Case(INSIDE, "below the most of women", intruded(1.99, sex="female"), HERE),
    Case(INSIDE, "at it", intruded(2, sex="female"), HERE),
    Case(INSIDE, "above it", intruded(2.01, sex="female")),
    Case(INSIDE, "at the most of men", intruded(0.5, sex="male"), HERE),
    Case(INSIDE, "above the most of men", intruded(0.51, sex="male")),
    Case(INSIDE, "sex not stated: the wider", intruded(2), HERE),
    Case(INSIDE, "not measured", intruded()),
    Case(INSIDE, "the finding as the reason", intruded(1, because=["f1"], problems=[]), HERE),
    Case(INSIDE, "no reason, only the complaint stated", intruded(1, because=()), HERE),
    Case(INSIDE, "no reason, a deep bite stated too", intruded(1, because=(), problems=[COMPLAINT, DEEP])),
    Case(INSIDE, "for the bite", intruded(1, because=["p2"], problems=[COMPLAINT, DEEP])),
    Case(INSIDE, "one central by itself", intruded(1, teeth=["21"])),
    # Vig and Cohen 1979, Nanda 1990, from memory: the lip has nearly done growing at 14 in girls, at 18 in boys.
    Case(GROWING, "a girl below 14", intruded(age_years=13.99, sex="female"), HERE),
    Case(GROWING, "a girl of 14", intruded(age_years=14, sex="female")),
    Case(GROWING, "a girl above", intruded(age_years=14.01, sex="female")),
    Case(GROWING, "a boy below 18", intruded(age_years=17.99, sex="male"), HERE),
    Case(GROWING, "a boy of 18", intruded(age_years=18, sex="male")),
    Case(GROWING, "sex not stated, below both ends", intruded(age_years=13), HERE),
    Case(GROWING, "sex not stated, between the ends", intruded(age_years=15)),
    Case(GROWING, "age not stated", intruded(growth="growing")),
    Case(GROWING, "growth complete", intruded(age_years=16, sex="male", growth="complete")),
    Case(GROWING, "for the bite", intruded(because=["p2"], problems=[COMPLAINT, DEEP], age_years=12)),
    # Kokich, Kokich and Kiyak 2006: 3 mm of gum is disliked.
    Case(MORE, "below what is disliked", extruded(2.99)),
    Case(MORE, "at it", extruded(3), HERE),
    Case(MORE, "above it", extruded(3.01), HERE),
    Case(MORE, "one lateral", extruded(4, teeth=["22"]), HERE),
    Case(MORE, "lower incisors", extruded(4, teeth=["31", "41"])),
    Case(MORE, "not measured", extruded(None)),
    Case(MORE, "intruded", intruded(4)),
    # Geometry: lower incisors and molars do not move the upper gum.
    Case(BELOW, "lower incisors only", complained(LOWER), ("/problems/0",)),
    Case(BELOW, "molars only", complained(may("extrusion", "36", "46")), ("/problems/0",)),
    Case(BELOW, "upper incisors too", complained(LOWER, may("intrusion", *FRONT, name="a2"))),
    Case(
        BELOW,
        "deep as measured: 4.01 mm",
        complained(LOWER, problems=[COMPLAINT], findings=[found("f1", "overbite", 4.01)]),
        ("/problems/0",),
    ),
    Case(BELOW, "not deep: 4 mm", complained(LOWER, problems=[COMPLAINT], findings=[found("f1", "overbite", 4)])),
    Case(BELOW, "no complaint", complained(LOWER, problems=[DEEP])),
    Case(BELOW, "nothing moves", complained()),
    Case(BELOW, "surgery stated", complained(LOWER, process=[{"id": "q1", "step": "surgery"}])),
    Case(
        BELOW,
        "the gum is a goal",
        complained(LOWER, goals=[must("g1", measure="gingival-display-on-smiling", at_most=2, unit="mm")]),
    ),
    Case(BELOW, "the upper arch levelled", complained(LOWER, goals=[must("g1", level="upper")])),
)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers
