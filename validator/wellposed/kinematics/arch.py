"""The geometry of a dental arch: where teeth stand on it, and how far out and along they face.

The arch line is the beta function of Braun et al. 1998 (Angle Orthod 68:29-36),
y = 3.0314 D [(1/2 + x/W)(1/2 - x/W)]^0.8, written with an angle: x = W/2 sin a, y = D cos(a)^1.6.
x points to the patient's left, y forward; both in mm.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

_EXPONENT = 1.6
_ANGLES = np.linspace(-np.pi / 2, np.pi / 2, 601)
_SINE = np.sin(_ANGLES) / 2
_RISE = np.cos(_ANGLES).clip(0) ** _EXPONENT
_RUN_SQUARED = np.diff(_SINE) ** 2
_RISE_STEP = np.diff(_RISE)


class Facing(NamedTuple):
    """Unit vectors of one tooth: outward normal, and tangent from the patient's right to left."""

    out_x: float
    out_y: float
    along_x: float
    along_y: float


@dataclass(frozen=True, slots=True)
class ArchLine:
    """One arch: depth and width in mm; per tooth, from the patient's right, where it stands and how it faces."""

    depth: float
    width: float
    points: tuple[tuple[float, float], ...]
    facings: tuple[Facing, ...]

    def chord(self, first: int, second: int) -> tuple[float, float]:
        """Room between two teeth that 1 mm ``out`` of the first loses, and 1 mm of the second gains, mm."""
        (x, y), (ahead_x, ahead_y) = self.points[first], self.points[second]
        x, y = ahead_x - x, ahead_y - y
        length = (x * x + y * y) ** 0.5
        a, b = self.facings[first], self.facings[second]
        return (a.out_x * x + a.out_y * y) / length, (b.out_x * x + b.out_y * y) / length


def _lengths(depth_to_width: float) -> NDArray[np.float64]:
    """Arc length from the right end at each angle, for an arch of width 1."""
    steps = np.sqrt(_RUN_SQUARED + (depth_to_width * _RISE_STEP) ** 2)
    return np.concatenate(([0.0], np.cumsum(steps)))


def fitted_width(length: float, depth: float) -> float:
    """The width at which an arch of this depth is ``length`` mm long; 0 if the depth alone is longer."""
    low, high = 0.0, length
    width = 1.6 * depth
    for _ in range(60):
        excess = width * float(_lengths(depth / width)[-1]) - length
        if abs(excess) < 1e-9:
            break
        low, high = (low, width) if excess > 0 else (width, high)
        slope = _slope(width, depth)
        width = width - excess / slope
        if not low < width < high:
            width = (low + high) / 2
    return width


def _slope(width: float, depth: float) -> float:
    step = 1e-4
    here = width * float(_lengths(depth / width)[-1])
    there = (width + step) * float(_lengths(depth / (width + step))[-1])
    return (there - here) / step


@lru_cache(maxsize=256)
def arch_line(widths: tuple[float, ...], between: tuple[float, ...], depth: float) -> ArchLine:
    """Teeth of these widths on an arch of this depth, from the patient's right to left.

    widths   mesiodistal, mm
    between  per neighbouring pair, space (+) or crowding (-), mm
    depth    from the incisors to the ends of the row, mm
    """
    length = sum(widths) + sum(between)
    width = fitted_width(length, depth)
    lengths = _lengths(depth / width) * width
    gaps = np.concatenate(([0.0], np.cumsum(between))) if between else np.zeros(1)
    middles = np.cumsum(widths) - np.array(widths) / 2 + gaps
    angles = np.interp(middles, lengths, _ANGLES)
    return _measured(angles, width, depth)


def _measured(angles: NDArray[np.float64], width: float, depth: float) -> ArchLine:
    cosine, sine = np.cos(angles), np.sin(angles)
    points = np.stack((width / 2 * sine, depth * cosine**_EXPONENT), axis=1)
    along = np.stack((width / 2 * cosine, -_EXPONENT * depth * cosine ** (_EXPONENT - 1) * sine), axis=1)
    along /= np.linalg.norm(along, axis=1)[:, None]
    out = np.stack((-along[:, 1], along[:, 0]), axis=1)
    return ArchLine(
        depth,
        width,
        tuple((float(x), float(y)) for x, y in points),
        tuple(Facing(*(float(v) for v in (*o, *a))) for o, a in zip(out, along, strict=True)),
    )
