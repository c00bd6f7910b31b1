"""Where everything stands in the text: pointer to offset, line and column."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from functools import cached_property
from typing import NamedTuple

from wellposed.reading.pointer import Step, escape, index, steps

_LINE_END = re.compile("\r\n?|\n")


class Place(NamedTuple):
    """A place in the text: offset from 0, line and column from 1, all in Unicode code points."""

    offset: int
    line: int
    column: int


class Span(NamedTuple):
    """A value in the text: first offset, offset behind it, offset of its name, what it holds."""

    start: int
    end: int
    name: int | None = None
    inner: dict[str, Span] | list[Span] | None = None


class Lines:
    """Turns offsets into lines and columns. CR LF, LF and CR each end a line."""

    def __init__(self, text: str) -> None:
        self._text = text

    @cached_property
    def _starts(self) -> list[int]:
        return [0, *(end.end() for end in _LINE_END.finditer(self._text))]

    def place(self, offset: int) -> Place:
        """The line and column of an offset."""
        line = bisect_right(self._starts, offset)
        return Place(offset, line, offset - self._starts[line - 1] + 1)


class Positions:
    """Places of all values and names of one text, by pointer."""

    def __init__(self, text: str, root: Span) -> None:
        self._text = text
        self._lines = Lines(text)
        self._root = root

    def __iter__(self) -> Iterator[str]:
        """Every pointer, in the order of the text."""
        return _pointers(self._root, "")

    def value(self, pointer: str) -> Place:
        """Where the value starts; for a pointer to nothing, its nearest parent that is there."""
        return self._lines.place(self._nearest(pointer).start)

    def name(self, pointer: str) -> Place:
        """Where the member's name starts; the value itself where there is no name."""
        span = self._nearest(pointer)
        return self._lines.place(span.start if span.name is None else span.name)

    def source(self, pointer: str) -> str:
        """The text of the value."""
        span = self._nearest(pointer)
        return self._text[span.start : span.end]

    def _nearest(self, pointer: str) -> Span:
        span = self._root
        for step in steps(pointer):
            inner = _inner(span, step)
            if inner is None:
                break
            span = inner
        return span


def _inner(span: Span, step: Step) -> Span | None:
    if isinstance(span.inner, dict):
        return span.inner.get(str(step))
    place = index(step)
    if span.inner is None or place is None or place >= len(span.inner):
        return None
    return span.inner[place]


def _pointers(span: Span, pointer: str) -> Iterator[str]:
    yield pointer
    if span.inner is None:
        return
    pairs = span.inner.items() if isinstance(span.inner, dict) else enumerate(span.inner)
    for step, inner in pairs:
        yield from _pointers(inner, f"{pointer}/{escape(step)}")
