"""Teeth that cannot move, amounts beyond practice and advice, enamel where there is none: below, at and above."""

import pytest
from tests.validator.wellposed.consistency.ordinary import UPPER, allowed, must, present
from tests.validator.wellposed.consistency.ordinary import found as finding
from tests.validator.wellposed.review.rules.held import Case, found, moved, pointers, reduced, stage, table

LOCKED, ABSENT, UNSAID = "locked-tooth-moved", "absent-tooth-moved", "teeth-left-unsaid"
PRACTICE, ADVICE = "plan-beyond-practice", "plan-beyond-advice"
NOWHERE, DOUBTFUL = "reduction-planned-without-contact", "reduction-planned-at-doubtful-tooth"
TABLE, ENAMEL = ("/movements/0",), ("/reductions",)
HERE = ("/reductions/0",)


def at(tooth):
    return (f"/movements/0/values/{tooth}",)


def state(tooth, name, **more):
    """A prescription with a tooth in a state."""
    return {"prescription": {"teeth": present((tooth, name), **more)}}


def go(*teeth, **amount):
    """Teeth that all go as far in one variable."""
    ((name, value),) = amount.items()
    return {"movements": moved(**{name: (value, *teeth)})}


def limits(where, found_at, name, tooth, limit):
    """A limit from just below to just above it, in the sense of its sign."""
    step = 0.01 if limit > 0 else -0.01
    yield Case(where, f"{name}, below", go(tooth, **{found_at: round(limit - step, 2)}))
    yield Case(where, f"{name}, at it", go(tooth, **{found_at: limit}))
    yield Case(where, f"{name}, above", go(tooth, **{found_at: round(limit + step, 2)}), at(tooth))


def front(*amounts):
    """Enamel taken from the contacts of a lower front and the back of it, first to last."""
    names = (
        "47-46",
        "46-45",
        "45-44",
        "44-43",
        "43-42",
        "42-41",
        "41-31",
        "31-32",
        "32-33",
        "33-34",
        "34-35",
        "35-36",
        "36-37",
    )
    return {"reductions": [reduced(name, mm, 1) for name, mm in zip(names, amounts, strict=False) if mm]}


BRIDGE = present(("15", "bridge-abutment"), ("14", "pontic"))
GAP = {"findings": [finding("f1", "upper-spacing", 1, contacts=["11-21"])]}
NAMED = [allowed("a1", "enamel-reduction", contacts=["12-11"], per_contact=0.3, unit="mm")]
WHOLE_ARCH = [allowed("a1", "enamel-reduction", arch="upper", per_contact=0.3, unit="mm")]
CASES = (
    # What counts as no movement: 0.1 mm, 1 deg.
    Case(LOCKED, "an implant as good as still", {**go("11", out=0.1), **state("11", "implant")}),
    Case(LOCKED, "an implant moved", {**go("11", out=0.11), **state("11", "implant")}, at("11")),
    Case(LOCKED, "an ankylosed tooth turned", {**go("11", rotation=1.01), **state("11", "ankylosed")}, at("11")),
    Case(LOCKED, "turned by as good as nothing", {**go("11", rotation=-1), **state("11", "ankylosed")}),
    Case(LOCKED, "a bridge", {**go("15", "14", out=1), "prescription": {"teeth": BRIDGE}}, TABLE),
    Case(LOCKED, "moved on the way only", {**go("11", out=0), **state("11", "implant"),
         "stages": [stage(3, "upper", out={"11": 0.5})]}, at("11")),
    Case(LOCKED, "a crowned tooth moves", {**go("11", out=1), **state("11", "crown")}),
    Case(ABSENT, "a tooth that is there", go("17", out=1)),
    Case(ABSENT, "one that is not", go("18", out=1), at("18")),
    Case(ABSENT, "named, and not moved", go("18", out=0)),
    Case(ABSENT, "moved on the way only", {"movements": [], "unlisted": "unmoved",
         "stages": [stage(3, "upper", out={"18": 0.5})]}, ("/movements",)),
    Case(ABSENT, "not erupted", {**go("18", out=1), **state("18", "unerupted", upper=["18", *UPPER])}, at("18")),
    Case(ABSENT, "to be taken out", {**go("14", out=1), "prescription": {
         "allow": [allowed("a1", "extraction", teeth=["14", "24"])]}}, at("14")),
    Case(ABSENT, "taken out by the setup itself", {**go("14", out=1), "extractions": ["14"]}),
    Case(UNSAID, "all of them named", go(*UPPER, out=0) | {"prescription": {"teeth": {"upper": UPPER, "lower": []}}}),
    Case(UNSAID, "one of them not", go(*UPPER[1:], out=0) | {"prescription": {"teeth": {"upper": UPPER, "lower": []}}},
         ("/movements",)),
    Case(UNSAID, "the others said to stay", go("11", out=1) | {"unlisted": "unmoved"}),
    # Practice limits as in the norms; the sources stand there with each.
    *limits(PRACTICE, "vertical", "intrusion of an upper incisor", "11", -2.7),
    *limits(PRACTICE, "vertical", "intrusion of a lower incisor", "31", -4),
    *limits(PRACTICE, "vertical", "intrusion of an upper molar", "16", -3.29),
    *limits(PRACTICE, "vertical", "extrusion", "43", 2.5),
    *limits(PRACTICE, "along", "distal movement of an upper molar", "26", -4.2),
    *limits(PRACTICE, "along", "distal movement of a lower molar", "36", -3),
    *limits(PRACTICE, "out", "advance of an upper incisor", "12", 4),
    *limits(PRACTICE, "out", "retraction of an upper incisor", "21", -7),
    *limits(PRACTICE, "out", "retraction of a lower incisor", "41", -5),
    *limits(PRACTICE, "tip", "tip", "14", 15),
    *limits(PRACTICE, "rotation", "rotation", "14", -45),
    *limits(PRACTICE, "torque", "torque of a molar", "16", 15),
    Case(PRACTICE, "mesial movement has no limit", go("16", along=6)),
    # The root's end of 11 goes 23.5 x pi / 180 = 0.4102 mm a degree (edge to apex 23.5 mm, Nelson): 4 mm are 9.75 deg.
    Case(PRACTICE, "a root's end, below", go("11", torque=9.75)),
    Case(PRACTICE, "a root's end, above", go("11", torque=9.76), at("11")),
    Case(PRACTICE, "a root's end that the crown carries along", {
         "movements": moved(out={"11": 1}, torque={"11": 9.76})}),
    # A canine's outward travel widens its pair by 0.79 (upper) and 0.72 (lower) of it: check values of the semantics.
    Case(PRACTICE, "lower canines outward, 2 mm of width at 1.39 mm a side", go("33", "43", out=1.3)),
    Case(PRACTICE, "lower canines outward, further", go("33", "43", out=1.5), TABLE),
    Case(PRACTICE, "lower canines inward as far", go("33", "43", out=-1.5), TABLE),
    Case(PRACTICE, "upper canines outward, 5 mm of width at 3.16 mm a side", go("13", "23", out=3)),
    Case(PRACTICE, "upper canines outward, further", go("13", "23", out=3.4), TABLE),
    Case(PRACTICE, "enamel at a lower contact at it", {"reductions": [reduced("41-31", 0.5, 1)]}),
    Case(PRACTICE, "enamel at a lower contact above", {"reductions": [reduced("31-41", 0.51, 1)]}, ENAMEL),
    Case(PRACTICE, "enamel taken twice at one contact", {
         "reductions": [reduced("41-31", 0.3, 1), reduced("41-31", 0.3, 9)]}, ENAMEL),
    Case(PRACTICE, "8.9 mm of enamel in all", front(*[0.8, 0.8, 0.8, 0.8], *[0.5] * 5, *[0.8] * 4)),
    Case(PRACTICE, "8.91 mm of enamel in all", front(*[0.8, 0.8, 0.81, 0.8], *[0.5] * 5, *[0.8] * 4), ENAMEL),
    Case(PRACTICE, "a lateral far behind comes to the line first", {**go("12", out=5), "prescription": {"findings": [
         {"id": "f1", "tooth_measure": "displacement", "unit": "mm", "values": {"12": -1}}]}}),
    Case(PRACTICE, "an amount of each kind, each told once", {"movements": moved(vertical=(-3, "11", "21"))}, TABLE),
    *limits(ADVICE, "along", "distal movement of an upper molar", "16", -3),
    *limits(ADVICE, "along", "distal movement of a lower molar", "46", -2),
    *limits(ADVICE, "vertical", "intrusion of an upper incisor", "11", -1.88),
    *limits(ADVICE, "vertical", "intrusion of a lower incisor", "31", -2.84),
    *limits(ADVICE, "vertical", "intrusion of an upper molar", "16", -0.5),
    *limits(ADVICE, "out", "advance of a lower incisor", "31", 2),
    Case(ADVICE, "beyond practice, told there", go("16", along=-4.21)),
    Case(ADVICE, "a root's end, 3 mm are 7.31 deg", go("11", torque=7.31)),
    Case(ADVICE, "a root's end, above", go("11", torque=7.32), at("11")),
    Case(ADVICE, "upper canines outward, 3 mm of width at 1.9 mm a side", go("13", "23", out=1.8)),
    Case(ADVICE, "upper canines outward, further", go("13", "23", out=2), TABLE),
    Case(ADVICE, "upper canines inward as far", go("13", "23", out=-2)),
    Case(ADVICE, "lower canines inward, 1 mm of width at 0.69 mm a side", go("33", "43", out=-0.65)),
    Case(ADVICE, "lower canines inward, further", go("33", "43", out=-0.75), TABLE),
    Case(ADVICE, "upper molars less than 4 mm of width, 1 mm out is about 1 of width", go("17", "27", out=1.9)),
    Case(ADVICE, "upper molars more than 4 mm of width", go("17", "27", out=2.3), TABLE),
    Case(ADVICE, "enamel at a lower contact at it", {"reductions": [reduced("41-31", 0.4, 1)]}),
    Case(ADVICE, "enamel at a lower contact above", {"reductions": [reduced("41-31", 0.41, 1)]}, ENAMEL),
    Case(ADVICE, "6.4 mm behind", front(*[0.8] * 4, *[0] * 5, *[0.8] * 4), ENAMEL),
    Case(ADVICE, "6.41 mm behind", front(0.8, 0.8, 0.8, 0.81, *[0] * 5, *[0.8] * 4), (*ENAMEL, *ENAMEL)),
    Case(NOWHERE, "a contact", {"reductions": [reduced("12-11", 0.3, 1)], "prescription": GAP}),
    Case(NOWHERE, "a measured space", {"reductions": [reduced("21-11", 0.3, 1)], "prescription": GAP}, HERE),
    Case(NOWHERE, "nothing is taken there", {"reductions": [reduced("21-11", 0, 1)], "prescription": GAP}),
    Case(NOWHERE, "a space to be left", {"reductions": [reduced("12-11", 0.3, 1)], "prescription": {
         "goals": [must("g1", leave="12-11", amount=1, unit="mm")]}}, HERE),
    Case(NOWHERE, "across a tooth that stands between", {"reductions": [reduced("13-15", 0.3, 1)]}, HERE),
    Case(NOWHERE, "across the midline, over a central", {"reductions": [reduced("42-31", 0.3, 1)]}, HERE),
    Case(NOWHERE, "at a tooth that is not there", {"reductions": [reduced("17-18", 0.3, 1)]}, HERE),
    Case(NOWHERE, "at one that has not erupted", {"reductions": [reduced("17-18", 0.3, 1)],
         **state("18", "unerupted", upper=["18", *UPPER])}, HERE),
    Case(NOWHERE, "across a tooth the prescription has taken out before", {"reductions": [reduced("42-31", 0.3, 1)],
         "prescription": {"teeth": {"upper": UPPER, "lower": ["43", "42", "31", "32"]}, "findings": [
         finding("f1", "lower-crowding", 2)]}}),
    Case(NOWHERE, "an implant", {"reductions": [reduced("12-11", 0.3, 1)], **state("12", "implant")}, HERE),
    Case(NOWHERE, "an implant, the arch left to the laboratory", {"reductions": [reduced("12-11", 0.3, 1)],
         "prescription": {"teeth": present(("12", "implant")), "allow": WHOLE_ARCH}}, HERE),
    Case(NOWHERE, "the contact named by the prescription", {"reductions": [reduced("12-11", 0.3, 1)],
         "prescription": {"teeth": present(("12", "implant")), "allow": NAMED}}),
    Case(DOUBTFUL, "ordinary teeth", {"reductions": [reduced("12-11", 0.3, 1)]}),
    Case(DOUBTFUL, "a small crown", {"reductions": [reduced("11-12", 0.3, 1)], **state("12", "small-crown")}, HERE),
    Case(DOUBTFUL, "a veneer", {"reductions": [reduced("12-11", 0.3, 1)], **state("11", "veneer")}, HERE),
    Case(DOUBTFUL, "beside it", {"reductions": [reduced("12-11", 0.3, 1)], **state("13", "veneer")}),
    Case(DOUBTFUL, "a primary tooth", {"reductions": [reduced("83-42", 0.3, 1)], "prescription": {
         "teeth": {"upper": UPPER, "lower": ["83", "42", "41", "31"]}}}, HERE),
    Case(DOUBTFUL, "the contact named by the prescription", {"reductions": [reduced("12-11", 0.3, 1)],
         "prescription": {"teeth": present(("12", "small-crown")), "allow": NAMED}}),
)  # fmt: skip


@pytest.mark.parametrize("case", **table(*CASES))
def test_it_speaks_where_it_should_and_nowhere_else(case):
    assert pointers(case) == case.pointers


def told(rule, sentence):
    return [one.facts for one in found(next(case for case in CASES if (case.rule, case.sentence) == (rule, sentence)))]


def test_an_amount_is_told_with_its_place_and_its_limit():
    (both,) = told(PRACTICE, "an amount of each kind, each told once")
    assert [both[name] for name in ("what", "where", "amount", "limit")] == ["intrusion", ["11", "21"], 3, 2.7]
    (wide,) = told(PRACTICE, "upper canines outward, further")
    assert (wide["what"], wide["where"]) == ("widening", ["13/23"])
    assert wide["amount"] == pytest.approx(2 * 0.79 * 3.4, rel=0.03)  # the check value of the semantics
    (narrow,) = told(PRACTICE, "lower canines inward as far")
    assert narrow["what"] == "narrowing"


def test_why_a_tooth_is_not_in_line_is_told():
    assert [told(ABSENT, name)[0]["why"] for name in ("one that is not", "not erupted", "to be taken out")] == [
        ["not-listed-as-present"],
        ["unerupted"],
        ["taken-out"],
    ]
