"""Answers to what a reading asks. The text is never rewritten: an answer is kept beside the words it is about.

A question about the numbering is answered with the name of a numbering, and the text is read again. Two clauses that
contradict each other are answered by naming the one that holds. Every other question is answered in plain words, which
are read like any note and must leave nothing open; or by saying that nothing is wanted.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Final

from wellposed_converters.text.clause import Clause, Question, quoted
from wellposed_converters.text.read import Reading, read_text

NUMBERINGS: Final = {
    "fdi": "FDI",
    "iso 3950": "FDI",
    "universal": "Universal",
    "palmer": "Palmer",
    "haderup": "Haderup",
}
WHEN: Final = {"now": "now", "wanted": "at the end"}
"""Short answers to whether a value is found or wanted, and what they add to the words of the note."""
ALL: Final = "all"
"""The answer that everything a question is about holds together."""
NOTHING: Final = "nothing"
"""The answer that withdraws what is asked about."""


class NotAnswered(ValueError):  # noqa: N818  # a reply to the person who answers, not a fault of the program
    """These words answer nothing; the text says what would."""


@dataclass(frozen=True)
class Answered:
    """An answer as it was given: the question, the words, by whom and when."""

    question: Question
    words: str
    by: str
    at: str


def answered(reading: Reading, number: int, words: str) -> Reading:
    """The reading with its question ``number`` (from 0) answered.

    Raises:
        NotAnswered: the words answer nothing, leave something open, or speak of something else
    """
    question = reading.questions[number]
    words = words.strip()
    if not words:
        raise NotAnswered("no answer was given")
    if question.type == "notation":
        return _numbered(reading, words)
    chosen = words.replace(",", " ").split()
    if question.type == "contradiction" and all(word.isdecimal() for word in chosen):
        return _kept(reading, number, {int(word) for word in chosen})
    if question.type == "contradiction" and words.casefold() == ALL:
        return _together(reading, number)
    made = () if words.casefold() == NOTHING else _said(reading, question, words)
    return _replaced(reading, number, made)


def _numbered(reading: Reading, words: str) -> Reading:
    system = NUMBERINGS.get(words.casefold())
    if system is None:
        raise NotAnswered(f"name the numbering: {', '.join(sorted(set(NUMBERINGS.values())))}")
    return read_text(reading.text, numbering=system)


def _kept(reading: Reading, number: int, chosen: set[int]) -> Reading:
    """Of contradictory clauses those chosen (from 1) stay; all of them only where they can hold together."""
    concerns = reading.questions[number].concerns
    every = set(range(1, len(concerns) + 1))
    if not chosen <= every:
        raise NotAnswered(f"choose among the numbers from 1 to {len(concerns)}")
    if chosen == every:
        return _together(reading, number)
    return _without(reading, number, [at for place, at in enumerate(concerns, 1) if place not in chosen], ())


def _together(reading: Reading, number: int) -> Reading:
    """All clauses stay, if the question was only whether they are meant so."""
    if ("level", "confirm") not in reading.questions[number].facts:
        raise NotAnswered("they exclude each other; choose the number of the one that holds")
    return _without(reading, number, [], ())


def _said(reading: Reading, question: Question, words: str) -> tuple[Clause, ...]:
    """The answer read as a note of its own, in the numbering of the text."""
    if question.type == "finding_or_request" and words.casefold() in WHEN:
        words = f"{quoted(reading.text, question.spans)} {WHEN[words.casefold()]}"
    read = read_text(words, numbering=reading.numbering.system)
    if read.questions or not read.clauses:
        raise NotAnswered("the answer leaves something open itself; say it more fully")
    kinds = {reading.clauses[at].kind for at in question.concerns}
    missing = kinds - {clause.kind for clause in read.clauses}
    if missing:
        raise NotAnswered(f"the answer must also speak of: {', '.join(sorted(missing))}; or say '{NOTHING}'")
    return tuple(clause.with_(spans=question.spans, rules=("answer",)) for clause in read.clauses)


def _replaced(reading: Reading, number: int, made: Sequence[Clause]) -> Reading:
    return _without(reading, number, list(reading.questions[number].concerns), made)


def _without(reading: Reading, number: int, dropped: Sequence[int], made: Sequence[Clause]) -> Reading:
    """The reading without a question and some clauses, with others; what the other questions are about stays right."""
    kept = [at for at in range(len(reading.clauses)) if at not in dropped]
    place = {at: new for new, at in enumerate(kept)}
    clauses = (*(reading.clauses[at] for at in kept), *made)
    others = [one for at, one in enumerate(reading.questions) if at != number]
    questions = tuple(_moved(one, place) for one in others if not one.concerns or set(one.concerns) & set(place))
    return replace(reading, clauses=clauses, questions=questions)


def _moved(question: Question, place: dict[int, int]) -> Question:
    return replace(question, concerns=tuple(place[at] for at in question.concerns if at in place))


Ask = Callable[[Question, Reading, str], str]
"""Puts one question, with what was wrong with the answer before; an empty answer leaves it open."""


def ask_all(
    reading: Reading, ask: Ask, by: str, now: Callable[[], str], put: Sequence[Question] = ()
) -> tuple[Reading, tuple[Answered, ...]]:
    """Every question put that is not in ``put``, those that much waits for first; unanswered ones stay."""
    given: list[Answered] = []
    left = list(put)
    fault = ""
    while open_ := [one for one in reading.questions if one not in left]:
        question = min(open_, key=_weight)
        words = ask(question, reading, fault).strip()
        fault = ""
        if not words:
            left.append(question)
            continue
        try:
            reading = answered(reading, reading.questions.index(question), words)
        except NotAnswered as error:
            fault = str(error)
            continue
        given.append(Answered(question, words, by, now()))
    return reading, tuple(given)


FIRST: Final = ("notation", "contradiction", "implausible", "teeth")


def _weight(question: Question) -> tuple[int, tuple[tuple[int, int], ...]]:
    """What many clauses wait for first, then in the order of the text."""
    return (FIRST.index(question.type) if question.type in FIRST else len(FIRST), question.spans)
