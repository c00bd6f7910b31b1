"""Faults between the parts of a document, which no schema can see.

``RULES`` is every rule about a prescription in the order they look, one topic after another; ``SETUP_RULES``,
``REVIEW_RULES`` and ``RECEIPT_RULES`` are those about the others, the ones they share with a prescription first. A rule
that breaks becomes the finding ``rule-failed`` and the others go on.
"""

from __future__ import annotations

from collections.abc import Iterator

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
    receipts,
    reviews,
    setup_claims,
    setup_path,
    setups,
    teeth,
    texts,
)
from wellposed.consistency.receipts import WholeReceipt
from wellposed.consistency.whole import Whole, Written
from wellposed.consistency.whole_review import WholeReview
from wellposed.consistency.whole_setup import WholeSetup
from wellposed.declare import RULE_FAILED, Rule
from wellposed.findings import Finding
from wellposed.model import Prescription, Receipt, Review, Setup
from wellposed.model.envelope import Envelope

TOPICS = (
    *(documents, identity, teeth, leaving, arches, contacts),
    *(quantities, bounds, measurements, means, making, asking),
)
RULES: tuple[Rule[Whole], ...] = tuple(rule for topic in TOPICS for rule in topic.RULES)

OWN_OF_SETUPS: tuple[Rule[WholeSetup], ...] = (
    *(*setups.RULES, *setup_path.RULES, *setup_claims.RULES),
    *texts.RULES,
)
OWN_OF_REVIEWS: tuple[Rule[WholeReview], ...] = reviews.RULES
OWN_OF_RECEIPTS: tuple[Rule[WholeReceipt], ...] = receipts.RULES
SETUP_RULES: tuple[Rule[WholeSetup], ...] = (
    *documents.RULES,
    *(teeth.tooth_listed_twice, leaving.tooth_not_meant),
    *(arches.side_mismatch, arches.pair_not_meant, arches.pair_not_one_of_each),
    *(contacts.no_such_tooth, contacts.contact_across_arches),
    *(quantities.unit_not_allowed, bounds.negative_size, measurements.implausible_value),
    *OWN_OF_SETUPS,
)
REVIEW_RULES: tuple[Rule[WholeReview], ...] = (
    *(*documents.RULES, *identity.RULES),
    *(teeth.tooth_listed_twice, leaving.tooth_not_meant),
    *(arches.arch_mismatch, arches.side_mismatch, arches.pair_not_meant, arches.pair_not_one_of_each),
    *(contacts.no_such_tooth, contacts.contact_across_arches, contacts.contact_listed_twice, contacts.reduction_place),
    *(*quantities.RULES, *bounds.RULES),
    *(measurements.implausible_value, measurements.measure_teeth_do_not_change),
    *(means.reduction_said_twice, means.width_said_twice, means.excluded_and_allowed),
    *(*making.RULES, asking.note_may_instruct, *texts.RULES),
    *OWN_OF_REVIEWS,
)
RECEIPT_RULES: tuple[Rule[WholeReceipt], ...] = (*documents.RULES, *OWN_OF_RECEIPTS)

__all__ = [
    "OWN_OF_RECEIPTS",
    "OWN_OF_REVIEWS",
    "OWN_OF_SETUPS",
    "RECEIPT_RULES",
    "REVIEW_RULES",
    "RULES",
    "RULE_FAILED",
    "SETUP_RULES",
    "Rule",
    "consistency",
    "envelope_faults",
    "faults",
    "receipt_faults",
    "review_faults",
    "setup_faults",
]


def faults(document: Envelope) -> Iterator[Finding]:
    """Everything the rules find between the parts of any document of the conversation."""
    if isinstance(document, Prescription):
        return consistency(document)
    if isinstance(document, Setup):
        return setup_faults(document)
    if isinstance(document, Receipt):
        return receipt_faults(document)
    return review_faults(document) if isinstance(document, Review) else envelope_faults(document)


def consistency(prescription: Prescription) -> Iterator[Finding]:
    """Everything the rules find, rule by rule. Never raises for what is in the document, and changes nothing."""
    whole = Whole(prescription)
    for rule in RULES:
        yield from rule.findings(whole)


def envelope_faults(document: Envelope) -> Iterator[Finding]:
    """What the rules about a document as a whole find in one whose content is not looked at."""
    whole = Written(document)
    for rule in documents.RULES:
        yield from rule.findings(whole)


def receipt_faults(receipt: Receipt) -> Iterator[Finding]:
    """Everything the rules find in a receipt by itself, rule by rule."""
    whole = WholeReceipt(receipt)
    for rule in RECEIPT_RULES:
        yield from rule.findings(whole)


def setup_faults(setup: Setup) -> Iterator[Finding]:
    """Everything the rules find in a setup by itself, rule by rule."""
    whole = WholeSetup(setup)
    for rule in SETUP_RULES:
        yield from rule.findings(whole)


def review_faults(review: Review) -> Iterator[Finding]:
    """Everything the rules find in a review by itself, rule by rule."""
    whole = WholeReview(review)
    for rule in REVIEW_RULES:
        yield from rule.findings(whole)
