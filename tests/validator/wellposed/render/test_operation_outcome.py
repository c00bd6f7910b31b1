"""FHIR R4 OperationOutcomes: sound by fhir.resources and the value sets of R4, and faithful to the report."""

import json

import pytest
from fhir.resources.R4B.operationoutcome import OperationOutcome
from fhirpathpy import evaluate
from tests.validator.wellposed.commands.documents import DOCUMENTS, EXAMPLE

from wellposed.check import check
from wellposed.findings import CAUTION, Finding, Severity
from wellposed.render.operation_outcome import SYSTEM, fhirpath, not_checked_outcome, operation_outcome
from wellposed.render.wording import sentence
from wellposed.report import NOT_JUDGED, Report

REPORTS = {name: check(data) for name, data in DOCUMENTS.items()} | {"setup": Report(NOT_JUDGED, (), "S-1", 2)}

# hl7.org/fhir/R4/valueset-issue-severity.html and valueset-issue-type.html; both bindings are required.
SEVERITIES = {"fatal", "error", "warning", "information"}
TYPES = {
    *("invalid", "structure", "required", "value", "invariant", "security", "login", "unknown", "expired"),
    *("forbidden", "suppressed", "processing", "not-supported", "duplicate", "multiple-matches", "not-found"),
    *("deleted", "too-long", "code-invalid", "extension", "too-costly", "business-rule", "conflict", "transient"),
    *("lock-error", "no-store", "exception", "timeout", "incomplete", "throttled", "informational"),
}


def issues(report):
    return operation_outcome(report)["issue"]


def about(finding, verdict="refused"):
    """The issue of a single finding."""
    return issues(Report(verdict, (finding,)))[1]


@pytest.mark.parametrize("name", REPORTS)
def test_an_outcome_is_sound_fhir(name):
    told = operation_outcome(REPORTS[name])
    again = OperationOutcome.model_validate_json(json.dumps(told)).model_dump_json(exclude_none=True)
    assert json.loads(again) == told
    assert {one["severity"] for one in told["issue"]} <= SEVERITIES
    assert {one["code"] for one in told["issue"]} <= TYPES


@pytest.mark.parametrize("name", REPORTS)
def test_the_verdict_every_finding_and_the_caution_are_told_in_order(name):
    verdict, *findings, caution = issues(REPORTS[name])
    assert verdict["details"]["coding"] == [{"system": f"{SYSTEM}verdict", "code": REPORTS[name].verdict}]
    assert [one["details"]["text"] for one in findings] == [sentence(one) for one in REPORTS[name].findings]
    assert caution["details"]["text"] == CAUTION


def test_a_finding_has_its_rule_its_weight_and_its_place():
    told = about(Finding("unknown-member", Severity.STOP, "/goals/1/colour", {"name": "colour"}, ("g2",), 3, 7))
    assert told["details"]["coding"] == [
        {"system": f"{SYSTEM}rule", "code": "unknown-member"},
        {"system": f"{SYSTEM}severity", "code": "stop"},
    ]
    assert told["diagnostics"] == "at /goals/1/colour, line 3, column 7; g2"
    assert told["expression"] == ["goals[1].colour"]


@pytest.mark.parametrize(
    "severity, verdict, told",
    [
        (Severity.STOP, "unreadable", "fatal"),
        (Severity.STOP, "refused", "error"),
        (Severity.ASK, "possible", "error"),
        (Severity.CAUTION, "possible", "warning"),
        (Severity.NOTE, "possible", "information"),
    ],
)
def test_a_severity_has_its_word(severity, verdict, told):
    """fatal: nothing could be done; error: the action fails; hl7.org/fhir/R4/codesystem-issue-severity.html."""
    assert about(Finding("not-json", severity), verdict)["severity"] == told


@pytest.mark.parametrize(
    "rule, code",
    [
        ("not-json", "structure"),
        ("document-too-large", "too-long"),
        ("missing-member", "required"),
        ("not-one-of", "code-invalid"),
        ("out-of-range", "value"),
        ("unknown-reference", "not-found"),
        ("duplicate-id", "duplicate"),
        ("term-listed-twice", "invariant"),
        ("cannot-hold-together", "conflict"),
        ("means-not-said", "business-rule"),
        ("records-missing", "business-rule"),
        ("a-rule-of-somebody", "business-rule"),
    ],
)
def test_a_rule_has_its_type(rule, code):
    finding = next(
        (f for one in REPORTS.values() for f in one.findings if f.rule == rule), Finding(rule, Severity.STOP)
    )
    assert about(finding)["code"] == code


def test_a_conflict_leads_to_each_of_its_clauses():
    (conflict,) = [one for one in REPORTS["contradictory"].findings if one.rule == "cannot-hold-together"]
    pointers = {member["pointer"] for member in conflict.facts["members"] if member.get("pointer")}
    assert set(about(conflict)["expression"]) >= {fhirpath(pointer) for pointer in pointers}


VALUES = EXAMPLE | {
    "findings": [{"values": {"11": 8.5}}],
    "extensions": {"org.example.a-b": {"critical": False}},
}


@pytest.mark.parametrize(
    "pointer, value",
    [
        ("/id", "HR-2031"),
        ("/goals/0/align/2", "31"),
        ("/attachments/1/otherwise", "laboratory-decides"),
        ("/findings/0/values/11", 8.5),
        ("/extensions/org.example.a-b/critical", False),
    ],
)
def test_an_expression_leads_where_the_pointer_leads(pointer, value):
    """Evaluated by fhirpathpy, which knows nothing of ours."""
    assert evaluate(VALUES, fhirpath(pointer)) == [value]


NUMBERED = {"12": "a", "teeth": {"11": "b"}, "\u0663": "c"}


@pytest.mark.parametrize("pointer, value", [("/12", "a"), ("/teeth/11", "b"), ("/\u0663", "c")])
@pytest.mark.parametrize("rule", ["unknown-member", "duplicate-member"])
def test_a_member_called_by_a_number_is_no_place_in_a_list(rule, pointer, value):
    """Evaluated below another member: fhirpathpy takes a first name that does not begin small for that of a type."""
    (path,) = about(Finding(rule, Severity.STOP, pointer))["expression"]
    assert evaluate({"all": NUMBERED}, f"all.{path}") == [value]


def test_the_whole_document_needs_no_expression():
    assert "expression" not in about(Finding("not-an-object", Severity.STOP))


def test_a_file_not_checked_is_told_with_its_reason():
    told = not_checked_outcome("there is no such file")
    OperationOutcome.model_validate(told)
    assert [one["details"]["text"] for one in told["issue"]] == ["Not checked: there is no such file", CAUTION]
    assert told["issue"][0]["severity"] == "fatal"
