"""`explain`, `rules` and `schema` print what the specification publishes."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from wellposed.catalogue import rules
from wellposed.commands import main
from wellposed.findings import CAUTION
from wellposed.render.rules_json import rules_json

FOLDER = Path(__file__).parents[4] / "spec" / "schema" / "1"


def run(*arguments):
    return CliRunner().invoke(main, arguments)


@pytest.mark.parametrize(
    "sentence, name, told",
    [
        ("a rule of the text", "duplicate-member", "A name stands twice in one object"),
        ("a rule says what to do", "unknown-member", "What to do: Correct the spelling"),
        ("a verdict", "undecided", "It cannot be told"),
        ("a verdict carries the caution", "contradictory", CAUTION),
        ("a name of both a rule and a verdict, as the rule", "beyond-practice", "beyond-practice (ask)"),
        ("and as the verdict", "beyond-practice", "beyond-practice (verdict)"),
        ("a number with its unit", "practice.intrusion.upper-incisors", "2.7 mm"),
        ("how sure it is", "practice.intrusion.upper-incisors", "How sure: computed"),
        ("where it is from", "practice.intrusion.upper-incisors", "Source: Ng J et al."),
        ("its range", "practice.reduction-per-contact.lower-lateral-canine", "0.6 mm (0.55 to 0.7)"),
        ("a tooth of the left by its mirror", "tooth-width.21", "tooth-width.11 8.5 mm"),
        ("a family of numbers", "practice.intrusion", "practice.intrusion.lower-canines"),
    ],
)
def test_a_name_is_explained(sentence, name, told):
    result = run("explain", name)
    assert (sentence, result.exit_code, told in " ".join(result.output.split())) == (sentence, 0, True)


def test_a_page_fits_a_narrow_window():
    longest = max(len(line) for rule in rules() for line in run("explain", rule.id).output.splitlines())
    assert longest <= 80


@pytest.mark.parametrize(
    "sentence, name, told",
    [
        ("a slip in a rule", "unkown-member", "; the nearest is 'unknown-member'"),
        ("another case", "Undecided", "; the nearest is 'undecided'"),
        ("a slip in a number", "practice.midlin", "; the nearest is 'practice.midline'"),
        ("nothing near", "xyzzy", ""),
    ],
)
def test_an_unknown_name_is_a_wrong_call(sentence, name, told):
    result = run("explain", name)
    assert (sentence, result.exit_code) == (sentence, 2)
    assert result.stderr.splitlines()[-1] == f"Error: nothing is called {name!r}{told}"


def test_the_list_has_a_line_for_each_rule():
    lines = run("rules").output.splitlines()
    assert [line.split()[:2] for line in lines] == [[rule.severity, rule.id] for rule in rules()]


def test_the_list_as_json_is_the_published_one():
    assert run("rules", "--format", "json").output == rules_json()


@pytest.mark.parametrize("name", [path.name.partition(".")[0] for path in sorted(FOLDER.glob("*.json"))])
def test_a_schema_is_printed_byte_for_byte(name):
    assert run("schema", name).stdout_bytes == (FOLDER / f"{name}.schema.json").read_bytes()


def test_the_schema_meant_without_a_name_is_that_of_a_prescription():
    assert json.loads(run("schema").output)["$id"] == "urn:wellposed:schema:1:prescription"


def test_a_schema_nobody_knows_is_a_wrong_call():
    result = run("schema", "x-ray")
    assert (result.exit_code, "no schema of 'x-ray'; there are" in result.stderr) == (2, True)
