"""bytes → what can be derived from the measurements in them, or why they cannot be used."""

from __future__ import annotations

from dataclasses import dataclass

from wellposed.check import sound
from wellposed.derive.table import Derived, derived, derived_from_widths
from wellposed.reading.widths import WidthFault, read_widths
from wellposed.report import Report


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
    made = sound(data)
    return made if isinstance(made, Report) else Measures(derived(made), made.id, made.revision)


def measure_widths(data: bytes) -> Measures | tuple[WidthFault, ...]:
    """What follows from a plain table of tooth widths, or everything wrong with the table."""
    widths = read_widths(data)
    return Measures(derived_from_widths(widths)) if isinstance(widths, dict) else widths
