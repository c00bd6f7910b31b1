"""A read-back read whole: to the members of a prescription, and to questions where anything is not certain."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from wellposed_converters.text.clause import Question
from wellposed_converters.text.readback.again import told_again
from wellposed_converters.text.readback.document import Made, made_of, taken
from wellposed_converters.text.readback.page import Entry, page_of


@dataclass(frozen=True)
class ReadBack:
    """What a read-back says.

    text       the read-back
    document   the members of the prescription it says: id, revision, teeth and clauses
    entries    its sentences
    questions  what must be answered
    sources    pointer of each part of the document to the numbers of the sentences it comes from
    follows    numbers of the sentences that only say what follows, or what is not stated
    unsaid     numbers of the sentences that name a note or an extension without what is in it
    """

    text: str
    document: dict[str, Any]
    entries: tuple[Entry, ...]
    questions: tuple[Question, ...]
    sources: dict[str, tuple[int, ...]]
    follows: tuple[int, ...]
    unsaid: tuple[int, ...]


def read_back(text: str) -> ReadBack:
    """The reading of a read-back. Never raises for its content: what is not understood is a question.

    Where nothing is asked, the document told again gives the sentences of the text and no others.
    """
    page = page_of(text)
    made = made_of(page.entries)
    asked = [*page.questions, *made.questions]
    if not asked and page.identity:
        asked += told_again(made, page.entries, page.identity)
    _accounted(made, page.entries, asked)
    name = {"id": page.identity[0], "revision": page.identity[1]} if page.identity else {}
    return ReadBack(
        text,
        name | made.document,
        page.entries,
        tuple(sorted(asked, key=lambda one: one.spans)),
        {pointer: tuple(found) for pointer, found in made.pointers.items()},
        tuple(made.follows),
        tuple(at for at, _ in made.unsaid),
    )


def _accounted(made: Made, entries: tuple[Entry, ...], asked: list[Question]) -> None:
    """Every sentence went somewhere, or is asked about; anything else is an error of this program."""
    asked_about = {span for one in asked for span in one.spans}
    gone = set(taken(made))
    if any(at not in gone and entry.span not in asked_about for at, entry in enumerate(entries)):
        raise AssertionError("a sentence of the read-back is in no account")
