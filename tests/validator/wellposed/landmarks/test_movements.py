"""Movements of teeth in the six variables: recovered through the whole way, and worked out by hand."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.validator.wellposed.landmarks.made import LOWER, UPPER, mouth, moved, upright_turn

from wellposed.landmarks.mouth import Mouth
from wellposed.landmarks.movements import movements
from wellposed.landmarks.turning import Turn, matrix_of
from wellposed.landmarks.vectors import arrays
from wellposed.vocabulary.motions import VARIABLES

TEETH = mouth(face=False)
BEFORE = Mouth(arrays(TEETH))
LINES = {tooth: BEFORE.lines["upper" if tooth[0] in "12" else "lower"] for tooth in TEETH}
STILL = dict.fromkeys(VARIABLES, 0.0)


def one(after, tooth, before=BEFORE):
    return next(moved for moved in movements(before, Mouth(arrays(after))) if moved.tooth == tooth)


def directions(tooth, stand):
    """Mesially, outwards, extruding: as the specification has them, written again."""
    side = 1 if tooth[0] in "14" else -1
    up = -1 if tooth[0] in "12" else 1
    return np.column_stack(([*np.multiply(stand.leftward, side), 0], [*stand.out, 0], [0, 0, up]))


def placed(tooth, along, out, vertical, turn):
    """The mouth with a tooth slid along the parallel of its line, brought out, extruded and turned."""
    line, points = LINES[tooth], TEETH[tooth]
    crown = points.get("edge", points.get("cusp"))
    first = line.stand(crown)
    side, up = (1 if tooth[0] in "14" else -1), (-1 if tooth[0] in "12" else 1)
    goal = along * side
    low, high = first.along - 15, first.along + 15
    for _ in range(100):  # halving: the way on the parallel grows with the way on the line
        middle = (low + high) / 2
        there = line.stand(np.array([*line.spot(middle, first.off), 0.0]))
        low, high = (middle, high) if first.travel(there) < goal else (low, middle)
    end = np.array([*line.spot(middle, first.off + out), crown[2] + vertical * up])
    second = directions(tooth, line.stand(end))
    matrix = second @ matrix_of(turn) @ directions(tooth, first).T
    return {**TEETH, tooth: {name: matrix @ (at - crown) + end for name, at in points.items()}}


MIDDLE = [*UPPER[1:-1], *LOWER[1:-1]]  # a last molar can slide beyond the end of the line


@settings(max_examples=60)
@given(
    st.sampled_from(MIDDLE),
    st.tuples(st.floats(-5, 5), st.floats(-5, 5), st.floats(-4, 4)),
    st.tuples(st.floats(-40, 40), st.floats(-40, 40), st.floats(-120, 120)),
)
def test_six_variables_are_recovered(tooth, way, angles):
    found = one(placed(tooth, *way, Turn(*angles)), tooth)
    assert [found.values[name] for name in VARIABLES] == pytest.approx([*way, *angles], abs=1e-9)
    assert found.residual < 1e-9
    assert found.why is None


# Signs, one at a time, by plain geometry: x to the patient's left, y forward, z up.
SIGNS = [
    ("an upper central forward is labial", "11", None, (0, 1, 0), {"out": 1}),
    ("an upper right central to the left is mesial", "11", None, (0.1, 0, 0), {"along": 0.1}),
    ("an upper left central to the left is distal", "21", None, (0.1, 0, 0), {"along": -0.1}),
    ("an upper tooth down is extruded", "16", None, (0, 0, -1), {"vertical": 1}),
    ("a lower tooth up is extruded", "46", None, (0, 0, 1), {"vertical": 1}),
    ("a lower tooth down is intruded", "31", None, (0, 0, -1), {"vertical": -1}),
    # A turn about x by +a takes y to z and z to -y. Crown end of an upper tooth is -z, so it goes to +y: forward.
    ("the crown end of an upper central forward is torque", "11", ((1, 0, 0), 10), (0, 0, 0), {"torque": 10}),
    ("the same turn takes a lower crown end back", "41", ((1, 0, 0), 10), (0, 0, 0), {"torque": -10}),
    # A turn about y by +a takes z to x: -z to -x, so an upper crown end goes to the right.
    ("an upper right crown end to the right is distal tip", "11", ((0, 1, 0), 10), (0, 0, 0), {"tip": -10}),
    ("an upper left crown end to the right is mesial tip", "21", ((0, 1, 0), 10), (0, 0, 0), {"tip": 10}),
    ("a lower right crown end to the left is mesial tip", "41", ((0, 1, 0), 10), (0, 0, 0), {"tip": 10}),
    # A turn about z by +a takes x to y: the mesial surface of a right tooth, at +x, goes forward: away from the tongue.
    ("mesial surface of an upper right tooth forward", "11", ((0, 0, 1), 10), (0, 0, 0), {"rotation": -10}),
    ("mesial surface of an upper left tooth back", "21", ((0, 0, 1), 10), (0, 0, 0), {"rotation": 10}),
    ("mesial surface of a lower right tooth forward", "41", ((0, 0, 1), 10), (0, 0, 0), {"rotation": -10}),
]


@pytest.mark.parametrize("sentence,tooth,turn,shift,told", SIGNS)
def test_signs(sentence, tooth, turn, shift, told):
    found = one(moved(TEETH, tooth, upright_turn(*turn) if turn else None, shift), tooth)
    ((name, size),) = told.items()
    kind = VARIABLES[3:] if turn else VARIABLES[:3]
    rest = [abs(found.values[other]) for other in kind if other != name]
    # The centrals of our arch face 18 degrees (upper) to the side, whose cosine is 0.95 and tangent 0.33.
    assert found.values[name] == pytest.approx(size, rel=0.06), sentence
    assert max(rest) < 0.34 * abs(size)


def test_a_tooth_that_slides_round_the_arch_is_not_rotated():
    """A canine 3 mm distal that still faces out: no rotation, though it has turned in the jaw."""
    found = one(placed("13", -3, 0, 0, Turn(0, 0, 0)), "13")
    assert found.values == pytest.approx(STILL | {"along": -3}, abs=1e-9)
    assert found.turned > 3


def test_nothing_moves():
    assert all(list(found.values.values()) == pytest.approx([0] * 6, abs=1e-9) for found in movements(BEFORE, BEFORE))


def less(tooth, *landmarks):
    return {**TEETH, tooth: {name: at for name, at in TEETH[tooth].items() if name not in landmarks}}


UNTOLD = [
    ("a tooth that is not there after", TEETH, {t: p for t, p in TEETH.items() if t != "14"}, "14", "gone"),
    ("a tooth that is not there before", {t: p for t, p in TEETH.items() if t != "14"}, TEETH, "14", "new"),
    ("two landmarks in common", less("11", "gum", "root"), less("11", "edge"), "11", "too-few-points"),
    ("no edge", less("11", "edge"), TEETH, "11", "no-crown-point"),
    ("too few teeth", {t: TEETH[t] for t in UPPER[4:10]}, {t: TEETH[t] for t in UPPER[4:10]}, "11", "no-arch-line"),
    ("tipped flat", TEETH, placed("11", 0, 0, 0, Turn(0, 88, 0)), "11", "tipped-too-far"),
]


@pytest.mark.parametrize("sentence,before,after,tooth,why", UNTOLD)
def test_what_cannot_be_told_says_why(sentence, before, after, tooth, why):
    found = one(after, tooth, Mouth(arrays(before)))
    assert (sentence, found.why, found.values) == (sentence, why, {})


def test_points_in_a_line_cannot_be_told():
    thin = {"11": {"mesial-contact": (4, 40, 0), "edge": (0, 40, 0.1), "distal-contact": (-4, 40, 0)}}
    assert one(thin, "11", Mouth(arrays(thin))).why == "in-a-line"


def test_spreads_are_those_that_noise_makes():
    """0.1 mm in every coordinate at both moments: the spread of the six variables over 400 draws, within 4.5 of its
    own standard deviations (1/sqrt(800) = 3.5 % each), and 3 % for the bend of the line."""
    rng = np.random.default_rng(4)
    after = placed("13", -1, 0.5, 0.2, Turn(5, -3, 8))
    expected = one(after, "13").spread
    draws = []
    for _ in range(400):
        noisy = [
            {**teeth, "13": {n: p + rng.normal(0, 0.1, 3) for n, p in teeth["13"].items()}} for teeth in (TEETH, after)
        ]
        first = Mouth(arrays(noisy[0]))
        first.__dict__["lines"] = BEFORE.lines  # the line is taken as known
        found = one({"13": noisy[1]["13"]}, "13", first)
        draws.append([found.values[name] for name in VARIABLES])
    assert np.std(draws, axis=0) / [expected[name] for name in VARIABLES] == pytest.approx([1] * 6, abs=0.19)
