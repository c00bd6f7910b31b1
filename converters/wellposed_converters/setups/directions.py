"""Which way a number points: words of the trade, and what they come to for a tooth.

The senses of the six variables are those of ``wellposed.vocabulary.motions``. Left and right are the patient's.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final, Literal, get_args

from wellposed.vocabulary.motions import MOTIONS, Motion, Variable
from wellposed.vocabulary.teeth import LEFT, UPPER, arch_of, position, side_of

ByPlace = Literal[
    "left",
    "right",
    "forward",
    "backward",
    "up",
    "down",
    "crown-left",
    "crown-right",
    "crown-forward",
    "crown-backward",
    "clockwise-on-the-biting-surface",
    "counterclockwise-on-the-biting-surface",
    "clockwise-from-above",
    "counterclockwise-from-above",
    "clockwise-from-outside",
    "counterclockwise-from-outside",
]
Direction = Motion | ByPlace
BY_PLACE: Final[tuple[str, ...]] = get_args(ByPlace)
CANINE: Final = 3


def sign_of(direction: str, variable: Variable, tooth: str) -> int | None:
    """+1 where the direction is the positive sense of this tooth's variable, -1 where it is the negative one.

    None where it is no direction of that variable at this tooth: an incisor's ``out`` is neither left nor right.
    """
    if direction in MOTIONS:
        sense = MOTIONS[direction]
        return sense.sign if sense.variable == variable else None
    turned, opposite = _plain(direction)
    rule = _RULES.get((turned, variable))
    sign = rule(tooth) if rule else 0
    return (-sign if opposite else sign) or None


def fits(direction: str, variable: Variable) -> bool:
    """Whether it can be a direction of this variable at some tooth."""
    if direction in MOTIONS:
        return MOTIONS[direction].variable == variable
    return (_plain(direction)[0], variable) in _RULES


_OPPOSITES: Final[Mapping[str, str]] = {
    "right": "left",
    "backward": "forward",
    "down": "up",
    "crown-right": "crown-left",
    "crown-backward": "crown-forward",
    **{name: name.removeprefix("counter") for name in BY_PLACE if name.startswith("counter")},
}


def _plain(direction: str) -> tuple[str, bool]:
    return _OPPOSITES.get(direction, direction), direction in _OPPOSITES


def _to_the_left(tooth: str) -> int:
    """Mesial of a tooth of the right side is towards the left."""
    return -1 if side_of(tooth) == LEFT else 1


def _outwards_left(tooth: str) -> int:
    """Outwards is sideways from the canine on."""
    return -_to_the_left(tooth) if position(tooth) >= CANINE else 0


def _outwards_forward(tooth: str) -> int:
    """Outwards is forward up to the canine."""
    return 1 if position(tooth) <= CANINE else 0


def _mesially_forward(tooth: str) -> int:
    """Mesial is forward from the canine on."""
    return 1 if position(tooth) >= CANINE else 0


def _upwards(tooth: str) -> int:
    """An upper tooth that goes up goes into the bone."""
    return -1 if arch_of(tooth) == UPPER else 1


def _from_above(tooth: str) -> int:
    """The patient faces up the page, right is right. A right tooth's mesial surface goes to the tongue
    counterclockwise: from north by west, or from west by south."""
    return 1 if side_of(tooth) == LEFT else -1


def _on_the_biting_surface(tooth: str) -> int:
    """The biting surface of a lower tooth is seen from above, that of an upper one from below; not in a mirror."""
    return -_from_above(tooth) if arch_of(tooth) == UPPER else _from_above(tooth)


def _from_outside(tooth: str) -> int:
    """Seen from the cheek or lip a right tooth's mesial is at the viewer's right; an upper crown hangs down."""
    return -_to_the_left(tooth) if arch_of(tooth) == UPPER else _to_the_left(tooth)


_RULES: Final[Mapping[tuple[str, str], Callable[[str], int]]] = {
    ("left", "along"): _to_the_left,
    ("left", "out"): _outwards_left,
    ("forward", "along"): _mesially_forward,
    ("forward", "out"): _outwards_forward,
    ("up", "vertical"): _upwards,
    ("crown-left", "tip"): _to_the_left,
    ("crown-left", "torque"): _outwards_left,
    ("crown-forward", "tip"): _mesially_forward,
    ("crown-forward", "torque"): _outwards_forward,
    ("clockwise-on-the-biting-surface", "rotation"): _on_the_biting_surface,
    ("clockwise-from-above", "rotation"): _from_above,
    ("clockwise-from-outside", "tip"): _from_outside,
}
