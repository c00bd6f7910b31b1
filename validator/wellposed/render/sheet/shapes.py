"""Outlines of teeth seen from above: plain shapes of our own, one a class of tooth.

The depths and forms are proportions of a drawing, no measurements: only the mesiodistal width is to scale.
"""

from __future__ import annotations

from math import cos, radians, sin
from typing import NamedTuple

from wellposed.render.sheet.drawing import Point, number
from wellposed.vocabulary.teeth import arch_of, is_canine, is_incisor, is_molar, is_premolar

__all__ = ["Frame", "depth_of", "outline"]


class Form(NamedTuple):
    """The form of a class.

    depth   from cheek to tongue, as a share of the mesiodistal width
    waist   how far the widest part lies towards the cheek, as a share of half the depth
    cheek   how square the side of the cheek is: 0.3 pointed, 0.55 round, 0.8 square
    tongue  the same of the side of the tongue
    """

    depth: float
    waist: float
    cheek: float
    tongue: float


_INCISOR = Form(0.86, 0.26, 0.72, 0.42)
_LOWER_INCISOR = Form(1.08, 0.24, 0.68, 0.42)
_CANINE = Form(1.08, 0.12, 0.36, 0.46)
_PREMOLAR = Form(1.28, 0.0, 0.62, 0.60)
_LOWER_PREMOLAR = Form(1.12, 0.0, 0.62, 0.62)
_MOLAR = Form(1.08, 0.0, 0.78, 0.76)
_LOWER_MOLAR = Form(0.94, 0.0, 0.80, 0.80)


def _form(tooth: str) -> Form:
    lower = arch_of(tooth) == "lower"
    if is_incisor(tooth):
        return _LOWER_INCISOR if lower else _INCISOR
    if is_canine(tooth):
        return _CANINE
    if is_premolar(tooth):
        return _LOWER_PREMOLAR if lower else _PREMOLAR
    molar = is_molar(tooth) or not lower  # primary molars are drawn as molars
    return _MOLAR if molar and not lower else _LOWER_MOLAR


def depth_of(tooth: str, width: float) -> float:
    """From cheek to tongue as drawn, in the unit of the width."""
    return _form(tooth).depth * width


class Frame(NamedTuple):
    """Where a tooth is drawn: its middle, and the ways along the arch and outwards of 1 mm, on the page."""

    middle: Point
    along: Point
    out: Point

    def at(self, along: float, out: float) -> Point:
        """A place of the tooth's own frame on the page."""
        return self.middle.plus(self.along, along).plus(self.out, out)

    def turned(self, degrees: float) -> Frame:
        """The same turned so that the end of ``along`` goes inwards."""
        c, s = cos(radians(degrees)), sin(radians(degrees))
        nowhere = Point(0.0, 0.0)
        return Frame(
            self.middle,
            nowhere.plus(self.along, c).plus(self.out, -s),
            nowhere.plus(self.out, c).plus(self.along, s),
        )

    def moved(self, along: float, out: float) -> Frame:
        """The same elsewhere."""
        return self._replace(middle=self.at(along, out))


def outline(tooth: str, width: float, frame: Frame) -> str:
    """The outline as path data; width in mm of the page."""
    form = _form(tooth)
    half, deep = width / 2, form.depth * width / 2
    waist = form.waist * deep
    cheek, tongue = (deep - waist) * form.cheek, (deep + waist) * form.tongue
    above, below = half * form.cheek, half * form.tongue

    def told(*places: tuple[float, float]) -> str:
        return " ".join(f"{number(p.x)},{number(p.y)}" for p in (frame.at(*place) for place in places))

    return (
        f"M{told((0, deep))}"
        f"C{told((above, deep), (half, waist + cheek), (half, waist))}"
        f"C{told((half, waist - tongue), (below, -deep), (0, -deep))}"
        f"C{told((-below, -deep), (-half, waist - tongue), (-half, waist))}"
        f"C{told((-half, waist + cheek), (-above, deep), (0, deep))}Z"
    )
