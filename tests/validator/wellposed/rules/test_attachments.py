"""Attachments: each rule alone, below, at and above its amount, and where it must not speak.

Amounts from which an attachment is asked for have no published source (texts: rotation of round teeth 10 to 15 deg,
any extrusion, bodily travel 1 mm, root tip or torque 5 deg): the boundaries are those of the norms.
"""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, must, present
from tests.validator.wellposed.rules.charts import Case, found, pointers, table

from wellposed.rules import attachments, attachments_reason

RULES = (*attachments.RULES, *attachments_reason.RULES)
REFUSED, WISHED, RESTORED = (
    "attachment-refused-but-needed",
    "wish-against-needed-attachment",
    "attachment-on-restored-tooth",
)
CHANGING, HIDDEN = "attachment-on-changing-tooth", "attachment-on-unerupted-tooth"
IDLE, SMALL = "attachment-without-reason", "attachment-for-small-movement"
SHORT, SHAPE = "no-attachments-and-short-crowns", "attachment-shape-not-said"
HERE = ("/attachments/0",)


def moved(tooth, motion, amount, unit="mm", strength="must", **said):
    """One tooth, moved by at least so much."""
    bounds = {"at_least": amount} if amount else {}
    return {"id": "m1", "strength": strength, "teeth": [tooth], "motion": motion, "unit": unit, **bounds, **said}


def turned(tooth, degrees, **said):
    return moved(tooth, "mesiolingual-rotation", degrees, "deg", **said)


def on(member, *teeth, **said):
    """An attachment clause."""
    return {"id": "t1", member: list(teeth), **said}


def order(movement, attachment, **more):
    return {"movements": [movement], "attachments": [attachment], **more}


def heights(**values):
    finding = {"id": "f1", "tooth_measure": "crown-height", "unit": "mm"}
    return [{**finding, "values": {tooth.removeprefix("t"): value for tooth, value in values.items()}}]


def bare(attachment, findings, **more):
    return {"attachments": [attachment], "findings": findings, **more}


NONE = {"id": "t1", "otherwise": "none"}
BUTTON = [allowed("a1", "auxiliary", auxiliary="bonded-button", teeth=["13"])]
PLANE = [allowed("a1", "auxiliary", auxiliary="bite-plane")]
BODILY = [allowed("a1", "movement", teeth=["13"], motion="distal-crown-tip", up_to=3, unit="deg")]
CASES = (
    Case(REFUSED, "a canine below 10 degrees", order(turned("13", 9.99), on("must_not", "13"))),
    Case(REFUSED, "a canine at 10 degrees", order(turned("13", 10), on("must_not", "13"))),
    Case(REFUSED, "a canine above 10 degrees", order(turned("13", 10.01), on("must_not", "13")), HERE),
    Case(REFUSED, "a canine of the left side", order(turned("33", 12), on("must_not", "33")), HERE),
    Case(REFUSED, "a premolar at 10 degrees", order(turned("45", 10), on("must_not", "45"))),
    Case(REFUSED, "a premolar above 10 degrees", order(turned("45", 10.01), on("must_not", "45")), HERE),
    Case(REFUSED, "an incisor, which is flat", order(turned("11", 30), on("must_not", "11"))),
    Case(REFUSED, "the least extrusion", order(moved("11", "extrusion", 0.01), on("must_not", "11")), HERE),
    Case(REFUSED, "an intrusion", order(moved("11", "intrusion", 1), on("must_not", "11"))),
    Case(REFUSED, "root torque at 5", order(moved("11", "palatal-root-torque", 5, "deg"), on("must_not", "11"))),
    Case(REFUSED, "and above", order(moved("11", "palatal-root-torque", 5.01, "deg"), on("must_not", "11")), HERE),
    Case(REFUSED, "a crown tipped over", order(moved("11", "labial-crown-torque", 8, "deg"), on("must_not", "11"))),
    Case(REFUSED, "bodily, 1 mm", order(moved("13", "distal", 1), on("must_not", "13"))),
    Case(REFUSED, "bodily, above 1 mm", order(moved("13", "distal", 1.01), on("must_not", "13")), HERE),
    Case(REFUSED, "the same, tipping allowed", order(moved("13", "distal", 1.5), on("must_not", "13"), allow=BODILY)),
    Case(REFUSED, "root tip at 5", order(moved("13", "distal-crown-tip", 5, "deg"), on("must_not", "13"))),
    Case(REFUSED, "root tip above 5", order(moved("13", "distal-crown-tip", 5.01, "deg"), on("must_not", "13")), HERE),
    Case(REFUSED, "no other tooth carries one", order(turned("13", 20), NONE), HERE),
    Case(REFUSED, "refused to another tooth", order(turned("13", 20), on("must_not", "23"))),
    Case(REFUSED, "wished away only", order(turned("13", 20), on("prefer_not", "13"))),
    Case(REFUSED, "a rotation that is a wish", order(turned("13", 20, strength="prefer"), on("must_not", "13"))),
    Case(REFUSED, "an upper bound only", order(turned("13", None, at_most=20), on("must_not", "13"))),
    Case(REFUSED, "a button instead", order(turned("13", 20), on("must_not", "13"), allow=BUTTON)),
    Case(REFUSED, "a bite plane is no hold", order(turned("13", 20), on("must_not", "13"), allow=PLANE), HERE),
    Case(
        REFUSED,
        "two orders, one refusal, one finding",
        {
            "movements": [turned("13", 20), {**moved("11", "extrusion", 1), "id": "m2"}],
            "attachments": [on("must_not", "13", "11")],
        },
        HERE,
    ),
    Case(WISHED, "a wish against 20 degrees", order(turned("13", 20), on("prefer_not", "13")), HERE),
    Case(WISHED, "a wish against 10 degrees", order(turned("13", 10), on("prefer_not", "13"))),
    Case(WISHED, "a refusal is no wish", order(turned("13", 20), on("must_not", "13"))),
    Case(RESTORED, "enamel", {"attachments": [on("must", "15", reason="retention")]}),
    Case(RESTORED, "a veneer", {"teeth": present(("11", "veneer")), "attachments": [on("must", "11")]}, HERE),
    Case(RESTORED, "a wish", {"teeth": present(("16", "large-filling")), "attachments": [on("prefer", "16")]}, HERE),
    Case(RESTORED, "allowed only", {"teeth": present(("11", "veneer")), "attachments": [on("may", "11")]}),
    Case(RESTORED, "refused", {"teeth": present(("11", "veneer")), "attachments": [on("must_not", "11")]}),
    Case(RESTORED, "a root filling", {"teeth": present(("11", "root-filled")), "attachments": [on("must", "11")]}),
    Case(RESTORED, "an implant, to move", {"teeth": present(("15", "implant")), "attachments": [on("must", "15")]}),
    Case(
        RESTORED,
        "an implant, to hold",
        {"teeth": present(("15", "implant")), "attachments": [on("must", "15", reason="retention")]},
        HERE,
    ),
    Case(
        CHANGING, "half erupted", {"teeth": present(("13", "partly-erupted")), "attachments": [on("must", "13")]}, HERE
    ),
    Case(
        CHANGING,
        "a primary molar that is to move",
        {"teeth": {"upper": ["16", "55", "14"], "lower": []}, "attachments": [on("must", "55")]},
        HERE,
    ),
    Case(
        CHANGING,
        "a primary molar that holds",
        {"teeth": {"upper": ["16", "55", "14"], "lower": []}, "attachments": [on("must", "55", reason="retention")]},
    ),
    Case(CHANGING, "allowed only", {"teeth": present(("13", "partly-erupted")), "attachments": [on("may", "13")]}),
    Case(HIDDEN, "a tooth to come", {"teeth": present(("18", "unerupted")), "attachments": [on("may", "18")]}, HERE),
    Case(HIDDEN, "refused there", {"teeth": present(("18", "unerupted")), "attachments": [on("must_not", "18")]}),
    Case(IDLE, "nothing moves it", {"attachments": [on("must", "15", reason="movement")]}, HERE),
    Case(IDLE, "it holds", {"attachments": [on("must", "15", reason="retention")]}),
    Case(IDLE, "a wish", {"attachments": [on("prefer", "15")]}),
    Case(IDLE, "it is aligned", {"goals": [must("g1", align=["15", "14"])], "attachments": [on("must", "15")]}),
    Case(
        IDLE,
        "kept within a degree is not moved",
        {
            "keep": [must("k1", variable="rotation", teeth=["15"], within=1, unit="deg")],
            "attachments": [on("must", "15")],
        },
        HERE,
    ),
    Case(
        IDLE,
        "it holds against elastics",
        {"allow": [allowed("a1", "class-iii-elastics", sides=["right"])], "attachments": [on("must", "17")]},
    ),
    Case(
        IDLE,
        "the premolar behind it goes",
        {"teeth": present(("14", "to-be-extracted")), "attachments": [on("must", "13")]},
    ),
    Case(
        IDLE,
        "elastics of the other side",
        {"allow": [allowed("a1", "class-ii-elastics", sides=["left"])], "attachments": [on("must", "17")]},
        HERE,
    ),
    Case(IDLE, "incisors go up beside it", order(moved("11", "intrusion", 1), on("must", "14", "24"))),
    Case(IDLE, "those of the other arch", order(moved("31", "intrusion", 1), on("must", "14", "24")), HERE),
    Case(
        IDLE, "an implant is told elsewhere", {"teeth": present(("15", "implant")), "attachments": [on("must", "15")]}
    ),
    Case(SMALL, "at most 9.99 degrees", order(turned("13", 5, at_most=9.99), on("must", "13")), HERE),
    Case(SMALL, "at most 10 degrees", order(turned("13", 5, at_most=10), on("must", "13")), HERE),
    Case(SMALL, "more than 10 degrees", order(turned("13", 5, at_most=10.01), on("must", "13"))),
    Case(SMALL, "without bound", order(turned("13", 5), on("must", "13"))),
    Case(SMALL, "an incisor, of which no amount is known", order(turned("11", 2, at_most=3), on("must", "11"))),
    Case(SMALL, "extrusion", order(moved("11", "extrusion", 0.2, at_most=0.3), on("must", "11"))),
    Case(SMALL, "retention", order(turned("13", 5, at_most=6), on("must", "13", reason="retention"))),
    Case(SMALL, "nothing at all is told elsewhere", {"attachments": [on("must", "13")]}),
    Case(SHORT, "at 5 mm", bare(NONE, heights(t16=5, t26=5))),
    Case(SHORT, "below 5 mm", bare(NONE, heights(t16=4.99, t26=4.99)), HERE),
    Case(SHORT, "above 5 mm", bare(NONE, heights(t16=5.01))),
    Case(SHORT, "one short tooth among high ones", bare(NONE, heights(t16=4, t15=7))),
    Case(SHORT, "short incisors", bare(NONE, heights(t11=4, t21=4))),
    Case(SHORT, "left to the laboratory", bare({"id": "t1", "otherwise": "laboratory-decides"}, heights(t16=4))),
    Case(SHORT, "some teeth refused, the rest not mentioned", bare(on("must_not", "11", "21"), heights(t16=4))),
    Case(SHORT, "nothing measured", {"attachments": [NONE]}),
    Case(SHORT, "an arch that is not treated", bare(NONE, heights(t16=4), treat={"arches": "lower"})),
    Case(SHORT, "both arches", bare(NONE, heights(t16=4, t46=4)), HERE * 2),
    Case(SHAPE, "not described", {"attachments": [on("must", "15", shape="as-described")]}, HERE),
    Case(SHAPE, "described", {"attachments": [on("must", "15", shape="as-described", words="a short bar, upright")]}),
    Case(SHAPE, "named", {"attachments": [on("must", "15", shape="bevelled-gingival")]}),
)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers


def test_a_refusal_lists_each_tooth_and_each_order_once():
    one = {**turned("13", 20), "teeth": ["13", "23", "11"]}
    (told,) = found(Case(REFUSED, "", order(one, on("must_not", "11", "13", "23"))), RULES)
    assert told.clauses == ("t1", "m1")
    assert (told.facts["teeth"], [asked["id"] for asked in told.facts["asked"]]) == (["13", "23"], ["m1"])
