"""A text read whole: its clauses, its questions, and an account of every character.

The text is laid out in blocks, the tooth numbering is settled for the whole of it, each segment is read by itself with
what stands above and before it, and then the clauses are looked at together.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.completeness import completeness
from wellposed_converters.text.contradictions import contradictions
from wellposed_converters.text.known import known_words
from wellposed_converters.text.layout import Block, lay_out
from wellposed_converters.text.ledger import Ledger, account
from wellposed_converters.text.lexicon import content_words
from wellposed_converters.text.places import Numbering, Place, find_places, settle
from wellposed_converters.text.segments.blocks import READ, read_blocks
from wellposed_converters.text.segments.pieces import over
from wellposed_converters.text.spelling import Repaired, repair


@dataclass(frozen=True)
class Reading:
    """What a text says, what must be answered, and which character went where. Offsets are those of ``text``."""

    text: str
    clauses: tuple[Clause, ...]
    questions: tuple[Question, ...]
    ledger: Ledger
    numbering: Numbering


def read_text(text: str, *, numbering: str | None = None) -> Reading:
    """The reading of a note. Never raises for its content: what is not understood is a question.

    numbering  the tooth numbering, where somebody has said which it is ("FDI", "Universal", "Palmer", "Haderup")
    """
    repaired = repair(text, content_words(), known_words())
    blocks = lay_out(repaired.text)
    settled = _numbering(repaired.text, blocks)
    if numbering is not None:
        settled = replace(settled, system=numbering, stated=True, conflict=False)
    clauses, questions, glue = read_blocks(repaired.text, blocks, settled)
    full, more = completeness(_spelled(clauses, repaired), repaired.text)
    every = [*questions, *more, *contradictions(full, repaired.text)]
    back = [_back_clause(clause, repaired) for clause in full]
    asked = [_back_question(question, repaired) for question in _by_cause(every)]
    ledger = account(text, back, asked, [repaired.back(span) for span in glue])
    return Reading(text, tuple(back), tuple(asked), ledger, settled)


def _numbering(text: str, blocks: Sequence[Block]) -> Numbering:
    first = settle(text, _places(text, blocks))
    return replace(settle(text, _places(text, blocks, dotted=True)), dotted=True) if first.dotted else first


def _places(text: str, blocks: Sequence[Block], *, dotted: bool = False) -> list[Place]:
    read = [block for block in blocks if block.sort in READ]
    return [place for block in read for place in find_places(text, block.start, block.end, dotted=dotted)]


def _spelled(clauses: Sequence[Clause], repaired: Repaired) -> list[Clause]:
    """A clause with a repaired word says so."""
    words = [span for span, _ in repaired.words]
    return [
        clause.with_(inferred=(*clause.inferred, "spelling"))
        if any(over(repaired.back(span), word) for span in clause.spans for word in words) and clause.kind != "note"
        else clause
        for clause in clauses
    ]


def _back_clause(clause: Clause, repaired: Repaired) -> Clause:
    return clause.with_(spans=tuple(repaired.back(span) for span in clause.spans))


def _back_question(question: Question, repaired: Repaired) -> Question:
    return replace(question, spans=tuple(repaired.back(span) for span in question.spans))


def _by_cause(questions: Sequence[Question]) -> list[Question]:
    """One question about the numbering, whatever number of clauses waits for it."""
    numbering = [question for question in questions if (question.type, question.asks) == ("notation", "numbering")]
    rest = [question for question in questions if question not in numbering]
    if not numbering:
        return rest
    spans = tuple(sorted({span for question in numbering for span in question.spans}))
    concerns = tuple(sorted({index for question in numbering for index in question.concerns}))
    return [replace(numbering[0], spans=spans, concerns=concerns), *rest]
