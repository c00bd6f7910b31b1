"""The stories, told anew: every file is the one that stands there, and every command ends as it should."""

import json
import re

import pytest
from tests.examples.stories.quoted import lines, quotations
from tests.examples.stories.telling import FOLDER, STORIES, tell

from wellposed.findings import CAUTION

LINK = re.compile(r"\]\(([^)#\s]+)\)")
OUTCOMES = {  # of each setup in turn, and what is still unmet in it that another setup, or none, could meet
    "all-in-order": [("approved", [], [])],
    "instruction-at-fault": [
        ("returned", [], ["c11"]),
        ("returned", [], ["c11"]),
        ("returned", [], ["c11", "c22"]),
        ("approved", [], []),
    ],
    "setup-at-fault": [
        ("returned", ["c12", "c13", "c14", "c16", "c20"], []),
        ("returned", ["c18"], []),
        ("approved", [], []),
    ],
}


@pytest.fixture(scope="module", params=STORIES)
def told(request, tmp_path_factory):
    """Each story told anew: its name, the folder it was told in, the steps taken."""
    folder = tmp_path_factory.mktemp(request.param)
    return request.param, folder, tell(request.param, folder)


def files(folder):
    return {str(file.relative_to(folder)): file.read_bytes() for file in folder.rglob("*") if file.is_file()}


def document(name, kind, number):
    return json.loads((FOLDER / name / "case" / f"{kind}-{number}.json").read_text("utf-8"))


def test_there_is_a_folder_for_each_story_and_no_other():
    assert {folder.name for folder in FOLDER.iterdir()} == set(STORIES) == set(OUTCOMES)


def test_every_command_ends_as_it_should(told):
    assert [(step.file, step.found) for step in told[2]] == [(step.file, step.expected) for step in told[2]]


def test_every_file_is_the_one_that_stands_there(told):
    name, folder, _ = told
    standing = files(FOLDER / name)
    del standing["README.md"]
    assert sorted(standing) == sorted(files(folder))
    other = [file for file, content in files(folder).items() if standing[file] != content]
    assert other == [], "python -m tests.examples.stories writes them again"


@pytest.mark.parametrize("name, number", [(name, at) for name in OUTCOMES for at in range(1, len(OUTCOMES[name]) + 1)])
def test_a_review_asks_for_what_a_setup_can_mend_and_has_the_rest_revised(name, number):
    """The expectation is the story's own: which teeth the setup was written to miss, which orders cannot be met."""
    review = document(name, "review", number)
    clauses = {one for part in review.get("requests", {}).values() for one in _because(part)}
    outcome, asked, revised = OUTCOMES[name][number - 1]
    assert (review["outcome"], review.get("revising", [])) == (outcome, revised)
    assert {one["clause"] for one in review["clauses"] if one["outcome"] in ("not-met", "beyond")} == {*asked, *revised}
    assert clauses <= set(asked)


def _because(part):
    """The clauses that requests repeat."""
    return [one for request in (part if isinstance(part, list) else [part]) for one in request.get("because", [])]


@pytest.mark.parametrize("name", STORIES)
def test_the_page_quotes_what_the_files_say(name):
    page = FOLDER / name / "README.md"
    assert page.read_text("utf-8").count("```text") == len(quotations(page)) > 2
    assert [said for *_, said in quotations(page)] == [lines(page, *where) for *where, _ in quotations(page)]


@pytest.mark.parametrize("name", STORIES)
def test_the_page_leads_to_every_file_told(name):
    page = FOLDER / name / "README.md"
    linked = set(LINK.findall(page.read_text("utf-8")))
    assert [link for link in linked if not (page.parent / link).exists()] == []
    assert {file.name for file in page.parent.glob("*.txt")} - {link.rpartition("/")[2] for link in linked} <= {
        "answers.txt",
        "setup-1.txt",
    }


def test_what_is_told_to_people_carries_the_caution(told):
    _, folder, steps = told
    told_files = {step.file for step in steps if step.file.endswith(".txt")}
    assert [file for file in told_files if CAUTION not in " ".join((folder / file).read_text("utf-8").split())] == []


def test_nothing_told_names_a_place_on_a_disk(told):
    _, folder, _ = told
    assert [file for file, content in files(folder).items() if str(folder).encode() in content] == []


@pytest.mark.parametrize("name", STORIES)
def test_every_text_keeps_the_patient_to_itself(name):
    patient = document(name, "prescription", 1)["patient"]["reference"]
    assert [file.name for file in (FOLDER / name).glob("*.txt") if patient in file.read_text("utf-8")] == []
