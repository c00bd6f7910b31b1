"""How wide text is, so that it can be placed without overlaps before any font is chosen.

The widths are those of DejaVu Sans, one of the widest common sans-serif faces: what fits in it fits in the others of
the stack.
"""

from __future__ import annotations

import re
from functools import cache

__all__ = ["ASCENT", "DESCENT", "LEADING", "TIE", "width", "wrapped"]

TIE = "\u00a0"
_TOGETHER = re.compile(r"(?<=\d) (?=mm|%)")

ASCENT, DESCENT = 0.93, 0.24
"""How far text reaches above and below its baseline, in ems."""
LEADING = 1.22
"""From one baseline to the next, in ems."""

_BOLD, _DIGITS = 1.27, 1.1
"""How much wider bold letters, and bold digits, are at the most."""
_WIDEST = 1.05
_ADVANCES = (
    (0.28, "'"),
    (0.29, "ijl"),
    (0.30, "IJ"),
    (0.32, " \u00a0,.·"),
    (0.34, "/:;\\|"),
    (0.37, "f-"),
    (0.41, "()[]t!"),
    (0.42, "r"),
    (0.46, '"'),
    (0.50, "*_`°"),
    (0.54, "sz?“”"),
    (0.58, "cLF"),
    (0.61, "kvxyP"),
    (0.62, "TYaoe"),
    (0.64, "ESbdghnpqu0123456789$"),
    (0.69, "KAV{}BXZ"),
    (0.70, "CR"),
    (0.78, "UHNDG&"),
    (0.82, "OQw"),
    (0.87, "M#+<=>^~≤≥±"),
)
"""Advance in ems, rounded up, and the characters that have it; every other counts as the widest."""


@cache
def _advances() -> dict[str, float]:
    return {character: advance for advance, characters in _ADVANCES for character in characters}


def width(text: str, size: float, bold: bool = False) -> float:
    """The most room a line of text takes, in the unit of ``size``, the size of its type."""
    advances = _advances()
    return size * sum(advances.get(one, _WIDEST) * (_bolder(one) if bold else 1.0) for one in text)


def _bolder(character: str) -> float:
    return _DIGITS if character.isdecimal() else _BOLD


def wrapped(text: str, size: float, room: float, bold: bool = False) -> list[str]:
    """The text in lines that fit the room, broken between words, no number parted from its unit.

    A single word may be wider than the room.
    """
    lines: list[str] = []
    for word in _TOGETHER.sub(TIE, text).split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width(longer, size, bold) <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
