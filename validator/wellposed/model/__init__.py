"""The documents as frozen strict models, one module a section."""

from wellposed.model.envelope import Envelope
from wellposed.model.prescription import PRIVATE, Prescription
from wellposed.model.receipt import Receipt
from wellposed.model.review import Review
from wellposed.model.setup import Setup

DOCUMENTS: dict[str, type[Envelope]] = {
    "wellposed/prescription": Prescription,
    "wellposed/setup": Setup,
    "wellposed/receipt": Receipt,
    "wellposed/review": Review,
}

__all__ = ["DOCUMENTS", "PRIVATE", "Prescription", "Receipt", "Review", "Setup"]
