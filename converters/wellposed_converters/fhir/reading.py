"""A bundle back to the document it is of."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from wellposed.check import sound_document
from wellposed.digests import canonical, digest, digest_of
from wellposed.findings import Finding, Severity, ordered
from wellposed.formats import Carried, Loss
from wellposed.model.envelope import Envelope
from wellposed.reading import Document
from wellposed.report import Report
from wellposed_converters.fhir.comparing import compared
from wellposed_converters.fhir.cursor import Cursor
from wellposed_converters.fhir.entries import Entries
from wellposed_converters.fhir.faults import Told
from wellposed_converters.fhir.opening import opened
from wellposed_converters.fhir.original import attached
from wellposed_converters.fhir.rebuilt import Rebuilt

LEFT_OUT, NOT_THERE, NO_ORIGINAL = "left-out", "not-there", "no-original"


def read(data: bytes) -> tuple[Carried, ...]:
    """The one document of a bundle. Never raises for what is in the bytes."""
    found = opened(data)
    if not isinstance(found, Document):
        return (Carried(None, ordered(found)),)
    carried = _carried(found.value)
    said = (_at_its_bytes(one, found) for one in carried.findings)
    return (replace(carried, findings=ordered(found.placed(said))),)


def _at_its_bytes(one: Finding, bundle: Document) -> Finding:
    """A finding inside the document attached stands, as to line and column, where its bytes do."""
    return one.at(*bundle.place(one.facts["within"])) if "within" in one.facts else one


def _carried(value: Any) -> Carried:
    told = Told()
    root = Cursor(value, "", told)
    entries = Entries(root)
    originals = entries.originals()
    for more in originals[1:]:
        told.tell("bundle-original-twice", more.pointer, first=originals[0].pointer)
    if told.findings:
        return Carried(None, tuple(told.findings))
    document = _original(originals[0], told) if originals else None
    if document is not None:
        return _with(document, root, entries, ())
    return _from_projection(root, entries, told, bool(originals))


def _original(at: Cursor, told: Told) -> Envelope | None:
    """The document attached, if it is sound and has the digest stated beside it."""
    data, place = attached(at.value), f"{at.pointer}/content/0/attachment/data"
    if data is None:
        told.tell("bundle-original-unreadable", place)
        return None
    made = sound_document(data)
    if isinstance(made, Report):
        told.findings.extend(_inside(made, place))
        return None
    if digest(made) != at.value["masterIdentifier"].get("value"):
        told.tell("bundle-original-altered", f"{at.pointer}/masterIdentifier/value")
        return None
    return made


def _inside(report: Report, place: str) -> Iterator[Finding]:
    """The findings of the document attached, with pointers into it; the bundle's own place is that of its bytes."""
    for one in report.findings:
        facts = {name: value for name, value in one.facts.items() if name not in ("first_line", "first_column")}
        yield replace(one, facts={**facts, "within": place}, line=None, column=None)


def _with(document: Envelope, root: Cursor, entries: Entries, found: tuple[Finding, ...]) -> Carried:
    """A document, and where the bundle around it says otherwise; none where that is too much to tell all of it."""
    asked, not_read = compared(document, root.value, entries)
    stopped = any(one.severity == Severity.STOP for one in asked)
    return Carried(None if stopped else document, (*found, *asked), not_read)


def _from_projection(root: Cursor, entries: Entries, told: Told, altered: bool) -> Carried:
    """A document from the projection alone: only one whose digest is the one stated."""
    about_original = tuple(told.findings)
    orders = entries.of("ServiceRequest")
    if len(orders) != 1:
        told.tell("bundle-without-order", f"{root.pointer}/entry")
        return Carried(None, tuple(told.findings), (Loss("", NO_ORIGINAL),))
    rebuilt = Rebuilt(orders[0], entries)
    told.findings.extend(_unsound(rebuilt, told))
    _proven(rebuilt, orders[0], told)
    made = sound_document(canonical(rebuilt.content))
    if len(told.findings) > len(about_original) or not isinstance(made, Envelope):
        return Carried(None, tuple(told.findings), tuple(_losses(rebuilt, told)))
    asked = tuple(replace(one, severity=Severity.ASK) for one in about_original)
    if not altered:
        told.tell("bundle-without-original", f"{root.pointer}/entry")
    return _with(made, root, entries, asked or tuple(told.findings))


def _proven(rebuilt: Rebuilt, order: Cursor, told: Told) -> None:
    """Only the digest tells that nothing has been lost."""
    if rebuilt.digest is None:
        told.tell("bundle-without-digest", f"{order.pointer}/identifier")
    elif rebuilt.left_out or digest_of(rebuilt.content) != rebuilt.digest:
        told.tell("bundle-not-whole", order.pointer)


def _unsound(rebuilt: Rebuilt, told: Told) -> Iterator[Finding]:
    made = sound_document(canonical(rebuilt.content))
    for one in made.findings if isinstance(made, Report) else ():
        above = one.pointer.rpartition("/")[0] if one.rule == "missing-member" else one.pointer
        yield replace(
            one, pointer=told.place(above), facts={**one.facts, "member": one.pointer}, line=None, column=None
        )


def _losses(rebuilt: Rebuilt, told: Told) -> Iterator[Loss]:
    """What is known to be missing, by its place in the document."""
    yield Loss("", NO_ORIGINAL)
    yield from (Loss(pointer, LEFT_OUT) for pointer in rebuilt.left_out)
    missing = (one for one in told.findings if one.rule == "missing-member" and "member" in one.facts)
    yield from (Loss(str(one.facts["member"]), NOT_THERE) for one in missing)
