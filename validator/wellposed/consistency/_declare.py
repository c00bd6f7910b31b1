"""How a rule is declared: its metadata sits on it, and its page is its docstring."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from inspect import cleandoc
from typing import Any, NamedTuple, TypeAlias

from wellposed.consistency.whole import Whole
from wellposed.findings import Finding, Severity

RULE_FAILED = "rule-failed"


class Told(NamedTuple):
    """What a rule has to say at one place; its name and weight come from its declaration."""

    pointer: str
    clauses: tuple[str, ...]
    facts: Mapping[str, Any]


Look: TypeAlias = Callable[[Whole], Iterator[Told]]


def told(pointer: str, *clauses: str | None, **facts: Any) -> Told:
    """One thing said, with the ids of the clauses concerned; what is empty or not known is left out."""
    known = {name: fact for name, fact in facts.items() if fact is not None}
    return Told(pointer, tuple(dict.fromkeys(filter(None, clauses))), known)


@dataclass(frozen=True, slots=True)
class Rule:
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
    look: Look

    @property
    def what(self) -> str:
        """What is looked at, on one line."""
        return _on_one_line(self.page.partition("\n\n")[0])

    @property
    def why(self) -> str:
        """Why it matters, on one line."""
        return _on_one_line(self._words.partition("\n\n")[2])

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
        return self.page.partition("Passes:")[0]

    @property
    def _examples(self) -> list[str]:
        return self.page.partition("Passes:")[2].split("Fails:")

    def findings(self, whole: Whole) -> Iterator[Finding]:
        """All this rule finds. A rule that breaks says so, and the others go on."""
        try:
            for one in self.look(whole):
                yield Finding(self.id, self.severity, one.pointer, one.facts, one.clauses)
        except Exception:
            yield Finding(RULE_FAILED, Severity.STOP, "", {"rule": self.id})


def _on_one_line(text: str) -> str:
    return " ".join(text.split())


def _members(text: str) -> dict[str, Any]:
    members: dict[str, Any] = json.loads(text)
    return members


def rule(name: str, severity: Severity, *, title: str, do: str) -> Callable[[Look], Rule]:
    """Declare the generator below as the rule of this name."""

    def declared(look: Look) -> Rule:
        return Rule(name, severity, title, do, cleandoc(look.__doc__ or ""), look)

    return declared
