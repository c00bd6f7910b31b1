"""The matter under review: a prescription, a setup, and the mouth as the setup leaves it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from wellposed import norms
from wellposed.kinematics.case import Case
from wellposed.kinematics.judgement import Judgement
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.translate import Translation
from wellposed.kinematics.verdict import judged
from wellposed.model.prescription import Prescription
from wellposed.model.setup import Setup
from wellposed.norms import Norms
from wellposed.review.ended import Ended
from wellposed.review.measured import Measures
from wellposed.review.plan import Plan
from wellposed.review.result import Span
from wellposed.review.travel import Way, ways
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.teeth import arch_of
from wellposed.vocabulary.units import DEG


@dataclass(frozen=True)
class Matter:
    """What the parts of a review look at; made once, each part when first asked for."""

    prescription: Prescription
    setup: Setup
    numbers: Norms = field(default_factory=norms.load)

    def of(self, setup: Setup) -> Matter:
        """The same prescription with another setup."""
        return replace(self, setup=setup)

    @cached_property
    def plan(self) -> Plan:
        """The setup, looked up."""
        return Plan(self.setup)

    @cached_property
    def ways(self) -> Mapping[tuple[str, Variable], Way]:
        """The way of each tooth and variable on the stated path, from the start; only those that are on it."""
        return ways(self.plan)

    @cached_property
    def ordered(self) -> Case:
        """The prescription as it is."""
        return Case(self.prescription, self.numbers)

    @cached_property
    def judgement(self) -> Judgement:
        """Whether any setup could have met it."""
        return judged(self.ordered)

    @cached_property
    def delivered(self) -> Case:
        """The prescription in the mouth of the setup: with the teeth taken out that the setup takes out."""
        taken = self.setup.extractions
        if taken is None or set(taken) == set(self.ordered.mouth.extracted):
            return self.ordered
        return Case(self.prescription, self.numbers, taken=frozenset(taken))

    @property
    def mouth(self) -> Mouth:
        """The mouth of the setup."""
        return self.delivered.mouth

    @property
    def translation(self) -> Translation:
        """What the clauses open in it, and which way its teeth face."""
        return self.delivered.quick

    @cached_property
    def ended(self) -> Ended:
        """Where the setup leaves the teeth."""
        taken = self.ordered.mouth.extracted if self.setup.extractions is None else ()
        return Ended(self.mouth, self.plan, frozenset(arch_of(tooth) for tooth in taken))

    @cached_property
    def measures(self) -> Measures:
        """The measures there."""
        return Measures(self.ended, self.translation.frame)

    def within(self, unit: str) -> float:
        """How far off still counts as met, in this unit."""
        return self.numbers.value("review.within-deg" if unit == DEG else "review.within-mm")

    def expected(self, measure: str) -> Span:
        """What is counted on beside the movements, as a change of the measure."""
        clauses = [one for one in self.prescription.expect or () if one.measure == measure]
        return Span(sum(one.at_least for one in clauses), sum(one.at_most for one in clauses))


def unit_of(measure: str) -> str:
    """The unit the model keeps a measure in."""
    return MEASURE_KINDS[measure].unit
