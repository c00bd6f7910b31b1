"""``wellposed read`` as it is called."""

import hashlib
import json

import pytest
from click.testing import CliRunner

from wellposed.check import check
from wellposed_converters.text.command import command

CLEAR = "FDI. Align 33-43. No IPR."
OPEN = "Align UL 3-3."


@pytest.fixture
def read(tmp_path):
    def run(text, *options, answers=""):
        (tmp_path / "note.txt").write_text(text, "utf-8")
        target = ("-o", str(tmp_path / "draft.json"))
        return CliRunner().invoke(command, [str(tmp_path / "note.txt"), *target, *options], input=answers)

    run.draft = lambda: json.loads((tmp_path / "draft.json").read_text("utf-8"))
    run.folder = tmp_path
    return run


def test_a_clear_note_ends_with_nought_and_an_open_one_with_one(read):
    assert read(CLEAR).exit_code == 0
    assert read(OPEN).exit_code == 1


def test_what_is_understood_and_what_is_asked_is_said_with_the_caution(read):
    said = " ".join(read(OPEN).output.split())
    assert "To be answered (1)" in said
    assert "clinician" in said
    assert "Not in the note, and needed" in said


def test_a_draft_is_no_prescription(read):
    read(CLEAR)
    data = json.dumps(read.draft()).encode()
    assert read.draft()["format"] == "wellposed/draft"
    assert not check(data).fit_to_send


def test_an_answer_is_recorded_with_who_gave_it(read):
    assert read(OPEN, "--ask", "--by", "clinic-1/dr-2", answers="Align upper 3-3.\n").exit_code == 0
    (answer,) = read.draft()["answers"]
    assert (answer["answer"], answer["by"]) == ("Align upper 3-3.", "clinic-1/dr-2")


def test_asking_needs_somebody_who_answers(read):
    assert read(OPEN, "--ask").exit_code == 2


def test_standing_instructions_are_named_by_their_digest(read):
    (read.folder / "standing.txt").write_text("No attachments on 11 21.", "utf-8")
    assert read("FDI. Align 13-23.", "--standing", str(read.folder / "standing.txt")).exit_code in (0, 1)
    assert set(read.draft()) >= {"note_sha256", "standing_sha256", "standing_from"}


@pytest.mark.parametrize("data", [b"\xff\xfe\x00", b"IPR \x00", "Grüße".encode("cp1252")])
def test_a_note_that_is_no_text_is_refused_with_its_place(read, data):
    (read.folder / "note.txt").write_bytes(data)
    result = CliRunner().invoke(command, [str(read.folder / "note.txt")])
    assert result.exit_code == 3


def test_an_open_draft_makes_no_prescription(read):
    (read.folder / "p.json").write_text("{}", "utf-8")
    result = read(OPEN, "--particulars", str(read.folder / "p.json"))
    assert result.exit_code == 1
    assert "question-open" in result.output


def test_a_number_that_is_none_is_put_again_and_no_answer_is_lost(read):
    result = read("Keep overjet. OB 2 mm.", "--ask", "--by", "c-1", answers="now\n0,5\n0.5\n")
    assert "such as 0.5" in result.output
    assert result.exit_code == 0
    assert [one["answer"] for one in read.draft()["answers"]] == ["now", {"within": 0.5}]


PARTICULARS = {
    "id": "T-1",
    "revision": 1,
    "issued": "2026-01-05T09:00:00+01:00",
    "prescriber": {"id": "clinic-1/dr-2"},
    "laboratory": {"id": "lab-1"},
    "patient": {"reference": "P-1", "age_years": 30, "growth": "complete", "dentition": "permanent"},
    "teeth": {"upper": ["13", "12", "11", "21", "22", "23"], "lower": ["43", "42", "41", "31", "32", "33"]},
}


def test_the_prescription_keeps_who_answered_and_the_digest_is_the_note_s_own(read):
    (read.folder / "standing.txt").write_text("Keep overbite.", "utf-8")
    (read.folder / "p.json").write_text(json.dumps(PARTICULARS), "utf-8")
    note = "Align UL 3-3."
    files = ("--standing", str(read.folder / "standing.txt"), "--particulars", str(read.folder / "p.json"))
    answers = "Align upper 3-3.\n0.5\nmm\n0.5\n"
    result = read(note, "--ask", "--by", "clinic-1/dr-2", *files, answers=answers)
    content = read.draft()["extensions"]["org.wellposed.note"]["content"]
    assert content["sha256"] == hashlib.sha256(note.encode()).hexdigest(), result.output
    assert [(one["answer"], one["by"]) for one in content["answers"]][:1] == [("Align upper 3-3.", "clinic-1/dr-2")]


@pytest.mark.parametrize(
    "note, answers, member",
    [
        ("FDI. Retainer 33-43.", "nonsense\nbonded\n", {"retainer": "bonded"}),
        ("Treat upper: yes.", "left\nupper\n", {"arches": "upper"}),
        ("Keep overbite.", "0.5\nmillimetres\nmm\n", {"within": 0.5, "unit": "mm"}),
    ],
)
def test_a_term_of_the_format_is_answered_with_the_term(read, note, answers, member):
    result = read(note, "--ask", "--by", "c-1", answers=answers)
    assert [one["answer"] for one in read.draft()["answers"]] == [member], result.output


def test_what_is_said_twice_is_told_and_not_asked(read):
    result = read("Keep overjet. Align upper 3-3. Align upper 3-3.")
    assert "To bear in mind (1)" in result.output
    assert "To be answered (1)" in result.output  # the tolerance of the keep, and nothing else
