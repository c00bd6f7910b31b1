"""A setup held against its prescription, clause by clause."""

from wellposed.review.engine import review
from wellposed.review.result import Compared, MeasureLine, Reviewed, SetupReview, Span, Unasked

__all__ = ["Compared", "MeasureLine", "Reviewed", "SetupReview", "Span", "Unasked", "review"]
