"""A report as JSON: the master form, described by ``spec/schema/1/report.schema.json``."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from wellposed import __version__
from wellposed.findings import CAUTION, Finding, Severity
from wellposed.render.clinical import would_change
from wellposed.render.outcome import Judged, NotChecked, Outcome
from wellposed.render.wording import sentence
from wellposed.report import Report

__all__ = [
    "CLOSING",
    "TOOL",
    "VERSION",
    "document",
    "dumped",
    "finding_object",
    "head",
    "json_object",
    "json_reports",
    "profile",
    "profile_object",
    "report_object",
]

VERSION = "1.0"
TOOL = {"name": "wellposed", "version": __version__}
CLOSING = {"caution": CAUTION, "format": "wellposed/report", "version": VERSION, "tool": TOOL}
"""How every report ends: whoever reads the verdict reads the caution."""


def json_object(outcome: Outcome) -> dict[str, Any]:
    """A report, or why there is none."""
    if isinstance(outcome, NotChecked):
        return {"name": outcome.name, "reason": outcome.reason}
    return report_object(outcome)


def json_reports(objects: Sequence[Mapping[str, Any]]) -> str:
    """One report by itself; several, or a file without one, under ``wellposed/reports``."""
    if len(objects) == 1 and "verdict" in objects[0]:
        return dumped(objects[0], indent=2)
    return dumped(
        {
            "reports": [one for one in objects if "verdict" in one],
            "not_checked": [one for one in objects if "verdict" not in one],
            **CLOSING,
            "format": "wellposed/reports",
        },
        indent=2,
    )


def report_object(judged: Judged) -> dict[str, Any]:
    """The report on one document, the verdict first."""
    report = judged.report
    return {
        **head(judged),
        "findings": [finding_object(finding) for finding in report.findings],
        "profile": profile(report),
        **CLOSING,
    }


def head(judged: Judged) -> dict[str, Any]:
    """The verdict, on what, and how much was found."""
    report = judged.report
    return {
        "verdict": report.verdict,
        "fit_to_send": report.fit_to_send,
        "document": document(judged),
        "counts": {severity.value: report.count(severity) for severity in Severity},
    }


def document(judged: Judged) -> dict[str, Any]:
    """The file's base name, and the document's own id and revision if it could be read that far."""
    return {"name": judged.name, "id": judged.report.id, "revision": judged.report.revision}


def profile(report: Report) -> dict[str, Any] | None:
    """The practice profile and what it changed."""
    return profile_object(report.profile, report.changes)


def profile_object(name: str | None, changes: Iterable[tuple[str, float | str, float | str]]) -> dict[str, Any] | None:
    """A practice profile by its name, and what it changed; None where there is none."""
    if name is None:
        return None
    return {"name": name, "changes": [{"key": key, "from": before, "to": after} for key, before, after in changes]}


def finding_object(finding: Finding) -> dict[str, Any]:
    """A finding with its sentence. Amounts are as computed; rounding is for those who show them."""
    return {
        "rule": finding.rule,
        "severity": finding.severity.value,
        "pointer": finding.pointer,
        "line": finding.line,
        "column": finding.column,
        "clauses": list(finding.clauses),
        "message": sentence(finding),
        "rests_on": [{"kind": kind, "name": name} for kind, name in finding.rests_on],
        "would_change": would_change(finding),
        "under": {"rule": finding.under[0], "pointer": finding.under[1]} if finding.under else None,
        "facts": dict(finding.facts),
    }


def dumped(value: Any, indent: int | None = None) -> str:
    """The same ASCII text for the same value everywhere, ending in a line break. ValueError for NaN."""
    separators = None if indent else (",", ":")
    return json.dumps(value, indent=indent, separators=separators, allow_nan=False) + "\n"
