"""The list of trusted keys, read and changed: a key added, revoked, or replaced by the one it names.

Every change gives a new list; nothing is ever taken out, so that what was signed long ago can still be looked at.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from wellposed.exchange.changes import change_fits
from wellposed.exchange.keys import thumbprint
from wellposed.exchange.trust import COMPROMISED, Standing, Trust, key_of, standing
from wellposed.findings import Finding
from wellposed.model.base import Part
from wellposed.model.keys import PublicKey, Reason, SignedKeyChange, TrustedKey
from wellposed.model.moments import later, time_of
from wellposed.reading.keys import read_keys

__all__ = ["TrustError", "added", "content_of", "empty", "replaced", "revoked", "trust_of"]

_FIRST = {"format": "wellposed/trusted-keys", "version": "1.0"}


class TrustError(Exception):
    """What stands against reading or changing a list of keys, in plain words without any of its content."""


def empty(holder: Sequence[str]) -> Trust:
    """A list without keys, of somebody to whom documents are addressed under these ids. TrustError if one is none."""
    try:
        return Trust.model_validate({**_FIRST, "holder": list(holder), "keys": []})
    except ValueError as error:
        raise TrustError("the holder is not written as the format writes it") from error


def trust_of(data: bytes) -> Trust:
    """The list in a file. TrustError where there is none that can be used."""
    found = read_keys(data, Trust)
    if not isinstance(found, Trust):
        raise TrustError(f"not a list of trusted keys: {_places(found)}")
    faults = list(_faults(found))
    if faults:
        raise TrustError("; ".join(faults))
    return found


def _places(found: Sequence[Finding]) -> str:
    return ", ".join(f"{one.rule} at {one.pointer or f'line {one.line}'}" for one in found)


def _faults(trust: Trust) -> Iterator[str]:
    seen: set[str | None] = set()
    for number, one in enumerate(trust.keys):
        if one.kid != thumbprint(one.x):
            yield f"/keys/{number}/kid is not the thumbprint of the key"
        if one.kid in seen:
            yield f"/keys/{number} stands twice"
        if not _ordered(one):
            yield f"/keys/{number}: its times are none of the calendar, or end before they begin"
        seen.add(one.kid)


def _ordered(one: TrustedKey) -> bool:
    stated = [one.recorded, one.since, one.until, one.revoked.since if one.revoked else None]
    times = [time_of(moment) for moment in stated if moment is not None]
    if None in times:
        return False
    since, until = (time_of(moment) if moment else None for moment in (one.since, one.until))
    return since is None or until is None or later(until, since)


def added(trust: Trust, key: PublicKey, owners: Sequence[str], recorded: str, **stated: str | None) -> Trust:
    """The list with one key more.

    recorded  when it is written down, by the clock of whoever trusts it
    stated    ``since`` and ``until``, from when to when it counts; ``replaces``, the thumbprint of the key before it

    TrustError where the key is in the list, or the times do not fit.
    """
    if key_of(trust, thumbprint(key.x)) is not None:
        raise TrustError("the key is in the list")
    more = {name: value for name, value in stated.items() if value is not None}
    entry = {**_members(key), "owners": list(owners), "recorded": recorded, **more}
    return _with(trust, [*(content_of(one) for one in trust.keys), entry])


def _members(key: PublicKey) -> dict[str, Any]:
    return {"kty": "OKP", "crv": "Ed25519", "x": key.x, "kid": thumbprint(key.x), "alg": "Ed25519", "use": "sig"}


def _with(trust: Trust, keys: list[dict[str, Any]]) -> Trust:
    """The list with these keys, checked as if it were read. TrustError where a time, an owner or a key is at fault."""
    try:
        made = Trust.model_validate({**content_of(trust), "keys": keys})
    except ValueError as error:
        raise TrustError("an owner, a time or a key is not written as the format writes it") from error
    faults = list(_faults(made))
    if faults:
        raise TrustError("; ".join(faults))
    return made


def content_of(part: Part) -> dict[str, Any]:
    """A list or a key as JSON content, as it is written."""
    return part.model_dump(exclude_unset=True, mode="json")


def revoked(trust: Trust, kid: str, since: str, reason: Reason, recorded: str) -> Trust:
    """The list with a key revoked from a moment on.

    With a key that is compromised go those it has vouched for since, by the clock of whoever trusts them. TrustError
    where the key is not in the list, or was revoked: then only for being compromised, or compromised earlier. A key
    once revoked is never in force again.
    """
    key = key_of(trust, kid)
    if key is None:
        raise TrustError("the key is not in the list")
    if not _worse(key, since, reason):
        raise TrustError("the key was revoked; it can only be told that it was compromised, or compromised earlier")
    mark = {"since": since, "reason": reason, "recorded": recorded}
    after = _with(trust, [content_of(one) | ({"revoked": mark} if one.kid == kid else {}) for one in trust.keys])
    for one in trust.keys if reason == COMPROMISED else ():
        if one.replaces == kid and one.kid and _vouched_after(one, since) and _worse(one, since, reason):
            after = revoked(after, one.kid, since, reason, recorded)
    return after


def _vouched_after(one: TrustedKey, since: str) -> bool:
    """Whether a key was trusted on the word of the one before it when that was compromised; so where nothing tells."""
    written, lost = time_of(one.recorded or ""), time_of(since)
    return written is None or lost is None or not later(lost, written)


def _worse(key: TrustedKey, since: str, reason: Reason) -> bool:
    """Whether a revocation takes more away than the one there is."""
    if key.revoked is None:
        return True
    if reason != COMPROMISED:
        return False
    before, now = time_of(key.revoked.since), time_of(since)
    return key.revoked.reason != COMPROMISED or (before is not None and now is not None and later(before, now))


def replaced(trust: Trust, signed: SignedKeyChange, now: str) -> Trust:
    """The list with a key replaced by the one it names, for the same owners and to the same end.

    TrustError where the old key is not in force, or one of the two signatures does not fit. The new key needs no
    reading back: the old one vouches for it. A key that may be in other hands vouches for nothing, so it is not
    replaced but revoked.
    """
    change, old, at = signed.change, key_of(trust, signed.change.old), time_of(now)
    if old is None:
        raise TrustError("the key that is replaced is not in the list")
    if at is None or standing(old, at, at) != Standing.IN_FORCE:
        raise TrustError("the key that is replaced is not in force")
    if not change_fits(signed, old):
        raise TrustError("the signatures of the two keys do not fit the change")
    stated = {"since": change.since, "until": old.until, "replaces": old.kid}
    grown = added(trust, change.new, old.owners, now, **stated)
    return revoked(grown, change.old, change.since, "superseded", now)
