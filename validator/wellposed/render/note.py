"""Where in a note the clauses of a prescription come from, as the prescription itself says in an extension."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from typing import Any

from wellposed.findings import Finding
from wellposed.model.envelope import NOTE_EXTENSION


class OtherNote(Exception):  # noqa: N818 - an answer to the caller, not a fault of the program
    """The prescription names no note, or another one."""


class Note:
    """The words of a note, by the clauses made of them."""

    def __init__(self, text: str, sources: Mapping[str, list[list[int]]]) -> None:
        self._text, self._sources = text, sources

    def words(self, finding: Finding) -> str:
        """The words a finding is about, with their line; empty where none is known."""
        names = finding.clauses or (finding.pointer,)
        spans = sorted({(first, last) for name in names for first, last in self._sources.get(name, ())})
        told = [span for span in spans if 0 <= span[0] < span[1] <= len(self._text)]
        if not told:
            return ""
        line = self._text.count("\n", 0, told[0][0]) + 1
        words = " … ".join(" ".join(self._text[first:last].split()) for first, last in told)
        return f"In the note, line {line}: “{words}”"


def note_of(data: bytes, text: str) -> Note:
    """The note of a prescription that was made of one. OtherNote where it was not made of this one."""
    try:
        content: Any = json.loads(data)["extensions"][NOTE_EXTENSION]["content"]
        digest, sources = content["sha256"], dict(content["sources"])
    except (ValueError, KeyError, TypeError) as error:
        raise OtherNote("the document does not say which note it was made of") from error
    if digest != hashlib.sha256(text.encode()).hexdigest():
        raise OtherNote("the document was made of another note")
    return Note(text, sources)
