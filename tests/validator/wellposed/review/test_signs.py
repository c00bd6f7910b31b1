"""Signs turned on the way: asked about wherever the documents contradict them, never where they do not."""

from collections import Counter

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, document, found, must
from tests.validator.wellposed.review.planned import (
    Planned,
    as_setup,
    solved,
    symmetric,
    turned,
)
from tests.validator.wellposed.review.rules.held import setup

from wellposed.model import Prescription
from wellposed.render.wording import sentence
from wellposed.review.signs import RULES, sign_questions
from wellposed.vocabulary.teeth import LEFT, LOWER, RIGHT, UPPER, arch_of, side_of

PLAIN = Prescription.model_validate(document())
SOUND = 300
TURNED = 60
PART = {
    "mouth": lambda tooth: True,
    UPPER: lambda tooth: arch_of(tooth) == UPPER,
    LOWER: lambda tooth: arch_of(tooth) == LOWER,
    RIGHT: lambda tooth: side_of(tooth) == RIGHT,
    LEFT: lambda tooth: side_of(tooth) == LEFT,
}


def asked(made, rx=PLAIN):
    """Rules and variables asked about."""
    return [(one.rule, one.facts["name"], one.facts["where"]) for one in sign_questions(made, rx)]


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_a_rules_page_holds(rule):
    for members, expected in ((rule.passes, []), (rule.fails, [rule.id])):
        rx = Prescription.model_validate(document(**members.pop("prescription", {})))
        made = setup(**{"unlisted": "unmoved", **members})
        assert [one.rule for one in sign_questions(made, rx)] == expected


def test_sound_setups_raise_no_question():
    """What is ordered, done; small movements either way; predictions by the sums of the specification."""
    cases = [Planned(seed) for seed in range(SOUND)]
    found_ = [asked(as_setup(one.values, one.predicted(one.values)), one.rx) for one in cases]
    assert Counter(map(bool, found_)) == {False: SOUND}


@pytest.mark.slow
def test_plans_of_the_solver_raise_no_question():
    """They meet every clause of an ordinary order, by a program that knows nothing of these rules."""
    plans = [plan for seed in range(SOUND) if (plan := solved(seed))]
    assert len(plans) > SOUND * 0.8
    assert [asked(as_setup(values), rx) for rx, values in plans if asked(as_setup(values), rx)] == []


def flips(one):
    """Every variable turned in all teeth, an arch or a side, that two ordered teeth or more then contradict."""
    for variable in dict.fromkeys(name for _, name in one.ordered):
        for name, within in PART.items():
            teeth = [tooth for tooth, which in one.ordered if which == variable and within(tooth)]
            if len(teeth) >= 2:
                yield variable, name, {tooth for tooth, which in one.values if which == variable and within(tooth)}


def test_a_variable_turned_against_the_orders_is_asked_about():
    """Each flip is told, of the variable that was turned and of no other."""
    cases = 0
    for seed in range(TURNED):
        one = Planned(seed)
        for variable, name, teeth in flips(one):
            cases += 1
            names = {which for _, which, _ in asked(as_setup(turned(one.values, variable, teeth)), one.rx)}
            assert names == {variable}, (seed, variable, name, names)
    assert cases > 4 * TURNED


def test_a_variable_turned_against_a_prediction_is_asked_about():
    """No clause names it; only what the laboratory says of its own plan."""
    cases = 0
    for seed in range(TURNED):
        one = Planned(seed)
        for variable, measure, least in (("vertical", 0, 0.3), ("torque", 1, 3)):
            before = one.predicted(one.values)
            other = turned(one.values, variable, {tooth for tooth, _ in one.values})
            after = one.predicted(other)
            name = list(before)[measure]
            if abs(after[name] - before[name]) < 2 * least:
                continue
            cases += 1
            rx = Prescription.model_validate(document(findings=DAY))
            assert ("sign-against-the-prediction", variable) in {row[:2] for row in asked(as_setup(other, before), rx)}
    assert cases > TURNED / 4


DAY = [found("f1", "incisor-display-at-rest", 3), found("f2", "interincisal-angle", 130, "deg")]


def test_a_prediction_is_pointed_at_not_that_of_another_pair_of_teeth():
    rx = Prescription.model_validate(document(findings=[found("f1", "overjet", 6)]))
    claims = [{"measure": "overjet", "value": 3, "unit": "mm"}]
    made = as_setup({(tooth, "out"): 3.0 for tooth in ("12", "11", "21", "22")})
    at_a_pair = [{**claims[0], "pair": ["12", "42"]}, *claims]
    for predicted, pointer in ((claims, "/predicted/0"), (at_a_pair, "/predicted/1")):
        whole = made.model_dump(mode="json", exclude_none=True) | {"predicted": predicted}
        (one,) = sign_questions(setup(**whole), rx)
        assert (one.rule, one.pointer) == ("sign-against-the-prediction", pointer)


def test_a_movement_alike_on_both_sides_counted_to_one_side_is_asked_about():
    for seed in range(TURNED):
        variable, values = symmetric(seed)
        assert asked(as_setup(values)) == []
        left = turned(values, variable, {tooth for tooth, _ in values if side_of(tooth) == LEFT})
        arch = arch_of(next(iter(values))[0])
        assert asked(as_setup(left)) == [("sign-mirrored", variable, arch)]


ONE_SIDE = [
    {"goals": [must("g1", measure="upper-midline", at_least=-0.5, at_most=0.5, unit="mm")]},
    {"movements": [must("m1", teeth=["14", "15", "16", "17"], motion="distal", at_least=0.4, unit="mm")]},
]
SHIFT = {f"{quadrant}{n}": (-1 if quadrant == 1 else 1) * 0.6 for quadrant in (1, 2) for n in (4, 5, 6, 7)}


@pytest.mark.parametrize("members", ONE_SIDE)
def test_what_is_asked_of_one_side_is_not_asked_about(members):
    rx = Prescription.model_validate(document(**members))
    made = as_setup({(tooth, "along"): value for tooth, value in SHIFT.items()})
    assert asked(made) == [("sign-mirrored", "along", "upper")]
    assert asked(made, rx) == []


FEW = [
    ({("11", "vertical"): 1.5}, "one tooth"),
    ({("11", "vertical"): 1.5, ("21", "vertical"): -1.5, ("12", "vertical"): -1.2}, "one of three"),
    ({("11", "vertical"): 0.15, ("21", "vertical"): 0.15, ("13", "vertical"): -2}, "too small to have a sense"),
]


@pytest.mark.parametrize("values, why", FEW)
def test_too_little_to_tell_is_silent(values, why):
    order = must("m1", teeth=["12", "11", "21", "22"], motion="intrusion", at_least=1, at_most=2, unit="mm")
    rx = Prescription.model_validate(document(movements=[order]))
    assert asked(as_setup(values), rx) == [], why


def test_a_tooth_with_both_senses_open_says_nothing():
    teeth, senses = ["14", "15", "24"], ("mesial", "distal")
    both = [allowed(f"a-{way}", "movement", teeth=teeth, motion=way, up_to=0.5, unit="mm") for way in senses]
    rx = Prescription.model_validate(document(allow=both))
    for value in (2, -2):
        assert asked(as_setup({(tooth, "along"): value for tooth in teeth}), rx) == []


def test_opposite_sides_of_different_size_are_no_mirror():
    values = {(tooth, "along"): value if value < 0 else value / 2 for tooth, value in SHIFT.items()}
    assert asked(as_setup(values)) == []


def test_turned_teeth_that_are_to_be_aligned_turn_back():
    """13 and 23 stand turned with the mesial surface towards the tongue; to come into line they turn the other way."""
    turn = {"id": "f1", "tooth_measure": "rotation", "values": {"13": 15, "23": 12}, "unit": "deg"}
    rx = Prescription.model_validate(document(findings=[turn], goals=[must("g1", align=["13", "12", "22", "23"])]))
    back = {("13", "rotation"): -15, ("23", "rotation"): -12}
    assert asked(as_setup(back), rx) == []
    on = {at: -value for at, value in back.items()}
    assert asked(as_setup(on), rx) == [("sign-against-the-order", "rotation", "mouth")]


def test_an_arch_counted_up_and_down_is_told_apart_from_one_that_is_not():
    up, down = ["12", "11", "21", "22"], ["42", "41", "31", "32"]
    order = must("m1", teeth=up + down, motion="intrusion", at_least=0.5, at_most=2, unit="mm")
    rx = Prescription.model_validate(document(movements=[order]))
    values = {(t, "vertical"): 1.0 for t in down} | {(t, "vertical"): -1.0 for t in up}
    assert asked(as_setup(values), rx) == [("sign-against-the-order", "vertical", "lower")]
    (one,) = sign_questions(as_setup(values), rx)
    assert (one.pointer, one.clauses, one.facts["of"]) == ("/movements/0", ("m1",), 4)
    assert sentence(one) == (
        "Of 4 teeth whose travel up or down in the lower arch the prescription speaks of, 4 go the other way: "
        "42, 41, 31, 32. Do the laboratory's numbers count in the opposite sense?"
    )
