"""An append-only log: each entry holds the hash of the one before it, so that none can be changed without a trace."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass
from hashlib import sha256
from typing import Any

from wellposed.digests import canonical

__all__ = ["START", "Entry", "Fault", "chained", "entry_text", "faults"]

START = "0" * 64
"""What the first entry names as the hash of the one before it."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing that happened, by digests alone: a log holds no name, no id and no text of a document.

    seq       1 for the first, then counting up
    at        RFC 3339 date-time
    event     ``begun``, ``accepted``, ``returned`` or ``withdrawn``
    subject   digest of what it happened to
    record    digest of what was stored of it
    previous  hash of the entry before
    """

    seq: int
    at: str
    event: str
    subject: str
    record: str
    previous: str


@dataclass(frozen=True, slots=True)
class Fault:
    """Something in the log, or between it and the store, that is not as it was written.

    what     ``not-an-entry``, ``out-of-order``, ``entry-changed``, ``chain-broken``, ``not-in-the-log``,
             ``not-in-the-store``, ``document-changed``, ``head-not-found``
    seq      which entry; None where it is about no entry
    subject  digest of what it is about, "" if not known
    """

    what: str
    seq: int | None = None
    subject: str = ""


def entry_text(entry: Entry) -> str:
    """An entry as it is stored and hashed: its canonical form (RFC 8785)."""
    return canonical(asdict(entry)).decode()


def hash_of(text: str) -> str:
    """SHA-256 of an entry's text, 64 lower-case hexadecimal digits."""
    return sha256(text.encode()).hexdigest()


def chained(last: tuple[int, str] | None, at: str, event: str, subject: str, record: str) -> tuple[int, str, str]:
    """The next entry: its number, text and hash.

    last  number and hash of the entry before it; None for the first
    """
    seq, previous = last or (0, START)
    text = entry_text(Entry(seq + 1, at, event, subject, record, previous))
    return seq + 1, text, hash_of(text)


def faults(
    rows: Sequence[tuple[int, str, str]], stored: Iterable[tuple[str, str, str]], head: str | None = None
) -> Iterator[Fault]:
    """Everything that is not as it was written.

    rows    number, text and hash of each entry, by number
    stored  event, subject and record of everything in the store
    head    a hash the log had before, kept elsewhere; without it a log cut off together with the store is not seen
    """
    entries = [_entry(text) for _, text, _ in rows]
    previous = START
    for at, ((seq, text, written), entry) in enumerate(zip(rows, entries, strict=True), start=1):
        yield from _of_row(at, seq, text, written, entry, previous)
        previous = written
    yield from _against(entries, stored)
    if head is not None and head not in {START, *(written for _, _, written in rows)}:
        yield Fault("head-not-found")


def _of_row(at: int, seq: int, text: str, written: str, entry: Entry | None, previous: str) -> Iterator[Fault]:
    if entry is None:
        yield Fault("not-an-entry", seq)
        return
    if seq != at or entry.seq != seq:
        yield Fault("out-of-order", seq, entry.subject)
    if hash_of(text) != written:
        yield Fault("entry-changed", seq, entry.subject)
    if entry.previous != previous:
        yield Fault("chain-broken", seq, entry.subject)


def _against(entries: Sequence[Entry | None], stored: Iterable[tuple[str, str, str]]) -> Iterator[Fault]:
    """What is in one of the two and not in the other; each stands once in both."""
    logged = Counter((one.event, one.subject, one.record) for one in entries if one is not None)
    kept = Counter(stored)
    yield from (Fault("not-in-the-log", None, subject) for _, subject, _ in sorted((kept - logged).elements()))
    yield from (Fault("not-in-the-store", None, subject) for _, subject, _ in sorted((logged - kept).elements()))


def _entry(text: str) -> Entry | None:
    try:
        read: Mapping[str, Any] = json.loads(text)
        entry = Entry(**read)
        return entry if _well_formed(entry) and entry_text(entry) == text else None
    except (ValueError, TypeError, RecursionError):
        return None


def _well_formed(entry: Entry) -> bool:
    texts = (entry.at, entry.event, entry.subject, entry.record, entry.previous)
    return type(entry.seq) is int and all(isinstance(one, str) for one in texts)
