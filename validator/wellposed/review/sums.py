"""The same movements in the linear sums of the check, for comparison with the exact measures."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from wellposed.kinematics.rows import Terms
from wellposed.review.matter import Matter
from wellposed.review.result import Span
from wellposed.vocabulary.teeth import RIGHT, side_of


@dataclass(frozen=True)
class Sums:
    """The columns of the check, filled with a setup's movements; what is not stated counts as none."""

    matter: Matter

    def value(self, terms: Terms) -> float:
        """The value of a sum; an expected change counts as none."""
        return sum(factor * self.columns.get(column, 0.0) for column, factor in terms.items())

    @cached_property
    def columns(self) -> dict[int, float]:
        """Column to value; of the hinge the middle of its bounds."""
        frame, found = self.matter.translation.frame, {}
        for (tooth, variable), column in frame.columns.items():
            moved = self.matter.plan.movement(tooth, variable) or 0.0
            found[column] = (self.matter.ended.out(tooth) or 0.0) if variable == "out" else moved
        for tooth, column in frame.travels.items():
            found[column] = self.matter.ended.way_to_line(tooth)
        for name, columns in frame.contacts.items():
            room = self.room(name)
            taken = self.matter.plan.reduction(name) or 0.0
            found |= {columns.gap: max(0.0, room), columns.overlap: max(0.0, -room), columns.reduction: taken}
        closed = self.matter.measures.closed
        found[frame.hinge.closing] = middle(closed.closing)
        gaps = closed.gaps or (None,) * len(frame.hinge.gaps)
        return found | dict(zip(frame.hinge.gaps.values(), map(middle, gaps), strict=True))

    def room(self, name: str) -> float:
        """Room at a contact by the equation of the specification."""
        mouth, ended = self.matter.mouth, self.matter.ended
        row, contact = next((row, c) for row in mouth.rows.values() for c in row.contacts if c.name == name)
        line, place = row.line(0.0), {tooth: number for number, tooth in enumerate(row.initial)}
        loses, gains = line.chord(place[contact.first], place[contact.second])
        out = {tooth: ended.out(tooth) or 0.0 for tooth in (contact.first, contact.second)}
        slid = {tooth: self._slide(tooth) for tooth in (contact.first, contact.second)}
        travel = slid[contact.second] - slid[contact.first] + gains * out[contact.second] - loses * out[contact.first]
        return contact.before + travel + (self.matter.plan.reduction(name) or 0.0)

    def _slide(self, tooth: str) -> float:
        along = self.matter.plan.movement(tooth, "along") or 0.0
        return along if side_of(tooth) == RIGHT else -along


def middle(span: Span | None) -> float:
    """The middle of its bounds; 0 where nothing is known."""
    return 0.0 if span is None or span.low is None or span.high is None else (span.low + span.high) / 2
