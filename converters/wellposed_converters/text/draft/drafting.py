"""From the clauses of a note to a draft of a prescription: what follows, where from, and what is still open."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

from wellposed_converters.text.clause import Clause, Question, Span, quoted
from wellposed_converters.text.draft.assembly import Entries, added
from wellposed_converters.text.draft.data import data
from wellposed_converters.text.draft.document import Placed, absent_teeth, document_of
from wellposed_converters.text.draft.makers import ADMINISTRATIVE, made
from wellposed_converters.text.draft.part import NotCarried, Order
from wellposed_converters.text.wording import asked_names, option_words, wording

FORMAT: Final = "wellposed/draft"
VERSION: Final = "1.0"
ENVELOPE: Final = (
    "/id", "/revision", "/issued", "/prescriber/id", "/laboratory/id", "/patient/reference", "/patient/age_years",
    "/patient/growth", "/patient/dentition", "/teeth/upper", "/teeth/lower",
)  # fmt: skip
"""What a prescription needs besides its clauses, and no default may fill."""
AS_NOTE: Final = "as-note"
LONGEST_NOTE: Final = 4000
LATE: Final = frozenset(("overcorrection",))
"""Kinds that are joined to the entry of another clause, and so come last."""


@dataclass(frozen=True)
class Uncarried:
    """A clause that the format does not say, the name of the reason, and the notes its words stand in."""

    clause: int
    reason: str
    pointers: tuple[str, ...] = ()


@dataclass(frozen=True)
class Draft:
    """A prescription that is not one yet.

    document        the members of the prescription that follow from the clauses
    sources         pointer to the clauses and the spans of the note it comes from
    uncarried       clauses that stand among the notes, where they do not bind
    administrative  clauses that order nothing and find nothing
    questions       what must be answered, the reader's and those of the format, each with an id
    missing         pointers of what the envelope needs and the note does not say
    assumed         what was filled by a definition or a convention: pointer, member, rule, clauses
    absent          teeth the note says are missing
    fills           pointers of members that hold all teeth present in an arch
    answers         answers given so far: question and value
    """

    note_sha256: str
    document: dict[str, Any]
    sources: dict[str, dict[str, Any]]
    uncarried: tuple[Uncarried, ...] = ()
    administrative: tuple[int, ...] = ()
    questions: tuple[dict[str, Any], ...] = ()
    missing: tuple[str, ...] = ()
    assumed: tuple[dict[str, Any], ...] = ()
    absent: tuple[str, ...] = ()
    fills: tuple[dict[str, str], ...] = ()
    answers: tuple[dict[str, Any], ...] = field(default=())

    def open_questions(self) -> tuple[dict[str, Any], ...]:
        """The questions that nobody has answered."""
        done = {one["question"] for one in self.answers}
        return tuple(one for one in self.questions if one["id"] not in done)

    def record(self) -> dict[str, Any]:
        """The draft as a JSON document of its own format, which no check takes for a prescription."""
        left = [{"clause": one.clause, "reason": one.reason, "pointers": list(one.pointers)} for one in self.uncarried]
        return {
            "format": FORMAT,
            "version": VERSION,
            "note_sha256": self.note_sha256,
            "prescription": self.document,
            "sources": self.sources,
            "questions": list(self.questions),
            "assumed": list(self.assumed),
            "uncarried": left,
            "administrative": list(self.administrative),
            "absent": list(self.absent),
            "fills": list(self.fills),
            "missing": list(self.missing),
            "answers": list(self.answers),
        }


def draft(text: str, clauses: Sequence[Clause], questions: Sequence[Question]) -> Draft:
    """The draft of a note as read. Every clause is carried, or noted and asked about, or administrative."""
    order = Order(tuple(clauses), text)
    entries, reasons = _carried(order)
    document, placed = document_of(entries)
    left = tuple(_noted(document, order, at, reason) for at, reason in sorted(reasons.items()))
    asked = [*_of_reader(text, clauses, questions), *_of_format(order, placed), *_of_left(order, left, questions)]
    drafted = Draft(
        hashlib.sha256(text.encode()).hexdigest(),
        document,
        _sources(order, placed),
        left,
        tuple(at for at, clause in enumerate(clauses) if clause.kind in ADMINISTRATIVE),
        tuple({"id": f"q{number}", **one} for number, one in enumerate(asked, start=1)),
        tuple(pointer for pointer in ENVELOPE if not _said(document, pointer)),
        tuple(_assumed(placed)),
        absent_teeth(entries),
        tuple(_fills(placed)),
    )
    _accounted(order, drafted)
    return drafted


def _carried(order: Order) -> tuple[Entries, dict[int, str]]:
    """The entries, and why the other clauses are none."""
    entries: Entries = ()
    reasons: dict[int, str] = {}
    numbers = [at for at, one in enumerate(order.clauses) if one.kind not in ADMINISTRATIVE]
    for at in sorted(numbers, key=lambda number: order.clauses[number].kind in LATE):
        try:
            entries = added(entries, made(order, at), at)
        except NotCarried as reason:
            reasons[at] = str(reason)
    return entries, reasons


def _noted(document: dict[str, Any], order: Order, at: int, reason: str) -> Uncarried:
    """The words of a clause put among the notes, whole."""
    words = quoted(order.text, order.clauses[at].spans)
    notes = document.setdefault("notes", [])
    pieces = [words[start : start + LONGEST_NOTE] for start in range(0, len(words), LONGEST_NOTE)]
    pointers = tuple(f"/notes/{len(notes) + number}" for number in range(len(pieces)))
    notes += [{"text": piece} for piece in pieces]
    return Uncarried(at, reason, pointers)


def _of_reader(text: str, clauses: Sequence[Clause], questions: Iterable[Question]) -> Iterator[dict[str, Any]]:
    for one in questions:
        words = wording(one, clauses, text) if one.asks in asked_names() else quoted(text, one.spans)
        options = option_words(one, clauses, text) if one.asks in asked_names() else one.options
        choices = {"options": list(one.options), "option_words": list(options)} if one.options else {}
        yield _question(one.type, one.asks, words, one.concerns, one.spans) | choices


def _of_format(order: Order, placed: Sequence[Placed]) -> Iterator[dict[str, Any]]:
    """One question a clause for the members that its entries leave open."""
    waiting: dict[tuple[tuple[int, ...], tuple[str, ...]], list[Placed]] = {}
    for one in placed:
        if one.entry.part.open:
            waiting.setdefault((one.entry.clauses, one.entry.part.open), []).append(one)
    for (clauses, members), found in waiting.items():
        spans = _spans(order, clauses)
        asks = f"open-{members[0]}"
        words = data()["open"]["_".join(members)].format(said=_flat(order.text, spans))
        pointers = [pointer.removesuffix(f"/{members[0]}") for one in found for pointer in one.pointers]
        yield _question("missing_amount", asks, words, clauses, spans) | {
            "members": list(members),
            "pointers": pointers,
        }


def _of_left(order: Order, left: Sequence[Uncarried], questions: Iterable[Question]) -> Iterator[dict[str, Any]]:
    """One question a clause that is not carried; of one that waits for an answer only if nothing asks about it."""
    asked = {at for question in questions for at in question.concerns}
    for one in left:
        if one.reason == "waits-for-an-answer" and one.clause in asked:
            continue
        entry, spans = data()["reason"][one.reason], order.clauses[one.clause].spans
        words = entry["text"].format(said=_flat(order.text, spans))
        yield _question(entry["type"], one.reason, words, (one.clause,), spans) | {"options": [AS_NOTE]}


def _question(type_: str, asks: str, words: str, clauses: Iterable[int], spans: Iterable[Span]) -> dict[str, Any]:
    return {"type": type_, "asks": asks, "text": words, "for": list(clauses), "spans": [list(span) for span in spans]}


def _flat(text: str, spans: Sequence[Span]) -> str:
    return " ".join(quoted(text, tuple(spans)).split())


def _spans(order: Order, clauses: Iterable[int]) -> list[Span]:
    return sorted({span for at in clauses for span in order.clauses[at].spans})


def _sources(order: Order, placed: Iterable[Placed]) -> dict[str, dict[str, Any]]:
    found: dict[str, list[int]] = {}
    for one in placed:
        for pointer in one.pointers:
            found.setdefault(pointer, []).extend(one.entry.clauses)
    return {
        pointer: {"clauses": sorted(set(at)), "spans": [list(span) for span in _spans(order, at)]}
        for pointer, at in found.items()
    }


def _assumed(placed: Iterable[Placed]) -> Iterator[dict[str, Any]]:
    for one in placed:
        for member, rule in dict.fromkeys(one.entry.part.assumed):
            clauses = list(one.entry.clauses)
            yield {"pointer": one.pointers[0], "member": member, "rule": rule, "clauses": clauses}


def _fills(placed: Iterable[Placed]) -> Iterator[dict[str, str]]:
    for one in placed:
        if one.entry.part.fill:
            member, arch = one.entry.part.fill
            yield {"pointer": f"{one.pointers[0]}/{member}", "teeth_of": arch}


def _said(document: dict[str, Any], pointer: str) -> bool:
    section, _, member = pointer.lstrip("/").partition("/")
    return bool(member) and member in document.get(section, {})


def _accounted(order: Order, drafted: Draft) -> None:
    """Every clause is in exactly one account; anything else is an error of this program."""
    carried = {at for source in drafted.sources.values() for at in source["clauses"]}
    accounts = [*sorted(carried), *(one.clause for one in drafted.uncarried), *drafted.administrative]
    if sorted(accounts) != list(range(len(order.clauses))):
        raise AssertionError("a clause of the note is in no account, or in two")
