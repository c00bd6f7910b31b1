"""What landmark points tell, as plain ordered data; the words are made in ``wellposed.render``."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal, NamedTuple

from wellposed.vocabulary.motions import Variable

Why = Literal["gone", "new", "too-few-points", "in-a-line", "no-crown-point", "no-arch-line", "tipped-too-far"]


class Lack(NamedTuple):
    """What is missing for a measure: a landmark of a tooth; ``tooth`` of a tooth or an arch that has no points at all;
    ``arch-line`` of an arch; ``midline`` of the face; ``reversed`` of the lower curve, whose depth is then no size."""

    where: str
    what: str


@dataclass(frozen=True, slots=True)
class Taken:
    """One measure at each moment.

    values  one per moment, in ``unit`` and with the sign of the vocabulary; None where it cannot be told
    lacks   one per moment: all that is missing, nothing where there is a value
    """

    measure: str
    unit: str
    values: tuple[float | None, ...]
    lacks: tuple[tuple[Lack, ...], ...]

    @property
    def change(self) -> float | None:
        """After less before; None where one of them cannot be told."""
        if len(self.values) < len(("before", "after")) or None in self.values:
            return None
        return (self.values[1] or 0.0) - (self.values[0] or 0.0)


@dataclass(frozen=True, slots=True)
class TakenOfTeeth:
    """One measure of single teeth: per moment, tooth to value. A tooth that is not there cannot be told."""

    measure: str
    unit: str
    values: tuple[Mapping[str, float], ...]


@dataclass(frozen=True, slots=True)
class Room:
    """Per moment, contact to the room between its teeth along the arch line, mm: a gap +, an overlap -."""

    moments: tuple[Mapping[str, float], ...]


@dataclass(frozen=True, slots=True)
class Moved:
    """The movement of one tooth.

    values    the six variables, mm and deg, at the crown; empty if they cannot be told
    spread    standard deviation of each variable, per 0.1 mm of that of every coordinate, before and after
    points    how many landmarks were found at both moments
    residual  how well one rigid movement fits them, root mean square, mm; None without a fit
    shift     of the crown point, x, y, z in mm; None without one
    turned    the whole turn, deg; None without a fit
    why       why the variables cannot be told; None where they can
    """

    tooth: str
    values: Mapping[Variable, float] = field(default_factory=dict)
    spread: Mapping[Variable, float] = field(default_factory=dict)
    points: int = 0
    residual: float | None = None
    shift: tuple[float, float, float] | None = None
    turned: float | None = None
    why: Why | None = None


class Doubt(NamedTuple):
    """Something to look at again in the points; nothing was changed for it.

    reason  ``turned-round``: mesial and distal contact are the other way round on the line; ``upside-down``: gum or
            root of a tooth on the biting side; ``faces-aside``: an arch turned against y; ``out-of-order``: the tooth
            stands beyond its neighbour; ``places-without-points``: a place between two teeth has none, and counts as
            room; ``not-plausible``: a measure beyond what mouths have; ``loose-fit``: its points do not move together;
            ``mirrored``: a mirror image would fit better; ``moved-as-one``: all teeth of the arch move alike, as if the
            frame had moved
    where   tooth, two teeth, arch or measure
    moment  at which it is seen; "" for between both
    amount  mm or deg, None where there is none
    """

    reason: str
    where: str
    moment: str = ""
    amount: float | None = None


@dataclass(frozen=True, slots=True)
class PointsTaken:
    """All that the points of a mouth tell.

    moments    ``before``, or both
    teeth      how many teeth have points before
    measures   of the mouth, in the order of the vocabulary
    of_teeth   of single teeth
    room       at the contacts
    movements  tooth by tooth, from the patient's upper right; empty for one moment
    doubts     what to look at again
    untouched  measures for which no landmark is defined
    """

    moments: tuple[str, ...]
    teeth: int
    measures: tuple[Taken, ...]
    of_teeth: tuple[TakenOfTeeth, ...]
    room: Room
    movements: tuple[Moved, ...]
    doubts: tuple[Doubt, ...]
    untouched: tuple[str, ...]
