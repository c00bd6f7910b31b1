"""How much nearer another setup could have come, worked out by hand.

The hand-worked rows of the overbite are those of spec/review.md.
"""

import pytest
from tests.validator.wellposed.consistency.ordinary import document, found, must
from tests.validator.wellposed.review.rules.held import moved, reduced, setup

from wellposed.model import Prescription
from wellposed.review import review
from wellposed.review.requests import requests, revised_first

FRONT = ["33", "32", "31", "41", "42", "43"]
BITE = {
    "findings": [found("f1", "overbite", 3)],
    "movements": [must("m1", teeth=["11", "21"], motion="intrusion", at_least=1, at_most=2, unit="mm")],
    "keep": [must("k1", measure="overbite", within=0.2, unit="mm")],
}
CROWDED = {
    "findings": [found("f1", "lower-crowding", 2)],
    "goals": [must("g1", align=FRONT)],
    "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["31-41"], "per_contact": 0.5, "unit": "mm"}],
}
TURN = {"id": "f2", "tooth_measure": "rotation", "values": {"42": 12}, "unit": "deg"}
TURNED = {**CROWDED, "findings": [*CROWDED["findings"], TURN]}
STEPS = {
    "movements": [must("m1", teeth=["11", "21"], motion="intrusion", at_least=2, at_most=3, unit="mm")],
    "staging": must("s1", most_aligners=4, largest_steps=[{"variable": "vertical", "amount": 0.25, "unit": "mm"}]),
}
MOLARS = {
    "findings": [found("f1", "overbite", 3)],
    "movements": [must("m1", teeth=["16", "17", "26", "27"], motion="intrusion", at_least=1.5, at_most=2, unit="mm")],
    "keep": [must("k1", measure="overbite", within=0.5, unit="mm")],
}
BACK = ("16", "17", "26", "27")
ENAMEL = [reduced("31-41", 0.5)]


def told(order, made):
    return review(
        Prescription.model_validate(document(**order)), setup(**{"unlisted": "unmoved", "reductions": [], **made})
    )


ROWS = [
    ("1 mm up, the least ordered", BITE, {"movements": moved(vertical=(-1, "11", "21"))}, {"k1": None}),
    ("half a millimetre more than that", BITE, {"movements": moved(vertical=(-1.5, "11", "21"))}, {"k1": (0.5, "mm")}),
    ("one bought with the other", BITE, {"movements": moved(vertical=(-0.5, "11", "21"))}, {"k1": None, "m1": None}),
    ("neither done", BITE, {"movements": moved(vertical=(-3, "31", "41"))}, {"k1": (2.8, "mm"), "m1": (1, "mm")}),
    ("0.5 mm of enamel may be taken and is not", CROWDED, {}, {"g1": (0.5, "mm")}),
    ("it is: 1.5 mm of 2 are left to no means", CROWDED, {"reductions": ENAMEL}, {"g1": None}),
    ("a tooth still turned by 12 deg was not barred", TURNED, {"reductions": ENAMEL}, {"g1": (12, "deg")}),
    ("2 mm in eight aligners of 0.25", STEPS,
     {"movements": moved(vertical=(-2, "11", "21")), "aligners": {"upper": 8}}, {"s1": None}),
    ("3 mm in twelve, where 2 were ordered at the least", STEPS,
     {"movements": moved(vertical=(-3, "11", "21")), "aligners": {"upper": 12}}, {"s1": (1, "mm")}),
    ("twelve for 1 mm, which four would do", STEPS,
     {"movements": moved(vertical=(-1, "11", "21")), "aligners": {"upper": 12}}, {"m1": None, "s1": (8, "1")}),
    ("molars up by 1.5 mm, the least ordered", MOLARS, {"movements": moved(vertical=(-1.5, *BACK))}, {"k1": None}),
    ("by 2: half a millimetre at the hinge's least, 1.25 at its most", MOLARS,
     {"movements": moved(vertical=(-2, *BACK))}, {"k1": (0.5, "mm")}),
]  # fmt: skip


@pytest.mark.parametrize("sentence, order, made, expected", ROWS, ids=[row[0] for row in ROWS])
def test_how_much_nearer_another_setup_could_have_come(sentence, order, made, expected):
    unmet = {one.id: one for one in told(order, made).clauses if one.outcome in ("not-met", "beyond")}
    near = {name: one.nearer and (pytest.approx(one.nearer.amount), one.nearer.unit) for name, one in unmet.items()}
    assert (sentence, near) == (sentence, expected)
    assert {one.doing for one in unmet.values()} == {"prescription"}


def test_what_no_setup_can_meet_is_revised_first_however_near_it_could_be():
    reviewed = told(BITE, {"movements": moved(vertical=(-3, "31", "41"))})
    assert revised_first(reviewed) == ("k1", "m1")
    order = Prescription.model_validate(document(**BITE))
    assert requests(reviewed, order).model_dump(exclude_unset=True, mode="json") == {
        "keep": [must("r1", variable="vertical", teeth=["41", "31"], within=0, unit="mm")]
    }


SIDE = ("47", "46", "45", "44", "43", "33", "34", "35", "36", "37")


def distal(far, front, middle, **single):
    """Side teeth, laterals and centrals of the lower arch, each so far distally; single ones by ``t47``."""
    values = dict.fromkeys(SIDE, -far) | {"42": -front, "32": -front, "41": -middle, "31": -middle}
    values |= {tooth[1:]: -value for tooth, value in single.items()}
    return {"reductions": ENAMEL, "movements": moved(along={tooth: value + 0.0 for tooth, value in values.items()})}


SILENCES = [
    # 2 mm of crowding, 0.4 at each of five contacts, and 0.5 mm of enamel: 1.5 mm, so 0.75 a side
    ("just what the order needs", distal(0.75, 0.35, -0.05), {("prescription", 0.0)}),
    ("a last molar 1.25 mm further", distal(0.75, 0.35, -0.05, t47=2), {("prescription", 0.0), ("prescription", 1.25)}),
    ("all of it goes into a space in front", distal(2, 1.6, 1.2), {("setup", 0.0)}),
    ("other teeth the other way", {"movements": moved(along=(2, "46", "47", "36", "37"))}, {("setup", 0.0)}),
]


@pytest.mark.parametrize("sentence, made, expected", SILENCES, ids=[row[0] for row in SILENCES])
def test_a_silence_is_the_orders_doing_only_as_far_as_it_needs_it(sentence, made, expected):
    found_ = {(one.doing, round(one.nearer, 6)) for one in told(CROWDED, made).unasked}
    assert (sentence, found_) == (sentence, expected)
