"""A plain table of landmark points: bytes to points, or everything wrong with them by line and column.

The header is ``tooth,landmark,x,y,z``, or ``tooth,landmark,moment,x,y,z`` where teeth are given twice. One line a
point: a tooth by its ISO 3950 number, one of its landmarks, the moment ``before``, ``after`` or ``both``, and mm with
a decimal point. x runs to the patient's left, y forward, z up and square to the occlusal plane; a header can name other
ways in their place, such as ``left,back,up``. Both arches stand as they bite. The line ``face,midline`` gives a point
on the facial midline; it is the same at every moment.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import accumulate
from typing import NamedTuple

from wellposed.reading.axes import HEADER, HEADER_OF_TWO, Header, header_read
from wellposed.reading.table import TableFault, lines_of
from wellposed.vocabulary.landmarks import BOTH, FACE, LANDMARKS, MIDLINE, MOMENTS, landmarks_of
from wellposed.vocabulary.teeth import TEETH

DECIMALS = 6

_NUMBER = re.compile(rf"-?[0-9]{{1,3}}(\.[0-9]{{1,{DECIMALS}}})?", re.ASCII)
_MOST_BYTES = 200_000
_MOMENT = HEADER_OF_TWO.index("moment") + 1
_BEFORE, _AFTER = MOMENTS

_PLAIN = Header(tuple(HEADER.split(",")), False, (("left", 1), ("forward", 1), ("up", 1)))

Point = tuple[float, float, float]
"""x to the patient's left, y forward, z up, mm."""
TeethPoints = Mapping[str, Mapping[str, Point]]
"""Tooth to landmark to point."""


@dataclass(frozen=True)
class Points:
    """What a table holds.

    teeth    per moment, ``before`` and perhaps ``after``, the points of each tooth
    midline  a point on the facial midline; None where none is given
    lines    (moment, tooth, landmark) to the line it stands in
    header   which way its coordinates ran; the points here are turned to left, forward, up
    """

    teeth: Mapping[str, TeethPoints]
    midline: Point | None = None
    lines: Mapping[tuple[str, str, str], int] = field(default_factory=dict)
    header: Header = _PLAIN


class _Row(NamedTuple):
    line: int
    columns: tuple[int, ...]
    tooth: str
    landmark: str
    moment: str
    place: tuple[str, ...]

    @property
    def moments(self) -> tuple[str, ...]:
        return MOMENTS if self.moment == BOTH else (self.moment,)


def read_points(data: bytes) -> Points | tuple[TableFault, ...]:
    """The points, or every fault in the order of the lines.

    Reasons beside those of every table: unknown-tooth, unknown-landmark, landmark-not-of-this-tooth, unknown-moment,
    face-has-no-moment, not-a-coordinate, point-twice, two-landmarks-in-one-place, moment-missing.
    """
    lines = lines_of(data, _MOST_BYTES)
    if isinstance(lines, TableFault):
        return (lines,)
    header = header_read(lines[0])
    if header is None:
        return (TableFault(1, 1, "wrong-header", {"expected": f"{HEADER} or {HEADER_OF_TWO}"}),)
    return _of_lines(lines[1:], header)


def _of_lines(lines: list[str], header: Header) -> Points | tuple[TableFault, ...]:
    rows, faults = [], []
    for number, line in enumerate(lines, 2):
        found = _row(number, line, header)
        rows += [found] if isinstance(found, _Row) else []
        faults += list(_wrong(found, header.two)) if isinstance(found, _Row) else [found]
    faults += list(_doubled(rows))
    faults += [] if faults else list(_lacking(rows, header))
    return tuple(sorted(faults, key=lambda fault: fault[:2])) or _points(rows, header)


def _row(number: int, line: str, header: Header) -> _Row | TableFault:
    cells = line.split(",")
    expected = len(header.cells)
    if len(cells) != expected:
        return TableFault(number, 1, "wrong-number-of-cells", {"expected": expected, "found": len(cells)})
    columns = tuple(accumulate((len(cell) + 1 for cell in cells[:-1]), initial=1))
    if not header.two:
        cells.insert(2, BOTH if cells[0] == FACE else _BEFORE)
        columns = (*columns[:2], 1, *columns[2:])
    tooth, landmark, moment, *place = cells
    return _Row(number, columns, tooth, landmark, moment, tuple(place))


def _wrong(row: _Row, two: bool) -> Iterator[TableFault]:
    """What is wrong with a row by itself."""
    if row.tooth not in TEETH and row.tooth != FACE:
        yield TableFault(row.line, row.columns[0], "unknown-tooth")
    elif row.landmark not in _landmarks(row.tooth):
        known = row.landmark in (*LANDMARKS, MIDLINE)
        reason = "landmark-not-of-this-tooth" if known else "unknown-landmark"
        yield TableFault(row.line, row.columns[1], reason, {"expected": ", ".join(_landmarks(row.tooth))})
    if two and row.moment not in (*MOMENTS, BOTH):
        yield TableFault(row.line, row.columns[2], "unknown-moment")
    elif row.tooth == FACE and row.moment != BOTH:
        yield TableFault(row.line, row.columns[2], "face-has-no-moment")
    for column, cell in zip(row.columns[3:], row.place, strict=True):
        if not _NUMBER.fullmatch(cell):
            yield TableFault(row.line, column, "not-a-coordinate", {"expected": DECIMALS})


def _landmarks(tooth: str) -> tuple[str, ...]:
    return (MIDLINE,) if tooth == FACE else landmarks_of(tooth)


def _doubled(rows: Iterable[_Row]) -> Iterator[TableFault]:
    """A point given twice, and two landmarks of a tooth at one place."""
    points: dict[tuple[str, str, str], int] = {}
    places: dict[tuple[str, ...], int] = {}
    for row in rows:
        names = [(moment, row.tooth, row.landmark) for moment in row.moments]
        spots = [(moment, row.tooth, *row.place) for moment in row.moments]
        if twice := [points[name] for name in names if name in points]:
            yield TableFault(row.line, row.columns[0], "point-twice", {"first_line": min(twice)})
        elif same := [places[spot] for spot in spots if spot in places]:
            yield TableFault(row.line, row.columns[3], "two-landmarks-in-one-place", {"first_line": min(same)})
        for name, spot in zip(names, spots, strict=True):
            points.setdefault(name, row.line)
            places.setdefault(spot, row.line)


def _lacking(rows: list[_Row], header: Header) -> Iterator[TableFault]:
    """No tooth at all; or a column for the moment, and one of the moments without a point."""
    moments = {moment for row in rows if row.tooth != FACE for moment in row.moments}
    if not moments:
        yield TableFault(2, 1, "no-rows")
    elif header.two:
        for moment in MOMENTS:
            if moment not in moments:
                yield TableFault(1, _MOMENT, "moment-missing", {"moment": moment})


def _points(rows: Iterable[_Row], header: Header) -> Points:
    teeth: dict[str, dict[str, dict[str, Point]]] = {moment: {} for moment in (MOMENTS if header.two else MOMENTS[:1])}
    lines: dict[tuple[str, str, str], int] = {}
    midline = None
    for row in rows:
        place = header.ours(tuple(float(cell) for cell in row.place))
        if row.tooth == FACE:
            midline = place
            continue
        for moment in row.moments:
            teeth[moment].setdefault(row.tooth, {})[row.landmark] = place
            lines[moment, row.tooth, row.landmark] = row.line
    return Points(teeth, midline, lines, header)
