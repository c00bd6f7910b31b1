"""The log: an entry changed, taken away, put in or moved is found out. So is a store changed behind its back."""

import hashlib
import json
import sqlite3
from itertools import combinations

import pytest
from tests.validator.wellposed.commands.documents import EXAMPLE
from tests.validator.wellposed.exchange.incoming import LABORATORY, NOW, PRESCRIBER, chain, order, take

from wellposed.exchange.audit import audited
from wellposed.exchange.intake import prescription_case, withdrawn
from wellposed.exchange.log import START, chained, faults
from wellposed.exchange.store import Store, StoreError

EVENTS = ["begun", "accepted", "returned", "accepted", "withdrawn", "returned"]
STORED = [(event, f"{number:064x}", f"{number + 100:064x}") for number, event in enumerate(EVENTS)]


def made(stored):
    rows = []
    for event, subject, record in stored:
        rows.append(chained(rows[-1][::2] if rows else None, NOW, event, subject, record))
    return rows


ROWS = made(STORED)
HEAD = ROWS[-1][2]


def found(rows, stored=STORED, head=None):
    return {fault.what for fault in faults(rows, stored, head)}


def test_an_entry_is_hashed_as_the_specification_says():
    """By hand: SHA-256 of the JSON with its names in order and no blanks, which is RFC 8785 for text in ASCII."""
    before = "0" * 64
    for (seq, text, written), (event, subject, record) in zip(ROWS, STORED, strict=True):
        entry = {"seq": seq, "at": NOW, "event": event, "subject": subject, "record": record, "previous": before}
        assert json.loads(text) == entry
        before = hashlib.sha256(json.dumps(entry, sort_keys=True, separators=(",", ":")).encode()).hexdigest()
        assert written == before


def test_a_log_as_it_was_written():
    assert found(ROWS) == found(ROWS, head=HEAD) == found(ROWS, head=ROWS[2][2]) == found([], []) == set()


@pytest.mark.parametrize("at", range(len(ROWS)))
def test_an_entry_taken_away_is_found_out(at):
    gone = [*ROWS[:at], *ROWS[at + 1 :]]
    assert "not-in-the-log" in found(gone)
    renumbered = made([*STORED[:at], *STORED[at + 1 :]])
    assert found(renumbered) == {"not-in-the-log"}
    hidden = [*STORED[:at], *STORED[at + 1 :]]  # and the store with it: only whoever kept the last hash can tell
    assert found(renumbered, hidden, HEAD) == {"head-not-found"}


@pytest.mark.parametrize("one, other", [*combinations(range(len(ROWS)), 2)])
def test_two_entries_that_change_places_are_found_out(one, other):
    rows = [*ROWS]
    rows[one], rows[other] = rows[other], rows[one]
    assert {"out-of-order", "chain-broken"} <= found(rows)
    numbered = [(number, *row[1:]) for number, row in enumerate(rows, start=1)]
    assert {"out-of-order", "chain-broken"} <= found(numbered)


@pytest.mark.parametrize("member", ["seq", "at", "event", "subject", "record", "previous"])
@pytest.mark.parametrize("at", range(len(ROWS)))
def test_an_entry_that_is_changed_is_found_out(at, member):
    seq, text, written = ROWS[at]
    entry = json.loads(text)
    entry[member] = 99 if member == "seq" else "f" * 64
    changed = json.dumps(entry, sort_keys=True, separators=(",", ":"))
    assert "entry-changed" in found([*ROWS[:at], (seq, changed, written), *ROWS[at + 1 :]])
    again = hashlib.sha256(changed.encode()).hexdigest()
    rows = [*ROWS[:at], (seq, changed, again), *ROWS[at + 1 :]]
    assert found(rows, head=HEAD) - {"entry-changed"}


@pytest.mark.parametrize("at", range(len(ROWS)))
def test_every_letter_of_an_entry_counts(at):
    seq, text, written = ROWS[at]
    for place in range(len(text)):
        changed = f"{text[:place]}{chr(ord(text[place]) ^ 1)}{text[place + 1 :]}"
        assert found([*ROWS[:at], (seq, changed, written), *ROWS[at + 1 :]])


@pytest.mark.parametrize("text", ["", "{", "[]", "null", "{}", '{"seq": 1}', "1e999", '"\\ud800"', "[" * 5000])
def test_what_is_no_entry_is_told(text):
    assert "not-an-entry" in found([(1, text, hashlib.sha256(text.encode()).hexdigest()), *ROWS[1:]])


def test_an_entry_put_in_is_found_out():
    rows = made([*STORED, ("accepted", "e" * 64, "e" * 64)])
    assert found(rows) == {"not-in-the-store"}
    assert found([*ROWS, rows[-1], rows[-1]]) >= {"out-of-order", "chain-broken"}


# the store


@pytest.fixture
def filled(tmp_path):
    path = str(tmp_path / "filled.db")
    with Store(path, LABORATORY, NOW) as store:
        take(store, *chain(3), order(2, "1" * 64, goals=[]))
        withdrawn(store, prescription_case(PRESCRIBER, EXAMPLE["id"], 3), 3, NOW)
        assert audited(store).faults == ()
        assert [json.loads(text)["event"] for _, text, _ in store.log()][:4] == ["begun", *["accepted"] * 3]
    return path


def behind(path, *statements):
    """Change the file as somebody would who knows SQLite, its triggers taken away."""
    with sqlite3.connect(path) as sql:
        for (name,) in sql.execute("SELECT name FROM sqlite_schema WHERE type = 'trigger'").fetchall():
            sql.execute(f"DROP TRIGGER {name}")
        for statement in statements:
            sql.execute(statement)
    sql.close()
    with Store(path, None, NOW) as store:
        return {fault.what for fault in audited(store).faults}


TABLES = ("begun", "document", "answer", "withdrawal", "log")
COLUMNS = {
    "begun": ("laboratory", "at"),
    "document": ("sender", "id", "revision", "replaces", "format", "at"),
    "answer": ("at", "outcome", "counts", "authentic", "sound", "own", "receipt", "signature"),
    "withdrawal": ("sender", "id", "revision", "at", "format"),
    "log": ("entry", "hash"),
}
VALUES = {"revision": "77", "counts": "1 - counts", "authentic": "1 - authentic", "sound": "1 - sound"}
VALUES |= {"receipt": "x'7b7d'", "signature": "x'00'"}


@pytest.mark.parametrize("table, column", [(table, column) for table in TABLES for column in COLUMNS[table]])
def test_whatever_is_changed_in_the_store_is_found_out(filled, table, column):
    assert behind(filled, f"UPDATE {table} SET {column} = {VALUES.get(column, repr('x'))} WHERE rowid = 1")


@pytest.mark.parametrize("table, column", [("document", "revision"), ("answer", "counts"), ("answer", "sound")])
def test_a_number_beyond_those_of_json_is_found_out_too(filled, table, column):
    """RFC 8785 knows none above 2**53."""
    assert "not-in-the-log" in behind(filled, f"UPDATE {table} SET {column} = {2**62}")


def test_a_store_that_does_not_say_whose_it_is_is_not_opened(filled):
    with pytest.raises(StoreError, match="damaged"):
        behind(filled, "DELETE FROM begun")


@pytest.mark.parametrize("table", [table for table in TABLES if table != "begun"])
def test_whatever_is_taken_out_of_the_store_is_found_out(filled, table):
    assert behind(filled, f"DELETE FROM {table} WHERE rowid = (SELECT max(rowid) FROM {table})")


def test_the_bytes_of_a_document_cannot_change_even_in_their_spelling(filled):
    statement = "UPDATE document SET data = CAST(replace(CAST(data AS TEXT), '\n', '\n ') AS BLOB) WHERE rowid = 2"
    assert behind(filled, statement) == {"not-in-the-log", "not-in-the-store"}


def test_a_store_put_back_is_found_out_by_whoever_kept_the_last_hash(tmp_path):
    path, copy = tmp_path / "now.db", tmp_path / "copy.db"
    one, two = chain(2)
    with Store(str(path), LABORATORY, NOW) as store:
        take(store, one)
    copy.write_bytes(path.read_bytes())
    with Store(str(path), None, NOW) as store:
        take(store, two)
        head = audited(store).head
        assert audited(store, head).faults == ()
    with Store(str(copy), None, NOW) as store:
        assert [fault.what for fault in audited(store, head).faults] == ["head-not-found"]
        assert audited(store, START).faults == ()


@pytest.mark.parametrize("table", TABLES)
def test_nothing_can_be_changed_or_taken_out_by_accident(filled, table):
    for statement in (f"UPDATE {table} SET rowid = rowid + 1", f"DELETE FROM {table}"):
        with sqlite3.connect(filled) as sql, pytest.raises(sqlite3.IntegrityError, match="only added to"):
            sql.execute(statement)
        sql.close()
