"""Proportions of the crowns of upper front teeth: width to height, and whether a central counts as long or short."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from wellposed import norms
from wellposed.kinematics.measured import Measured
from wellposed.model.prescription import Prescription

TEETH = ("13", "12", "11", "21", "22", "23")
CENTRALS = ("11", "21")


@dataclass(frozen=True, slots=True)
class Crown:
    """One crown.

    width, height  mesiodistal and clinical, mm
    ratio          width to height
    """

    tooth: str
    width: float
    height: float
    ratio: float

    @property
    def long(self) -> bool:
        """Whether an upper central counts as long by the working rule; never of another tooth."""
        high, narrow = norms.value("crown.long.height"), norms.value("crown.long.ratio")
        return self.tooth in CENTRALS and (self.height > high or self.ratio < narrow)

    @property
    def short(self) -> bool:
        """Whether an upper central counts as short by the working rule; never of another tooth."""
        low, wide = norms.value("crown.short.height"), norms.value("crown.short.ratio")
        return self.tooth in CENTRALS and (self.height < low or self.ratio > wide)


def crown(tooth: str, width: float, height: float) -> Crown:
    """The proportions of a crown, from mm. ValueError where the height is not more than 0."""
    if height <= 0:
        raise ValueError("a crown height must be more than 0 mm")
    return Crown(tooth, width, height, width / height)


def crowns(prescription: Prescription) -> Iterator[Crown]:
    """Each upper front crown whose width and height are both measured and more than 0."""
    measured = Measured(prescription)
    widths, heights = measured.tooth_values("tooth-width"), measured.tooth_values("crown-height")
    for tooth in TEETH:
        if min(widths.get(tooth, 0.0), heights.get(tooth, 0.0)) > 0:
            yield crown(tooth, widths[tooth], heights[tooth])
