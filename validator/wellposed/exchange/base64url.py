"""Base64url without padding (RFC 7515 section 2), each run of bytes in exactly one spelling."""

from __future__ import annotations

import re
from base64 import urlsafe_b64decode, urlsafe_b64encode

__all__ = ["bytes_of", "text_of"]

_LETTERS = re.compile("[A-Za-z0-9_-]+")


def text_of(data: bytes) -> str:
    """Bytes as base64url."""
    return urlsafe_b64encode(data).rstrip(b"=").decode()


def bytes_of(text: str) -> bytes | None:
    """The bytes of base64url; None where it is padded, broken, has other letters, or spells them in another way."""
    if not _LETTERS.fullmatch(text) or len(text) % 4 == 1:
        return None
    data = urlsafe_b64decode(text + "=" * (-len(text) % 4))
    return data if text_of(data) == text else None
