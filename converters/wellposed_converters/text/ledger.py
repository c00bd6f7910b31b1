"""An account of every character of a note: in a clause, in a question, in the closed list of glue, or nowhere.

Nowhere is an error of the program, never of the note.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from wellposed_converters.text.clause import Clause, Question, Span

SAYS_NOTHING: Final = re.compile(r"[\s\W_]")
"""White space and punctuation; a sign that means something stands in an item and so in a clause or a question."""


@dataclass(frozen=True)
class Ledger:
    """A mark a character: ``c`` clause, ``q`` question, ``g`` glue, space for blanks and punctuation, ``!`` hole."""

    marks: str

    def holes(self) -> tuple[int, ...]:
        """Where a character is accounted for by nothing."""
        return tuple(at for at, mark in enumerate(self.marks) if mark == "!")

    def coverage(self) -> float:
        """The share of characters that are accounted for."""
        said = [mark for mark in self.marks if mark != " "]
        return 1.0 if not said else sum(mark != "!" for mark in said) / len(said)


def account(text: str, clauses: Iterable[Clause], questions: Iterable[Question], glue: Iterable[Span]) -> Ledger:
    """The ledger of a reading."""
    marks = [" " if SAYS_NOTHING.match(char) else "!" for char in text]
    _mark(marks, glue, "g")
    _mark(marks, (span for clause in clauses for span in clause.spans), "c")
    _mark(marks, (span for question in questions for span in question.spans), "q")
    return Ledger("".join(marks))


def _mark(marks: list[str], spans: Iterable[Span], sign: str) -> None:
    for start, end in spans:
        for at in range(start, end):
            if marks[at] != " ":
                marks[at] = sign
