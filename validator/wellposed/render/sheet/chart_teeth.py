"""The teeth of a chart: where each stands, its outline, number and marks, and where its leader begins and ends."""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

from wellposed.kinematics.arch import Facing
from wellposed.render.sheet.drawing import Drawing, Point, number
from wellposed.render.sheet.glyphs import LENGTH, RADIUS, arrow, attachment, ring, struck, turn
from wellposed.render.sheet.marks import GREY, INK, PAPER
from wellposed.render.sheet.metrics import width
from wellposed.render.sheet.placing import Room, first_free, room_of
from wellposed.render.sheet.said import ArchSaid, Stands, ToothSaid
from wellposed.render.sheet.shapes import Frame, depth_of, outline
from wellposed.vocabulary.teeth import LEFT, side_of

__all__ = ["Placed", "filled", "marked", "numbered", "outlined", "outside", "placed"]

NUMBER = 3.3
"""Size of the type of a tooth's number, mm."""
_CLEAR = 8.0
_STEPS = [0.0] + [sign * step for step in (2.1, 3.0, 4.0, 5.0, 6.5, 8.0, 10.0) for sign in (1, -1)]
_SLOT = LENGTH / 2 + RADIUS + 0.9
_FILLS = {"silent": "dots", "held": "slanting", "fixed": "crossed", "unsaid": "upright"}
_OUTLINES = {"moves": (INK, 0.75), "gone": (INK, 0.4)}
_THIN = (INK, 0.35)


def outside(marks: int) -> float:
    """Room outside a tooth for so many marks, and for the numbers at its contacts, mm."""
    return max(1.4 + marks * _SLOT + 1.0, _CLEAR)


@dataclass(frozen=True, slots=True)
class Placed:
    """A tooth on the page.

    base    its place on the arch line
    today   where it stands; ``planned``: where a setup puts it
    wide, deep  its size as drawn, mm
    order   its place among the labels of its side, from the top
    """

    said: ToothSaid
    base: Frame
    today: Frame
    planned: Frame | None
    wide: float
    deep: float
    order: int

    @property
    def here(self) -> Frame:
        """Where it is drawn with its number: as planned if it is."""
        return self.planned or self.today

    def slot(self, place: int) -> Point:
        """The middle of a mark outside the tooth, the first of them next to it."""
        return self.here.middle.plus(self.base.out, self.deep / 2 + 1.4 + LENGTH / 2 + place * _SLOT)

    @property
    def slots(self) -> int:
        """How many marks stand outside it."""
        return (self.said.way is not None) + (self.said.vertical != 0)

    @property
    def marks(self) -> list[Room]:
        """The room of each mark outside it."""
        middles = [self.slot(place) for place in range(self.slots)]
        return [Room(at.x - RADIUS, at.y - RADIUS, at.x + RADIUS, at.y + RADIUS) for at in middles]

    @property
    def end(self) -> Point:
        """Where the leader stops going straight outwards."""
        return self.here.middle.plus(self.base.out, self.deep / 2 + outside(self.slots))

    def leader(self, label: Point) -> str:
        """From the tooth, or its outermost mark, outwards and to its label, as path data."""
        start = self.here.middle.plus(self.base.out, self.deep / 2 + 0.6)
        if self.slots:
            start = self.slot(self.slots - 1).plus(self.base.out, self._last() + 0.6)
        return " ".join(
            f"{'ML'[place > 0]}{number(p.x)},{number(p.y)}" for place, p in enumerate((start, self.end, label))
        )

    def _last(self) -> float:
        """How far the outermost mark reaches outwards of its middle."""
        if self.said.vertical or self.said.way is None:
            return RADIUS
        along, out = self.said.way
        return max(LENGTH / 2 * abs(out) / (hypot(along, out) or 1.0), 0.9)

    @property
    def top(self) -> float:
        """How far up anything of it reaches, mm."""
        return min(self.end.y, self.here.middle.y - self.deep / 2, self.today.middle.y - self.deep / 2)

    @property
    def foot(self) -> float:
        """How far down."""
        return max(self.end.y, self.here.middle.y + self.deep / 2, self.today.middle.y + self.deep / 2)


def placed(said: ArchSaid, scale: float, middle: Point) -> list[Placed]:
    """Every tooth of the row, in its order."""
    up = said.arch == "upper"
    found = []
    for place, (tooth, point, facing) in enumerate(zip(said.teeth, said.line.points, said.line.facings, strict=True)):
        base = _frame(point, facing, scale, middle, -1 if up else 1)
        wide = tooth.width * scale
        today = _standing(base, tooth.today, scale)
        planned = None if tooth.planned is None else _standing(base, tooth.planned, scale)
        order = place if (side_of(tooth.tooth) == LEFT) == up else -place
        found.append(Placed(tooth, base, today, planned, wide, depth_of(tooth.tooth, wide), order))
    return found


def _frame(point: tuple[float, float], facing: Facing, scale: float, middle: Point, flip: int) -> Frame:
    return Frame(
        Point(middle.x + point[0] * scale, middle.y + flip * point[1] * scale),
        Point(facing.along_x, flip * facing.along_y),
        Point(facing.out_x, flip * facing.out_y),
    )


def _standing(base: Frame, stands: Stands, scale: float) -> Frame:
    return base.moved(stands.along * scale, stands.out * scale).turned(stands.turned)


# drawing


def filled(d: Drawing, one: Placed) -> None:
    """The ground of a tooth, by how it stands."""
    name = _FILLS.get(one.said.standing)
    d.path(outline(one.said.tooth, one.wide, one.here), fill=d.fill(name) if name else PAPER)


def outlined(d: Drawing, one: Placed) -> None:
    """The outline, over all grounds, so that overlaps are seen; where it stands today beside where it goes."""
    said = one.said
    stroke, thick = _OUTLINES.get(said.standing, _THIN)
    how: dict[str, str | float] = {"fill": "none", "stroke": stroke, "stroke_width": thick}
    if said.standing == "gone":
        how["stroke_dasharray"] = "1.2 0.8"
        struck(d, one.here.middle, max(one.wide, one.deep) / 2)
    d.path(outline(said.tooth, one.wide, one.here), **how)
    if one.planned and one.planned != one.today:
        before = outline(said.tooth, one.wide, one.today)
        d.path(before, fill="none", stroke=GREY, stroke_width=0.3, stroke_dasharray="0.9 0.6")
        d.used |= {"outline-today", "outline-planned"}
    d.used.add(said.standing)


def numbered(d: Drawing, one: Placed, taken: list[Room]) -> None:
    """Its number, in its middle or as near to that as others leave room, on a ground of its own."""
    room = room_of(one.here.middle, one.said.tooth, NUMBER, bold=True)
    steps = (Point(one.base.out.x * far, one.base.out.y * far) for far in _STEPS)
    at = one.here.middle.plus(first_free(room, steps, taken))
    patterned = one.said.standing in _FILLS
    wide, high = width(one.said.tooth, NUMBER) + (0.5 if patterned else 0.0), NUMBER * (0.98 if patterned else 0.86)
    d.add("rect", x=at.x - wide / 2, y=at.y - high / 2, width=wide, height=high, rx=0.7, fill=PAPER)
    d.middled(at, one.said.tooth, size=NUMBER, bold=True)


def marked(d: Drawing, one: Placed) -> None:
    """Its marks: which way it goes, whether it carries an attachment."""
    said, place = one.said, 0
    if said.way is not None:
        along, out = said.way
        arrow(d, one.slot(0), Point(0.0, 0.0).plus(one.base.along, along).plus(one.base.out, out))
        place = 1
    if said.vertical:
        ring(d, one.slot(place), said.vertical)
    if said.turns:
        _turned(d, one)
    if said.carries:
        attachment(d, one.here.at(0, one.deep / 2), said.carries)


def _turned(d: Drawing, one: Placed) -> None:
    """On the side of the tongue: the way the end to the patient's left goes, about a centre of its own."""
    along, out = one.base.along, one.base.out
    inward = Point(-out.x, -out.y)
    clockwise = (along.x * inward.y - along.y * inward.x) * one.said.turns > 0
    turn(d, one.here.middle.plus(inward, one.deep / 2 + RADIUS + 0.9), along, clockwise)
