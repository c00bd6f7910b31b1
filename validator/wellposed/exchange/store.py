"""Where a laboratory keeps what came in: one SQLite file, to which things are only added.

A commit is on the disk before anything is acknowledged: rollback journal, ``synchronous=EXTRA``, one writer at a time.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from wellposed.digests import digest_of
from wellposed.exchange.arrival import Received
from wellposed.exchange.kept import Answer, Case, Kept, Withdrawal, holding, record_of
from wellposed.exchange.log import chained
from wellposed.exchange.standing import Taken
from wellposed.exchange.tables import APPLICATION, TABLES, VERSION

__all__ = ["Store", "StoreError"]

_OLDEST = (3, 37, 0)
"""The first SQLite that holds a column to its type."""
_PATIENCE = 30.0
"""Seconds a writer waits for the others."""
_PRAGMAS = ("synchronous=EXTRA", "foreign_keys=ON", "temp_store=MEMORY", "trusted_schema=OFF")
_REASONS = {
    "SQLITE_FULL": "there is no room left for it",
    "SQLITE_READONLY": "it cannot be written",
    "SQLITE_CANTOPEN": "it cannot be opened",
    "SQLITE_BUSY": "others are writing to it",
    "SQLITE_NOTADB": "it is not a store of this program",
    "SQLITE_CORRUPT": "it is damaged",
    "SQLITE_IOERR": "the disk did not take it",
}
_CASE = "(format, id) = (?, ?) AND sender IS ?"


class StoreError(Exception):
    """Why a store cannot be used, in plain words. What was acknowledged before is in it."""


class Store:
    """An open store. Everything raises StoreError where the file or the disk does not do its part."""

    def __init__(self, path: str, laboratory: str | None, at: str) -> None:
        """Open the store in a file, or begin it.

        laboratory  id of the laboratory it is of: needed to begin one, and else the same if it is given
        at          RFC 3339 date-time
        """
        if sqlite3.sqlite_version_info < _OLDEST:
            raise StoreError("it needs SQLite 3.37 or later")
        with _told():
            _there(path, laboratory)
            where = f"{Path(path).absolute().as_uri()}?mode=rw"
            self._sql = sqlite3.connect(where, _PATIENCE, isolation_level=None, uri=True)
            try:
                self._opened(laboratory, at)
            except BaseException:
                self._sql.close()
                raise

    def _opened(self, laboratory: str | None, at: str) -> None:
        for pragma in _PRAGMAS:
            self._sql.execute(f"PRAGMA {pragma}")
        if self._one("PRAGMA journal_mode=DELETE") != ("delete",):
            raise StoreError("it is kept in a way that is not safe")
        if self._marks == (0, 0):
            self._begun(laboratory, at)
        if self._marks != (APPLICATION, VERSION):
            raise StoreError("it is not a store of this program")
        begun = self._one("SELECT laboratory FROM begun")
        if begun is None:
            raise StoreError("it is damaged")
        (self.laboratory,) = begun
        if laboratory not in (None, self.laboratory):
            raise StoreError("it is that of another laboratory")

    @property
    def _marks(self) -> tuple[int, int]:
        return self._one("PRAGMA application_id")[0], self._one("PRAGMA user_version")[0]

    def _begun(self, laboratory: str | None, at: str) -> None:
        with self.writing():
            if self._marks != (0, 0):
                return  # another writer was faster
            if laboratory is None or self._one("SELECT count(*) FROM sqlite_schema") != (0,):
                raise StoreError("it is not a store of this program")
            for statement in TABLES:
                self._sql.execute(statement)
            self._add("begun", (laboratory, at))
            self._log(at, "begun", digest_of(laboratory), record_of((laboratory, at)))

    def close(self) -> None:
        """Let go of the file."""
        self._sql.close()

    def __enter__(self) -> Store:
        """The store itself, let go of at the end."""
        return self

    def __exit__(self, *_: object) -> None:
        """Let go of the file."""
        self.close()

    @contextmanager
    def writing(self) -> Iterator[None]:
        """What is done inside becomes durable together, or none of it. Nobody else writes in between."""
        with _told():
            self._sql.execute("BEGIN IMMEDIATE")
            try:
                yield
                self._sql.execute("COMMIT")
            finally:
                if self._sql.in_transaction:
                    self._sql.execute("ROLLBACK")

    @contextmanager
    def reading(self) -> Iterator[None]:
        """What is read inside is of one moment."""
        with _told():
            self._sql.execute("BEGIN")
            try:
                yield
            finally:
                if self._sql.in_transaction:
                    self._sql.execute("ROLLBACK")

    def keep(self, kept: Kept) -> Kept:
        """Add a document, and give it back; its answers vouch for it in the log."""
        self._add("document", kept.row)
        return kept

    def answer(self, answer: Answer) -> None:
        """Add an answer to a document, and write it down."""
        self._add("answer", answer.row)
        kept = self.kept(answer.sha256)
        row = kept.row if kept is not None else ()
        self._log(answer.at, answer.outcome, answer.sha256, record_of((*row, *answer.row)))

    def withdraw(self, withdrawal: Withdrawal) -> None:
        """Add a withdrawal, and write it down."""
        self._add("withdrawal", withdrawal.row)
        self._log(withdrawal.at, "withdrawn", withdrawal.case.digest, record_of(withdrawal.row))

    def _add(self, table: str, row: tuple[Any, ...]) -> None:
        self._sql.execute(f"INSERT INTO {table} VALUES ({', '.join('?' * len(row))})", row)

    def _log(self, at: str, event: str, subject: str, record: str) -> None:
        last = self._sql.execute("SELECT seq, hash FROM log ORDER BY seq DESC LIMIT 1").fetchone()
        self._add("log", chained(last, at, event, subject, record))

    def _one(self, asked: str) -> Any:
        return self._sql.execute(asked).fetchone()

    def _all(self, asked: str, values: tuple[Any, ...] = ()) -> list[Any]:
        with _told():
            return self._sql.execute(asked, values).fetchall()

    def kept(self, digest: str) -> Kept | None:
        """The document of a digest."""
        return next((_kept(row) for row in self._all("SELECT * FROM document WHERE sha256 = ?", (digest,))), None)

    def answers(self, digest: str) -> tuple[Answer, ...]:
        """The answers to a document, the oldest first."""
        rows = self._all("SELECT * FROM answer WHERE sha256 = ? ORDER BY number", (digest,))
        return tuple(_answer(row) for row in rows)

    def cases(self) -> tuple[Case, ...]:
        """Every case there is something of, in order."""
        columns = "format, sender, id"
        rows = self._all(f"SELECT {columns} FROM document UNION SELECT {columns} FROM withdrawal ORDER BY 1, 2, 3")
        return tuple(Case(*row) for row in rows)

    def documents(self, case: Case) -> tuple[Kept, ...]:
        """The documents of a case, by revision and digest."""
        asked = f"SELECT * FROM document WHERE {_CASE} ORDER BY revision, sha256"
        return tuple(_kept(row) for row in self._all(asked, (case.format, case.id, case.sender)))

    def taken(self, case: Case) -> tuple[Taken, ...]:
        """The documents of a case, as how they stand is told from them."""
        return tuple(_taken(kept.received, self.answers(kept.received.digest)) for kept in self.documents(case))

    def withdrawn(self, case: Case) -> frozenset[int]:
        """The revisions of a case that were withdrawn."""
        asked = f"SELECT revision FROM withdrawal WHERE {_CASE}"
        return frozenset(revision for (revision,) in self._all(asked, (case.format, case.id, case.sender)))

    def log(self) -> list[tuple[int, str, str]]:
        """Number, text and hash of every entry of the log, in the order of their numbers."""
        return self._all("SELECT seq, entry, hash FROM log ORDER BY seq")

    def rows(self, table: str) -> list[tuple[Any, ...]]:
        """Every row of a table, as it is stored."""
        return self._all(f"SELECT * FROM {table} ORDER BY 1, 2")


def _there(path: str, laboratory: str | None) -> None:
    """A file that is not there is made for its owner alone, where it is said whose store it is to be."""
    if Path(path).exists():
        return
    if laboratory is None:
        raise StoreError("it is not there; --laboratory says whose it is to be")
    os.close(os.open(path, os.O_CREAT | os.O_WRONLY, 0o600))


def _kept(row: tuple[Any, ...]) -> Kept:
    digest, kind, sender, name, revision, replaces, data, at = row
    return Kept(Received(kind, sender, name, revision, digest, replaces), data, at)


def _answer(row: tuple[Any, ...]) -> Answer:
    digest, number, at, outcome, counts, authentic, sound, *rest = row
    return Answer(digest, number, at, outcome, bool(counts), bool(authentic), bool(sound), *rest)


def _taken(received: Received, answers: tuple[Answer, ...]) -> Taken:
    """As the answer that holds has it; what has none, which no writer leaves behind, counts for nothing."""
    last = holding(answers) if answers else None
    return Taken(received, last is not None and last.counts, last is not None and last.sound)


@contextmanager
def _told() -> Iterator[None]:
    """A failure of the file or the disk in plain words; what the library says of it stays here."""
    try:
        yield
    except sqlite3.Error as error:
        name = getattr(error, "sqlite_errorname", "")
        known = next((words for kind, words in _REASONS.items() if name.startswith(kind)), "it cannot be used")
        raise StoreError(known) from None
    except OSError:
        raise StoreError("it cannot be written") from None
