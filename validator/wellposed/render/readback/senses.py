"""Motions in the trade's words, the sense of each spelt out beside it, so that none can be taken for its opposite."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from wellposed.render.readback.words import teeth
from wellposed.render.words import MOTION_VERBS
from wellposed.vocabulary.motions import MOTIONS, Motion, Variable

__all__ = ["BOTH_WAYS", "ONE_WAY", "motion_noun", "moved"]

SENSES: Mapping[tuple[str, int], str] = MappingProxyType(
    {
        ("along", 1): "along the arch, towards its middle",
        ("along", -1): "along the arch, away from its middle",
        ("out", 1): "outwards, away from the tongue",
        ("out", -1): "inwards, towards the tongue",
        ("vertical", 1): "out of the bone",
        ("vertical", -1): "into the bone",
        ("torque", 1): "crown outwards, root inwards",
        ("torque", -1): "crown inwards, root outwards",
        ("tip", 1): "crown towards the middle of the arch",
        ("tip", -1): "crown away from the middle of the arch",
        ("rotation", 1): "mesial side towards the tongue",
        ("rotation", -1): "distal side towards the tongue",
    }
)
BOTH_WAYS: Mapping[Variable, str] = MappingProxyType(
    {
        "along": "movement along the arch (mesial or distal)",
        "out": "movement in or out (towards the tongue or away from it)",
        "vertical": "movement up or down (into or out of the bone)",
        "torque": "torque (crown inwards or outwards)",
        "tip": "tip (crown mesial or distal)",
        "rotation": "rotation (either way)",
    }
)
"""A variable in both its senses."""

_SENSE_NOUNS = {
    ("along", 1): "mesial movement",
    ("along", -1): "distal movement",
    ("out", 1): "movement out",
    ("out", -1): "movement in",
    ("vertical", 1): "extrusion",
    ("vertical", -1): "intrusion",
}
ONE_WAY: Mapping[tuple[str, int], str] = MappingProxyType(
    {at: f"{_SENSE_NOUNS.get(at, at[0])} ({words})" for at, words in SENSES.items()}
)
"""A variable in one of its senses."""


def moved(motion: Motion, listed: Iterable[str]) -> str:
    """``intrude (into the bone) 11 (…)``, ``move 16 (…) distally (along the arch, away from its middle)``."""
    sense, verb = MOTIONS[motion], MOTION_VERBS[motion]
    if sense.variable == "vertical":
        return verb.format(f"({SENSES[sense]}) {teeth(listed)}")
    told = verb.format(teeth(listed))
    return told if sense.variable == "rotation" else f"{told} ({SENSES[sense]})"


def motion_noun(motion: Motion) -> str:
    """``intrusion (into the bone)``, ``distal movement (along the arch, away from its middle)``."""
    sense = MOTIONS[motion]
    movement = " movement" if sense.variable in ("along", "out") else ""
    return f"{motion.replace('-', ' ')}{movement} ({SENSES[sense]})"
