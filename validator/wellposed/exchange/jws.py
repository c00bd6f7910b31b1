"""A detached signature as text: compact JWS (RFC 7515) with its payload left out (Appendix F)."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from wellposed.digests import canonical
from wellposed.exchange import keys
from wellposed.exchange.base64url import bytes_of, text_of
from wellposed.model.keys import PrivateKey, PublicKey
from wellposed.reading import Document, read_document

__all__ = ["ALGORITHM", "MEMBERS", "MOST_BYTES", "TYPE", "Parts", "fits", "parts_fit", "signed", "taken_apart"]

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


def signed(payload: bytes, key: PrivateKey, kind: str = TYPE) -> str:
    """The detached signature of a key over some bytes."""
    header = {"alg": ALGORITHM, "kid": keys.thumbprint(key.x), "typ": kind}
    protected = text_of(canonical(header))
    return f"{protected}..{text_of(keys.signature(key, _message(protected, payload)))}"


def fits(text: bytes, payload: bytes, key: PublicKey, kind: str = TYPE) -> bool:
    """Whether a detached signature is that of this key, of this kind, over these bytes."""
    parts = taken_apart(text)
    expected = {"alg": ALGORITHM, "kid": keys.thumbprint(key.x), "typ": kind}
    return parts is not None and parts.header == expected and parts_fit(parts, payload, key)


def parts_fit(parts: Parts, payload: bytes, key: PublicKey) -> bool:
    """Whether the 64 bytes of a signature are those of this key over header and payload."""
    return keys.checked(key, _message(parts.protected, payload), parts.signature)


def _message(protected: str, payload: bytes) -> bytes:
    """What the algorithm is given (RFC 7515 section 5.1)."""
    return f"{protected}.{text_of(payload)}".encode()


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
