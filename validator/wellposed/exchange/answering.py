"""The answer to a document, given what else is there; and the answers that change when something else comes in."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from wellposed.exchange import order
from wellposed.exchange.arrival import Arrival
from wellposed.exchange.kept import Answer, Case, Kept, holding
from wellposed.exchange.receipts import Facts, Listed, grave, listed, receipt_bytes
from wellposed.exchange.rules import Asked, revision_withdrawn
from wellposed.exchange.standing import Standing, standings
from wellposed.exchange.store import Store
from wellposed.exchange.trusting import empty
from wellposed.findings import Finding
from wellposed.reading import Document, read_document

__all__ = ["ACCEPTED", "RETURNED", "Looked", "answered", "followed", "newest", "stands"]

ACCEPTED, RETURNED = "accepted", "returned"
_RULES = tuple(one for one in order.RULES if one.id != order.issued_in_the_future.id)
"""Those that look at the other documents; none of them asks the time."""
_ANY_TIME = datetime.fromtimestamp(0, UTC)
_SETTLED = (Standing.OVERTAKEN, Standing.SET_ASIDE)
"""Of these the last answer stays: nothing is made of them, and nothing is expected of their sender."""


@dataclass(frozen=True, slots=True)
class Looked:
    """One document looked at by itself.

    own        what was found
    counts     whether it comes from its sender, as far as is asked for, and is for this laboratory
    authentic  whether a signature shows it
    sound      whether nothing in it must be answered first
    signature  the signature that came with it
    """

    own: Sequence[Listed]
    counts: bool
    authentic: bool
    sound: bool
    signature: bytes | None = None

    @property
    def text(self) -> str:
        """What was found, as it is stored."""
        return json.dumps(list(self.own), separators=(",", ":"))

    def same(self, answer: Answer) -> bool:
        """Whether an answer was given on just this."""
        told = (self.text, self.counts, self.authentic, self.sound)
        return told == (answer.own, answer.counts, answer.authentic, answer.sound)


def newest(store: Store, case: Case) -> tuple[Answer, ...]:
    """The answer that holds to every document of a case, by revision."""
    return tuple(holding(store.answers(one.received.digest)) for one in store.documents(case))


def stands(store: Store, case: Case) -> Mapping[str, Standing]:
    """How every document of a case stands, by its digest."""
    return standings(store.taken(case), store.withdrawn(case))


def answered(store: Store, kept: Kept, looked: Looked, now: str) -> Answer:
    """Give and store the next answer to a document that is in the store."""
    before = store.answers(kept.received.digest)
    found = listed(_between(store, kept)) if looked.counts else []
    own: list[Listed] = [*looked.own]
    outcome = RETURNED if grave(found) or not looked.sound else ACCEPTED
    number, last = len(before) + 1, before[-1].receipt if before else None
    told = sorted([*found, *own], key=_weight)
    facts = Facts(kept.received, outcome, store.laboratory, kept.at, now, told, last, number)
    flags = looked.counts, looked.authentic, looked.sound
    answer = Answer(
        kept.received.digest, number, now, outcome, *flags, looked.text, receipt_bytes(facts), looked.signature
    )
    store.answer(answer)
    return answer


def _weight(one: Listed) -> int:
    return ("stop", "ask", "caution", "note").index(one["severity"])


def _between(store: Store, kept: Kept) -> Iterator[Finding]:
    """What is found between a document and the others of its case."""
    withdrawn = store.withdrawn(kept.case)
    yield from revision_withdrawn.findings(Asked(True, False, kept.received.revision, withdrawn))
    counting = (one.received for one in store.taken(kept.case) if one.counts)
    others = tuple(one for one in counting if one.digest != kept.received.digest)
    read = read_document(kept.data)
    if isinstance(read, Document):
        arrival = Arrival(read, None, empty([store.laboratory]), _ANY_TIME, others)
        for rule in _RULES:
            yield from rule.findings(arrival)


def followed(store: Store, case: Case, now: str) -> tuple[Answer, ...]:
    """Answer anew, where what has come to a case makes another answer due: held, and now current; or the reverse."""
    given = []
    standing = stands(store, case)
    for kept in store.documents(case):
        last, how = holding(store.answers(kept.received.digest)), standing[kept.received.digest]
        due = ACCEPTED if how == Standing.CURRENT else RETURNED
        if how not in _SETTLED and last.outcome != due:
            own: list[dict[str, Any]] = json.loads(last.own)
            looked = Looked(own, last.counts, last.authentic, last.sound, last.signature)
            given.append(answered(store, kept, looked, now))
    return tuple(given)
