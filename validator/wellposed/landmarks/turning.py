"""A turn of a tooth as torque, tip and rotation, and back.

The tooth is given three directions: mesially along the arch (m), outwards (o), and the way it extrudes (v). A turn is
made of three, one after the other, each about an axis that is easy to name (a Cardan sequence, as Grood and Suntay 1983
use it for joints):

1. torque about m, which stays with the jaw: v goes towards o;
2. tip about the axis square to the other two: v goes towards m;
3. rotation about v as the tooth now carries it: m goes away from o.

So torque and tip are what can be seen of the long axis, from along the arch and from outside, whatever the rotation;
and the angles do not depend on an order in time. Written as numbers in the directions m, o, v this is
R = Rx(-torque) Ry(tip) Rz(-rotation) with the usual matrices, on either side of the mouth.
"""

from __future__ import annotations

from math import asin, atan2, cos, degrees, radians, sin
from typing import NamedTuple

import numpy as np

from wellposed.landmarks.vectors import Array

MOST_TIP = 85.0
"""Beyond it torque and rotation are about nearly one axis and cannot be told apart, deg."""


class Turn(NamedTuple):
    """Three angles, deg: labial or buccal crown torque +, mesial crown tip +, mesial surface towards the tongue +."""

    torque: float
    tip: float
    rotation: float


def directions(mesial: Array, out: Array, extruding: Array) -> Array:
    """The three directions as columns, shape (3, 3). A mirror image on one side of the mouth; no harm in that."""
    return np.column_stack((mesial, out, extruding))


def turn_of(matrix: Array) -> Turn:
    """The angles of a turn written in the directions m, o, v.

    Torque and rotation from -180 to 180 deg, tip from -90 to 90.
    """
    tip = asin(min(1.0, max(-1.0, float(matrix[0, 2]))))
    torque = atan2(float(matrix[1, 2]), float(matrix[2, 2]))
    rotation = atan2(float(matrix[0, 1]), float(matrix[0, 0]))
    return Turn(degrees(torque), degrees(tip), degrees(rotation))


def matrix_of(turn: Turn) -> Array:
    """The turn of these angles, written in the directions m, o, v."""
    a, b, c = radians(-turn.torque), radians(turn.tip), radians(-turn.rotation)
    about_m = np.array([[1, 0, 0], [0, cos(a), -sin(a)], [0, sin(a), cos(a)]])
    about_o = np.array([[cos(b), 0, sin(b)], [0, 1, 0], [-sin(b), 0, cos(b)]])
    about_v = np.array([[cos(c), -sin(c), 0], [sin(c), cos(c), 0], [0, 0, 1]])
    made: Array = about_m @ about_o @ about_v
    return made
