"""The space budget: the geometry against published coefficients, the lines, the remainder."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, expected, found, must, prescription, present

from wellposed.derive.room import apart, mesially, outwards, room
from wellposed.derive.space import budget
from wellposed.derive.space_needs import levelling
from wellposed.kinematics.mouth import Mouth

STRAIGHT = [found("u0", "upper-crowding", 0), found("l0", "lower-crowding", 0)]


def of(arch, **sections):
    return budget(Mouth(prescription(**sections)), arch)


def lines(listed):
    return {line.what: line for line in listed}


def only(arch, part, **sections):
    """The one need or means there is beside the crowding."""
    (line,) = [line for line in getattr(of(arch, findings=STRAIGHT, **sections), part) if line.what != "crowding"]
    return line


# the geometry

ROW = Mouth(prescription()).rows["upper"]
LINE = ROW.line(0.0)
INCISORS = [tooth for tooth in ROW.teeth if tooth[1] in "12"]
SIDES = [tooth for tooth in ROW.teeth if tooth[1] in "34567"]
MOLARS = [tooth for tooth in ROW.teeth if tooth[1] in "67"]


@pytest.mark.parametrize(
    "source,moved,least,most",
    [
        ("four incisors forward, ellipse (Chung and Wolfgramm 2015) 1.66", outwards(INCISORS), 1.55, 1.75),
        ("canines to molars apart, the same 0.73", apart(ROW, LINE, SIDES), 0.63, 0.83),
        ("molars alone apart, Ricketts 0.25, Motoyoshi et al. 2002 0.37", apart(ROW, LINE, MOLARS), 0.25, 0.45),
        ("all molars 1 mm back, an identity", mesially(MOLARS, -1.0), 2.0, 2.0),
        ("the first molars 1 mm back, the second in the way", mesially(["16", "26"], -1.0), 0.0, 0.0),
        ("nothing", outwards([]), 0.0, 0.0),
    ],
)
def test_the_room_a_movement_makes_is_near_what_was_measured(source, moved, least, most):
    assert (source, least <= room(ROW, LINE, moved) <= most) == (source, True)


def test_inwards_takes_what_outwards_makes():
    assert room(ROW, LINE, outwards(INCISORS, -2.0)) == pytest.approx(-2 * room(ROW, LINE, outwards(INCISORS)))


# needs


@pytest.mark.parametrize(
    "depth,mm", [(0, 0), (0.5, 1), (3, 1), (3.5, 1.25), (4, 1.5), (4.5, 1.75), (5, 2), (8, 2)]
)  # Kirschen, O'Higgins and Lee 2000
def test_levelling_by_the_convention(depth, mm):
    assert levelling(depth) == pytest.approx(mm)


def test_levelling_stands_in_the_lower_arch_where_it_is_asked_for():
    curve, goal = found("f1", "curve-of-spee", 4.7), must("g1", level="lower")
    line = lines(of("lower", findings=[*STRAIGHT, curve], goals=[goal]).needs)["levelling"]
    assert (line.amount, line.high, line.from_) == (pytest.approx(1.85), pytest.approx(1.85), ("f1", "g1"))
    assert line.low == pytest.approx(0.4, abs=0.005)  # Cho, Lim and Gang 2016: 0.4 mm at a depth of 4.7
    assert "levelling" not in lines(of("lower", findings=[*STRAIGHT, curve]).needs)
    assert "levelling" not in lines(of("upper", findings=[*STRAIGHT, curve], goals=[must("g1", level="upper")]).needs)


def test_a_curve_that_is_not_measured_stays_unknown():
    told = of("lower", findings=STRAIGHT, goals=[must("g1", level="lower")])
    assert (told.unknown, told.remainder, told.band) == (("levelling",), None, (None, None))


def test_crowding_with_its_error_and_crowding_that_is_not_stated():
    line = lines(of("lower", findings=[found("f1", "lower-crowding", 4, error=1)]).needs)["crowding"]
    assert (line.amount, line.low, line.high, line.from_) == (4, 3, 5, ("f1",))
    assert of("lower").unknown == ("crowding",)


def test_a_retraction_takes_what_an_advance_makes():
    back = only("upper", "needs", allow=[allowed("a1", "incisor-retraction", arch="upper", up_to=2, unit="mm")])
    forward = only("upper", "means", allow=[allowed("a1", "incisor-advance", arch="upper", up_to=2, unit="mm")])
    assert (back.amount, back.low, back.high) == (forward.amount, forward.low, forward.high)
    # 2 mm by 1.56 (beta curve) to 2 (convention of space planning)
    assert (back.low, back.high, back.least) == (pytest.approx(3.12), pytest.approx(4), 0)


def test_a_space_to_be_left_is_a_need():
    line = only("upper", "needs", goals=[must("g1", leave="12-11", amount=1.5, unit="mm")])
    assert (line.what, line.amount, line.from_) == ("space-left", 1.5, ("g1",))


@pytest.mark.parametrize("stands,shift", [(-3, 2), (0, None), (-0.5, None)])
def test_a_midline_takes_on_one_side_what_it_gives_on_the_other(stands, shift):
    goal = must("g1", measure="lower-midline", at_least=-1, at_most=1, unit="mm")
    told = lines(of("lower", findings=[*STRAIGHT, found("f1", "lower-midline", stands)], goals=[goal]).needs)
    assert (told["midline"].amount, told["midline"].one_side) == (0, 2) if shift else "midline" not in told


@pytest.mark.parametrize("least,most,left", [(1.5, 2, None), (0.5, 0.5, 1.5), (-1, 0, 2), (5, 6, 1)])
def test_what_is_counted_on_for_a_midline_needs_no_room(least, most, left):
    """From -3 to between -1 and 1: 2 to go, less what comes by itself; past the goal it is the way back."""
    goal = must("g1", measure="lower-midline", at_least=-1, at_most=1, unit="mm")
    counted = {"id": "e1", "measure": "lower-midline", "at_least": least, "at_most": most, "unit": "mm"}
    told = lines(
        of(
            "lower",
            findings=[*STRAIGHT, found("f1", "lower-midline", -3)],
            goals=[goal],
            expect=[{**counted, "ground": "functional-shift"}],
        ).needs
    )
    assert (told["midline"].one_side, told["midline"].from_) == (left, ("g1", "e1")) if left else "midline" not in told


# means


@pytest.mark.parametrize(
    "sentence,said,amount,least",
    [
        ("so much a contact", {"contacts": ["33-32", "32-31"], "per_contact": 0.3}, 0.6, 0),
        ("so much in all", {"arch": "lower", "in_all": 2.0}, 2.0, 0),
        ("the less of both", {"contacts": ["33-32", "32-31"], "per_contact": 0.3, "in_all": 0.5}, 0.5, 0),
        ("an order", {"contacts": ["33-32", "32-31"], "in_all": 1.0, "at_least": 0.5}, 1.0, 0.5),
        ("no amount", {"arch": "lower"}, None, None),
    ],
)
def test_enamel_reduction(sentence, said, amount, least):
    line = only("lower", "means", allow=[allowed("a1", "enamel-reduction", unit="mm", **said)])
    assert (sentence, line.amount, line.least) == (sentence, amount, least)


def test_widening_with_its_band():
    line = only("upper", "means", allow=[allowed("a1", "widening", arch="upper", up_to=3, unit="mm")])
    assert line.low == pytest.approx(0.75)  # 3 x 0.25, Ricketts
    assert line.low < line.amount <= line.high
    assert line.high == pytest.approx(2.19)  # 3 x 0.73, Chung and Wolfgramm 2015


def test_distal_movement_of_one_side():
    said = {"arch": "upper", "sides": ["right"], "up_to": 1.5, "unit": "mm"}
    line = only("upper", "means", allow=[allowed("a1", "distal-movement", **said)])
    assert (line.amount, line.low, line.high, line.least) == (1.5, 1.5, 1.5, 0)


def test_a_third_molar_stands_in_the_way_of_distal_movement():
    teeth = present(upper=["18", *ROW.teeth])
    line = only(
        "upper", "means", teeth=teeth, allow=[allowed("a1", "distal-movement", arch="upper", up_to=2, unit="mm")]
    )
    assert line.amount == pytest.approx(2)  # of the left side alone


@pytest.mark.parametrize("width,assumed", [({"14": 6.8}, ()), ({}, ("14",))])
def test_an_extraction_gives_the_width_of_the_tooth(width, assumed):
    measured = [{"id": "f1", "tooth_measure": "tooth-width", "values": width, "unit": "mm"}] if width else []
    told = of("upper", findings=[*STRAIGHT, *measured], allow=[allowed("a1", "extraction", teeth=["14"])])
    line = lines(told.means)["extraction"]
    assert (line.amount, line.assumed, line.from_) == (width.get("14", 7.0), assumed, ("a1",))


def test_what_is_counted_on_counts_at_its_least():
    change = expected("e1", "lower-crowding", -3, -1, ground="leeway-space")
    line = only("lower", "means", expect=[change])
    assert (line.what, line.amount, line.low, line.high) == ("expected", 1, 1, 3)


@pytest.mark.parametrize(
    "sentence,more,unknown",
    [
        ("of all travel", {}, ("laboratory-choice",)),
        ("of the other arch", {"arch": "upper"}, ()),
        ("of torque alone", {"variables": ["torque"]}, ()),
        ("of travel along the arch", {"variables": ["along"]}, ("laboratory-choice",)),
    ],
)
def test_what_the_laboratory_chooses_is_not_stated(sentence, more, unknown):
    told = of("lower", findings=STRAIGHT, allow=[allowed("a1", "laboratory-choice", **more)])
    assert (sentence, told.unknown) == (sentence, unknown)


def test_an_ordered_movement_is_used_in_any_case():
    order = must("m1", teeth=["12", "11", "21", "22"], motion="labial", at_least=1, at_most=2, unit="mm")
    line = only("upper", "means", movements=[order])
    assert (line.what, line.least, line.high) == ("incisor-advance", pytest.approx(1.56), pytest.approx(4))


def test_an_order_within_an_allowance_does_not_add_to_it():
    order = must("m1", teeth=["12", "11", "21", "22"], motion="labial", at_least=1, at_most=1, unit="mm")
    line = only(
        "upper", "means", movements=[order], allow=[allowed("a1", "incisor-advance", arch="upper", up_to=2, unit="mm")]
    )
    assert (line.high, line.least, line.from_) == (pytest.approx(4), pytest.approx(1.56), ("m1", "a1"))


# the whole


def test_a_budget_by_hand():
    """4 mm of crowding (3.5 to 4.5); 2 mm of reduction allowed and 2 mm distal movement a side: 6 - 4 = 2."""
    allow = [
        allowed("a1", "enamel-reduction", arch="lower", in_all=2, unit="mm"),
        allowed("a2", "distal-movement", arch="lower", up_to=2, unit="mm"),
    ]
    told = of("lower", findings=[found("f1", "lower-crowding", 4)], allow=allow)
    assert ([one.what for one in told.needs], [one.what for one in told.means]) == (
        ["crowding"],
        ["enamel-reduction", "distal-movement"],
    )
    assert (told.remainder, told.band, told.unknown) == (2, (-4.5, 2.5), ())


def test_spaces_are_room():
    told = of("upper", findings=[found("f1", "upper-spacing", 3)])
    assert (told.remainder, told.band) == (3, (3, 3))


def test_an_arch_without_teeth_has_an_empty_budget():
    told = of("lower", teeth=present(lower=[]), findings=STRAIGHT)
    assert (told.remainder, told.means) == (0, ())
