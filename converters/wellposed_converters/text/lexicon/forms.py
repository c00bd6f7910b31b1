"""The words a note may use, as data, and the longest match over them.

``heads.toml`` holds what a clause is about, ``slots.toml`` what fills it, ``glue.toml`` the closed list of words that
carry nothing, ``asked.toml`` the words that are never decided, ``whole.toml`` whole statements. A form has one entry;
two entries for one form are an error when the lexicon is read.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from typing import Any, Final

from wellposed_converters.text.lexicon.lexer import Token, tokens
from wellposed_converters.text.tables import read_table

HYPHENS: Final = frozenset("-\u2010\u2011\u2013")


@dataclass(frozen=True)
class Entry:
    """One reading of a form: its terminal in the grammar, its name, and what else the data says of it."""

    category: str
    name: str
    facts: Mapping[str, Any] = field(default_factory=dict, hash=False)


@dataclass(frozen=True)
class Match:
    """A form found in the text, over the tokens ``first`` to ``last`` (exclusive)."""

    entry: Entry
    first: int
    last: int


class _Node(dict[str, "_Node"]):
    entry: Entry | None = None


@cache
def _data(name: str) -> Mapping[str, Any]:
    return read_table(__package__, name)


@cache
def _entries() -> tuple[tuple[str, Entry], ...]:
    heads = [(form, head(name)) for name, facts in _data("heads.toml").items() for form in facts["forms"]]
    slots = [
        (form, Entry(category, name))
        for category, readings in _data("slots.toml").items()
        for name, forms in readings.items()
        for form in forms
    ]
    glue = [(form, Entry("GLUE", sort)) for sort, forms in _data("glue.toml").items() for form in forms]
    return (*_once([*heads, *slots, *_listed("ASKED", "asked.toml"), *_listed("WHOLE", "whole.toml")]), *glue)


def _listed(category: str, file: str) -> list[tuple[str, Entry]]:
    entries = {name: Entry(category, name, _facts(facts)) for name, facts in _data(file).items()}
    return [(form, entries[name]) for name, facts in _data(file).items() for form in facts["forms"]]


@cache
def head(name: str) -> Entry:
    """The entry of a head word."""
    return Entry("HEAD", name, {"kind": name} | _facts(_data("heads.toml")[name]))


def _facts(row: Mapping[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in row.items() if key != "forms"}


def _once(entries: list[tuple[str, Entry]]) -> list[tuple[str, Entry]]:
    seen: dict[str, Entry] = {}
    for form, entry in entries:
        if form in seen:
            raise ValueError(f"the form {form!r} stands at {seen[form].name} and at {entry.name}")
        seen[form] = entry
    return entries


@cache
def _root() -> _Node:
    root = _Node()
    for form, entry in _entries():
        node = root
        for token in tokens(form):
            node = node.setdefault(token.norm, _Node())
        if node.entry is None:
            node.entry = entry
    return root


@cache
def vocabulary() -> frozenset[str]:
    """Every single word that stands in a form."""
    return frozenset(token.norm for form, _ in _entries() for token in tokens(form) if token.sort == "word")


@cache
def content_words() -> frozenset[str]:
    """The words a slip of the keyboard may be repaired to: what a clause is about, and what is done."""
    return frozenset(
        token.norm
        for form, entry in _entries()
        if entry.category in ("HEAD", "VERB")
        for token in tokens(form)
        if token.sort == "word"
    ) | frozenset(_data("repair.toml")["words"])


def entry_of(word: str) -> Entry | None:
    """What a word means by itself; ``None`` where it is only a part of forms."""
    row = tokens(word)
    match = longest(row, 0, len(row))
    return match.entry if match is not None and match.last == len(row) else None


def longest(row: Sequence[Token], first: int, stop: int) -> Match | None:
    """The longest form that starts at token ``first`` and ends before ``stop``; a hyphen inside it may be missing."""
    node, at, best = _root(), first, None
    while at < stop:
        step = node.get(row[at].norm)
        if step is None and at > first and row[at].norm in HYPHENS and _tight(row, at):
            at += 1
            continue
        if step is None:
            break
        node, at = step, at + 1
        if node.entry is not None:
            best = Match(node.entry, first, at)
    return best


def _tight(row: Sequence[Token], at: int) -> bool:
    """Whether the sign stands between two words without a space."""
    return (
        0 < at < len(row) - 1
        and row[at - 1].end == row[at].start
        and row[at].end == row[at + 1].start
        and row[at + 1].sort == "word"
    )
