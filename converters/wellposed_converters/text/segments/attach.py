"""Words that fill no slot go to the clause or question that stands nearest; spans are made whole."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Final

from wellposed_converters.text.clause import Clause, Question, Span
from wellposed_converters.text.grammar.items import Cut
from wellposed_converters.text.segments.pieces import Segment

JOINS: Final = frozenset(("AND", "OR", "BUT", "WITH", "BY", "TO", "FROM", "BE"))
"""Items that only join others; they go to the nearest clause where no statement took them."""


def attach(read: Segment, items: Cut, span: Span) -> Segment:
    """The segment with its carried words in the clause or question that stands nearest, and whole spans."""
    clauses, questions = list(read.clauses), list(read.questions)
    if not clauses and not questions and (items.carried or items.items):
        questions.append(Question("not_understood", "not-understood", (span,)))
    joins = [(item.start, item.end) for item in items.items if item.category in JOINS]
    for word in sorted((*items.carried, *joins)):
        _take_in(word, clauses, questions)
    fixed = [(item.start, item.end) for item in items.items if item.category not in ("COMMA", "COLON", "AND")]
    return Segment(
        tuple(clause.with_(spans=whole(clause.spans, fixed, span)) for clause in clauses),
        tuple(replace(question, spans=whole(question.spans, fixed, span)) for question in questions),
        read.said,
    )


def whole(spans: Iterable[Span], fixed: Sequence[Span], within: Span) -> tuple[Span, ...]:
    """Spans joined where nothing that says something stands between them, inside one segment."""
    joined: list[Span] = []
    for start, end in sorted(spans):
        inside = bool(joined) and joined[-1][0] >= within[0]
        free = inside and not any(joined[-1][1] <= one[0] < start for one in fixed)
        if joined and (start <= joined[-1][1] or free):
            joined[-1] = (joined[-1][0], max(end, joined[-1][1]))
        else:
            joined.append((start, end))
    return tuple(joined)


def _take_in(word: Span, clauses: list[Clause], questions: list[Question]) -> None:
    at = min(range(len(clauses)), key=lambda one: _far(clauses[one].spans, word), default=None)
    ask = min(range(len(questions)), key=lambda one: _far(questions[one].spans, word), default=None)
    if at is not None:
        clauses[at] = clauses[at].with_(spans=(*clauses[at].spans, word))
    elif ask is not None:
        questions[ask] = replace(questions[ask], spans=(*questions[ask].spans, word))


def _far(spans: Sequence[Span], word: Span) -> int:
    return min((max(start - word[1], word[0] - end, 0) for start, end in spans), default=1 << 30)
