"""How a clinical rule is declared, and what every finding of one carries beside its own facts.

The page (the docstring) has these parts, in this order: what is looked at, in one paragraph; why it matters;
``Evidence:`` how far the figures go; ``Passes:`` and ``Fails:``, members of a prescription (null: left out).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from inspect import cleandoc
from typing import Any, Protocol, TypeVar

from wellposed.declare import PASSES, Rule, Told, on_one_line, told
from wellposed.findings import Finding, Severity
from wellposed.norms import Norms

__all__ = ["Clinical", "Told", "rule", "said", "told"]

EVIDENCE = "Evidence:"


class Numbered(Protocol):
    """What a clinical rule may be given: a prescription or a setup, with the norms in force."""

    @property
    def numbers(self) -> Norms:
        """The norms."""

    def figure(self, key: str) -> dict[str, Any]:
        """One of them as a finding tells it."""


Looked = TypeVar("Looked", bound=Numbered)


@dataclass(frozen=True, slots=True)
class Clinical(Rule[Looked]):
    """A clinical rule.

    says     the sentence, with ``{fact}`` for each fact; kinds as in ``wellposed.render.filled``
    change   what would change the judgement, a sentence of the same kind
    figures  the norms it uses, each by its key or by the head of its family
    sources  keys of references beside those of the figures
    """

    says: str = ""
    change: str = ""
    figures: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()

    @property
    def why(self) -> str:
        """Why it matters, on one line."""
        return on_one_line(self._prose.partition("\n\n")[2].partition(EVIDENCE)[0])

    @property
    def evidence(self) -> str:
        """How far the evidence goes, on one line."""
        return on_one_line(self._prose.partition(EVIDENCE)[2])

    @property
    def _prose(self) -> str:
        return self.page.partition(PASSES)[0]

    def finding(self, subject: Looked, one: Told) -> Finding:
        """What was told, with the figures it was measured against; its weight is that of the practice profile."""
        figures = [subject.figure(key) for key in dict.fromkeys(one.facts.get("figures", ()))]
        facts = {**one.facts, "figures": figures, "missing": list(one.facts.get("missing", ()))}
        severity = subject.numbers.severity(self.id, self.severity)
        usual = {} if severity == self.severity else {"usual_severity": self.severity.value}
        return Finding(self.id, severity, one.pointer, facts | usual, one.clauses)


def rule(  # noqa: PLR0913 - the members of a declaration, each by its name
    name: str,
    severity: Severity,
    *,
    title: str,
    says: str,
    do: str,
    change: str,
    figures: Iterable[str] = (),
    sources: Iterable[str] = (),
) -> Callable[[Callable[[Looked], Iterator[Told]]], Clinical[Looked]]:
    """Declare the generator below as the clinical rule of this name."""

    def declared(look: Callable[[Looked], Iterator[Told]]) -> Clinical[Looked]:
        page = cleandoc(look.__doc__ or "")
        return Clinical(name, severity, title, do, page, look, says, change, tuple(figures), tuple(sources))

    return declared


def said(part: Any) -> dict[str, Any]:
    """A clause or a finding as a fact: as it stands in the document."""
    dumped: dict[str, Any] = part.model_dump(exclude_none=True, mode="json")
    return dumped
