"""The header of a table of landmark points: whether it tells moments, and which way each coordinate runs."""

from __future__ import annotations

from typing import Final, NamedTuple

AXES: Final = ("left", "forward", "up")
"""Ours: to the patient's left, forward, up and square to the occlusal plane. They are left-handed."""
OPPOSITE: Final = {"right": "left", "back": "forward", "down": "up"}
HEADER: Final = "tooth,landmark,x,y,z"
HEADER_OF_TWO: Final = "tooth,landmark,moment,x,y,z"

_OURS = dict(zip("xyz", AXES, strict=True))
_NAMES = ("tooth", "landmark")
_AXES = 3


class Header(NamedTuple):
    """What a header says.

    cells   its cells, as many as every line has
    two     whether there is the column ``moment``
    axes    per coordinate in their order, which of left, forward and up it is, and 1, or -1 where it runs the other way
    """

    cells: tuple[str, ...]
    two: bool
    axes: tuple[tuple[str, int], ...]

    def ours(self, place: tuple[float, ...]) -> tuple[float, float, float]:
        """Coordinates as they stand in the table, turned to left, forward and up."""
        x, y, z = (self._one(axis, place) for axis in AXES)
        return x, y, z

    def _one(self, axis: str, place: tuple[float, ...]) -> float:
        return next(sign * value for (name, sign), value in zip(self.axes, place, strict=True) if name == axis)

    def column(self, axis: str) -> tuple[str, int]:
        """The name of the coordinate that runs along an axis of ours, and where it stands in the line, from 1."""
        number = len(self.cells) - 3 + [name for name, _ in self.axes].index(axis)
        return self.cells[number], len(",".join(self.cells[:number])) + 2


def header_read(line: str) -> Header | None:
    """A header taken apart; None if it is none of a table of points.

    The coordinates are x, y, z, or named by the way they run: one of left and right, one of forward and back, one of up
    and down, in any order.
    """
    *names, first, second, third = cells = tuple(line.split(",")) if line.count(",") >= _AXES - 1 else ("",) * _AXES
    two = tuple(names) == (*_NAMES, "moment")
    if not two and tuple(names) != _NAMES:
        return None
    coordinates = (first, second, third)
    named = [_OURS.get(name, name) for name in coordinates] if coordinates == tuple(_OURS) else list(coordinates)
    axes = tuple((OPPOSITE.get(name, name), -1 if name in OPPOSITE else 1) for name in named)
    return Header(cells, two, axes) if sorted(name for name, _ in axes) == sorted(AXES) else None
