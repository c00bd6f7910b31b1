"""The small marks of the drawings: arrows, rings, squares, bars."""

from __future__ import annotations

from math import atan2, cos, hypot, pi, sin

from wellposed.render.sheet.drawing import Drawing, Point, number
from wellposed.render.sheet.marks import BLUE, GREY, INK, PAPER, VERMILLION

__all__ = ["LENGTH", "RADIUS", "arrow", "asked", "attachment", "contact", "planned", "ring", "struck", "today", "turn"]

LENGTH = 4.6
"""Of an arrow, mm. It says which way; the number beside it says how far."""
RADIUS = 1.65
"""Of a ring or a curved arrow, mm."""
_HEAD = 1.9
_SQUARE = 2.0
_BAR = 2.6


def arrow(d: Drawing, middle: Point, way: Point) -> None:
    """A straight arrow about a middle, along a way of any length."""
    long = hypot(way.x, way.y) or 1.0
    u = Point(way.x / long, way.y / long)
    tail, tip = middle.plus(u, -LENGTH / 2), middle.plus(u, LENGTH / 2)
    d.line(tail, tip.plus(u, -_HEAD * 0.8), stroke=BLUE, stroke_width=0.85)
    _head(d, tip, u)
    d.used.add("arrow")


def _head(d: Drawing, tip: Point, u: Point, size: float = _HEAD) -> None:
    foot, across = tip.plus(u, -size), Point(-u.y, u.x)
    d.polygon((tip, foot.plus(across, size * 0.52), foot.plus(across, -size * 0.52)), fill=BLUE)


def ring(d: Drawing, middle: Point, sign: int) -> None:
    """Seen from the biting side: a dot comes out of the bone (+), a cross goes into it (-)."""
    d.add("circle", cx=middle.x, cy=middle.y, r=RADIUS, fill=PAPER, stroke=BLUE, stroke_width=0.5)
    if sign > 0:
        d.add("circle", cx=middle.x, cy=middle.y, r=0.6, fill=BLUE)
    else:
        far = RADIUS * 0.62
        for way in (1, -1):
            d.line(
                middle.plus(Point(-far, -far * way)), middle.plus(Point(far, far * way)), stroke=BLUE, stroke_width=0.5
            )
    d.used.add("out-of" if sign > 0 else "into")


def turn(d: Drawing, middle: Point, start: Point, clockwise: bool) -> None:
    """Three quarters of a circle from a way on, clockwise as one looks at the page or not."""
    sweep = 1 if clockwise else -1
    first = atan2(start.y, start.x)
    last = first + sweep * 1.45 * pi
    ends = [middle.plus(Point(cos(angle), sin(angle)), RADIUS) for angle in (first, last)]
    d.path(
        f"M{number(ends[0].x)},{number(ends[0].y)}A{number(RADIUS)},{number(RADIUS)} 0 1 {int(clockwise)} "
        f"{number(ends[1].x)},{number(ends[1].y)}",
        fill="none",
        stroke=BLUE,
        stroke_width=0.55,
    )
    u = Point(-sin(last) * sweep, cos(last) * sweep)
    _head(d, ends[1].plus(u, 0.9), u, 1.5)
    d.used.add("turn")


def attachment(d: Drawing, middle: Point, name: str) -> None:
    """A square: filled, open, or struck through."""
    half = _SQUARE / 2
    fill = INK if name == "attached" else PAPER
    d.add(
        "rect",
        x=middle.x - half,
        y=middle.y - half,
        width=_SQUARE,
        height=_SQUARE,
        fill=fill,
        stroke=INK,
        stroke_width=0.35,
    )
    if name == "bare":
        more = half + 0.5
        d.line(middle.plus(Point(-more, more)), middle.plus(Point(more, -more)), stroke=INK, stroke_width=0.4)
    d.used.add(name)


def contact(d: Drawing, middle: Point, out: Point, name: str) -> None:
    """What happens at a contact: ``out`` is the way of 1 mm outwards there."""
    across = Point(-out.y, out.x)
    for side in (1, -1):
        if name == "close":
            tip = middle.plus(across, side * 0.25)
            foot = middle.plus(across, side * 1.7)
            d.polygon((tip, foot.plus(out, 0.9), foot.plus(out, -0.9)), fill=VERMILLION)
            continue
        bar = middle.plus(across, side * (0.62 if name == "reduction" else 1.3))
        one, other = bar.plus(out, _BAR / 2), bar.plus(out, -_BAR / 2)
        d.line(one, other, stroke=VERMILLION, stroke_width=0.6)
        if name == "leave":
            for end in (one, other):
                d.line(end, end.plus(across, -side * 0.7), stroke=VERMILLION, stroke_width=0.6)
    d.used.add(name)


def struck(d: Drawing, middle: Point, half: float) -> None:
    """A cross over something that goes."""
    for way in (1, -1):
        d.line(
            middle.plus(Point(-half, -half * way)), middle.plus(Point(half, half * way)), stroke=GREY, stroke_width=0.35
        )


# values along a scale


def today(d: Drawing, at: Point) -> None:
    """The value today: an open ring."""
    d.add("circle", cx=at.x, cy=at.y, r=1.15, fill=PAPER, stroke=INK, stroke_width=0.5)
    d.used.add("today")


def planned(d: Drawing, at: Point) -> None:
    """The value the setup reaches: a filled diamond."""
    far = 1.55
    d.polygon(
        (Point(at.x, at.y - far), Point(at.x + far, at.y), Point(at.x, at.y + far), Point(at.x - far, at.y)), fill=BLUE
    )
    d.used.add("planned")


def asked(d: Drawing, one: Point, other: Point, ends: tuple[bool, bool]) -> None:
    """Between bounds: a hatched bar, upright or across; an end without a bound has no line."""
    half = 1.15
    left, top = min(one.x, other.x), min(one.y, other.y)
    upright = abs(one.y - other.y) > abs(one.x - other.x)
    wide, high = abs(one.x - other.x), abs(one.y - other.y)
    if upright:
        left, wide = left - half, 2 * half
    else:
        top, high = top - half, 2 * half
    d.add(
        "rect",
        x=left,
        y=top,
        width=max(wide, 0.5),
        height=max(high, 0.5),
        fill=d.fill("slanting"),
        stroke=GREY,
        stroke_width=0.2,
    )
    reach = Point(half + 0.5, 0) if upright else Point(0, half + 0.5)
    for at, bounded in zip((one, other), ends, strict=True):
        if bounded:
            d.line(at.plus(reach, -1), at.plus(reach), stroke=INK, stroke_width=0.55)
    d.used.add("asked")
