"""What a store holds, as plain data, and the digest by which the log vouches for each of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import astuple, dataclass
from hashlib import sha256

from wellposed.digests import digest_of
from wellposed.exchange.arrival import Received

__all__ = ["Answer", "Case", "Kept", "Withdrawal", "holding", "record_of"]


def record_of(row: tuple[str | int | bool | bytes | None, ...]) -> str:
    """The digest of what was stored: of a list of its values, bytes by their own SHA-256."""
    return digest_of([sha256(one).hexdigest() if isinstance(one, bytes) else one for one in row])


@dataclass(frozen=True, slots=True)
class Case:
    """The revisions of one document: its kind, who sends it (None where nobody is named), its id."""

    format: str
    sender: str | None
    id: str

    @property
    def digest(self) -> str:
        """By which the log names it."""
        return digest_of([self.format, self.sender, self.id])


@dataclass(frozen=True, slots=True)
class Kept:
    """A document as it is kept: its identity, its bytes as they came first, and when (RFC 3339)."""

    received: Received
    data: bytes
    at: str

    @property
    def case(self) -> Case:
        """The revisions it is one of."""
        return Case(self.received.format, self.received.sender, self.received.id)

    @property
    def row(self) -> tuple[str | int | bytes | None, ...]:
        """Its values in the order of its table."""
        one = self.received
        return one.digest, one.format, one.sender, one.id, one.revision, one.replaces, self.data, self.at


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer to a document: the receipt, and what it was given on. Members in the order of the table.

    sha256     digest of the document
    number     which answer to it, from 1: the revision of the receipt
    at         when it was given, RFC 3339
    outcome    ``accepted`` or ``returned``
    counts     whether the document comes from its sender, as far as is asked for, and is for this laboratory
    authentic  whether a signature shows it
    sound      whether nothing in it, looked at by itself, must be answered first
    own        what was found in it by itself, as canonical JSON
    receipt    the bytes of the receipt
    signature  the signature that came with it
    """

    sha256: str
    number: int
    at: str
    outcome: str
    counts: bool
    authentic: bool
    sound: bool
    own: str
    receipt: bytes
    signature: bytes | None = None

    @property
    def row(self) -> tuple[str | int | bytes | None, ...]:
        """Its values in the order of its table; truth values as 0 and 1."""
        return tuple(int(one) if isinstance(one, bool) else one for one in astuple(self))


def holding(answers: Sequence[Answer]) -> Answer:
    """The answer that holds: given on the best knowledge of where the document comes from; of those the newest."""
    return max(answers, key=lambda one: (one.counts, one.authentic, one.number))


@dataclass(frozen=True, slots=True)
class Withdrawal:
    """A revision that its sender has withdrawn, received or not, and when that was written down (RFC 3339)."""

    case: Case
    revision: int
    at: str

    @property
    def row(self) -> tuple[str | int | bytes | None, ...]:
        """Its values in the order of its table."""
        return self.case.format, self.case.sender, self.case.id, self.revision, self.at
