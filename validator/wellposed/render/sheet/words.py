"""The short words of the drawings."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from wellposed.vocabulary.teeth import in_words

__all__ = ["SENSES", "STANDING", "short_name"]

STANDING: Mapping[str, str] = MappingProxyType(
    {
        "moves": "moves",
        "may": "may move",
        "silent": "stays where it is",
        "held": "must stay",
        "fixed": "cannot move",
        "gone": "is taken out",
        "unsaid": "the setup does not say",
    }
)
"""How a tooth stands, for the description of a drawing."""

SENSES: Mapping[tuple[str, int], str] = MappingProxyType(
    {
        ("along", 1): "mesial",
        ("along", -1): "distal",
        ("out", 1): "out",
        ("out", -1): "in",
        ("vertical", 1): "extrusion",
        ("vertical", -1): "intrusion",
        ("torque", 1): "crown out",
        ("torque", -1): "crown in",
        ("tip", 1): "crown mesial",
        ("tip", -1): "crown distal",
        ("rotation", 1): "mesial side in",
        ("rotation", -1): "distal side in",
    }
)
"""A variable in one of its senses, in as few words as tell it."""


def short_name(tooth: str) -> str:
    """``canine``, ``first premolar``: without arch and side, which the place of the label tells."""
    return in_words(tooth).split(" ", 2)[2]
