"""A plain table of tooth widths: bytes to tooth and mm, or everything wrong with them by line and column.

Strict: UTF-8 without a mark, the header ``tooth,width``, then one line a tooth; ISO 3950 numbers; mm with a decimal
point and at most two decimals. Nothing is guessed, no other separator, no quotation marks, no space.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from wellposed import norms
from wellposed.reading.limits import MOST_DECIMALS
from wellposed.reading.table import TableFault, lines_of
from wellposed.vocabulary.teeth import TEETH

HEADER = "tooth,width"
_CELLS = 2
_NUMBER = re.compile(rf"[0-9]{{1,2}}(\.[0-9]{{1,{MOST_DECIMALS}}})?", re.ASCII)
_LONGEST = 64
_PLAUSIBLE = "plausible.mm.tooth-width"


def read_widths(data: bytes) -> dict[str, float] | tuple[TableFault, ...]:
    """The widths, tooth to mm, or every fault in the order of the lines.

    Reasons beside those of every table: unknown-tooth, tooth-twice, not-a-number, outside-range.
    """
    lines = lines_of(data, _LONGEST * len(TEETH))
    return (lines,) if isinstance(lines, TableFault) else _of_lines(lines)


def _of_lines(lines: list[str]) -> dict[str, float] | tuple[TableFault, ...]:
    if lines[0] != HEADER:
        return (TableFault(1, 1, "wrong-header", {"expected": HEADER}),)
    widths: dict[str, float] = {}
    first: dict[str, int] = {}
    faults = [fault for number, line in enumerate(lines[1:], 2) for fault in _row(number, line, widths, first)]
    if not faults and not widths:
        faults = [TableFault(2, 1, "no-rows")]
    return tuple(faults) or widths


def _row(number: int, line: str, widths: dict[str, float], first: dict[str, int]) -> Iterator[TableFault]:
    """What is wrong with a row; a sound one is entered."""
    cells = line.split(",")
    if len(cells) != _CELLS:
        yield TableFault(number, 1, "wrong-number-of-cells", {"expected": _CELLS, "found": len(cells)})
        return
    tooth, width = cells
    if tooth not in TEETH:
        yield TableFault(number, 1, "unknown-tooth")
    elif tooth in first:
        yield TableFault(number, 1, "tooth-twice", {"first_line": first[tooth]})
    first.setdefault(tooth, number)
    yield from _width(number, len(tooth) + 2, width)
    if _NUMBER.fullmatch(width):
        widths.setdefault(tooth, float(width))


def _width(number: int, column: int, width: str) -> Iterator[TableFault]:
    if not _NUMBER.fullmatch(width):
        yield TableFault(number, column, "not-a-number", {"expected": MOST_DECIMALS})
        return
    least, most = norms.value(f"{_PLAUSIBLE}.least"), norms.value(f"{_PLAUSIBLE}.most")
    if not least <= float(width) <= most:
        yield TableFault(number, column, "outside-range", {"least": least, "most": most})
