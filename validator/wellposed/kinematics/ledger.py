"""What a prescription asks for, as it is entered into a frame's system."""

from __future__ import annotations

from collections.abc import Iterable
from math import inf

from wellposed.kinematics.frame import Frame
from wellposed.kinematics.rows import Key, Kind, Terms
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.teeth import arch_of

Demand = tuple[Terms, float, float]


def arch_of_contact(contact: str) -> str:
    """The arch of a contact."""
    return arch_of(teeth_of(contact)[0])


class Ledger:
    """The demands of a prescription.

    demands  terms and bounds of every demand and kept measure, by member
    unmet    clauses that cannot be checked: clause id and the measure they lack ("" for teeth)
    """

    def __init__(self, frame: Frame) -> None:
        self.frame = frame
        self.mouth = frame.mouth
        self.system = frame.system
        self.demands: dict[Key, Demand] = {}
        self.unmet: list[tuple[str, str]] = []

    def demand(self, key: Key, terms: Terms, low: float = -inf, high: float = inf) -> None:
        """A demand over terms; a single column is bound directly."""
        self.demands[key] = (terms, low, high)
        if len(terms) == 1:
            ((column, factor),) = terms.items()
            self.system.bind_column(key, Kind.DEMAND, column, *sorted((low / factor, high / factor)))
        else:
            self.system.bind_row(key, Kind.DEMAND, terms, low, high)

    def keep(self, key: Key, terms: Terms, low: float, high: float) -> None:
        """Terms kept between two values."""
        self.demands[key] = (terms, low, high)
        self.system.bind_row(key, Kind.KEEP, terms, low, high)

    def lacks(self, clause_id: str, measure: str) -> None:
        """Note that a clause cannot be checked."""
        self.unmet.append((clause_id, measure))

    def need_room(self, clause_id: str, contacts: Iterable[str], what: str) -> None:
        """Note which arches' crowding or spacing would have to be known at these contacts."""
        for arch in sorted({arch_of_contact(contact) for contact in contacts}):
            if not self.mouth.room_known(arch):
                self.lacks(clause_id, f"{arch}-{what}")
