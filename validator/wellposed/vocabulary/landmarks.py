"""Landmarks: places on a tooth that can be found again, and which teeth have which.

=============== =====================================================================================
landmark        place
=============== =====================================================================================
mesial-contact  where the tooth touches its neighbour on the mesial side, or would
distal-contact  the same on the distal side
edge            middle of the incisal edge, of an incisor
cusp            cusp tip of a canine; buccal cusp tip of a premolar; mesiobuccal cusp tip of a molar
gum             lowest point of the gum margin on the labial or buccal side, in the middle of the crown
groove          outer end of the buccal groove between the two foremost buccal cusps, of a lower first molar
root            any point on the long axis towards the root; the apex, where it is known
=============== =====================================================================================
"""

from __future__ import annotations

from functools import cache
from typing import Final, Literal, get_args

from wellposed.vocabulary.teeth import LOWER, arch_of, is_incisor, is_molar, position

Landmark = Literal["mesial-contact", "distal-contact", "edge", "cusp", "gum", "groove", "root"]
Moment = Literal["before", "after"]

LANDMARKS: Final[tuple[Landmark, ...]] = get_args(Landmark)
MOMENTS: Final[tuple[Moment, ...]] = get_args(Moment)
BOTH: Final = "both"
"""In a file: a point that is the same before and after."""

FACE: Final = "face"
MIDLINE: Final = "midline"
"""A point on the facial midline, the one landmark that is of the face and of no tooth."""

MESIAL: Final = "mesial-contact"
DISTAL: Final = "distal-contact"
GUM: Final = "gum"
GROOVE: Final = "groove"
ROOT: Final = "root"


@cache
def crown_point(tooth: str) -> Landmark:
    """The landmark at which movements of a tooth are taken: ``edge`` of an incisor, ``cusp`` of any other."""
    return "edge" if is_incisor(tooth) else "cusp"


@cache
def landmarks_of(tooth: str) -> tuple[Landmark, ...]:
    """The landmarks that a tooth can have."""
    first_molar = is_molar(tooth) and position(tooth) == 6 and arch_of(tooth) == LOWER
    groove: tuple[Landmark, ...] = ("groove",) if first_molar else ()
    return ("mesial-contact", "distal-contact", crown_point(tooth), "gum", *groove, "root")
