"""A detached signature as text: compact JWS (RFC 7515) with its payload left out (Appendix F)."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from wellposed.digests import canonical
from wellposed.exchange.base64url import bytes_of, text_of
from wellposed.reading import Document, read_document

__all__ = ["ALGORITHM", "MEMBERS", "MOST_BYTES", "TYPE", "Parts", "header_of", "joined", "signing_input", "taken_apart"]

ALGORITHM = "Ed25519"
"""RFC 9864. No other is used, so that there is none to fall back to."""
TYPE = "wellposed-signature"
"""Short for the media type application/wellposed-signature (RFC 7515 section 4.1.9)."""
MEMBERS = ("alg", "kid", "typ")
"""All that a header holds, and nothing beside."""
MOST_BYTES = 1000
"""Of a signature as text; one of ours has about 230."""
_SIGNATURE_BYTES = 64
_POINTS = 2


@dataclass(frozen=True, slots=True)
class Parts:
    """A signature taken apart: its header, the text that was signed as header, and the 64 bytes."""

    header: dict[str, Any]
    protected: str
    signature: bytes


def header_of(kid: str, kind: str = TYPE) -> str:
    """The header for a key, as the text that is signed."""
    return text_of(canonical({"alg": ALGORITHM, "kid": kid, "typ": kind}))


def signing_input(protected: str, payload: bytes) -> bytes:
    """What the algorithm is given (RFC 7515 section 5.1)."""
    return f"{protected}.{text_of(payload)}".encode()


def joined(protected: str, signature: bytes) -> str:
    """Header and signature as one text, the payload between them left out."""
    return f"{protected}..{text_of(signature)}"


def taken_apart(text: bytes) -> Parts | None:
    """The parts of a detached signature; None where it is not one, to the last letter."""
    if len(text) > MOST_BYTES or not text.isascii() or text.count(b".") != _POINTS:
        return None
    protected, payload, signature = text.decode().split(".")
    header, raw = bytes_of(protected), bytes_of(signature)
    if payload or header is None or raw is None or len(raw) != _SIGNATURE_BYTES:
        return None
    read = read_document(header)
    return Parts(read.value, protected, raw) if isinstance(read, Document) else None
