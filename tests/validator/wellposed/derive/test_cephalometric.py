"""Angles that close, the one that follows, and the interincisal angle of a plan."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, found, must, prescription, present

from wellposed.derive.cephalometric import Closure, closure, closures, fourth, fourths, planned_interincisal

PALATAL = ("upper-incisor-to-palatal-plane", "lower-incisor-to-mandibular-plane", "palatal-to-mandibular-plane")
ANGLE = "interincisal-angle"


@pytest.mark.parametrize(
    "sentence,angles,gap",
    [
        ("the means of the Eastman school need not close: 135 is printed, 131 would", (109, 93, 27, 135), 4),
        ("and with 131 they do", (109, 93, 27, 131), 0),
        ("its older means do", (108, 92, 27, 133), 0),
        ("a slip of ten degrees", (109, 83, 27, 131), -10),
    ],
)
def test_four_angles_make_a_whole_turn(sentence, angles, gap):
    assert (sentence, closure(angles)) == (sentence, (360 + gap, gap))


def test_three_angles_leave_the_fourth():
    assert fourth((109, 93, 27)) == 131


def angles(*values, names=(*PALATAL, ANGLE), **more):
    told = [found(f"f{n}", name, value, "deg") for n, (name, value) in enumerate(zip(names, values, strict=False))]
    return prescription(findings=told, **more)


def test_the_forms_a_prescription_allows():
    rx = angles(109, 93, 27, 135)
    assert [*closures(rx)] == [Closure("palatal", 364, 4, ("f0", "f1", "f2", "f3"))]
    assert [*fourths(rx)] == []


def test_the_angle_that_follows_is_named():
    rx = angles(103, 93, 131, names=("upper-incisor-to-sella-nasion", PALATAL[1], ANGLE))
    (one,) = fourths(rx)
    assert (one.form, one.measure, one.value) == ("sella-nasion", "sella-nasion-to-mandibular-plane", 33)
    assert one.from_ == ("f0", "f1", "f2")


def test_two_values_of_an_angle_are_not_chosen_between():
    rx = prescription(findings=[found("f1", ANGLE, 130, "deg"), found("f2", ANGLE, 120, "deg")])
    assert planned_interincisal(rx) is None


# the plan


def move(motion, teeth, **bounds):
    return must("m1", teeth=teeth, motion=motion, **bounds)


UPPER_CENTRALS, LOWER_CENTRALS = ["11", "21"], ["31", "41"]
PLANS = [
    # sentence, sections, low, high; from 130
    ("nothing is said", {}, 130, 130),
    (
        "torque as ordered",
        {"movements": [move("palatal-root-torque", UPPER_CENTRALS, at_least=3, at_most=5, unit="deg")]},
        125,
        127,
    ),
    (
        "the other sense opens it",
        {"movements": [move("lingual-crown-torque", LOWER_CENTRALS, at_least=2, at_most=2, unit="deg")]},
        132,
        132,
    ),
    ("no upper bound", {"movements": [move("labial-crown-torque", LOWER_CENTRALS, at_least=4, unit="deg")]}, None, 126),
    (
        "the mean of the centrals",
        {"movements": [move("labial-crown-torque", ["11"], at_least=4, at_most=4, unit="deg")]},
        128,
        128,
    ),
    (
        "laterals do not count",
        {"movements": [move("labial-crown-torque", ["12", "22"], at_least=4, at_most=4, unit="deg")]},
        130,
        130,
    ),
    (
        "an advance of 2 mm tips by 0 to 4 deg a mm",
        {"allow": [allowed("a1", "incisor-advance", arch="lower", up_to=2, unit="mm")]},
        122,
        130,
    ),
    (
        "a retraction opens it",
        {"allow": [allowed("a1", "incisor-retraction", arch="upper", up_to=1.5, unit="mm")]},
        130,
        136,
    ),
    (
        "a labial movement may tip",
        {"movements": [move("labial", UPPER_CENTRALS, at_least=1, at_most=1, unit="mm")]},
        126,
        130,
    ),
    (
        "what the laboratory chooses has no bound",
        {"allow": [allowed("a1", "laboratory-choice", arch="lower")]},
        None,
        None,
    ),
    ("a goal on the angle", {"goals": [must("g1", measure=ANGLE, at_least=120, at_most=125, unit="deg")]}, 120, 125),
    (
        "a keep on the angle",
        {
            "keep": [must("k1", measure=ANGLE, within=3, unit="deg")],
            "allow": [allowed("a1", "incisor-advance", arch="lower", up_to=2, unit="mm")],
        },
        127,
        130,
    ),
]


@pytest.mark.parametrize("sentence,sections,low,high", PLANS)
def test_the_interincisal_angle_of_a_plan(sentence, sections, low, high):
    rx = prescription(findings=[found("f1", ANGLE, 130, "deg")], **sections)
    planned = planned_interincisal(rx)
    assert (sentence, planned.low, planned.high) == (sentence, low, high)
    assert (planned.present, planned.from_) == (130, ("f1",))


def test_the_present_angle_may_follow_from_the_other_three():
    planned = planned_interincisal(angles(109, 93, 27))
    assert (planned.present, planned.from_, planned.clauses) == (131, ("f0", "f1", "f2"), ())


def test_the_clauses_that_bear_on_it_are_named():
    sections = dict(next(sections for sentence, sections, *_ in PLANS if sentence == "a keep on the angle"))
    planned = planned_interincisal(prescription(findings=[found("f1", ANGLE, 130, "deg")], **sections))
    assert planned.clauses == ("a1", "k1")


def test_a_goal_on_one_inclination_moves_the_angle_by_as_much():
    goal = must("g1", measure=PALATAL[1], at_least=90, at_most=91, unit="deg")
    planned = planned_interincisal(angles(109, 93, 27, 131, goals=[goal]))
    assert (planned.low, planned.high, planned.clauses) == (133, 134, ("g1",))


def test_a_tooth_that_cannot_move_does_not_tip():
    advance = allowed("a1", "incisor-advance", arch="lower", up_to=2, unit="mm")
    teeth = present(("31", "ankylosed"))
    planned = planned_interincisal(
        prescription(findings=[found("f1", ANGLE, 130, "deg")], allow=[advance], teeth=teeth)
    )
    assert (planned.low, planned.high) == (126, 130)  # one of two by 8


def test_without_an_angle_there_is_nothing_to_plan_from():
    assert planned_interincisal(prescription()) is None
