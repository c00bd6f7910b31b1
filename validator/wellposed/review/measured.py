"""Every measure after the planned movements, exactly: from where the teeth come to stand, not by sums of movements."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from wellposed.kinematics.directions import rest
from wellposed.kinematics.frame import Frame
from wellposed.kinematics.measures import WIDTH_TEETH
from wellposed.review.bite import GAP, Closed, closed
from wellposed.review.ended import Ended
from wellposed.review.result import Span
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.teeth import LOWER, RIGHT, SIDES, UPPER, arch_of, position, side_of, tooth_at

NOT_STATED, NO_TEETH = "not-stated", "teeth-missing"


class Reading(NamedTuple):
    """What the movements make of a measure: its change, or with ``absolute`` its value at the end; or why not."""

    span: Span | None
    why: str | None = None
    absolute: bool = False


Value = float | None


@dataclass(frozen=True)
class Measures:
    """The measures of a mouth after a setup.

    frame  that of the check: which way teeth face, and on what the bite rests
    """

    ended: Ended
    frame: Frame

    @cached_property
    def closed(self) -> Closed:
        """What becomes of the bite."""
        return closed(self.ended, self.frame.hinge)

    def reading(self, name: str, pair: tuple[str, ...] | None = None) -> Reading:
        """One measure."""
        arch, _, what = name.partition("-")
        if what in ("crowding", "spacing"):
            return self._room(arch, -1 if what == "crowding" else 1)
        if name == GAP:
            gap = self.closed.gap
            return Reading(gap, None if gap else NOT_STATED if self.frame.hinge.rests else NO_TEETH, absolute=True)
        if what in WIDTH_TEETH:
            return self._width([tooth_at(arch, side, WIDTH_TEETH[what]) for side in SIDES])
        if name.startswith(("molar-relation", "canine-relation", "transverse-overlap")):
            return self._of_side(name, pair)
        if name in ("upper-midline", "lower-midline"):
            return self._midline(self._centrals(arch))
        return self._curve() if name == "curve-of-spee" else self._front(name, pair)

    def _room(self, arch: str, sign: int) -> Reading:
        names = [contact.name for contact in self.ended.mouth.rows[arch].contacts]
        if not names:
            return Reading(None, NO_TEETH)
        rooms = [self.ended.rooms[name] for name in names]
        if any(room is None for room in rooms):
            return Reading(None, NOT_STATED, absolute=True)
        total = sum(max(0.0, sign * (room or 0.0)) for room in rooms)
        return Reading(Span(total, total), absolute=True)

    def _width(self, teeth: list[str]) -> Reading:
        """Straight across, from tooth to tooth."""
        if not all(self.ended.stands(tooth) for tooth in teeth):
            return Reading(None, NO_TEETH)
        spots = [self.ended.spot(tooth) for tooth in teeth]
        if spots[0] is None or spots[1] is None:
            return Reading(None, NOT_STATED)
        before = abs(self.ended.start(teeth[0])[0] - self.ended.start(teeth[1])[0])
        return _exact(abs(spots[0][0] - spots[1][0]) - before)

    def _midline(self, teeth: list[str]) -> Reading:
        both = len(teeth) == len(SIDES)
        return _exact(_mean(self._sideways(tooth) for tooth in teeth)) if both else Reading(None, NO_TEETH)

    def _of_side(self, name: str, pair: tuple[str, ...] | None) -> Reading:
        what, _, side = name.rpartition("-")
        number = 3 if what == "canine-relation" else 6
        upper, lower = sorted(pair or (tooth_at(UPPER, side, number), tooth_at(LOWER, side, number)), key=_lower_last)
        if not (self.ended.stands(upper) and self.ended.stands(lower)):
            return Reading(None, NO_TEETH)
        if what == "transverse-overlap":
            named = pair is not None
            return _exact(_less(self._buccal(upper, named), self._buccal(lower, named)))
        return _exact(_less(self._mesial(upper), self._mesial(lower)))

    def _front(self, name: str, pair: tuple[str, ...] | None) -> Reading:
        upper, lower = self._fronts(pair)
        if name in ("overbite", "overjet", "interincisal-angle"):
            return self._both(name, upper, lower, pair is not None) if upper and lower else Reading(None, NO_TEETH)
        if name.startswith(("upper-incisor-to", "lower-incisor-to")):
            teeth = upper if name.startswith(UPPER) else lower
            return _exact(self._mean_of(teeth, "torque")) if teeth else Reading(None, NO_TEETH)
        if name in ("incisor-display-at-rest", "gingival-display-on-smiling"):
            return _exact(self._mean_of(upper, "vertical")) if upper else Reading(None, NO_TEETH)
        return Reading(None, "not-in-a-setup")

    def _both(self, name: str, upper: list[str], lower: list[str], named: bool) -> Reading:
        if name == "overjet":
            fronts = (_mean(self._ahead(tooth, named) for tooth in teeth) for teeth in (upper, lower))
            return _exact(_less(*fronts))
        variable: Variable = "vertical" if name == "overbite" else "torque"
        parts = self._mean_of(upper, variable), self._mean_of(lower, variable)
        if parts[0] is None or parts[1] is None:
            return Reading(None, NOT_STATED)
        if name != "overbite":
            return _exact(-parts[0] - parts[1])
        closing = self.closed.closing
        if closing is None or closing.low is None or closing.high is None:
            return Reading(None, NOT_STATED)
        together = parts[0] + parts[1]
        return Reading(Span(together + closing.low, together + closing.high))

    def _curve(self) -> Reading:
        """Half the incisors and half the second molars less the premolars, lower arch."""
        line = self.ended.mouth.rows[LOWER].teeth
        groups = [[t for t in line if position(t) in numbers] for numbers in ((1, 2), (7,), (4, 5))]
        if not all(groups):
            return Reading(None, NO_TEETH)
        front, back, middle = (self._mean_of(teeth, "vertical") for teeth in groups)
        if front is None or back is None or middle is None:
            return Reading(None, NOT_STATED)
        return _exact((front + back) / 2 - middle)

    # how single teeth went

    def _centrals(self, arch: str) -> list[str]:
        return [tooth for side in SIDES if self.ended.stands(tooth := tooth_at(arch, side, 1))]

    def _fronts(self, pair: tuple[str, ...] | None) -> tuple[list[str], list[str]]:
        if pair is None:
            return self._centrals(UPPER), self._centrals(LOWER)
        named = [tooth for tooth in pair if self.ended.stands(tooth)]
        return [t for t in named if arch_of(t) == UPPER], [t for t in named if arch_of(t) == LOWER]

    def _mean_of(self, teeth: list[str], variable: Variable) -> Value:
        return _mean(self.ended.plan.movement(tooth, variable) for tooth in teeth)

    def _went(self, tooth: str, count: Callable[[float, float], float]) -> Value:
        """A count over the way a tooth went from the patient's right to left, and outwards."""
        shift = self.ended.shift(tooth)
        if shift is None:
            return None
        return count(shift.along if side_of(tooth) == RIGHT else -shift.along, shift.out)

    def _ahead(self, tooth: str, named: bool) -> Value:
        face, way = self.frame.facing[tooth], self._way(tooth, named)
        if position(tooth) > 1:
            return self._went(tooth, lambda slide, out: face.out_y * (out + way) + face.along_y * slide)
        return self._went(tooth, lambda slide, out: out + way + rest(face.out_y, face.along_y) * slide)

    def _sideways(self, tooth: str) -> Value:
        face = self.frame.facing[tooth]
        return self._went(tooth, lambda slide, out: slide + rest(face.along_x, face.out_x) * out)

    def _mesial(self, tooth: str) -> Value:
        face, shift = self.frame.facing[tooth], self.ended.shift(tooth)
        return None if shift is None else shift.along + rest(abs(face.along_y), face.out_y) * shift.out

    def _buccal(self, tooth: str, named: bool) -> Value:
        shift = self.ended.shift(tooth)
        return None if shift is None else shift.out + self._way(tooth, named)

    def _way(self, tooth: str, named: bool) -> float:
        return self.ended.way_to_line(tooth) if named else 0.0


def _exact(change: Value) -> Reading:
    return Reading(None, NOT_STATED) if change is None else Reading(Span(change, change))


def _mean(values: Iterable[Value]) -> Value:
    known = list(values)
    if any(value is None for value in known) or not known:
        return None
    return sum(value or 0.0 for value in known) / len(known)


def _less(first: Value, second: Value) -> Value:
    return None if first is None or second is None else first - second


def _lower_last(tooth: str) -> bool:
    return arch_of(tooth) == LOWER
