"""What the clinic answers to a setup: clause by clause, and what is asked for in the next one."""

from __future__ import annotations

from typing import Annotated, Literal, TypeVar

from pydantic import Field, Strict

from wellposed.model.base import ClauseId, Part, References, Stated
from wellposed.model.clauses import AnyGoal, AnyKeep, Movement
from wellposed.model.envelope import Answers, Envelope
from wellposed.model.making import AnyAttachment, Note, Staging
from wellposed.model.means import AnyAllowance, Exclusion
from wellposed.model.people import Prescriber
from wellposed.vocabulary.terms import ReviewOutcome

T = TypeVar("T")
Many = Annotated[tuple[T, ...], Strict(False), Field(max_length=2000)]


class ClauseOutcome(Part):
    """What the setup makes of one clause of the prescription."""

    clause: ClauseId
    outcome: ReviewOutcome


class Requests(Part):
    """What the next setup is asked for, in the clauses of a prescription.

    Amounts count from the start of treatment, as in the prescription. A request repeats what was ordered, for the teeth
    and contacts where it is not met; it orders nothing new. ``because`` names clauses of the prescription.
    """

    goals: Stated[Many[AnyGoal]] = None
    keep: Stated[Many[AnyKeep]] = None
    movements: Stated[Many[Movement]] = None
    allow: Stated[Many[AnyAllowance]] = None
    exclude: Stated[Many[Exclusion]] = None
    attachments: Stated[Many[AnyAttachment]] = None
    staging: Stated[Staging] = None


class Review(Envelope):
    """From the clinic to the laboratory: approved, or returned with requests.

    ``accepted`` are clauses approved though they are not met; ``unopened`` says that what moved though nothing opened
    it is approved with the rest. ``revising`` are clauses the prescriber changes first,
    because no setup could meet them: the laboratory waits for the next revision of the prescription.
    """

    format: Literal["wellposed/review"]
    notation: Literal["ISO 3950"]
    answers: Answers
    prescription: Answers
    reviewer: Stated[Prescriber] = None
    outcome: Literal["approved", "returned"]
    clauses: Many[ClauseOutcome]
    accepted: Stated[References] = None
    unopened: Stated[Literal["accepted"]] = None
    revising: Stated[References] = None
    requests: Stated[Requests] = None
    notes: Stated[Many[Note]] = None


REVIEW_PRIVATE = ("/reviewer",)
"""Members of a review whose values never appear in a message, beside those of a prescription."""

__all__ = ["REVIEW_PRIVATE", "ClauseOutcome", "Requests", "Review"]
