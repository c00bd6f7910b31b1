"""Points as arrays: x to the patient's left, y forward, z up and square to the occlusal plane, mm."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Array: TypeAlias = NDArray[np.float64]
"""A point or a direction has shape (3,), several (n, 3), a turn (3, 3)."""

Tooth = Mapping[str, Array]
"""The points of one tooth, by landmark."""
Teeth = Mapping[str, Tooth]

UP: Array = np.array([0.0, 0.0, 1.0])


def arrays(teeth: Mapping[str, Mapping[str, Sequence[float]]]) -> dict[str, dict[str, Array]]:
    """The points of a file as arrays."""
    return {
        tooth: {landmark: np.array(point, dtype=np.float64) for landmark, point in points.items()}
        for tooth, points in teeth.items()
    }


def middle(points: Sequence[Array]) -> Array:
    """The mean of points."""
    mean: Array = np.mean(np.stack(points), axis=0)
    return mean


def distance(first: Array, second: Array) -> float:
    """How far two points are apart, mm."""
    return float(np.linalg.norm(first - second))
