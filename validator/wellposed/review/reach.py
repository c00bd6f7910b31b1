"""How much nearer another setup could have come to a clause, with all else no worse than this one leaves it.

The linear system of the check, every bound loosened as far as this setup passes it: the setup itself is then one of its
plans, and a plan that comes nearer to one bound is worse in nothing. What is counted on is left out on both sides.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from wellposed import norms
from wellposed.kinematics.case import is_space, must
from wellposed.kinematics.rows import Bound, Member, System, Terms, mean
from wellposed.kinematics.search import Members
from wellposed.kinematics.solve import Model
from wellposed.kinematics.translate import Translation
from wellposed.review.matter import Matter
from wellposed.review.result import Nearer, Reviewed, Unasked
from wellposed.review.sums import Sums, middle
from wellposed.review.weighing import ROUNDING
from wellposed.vocabulary.contacts import normal
from wellposed.vocabulary.motions import VARIABLE_UNITS, VARIABLES
from wellposed.vocabulary.units import DEG, MM

_NO_SUM = ("rotation-left", "displacement-left", "alike", "wear-interval")
"""Parts of a clause that no conflict forces: the check weighs none of them."""
_LEVER = {"least": "kinematics.hinge.least", "most": "kinematics.hinge.most"}


class _End(NamedTuple):
    """One end of the hinge: what the setup comes to there, the loosened model, and its settings, one of which holds."""

    values: dict[int, float]
    model: Model
    settings: tuple[str, ...]


@dataclass(frozen=True)
class Reach:
    """What other setups could have done, asked only where a conflict has a part in it."""

    matter: Matter

    @property
    def _translation(self) -> Translation:
        return self.matter.delivered.full

    @cached_property
    def _ends(self) -> tuple[_End, ...]:
        frame, sums = self._translation.frame, Sums(self.matter).columns
        lift, found = middle(self.matter.measures.closed.lift), []
        for settings in frame.hinge.stated:
            lever = _LEVER.get(settings[0].partition("-")[0])
            values = sums | ({frame.hinge.closing: norms.value(lever) * lift} if lever else {})
            found.append(_End(values, Model(self._loosened(values)), settings))
        return tuple(found)

    def _loosened(self, values: dict[int, float]) -> System:
        still = {one.at for settings in self._translation.frame.leanings.values() for one in settings}
        return loosened(self._translation.system, values, still)

    def nearer(self, one: Reviewed) -> Nearer | None:
        """The most by which another setup could come nearer to something a clause asks; None within the tolerance."""
        passed = {bound: over for bound in self._bounds_of(one.id) if max(over := self._over(bound)) > ROUNDING}
        active = self._active(one.strength == "prefer")
        told = [Nearer(self._spare(bound, over, active), self._unit(bound)) for bound, over in passed.items()]
        unmet = [part for part in one.parts if part.met is False and (not passed or part.what in _NO_SUM)]
        told += [Nearer(abs(part.difference or 0.0), part.unit) for part in unmet]
        most = max(told, key=lambda near: near.amount / self.matter.within(near.unit), default=None)
        return most if most and most.amount > self.matter.within(most.unit) + ROUNDING else None

    def spared(self, one: Unasked) -> float:
        """How much of what goes beyond what is opened the rest could do without, mm or deg; at most all of it."""
        terms, sign = self._terms(one), 1 if one.delivered > 0 else -1
        if terms is None:
            return one.beyond
        active = self._active(preferred=False)
        return min(one.beyond, *(_gain(end, terms, sign, active) for end in self._ends))

    def _active(self, preferred: bool) -> Members:
        """The members that are to be no worse; wishes only beside another wish."""
        if not preferred:
            return must(self._translation, limits=True)
        return tuple(key for key in self._translation.system.members if not is_space(key))

    def _bounds_of(self, clause_id: str) -> Iterator[Bound]:
        for key, member in self._translation.system.members.items():
            if isinstance(key, tuple) and key[:2] == ("clause", clause_id):
                yield from member.bounds

    def _over(self, bound: Bound) -> list[float]:
        """How far the setup passes a bound, at each end of the hinge."""
        terms = _terms_of(self._translation.system, bound)
        return [bound.side * (_value(terms, end.values) - bound.value) for end in self._ends]

    def _spare(self, bound: Bound, over: list[float], active: Members) -> float:
        """How much less it could pass it, whatever the end."""
        terms = _terms_of(self._translation.system, bound)
        gains = (_gain(end, terms, bound.side, active) for end in self._ends)
        return max(0.0, min(min(ends) for ends in zip(over, gains, strict=True)))

    def _terms(self, one: Unasked) -> Terms | None:
        """What moved unasked, as a sum; None where the check has no column for it."""
        frame = self._translation.frame
        if one.what == "reduction":
            contact = frame.contacts.get(normal(one.where))
            return None if contact is None else {contact.reduction: 1.0}
        variable = next((name for name in VARIABLES if name == one.what), None)
        if variable is None:
            return mean([{column: 1.0} for column in frame.hinge.gaps.values()])
        column = frame.column(one.where, variable)
        return None if column is None else {column: 1.0}

    def _unit(self, bound: Bound) -> str:
        return DEG if self._angles & set(_terms_of(self._translation.system, bound)) else MM

    @cached_property
    def _angles(self) -> set[int]:
        columns = self._translation.frame.columns.items()
        return {column for (_, variable), column in columns if VARIABLE_UNITS[variable] == DEG}


def loosened(system: System, values: dict[int, float], still: Iterable[int]) -> System:
    """The system with every bound as far out as these values pass it; what defines a column is left as it is.

    still  columns held at 0
    """
    made = System(row_terms=system.row_terms, settings=system.settings)
    fixed = set(still)
    for at, ends in enumerate(zip(system.column_low, system.column_high, strict=True)):
        made.column(*((0.0, 0.0) if at in fixed else _around(values.get(at, 0.0), *ends)))
    for terms, low, high in zip(system.row_terms, system.row_low, system.row_high, strict=True):
        defines = low == high and not fixed.issuperset(terms)
        ends = (low, high) if defines else _around(_value(terms, values), low, high)
        made.row_low.append(ends[0])
        made.row_high.append(ends[1])
    for key, member in system.members.items():
        bounds = [_let_out(bound, _value(_terms_of(system, bound), values)) for bound in member.bounds]
        made.members[key] = Member(key, member.kind, bounds)
    return made


def _around(value: float, low: float, high: float) -> tuple[float, float]:
    return min(low, value), max(high, value)


def _let_out(bound: Bound, value: float) -> Bound:
    return bound._replace(value=bound.side * max(bound.side * bound.value, bound.side * value))


def _terms_of(system: System, bound: Bound) -> Terms:
    return system.row_terms[bound.at] if bound.is_row else {bound.at: 1.0}


def _value(terms: Terms, values: dict[int, float]) -> float:
    return sum(factor * values.get(column, 0.0) for column, factor in terms.items())


def _gain(end: _End, terms: Terms, sense: int, active: Members) -> float:
    """How much less of the terms, counted in a sense, a plan no worse than the setup can have; 0 if there is none."""
    here = _value(terms, end.values)
    reached = (end.model.extreme(active, terms, sense, setting) for setting in end.settings)
    return max((sense * (here - found) for found in reached if found is not None), default=0.0)
