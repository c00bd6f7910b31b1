"""A row of a table: the tooth column says where, each other column is a statement under its head."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from wellposed_converters.text.clause import Question, Span
from wellposed_converters.text.grammar.cut import cut
from wellposed_converters.text.grammar.items import HEADS, Cut, Item
from wellposed_converters.text.layout import Block
from wellposed_converters.text.segments.found import found
from wellposed_converters.text.segments.pieces import Segment, joined
from wellposed_converters.text.segments.segment import read_segment
from wellposed_converters.text.statements.statement import Context


def read_row(text: str, block: Block, context: Context) -> tuple[Segment, list[Span]]:
    """The clauses of a row; a row that is not wholly understood is asked about as a whole."""
    whole = (block.start, block.end)
    cells = [_cell(text, cell.start, cell.end, context) for cell in block.cells]
    heads = [_cell(text, cell.column_start, cell.column_end, context) for cell in block.cells]
    place = next((number for number, cell in enumerate(cells) if _is_place(cell)), None)
    cells = [_tooth(cell) if number == place else cell for number, cell in enumerate(cells)]
    if any(cell.unknown for cell in cells):
        return _asked(whole)
    if place is None:
        return _pair(cells, context, whole)
    rows = None if _headless(block, cells) else _statements(cells, heads, place)
    if rows is None:
        return _asked(whole)
    reads = [read_segment(row, context, whole) for row in rows]
    if any(question.type == "not_understood" for read in reads for question in read.questions):
        return _asked(whole)
    return _joined(reads, whole)


ANSWERS: Final = frozenset(("YES", "NEG", "DASH"))
PAIR: Final = 2


def _headless(block: Block, cells: Sequence[Cut]) -> bool:
    """Whether a yes, a no or a dash stands in a column that nobody named."""
    bare = [cell.column_end <= cell.column_start for cell in block.cells]
    lone = [bool(cell.items) and {item.category for item in cell.items} <= ANSWERS for cell in cells]
    return any(one and other for one, other in zip(bare, lone, strict=True))


def _pair(cells: Sequence[Cut], context: Context, whole: Span) -> tuple[Segment, list[Span]]:
    """Two cells, the first is the subject of the second: "| overbite | reduce to 2 mm |"."""
    if len(cells) != PAIR or not all(cell.items for cell in cells):
        return _asked(whole)
    first, second = cells
    colon = Item("COLON", ":", first.items[-1].end, first.items[-1].end)
    read = read_segment((*first.items, colon, *second.items), context, whole)
    return _asked(whole) if any(one.type == "not_understood" for one in read.questions) else _joined([read], whole)


def _asked(whole: Span) -> tuple[Segment, list[Span]]:
    return Segment((), (Question("not_understood", "row", (whole,)),)), []


def _cell(text: str, start: int, end: int, context: Context) -> Cut:
    return cut(text, start, end, found(text, (start, end), context.numbering))


def _is_place(cell: Cut) -> bool:
    return [item.category for item in cell.items] in (["PLACE"], ["NUMBER"])


def _tooth(cell: Cut) -> Cut:
    """In the tooth column a lone number is a tooth."""
    item = cell.items[0]
    return replace(cell, items=(item.value[1],)) if item.category == "NUMBER" else cell


def _statements(cells: Sequence[Cut], heads: Sequence[Cut], place: int) -> list[list[Item]] | None:
    """The items of each statement: the tooth with the free columns, and with each column that has a head of its own."""
    where = cells[place].items[0]
    free: list[Item] = [where]
    own: list[list[Item]] = []
    for number, (cell, head) in enumerate(zip(cells, heads, strict=True)):
        if number == place or not cell.items:
            continue
        named = [item for item in head.items if item.category in HEADS]
        dash = [item.category for item in cell.items] == ["DASH"]
        if len(named) == 1 and named[0].category in ("MEANS", "STATE"):
            if dash:
                return None
            own.append([where, named[0], *cell.items])
        elif not dash:
            free += cell.items
    return ([free] if len(free) > 1 else []) + own


def _joined(reads: Sequence[Segment], whole: Span) -> tuple[Segment, list[Span]]:
    if not any(read.clauses or read.questions for read in reads):
        return _asked(whole)
    all_ = joined(reads)
    return Segment(tuple(clause.with_(spans=(whole,)) for clause in all_.clauses), all_.questions), []
