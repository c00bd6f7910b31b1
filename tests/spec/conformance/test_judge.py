"""The judge: what passes, what it says, and JUnit XML that others can read."""

import sys
from xml.etree import ElementTree as ET

import pytest
from tests.spec.conformance import judge, kit
from tests.spec.conformance.test_kit import ACCEPTS, FAILS, SILENT, SKIPS, answer_to, case_of

PLAIN, OTHER = case_of("structure/001-all-needed-members"), case_of("parse/011-duplicate-name-escaped")
SHOULD = next(case for case in kit.cases() if case.about["level"] == "should")


def outcomes(cases, answers):
    return [judge.judged(case, answer) for case, answer in zip(cases, answers, strict=True)]


def test_how_a_case_ends():
    right, wrong = answer_to(OTHER), answer_to(PLAIN)
    answers = [right, wrong, None, {"errored": True}, {"skipped": True}]
    found = outcomes([OTHER] * 5, answers)
    assert [one.how for one in found] == ["passed", "failed", "errored", "errored", "skipped"]
    assert [bool(one.wrong) for one in found] == [False, True, True, True, True]


@pytest.mark.parametrize("answer", [None, {"skipped": True}, {"errored": True}, {"outcome": "accept", "findings": []}])
def test_every_must_has_to_pass_and_nothing_else(answer):
    assert judge.conforms(outcomes([OTHER, SHOULD], [answer_to(OTHER), answer]))
    assert not judge.conforms(outcomes([PLAIN, OTHER], [answer_to(PLAIN), answer]))


def test_junit_is_xml_with_counts_that_agree():
    odd = answer_to(OTHER) | {"outcome": "\x00<&\ud800", "findings": []}
    answers = [answer_to(OTHER), odd, None, {"skipped": True}, answer_to(PLAIN)]
    root = ET.fromstring(judge.junit(outcomes([OTHER] * 4 + [PLAIN], answers)))
    assert root.attrib == {"name": "conformance", "tests": "5", "failures": "1", "errors": "1", "skipped": "1"}
    suites = {suite.get("name"): suite for suite in root}
    assert {name: (len(suite), suite.get("tests")) for name, suite in suites.items()} == {
        "parse": (4, "4"),
        "structure": (1, "1"),
    }
    assert [[child.tag for child in case] for case in suites["parse"]] == [[], ["failure"], ["error"], ["skipped"]]
    assert {case.get("name") for case in suites["parse"]} == {"011-duplicate-name-escaped"}
    assert suites["parse"][1][0].get("type") == "must"
    assert "outcome: ?<&?, not unreadable" in suites["parse"][1][0].get("message")


# what a runner in the making writes, how its first case ends
HALF_WRITTEN = [
    ("no JSON", "print('ready')", "errored"),
    ("another seq", "print(json.dumps({'seq': 'a'}))", "errored"),
    ("no object", "print([1])", "errored"),
    ("an answer before it fails", "print(json.dumps({'seq': 1, 'outcome': 'accept'})); sys.exit(3)", "failed"),
    ("two answers", "[print(json.dumps({'seq': 1, 'outcome': x})) for x in ('accept', 'reject')]", "errored"),
    ("findings that are null", "print(json.dumps({'seq': 1, 'findings': None}))", "errored"),
    ("findings without a rule", "print(json.dumps({'seq': 1, 'findings': [{'severity': 'ask'}]}))", "errored"),
    ("one flat conflict", "print(json.dumps({'seq': 1, 'conflicts': [{'role': 'asked'}]}))", "errored"),
    ("an amount in words", "print(json.dumps({'seq': 1, 'amounts': [{'amount': 'one'}]}))", "errored"),
    ("clauses without an outcome", "print(json.dumps({'seq': 1, 'clauses': [{'clause': 'c1'}]}))", "errored"),
    ("letters that are no UTF-8", "sys.stdout.buffer.write(bytes([255, 10]))", "errored"),
    ("skipped, with a reason", "print(json.dumps({'seq': 1, 'skipped': True, 'why': 'not read'}))", "skipped"),
]


@pytest.mark.parametrize("body, how", [pytest.param(*row[1:], id=row[0]) for row in HALF_WRITTEN])
def test_a_runner_in_the_making_is_judged(body, how):
    answers = kit.run([sys.executable, "-c", f"import json, sys\n{body}"], [PLAIN])
    one = judge.judged(PLAIN, answers.get(PLAIN.about["id"]))
    assert (one.how, bool(one.wrong)) == (how, True)
    assert how != "skipped" or one.wrong == ("skipped: not read",)


def test_a_runner_that_never_ends_is_judged_by_what_it_said():
    body = "import json, time\nprint(json.dumps({'seq': 1, 'outcome': 'accept'}), flush=True)\ntime.sleep(60)"
    answers = kit.run([sys.executable, "-c", body], [PLAIN, OTHER], most_seconds=3)
    assert answers == {PLAIN.about["id"]: {"seq": 1, "outcome": "accept"}}


@pytest.mark.parametrize(
    "command, counted",
    [
        (ACCEPTS, {"failures"}),
        (SKIPS, {"skipped"}),
        (FAILS, {"errors"}),
        (SILENT, {"errors"}),
    ],
    ids=["accepts", "skips", "fails", "silent"],
)
def test_a_program_that_is_no_reader_does_not_conform(command, counted, tmp_path, capsys):
    file = tmp_path / "kit.xml"
    assert judge.main(["--area", "canonical", "--junit", str(file), "--", *command]) == 1
    suite = ET.parse(file).getroot()
    asked = len([case for case in kit.cases() if case.about["id"].startswith("canonical/")])
    assert suite.get("tests") == str(asked)
    assert {name for name in ("failures", "errors", "skipped") if suite.get(name) == str(asked)} == counted
    assert capsys.readouterr().out.count("\n") == 1 + asked


def test_a_runner_that_cannot_be_started_is_told():
    with pytest.raises(SystemExit, match="cannot be started: No such file"):
        judge.main(["--area", "canonical", "--", f"{sys.executable}-not-there"])
