"""Writers killed without warning: what was acknowledged is stored, once, whole, with its receipt.

WELLPOSED_KILLS sets how many are killed. This is the death of a program, not of the machine: what the system holds and
the disk does not have yet survives it.
"""

import os
import sqlite3
import subprocess
import sys

from tests.validator.wellposed.exchange.incoming import NOW

from wellposed.exchange.audit import audited
from wellposed.exchange.receipts import receipt_name
from wellposed.exchange.store import Store

KILLS = int(os.environ.get("WELLPOSED_KILLS", "20"))


def killed(path, folder, kills, *early):
    asked = [sys.executable, "-m", "tests.validator.wellposed.exchange.killing", path, str(folder), str(kills), *early]
    env = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    ran = subprocess.run(asked, capture_output=True, text=True, env=env, check=False)
    assert (ran.returncode, ran.stderr) == (0, "")
    return ran.stdout.split()


def stored_in(path):
    with sqlite3.connect(path) as sql:
        found = [digest for (digest,) in sql.execute("SELECT sha256 FROM document")]
    sql.close()
    return found


def test_what_was_acknowledged_is_stored_once(tmp_path):
    path, folder = str(tmp_path / "x.db"), tmp_path / "receipts"
    folder.mkdir()
    acknowledged = killed(path, folder, KILLS)
    with sqlite3.connect(path) as sql:
        assert sql.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        answers = dict(sql.execute("SELECT sha256, receipt FROM answer WHERE number = 1"))
        assert sql.execute("SELECT count(*) FROM answer").fetchone() == (len(answers),)
    sql.close()
    stored = stored_in(path)
    assert len(acknowledged) > KILLS
    assert set(acknowledged) <= set(stored)
    assert sorted(stored) == sorted(set(stored)) == sorted(answers)
    for digest in acknowledged:
        assert (folder / receipt_name(digest, 1)).read_bytes() == answers[digest]
    for file in folder.glob("*.json"):
        assert file.read_bytes() == answers[file.name.partition("-")[0]]
    with Store(path, None, NOW) as store:
        audit = audited(store)
    assert (audit.faults, audit.entries) == ((), len(stored) + 1)


def test_who_acknowledges_too_early_is_found_out(tmp_path):
    path = str(tmp_path / "x.db")
    assert not set(killed(path, tmp_path, 20, "early")) <= set(stored_in(path))
