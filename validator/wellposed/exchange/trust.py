"""The keys somebody trusts: looked up, held against a moment, added to, revoked, replaced."""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum

from wellposed.exchange.times import Time, later, time_of
from wellposed.model.keys import Reason, Revocation, TrustedKey, TrustedKeys

__all__ = ["COMPROMISED", "Standing", "Trust", "TrustError", "in_force_for", "key", "revoked", "standing", "trusted"]

Trust = TrustedKeys
COMPROMISED: Reason = "compromised"


class TrustError(Exception):
    """What stands against a change of the list, in plain words."""


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


def key(trust: Trust, kid: object) -> TrustedKey | None:
    """The key of a thumbprint."""
    return next((one for one in trust.keys if one.kid == kid), None)


def standing(one: TrustedKey, issued: Time, received: Time) -> Standing:
    """How a key stands for a document issued and received at these times. Its own times are those of the calendar."""
    if one.revoked is not None:
        since = _time(one.revoked.since)
        counts = received if one.revoked.reason == COMPROMISED else issued
        if not later(since, counts):
            return Standing.REVOKED
    if any(_outside(one, moment) for moment in (issued, received)):
        return Standing.OUTSIDE
    gone = one.revoked is not None and not later(_time(one.revoked.since), received)
    return Standing.ENDED if gone else Standing.IN_FORCE


def _outside(one: TrustedKey, moment: Time) -> bool:
    early = later(_time(one.since), moment)
    return early or (one.until is not None and not later(_time(one.until), moment))


def _time(moment: str) -> Time:
    found = time_of(moment)
    if found is None:
        raise TrustError("a time in the list of keys is none of the calendar")
    return found


def in_force_for(trust: Trust, owner: str, now: Time) -> Iterator[TrustedKey]:
    ...
