"""Overbite, overjet and midlines as small pictures: today, asked, planned, each on a line of its own."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import partial
from math import ceil, floor

from wellposed.render.sheet.chart import PAGE_WIDTH
from wellposed.render.sheet.drawing import TEXT, Drawing, Point
from wellposed.render.sheet.gauges import Gauge
from wellposed.render.sheet.glyphs import asked, planned, today
from wellposed.render.sheet.incisors import CROWN, FRONT, front_incisor, side_incisor
from wellposed.render.sheet.marks import BLUE, GREY, INK
from wellposed.render.sheet.metrics import wrapped
from wellposed.render.sheet.values import Told, told_of

__all__ = ["MEASURES", "profiles"]

MEASURES = ("overbite", "overjet", "upper-midline", "lower-midline")
_PANEL = 57.0
_GAP = (PAGE_WIDTH - 3 * _PANEL) / 2
_TOP = 7.0
_ROW = 4.4
_STEP = 4.6
_MOST_SCALE = 5.0
_LEAST_SPAN = 3.0

Scale = Callable[[float], float]


def profiles(found: Mapping[str, Gauge]) -> Drawing | None:
    """The three pictures in a row; None where nothing of these measures is stated."""
    if all(found[name].empty for name in MEASURES):
        return None
    d = Drawing("profiles", "Overbite, overjet and midlines: today, asked and planned", PAGE_WIDTH)
    drawn = (
        ("Overbite", _overbite, MEASURES[:1]),
        ("Overjet", _overjet, MEASURES[1:2]),
        ("Midlines", _midlines, MEASURES[2:]),
    )
    for place, (title, picture, names) in enumerate(drawn):
        left = place * (_PANEL + _GAP)
        d.text(Point(left, TEXT * 1.1), title, size=TEXT * 1.15, bold=True)
        those = [found[name] for name in names]
        if all(one.empty for one in those):
            d.text(Point(left, _TOP + TEXT), "not stated")
            d.desc.append(f"{title}: not stated.")
        else:
            foot = picture(d, left, those)
            _key(d, left, foot, those)
    return d


def _span(found: list[Gauge], least: float) -> tuple[float, float]:
    """The least and the largest value to be drawn, in whole mm, nought among them."""
    values = [0.0, least, *(value for one in found for value in one.values)]
    return floor(min(values)) - 0.5, ceil(max(values)) + 0.5


# side views


def _overbite(d: Drawing, left: float, found: list[Gauge]) -> float:
    """From the side: how far down the upper edge reaches past the lower edge."""
    one = found[0]
    low, high = _span(found, _LEAST_SPAN)
    scale = min(_MOST_SCALE, 24.0 / (high - low))
    edges = [value * scale for _, value in _edges(one)]
    tall = max((CROWN, *(edge + 4 for edge in edges)))
    highest = min((0.0, *(edge - tall for edge in edges)))
    nought = _TOP + 3 - highest

    def at(value: float) -> float:
        return nought + value * scale

    columns = _columns(one)
    ruler = left + 27 + _STEP * len(columns)
    side_incisor(d, Point(left + 11, nought), up=False)
    d.line(Point(left + 5, nought), Point(ruler, nought), stroke=INK, stroke_width=0.3)
    d.middled(Point(left + 8, nought + CROWN + 2.2), "lower")
    for told, edge in _edges(one):
        side_incisor(d, Point(left + 17.5, at(edge)), up=True, planned=told, tall=tall)
        column = next(n for n, each in enumerate(columns) if (each.what == "planned") == told and each.what != "asked")
        _guide(d, Point(left + 17.5, at(edge)), Point(left + 27 + _STEP * column, at(edge)), told)
    _ruler(d, lambda value: Point(ruler, at(value)), low, high)
    for place, each in enumerate(columns):
        _mark(d, each, partial(_upright, left + 27 + _STEP * place, at), (low, high))
    if edges:
        d.middled(Point(left + 14, nought + highest - 2.6), "upper")
    return max(at(high), nought + CROWN + 3) + 2


def _overjet(d: Drawing, left: float, found: list[Gauge]) -> float:
    """From the side: how far the upper edge stands in front of the lower incisor."""
    one = found[0]
    low, high = _span(found, _LEAST_SPAN)
    scale = min(_MOST_SCALE, (_PANEL - 32) / (high - low))
    nought = left + 19 - low * scale

    def at(value: float) -> float:
        return nought + value * scale

    edge, columns = _TOP + CROWN + 3, _columns(one)
    rows = edge + CROWN + 3.0
    ruler = rows + _STEP * (len(columns) - 1) + 3.5
    side_incisor(d, Point(nought - 1.3, edge - 1.5), up=False)
    d.line(Point(nought, edge - 1.5), Point(nought, ruler), stroke=INK, stroke_width=0.3)
    edges = [value for _, value in _edges(one)]
    d.middled(Point(min((nought - 7.5, *(at(value) - 1.5 for value in edges))), edge + 5), "lower", "end")
    for told, value in _edges(one):
        side_incisor(d, Point(at(value), edge), up=True, planned=told)
        row = next(n for n, each in enumerate(columns) if (each.what == "planned") == told and each.what != "asked")
        _guide(d, Point(at(value), edge), Point(at(value), rows + _STEP * row), told)
    _ruler(d, lambda value: Point(at(value), ruler), low, high)
    for place, each in enumerate(columns):
        _mark(d, each, partial(_across, rows + _STEP * place, at), (low, high))
    if edges:
        d.middled(Point(at(max(edges)) + 3, edge - 6), "upper", "start")
    return ruler + 5


def _upright(x: float, at: Scale, value: float) -> Point:
    return Point(x, at(value))


def _across(y: float, at: Scale, value: float) -> Point:
    return Point(at(value), y)


def _edges(one: Gauge) -> Iterator[tuple[bool, float]]:
    """Where the upper edge stands: today, then as planned, in the middle of its bounds."""
    if one.today is not None:
        yield False, one.today
    if one.planned is not None:
        yield True, sum(one.planned) / 2


def _guide(d: Drawing, one: Point, other: Point, is_planned: bool) -> None:
    how: dict[str, str | float] = {"stroke": BLUE if is_planned else INK, "stroke_width": 0.4 if is_planned else 0.25}
    if not is_planned:
        how["stroke_dasharray"] = "0.9 0.6"
    d.line(one, other, **how)


# the front view


def _midlines(d: Drawing, left: float, found: list[Gauge]) -> float:
    """From the front: the middle of the upper and the lower incisors beside that of the face."""
    low, high = _span(found, _LEAST_SPAN / 2)
    most = max(-low, high)
    scale = min(_MOST_SCALE, (_PANEL - 14) / (2 * most))
    middle = left + _PANEL / 2

    def at(value: float) -> float:
        return middle + value * scale

    above, below = (_columns(one) for one in found)
    bite = _TOP + _STEP * len(above) + FRONT
    foot = bite + FRONT + _STEP * len(below)
    d.line(Point(middle, _TOP - 2), Point(middle, foot + 3), stroke=INK, stroke_width=0.3)
    d.middled(Point(left, bite), "right", "start")
    d.middled(Point(left + _PANEL, bite), "left", "end")
    for one, sign in zip(found, (-1, 1), strict=True):
        _front(d, one, at, Point(middle, bite + sign * 0.5), sign)
    for place, each in enumerate(above):
        _mark(d, each, partial(_across, _TOP + _STEP * place, at), (-most, most))
    for place, each in enumerate(below):
        _mark(d, each, partial(_across, bite + FRONT + 2.5 + _STEP * place, at), (-most, most))
    _ruler(d, lambda value: Point(at(value), foot + 3), -most, most, sided=True)
    return foot + 8


def _front(d: Drawing, one: Gauge, at: Scale, foot: Point, sign: int) -> None:
    """The two central incisors, meeting where the midline is; today without a number: in the middle."""
    for told, value in list(_edges(one)) or [(False, 0.0)]:
        for side in (-1, 1):
            front_incisor(d, Point(at(value), foot.y), side, sign, planned=told)


# rows and keys


def _columns(one: Gauge) -> list[Told]:
    return [told for told in told_of(one) if told.what != "none"]


def _mark(d: Drawing, told: Told, at: Callable[[float], Point], span: tuple[float, float]) -> None:
    """The mark of one value, or the bar of one clause."""
    if told.what == "asked":
        low, high = (end if end is not None else edge for end, edge in zip((told.low, told.high), span, strict=True))
        asked(d, at(low), at(high), (told.low is not None, told.high is not None))
    elif told.low is not None and told.high is not None:
        if told.low != told.high:
            d.line(at(told.low), at(told.high), stroke=BLUE, stroke_width=0.9)
        mark = today if told.what == "today" else planned
        mark(d, at((told.low + told.high) / 2))


def _ruler(d: Drawing, at: Callable[[float], Point], low: float, high: float, sided: bool = False) -> None:
    """A line with a tick every mm, and numbers that leave room for one another; ``sided``: without their signs."""
    d.line(at(low), at(high), stroke=GREY, stroke_width=0.25)
    upright = at(low).x == at(high).x
    step = next(s for s in (1, 2, 5, 10, 20, 50, 100, 200, 500) if s * abs(_apart(at)) >= TEXT * 1.8)
    for value in range(ceil(low), floor(high) + 1):
        here, far = at(value), 1.2 if value % step == 0 else 0.7
        d.line(here, here.plus(Point(far, 0) if upright else Point(0, far)), stroke=GREY, stroke_width=0.25)
        if value % step == 0:
            d.middled(
                here.plus(Point(2, 0) if upright else Point(0, 3.2)),
                str(abs(value) if sided else value),
                "start" if upright else "middle",
            )


def _apart(at: Callable[[float], Point]) -> float:
    one, other = at(0.0), at(1.0)
    return max(abs(one.x - other.x), abs(one.y - other.y))


def _key(d: Drawing, left: float, foot: float, found: list[Gauge]) -> None:
    """What each mark says, in words, under the picture."""
    y = foot + 2
    for one in found:
        for told in told_of(one):
            lines = wrapped(told.words, TEXT, _PANEL - 7)
            _sample(d, told, Point(left + 2, y))
            for line in lines:
                d.middled(Point(left + 6, y), line, "start")
                y += _ROW
            d.desc.append(f"{told.words}.")
    d.height = max(d.height, y)


def _sample(d: Drawing, told: Told, at: Point) -> None:
    if told.what == "asked":
        asked(d, at.plus(Point(-1.6, 0)), at.plus(Point(1.6, 0)), (True, True))
    elif told.what in ("today", "planned"):
        (today if told.what == "today" else planned)(d, at)
