"""A stretch of text into sentences.

A sentence ends at a full stop, ``;``, ``?`` or ``!`` that is followed by white space, by the end, or, for a full stop
between two words, by a capital. It does not end inside brackets, in a decimal, after an abbreviation, or after the
number a line begins with. Commas end nothing.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from wellposed_converters.text.layout.words import table, words

ENDS: Final = re.compile(r";|[.?!]+[\"'\u201d\u2019)\]]*(?=\s|$)|(?<=[^\W\d_]{2})\.(?=[A-Z][a-z])")
WORD_BEFORE: Final = re.compile(r"(?:[^\W\d_]+(?:[./][^\W\d_]+)*)$")
NEXT: Final = re.compile(r"\s*([^\W\d_]+(?:['\u2019][^\W\d_]+)?|\S)?")
LOOK_BACK: Final = 40
WIDE: Final = 2
"""Spaces after a full stop that ends a sentence whatever stands before it."""
PAIRS: Final = {")": "(", "]": "["}


@dataclass(frozen=True)
class Sentence:
    """A sentence with its last punctuation; ``closed`` unless only a ``;`` or the end of the stretch ends it."""

    start: int
    end: int
    closed: bool


def sentences(text: str, start: int, end: int) -> tuple[Sentence, ...]:
    """The sentences of ``text[start:end]``, together every character of it that is not white space."""
    inside = _bracketed(text, start, end)
    found: list[Sentence] = []
    first = start
    for mark in ENDS.finditer(text, start, end):
        if mark.end() - 1 in inside or not _ends(text, first, mark.start(), mark.group(), end):
            continue
        found += _trimmed(text, first, mark.end(), mark.group() != ";")
        first = mark.end()
    return (*found, *_trimmed(text, first, end, closed=False))


def _trimmed(text: str, start: int, end: int, closed: bool) -> list[Sentence]:
    stripped = text[start:end].strip()
    if not stripped:
        return []
    begin = start + text[start:end].index(stripped[0])
    return [Sentence(begin, begin + len(stripped), closed)]


def _bracketed(text: str, start: int, end: int) -> set[int]:
    """The offsets inside brackets that are both opened and closed; the closing bracket itself is outside."""
    inside: set[int] = set()
    opened: list[int] = []
    reached = end
    pairs: list[tuple[int, int]] = []
    for at in range(start, end):
        if text[at] in PAIRS.values():
            opened.append(at)
        elif text[at] in PAIRS and opened and text[opened[-1]] == PAIRS[text[at]]:
            pairs.append((opened.pop(), at))
    for first, last in reversed(pairs):
        if first < reached:
            inside.update(range(first, min(last, reached)))
            reached = first
    return inside


def _ends(text: str, first: int, at: int, mark: str, end: int) -> bool:
    if mark[0] != ".":
        return True
    begun = text[max(first, at - LOOK_BACK) : at].strip()
    found = NEXT.match(text, at + len(mark), end)
    following = (found and found[1]) or ""
    if begun.isdigit() and following:
        return False  # '12. Derotate' may name a tooth or an item
    if text[at + len(mark) : at + len(mark) + 2].isspace() and len(text[at + len(mark) : at + len(mark) + 2]) == WIDE:
        return True
    if mark.startswith(".."):
        return not following or following[0].isupper()
    before = WORD_BEFORE.search(begun)
    return before is None or not following or _after_word(before[0].casefold(), begun[: before.start()], following)


def _after_word(word: str, earlier: str, following: str) -> bool:
    """Whether a full stop after the word, before what follows, ends a sentence."""
    if word in words("sentence", "abbreviations"):
        return False
    if word == "no" and following[0].isdigit():
        return earlier.rstrip()[-1:] in tuple(table("sentence")["answered"])
    units = words("sentence", "units")
    if word not in units and word not in words("sentence", "shortened"):
        return True
    if not following[0].isalpha():
        return word in units
    return following[0].isupper() or following.casefold() in words("sentence", "starters")
