"""The geometry of a dental arch: where teeth stand on it, and how far out and along they face.

The arch line is the beta function of Braun et al. 1998 (Angle Orthod 68:29-36),
y = 3.0314 D [(1/2 + x/W)(1/2 - x/W)]^0.8, written with an angle: x = W/2 sin a, y = D cos(a)^1.6.
x points to the patient's left, y forward; both in mm.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, lru_cache
from math import cos, hypot, sin
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

_EXPONENT = 1.6
_LEAST_LENGTH = 0.3
_DIGITS = 10
"""The two sides of an arch are alike to this many decimals, whatever the rounding on the way."""


class _Curve:
    """The curve at 601 angles; numpy is loaded when a line is first drawn, not by those who only read the rules."""

    def __init__(self) -> None:
        import numpy as np  # noqa: PLC0415

        self.angles = np.linspace(-np.pi / 2, np.pi / 2, 601)
        self.run_squared = np.diff(np.sin(self.angles) / 2) ** 2
        self.rise_step = np.diff(np.cos(self.angles).clip(0) ** _EXPONENT)
        self.np = np

    def lengths(self, depth_to_width: float) -> NDArray[np.float64]:
        """Arc length from the right end at each angle, for an arch of width 1."""
        steps = self.np.sqrt(self.run_squared + (depth_to_width * self.rise_step) ** 2)
        return self.np.concatenate(([0.0], self.np.cumsum(steps)))

    def angles_at(self, reached: list[float], width: float, depth: float) -> NDArray[np.float64]:
        """The angles at which the arch has these lengths from its right end, mm."""
        return self.np.interp(reached, self.lengths(depth / width) * width, self.angles)


@cache
def _curve() -> _Curve:
    return _Curve()


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
        length = (x * x + y * y) ** 0.5 or 1.0  # on one spot there is no direction, and no room to gain
        a, b = self.facings[first], self.facings[second]
        loses, gains = (a.out_x * x + a.out_y * y) / length, (b.out_x * x + b.out_y * y) / length
        return round(loses, _DIGITS), round(gains, _DIGITS)


@lru_cache(maxsize=256)
def _width_to_length(depth_to_length: float) -> float:
    """Width of an arch of length 1 and this depth, by the secant method kept between bounds."""
    low, high, width, before = 1e-6, 1.0, 0.8 * (1 - depth_to_length), None
    for _ in range(60):
        excess = width * float(_curve().lengths(depth_to_length / width)[-1]) - 1
        if abs(excess) < 1e-12:
            break
        low, high = (low, width) if excess > 0 else (width, high)
        slope = 0.6 if before is None else (excess - before[1]) / (width - before[0])
        before = width, excess
        width = width - excess / slope if slope else (low + high) / 2
        if not low < width < high:
            width = (low + high) / 2
    return width


def fitted_width(length: float, depth: float) -> float:
    """The width at which an arch of this depth is ``length`` long, all in mm. The depth must be under half of it."""
    return length * _width_to_length(round(depth / length, 12))


def arch_length(widths: tuple[float, ...], between: tuple[float, ...]) -> float:
    """Length of the arch line, mm; crowding cannot take more than the better part of it."""
    return max(sum(widths) + sum(between), _LEAST_LENGTH * sum(widths))


@lru_cache(maxsize=256)
def arch_line(widths: tuple[float, ...], between: tuple[float, ...], depth: float) -> ArchLine:
    """Teeth of these widths on an arch of this depth, from the patient's right to left.

    widths   mesiodistal, mm
    between  per neighbouring pair, space (+) or crowding (-), mm
    depth    from the incisors to the ends of the row, mm
    """
    if not widths:
        return ArchLine(0.0, 0.0, (), ())
    width = fitted_width(arch_length(widths, between), depth)
    angles = _curve().angles_at(_middles(widths, between), width, depth)
    stands = [_stand(float(angle), width, depth) for angle in angles]
    return ArchLine(depth, width, tuple(point for point, _ in stands), tuple(facing for _, facing in stands))


def slid_line(
    widths: tuple[float, ...], between: tuple[float, ...], depth: float, slides: tuple[float, ...]
) -> ArchLine:
    """The same teeth, each moved along the line by ``slides``, mm, from the patient's right to left +.

    Beyond its ends the line goes on straight.
    """
    if not any(slides):
        return arch_line(widths, between, depth)
    length = arch_length(widths, between)
    width = fitted_width(length, depth)
    places = [middle + slide for middle, slide in zip(_middles(widths, between), slides, strict=True)]
    angles = _curve().angles_at([min(max(place, 0.0), length) for place in places], width, depth)
    stands = []
    for place, angle in zip(places, angles, strict=True):
        (x, y), facing = _stand(float(angle), width, depth)
        beyond = min(place, 0.0) + max(place - length, 0.0)
        stands.append(((x + beyond * facing.along_x, y + beyond * facing.along_y), facing))
    return ArchLine(depth, width, tuple(point for point, _ in stands), tuple(facing for _, facing in stands))


def _middles(widths: tuple[float, ...], between: tuple[float, ...]) -> list[float]:
    """Where the middle of each tooth stands along the line, from its right end, mm."""
    middles, reached = [], 0.0
    for size, gap in zip(widths, (*between, 0.0), strict=True):
        middles.append(reached + size / 2)
        reached += size + gap
    return middles


def _stand(angle: float, width: float, depth: float) -> tuple[tuple[float, float], Facing]:
    """Where a tooth stands at an angle of the arch, and how it faces."""
    cosine, sine = cos(angle), sin(angle)
    point = (width / 2 * sine, depth * cosine**_EXPONENT)
    x, y = width / 2 * cosine, -_EXPONENT * depth * cosine ** (_EXPONENT - 1) * sine
    size = hypot(x, y)
    x, y = x / size, y / size
    x, y = round(x, _DIGITS), round(y, _DIGITS)
    return point, Facing(-y, x, x, y)
