"""A read-back as a draft, and the account of it for people."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
from functools import cache
from textwrap import TextWrapper
from typing import Any, Final

from wellposed_converters.text.clause import Question
from wellposed_converters.text.draft import Draft, Uncarried
from wellposed_converters.text.draft.finish import ENVELOPE
from wellposed_converters.text.readback.reading import ReadBack
from wellposed_converters.text.said import CAUTION
from wellposed_converters.text.tables import read_table

NOT_REPEATED: Final = "not-repeated"


def draft_of(read: ReadBack) -> Draft:
    """The draft; its ``clauses`` are the numbers of the sentences. Notes and extensions are not carried."""
    return Draft(
        hashlib.sha256(read.text.encode()).hexdigest(),
        read.document,
        {pointer: _source(read, at) for pointer, at in read.sources.items()},
        tuple(Uncarried(at, NOT_REPEATED) for at in read.unsaid),
        read.follows,
        tuple(_asked(read, number, one) for number, one in enumerate(read.questions, start=1)),
        tuple(pointer for pointer in ENVELOPE if not _said(read.document, pointer)),
    )


def _source(read: ReadBack, at: Iterable[int]) -> dict[str, Any]:
    return {"clauses": list(at), "spans": [list(read.entries[one].span) for one in at]}


def _asked(read: ReadBack, number: int, question: Question) -> dict[str, Any]:
    about = [at for at, entry in enumerate(read.entries) if entry.span in question.spans]
    spans = [list(span) for span in question.spans]
    words = in_words(question)
    return {
        "id": f"q{number}",
        "type": question.type,
        "asks": question.asks,
        "text": words,
        "for": about,
        "spans": spans,
    }


def in_words(question: Question) -> str:
    """The question as it is put."""
    return _words()[question.asks].format(**dict(question.facts))


@cache
def _words() -> Mapping[str, str]:
    data = read_table(__package__, "asked.toml")
    words: dict[str, str] = data["words"]
    return words


def _said(document: Any, pointer: str) -> bool:
    for step in pointer.split("/")[1:]:
        if not isinstance(document, Mapping) or step not in document:
            return False
        document = document[step]
    return True


def lines(read: ReadBack, drafted: Draft, width: int) -> str:
    """The account of a read-back: what was read, what is asked, what it does not repeat."""
    carried = {at for found in read.sources.values() for at in found}
    parts = [
        ("Read, as it stands there", [_told(read, at) for at in sorted(carried)]),
        ("To be answered in the text, which is then read again", [_question(read, one) for one in drafted.questions]),
        ("Not in the text, and needed", list(drafted.missing)),
        ("Named there, but not repeated", [_told(read, at) for at in read.unsaid]),
    ]
    wrap = TextWrapper(width, initial_indent="  - ", subsequent_indent="    ", break_on_hyphens=False)
    told = ["\n".join([f"{title} ({len(found)})", *map(wrap.fill, found)]) for title, found in parts if found]
    return "\n\n".join(["\n".join(TextWrapper(width).wrap(CAUTION)), *told]) + "\n"


def _told(read: ReadBack, at: int) -> str:
    entry = read.entries[at]
    return f"{entry.id} {entry.text}".strip()


def _question(read: ReadBack, one: Mapping[str, Any]) -> str:
    quoted = " ".join(" … ".join(read.text[start:end] for start, end in one["spans"]).split())
    return f"{one['id']} ({one['type'].replace('_', ' ')}): {one['text']}" + (f" In: {quoted}" if quoted else "")
