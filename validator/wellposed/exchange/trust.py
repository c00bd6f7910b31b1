"""The keys somebody trusts: looked up, and held against the moments of a document."""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum

from wellposed.model.keys import Reason, TrustedKey, TrustedKeys
from wellposed.model.moments import Time, later, time_of

__all__ = ["COMPROMISED", "Standing", "Trust", "in_force_for", "key_of", "standing"]

Trust = TrustedKeys
COMPROMISED: Reason = "compromised"


class Standing(StrEnum):
    """How a key stands for a document.

    in-force  it may have signed it
    ended     it is used no more, and the document says that it was issued before
    revoked   it may not
    outside   the document was issued or received before the key was trusted, or after it ran out
    """

    IN_FORCE = "in-force"
    ENDED = "ended"
    REVOKED = "revoked"
    OUTSIDE = "outside"


def key_of(trust: Trust, kid: object) -> TrustedKey | None:
    """The key of a thumbprint; None where it is not in the list."""
    return next((one for one in trust.keys if one.kid == kid), None) if isinstance(kid, str) else None


def standing(key: TrustedKey, issued: Time, received: Time) -> Standing:
    """How a key stands for a document issued and received at these times.

    What was received after a key was compromised is not believed, whatever date it bears. A key that was replaced, or
    ended, speaks for what was issued before. A time that is none of the calendar is never within a key's.
    """
    gone = _gone(key)
    if gone is not None and not later(gone, received if _compromised(key) else issued):
        return Standing.REVOKED
    if _broken(key) or any(_outside(key, moment) for moment in (issued, received)):
        return Standing.OUTSIDE
    return Standing.ENDED if gone is not None and not later(gone, received) else Standing.IN_FORCE


def in_force_for(trust: Trust, owner: str, now: Time) -> Iterator[TrustedKey]:
    """The keys somebody could sign with now."""
    owned = (one for one in trust.keys if owner in one.owners)
    return (one for one in owned if standing(one, now, now) == Standing.IN_FORCE)


def _compromised(key: TrustedKey) -> bool:
    return key.revoked is not None and key.revoked.reason == COMPROMISED


def _gone(key: TrustedKey) -> Time | None:
    return time_of(key.revoked.since) if key.revoked is not None else None


def _broken(key: TrustedKey) -> bool:
    stated = [key.since, key.until, key.revoked.since if key.revoked else None]
    return any(moment is not None and time_of(moment) is None for moment in stated)


def _outside(key: TrustedKey, moment: Time) -> bool:
    since, until = (time_of(end) if end is not None else None for end in (key.since, key.until))
    return (since is not None and later(since, moment)) or (until is not None and not later(until, moment))
