"""What a check has to say, as plain ordered data; the words are made in ``wellposed.render``."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from types import MappingProxyType
from typing import Any

CAUTION = (
    "Decision support for licensed clinicians. It checks what is written, not the patient. "
    "Local law, licence and the prescriber's judgement come first."
)


class Severity(StrEnum):
    """How much a finding weighs, heaviest first."""

    STOP = "stop"
    ASK = "ask"
    CAUTION = "caution"
    NOTE = "note"

    @property
    def rank(self) -> int:
        """0 for the heaviest."""
        return list(Severity).index(self)


def no_facts() -> Mapping[str, Any]:
    """An empty, unchangeable mapping."""
    return MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing found.

    rule      id of the rule that speaks, a short phrase such as ``duplicate-member``
    severity  how much it weighs
    pointer   RFC 6901 pointer to the place in the document ("" is the whole document)
    facts     values the wording needs, JSON types only; never a value of the patient or prescriber
    clauses   ids of the clauses concerned, in document order
    line      1-based line of the place, if known
    column    1-based column in Unicode code points, if known
    """

    rule: str
    severity: Severity
    pointer: str = ""
    facts: Mapping[str, Any] = field(default_factory=no_facts)
    clauses: tuple[str, ...] = ()
    line: int | None = None
    column: int | None = None

    def at(self, line: int, column: int) -> Finding:
        """The same finding with its place in the text."""
        return replace(self, line=line, column=column)


def ordered(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Heaviest first, then by place in the document, then by rule: the same every time."""
    return tuple(sorted(findings, key=_order))


def _order(finding: Finding) -> tuple[int, list[tuple[int, str]], str, str]:
    steps = [(int(step) if step.isdecimal() else -1, step) for step in finding.pointer.split("/")]
    return finding.severity.rank, steps, finding.rule, repr(sorted(finding.facts.items(), key=repr))
