"""What arrived, looked up: the document, the signature beside it, and what its receiver knows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from wellposed.digests import canonical, digest, digest_of
from wellposed.exchange.jws import Parts, taken_apart
from wellposed.exchange.trust import Trust, key_of
from wellposed.findings import Finding
from wellposed.model.envelope import Envelope
from wellposed.model.keys import TrustedKey
from wellposed.model.moments import Time, time_of
from wellposed.reading import Document, structured

SENDERS = {
    "wellposed/prescription": "prescriber",
    "wellposed/setup": "laboratory",
    "wellposed/receipt": "laboratory",
    "wellposed/review": "reviewer",
}
"""The member that names who sends a document of each kind."""
ADDRESSEES = {"wellposed/prescription": "laboratory"}
"""The member that names whom it is for. The other kinds name the one document they answer, by its digest."""


@dataclass(frozen=True, slots=True)
class Received:
    """A document that arrived before, as its receiver keeps it.

    format    its ``format`` member
    sender    who is named as its sender; None where nobody is
    digest    of its canonical bytes
    replaces  the digest it names as that of the revision before
    """

    format: str
    sender: str | None
    id: str
    revision: int
    digest: str
    replaces: str | None = None


def received(document: Envelope) -> Received:
    """How a sound document is kept, so that later ones can be held against it."""
    kind = str(vars(document)["format"])
    named = getattr(document, SENDERS[kind], None)
    sender = named.id if named is not None else None
    return Received(kind, sender, document.id, document.revision, digest(document), document.replaces)


@dataclass(frozen=True)
class Arrival:
    """One document as it arrived.

    read       the strictly parsed document
    signature  the detached signature; None where none came with it
    trust      the keys its receiver trusts
    now        when it was received, an RFC 3339 date-time
    earlier    what arrived before
    """

    read: Document = field(repr=False)
    signature: bytes | None = field(repr=False)
    trust: Trust
    now: Time
    earlier: Sequence[Received] = ()

    @cached_property
    def made(self) -> Envelope | tuple[Finding, ...]:
        """The document as its model, or what is wrong with its structure."""
        return structured(self.read)

    @cached_property
    def signed(self) -> bytes:
        """The bytes a signature is over, made here from what was parsed, whatever the sender made them from."""
        return canonical(self.read.value)

    @cached_property
    def digest(self) -> str:
        """SHA-256 of these bytes."""
        return digest_of(self.read.value)

    @cached_property
    def parts(self) -> Parts | None:
        """The signature taken apart; None where it does not have the form of one."""
        return taken_apart(self.signature) if self.signature is not None else None

    @property
    def header(self) -> dict[str, Any]:
        """The header of the signature; empty where there is none."""
        return self.parts.header if self.parts else {}

    @cached_property
    def key(self) -> TrustedKey | None:
        """The key the signature names, from the receiver's own list and from nowhere else."""
        return key_of(self.trust, self.header.get("kid"))

    @property
    def kind(self) -> str:
        """Its ``format`` member."""
        return str(self.read.value.get("format"))

    @property
    def sender_at(self) -> str:
        """Where its sender is named."""
        return f"/{SENDERS[self.kind]}/id"

    @property
    def sender(self) -> str | None:
        """Who is named as its sender."""
        return _id(self.read.value.get(SENDERS[self.kind]))

    @property
    def addressee(self) -> str | None:
        """Whom it is for, where it names one."""
        return _id(self.read.value.get(ADDRESSEES.get(self.kind, "")))

    @cached_property
    def issued(self) -> Time | None:
        """When it says it was issued; None where that is no time."""
        return time_of(str(self.read.value.get("issued")))

    @cached_property
    def chain(self) -> tuple[Received, ...]:
        """What arrived before under its kind, sender and id."""
        named = (self.kind, self.sender, self.read.value["id"])
        return tuple(one for one in self.earlier if (one.format, one.sender, one.id) == named)

    @property
    def revision(self) -> int:
        """Its revision."""
        return int(self.read.value["revision"])

    @property
    def again(self) -> bool:
        """Whether the same content arrived before."""
        return any(one.digest == self.digest for one in self.chain)


def _id(part: Any) -> str | None:
    found = part.get("id") if isinstance(part, dict) else None
    return found if isinstance(found, str) else None
