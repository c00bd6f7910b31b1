"""How each tooth moves from before to after, in the six variables of the format."""

from __future__ import annotations

from collections.abc import Iterator
from math import degrees, sqrt
from typing import NamedTuple

import numpy as np

from wellposed.landmarks.line import Line, Stand
from wellposed.landmarks.mouth import Mouth, leftward
from wellposed.landmarks.result import Moved, Why
from wellposed.landmarks.rigid import LEAST_POINTS, Rigid, in_line, rigid, uncertainty
from wellposed.landmarks.turning import MOST_TIP, directions, turn_of
from wellposed.landmarks.vectors import UP, Array
from wellposed.vocabulary.landmarks import LANDMARKS, crown_point
from wellposed.vocabulary.motions import VARIABLES, Variable
from wellposed.vocabulary.teeth import TEETH, UPPER, arch_of

TENTH = 0.1
"""The error of points for which spreads are told, mm."""


class Placed(NamedTuple):
    """A crown point on the line, before and after."""

    tooth: str
    before: Stand
    after: Stand


def movements(before: Mouth, after: Mouth) -> tuple[Moved, ...]:
    """Of every tooth that has points at either moment, in the order of ISO 3950."""
    return tuple(_moved(tooth, before, after) for tooth in TEETH if tooth in before.teeth or tooth in after.teeth)


def _moved(tooth: str, before: Mouth, after: Mouth) -> Moved:
    if tooth not in after.teeth:
        return Moved(tooth, why="gone")
    if tooth not in before.teeth:
        return Moved(tooth, why="new")
    first, second = shared(tooth, before, after)
    if len(first) < LEAST_POINTS:
        return Moved(tooth, points=len(first), why="too-few-points")
    if in_line(first) or in_line(second):
        return Moved(tooth, points=len(first), why="in-a-line")
    return _told(tooth, rigid(first, second), before)


def shared(tooth: str, before: Mouth, after: Mouth) -> tuple[list[Array], list[Array]]:
    """The points of a tooth that are there at both moments, in one order."""
    earlier, later = before.teeth.get(tooth, {}), after.teeth.get(tooth, {})
    names = [name for name in LANDMARKS if name in earlier and name in later]
    return [earlier[name] for name in names], [later[name] for name in names]


def _told(tooth: str, found: Rigid, before: Mouth) -> Moved:
    count, whole = len(found.arms), _whole_turn(found.turn)
    line = before.lines[arch_of(tooth)]
    point = before.teeth[tooth].get(crown_point(tooth))
    if point is None:
        return Moved(tooth, points=count, residual=found.residual, turned=whole, why="no-crown-point")
    x, y, z = (float(part) for part in found.moved(point) - point)
    told = Moved(tooth, points=count, residual=found.residual, shift=(x, y, z), turned=whole, why="no-arch-line")
    return told if line is None else _along_the_line(told, found, point, line)


def _whole_turn(turn: Array) -> float:
    """The angle of a turn about its own axis, deg."""
    twice = np.array([turn[2, 1] - turn[1, 2], turn[0, 2] - turn[2, 0], turn[1, 0] - turn[0, 1]])
    return degrees(float(np.arctan2(np.linalg.norm(twice), np.trace(turn) - 1)))


def _along_the_line(told: Moved, found: Rigid, point: Array, line: Line) -> Moved:
    placed = Placed(told.tooth, line.stand(point), line.stand(found.moved(point)))
    first, second = facing(told.tooth, placed.before), facing(told.tooth, placed.after)
    turn = turn_of(second.T @ found.turn @ first)
    why: Why | None = "tipped-too-far" if abs(turn.tip) > MOST_TIP else None
    if why:
        return Moved(told.tooth, {}, {}, told.points, told.residual, told.shift, told.turned, why)
    values = dict(zip(VARIABLES, (*_travel(placed, told.shift or (0.0, 0.0, 0.0)), *turn), strict=True))
    spread = dict(_spread(found, point, second))
    return Moved(told.tooth, values, spread, told.points, told.residual, told.shift, told.turned)


def facing(tooth: str, stand: Stand) -> Array:
    """The directions of a tooth that stands there, as columns: mesially, outwards, the way it extrudes."""
    mesially = np.array([*stand.leftward, 0.0]) * leftward(tooth)
    return directions(mesially, np.array([*stand.out, 0.0]), UP * upward(tooth))


def upward(tooth: str) -> int:
    """1 where extrusion goes up, -1 where it goes down."""
    return -1 if arch_of(tooth) == UPPER else 1


def _travel(placed: Placed, shift: tuple[float, float, float]) -> tuple[float, float, float]:
    """along, out and vertical, mm."""
    along = placed.before.travel(placed.after) * leftward(placed.tooth)
    return along, placed.after.off - placed.before.off, shift[2] * upward(placed.tooth)


def _spread(found: Rigid, point: Array, face: Array) -> Iterator[tuple[Variable, float]]:
    """Standard deviations, mm and deg, where every coordinate before and after has one of 0.1 mm; for small angles."""
    placing, turning = uncertainty(found, point, TENTH * sqrt(2))
    lengths = np.sqrt(np.diag(face.T @ placing @ face))
    angles = np.degrees(np.sqrt(np.diag(face.T @ turning @ face)))
    yield from zip(VARIABLES, (float(one) for one in (*lengths, *angles)), strict=True)
