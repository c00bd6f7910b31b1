"""Measures before and after, as a table."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from wellposed.render.amounts import change, value
from wellposed.render.review.amounts import measure_name, reached
from wellposed.render.review.laid import wrapped
from wellposed.review.result import MeasureLine, Span

__all__ = ["table"]

_HEAD = ("", "before", "after", "change")
Row = tuple[str, ...]


def table(lines: Iterable[MeasureLine], width: int) -> Iterator[str]:
    """A row for each measure; where its lines are too long without the column of changes, and then as no table."""
    told = list(lines)
    if not told:
        return
    full, short = [_HEAD, *map(_full, told)], [_HEAD[:3], *map(_short, told)]
    rows = next((rows for rows in (full, short) if sum(_wide(rows)) + 2 * len(rows[0]) - 2 <= width), None)
    yield from _columns(rows) if rows else _lines(short[1:], width)


def _wide(rows: Sequence[Row]) -> list[int]:
    return [max(map(len, column)) for column in zip(*rows, strict=True)]


def _columns(rows: Sequence[Row]) -> Iterator[str]:
    for row in rows:
        yield "  ".join(f"{cell:<{size}}" for cell, size in zip(row, _wide(rows), strict=True)).rstrip()


def _lines(rows: Iterable[Row], width: int) -> Iterator[str]:
    """A line each, for a narrow page."""
    for name, before, after in rows:
        yield from wrapped("- ", f"{name}: {before} → {after}", width)


def _short(full: MeasureLine) -> Row:
    """Its name, before and after; only by how much it changes where it was not measured."""
    line, name = _shortened(full), measure_name(full.measure, full.where)
    before = "not measured" if line.before is None else value(line.measure, line.before, line.unit)
    if line.after is None:
        return name, before, "cannot be told"
    return name, before, reached(line.measure, line.after, line.unit, is_change=line.is_change)


def _full(full: MeasureLine) -> Row:
    """The same with its change in a column of its own."""
    line, (name, before, after) = _shortened(full), _short(full)
    if line.after is None or not line.is_change:
        return name, before, after, _change(line)
    return name, before, "not known", after.removeprefix("a change of ")


def _shortened(line: MeasureLine) -> MeasureLine:
    """To tenths: a hundredth of a measure is no more than arithmetic."""
    before = None if line.before is None else round(line.before, 1)
    after = line.after and Span(*(None if end is None else round(end, 1) for end in (line.after.low, line.after.high)))
    return replace(line, before=before, after=after)


def _change(line: MeasureLine) -> str:
    if line.before is None or line.after is None or line.after.low is None or line.after.low != line.after.high:
        return ""
    return change(line.measure, line.after.low - line.before, line.unit)
