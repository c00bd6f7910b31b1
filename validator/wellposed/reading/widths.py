"""A plain table of tooth widths: bytes to tooth and mm, or everything wrong with them by line and column.

Strict: UTF-8 without a mark, the header ``tooth,width``, then one line a tooth; ISO 3950 numbers; mm with a decimal
point and at most two decimals. Nothing is guessed, no other separator, no quotation marks, no space.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Any, NamedTuple

from wellposed import norms
from wellposed.reading.limits import MOST_DECIMALS
from wellposed.vocabulary.teeth import TEETH

HEADER = "tooth,width"
_CELLS = 2
_NUMBER = re.compile(rf"[0-9]{{1,2}}(\.[0-9]{{1,{MOST_DECIMALS}}})?", re.ASCII)
_LONGEST = 64
_PLAUSIBLE = "plausible.mm.tooth-width"


class WidthFault(NamedTuple):
    """One thing wrong with a table.

    line, column  from 1; columns in Unicode code points
    reason        not-utf-8, too-large, byte-order-mark, wrong-header, no-rows, wrong-number-of-cells, unknown-tooth,
                  tooth-twice, not-a-number or outside-range
    facts         what the wording needs, never the content of a cell
    """

    line: int
    column: int
    reason: str
    facts: Mapping[str, Any] = MappingProxyType({})


def read_widths(data: bytes) -> dict[str, float] | tuple[WidthFault, ...]:
    """The widths, tooth to mm, or every fault in the order of the lines."""
    if len(data) > _LONGEST * len(TEETH):
        return (WidthFault(1, 1, "too-large"),)
    try:
        text = data.decode()
    except UnicodeDecodeError as error:
        before = data[: error.start].decode()
        return (WidthFault(before.count("\n") + 1, len(before) - before.rfind("\n"), "not-utf-8"),)
    if text.startswith("\ufeff"):
        return (WidthFault(1, 1, "byte-order-mark"),)
    return _of_lines([line.removesuffix("\r") for line in text.removesuffix("\n").split("\n")])


def _of_lines(lines: list[str]) -> dict[str, float] | tuple[WidthFault, ...]:
    if lines[0] != HEADER:
        return (WidthFault(1, 1, "wrong-header", {"expected": HEADER}),)
    widths: dict[str, float] = {}
    first: dict[str, int] = {}
    faults = [fault for number, line in enumerate(lines[1:], 2) for fault in _row(number, line, widths, first)]
    if not faults and not widths:
        faults = [WidthFault(2, 1, "no-rows")]
    return tuple(faults) or widths


def _row(number: int, line: str, widths: dict[str, float], first: dict[str, int]) -> Iterator[WidthFault]:
    """What is wrong with a row; a sound one is entered."""
    cells = line.split(",")
    if len(cells) != _CELLS:
        yield WidthFault(number, 1, "wrong-number-of-cells", {"expected": _CELLS, "found": len(cells)})
        return
    tooth, width = cells
    if tooth not in TEETH:
        yield WidthFault(number, 1, "unknown-tooth")
    elif tooth in first:
        yield WidthFault(number, 1, "tooth-twice", {"first_line": first[tooth]})
    first.setdefault(tooth, number)
    yield from _width(number, len(tooth) + 2, width)
    if _NUMBER.fullmatch(width):
        widths.setdefault(tooth, float(width))


def _width(number: int, column: int, width: str) -> Iterator[WidthFault]:
    if not _NUMBER.fullmatch(width):
        yield WidthFault(number, column, "not-a-number", {"expected": MOST_DECIMALS})
        return
    least, most = norms.value(f"{_PLAUSIBLE}.least"), norms.value(f"{_PLAUSIBLE}.most")
    if not least <= float(width) <= most:
        yield WidthFault(number, column, "outside-range", {"least": least, "most": most})
