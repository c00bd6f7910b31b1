"""Whether a store is as it was written: the log in itself, and against everything that is kept."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from wellposed.digests import digest_of
from wellposed.exchange.kept import Case, record_of
from wellposed.exchange.log import START, Fault, faults
from wellposed.exchange.store import Store
from wellposed.reading import Document, read_document

__all__ = ["Audit", "audited"]


@dataclass(frozen=True, slots=True)
class Audit:
    """What was found: how many entries the log has, the hash of its last one, and what is not as it was written."""

    entries: int
    head: str
    faults: tuple[Fault, ...]


def audited(store: Store, head: str | None = None) -> Audit:
    """Look through the whole store.

    head  the hash of an entry that the log had before, kept elsewhere; only with it a store is found out that was put
          back to an earlier state, or written anew from end to end
    """
    with store.reading():
        rows = store.log()
        found = (*faults(rows, _stored(store), head), *_documents(store))
    return Audit(len(rows), rows[-1][2] if rows else START, found)


def _stored(store: Store) -> Iterator[tuple[str, str, str]]:
    """Event, subject and record of everything that is kept, as the log should have them."""
    for row in store.rows("begun"):
        yield "begun", digest_of(row[0]), _record(row)
    documents = {row[0]: row for row in store.rows("document")}
    for row in store.rows("answer"):
        yield str(row[3]), str(row[0]), _record((*documents.get(row[0], ()), *row))
    for row in store.rows("withdrawal"):
        yield "withdrawn", Case(*row[:3]).digest, _record(row)


def _record(row: tuple[Any, ...]) -> str:
    """The digest of what is stored; "", which no entry has, of what this program cannot have stored."""
    try:
        return record_of(row)
    except ValueError:  # a number beyond those of JSON
        return ""


def _documents(store: Store) -> Iterator[Fault]:
    """Documents without an answer, and those whose bytes are not what their digest says."""
    answered = {row[0] for row in store.rows("answer")}
    for digest, *_, data, _ in store.rows("document"):
        read = read_document(data)
        if not isinstance(read, Document) or digest_of(read.value) != digest:
            yield Fault("document-changed", None, digest)
        if digest not in answered:
            yield Fault("not-in-the-log", None, digest)
