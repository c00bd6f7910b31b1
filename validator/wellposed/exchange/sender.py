"""Whether the key is in force, and belongs to the one the document names as its sender."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.declare import Rule, Told, rule, told
from wellposed.exchange.arrival import ADDRESSEES, Arrival
from wellposed.exchange.trust import Standing, standing
from wellposed.findings import Severity


def _standing(arrival: Arrival) -> Standing | None:
    """How the key stands for this document; None where there is no key or no time to ask for."""
    if arrival.key is None or arrival.issued is None:
        return None
    return standing(arrival.key, arrival.issued, arrival.now)


@rule(
    "issued-at-no-time",
    Severity.STOP,
    title="When the document was issued cannot be told, so that nothing can be said of its key.",
    do="Ask the sender to correct the date.",
)
def issued_at_no_time(arrival: Arrival) -> Iterator[Told]:
    """`issued` is a moment of the calendar.

    Whether the key was in force then cannot be told otherwise.

    Passes: {}
    Fails: {"document": {"issued": "2026-02-30T09:30:00Z"}}
    """
    if arrival.issued is None:
        yield told("/issued", expected="a day of the calendar")


@rule(
    "key-revoked",
    Severity.STOP,
    title="The key was revoked.",
    do="Ask the sender for the document again, signed with the key that is in force now.",
)
def key_revoked(arrival: Arrival) -> Iterator[Told]:
    """The key is not revoked for this document.

    Of a key that may be in other hands no date can be believed: from the moment it was compromised nothing received
    with it counts, whatever date it bears. A key that was only replaced, or is used no more, still speaks for what was
    issued before.

    Passes: {"key": {"revoked": {"since": "2026-03-05T00:00:00Z", "reason": "superseded",
                                 "recorded": "2026-03-05T00:00:00Z"}}}
    Fails: {"key": {"revoked": {"since": "2026-03-05T00:00:00Z", "reason": "compromised",
                                "recorded": "2026-03-05T00:00:00Z"}}}
    """
    if _standing(arrival) == Standing.REVOKED and arrival.key is not None and arrival.key.revoked is not None:
        yield told("", name=arrival.key.revoked.reason)


@rule(
    "key-not-in-force",
    Severity.STOP,
    title="The key was not in force when the document was issued, or was received.",
    do="Ask the sender for the document again, signed with a key that is in force.",
)
def key_not_in_force(arrival: Arrival) -> Iterator[Told]:
    """The document was issued, and received, from the moment the key is trusted from, and before it runs out.

    A key is read back for a time. Beyond it nobody has said that it still is the sender's.

    Passes: {"key": {"since": "2026-03-01T00:00:00Z", "until": "2027-03-01T00:00:00Z"}}
    Fails: {"key": {"until": "2026-03-04T12:00:00+01:00"}}
    """
    if _standing(arrival) == Standing.OUTSIDE:
        yield told("")


@rule(
    "key-was-replaced",
    Severity.NOTE,
    title="The key is used no more; the document says that it was issued before.",
    do="Nothing, if the document was awaited. Otherwise ask the sender.",
)
def key_was_replaced(arrival: Arrival) -> Iterator[Told]:
    """Says of a document on its way, or out of the archive, that its key was replaced since.

    The date is the sender's own word. Of a key that is still safe it can be believed; of one that is not, its owner has
    to say so.

    Passes: {}
    Fails: {"key": {"revoked": {"since": "2026-03-05T00:00:00Z", "reason": "superseded",
                                "recorded": "2026-03-05T00:00:00Z"}}}
    """
    if _standing(arrival) == Standing.ENDED:
        yield told("/issued")


@rule(
    "sender-not-named",
    Severity.STOP,
    title="The document does not name who sends it, so that its key cannot be held against anybody.",
    do="Ask the sender to name itself in the document.",
)
def sender_not_named(arrival: Arrival) -> Iterator[Told]:
    """A signed document names its sender: a prescription its prescriber, a review its reviewer, a setup and a receipt
    the laboratory.

    Otherwise any trusted key could have signed it, that of another clinic too.

    Passes: {}
    Fails: {"setup": {}}
    """
    if arrival.key is not None and arrival.sender is None:
        yield told(arrival.sender_at)


@rule(
    "key-of-another",
    Severity.STOP,
    title="The document was signed with the key of somebody else than the sender it names.",
    do="Ask both of them. Do not work from the document.",
)
def key_of_another(arrival: Arrival) -> Iterator[Told]:
    """The sender the document names is among the owners of the key.

    A good signature of one clinic says nothing about an order in the name of another.

    Passes: {}
    Fails: {"key": {"owners": ["clinic-9/dr-1"]}}
    """
    if arrival.key is not None and arrival.sender is not None and arrival.sender not in arrival.key.owners:
        yield told(arrival.sender_at)


@rule(
    "addressed-elsewhere",
    Severity.STOP,
    title="The document is addressed to somebody else.",
    do="Do not work from it. Tell the sender where it went.",
)
def addressed_elsewhere(arrival: Arrival) -> Iterator[Told]:
    """A prescription names the laboratory it has come to.

    A good signature stays good when the document is passed on. Sent to a second laboratory, the order would be made
    twice.

    Passes: {}
    Fails: {"document": {"laboratory": {"id": "lab-5"}}}
    """
    if arrival.kind in ADDRESSEES and arrival.addressee not in arrival.trust.holder:
        yield told(f"/{ADDRESSEES[arrival.kind]}/id")


RULES: tuple[Rule[Arrival], ...] = (
    *(issued_at_no_time, key_revoked, key_not_in_force, key_was_replaced),
    *(sender_not_named, key_of_another, addressed_elsewhere),
)
