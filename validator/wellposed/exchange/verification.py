"""What a receiver may say of a document and the signature beside it, checked in the order the specification gives."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from wellposed.declare import Rule
from wellposed.exchange import order, sender
from wellposed.exchange import signature as signatures
from wellposed.exchange.arrival import Arrival, Received
from wellposed.exchange.trust import Trust
from wellposed.findings import Finding, Severity, ordered
from wellposed.model.envelope import Envelope
from wellposed.model.moments import time_of
from wellposed.reading import Document, read_document

__all__ = ["RULES", "Received", "Trust", "Verification", "verified"]

RULES: tuple[Rule[Arrival], ...] = (*signatures.RULES, *sender.RULES, *order.RULES)
"""Every rule about what arrives, in the order they look."""
_MEANING = ("/format", "/version")
"""Of another format or version nobody here can say what its signature means."""


@dataclass(frozen=True, slots=True)
class Verification:
    """What is known of a document that arrived.

    document  its model; None where its text or structure is at fault
    digest    SHA-256 of its canonical bytes; None where it could not be read
    signer    who signed it: the sender it names, once signature, key, owner and addressee are right; else None
    key       thumbprint of the trusted key that its signature fits; None where it fits none
    findings  everything found, heaviest first; what stands in the content itself is for ``wellposed.check``

    A good signature says who and unchanged. It does not say that the content is clinically sound, and it is not a
    qualified signature under local law.
    """

    document: Envelope | None = field(repr=False)
    digest: str | None
    signer: str | None = field(repr=False)
    key: str | None
    findings: tuple[Finding, ...]

    @property
    def authentic(self) -> bool:
        """Whether it comes unchanged from the sender it names, and is for this receiver."""
        return self.signer is not None

    @property
    def accepted(self) -> bool:
        """Whether it is authentic and nothing stops it or must be answered first."""
        return self.authentic and not any(one.severity in (Severity.STOP, Severity.ASK) for one in self.findings)


def verified(
    data: bytes, signature: bytes | None, trust: Trust, now: str, earlier: Sequence[Received] = ()
) -> Verification:
    """What a receiver may say of a document and its signature.

    data       the document's bytes, UTF-8 JSON
    signature  the detached signature, a compact JWS with its payload left out; None where none came
    trust      the keys the receiver trusts, and under which ids documents are addressed to the receiver
    now        RFC 3339 date-time at which it was received, by the receiver's own clock
    earlier    what arrived before, as far as it is kept

    Never raises for what is in the document or signature. ValueError where ``now`` is no date-time.
    """
    at = time_of(now)
    if at is None:
        raise ValueError("now is not an RFC 3339 date-time")
    read = read_document(data)
    if not isinstance(read, Document):
        return Verification(None, None, None, None, ordered(read))
    return _judged(Arrival(read, signature, trust, at, earlier))


def _judged(arrival: Arrival) -> Verification:
    """The checks in their order, each group only where the one before it lets it pass."""
    structure = () if isinstance(arrival.made, Envelope) else arrival.made
    if other := [one for one in structure if one.pointer in _MEANING]:
        return _told(arrival, other)
    found = _until_stopped(arrival, signatures.RULES)
    if _stops(found):
        return _told(arrival, found)
    key = arrival.key.kid if arrival.key is not None else None
    if structure:
        return _told(arrival, [*found, *structure], key)
    sent = _until_stopped(arrival, sender.RULES)
    if _stops(sent):
        return _told(arrival, [*found, *sent], key)
    placed = [one for rule in order.RULES for one in rule.findings(arrival)]
    return _told(arrival, [*found, *sent, *placed], key, arrival.sender if key is not None else None)


def _told(
    arrival: Arrival, found: Sequence[Finding], key: str | None = None, signer: str | None = None
) -> Verification:
    made = arrival.made if isinstance(arrival.made, Envelope) else None
    placed = (arrival.read.placed([one])[0] if one.pointer else one for one in found)
    return Verification(made, arrival.digest, signer, key, ordered(placed))


def _until_stopped(arrival: Arrival, rules: Sequence[Rule[Arrival]]) -> list[Finding]:
    """What the rules find, up to the first that stops: what it doubts, the next ones would rest on."""
    told: list[Finding] = []
    for rule in rules:
        told += rule.findings(arrival)
        if _stops(told):
            break
    return told


def _stops(told: Sequence[Finding]) -> bool:
    return any(one.severity == Severity.STOP for one in told)
