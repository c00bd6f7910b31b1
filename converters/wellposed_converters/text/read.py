"""A text read whole: its clauses, its questions, and an account of every character.

The text is laid out in blocks, the tooth numbering is settled for the whole of it, each segment is read by itself with
what stands above and before it, and then the clauses are looked at together.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Final

from wellposed_converters.text.clause import Clause, Question, Span
from wellposed_converters.text.completeness import completeness
from wellposed_converters.text.contradictions import contradictions
from wellposed_converters.text.grammar.cut import cut
from wellposed_converters.text.grammar.items import Cut, Found, Item, Named
from wellposed_converters.text.known import known_words
from wellposed_converters.text.layout import Block, lay_out
from wellposed_converters.text.ledger import Ledger, account, attach
from wellposed_converters.text.lexicon import content_words
from wellposed_converters.text.lexicon.conditions import find_conditions
from wellposed_converters.text.places import Numbering, Place, find_places, settle
from wellposed_converters.text.quantity import find_amounts, find_bases, find_ordinals
from wellposed_converters.text.segments.leads import lead_of
from wellposed_converters.text.segments.pieces import Segment, moved
from wellposed_converters.text.segments.segment import islands, read_segment
from wellposed_converters.text.segments.table import read_row
from wellposed_converters.text.spelling import Repaired, repair
from wellposed_converters.text.statements.statement import Context, Said


@dataclass(frozen=True)
class Reading:
    """What a text says, what must be answered, and which character went where. Offsets are those of ``text``."""

    text: str
    clauses: tuple[Clause, ...]
    questions: tuple[Question, ...]
    ledger: Ledger
    numbering: Numbering


NOTES = frozenset(("greeting", "signature", "subject", "heading", "admin", "table_head"))
READ = frozenset(("segment", "row"))


def read_text(text: str, *, numbering: str | None = None) -> Reading:
    """The reading of a note. Never raises for its content: what is not understood is a question.

    numbering  the tooth numbering, where somebody has said which it is ("FDI", "Universal", "Palmer", "Haderup")
    """
    repaired = repair(text, content_words(), known_words())
    blocks = lay_out(repaired.text)
    settled = _numbering(repaired.text, blocks)
    if numbering is not None:
        settled = replace(settled, system=numbering, stated=True, conflict=False)
    clauses, questions, glue = _read_blocks(repaired.text, blocks, settled)
    clauses, questions = _spelled(clauses, repaired), list(questions)
    full, more = completeness(clauses, repaired.text)
    every = [*questions, *more]
    every += contradictions(full, repaired.text)
    back = [_back_clause(clause, repaired) for clause in full]
    asked = [_back_question(question, repaired) for question in _by_cause(every)]
    ledger = account(text, back, asked, [repaired.back(span) for span in glue])
    return Reading(text, tuple(back), tuple(asked), ledger, settled)


def _numbering(text: str, blocks: Sequence[Block]) -> Numbering:
    places = [place for block in blocks if block.sort in READ for place in find_places(text, block.start, block.end)]
    first = settle(text, places)
    if not first.dotted:
        return first
    places = [
        place
        for block in blocks
        if block.sort in READ
        for place in find_places(text, block.start, block.end, dotted=True)
    ]
    return replace(settle(text, places), dotted=True)


def found(text: str, span: Span, numbering: Numbering) -> list[Found]:
    """Everything of fixed shape in a span: tooth references, quantities, conditions."""
    start, end = span
    conditions = find_conditions(text, start, end)
    named = [one for one in _named(text, numbering) if start <= one.start and one.end <= end]
    free = _outside(span, sorted((one.start, one.end) for one in (*conditions, *named)))
    things: list[Found] = [*conditions, *named]
    for first, last in free:
        places = [_short(text, one) for one in find_places(text, first, last, dotted=numbering.dotted)]
        sure = [place for place in places if not place.bare_number]
        amounts = find_amounts(text, first, last, [(place.start, place.end) for place in sure])
        things += [*amounts, *find_bases(text, first, last), *find_ordinals(text, first, last)]
        things += [place for place in places if not _clash(place, amounts, numbering)]
    return things


WIDTH_OR_FORM: Final = re.compile(r"(.*\S)(\s+arch)(?=\s+(?:form|shape|width|widths)\b)", re.IGNORECASE | re.DOTALL)


def _short(text: str, place: Place) -> Place:
    """In "lower arch form" the place is "lower"."""
    words = WIDTH_OR_FORM.match(text, place.start)
    return replace(place, end=words.end(1)) if words and words.end(2) == place.end else place


def _named(text: str, numbering: Numbering) -> list[Named]:
    """The words that say which numbering the text uses."""
    name = f"{numbering.system}_dot" if numbering.dotted else str(numbering.system)
    both = list(TWO_WAYS.finditer(text)) if numbering.stated_spans else []
    spans = [span for span in numbering.stated_spans if not any(one.start() <= span[0] < one.end() for one in both)]
    two = [Named(one.start(), one.end(), f"{name}+position") for one in both]
    return [*two, *(Named(start, end, name) for start, end in spans)]


TWO_WAYS: Final = re.compile(
    r"single teeth (?:are |in |by |use )?(?:fdi|universal|palmer)(?: numbers?)?,? (?:and )?(?:segments|groups|ranges)"
    r" (?:are |in )?by position(?: numbers?)?",
    re.IGNORECASE,
)
"""Single teeth by a numbering, ranges by position: both are said."""


def _clash(place: Place, amounts: Iterable[object], numbering: Numbering) -> bool:
    """A lone number that is also an amount is left to the amount where no tooth has it in this numbering."""
    over = [one for one in amounts if one.start < place.end and place.start < one.end]  # type: ignore[attr-defined]  # all have offsets
    return bool(over) and not (
        place.bare_number and all(getattr(one, "bare", False) for one in over) and not place.asks
    )


def _outside(span: Span, taken: Sequence[Span]) -> list[Span]:
    free, at = [], span[0]
    for start, end in taken:
        if start > at:
            free.append((at, start))
        at = max(at, end)
    if at < span[1]:
        free.append((at, span[1]))
    return free


def _read_blocks(
    text: str, blocks: Sequence[Block], numbering: Numbering
) -> tuple[list[Clause], list[Question], list[Span]]:
    clauses: list[Clause] = []
    questions: list[Question] = []
    glue: list[Span] = []
    headings: list[Span] = []
    said: Said | None = None
    for number, block in enumerate(blocks):
        if block.sort == "heading" and block.of is None:
            headings.append((block.start, block.end))
            continue
        if block.sort in NOTES:
            clauses.append(Clause("note", "state", ((block.start, block.end),), of=block.of or block.sort))
            continue
        if block.sort == "numbering":
            glue.append((block.start, block.end))
            continue
        if block.sort == "quoted":
            questions.append(Question("external_reference", "quoted-reply", ((block.start, block.end),)))
            continue
        near = said if _near(blocks, number) else None
        read, loose = _read_block(text, block, numbering, near, clauses)
        questions += [moved(question, len(clauses)) for question in read.questions]
        clauses += read.clauses
        glue += loose
        said = read.said
    clauses = _with_headings(headings, clauses, questions)
    return clauses, questions, glue


def _with_headings(headings: Sequence[Span], clauses: list[Clause], questions: Sequence[Question]) -> list[Clause]:
    """A heading that went into no clause below it goes to the next one, or is a note when nothing follows."""
    taken = [span for one in (*clauses, *questions) for span in one.spans]
    for span in (one for one in headings if not any(_over(one, other) for other in taken)):
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
    under = lead_of(text, block, context, found)
    if under is None:
        return Segment((), (Question("teeth", "open-lead", ((block.start, block.end), block.key or (0, 0))),)), []
    context = under
    if block.sort == "row":
        return read_row(text, block, context, found)
    span = (block.start, block.end)
    items = _without_polite_mark(text, cut(text, *span, found(text, span, numbering)))
    items = _without_first_colon(items)
    return _whole(read_or_ask(items, context, span), items, span), list(items.glue)


def _without_first_colon(items: Cut) -> Cut:
    """Signs and joining words at the ends join nothing: "New: ...", "..., please"."""
    kept = list(items.items)
    loose: list[Item] = []
    while kept and kept[0].category in ("COLON", "COMMA", "AND", "BUT", "DASH"):
        loose.append(kept.pop(0))
    while kept and kept[-1].category in ("COMMA", "DASH", "AND"):
        loose.append(kept.pop())
    words = [(item.start, item.end) for item in loose if item.words.isalpha()]
    return replace(items, items=tuple(kept), carried=(*items.carried, *words))


MOST_STRANGE: Final = 3
"""Unknown words above which a segment is not looked at by parts."""


def _unread(span: Span) -> Segment:
    return Segment((), (Question("not_understood", "unknown-words", (span,)),))


POLITE: Final = ("could you", "can you", "would you", "please could you", "please can you")


def _without_polite_mark(text: str, items: Cut) -> Cut:
    """ "Could you send ...?" is an order; any other question mark is a doubt of the writer."""
    if len(items.unknown) != 1 or text[slice(*items.unknown[0])] != "?":
        return items
    first = min((span[0] for span in items.carried), default=-1)
    return replace(items, unknown=()) if first >= 0 and text[first:].casefold().startswith(POLITE) else items


def read_or_ask(items: Cut, context: Context, span: Span) -> Segment:
    """A segment with a word that nobody knows is not read at all."""
    if not items.items and not items.unknown:
        return Segment((), ())
    if items.unknown:
        strange = [Item("UNKNOWN", "", start, end) for start, end in items.unknown]
        row = sorted((*items.items, *strange), key=lambda item: item.start)
        return islands(row, context, span) if len(strange) <= MOST_STRANGE else _unread(span)
    return read_segment(items.items, context, span)


def _pronoun_only(said: Said | None) -> Said | None:
    """The segment before may be pointed at; its head is taken over only by words that say so."""
    return replace(said, far=True) if said else None


def _whole(read: Segment, items: Cut, span: Span) -> Segment:
    return attach(read, items, span)


def _spelled(clauses: Sequence[Clause], repaired: Repaired) -> list[Clause]:
    """A clause with a repaired word says so."""
    words = [span for span, _ in repaired.words]
    return [
        clause.with_(inferred=(*clause.inferred, "spelling"))
        if any(_over(repaired.back(span), word) for span in clause.spans for word in words) and clause.kind != "note"
        else clause
        for clause in clauses
    ]


def _over(one: Span, other: Span) -> bool:
    return one[0] < other[1] and other[0] < one[1]


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
