"""A document signed."""

from __future__ import annotations

from wellposed.digests import canonical
from wellposed.exchange import jws
from wellposed.model.envelope import Envelope
from wellposed.model.keys import PrivateKey

__all__ = ["signed"]


def signed(document: Envelope, key: PrivateKey) -> str:
    """The detached signature of a key over a document's canonical bytes, without a line break behind it."""
    return jws.signed(canonical(document.model_dump(exclude_unset=True, mode="json")), key)
