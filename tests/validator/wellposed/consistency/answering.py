"""Ordinary setups and reviews, in which nothing is wrong: a base of each to change, and some whole ones."""

from wellposed.consistency.receipts import WholeReceipt
from wellposed.consistency.whole_review import WholeReview
from wellposed.consistency.whole_setup import WholeSetup
from wellposed.model import Receipt, Review, Setup

ANSWERED = {"id": "HR-2031", "revision": 1, "sha256": "ab" * 32}
SETUP = {
    "format": "wellposed/setup",
    "version": "1.0",
    "notation": "ISO 3950",
    "id": "ST-204",
    "revision": 1,
    "issued": "2026-03-11T16:00:00+01:00",
    "answers": ANSWERED,
    "movements": [],
    "unlisted": "unmoved",
}
REVIEW = {
    "format": "wellposed/review",
    "version": "1.0",
    "notation": "ISO 3950",
    "id": "RV-31",
    "revision": 1,
    "issued": "2026-03-12T08:15:00+01:00",
    "answers": {"id": "ST-204", "revision": 1, "sha256": "cd" * 32},
    "prescription": ANSWERED,
    "outcome": "approved",
    "clauses": [],
}
RECEIPT = {
    "format": "wellposed/receipt",
    "version": "1.0",
    "id": "RC-88",
    "revision": 1,
    "issued": "2026-03-05T08:00:02Z",
    "answers": ANSWERED,
    "outcome": "accepted",
    "laboratory": {"id": "lab-4"},
    "received": "2026-03-05T09:00:01+01:00",
    "program": {"name": "wellposed", "version": "0.1.0"},
    "findings": [],
}


def _put(base, changes):
    return {name: value for name, value in {**base, **changes}.items() if value is not None}


def setup_document(**changes):
    """The base with members put in; None takes one out."""
    return _put(SETUP, changes)


def review_document(**changes):
    """The base of a review, likewise."""
    return _put(REVIEW, changes)


def receipt_document(**changes):
    """The base of a receipt, likewise."""
    return _put(RECEIPT, changes)


def receipt(**changes):
    """The base of a receipt as its model."""
    return Receipt.model_validate(receipt_document(**changes))


def setup(**changes):
    """The base as its model."""
    return Setup.model_validate(setup_document(**changes))


def review(**changes):
    """The base of a review as its model."""
    return Review.model_validate(review_document(**changes))


def table(variable, unit="mm", **values):
    """A table of movements: t11=1 is 1 for 11."""
    return {"variable": variable, "unit": unit, "values": {tooth[1:]: value for tooth, value in values.items()}}


def stage(aligner, arch, *movements):
    """Where teeth of an arch stand after an aligner."""
    return {"aligner": aligner, "arch": arch, "movements": list(movements)}


def off(contact, amount=0.2, before=None):
    """A reduction."""
    timed = {} if before is None else {"before_aligner": before}
    return {"contact": contact, "amount": amount, "unit": "mm", **timed}


def outcomes(**told):
    """Clauses and their outcomes: g1="not-met"."""
    return [{"clause": clause, "outcome": outcome.replace("_", "-")} for clause, outcome in told.items()]


ROUND_LOWER_FRONT = {
    "laboratory": {"id": "lab-4"},
    "aligners": {"upper": 0, "lower": 3},
    "wear_interval_days": 10,
    "movements": [
        table("out", t31=0.3, t41=0.25, t11=0),
        table("rotation", "deg", t32=-4, t42=6.5),
        table("vertical", t31=-0.5),
    ],
    "reductions": [off("31-41", 0.2, 1), off("41-31", 0.1, 3), off("32-33", 0)],
    "attachments": [{"tooth": "33", "reason": "retention", "from_aligner": 1}, {"tooth": "43", "words": "low"}],
    "stages": [
        stage(1, "lower", table("out", t31=0.1, t41=0.1), table("rotation", "deg", t42=2)),
        stage(2, "lower", table("out", t31=0.2, t41=0.2), table("rotation", "deg", t42=4.5)),
        stage(3, "lower", table("out", t31=0.3, t41=0.3), table("rotation", "deg", t32=-4, t42=6)),
    ],
    "predicted": [
        {"measure": "overbite", "value": 2, "unit": "mm"},
        {"measure": "overjet", "pair": ["12", "42"], "value": 2.5, "unit": "mm"},
    ],
    "statements": [{"clause": "b1", "standing": "changed", "words": "made thinner"}],
    "notes": [{"text": "The scan of 37 is incomplete.", "about": ["g1"]}],
}
PREMOLARS_OUT = {
    "aligners": {"upper": 24},
    "movements": [table("along", t13=-5, t23=-5, t15=1.5, t25=1.5), table("torque", "deg", t11=4, t21=4)],
    "unlisted": None,
    "extractions": ["14", "24"],
    "reductions": [off("13-15", 0.1)],
    "stages": [stage(12, "upper", table("along", t13=-2.5)), stage(24, "upper", table("along", t13=-5, t15=1.5))],
}
MIXED_DENTITION = {
    "movements": [table("along", t13=1, t12=0.5, t53=0.5)],
    "reductions": [off("13-12"), off("53-12", 0.3)],
}
SOUND_SETUPS = {
    "a rounded lower front": ROUND_LOWER_FRONT,
    "premolars out, two stages of many": PREMOLARS_OUT,
    "a canine beside its milk tooth": MIXED_DENTITION,
    "nothing moves": {},
}

ALL_WELL = {"clauses": outcomes(g1="met", k1="met", a1="within", b1="declared", g2="cannot-be-told")}
ACCEPTED = {"clauses": outcomes(g1="not-met", a1="beyond", k1="met"), "accepted": ["g1", "a1"]}
RETURNED = {
    "outcome": "returned",
    "reviewer": {"id": "clinic-17/dr-2"},
    "clauses": outcomes(g1="not-met", m1="not-met", a1="beyond", k1="met"),
    "revising": ["m1"],
    "requests": {
        "goals": [{"id": "r1", "strength": "must", "align": ["31", "41"], "because": ["g1"]}],
        "allow": [
            {"id": "r2", "use": "enamel-reduction", "contacts": ["31-41"], "in_all": 0.2, "unit": "mm"},
            {"id": "r3", "use": "widening", "arch": "upper", "up_to": 1, "unit": "mm", "because": ["a1"]},
        ],
        "staging": {
            "id": "r4",
            "strength": "must",
            "order": [{"id": "r5", "first": "r1", "relation": "before", "then": "k1"}],
        },
    },
    "notes": [{"text": "Thank you for the quick answer.", "about": ["g1", "r1"]}],
}
SOUND_REVIEWS = {
    "all as asked": ALL_WELL,
    "approved as it is": ACCEPTED,
    "returned with requests": RETURNED,
    "a prescription without clauses": {},
}


def noted(rule, severity, pointer="", *clauses):
    """A finding as a receipt lists it."""
    named = {"clauses": list(clauses)} if clauses else {}
    return {"rule": rule, "severity": severity, "pointer": pointer, **named}


SOUND_RECEIPTS = {
    "accepted": {"findings": [noted("not-signed", "caution"), noted("treat-not-stated", "note")]},
    "returned": {
        "outcome": "returned",
        "findings": [noted("cannot-hold-together", "stop", "/movements/0", "k1", "m1")],
        "more_findings": 3,
    },
    "as it was before there was more to say": dict.fromkeys(("laboratory", "received", "program", "findings")),
}


def told_of_receipt(declared, **changes):
    """What one rule says of a changed receipt: pointer, clauses, facts."""
    whole = WholeReceipt(receipt(**changes))
    return [(finding.pointer, finding.clauses, dict(finding.facts)) for finding in declared.findings(whole)]


def told_of_setup(declared, **changes):
    """What one rule says of a changed setup: pointer, clauses, facts."""
    whole = WholeSetup(setup(**changes))
    return [(finding.pointer, finding.clauses, dict(finding.facts)) for finding in declared.findings(whole)]


def told_of_review(declared, **changes):
    """What one rule says of a changed review, likewise."""
    whole = WholeReview(review(**changes))
    return [(finding.pointer, finding.clauses, dict(finding.facts)) for finding in declared.findings(whole)]
