"""The legend: every mark that a page uses, with its words, and no other."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import partial

from wellposed.render.sheet import glyphs
from wellposed.render.sheet.chart import PAGE_WIDTH
from wellposed.render.sheet.drawing import TEXT, Drawing, Point
from wellposed.render.sheet.marks import GREY, INK, MARKS, PAPER
from wellposed.render.sheet.metrics import width

__all__ = ["SAMPLES", "legend"]

_ROW = 5.4
_SAMPLE = 7.0
_COLUMNS = 3
_COLUMN = PAGE_WIDTH / _COLUMNS


def legend(name: str, used: Iterable[str], planned: bool = False) -> Drawing | None:
    """The marks used, in the order of their table, in columns; None where there are none."""
    found = [mark for mark in MARKS if mark in set(used)]
    if not found:
        return None
    d = Drawing(name, "What the marks mean", PAGE_WIDTH)
    places = _places([_words(mark, planned) for mark in found])
    for mark, at in zip(found, places, strict=True):
        SAMPLES[mark](d, at.plus(Point(_SAMPLE / 2 - 0.5, 0)))
        d.middled(at.plus(Point(_SAMPLE, 0)), _words(mark, planned), "start")
        d.desc.append(f"{MARKS[mark].sign.capitalize()}: {_words(mark, planned)}.")
    d.height = max(at.y for at in places) + _ROW / 2
    return d


def _words(mark: str, planned: bool) -> str:
    return (MARKS[mark].planned if planned else "") or MARKS[mark].words


def _places(words: list[str]) -> list[Point]:
    """In rows of up to three; words too wide for a column take two."""
    places, column, row = [], 0, 0
    for one in words:
        takes = min(_COLUMNS, 1 + int((_SAMPLE + width(one, TEXT) + 2) // _COLUMN))
        if column + takes > _COLUMNS:
            column, row = 0, row + 1
        places.append(Point(column * _COLUMN, _ROW * (row + 0.5)))
        column += takes
    return places


# samples


def _tooth(
    d: Drawing, at: Point, pattern: str = "", thick: float = 0.35, dashes: str = "", second: bool = False
) -> None:
    fill = d.fill(pattern) if pattern else PAPER
    how: dict[str, str | float] = {"stroke_dasharray": dashes} if dashes else {}
    d.add(
        "rect",
        x=at.x - 2.4,
        y=at.y - 1.9,
        width=4.8,
        height=3.8,
        rx=1.5,
        fill=fill,
        stroke=INK,
        stroke_width=thick,
        **how,
    )
    if second:
        d.add(
            "rect",
            x=at.x - 3.2,
            y=at.y - 1.5,
            width=4.8,
            height=3.8,
            rx=1.5,
            fill="none",
            stroke=GREY,
            stroke_width=0.3,
            stroke_dasharray="0.9 0.6",
        )


def _gone(d: Drawing, at: Point) -> None:
    glyphs.struck(d, at, 2.3)
    d.add(
        "rect",
        x=at.x - 2.4,
        y=at.y - 1.9,
        width=4.8,
        height=3.8,
        rx=1.5,
        fill="none",
        stroke=INK,
        stroke_width=0.4,
        stroke_dasharray="1.2 0.8",
    )


def _bar(d: Drawing, at: Point, pattern: str = "", dashes: str = "", filled: bool = False) -> None:
    fill = d.fill(pattern) if pattern else INK if filled else PAPER
    how: dict[str, str | float] = {"stroke_dasharray": dashes} if dashes else {}
    d.add("rect", x=at.x - 2.8, y=at.y - 1.5, width=5.6, height=3.0, fill=fill, stroke=INK, stroke_width=0.4, **how)


def _ends(d: Drawing, at: Point) -> None:
    d.line(at.plus(Point(-2.8, 0)), at.plus(Point(2.8, 0)), stroke=INK, stroke_width=0.3)
    for side in (-1, 1):
        d.line(at.plus(Point(2.8 * side, -0.9)), at.plus(Point(2.8 * side, 0.9)), stroke=INK, stroke_width=0.3)


def _turn(d: Drawing, at: Point) -> None:
    glyphs.turn(d, at, Point(1.0, 0.0), clockwise=True)


def _asked(d: Drawing, at: Point) -> None:
    glyphs.asked(d, at.plus(Point(-2.4, 0)), at.plus(Point(2.4, 0)), (True, True))


SAMPLES: Mapping[str, Callable[[Drawing, Point], None]] = {
    "moves": partial(_tooth, thick=0.75),
    "may": _tooth,
    "silent": partial(_tooth, pattern="dots"),
    "held": partial(_tooth, pattern="slanting"),
    "fixed": partial(_tooth, pattern="crossed"),
    "gone": _gone,
    "unsaid": partial(_tooth, pattern="upright"),
    "arrow": lambda d, at: glyphs.arrow(d, at, Point(1.0, 0.0)),
    "into": lambda d, at: glyphs.ring(d, at, -1),
    "out-of": lambda d, at: glyphs.ring(d, at, 1),
    "turn": _turn,
    "attached": lambda d, at: glyphs.attachment(d, at, "attached"),
    "attachable": lambda d, at: glyphs.attachment(d, at, "attachable"),
    "bare": lambda d, at: glyphs.attachment(d, at, "bare"),
    "reduction": lambda d, at: glyphs.contact(d, at, Point(0.0, -1.0), "reduction"),
    "close": lambda d, at: glyphs.contact(d, at, Point(0.0, -1.0), "close"),
    "leave": lambda d, at: glyphs.contact(d, at, Point(0.0, -1.0), "leave"),
    "outline-today": partial(_tooth, thick=0.3, dashes="0.9 0.6"),
    "outline-planned": partial(_tooth, thick=0.75, second=True),
    "today": glyphs.today,
    "asked": _asked,
    "planned": glyphs.planned,
    "need": partial(_bar, pattern="slanting"),
    "may-need": partial(_bar, pattern="slanting", dashes="1.2 0.8"),
    "give": _bar,
    "may-give": partial(_bar, dashes="1.2 0.8"),
    "rest": partial(_bar, filled=True),
    "between": _ends,
}
"""How each mark is drawn in the legend."""
