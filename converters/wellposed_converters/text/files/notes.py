"""The text of a note, and the error for a file that has none that can be read safely."""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass
from typing import Final

ALLOWED: Final = frozenset("\t\n\r")
REORDERING: Final = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\u200e\u200f\u061c")


@dataclass(frozen=True)
class Note:
    """The text of a note, and what of its file is not in it."""

    text: str
    warnings: tuple[str, ...] = ()


class NoteError(ValueError):
    """A file whose text cannot be had without guessing or dropping something.

    rule      a name for the kind of fault
    place     where it is: the file's name, and line, column and byte where there are any
    expected  what would have been read
    advice    what to do
    """

    def __init__(self, rule: str, place: str, expected: str, advice: str) -> None:
        super().__init__(f"{place}: {expected}. {advice}. [{rule}]")
        self.rule = rule
        self.place = place
        self.expected = expected
        self.advice = advice


def checked(text: str, name: str, warnings: tuple[str, ...] = ()) -> Note:
    """The note, unless its text is empty or holds characters that are not seen.

    Raises:
        NoteError: "note-empty", "note-control-character", "note-reordering-character"
    """
    if not text.strip():
        raise NoteError("note-empty", name, "a note holds words", "Check that this is the file you mean")
    for at, char in enumerate(text):
        if char in REORDERING:
            advice = "Such characters change the order in which the text is shown: take them out and look at it again"
            raise NoteError(
                "note-reordering-character", _place(text, at, name), "characters in the order shown", advice
            )
        if unicodedata.category(char) == "Cc" and char not in ALLOWED:
            raise NoteError(
                "note-control-character", _place(text, at, name), "plain text", "Save it as plain text again"
            )
    return Note(text, warnings)


def _place(text: str, at: int, name: str) -> str:
    return f"{name}, {position(text[:at])} (U+{ord(text[at]):04X})"


def position(before: str) -> str:
    """Line and column, both from 1, of what follows the text."""
    lines = before.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return f"line {len(lines)}, column {len(lines[-1]) + 1}"
