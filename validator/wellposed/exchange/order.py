"""How a document stands to those that arrived before it: repeated, rivalled, overtaken, or too early."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from wellposed.declare import Rule, Told, rule, told
from wellposed.exchange.arrival import Arrival
from wellposed.findings import Severity

CLOCKS_DIFFER = timedelta(minutes=5)
"""How far the clocks of two houses may stand apart. Common practice of exchange systems, no clinical number."""


@rule(
    "received-before",
    Severity.NOTE,
    title="The same document was received before.",
    do="Nothing: it counts once.",
)
def received_before(arrival: Arrival) -> Iterator[Told]:
    """Says of a document that one with the same digest was received before.

    Whatever is sent twice, by mistake or on purpose, is one order.

    Passes: {}
    Fails: {"earlier": [{}]}
    """
    if arrival.again:
        yield told("")


@rule(
    "revision-conflict",
    Severity.STOP,
    title="Another document of the same id and revision was received before.",
    do="Ask the sender which of the two is meant. Until then neither is worked from.",
)
def revision_conflict(arrival: Arrival) -> Iterator[Told]:
    """Of a kind, a sender and an id each revision has one content.

    Whichever of the two comes last would otherwise win, and nobody would notice.

    Passes: {"earlier": [{}]}
    Fails: {"earlier": [{"digest": "0000000000000000000000000000000000000000000000000000000000000000"}]}
    """
    if any(one.revision == arrival.revision and one.digest != arrival.digest for one in arrival.chain):
        yield told("/revision", value=arrival.revision)


@rule(
    "revision-overtaken",
    Severity.STOP,
    title="A later revision was received before.",
    do="Keep it with the others. Work from the latest revision only.",
)
def revision_overtaken(arrival: Arrival) -> Iterator[Told]:
    """No later revision of the document is at hand.

    An old revision is as genuine as on its first day. Sent once more it must not take the place of what replaced it.

    Passes: {"earlier": [{}]}
    Fails: {"earlier": [{"revision": 2, "replaces": "BASE",
                         "digest": "0000000000000000000000000000000000000000000000000000000000000000"}]}
    """
    latest = max((one.revision for one in arrival.chain), default=arrival.revision)
    if arrival.revision < latest:
        yield told("/revision", value=arrival.revision, expected=f"revision {latest} or a later one")


@rule(
    "replaces-another",
    Severity.STOP,
    title="The revision does not follow the one that was received.",
    do="Ask the sender which revision came in between, or what was changed after sending.",
)
def replaces_another(arrival: Arrival) -> Iterator[Told]:
    """`replaces` is the digest of the revision before, as it was received; so it is of the revision after.

    Otherwise the sender has changed another document than the one at hand.

    Passes: {"document": {"revision": 2, "replaces": "BASE"}, "earlier": [{}]}
    Fails: {"document": {"revision": 2,
                         "replaces": "0000000000000000000000000000000000000000000000000000000000000000"},
            "earlier": [{}]}
    """
    before = {one.digest for one in arrival.chain if one.revision == arrival.revision - 1}
    after = {one.replaces for one in arrival.chain if one.revision == arrival.revision + 1}
    if before and arrival.read.value.get("replaces") not in before:
        yield told("/replaces")
    elif after and arrival.digest not in after:
        yield told("/revision", value=arrival.revision)


@rule(
    "revision-ahead",
    Severity.ASK,
    title="The revision before this one has not been received.",
    do="Ask the sender for it. Until it is there the document is kept, and not worked from.",
)
def revision_ahead(arrival: Arrival) -> Iterator[Told]:
    """Every revision before the one received is at hand.

    What the missing one said cannot be seen, nor whether this one follows it.

    Passes: {"document": {"revision": 2, "replaces": "BASE"}, "earlier": [{}]}
    Fails: {"document": {"revision": 3,
                         "replaces": "0000000000000000000000000000000000000000000000000000000000000000"},
            "earlier": [{}]}
    """
    if arrival.revision > 1 and not any(one.revision == arrival.revision - 1 for one in arrival.chain):
        yield told("/revision", value=arrival.revision)


@rule(
    "issued-in-the-future",
    Severity.CAUTION,
    title="By the clock here the document has not been issued yet.",
    do="Look at the clock of this computer, and tell the sender.",
)
def issued_in_the_future(arrival: Arrival) -> Iterator[Told]:
    """`issued` is at most five minutes after the moment of receiving.

    One of the two clocks is wrong. Which revision counts is told by its number, never by a clock.

    Passes: {"now": "2026-03-04T09:26:00+01:00"}
    Fails: {"now": "2026-03-04T09:24:00+01:00"}
    """
    if arrival.issued is not None and arrival.issued - arrival.now > CLOCKS_DIFFER:
        yield told("/issued")


RULES: tuple[Rule[Arrival], ...] = (
    *(received_before, revision_conflict, revision_overtaken),
    *(replaces_another, revision_ahead, issued_in_the_future),
)
