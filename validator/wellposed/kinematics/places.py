"""Where each clause of a prescription stands."""

from __future__ import annotations

from typing import Any

from wellposed.model.prescription import Prescription

_SECTIONS = ("goals", "keep", "movements", "allow", "exclude", "expect", "attachments", "findings")


class Places:
    """Where each clause stands: id to pointer and clause."""

    def __init__(self, prescription: Prescription) -> None:
        self.prescription = prescription
        self.pointers: dict[str, str] = {}
        self.clauses: dict[str, Any] = {}
        for section in _SECTIONS:
            for number, item in enumerate(getattr(prescription, section) or ()):
                self.pointers[item.id] = f"/{section}/{number}"
                self.clauses[item.id] = item
        if prescription.staging:
            self.pointers[prescription.staging.id] = "/staging"
            self.clauses[prescription.staging.id] = prescription.staging
        self.order = {clause_id: number for number, clause_id in enumerate(self.pointers)}

    def pointer(self, clause_id: str) -> str:
        """RFC 6901 pointer of a clause."""
        return self.pointers.get(clause_id, "")

    def sorted(self, ids: set[str]) -> tuple[str, ...]:
        """Clause ids in document order."""
        return tuple(sorted(ids, key=lambda clause_id: self.order.get(clause_id, 0)))
