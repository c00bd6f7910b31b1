"""Plain tables of ours: bytes to lines, or the one fault that keeps them from being read at all.

Strict: UTF-8 without a mark, a header that is known, commas between cells; nothing is guessed, no other separator, no
quotation marks, no space.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any, NamedTuple


class TableFault(NamedTuple):
    """One thing wrong with a table.

    line, column  from 1; columns in Unicode code points
    reason        a code of the reader that found it; those of every table are not-utf-8, too-large, byte-order-mark,
                  wrong-header, no-rows and wrong-number-of-cells
    facts         what the wording needs, never the content of a cell
    """

    line: int
    column: int
    reason: str
    facts: Mapping[str, Any] = MappingProxyType({})


def lines_of(data: bytes, most: int) -> list[str] | TableFault:
    """The lines of a table of at most so many bytes, without their line breaks."""
    if len(data) > most:
        return TableFault(1, 1, "too-large", {"most": most})
    try:
        text = data.decode()
    except UnicodeDecodeError as error:
        before = data[: error.start].decode()
        return TableFault(before.count("\n") + 1, len(before) - before.rfind("\n"), "not-utf-8")
    if text.startswith("\ufeff"):
        return TableFault(1, 1, "byte-order-mark")
    return [line.removesuffix("\r") for line in text.removesuffix("\n").split("\n")]


def header_of(data: bytes) -> str:
    """The first line as far as it can be read, to tell one table from another."""
    return data.partition(b"\n")[0].decode(errors="replace").removesuffix("\r")
