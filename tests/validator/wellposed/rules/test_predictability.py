"""What published groups reached: each rule alone, below, at and above its amount, and what makes it silent.

Percentages: Rossini et al. 2015 (extrusion 30 %, intrusion 0.72 mm), Koletsi et al. 2021 (rotation of the upper canine
47.9 %, of lower incisors 70.7 %), Lombardo et al. 2017 (lower canine 54.2 %, torque 72.9 %), Blouza et al. 2025
(rotations 37 to 60 %), Sahim and El Quars 2021 (transverse 45 %), the review of 2025 on molars (61.1 %), De Felice et
al. 2020 (reduction done, upper 45 %, lower 37 %). Amounts from which is asked are common practice but where named.
"""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, present
from tests.validator.wellposed.rules.charts import Case, found, pointers, table

from wellposed.render.filled import filled
from wellposed.rules import predictability, predictability_amounts

RULES = (*predictability.RULES, *predictability_amounts.RULES)
EXTRUDED, CANINE, PREMOLAR = (
    *("incisor-extrusion-seldom-reached", "canine-rotation-seldom-reached", "premolar-rotation-seldom-reached"),
)
FLAT, TORQUE = "lower-incisor-rotation-partly-reached", "front-root-torque-seldom-reached"
WIDER, BACK = "adult-widening-partly-reached", "lower-molar-distal-partly-reached"
INTRUDED, ENAMEL = "incisor-intrusion-partly-reached", "reduction-partly-done"
HERE, ALLOWED = ("/movements/0",), ("/allow/0",)


def moved(motion, amount, *teeth, unit="mm", **said):
    """These teeth moved by at least so much."""
    movement = {"id": "m1", "strength": "must", "teeth": list(teeth), "motion": motion, "unit": unit}
    return {"movements": [{**movement, **({"at_least": amount} if amount else {}), **said}]}


def turned(amount, *teeth, **said):
    return moved("mesiolingual-rotation", amount, *teeth, unit="deg", **said)


def over(unit):
    return {"overcorrection": {"value": 1, "unit": unit}}


def grown(motion, amount, *teeth, growth="complete", **said):
    return {**moved(motion, amount, *teeth, **said), "patient": {"reference": "P-7F3A", "growth": growth}}


def reduced(amount, contacts, **said):
    bounds = {"at_least": amount} if amount else {}
    return {
        "allow": [allowed("a1", "enamel-reduction", per_contact=0.5, unit="mm", contacts=contacts, **bounds, **said)]
    }


DECIDES, NONE = [{"id": "t1", "otherwise": "laboratory-decides"}], [{"id": "t1", "otherwise": "none"}]
UPPER_FRONT = ["13-12", "12-11", "11-21", "21-22", "22-23"]
LOWER_FRONT = ["43-42", "42-41", "41-31", "31-32", "32-33"]
VERTICAL = [allowed("a1", "elastics", pattern="vertical", teeth=["11", "21"])]
BUCCAL_ROOTS = [allowed("a1", "movement", teeth=["16", "26"], motion="buccal-root-torque", up_to=5, unit="deg")]
CASES = (
    Case(EXTRUDED, "below 0.5 mm", moved("extrusion", 0.49, "11", "21")),
    Case(EXTRUDED, "at 0.5 mm", moved("extrusion", 0.5, "11", "21")),
    Case(EXTRUDED, "above 0.5 mm", moved("extrusion", 0.51, "11", "21"), HERE),
    Case(EXTRUDED, "a lower incisor", moved("extrusion", 0.51, "42"), HERE),
    Case(EXTRUDED, "a canine", moved("extrusion", 1, "13")),
    Case(EXTRUDED, "an upper bound only", moved("extrusion", None, "11", at_most=1)),
    Case(
        EXTRUDED,
        "an attachment on the tooth",
        {**moved("extrusion", 1, "11"), "attachments": [{"id": "t1", "must": ["11"]}]},
    ),
    Case(
        EXTRUDED,
        "attachments on one of two",
        {**moved("extrusion", 1, "11", "21"), "attachments": [{"id": "t1", "may": ["11"]}]},
        HERE,
    ),
    Case(EXTRUDED, "left to the laboratory", {**moved("extrusion", 1, "11"), "attachments": DECIDES}),
    Case(EXTRUDED, "elastics", {**moved("extrusion", 1, "11", "21"), "allow": VERTICAL}),
    Case(EXTRUDED, "overcorrected", moved("extrusion", 1, "11", **over("mm"))),
    Case(EXTRUDED, "refused: told of the attachment", {**moved("extrusion", 1, "11"), "attachments": NONE}),
    Case(CANINE, "below 10 degrees", turned(9.99, "13")),
    Case(CANINE, "at 10 degrees", turned(10, "13")),
    Case(CANINE, "above 10 degrees", turned(10.01, "13"), HERE),
    Case(CANINE, "the other way", moved("distolingual-rotation", 20, "43", unit="deg"), HERE),
    Case(CANINE, "overcorrected", turned(20, "13", **over("deg"))),
    Case(CANINE, "an incisor beside it", turned(20, "12")),
    Case(PREMOLAR, "at 10 degrees", turned(10, "35")),
    Case(PREMOLAR, "above 10 degrees", turned(10.01, "35"), HERE),
    Case(PREMOLAR, "a primary molar", {**turned(20, "75"), "teeth": present(lower=["75", "34", "33"])}),
    Case(FLAT, "below 15 degrees", turned(14.99, "31")),
    Case(FLAT, "at 15 degrees", turned(15, "31")),
    Case(FLAT, "above 15 degrees", turned(15.01, "31"), HERE),
    Case(FLAT, "an upper incisor", turned(25, "11")),
    Case(TORQUE, "at 5 degrees", moved("palatal-root-torque", 5, "11", unit="deg")),
    Case(TORQUE, "above 5 degrees", moved("palatal-root-torque", 5.01, "11", unit="deg"), HERE),
    Case(TORQUE, "of a canine", moved("labial-root-torque", 8, "33", unit="deg"), HERE),
    Case(TORQUE, "of a molar, which is reached", moved("buccal-root-torque", 8, "16", unit="deg")),
    Case(TORQUE, "of the crown", moved("labial-crown-torque", 8, "11", unit="deg")),
    Case(WIDER, "at 2 mm a side", grown("buccal", 2, "16", "26")),
    Case(WIDER, "above 2 mm a side", grown("buccal", 2.01, "16", "26"), HERE),
    Case(WIDER, "a lower premolar", grown("buccal", 2.5, "44"), HERE),
    Case(WIDER, "while growing", grown("buccal", 3, "16", "26", growth="growing")),
    Case(WIDER, "growth not known", grown("buccal", 3, "16", "26", growth="unknown")),
    Case(WIDER, "inward", grown("palatal", 3, "16", "26")),
    Case(WIDER, "roots with the crowns", {**grown("buccal", 3, "16", "26"), "allow": BUCCAL_ROOTS}),
    Case(BACK, "at 1 mm", moved("distal", 1, "36", "46")),
    Case(BACK, "above 1 mm", moved("distal", 1.01, "36", "46"), HERE),
    Case(BACK, "at 2 mm", moved("distal", 2, "36", "46"), HERE),
    Case(BACK, "above 2 mm: asked elsewhere", moved("distal", 2.01, "36", "46")),
    Case(BACK, "up to more than 2 mm: asked elsewhere", moved("distal", 1.5, "36", at_most=2.5)),
    Case(BACK, "upper molars", moved("distal", 1.5, "16", "26")),
    Case(BACK, "forward", moved("mesial", 1.5, "36")),
    # Rossini et al. 2015: 0.72 mm was the mean reached. Ng et al. 2005: 1.88 mm the highest mean of upper incisors.
    Case(INTRUDED, "below the mean", moved("intrusion", 0.71, "31", "41")),
    Case(INTRUDED, "at the mean", moved("intrusion", 0.72, "31", "41")),
    Case(INTRUDED, "above the mean", moved("intrusion", 0.73, "31", "41"), HERE),
    Case(INTRUDED, "both arches in one clause", moved("intrusion", 1, "31", "11"), HERE * 2),
    Case(INTRUDED, "lower, at 2 mm", moved("intrusion", 2, "31", "41"), HERE),
    Case(INTRUDED, "lower, above: asked elsewhere", moved("intrusion", 2.01, "31", "41")),
    Case(INTRUDED, "upper, at 1.88 mm", moved("intrusion", 1.88, "11"), HERE),
    Case(INTRUDED, "upper, above: asked elsewhere", moved("intrusion", 1.89, "11")),
    Case(INTRUDED, "overcorrected", moved("intrusion", 1, "31", **over("mm"))),
    Case(INTRUDED, "a molar", moved("intrusion", 1, "36")),
    # 1 mm missing is where one asks: lower 1 / 0.63 = 1.587 mm ordered, upper 1 / 0.55 = 1.818 mm.
    Case(ENAMEL, "lower, just below", reduced(1.58, LOWER_FRONT)),
    Case(ENAMEL, "lower, just above", reduced(1.59, LOWER_FRONT), ALLOWED),
    Case(ENAMEL, "upper, just below", reduced(1.81, UPPER_FRONT)),
    Case(ENAMEL, "upper, just above", reduced(1.82, UPPER_FRONT), ALLOWED),
    Case(ENAMEL, "allowed, not ordered", reduced(None, LOWER_FRONT, in_all=2.5)),
)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers


SENTENCES = {
    EXTRUDED: (moved("extrusion", 1, "11"), "30.0 %"),
    CANINE: (turned(20, "13", "43"), "47.9 % and 54.2 %"),
    PREMOLAR: (turned(20, "15"), "37.0 % to 60.0 %"),
    FLAT: (turned(20, "31"), "70.7 %"),
    TORQUE: (moved("palatal-root-torque", 8, "11", unit="deg"), "72.9 %"),
    WIDER: (grown("buccal", 3, "16"), "45.0 %"),
    BACK: (moved("distal", 1.5, "36"), "61.1 %"),
    INTRUDED: (moved("intrusion", 1, "31"), "0.72 mm"),
    ENAMEL: (reduced(2, LOWER_FRONT), "37.0 %"),
}


@pytest.mark.parametrize("rule", SENTENCES)
def test_the_sentence_says_what_was_reached_in_print(rule):
    members, reached = SENTENCES[rule]
    (told,) = found(Case(rule, "", members), RULES)
    assert reached in filled(next(one.says for one in RULES if one.id == rule), told.facts)
