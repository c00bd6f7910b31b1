"""A text laid out: what is read sentence by sentence, what stands in rows, and what is no instruction.

The blocks of a text cover each of its characters that is not white space exactly once, in order. Cautious throughout: a
line that could hold an instruction is a segment, never a note. Lines of an earlier message are set apart unread
("quoted"); whoever reads the blocks must ask about them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from wellposed_converters.text.clause import Span
from wellposed_converters.text.layout.governed import governed
from wellposed_converters.text.layout.grids import Cell
from wellposed_converters.text.layout.parts import Part, parts

NOTES: Final = frozenset(("subject", "greeting", "admin"))


@dataclass(frozen=True)
class Block:
    """One stretch of the text.

    sort     "segment" and "row" are to be read; "heading", "table_head", "numbering" (also drawn lines), "subject",
             "greeting", "admin", "signature", "quoted" are not
    of       for a note clause: "subject", "greeting", "subject_and_greeting", "greeting_and_admin", "admin", "closing",
             "signature", "heading"; None for a heading that governs, whose words belong to the clauses below it
    section  what the heading above says: "findings", "plan", "history", "concern", "notes", "attachments", "staging",
             "finish"; None without a heading, and below the first blank line after what follows it
    key      what governs the segment: its own 'Lower:' (colon included) or that of an earlier part up to ``;``,
             else ``heading``
    heading  the heading above that says what this is about ('Attachments'), or the line above that ends in a colon
    earlier  the key of an earlier sentence on the same line: the text does not say whether it still governs
    cells    of a row or table head
    """

    start: int
    end: int
    sort: str
    section: str | None = None
    key: Span | None = None
    cells: tuple[Cell, ...] = ()
    of: str | None = None
    heading: Span | None = None
    earlier: Span | None = None


def lay_out(text: str) -> tuple[Block, ...]:
    """The blocks of the text, in order."""
    merged = tuple(_merged(parts(text)))
    return tuple(
        Block(
            part.start,
            part.end,
            part.sort,
            place.section,
            (part.key or place.heading) if part.sort in ("segment", "row") else None,
            part.cells,
            part.of,
            place.heading,
            part.earlier,
        )
        for part, place in zip(merged, governed(text, merged), strict=True)
    )


def _merged(found: Sequence[Part]) -> Iterator[Part]:
    """Neighbouring notes of one letter's head or foot as one, and neighbouring quoted lines as one."""
    held: Part | None = None
    for part in found:
        joined = held and _joined(held, part)
        if held and not joined:
            yield held
        held = joined or part
    if held:
        yield held


def _joined(a: Part, b: Part) -> Part | None:
    if {a.sort, b.sort} <= NOTES and not (a.label or b.label):
        sort = next(sort for sort in ("subject", "greeting", "admin") if sort in (a.sort, b.sort))
        return replace(a, end=b.end, sort=sort, of=_of(a, b))
    if a.sort == b.sort == "signature" and (b.of == "signature" or a.of == "closing"):
        return replace(a, end=b.end, of=a.of if a.of == b.of else "signature")
    return replace(a, end=b.end) if a.sort == b.sort == "quoted" else None


def _of(a: Part, b: Part) -> str | None:
    said = {a.sort, b.sort}
    if "subject" in said:
        return "subject_and_greeting"
    return "greeting_and_admin" if said == {"greeting", "admin"} or a.of == "greeting_and_admin" else a.of
