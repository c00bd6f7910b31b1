"""A text cut into parts, each with its sort; which heading governs it is settled afterwards."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from wellposed_converters.text.clause import Span
from wellposed_converters.text.layout.grids import Cell, Row, rows
from wellposed_converters.text.layout.lines import Line, goes_on, is_postscript, is_rule, lines, list_marks, quoted
from wellposed_converters.text.layout.notices import greeting_before, is_name_line, notice, subject
from wellposed_converters.text.layout.sentences import Sentence, sentences
from wellposed_converters.text.layout.words import headings, table, words

HEADED: Final = re.compile(r"(?:#{1,6} +)?[*_]{0,2}(?=\S)([^:*_#]{1,60}?)\s?:?[*_]{0,2}:?")
OPENED: Final = re.compile(r"([^:;,.]{1,30}?)\s*(?::|\s[\u2013-])(?=\s)")
KEY: Final = re.compile(r"[^:;.?!]{1,60}:(?=\s|$)")


@dataclass(frozen=True)
class Part:
    """A stretch of the text.

    section  of a heading: the section it opens, None for the one it stands in
    governs  of a heading: whether it says what is below it
    opens    of a segment: whether it ends its line with a colon
    label    of a subject: whether it is only the label, with something to be read after it
    """

    start: int
    end: int
    sort: str
    of: str | None = None
    cells: tuple[Cell, ...] = ()
    key: Span | None = None
    earlier: Span | None = None
    section: str | None = None
    governs: bool = False
    opens: bool = False
    label: bool = False


@dataclass(frozen=True)
class _Page:
    """The text with what is known of its lines."""

    text: str
    lines: tuple[Line, ...]
    rows: Mapping[int, Row]
    marks: Mapping[int, Span]
    quoted: frozenset[int]
    widest: int

    def said(self, at: int) -> str:
        return self.text[self.lines[at].start : self.lines[at].end]


def parts(text: str) -> tuple[Part, ...]:
    """The parts in order; together every character that is not white space."""
    of = lines(text)
    widest = max(line.end - line.start for line in of)
    page = _Page(text, of, rows(text, of), list_marks(text, of), quoted(text, of), widest)
    return tuple(_parts(page))


def _parts(page: _Page) -> Iterator[Part]:
    at, signing = 0, False
    while at < len(page.lines):
        if not page.lines[at]:
            at += 1
            continue
        found = _lone(page, at, signing)
        last = at
        if not found:
            last = _last_line(page, at)
            found = tuple(_read(page, at, last))
        yield from found
        signing = found[-1].sort == "signature"
        at = last + 1


def _lone(page: _Page, at: int, signing: bool) -> tuple[Part, ...]:
    """The parts of a line that neither goes on in the next nor is read as sentences; none for one that is."""
    line, said = page.lines[at], page.said(at)
    start, end = line.start, line.end
    if at in page.quoted:
        return (Part(start, end, "quoted"),)
    if at in page.rows:
        row = page.rows[at]
        return (Part(start, end, row.sort, "heading" if row.sort == "table_head" else None, row.cells),)
    if is_rule(page.text, line):
        return (Part(start, end, "numbering"),)
    if signing and is_name_line(said):
        return (Part(start, end, "signature", "signature"),)
    return _heading(page, at) or _titled(page, line, said) or _noticed(page, line)


def _heading(page: _Page, at: int) -> tuple[Part, ...]:
    """A line that is a heading of the data, with its number if it has one."""
    known = _known(page, at)
    if known is None or (known[1] and not _followed(page, at)):
        return ()
    line, mark = page.lines[at], page.marks.get(at)
    start = _after(page, at)
    number = (Part(*mark, "numbering"),) if mark else ()
    of = None if known[1] else "heading"
    return (*number, Part(start, line.end, "heading", of, section=known[0], governs=known[1]))


def _known(page: _Page, at: int) -> tuple[str | None, bool] | None:
    """What the data say of the line as a heading; items of a bulleted list are none."""
    if at in page.marks and not page.text[page.marks[at][0]].isalnum():
        return None
    found = HEADED.fullmatch(page.text, _after(page, at), page.lines[at].end)
    return headings().get(_name(found[1])) if found else None


def _after(page: _Page, at: int) -> int:
    """Where the line begins behind its mark."""
    line, mark = page.lines[at], page.marks.get(at)
    if mark is None:
        return line.start
    return line.end - len(page.text[mark[1] : line.end].lstrip())


def _name(said: str) -> str:
    return " ".join(said.casefold().replace("\u2019", "'").split())


def _followed(page: _Page, at: int) -> bool:
    """Whether the next line, at most one blank line further, says something below a heading and not beside it."""
    below = next((after for after in (at + 1, at + 2) if after < len(page.lines) and page.lines[after]), None)
    if below is None or _known(page, below) is not None or notice(page.said(below)) is not None:
        return False
    return not (at in page.marks and below in page.marks and page.text[page.marks[below][0]].isalnum())


def _titled(page: _Page, line: Line, said: str) -> tuple[Part, ...]:
    """The parts of a line 'Subject: ...'."""
    found = subject(said)
    if found is None:
        return ()
    length, idle = found
    if idle:
        return (Part(line.start, line.end, "subject", "subject"),)
    label = Part(line.start, line.start + len(said[:length].rstrip()), "subject", "subject", label=True)
    return (label, *_sentences(page.text, line.start + length, line.end))


def _noticed(page: _Page, line: Line) -> tuple[Part, ...]:
    found = tuple(_sentences(page.text, line.start, line.end))
    return found if all(part.sort in ("greeting", "admin", "signature") for part in found) else ()


def _last_line(page: _Page, at: int) -> int:
    """The last of the lines over which the sentence that begins on a line goes on."""
    while at + 1 < len(page.lines) and page.lines[at + 1] and _may_follow(page, at + 1):
        if not goes_on(page.text, page.lines[at], page.lines[at + 1], page.widest):
            break
        at += 1
    return at


def _may_follow(page: _Page, at: int) -> bool:
    apart = at in page.marks or is_postscript(page.text, page.lines[at])
    return not apart and not _lone(page, at, signing=False)


def _read(page: _Page, first: int, last: int) -> Iterator[Part]:
    start, end = page.lines[first].start, page.lines[last].end
    if first in page.marks:
        mark = page.marks[first]
        yield Part(*mark, "numbering")
        start = mark[1]
    yield from _sentences(page.text, start, end)


def _sentences(text: str, start: int, end: int) -> Iterator[Part]:
    key = earlier = None
    for sentence in sentences(text, start, end):
        begun, heads = _peeled(text, sentence)
        yield from heads
        if begun == sentence.end:
            continue
        of = notice(text[begun : sentence.end])
        if of:
            yield Part(begun, sentence.end, "signature" if of in ("closing", "signature") else of, of)
            continue
        own = _key(text, begun, sentence.end)
        key = own or key
        opens = sentence.end == end and text[end - 1] == ":"
        yield Part(begun, sentence.end, "segment", key=key, earlier=None if key else earlier, opens=opens)
        if sentence.closed:
            earlier, key = key or earlier, None


def _peeled(text: str, sentence: Sentence) -> tuple[int, list[Part]]:
    """A greeting and the name of a section before the sentence proper: where that begins, and the parts before it."""
    begun, heads = sentence.start, list[Part]()
    if notice(text[begun : sentence.end]):
        return begun, heads
    length = greeting_before(text[begun : sentence.end])
    if length:
        heads.append(Part(begun, begun + len(text[begun : begun + length].rstrip()), "greeting", "greeting"))
        begun += length
    found = OPENED.match(text, begun, sentence.end)
    section, governs = headings().get(_name(found[1]), (None, False)) if found else (None, False)
    if found and section and not governs:
        heads.append(Part(*found.span(), "heading", "heading", section=section))
        begun = sentence.end - len(text[found.end() : sentence.end].lstrip())
    return begun, heads


def _key(text: str, start: int, end: int) -> Span | None:
    found = KEY.match(text, start, end)
    if not found or found.end() == end:
        return None
    said = found.group()[:-1].casefold().split()
    fits = len(said) <= table("key")["longest"] and not set(said) & words("key", "never")
    return found.span() if fits else None
