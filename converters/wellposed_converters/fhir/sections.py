"""Where each member of a prescription goes that FHIR has no resource or element for: one table."""

from __future__ import annotations

from typing import Final, NamedTuple

from wellposed_converters.fhir.shape import Slot, slots


class Section(NamedTuple):
    """A member of the prescription, the name of its extension, whether it is a list, what FHIR says of it elsewhere."""

    member: str
    name: str
    many: bool = True
    without: tuple[str, ...] = ()

    @property
    def slots(self) -> tuple[Slot, ...]:
        """The members of one entry, as the extension holds them."""
        return slots(self.member, self.name, self.without)


ON_ORDER: Final = (
    Section("prescriber", "prescriber", False, ("id",)),
    Section("patient", "patient", False, ("reference",)),
    Section("teeth", "teeth", False, ("particulars",)),
    Section("conditions", "condition"),
    Section("records", "record"),
    Section("goals", "goal"),
    Section("keep", "keep"),
    Section("movements", "movement"),
    Section("allow", "allow"),
    Section("exclude", "exclude"),
    Section("expect", "expect"),
    Section("attachments", "attachment"),
    Section("process", "process"),
    Section("retention", "retention"),
)
ON_SERIES: Final = (
    Section("staging", "staging", False, ("wear_interval_days", "most_aligners")),
    Section("appliance", "appliance"),
)
FINDING: Final = Section(
    "findings", "finding", True, ("measure", "tooth_measure", "value", "values", "unit", "method", "date")
)
PROBLEM: Final = Section("problems", "problem", True, ("problem", "because", "teeth", "words"))
