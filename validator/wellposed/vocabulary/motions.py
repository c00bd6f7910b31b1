"""Tooth movements: six variables a tooth, and the trade's names for their senses.

All at the crown (middle of the incisal edge, or buccal cusp tip), in the occlusal frame of the tooth's own jaw.

========== ==== ==================================
variable   unit positive sense
========== ==== ==================================
along      mm   mesial, along the arch
out        mm   labial or buccal
vertical   mm   extrusion
torque     deg  labial or buccal crown
tip        deg  mesial crown
rotation   deg  mesial surface towards the tongue
========== ==== ==================================
"""

from __future__ import annotations

from typing import Literal, NamedTuple

from wellposed.vocabulary.units import DEG, MM

Variable = Literal["along", "out", "vertical", "torque", "tip", "rotation"]

VARIABLES: tuple[Variable, ...] = ("along", "out", "vertical", "torque", "tip", "rotation")
VARIABLE_UNITS = {"along": MM, "out": MM, "vertical": MM, "torque": DEG, "tip": DEG, "rotation": DEG}

Motion = Literal[
    "mesial",
    "distal",
    "labial",
    "buccal",
    "lingual",
    "palatal",
    "extrusion",
    "intrusion",
    "labial-crown-torque",
    "buccal-crown-torque",
    "lingual-crown-torque",
    "palatal-crown-torque",
    "labial-root-torque",
    "buccal-root-torque",
    "lingual-root-torque",
    "palatal-root-torque",
    "mesial-crown-tip",
    "distal-crown-tip",
    "mesiolingual-rotation",
    "distolingual-rotation",
]


class Sense(NamedTuple):
    """A motion as a variable and a sign."""

    variable: Variable
    sign: int


MOTIONS: dict[Motion, Sense] = {
    "mesial": Sense("along", 1),
    "distal": Sense("along", -1),
    "labial": Sense("out", 1),
    "buccal": Sense("out", 1),
    "lingual": Sense("out", -1),
    "palatal": Sense("out", -1),
    "extrusion": Sense("vertical", 1),
    "intrusion": Sense("vertical", -1),
    "labial-crown-torque": Sense("torque", 1),
    "buccal-crown-torque": Sense("torque", 1),
    "lingual-crown-torque": Sense("torque", -1),
    "palatal-crown-torque": Sense("torque", -1),
    "labial-root-torque": Sense("torque", -1),
    "buccal-root-torque": Sense("torque", -1),
    "lingual-root-torque": Sense("torque", 1),
    "palatal-root-torque": Sense("torque", 1),
    "mesial-crown-tip": Sense("tip", 1),
    "distal-crown-tip": Sense("tip", -1),
    "mesiolingual-rotation": Sense("rotation", 1),
    "distolingual-rotation": Sense("rotation", -1),
}


def unit_of(motion: Motion) -> str:
    """The unit a motion is measured in."""
    return VARIABLE_UNITS[MOTIONS[motion].variable]
