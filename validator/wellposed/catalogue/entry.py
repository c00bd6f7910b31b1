"""An entry of the catalogue, and the strict reading of the files the entries stand in."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from wellposed.findings import Severity

__all__ = ["Entry", "Verdict", "entries", "verdicts"]

_DATA = Path(__file__).parent / "data"


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing a finding can say.

    id        the rule's id, as findings carry it
    severity  how much it usually weighs
    title     the fact, in a line
    what      what is looked at
    why       why it matters
    do        what to do about it
    source    what it rests on
    passes    a fragment it lets pass
    fails     a fragment it does not
    group     ``text``, ``structure``, ``consistency``, ``setup``, ``review``, ``kinematics`` or a clinical topic
    evidence  how far the evidence goes; of a clinical rule
    says      its sentence, with ``{fact}`` for each fact; of a clinical rule
    change    what would change its judgement; of a clinical rule
    figures   the norms it uses, by key or by the head of a family
    """

    id: str
    severity: Severity
    title: str
    what: str
    why: str
    do: str
    source: str
    group: str
    passes: str = ""
    fails: str = ""
    evidence: str = ""
    says: str = ""
    change: str = ""
    figures: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Verdict:
    """One word a report can begin with: what it means, and what to do."""

    id: str
    title: str
    what: str
    do: str


@cache
def entries(group: str) -> tuple[Entry, ...]:
    """The entries of one file. TypeError or ValueError where it is not as it should be."""
    return tuple(_entry(group, table) for table in _tables(group, "rule"))


@cache
def verdicts() -> tuple[Verdict, ...]:
    """The verdicts, best first and those without a judgement last."""
    return tuple(Verdict(**_words(table)) for table in _tables("verdicts", "verdict"))


def _entry(group: str, table: dict[str, Any]) -> Entry:
    words: dict[str, Any] = {**_words(table)}
    return Entry(severity=Severity(words.pop("severity")), group=group, **words)


def _tables(name: str, kind: str) -> list[dict[str, Any]]:
    tables: list[dict[str, Any]] = tomllib.loads((_DATA / f"{name}.toml").read_text("utf-8"))[kind]
    return tables


def _words(table: dict[str, str]) -> dict[str, str]:
    """The words on one line each, however the file breaks them."""
    return {member: " ".join(text.split()) for member, text in table.items()}
