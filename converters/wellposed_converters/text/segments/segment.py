"""One segment: every grouping of its items read, groupings removed by named rules, one left or a question."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from wellposed_converters.text.clause import Span
from wellposed_converters.text.grammar.items import HEADS, Item, alternatives
from wellposed_converters.text.grammar.parse import derivations
from wellposed_converters.text.segments.grouping import outcome_of
from wellposed_converters.text.segments.pieces import Segment, joined, not_understood
from wellposed_converters.text.segments.resolve import Outcome, settle_outcomes
from wellposed_converters.text.statements.statement import Context

REACHING: Final = frozenset(("NEG", "COND", "EXCEPT", "ONLY", "THERE", "TOO", "PREFER", "LPAR", "COLON", "BUT"))
"""What may reach over a comma: where it stands, the segment is one piece."""
BEGINS: Final = frozenset(("VERB", "MOTION"))


def read_segment(items: Sequence[Item], context: Context, span: Span) -> Segment:
    """The clauses and questions of a segment of items; ``span`` is the whole of it."""
    if not items:
        return Segment((), ())
    outcomes: list[Outcome] = []
    for row in alternatives(items):
        found = derivations(tuple(item.category for item in row))
        if found is None:
            return not_understood(span, "too-many-readings")
        outcomes += [outcome for units in found if (outcome := outcome_of(units, row, context)) is not None]
    if not outcomes:
        return islands(items, context, span)
    chosen = settle_outcomes(outcomes, span)
    return Segment(chosen.clauses, chosen.questions, chosen.said)


def islands(items: Sequence[Item], context: Context, span: Span) -> Segment:
    """A list of which some is not understood: each statement by itself, when nothing reaches from one to the next."""
    rows = _rows(items)
    own = all(any(item.category in HEADS | {"ASKED", "CLASS"} for item in row) for row in rows)
    if not own or not rows[1:]:
        return not_understood(span, "not-understood")
    reads = [_island(row, context) for row in rows]
    for number, read in enumerate(reads):
        beside = [item for row in (*rows[max(0, number - 1) : number], *rows[number + 1 : number + 2]) for item in row]
        far = any(map(_reaches, beside)) or any(map(_reaches_out, rows[number])) or not _begins(rows[number])
        if _lost(read) and far:
            return not_understood(span, "not-understood")
    return joined(reads)


def _reaches(item: Item) -> bool:
    """Whether an item may bear on what stands beyond the comma; "as needed" never does."""
    return item.category in REACHING and item.name != "discretion"


def _reaches_out(item: Item) -> bool:
    """The same of a statement that is asked about: what it points back to is not changed by it."""
    return _reaches(item) and item.category != "THERE"


def _begins(row: Sequence[Item]) -> bool:
    """Whether a row begins a statement of its own, and cannot be the rest of the one before it."""
    strange = row[0].category == "UNKNOWN" and any(item.category in HEADS | {"ASKED"} for item in row)
    return strange or row[0].category in HEADS | BEGINS | {"ASKED", "CLASS", "GRADE"}


def _rows(items: Sequence[Item]) -> list[list[Item]]:
    rows: list[list[Item]] = [[]]
    for item, after in zip(items, [*items[1:], None], strict=True):
        if item.category == "COMMA" or (item.category == "AND" and after is not None and after.category in BEGINS):
            rows.append([])
        else:
            rows[-1].append(item)
    return [row for row in rows if row]


def _island(row: Sequence[Item], context: Context) -> Segment:
    own = (row[0].start, row[-1].end)
    if any(item.category == "UNKNOWN" for item in row):
        return not_understood(own, "unknown-words")
    return read_segment(row, context.with_(before=None), own)


def _lost(read: Segment) -> bool:
    return any(question.type == "not_understood" for question in read.questions)
