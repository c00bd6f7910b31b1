"""What the intake of a laboratory says: no name of a file, no text of a document; so it may be kept as a log."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from textwrap import wrap
from typing import Any

from wellposed.exchange.answering import ACCEPTED
from wellposed.exchange.arrival import Received
from wellposed.exchange.audit import Audit
from wellposed.exchange.intake import NotTaken, Taking
from wellposed.exchange.kept import Answer, Case
from wellposed.exchange.log import Fault
from wellposed.exchange.receipts import told_in
from wellposed.exchange.standing import Standing, Taken
from wellposed.findings import CAUTION, Finding, Severity

__all__ = ["audit_text", "closing", "not_taken_text", "standing_text", "taking_text", "withdrawal_text"]

SCOPE = (
    "Accepted means: stored, and nothing in it must be answered first. Whether it is to be made is for people to say."
)
_SHORT = 12
_STANDS = {
    Standing.CURRENT: "current",
    Standing.RETURNED: "something in it must be answered first",
    Standing.HELD: "held, because the revision it follows is not there",
    Standing.IN_CONFLICT: "in conflict: another document has its id and revision, and neither holds",
    Standing.WITHDRAWN: "withdrawn",
    Standing.OVERTAKEN: "overtaken by a later revision",
    Standing.SET_ASIDE: "set aside: it is not shown to come from its sender, or is not for this laboratory",
}
_FAULTS = {
    "not-an-entry": "is not an entry of a log",
    "out-of-order": "does not stand in its place",
    "entry-changed": "has been changed",
    "chain-broken": "does not follow the entry before it",
    "not-in-the-log": "is stored, and not in the log as it is stored",
    "not-in-the-store": "is in the log, and not stored as it was",
    "document-changed": "is not the document it was",
    "head-not-found": "The hash given is that of no entry: the store is older than it was, or another one.",
}


def taking_text(told: Taking) -> str:
    """A line on a document that is stored, and one on each that is answered anew because of it."""
    before = "again, " if told.again else ""
    lines = [
        f"{told.answer.outcome}  {before}{_named(told.kept.received)}: {_STANDS[told.standing]}{_why(told.answer)}."
    ]
    lines += [f"{one.outcome}  answered anew, {one.sha256[:_SHORT]}{_why(one)}." for one in told.changed]
    return "".join(f"{line}\n" for line in lines)


def _named(one: Received) -> str:
    return f"{_kind(one.format)} {one.id}, revision {one.revision} ({one.digest[:_SHORT]})"


def _kind(kind: str) -> str:
    return kind.removeprefix("wellposed/")


def _why(answer: Answer) -> str:
    rules = [one["rule"] for one in told_in(answer.receipt) if one["severity"] in ("stop", "ask")]
    return f"; {', '.join(dict.fromkeys(rules))}" if answer.outcome != ACCEPTED and rules else ""


def not_taken_text(told: NotTaken, number: int, digest: str) -> str:
    """A line on a file that holds nothing a laboratory takes in.

    number  which of the files, in the order of their names
    digest  SHA-256 of its bytes
    """
    where = f"not taken in  file {number} (SHA-256 of its bytes {digest[:_SHORT]})"
    if told.kind is not None:
        return f"{where}: a {_kind(told.kind)} goes from a laboratory to a clinic.\n"
    return f"{where}: {', '.join(_rules(told.findings))}; check tells more.\n"


def _rules(findings: Sequence[Finding]) -> list[str]:
    return list(dict.fromkeys(one.rule for one in findings if one.severity == Severity.STOP))


def closing(width: int) -> str:
    """How all of it ends."""
    return "\n" + "".join(f"{line}\n" for text in (SCOPE, CAUTION) for line in wrap(text, width))


def withdrawal_text(case: Case, revision: int, changed: Iterable[Answer]) -> str:
    """What was written down, and what is answered anew because of it."""
    lines = [f"withdrawn  {_kind(case.format)} {case.id}, revision {revision}."]
    lines += [f"{one.outcome}  answered anew, {one.sha256[:_SHORT]}{_why(one)}." for one in changed]
    return "".join(f"{line}\n" for line in lines)


def standing_text(cases: Iterable[tuple[Case, Sequence[Taken], Mapping[str, Standing], Iterable[int]]]) -> str:
    """Every case: its documents and how they stand, and the revisions withdrawn before they came."""
    lines: list[str] = []
    for case, taken, stands, withdrawn in cases:
        lines.append(f"{_kind(case.format)} {case.id}")
        lines += [_standing(one.received, stands) for one in taken]
        absent = sorted({*withdrawn} - {one.received.revision for one in taken})
        lines += [f"  revision {revision}: withdrawn, and not received" for revision in absent]
    return "".join(f"{line}\n" for line in lines) or "Nothing has been taken in.\n"


def _standing(one: Received, stands: Mapping[str, Standing]) -> str:
    return f"  revision {one.revision} ({one.digest[:_SHORT]}): {_STANDS[stands[one.digest]]}"


def audit_text(audit: Audit) -> str:
    """What was found in the store and its log, a line each; and the hash to keep elsewhere."""
    lines = [_fault(one) for one in audit.faults]
    state = "as it was written" if not lines else "not as it was written"
    return "".join(f"{line}\n" for line in [*lines, f"{audit.entries} entries, {state}.", f"Last hash: {audit.head}"])


def _fault(fault: Fault) -> str:
    if fault.what == "head-not-found":
        return _FAULTS[fault.what]
    what: Any = f"Entry {fault.seq}" if fault.seq is not None else f"What {fault.subject[:_SHORT]} names"
    return f"{what} {_FAULTS[fault.what]}."
