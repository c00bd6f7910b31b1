"""Clause by clause: what became of each form, and the mirror.

Every expected word is written by hand from the definitions in ``spec/revisions.md``.
"""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, expected, found, must
from tests.validator.wellposed.revisions.cases import prescription

from wellposed.revisions.comparing import compared
from wellposed.revisions.result import MIRRORED

FRONT = ["13", "12", "11", "21", "22", "23"]
BETWEEN = ["13-12", "12-11", "11-21", "21-22", "22-23"]


def bite(**bounds):
    return {"goals": [must("g1", measure="overbite", unit="mm", **bounds)]}


def at(value, **bounds):
    return {"findings": [found("f1", "overbite", value)], **bite(**bounds)}


def goal(**said):
    return {"goals": [must("g1", **said)]}


def keep(**said):
    return {"keep": [must("k1", **said)]}


def move(motion="intrusion", teeth=("11", "21"), **said):
    unit = "deg" if "torque" in motion or "rotation" in motion or "tip" in motion else "mm"
    return {"movements": [must("m1", teeth=list(teeth), motion=motion, unit=unit, **said)]}


def allow(use, **said):
    return {"allow": [allowed("a1", use, **said)]}


def barred(means, **said):
    return {"exclude": [{"id": "x1", "means": means, **said}]}


def attach(member, *teeth, name="t1", **said):
    return {"attachments": [{"id": name, member: list(teeth), **said}]}


def staged(**said):
    return {"staging": must("s1", **said)}


def weaker(members):
    return {section: [{**clause, "strength": "prefer"} for clause in said] for section, said in members.items()}


MM = {"unit": "mm"}
STEP = {"variable": "out", "amount": 0.25, "unit": "mm"}
ENAMEL = {"contacts": BETWEEN, "unit": "mm"}
ELASTICS = {"sides": ["right", "left"]}
TABLE = {
    # goals
    "align more teeth": (goal(align=FRONT[1:5]), goal(align=FRONT), "changed", "more", "more"),
    "teeth in another order": (goal(align=FRONT), goal(align=FRONT[::-1]), "reworded", "same", "same"),
    "close more": (goal(close=BETWEEN[:2]), goal(close=BETWEEN), "changed", "more", "more"),
    "contacts the other way round": (goal(close=["12-11"]), goal(close=["11-12"]), "reworded", "same", "same"),
    "leave more": (goal(leave="13-12", amount=1, **MM), goal(leave="12-13", amount=2, **MM), "changed", "both", "same"),
    "a floor raised": (bite(at_least=1), bite(at_least=2), "tightened", "more", "same"),
    "a ceiling raised": (bite(at_most=3), bite(at_most=4), "loosened", "less", "same"),
    "a ceiling taken away": (bite(at_least=1, at_most=3), bite(at_least=1), "loosened", "less", "same"),
    "both bounds raised": (bite(at_least=1, at_most=3), bite(at_least=2, at_most=4), "changed", "both", "same"),
    "a span inside the other": (bite(at_least=1, at_most=4), bite(at_least=2, at_most=3), "tightened", "more", "same"),
    "another unit": (
        bite(at_most=3),
        {"goals": [must("g1", measure="overbite", unit="percent", at_most=30)]},
        "changed",
        "both",
        "same",
    ),
    "at a named pair": (
        goal(measure="overjet", at_most=3, **MM),
        goal(measure="overjet", pair=["11", "41"], at_most=3, **MM),
        "changed",
        "both",
        "same",
    ),
    "the pair in another order": (
        goal(measure="overjet", pair=["11", "41"], at_most=3, **MM),
        goal(measure="overjet", pair=["41", "11"], at_most=3, **MM),
        "reworded",
        "same",
        "same",
    ),
    "was to fall, is to rise": (at(5, at_most=3), at(2, at_least=3), "reversed", "both", "both"),
    "only wished for": (goal(align=FRONT), weaker(goal(align=FRONT)), "loosened", "less", "same"),
    "weaker, but more of it": (bite(at_least=1), weaker(bite(at_least=2)), "changed", "both", "same"),
    "another overcorrection": (
        goal(align=FRONT),
        goal(align=FRONT, overcorrection={"value": 0.5, "unit": "mm"}),
        "changed",
        "same",
        "same",
    ),
    # keep
    "hold more": (keep(hold=["16"]), keep(hold=["16", "26"]), "tightened", "more", "same"),
    "a tolerance narrowed": (
        keep(measure="overbite", within=1, **MM),
        keep(measure="overbite", within=0.5, **MM),
        "tightened",
        "more",
        "same",
    ),
    "a tooth's tolerance narrowed": (
        keep(variable="out", teeth=["11"], within=1, **MM),
        keep(variable="out", teeth=["11"], within=0.5, **MM),
        "tightened",
        "more",
        "less",
    ),
    "more teeth within a tolerance": (
        keep(variable="out", teeth=["11"], within=1, **MM),
        keep(variable="out", teeth=["11", "21"], within=1, **MM),
        "changed",
        "more",
        "more",
    ),
    "more teeth within none": (
        keep(variable="out", teeth=["11"], within=0, **MM),
        keep(variable="out", teeth=["11", "21"], within=0, **MM),
        "tightened",
        "more",
        "same",
    ),
    "held, then kept within": (
        keep(hold=["11"]),
        keep(variable="out", teeth=["11"], within=0.5, **MM),
        "loosened",
        "less",
        "more",
    ),
    "one sense, then both": (
        keep(motion="labial", teeth=["11"], within=0, **MM),
        keep(variable="out", teeth=["11"], within=0, **MM),
        "tightened",
        "more",
        "same",
    ),
    # movements
    "a movement's floor raised": (move(at_least=1), move(at_least=2), "tightened", "more", "same"),
    "a movement's ceiling lowered": (move(at_most=2), move(at_most=1), "tightened", "more", "less"),
    "a movement's ceiling taken away": (move(at_least=1, at_most=2), move(at_least=1), "loosened", "less", "more"),
    "both moved up": (move(at_least=1, at_most=2), move(at_least=1.5, at_most=2.5), "changed", "both", "more"),
    "one tooth more": (move(at_least=1), move(teeth=["11", "21", "22"], at_least=1), "changed", "more", "more"),
    "intruded, then extruded": (move(at_least=1), move("extrusion", at_least=1), "reversed", "both", "both"),
    "some of them the other way": (move(at_least=1), move("extrusion", ["21"], at_least=1), "reversed", "both", "both"),
    "labial called buccal": (move("labial", at_least=1), move("buccal", at_least=1), "reworded", "same", "same"),
    "root palatal is crown labial": (
        move("palatal-root-torque", at_least=5),
        move("labial-crown-torque", at_least=5),
        "reworded",
        "same",
        "same",
    ),
    # allowances
    "less width": (
        allow("widening", arch="upper", up_to=3, **MM),
        allow("widening", arch="upper", up_to=2, **MM),
        "tightened",
        "same",
        "less",
    ),
    "wider, then narrower": (
        allow("widening", arch="upper", up_to=3, **MM),
        allow("narrowing", arch="upper", up_to=3, **MM),
        "reversed",
        "both",
        "both",
    ),
    "advance, then retraction": (
        allow("incisor-advance", arch="upper", up_to=1, **MM),
        allow("incisor-retraction", arch="upper", up_to=1, **MM),
        "reversed",
        "both",
        "both",
    ),
    "incisors named singly": (
        allow("incisor-advance", arch="upper", up_to=1, **MM),
        allow("incisor-advance", arch="upper", teeth=["12", "11", "21", "22"], up_to=1, **MM),
        "loosened",
        "less",
        "same",
    ),
    "the molars named": (
        allow("distal-movement", arch="upper", up_to=1, **MM),
        allow("distal-movement", arch="upper", teeth=["16", "17", "26", "27"], up_to=1, **MM),
        "reworded",
        "same",
        "same",
    ),
    "more enamel": (
        allow("enamel-reduction", per_contact=0.2, **ENAMEL),
        allow("enamel-reduction", per_contact=0.3, **ENAMEL),
        "loosened",
        "same",
        "more",
    ),
    "a sum that bounds nothing": (
        allow("enamel-reduction", per_contact=0.2, **ENAMEL),
        allow("enamel-reduction", per_contact=0.2, in_all=1, **ENAMEL),
        "changed",
        "same",
        "same",
    ),
    "fewer contacts": (
        allow("enamel-reduction", per_contact=0.2, **ENAMEL),
        allow("enamel-reduction", contacts=BETWEEN[:2], per_contact=0.2, **MM),
        "tightened",
        "same",
        "less",
    ),
    "more at a contact, less in all": (
        allow("enamel-reduction", per_contact=0.2, in_all=1, **ENAMEL),
        allow("enamel-reduction", per_contact=0.3, in_all=0.5, **ENAMEL),
        "changed",
        "same",
        "both",
    ),
    "enamel ordered": (
        allow("enamel-reduction", per_contact=0.2, **ENAMEL),
        allow("enamel-reduction", per_contact=0.2, at_least=0.5, **ENAMEL),
        "tightened",
        "more",
        "same",
    ),
    "more teeth out": (
        allow("extraction", teeth=["14"]),
        allow("extraction", teeth=["14", "24"]),
        "changed",
        "more",
        "more",
    ),
    "elastics on one side": (
        allow("class-ii-elastics", **ELASTICS),
        allow("class-ii-elastics", sides=["left"]),
        "tightened",
        "same",
        "less",
    ),
    "the other class": (
        allow("class-ii-elastics", **ELASTICS),
        allow("class-iii-elastics", **ELASTICS),
        "reversed",
        "both",
        "both",
    ),
    "the customary amount stated": (
        allow("class-ii-elastics", **ELASTICS),
        allow("class-ii-elastics", up_to=2, **MM, **ELASTICS),
        "changed",
        "same",
        "both",
    ),
    "fewer variables": (
        allow("laboratory-choice", arch="upper"),
        allow("laboratory-choice", arch="upper", variables=["tip"]),
        "tightened",
        "same",
        "less",
    ),
    "by its name, then as a motion": (
        allow("intrusion", teeth=["11"], up_to=1, **MM),
        allow("movement", teeth=["11"], motion="intrusion", up_to=1, **MM),
        "reworded",
        "same",
        "same",
    ),
    "allowed, then excluded": (
        allow("widening", arch="upper", up_to=2, **MM),
        barred("widening"),
        "reversed",
        "both",
        "both",
    ),
    "more gap at the back": (
        allow("posterior-open-bite", up_to=1, **MM),
        allow("posterior-open-bite", up_to=2, **MM),
        "loosened",
        "same",
        "more",
    ),
    # exclusions, expectations
    "excluded everywhere": (
        barred("enamel-reduction", arch="upper"),
        barred("enamel-reduction"),
        "tightened",
        "more",
        "same",
    ),
    "excluded of fewer teeth": (
        barred("extraction", teeth=["14", "24"]),
        barred("extraction", teeth=["14"]),
        "loosened",
        "less",
        "same",
    ),
    "more expected": (
        {"expect": [expected("e1", "overjet", -1, ground="growth")]},
        {"expect": [expected("e1", "overjet", -2, ground="growth")]},
        "loosened",
        "same",
        "more",
    ),
    "on another ground": (
        {"expect": [expected("e1", "overjet", -1, ground="growth")]},
        {"expect": [expected("e1", "overjet", -1, ground="functional-shift")]},
        "changed",
        "same",
        "same",
    ),
    # attachments
    "one more": (attach("must", "13"), attach("must", "13", "23"), "tightened", "more", "same"),
    "must, then may": (attach("must", "13"), attach("may", "13"), "loosened", "less", "more"),
    "must, then wished for": (attach("must", "13"), attach("prefer", "13"), "loosened", "less", "same"),
    "must, then must not": (attach("must", "13"), attach("must_not", "13"), "reversed", "both", "both"),
    "may, then must not": (attach("may", "13"), attach("must_not", "13", name="t7"), "tightened", "more", "less"),
    "another shape": (attach("must", "13"), attach("must", "13", shape="bevelled-gingival"), "changed", "same", "same"),
    "none elsewhere": (
        {"attachments": [{"id": "t1", "otherwise": "laboratory-decides"}]},
        {"attachments": [{"id": "t1", "otherwise": "none"}]},
        "tightened",
        "more",
        "less",
    ),
    # staging and the rest
    "smaller steps": (
        staged(largest_steps=[STEP]),
        staged(largest_steps=[{**STEP, "amount": 0.2}]),
        "tightened",
        "more",
        "same",
    ),
    "a larger step for one tooth": (
        staged(largest_steps=[STEP]),
        staged(largest_steps=[STEP, {**STEP, "amount": 0.3, "teeth": ["11"]}]),
        "loosened",
        "less",
        "same",
    ),
    "fewer aligners": (staged(most_aligners=20), staged(most_aligners=18), "tightened", "more", "same"),
    "fewer aligners, larger steps": (
        staged(most_aligners=20, largest_steps=[STEP]),
        staged(most_aligners=18, largest_steps=[{**STEP, "amount": 0.3}]),
        "changed",
        "both",
        "same",
    ),
    "worn longer": (staged(wear_interval_days=7), staged(wear_interval_days=10), "changed", "same", "same"),
    "another retainer": (
        {"retention": [{"id": "r1", "arch": "upper", "retainer": "bonded"}]},
        {"retention": [{"id": "r1", "arch": "upper", "retainer": "both"}]},
        "changed",
        "same",
        "same",
    ),
    "measured anew": (
        {"findings": [found("f1", "overbite", 3)]},
        {"findings": [found("f1", "overbite", 4)]},
        "changed",
        "same",
        "same",
    ),
    "another grade": (
        {"problems": [{"id": "p1", "problem": "deep-bite", "grade": "mild"}]},
        {"problems": [{"id": "p1", "problem": "deep-bite", "grade": "severe"}]},
        "changed",
        "same",
        "same",
    ),
}


def only(old, new):
    """What became of the clause told last; findings stand before it."""
    change = compared(prescription(**old), prescription(**new)).clauses[-1]
    return change.change, change.asks, change.opens


@pytest.mark.parametrize("old, new, change, asks, opens", TABLE.values(), ids=TABLE)
def test_what_became_of_a_clause(old, new, change, asks, opens):
    assert only(old, new) == (change, asks, opens)


@pytest.mark.parametrize("old, new, change, asks, opens", TABLE.values(), ids=TABLE)
def test_the_other_way_round_is_the_mirror(old, new, change, asks, opens):
    assert only(new, old) == tuple(MIRRORED.get(word, word) for word in (change, asks, opens))
