"""The room of an arch as a flight of bars: each need goes on to the right, each means comes back to the left."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from wellposed.derive.space import Budget, Line
from wellposed.render.amounts import number
from wellposed.render.measures_words import LINES
from wellposed.render.sheet.chart import PAGE_WIDTH
from wellposed.render.sheet.drawing import TEXT, Drawing, Point
from wellposed.render.sheet.marks import GREY, INK, PAPER
from wellposed.render.sheet.metrics import wrapped

__all__ = ["budget_drawing", "budget_words"]

_LABELS = 84.0
_RIGHT = 6.0
_ROW = 5.6
_BAR = 3.4
_TOP = 7.5
_LARGEST = 9.0
_TICK = 1


class Row(NamedTuple):
    """A line of the budget with the place its bar begins at, mm of room."""

    line: Line
    needs: bool
    start: float

    @property
    def end(self) -> float:
        """Where the bar ends."""
        size = self.line.amount or 0.0
        return self.start + (size if self.needs else -size)


def budget_drawing(budget: Budget) -> Drawing | None:
    """The drawing of one arch; None where no line of it has an amount."""
    lines = (*budget.needs, *budget.means)
    if not any(line.amount for line in lines):
        return None
    rows = _rows(budget)
    title = f"Room in the {budget.arch} arch: what needs it, what gives it, what is left"
    d = Drawing(f"{budget.arch}-room", title, PAGE_WIDTH)
    d.text(Point(0, TEXT * 1.15), f"{budget.arch.capitalize()} arch", size=TEXT * 1.15, bold=True)
    low, high = _span(rows)
    scale = min(_LARGEST, (PAGE_WIDTH - _LABELS - _RIGHT) / (high - low))
    nought = _LABELS - low * scale
    y = _TOP
    for row in rows:
        y = _row(d, row, nought, scale, y)
    y = _rest(d, budget, nought, scale, y)
    _ruler(d, Point(PAGE_WIDTH - _RIGHT - _TICK * scale, TEXT * 0.8), scale)
    d.line(Point(nought, _TOP - 2), Point(nought, y - 1), stroke=INK, stroke_width=0.3)
    d.height = y + 1
    return d


def budget_words(budget: Budget) -> str:
    """The same in words, a sentence."""
    told = [_words(row) for row in _rows(budget)]
    return f"{'; '.join(told)}; {_told(budget)}." if told else "nothing of its room is stated."


def _rows(budget: Budget) -> list[Row]:
    rows, reached = [], 0.0
    for needs, lines in ((True, budget.needs), (False, budget.means)):
        for line in lines:
            rows.append(Row(line, needs, reached))
            reached = rows[-1].end
    return rows


def _span(rows: Sequence[Row]) -> tuple[float, float]:
    """The places the bars and their ranges reach, nought among them."""
    ends = [0.0, *(row.end for row in rows)]
    for row in rows:
        sign = 1 if row.needs else -1
        ends += [row.start + sign * edge for edge in (row.line.low, row.line.high) if edge is not None]
    return min(ends), max(*ends, min(ends) + 1.0)


def _row(d: Drawing, row: Row, nought: float, scale: float, y: float) -> float:
    """A line: its words on the left, its bar on the right; where the next one stands."""
    words = _words(row)
    d.desc.append(f"{words}.")
    lines = wrapped(words, TEXT, _LABELS - 4)
    for place, line in enumerate(lines):
        d.middled(Point(0, y + place * TEXT * 1.22), line, "start")
    if row.line.amount is None:
        d.middled(Point(nought + row.start * scale + 2, y), "?", "start", bold=True)
    elif row.line.amount:
        _bar(d, row, nought, scale, y)
    after = y + _ROW + (len(lines) - 1) * TEXT * 1.22
    end, half = nought + row.end * scale, _BAR / 2
    d.line(
        Point(end, y + (half if row.line.amount else -half)), Point(end, after - half), stroke=GREY, stroke_width=0.2
    )
    return after


def _bar(d: Drawing, row: Row, nought: float, scale: float, y: float) -> None:
    left, right = sorted((row.start, row.end))
    permitted = _permitted(row)
    kind = f"{'may-' if permitted else ''}{'need' if row.needs else 'give'}"
    how: dict[str, str | float] = {"stroke": INK, "stroke_width": 0.4}
    how["fill"] = d.fill("slanting") if row.needs else PAPER
    if permitted:
        how["stroke_dasharray"] = "1.2 0.8"
    d.add("rect", x=nought + left * scale, y=y - _BAR / 2, width=(right - left) * scale, height=_BAR, **how)
    d.used.add(kind)
    _range(d, row, nought, scale, y)


def _permitted(row: Row) -> bool:
    """Whether it is a permission, of which nothing need be used."""
    return row.line.least == 0 and bool(row.line.amount) and row.line.what not in ("crowding", "spacing")


def _range(d: Drawing, row: Row, nought: float, scale: float, y: float) -> None:
    """What published coefficients make of it, where they differ."""
    low, high = row.line.low, row.line.high
    if low is None or high is None or high - low < 0.005:
        return
    sign = 1 if row.needs else -1
    ends = [Point(nought + (row.start + sign * edge) * scale, y) for edge in (low, high)]
    d.line(*ends, stroke=INK, stroke_width=0.3)
    for end in ends:
        d.line(end.plus(Point(0, -0.9)), end.plus(Point(0, 0.9)), stroke=INK, stroke_width=0.3)
    d.used.add("between")


def _words(row: Row) -> str:
    line = row.line
    verb = ("may need" if row.needs else "may give") if _permitted(row) else "needs" if row.needs else "gives"
    ids = f" ({', '.join(line.from_)})" if line.from_ else ""
    if line.amount is None:
        return f"{verb}: {LINES[line.what]}, amount not stated{ids}"
    upto = "up to " if _permitted(row) else ""
    side = f", {number(line.one_side)} mm on one side" if line.one_side is not None else ""
    return f"{verb}: {LINES[line.what]} {upto}{number(line.amount)} mm{side}{ids}"


def _rest(d: Drawing, budget: Budget, nought: float, scale: float, y: float) -> float:
    """What is left over or missing when all means are used whole."""
    words = _told(budget)
    d.desc.append(f"{words}.")
    lines = wrapped(words, TEXT, _LABELS - 4, bold=True)
    for place, line in enumerate(lines):
        d.middled(Point(0, y + place * TEXT * 1.22), line, "start", bold=True)
    if budget.remainder:
        left, right = sorted((0.0, -budget.remainder))
        d.add("rect", x=nought + left * scale, y=y - _BAR / 2, width=(right - left) * scale, height=_BAR, fill=INK)
        d.used.add("rest")
    return y + _ROW + (len(lines) - 1) * TEXT * 1.22


def _ruler(d: Drawing, at: Point, scale: float) -> None:
    """How long 1 mm of room is drawn."""
    d.line(at, at.plus(Point(_TICK * scale, 0)), stroke=INK, stroke_width=0.35)
    for place in (0, _TICK):
        tick = at.plus(Point(place * scale, 0))
        d.line(tick.plus(Point(0, -0.9)), tick.plus(Point(0, 0.9)), stroke=INK, stroke_width=0.35)
    d.middled(at.plus(Point(-1.5, 0)), f"{_TICK} mm of room", "end")


def _told(budget: Budget) -> str:
    if budget.remainder is None:
        return "cannot be summed, as an amount is not stated"
    rest = number(abs(budget.remainder))
    if rest == "0.0":
        return "nothing left over, nothing missing"
    return f"{rest} mm {'left over' if budget.remainder > 0 else 'missing'} with every amount used whole"
