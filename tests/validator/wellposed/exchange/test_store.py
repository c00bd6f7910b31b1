"""The store when the disk, the file or another program does not do its part: refused whole, nothing acknowledged."""

import os
import resource
import signal
import sqlite3
import stat
import sys
import threading
from contextlib import contextmanager, suppress
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from tests.validator.wellposed.exchange.incoming import LABORATORY, NOW, chain, digest_of, order, take

from wellposed.exchange.audit import audited
from wellposed.exchange.receipts import written
from wellposed.exchange.store import Store, StoreError

ORDERS = [order(id=f"HR-{number}", notes=[{"text": "n" * 3000}]) for number in range(60)]


def until_refused(store, orders):
    """The digests that were acknowledged before the store refused, and why it did."""
    acknowledged = []
    for data in orders:
        try:
            acknowledged.append(take(store, data).answer.sha256)
        except StoreError as error:
            return acknowledged, str(error)
    return acknowledged, None


def stored(path):
    """Everything in the store, by another connection; SQLite's own look at the file, and ours."""
    with sqlite3.connect(path) as sql:
        assert sql.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        found = [digest for (digest,) in sql.execute("SELECT sha256 FROM document ORDER BY rowid")]
    sql.close()
    with Store(path, None, NOW) as store:
        assert audited(store).faults == ()
    return found


def test_how_safe_it_is_kept(tmp_path):
    path = str(tmp_path / "x.db")
    with Store(path, LABORATORY, NOW) as store:
        asked = [store._sql.execute(f"PRAGMA {name}").fetchone()[0] for name in ("journal_mode", "synchronous")]
        assert asked == ["delete", 3]  # sqlite.org/pragma.html: 3 is EXTRA
        assert store._sql.execute("PRAGMA foreign_keys").fetchone() == (1,)
    assert stat.S_IMODE(Path(path).stat().st_mode) == 0o600


@pytest.mark.parametrize("pages", range(24, 90, 13))
def test_a_full_disk_refuses_and_loses_nothing(in_memory, pages):
    path = str(in_memory / "x.db")
    with Store(path, LABORATORY, NOW) as store:
        store._sql.execute(f"PRAGMA max_page_count = {pages}")
        acknowledged, why = until_refused(store, ORDERS)
        assert why == "there is no room left for it"
        assert until_refused(store, ORDERS[len(acknowledged) :]) == ([], why)
        assert [take(store, data).again for data in ORDERS[: len(acknowledged)]] == [True] * len(acknowledged)
    assert stored(path) == acknowledged
    with Store(path, None, NOW) as store:  # there is room again
        assert until_refused(store, ORDERS) == ([digest_of(data) for data in ORDERS], None)
    assert len(stored(path)) == len(ORDERS)


@contextmanager
def no_file_longer_than(most):
    """A limit of the system itself; what goes beyond it fails as a full disk does."""
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    handler = signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (most, before[1]))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)
        signal.signal(signal.SIGXFSZ, handler)


@pytest.mark.parametrize("most", [100_000, 150_001, 200_123])
def test_a_write_that_fails_in_the_middle_refuses_and_loses_nothing(in_memory, most):
    path = str(in_memory / "x.db")
    with Store(path, LABORATORY, NOW) as store, no_file_longer_than(most):
        acknowledged, why = until_refused(store, ORDERS)
    assert acknowledged
    assert why in ("the disk did not take it", "there is no room left for it")
    assert stored(path) == acknowledged


def test_a_receipt_that_cannot_be_written_leaves_nothing_behind(tmp_path):
    with no_file_longer_than(100), pytest.raises(OSError, match="File too large"):
        written(tmp_path, "r.json", b"x" * 101)
    assert list(tmp_path.iterdir()) == []


def test_a_store_that_cannot_be_written_refuses():
    first, second = chain(2)
    with TemporaryDirectory() as folder:
        path = Path(folder, "x.db")
        with Store(str(path), LABORATORY, NOW) as store:
            take(store, first)
        path.chmod(0o400)
        with as_an_ordinary_user(Path(folder), path), Store(str(path), None, NOW) as store:
            assert until_refused(store, [first]) == ([digest_of(first)], None)
            assert until_refused(store, [second]) == ([], "it cannot be written")
        assert stored(str(path)) == [digest_of(first)]


@contextmanager
def as_an_ordinary_user(*owned):
    """Who may write anything (root) is for a while somebody who owns these and may not."""
    if os.geteuid() != 0:
        yield
        return
    for path in owned:
        os.chown(path, 65534, -1)
    os.seteuid(65534)
    try:
        yield
    finally:
        os.seteuid(0)


@pytest.mark.parametrize(
    "begin, why",
    [
        (lambda path: path.write_text("no database, but long enough to look like something" * 30), "not a store"),
        (lambda path: path.mkdir(), "cannot be opened"),
        (lambda path: sqlite3.connect(path).execute("CREATE TABLE x (y)").connection.close(), "not a store"),
        (lambda path: path.symlink_to(path.parent / "nowhere" / "x.db"), "cannot be written"),
    ],
    ids=["text", "a folder", "another database", "a link to nowhere"],
)
def test_what_is_no_store_is_not_made_one(tmp_path, begin, why):
    path = tmp_path / "x.db"
    begin(path)
    with pytest.raises(StoreError, match=why):
        Store(str(path), LABORATORY, NOW)


def test_a_store_is_of_one_laboratory(tmp_path):
    path = str(tmp_path / "x.db")
    with pytest.raises(StoreError, match="--laboratory"):
        Store(path, None, NOW)
    assert list(tmp_path.iterdir()) == []
    Store(path, LABORATORY, NOW).close()
    Store(path, None, NOW).close()
    with pytest.raises(StoreError, match="another laboratory"):
        Store(path, "lab-5", NOW)


def test_a_damaged_store_refuses_and_nothing_foreign_escapes(tmp_path):
    path = tmp_path / "x.db"
    with Store(str(path), LABORATORY, NOW) as store:
        take(store, *ORDERS[:20])
    sound = path.read_bytes()
    for at in range(100, len(sound), 4096):
        path.write_bytes(sound[:at] + b"\xff" * 300 + sound[at + 300 :])
        with suppress(StoreError), Store(str(path), None, NOW) as store:
            until_refused(store, ORDERS[20:22])
            audited(store)
    path.write_bytes(sound[: len(sound) // 2])
    with pytest.raises(StoreError), Store(str(path), None, NOW) as store:
        audited(store)


def test_several_begin_one_store_at_once(tmp_path):
    path, failures, gate = str(tmp_path / "x.db"), [], threading.Barrier(4)

    def begin():
        try:
            gate.wait()
            Store(path, LABORATORY, NOW).close()
        except Exception as error:
            failures.append(repr(error))

    threads = [threading.Thread(target=begin) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert failures == []
    with Store(path, None, NOW) as store:
        assert len(store.log()) == 1


def test_a_commit_that_fails_in_between_leaves_no_half(store, monkeypatch):
    data = order()
    monkeypatch.setattr("wellposed.exchange.intake.followed", lambda *_: sys.modules["no such module"])
    with pytest.raises(KeyError):
        take(store, data)
    assert (store.cases(), len(store.log()), store.kept(digest_of(data))) == ((), 1, None)
    monkeypatch.undo()
    assert take(store, data).answer.number == 1
