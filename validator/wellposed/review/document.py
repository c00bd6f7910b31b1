"""The review as the document that is sent: what the reviewer decides, and what follows from it."""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import Any, Literal

from wellposed.digests import digest
from wellposed.model.envelope import Envelope
from wellposed.model.prescription import Prescription
from wellposed.model.review import Review
from wellposed.model.setup import Setup
from wellposed.review.requests import requests, revised_first, unopened
from wellposed.review.result import SetupReview

__all__ = ["Decision", "review_content", "review_document"]


@dataclass(frozen=True, slots=True)
class Decision:
    """What a reviewer decides. Nothing of it is chosen by the program.

    id, issued      of the review itself; RFC 3339
    reviewer        id of whoever decides
    replaces        the review that this one takes the place of, whose id it keeps
    accepted        ids of clauses taken as they are though they are not met
    also_preferred  wishes that are not met are asked for too
    unopened        what moved though nothing opened it is approved with the rest
    """

    outcome: Literal["approved", "returned"]
    id: str
    issued: str
    accepted: tuple[str, ...] = ()
    also_preferred: bool = False
    unopened: bool = False
    reviewer: str | None = None
    replaces: Review | None = None


def review_document(review: SetupReview, prescription: Prescription, setup: Setup, decision: Decision) -> Review:
    """The document. ValueError where the decision does not fit its form, such as an id that is none."""
    return Review.model_validate_json(json.dumps(review_content(review, prescription, setup, decision)))


def review_content(review: SetupReview, prescription: Prescription, setup: Setup, decision: Decision) -> dict[str, Any]:
    """The members of the document, JSON types only; the same for the same decision, byte for byte."""
    content: dict[str, Any] = {
        "format": "wellposed/review",
        "version": "1.0",
        "notation": "ISO 3950",
        "id": decision.id,
        **_revision(decision.replaces),
        "issued": decision.issued,
        "answers": _answers(setup),
        "prescription": _answers(prescription),
        **({"reviewer": {"id": decision.reviewer}} if decision.reviewer else {}),
        "outcome": decision.outcome,
        "clauses": [{"clause": one.id, "outcome": one.outcome} for one in review.clauses],
    }
    accepted = [one.id for one in review.clauses if one.id in decision.accepted]
    content |= {"accepted": accepted} if accepted else {}
    content |= {"unopened": "accepted"} if decision.unopened and unopened(review) else {}
    return content if decision.outcome == "approved" else content | _returned(review, prescription, decision)


def _returned(review: SetupReview, prescription: Prescription, decision: Decision) -> dict[str, Any]:
    """What is revised first, and what is asked for; what is empty is left out."""
    revising = [name for name in revised_first(review) if name not in decision.accepted]
    asked = requests(review, prescription, decision.accepted, also_preferred=decision.also_preferred)
    told = {"revising": revising, "requests": asked.model_dump(mode="json", exclude_unset=True)}
    return {name: value for name, value in told.items() if value}


def _revision(replaced: Review | None) -> dict[str, Any]:
    return {"revision": 1} if replaced is None else {"revision": replaced.revision + 1, "replaces": digest(replaced)}


def _answers(document: Envelope) -> dict[str, Any]:
    return {"id": document.id, "revision": document.revision, "sha256": digest(document)}
