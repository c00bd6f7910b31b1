"""The digest by which one document of the conversation names another."""

from __future__ import annotations

from hashlib import sha256

import rfc8785

from wellposed.model.envelope import Envelope


def digest(document: Envelope) -> str:
    """SHA-256, 64 lower-case hexadecimal digits, of the document in its canonical form (RFC 8785).

    The form is that of the document as it was sent: members left out stay out.
    """
    return sha256(rfc8785.dumps(document.model_dump(exclude_unset=True, mode="json"))).hexdigest()
