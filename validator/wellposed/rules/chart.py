"""A prescription as the clinical rules look at it: what was measured, what is asked, what may be used, how it judged.

Nothing here changes the prescription. Amounts are in the unit of their measure or motion (mm, deg); a measurement
that was not stated is ``None``, never nought.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING, Any, NamedTuple

from wellposed import norms
from wellposed.consistency.whole import Place, Whole
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.opened import Opened
from wellposed.kinematics.openings import sensed
from wellposed.model.clauses import Movement
from wellposed.model.findings import Finding, ToothFinding
from wellposed.model.means import EnamelReduction
from wellposed.model.prescription import Prescription
from wellposed.norms import Norms
from wellposed.vocabulary.motions import MOTIONS, Variable

if TYPE_CHECKING:
    from wellposed.kinematics.judgement import Judgement

GROWING, COMPLETE = "growing", "complete"
_KINDS = {"findings": "measurement", "problems": "diagnosis", "expect": "expectation"}


class Move(NamedTuple):
    """One tooth of one ordered movement.

    sign   +1 or -1: the sense of ``variable`` as in ``vocabulary.motions``
    least  lower bound counted in that sense, mm or deg; None if none is stated
    most   upper bound; None if none is stated
    """

    tooth: str
    variable: Variable
    sign: int
    least: float | None
    most: float | None
    place: Place

    @property
    def sure(self) -> float:
        """What must be moved at the least."""
        return self.least or 0.0

    @property
    def reach(self) -> float:
        """How far it may go: the upper bound, else the lower one."""
        return self.most if self.most is not None else self.sure


class Reduction(NamedTuple):
    """Enamel that may be taken at one contact, both teeth together, mm.

    per_contact  the most at this contact; None if only a sum is stated
    in_all       the most of the whole allowance; None if none is stated
    """

    contact: str
    per_contact: float | None
    in_all: float | None
    place: Place


@dataclass(frozen=True)
class Chart:
    """One prescription, with what the rules look up.

    rx       the prescription
    numbers  the norms, with a practice profile in place
    earlier  the revisions before this one, oldest first, as far as they were given
    """

    rx: Prescription
    numbers: Norms = field(default_factory=norms.load)
    earlier: tuple[Prescription, ...] = ()
    judged: Judgement | None = None

    @cached_property
    def whole(self) -> Whole:
        """Every part with its place."""
        return Whole(self.rx)

    @cached_property
    def mouth(self) -> Mouth:
        """Teeth in line, contacts, what was measured."""
        return Mouth(self.rx)

    @cached_property
    def judgement(self) -> Judgement:
        """What the kinematics say."""
        from wellposed.kinematics.verdict import judge  # noqa: PLC0415 - the rules are listed without the solver

        return self.judged or judge(self.rx, self.numbers)

    def of(self, *sections: str) -> Iterator[Place]:
        """The parts of these sections, and the parts inside them."""
        return self.whole.of(*sections)

    # numbers

    def limit(self, key: str) -> float:
        """A number of the norms, in its unit."""
        return self.numbers.value(key)

    def figure(self, key: str) -> dict[str, Any]:
        """A number as a finding tells it: value, unit, how sure, and the keys of its sources."""
        norm = self.numbers.norm(key)
        return {
            "key": key,
            "value": norm.value,
            "unit": norm.unit,
            "sure": norm.sure,
            "sources": list(norm.sources),
        }

    # what was measured

    def value(self, measure: str) -> float | None:
        """Present value of a measure in its own unit (overbite in mm); None if not stated, or stated twice apart."""
        return self.mouth.baseline(measure)

    def percent(self) -> float | None:
        """Overbite in percent of the lower incisor's crown: as stated, else from mm and the crown height."""
        stated = next((one.value for one in self.mouth.stated("overbite") if one.unit == "percent"), None)
        if stated is not None:
            return stated
        overbite, crown = self.value("overbite"), self.mouth.crown_height
        return None if overbite is None or not crown else overbite / crown * 100

    def found(self, *measures: str) -> tuple[str, ...]:
        """The ids of the findings of these measures (of the mouth or of single teeth)."""
        return tuple(
            one.id
            for one in self.rx.findings or ()
            if (isinstance(one, Finding) and one.measure in measures)
            or (isinstance(one, ToothFinding) and one.tooth_measure in measures)
        )

    def tooth_values(self, measure: str) -> dict[str, float]:
        """A measure of single teeth (``tooth-width``, ``crown-height``, ``rotation``, ``displacement``) by tooth."""
        return self.mouth.tooth_values(measure)

    # who

    @property
    def age(self) -> float | None:
        """Age in years, if stated."""
        return self.rx.patient.age_years

    @property
    def growing(self) -> bool | None:
        """Whether growth is expected; None if not known."""
        stated = self.rx.patient.growth
        return None if stated not in (GROWING, COMPLETE) else stated == GROWING

    # the mouth

    def state(self, tooth: str, *states: str) -> str | None:
        """The first of these states a tooth is said to be in."""
        return next((state for state in states if state in self.mouth.states.get(tooth, ())), None)

    def condition(self, *names: str) -> Iterator[Place]:
        """The stated conditions of these names."""
        return (place for place in self.of("conditions") if place.said("condition") in names)

    def problems(self, *terms: str) -> Iterator[Place]:
        """The stated problems of these terms."""
        return (place for place in self.of("problems") if place.said("problem") in terms)

    # what is asked and allowed

    @cached_property
    def moves(self) -> tuple[Move, ...]:
        """Every ordered movement, tooth by tooth."""
        return tuple(move for place in self.of("movements") for move in _moves(place))

    def moved(self, variable: Variable, sign: int = 0, teeth: Iterable[str] | None = None) -> Iterator[Move]:
        """The ordered movements of a variable, in one sense (0: either) and of some teeth (None: any)."""
        among = None if teeth is None else set(teeth)
        for move in self.moves:
            if move.variable == variable and sign in (0, move.sign) and (among is None or move.tooth in among):
                yield move

    def allowed(self, *uses: str) -> Iterator[Place]:
        """The allowances of these means."""
        return (place for place in self.of("allow") if place.said("use") in uses)

    def excluded(self, *means: str) -> Iterator[Place]:
        """The exclusions of these means."""
        return (place for place in self.of("exclude") if place.said("means") in means)

    @cached_property
    def reductions(self) -> tuple[Reduction, ...]:
        """Enamel reduction contact by contact, contacts in the order of the arch (``12-11``, ``31-32``)."""
        return tuple(
            Reduction(contact, place.part.per_contact, place.part.in_all, place)
            for place in self.allowed("enamel-reduction")
            if isinstance(place.part, EnamelReduction)
            for contact in self.whole.reduced(place.part)
        )

    @cached_property
    def opened(self) -> Opened:
        """All that the prescription opens."""
        return Opened(self.mouth)

    def reach(self, tooth: str, variable: Variable, sign: int) -> float:
        """How far any clause lets a tooth go in one sense, mm or deg: 0 where it is silent, ``inf`` without bound."""
        return self.opened.reach(sensed(tooth, variable, sign))

    # what rests on what

    def kind(self, name: str) -> str:
        """What the statement of this id is: a measurement, a diagnosis, an expectation or a clause."""
        place = self.place(name)
        return _KINDS.get(place.section, "clause") if place else "clause"

    def place(self, name: str) -> Place | None:
        """The part of this id."""
        return self._by_id.get(name)

    @cached_property
    def _by_id(self) -> dict[str, Place]:
        return {place.owner: place for place in self.whole.places if place.said("id")}

    def because(self, place: Place) -> tuple[str, ...]:
        """The ids of the findings and problems a part answers, those behind its problems too."""
        direct = tuple(place.said("because") or ())
        behind = (more for one in direct if (at := self.place(one)) for more in at.said("because") or ())
        return tuple(dict.fromkeys((*direct, *behind)))


def _moves(place: Place) -> Iterator[Move]:
    part = place.part
    if isinstance(part, Movement):
        variable, sign = MOTIONS[part.motion]
        yield from (Move(tooth, variable, sign, part.at_least, part.at_most, place) for tooth in part.teeth)
