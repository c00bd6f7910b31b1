"""``wellposed read`` on a read-back: the draft, what it says, and the prescription that comes of it."""

import json

import pytest
from click.testing import CliRunner
from tests.converters.wellposed_converters.text.readback.corpus import ROOT, plain

from wellposed.check import prescription_of
from wellposed.render.readback import readback_text
from wellposed_converters.text.command import command
from wellposed_converters.text.draft import restored

CASE = json.loads((ROOT / "examples/spaced-upper-front/prescription.json").read_text("utf-8"))
AROUND = {name: CASE[name] for name in ("issued", "prescriber", "laboratory", "patient")}
NOT_THERE = {"format", "version", "notation", "issued", "prescriber", "laboratory", "patient", "records", "notes"}
TEXT = readback_text(prescription_of(json.dumps(CASE).encode()), "american", width=100)


@pytest.fixture
def read(tmp_path):
    def run(text, *options):
        (tmp_path / "note.txt").write_text(text, "utf-8")
        target = ("-o", str(tmp_path / "draft.json"))
        return CliRunner().invoke(command, [str(tmp_path / "note.txt"), *target, *options])

    run.draft = lambda: json.loads((tmp_path / "draft.json").read_text("utf-8"))
    run.folder = tmp_path
    return run


def test_the_draft_holds_the_same_clauses(read):
    assert read(TEXT).exit_code == 0
    drafted = read.draft()
    assert plain(drafted["prescription"]) == plain({name: CASE[name] for name in CASE if name not in NOT_THERE})
    assert drafted["questions"] == []
    assert drafted["missing"] == [
        *("/issued", "/prescriber/id", "/laboratory/id", "/patient/reference"),
        *("/patient/age_years", "/patient/growth", "/patient/dentition"),
    ]
    assert [one["reason"] for one in drafted["uncarried"]] == ["not-repeated"]
    assert restored(drafted).record() == drafted


def test_every_part_leads_to_its_sentence(read):
    read(TEXT)
    ((start, end),) = read.draft()["sources"]["/goals/1"]["spans"]
    assert TEXT[start:end] == "g2    Must: bring the overjet to at least 2 mm and at most 3 mm (because of [p2])."


def test_what_is_read_and_what_is_asked_is_said_with_the_caution(read):
    result = read(TEXT.replace("g2    Must: bring", "g2    Must: take"))
    said = " ".join(result.output.split())
    assert result.exit_code == 1
    assert "clinician" in said
    assert "q1 (not understood): This is no sentence of a read-back" in said
    assert "In: g2 Must: take the overjet to at least 2 mm" in said


def test_with_the_particulars_it_is_the_prescription_again(read):
    (read.folder / "particulars.json").write_text(json.dumps(AROUND), "utf-8")
    assert read(TEXT, "--particulars", str(read.folder / "particulars.json")).exit_code == 0
    made = read.draft()
    left = NOT_THERE - {"issued", "prescriber", "laboratory", "patient", "format", "version", "notation"}
    assert plain({name: made[name] for name in CASE if name not in left}) == plain(
        {name: CASE[name] for name in CASE if name not in left}
    )
    assert prescription_of(json.dumps(made).encode()) is not None


def test_particulars_that_say_another_revision_are_refused(read):
    (read.folder / "particulars.json").write_text(json.dumps(AROUND | {"revision": 2}), "utf-8")
    result = read(TEXT, "--particulars", str(read.folder / "particulars.json"))
    assert result.exit_code == 1
    assert "said-by-the-note /revision" in result.output


@pytest.mark.parametrize("options", [("--ask", "--by", "clinic-1/dr-2"), ("--standing", "standing.txt")])
def test_what_is_for_notes_is_refused(read, options):
    assert read(TEXT, *options).exit_code == 2
