"""What a review says, for people and for programs."""

from wellposed.render.review.machine import review_json
from wellposed.render.review.text import review_text

__all__ = ["review_json", "review_text"]
