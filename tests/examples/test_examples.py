"""The examples: each has the verdict its table states, and the reports beside it are current."""

import json
import re

import pytest
from tests.examples.regenerate import CASES, EXAMPLES, FORMS, NOTED, ROOT, answered, checked, read

from wellposed.findings import CAUTION
from wellposed.model import PRIVATE
from wellposed.render.text import SCOPE

ROW = re.compile(r"^\| \[([a-z-]+)\]\(\1/\) \|[^|\n]+\| ([a-z-]+) \| ([0-9]) \|$", re.MULTILINE)
TABLE = {name: (verdict, int(status)) for name, verdict, status in ROW.findall((EXAMPLES / "README.md").read_text())}
PAGE = 66  # lines of a printed page
LONGER = {"several-conflicts"}  # three conflicts, each with its ways out


def text_of(name, file):
    return (CASES[name] / file).read_text("utf-8")


def values(part):
    """Every text and number in a part of a document."""
    if isinstance(part, dict | list):
        for inner in part.values() if isinstance(part, dict) else part:
            yield from values(inner)
    else:
        yield str(part)


def test_the_table_has_every_case_in_order():
    assert list(TABLE) == list(CASES)


@pytest.mark.parametrize("name", CASES)
def test_a_case_has_its_files(name):
    files = {"prescription.json", "report.json", "report.txt"}
    files |= {"note.txt", "answers.txt", "particulars.json", "reading.txt"} if name in NOTED else set()
    assert {file.name for file in CASES[name].iterdir()} == files


@pytest.mark.parametrize("name", NOTED)
def test_a_note_is_read_as_shown_and_makes_the_prescription(name, tmp_path):
    assert text_of(name, "reading.txt") == read(name)
    assert answered(name, tmp_path / "made.json") == 0
    assert (tmp_path / "made.json").read_text("utf-8") == text_of(name, "prescription.json")


@pytest.mark.parametrize("name", CASES)
def test_the_verdict_is_the_one_of_the_table(name):
    status, output = checked(name, "json")
    assert (json.loads(output)["verdict"], status) == TABLE[name]


@pytest.mark.parametrize("file, form", FORMS.items())
@pytest.mark.parametrize("name", CASES)
def test_a_report_is_current(name, file, form):
    assert text_of(name, file) == checked(name, form)[1], "python tests/examples/regenerate.py writes it again"


@pytest.mark.parametrize("name", CASES)
def test_a_text_report_carries_the_caution_and_fits_a_page(name):
    told = " ".join(text_of(name, "report.txt").split())
    assert CAUTION in told
    assert SCOPE in told
    assert text_of(name, "report.txt").count("\n") <= PAGE or name in LONGER


@pytest.mark.parametrize("name", CASES)
def test_a_report_repeats_nothing_private(name):
    document = json.loads(text_of(name, "prescription.json"))
    private = {value for section in PRIVATE for value in values(document.get(section[1:]))}
    told = set(values(json.loads(text_of(name, "report.json"))))
    assert sorted(value for value in private & told if not re.fullmatch(r"[0-9.]+|None|upper|lower", value)) == []


@pytest.mark.parametrize("name", CASES)
@pytest.mark.parametrize("file", FORMS)
def test_no_report_names_a_place_on_a_disk(name, file):
    assert str(ROOT) not in text_of(name, file)
    assert "examples/" not in text_of(name, file)
