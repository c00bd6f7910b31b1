"""How the members of a prescription's system are named."""

from __future__ import annotations

from functools import cache

from wellposed.kinematics.rows import Key


def clause(clause_id: str, part: str) -> Key:
    """A part of a clause: floor, ceiling, align, close, leave, keep, hold, exclude, per-contact, in-all, aligners."""
    return ("clause", clause_id, part)


@cache
def silence(arch: str, group: str) -> Key:
    """What is not mentioned in an arch (``both`` for the gap at the back)."""
    return ("silence", arch, group)


def state(tooth: str, part: str = "still") -> Key:
    """What the state of a tooth fixes."""
    return ("state", tooth, part)


def space(arch: str) -> Key:
    """The question whether new space is left in an arch."""
    return ("space", arch)


@cache
def practice(norm: str, place: str) -> Key:
    """A practice limit at a tooth, contact, pair or arch."""
    return ("practice", norm, place)
