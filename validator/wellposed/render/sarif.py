"""Reports as SARIF 2.1.0, for editors and code-review tools where prescriptions lie in files."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, NamedTuple
from urllib.parse import quote

from wellposed import __version__
from wellposed.catalogue import Entry, rules
from wellposed.findings import CAUTION, Finding, Severity
from wellposed.render.json_report import document, dumped, head, profile
from wellposed.render.outcome import Judged, NotChecked, Outcome
from wellposed.render.wording import sentence

__all__ = ["SarifPart", "sarif", "sarif_part"]

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
_LEVELS = {
    Severity.STOP: "error",
    Severity.ASK: "warning",
    Severity.CAUTION: "warning",
    Severity.NOTE: "note",
}

Object = dict[str, Any]


class SarifPart(NamedTuple):
    """What one file adds to a run."""

    artifact: Object
    results: tuple[Object, ...] = ()
    notification: Object | None = None


def sarif_part(outcome: Outcome) -> SarifPart:
    """The results of one document, or the notice that it was not checked."""
    where = {"uri": quote(outcome.name, safe="")}
    if isinstance(outcome, NotChecked):
        location = {"physicalLocation": {"artifactLocation": where}}
        notice = {"level": "error", "message": {"text": outcome.reason}, "locations": [location]}
        return SarifPart({"location": where}, (), notice)
    results = tuple(_result(outcome, finding, where) for finding in outcome.report.findings)
    return SarifPart(_artifact(outcome, where), results)


def sarif(parts: Sequence[SarifPart]) -> str:
    """The log of one run over all files."""
    used = sorted({result["ruleId"] for part in parts for result in part.results})
    place = {rule: index for index, rule in enumerate(used)}
    results = [{**result, "ruleIndex": place[result["ruleId"]]} for part in parts for result in part.results]
    run = {
        "tool": {"driver": _driver(used)},
        "language": "en",
        "columnKind": "unicodeCodePoints",
        "invocations": [_invocation(parts)],
        "artifacts": [part.artifact for part in parts],
        "results": results,
        "properties": {"caution": CAUTION},
    }
    return dumped({"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}, indent=2)


def _invocation(parts: Iterable[SarifPart]) -> Object:
    notices = [part.notification for part in parts if part.notification]
    return {"executionSuccessful": not notices, "toolExecutionNotifications": notices}


def _driver(used: Sequence[str]) -> Object:
    known = {rule.id: rule for rule in rules()}
    described = [_described(known[rule]) if rule in known else {"id": rule} for rule in used]
    return {
        "name": "wellposed",
        "version": __version__,
        "semanticVersion": __version__,
        "rules": described,
    }


def _described(entry: Entry) -> Object:
    return {
        "id": entry.id,
        "shortDescription": {"text": entry.title},
        "fullDescription": {"text": entry.what},
        "help": {"text": entry.do},
        "defaultConfiguration": {"level": _LEVELS[entry.severity]},
    }


def _artifact(judged: Judged, where: Object) -> Object:
    told = {**head(judged), **document(judged), "profile": profile(judged.report), "caution": CAUTION}
    del told["document"]
    return {
        "location": where,
        "roles": ["analysisTarget"],
        "mimeType": "application/json",
        "properties": told,
    }


def _result(judged: Judged, finding: Finding, where: Object) -> Object:
    return {
        "ruleId": finding.rule,
        "level": _LEVELS[finding.severity],
        "message": {"text": sentence(finding)},
        "locations": [{"physicalLocation": _physical(finding, where), **_logical(finding.pointer)}],
        "relatedLocations": [*_related(finding)],
        "properties": {
            "verdict": judged.report.verdict,
            "severity": finding.severity.value,
            "pointer": finding.pointer,
            "clauses": list(finding.clauses),
        },
    }


def _physical(finding: Finding, where: Object) -> Object:
    if finding.line is None:
        return {"artifactLocation": where}
    region = {"startLine": finding.line, "startColumn": finding.column}
    return {"artifactLocation": where, "region": region}


def _logical(pointer: str) -> Object:
    """None for the whole document, which the artifact names already."""
    return {"logicalLocations": [{"fullyQualifiedName": pointer}]} if pointer else {}


def _related(finding: Finding) -> Iterable[Object]:
    """The clauses of a conflict, each where it stands, and the part it plays."""
    members: Iterable[Mapping[str, Any]] = finding.facts.get("members", ())
    placed = [member for member in members if member.get("pointer")]
    for number, member in enumerate(placed, 1):
        words = f"{member['role']}: {member['clause']}"
        yield {"id": number, "message": {"text": words}, **_logical(member["pointer"])}
