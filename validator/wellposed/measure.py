"""bytes → what can be derived from the measurements in them, or why they cannot be used."""

from __future__ import annotations

from dataclasses import dataclass

from wellposed.check import sound
from wellposed.derive.table import Derived, derived, derived_from_widths
from wellposed.landmarks.result import PointsTaken
from wellposed.reading.axes import HEADER, HEADER_OF_TWO, header_read
from wellposed.reading.limits import MOST_BYTES
from wellposed.reading.points import read_points
from wellposed.reading.table import TableFault, header_of, lines_of
from wellposed.reading.widths import HEADER as WIDTHS_HEADER
from wellposed.reading.widths import read_widths
from wellposed.report import Report


@dataclass(frozen=True, slots=True)
class Measures:
    """What was derived, and from which document; a table of widths has no id and no revision."""

    derived: tuple[Derived, ...]
    id: str | None = None
    revision: int | None = None


@dataclass(frozen=True, slots=True)
class PointMeasures:
    """What landmark points tell, and what follows from the widths among it."""

    taken: PointsTaken
    derived: tuple[Derived, ...]


def measure(data: bytes) -> Measures | Report:
    """All that can be derived from a prescription, or the report on why it cannot be used.

    The report is ``unreadable``, ``refused``, or ``not-judged`` for another document of the conversation.
    """
    made = sound(data)
    return made if isinstance(made, Report) else Measures(derived(made), made.id, made.revision)


def measure_table(data: bytes) -> Measures | PointMeasures | tuple[TableFault, ...]:
    """What a table tells, of tooth widths or of landmark points as its header says, or all that is wrong with it."""
    header = header_of(data)
    if header == WIDTHS_HEADER:
        return measure_widths(data)
    if header_read(header) is not None:
        return measure_points(data)
    lines = lines_of(data, MOST_BYTES)
    expected = f"{WIDTHS_HEADER} or {HEADER} or {HEADER_OF_TWO}"
    return (lines if isinstance(lines, TableFault) else TableFault(1, 1, "wrong-header", {"expected": expected}),)


def measure_widths(data: bytes) -> Measures | tuple[TableFault, ...]:
    """What follows from a plain table of tooth widths, or everything wrong with the table."""
    widths = read_widths(data)
    return Measures(derived_from_widths(widths)) if isinstance(widths, dict) else widths


def measure_points(data: bytes) -> PointMeasures | tuple[TableFault, ...]:
    """What follows from a plain table of landmark points, or everything wrong with the table."""
    from wellposed.landmarks.table import taken  # noqa: PLC0415 - scipy is loaded for points only

    points = read_points(data)
    found = taken(points) if not isinstance(points, tuple) else points
    if isinstance(found, tuple):
        return found
    widths = next(dict(one.values[0]) for one in found.of_teeth if one.measure == "tooth-width")
    return PointMeasures(found, derived_from_widths(widths))
