"""Text among other text: the room a line takes, and the first place where it lies on no other."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from wellposed.render.sheet.drawing import TEXT, Point
from wellposed.render.sheet.metrics import ASCENT, DESCENT, width

__all__ = ["Room", "first_free", "room_of"]

_APART = 0.15


class Room(NamedTuple):
    """A rectangle of the page, mm."""

    left: float
    top: float
    right: float
    foot: float

    def meets(self, other: Room) -> bool:
        """Whether the two lie on each other, or all but."""
        across = self.left < other.right + _APART and other.left < self.right + _APART
        return across and self.top < other.foot + _APART and other.top < self.foot + _APART

    def moved(self, by: Point) -> Room:
        """The same elsewhere."""
        return Room(self.left + by.x, self.top + by.y, self.right + by.x, self.foot + by.y)


def room_of(middle: Point, words: str, size: float = TEXT, bold: bool = False) -> Room:
    """The room of a line of text whose digits are centred on a place, as ``Drawing.middled`` writes it."""
    half, baseline = width(words, size, bold) / 2, middle.y + size * 0.36
    return Room(middle.x - half, baseline - ASCENT * size, middle.x + half, baseline + DESCENT * size)


def first_free(room: Room, ways: Iterable[Point], taken: list[Room]) -> Point:
    """The first of the ways on which the room meets nothing taken, which it then is; none of them free: the last."""
    way = Point(0.0, 0.0)
    for way in ways:
        if not any(room.moved(way).meets(other) for other in taken):
            break
    taken.append(room.moved(way))
    return way
