"""The blocks of a text one after another, each with what stands above and before it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Final

from wellposed_converters.text.clause import Clause, Question, Span
from wellposed_converters.text.grammar.cut import cut
from wellposed_converters.text.layout import Block
from wellposed_converters.text.places import Numbering
from wellposed_converters.text.segments.attach import attach
from wellposed_converters.text.segments.found import found
from wellposed_converters.text.segments.framed import polite, read_or_ask, trimmed
from wellposed_converters.text.segments.leads import lead_of
from wellposed_converters.text.segments.pieces import Segment, moved, over
from wellposed_converters.text.segments.table import read_row
from wellposed_converters.text.statements.statement import Context, Said

READ: Final = frozenset(("segment", "row"))


@dataclass
class _Page:
    """What has been read so far."""

    clauses: list[Clause] = field(default_factory=list)
    questions: list[Question] = field(default_factory=list)
    glue: list[Span] = field(default_factory=list)
    headings: list[Span] = field(default_factory=list)
    said: Said | None = None


def read_blocks(
    text: str, blocks: Sequence[Block], numbering: Numbering
) -> tuple[list[Clause], list[Question], list[Span]]:
    """The clauses, the questions, and the words that carry nothing."""
    page = _Page()
    for number, block in enumerate(blocks):
        if block.sort in READ:
            _read_into(page, text, block, numbering, near=_near(blocks, number))
        else:
            _set_apart(page, block)
    return _with_headings(page), page.questions, page.glue


def _set_apart(page: _Page, block: Block) -> None:
    span = (block.start, block.end)
    if block.sort == "heading" and block.of is None:
        page.headings.append(span)
    elif block.sort == "numbering":
        page.glue.append(span)
    elif block.sort == "quoted":
        page.questions.append(Question("external_reference", "quoted-reply", (span,)))
    else:
        page.clauses.append(Clause("note", "state", (span,), of=block.of or block.sort))


def _read_into(page: _Page, text: str, block: Block, numbering: Numbering, *, near: bool) -> None:
    read, glue = _read_block(text, block, numbering, page.said if near else None, page.clauses)
    page.questions += [moved(question, len(page.clauses)) for question in read.questions]
    page.clauses += read.clauses
    page.glue += glue
    page.said = read.said


def _with_headings(page: _Page) -> list[Clause]:
    """A heading that went into no clause below it goes to the next one, or is a note when nothing follows."""
    clauses = list(page.clauses)
    taken = [span for clause in clauses for span in clause.spans]
    taken += [span for question in page.questions for span in question.spans]
    for span in (one for one in page.headings if not any(over(one, other) for other in taken)):
        under = [at for at, clause in enumerate(clauses) if clause.kind != "note" and min(clause.spans) > span]
        if under:
            first = min(under, key=lambda at: min(clauses[at].spans))
            clauses[first] = clauses[first].with_(spans=(span, *clauses[first].spans))
        else:
            clauses.append(Clause("note", "state", (span,), of="heading"))
    return clauses


def _near(blocks: Sequence[Block], number: int) -> bool:
    """Whether a block stands beside the one before it, so that it may lean on it."""
    before = blocks[number - 1] if number else None
    return before is not None and before.sort in READ and before.section == blocks[number].section


def _read_block(
    text: str, block: Block, numbering: Numbering, said: Said | None, clauses: Sequence[Clause]
) -> tuple[Segment, list[Span]]:
    stated = frozenset(clause.kind for clause in clauses if clause.mode == "state" and clause.measure == "current")
    context = Context(numbering, block.section, _pronoun_only(said), stated=stated, earlier=tuple(clauses))
    under = lead_of(text, block, context)
    span = (block.start, block.end)
    if under is None:
        return Segment((), (Question("teeth", "open-lead", (span, block.key or (0, 0))),)), []
    if block.sort == "row":
        return read_row(text, block, under)
    items = trimmed(polite(text, cut(text, *span, found(text, span, numbering))))
    return attach(read_or_ask(items, under, span), items, span), list(items.glue)


def _pronoun_only(said: Said | None) -> Said | None:
    """The segment before may be pointed at; its head is taken over only by words that say so."""
    return replace(said, far=True) if said else None
