"""What a drawing of an arch shows, as plain data; made from a prescription or from a setup."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, NamedTuple

from wellposed.kinematics.arch import ArchLine

__all__ = ["ArchSaid", "ContactSaid", "Standing", "Stands", "ToothSaid"]

Standing = Literal["moves", "may", "silent", "held", "fixed", "gone", "unsaid"]
Carrying = Literal["attached", "attachable", "bare"]
AtContact = Literal["reduction", "close", "leave"]


class Stands(NamedTuple):
    """Where a tooth stands beside its place on the arch line: mm along (to the left +) and out, degrees turned.

    ``turned`` is + where the end to the patient's left goes inwards.
    """

    along: float = 0.0
    out: float = 0.0
    turned: float = 0.0


IN_LINE = Stands()


@dataclass(frozen=True, slots=True)
class ToothSaid:
    """One tooth.

    name      in words, without arch and side
    lines     what is said of it, a phrase each
    warned    what is not as asked, a phrase each
    way       the way it moves, seen from above: (along to the left +, out +), in proportion; None where it does not
    vertical  1 out of the bone, -1 into it, 0 neither
    turns     1 where its end to the patient's left goes inwards, -1 the other way, 0 neither
    today     where it stands today
    planned   where a setup puts it, None where none is drawn
    """

    tooth: str
    name: str
    width: float
    standing: Standing
    lines: tuple[str, ...] = ()
    warned: tuple[str, ...] = ()
    way: tuple[float, float] | None = None
    vertical: int = 0
    turns: int = 0
    carries: Carrying | None = None
    today: Stands = IN_LINE
    planned: Stands | None = None


@dataclass(frozen=True, slots=True)
class ContactSaid:
    """What happens between two neighbours of the row, by their places in it; ``words`` is a number or nothing."""

    first: int
    second: int
    what: AtContact
    words: str = ""


@dataclass(frozen=True, slots=True)
class ArchSaid:
    """One arch: its teeth from the patient's right, the line they stand on, what is written inside it."""

    arch: str
    line: ArchLine
    teeth: tuple[ToothSaid, ...]
    contacts: tuple[ContactSaid, ...] = ()
    notes: tuple[str, ...] = ()
