"""The three angles of a turn: against scipy's own rotations, and against the convention written out by hand."""

from math import cos, radians, sin

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation

from wellposed.landmarks.turning import Turn, matrix_of, turn_of

ANGLES = st.floats(-170, 170)
TIPS = st.floats(-80, 80)


def joint_axes(turn):
    """The three axes and turns of Grood and Suntay 1983, one by one: about the axis of the jaw, about the floating
    axis, about the axis of the tooth. Each about a unit vector by Rodrigues' formula."""
    m, _, v = np.eye(3)
    first = about(m, -turn.torque)
    tooth = first @ v  # the tooth's own axis after the torque alone
    floating = np.cross(tooth, m)  # square to the jaw's axis and to the tooth's
    second = about(floating, turn.tip)
    own = second @ tooth
    return about(own, -turn.rotation) @ second @ first


def about(axis, degrees):
    x, y, z = axis / np.linalg.norm(axis)
    cross = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
    return np.eye(3) + sin(radians(degrees)) * cross + (1 - cos(radians(degrees))) * cross @ cross


@given(ANGLES, TIPS, ANGLES)
def test_the_matrix_is_that_of_scipy_s_intrinsic_sequence(torque, tip, rotation):
    theirs = Rotation.from_euler("XYZ", [-torque, tip, -rotation], degrees=True)
    assert np.allclose(matrix_of(Turn(torque, tip, rotation)), theirs.as_matrix(), atol=1e-12)


@given(ANGLES, TIPS, ANGLES)
def test_the_angles_are_those_of_scipy(torque, tip, rotation):
    matrix = matrix_of(Turn(torque, tip, rotation))
    first, second, third = Rotation.from_matrix(matrix).as_euler("XYZ", degrees=True)
    assert turn_of(matrix) == pytest.approx((-first, second, -third), abs=1e-9)
    assert turn_of(matrix) == pytest.approx((torque, tip, rotation), abs=1e-9)


@given(ANGLES, TIPS, ANGLES)
def test_the_turn_is_that_of_the_joint_coordinate_system(torque, tip, rotation):
    turn = Turn(torque, tip, rotation)
    assert np.allclose(matrix_of(turn), joint_axes(turn), atol=1e-12)


# Worked out by hand: sin 30 = 0.5, cos 30 = 0.866025. Columns are where m, o and v go.
C, S = 0.866025, 0.5
BY_HAND = [
    ("labial crown torque: the crown goes outwards", Turn(30, 0, 0), [[1, 0, 0], [0, C, S], [0, -S, C]]),
    ("mesial crown tip: the crown goes mesially", Turn(0, 30, 0), [[C, 0, S], [0, 1, 0], [-S, 0, C]]),
    ("rotation: the mesial surface goes inwards", Turn(0, 0, 30), [[C, S, 0], [-S, C, 0], [0, 0, 1]]),
    ("torque, then 90 about the tooth's own axis", Turn(30, 0, 90), [[0, 1, 0], [-C, 0, S], [S, 0, C]]),
]


@pytest.mark.parametrize("sentence,turn,matrix", BY_HAND)
def test_turns_worked_out_by_hand(sentence, turn, matrix):
    assert np.allclose(matrix_of(turn), matrix, atol=1e-6), sentence
    assert turn_of(np.array(matrix)) == pytest.approx(turn, abs=1e-4)


@given(ANGLES, TIPS, ANGLES, ANGLES)
def test_the_long_axis_does_not_depend_on_the_rotation(torque, tip, rotation, other):
    axes = [matrix_of(Turn(torque, tip, one))[:, 2] for one in (rotation, other)]
    assert np.allclose(*axes, atol=1e-12)
