"""Rigid movements are found again: exactly without noise, and with noise as far off as theory says."""

from math import sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation
from tests.validator.wellposed.landmarks.made import mouth

from wellposed.landmarks.rigid import in_line, rigid, uncertainty

TEETH = {tooth: list(points.values()) for tooth, points in mouth(face=False).items()}
CLINICAL = st.tuples(*[st.floats(-8, 8)] * 3), st.tuples(*[st.floats(-0.8, 0.8)] * 3)
LARGE = st.tuples(*[st.floats(-100, 100)] * 3), st.tuples(*[st.floats(-1.8, 1.8)] * 3)


def recovered(tooth, shift, vector):
    turn = Rotation.from_rotvec(vector).as_matrix()
    before = TEETH[tooth]
    found = rigid(before, [turn @ point + shift for point in before])
    assert np.allclose(found.turn, turn, atol=1e-9)
    assert all(np.allclose(found.moved(p), turn @ p + shift, atol=1e-9) for p in before)
    assert found.residual < 1e-9
    assert not found.mirrored


@given(st.sampled_from(sorted(TEETH)), *CLINICAL)
def test_movements_of_a_treatment_are_recovered(tooth, shift, vector):
    recovered(tooth, shift, vector)


@given(st.sampled_from(sorted(TEETH)), *LARGE)
def test_large_movements_are_recovered(tooth, shift, vector):
    recovered(tooth, shift, vector)


@given(st.permutations(range(5)), *CLINICAL)
def test_three_points_are_enough(order, shift, vector):
    before = [TEETH["11"][number] for number in order[:3]]
    turn = Rotation.from_rotvec(vector).as_matrix()
    if not in_line(before):
        assert np.allclose(rigid(before, [turn @ p + shift for p in before]).turn, turn, atol=1e-9)


def test_the_residual_is_what_a_rigid_movement_leaves():
    """Four corners of a square of 10 mm, each 0.3 mm further out after: no rigid movement helps."""
    before = [np.array(p, float) for p in ((5, 5, 0), (-5, 5, 0), (-5, -5, 0), (5, -5, 0))]
    after = [p * (1 + 0.3 / np.linalg.norm(p)) for p in before]
    assert rigid(before, after).residual == pytest.approx(0.3, abs=1e-12)


def test_a_mirror_image_is_seen():
    before = TEETH["11"]
    assert rigid(before, [p * [-1, 1, 1] for p in before]).mirrored


@pytest.mark.parametrize(
    "sentence,points,told",
    [
        ("two points", [(0, 0, 0), (1, 0, 0)], True),
        ("three on a line", [(0, 0, 0), (4, 0, 0), (8, 0, 0)], True),
        # Off the line through (0,0), (8,0) by h in the middle: root mean square off the best line is h sqrt(2)/3.
        ("a flat triangle, 0.53 mm high", [(0, 0, 0), (4, 0.53, 0), (8, 0, 0)], True),
        ("one of 0.54 mm: 0.54 x 0.4714 = 0.2546", [(0, 0, 0), (4, 0.54, 0), (8, 0, 0)], False),
        ("a crown: contacts and edge 2 mm above", [(0, 0, 0), (4, 2, 0), (8, 0, 0)], False),
    ],
)
def test_points_on_a_line_do_not_tell_a_turn(sentence, points, told):
    assert (sentence, in_line([np.array(p, float) for p in points])) == (sentence, told)


def test_the_spread_of_a_cross_by_hand():
    """Six points 10 mm out on three axes, sigma 0.1: sum of squares 600, J = 600 - 200 = 400 about each axis; so
    0.1 / 20 = 0.005 rad; the middle 0.1 / sqrt 6; a point 10 mm off adds 10 x 0.005 across."""
    points = [sign * 10 * axis for axis in np.eye(3) for sign in (1, -1)]
    placing, turning = uncertainty(rigid(points, points), np.array([10.0, 0, 0]), 0.1)
    assert np.allclose(np.sqrt(np.diag(turning)), 0.005)
    across = sqrt(0.01 / 6 + 0.05**2)
    assert np.sqrt(np.diag(placing)) == pytest.approx([0.1 / sqrt(6), across, across])


NOISE, TRIALS = 0.1, 3000
# A standard deviation from n draws is off by 1/sqrt(2n) of itself, 1.3 % here: four and a half of these.
BOUND = 4.5 / sqrt(2 * TRIALS)


@pytest.mark.parametrize("tooth", ["11", "31", "46"])
@pytest.mark.parametrize("both", [False, True], ids=["after", "before and after"])
def test_noise_carries_as_far_as_theory_says(tooth, both):
    """sigma/sqrt(n) in the middle, sigma sqrt(J^-1) in the turn, J the inertia of the points; sqrt 2 more with noise
    at both moments (Sibson 1979, Fitzpatrick 1998)."""
    rng = np.random.default_rng(20260304)
    points, shift = np.array(TEETH[tooth]), np.array([0.8, -0.5, 0.3])
    turn = Rotation.from_rotvec([0.1, -0.2, 0.3]).as_matrix()
    exact, crown = points @ turn.T + shift, points[2]
    shifts, vectors, left = [], [], []
    for _ in range(TRIALS):
        first = points + (rng.normal(0, NOISE, points.shape) if both else 0)
        found = rigid(list(first), list(exact + rng.normal(0, NOISE, points.shape)))
        shifts.append(found.moved(crown) - (turn @ crown + shift))
        vectors.append(Rotation.from_matrix(found.turn @ turn.T).as_rotvec())
        left.append(found.residual**2)
    sigma = NOISE * (sqrt(2) if both else 1)
    placing, turning = uncertainty(rigid(list(points), list(exact)), crown, sigma)
    for errors, theory in ((shifts, placing), (vectors, turning)):
        measured, expected = np.std(errors, axis=0), np.sqrt(np.diag(theory))
        assert np.all(np.abs(measured / expected - 1) < BOUND)
        assert np.all(np.abs(np.mean(errors, axis=0)) < 4.5 * expected / sqrt(TRIALS))
    # Of 3 n coordinates, six are used up by the movement: mean squared residual sigma2 (3 - 6/n).
    assert np.mean(left) == pytest.approx(sigma**2 * (3 - 6 / len(points)), rel=0.05)
