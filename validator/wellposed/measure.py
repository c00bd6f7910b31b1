"""bytes → what can be derived from the measurements in them, or why they cannot be used."""

from __future__ import annotations

from dataclasses import dataclass

from wellposed.consistency import consistency, envelope_faults
from wellposed.derive.table import Derived, derived, derived_from_widths
from wellposed.findings import Finding, Severity, ordered
from wellposed.model import Prescription
from wellposed.model.envelope import Envelope
from wellposed.reading import Document, read_document, structured
from wellposed.reading.widths import WidthFault, read_widths
from wellposed.report import NOT_JUDGED, REFUSED, UNREADABLE, Report


@dataclass(frozen=True, slots=True)
class Measures:
    """What was derived, and from which document; a table of widths has no id and no revision."""

    derived: tuple[Derived, ...]
    id: str | None = None
    revision: int | None = None


def measure(data: bytes) -> Measures | Report:
    """All that can be derived from a prescription, or the report on why it cannot be used.

    The report is ``unreadable``, ``refused``, or ``not-judged`` for another document of the conversation.
    """
    document = read_document(data)
    if not isinstance(document, Document):
        return Report(UNREADABLE, ordered(document))
    made = structured(document)
    if not isinstance(made, Envelope):
        return Report(REFUSED, document.placed(ordered(made)))
    found = _stops(made)
    if found:
        return Report(REFUSED, document.placed(ordered(found)), made.id, made.revision)
    if not isinstance(made, Prescription):
        return Report(NOT_JUDGED, (), made.id, made.revision)
    return Measures(derived(made), made.id, made.revision)


def _stops(made: Envelope) -> list[Finding]:
    """Faults between the parts that leave nothing to measure."""
    found = consistency(made) if isinstance(made, Prescription) else envelope_faults(made)
    return [finding for finding in found if finding.severity == Severity.STOP]


def measure_widths(data: bytes) -> Measures | tuple[WidthFault, ...]:
    """What follows from a plain table of tooth widths, or everything wrong with the table."""
    widths = read_widths(data)
    return Measures(derived_from_widths(widths)) if isinstance(widths, dict) else widths
