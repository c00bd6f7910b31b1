"""Faults between the parts of a prescription, which no schema can see.

``RULES`` is every rule in the order they look, one topic after another. A rule that breaks becomes the finding
``rule-failed`` and the others go on.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import cast

from wellposed.consistency import (
    arches,
    asking,
    bounds,
    contacts,
    documents,
    identity,
    leaving,
    making,
    means,
    measurements,
    quantities,
    teeth,
)
from wellposed.consistency.whole import Whole
from wellposed.declare import RULE_FAILED, Rule
from wellposed.findings import Finding
from wellposed.model import Prescription
from wellposed.model.envelope import Envelope

TOPICS = (
    *(documents, identity, teeth, leaving, arches, contacts),
    *(quantities, bounds, measurements, means, making, asking),
)
RULES: tuple[Rule[Whole], ...] = tuple(rule for topic in TOPICS for rule in topic.RULES)

__all__ = ["RULES", "RULE_FAILED", "Rule", "consistency", "envelope_faults"]


def consistency(prescription: Prescription) -> Iterator[Finding]:
    """Everything the rules find, rule by rule. Never raises for what is in the document, and changes nothing."""
    whole = Whole(prescription)
    for rule in RULES:
        yield from rule.findings(whole)


def envelope_faults(document: Envelope) -> Iterator[Finding]:
    """What the rules about a document as a whole find in one that is not a prescription."""
    whole = Whole(cast("Prescription", document))  # these rules look at the envelope only
    for rule in documents.RULES:
        yield from rule.findings(whole)
