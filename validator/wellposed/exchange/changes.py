"""From one key to the next: a statement both of them sign."""

from __future__ import annotations

from wellposed.digests import canonical
from wellposed.exchange import jws, keys
from wellposed.model.keys import KeyChange, PrivateKey, PublicKey, SignedKeyChange

__all__ = ["TYPE", "change_fits", "change_signed"]

TYPE = "wellposed-key-change"
"""Short for the media type application/wellposed-key-change: no such signature can stand for that of a document."""


def change_signed(old: PrivateKey, new: PrivateKey, since: str) -> SignedKeyChange:
    """The statement that from a moment on the new key takes the place of the old one. ValueError where it is none."""
    content = {
        "format": TYPE.replace("-", "/", 1),
        "version": "1.0",
        "old": keys.thumbprint(old.x),
        "new": keys.public(new).model_dump(),
        "since": since,
    }
    change = KeyChange.model_validate(content)
    signatures = (jws.signed(_bytes(change), one, TYPE) for one in (old, new))
    return SignedKeyChange(change=change, by_old=next(signatures), by_new=next(signatures))


def change_fits(signed: SignedKeyChange, old: PublicKey) -> bool:
    """Whether both keys signed this change, the new one too: nobody can put forward a key that is not theirs."""
    new, message = signed.change.new, _bytes(signed.change)
    return new.kid in (None, keys.thumbprint(new.x)) and all(
        jws.fits(text.encode(), message, key, TYPE) for text, key in ((signed.by_old, old), (signed.by_new, new))
    )


def _bytes(change: KeyChange) -> bytes:
    return canonical(change.model_dump(exclude_unset=True, mode="json"))
