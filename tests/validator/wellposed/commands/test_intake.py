"""`wellposed intake`: what it prints, on which stream, what it writes, and how it ends."""

import json
import os
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner
from tests.validator.wellposed.commands.documents import DOCUMENTS, EXAMPLE
from tests.validator.wellposed.exchange.arrivals import DOCUMENT, sealed, trusted, written
from tests.validator.wellposed.exchange.incoming import chain, digest_of, order

from wellposed.check import check
from wellposed.commands import arriving, main
from wellposed.exchange.intake import taken_in
from wellposed.findings import CAUTION

GOOD = DOCUMENTS["possible"]


@pytest.fixture
def run(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)

    def ran(files, *options, new=True):
        for name, data in files.items():
            path = tmp_path / "inbox" / name
            path.parent.mkdir(exist_ok=True)
            path.write_bytes(data)
        begun = ["--laboratory", "lab-4"] if new else []
        paths = ["inbox"] if files else []
        return CliRunner().invoke(main, ["intake", *paths, "--store", "intake.db", *begun, *options])

    return ran


def receipts(tmp_path):
    return {path.name: json.loads(path.read_bytes()) for path in sorted((tmp_path / "out").iterdir())}


def test_an_order_is_taken_in(run, tmp_path):
    result = run({"a.json": GOOD}, "-o", "out")
    assert (result.exit_code, result.stderr) == (0, "")
    digest = digest_of(GOOD)
    assert result.stdout.startswith(f"accepted  prescription HR-2031, revision 1 ({digest[:12]}): current.\n")
    assert CAUTION in " ".join(result.stdout.split())
    ((name, receipt),) = receipts(tmp_path).items()
    assert (name, receipt["outcome"], receipt["answers"]["sha256"]) == (f"{digest}-1.json", "accepted", digest)


def test_once_more_changes_nothing_and_says_so(run, tmp_path):
    first = run({"a.json": GOOD}, "-o", "out")
    before = (tmp_path / "intake.db").read_bytes(), receipts(tmp_path)
    again = run({}, "inbox", "-o", "out", new=False)
    assert ((tmp_path / "intake.db").read_bytes(), receipts(tmp_path)) == before
    assert (first.exit_code, again.exit_code) == (0, 0)
    assert again.stdout.startswith("accepted  again, prescription HR-2031, revision 1")


def test_a_receipt_that_was_lost_is_written_again_byte_for_byte(run, tmp_path):
    run({"a.json": GOOD}, "-o", "out")
    ((path, data),) = [(path, path.read_bytes()) for path in (tmp_path / "out").iterdir()]
    path.unlink()
    run({}, "inbox", "-o", "out", new=False)
    assert path.read_bytes() == data


@pytest.mark.parametrize(
    "data, code, words",
    [
        (DOCUMENTS["contradictory"], 1, "returned  prescription HR-2031, revision 1"),
        (DOCUMENTS["incomplete"], 1, "something in it must be answered first; means-not-said."),
        (DOCUMENTS["refused"], 1, "not taken in  file 1 (SHA-256 of its bytes "),
        (DOCUMENTS["unreadable"], 3, "duplicate-member; check tells more."),
        (b"", 3, "document-empty; check tells more."),
        (b"x" * 2_000_001, 3, "document-too-large; check tells more."),
    ],
)
def test_how_it_ends(run, data, code, words):
    result = run({"a.json": data, "b.json": order(id="HR-2")})
    assert (result.exit_code, words in result.stdout) == (code, True)
    assert "\naccepted  prescription HR-2, " in result.stdout  # one failure does not stop the others


def test_what_goes_to_a_clinic_is_not_taken_in(run):
    run({"a.json": GOOD}, "-o", "out")
    result = CliRunner().invoke(main, ["intake", "out", "--store", "intake.db"])
    assert (result.exit_code, "a receipt goes from a laboratory to a clinic" in result.stdout) == (1, True)


def test_a_file_that_is_not_there_is_told_by_its_number(run):
    result = run({"a.json": GOOD}, "nowhere.json", "-o", "out")
    assert (result.exit_code, result.stderr) == (3, "wellposed: file 2: there is no such file\n")
    assert result.stdout.startswith("accepted  ")


def test_a_fault_of_the_program_over_one_document_leaves_the_others(run, monkeypatch):
    def fails(store, desk, data, *more):
        if b'"id": "B"' in data:
            raise KeyError(data)
        return taken_in(store, desk, data, *more)

    monkeypatch.setattr(arriving, "taken_in", fails)
    result = run({f"{name}.json": order(id=name) for name in "ABC"})
    assert (result.exit_code, result.stderr) == (4, "wellposed: file 2: internal fault (KeyError)\n")
    assert [line.split()[2] for line in result.stdout.splitlines() if line.startswith("accepted")] == ["A,", "C,"]


def test_a_folder_that_is_closed(run, monkeypatch):
    def closed(_):
        raise PermissionError

    monkeypatch.setattr(Path, "iterdir", closed)
    result = run({"a.json": GOOD})
    assert (result.exit_code, "a file or folder that is named cannot be read" in result.stderr) == (2, True)


def test_a_receipt_is_never_written_over_something_else(run, tmp_path):
    (tmp_path / "out").mkdir()
    other = tmp_path / "out" / f"{digest_of(GOOD)}-1.json"
    other.write_bytes(b"that of another store")
    result = run({"a.json": GOOD}, "-o", "out")
    assert (result.exit_code, result.stdout, other.read_bytes()) == (3, "", b"that of another store")
    assert "something else has the name of its receipt" in result.stderr


def test_files_are_taken_in_the_order_of_their_names_and_others_left(run, tmp_path):
    (tmp_path / "inbox" / "d.json").mkdir(parents=True)
    files = {"c.json": order(id="C"), "a.json": order(id="A"), "b.JSON": order(id="B"), "e.txt": b"x", ".f.json": b"x"}
    told = run(files).stdout.splitlines()
    assert [line.split()[2] for line in told if line.startswith("accepted")] == ["A,", "B,", "C,"]


def test_revisions_follow_each_other_and_what_was_held_is_answered_anew(run, tmp_path):
    first, second = chain(2)
    early = run({"2.json": second}, "-o", "out")
    assert (early.exit_code, "held, because the revision it follows is not there; revision-ahead." in early.stdout) == (
        1,
        True,
    )
    late = CliRunner().invoke(main, ["intake", "--store", "intake.db", "-o", "out", _file(tmp_path, first)])
    assert f"accepted  answered anew, {digest_of(second)[:12]}." in late.stdout
    outcomes = {(one["answers"]["revision"], one["revision"]): one["outcome"] for one in receipts(tmp_path).values()}
    assert outcomes == {(2, 1): "returned", (2, 2): "accepted", (1, 1): "returned"}
    listed = run({}, new=False).stdout
    assert listed == (
        "prescription HR-2031\n"
        f"  revision 1 ({digest_of(first)[:12]}): overtaken by a later revision\n"
        f"  revision 2 ({digest_of(second)[:12]}): current\n"
    )


def _file(tmp_path, data):
    (tmp_path / "one.json").write_bytes(data)
    return "one.json"


def test_a_revision_is_withdrawn(run, tmp_path):
    run({"a.json": GOOD}, "-o", "out")
    asked = ["--withdraw", EXAMPLE["prescriber"]["id"], "HR-2031", "1"]
    result = run({}, *asked, "-o", "out", new=False)
    assert (result.exit_code, result.stdout.splitlines()[0]) == (0, "withdrawn  prescription HR-2031, revision 1.")
    assert [one["outcome"] for one in receipts(tmp_path).values()] == ["accepted", "returned"]
    assert "revision-withdrawn" in result.stdout
    assert run({}, "inbox", new=False).exit_code == 1
    assert run({}, *asked, new=False).stdout == "withdrawn  prescription HR-2031, revision 1.\n"
    before = run({}, "--withdraw", "clinic-17/dr-2", "HR-9", "7", new=False)
    assert before.exit_code == 0
    assert "prescription HR-9\n  revision 7: withdrawn, and not received\n" in run({}, new=False).stdout


def test_an_empty_store(run):
    assert run({}).stdout == "Nothing has been taken in.\n"


def test_the_log_is_looked_through(run, tmp_path):
    run({"a.json": GOOD})
    told = run({}, "--verify-log", new=False)
    assert (told.exit_code, told.stdout.splitlines()[0]) == (0, "2 entries, as it was written.")
    head = told.stdout.splitlines()[1].removeprefix("Last hash: ")
    assert run({}, "--verify-log", "--head", head, new=False).exit_code == 0
    (tmp_path / "intake.db").unlink()
    run({"a.json": order()})
    old = run({}, "--verify-log", "--head", head, new=False)
    assert (old.exit_code, "the store is older than it was, or another one" in old.stdout) == (1, True)


# signatures


@pytest.fixture
def keys(tmp_path):
    (tmp_path / "keys.json").write_bytes(json.dumps(trusted()).encode())
    return ["--trust", "keys.json"]


def test_what_is_signed_is_accepted_and_what_is_not_is_not(run, keys):
    data, signature = written(DOCUMENT), sealed(DOCUMENT)
    assert run({"a.json": data, "a.sig": signature}, *keys, "--require-signature").exit_code == 0
    assert run({"b.json": data, "b.json.sig": signature}, *keys).exit_code == 0


@pytest.mark.parametrize(
    "signature, rule",
    [
        (None, "signature-left-out"),
        (b"x", "signature-form"),
        (sealed({**DOCUMENT, "id": "X"}), "signature-does-not-fit"),
    ],
)
def test_a_bad_signature_or_none(run, keys, signature, rule):
    files = {"a.json": written(DOCUMENT)} | ({"a.sig": signature} if signature else {})
    result = run(files, *keys)
    assert (result.exit_code, f"; {rule}." in result.stdout) == (1, True)


def test_a_signature_without_keys_to_hold_it_against_is_not_passed_over(run):
    result = run({"a.json": written(DOCUMENT), "a.sig": sealed(DOCUMENT)})
    assert (result.exit_code, "--trust names the keys" in result.stderr) == (3, True)
    assert "accepted" not in result.stdout.partition("\n\n")[0]


@pytest.mark.skipif(sys.platform == "win32", reason="names are as long as POSIX has them")
def test_a_name_so_long_that_no_signature_can_stand_beside_it(run):
    result = run({f"{'a' * 247}.json": GOOD, "b.json": order(id="B")})
    assert (result.exit_code, "file 1: it cannot be seen whether a signature" in result.stderr) == (3, True)
    assert result.stdout.startswith("accepted  prescription B, ")


def test_of_two_signatures_none_is_chosen(run, keys):
    files = {"a.json": written(DOCUMENT), "a.sig": sealed(DOCUMENT), "a.json.sig": sealed(DOCUMENT)}
    result = run(files, *keys)
    assert (result.exit_code, "two signatures stand beside it" in result.stderr) == (3, True)


# wrong calls, failing disks


@pytest.mark.parametrize(
    "options, words",
    [
        (["--verify-log", "--withdraw", "a", "b", "1"], "one at a time"),
        (["inbox", "--verify-log"], "one at a time"),
        (["--head", "0" * 64], "--head goes with --verify-log"),
        (["--verify-log", "--head", "x"], "64 digits"),
        (["--withdraw", "a b", "HR-1", "1"], "not written as the format writes it"),
        (["--withdraw", "a", "HR 1", "1"], "not written as the format writes it"),
        (["--withdraw", "a", "HR-1", "0"], "--withdraw"),
        (["inbox", "--require-signature"], "--require-signature needs --trust"),
        (["--laboratory", "lab 4"], "--laboratory is not written"),
        (["inbox", "-o", "no/such/folder"], "cannot be made"),
    ],
)
def test_a_wrong_call(run, options, words):
    run({"a.json": GOOD})
    result = run({}, *options, new=False)
    assert (result.exit_code, words in result.stderr) == (2, True)


def test_the_keys_must_be_those_of_the_laboratory(run, tmp_path):
    (tmp_path / "keys.json").write_bytes(json.dumps({**trusted(), "holder": ["lab-5"]}).encode())
    result = run({"a.json": GOOD}, "--trust", "keys.json")
    assert (result.exit_code, "not that of this laboratory" in result.stderr) == (2, True)


@pytest.mark.parametrize(
    "new, begin, words", [(False, None, "--laboratory says whose"), (True, b"x" * 999, "not a store")]
)
def test_no_store(run, tmp_path, new, begin, words):
    if begin:
        (tmp_path / "intake.db").write_bytes(begin)
    result = run({"a.json": GOOD}, "-o", "out", new=new)
    assert (result.exit_code, words in result.stderr, result.stdout) == (3, True, "")
    assert not (tmp_path / "out").exists()


def test_a_receipt_that_cannot_be_written_is_not_told_as_given(run, monkeypatch):
    def full(*_):
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patched:
        patched.setattr(os, "fsync", full)
        result = run({"a.json": GOOD}, "-o", "out")
    assert (result.exit_code, result.stdout) == (3, "")
    assert "what came in is stored, but a receipt cannot be written; take it in once more" in result.stderr
    assert run({}, "inbox", "-o", "out", new=False).exit_code == 0


def test_every_receipt_it_writes_is_sound(run, tmp_path):
    first, second = chain(2)
    files = {"a.json": GOOD, "b.json": second, "c.json": DOCUMENTS["contradictory"], "d.json": first}
    run(files, "-o", "out")
    assert len(receipts(tmp_path)) >= 4
    for path in (tmp_path / "out").iterdir():
        report = check(path.read_bytes())
        assert (report.verdict, report.findings) == ("not-judged", ())
