"""What the laboratory plans: where the teeth are to stand, and how they get there."""

from __future__ import annotations

from typing import Annotated, Literal, TypeVar

from pydantic import Field, Strict

from wellposed.model.base import (
    Amount,
    ClauseId,
    ContactName,
    Part,
    Signed,
    Stated,
    ToothNumber,
    Unit,
    Whole,
    Words,
)
from wellposed.model.envelope import Answers, Envelope
from wellposed.model.findings import Pair
from wellposed.model.making import Note
from wellposed.model.people import Laboratory
from wellposed.vocabulary.measures import Measure
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.terms import Arch, AttachmentReason, AttachmentShape, Standing

T = TypeVar("T")
Many = Annotated[tuple[T, ...], Strict(False), Field(max_length=2000)]
Count = Annotated[Whole, Field(ge=0, le=200)]
Number = Annotated[Whole, Field(ge=1, le=200)]


class MovementTable(Part):
    """One variable of several teeth, tooth to signed movement from the start, at the crown, in its own jaw's frame.

    A tooth that is not in the table is not stated.
    """

    variable: Variable
    unit: Unit
    values: Annotated[dict[ToothNumber, Signed], Field(min_length=1, max_length=52)]


Movements = Annotated[tuple[MovementTable, ...], Strict(False), Field(max_length=24)]


class Aligners(Part):
    """How many aligners each arch gets; 0 is none."""

    upper: Stated[Count] = None
    lower: Stated[Count] = None


class Stage(Part):
    """Where teeth of one arch stand after one of its aligners, counted from the start."""

    aligner: Number
    arch: Arch
    movements: Movements


class PlannedReduction(Part):
    """Enamel taken off at a contact, both teeth together, before this aligner of the arch is first worn."""

    contact: ContactName
    amount: Amount
    unit: Unit
    before_aligner: Stated[Number] = None


class PlannedAttachment(Part):
    """A tooth that carries one, from this aligner of its arch on."""

    tooth: ToothNumber
    reason: Stated[AttachmentReason] = None
    shape: Stated[AttachmentShape] = None
    from_aligner: Stated[Number] = None
    words: Stated[Words] = None


class Prediction(Part):
    """What a measure is to be in the end, as the laboratory computes it."""

    measure: Measure
    pair: Stated[Pair] = None
    value: Signed
    unit: Unit


class Statement(Part):
    """What the laboratory says of a clause of the prescription that teeth do not show."""

    clause: ClauseId
    standing: Standing
    words: Stated[Words] = None


class Setup(Envelope):
    """From the laboratory to the clinic: the planned tooth positions.

    ``unlisted`` says what holds of teeth, in line and not taken out, and of variables that no table names; without it
    they are not stated.
    """

    format: Literal["wellposed/setup"]
    notation: Literal["ISO 3950"]
    answers: Answers
    laboratory: Stated[Laboratory] = None
    aligners: Stated[Aligners] = None
    wear_interval_days: Stated[Annotated[Whole, Field(ge=1, le=60)]] = None
    movements: Movements
    unlisted: Stated[Literal["unmoved"]] = None
    extractions: Stated[Annotated[tuple[ToothNumber, ...], Strict(False), Field(max_length=52)]] = None
    reductions: Stated[Many[PlannedReduction]] = None
    attachments: Stated[Many[PlannedAttachment]] = None
    stages: Stated[Many[Stage]] = None
    predicted: Stated[Many[Prediction]] = None
    statements: Stated[Many[Statement]] = None
    notes: Stated[Many[Note]] = None


__all__ = ["MovementTable", "Prediction", "Setup", "Stage"]
