"""Staging: each rule alone, below, at and above its boundary."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, found, must
from tests.validator.wellposed.rules.charts import Case, pointers, table

from wellposed.rules import staging, staging_order

RULES = (*staging.RULES, *staging_order.RULES)
HERE = ("/staging/largest_steps/0",)


def staged(**said):
    return {"staging": {"id": "s1", "strength": "must", **said}}


def step(variable, amount, unit="mm", **said):
    return {"variable": variable, "amount": amount, "unit": unit, **said}


def moved(*teeth, motion="labial", ident="m1", unit="mm", strength="must", **bounds):
    return {"id": ident, "strength": strength, "teeth": list(teeth), "motion": motion, "unit": unit, **bounds}


def turned(*teeth, ident="m1", motion="mesiolingual-rotation", at_least=10, **said):
    return moved(*teeth, ident=ident, motion=motion, unit="deg", at_least=at_least, **said)


def order(first, relation, then):
    return {"id": "o1", "first": first, "relation": relation, "then": then}


# Texts give 0.1 to 0.33 mm per aligner, mostly 0.2 to 0.25; 0.1 to 0.2 up and down.
LINEAR = (
    Case("step-above-limit", "in or out, below", staged(largest_steps=[step("out", 0.24)])),
    Case("step-above-limit", "in or out, at", staged(largest_steps=[step("out", 0.25)])),
    Case("step-above-limit", "in or out, above", staged(largest_steps=[step("out", 0.26)]), HERE),
    Case("step-above-limit", "along the arch, above", staged(largest_steps=[step("along", 0.26)]), HERE),
    Case("step-above-limit", "up or down has its own", staged(largest_steps=[step("vertical", 0.2)])),
    Case("step-above-limit", "up or down, above", staged(largest_steps=[step("vertical", 0.21)]), HERE),
    Case(
        "step-above-limit",
        "the second of two",
        staged(largest_steps=[step("vertical", 0.2), step("along", 0.3)]),
        ("/staging/largest_steps/1",),
    ),
    Case("step-above-limit", "an angle is none of its own", staged(largest_steps=[step("torque", 3, "deg")])),
)
# Cortona et al. 2020: 1.2 degrees for a lower second premolar; texts: incisors 2, tip 1 to 2, torque about 1.
ANGLES = (
    Case("turning-step-above-limit", "premolar at", staged(largest_steps=[step("rotation", 1.2, "deg", teeth=["35"])])),
    Case(
        "turning-step-above-limit",
        "premolar above",
        staged(largest_steps=[step("rotation", 1.21, "deg", teeth=["35"])]),
        HERE,
    ),
    Case(
        "turning-step-above-limit",
        "canine as premolar",
        staged(largest_steps=[step("rotation", 2, "deg", teeth=["13"])]),
        HERE,
    ),
    Case("turning-step-above-limit", "incisor at", staged(largest_steps=[step("rotation", 2, "deg", teeth=["11"])])),
    Case(
        "turning-step-above-limit",
        "incisor above",
        staged(largest_steps=[step("rotation", 2.01, "deg", teeth=["11"])]),
        HERE,
    ),
    Case("turning-step-above-limit", "all teeth, none turned", staged(largest_steps=[step("rotation", 2, "deg")])),
    Case(
        "turning-step-above-limit",
        "all teeth, a premolar turned",
        {**staged(largest_steps=[step("rotation", 2, "deg")]), "movements": [turned("24")]},
        HERE,
    ),
    Case(
        "turning-step-above-limit",
        "all teeth, the premolar has its own",
        {
            **staged(largest_steps=[step("rotation", 2, "deg"), step("rotation", 1.2, "deg", teeth=["24"])]),
            "movements": [turned("24")],
        },
    ),
    Case("turning-step-above-limit", "tip at", staged(largest_steps=[step("tip", 2, "deg")])),
    Case("turning-step-above-limit", "tip above", staged(largest_steps=[step("tip", 2.01, "deg")]), HERE),
    Case("turning-step-above-limit", "torque at", staged(largest_steps=[step("torque", 1, "deg")])),
    Case("turning-step-above-limit", "torque above", staged(largest_steps=[step("torque", 1.01, "deg")]), HERE),
)
# 2 mm in steps of 0.25 take 8 aligners; 12 degrees of a premolar in steps of 1.2 take 10.
FEW = (
    Case(
        "too-few-aligners", "one more than needed", {**staged(most_aligners=9), "movements": [moved("11", at_least=2)]}
    ),
    Case("too-few-aligners", "as many as needed", {**staged(most_aligners=8), "movements": [moved("11", at_least=2)]}),
    Case(
        "too-few-aligners",
        "one less",
        {**staged(most_aligners=7), "movements": [moved("11", at_least=2)]},
        ("/staging",),
    ),
    Case(
        "too-few-aligners",
        "a premolar turned, enough",
        {**staged(most_aligners=10), "movements": [turned("14", at_least=12)]},
    ),
    Case(
        "too-few-aligners",
        "a premolar turned, one less",
        {**staged(most_aligners=9), "movements": [turned("14", at_least=12)]},
        ("/staging",),
    ),
    Case(
        "too-few-aligners",
        "an upper bound asks for nothing",
        {**staged(most_aligners=2), "movements": [moved("11", at_most=2)]},
    ),
    Case(
        "too-few-aligners",
        "a wish yields",
        {**staged(most_aligners=2), "movements": [moved("11", at_least=2, strength="prefer")]},
    ),
    Case(
        "too-few-aligners",
        "the number is a wish",
        {"staging": {"id": "s1", "strength": "prefer", "most_aligners": 2}, "movements": [moved("11", at_least=2)]},
    ),
    Case("too-few-aligners", "no number", {**staged(wear_interval_days=10), "movements": [moved("11", at_least=2)]}),
    Case(
        "too-few-aligners",
        "a stated step is held to by the proof",
        {**staged(most_aligners=7, largest_steps=[step("out", 0.25)]), "movements": [moved("11", at_least=2)]},
    ),
    Case(
        "too-few-aligners",
        "with 0.5 mm of overcorrection, 10",
        {
            **staged(most_aligners=9),
            "movements": [moved("11", at_least=2, overcorrection={"value": 0.5, "unit": "mm"})],
        },
        ("/staging",),
    ),
    Case(
        "too-few-aligners",
        "with a quarter of overcorrection, 10",
        {
            **staged(most_aligners=10),
            "movements": [moved("11", at_least=2, overcorrection={"value": 25, "unit": "percent"})],
        },
    ),
    Case(
        "too-few-aligners",
        "one after the other, 8 and 10",
        {
            **staged(most_aligners=17, order=[order("m1", "not-before-done", "m2")]),
            "movements": [moved("11", at_least=2), turned("14", ident="m2", at_least=12)],
        },
        ("/staging",),
    ),
    Case(
        "too-few-aligners",
        "side by side, 8 and 10",
        {**staged(most_aligners=10), "movements": [moved("11", at_least=2), turned("14", ident="m2", at_least=12)]},
    ),
    Case(
        "too-few-aligners",
        "a tooth 1.5 mm off the line takes 6",
        {
            **staged(most_aligners=5),
            "findings": [{"id": "f1", "tooth_measure": "displacement", "values": {"12": -1.5}, "unit": "mm"}],
            "goals": [must("g1", align=["13", "12", "11"])],
        },
        ("/staging",),
    ),
)
# Al-Nadawi et al. 2021 compared 7, 10 and 14 days.
WEAR = (
    Case("wear-interval-short", "six days", staged(wear_interval_days=6), ("/staging/wear_interval_days",)),
    Case("wear-interval-short", "a week", staged(wear_interval_days=7)),
    Case("wear-interval-short", "eight days", staged(wear_interval_days=8)),
    Case("wear-interval-short", "not stated", staged(most_aligners=10)),
    Case("wear-interval-long", "13 days", staged(wear_interval_days=13)),
    Case("wear-interval-long", "two weeks", staged(wear_interval_days=14)),
    Case("wear-interval-long", "15 days", staged(wear_interval_days=15), ("/staging/wear_interval_days",)),
)
# Texts: above about 5 degrees roots are given more aligners.
TORQUE = staged(largest_steps=[step("torque", 1, "deg")])
ROOTS = (
    Case(
        "root-movement-stages",
        "at 5",
        {**TORQUE, "movements": [turned("11", motion="palatal-root-torque", at_least=5)]},
    ),
    Case(
        "root-movement-stages",
        "above 5",
        {**TORQUE, "movements": [turned("11", motion="palatal-root-torque", at_least=5.01)]},
        ("/movements/0",),
    ),
    Case(
        "root-movement-stages",
        "in smaller steps",
        {
            **staged(largest_steps=[step("torque", 0.99, "deg")]),
            "movements": [turned("11", motion="palatal-root-torque", at_least=8)],
        },
    ),
    Case(
        "root-movement-stages",
        "by the crown",
        {**TORQUE, "movements": [turned("11", motion="palatal-crown-torque", at_least=8)]},
    ),
    Case(
        "root-movement-stages",
        "steps not stated",
        {"movements": [turned("11", motion="palatal-root-torque", at_least=8)]},
    ),
)
LABIAL, LINGUAL = moved("11", "21", at_least=1), moved("11", ident="m2", motion="lingual", at_least=0.5)
BACK = ("/movements/1",)
ROUND = (
    Case(
        "opposite-movements-of-one-tooth",
        "a wish against an order",
        {"movements": [LABIAL, {**LINGUAL, "strength": "prefer"}]},
        BACK,
    ),
    Case("opposite-movements-of-one-tooth", "both must hold: proven elsewhere", {"movements": [LABIAL, LINGUAL]}),
    Case(
        "opposite-movements-of-one-tooth",
        "both must hold, one after the other",
        {"movements": [LABIAL, LINGUAL], **staged(order=[order("m1", "before", "m2")])},
        BACK,
    ),
    Case(
        "opposite-movements-of-one-tooth",
        "an order and a bound the other way",
        {"movements": [LABIAL, moved("11", ident="m2", motion="palatal", at_most=1)]},
        BACK,
    ),
    Case(
        "opposite-movements-of-one-tooth",
        "two bounds leave it free",
        {"movements": [moved("11", at_most=1), moved("11", ident="m2", motion="lingual", at_most=1)]},
    ),
    Case(
        "opposite-movements-of-one-tooth",
        "another tooth",
        {"movements": [LABIAL, moved("12", ident="m2", motion="lingual", at_least=1, strength="prefer")]},
    ),
    Case(
        "opposite-movements-of-one-tooth",
        "crown and root named, one sense",
        {
            "movements": [
                turned("11", motion="labial-crown-torque"),
                turned("11", ident="m2", motion="palatal-root-torque", strength="prefer"),
            ]
        },
    ),
    Case(
        "opposite-movements-of-one-tooth",
        "crown and root named, two senses",
        {
            "movements": [
                turned("11", motion="labial-crown-torque"),
                turned("11", ident="m2", motion="labial-root-torque", strength="prefer"),
            ]
        },
        BACK,
    ),
)


def later(members, *earlier):
    return {"revision": len(earlier) + 1, "replaces": "ab" * 32, **members, "earlier": list(earlier)}


AGAIN = (
    Case(
        "round-trip-since-last",
        "the other way",
        later({"movements": [LINGUAL]}, {"movements": [LABIAL]}),
        ("/movements/0",),
    ),
    Case("round-trip-since-last", "on", later({"movements": [LABIAL]}, {"movements": [LABIAL]})),
    Case(
        "round-trip-since-last",
        "against the last but one",
        later({"movements": [LINGUAL]}, {"movements": [LABIAL]}, {"revision": 2, "replaces": "ab" * 32}),
        ("/movements/0",),
    ),
    Case(
        "round-trip-since-last",
        "another tooth",
        later({"movements": [moved("12", motion="lingual", at_least=1)]}, {"movements": [LABIAL]}),
    ),
    Case(
        "round-trip-since-last",
        "only bounded then",
        later({"movements": [LINGUAL]}, {"movements": [moved("11", at_most=1)]}),
    ),
    Case("round-trip-since-last", "nothing before", {"movements": [LINGUAL]}),
)
CROWDED = {
    "findings": [found("f1", "lower-crowding", 3)],
    "goals": [must("g1", align=["42", "41", "31", "32"])],
    "movements": [turned("43", at_least=15)],
    "allow": [
        allowed("a1", "enamel-reduction", contacts=["42-41", "41-31"], per_contact=0.4, unit="mm"),
        allowed("a2", "widening", arch="lower", up_to=2, unit="mm"),
        allowed("a3", "widening", arch="upper", up_to=2, unit="mm"),
        allowed("a4", "enamel-reduction", contacts=["12-11"], per_contact=0.3, unit="mm"),
    ],
}


def ordered(first, relation, then, **members):
    return {**CROWDED, **staged(order=[order(first, relation, then)]), **members}


AT = ("/staging/order/0",)
# Martinez-Lozano et al. 2024: room is made before teeth are turned or aligned.
ROOM = (
    Case("reduction-after-space-needed", "alignment done first", ordered("g1", "not-before-done", "a1"), AT),
    Case("reduction-after-space-needed", "reduction done first", ordered("a1", "not-before-done", "g1")),
    Case("reduction-after-space-needed", "alignment only begins first", ordered("g1", "before", "a1")),
    Case("reduction-after-space-needed", "reduction in the other arch", ordered("g1", "not-before-done", "a4")),
    Case(
        "reduction-after-space-needed",
        "no crowding",
        ordered("g1", "not-before-done", "a1", findings=[found("f1", "lower-crowding", 0)]),
    ),
    Case(
        "reduction-after-space-needed", "crowding not measured", ordered("g1", "not-before-done", "a1", findings=None)
    ),
    Case("rotation-before-space", "turned before the arch is widened", ordered("m1", "before", "a2"), AT),
    Case("rotation-before-space", "turned before enamel is reduced", ordered("m1", "not-before-done", "a1"), AT),
    Case("rotation-before-space", "widened before", ordered("a2", "before", "m1")),
    Case("rotation-before-space", "with each other", ordered("m1", "together-with", "a2")),
    Case("rotation-before-space", "the other arch is widened", ordered("m1", "before", "a3")),
    Case(
        "rotation-before-space",
        "spaced",
        ordered("m1", "before", "a2", findings=[found("f1", "lower-spacing", 2)]),
    ),
)
CASES = (*LINEAR, *ANGLES, *FEW, *WEAR, *ROOTS, *ROUND, *AGAIN, *ROOM)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers
