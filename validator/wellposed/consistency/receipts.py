"""A receipt: does its outcome agree with what it lists, and its times with each other?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from wellposed.consistency.whole import Written
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.moments import time_of
from wellposed.model.receipt import Receipt

_MUST_BE_ANSWERED = ("stop", "ask")


@dataclass(frozen=True)
class WholeReceipt(Written):
    """A receipt, looked up."""

    document: Receipt

    @property
    def grave(self) -> tuple[int, ...]:
        """Where among the findings those stand that must be answered first."""
        listed = enumerate(self.document.findings or ())
        return tuple(at for at, one in listed if one.severity in _MUST_BE_ANSWERED)


@rule(
    "accepted-though-stopped",
    Severity.STOP,
    title="The document is accepted, and something in it must be answered first.",
    do="Return it, or take out the finding if it does not hold.",
)
def accepted_though_stopped(whole: WholeReceipt) -> Iterator[Told]:
    """No receipt that accepts lists a finding that weighs `stop` or `ask`.

    The clinic would wait for aligners while the laboratory waits for an answer: both can be read from it.

    Passes: {"outcome": "accepted", "findings": [{"rule": "treat-not-stated", "severity": "note", "pointer": ""}]}
    Fails: {"outcome": "accepted", "findings": [{"rule": "bounds-crossed", "severity": "stop", "pointer": "/keep/0"}]}
    """
    if whole.document.outcome == "accepted":
        for at in whole.grave:
            yield told(f"/findings/{at}/severity")


@rule(
    "returned-without-finding",
    Severity.ASK,
    title="The document is returned, and no finding says why.",
    do="List what must be answered first, or accept the document.",
)
def returned_without_finding(whole: WholeReceipt) -> Iterator[Told]:
    """A receipt that returns lists a finding that weighs `stop` or `ask`.

    Otherwise the clinic can only send the same again, or guess.

    Passes: {"outcome": "returned", "findings": [{"rule": "bounds-crossed", "severity": "stop", "pointer": "/keep/0"}]}
    Fails: {"outcome": "returned", "findings": []}
    """
    if whole.document.outcome == "returned" and not whole.grave:
        yield told("/outcome", name="returned", expected="a finding that weighs stop or ask")


@rule(
    "received-after-receipt",
    Severity.ASK,
    title="The receipt was made before the document came in.",
    do="Correct one of the two times.",
)
def received_after_receipt(whole: WholeReceipt) -> Iterator[Told]:
    """`received` lies no later than `issued`; times are compared with their offsets.

    Of two revisions nobody could tell from it which came first.

    Passes: {"received": "2026-03-05T08:00:00Z", "issued": "2026-03-05T09:00:00+01:00"}
    Fails: {"received": "2026-03-05T08:00:01Z", "issued": "2026-03-05T09:00:00+01:00"}
    """
    received, issued = time_of(whole.document.received or ""), time_of(whole.document.issued)
    if received and issued and received > issued:
        yield told("/received", expected="a moment no later than issued")


RULES = (accepted_though_stopped, returned_without_finding, received_after_receipt)
