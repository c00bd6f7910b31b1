"""What the laboratory answers at once: the document is accepted, or returned with what was found."""

from __future__ import annotations

from typing import Annotated, Literal, TypeVar

from pydantic import Field, Strict

from wellposed.model.base import ClauseId, Identifier, Moment, Part, Stated, Whole, one_line
from wellposed.model.envelope import Answers, Envelope
from wellposed.model.people import Laboratory
from wellposed.vocabulary.terms import Weight

T = TypeVar("T")
Many = Annotated[tuple[T, ...], Strict(False), Field(max_length=2000)]

RuleName = Annotated[
    str, one_line("^[a-z][a-z0-9]*(-[a-z0-9]+)*$", 64, 'the name of a rule, such as "cannot-hold-together"')
]
Pointer = Annotated[
    str,
    one_line("^(/[A-Za-z0-9._~:-]*)*$", 300, 'a JSON Pointer (RFC 6901), such as "/allow/0"; "" is the whole document'),
]


class ReceiptFinding(Part):
    """One finding, by its rule and its place: a receipt repeats no value of the document."""

    rule: RuleName
    severity: Weight
    pointer: Pointer
    clauses: Stated[Annotated[tuple[ClauseId, ...], Strict(False), Field(min_length=1, max_length=2000)]] = None


class Program(Part):
    """What looked at the document; another version may find something else."""

    name: Identifier
    version: Identifier


class Receipt(Envelope):
    """From the laboratory to the clinic: the document is stored there; accepted, or returned with findings.

    ``received`` is when the document first came in, ``issued`` when this receipt was made. ``more_findings`` counts
    those that are not listed, the lightest.
    """

    format: Literal["wellposed/receipt"]
    answers: Answers
    outcome: Literal["accepted", "returned"]
    laboratory: Stated[Laboratory] = None
    received: Stated[Moment] = None
    program: Stated[Program] = None
    findings: Stated[Many[ReceiptFinding]] = None
    more_findings: Stated[Annotated[Whole, Field(ge=1, le=1_000_000)]] = None


__all__ = ["Program", "Receipt", "ReceiptFinding"]
