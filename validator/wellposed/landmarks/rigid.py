"""The rigid movement that brings the points of a tooth from one place to another, by least squares."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

import numpy as np
from scipy.spatial.transform import Rotation

from wellposed import norms
from wellposed.landmarks.vectors import Array

LEAST_POINTS = 3
_OFF = "points.off-a-line"
_FLAT = 1e-6


@dataclass(frozen=True)
class Rigid:
    """after = turn (before - centre) + centre + shift.

    turn      rotation matrix, shape (3, 3)
    centre    middle of the points before, mm
    shift     how far that middle goes, mm
    residual  root mean square of what is left between the moved points and those found, mm
    arms      the points after, from their middle: shape (n, 3)
    mirrored  whether a mirror image would fit better: the points are not the same places of the tooth
    """

    turn: Array
    centre: Array
    shift: Array
    residual: float
    arms: Array
    mirrored: bool = False

    def moved(self, point: Array) -> Array:
        """Where a point of the tooth comes to."""
        there: Array = self.turn @ (point - self.centre) + self.centre + self.shift
        return there


def in_line(points: Sequence[Array]) -> bool:
    """Whether points stand so nearly on one line that a turn about it cannot be found."""
    if len(points) < LEAST_POINTS:
        return True
    arms = np.stack(points) - np.mean(np.stack(points), axis=0)
    sizes = np.linalg.svd(arms, compute_uv=False)
    return bool(sqrt(float(np.sum(sizes[1:] ** 2)) / len(points)) < norms.value(_OFF))


def rigid(before: Sequence[Array], after: Sequence[Array]) -> Rigid:
    """The movement of three points or more that do not stand in one line, in the same order twice (Kabsch 1976)."""
    first, second = np.stack(before), np.stack(after)
    centre, there = first.mean(axis=0), second.mean(axis=0)
    arms, ends = first - centre, second - there
    matrix: Array = Rotation.align_vectors(ends, arms)[0].as_matrix()
    left = ends - arms @ matrix.T  # scipy's own figure is a difference of large sums, and loses half its digits
    residual = float(np.linalg.norm(left)) / sqrt(len(first))
    return Rigid(matrix, centre, there - centre, residual, ends, _mirrored(arms, ends))


def _mirrored(arms: Array, ends: Array) -> bool:
    covariance = ends.T @ arms
    sizes = np.linalg.svd(covariance, compute_uv=False)
    return bool(sizes[2] > _FLAT * sizes[0] and np.linalg.det(covariance) < 0)


def uncertainty(found: Rigid, point: Array, sigma: float) -> tuple[Array, Array]:
    """Covariance of where a point of the tooth comes to, mm2, and of the turn as a vector, rad2; both (3, 3).

    sigma  standard deviation of each coordinate of each point found after; those before are taken as exact. Where both
           have it, take sigma times the square root of 2.

    With r the points after from their middle, n their number: turn sigma2 J^-1 with J = sum (r.r I - r r'), middle
    sigma2 / n, and the arm from the middle to the point carries the turn's error (Sibson 1979; Fitzpatrick 1998).
    """
    arms = found.arms
    inertia = float(np.sum(arms**2)) * np.eye(3) - arms.T @ arms
    turning = np.asarray(sigma**2 * np.linalg.inv(inertia), dtype=np.float64)
    x, y, z = found.turn @ (point - found.centre)
    cross = np.array([[0.0, z, -y], [-z, 0.0, x], [y, -x, 0.0]])
    placing: Array = sigma**2 / len(arms) * np.eye(3) + cross @ turning @ cross.T
    return placing, turning
