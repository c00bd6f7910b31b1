"""Tooth numberings read into ISO 3950 numbers, and where a tooth stands in the mouth.

A tooth is a number of two digits: quadrant (1 to 4, primary teeth 5 to 8) and position (1 to 8, primary 1 to 5).
Every conversion answers with None where the numbering has no such tooth.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

UPPER: Final = "upper"
LOWER: Final = "lower"
BOTH: Final = "both"
RIGHT: Final = "right"
LEFT: Final = "left"
ARCHES: Final = (UPPER, LOWER)

LAST: Final = 8
"""The last position of a quadrant."""
LAST_PRIMARY: Final = 5
LAST_UNIVERSAL: Final = 32

QUADRANTS: Final = {(UPPER, RIGHT): 1, (UPPER, LEFT): 2, (LOWER, LEFT): 3, (LOWER, RIGHT): 4}
CORNERS: Final = {"ur": (UPPER, RIGHT), "ul": (UPPER, LEFT), "ll": (LOWER, LEFT), "lr": (LOWER, RIGHT)}
PRIMARY: Final = 4
"""What is added to a quadrant's number for its primary teeth."""

_ROUND: Final = (*range(18, 10, -1), *range(21, 29), *range(38, 30, -1), *range(41, 49))
_ROUND_PRIMARY: Final = (*range(55, 50, -1), *range(61, 66), *range(75, 70, -1), *range(81, 86))
_LETTERS: Final = "abcdefghijklmnopqrst"
_PRIMARY_LETTERS: Final = "abcde"

PALMER_RIGHT: Final = {"⏌": UPPER, "┘": UPPER, "⏋": LOWER, "┐": LOWER}
"""Signs of the right side stand after their digits."""
PALMER_LEFT: Final = {"⎿": UPPER, "└": UPPER, "⎾": LOWER, "┌": LOWER}
"""Signs of the left side stand before their digits."""
PALMER_CROSS: Final = {"⏊": UPPER, "┴": UPPER, "⏉": LOWER, "┬": LOWER, "┼": None, "|": None}
"""Signs between the digits of both sides; the arch they name, None where it must be said."""


def tooth(arch: str, side: str, position: int, *, primary: bool = False) -> int | None:
    """The tooth of a position counted from the midline."""
    if not 1 <= position <= (LAST_PRIMARY if primary else LAST):
        return None
    return (QUADRANTS[arch, side] + (PRIMARY if primary else 0)) * 10 + position


def from_fdi(number: int) -> int | None:
    """The number itself, if ISO 3950 has it."""
    quadrant, position = divmod(number, 10)
    primary = quadrant > PRIMARY
    return number if 1 <= quadrant <= 2 * PRIMARY and 1 <= position <= (LAST_PRIMARY if primary else LAST) else None


def from_universal(number: int) -> int | None:
    """1 is the upper right third molar; the count runs round the upper arch and back round the lower."""
    return _ROUND[number - 1] if 1 <= number <= LAST_UNIVERSAL else None


def from_universal_letter(letter: str) -> int | None:
    """A is the upper right second primary molar."""
    at = _LETTERS.find(letter.lower()) if len(letter) == 1 else -1
    return _ROUND_PRIMARY[at] if at >= 0 else None


def from_corner(corner: str, name: str) -> int | None:
    """``UR``, ``UL``, ``LL`` or ``LR`` with a digit, or with a letter A to E for a primary tooth."""
    arch, side = CORNERS[corner.lower()]
    if name.isdecimal():
        return tooth(arch, side, int(name))
    at = _PRIMARY_LETTERS.find(name.lower()) if len(name) == 1 else -1
    return tooth(arch, side, at + 1, primary=True)


def from_palmer(sign: str, name: str) -> int | None:
    """A corner sign with a digit, or with a letter A to E for a primary tooth."""
    arch, side = (PALMER_RIGHT[sign], RIGHT) if sign in PALMER_RIGHT else (PALMER_LEFT[sign], LEFT)
    return from_corner(("u" if arch == UPPER else "l") + ("r" if side == RIGHT else "l"), name)


def from_haderup(number: str, sign: str, *, sign_first: bool) -> int | None:
    """The sign stands on the midline's side of the digit, + above and - below; a zero before a primary tooth."""
    arch, side = UPPER if sign == "+" else LOWER, LEFT if sign_first else RIGHT
    return tooth(arch, side, int(number), primary=number.startswith("0"))


def arch_of(number: int) -> str:
    """``upper`` or ``lower``."""
    return UPPER if (number // 10 - 1) % PRIMARY in (0, 1) else LOWER


def side_of(number: int) -> str:
    """The patient's ``right`` or ``left``."""
    return RIGHT if (number // 10 - 1) % PRIMARY in (0, 3) else LEFT


def is_primary(number: int) -> bool:
    """Whether it is a primary tooth."""
    return number // 10 > PRIMARY


def place(number: int) -> int:
    """Where a tooth stands along its arch, -8 at the patient's right end to 8 at the left."""
    return -(number % 10) if side_of(number) == RIGHT else number % 10


def _order(number: int) -> tuple[int, int, int]:
    return ARCHES.index(arch_of(number)), place(number), number


def in_mouth_order(teeth: Iterable[int]) -> tuple[int, ...]:
    """The teeth once each, from upper right to upper left, then from lower right to lower left."""
    return tuple(sorted(set(teeth), key=_order))


def neighbours(first: int, second: int) -> bool:
    """Whether the two stand side by side in one arch, primary teeth in the places of their successors."""
    low, high = sorted((place(first), place(second)))
    return arch_of(first) == arch_of(second) and high - low == (2 if (low, high) == (-1, 1) else 1)


def opposed(first: int, second: int) -> bool:
    """Whether the two bite on each other: same side and position, different arches."""
    return arch_of(first) != arch_of(second) and place(first) == place(second)


def segment(first: int, second: int) -> tuple[int, ...] | None:
    """All teeth from one to the other; None across arches, or between a primary and a permanent tooth."""
    if arch_of(first) != arch_of(second) or is_primary(first) != is_primary(second):
        return None
    low, high = sorted((place(first), place(second)))
    standing = (at for at in range(low, high + 1) if at)
    named = (tooth(arch_of(first), RIGHT if at < 0 else LEFT, abs(at), primary=is_primary(first)) for at in standing)
    return tuple(number for number in named if number)


def beside(number: int, surface: str) -> int | None:
    """The neighbour on the mesial or distal side, of the same dentition; None behind the last tooth."""
    position = number % 10 + (1 if surface == "distal" else -1)
    if position:
        return tooth(arch_of(number), side_of(number), position, primary=is_primary(number))
    return tooth(arch_of(number), LEFT if side_of(number) == RIGHT else RIGHT, 1, primary=is_primary(number))
