"""What can stand against a bundle, beside what can stand against any document."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from wellposed.findings import Finding, Severity
from wellposed.reading.faults import TOO_MANY, finding
from wellposed.reading.limits import MOST_FAULTS

RULES: Final[Mapping[str, str]] = {
    "bundle-of-another-type": "it is no bundle of the type collection",
    "bundle-entry-twice": "two entries have one full url",
    "bundle-modifier": "an element that could change the meaning of others is not known",
    "bundle-original-twice": "more than one document is attached",
    "bundle-original-unreadable": "what is attached is not there, or not in Base64",
    "bundle-original-altered": "the document attached has another digest than the one stated beside it",
    "bundle-differs": "an element says otherwise than the document",
    "bundle-lacks": "an element that the document calls for is not there",
    "bundle-adds": "an element says what the document does not",
    "bundle-without-order": "there is neither a document attached nor an order, or there are several orders",
    "bundle-without-digest": "no document attached can be used, and no digest says whether all of it is here",
    "bundle-not-whole": "no document attached can be used, and what is here is not all of it",
    "bundle-without-original": "no document is attached; what is here is all of it, as its digest shows",
    "bundle-bookkeeping": "an element that servers add is not kept",
    "bundle-units-differ": "the amounts of one part are in different units",
}
"""Every rule of bundles, and when it is told."""

ASKS: Final = frozenset({"bundle-differs", "bundle-lacks", "bundle-adds"})
NOTES: Final = frozenset({"bundle-without-original", "bundle-bookkeeping"})
_SEVERITIES: Final = {**dict.fromkeys(ASKS, Severity.ASK), **dict.fromkeys(NOTES, Severity.NOTE)}


class Told:
    """What stands against a bundle so far, and where in it each part of the document was found."""

    def __init__(self) -> None:
        self.findings: list[Finding] = []
        self.places: dict[str, str] = {}

    def tell(self, rule: str, pointer: str, **facts: Any) -> None:
        """Note a finding at a place in the bundle; no more than any document may have."""
        severity = _SEVERITIES.get(rule, Severity.STOP)
        if len(self.findings) < MOST_FAULTS:
            self.findings.append(Finding(rule, severity, pointer, facts))
        elif len(self.findings) == MOST_FAULTS:
            self.findings.append(finding("too-many-faults", **TOO_MANY))

    def place(self, pointer: str) -> str:
        """Where in the bundle a place of the document is, or the nearest place above it that is there."""
        while pointer and pointer not in self.places:
            pointer = pointer.rpartition("/")[0]
        return self.places.get(pointer, "")
