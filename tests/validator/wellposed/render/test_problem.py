"""Problem details: the members RFC 9457 defines, as it defines them, and faithful to the report."""

import json
import re
from urllib.parse import unquote, urlsplit

import pytest
from tests.validator.wellposed.commands.documents import DOCUMENTS

from wellposed.check import check
from wellposed.findings import CAUTION, Finding, Severity
from wellposed.render.forms import FORMS
from wellposed.render.outcome import Judged, NotChecked
from wellposed.render.problem import TYPE, problem, problem_of
from wellposed.render.wording import sentence
from wellposed.report import READ_VERDICTS, Report

REPORTS = {name: check(data) for name, data in DOCUMENTS.items()}
PROBLEMS = {name: problem(report, f"{name} 1.json") for name, report in REPORTS.items() if not report.fit_to_send}
ABSENT = problem_of(NotChecked("absent.json", "there is no such file"))

URI_REFERENCE = re.compile(r"[A-Za-z0-9\-._~:/?#\[\]@!$&'()*+,;=%]+")  # RFC 3986, section 2: what may stand in one
EXTENSION_NAME = re.compile(r"[A-Za-z][A-Za-z0-9_]{2,}")  # RFC 9457, section 3.2: letter first, three or more
DEFINED = {"type": str, "status": int, "title": str, "detail": str, "instance": str}  # section 3.1


@pytest.mark.parametrize("told", [*PROBLEMS.values(), ABSENT], ids=[*PROBLEMS, "absent"])
def test_a_problem_is_as_the_rfc_says(told):
    assert json.loads(json.dumps(told, allow_nan=False)) == told
    assert all(type(told[name]) is kind for name, kind in DEFINED.items() if name in told)
    assert all(URI_REFERENCE.fullmatch(told[name]) for name in ("type", "instance"))
    assert urlsplit(told["type"]).scheme == "urn"
    assert 400 <= told.get("status", 400) <= 599
    assert all(EXTENSION_NAME.fullmatch(name) for name in told.keys() - DEFINED.keys())
    assert told["title"] != told["detail"]


@pytest.mark.parametrize("name", PROBLEMS)
def test_every_finding_is_an_error_in_order(name):
    told, report = PROBLEMS[name], REPORTS[name]
    assert [one["detail"] for one in told["errors"]] == [sentence(one) for one in report.findings]
    assert [unquote(one["pointer"]) for one in told["errors"]] == [f"#{one.pointer}" for one in report.findings]
    assert (told["verdict"], told["caution"]) == (report.verdict, CAUTION)


def test_a_pointer_is_a_fragment():
    """RFC 6901, section 6: the examples of a pointer as the fragment of a URI."""
    for pointer, fragment in (
        ("", "#"),
        ("/foo/0", "#/foo/0"),
        ("/a~1b", "#/a~1b"),
        ("/c%d", "#/c%25d"),
        ("/e^f", "#/e%5Ef"),
        ("/g|h", "#/g%7Ch"),
        ("/i\\j", "#/i%5Cj"),
        ('/k"l', "#/k%22l"),
        ("/ ", "#/%20"),
        ("/m~0n", "#/m~0n"),
    ):
        (one,) = problem(Report("refused", (Finding("unknown-member", Severity.STOP, pointer),)))["errors"]
        assert one["pointer"] == fragment


@pytest.mark.parametrize(
    "verdict, rule, status",
    [
        ("unreadable", "not-json", 400),
        ("unreadable", "document-too-large", 413),
        ("refused", "missing-member", 422),
        ("beyond-practice", "unknown-format", 422),
        ("possible", "unknown-format", 422),
    ],
)
def test_a_status_goes_with_what_is_wrong(verdict, rule, status):
    """RFC 9110: 400 for what cannot be understood, 413 for too much of it, 422 for what is understood and refused."""
    assert problem(Report(verdict, (Finding(rule, Severity.STOP),)))["status"] == status


def test_a_type_has_one_title():
    titles = {}
    for verdict in (*READ_VERDICTS, "refused", "unreadable", "not-judged"):
        for rule in ("missing-member", "unknown-format"):
            told = (
                problem(Report(verdict, (Finding(rule, Severity.ASK),)))
                if verdict in ("possible", "not-judged")
                else None
            )
            told = told or problem(Report(verdict, REPORTS["contradictory"].findings))
            titles.setdefault(told["type"], set()).add(told["title"])
    assert {len(named) for named in titles.values()} == {1}
    assert f"{TYPE}open-questions" in titles


def test_of_a_document_that_is_fit_to_send_there_is_no_problem():
    assert problem(REPORTS["possible"]) is None
    outcomes = [Judged("a.json", REPORTS["possible"]), Judged("b.json", REPORTS["refused"]), NotChecked("c.json", "x")]
    lines = list(FORMS["problem"].whole(map(FORMS["problem"].one, outcomes)))
    assert [json.loads(line)["instance"] for line in lines] == ["b.json", "c.json"]
    assert all(line.endswith("\n") and line.count("\n") == 1 for line in lines)


def test_a_message_without_a_name_has_no_instance():
    assert "instance" not in problem(REPORTS["refused"])
