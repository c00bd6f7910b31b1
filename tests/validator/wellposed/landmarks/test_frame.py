"""Points in another frame are not measured but asked about; points in ours are not."""

import numpy as np
import pytest
from tests.validator.wellposed.landmarks.made import LOWER, UPPER, mouth, moved, table, upright_turn

from wellposed.landmarks.table import taken
from wellposed.reading.points import read_points
from wellposed.vocabulary.teeth import mirrored

MOUTH = mouth()


def told(teeth, header=None, after=None):
    data = table(teeth, after)
    if header:
        data = data.replace(b"x,y,z", header, 1)
    return taken(read_points(data))


def mapped(matrix, teeth=MOUTH):
    return {
        tooth: {name: np.array(matrix, float) @ at for name, at in points.items()} for tooth, points in teeth.items()
    }


def only(*teeth):
    return {tooth: MOUTH[tooth] for tooth in teeth}


def exchanged(tooth, other):
    """The same points under each other's number."""
    return {**MOUTH, tooth: MOUTH[other], other: MOUTH[tooth]}


def without(*teeth):
    return {tooth: points for tooth, points in MOUTH.items() if tooth not in teeth}


def centimetres(*teeth):
    return {tooth: {"cusp": MOUTH[tooth]["cusp"] / 10} for tooth in teeth}


def with_points(tooth, **changed):
    return {**MOUTH, tooth: MOUTH[tooth] | {name.replace("_", "-"): at for name, at in changed.items()}}


def shifted(teeth, *way):
    return {**MOUTH, **{tooth: {name: at + way for name, at in MOUTH[tooth].items()} for tooth in teeth}}


def forward(teeth, far):
    return {tooth: {name: at + np.array((0, far, 0)) for name, at in points.items()} for tooth, points in teeth.items()}


def exchanged_points(tooth, one, other):
    return with_points(tooth, **{one: MOUTH[tooth][other], other: MOUTH[tooth][one]})


def reasons(found):
    return [f"{fault.line}:{fault.column} {fault.reason}" for fault in found]


COPIED = [f"{line}:1 teeth-in-one-place" for line in (14, 15, 16)]  # edge, gum, root
ASKED = [
    ("x to the right", mapped(np.diag([-1, 1, 1])), ["1:16 mirrored"]),
    ("y back, as in the axes of radiology", mapped(np.diag([1, -1, 1])), ["1:18 mirrored"]),
    ("z down", mapped(np.diag([1, 1, -1])), ["1:20 mirrored"]),
    ("all three", mapped(-np.eye(3)), ["1:16 mirrored", "1:18 mirrored", "1:20 mirrored"]),
    ("turned by half about z", mapped(np.diag([-1, -1, 1])), ["1:16 turned-over", "1:18 turned-over"]),
    ("turned by half about x", mapped(np.diag([1, -1, -1])), ["1:18 turned-over", "1:20 turned-over"]),
    (
        "turned by a quarter about z, both arches",
        mapped(upright_turn((0, 0, 1), 90)),
        ["1:16 axes-turned", "1:16 axes-turned", "1:18 axes-turned", "1:18 axes-turned"],
    ),
    ("leaning by 30 degrees, both arches", mapped(upright_turn((1, 0, 0), 30)), ["1:20 plane-tilted"] * 2),
    ("left and right exchanged", {t: MOUTH[mirrored(t)] for t in UPPER}, ["1:16 mirrored"]),
    ("upper teeth alone, z down", mapped(np.diag([1, 1, -1]), only(*UPPER)), ["1:20 mirrored"]),
    ("one side alone, x to the right", mapped(np.diag([-1, 1, 1]), only(*LOWER[:7])), ["1:16 mirrored"]),
    ("points of one tooth copied to another", only("11", "21") | {"22": MOUTH["21"]}, COPIED),
    ("the lower arch alone upside down", MOUTH | mapped(np.diag([1, 1, -1]), only(*LOWER)), ["1:20 arch-upside-down"]),
    ("canine to canine, y back", mapped(np.diag([1, -1, 1]), only(*UPPER[4:10])), ["1:18 mirrored"]),
    ("the lower arch beside the upper", shifted(LOWER, 60, 0, 0), ["1:16 arches-apart"]),
]


@pytest.mark.parametrize("sentence,teeth,asked", ASKED)
def test_what_is_asked(sentence, teeth, asked):
    assert (sentence, reasons(told(teeth))) == (sentence, asked)


def test_another_unit_is_asked_at_each_tooth():
    found = told(mapped(np.eye(3) / 10))
    assert {fault.reason for fault in found} == {"width-not-plausible"}
    assert len(found) == 28


def test_a_frame_is_asked_about_at_each_moment():
    assert reasons(told(MOUTH, after=mapped(np.diag([1, -1, 1]), only(*UPPER, *LOWER)))) == ["1:25 mirrored"]


@pytest.mark.parametrize(
    "header,matrix",
    [
        (b"left,back,up", np.diag([1, -1, 1])),
        (b"right,forward,up", np.diag([-1, 1, 1])),
        (b"forward,left,down", [[0, 1, 0], [1, 0, 0], [0, 0, -1]]),
    ],
)
def test_a_header_that_names_the_axes_settles_it(header, matrix):
    """The same measures as in our own frame, to the last digit."""
    assert told(mapped(matrix), header) == told(MOUTH)


NOT_ASKED = [
    ("our own frame", MOUTH),
    ("far from the origin", shifted((*UPPER, *LOWER), 150, -90, 40)),
    ("leaning by 10 degrees", mapped(upright_turn((1, 0, 0), 10))),
    ("turned by 15 degrees about z", mapped(upright_turn((0, 0, 1), 15))),
    ("crowded", mouth(between={"42-41": -3, "13-12": -4, "22-23": -2})),
    ("a deep bite and a large overjet", mouth(overjet=14, overbite=8)),
    ("a reverse overjet and an open bite", mouth(overjet=-6, overbite=-5)),
    ("a tooth turned by 100 degrees", moved(MOUTH, "15", upright_turn((0, 0, 1), 100))),
    ("a front alone", only("12", "11", "21", "22")),
    # Division 2 of Class II: the centrals lean back, and the laterals stand in front of them.
    ("a front whose laterals stand in front", only("11", "21") | forward(only("12", "22"), 4.5)),
    ("one tooth", only("36")),
    ("a central of each arch", only("11", "41")),
    ("few teeth behind", only("16", "15", "14", "13", "12", "11", "21", "22", "23", "24", "25", "26")),
]


@pytest.mark.parametrize("sentence,teeth", NOT_ASKED)
def test_what_is_not_asked(sentence, teeth):
    assert (sentence, isinstance(told(teeth), tuple)) == (sentence, False)


IMAGE = {"11": {name: at * [-1, 1, 1] - [8.4, 0, 0] for name, at in MOUTH["11"].items()}}
SWAPPED = with_points("14", mesial_contact=MOUTH["14"]["distal-contact"], distal_contact=MOUTH["14"]["mesial-contact"])
DOUBTED = [
    ("nothing", MOUTH, MOUTH, []),
    ("gum and edge exchanged", exchanged_points("11", "gum", "edge"), None, ["upside-down 11 before"]),
    ("gum and cusp exchanged, root given", exchanged_points("46", "gum", "cusp"), None, ["upside-down 46 before"]),
    ("turned by 9 degrees", mapped(upright_turn((0, 0, 1), 9), only(*UPPER)), None, []),
    ("turned by 11 degrees", mapped(upright_turn((0, 0, 1), 11), only(*UPPER)), None, ["faces-aside upper before"]),
    ("no points of 14", without("14"), None, ["places-without-points 15-13 before"]),
    ("no points of 41 and 31", without("41", "31"), None, ["places-without-points 42-32 before"]),
    ("no points of the last molars", without("17", "27"), None, []),
    ("an overbite of 12.5", mouth(overbite=12.5), None, ["not-plausible overbite before"]),
    (
        "centimetres, without contact points",
        {t: {"edge": MOUTH[t]["edge"] / 10} for t in ("11", "21", "41", "31")} | centimetres("13", "23"),
        None,
        ["not-plausible upper-inter-canine-width before"],
    ),
    ("contacts exchanged", SWAPPED, None, ["turned-round 14 before"]),
    ("two teeth exchanged", exchanged("14", "15"), None, ["out-of-order 15-14 before"]),
    ("a point misplaced", MOUTH, with_points("11", gum=MOUTH["11"]["gum"] + [0, 0, 3]), ["loose-fit 11 "]),
    (
        "a mirror image",
        MOUTH,
        MOUTH | IMAGE,
        ["turned-round 11 after", "mirrored 11 "],
    ),
    ("a frame that moved", MOUTH, mapped(upright_turn((0, 0, 1), 3)), ["moved-as-one upper ", "moved-as-one lower "]),
    ("an arch that moved", MOUTH, shifted(UPPER, 0, -2, 0), ["moved-as-one upper "]),
    ("a side that moved", MOUTH, shifted(UPPER[:3], 0, -2, 0), []),
]


@pytest.mark.parametrize("sentence,before,after,doubts", DOUBTED)
def test_what_should_be_looked_at_again(sentence, before, after, doubts):
    found = told(before, after=after)
    assert (sentence, [f"{d.reason} {d.where} {d.moment}" for d in found.doubts]) == (sentence, doubts)


def test_points_that_are_off_are_not_taken_for_another_frame():
    """0.3 mm in every coordinate, 20 draws."""
    rng = np.random.default_rng(7)
    for _ in range(20):
        teeth = {t: {n: p + rng.normal(0, 0.3, 3) for n, p in at.items()} for t, at in MOUTH.items()}
        assert told(teeth).doubts == ()
