"""How a rule is declared: its metadata sits on it, and its page is its docstring."""

from __future__ import annotations

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


def told(pointer: str, *clauses: str, **facts: Any) -> Told:
    """One thing said, with the ids of the clauses concerned; what is "" or not known is left out."""
    known = {name: fact for name, fact in facts.items() if fact is not None}
    return Told(pointer, tuple(dict.fromkeys(filter(None, clauses))), known)


@dataclass(frozen=True, slots=True)
class Rule:
    """One fault a rule looks for.

    id        a short phrase, as findings carry it
    severity  how much it weighs
    title     the fact, in a line
    do        what to do about it
    page      what is looked at, why it matters, a fragment that passes and one that fails
    look      the generator that looks
    """

    id: str
    severity: Severity
    title: str
    do: str
    page: str
    look: Look

    def findings(self, whole: Whole) -> Iterator[Finding]:
        """All this rule finds. A rule that breaks says so, and the others go on."""
        try:
            for one in self.look(whole):
                yield Finding(self.id, self.severity, one.pointer, one.facts, one.clauses)
        except Exception:
            yield Finding(RULE_FAILED, Severity.STOP, "", {"rule": self.id})


def rule(name: str, severity: Severity, *, title: str, do: str) -> Callable[[Look], Rule]:
    """Declare the generator below as the rule of this name."""

    def declared(look: Look) -> Rule:
        return Rule(name, severity, title, do, cleandoc(look.__doc__ or ""), look)

    return declared
