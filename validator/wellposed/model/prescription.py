"""The prescription, whole."""

from __future__ import annotations

from typing import Annotated, Literal, TypeVar

from pydantic import Field, Strict

from wellposed.model.base import Stated
from wellposed.model.clauses import AnyGoal, AnyKeep, Movement
from wellposed.model.envelope import Envelope
from wellposed.model.findings import AnyFinding, Problem
from wellposed.model.making import AnyAttachment, Appliance, Note, ProcessStep, Retention, Staging
from wellposed.model.means import AnyAllowance, Exclusion, Expectation
from wellposed.model.mouth import Condition, Record, Teeth, Treat
from wellposed.model.people import Laboratory, Patient, Prescriber

T = TypeVar("T")
Section = Stated[Annotated[tuple[T, ...], Strict(False), Field(max_length=2000)]]
"""A list that may be absent ("not stated") or empty ("none")."""


class Prescription(Envelope):
    """From the clinic to the laboratory: what was found, what to reach, what to keep, what may be used."""

    format: Literal["wellposed/prescription"]
    notation: Literal["ISO 3950"]
    prescriber: Prescriber
    laboratory: Laboratory
    treat: Stated[Treat] = None
    patient: Patient
    teeth: Teeth
    conditions: Section[Condition] = None
    records: Section[Record] = None
    findings: Section[AnyFinding] = None
    problems: Section[Problem] = None
    goals: Section[AnyGoal] = None
    keep: Section[AnyKeep] = None
    movements: Section[Movement] = None
    allow: Section[AnyAllowance] = None
    exclude: Section[Exclusion] = None
    expect: Section[Expectation] = None
    attachments: Section[AnyAttachment] = None
    staging: Stated[Staging] = None
    appliance: Section[Appliance] = None
    process: Section[ProcessStep] = None
    retention: Section[Retention] = None
    notes: Section[Note] = None


PRIVATE = ("/patient", "/prescriber", "/laboratory", "/notes", "/records")
"""Sections whose values never appear in a message."""

__all__ = ["PRIVATE", "Prescription", "Section"]
