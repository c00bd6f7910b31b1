"""Keys in words to be read out, as a picture to be scanned, and the list of those that are trusted."""

from __future__ import annotations

from collections.abc import Iterator
from io import BytesIO

import segno

from wellposed.exchange.base64url import bytes_of
from wellposed.exchange.keys import thumbprint
from wellposed.exchange.spoken import URN, words
from wellposed.exchange.trust import Standing, Trust, standing
from wellposed.model.keys import PublicKey, TrustedKey
from wellposed.model.moments import Time, later, time_of

__all__ = ["PICTURES", "key_text", "keys_text", "picture"]

PICTURES = ("svg", "png")
_ROW = 4
_READ_BACK = (
    "Whoever is to trust this key reads the words back to its owner, on a telephone number known before, and trusts\n"
    "it only where all sixteen agree.\n"
)
_STANDINGS = {
    Standing.IN_FORCE: "in force",
    Standing.ENDED: "used no more",
    Standing.REVOKED: "revoked",
    Standing.OUTSIDE: "run out",
}


def key_text(key: PublicKey) -> str:
    """A key by its thumbprint and in words; nothing of it is secret."""
    kid = thumbprint(key.x)
    return f"{_table(_named(kid))}\n{_READ_BACK}"


def _named(kid: str) -> Iterator[tuple[str, str]]:
    yield "thumbprint", kid
    spoken = words(bytes_of(kid) or b"")
    rows = [" ".join(spoken[place : place + _ROW]) for place in range(0, len(spoken), _ROW)]
    yield from (("" if place else "in words", row) for place, row in enumerate(rows))


def _table(rows: Iterator[tuple[str, str]]) -> str:
    return "".join(f"{label:<10}  {value}\n" for label, value in rows)


def picture(key: PublicKey, kind: str) -> bytes:
    """The thumbprint as a QR code (ISO/IEC 18004), of one of ``PICTURES``: its URN by RFC 9278."""
    drawn = BytesIO()
    segno.make_qr(URN + thumbprint(key.x), error="m").save(drawn, kind=kind, scale=4)
    return drawn.getvalue()


def keys_text(trust: Trust, now: Time) -> str:
    """The list of keys, in the order they were trusted: whose, how each stands now, from when to when."""
    count = len(trust.keys)
    head = f"Documents addressed to {', '.join(trust.holder)}. {count} key{'' if count == 1 else 's'}.\n"
    return "\n".join([head, *(_table(_entry(one, now)) for one in trust.keys)])


def _entry(key: TrustedKey, now: Time) -> Iterator[tuple[str, str]]:
    yield "signs for", ", ".join(key.owners)
    yield "stands", f"{_stands(key, now)}{_why(key)}"
    span = [f"{name} {moment}" for name, moment in (("from", key.since), ("until", key.until)) if moment]
    if span:
        yield "counts", " ".join(span)
    if key.replaces is not None:
        yield "replaces", key.replaces
    yield from _named(thumbprint(key.x))


def _stands(key: TrustedKey, now: Time) -> str:
    since = time_of(key.since) if key.since is not None else None
    how = standing(key, now, now)
    return "not yet in force" if how == Standing.OUTSIDE and since and later(since, now) else _STANDINGS[how]


def _why(key: TrustedKey) -> str:
    return f" ({key.revoked.reason}, since {key.revoked.since})" if key.revoked else ""
