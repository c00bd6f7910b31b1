"""Reports as FHIR R4 OperationOutcomes, for systems that speak FHIR."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import Any, Final

from wellposed.catalogue import rules
from wellposed.findings import CAUTION, Finding, Severity
from wellposed.reading.pointer import steps
from wellposed.render.headline import headline
from wellposed.render.outcome import NotChecked, Outcome
from wellposed.render.wording import sentence
from wellposed.report import NOT_JUDGED, UNREADABLE, Report

__all__ = ["SYSTEM", "not_checked_outcome", "operation_outcome", "operation_outcome_of"]

SYSTEM: Final = "urn:wellposed:fhir:1:"
"""Before the name of a list of codes: ``rule``, ``severity``, ``verdict``."""

_SEVERITIES: Final = {
    Severity.STOP: "error",
    Severity.ASK: "error",
    Severity.CAUTION: "warning",
    Severity.NOTE: "information",
}
"""What stops a document, and what must be answered before it is sent, makes the sending fail."""

_GROUPS: Final = {
    "text": "structure",
    "structure": "value",
    "consistency": "invariant",
    "setup": "invariant",
    "review": "invariant",
    "receipt": "invariant",
    "exchange": "security",
}
_RULES: Final = {
    "document-too-large": "too-long",
    "too-long": "too-long",
    "missing-member": "required",
    "unknown-member": "structure",
    "wrong-kind": "structure",
    "not-one-of": "code-invalid",
    "unknown-format": "not-supported",
    "duplicate-id": "duplicate",
    "unknown-reference": "not-found",
    "cannot-hold-together": "conflict",
}
"""Issue types that are closer than that of the rule's group; of a clinical rule it is ``business-rule``."""

_VERDICTS: Final = {UNREADABLE: "structure", "refused": "invalid", "contradictory": "conflict"}
_NAME = re.compile("[A-Za-z_][A-Za-z0-9_]*")
_PLACE = re.compile("[0-9]+")
_OF_NAMES = ("unknown-member", "duplicate-member")
"""Rules that point at a member, whatever it is called: a tooth number for one."""
_TABLES = ("values",)
"""Members whose own members are called by tooth numbers: there a number is a name, not a place in a list."""

Object = dict[str, Any]


def operation_outcome_of(outcome: Outcome) -> Object:
    """The OperationOutcome for one file."""
    return not_checked_outcome(outcome.reason) if isinstance(outcome, NotChecked) else operation_outcome(outcome.report)


def operation_outcome(report: Report) -> Object:
    """The verdict, every finding in the order of the report, and the caution, an issue each."""
    told = [_verdict(report), *(_finding(report, one) for one in report.findings), _caution()]
    return {"resourceType": "OperationOutcome", "issue": told}


def not_checked_outcome(reason: str) -> Object:
    """Why there is no report."""
    issue = {"severity": "fatal", "code": "processing", "details": {"text": f"Not checked: {reason}"}}
    return {"resourceType": "OperationOutcome", "issue": [issue, _caution()]}


def fhirpath(pointer: str, *, of_name: bool = False) -> str:
    """A JSON Pointer (RFC 6901) as a FHIRPath expression, from the document on; "" for the whole of it.

    of_name  the last step is the name of a member, also where it looks like a place in a list
    """
    path, before, last = "", "", len(steps(pointer)) - 1
    for at, step in enumerate(steps(pointer)):
        named = at == 0 or before in _TABLES or (of_name and at == last)
        if _PLACE.fullmatch(step) and not named:
            path += f"[{step}]"
        else:
            path += f"{'.' if path else ''}{step if _NAME.fullmatch(step) else _delimited(step)}"
        before = step
    return path


def _delimited(name: str) -> str:
    escaped = name.replace("\\", "\\\\").replace("`", "\\`")
    return f"`{escaped}`"


def _verdict(report: Report) -> Object:
    return {
        "severity": _weight(report),
        "code": "informational" if report.fit_to_send else _VERDICTS.get(report.verdict, "business-rule"),
        "details": {"coding": [_coding("verdict", report.verdict)], "text": headline(report)},
    }


def _weight(report: Report) -> str:
    if report.verdict == UNREADABLE:
        return "fatal"
    if report.verdict in ("possible", NOT_JUDGED):
        return "information"
    return "error"


def _finding(report: Report, finding: Finding) -> Object:
    paths = list(_paths(finding))
    fatal = report.verdict == UNREADABLE and finding.severity == Severity.STOP
    return {
        "severity": "fatal" if fatal else _SEVERITIES[finding.severity],
        "code": _code(finding),
        "details": {
            "coding": [_coding("rule", finding.rule), _coding("severity", finding.severity.value)],
            "text": sentence(finding),
        },
        "diagnostics": _where(finding),
        **({"expression": paths} if paths else {}),
    }


def _code(finding: Finding) -> str:
    return _RULES.get(finding.rule) or _GROUPS.get(_groups().get(finding.rule, ""), "business-rule")


@cache
def _groups() -> dict[str, str]:
    return {entry.id: entry.group for entry in rules()}


def _where(finding: Finding) -> str:
    place = f"at {finding.pointer}" if finding.pointer else "the whole document"
    line = f", line {finding.line}, column {finding.column}" if finding.line is not None else ""
    return place + line + (f"; {', '.join(finding.clauses)}" if finding.clauses else "")


def _paths(finding: Finding) -> Iterator[str]:
    """The place of the finding, then those of the clauses of its conflict."""
    members = finding.facts.get("members", ())
    own = fhirpath(finding.pointer, of_name=finding.rule in _OF_NAMES)
    others = (fhirpath(member["pointer"]) for member in members if member.get("pointer"))
    yield from filter(None, dict.fromkeys((own, *others)))


def _coding(name: str, code: str) -> Object:
    return {"system": SYSTEM + name, "code": code}


def _caution() -> Object:
    return {"severity": "information", "code": "informational", "details": {"text": CAUTION}}
