"""Where a setup leaves the teeth: on the arch line, off it, and with how much room between neighbours."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from wellposed.kinematics.arch import ArchLine, slid_line
from wellposed.kinematics.mouth import ArchRow, Contact, Mouth
from wellposed.model.clauses import Align
from wellposed.review.plan import Plan
from wellposed.vocabulary.teeth import RIGHT, arch_of, side_of


class Shift(NamedTuple):
    """How far a tooth went, in its own directions at the start: mesially and outwards, mm."""

    along: float
    out: float


class Lines(NamedTuple):
    """The line of an arch before and after, and where each tooth is in it."""

    before: ArchLine
    after: ArchLine
    place: dict[str, int]


@dataclass(frozen=True)
class Ended:
    """A mouth after the movements of a setup. Nothing here is linearised; all lengths are mm.

    ``along`` is arc length, so a tooth slides on the line, and ``out`` goes straight off it where it has come to.

    untold  arches in which the setup does not say whether teeth are taken out: their room cannot be told
    """

    mouth: Mouth
    plan: Plan
    untold: frozenset[str] = frozenset()

    @cached_property
    def displaced(self) -> dict[str, float]:
        """Teeth measured off the line, labial or buccal +."""
        return {tooth: off for tooth, off in self.mouth.tooth_values("displacement").items() if off}

    def way_to_line(self, tooth: str) -> float:
        """The part of a displaced tooth's ``out`` that only brings it to the line.

        This part comes first. A tooth that is to be aligned may also go with a line that moves by itself, where it then
        ends nearer.
        """
        off = self.displaced.get(tooth)
        if not off:
            return 0.0
        moved = self.plan.movement(tooth, "out") or 0.0
        with_line = [moved - self._line_moves(tooth)] if tooth in self.aligned else []
        ways = [min(max(way, min(0.0, -off)), max(0.0, -off)) for way in (moved, *with_line)]
        return max(ways, key=abs)

    @cached_property
    def aligned(self) -> frozenset[str]:
        """Teeth that a goal brings into line."""
        goals = self.mouth.prescription.goals or ()
        return frozenset(tooth for goal in goals if isinstance(goal, Align) for tooth in goal.align)

    def _line_moves(self, tooth: str) -> float:
        """How far out the line goes at a displaced tooth: the mean of the nearest teeth on it, one a side."""
        row = self.mouth.rows[arch_of(tooth)].teeth
        place = row.index(tooth) if tooth in row else 0
        sides = (row[:place][::-1], row[place + 1 :])
        nearest = [next((one for one in side if one not in self.displaced), None) for side in sides]
        outs = [self.plan.movement(one, "out") or 0.0 for one in nearest if one]
        return sum(outs) / len(outs) if outs else 0.0

    def out(self, tooth: str) -> float | None:
        """``out`` of the arch form: without the way to the line; None where it is not stated."""
        moved = self.plan.movement(tooth, "out")
        return None if moved is None else moved - self.way_to_line(tooth)

    def slide(self, tooth: str) -> float | None:
        """``along``, from the patient's right to left +; None where it is not stated."""
        along = self.plan.movement(tooth, "along")
        return None if along is None else along if side_of(tooth) == RIGHT else -along

    @cached_property
    def lines(self) -> dict[str, Lines]:
        """Both arches. A tooth whose slide is not stated is drawn where it was; whoever asks for it is told None."""
        return {arch: self._lines(row) for arch, row in self.mouth.rows.items()}

    def _lines(self, row: ArchRow) -> Lines:
        slides = tuple(self.slide(tooth) or 0.0 if tooth in row.teeth else 0.0 for tooth in row.initial)
        after = slid_line(row.widths, row.between, row.depth(0.0), slides)
        return Lines(row.line(0.0), after, {tooth: number for number, tooth in enumerate(row.initial)})

    def stands(self, tooth: str) -> bool:
        """Whether a tooth is in line at the end."""
        return tooth in self.mouth.rows[arch_of(tooth)].teeth

    def spot(self, tooth: str) -> tuple[float, float] | None:
        """Where the crown comes to stand: x to the patient's left, y forward; None where it is not stated."""
        out, slide = self.out(tooth), self.slide(tooth)
        if out is None or slide is None:
            return None
        line = self.lines[arch_of(tooth)]
        (x, y), face = line.after.points[line.place[tooth]], line.after.facings[line.place[tooth]]
        return x + out * face.out_x, y + out * face.out_y

    def start(self, tooth: str) -> tuple[float, float]:
        """Where it stood on the line."""
        line = self.lines[arch_of(tooth)]
        return line.before.points[line.place[tooth]]

    def shift(self, tooth: str) -> Shift | None:
        """The straight way it went, in its directions at the start; None where it is not stated."""
        spot = self.spot(tooth)
        if spot is None:
            return None
        line = self.lines[arch_of(tooth)]
        (x, y), face = self.start(tooth), line.before.facings[line.place[tooth]]
        x, y = spot[0] - x, spot[1] - y
        slid = x * face.along_x + y * face.along_y
        return Shift(slid if side_of(tooth) == RIGHT else -slid, x * face.out_x + y * face.out_y)

    @cached_property
    def rooms(self) -> dict[str, float | None]:
        """Per contact the room left: a gap +, an overlap -, counted along the line where its teeth have come to."""
        return {
            contact.name: None if row.arch in self.untold else self._room(self.lines[row.arch], contact)
            for row in self.mouth.rows.values()
            for contact in row.contacts
        }

    def _room(self, line: Lines, contact: Contact) -> float | None:
        first, second = line.place[contact.first], line.place[contact.second]
        loses, gains = line.after.chord(first, second)
        known = (
            *(self.out(contact.first), self.out(contact.second)),
            *(self.slide(contact.first), self.slide(contact.second)),
            self.plan.reduction(contact.name),
        )
        if any(part is None for part in known):
            return None
        out_first, out_second, slide_first, slide_second, reduction = (part or 0.0 for part in known)
        travel = slide_second - slide_first + gains * out_second - loses * out_first
        return contact.before + travel + reduction
