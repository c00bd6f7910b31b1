"""The document as a whole: its revision, its dates, its extensions."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from wellposed.consistency.whole import Written
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.envelope import NOTE_EXTENSION

_RESERVED = "wellposed."
_VERSION = "1.0"
_DATED = ("findings", "process", "records")
_DAY = slice(10)


@rule(
    "revision-chain",
    Severity.STOP,
    title="The revision and what it replaces do not agree.",
    do="Revision 1 replaces nothing; every later one names the digest of the one before.",
)
def revision_chain(whole: Written) -> Iterator[Told]:
    """Revision 1 has no `replaces`; every later revision has one.

    The chain shows which order is the last, and that none was lost on the way.

    Passes: {"revision": 1}
    Fails: {"revision": 2}
    """
    document = whole.document
    if document.revision > 1 and document.replaces is None:
        yield told("/revision", name="replaces", revision=document.revision, expected="replaces")
    if document.revision == 1 and document.replaces is not None:
        yield told("/replaces", name="replaces", revision=1, expected="no replaces")


@rule(
    "no-such-date",
    Severity.STOP,
    title="The calendar has no such day.",
    do="Correct the date.",
)
def no_such_date(whole: Written) -> Iterator[Told]:
    """Every date is a day of the calendar.

    A day that is none, such as the 29th of February in most years, may have been meant as the day before or after.

    Passes: {"laboratory": {"id": "lab-4", "needed_by": "2028-02-29"}}
    Fails: {"laboratory": {"id": "lab-4", "needed_by": "2026-02-29"}}
    """
    for pointer, owner, day in _dates(whole):
        if not _exists(day):
            yield told(pointer, owner, expected="a day of the calendar")


def _dates(whole: Written) -> Iterator[tuple[str, str, str]]:
    """Every date stated, where it stands, and the id of the clause it belongs to."""
    document = whole.document
    yield "/issued", "", document.issued[_DAY]
    received = getattr(document, "received", None)
    if received is not None:
        yield "/received", "", received[_DAY]
    laboratory = getattr(document, "laboratory", None)
    if laboratory is not None and laboratory.needed_by is not None:
        yield "/laboratory/needed_by", "", laboratory.needed_by
    for section in _DATED:
        for number, part in enumerate(getattr(document, section, None) or ()):
            if getattr(part, "date", None) is not None:
                yield f"/{section}/{number}/date", getattr(part, "id", ""), part.date


def _exists(day: str) -> bool:
    try:
        date.fromisoformat(day)
    except ValueError:
        return False
    return True


@rule(
    "unknown-critical-extension",
    Severity.STOP,
    title="A critical extension is not known here.",
    do="Send it to somebody who knows the extension, or say the same in the format's own words.",
)
def unknown_critical_extension(whole: Written) -> Iterator[Told]:
    """No extension is marked critical: version 1.0 knows none.

    Critical means that the order must not be read without it.

    Passes: {"extensions": {"org.example.case": {"critical": false, "content": 1}}}
    Fails: {"extensions": {"org.example.case": {"critical": true, "content": 1}}}
    """
    for key, extension in (whole.document.extensions or {}).items():
        if extension.critical and not _misnamed(whole, key):
            yield told(f"/extensions/{key}", name=key)


@rule(
    "reserved-extension",
    Severity.STOP,
    title="An extension uses a name that is reserved for the format.",
    do="Name the extension after a domain of your own.",
)
def reserved_extension(whole: Written) -> Iterator[Told]:
    """No extension's name in a document of version 1.0 begins with `wellposed.`.

    Later versions of the format give such names a meaning; in a document of one they are like any other extension.

    Passes: {"extensions": {"org.example.case": {"critical": false, "content": 1}}}
    Fails: {"extensions": {"wellposed.case": {"critical": false, "content": 1}}}
    """
    for key in whole.document.extensions or {}:
        if _misnamed(whole, key):
            yield told(f"/extensions/{key}", name=key, expected="a domain of your own")


@rule(
    "extension-kept",
    Severity.NOTE,
    title="An extension is kept as it is, and not read.",
    do="Nothing, if nothing in it bears on the order.",
)
def extension_kept(whole: Written) -> Iterator[Told]:
    """Names every extension that is not critical: it is carried along untouched, and no check looks inside.

    Of `org.wellposed.note`, which says where in a note each clause stands, nothing is said: it orders nothing.

    Whoever reads the order should know that there is more in it than was checked.

    Passes: {"extensions": {}}
    Fails: {"extensions": {"org.example.case": {"critical": false, "content": 1}}}
    """
    for key, extension in (whole.document.extensions or {}).items():
        if not extension.critical and key != NOTE_EXTENSION and not _misnamed(whole, key):
            yield told(f"/extensions/{key}", name=key)


def _misnamed(whole: Written, key: str) -> bool:
    """A name kept for later versions, in a document of this one."""
    return key.startswith(_RESERVED) and whole.document.version == _VERSION


RULES = (
    *(revision_chain, no_such_date),
    *(unknown_critical_extension, reserved_extension, extension_kept),
)
