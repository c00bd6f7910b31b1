"""The digest by which one document of the conversation names another."""

from __future__ import annotations

from hashlib import sha256
from typing import Any

import rfc8785

from wellposed.model.envelope import Envelope


def canonical(content: Any) -> bytes:
    """The canonical bytes (RFC 8785) of JSON content, strictly read: these are what is digested and signed."""
    return rfc8785.dumps(content)


def digest_of(content: Any) -> str:
    """SHA-256, 64 lower-case hexadecimal digits, of the canonical bytes of JSON content."""
    return sha256(canonical(content)).hexdigest()


def digest(document: Envelope) -> str:
    """SHA-256, 64 lower-case hexadecimal digits, of the document in its canonical form (RFC 8785).

    The form is that of the document as it was sent: members left out stay out.
    """
    return digest_of(document.model_dump(exclude_unset=True, mode="json"))
