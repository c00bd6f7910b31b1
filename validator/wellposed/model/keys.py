"""Keys as files: a public key, a private one, the keys somebody trusts, and the change from one key to the next.

A key is a JSON Web Key (RFC 7517) of the type for Ed25519 (RFC 8037), and the keys somebody trusts are a JWK Set.
"""

from __future__ import annotations

from typing import Annotated, Literal, TypeVar

from pydantic import Field, Strict

from wellposed.model.base import Identifier, Moment, Part, Stated, one_line

_LAST_OF_32 = "[AEIMQUYcgkosw048]"
"""32 bytes leave two bits of the last letter over; they are zero, or one key would have four spellings."""

Key32 = Annotated[
    str, one_line(f"^[A-Za-z0-9_-]{{42}}{_LAST_OF_32}$", 43, "32 bytes as 43 characters of base64url, no padding")
]
Thumbprint = Key32
"""SHA-256 of a key by RFC 7638, in base64url."""

T = TypeVar("T")
Several = Annotated[tuple[T, ...], Strict(False), Field(max_length=1000)]
Owners = Annotated[tuple[Identifier, ...], Strict(False), Field(min_length=1, max_length=50)]
Reason = Literal["compromised", "superseded", "ended"]


class PublicKey(Part):
    """A key others check signatures with. ``kid``, if it is there, is the key's thumbprint."""

    kty: Literal["OKP"]
    crv: Literal["Ed25519"]
    x: Key32
    kid: Stated[Thumbprint] = None
    alg: Stated[Literal["Ed25519"]] = None
    use: Stated[Literal["sig"]] = None


class PrivateKey(PublicKey):
    """A key its owner signs with. ``d`` is the secret, and is never shown."""

    d: Annotated[Key32, Field(repr=False)]


class Revocation(Part):
    """From when on a key is not to be used, why, and when that was written down."""

    since: Moment
    reason: Reason
    recorded: Moment


class TrustedKey(PublicKey):
    """A key that was read back by its owner: the ids it may sign for, from when to when, and when this was noted."""

    owners: Owners
    recorded: Stated[Moment] = None
    since: Stated[Moment] = None
    until: Stated[Moment] = None
    revoked: Stated[Revocation] = None
    replaces: Stated[Thumbprint] = None


class TrustedKeys(Part):
    """The keys that somebody trusts. ``holder`` is under which ids documents are addressed to them."""

    format: Literal["wellposed/trusted-keys"]
    version: Literal["1.0"]
    holder: Owners
    keys: Several[TrustedKey]


class KeyChange(Part):
    """What is signed when a key gives way to the next: from ``since`` on the new one signs."""

    format: Literal["wellposed/key-change"]
    version: Literal["1.0"]
    old: Thumbprint
    new: PublicKey
    since: Moment


class SignedKeyChange(Part):
    """A change of keys with two detached signatures over it, by the old key and by the new one."""

    change: KeyChange
    by_old: Annotated[str, Field(max_length=1000)]
    by_new: Annotated[str, Field(max_length=1000)]


__all__ = [
    "KeyChange",
    "PrivateKey",
    "PublicKey",
    "Reason",
    "Revocation",
    "SignedKeyChange",
    "TrustedKey",
    "TrustedKeys",
]
