"""What the sign of a measure's value, or of its change, means in words."""

from __future__ import annotations

from typing import NamedTuple

__all__ = ["direction", "meaning", "sided"]


class Signs(NamedTuple):
    """What a value above, below and at 0 means, and what a change up or down is; "" where the number says it all."""

    above: str = ""
    below: str = ""
    nought: str = ""
    up: str = "more"
    down: str = "less"


_LEFT, _RIGHT = "to the patient's left", "to the patient's right"
_PLAIN = Signs()
_SIGNS = {
    "overbite": Signs("", "an open bite", "edge to edge"),
    "overjet": Signs("", "lower incisors in front of the upper", "edge to edge"),
    "midline": Signs(f"{_LEFT} of the face", f"{_RIGHT} of the face", "in the middle of the face", _LEFT, _RIGHT),
    "relation": Signs("towards Class II", "towards Class III", "Class I", "towards Class II", "towards Class III"),
    "transverse-overlap": Signs("upper tooth outside the lower", "upper tooth inside the lower, a crossbite"),
    "gingival-display": Signs("gum is seen", "the lip hides part of the tooth"),
    "rotation": Signs("mesial side towards the tongue", "distal side towards the tongue"),
    "displacement": Signs("outwards, away from the tongue", "inwards, towards the tongue"),
}


def meaning(name: str, value: float) -> str:
    """What a value of a measure means by its sign: ``an open bite``; "" where the number says it all."""
    signs = _signs(name)
    return signs.above if value > 0 else signs.below if value < 0 else signs.nought


def direction(name: str, value: float) -> str:
    """Which way a change of a measure goes: ``more``, ``to the patient's left``; "" for none."""
    signs = _signs(name)
    return signs.up if value > 0 else signs.down if value < 0 else ""


def sided(name: str) -> bool:
    """Whether its values lie to two sides, such as left and right, rather than being more or less."""
    return _signs(name).up != _PLAIN.up


def _signs(name: str) -> Signs:
    return next((signs for part, signs in _SIGNS.items() if part in name), _PLAIN)
