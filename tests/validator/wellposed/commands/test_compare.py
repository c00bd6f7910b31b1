"""`wellposed compare`: what it prints, on which stream, and how it ends."""

import json

import jsonschema
import pytest
from click.testing import CliRunner
from tests.validator.wellposed.commands.documents import DOCUMENTS, EXAMPLE, INTRUSION, written
from tests.validator.wellposed.revisions.cases import SETUP, digest

from wellposed.commands import main
from wellposed.findings import CAUTION
from wellposed.render.schemas import schema_text

NEXT = EXAMPLE | {"revision": 2, "replaces": digest(EXAMPLE)}
ANSWERS = {"id": "HR-2031", "revision": 1, "sha256": digest(EXAMPLE)}
PLAN = {**SETUP, "id": "S-1", "revision": 1, "answers": ANSWERS, "movements": [], "unlisted": "unmoved"}
MOVED = {**PLAN, "movements": [{"variable": "vertical", "unit": "mm", "values": {"11": -1}}]}
REVIEW = {**SETUP, "format": "wellposed/review", "id": "V-1", "revision": 1, "prescription": ANSWERS}
REVIEW |= {
    "answers": {"id": "S-1", "revision": 1, "sha256": digest(PLAN)},
    "outcome": "approved",
    "clauses": [{"clause": "g1", "outcome": "met"}],
}
RECEIPT = {"format": "wellposed/receipt", "outcome": "accepted", "answers": ANSWERS, "id": "R-1", "revision": 1}
RECEIPT |= {"version": "1.0", "issued": SETUP["issued"]}


@pytest.fixture
def run(tmp_path):
    def ran(old, new, *options):
        for name, document in (("old.json", old), ("new.json", new)):
            (tmp_path / name).write_bytes(document if isinstance(document, bytes) else written(document))
        return CliRunner().invoke(main, ["compare", str(tmp_path / "old.json"), str(tmp_path / "new.json"), *options])

    return ran


def test_two_prescriptions_are_compared(run):
    result = run(EXAMPLE, NEXT | {"keep": [{**EXAMPLE["keep"][0], "within": 0.25}]})
    assert (result.exit_code, result.stderr) == (0, "")
    assert result.stdout.startswith("HR-2031, revision 1 → HR-2031, revision 2. 1 tightened and 6 unchanged.\n")
    assert "It is the next revision" in result.stdout
    assert "at most: 0.5" not in result.stdout
    assert "within: 0.5 mm → 0.25 mm" in result.stdout
    assert CAUTION in " ".join(result.stdout.split())


def test_a_new_conflict_ends_it_with_1(run):
    result = run(EXAMPLE, NEXT | {"movements": [INTRUSION]})
    assert (result.exit_code, "Conflicts that are new" in result.stdout) == (1, True)
    assert "Check before: possible. Check now: contradictory." in result.stdout


def test_a_conflict_that_is_settled_does_not(run):
    result = run(EXAMPLE | {"movements": [INTRUSION]}, NEXT)
    assert (result.exit_code, "no longer in conflict" in result.stdout) == (0, True)
    assert "not shown to be the next revision: the digest it replaces is that of another" in result.stdout


def test_two_setups_are_compared(run):
    result = run(PLAN, MOVED)
    assert (result.exit_code, result.stderr) == (0, "")
    assert "no height → 1.0 mm of intrusion" in result.stdout
    assert "Nothing differs by more than rounding" in run(PLAN, PLAN).stdout


def test_two_reviews_are_compared(run):
    result = run(REVIEW, {**REVIEW, "outcome": "returned", "revising": ["g1"]})
    assert (result.exit_code, "approved → returned" in result.stdout) == (0, True)
    assert "Nothing differs." in run(REVIEW, REVIEW).stdout


@pytest.mark.parametrize("pair", [(EXAMPLE, NEXT), (PLAN, MOVED), (REVIEW, {**REVIEW, "notes": [{"text": "x"}]})])
def test_the_json_is_what_its_schema_says(run, pair):
    told = json.loads(run(*pair, "--format", "json").stdout)
    jsonschema.Draft202012Validator(json.loads(schema_text("comparison"))).validate(told)
    assert (told["format"], told["old"]["name"], told["caution"]) == ("wellposed/comparison", "old.json", CAUTION)


@pytest.mark.parametrize(
    "pair, words",
    [
        ((EXAMPLE, PLAN), "a prescription cannot be compared with a setup"),
        ((REVIEW, EXAMPLE), "a review cannot be compared with a prescription"),
        ((RECEIPT, RECEIPT), "two receipts cannot be compared"),
    ],
)
def test_documents_of_two_kinds_are_a_wrong_call(run, pair, words):
    result = run(*pair)
    assert (result.exit_code, result.stdout, words in result.stderr) == (2, "", True)


@pytest.mark.parametrize("name, code, rule", [("refused", 1, "unknown-member"), ("unreadable", 3, "duplicate-member")])
def test_what_is_not_sound_is_not_compared(run, name, code, rule):
    for pair in ((DOCUMENTS[name], EXAMPLE), (EXAMPLE, DOCUMENTS[name])):
        result = run(*pair)
        assert (result.exit_code, result.stdout, rule in result.stderr) == (code, "", True)


def test_a_file_that_is_not_there():
    result = CliRunner().invoke(main, ["compare", "nowhere.json", "nowhere.json"])
    assert (result.exit_code, result.stderr) == (3, "wellposed: nowhere.json: there is no such file\n")


def test_no_value_of_a_private_section_is_told(run):
    other = NEXT | {"patient": {"reference": "P-SECRET", "growth": "growing"}, "notes": [{"text": "HIDDEN"}]}
    for form in ("text", "json"):
        told = run(EXAMPLE, other, "--format", form).stdout
        assert [word for word in ("SECRET", "growing", "HIDDEN", "P-7F3A") if word in told] == []
        assert "reference" in told


def test_a_practice_profile_that_cannot_be_read_is_a_wrong_call(run, tmp_path):
    (tmp_path / "own.toml").write_text("x = [", "utf-8")
    assert run(EXAMPLE, NEXT, "--profile", str(tmp_path / "own.toml")).exit_code == 2
