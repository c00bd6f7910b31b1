"""The conformance kit: every case passes, the kit is sound, and a wrong answer is seen to be wrong.

A case is a row of its own. Where the program is known not to do what the specification says, the case stands in
``DISAGREES`` with the reason, and must fail until that is put right.
"""

import copy
import hashlib
import json
import os
import re
import sys
from collections import Counter
from pathlib import Path
from typing import get_args

import pytest
from jsonschema import Draft202012Validator
from tests.spec.conformance import clinical, kit, runner
from tests.spec.conformance.areas import AREAS as GENERATED
from tests.spec.conformance.laying import about

from wellposed.catalogue import rules
from wellposed.formats import forms
from wellposed.report import READ_VERDICTS
from wellposed.rules import RULES
from wellposed.vocabulary.terms import ReviewOutcome

RUNNER = [sys.executable, str(Path(runner.__file__))]
AREAS = {
    "parse": 30,
    "structure": 25,
    "contradiction": 25,
    "clinical": 75,
    "canonical": 30,
    "signature": 75,
    "xml": 50,
    "csv": 75,
    "fhir": 30,
    "review": 50,
}
OF_WORKBOOKS = {
    "table-sheet",
    "table-hidden",
    "table-cell-kind",
    "table-number-format",
    "table-merged",
    "table-comment",
    "table-struck-out",
}
SCHEMAS = {name: Draft202012Validator(kit.read(kit.KIT / f"{name}.schema.json")) for name in ("case", "expected")}
VERDICTS = {"unreadable", "refused", "not-judged", *READ_VERDICTS}
OUTCOMES = {"accept", "accept-with-findings", "reject", "unreadable"}
DISAGREES: dict[str, str] = {}


def case_of(ident):
    return next(case for case in kit.cases() if case.about["id"] == ident)


def answer_to(case):
    return runner.answered(kit.asked(1, case))


def rows():
    for case in kit.cases():
        ident = case.about["id"]
        marks = [pytest.mark.xfail(reason=DISAGREES[ident])] if ident in DISAGREES else []
        yield pytest.param(case, id=ident, marks=marks)


@pytest.mark.parametrize("case", list(rows()))
def test_the_program_answers_as_expected(case):
    assert kit.lacks(case.expected, answer_to(case)) == []


# the kit


@pytest.mark.parametrize("name", list(SCHEMAS))
def test_every_file_is_valid_against_its_schema(name):
    Draft202012Validator.check_schema(SCHEMAS[name].schema)
    files = [case.folder / f"{name}.json" for case in kit.cases()]
    assert {file: [error.message for error in SCHEMAS[name].iter_errors(kit.read(file))] for file in files} == {
        file: [] for file in files
    }


def test_the_schemas_refuse_what_they_do_not_know():
    about, expected = case_of("parse/001-smallest").about, case_of("parse/001-smallest").expected
    assert not SCHEMAS["case"].is_valid(about | {"x": 1})
    assert not SCHEMAS["case"].is_valid(about | {"level": "shall"})
    assert not SCHEMAS["case"].is_valid(about | {"task": "guess"})
    assert not SCHEMAS["case"].is_valid(about | {"task": "verify"})
    assert not SCHEMAS["case"].is_valid(about | {"now": "2026-03-05T08:00:00Z"})
    assert not SCHEMAS["case"].is_valid(about | {"task": "review"})
    assert not SCHEMAS["case"].is_valid(about | {"task": "review", "beside": {"trust": "trust.json"}})
    assert not SCHEMAS["case"].is_valid(about | {"beside": {"prescription": "prescription.json"}})
    assert not SCHEMAS["expected"].is_valid(expected | {"message": "words"})
    assert not SCHEMAS["expected"].is_valid(expected | {"conflicts": [[{"role": "asked"}]]})
    assert not SCHEMAS["expected"].is_valid(expected | {"clauses": [{"clause": "c1", "outcome": "well"}]})


def test_every_area_holds_its_share():
    found = Counter(case.about["id"].partition("/")[0] for case in kit.cases())
    assert found.keys() == AREAS.keys()
    assert {area: found[area] >= least for area, least in AREAS.items()} == dict.fromkeys(AREAS, True)


def test_ids_and_titles_are_used_once():
    for member in ("id", "title"):
        twice = [said for said, count in Counter(case.about[member] for case in kit.cases()).items() if count > 1]
        assert twice == []


def test_an_id_is_the_place_of_the_case():
    places = {case.about["id"]: case.folder.relative_to(kit.KIT / "cases").as_posix() for case in kit.cases()}
    assert {ident: place for ident, place in places.items() if ident != place} == {}


def test_numbers_run_without_gaps():
    for area in AREAS:
        numbers = [int(folder.name[:3]) for folder in sorted((kit.KIT / "cases" / area).iterdir())]
        assert numbers == list(range(1, len(numbers) + 1))


def test_titles_say_what_is_so():
    vague = re.compile(r"\b(?:should|shall|test|must be)\b", re.IGNORECASE)
    assert [case.about["title"] for case in kit.cases() if vague.search(case.about["title"])] == []


def test_a_case_folder_holds_its_files_and_no_other():
    held = {case.about["id"]: {file.name for file in case.folder.iterdir()} for case in kit.cases()}
    named = {
        case.about["id"]: {"case.json", "expected.json", case.about["input"], *case.about.get("beside", {}).values()}
        for case in kit.cases()
    }
    assert held == named


def test_every_folder_is_a_case():
    folders = {path for path in kit.KIT.glob("cases/*/*") if path.is_dir()}
    assert folders == {case.folder for case in kit.cases()}


def test_no_two_inputs_are_alike_but_where_something_else_is_asked():
    seen = {}
    for case in kit.cases():
        sent = json.loads(kit.asked(0, case))["case"]
        seen.setdefault(json.dumps({**sent, "id": ""}), []).append(case)
    same = [cases for cases in seen.values() if len(cases) > 1]
    assert [
        [case.about["id"] for case in cases]
        for cases in same
        if len({json.dumps(case.expected, sort_keys=True) for case in cases}) < len(cases)
    ] == []


def test_digests_are_those_of_the_inputs():
    wrong = [c.about["id"] for c in kit.cases() if hashlib.sha256(c.data).hexdigest() != c.about["sha256"]]
    assert wrong == []


def test_the_manifest_is_current():
    assert kit.MANIFEST.read_text("utf-8") == kit.written(kit.manifest())


def anchors(file):
    """The anchors of a page: a heading in small letters, without marks, hyphens for blanks."""
    headings = re.findall(r"^#+ +(.*)$", (kit.ROOT / file).read_text("utf-8"), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", heading.lower()).replace(" ", "-") for heading in headings}


def test_every_heading_named_is_in_the_specification():
    named = {tuple(case.about["spec"].split("#")) for case in kit.cases()}
    assert [f"{file}#{anchor}" for file, anchor in sorted(named) if anchor not in anchors(file)] == []


def test_every_rule_has_a_case():
    told = {finding["rule"] for case in kit.cases() for finding in case.expected["findings"]}
    over_revisions = {rule.id for rule in RULES} - {rule.id for rule in clinical.ALONE}
    over_a_case = ("history", "intake")  # no case holds a whole conversation: the page says so
    over_documents = {rule.id for rule in rules() if rule.group in over_a_case}
    assert sorted({rule.id for rule in rules()} - told - over_revisions - over_documents) == []


def test_the_clinical_area_is_that_of_the_rules():
    told = {case.about["id"]: case.expected for case in kit.cases() if case.about["id"].startswith("clinical/")}
    made = {f"clinical/{n:03}-{rule.id}": clinical.expected(rule) for n, rule in enumerate(clinical.ALONE, 1)}
    assert told == made


@pytest.mark.parametrize("form", ["xml", "csv", "fhir"])
def test_every_rule_of_a_form_has_a_case(form):
    told = {
        finding["rule"]
        for case in kit.cases()
        if case.about["id"].startswith(f"{form}/")
        for finding in case.expected["findings"]
    }
    assert set(forms()[form].rules) - told - OF_WORKBOOKS == set()


@pytest.mark.parametrize("area", GENERATED, ids=lambda area: area.name)
def test_a_generated_area_is_that_of_the_tables(area):
    """Both ways: no case is there that no row asks for, and none says otherwise than its row."""
    told = {case.about["id"]: case.expected for case in kit.cases() if case.about["id"].startswith(f"{area.name}/")}
    assert told == {about(area, number, row)["id"]: row.expected for number, row in enumerate(area.rows, 1)}


def test_in_every_area_something_is_right_and_something_is_wrong():
    found = {}
    for case in kit.cases():
        found.setdefault(case.about["id"].partition("/")[0], set()).add(case.expected["outcome"])
    one_sided = {area for area, outcomes in found.items() if not outcomes & {"accept"} or outcomes == {"accept"}}
    assert one_sided == set()


def test_every_verdict_and_outcome_has_a_case():
    assert {case.expected.get("verdict") for case in kit.cases()} - {None} == VERDICTS
    assert {case.expected["outcome"] for case in kit.cases()} == OUTCOMES


def test_every_outcome_of_a_clause_has_a_case_with_its_sum():
    with_clauses = [case for case in kit.cases() if "clauses" in case.expected]
    assert {one["outcome"] for case in with_clauses for one in case.expected["clauses"]} == set(get_args(ReviewOutcome))
    assert [case.about["id"] for case in with_clauses if "reason" not in case.about] == []


def test_what_disagrees_is_in_the_kit():
    assert set(DISAGREES) <= {case.about["id"] for case in kit.cases()}


# the comparison


def changed(**members):
    return lambda answer: answer.update(members)


def first(**members):
    return lambda answer: answer["findings"][0].update(members)


TWICE = "contradiction/012-two-conflicts-on-one-keep"
SIGNED = "signature/001-what-is-signed-by-its-sender-comes-from-its-sender"
CLAUSE = "review/007-1-5-mm-of-intrusion-meets-an-order-of-1-to-2-mm"
SIGN = "review/001-a-variable-goes-the-other-way-than-the-prescription-asks-in"
ANY = "contradiction/037-room-of-the-other-arch"
WRONG = {
    "another outcome": (TWICE, changed(outcome="accept")),
    "another verdict": (TWICE, changed(verdict="incomplete")),
    "no finding": (TWICE, changed(findings=[])),
    "another rule": (TWICE, first(rule="means-not-said")),
    "another severity": (TWICE, first(severity="ask")),
    "another pointer": (TWICE, first(pointer="/keep/0")),
    "a finding too many": (
        TWICE,
        lambda answer: answer["findings"].append({"rule": "x", "severity": "caution", "pointer": ""}),
    ),
    "no conflict": (TWICE, changed(conflicts=[])),
    "a conflict too few": (TWICE, lambda answer: answer["conflicts"].pop()),
    "a member too few": (TWICE, lambda answer: answer["conflicts"][0].pop()),
    "a member too many": (TWICE, lambda answer: answer["conflicts"][0].append({"role": "fixed", "tooth": "11"})),
    "another clause": (TWICE, lambda answer: answer["conflicts"][0][0].update(clause="m9")),
    "no amounts": (TWICE, changed(amounts=[])),
    "amounts a little off": (
        TWICE,
        lambda answer: [way.update(amount=way["amount"] + 0.1) for way in answer["amounts"]],
    ),
    "a conflict that is none of several": (ANY, lambda answer: answer["conflicts"][0][0].update(part="floor")),
    "another line": ("parse/002-byte-order-mark", first(line=2)),
    "another column": ("parse/002-byte-order-mark", first(column=2)),
    "another nearest name": ("structure/002-unknown-member", first(nearest="in_all")),
    "no nearest name": ("structure/002-unknown-member", lambda answer: answer["findings"][0].pop("nearest")),
    "a note that is missing": ("structure/040-extension-kept", changed(findings=[])),
    "what must be absent": (
        "contradiction/045-preferences-in-order",
        lambda answer: answer["findings"].append(
            {"rule": "preference-not-met", "severity": "note", "pointer": "/goals/0"}
        ),
    ),
    "another digest": (SIGNED, changed(digest="0" * 64)),
    "no digest": (SIGNED, lambda answer: answer.pop("digest")),
    "another outcome of a clause": (CLAUSE, lambda answer: answer["clauses"][0].update(outcome="not-met")),
    "an outcome of another clause": (CLAUSE, lambda answer: answer["clauses"][0].update(clause="c2")),
    "two outcomes of a clause": (
        CLAUSE,
        lambda answer: answer["clauses"].append({"clause": "c1", "outcome": "not-met"}),
    ),
    "no clauses": (CLAUSE, lambda answer: answer.pop("clauses")),
    "no sign asked about": (SIGN, changed(findings=[])),
    "skipped": (TWICE, lambda answer: (answer.clear(), answer.update(skipped=True))),
    "errored": (TWICE, lambda answer: (answer.clear(), answer.update(errored=True))),
}


@pytest.mark.parametrize("ident, spoil", list(WRONG.values()), ids=list(WRONG))
def test_a_wrong_answer_is_seen(ident, spoil):
    case = case_of(ident)
    answer = answer_to(case)
    assert kit.lacks(case.expected, answer) == []
    spoil(answer)
    assert kit.lacks(case.expected, answer) != []


def test_order_does_not_count():
    case = case_of(TWICE)
    answer = copy.deepcopy(answer_to(case))
    for name in ("findings", "conflicts", "amounts"):
        answer[name].reverse()
    answer["conflicts"][0].reverse()
    assert kit.lacks(case.expected, answer) == []


def test_a_case_without_an_answer_fails():
    assert kit.lacks(case_of(TWICE).expected, None) == ["no answer"]


# the protocol


def program(body):
    reads = "import json, sys\nfor line in sys.stdin:\n    seq = json.loads(line)['seq']\n"
    return [sys.executable, "-c", reads + body]


SAY = "    print(json.dumps({%s}))"
ACCEPTS = program(SAY % "'seq': seq, 'outcome': 'accept', 'verdict': 'possible', 'findings': []")
SKIPS = program(SAY % "'seq': seq, 'skipped': True, 'why': 'none'")
FAILS = program(SAY % "'seq': seq, 'errored': True, 'why': 'none'")
SILENT = program("    pass")


def passed(command, cases):
    answers = kit.run(command, cases)
    return [case.about["id"] for case in cases if not kit.lacks(case.expected, answers.get(case.about["id"]))]


@pytest.fixture
def with_path(monkeypatch):
    paths = [str(kit.ROOT / "validator"), os.environ.get("PYTHONPATH", "")]
    monkeypatch.setenv("PYTHONPATH", os.pathsep.join(filter(None, paths)))


@pytest.mark.usefixtures("with_path")
def test_the_runner_answers_over_its_pipes_as_it_does_within():
    chosen = [case for case in kit.cases() if case.about["id"].partition("/")[2].startswith("00")]
    answers = kit.run(RUNNER, chosen)
    within = {case.about["id"]: json.loads(json.dumps(answer_to(case))) for case in chosen}
    assert {ident: answer | {"seq": 1} for ident, answer in answers.items()} == within


def test_a_program_that_accepts_everything_passes_only_what_is_plainly_sound():
    plain = {
        case.about["id"]
        for case in kit.cases()
        if case.expected["outcome"] == "accept"
        and case.expected.get("verdict", "possible") == "possible"
        and not any(case.expected.get(name) for name in ("findings", "clauses", "digest"))
    }
    assert set(passed(ACCEPTS, kit.cases())) == plain


@pytest.mark.parametrize("command", [SKIPS, FAILS, SILENT], ids=["skips", "fails", "silent"])
def test_a_program_that_does_not_answer_passes_nothing(command):
    assert passed(command, kit.cases()[:3]) == []


LINES = {
    "no JSON": ("{", {"seq": None, "errored": True, "why": "JSONDecodeError"}),
    "no request": ("[]", {"seq": None, "errored": True, "why": "TypeError"}),
    "no case": ('{"seq": 7}', {"seq": None, "errored": True, "why": "KeyError"}),
    "no bytes": (
        '{"seq": 7, "case": {"media_type": "application/json"}}',
        {"seq": 7, "errored": True, "why": "KeyError"},
    ),
    "no base64": (
        '{"seq": 7, "case": {"media_type": "application/json", "input": "%"}}',
        {"seq": 7, "errored": True, "why": "Error"},
    ),
    "another media type": (
        '{"seq": 7, "case": {"media_type": "application/xml", "input": ""}}',
        {"seq": 7, "skipped": True, "why": "media type application/xml"},
    ),
    "a form that is not read": (
        '{"seq": 7, "case": {"task": "read", "media_type": "application/json", "input": ""}}',
        {"seq": 7, "skipped": True, "why": "media type application/json"},
    ),
    "another task": (
        '{"seq": 7, "case": {"task": "sign", "media_type": "application/json", "input": ""}}',
        {"seq": 7, "skipped": True, "why": "task sign"},
    ),
    "no prescription": (
        '{"seq": 7, "case": {"task": "review", "media_type": "application/json", "input": "", "beside": {}}}',
        {"seq": 7, "errored": True, "why": "KeyError"},
    ),
    "no list of keys": (
        '{"seq": 7, "case": {"task": "verify", "media_type": "application/json", "input": "", "beside": {}}}',
        {"seq": 7, "errored": True, "why": "KeyError"},
    ),
}


@pytest.mark.parametrize("line, answer", list(LINES.values()), ids=list(LINES))
def test_a_line_that_is_no_case_is_answered(line, answer):
    assert runner.answered(line) == answer


def test_a_program_that_breaks_is_told_and_the_next_line_answered(monkeypatch):
    sound = case_of("parse/001-smallest")
    with monkeypatch.context() as broken:
        broken.setattr(runner, "check", lambda data: 1 / 0)
        assert answer_to(sound) == {"seq": 1, "errored": True, "why": "ZeroDivisionError"}
    assert answer_to(sound)["outcome"] == "accept"
