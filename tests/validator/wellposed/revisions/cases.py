"""Invented cases told in short: members of one prescription after another, and what each setup makes of its clauses."""

import json
from hashlib import sha256

import rfc8785
from tests.validator.wellposed.consistency.ordinary import BASE

from wellposed.consistency.whole import Whole
from wellposed.model import Prescription
from wellposed.review.result import Reviewed, SetupReview

SETUP = {"format": "wellposed/setup", "version": "1.0", "notation": "ISO 3950", "issued": "2026-03-10T09:30:00+01:00"}
SECTIONS = ("goals", "keep", "movements", "allow", "exclude", "attachments", "staging", "appliance")


def digest(document):
    """The digest of a document as RFC 8785 has it, without the program."""
    return sha256(rfc8785.dumps(document)).hexdigest()


def written(document):
    return json.dumps(document).encode()


class Case:
    """Documents of a case in the order told; ``outcomes``: setup id and revision to clause id and outcome."""

    def __init__(self, *steps):
        self.files, self.outcomes, self.orders, self.setups = [], {}, [], []
        for step in steps:
            self._setup(dict(step)) if "setup" in step else self._order(dict(step))

    def _order(self, members):
        revision = members.get("revision", len(self.orders) + 1)
        chain = {"revision": revision}
        if revision > 1:
            chain["replaces"] = digest(self.orders[-1]) if self.orders else "ab" * 32
        said = {**BASE, **chain, **members}
        self.orders.append({name: value for name, value in said.items() if value is not None})
        self.files.append((f"order-{len(self.files) + 1}.json", written(self.orders[-1])))

    def _setup(self, members):
        outcomes = members.pop("setup")
        order = self.orders[-1]
        answers = {"id": order["id"], "revision": order["revision"], "sha256": digest(order)}
        revision = members.get("revision", len(self.setups) + 1)
        chain = {"id": "S-1", "revision": revision, "answers": answers, "movements": []}
        if revision > 1:
            chain["replaces"] = digest(self.setups[-1]) if self.setups else "ab" * 32
        self.setups.append({**SETUP, **chain, **members})
        self.outcomes[self.setups[-1]["id"], revision] = outcomes
        self.files.append((f"setup-{len(self.files) + 1}.json", written(self.setups[-1])))

    def review(self, prescription, setup, numbers):
        """The outcomes told, in place of a review; a clause of which nothing is told cannot be told."""
        told = self.outcomes[setup.id, setup.revision]
        clauses = tuple(
            Reviewed(place.owner, place.section, place.pointer, getattr(place.part, "strength", None), outcome)
            for place in Whole(prescription).of(*SECTIONS)
            if place.said("id") and (outcome := told.get(place.owner, "cannot-be-told"))
        )
        who = (prescription.id, prescription.revision), (setup.id, setup.revision)
        return SetupReview(*who, "possible", clauses, (), (), (), numbers.profile)


def prescription(**members):
    said = {**BASE, **members}
    return Prescription.model_validate({name: value for name, value in said.items() if value is not None})
