"""Measurements and the diagnosis that rests on them."""

from __future__ import annotations

from typing import Annotated

from pydantic import Discriminator, Field, Strict, Tag

from wellposed.model.base import (
    Amount,
    ClauseId,
    ContactList,
    Date,
    Part,
    References,
    Signed,
    Stated,
    ToothList,
    ToothNumber,
    Unit,
    Words,
    told_by,
)
from wellposed.vocabulary.measures import Measure, ToothMeasure
from wellposed.vocabulary.terms import Arch, Grade, JawPosition, Side
from wellposed.vocabulary.terms import Problem as ProblemTerm

Pair = Annotated[tuple[ToothNumber, ...], Strict(False), Field(min_length=2, max_length=2)]
"""One upper and one lower tooth."""


class Finding(Part):
    """A measurement of the mouth. Not stated, none and zero differ: absent, value 0, and no finding."""

    id: ClauseId
    measure: Measure
    value: Signed
    unit: Unit
    pair: Stated[Pair] = None
    contacts: Stated[ContactList] = None
    error: Stated[Amount] = None
    method: Stated[Words] = None
    jaw_position: Stated[JawPosition] = None
    date: Stated[Date] = None


class ToothFinding(Part):
    """One measure of several teeth, tooth number to value."""

    id: ClauseId
    tooth_measure: ToothMeasure
    values: Annotated[dict[ToothNumber, Signed], Field(min_length=1, max_length=52)]
    unit: Unit
    error: Stated[Amount] = None
    method: Stated[Words] = None
    date: Stated[Date] = None


AnyFinding = Annotated[
    Annotated[ToothFinding, Tag("tooth_measure")] | Annotated[Finding, Tag("measure")],
    Discriminator(told_by("tooth_measure", "measure")),
]


class Problem(Part):
    """A diagnosis in trade terms, and the findings it rests on."""

    id: ClauseId
    problem: ProblemTerm
    because: Stated[References] = None
    arch: Stated[Arch] = None
    side: Stated[Side] = None
    grade: Stated[Grade] = None
    teeth: Stated[ToothList] = None
    words: Stated[Words] = None
