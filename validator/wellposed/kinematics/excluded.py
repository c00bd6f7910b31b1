"""What an exclusion forbids: the movements a means would have been used for."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.openings import Sensed, sensed
from wellposed.model.means import Exclusion
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.teeth import arch_of, is_incisor, is_molar

SENSES: dict[str, tuple[Variable, int]] = {
    "incisor-advance": ("out", 1),
    "incisor-retraction": ("out", -1),
    "widening": ("out", 1),
    "narrowing": ("out", -1),
    "distal-movement": ("along", -1),
    "mesial-movement": ("along", 1),
    "intrusion": ("vertical", -1),
    "extrusion": ("vertical", 1),
}


def excluded_senses(mouth: Mouth, item: Exclusion) -> Iterator[Sensed]:
    """The sensed variables an excluded means would have moved."""
    if item.means not in SENSES:
        return
    variable, sign = SENSES[item.means]
    for row in mouth.rows.values():
        for tooth in row.teeth:
            named = tooth in item.teeth if item.teeth is not None else item.arch in (None, row.arch)
            if named and (item.teeth is not None or _meant(item.means, tooth)):
                yield sensed(tooth, variable, sign)


def excludes_contact(item: Exclusion, contact: str) -> bool:
    """Whether an excluded reduction covers a contact."""
    teeth = teeth_of(contact)
    if item.teeth is not None:
        return any(tooth in item.teeth for tooth in teeth)
    return item.arch in (None, arch_of(teeth[0]))


def _meant(means: str, tooth: str) -> bool:
    if means.startswith("incisor"):
        return is_incisor(tooth)
    if means in ("widening", "narrowing"):
        return not is_incisor(tooth)
    return is_molar(tooth) if means in ("distal-movement", "mesial-movement") else True
