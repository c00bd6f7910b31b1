"""Faults of the text, and the findings they become."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any, NamedTuple

from wellposed.findings import Finding, Severity, ordered
from wellposed.reading.limits import LONGEST_NAME, MOST_FAULTS
from wellposed.reading.pointer import writable
from wellposed.reading.positions import Lines


class Fault(NamedTuple):
    """One fault: its rule, its place, what the wording needs, and where the first of two stands."""

    rule: str
    offset: int
    facts: Mapping[str, Any]
    pointer: str = ""
    first: int | None = None


TOO_MANY = {"expected": f"at most {MOST_FAULTS} faults; what follows was not read"}


def finding(rule: str, pointer: str = "", **facts: Any) -> Finding:
    """A finding that stops everything else: what cannot be read cannot be checked."""
    return Finding(rule, Severity.STOP, pointer, facts)


def name_fact(name: str) -> dict[str, str]:
    """The member's name for the wording; an overlong one is left out."""
    return {"name": writable(name)} if len(name) <= LONGEST_NAME else {}


def findings_of(text: str, faults: Iterable[Fault]) -> tuple[Finding, ...]:
    """The faults as findings with line and column, in stable order."""
    lines = Lines(text)
    return ordered(_placed(fault, lines) for fault in faults)


def _placed(fault: Fault, lines: Lines) -> Finding:
    facts = dict(fault.facts)
    if fault.first is not None:
        first = lines.place(fault.first)
        facts |= {"first_line": first.line, "first_column": first.column}
    place = lines.place(fault.offset)
    return Finding(fault.rule, Severity.STOP, fault.pointer, facts).at(place.line, place.column)
