"""The lines of a text: where they stand, how they are marked, and which of them go on in the next."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from wellposed_converters.text.clause import Span
from wellposed_converters.text.layout.words import compiled, pattern, plain, table, words

BREAK: Final = re.compile(r"\r\n|[\n\r\x0b\x0c\x85\u2028\u2029]")
BULLET: Final = re.compile(r"[-\u2013\u2014•*·▪◦‣●○](?=\s+\S)")
ITEM: Final = re.compile(r"(?:(\d{1,2})[.)]|\((\d{1,2})\)|([a-z])\)|\(([a-z])\))(?=\s+\S)")
RULE: Final = re.compile(r"[-_=*~#]{3,}")
KEYED: Final = re.compile(r"[^:.;]{1,40}:(?:\s|$)")
COMPARED: Final = re.compile(r">\s*[.,]?\d")
FEWEST: Final = 2


@dataclass(frozen=True)
class Line:
    """A line without the white space around it; empty when there is nothing else."""

    start: int
    end: int

    def __bool__(self) -> bool:
        return self.end > self.start


def lines(text: str) -> tuple[Line, ...]:
    """Every line, empty ones too."""
    edges = [0, *(edge for found in BREAK.finditer(text) for edge in found.span()), len(text)]
    return tuple(_stripped(text, a, b) for a, b in zip(edges[::2], edges[1::2], strict=True))


def _stripped(text: str, start: int, end: int) -> Line:
    words_of_line = text[start:end]
    begin = start + len(words_of_line) - len(words_of_line.lstrip())
    return Line(begin, max(begin, start + len(words_of_line.rstrip())))


def list_marks(text: str, of: Sequence[Line]) -> dict[int, Span]:
    """The marks that lines begin with, by line.

    A number or letter is a mark only as one of at least two in a row, from 1 or a on: '12. Derotate' may name a tooth.
    """
    marks = {at: found.span() for at, line in enumerate(of) if (found := BULLET.match(text, line.start, line.end))}
    for run in _runs(text, of):
        if len(run) >= FEWEST:
            marks.update(run)
    return marks


def _runs(text: str, of: Sequence[Line]) -> Iterator[dict[int, Span]]:
    """The numbered items in rows that count up from 1 or a, one style of mark at a time."""
    found = [(at, item) for at, line in enumerate(of) if (item := ITEM.match(text, line.start, line.end))]
    for style in range(1, ITEM.groups + 1):
        run: dict[int, Span] = {}
        for at, item in found:
            if item[style] is None:
                continue
            value = int(item[style]) if item[style].isdigit() else ord(item[style]) - ord("a") + 1
            if value == 1 or value != len(run) + 1:
                yield run
                run = {}
            if value == len(run) + 1:
                run[at] = item.span()
        yield run


def quoted(text: str, of: Sequence[Line]) -> frozenset[int]:
    """The lines of an earlier message: marked with '>', the line that says who wrote it, all below a dividing line.

    A lone line such as '> 2 mm overjet' is a comparison, and is read.
    """
    marked = {at for at, line in enumerate(of) if text[line.start : line.end].startswith(">")}
    lone = {at for at in marked if COMPARED.match(text, of[at].start) and not {at - 1, at + 1} & marked}
    below = _first(text, of, "below")
    wrote = compiled(table("quoted")["attribution"])
    said = {at for at, line in enumerate(of) if line and wrote.fullmatch(text[line.start : line.end])}
    apart = (marked - lone) | said
    return frozenset(at for at, line in enumerate(of) if line and (at in apart or at >= below))


def _first(text: str, of: Sequence[Line], member: str) -> int:
    mark = pattern("quoted", member)
    return next((at for at, line in enumerate(of) if mark.fullmatch(text[line.start : line.end])), len(of))


def is_rule(text: str, line: Line) -> bool:
    """Whether the line is only drawn: '-----', '====='."""
    return RULE.fullmatch(text, line.start, line.end) is not None


def is_postscript(text: str, line: Line) -> bool:
    """Whether the line begins with PS or NB."""
    first = text[line.start : line.end].split(maxsplit=1)
    return bool(first) and plain(first[0]).casefold() in words("postscript", "words")


def goes_on(text: str, before: Line, after: Line, widest: int) -> bool:
    """Whether the sentence of the first line plainly goes on in the second.

    It does after a joining word, before a word that resumes, after a comma unless a key begins the next line, and where
    a wrapped line breaks before a lower-case word or a figure. ``widest`` is the length of the longest line.
    """
    here, there = text[before.start : before.end], text[after.start : after.end]
    first, last = there.split(maxsplit=1)[0], here.split()[-1]
    if here[-1] in ".:;?!":
        return False
    if (last if len(last) == 1 else last.casefold()) in words("line", "joining"):
        return True
    if KEYED.match(there):
        return False
    if first[0].isdigit() and last.casefold() in words("line", "counting"):
        return True
    return (
        here[-1] == "," or (first[0].islower() and first in words("line", "resuming")) or _wrapped(here, first, widest)
    )


def _wrapped(here: str, first: str, widest: int) -> bool:
    filled = len(here) + 1 + len(first) > widest >= table("line")["wrapped_from"]
    return filled and (first[0].islower() or first[0].isdigit())
