"""Receipts as documents and as files: made of findings without their facts, the same bytes every time, whole or not."""

import json
import os
from stat import S_ISDIR

import pytest
from tests.validator.wellposed.exchange.incoming import NOW

from wellposed.check import check, sound_document
from wellposed.digests import digest
from wellposed.exchange.arrival import Received
from wellposed.exchange.receipts import MOST_LISTED, Facts, grave, listed, receipt_bytes, receipt_name, written
from wellposed.findings import Finding, Severity
from wellposed.model import Receipt

ANSWERED = Received("wellposed/prescription", "dr-2", "HR-1", 3, "ab" * 32, "cd" * 32)
STOP = Finding("bounds-crossed", Severity.STOP, "/keep/0", {"name": "secret"}, ("k1",), 7, 3)
NOTE = Finding("treat-not-stated", Severity.NOTE)


def facts(*findings, outcome="returned", **more):
    return Facts(ANSWERED, outcome, "lab-4", NOW, NOW, listed(findings), **more)


def test_a_finding_is_listed_by_rule_weight_place_and_clauses_and_each_once():
    assert listed([NOTE, STOP, STOP]) == [
        {"rule": "bounds-crossed", "severity": "stop", "pointer": "/keep/0", "clauses": ["k1"]},
        {"rule": "treat-not-stated", "severity": "note", "pointer": ""},
    ]
    assert [grave(listed(some)) for some in ([NOTE], [NOTE, STOP], [])] == [False, True, False]


def test_a_receipt_repeats_no_fact():
    assert b"secret" not in receipt_bytes(facts(STOP))


def test_the_same_facts_give_the_same_bytes_whatever_order_they_were_found_in():
    assert receipt_bytes(facts(STOP, NOTE)) == receipt_bytes(facts(NOTE, STOP))


def test_a_receipt_is_sound_and_a_later_one_replaces_it():
    first = receipt_bytes(facts(STOP))
    second = receipt_bytes(facts(NOTE, outcome="accepted", before=first, number=2))
    made = [sound_document(one) for one in (first, second)]
    assert [type(one) for one in made] == [Receipt, Receipt]
    assert (made[1].replaces, made[1].id) == (digest(made[0]), made[0].id)
    assert [check(one).findings for one in (first, second)] == [(), ()]


@pytest.mark.parametrize("count, more", [(MOST_LISTED - 1, None), (MOST_LISTED, None), (MOST_LISTED + 7, 7)])
def test_what_has_no_room_is_counted_and_the_lightest_left_out(count, more):
    many = [Finding(f"rule-{number}", Severity.NOTE, f"/notes/{number}") for number in range(count - 1)]
    content = json.loads(receipt_bytes(facts(*many, STOP)))
    assert (len(content["findings"]), content.get("more_findings")) == (min(count, MOST_LISTED), more)
    assert content["findings"][0]["rule"] == "bounds-crossed"
    assert check(json.dumps(content).encode()).verdict == "not-judged"


def test_files_are_named_after_digests(tmp_path):
    name = receipt_name("ab" * 32, 2)
    written(tmp_path, name, b"one")
    before = (tmp_path / name).stat()
    written(tmp_path, name, b"one")
    assert (tmp_path / name).stat() == before  # what is there as it should be is not touched
    with pytest.raises(FileExistsError):
        written(tmp_path, name, b"two")
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == {f"{'ab' * 32}-2.json": b"one"}


def test_a_file_is_on_the_disk_before_it_has_its_name(tmp_path, monkeypatch):
    steps = []
    fsync, replace = os.fsync, os.replace

    def synced(handle):
        steps.append("folder" if S_ISDIR(os.fstat(handle).st_mode) else "file")
        fsync(handle)

    def named(*paths):
        steps.append("named")
        replace(*paths)

    monkeypatch.setattr(os, "fsync", synced)
    monkeypatch.setattr(os, "replace", named)
    written(tmp_path, "r.json", b"x")
    assert steps == ["file", "named", "folder"]
