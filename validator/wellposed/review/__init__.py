"""A setup held against its prescription, clause by clause."""

from __future__ import annotations

from typing import TYPE_CHECKING

from wellposed.review.result import Compared, MeasureLine, Reviewed, SetupReview, Span, Unasked

if TYPE_CHECKING:
    from wellposed.model.prescription import Prescription
    from wellposed.model.setup import Setup
    from wellposed.norms import Norms

__all__ = ["Compared", "MeasureLine", "Reviewed", "SetupReview", "Span", "Unasked", "review"]


def review(prescription: Prescription, setup: Setup, numbers: Norms | None = None) -> SetupReview:
    """Hold a setup against the prescription it answers. Both must be sound by themselves.

    numbers  norms with a practice profile in place; the published ones by default
    """
    from wellposed.review.engine import review as held_against  # noqa: PLC0415 - its rules are listed without the solver

    return held_against(prescription, setup, numbers)
