"""A setup as the rules about it look at it: its movements tooth by tooth, the order beside it, the norms in force."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Any, TypeVar

from wellposed.kinematics.mouth import Contact, Mouth
from wellposed.model.setup import Setup
from wellposed.norms import Norms
from wellposed.review.amounts import Amount, amounts
from wellposed.review.plan import Placed, Plan
from wellposed.review.result import MeasureLine
from wellposed.review.travel import Way
from wellposed.rules.chart import Chart
from wellposed.vocabulary.contacts import normal
from wellposed.vocabulary.motions import VARIABLE_UNITS, Variable
from wellposed.vocabulary.teeth import ARCHES, arch_of

if TYPE_CHECKING:
    from wellposed.review.matter import Matter

K = TypeVar("K")
V = TypeVar("V")
Facts = dict[str, Any]


def grouped(pairs: Iterable[tuple[K, V]]) -> dict[K, list[V]]:
    """Values by key, in the order in which they come."""
    found: dict[K, list[V]] = {}
    for key, value in pairs:
        found.setdefault(key, []).append(value)
    return found


@dataclass(frozen=True)
class Held:
    """One setup beside its prescription.

    matter    both, and the mouth as the setup leaves it
    measures  every measure the movements change or the setup claims, already compared
    """

    matter: Matter
    measures: tuple[MeasureLine, ...] = ()

    @property
    def numbers(self) -> Norms:
        """The norms, with a practice profile in place."""
        return self.matter.numbers

    @property
    def setup(self) -> Setup:
        """The setup."""
        return self.matter.setup

    @property
    def plan(self) -> Plan:
        """The setup, looked up."""
        return self.matter.plan

    @property
    def mouth(self) -> Mouth:
        """The mouth, without the teeth the setup takes out."""
        return self.matter.mouth

    @cached_property
    def chart(self) -> Chart:
        """The prescription, looked up."""
        return Chart(self.matter.prescription, self.numbers)

    def limit(self, key: str) -> float:
        """A number of the norms, in its unit."""
        return self.numbers.value(key)

    def figure(self, key: str) -> Facts:
        """A number of the norms as a finding tells it."""
        return self.chart.figure(key)

    def within(self, variable: Variable) -> float:
        """What counts as no movement in this variable, mm or deg."""
        return self.matter.within(VARIABLE_UNITS[variable])

    # teeth

    @cached_property
    def standing(self) -> tuple[str, ...]:
        """The teeth in line once extractions are done, both arches."""
        return tuple(tooth for arch in ARCHES for tooth in self.mouth.rows[arch].teeth)

    @cached_property
    def free(self) -> tuple[str, ...]:
        """Those of them that can be moved."""
        return tuple(tooth for tooth in self.standing if tooth not in self.mouth.locked)

    @cached_property
    def moved(self) -> Placed:
        """Every stated movement of a tooth that can be moved, mm or deg."""
        free = set(self.free)
        return {at: amount for at, amount in self.plan.moved.items() if amount and at[0] in free}

    def going(self, tooth: str, variable: Variable) -> float:
        """How far such a tooth goes; 0 where nothing is stated."""
        return self.moved.get((tooth, variable), 0.0)

    @property
    def every_way(self) -> Mapping[tuple[str, Variable], Way]:
        """The way of each tooth and variable on the stated path, from the start; only those that are on it."""
        return self.matter.ways

    @cached_property
    def ways(self) -> Mapping[tuple[str, Variable], Way]:
        """Those of teeth that can be moved."""
        free = set(self.free)
        return {at: way for at, way in self.every_way.items() if at[0] in free}

    @cached_property
    def amounts(self) -> tuple[Amount, ...]:
        """What the plan comes to, wherever a limit is set."""
        return tuple(amounts(self.matter.ended, self.moved, self.numbers))

    def contact(self, name: str) -> Contact | None:
        """A contact between two teeth in line, by its name in either order."""
        return self._contacts.get(normal(name))

    @cached_property
    def _contacts(self) -> dict[str, Contact]:
        return {one.name: one for arch in ARCHES for one in self.mouth.rows[arch].contacts}

    # places in the setup

    def at(self, variable: Variable, teeth: Iterable[str]) -> str:
        """Where a movement stands: of one tooth its number, of several the table of the first."""
        listed = list(teeth)
        table, _, tooth = self._tables.get((listed[0], variable), "/movements").partition("/values")
        return f"{table}/values{tooth}" if tooth and len(listed) == 1 else table

    def on_path(self, tooth: str, variable: Variable, aligner: int) -> str:
        """Where the place of a tooth after an aligner stands; where its movement does, if the path does not say."""
        arch = arch_of(tooth)
        for number, stage in enumerate(self.setup.stages or ()):
            for table, one in enumerate(stage.movements if (stage.arch, stage.aligner) == (arch, aligner) else ()):
                if one.variable == variable and tooth in one.values:
                    return f"/stages/{number}/movements/{table}/values/{tooth}"
        return self.at(variable, [tooth])

    @cached_property
    def _tables(self) -> dict[tuple[str, Variable], str]:
        return {
            (tooth, table.variable): f"/movements/{number}/values/{tooth}"
            for number, table in enumerate(self.setup.movements)
            for tooth in table.values
        }
