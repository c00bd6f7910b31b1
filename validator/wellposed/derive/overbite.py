"""Overbite in percent and in mm: percent of the clinical crown of the most overlapped lower incisor."""

from __future__ import annotations


def percent_of(mm: float, crown_height: float) -> float:
    """The share of the lower crown that this overlap covers, percent; negative for an open bite.

    ValueError where the crown height, mm, is not more than 0.
    """
    return 100 * mm / _crown(crown_height)


def mm_of(percent: float, crown_height: float) -> float:
    """The overlap, mm, that covers this share of the lower crown. ValueError as ``percent_of``."""
    return percent * _crown(crown_height) / 100


def _crown(height: float) -> float:
    if height <= 0:
        raise ValueError("a crown height must be more than 0 mm")
    return height
