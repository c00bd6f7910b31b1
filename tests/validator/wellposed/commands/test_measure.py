"""`wellposed measure`: what it prints, on which stream, and how it ends."""

import json
from pathlib import Path

import jsonschema
import pytest
from click.testing import CliRunner
from tests.validator.wellposed.commands.documents import DOCUMENTS, EXAMPLE, written

from wellposed.commands import main
from wellposed.findings import CAUTION
from wellposed.render.schemas import schema_text

# Means of Nelson, Wheeler's Dental Anatomy.
WIDTHS = b"""tooth,width
16,10\n15,7\n14,7\n13,7.5\n12,6.5\n11,8.5\n21,8.5\n22,6.5\n23,7.5\n24,7\n25,7\n26,10
46,11\n45,7\n44,7\n43,7\n42,5.5\n41,5\n31,5\n32,5.5\n33,7\n34,7\n35,7\n36,11
"""


@pytest.fixture
def run(tmp_path):
    def ran(name, content, *options):
        (tmp_path / name).write_bytes(content)
        return CliRunner().invoke(main, ["measure", str(tmp_path / name), *options])

    return ran


def test_a_prescription_is_measured(run):
    result = run("order.json", written(EXAMPLE))
    assert (result.exit_code, result.stderr) == (0, "")
    assert result.stdout.startswith("HR-2031  ")
    assert "lower arch, room left over" in result.stdout
    assert CAUTION in " ".join(result.stdout.split())


def test_a_prescription_that_contradicts_itself_is_measured_all_the_same(run):
    assert run("order.json", DOCUMENTS["contradictory"]).exit_code == 0


def test_a_table_of_widths_is_measured(run):
    result = run("widths.csv", WIDTHS)
    assert (result.exit_code, result.stderr) == (0, "")
    assert "tooth-size ratio, 12 teeth         91.4 %" in result.stdout


@pytest.mark.parametrize("name,content", [("order.json", written(EXAMPLE)), ("widths.csv", WIDTHS)])
def test_the_json_is_what_its_schema_says(run, name, content):
    told = json.loads(run(name, content, "--format", "json").stdout)
    jsonschema.Draft202012Validator(json.loads(schema_text("measures"))).validate(told)
    assert (told["format"], told["caution"], told["document"]["name"]) == ("wellposed/measures", CAUTION, name)
    assert {key for one in told["measures"] for key in one["norms"]} == {norm["key"] for norm in told["norms"]}


def test_the_output_is_the_same_every_time(run):
    first, second = (run("order.json", written(EXAMPLE), "--format", "json").stdout_bytes for _ in range(2))
    assert first == second


STOPPED = [
    ("faults in its structure", "order.json", DOCUMENTS["refused"], 1, "unknown-member"),
    ("faults in its text", "order.json", DOCUMENTS["unreadable"], 3, "duplicate-member"),
    ("a fault between its parts", "order.json", written(EXAMPLE | {"goals": EXAMPLE["goals"] * 2}), 1, "g1"),
    ("a table that is none", "widths.csv", b"tooth;width\n", 3, "widths.csv: line 1, column 1: the first line must be"),
    ("a table taken for a prescription", "widths.txt", WIDTHS, 3, "widths.txt"),
]


@pytest.mark.parametrize("sentence,name,content,code,told", STOPPED)
def test_what_cannot_be_used_is_said_on_the_error_stream(run, sentence, name, content, code, told):
    result = run(name, content)
    assert (sentence, result.exit_code, result.stdout) == (sentence, code, "")
    assert told in result.stderr


def test_another_document_is_a_wrong_call(run):
    folder = Path(__file__).parents[4] / "spec" / "conformance" / "cases"
    receipt = next(path for path in sorted(folder.rglob("*.json")) if b'"wellposed/receipt"' in path.read_bytes())
    result = run("receipt.json", receipt.read_bytes())
    assert (result.exit_code, "receipt.json is not a prescription" in result.stderr) == (2, True)


def test_a_file_that_is_not_there():
    result = CliRunner().invoke(main, ["measure", "nowhere.json"])
    assert (result.exit_code, result.stderr) == (3, "wellposed: nowhere.json: there is no such file\n")


def test_nothing_of_the_patient_is_printed(run):
    patient = {"reference": "P-7F3A", "age_years": 24, "sex": "female"}
    shown = {"id": "f9", "measure": "incisor-display-at-rest", "value": 3, "unit": "mm"}
    findings = [*EXAMPLE["findings"], shown]
    for form in ("text", "json"):
        told = run("order.json", written(EXAMPLE | {"patient": patient, "findings": findings}), "--format", form).stdout
        assert "usual" in told
        assert "f9" in told
        assert not {"P-7F3A", "female", "clinic-17", "OR-55821"} & set(told.replace('"', " ").split())
