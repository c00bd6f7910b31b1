"""Reports as JSON Lines: for each document a line a finding, then a summary."""

from __future__ import annotations

from typing import Any

from wellposed.findings import CAUTION, Finding
from wellposed.render.json_report import CLOSING, document, dumped, finding_object, head, profile
from wellposed.render.outcome import Judged, NotChecked, Outcome

__all__ = ["jsonl"]


def jsonl(outcome: Outcome) -> str:
    """The lines of one document. Each can be read by itself, so each carries the caution."""
    if isinstance(outcome, NotChecked):
        return dumped({"kind": "not-checked", "name": outcome.name, "reason": outcome.reason})
    lines = [_line(outcome, finding) for finding in outcome.report.findings]
    return "".join(dumped(line) for line in [*lines, _summary(outcome)])


def _line(judged: Judged, finding: Finding) -> dict[str, Any]:
    return {
        "kind": "finding",
        "document": document(judged),
        "verdict": judged.report.verdict,
        **finding_object(finding),
        "caution": CAUTION,
    }


def _summary(judged: Judged) -> dict[str, Any]:
    return {"kind": "summary", **head(judged), "profile": profile(judged.report), **CLOSING}
