"""Reports as problem details (RFC 9457), for services that refuse a document over HTTP."""

from __future__ import annotations

from typing import Any, Final
from urllib.parse import quote

from wellposed.catalogue import verdicts
from wellposed.findings import CAUTION, Finding
from wellposed.render.headline import headline
from wellposed.render.outcome import NotChecked, Outcome
from wellposed.render.wording import sentence
from wellposed.report import NOT_JUDGED, UNREADABLE, Report

__all__ = ["MEDIA_TYPE", "TYPE", "problem", "problem_of"]

MEDIA_TYPE: Final = "application/problem+json"
TYPE: Final = "urn:wellposed:problem:"
"""Before the verdict: a name, with nothing behind it to be fetched."""

_OPEN: Final = ("open-questions", "Something must be answered first")
"""Type and title where the verdict itself stands in no one's way, but a finding does."""

_BAD_REQUEST, _TOO_LARGE, _UNPROCESSABLE = 400, 413, 422

Object = dict[str, Any]


def problem_of(outcome: Outcome) -> Object | None:
    """The problem with one file; None where it is fit to send: then there is no problem to tell of."""
    if isinstance(outcome, NotChecked):
        head = {"type": f"{TYPE}not-checked", "title": "The document was not checked", "detail": outcome.reason}
        return {**head, "instance": quote(outcome.name, safe=""), "caution": CAUTION}
    return problem(outcome.report, outcome.name)


def problem(report: Report, name: str = "") -> Object | None:
    """What stands against a document, with an entry of ``errors`` for each finding; None where it is fit to send.

    name  of the file or message: it becomes the ``instance``, a relative URI
    """
    if report.fit_to_send:
        return None
    kind, title = _kind(report)
    return {
        "type": TYPE + kind,
        "title": title,
        "status": _status(report),
        "detail": headline(report),
        **({"instance": quote(name, safe="")} if name else {}),
        "verdict": report.verdict,
        "errors": [_error(one) for one in report.findings],
        "caution": CAUTION,
    }


def _kind(report: Report) -> tuple[str, str]:
    """The name of the problem's type, and its title: the same for every problem of the type."""
    if report.verdict in ("possible", NOT_JUDGED):
        return _OPEN
    return report.verdict, {one.id: one.title for one in verdicts()}[report.verdict]


def _status(report: Report) -> int:
    """The HTTP status that goes with it (RFC 9110, section 15.5)."""
    if any(one.rule == "document-too-large" for one in report.findings):
        return _TOO_LARGE
    return _BAD_REQUEST if report.verdict == UNREADABLE else _UNPROCESSABLE


def _error(finding: Finding) -> Object:
    """One finding; its place as the RFC's own example writes it, a JSON Pointer in the fragment of a URI."""
    line = {} if finding.line is None else {"line": finding.line, "column": finding.column}
    return {
        "detail": sentence(finding),
        "pointer": "#" + quote(finding.pointer, safe="/~!$&'()*+,;=:@"),
        "rule": finding.rule,
        "severity": finding.severity.value,
        **line,
        "clauses": list(finding.clauses),
    }
