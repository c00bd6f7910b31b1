"""`wellposed readback`: what it prints, on which stream, and how it ends."""

import json

import jsonschema
import pytest
from click.testing import CliRunner
from tests.validator.wellposed.commands.documents import DOCUMENTS, EXAMPLE, written

from wellposed.commands import main
from wellposed.findings import CAUTION
from wellposed.render.schemas import schema_text

ALIGN = "Must: align 43 (lower right canine)"


@pytest.fixture
def run(tmp_path):
    def ran(content, *options):
        (tmp_path / "order.json").write_bytes(content)
        return CliRunner().invoke(main, ["readback", str(tmp_path / "order.json"), *options])

    return ran


def test_a_prescription_is_read_back(run):
    result = run(written(EXAMPLE))
    assert (result.exit_code, result.stderr) == (0, "")
    assert result.stdout.startswith("Tooth numbers: ISO 3950 (FDI).\nHR-2031, revision 1.\n")
    assert f"\nWhat will change\n\ng1    {ALIGN}" in result.stdout
    assert CAUTION in " ".join(result.stdout.split())


def test_one_that_contradicts_itself_is_read_back_all_the_same(run):
    assert run(DOCUMENTS["contradictory"]).exit_code == 0


def test_the_json_is_what_its_schema_says(run):
    told = json.loads(run(written(EXAMPLE), "--format", "json", "--usage", "american").stdout)
    jsonschema.Draft202012Validator(json.loads(schema_text("readback"))).validate(told)
    assert (told["format"], told["usage"], told["caution"]) == ("wellposed/readback", "american", CAUTION)
    (goal,) = [one for one in told["sentences"] if one["pointer"] == "/goals/0"]
    assert (goal["heading"], goal["clause"], goal["text"][: len(ALIGN)]) == ("change", "g1", ALIGN)


@pytest.mark.parametrize("usage, word", [("british", "centreline"), ("american", "midline")])
def test_the_usage_is_chosen(run, usage, word):
    told = run(written(EXAMPLE), "--usage", usage).stdout
    assert ({"centreline", "midline"} & set(told.replace(",", " ").split())) == {word}


@pytest.mark.parametrize("name, code, rule", [("refused", 1, "unknown-member"), ("unreadable", 3, "duplicate-member")])
def test_what_is_not_sound_is_not_read_back(run, name, code, rule):
    result = run(DOCUMENTS[name])
    assert (result.exit_code, result.stdout, rule in result.stderr) == (code, "", True)


def test_another_document_is_a_wrong_call(run):
    answers = {"id": "HR-2031", "revision": 1, "sha256": "0" * 64}
    names = ("version", "id", "revision", "issued")
    receipt = {"format": "wellposed/receipt", "outcome": "accepted", "answers": answers}
    result = run(written(receipt | {name: EXAMPLE[name] for name in names}))
    assert (result.exit_code, "order.json is not a prescription" in result.stderr) == (2, True)


def test_a_file_that_is_not_there():
    result = CliRunner().invoke(main, ["readback", "nowhere.json"])
    assert (result.exit_code, result.stderr) == (3, "wellposed: nowhere.json: there is no such file\n")
