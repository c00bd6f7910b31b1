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


GROUNDS = ("measurement", "diagnosis", "expectation", "clause", "missing")
"""The kinds of statement a finding can rest on."""


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
    rests_on  what it rests on: (kind, name) with the kind ``measurement``, ``diagnosis``, ``expectation``, ``clause``
              and an id, or ``missing`` and what is not stated
    under     rule and pointer of the finding it goes under, where both have one cause
    """

    rule: str
    severity: Severity
    pointer: str = ""
    facts: Mapping[str, Any] = field(default_factory=no_facts)
    clauses: tuple[str, ...] = ()
    line: int | None = None
    column: int | None = None
    rests_on: tuple[tuple[str, str], ...] = ()
    under: tuple[str, str] | None = None

    @property
    def name(self) -> tuple[str, str]:
        """Rule and pointer, by which others go under it."""
        return self.rule, self.pointer

    def at(self, line: int, column: int) -> Finding:
        """The same finding with its place in the text."""
        return replace(self, line=line, column=column)


def ordered(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Heaviest first, then by place in the document, then by rule: the same every time."""
    return tuple(sorted(findings, key=_order))


def gathered(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """In order, each group as one: its leader, then what goes under it; as heavy as its heaviest, and first there."""
    alone = ordered(findings)
    groups: dict[tuple[str, str], list[Finding]] = {}
    for finding in alone:
        if finding.under:
            groups.setdefault(finding.under, []).append(finding)
    told = [(finding, groups.get(finding.name, [])) for finding in alone if not finding.under]
    told.sort(
        key=lambda group: (
            min(one.severity.rank for one in (group[0], *group[1])),
            not (group[1] or group[0].facts.get("instructions")),
        )
    )
    return tuple(one for leader, members in told for one in (leader, *members))


def _order(finding: Finding) -> tuple[int, list[tuple[int, str]], str, str]:
    steps = [(int(step) if step.isdecimal() else -1, step) for step in finding.pointer.split("/")]
    return finding.severity.rank, steps, finding.rule, repr(sorted(finding.facts.items(), key=repr))
