"""How the revisions of one document stand to each other: a function of what is there, whatever the order it came in."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum

from wellposed.exchange.arrival import Received

__all__ = ["Standing", "Taken", "standings"]


class Standing(StrEnum):
    """What may be done with a document.

    current      it may be worked from; of one kind, sender and id there is at most one
    returned     something in it must be answered first
    held         the revision it follows is not there, or it follows another one
    in-conflict  another document has its id and revision
    withdrawn    its sender has withdrawn this revision
    overtaken    a later revision is there, or was withdrawn; whatever becomes of that one, this one does not come back
    set-aside    it is not shown to come from its sender, or is for somebody else: it has no effect on the others
    """

    CURRENT = "current"
    RETURNED = "returned"
    HELD = "held"
    IN_CONFLICT = "in-conflict"
    WITHDRAWN = "withdrawn"
    OVERTAKEN = "overtaken"
    SET_ASIDE = "set-aside"


@dataclass(frozen=True, slots=True)
class Taken:
    """A document as it is kept.

    received  its identity
    counts    whether it comes from its sender, as far as is asked for, and is for this laboratory
    sound     whether nothing in it, looked at by itself, must be answered first
    """

    received: Received
    counts: bool
    sound: bool


def standings(taken: Iterable[Taken], withdrawn: Collection[int]) -> Mapping[str, Standing]:
    """How each document stands, by its digest.

    taken      all that is kept of one kind, sender and id, in any order
    withdrawn  the revisions that were withdrawn, received or not
    """
    kept = {one.received.digest: one for one in taken}
    revisions: dict[int, set[str]] = {}
    for digest, one in kept.items():
        if one.counts:
            revisions.setdefault(one.received.revision, set()).add(digest)
    last = max((*revisions, *withdrawn), default=0)
    return {digest: _standing(kept[digest], revisions, withdrawn, last) for digest in sorted(kept)}


def _standing(one: Taken, revisions: Mapping[int, set[str]], withdrawn: Collection[int], last: int) -> Standing:
    revision = one.received.revision
    chosen = (
        (not one.counts, Standing.SET_ASIDE),
        (revision in withdrawn, Standing.WITHDRAWN),
        (len(revisions.get(revision, ())) > 1, Standing.IN_CONFLICT),
        (revision < last, Standing.OVERTAKEN),
        (not one.sound, Standing.RETURNED),
        (revision > 1 and one.received.replaces not in revisions.get(revision - 1, ()), Standing.HELD),
    )
    return next((standing for holds, standing in chosen if holds), Standing.CURRENT)
