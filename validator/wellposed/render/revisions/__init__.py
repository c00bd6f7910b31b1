"""Comparisons and histories as text and as JSON."""

from wellposed.render.revisions.compared import comparison_text
from wellposed.render.revisions.followed import history_text
from wellposed.render.revisions.machine import comparison_json, history_json
from wellposed.render.revisions.setups import reviews_text, setups_text

__all__ = [
    "comparison_json",
    "comparison_text",
    "history_json",
    "history_text",
    "reviews_text",
    "setups_text",
]
