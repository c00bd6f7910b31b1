"""What tells who somebody is appears in no log, error, temporary file or receipt; it is marked, and never taken out."""

import json
import sqlite3

import pytest
from click.testing import CliRunner
from tests.validator.wellposed.consistency.answering import setup_document
from tests.validator.wellposed.exchange.canaries import CANARIES, MISPLACED, NAMES, ORDER, REVIEW, TRACES, WRONG

from wellposed.check import sound_document
from wellposed.commands import main
from wellposed.digests import digest

FILES = {f"{NAMES[0]} order.json": json.dumps(ORDER), f"{NAMES[1]} review.json": json.dumps(REVIEW)}
FILES |= {f"{NAMES[2]} {number}.json": text for number, text in enumerate(WRONG.values())}
MISPLACED_FILES = {f"{NAMES[2]} {name}.json": text for name, text in MISPLACED.items()}


def traces(*texts):
    return {trace for text in texts for trace in TRACES if trace in text}


@pytest.fixture
def inbox(tmp_path, monkeypatch):
    folder, temporary = tmp_path / f"of {NAMES[3]}", tmp_path / "temporary"
    folder.mkdir()
    temporary.mkdir()
    for name, text in (FILES | MISPLACED_FILES).items():
        (folder / name).write_text(text, "utf-8")
    (folder / f"{NAMES[4]} not readable.json").mkdir()
    monkeypatch.setenv("TMPDIR", str(temporary))
    monkeypatch.setenv("SQLITE_TMPDIR", str(temporary))
    return folder


def intake(tmp_path, *options):
    store = ["--store", str(tmp_path / "intake.db"), "--laboratory", "lab-4", "-o", str(tmp_path / "receipts")]
    return CliRunner().invoke(main, ["intake", *store, *map(str, options)])


def test_twenty_five_canaries():
    assert (len(CANARIES), len(set(CANARIES)), traces(*CANARIES) == set(TRACES)) == (25, 25, True)
    assert all(traces(one) for one in CANARIES)


def test_the_intake_tells_nobodys_name(tmp_path, inbox):
    runs = [intake(tmp_path, inbox) for _ in range(2)]
    runs += [intake(tmp_path, "--verify-log"), intake(tmp_path)]
    runs.append(intake(tmp_path, inbox / f"{NAMES[4]} is not there.json"))
    runs.append(intake(tmp_path, "--withdraw", ORDER["prescriber"]["id"], "HR-2031", "1"))
    assert [run.exit_code for run in runs] == [3, 3, 0, 0, 3, 0]
    assert traces(*(run.output for run in runs)) == set()
    receipts = [path.read_text("utf-8") for path in (tmp_path / "receipts").iterdir()]
    assert len(receipts) >= 3
    assert traces(*receipts, *(path.name for path in (tmp_path / "receipts").iterdir())) == set()


def test_the_log_and_what_stands_beside_it_tell_nobodys_name(tmp_path, inbox):
    intake(tmp_path, inbox)
    with sqlite3.connect(tmp_path / "intake.db") as sql:
        rows = sql.execute("SELECT entry, hash FROM log").fetchall()
        own = sql.execute("SELECT own, CAST(receipt AS TEXT) FROM answer").fetchall()
        kept = b"".join(data for (data,) in sql.execute("SELECT data FROM document ORDER BY rowid"))
    sql.close()
    assert len(rows) > len(own) >= 3
    assert traces(*(text for row in (*rows, *own) for text in row)) == set()
    assert traces(kept.decode()) == set(TRACES)  # the orders themselves are kept as they came


def test_nothing_is_left_anywhere_else(tmp_path, inbox):
    before = set(tmp_path.rglob("*"))
    intake(tmp_path, inbox)
    left = {path.relative_to(tmp_path).parts[0] for path in set(tmp_path.rglob("*")) - before}
    assert left == {"intake.db", "receipts"}


def test_what_tells_who_somebody_is_is_marked_in_the_receipt_and_nothing_is_taken_out(tmp_path, inbox):
    intake(tmp_path, inbox / f"{NAMES[0]} order.json")
    (receipt,) = [json.loads(path.read_text("utf-8")) for path in (tmp_path / "receipts").iterdir()]
    marked = {(one["rule"], one["pointer"]) for one in receipt["findings"]}
    assert {("name-in-text", f"/records/{number}/name") for number in range(5)} <= marked
    assert ("reference-tells-who", "/patient/reference") in marked
    assert {"telephone-number-in-text", "name-in-text"} <= {rule for rule, _ in marked}
    assert receipt["answers"]["sha256"] == digest(sound_document(json.dumps(ORDER).encode()))
    with sqlite3.connect(tmp_path / "intake.db") as sql:
        assert sql.execute("SELECT data FROM document").fetchall() == [(json.dumps(ORDER).encode(),)]
    sql.close()


COMMANDS = {
    "check": lambda file, setup: ["check", file],
    "check as JSON": lambda file, setup: ["check", "--format", "json", file],
    "review": lambda file, setup: ["review", file, setup],
    "review, turned round": lambda file, setup: ["review", setup, file],
    "convert": lambda file, setup: ["convert", file, "--to", "jsonl"],
    "compare": lambda file, setup: ["compare", file, file],
    "readback": lambda file, setup: ["readback", file],
    "measure": lambda file, setup: ["measure", file],
}


@pytest.mark.parametrize("command", COMMANDS.values(), ids=COMMANDS)
def test_no_error_stream_tells_a_name(tmp_path, command):
    """The file's own name may stand there, so it has none of these."""
    file, setup = tmp_path / "order.json", tmp_path / "setup.json"
    setup.write_text(json.dumps(setup_document()), "utf-8")
    for text in FILES.values():
        file.write_text(text, "utf-8")
        result = CliRunner().invoke(main, command(str(file), str(setup)))
        assert result.exit_code in (0, 1, 2, 3)
        assert traces(result.stderr) == set()
