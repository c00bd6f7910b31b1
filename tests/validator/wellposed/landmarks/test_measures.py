"""Measures against models of a few points, worked out by hand. x to the patient's left, y forward, z up, mm."""

import numpy as np
import pytest
from tests.validator.wellposed.landmarks.made import mouth

from wellposed.landmarks.line import Line
from wellposed.landmarks.measures import formulas
from wellposed.landmarks.mouth import Mouth
from wellposed.landmarks.result import Lack
from wellposed.landmarks.vectors import arrays

LINE = Line(x=0.0, y=0.0, turned=0.0, width=60.0, depth=42.0)


def model(points, midline=None, line=None):
    """A mouth of these points, on this line in both arches."""
    made = Mouth(arrays(points), None if midline is None else np.array(midline, float))
    if line:
        made.__dict__["lines"] = {"upper": line, "lower": line}
    return made


def value(mouth_, measure, unit=None):
    (found,) = [one for one in formulas() if one.measure == measure and unit in (None, one.unit)]
    return found.of(mouth_)


def on_line(along, off, z=0.0):
    return (*LINE.spot(along, off), z)


FRONT = {
    # Upper edges at z -2.0 and -2.4, y 43.1 and 42.9; lower at z 0.8 and 1.2, y 40.0 and 39.0.
    "11": {"edge": (-4, 43.1, -2.0), "mesial-contact": (0.3, 42, 1), "root": (-4, 35.1, 18.0)},
    "21": {"edge": (4, 42.9, -2.4), "mesial-contact": (0.5, 42, 1), "root": (4, 34.9, 17.6)},
    "41": {"edge": (-2, 40.0, 0.8), "mesial-contact": (-0.6, 39, -1), "gum": (-2, 40.0, -8.2), "root": (-2, 36, -19.2)},
    "31": {"edge": (2, 39.0, 1.2), "mesial-contact": (-0.2, 39, -1), "gum": (2, 42.0, -6.8), "root": (2, 33, -18.8)},
}

BY_HAND = [
    # lower 1.0 less upper -2.2
    ("overbite", "mm", 3.2),
    # 31 stands higher; its crown is from (2, 39, 1.2) to (2, 42, -6.8): sqrt(9 + 64)
    ("lower-incisor-crown-height", "mm", 8.544004),
    # 3.2 / 8.544004
    ("overbite", "percent", 37.453167),
    # upper 43.0 less lower 39.5
    ("overjet", "mm", 3.5),
    # (0.3 + 0.5)/2 less the face at 0.1; (-0.6 - 0.2)/2 less 0.1
    ("upper-midline", "mm", 0.3),
    ("lower-midline", "mm", -0.5),
    # upper: 8 forward over 20, atan = 21.801409 for both; lower: 4 over 20, 11.309932, and 6 over 20, 16.699244
    # 180 less the one and the mean of the others
    ("interincisal-angle", "deg", 144.194003),
]


@pytest.mark.parametrize("measure,unit,told", BY_HAND)
def test_the_front_by_hand(measure, unit, told):
    assert value(model(FRONT, midline=(0.1, 60, 30)), measure, unit) == pytest.approx(told, abs=1e-6)


def test_an_open_bite_and_a_reverse_overjet_are_negative():
    points = FRONT | {"11": {"edge": (-4, 38, 3)}, "21": {"edge": (4, 38, 3)}}
    assert (value(model(points), "overbite", "mm"), value(model(points), "overjet")) == pytest.approx((-2, -1.5))


def test_an_incisor_that_leans_back_makes_the_angle_larger():
    """Upper crowns 2 behind their roots over 20: -5.710593; lower upright."""
    points = {
        "11": {"edge": (0, 40, -2), "root": (0, 42, 18)},
        "41": {"edge": (0, 40, 0), "root": (0, 40, -20)},
    }
    assert value(model(points), "interincisal-angle") == pytest.approx(185.710593, abs=1e-6)


ARCH = {
    "13": {"cusp": (-17, 34, -2)},
    "23": {"cusp": (17, 36, -1)},
    "14": {"cusp": (-20, 25, 0)},
    "24": {"cusp": (22, 25, 0)},
    "16": {"cusp": (-26, 15, 0)},
    "26": {"cusp": (26, 15, 0)},
    # depth: right (-29, 1), left (27, -1): the line between has the length sqrt(56^2 + 2^2) = 56.035703.
    "17": {"distal-contact": (-29, 1, 3)},
    "27": {"distal-contact": (27, -1, 3)},
    "11": {"mesial-contact": (-0.5, 42, 3)},
    "21": {"mesial-contact": (0.5, 42, 3)},
}


@pytest.mark.parametrize(
    "measure,told",
    [
        ("upper-inter-canine-width", 34.073450),  # sqrt(34^2 + 2^2 + 1)
        ("upper-inter-first-premolar-width", 42.0),
        ("upper-inter-first-molar-width", 52.0),
        # from (-29, 1) to (0, 42): (29, 41); across (56, -2): (56 x 41 + 2 x 29) / 56.035703
        ("upper-arch-depth", 42.008931),
    ],
)
def test_the_arch_by_hand(measure, told):
    assert value(model(ARCH), measure) == pytest.approx(told, abs=1e-6)


def lower_side(side, *heights):
    """Cusps of the premolars and molars of a side, y 30, 20, 10 and 0."""
    quadrant, x = ("4", -25) if side == "right" else ("3", 25)
    return {f"{quadrant}{n}": {"cusp": (x, y, z)} for n, y, z in zip("4567", (30, 20, 10, 0), heights, strict=True)}


def test_the_curve_of_spee_by_hand():
    """Edges at y 40, z 1; second molars at y 0. Right, z 1: the line is level, deepest at -1.5: 2.5. Left, z 3: the
    line rises by 0.05 a mm, at y 30, 20, 10: 1.5, 2.0, 2.5; tips at 0, 0, 1: deepest 2.0. Mean 2.25."""
    edges = {"41": {"edge": (-2, 40, 0.8)}, "31": {"edge": (2, 40, 1.2)}}
    points = edges | lower_side("right", -0.5, -1.5, -1.0, 1.0) | lower_side("left", 0.0, 0.0, 1.0, 3.0)
    assert value(model(points), "curve-of-spee") == pytest.approx(2.25)


def test_a_curve_the_other_way_round_has_no_depth():
    edges = {"41": {"edge": (-2, 40, 0)}, "31": {"edge": (2, 40, 0)}}
    points = edges | lower_side("right", 1, 1, 1, 0) | lower_side("left", 1, 1, 1, 0)
    assert value(model(points), "curve-of-spee") == (Lack("lower", "reversed"),)


def test_relations_are_ways_along_the_lower_line():
    """Right: the upper cusp stands 1.5 mm nearer the middle than the groove, 3 mm outside: 1.5 towards Class II. Left:
    2 mm further back: towards Class III. Canines likewise, from the lower distal contact."""
    points = {
        "16": {"cusp": on_line(-38.5, 3, -2)},
        "46": {"groove": on_line(-40, 1), "cusp": on_line(-38, 0.5)},
        "26": {"cusp": on_line(42, 3, -2)},
        "36": {"groove": on_line(40, 1), "cusp": on_line(38, 3.5)},
        "13": {"cusp": on_line(-18, 2, -3)},
        "43": {"distal-contact": on_line(-18, 0)},
        "23": {"cusp": on_line(17, 2, -3)},
        "33": {"distal-contact": on_line(18.25, 0)},
    }
    names = ("molar-relation-right", "molar-relation-left", "canine-relation-right", "canine-relation-left")
    told = [value(model(points, line=LINE), name) for name in names]
    assert told == pytest.approx([1.5, -2, 0, 1.25], abs=1e-9)
    across = [value(model(points, line=LINE), f"transverse-overlap-{side}") for side in ("right", "left")]
    assert across == pytest.approx([2.5, -0.5], abs=1e-9)


def test_irregularity_by_hand():
    """43-42: 1 across. 42-41: 0.5 of overlap and 1 across, 1.118034. 41-31: none. 31-32: 0.4 of gap, which does not
    count, and 0.3 across. 32-33: 2 across. In all 4.418034."""
    points = {
        "43": {"mesial-contact": on_line(-11, 0), "distal-contact": on_line(-18, 0)},
        "42": {"distal-contact": on_line(-11, 1, 4), "mesial-contact": on_line(-5.5, -0.5)},
        "41": {"distal-contact": on_line(-6, 0.5), "mesial-contact": on_line(0, 0)},
        "31": {"mesial-contact": on_line(0, 0, 2), "distal-contact": on_line(5, 0.3)},
        "32": {"mesial-contact": on_line(5.4, 0), "distal-contact": on_line(11, -2)},
        "33": {"mesial-contact": on_line(11, 0), "distal-contact": on_line(18, 0)},
    }
    assert value(model(points, line=LINE), "lower-irregularity") == pytest.approx(4.418034, abs=1e-6)


ROOMS = {"42-41": -1.0, "41-31": -0.5, "32-33": 1.25, "13-12": 0.8, "46-45": 0.15}


@pytest.mark.parametrize(
    "measure,told", [("lower-crowding", 1.5), ("lower-spacing", 1.25), ("upper-crowding", 0), ("upper-spacing", 0.8)]
)
def test_room_is_what_the_arch_was_made_with(measure, told):
    """0.15 mm of room counts as touching."""
    assert value(Mouth(arrays(mouth(between=ROOMS, face=False))), measure) == pytest.approx(told, abs=0.003)


def test_room_is_told_for_each_contact():
    told = Mouth(arrays(mouth(between=ROOMS, face=False)))
    assert {**told.room("upper"), **told.room("lower")} == pytest.approx(
        dict.fromkeys([*told.room("upper"), *told.room("lower")], 0.0) | ROOMS, abs=0.003
    )


def test_a_missing_tooth_leaves_its_place_as_room():
    points = {tooth: at for tooth, at in mouth(face=False).items() if tooth != "14"}
    assert Mouth(arrays(points)).room("upper")["15-13"] == pytest.approx(7.0, abs=0.003)


def test_a_tooth_that_is_turned_and_displaced():
    """42, 5.5 mm wide, 2 mm inside the line, turned by 30: mesial contact 2.75 x cos 30 = 2.381570 towards the middle,
    2.75 x sin 30 = 1.375 further in; the distal one the other way."""
    line = Line(0.0, 0.0, 0.0, 60.0, 42.0)
    stand = line.stand(np.array([*line.spot(-8, 0), 0]))
    left, out = np.array([*stand.leftward, 0]), np.array([*stand.out, 0])
    middle = np.array([*line.spot(-8, -2), 0])
    arm = 2.381570 * left - 1.375 * out
    told = model({"42": {"mesial-contact": middle + arm, "distal-contact": middle - arm}}, line=line)
    assert told.rotations["42"] == pytest.approx(30, abs=1e-5)
    assert told.displacements["42"] == pytest.approx(-2, abs=1e-9)
    assert told.widths["42"] == pytest.approx(5.5, abs=1e-5)


def test_a_whole_mouth_lacks_nothing():
    told = Mouth(arrays(mouth(face=False)), np.zeros(3))
    assert [one.measure for one in formulas() if isinstance(one.of(told), tuple)] == []


def test_an_empty_arch_lacks_what_each_measure_needs():
    upper = {tooth: at for tooth, at in mouth(face=False).items() if tooth[0] in "12"}
    told = Mouth(arrays(upper))
    assert value(told, "overjet") == (Lack("41", "edge"), Lack("31", "edge"))
    assert value(told, "upper-midline") == (Lack("face", "midline"),)
    assert value(told, "lower-crowding") == (Lack("lower", "tooth"),)
    assert value(told, "molar-relation-left") == (Lack("36", "groove"), Lack("lower", "arch-line"))
    assert value(told, "lower-inter-canine-width") == (Lack("43", "cusp"), Lack("33", "cusp"))
    assert isinstance(value(told, "upper-arch-depth"), float)


def test_one_central_is_enough_for_the_bite():
    points = {tooth: at for tooth, at in FRONT.items() if tooth != "41"}
    assert value(model(points), "overbite", "mm") == pytest.approx(1.2 + 2.2)


def test_errors_of_points_add_to_crowding_and_spacing_and_not_to_their_difference():
    """0.1 mm in every coordinate of an even arch, 40 draws: what the specification says of it."""
    rng = np.random.default_rng(11)
    sums = []
    for _ in range(40):
        points = {t: {n: p + rng.normal(0, 0.1, 3) for n, p in at.items()} for t, at in mouth(face=False).items()}
        told = Mouth(arrays({tooth: at for tooth, at in points.items() if tooth[0] in "12"}))
        sums.append([value(told, f"upper-{what}") for what in ("crowding", "spacing")])
    crowding, spacing = np.mean(sums, axis=0)
    assert (crowding, spacing) == pytest.approx((0.3, 0.3), abs=0.15)
    assert spacing - crowding == pytest.approx(0, abs=0.15)
