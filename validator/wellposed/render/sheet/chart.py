"""An arch drawn to scale, seen from the biting side: the patient's right on the left, labels on both sides."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from math import hypot

from wellposed.render.sheet.callouts import Block, block, spread
from wellposed.render.sheet.chart_teeth import Placed, filled, marked, numbered, outlined, outside, placed
from wellposed.render.sheet.drawing import TEXT, Drawing, Point
from wellposed.render.sheet.glyphs import contact
from wellposed.render.sheet.marks import GREY, INK, MARKS, PAPER
from wellposed.render.sheet.metrics import ASCENT, LEADING, width, wrapped
from wellposed.render.sheet.placing import Room, first_free, room_of
from wellposed.render.sheet.said import ArchSaid, ContactSaid
from wellposed.render.sheet.shapes import depth_of
from wellposed.render.sheet.words import STANDING
from wellposed.vocabulary.teeth import LEFT, RIGHT, in_words, side_of

__all__ = ["PAGE_WIDTH", "arch_chart"]

PAGE_WIDTH = 182.0
"""Room between the margins of the page, mm."""
_SCALE = 1.3
_COLUMN = 36.0
_BESIDE = 4.3
_MARGIN = 1.5
_CLEAR = 3.0
_HEADS = 6.0
_RULER = 10
_SECOND = 7.0


def arch_chart(said: ArchSaid, planned: bool = False) -> Drawing:
    """The drawing of an arch; one of no teeth says so.

    planned  whether a setup is drawn: the words of its title
    """
    what = "as the setup plans it" if planned else "as it is ordered"
    d = Drawing(f"{said.arch}-arch", f"The {said.arch} arch, {what}, seen from the biting side, to scale", PAGE_WIDTH)
    if not said.teeth:
        d.height = TEXT * 2
        d.text(Point(0, TEXT * 1.2), f"{said.arch.capitalize()} arch: no teeth in line.")
        return d
    scale = _scale_of(said)
    teeth = placed(said, scale, _middle(said, scale))
    d.desc = [
        _described(said),
        *(_told(one) for one in teeth),
        *(_at_contact(said, one, planned) for one in said.contacts),
    ]
    labels = _labels(teeth)
    _led(d, labels)
    taken: list[Room] = []
    _drawn(d, said, teeth, taken)
    _inside(d, said, teeth, scale, taken)
    _sized(d, teeth, labels, taken)
    _labelled(d, labels)
    return d


def _scale_of(said: ArchSaid) -> float:
    """Mm of the page a mm of the mouth, so that the arch and the marks outside it stay between the columns."""
    marks = max((one.way is not None) + (one.vertical != 0) for one in said.teeth)
    room = PAGE_WIDTH / 2 - _COLUMN - _CLEAR - outside(marks)
    deepest = max(depth_of(one.tooth, one.width) for one in said.teeth)
    return min(_SCALE, room / ((said.line.width + deepest) / 2))


def _middle(said: ArchSaid, scale: float) -> Point:
    """The middle of the line between the ends of the arch, where the upper arch opens downwards."""
    return Point(PAGE_WIDTH / 2, said.line.depth * scale if said.arch == "upper" else 0.0)


# labels

Label = tuple[Placed, Block, float]


def _labels(teeth: Sequence[Placed]) -> list[Label]:
    """Each tooth with its block and the top of it, side by side."""
    found: list[Label] = []
    for right in (True, False):
        side = sorted((one for one in teeth if (side_of(one.said.tooth) == RIGHT) == right), key=_downwards)
        blocks = [block(f"{one.said.tooth} {one.said.name}", one.said.lines, one.said.warned, _COLUMN) for one in side]
        wanted = [one.end.y - ASCENT * TEXT / 2 for one in side]
        tops = spread(wanted, [told.height for told in blocks])
        found += zip(side, blocks, tops, strict=True)
    return found


def _downwards(one: Placed) -> int:
    """The order in which the labels of a side stand: that of the row, incisors at the top or at the foot."""
    return one.order


def _sized(d: Drawing, teeth: Sequence[Placed], labels: Sequence[Label], taken: Sequence[Room]) -> None:
    """From where to where the drawing reaches."""
    tops = [top for _, _, top in labels] + [one.top for one in teeth] + [room.top for room in taken]
    feet = [top + told.height for _, told, top in labels] + [one.foot for one in teeth] + [room.foot for room in taken]
    d.top = min(tops) - _HEADS - _MARGIN
    d.height = max(feet) - d.top + _MARGIN


_SIDES = ((RIGHT, _COLUMN, "end", 1.2), (LEFT, PAGE_WIDTH - _COLUMN, "start", -1.2))
"""Each side of the patient: where its column of labels ends, how it is aligned, how far beside it leaders end."""


def _led(d: Drawing, labels: Sequence[Label]) -> None:
    """A line from each tooth to its label, under all that is drawn."""
    for side, x, _, beside in _SIDES:
        for one, told, top in labels:
            if side_of(one.said.tooth) == side:
                end = Point(x + beside, told.baselines(top)[0] - TEXT * 0.36)
                d.path(one.leader(end), fill="none", stroke=GREY, stroke_width=0.22)


def _labelled(d: Drawing, labels: Sequence[Label]) -> None:
    for side, x, anchor, _ in _SIDES:
        d.text(Point(x, d.top + TEXT * ASCENT), f"Patient's {side}", anchor)
        for one, told, top in labels:
            if side_of(one.said.tooth) == side:
                _written(d, one, told, top, Point(x, 0), anchor)


def _written(d: Drawing, one: Placed, told: Block, top: float, column: Point, anchor: str) -> None:
    first, *more = told.baselines(top)
    d.text(Point(column.x, first), told.head, anchor, begins=one.said.tooth)
    for place, (line, y) in enumerate(zip(told.lines, more, strict=True)):
        d.text(Point(column.x, y), line, anchor, bold=place >= len(told.lines) - told.bold)


# the arch


def _drawn(d: Drawing, said: ArchSaid, teeth: Sequence[Placed], taken: list[Room]) -> None:
    for draw in (filled, outlined, marked):
        for one in teeth:
            draw(d, one)
    places = list(_contacts(said, teeth))
    for each, middle, out, reach in places:
        contact(d, middle.plus(out, reach - 0.6), out, each.what)
    for one in teeth:
        numbered(d, one, taken)
    taken += [room for one in teeth for room in one.marks]
    for each, middle, out, reach in places:
        _written_at(d, middle.plus(out, reach + _BESIDE), out, each.words, taken)


def _contacts(said: ArchSaid, teeth: Sequence[Placed]) -> Iterator[tuple[ContactSaid, Point, Point, float]]:
    """Each with its place, the way of 1 mm outwards there, and how far out it is; a second mark of one further out."""
    rows: Counter[tuple[int, int]] = Counter()
    for each in said.contacts:
        one, other = teeth[each.first], teeth[each.second]
        middle = Point((one.base.middle.x + other.base.middle.x) / 2, (one.base.middle.y + other.base.middle.y) / 2)
        way = Point(one.base.out.x + other.base.out.x, one.base.out.y + other.base.out.y)
        out = Point(way.x / (hypot(*way) or 1.0), way.y / (hypot(*way) or 1.0))
        yield each, middle, out, min(one.deep, other.deep) / 2 + rows[each.first, each.second] * _SECOND
        rows[each.first, each.second] += 1


def _written_at(d: Drawing, at: Point, out: Point, words: str, taken: list[Room]) -> None:
    """The number of a contact, outside it or as far out as others leave room, on a ground of its own."""
    if not words:
        return
    ways = (Point(out.x * far, out.y * far) for far in range(12))
    there = at.plus(first_free(room_of(at, words), ways, taken))
    wide, high = width(words, TEXT), TEXT * 0.86
    d.add("rect", x=there.x - wide / 2, y=there.y - high / 2, width=wide, height=high, fill=PAPER)
    d.middled(there, words)


def _inside(d: Drawing, said: ArchSaid, teeth: Sequence[Placed], scale: float, taken: list[Room]) -> None:
    """The name of the arch, notes and the scale, where the arch is open, or as far outside as it takes."""
    up = said.arch == "upper"
    ends = [one.base.middle for one in (teeth[0], teeth[-1])]
    wide = max(abs(ends[1].x - ends[0].x) - teeth[0].deep / 2 - teeth[-1].deep / 2 - 8, 34.0)
    lines = [line for note in said.notes for line in wrapped(note, TEXT, wide)]
    high = (len(lines) + 2.7) * LEADING * TEXT
    top = max(end.y for end in ends) + 3 - high if up else min(end.y for end in ends) - 3
    middle = (ends[0].x + ends[1].x) / 2
    room = Room(middle - wide / 2, top, middle + wide / 2, top + high)
    way = first_free(room, (Point(0.0, step * (2 if up else -2)) for step in range(60)), taken)
    y = top + way.y + TEXT * 1.3
    d.text(Point(middle, y), f"{said.arch.capitalize()} arch", "middle", TEXT * 1.3, bold=True)
    y += 0.4
    for line in lines:
        y += LEADING * TEXT
        d.text(Point(middle, y), line, "middle")
    _scale(d, Point(middle - _RULER * scale / 2 - 4, y + LEADING * TEXT), scale)


def _scale(d: Drawing, at: Point, scale: float) -> None:
    """A bar of 10 mm of the mouth."""
    d.line(at, at.plus(Point(_RULER * scale, 0)), stroke=INK, stroke_width=0.35)
    for place in (0, _RULER / 2, _RULER):
        tick = at.plus(Point(place * scale, 0))
        d.line(tick.plus(Point(0, -0.9)), tick.plus(Point(0, 0.9)), stroke=INK, stroke_width=0.35)
    d.middled(at.plus(Point(_RULER * scale + 1.5, 0)), f"{_RULER} mm", "start")


# in words


def _described(said: ArchSaid) -> str:
    return f"{len(said.teeth)} teeth from the patient's right to left. {' '.join(said.notes)}".rstrip()


def _told(one: Placed) -> str:
    said = one.said
    carries = MARKS[said.carries].words if said.carries and not any("attachment" in line for line in said.lines) else ""
    more = "".join(f"; {line}" for line in (*said.lines, carries, *said.warned) if line)
    return f"{said.tooth} ({in_words(said.tooth)}): {STANDING[said.standing]}{more}."


_AT_CONTACT = {"reduction": "enamel off", "close": "the space closes", "leave": "space is left"}


def _at_contact(said: ArchSaid, one: ContactSaid, planned: bool) -> str:
    most = "at most " if one.what == "reduction" and not planned else ""
    size = f", {most}{one.words} mm" if one.words else ""
    return f"{said.teeth[one.first].tooth}-{said.teeth[one.second].tooth}: {_AT_CONTACT[one.what]}{size}."
