"""Teeth by their ISO 3950 numbers: arches, sides, order along the arch, names in words."""

from __future__ import annotations

from functools import cache

UPPER = "upper"
LOWER = "lower"
ARCHES = (UPPER, LOWER)
RIGHT = "right"
LEFT = "left"
SIDES = (RIGHT, LEFT)

_PERMANENT = {1: (UPPER, RIGHT), 2: (UPPER, LEFT), 3: (LOWER, LEFT), 4: (LOWER, RIGHT)}
_PRIMARY = {5: (UPPER, RIGHT), 6: (UPPER, LEFT), 7: (LOWER, LEFT), 8: (LOWER, RIGHT)}
_QUADRANTS = _PERMANENT | _PRIMARY

PERMANENT_TEETH = tuple(f"{quadrant}{position}" for quadrant in _PERMANENT for position in range(1, 9))
PRIMARY_TEETH = tuple(f"{quadrant}{position}" for quadrant in _PRIMARY for position in range(1, 6))
TEETH = PERMANENT_TEETH + PRIMARY_TEETH

_PERMANENT_NAMES = (
    "central incisor",
    "lateral incisor",
    "canine",
    "first premolar",
    "second premolar",
    "first molar",
    "second molar",
    "third molar",
)
_PRIMARY_NAMES = (
    "primary central incisor",
    "primary lateral incisor",
    "primary canine",
    "first primary molar",
    "second primary molar",
)


@cache
def arch_of(tooth: str) -> str:
    """``upper`` or ``lower``."""
    return _QUADRANTS[int(tooth[0])][0]


@cache
def side_of(tooth: str) -> str:
    """The patient's ``right`` or ``left``."""
    return _QUADRANTS[int(tooth[0])][1]


@cache
def position(tooth: str) -> int:
    """1 for a central incisor to 8 for a third molar."""
    return int(tooth[1])


@cache
def is_primary(tooth: str) -> bool:
    """Whether the number is that of a primary tooth."""
    return int(tooth[0]) in _PRIMARY


@cache
def is_incisor(tooth: str) -> bool:
    """Central or lateral incisor, permanent or primary."""
    return position(tooth) <= 2


@cache
def is_canine(tooth: str) -> bool:
    """Canine, permanent or primary."""
    return position(tooth) == 3


@cache
def is_premolar(tooth: str) -> bool:
    """First or second permanent premolar."""
    return position(tooth) in (4, 5) and not is_primary(tooth)


@cache
def is_molar(tooth: str) -> bool:
    """A permanent molar. Primary molars stand where premolars will, and count as those do."""
    return position(tooth) >= 6


@cache
def place(tooth: str) -> int:
    """Where the tooth stands along its arch: -8 at the patient's right end to 8 at the left."""
    return -position(tooth) if side_of(tooth) == RIGHT else position(tooth)


def along_arch(teeth: tuple[str, ...] | list[str]) -> tuple[str, ...]:
    """The teeth of one arch from the patient's right to left."""
    return tuple(sorted(teeth, key=lambda tooth: (place(tooth), tooth)))


@cache
def tooth_at(arch: str, side: str, number: int) -> str:
    """The permanent tooth ``number`` (1 to 8) of a side of an arch."""
    quadrant = next(key for key, where in _PERMANENT.items() if where == (arch, side))
    return f"{quadrant}{number}"


def mirrored(tooth: str) -> str:
    """The same tooth of the other side."""
    other = {1: 2, 2: 1, 3: 4, 4: 3, 5: 6, 6: 5, 7: 8, 8: 7}
    return f"{other[int(tooth[0])]}{tooth[1]}"


def in_words(tooth: str) -> str:
    """``"upper right canine"`` for ``"13"``."""
    arch, side = _QUADRANTS[int(tooth[0])]
    names = _PRIMARY_NAMES if is_primary(tooth) else _PERMANENT_NAMES
    return f"{arch} {side} {names[position(tooth) - 1]}"
