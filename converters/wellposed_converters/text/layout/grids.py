"""Tables drawn with bars, tabs or dotted leaders: which lines are rows, and the cells of each.

A single bar is no table: '21|12' and 'upper 21 | 12' are teeth on both sides of the midline.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from wellposed_converters.text.layout.lines import Line
from wellposed_converters.text.layout.words import words

FRAMED: Final = re.compile(r"\|.*\|", re.DOTALL)
FRAMED_BARS: Final = 3
OPEN_BARS: Final = 2
BAR: Final = re.compile(r"\|")
PADDED_BAR: Final = re.compile(r"(?<=[\s|])\|(?=[\s|])|(?<=\s)\|(?=\s)")
TAB: Final = re.compile(r"\t")
LEADER: Final = re.compile(r"\.{4,}|(?:\s\.){3,}|…{2,}")
RULED: Final = re.compile(r"[\s|:+=\u2013\u2014-]+")
TOGETHER: Final = 2


@dataclass(frozen=True)
class Cell:
    """What a cell holds, without the space around it, and the head of its column, an empty span where there is none."""

    start: int
    end: int
    column_start: int = 0
    column_end: int = 0


@dataclass(frozen=True)
class Row:
    """A line of a table: its sort is "row", "table_head", or "numbering" where the line is only drawn."""

    sort: str
    cells: tuple[Cell, ...] = ()


def rows(text: str, of: Sequence[Line]) -> dict[int, Row]:
    """The rows by line."""
    found: dict[int, Row] = {}
    for cut in (_bars, _tabs):
        for group in _groups(text, of, cut):
            if set(group) & set(found):
                continue
            found |= _headed(text, of, group)
    for at, line in enumerate(of):
        leaders = list(LEADER.finditer(text, line.start, line.end))
        if at not in found and len(leaders) == 1:
            cells = _cells(text, [line.start, *leaders[0].span(), line.end])
            found |= {at: Row("row", cells)} if all(cell.end > cell.start for cell in cells) else {}
    return found


def _bars(text: str, line: Line) -> tuple[Cell, ...]:
    framed = FRAMED.fullmatch(text, line.start, line.end) is not None
    marks = [m.span() for m in (BAR if framed else PADDED_BAR).finditer(text, line.start, line.end)]
    if len(marks) < (FRAMED_BARS if framed else OPEN_BARS):
        return ()
    edges = [edge for mark in marks for edge in mark]
    return _cells(text, edges[1:-1] if framed else [line.start, *edges, line.end])


def _tabs(text: str, line: Line) -> tuple[Cell, ...]:
    edges = [edge for mark in TAB.finditer(text, line.start, line.end) for edge in mark.span()]
    return _cells(text, [line.start, *edges, line.end]) if edges else ()


def _cells(text: str, edges: Sequence[int]) -> tuple[Cell, ...]:
    return tuple(_cell(text, a, b) for a, b in zip(edges[::2], edges[1::2], strict=True))


def _cell(text: str, start: int, end: int) -> Cell:
    held = text[start:end]
    begin = start + len(held) - len(held.lstrip())
    return Cell(begin, max(begin, start + len(held.rstrip())))


Cut = Callable[[str, Line], tuple[Cell, ...]]


def _groups(text: str, of: Sequence[Line], cut: Cut) -> Iterator[dict[int, tuple[Cell, ...]]]:
    """Neighbouring lines that have cells. One alone is a row only between bars at both ends."""
    group: dict[int, tuple[Cell, ...]] = {}
    for at, line in enumerate((*of, Line(0, 0))):
        cells = cut(text, line) if line else ()
        if cells:
            group[at] = cells
            continue
        if len(group) >= TOGETHER or any(FRAMED.fullmatch(text, of[one].start, of[one].end) for one in group):
            yield group
        group = {}


def _headed(text: str, of: Sequence[Line], group: dict[int, tuple[Cell, ...]]) -> dict[int, Row]:
    """The rows of one table; a row with more or fewer cells than the head has no columns."""
    ruled = {at for at in group if RULED.fullmatch(text, of[at].start, of[at].end)}
    first = min(group)
    head = group[first] if first not in ruled and _names_columns(text, group[first], first + 1 in ruled) else ()
    drawn = {at: Row("numbering") for at in ruled}
    said = {at: Row("row", _under(head, cells)) for at, cells in group.items() if at not in ruled}
    return said | drawn | ({first: Row("table_head", head)} if head else {})


def _names_columns(text: str, cells: Sequence[Cell], underlined: bool) -> bool:
    """Whether a first row holds only the names of columns; underlined, any words without a figure will do."""
    held = [" ".join(text[cell.start : cell.end].split()).casefold() for cell in cells]
    if held[0] not in words("table", "first"):
        return False
    known = words("table", "columns")
    return all(one in known or not one or (underlined and not re.search(r"\d", one)) for one in held)


def _under(head: Sequence[Cell], cells: Sequence[Cell]) -> tuple[Cell, ...]:
    if len(head) != len(cells):
        return tuple(cells)
    return tuple(
        replace(cell, column_start=top.start, column_end=top.end) for top, cell in zip(head, cells, strict=True)
    )
