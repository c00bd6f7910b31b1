"""A setup's signs, looked up: which go against what was asked, and what it would be with some of them turned."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Final, NamedTuple

from wellposed.kinematics.openings import sensed
from wellposed.model.setup import Setup
from wellposed.review.result import MeasureLine
from wellposed.review.signs.senses import Asked, At, senses
from wellposed.vocabulary.motions import VARIABLE_UNITS, Variable
from wellposed.vocabulary.teeth import ARCHES, RIGHT, SIDES, arch_of, mirrored, side_of

if TYPE_CHECKING:  # the solver behind it is loaded by those who look at a setup
    from wellposed.review.matter import Matter

LEAST_OPPOSED: Final = 2
"""One tooth alone may have been planned wrongly; two that agree in being opposite look like a convention."""
LEAST_PAIRS: Final = 4
"""Pairs of left and right that must mirror: fewer do so by chance in crowded fronts."""
NEARLY_ALL: Final = 0.9
"""Of the values that speak at all. A convention turns all of them; one in ten may be a slip of its own."""
SMALL: Final = 0.1
"""Share of the largest value below which a sign says nothing: such values are what rounding and settling leave."""
ALIKE: Final = 0.2
"""By how much, as a share of the larger, two sides may differ and still be one movement mirrored."""
TWO_SIDED: Final = ("along", "out", "torque", "tip", "rotation")
_TO_A_SIDE: Final = ("midline", "transverse-overlap-right", "transverse-overlap-left")


class Group(NamedTuple):
    """Teeth that a convention may turn together: all, those of an arch, of a side, of a quadrant."""

    name: str
    teeth: frozenset[str]


@dataclass(frozen=True)
class Signs:
    """A setup and its prescription, as the rules look at them; with every measure, before and after."""

    matter: Matter
    lines: tuple[MeasureLine, ...] = ()

    @property
    def setup(self) -> Setup:
        """The setup."""
        return self.matter.setup

    @cached_property
    def asked(self) -> dict[At, Asked]:
        """The one sense of each variable that the prescription names."""
        return dict(senses(self.matter.mouth))

    def values(self, variable: Variable) -> dict[str, float]:
        """Tooth to movement, those too small to have a sense left out."""
        stated = {tooth: value for (tooth, which), value in self.matter.plan.moved.items() if which == variable}
        least = SMALL * max(map(abs, stated.values()), default=0.0)
        return {tooth: value for tooth, value in stated.items() if value and abs(value) >= least}

    def opposed(self, variable: Variable) -> dict[str, bool]:
        """Tooth to whether it moves against the sense asked for; teeth that say nothing of it left out."""
        found = {}
        for tooth, value in self.values(variable).items():
            asked = self.asked.get((tooth, variable))
            against = asked is not None and asked.sign * value < 0
            if asked is not None and not (against and self._opened(tooth, variable, value)):
                found[tooth] = against
        return found

    def _opened(self, tooth: str, variable: Variable, value: float) -> bool:
        """Whether some other clause opens as much in the sense the setup has. An alignment that opens both is none."""
        if self.asked[tooth, variable].back:
            return False
        reach = self.matter.translation.opened.reach(sensed(tooth, variable, 1 if value > 0 else -1))
        return reach + self.matter.within(VARIABLE_UNITS[variable]) >= abs(value)

    def table(self, variable: Variable) -> str:
        """Pointer to the first table of a variable."""
        return next(f"/movements/{n}" for n, one in enumerate(self.setup.movements) if one.variable == variable)


def groups(teeth: Sequence[str]) -> Iterator[tuple[Group, ...]]:
    """All the teeth; each arch; each side; each quadrant."""
    yield (Group("mouth", frozenset(teeth)),)
    yield tuple(Group(arch, frozenset(t for t in teeth if arch_of(t) == arch)) for arch in ARCHES)
    yield tuple(Group(side, frozenset(t for t in teeth if side_of(t) == side)) for side in SIDES)
    yield tuple(
        Group(f"{arch} {side}", frozenset(t for t in teeth if arch_of(t) == arch and side_of(t) == side))
        for arch in ARCHES
        for side in SIDES
    )


def turned(setup: Setup, variable: Variable, teeth: frozenset[str]) -> Setup:
    """The setup with the signs of a variable of these teeth turned, where they end; for comparison only."""
    tables = tuple(
        one.model_copy(update={"values": {t: -v if t in teeth else v for t, v in one.values.items()}})
        if one.variable == variable
        else one
        for one in setup.movements
    )
    return setup.model_copy(update={"movements": tables})


def pairs_of(values: dict[str, float], arch: str) -> list[tuple[float, float]]:
    """Right and left value of the teeth that stand in pairs."""
    right = [tooth for tooth in values if arch_of(tooth) == arch and side_of(tooth) == RIGHT]
    return [(values[tooth], values[mirrored(tooth)]) for tooth in right if mirrored(tooth) in values]


def mirror(right: float, left: float) -> bool:
    return right * left < 0 and abs(right + left) <= ALIKE * max(abs(right), abs(left))


def one_sided(signs: Signs, variable: Variable, arch: str) -> bool:
    """Whether the prescription itself treats the sides differently."""
    asked = {t: one.sign for (t, which), one in signs.asked.items() if which == variable and arch_of(t) == arch}
    if any(asked.get(mirrored(tooth)) != sign for tooth, sign in asked.items()):
        return True
    rx = signs.matter.prescription
    named = {getattr(one, "measure", "") for one in (*(rx.goals or ()), *(rx.expect or ()))}
    named |= {one.measure for one in rx.findings or () if getattr(one, "value", 0) and hasattr(one, "measure")}
    return any(measure.endswith(_TO_A_SIDE) for measure in named if measure)


def questioned(opposed: dict[str, bool]) -> list[Group]:
    """The largest groups that go the other way."""
    for level in groups(list(opposed)):
        found = [group for group in level if _nearly_all(opposed, group)]
        if found:
            return found
    return []


def _nearly_all(opposed: dict[str, bool], group: Group) -> bool:
    against = sum(opposed[tooth] for tooth in group.teeth)
    return against >= LEAST_OPPOSED and against >= NEARLY_ALL * len(group.teeth)
