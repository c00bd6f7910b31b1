"""A laboratory's intake: what comes in is verified, checked, stored once, and answered with a receipt.

What is answered is stored: an answer is handed out only when a commit has put it on the disk.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from wellposed.check import check
from wellposed.exchange import order
from wellposed.exchange.answering import Looked, answered, followed, newest, stands
from wellposed.exchange.arrival import SENDERS, Received
from wellposed.exchange.kept import Answer, Case, Kept, Withdrawal, holding
from wellposed.exchange.receipts import grave, listed
from wellposed.exchange.rules import Asked, signature_required
from wellposed.exchange.standing import Standing
from wellposed.exchange.store import Store
from wellposed.exchange.trust import Trust
from wellposed.exchange.verification import Verification, verified
from wellposed.findings import Finding, Severity
from wellposed.model import Prescription, Review
from wellposed.model.envelope import Answers, Envelope
from wellposed.model.people import Prescriber
from wellposed.reading import Document, read_document, structured
from wellposed.report import Report

__all__ = ["Desk", "NotTaken", "Taking", "prescription_case", "taken_in", "withdrawn"]

_ORDER = {one.id for one in order.RULES} - {order.issued_in_the_future.id}
"""What is found between documents, and so only under the lock."""


@dataclass(frozen=True, slots=True)
class Desk:
    """How a laboratory takes in.

    trust      the keys it trusts, and under which ids documents are addressed to it
    must_sign  whether only what is signed counts
    look       what looks at a document by itself
    """

    trust: Trust
    must_sign: bool = False
    look: Callable[[bytes], Report] = check


@dataclass(frozen=True, slots=True)
class NotTaken:
    """What holds no document that a laboratory takes in: neither stored nor answered, it stays with its sender.

    kind      ``format`` of a document that is not for a laboratory; None where there is no document
    findings  what is wrong with it
    readable  whether it could be read that far
    """

    kind: str | None
    findings: tuple[Finding, ...] = ()
    readable: bool = True


@dataclass(frozen=True, slots=True)
class Taking:
    """A document that is stored, and its answer.

    answer    the answer to it
    again     whether this answer had been given before
    standing  how the document stands to those of its case
    answers   the answers that hold to every document of its case, its own among them
    changed   answers given anew to others of its case, because of it
    """

    kept: Kept
    answer: Answer
    again: bool
    standing: Standing
    answers: tuple[Answer, ...]
    changed: tuple[Answer, ...] = ()


def taken_in(store: Store, desk: Desk, data: bytes, signature: bytes | None, now: str) -> Taking | NotTaken:
    """Take in one document.

    data       its bytes, UTF-8 JSON
    signature  the detached signature that came with it, if one did
    now        when it came in, RFC 3339

    Never raises for what is in the document. StoreError where it cannot be stored: then nothing of it is.
    """
    found = verified(data, signature, desk.trust, now)
    read = read_document(data)
    made = structured(read) if isinstance(read, Document) else None
    if not isinstance(made, Envelope) or found.digest is None:
        return NotTaken(None, found.findings, isinstance(read, Document))
    if not isinstance(made, Prescription | Review):
        return NotTaken(str(vars(made)["format"]))
    kept = Kept(_identity(made, found.digest), data, now)
    with store.reading():
        before = store.answers(found.digest)
        if _settled(before, signature):
            return _again(store, kept, holding(before))
    return _stored(store, kept, _looked(desk, data, found, signature), now)


def _identity(made: Prescription | Review, digest: str) -> Received:
    sender = getattr(made, SENDERS[made.format])
    return Received(made.format, sender and sender.id, made.id, made.revision, digest, made.replaces)


def _settled(answers: Sequence[Answer], signature: bytes | None) -> bool:
    """Whether nothing better can become known of where a document comes from."""
    if not answers:
        return False
    best = holding(answers)
    return best.counts and (best.authentic or signature is None)


def _looked(desk: Desk, data: bytes, found: Verification, signature: bytes | None) -> Looked:
    """The document looked at by itself; its content only where it counts."""
    asked = Asked(signature is not None, desk.must_sign, 1)
    known = [one for one in found.findings if one.rule not in _ORDER]
    known += signature_required.findings(asked)
    counts = not any(one.severity == Severity.STOP for one in known)
    report = desk.look(data) if counts else None
    own = listed([*known, *(report.findings if report else ())])
    sound = report is not None and report.fit_to_send and not grave(own)
    return Looked(own, counts, found.authentic, sound, signature)


def _stored(store: Store, kept: Kept, looked: Looked, now: str) -> Taking:
    """One transaction: the document if it is new, its answer, and the answers that it changes."""
    digest = kept.received.digest
    with store.writing():
        before = store.answers(digest)
        if _settled(before, looked.signature):  # another writer was faster
            return _again(store, kept, holding(before))
        same = next((one for one in reversed(before) if looked.same(one)), None)
        if same is not None:
            return _again(store, kept, same)
        kept = store.kept(digest) or store.keep(kept)
        given = answered(store, kept, looked, now)
        changed = followed(store, kept.case, now)
        standing = stands(store, kept.case)[digest]
        return Taking(kept, given, False, standing, newest(store, kept.case), changed)


def _again(store: Store, kept: Kept, answer: Answer) -> Taking:
    standing = stands(store, kept.case)[kept.received.digest]
    return Taking(kept, answer, True, standing, newest(store, kept.case))


def prescription_case(prescriber: str, name: str, revision: int) -> Case:
    """The case of a prescription, of which a revision is named. ValueError where one of the three cannot be."""
    Prescriber.model_validate({"id": prescriber})
    Answers.model_validate({"id": name, "revision": revision, "sha256": "0" * 64})
    return Case("wellposed/prescription", prescriber, name)


def withdrawn(store: Store, case: Case, revision: int, now: str) -> tuple[tuple[Answer, ...], tuple[Answer, ...]]:
    """Write down that its sender has withdrawn a revision, received or not; once more, it changes nothing.

    The answers that hold to every document of the case from then on, and those of them that are given anew.
    """
    changed: tuple[Answer, ...] = ()
    with store.writing():
        if revision not in store.withdrawn(case):
            store.withdraw(Withdrawal(case, revision, now))
            changed = followed(store, case, now)
        return newest(store, case), changed
