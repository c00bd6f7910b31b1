"""A reading and its draft as lines for a person: what is understood, assumed, to be answered, and not in the note."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import TextWrapper
from typing import Final

from wellposed_converters.text.clause import Question, quoted
from wellposed_converters.text.contradictions import remarks
from wellposed_converters.text.draft import Draft
from wellposed_converters.text.read import Reading
from wellposed_converters.text.standing import MARK
from wellposed_converters.text.told import told
from wellposed_converters.text.wording import wording

CAUTION: Final = (
    "Read by rule, for a licensed clinician to confirm; local law and the clinician's judgement come first. The clauses"
    " below are what a laboratory would be told; the note itself orders nothing."
)


def lines(reading: Reading, drafted: Draft, width: int) -> str:
    """The whole account, wrapped to ``width``."""
    parts = [CAUTION]
    for title, entries in (
        ("Understood", _understood(reading)),
        ("Assumed", _assumed(reading, drafted)),
        ("To be answered", _open(drafted)),
        ("To bear in mind", _remarks(reading)),
        ("Not in the note, and needed", list(drafted.missing)),
        ("Passed over as no instruction", _notes(reading)),
    ):
        if entries:
            parts.append("\n".join([f"{title} ({len(entries)})", *(_item(entry, width) for entry in entries)]))
    return "\n\n".join("\n".join(TextWrapper(width).wrap(part)) if part is CAUTION else part for part in parts) + "\n"


def _item(text: str, width: int) -> str:
    return TextWrapper(width, initial_indent="  - ", subsequent_indent="    ").fill(text)


def _flat(text: str) -> str:
    return " ".join(text.split())


def _understood(reading: Reading) -> list[str]:
    return [
        f"{told(clause)}{' [standing instructions]' if MARK in clause.rules else ''}"
        f"{' [answer]' if 'answer' in clause.rules else ''}, from: {_flat(quoted(reading.text, clause.spans))}"
        for clause in reading.clauses
        if clause.kind != "note"
    ]


def _remarks(reading: Reading) -> list[str]:
    """What needs no answer: said twice, or of no effect."""
    found = remarks(reading.clauses, reading.text)
    return [wording(question, reading.clauses, reading.text) for question in found]


def _notes(reading: Reading) -> list[str]:
    return [_flat(quoted(reading.text, clause.spans)) for clause in reading.clauses if clause.kind == "note"]


def _assumed(reading: Reading, drafted: Draft) -> list[str]:
    return [*_by_convention(reading), *(f"{one['pointer']}/{one['member']}: {one['rule']}" for one in drafted.assumed)]


def _by_convention(reading: Reading) -> Iterator[str]:
    if reading.numbering.system and not reading.numbering.stated:
        yield f"tooth numbering: {reading.numbering.system}, shown by the numbers themselves"
    for clause in reading.clauses:
        if clause.inferred and clause.kind != "note":
            members = ", ".join(name.replace("_", " ") for name in clause.inferred)
            yield f"{members} in: {_flat(quoted(reading.text, clause.spans))}"


def _open(drafted: Draft) -> list[str]:
    return [
        f"{one['id']} ({one['type'].replace('_', ' ')}): {one['text']}"
        + (f" [{' | '.join(one['option_words'])}]" if one.get("option_words") else "")
        for one in drafted.open_questions()
    ]


def asked_in_words(question: Question, reading: Reading) -> str:
    """The question as it is put at the terminal, with the clauses it is about."""
    words = wording(question, reading.clauses, reading.text)
    about = [f"  {number}. {told(reading.clauses[at])}" for number, at in enumerate(question.concerns, start=1)]
    quote = f"“{_flat(quoted(reading.text, question.spans))}”"
    return "\n".join([quote, words, *about, f"  ({HOW.get(question.type, ANY)})"])


HOW: Final = {
    "notation": "answer FDI, Universal, Palmer or Haderup",
    "contradiction": "answer the number of what holds, or 'all' if they are meant so together, or in plain words",
    "finding_or_request": "answer 'now' or 'wanted', or in plain words, or 'nothing'",
}
ANY: Final = "answer in plain words, as in a note, or 'nothing'"
