"""The page a read-back stands on: its first lines, its headings, the sentences below them, its last lines.

A sentence goes on over lines until one ends in a full stop outside quotation marks; neither an amount nor an id nor a
name ends a line so. Offsets are those of the text.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import Final, NamedTuple

from wellposed.render.readback.forms import FOOT, NUMBERS
from wellposed.render.readback.sentence import FOUR, HEADINGS
from wellposed_converters.text.clause import Question, Span

_NAMES: Final = {words: name for name, words in HEADINGS.items()}
_IDENTITY: Final = re.compile(r"([A-Za-z0-9][A-Za-z0-9._:/-]{0,63}), revision ([1-9][0-9]{0,3})[.]")
_EMPTY: Final = "Nothing."
_FOOT: Final = FOOT[0].partition(":")[0] + ":"


class Line(NamedTuple):
    """A line that is not empty, without the spaces at its end."""

    start: int
    text: str

    @property
    def span(self) -> Span:
        """Where it stands."""
        return self.start, self.start + len(self.text)


class Entry(NamedTuple):
    """A sentence with its heading and the id before it, "" for none; on one line, however many it stood on."""

    heading: str
    id: str
    text: str
    span: Span


class Page(NamedTuple):
    """A read-back taken apart. What has no place on the page is asked about."""

    identity: tuple[str, int] | None
    entries: tuple[Entry, ...]
    questions: tuple[Question, ...]


def is_read_back(text: str) -> bool:
    """Whether a text is a read-back: it begins as one, and has a heading of one."""
    lines = _lines(text)
    return bool(lines) and lines[0].text == NUMBERS and any(line.text in _NAMES for line in lines)


def page_of(text: str) -> Page:
    """The parts of a read-back."""
    lines = _lines(text)[1:]
    identity = _IDENTITY.fullmatch(lines[0].text) if lines else None
    body = lines[1:] if identity else lines
    sections, foot = _sections(body)
    entries = [entry for heading, inside in sections[1:] for entry in _entries(heading, inside)]
    asked = [*_heads(sections), *_emptied(sections[1:]), *_ends(foot, len(text))]
    asked += [] if identity else [Question("not_understood", "readback-identity", (_whole(lines[:1], len(text)),))]
    told = (identity[1], int(identity[2])) if identity else None
    return Page(told, tuple(entries), tuple(asked))


def _lines(text: str) -> list[Line]:
    """The lines that are not empty."""
    found, at = [], 0
    for line in text.splitlines(keepends=True):
        if line.strip():
            found.append(Line(at, line.rstrip()))
        at += len(line)
    return found


Section = tuple[str, list[Line]]


def _sections(lines: Iterable[Line]) -> tuple[list[Section], list[Line]]:
    """Name of a heading ("" before the first) and its lines; then the last lines of the page."""
    sections: list[Section] = [("", [])]
    rest = list(lines)
    for at, line in enumerate(rest):
        if line.text.startswith(_FOOT):
            return sections, rest[at:]
        if line.text in _NAMES:
            sections.append((_NAMES[line.text], []))
        else:
            sections[-1][1].append(line)
    return sections, []


def _entries(heading: str, lines: list[Line]) -> Iterator[Entry]:
    """The sentences below a heading."""
    open_: list[Line] = []
    for line in lines if not _nothing(lines) else []:
        open_.append(line)
        if _ended(open_):
            yield _entry(heading, open_)
            open_ = []
    if open_:
        yield _entry(heading, open_)


def _ended(lines: Iterable[Line]) -> bool:
    text = " ".join(line.text for line in lines)
    return text.endswith(".") and text.count("“") == text.count("”")


def _entry(heading: str, lines: list[Line]) -> Entry:
    first = lines[0].text
    name, _, told = ("", "", first) if first.startswith(" ") else first.partition(" ")
    text = " ".join([told.strip(), *(line.text.strip() for line in lines[1:])])
    return Entry(heading, name, text, _whole(lines, 0))


def _whole(lines: list[Line], end: int) -> Span:
    return (lines[0].start, lines[-1].span[1]) if lines else (end, end)


def _heads(sections: list[Section]) -> Iterator[Question]:
    """Headings that are there twice, or not there though they always are; what stands before the first."""
    names = [name for name, _ in sections]
    if sections[0][1]:
        yield Question("not_understood", "readback-stray", (_whole(sections[0][1], 0),))
    for name in HEADINGS:
        times = names.count(name)
        if times > 1 or (times == 0 and name in FOUR):
            asks = f"readback-heading-{'twice' if times else 'lacking'}"
            yield Question("not_understood", asks, ((0, len(NUMBERS)),), facts=(("heading", HEADINGS[name]),))


def _nothing(lines: list[Line]) -> bool:
    return [line.text for line in lines] == [_EMPTY]


def _emptied(sections: list[Section]) -> Iterator[Question]:
    """Headings with no sentence below them where it does not say that there is nothing."""
    for name, lines in sections:
        if not lines or (_nothing(lines) and name not in FOUR):
            facts = (("heading", HEADINGS[name]),)
            yield Question("not_understood", "readback-heading-empty", (_whole(lines, 0),), facts=facts)


def _ends(foot: list[Line], end: int) -> Iterator[Question]:
    """The last lines, which must be those of a read-back."""
    told, meant = " ".join(line.text.strip() for line in foot), " ".join(FOOT)
    if told != meant:
        yield Question("not_understood", "readback-end", (_whole(foot, end),))
