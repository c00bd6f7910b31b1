"""A setup looked up: movements by tooth and variable, reductions by contact, the path aligner by aligner."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from wellposed.model.setup import MovementTable, Setup
from wellposed.vocabulary.contacts import normal
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.terms import Arch

Placed = dict[tuple[str, Variable], float]
"""Movement from the start of a tooth's variable, mm or deg, in the variable's own sign."""


@dataclass(frozen=True)
class Plan:
    """What a setup says, by name."""

    setup: Setup

    @cached_property
    def moved(self) -> Placed:
        """Every movement that is stated."""
        return _placed(self.setup.movements)

    def movement(self, tooth: str, variable: Variable) -> float | None:
        """How far a tooth moves, mm or deg; None where the setup does not say."""
        still = 0.0 if self.setup.unlisted == "unmoved" else None
        return self.moved.get((tooth, variable), still)

    @cached_property
    def reductions(self) -> dict[str, float]:
        """Enamel taken off at each contact, both teeth together, mm."""
        total: dict[str, float] = {}
        for one in self.setup.reductions or ():
            name = normal(one.contact)
            total[name] = total.get(name, 0.0) + one.amount
        return total

    def reduction(self, contact: str) -> float | None:
        """Enamel taken off at a contact, mm; None where the setup says nothing of reductions at all."""
        if self.setup.reductions is None:
            return None
        return self.reductions.get(normal(contact), 0.0)

    @cached_property
    def carriers(self) -> frozenset[str] | None:
        """Teeth that carry an attachment; None where the setup says nothing of them."""
        if self.setup.attachments is None:
            return None
        return frozenset(one.tooth for one in self.setup.attachments)

    @cached_property
    def path(self) -> dict[Arch, dict[int, Placed]]:
        """Per arch, aligner number to where its teeth stand after it; empty where no path is stated."""
        found: dict[Arch, dict[int, Placed]] = {}
        for stage in sorted(self.setup.stages or (), key=lambda one: one.aligner):
            found.setdefault(stage.arch, {}).setdefault(stage.aligner, {}).update(_placed(stage.movements))
        return found

    def aligners(self, arch: Arch) -> int | None:
        """How many aligners an arch gets; None where it is not stated."""
        stated = self.setup.aligners
        return None if stated is None else getattr(stated, arch)


def _placed(tables: Iterable[MovementTable]) -> Placed:
    return {(tooth, table.variable): value for table in tables for tooth, value in table.values.items()}
