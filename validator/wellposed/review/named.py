"""The clauses of a prescription by section and id."""

from __future__ import annotations

from typing import Any

from wellposed.model.prescription import Prescription
from wellposed.review.result import Section

__all__ = ["clause_of"]


def clause_of(prescription: Prescription, section: Section, clause_id: str) -> Any:
    """The clause of this id in a section. KeyError where there is none."""
    found = getattr(prescription, section)
    for item in (found,) if section == "staging" else found or ():
        if item is not None and item.id == clause_id:
            return item
    raise KeyError(clause_id)
