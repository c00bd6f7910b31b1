"""`wellposed convert` and `wellposed formats`: forms told by their endings, exit codes, losses, privacy."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner
from jsonschema import Draft202012Validator
from tests.validator.wellposed.commands.documents import DOCUMENTS, EXAMPLE, written

from wellposed.check import sound_document
from wellposed.commands import convert, formats, main
from wellposed.findings import CAUTION, Finding, Severity
from wellposed.formats import Carried, Form, Loss, Written, forms

SCHEMAS = Path(__file__).parents[4] / "spec" / "schema" / "1"
OWN = ("csv", "json", "jsonl", "xlsx")
ORDER = DOCUMENTS["possible"]
LINES = b"".join(json.dumps(EXAMPLE | {"id": f"HR-{number}"}).encode() + b"\n" for number in range(3))
LONG = written(EXAMPLE | {"extensions": {"org.example.long": {"critical": False, "content": "x" * 40_000}}})
CANARY = "Q7ZQX"


def schema(name):
    return Draft202012Validator(json.loads((SCHEMAS / f"{name}.schema.json").read_text("utf-8")))


@pytest.fixture
def folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for name, data in {"order.json": ORDER, "orders.jsonl": LINES, "long.json": LONG}.items():
        (tmp_path / name).write_bytes(data)
    return tmp_path


def run(*arguments, data=None):
    return CliRunner().invoke(main, ["convert", *arguments], input=data)


@pytest.mark.parametrize("name", OWN)
def test_an_order_goes_there_and_back_by_its_ending(name, folder):
    assert run("order.json", "--to", name, "-o", f"there.{name}").exit_code == 0
    assert run(f"there.{name}", "--to", "json", "-o", "back.json").exit_code == 0
    assert sound_document((folder / "back.json").read_bytes()) == sound_document(ORDER)


@pytest.mark.usefixtures("folder")
def test_the_document_is_printed_and_what_is_said_of_it_goes_to_the_error_stream():
    ran = run("order.json", "--to", "jsonl")
    assert sound_document(ran.stdout_bytes) == sound_document(ORDER)
    assert ran.stderr == "order.json: 1 document, json to jsonl; nothing lost.\n"


@pytest.mark.usefixtures("folder")
def test_the_standard_input_needs_its_form_named():
    assert run("-", "--to", "jsonl", data=ORDER).exit_code == 2
    assert run("-", "--from", "json", "--to", "jsonl", data=ORDER).exit_code == 0


@pytest.mark.parametrize(
    "file, arguments, words",
    [
        ("order.json", ["--to", "word"], "no form 'word'"),
        ("order.json", ["--from", "word", "--to", "csv"], "no form 'word'"),
        ("order.json", [], "--to"),
        ("order", ["--to", "csv"], "--from"),
        ("order.txt", ["--to", "csv"], "--from"),
        (".json.txt", ["--to", "csv"], "--from"),
        ("orders.jsonl", ["--to", "csv"], "carries one document, and there are 3"),
        ("orders.jsonl", ["--to", "json"], "carries one document, and there are 3"),
        ("order.json", ["--to", "csv", "-o", "nowhere/order.csv"], "cannot be written"),
        ("order.json", ["--to", "csv", "-o", "a", "--report", "a"], "a file of its own"),
        ("order.json", ["--to", "csv", "--report", "order.json"], "a file of its own"),
    ],
)
def test_wrong_calls(file, arguments, words, folder):
    ran = run(file, *arguments)
    assert (ran.exit_code, words in ran.stderr) == (2, True)
    assert {path.name for path in folder.iterdir()} == {"order.json", "orders.jsonl", "long.json"}
    assert (folder / "order.json").read_bytes() == ORDER


REFUSED = [
    ("absent.json", None, 3),
    ("order.json", DOCUMENTS["unreadable"], 3),
    ("order.json", DOCUMENTS["refused"], 1),
    ("order.json", b"", 3),
    ("order.csv", b"", 3),
    ("order.csv", b"\xff\xfe", 3),
    ("order.xlsx", b"PK", 3),
    ("order.jsonl", LINES + b"{}\n", 1),
    ("order.jsonl", LINES + b"{\n", 3),
    ("order.jsonl", LINES + b"\n\n", 3),
]


@pytest.mark.parametrize("file, data, code", REFUSED)
def test_what_cannot_be_used_is_not_written_and_none_of_its_file(file, data, code, folder):
    if data is not None:
        (folder / file).write_bytes(data)
    ran = run(file, "--to", "jsonl", "-o", "out.jsonl")
    assert (ran.exit_code, ran.stdout) == (code, "")
    assert not (folder / "out.jsonl").exists()
    assert file in ran.stderr


def test_contradictory_clauses_are_carried_like_any_others(folder):
    """Whether clauses can hold together is for the check; a form carries what is written."""
    (folder / "order.json").write_bytes(DOCUMENTS["contradictory"])
    assert run("order.json", "--to", "csv", "-o", "order.csv").exit_code == 0


def test_a_loss_is_written_only_where_that_is_asked_for(folder):
    ran = run("long.json", "--to", "xlsx", "-o", "long.xlsx")
    assert (ran.exit_code, (folder / "long.xlsx").exists()) == (1, False)
    assert "/extensions/org.example.long: too long for a cell (more than 32767 characters)" in " ".join(
        ran.stderr.split()
    )
    ran = run("long.json", "--to", "xlsx", "-o", "long.xlsx", "--lossy", "--report", "report.json")
    assert (ran.exit_code, (folder / "long.xlsx").exists()) == (0, True)
    assert "not all of it was carried" in ran.stderr
    report = json.loads((folder / "report.json").read_text())
    assert [one["what"] for one in report["losses"]] == ["too-long-for-a-cell"]
    assert (report["written"], report["from"], report["to"]) == (True, "json", "xlsx")


@pytest.mark.usefixtures("folder")
def test_two_forms_of_one_ending_are_asked_about(monkeypatch):
    known = forms()
    monkeypatch.setattr(
        convert, "forms", lambda: known | {"other": Form("other", "x", (".json",), known["json"].read, None)}
    )
    ran = run("order.json", "--to", "csv")
    assert (ran.exit_code, "could be json or other: name it with --from" in ran.stderr) == (2, True)
    assert run("order.json", "--from", "json", "--to", "jsonl").exit_code == 0
    assert "read only" in run("order.json", "--from", "json", "--to", "other").stderr


def test_the_longer_ending_says_more(folder, monkeypatch):
    known = forms()
    longer = Form("other", "x", (".order.json",), known["json"].read, None)
    monkeypatch.setattr(convert, "forms", lambda: known | {"other": longer})
    (folder / "my.order.json").write_bytes(ORDER)
    assert "other to jsonl" in run("my.order.json", "--to", "jsonl").stderr
    assert "json to jsonl" in run("order.json", "--to", "jsonl").stderr


ASKED = Finding("bundle-differs", Severity.ASK, "/entry/1", {"expected": "2.5"})
LOST = Loss("/notes", "no-place-for-it")
FOREIGN = [
    ("all of it", Carried(sound_document(ORDER)), (), 0),
    ("a question", Carried(sound_document(ORDER), (ASKED,)), (), 1),
    ("a loss in reading", Carried(sound_document(ORDER), (), (LOST,)), (), 1),
    ("a loss in reading, asked for", Carried(sound_document(ORDER), (), (LOST,)), ("--lossy",), 0),
    ("a rule of its own", Carried(None, (Finding("not-a-song", Severity.STOP),)), ("--lossy",), 3),
    ("a rule of the format", Carried(None, (Finding("missing-member", Severity.STOP),)), (), 1),
]


@pytest.mark.parametrize("carried, more, code", [pytest.param(*case[1:], id=case[0]) for case in FOREIGN])
def test_a_form_of_another_package(carried, more, code, folder, monkeypatch):
    song = Form(
        "song",
        "sung",
        (".song",),
        lambda _: (carried,),
        lambda _: Written(b"la"),
        rules={"not-a-song": "it is no song"},
    )
    monkeypatch.setattr(convert, "forms", lambda: forms() | {"song": song})
    (folder / "order.song").write_bytes(b"la")
    ran = run("order.song", "--to", "jsonl", "--report", "report.json", *more)
    report = json.loads((folder / "report.json").read_text())
    assert (ran.exit_code, report["written"]) == (code, code == 0 or carried.findings == (ASKED,))
    assert (CAUTION.split()[0] in ran.stderr) == bool(carried.findings)
    assert ("It is no song" in ran.stderr) == (code == 3)
    assert [*schema("conversion").iter_errors(report)] == []


@pytest.mark.usefixtures("folder")
def test_a_form_that_carries_no_such_document_says_so(monkeypatch):
    one = Form("one", "x", (".one",), None, lambda _: Written(b"x"), kinds=("wellposed/setup",))
    monkeypatch.setattr(convert, "forms", lambda: forms() | {"one": one})
    ran = run("order.json", "--to", "one")
    assert (ran.exit_code, "one does not carry wellposed/prescription" in ran.stderr) == (2, True)
    assert "written only" in run("x.one", "--to", "json").stderr


@pytest.mark.parametrize("name", OWN)
def test_a_report_is_as_its_schema_says(name, folder):
    assert run("order.json", "--to", name, "-o", "out", "--report", "report.json").exit_code == 0
    (folder / f"bad.{name}").write_bytes(b"{}\n")
    assert run(f"bad.{name}", "--to", "json", "--report", "told.json").exit_code in (1, 3)
    for file in ("report.json", "told.json"):
        report = json.loads((folder / file).read_text())
        assert [*schema("conversion").iter_errors(report)] == []
    assert report["documents"][0]["findings"][0]["message"]


def private():
    """An order with a word in every private place, and faults beside each."""
    people = (
        {"id": f"{CANARY} x"},
        {"id": f"{CANARY} y"},
        {"reference": f"{CANARY} z", "sex": CANARY, "age_years": CANARY},
    )
    prescriber, laboratory, patient = people
    notes = [{"text": f"{CANARY} lives here", "about": [f"{CANARY} is no id"]}]
    records = [{"kind": CANARY, "name": CANARY, "date": CANARY}]
    whole = {"prescriber": prescriber, "laboratory": laboratory, "patient": patient, "notes": notes, "records": records}
    return json.dumps(EXAMPLE | whole)


def test_no_word_of_a_private_section_is_told(folder):
    table = (
        "section,entry,id,reference,age_years,text,about,format,kind,name,content,critical\r\n"
        "document,,HR-1,,,,,wellposed/prescription,,,,\r\n"
        f"patient,,,={CANARY},{CANARY},,,,,,,\r\n"
        f"prescriber,,'{CANARY},,,,,,,,,\r\n"
        f"notes,1,,,,-{CANARY},{CANARY}  {CANARY},,,,,\r\n"
        f"extensions,,,,,,,,,org.{CANARY},{CANARY},{CANARY}\r\n"
    )
    for file, data in {"a.csv": table, "a.json": private(), "a.jsonl": private() + "\n"}.items():
        (folder / file).write_text(data, newline="")
        ran = run(file, "--to", "jsonl", "--report", "report.json")
        assert ran.exit_code in (1, 3)
        assert CANARY not in ran.output + ran.stderr + (folder / "report.json").read_text()


def test_formats_lists_every_form_with_what_it_can():
    text = CliRunner().invoke(main, ["formats"]).output
    assert [line.split()[0] for line in text.splitlines()] == sorted(forms())
    assert "csv    read and written  .csv" in text


def test_formats_as_json_is_as_its_schema_says():
    listed = json.loads(CliRunner().invoke(main, ["formats", "--format", "json"]).output)
    assert [*schema("formats").iter_errors(listed)] == []
    assert [one["name"] for one in listed["formats"]] == sorted(forms())
    assert {one["name"]: one["many"] for one in listed["formats"]}["jsonl"] is True
    assert formats.command.name == "formats"


@pytest.mark.usefixtures("folder")
def test_a_file_that_is_too_large_is_not_cut(monkeypatch):
    monkeypatch.setattr(convert, "MOST_BYTES", 100)
    ran = run("orders.jsonl", "--to", "jsonl")
    assert (ran.exit_code, ran.stdout, "more than 100 bytes" in ran.stderr) == (3, "", True)
