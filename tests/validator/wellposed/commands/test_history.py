"""`wellposed history`: what it prints, on which stream, and how it ends."""

import json

import jsonschema
import pytest
from click.testing import CliRunner
from tests.validator.wellposed.consistency.ordinary import found, must
from tests.validator.wellposed.revisions.cases import Case

from wellposed.commands import main
from wellposed.findings import CAUTION
from wellposed.render.schemas import schema_text

BITE = {
    "treat": {"arches": "both"},
    "findings": [found("f1", "overbite", 5)],
    "problems": [{"id": "p1", "problem": "deep-bite", "because": ["f1"]}],
    "goals": [must("g1", measure="overbite", at_most=3, unit="mm", because=["p1"])],
    "movements": [
        must("m1", teeth=["42", "41", "31", "32"], motion="intrusion", at_most=2.5, unit="mm", because=["p1"])
    ],
}
STILL = {"setup": {}, "unlisted": "unmoved"}


def intruded(amount):
    values = dict.fromkeys(("42", "41", "31", "32"), -amount)
    return {"setup": {}, "unlisted": "unmoved", "movements": [{"variable": "vertical", "unit": "mm", "values": values}]}


@pytest.fixture
def run(tmp_path):
    def ran(files, *options):
        for name, data in files:
            (tmp_path / name).write_bytes(data)
        return CliRunner().invoke(main, ["history", str(tmp_path), *options])

    return ran


def test_a_case_in_which_all_is_well(run):
    result = run(Case(BITE, intruded(2)).files)
    assert (result.exit_code, result.stderr) == (0, "")
    assert result.stdout.startswith("HR-2031: 1 prescription and 1 setup.\n")
    assert "Revision 1:   asked; met in S-1 1" in result.stdout
    assert CAUTION in " ".join(result.stdout.split())


def test_a_clause_that_stays_unmet_is_told_with_what_it_rests_on(run):
    result = run(Case(BITE, intruded(1), BITE, intruded(1.2), BITE, intruded(1.4)).files)
    told = " ".join(result.stdout.split())
    assert result.exit_code == 1
    assert "unmet in the last 3 setups in a row (S-1 1, S-1 2 and S-1 3)" in told
    assert "It rests on: deep bite (p1), overbite (f1)." in told
    assert "look-at-the-diagnosis-again" in told


def test_what_was_met_and_is_not_any_more_is_told(run):
    result = run(Case(BITE, intruded(2), BITE, STILL).files)
    assert (result.exit_code, "met-then-undone" in result.stdout) == (1, True)


def test_the_json_is_what_its_schema_says(run):
    files = [*Case(BITE, intruded(2), BITE, STILL, {**BITE, "goals": []}).files, ("x.json", b"{")]
    result = run(files, "--format", "json")
    told = json.loads(result.stdout)
    jsonschema.Draft202012Validator(json.loads(schema_text("history"))).validate(told)
    assert (result.exit_code, told["format"], told["caution"]) == (3, "wellposed/history", CAUTION)
    assert [one["name"] for one in told["unread"]] == ["x.json"]


def test_an_empty_folder(run):
    result = run([])
    assert (result.exit_code, result.stdout.startswith("No document of a case is here.\n")) == (0, True)


def test_files_that_are_no_json_and_folders_inside_are_passed_over(run, tmp_path):
    (tmp_path / "older").mkdir()
    (tmp_path / "older" / "order.json").write_bytes(b"{")
    (tmp_path / "folder.json").mkdir()
    assert run([("note.txt", b"x"), *Case(BITE).files]).exit_code == 0


@pytest.mark.parametrize("data, code", [(b"{", 3), (b"", 3), (b'{"format": "x"}', 1), (b"\xff\xfe", 3), (b"[]", 3)])
def test_a_file_without_a_sound_document_is_listed_and_the_rest_goes_on(run, data, code):
    result = run([("x.json", data), *Case(BITE, intruded(2)).files])
    assert (result.exit_code, "x.json" in result.stdout, "met in S-1 1" in result.stdout) == (code, True, True)


def test_only_base_names_are_shown(run, tmp_path):
    for form in ("text", "json"):
        assert str(tmp_path) not in run([("x.json", b"{"), *Case(BITE).files], "--format", form).stdout


def test_a_folder_that_is_not_there():
    assert CliRunner().invoke(main, ["history", "nowhere"]).exit_code == 2
