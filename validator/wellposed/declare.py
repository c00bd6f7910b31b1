"""How a rule is declared: its metadata sits on it, and its page is its docstring.

A rule is a generator over one subject (a whole prescription, a chart); guard first, then yield what is told.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from inspect import cleandoc
from typing import Any, Generic, NamedTuple, TypeVar

from wellposed.findings import Finding, Severity

RULE_FAILED = "rule-failed"
PASSES, FAILS = "Passes:", "Fails:"

Subject_contra = TypeVar("Subject_contra", contravariant=True)


class Told(NamedTuple):
    """What a rule has to say at one place; its name and weight come from its declaration."""

    pointer: str
    clauses: tuple[str, ...]
    facts: Mapping[str, Any]


def told(pointer: str, *clauses: str | None, **facts: Any) -> Told:
    """One thing said, with the ids of the clauses concerned; what is empty or not known is left out."""
    known = {name: fact for name, fact in facts.items() if fact is not None}
    return Told(pointer, tuple(dict.fromkeys(filter(None, clauses))), known)


@dataclass(frozen=True, slots=True)
class Rule(Generic[Subject_contra]):
    """One fault a rule looks for.

    id        a short phrase, as findings carry it
    severity  how much it weighs
    title     the fact, in a line
    do        what to do about it
    page      what is looked at; why it matters; members that pass (null: left out) and members that fail
    look      the generator that looks
    """

    id: str
    severity: Severity
    title: str
    do: str
    page: str
    look: Callable[[Subject_contra], Iterator[Told]]

    @property
    def what(self) -> str:
        """What is looked at, on one line."""
        return on_one_line(self.page.partition("\n\n")[0])

    @property
    def why(self) -> str:
        """Why it matters, on one line."""
        return on_one_line(self._words.partition("\n\n")[2])

    @property
    def passes(self) -> dict[str, Any]:
        """Members of a prescription in which the rule finds nothing."""
        return _members(self._examples[0])

    @property
    def fails(self) -> dict[str, Any]:
        """Members of a prescription in which it finds something."""
        return _members(self._examples[1])

    @property
    def _words(self) -> str:
        return self.page.partition(PASSES)[0]

    @property
    def _examples(self) -> list[str]:
        return self.page.partition(PASSES)[2].split(FAILS)

    def findings(self, subject: Subject_contra) -> Iterator[Finding]:
        """All this rule finds. A rule that breaks says so, and the others go on."""
        try:
            for one in self.look(subject):
                yield self.finding(subject, one)
        except Exception:
            yield Finding(RULE_FAILED, Severity.STOP, "", {"rule": self.id})

    def finding(self, subject: Subject_contra, one: Told) -> Finding:  # noqa: ARG002 - what a kind of rule may look up in it
        """What was told, as a finding."""
        return Finding(self.id, self.severity, one.pointer, one.facts, one.clauses)


def on_one_line(text: str) -> str:
    """Words with single blanks between them."""
    return " ".join(text.split())


def _members(text: str) -> dict[str, Any]:
    members: dict[str, Any] = json.loads(text)
    return members


def rule(
    name: str, severity: Severity, *, title: str, do: str
) -> Callable[[Callable[[Subject_contra], Iterator[Told]]], Rule[Subject_contra]]:
    """Declare the generator below as the rule of this name."""

    def declared(look: Callable[[Subject_contra], Iterator[Told]]) -> Rule[Subject_contra]:
        return Rule(name, severity, title, do, cleandoc(look.__doc__ or ""), look)

    return declared
