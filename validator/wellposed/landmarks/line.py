"""The arch line through the teeth as they stand, and where a point is on it and off it.

The line is that of the specification, y = F D [(1/2 + x/W)(1/2 - x/W)]^e, with its width, its depth, its middle and the
way it faces fitted to the middles of the teeth: each between its two contact points, seen from above. Written with an
angle a: x = W/2 sin a, y = D cos(a)^2e.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from math import atan2, cos, pi, radians, sin

import numpy as np
from scipy.optimize import brentq, least_squares

from wellposed import norms
from wellposed.landmarks.vectors import Array
from wellposed.vocabulary.teeth import SIDES, is_incisor, position, side_of

LEAST_TEETH = 6
"""As many as the fit needs: it has five unknowns."""
_BACK = 4
_SOFT = "points.draws-less"
_END = pi / 2 - 1e-6
_NODES = 2001
_FACTS = 5
_LOW = (-2000.0, -2000.0, -radians(30), 20.0, 5.0)
_HIGH = (2000.0, 2000.0, radians(30), 120.0, 80.0)


@dataclass(frozen=True)
class Stand:
    """A place relative to the line.

    along    arc length from the middle of the line to the foot, towards the patient's left +, mm
    off      distance from the line, outwards +, mm
    leftward, out   unit vectors at the foot, x and y: along the line to the patient's left, and outwards
    """

    along: float
    off: float
    leftward: tuple[float, float]
    out: tuple[float, float]

    def travel(self, after: Stand) -> float:
        """How far a point has gone to the patient's left, at its own distance from the line: on the parallel, mm."""
        bent = atan2(*reversed(self.leftward)) - atan2(*reversed(after.leftward))
        return after.along - self.along + self.off * bent


@dataclass(frozen=True)
class Line:
    """An arch line: its middle, mm; how far it is turned, rad, x towards y; width and depth, mm."""

    x: float
    y: float
    turned: float
    width: float
    depth: float

    @cached_property
    def _nodes(self) -> tuple[Array, Array, Array]:
        """Angles, points (n, 2), and arc length from the middle."""
        angles: Array = np.linspace(-_END, _END, _NODES)
        points = np.column_stack(_curve(angles, self.width, self.depth))
        reached = np.concatenate(([0.0], np.cumsum(np.linalg.norm(np.diff(points, axis=0), axis=1))))
        return angles, points, reached - reached[_NODES // 2]

    def stand(self, point: Array) -> Stand:
        """Where a point is, seen from above. Beyond its ends the line goes on straight."""
        angles, points, reached = self._nodes
        x, y = _turned(float(point[0]) - self.x, float(point[1]) - self.y, -self.turned)
        nearest = int(np.argmin((points[:, 0] - x) ** 2 + (points[:, 1] - y) ** 2))
        angle = self._foot(x, y, nearest)
        foot = _spot(angle, self.width, self.depth)
        way = _way(angle, self.width, self.depth)
        beyond = (x - foot[0]) * way[0] + (y - foot[1]) * way[1]
        off = -(x - foot[0]) * way[1] + (y - foot[1]) * way[0]
        along = float(np.interp(angle, angles, reached)) + beyond
        way = _turned(*way, self.turned)
        return Stand(along, off, way, (-way[1], way[0]))

    def _foot(self, x: float, y: float, nearest: int) -> float:
        """The angle at which the line is square to the way to a point."""
        angles = self._nodes[0]

        def leaning(angle: float) -> float:
            foot, way = _spot(angle, self.width, self.depth), _way(angle, self.width, self.depth)
            return (x - foot[0]) * way[0] + (y - foot[1]) * way[1]

        low, high = float(angles[max(nearest - 1, 0)]), float(angles[min(nearest + 1, _NODES - 1)])
        if leaning(low) * leaning(high) >= 0:
            return float(angles[nearest])
        return float(brentq(leaning, low, high, xtol=1e-15, rtol=1e-14))

    def spot(self, along: float, off: float) -> tuple[float, float]:
        """The point that stands so, seen from above; within the ends of the line."""
        angles, _, reached = self._nodes
        angle = float(np.interp(along, reached, angles))
        foot, way = _spot(angle, self.width, self.depth), _way(angle, self.width, self.depth)
        x, y = _turned(foot[0] - off * way[1], foot[1] + off * way[0], self.turned)
        return x + self.x, y + self.y


def fitted(middles: Mapping[str, Array]) -> Line | None:
    """The line through the middles of the teeth of an arch, tooth to point.

    None unless there are six teeth or more, an incisor among them, that reach on both sides to a first premolar or
    further back: with less the line is not determined.
    """
    teeth = sorted(middles)
    reach = {side: max((position(t) for t in teeth if side_of(t) == side), default=0) for side in SIDES}
    if len(teeth) < LEAST_TEETH or min(reach.values()) < _BACK or not any(is_incisor(t) for t in teeth):
        return None
    points = np.stack([middles[tooth][:2] for tooth in teeth])
    found = least_squares(
        _misses, _begin(points), bounds=_bounds(len(teeth)), args=(points,), loss="soft_l1", f_scale=norms.value(_SOFT),
        xtol=1e-14, ftol=1e-14, gtol=1e-12, x_scale="jac", max_nfev=400,
    )  # fmt: skip
    return Line(*(float(fact) for fact in found.x[:_FACTS]))


def _begin(points: Array) -> Array:
    """A line as wide and as deep as the teeth."""
    (left, back), (right, front) = points.min(axis=0), points.max(axis=0)
    width, depth, x = right - left + 1.0, front - back + 4.0, (left + right) / 2
    angles = np.arcsin(np.clip(2 * (points[:, 0] - x) / width, -0.99, 0.99))
    return np.concatenate(([x, front - depth, 0.0, np.clip(width, 25, 110), np.clip(depth, 6, 75)], angles))


def _bounds(count: int) -> tuple[Array, Array]:
    return np.concatenate((_LOW, np.full(count, -_END))), np.concatenate((_HIGH, np.full(count, _END)))


def _misses(guess: Array, points: Array) -> Array:
    """What lies between the teeth and the line."""
    x, y, turned, width, depth = guess[:_FACTS]
    spots = _curve(guess[_FACTS:], width, depth)
    across = spots[0] * np.cos(turned) - spots[1] * np.sin(turned) + x
    ahead = spots[0] * np.sin(turned) + spots[1] * np.cos(turned) + y
    missed: Array = np.concatenate((points[:, 0] - across, points[:, 1] - ahead))
    return missed


def _power() -> float:
    return 2 * norms.value("arch.curve-exponent")


def _curve(angles: Array, width: float, depth: float) -> tuple[Array, Array]:
    return width / 2 * np.sin(angles), depth * np.cos(angles) ** _power()


def _spot(angle: float, width: float, depth: float) -> tuple[float, float]:
    return width / 2 * sin(angle), depth * cos(angle) ** _power()


def _way(angle: float, width: float, depth: float) -> tuple[float, float]:
    """The unit vector along the line, towards the patient's left."""
    x, y = width / 2 * cos(angle), -_power() * depth * cos(angle) ** (_power() - 1) * sin(angle)
    size = float(np.hypot(x, y))
    return x / size, y / size


def _turned(x: float, y: float, angle: float) -> tuple[float, float]:
    return x * cos(angle) - y * sin(angle), x * sin(angle) + y * cos(angle)
