"""Attachments, staging, what is built beside the movement, process, retention, notes, extensions."""

from __future__ import annotations

from typing import Annotated

from pydantic import Discriminator, Field, JsonValue, Strict, Tag

from wellposed.model.base import (
    Amount,
    ClauseId,
    Date,
    Part,
    References,
    Stated,
    Text,
    ToothList,
    ToothNumber,
    Unit,
    Whole,
    Words,
    told_by,
)
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.terms import (
    AppliancePart,
    Arch,
    AttachmentOtherwise,
    AttachmentReason,
    AttachmentShape,
    Relation,
    Retainer,
    Step,
    Strength,
    Trimming,
    Wear,
)


class Attachment(Part):
    """What every attachment clause has; its strength is the member that names the teeth."""

    id: ClauseId
    reason: Stated[AttachmentReason] = None
    shape: Stated[AttachmentShape] = None
    words: Stated[Words] = None
    because: Stated[References] = None


class AttachmentMust(Attachment):
    """These teeth carry one."""

    must: ToothList


class AttachmentMustNot(Attachment):
    """These teeth carry none."""

    must_not: ToothList


class AttachmentMay(Attachment):
    """These teeth may carry one."""

    may: ToothList


class AttachmentPrefer(Attachment):
    """One is wished for on these teeth."""

    prefer: ToothList


class AttachmentPreferNot(Attachment):
    """None is wished for on these teeth."""

    prefer_not: ToothList


class AttachmentRest(Attachment):
    """What holds for the teeth no other attachment clause names."""

    otherwise: AttachmentOtherwise


AnyAttachment = Annotated[
    Annotated[AttachmentMust, Tag("must")]
    | Annotated[AttachmentMustNot, Tag("must_not")]
    | Annotated[AttachmentMay, Tag("may")]
    | Annotated[AttachmentPrefer, Tag("prefer")]
    | Annotated[AttachmentPreferNot, Tag("prefer_not")]
    | Annotated[AttachmentRest, Tag("otherwise")],
    Discriminator(told_by("must", "must_not", "may", "prefer", "prefer_not", "otherwise")),
]


class LargestStep(Part):
    """The largest step of one variable per aligner."""

    variable: Variable
    amount: Annotated[float, Field(gt=0, le=30)]
    unit: Unit
    teeth: Stated[ToothList] = None


class Order(Part):
    """Two clauses in order; recorded and read back, checked for cycles, not simulated."""

    id: ClauseId
    first: ClauseId
    relation: Relation
    then: ClauseId
    words: Stated[Words] = None


class Staging(Part):
    """How the movement is cut into aligners."""

    id: ClauseId
    strength: Strength
    largest_steps: Stated[Annotated[tuple[LargestStep, ...], Strict(False), Field(max_length=24)]] = None
    wear_interval_days: Stated[Annotated[Whole, Field(ge=1, le=60)]] = None
    most_aligners: Stated[Annotated[Whole, Field(ge=1, le=200)]] = None
    order: Stated[Annotated[tuple[Order, ...], Strict(False), Field(max_length=50)]] = None


class Appliance(Part):
    """What is built beside the movement."""

    id: ClauseId
    part: AppliancePart
    arch: Stated[Arch] = None
    teeth: Stated[ToothList] = None
    start: Stated[ToothNumber] = None
    end: Stated[ToothNumber] = None
    wear: Stated[Wear] = None
    trimming: Stated[Trimming] = None
    size: Stated[Amount] = None
    unit: Stated[Unit] = None
    words: Stated[Words] = None


class ProcessStep(Part):
    """Something that happens around the making: approvals, build-ups, extractions and their dates."""

    id: ClauseId
    step: Step
    teeth: Stated[ToothList] = None
    date: Stated[Date] = None
    before: Stated[ClauseId] = None
    words: Stated[Words] = None


class Retention(Part):
    """What is wanted at the end; overcorrection belongs to its goal or movement."""

    id: ClauseId
    arch: Arch
    retainer: Retainer
    teeth: Stated[ToothList] = None
    words: Stated[Words] = None


class Note(Part):
    """Free text. It never binds."""

    text: Text
    about: Stated[References] = None


class Extension(Part):
    """Somebody's own content; a critical one that is unknown is refused, any other is kept untouched."""

    critical: bool
    content: JsonValue
