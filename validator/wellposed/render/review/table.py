"""Measures before and after, as a table."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from wellposed.render.review.amounts import change, measure_name, reached, value
from wellposed.render.review.laid import wrapped
from wellposed.review.result import MeasureLine, Span

__all__ = ["table"]

_HEAD = ("", "before", "after", "change")
Row = tuple[str, str, str, str]


def table(lines: Iterable[MeasureLine], width: int) -> Iterator[str]:
    """A row for each measure; where the lines would be too long without the change, and then no table."""
    rows = [_row(line) for line in lines]
    if not rows:
        return
    wide = [max(len(row[column]) for row in (_HEAD, *rows)) for column in range(4)]
    columns = next((count for count in (4, 3) if sum(wide[:count]) + 2 * (count - 1) <= width), 0)
    yield from _columns([_HEAD, *rows], wide[:columns]) if columns else _lines(rows, width)


def _columns(rows: Iterable[Row], wide: Sequence[int]) -> Iterator[str]:
    for row in rows:
        yield "  ".join(f"{cell:<{size}}" for cell, size in zip(row, wide, strict=False)).rstrip()


def _lines(rows: Iterable[Row], width: int) -> Iterator[str]:
    """A line each, for a narrow page."""
    for name, before, after, _ in rows:
        yield from wrapped("- ", f"{name}: {before} → {after}", width)


def _row(full: MeasureLine) -> Row:
    line, name = _shortened(full), measure_name(full.measure, full.where)
    before = "not measured" if line.before is None else value(line.measure, line.before, line.unit)
    if line.after is None:
        return name, before, "cannot be told", ""
    told = reached(line.measure, line.after, line.unit, is_change=line.is_change)
    return (name, before, told, "") if line.is_change else (name, before, told, _change(line))


def _shortened(line: MeasureLine) -> MeasureLine:
    """To tenths: a hundredth of a measure is no more than arithmetic."""
    before = None if line.before is None else round(line.before, 1)
    after = line.after and Span(*(None if end is None else round(end, 1) for end in (line.after.low, line.after.high)))
    return replace(line, before=before, after=after)


def _change(line: MeasureLine) -> str:
    if line.before is None or line.after is None or line.after.low is None or line.after.low != line.after.high:
        return ""
    return change(line.measure, line.after.low - line.before, line.unit)
