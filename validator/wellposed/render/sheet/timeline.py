"""The documents of a case one below the other, oldest first, each with a sign of its kind."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from wellposed.render.sheet.chart import PAGE_WIDTH
from wellposed.render.sheet.drawing import TEXT, Drawing, Point
from wellposed.render.sheet.glyphs import planned, today
from wellposed.render.sheet.marks import GREY, INK
from wellposed.render.sheet.metrics import LEADING, wrapped

__all__ = ["Event", "timeline"]

_LINE = 30.0
_WORDS = 36.0
_ROW = 7.0


class Event(NamedTuple):
    """One document: its kind, the day it was issued, what it is in words."""

    kind: str
    day: str
    words: str


def timeline(events: Sequence[Event]) -> Drawing:
    """The drawing; distances say nothing of time."""
    d = Drawing("timeline", "The documents of the case, oldest first", PAGE_WIDTH)
    y, places = TEXT * 1.5, []
    for event in events:
        lines = wrapped(event.words, TEXT, PAGE_WIDTH - _WORDS)
        d.middled(Point(_LINE - 5, y), event.day, "end")
        for row, line in enumerate(lines):
            d.middled(Point(_WORDS, y + row * LEADING * TEXT), line, "start", bold=row == 0 and _ordered(event))
        d.desc.append(f"{event.day}: {event.words}.")
        places.append(y)
        y += _ROW + (len(lines) - 1) * LEADING * TEXT
    if places:
        d.line(Point(_LINE, places[0]), Point(_LINE, places[-1]), stroke=GREY, stroke_width=0.3)
    for event, place in zip(events, places, strict=True):
        _sign(d, event, Point(_LINE, place))
    d.height = y - _ROW / 2 + 1
    return d


def _ordered(event: Event) -> bool:
    return event.kind == "prescription"


def _sign(d: Drawing, event: Event, at: Point) -> None:
    """A square for an order, a diamond for a setup, a ring for what is answered."""
    if event.kind == "prescription":
        d.add("rect", x=at.x - 1.4, y=at.y - 1.4, width=2.8, height=2.8, fill=INK)
    elif event.kind == "setup":
        planned(d, at)
    else:
        today(d, at)
