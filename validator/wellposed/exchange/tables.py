"""The tables of a store. To none of them can anything be done but add."""

from __future__ import annotations

__all__ = ["APPLICATION", "TABLES", "VERSION"]

APPLICATION = 0x57504C31
"""Marks a file as a store of this program."""
VERSION = 1

_BEGUN = "CREATE TABLE begun (laboratory TEXT NOT NULL, at TEXT NOT NULL) STRICT"
_DOCUMENT = """CREATE TABLE document (
    sha256 TEXT NOT NULL PRIMARY KEY, format TEXT NOT NULL, sender TEXT, id TEXT NOT NULL, revision INTEGER NOT NULL,
    replaces TEXT, data BLOB NOT NULL, at TEXT NOT NULL) STRICT"""
_BY_CASE = "CREATE INDEX by_case ON document (id, format, revision)"
_ANSWER = """CREATE TABLE answer (
    sha256 TEXT NOT NULL REFERENCES document (sha256), number INTEGER NOT NULL, at TEXT NOT NULL,
    outcome TEXT NOT NULL, counts INTEGER NOT NULL, authentic INTEGER NOT NULL, sound INTEGER NOT NULL,
    own TEXT NOT NULL, receipt BLOB NOT NULL, signature BLOB, PRIMARY KEY (sha256, number)) STRICT"""
_WITHDRAWAL = """CREATE TABLE withdrawal (
    format TEXT NOT NULL, sender TEXT NOT NULL, id TEXT NOT NULL, revision INTEGER NOT NULL, at TEXT NOT NULL,
    PRIMARY KEY (format, sender, id, revision)) STRICT"""
_LOG = "CREATE TABLE log (seq INTEGER NOT NULL PRIMARY KEY, entry TEXT NOT NULL, hash TEXT NOT NULL) STRICT"


def _kept(table: str, change: str) -> str:
    """Stops accidents; whoever means to change the file can take it away, and is found out by the log."""
    return f"CREATE TRIGGER {table}_{change} BEFORE {change} ON {table} BEGIN SELECT RAISE(ABORT, 'only added to'); END"


TABLES = (
    *(_BEGUN, _DOCUMENT, _BY_CASE, _ANSWER, _WITHDRAWAL, _LOG),
    *(
        _kept(table, change)
        for table in ("begun", "document", "answer", "withdrawal", "log")
        for change in ("UPDATE", "DELETE")
    ),
    f"PRAGMA application_id = {APPLICATION}",
    f"PRAGMA user_version = {VERSION}",
)
"""What begins a store."""
