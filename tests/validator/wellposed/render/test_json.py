"""Reports as JSON and JSON Lines: every one as its published schema says, the same bytes every time."""

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from tests.validator.wellposed.commands.documents import DOCUMENTS

from wellposed import __version__, generate, norms
from wellposed.check import check
from wellposed.findings import CAUTION, Finding, Severity
from wellposed.render.json_report import dumped, json_object, json_reports
from wellposed.render.jsonl import jsonl
from wellposed.render.outcome import Judged, NotChecked
from wellposed.render.rules_json import rules_json
from wellposed.render.schemas import SCHEMAS, schema_text
from wellposed.render.wording import sentence
from wellposed.report import Report

STRICT = norms.with_profile(b'name = "Strict"\n[limits]\n"practice.midline" = 3\n')
OUTCOMES = {name: Judged(f"{name}.json", check(data)) for name, data in DOCUMENTS.items()}
OUTCOMES["with a profile"] = Judged("strict.json", check(DOCUMENTS["contradictory"], STRICT))
OUTCOMES["not judged"] = Judged("setup.json", Report("not-judged", (), "S-1", 2))
ABSENT = NotChecked("absent.json", "there is no such file")

UNDER = ("deep-one", "/problems/0")
FOUND = Finding(
    "unknown-member", Severity.STOP, "/colour", {"name": "colour"}, ("k1",), 3, 7, (("clause", "k1"),), UNDER
)
REFUSED = Judged("a.json", Report("refused", (FOUND,), "HR-1", 2, "Strict", (("practice.tip", 9.0, 8.0),)))
FINDING = {
    "rule": "unknown-member",
    "severity": "stop",
    "pointer": "/colour",
    "line": 3,
    "column": 7,
    "clauses": ["k1"],
    "message": sentence(FOUND),
    "rests_on": [{"kind": "clause", "name": "k1"}],
    "would_change": None,
    "under": {"rule": "deep-one", "pointer": "/problems/0"},
    "facts": {"name": "colour"},
}
HEAD = {
    "verdict": "refused",
    "fit_to_send": False,
    "document": {"name": "a.json", "id": "HR-1", "revision": 2},
    "counts": {"stop": 1, "ask": 0, "caution": 0, "note": 0},
}
PROFILE = {"name": "Strict", "changes": [{"key": "practice.tip", "from": 9.0, "to": 8.0}]}
CLOSING = {
    "caution": CAUTION,
    "format": "wellposed/report",
    "version": "1.0",
    "tool": {"name": "wellposed", "version": __version__},
}


def faults(name, value):
    validator = Draft202012Validator(json.loads(schema_text(name)))
    return [error.message for error in validator.iter_errors(value)]


@pytest.mark.parametrize("name", OUTCOMES)
def test_every_report_is_as_its_schema_says(name):
    assert faults("report", json.loads(json_reports([json_object(OUTCOMES[name])]))) == []


def test_many_reports_and_a_file_not_checked_are_as_their_schema_says():
    told = json.loads(json_reports([json_object(one) for one in (*OUTCOMES.values(), ABSENT)]))
    assert faults("reports", told) == []
    assert [one["verdict"] for one in told["reports"]] == [one.report.verdict for one in OUTCOMES.values()]
    assert told["not_checked"] == [{"name": "absent.json", "reason": "there is no such file"}]


def test_a_single_file_without_a_report_is_told_like_several():
    told = json.loads(json_reports([json_object(ABSENT)]))
    assert (faults("reports", told), told["reports"], told["caution"]) == ([], [], CAUTION)


def test_the_list_of_rules_is_as_its_schema_says():
    assert faults("rules", json.loads(rules_json())) == []


def test_a_report_says_all_there_is_and_the_verdict_first():
    told = json.loads(json_reports([json_object(REFUSED)]))
    assert told == {**HEAD, "findings": [FINDING], "profile": PROFILE, **CLOSING}
    assert list(told) == [*HEAD, "findings", "profile", *CLOSING]


@pytest.mark.parametrize(
    "sentence_, change",
    [
        ("a member nobody knows", {"colour": "blue"}),
        ("a verdict nobody knows", {"verdict": "fine"}),
        ("another caution", {"caution": "Trust it."}),
        ("a finding with a member too many", {"findings": [{**FINDING, "colour": "blue"}]}),
        ("a pointer that is none", {"findings": [{**FINDING, "pointer": "colour"}]}),
        ("lines count from 1", {"findings": [{**FINDING, "line": 0}]}),
    ],
)
def test_the_schema_is_closed(sentence_, change):
    told = json.loads(json_reports([json_object(REFUSED)]))
    assert (sentence_, len(faults("report", {**told, **change}))) == (sentence_, 1)


@pytest.mark.parametrize("name", SCHEMAS)
def test_the_schemas_are_sound_and_generated(name):
    Draft202012Validator.check_schema(json.loads(schema_text(name)))
    path = f"spec/schema/1/{name}.schema.json"
    assert dict(generate.GENERATED)[path]().encode() == (Path(__file__).parents[4] / path).read_bytes()


@pytest.mark.parametrize(
    "sentence_, amount, written",
    [
        ("as short as it can be", 0.1, "0.1"),
        ("not rounded", 0.1 + 0.2, "0.30000000000000004"),
        ("whole, yet a measurement", 2.0, "2.0"),
    ],
)
def test_amounts_are_written_as_computed(sentence_, amount, written):
    assert (sentence_, dumped([amount])) == (sentence_, f"[{written}]\n")


@pytest.mark.parametrize("amount", [float("nan"), float("inf")])
def test_what_is_no_number_is_never_written(amount):
    with pytest.raises(ValueError, match="JSON compliant"):
        dumped([amount])


def test_lines_are_a_finding_each_and_a_summary():
    told = [json.loads(line) for line in jsonl(REFUSED).splitlines()]
    of = {"kind": "finding", "document": HEAD["document"], "verdict": "refused"}
    assert told == [
        {**of, **FINDING, "caution": CAUTION},
        {"kind": "summary", **HEAD, "profile": PROFILE, **CLOSING},
    ]


@pytest.mark.parametrize("name", OUTCOMES)
def test_every_line_with_a_verdict_carries_the_caution(name):
    told = [json.loads(line) for line in jsonl(OUTCOMES[name]).splitlines()]
    assert [line["caution"] for line in told] == [CAUTION] * (len(OUTCOMES[name].report.findings) + 1)
    assert {line["verdict"] for line in told} == {OUTCOMES[name].report.verdict}


def test_a_file_not_checked_is_a_line_too():
    line = {"kind": "not-checked", "name": "absent.json", "reason": "there is no such file"}
    assert json.loads(jsonl(ABSENT)) == line
