"""The standing instructions of a practice, read like a note and put beside the note of a case.

They never override the note: where both speak of the same thing and differ, it is asked.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from wellposed_converters.text.clause import Clause, Question, Span
from wellposed_converters.text.contradictions import contradictions
from wellposed_converters.text.ledger import Ledger
from wellposed_converters.text.read import Reading

GAP: Final = "\n\n"
MARK: Final = "standing"


def with_standing(note: Reading, standing: Reading) -> Reading:
    """Both readings as one; offsets of the standing text begin after the note and an empty line.

    A clause of the standing text that the note says as well is left out; the others carry the mark ``standing``.
    """
    shift = len(note.text) + len(GAP)
    text = note.text + GAP + standing.text
    own = [_shifted(one, shift) for one in standing.clauses if one.kind not in ("note", "notation")]
    new = [one for one in own if not any(_same(one, other) for other in note.clauses)]
    clauses = (*note.clauses, *new)
    questions = [*note.questions, *(_asked(one, shift, standing, clauses) for one in standing.questions)]
    known = {frozenset(one.concerns) for one in questions}
    first = len(note.clauses)
    both = [one for one in contradictions(clauses, text) if min(one.concerns) < first <= max(one.concerns)]
    questions += [one for one in both if frozenset(one.concerns) not in known]
    asked = {at for one in both for at in one.concerns}
    questions += _differing(clauses, first, asked)
    marks = note.ledger.marks + " " * len(GAP) + standing.ledger.marks
    return replace(note, text=text, clauses=clauses, questions=tuple(questions), ledger=Ledger(marks))


def _shifted(clause: Clause, by: int) -> Clause:
    return clause.with_(spans=tuple((start + by, end + by) for start, end in clause.spans), rules=(MARK,))


def _same(one: Clause, other: Clause) -> bool:
    quiet = {"spans": (), "rules": (), "inferred": ()}
    return one.with_(**quiet) == other.with_(**quiet)


def _asked(question: Question, by: int, standing: Reading, clauses: tuple[Clause, ...]) -> Question:
    """A question of the standing text, about the same clauses among all of them."""
    about = [_shifted(standing.clauses[at], by) for at in question.concerns]
    concerns = tuple(clauses.index(one) for one in about if one in clauses)
    return replace(question, spans=tuple((start + by, end + by) for start, end in question.spans), concerns=concerns)


def _differing(clauses: tuple[Clause, ...], first: int, asked: set[int]) -> Iterator[Question]:
    """The note and the standing text speak of the same thing, and not alike."""
    for at in range(first, len(clauses)):
        met = [at_note for at_note in range(first) if _meets(clauses[at_note], clauses[at])]
        if met and at not in asked and clauses[at].mode != "state":
            spans: tuple[Span, ...] = tuple(sorted({span for one in (*met, at) for span in clauses[one].spans}))
            yield Question("contradiction", "note-and-standing", spans, concerns=(*met, at))


def _meets(note: Clause, standing: Clause) -> bool:
    """One kind, in places that are not apart."""
    if (
        note.kind != standing.kind
        or note.mode == "state"
        or (note.kind in ("staging", "process") and note.of != standing.of)
    ):
        return False
    places = [set(one.teeth) | {tooth for pair in one.contacts for tooth in pair} for one in (note, standing)]
    return not all(places) or bool(places[0] & places[1])
