"""The words of places, from the data files beside this module."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from wellposed_converters.text.lexicon.lexer import tokens
from wellposed_converters.text.tables import read_table


@dataclass(frozen=True)
class Group:
    """What a tooth word means; ``options`` are readings where ``asks`` says that it is never certain."""

    positions: tuple[int, ...] = ()
    primary: bool = False
    whole: bool = False
    inferred: bool = False
    range: bool = False
    asks: str | None = None
    options: tuple[tuple[int, ...], ...] = ()


@cache
def table() -> Mapping[str, Any]:
    """``tooth_words.toml``."""
    return read_table(__package__, "tooth_words.toml")


@cache
def groups() -> Mapping[str, Group]:
    """``groups.toml``."""
    rows = read_table(__package__, "groups.toml")
    return {name: _group(row) for name, row in rows.items()}


def _group(row: Mapping[str, Any]) -> Group:
    options = tuple(tuple(option) for option in row.get("options", ()))
    return Group(**{**row, "positions": tuple(row.get("positions", ())), "options": options})


@cache
def words(section: str, name: str) -> frozenset[str]:
    """A list of the file, as single words."""
    return frozenset(table()[section][name])


Phrases = Mapping[str, tuple[tuple[tuple[str, ...], str], ...]]
"""First word to the phrases that begin with it, the longest first, each with what it stands for."""


@cache
def phrases(section: str, *names: str) -> Phrases:
    """Lists of the file, word by word; each phrase stands for the name of its list."""
    return _by_first((form, name) for name in names for form in table()[section][name])


@cache
def tooth_phrases() -> Phrases:
    """Every tooth word, standing for ``one:`` or ``all:`` and its group."""
    rows = table()["groups"]
    return _by_first(
        (form, f"{n}:{group}") for n in ("one", "all") for group, forms in rows[n].items() for form in forms
    )


def _by_first(rows: Iterable[tuple[str, str]]) -> Phrases:
    found: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for form, name in rows:
        parts = tuple(token.norm for token in tokens(form))
        found.setdefault(parts[0], []).append((parts, name))
    return {first: tuple(sorted(rows, key=lambda row: -len(row[0]))) for first, rows in found.items()}
