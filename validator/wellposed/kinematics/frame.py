"""The movements of a mouth as columns, and room at the contacts as defining rows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from functools import cached_property
from math import inf
from types import MappingProxyType
from typing import NamedTuple

from wellposed.kinematics.arch import ArchLine, Facing
from wellposed.kinematics.expected import Leanings, expectations
from wellposed.kinematics.hinge import Hinge
from wellposed.kinematics.mouth import ArchRow, Contact, Mouth
from wellposed.kinematics.rows import System, Terms, plus, times
from wellposed.model.clauses import Align
from wellposed.vocabulary.motions import VARIABLES, Variable
from wellposed.vocabulary.teeth import ARCHES, RIGHT, position, side_of

_ALWAYS = ("along", "out", "vertical")


class ContactColumns(NamedTuple):
    """The columns of one contact."""

    reduction: int
    gap: int
    overlap: int


class Play(NamedTuple):
    """What is not counted on, but no proof may deny.

    outs  how far each molar's ``out`` is opened outwards and inwards, mm: moved straight sideways it also slides
          along the arch, distally as it goes out and mesially as it comes in
    arcs  how much further the edges of incisors may sink or rise with their travel, mm
    """

    outs: Mapping[str, tuple[float, float]] = MappingProxyType({})
    arcs: Mapping[str, float] = MappingProxyType({})


class Frame:
    """Columns and defining rows for one arch depth.

    extra   tooth variables to have a column beside those every tooth has
    play    what a proof may not deny
    uneven  the two sides of the bite are ordered differently
    offset  added to an assumed arch depth, mm
    """

    def __init__(
        self,
        mouth: Mouth,
        extra: Iterable[tuple[str, Variable]],
        play: Play,
        uneven: bool,
        offset: float,
    ) -> None:
        self.mouth = mouth
        self.system = System()
        self.columns: dict[tuple[str, Variable], int] = {}
        self.travels: dict[str, int] = {}
        self.contacts: dict[str, ContactColumns] = {}
        self.facing: dict[str, Facing] = {}
        self.errors: dict[str, tuple[int, float, float]] = {}
        self.expected: dict[str, list[int]] = {}
        self.leanings: Leanings = {}
        self.swings: dict[str, tuple[int, float]] = {}
        self._play = play
        self._placed: dict[str, int] = {}
        self._teeth(set(extra))
        room = expectations(mouth, self.system, self.expected, self.leanings)
        for row in mouth.rows.values():
            self._room(row, row.line(offset), room)
        self.hinge = Hinge(self.system, self.columns, uneven, mouth.amount("posterior-open-bite"))

    def finish(self) -> None:
        """Write the settings, once every measuring error is known."""
        self.hinge.set_errors(self.system, self.errors.values())

    def column(self, tooth: str, variable: Variable) -> int | None:
        """The column of a tooth's variable; None where nothing could ever move it."""
        return self.columns.get((tooth, variable))

    def place_column(self, contact: str) -> int | None:
        """The column that moves crowding to or from a contact in a proof."""
        return self._placed.get(contact)

    def error_column(self, name: str, low: float, high: float) -> int:
        """A measuring error: 0 at the stated values, free between bounds in a proof."""
        if name not in self.errors:
            self.errors[name] = (self.system.column(), low, high)
        return self.errors[name][0]

    def _teeth(self, extra: set[tuple[str, Variable]]) -> None:
        displaced = self.mouth.tooth_values("displacement")
        for row in self.mouth.rows.values():
            for tooth in row.teeth:
                for variable in VARIABLES:
                    if variable in _ALWAYS or (tooth, variable) in extra or _carries_angle(tooth, variable):
                        self.columns[tooth, variable] = self.system.column()
                if displaced.get(tooth):
                    back = -displaced[tooth]
                    self.travels[tooth] = self.system.column(min(0.0, back), max(0.0, back))

    # room

    def _room(self, row: ArchRow, line: ArchLine, expected: dict[str, list[int]]) -> None:
        """gap - overlap left = room from along and out + reduction + expected + what was there before."""
        place = {tooth: number for number, tooth in enumerate(row.initial)}
        self.facing |= {tooth: line.facings[place[tooth]] for tooth in row.teeth}
        self._play_of(row)
        errors, places = self._room_errors(row), self._places(row)
        for contact in row.contacts:
            loses, gains = line.chord(place[contact.first], place[contact.second])
            wrong = {column: share for name, column in errors.items() if (share := _share(contact, name))}
            wrong |= {places[contact.name]: 1.0} if contact.name in places else {}
            columns = ContactColumns(self.system.column(0.0), self.system.column(0.0), self._overlap(contact, wrong))
            self.contacts[contact.name] = columns
            terms = {columns.gap: 1.0, columns.overlap: -1.0, columns.reduction: -1.0}
            terms[self.columns[contact.second, "out"]] = -gains
            terms[self.columns[contact.first, "out"]] = loses
            for column, factor in self.slide(contact.second).items():
                terms[column] = -factor
            terms |= self.slide(contact.first)
            terms |= dict.fromkeys(expected.get(contact.name, ()), -1.0)
            terms |= {column: -share for column, share in wrong.items()}
            self.system.row(terms, contact.before, contact.before)

    def _places(self, row: ArchRow) -> dict[str, int]:
        """Where crowding whose contacts are not named may really lie: free in a proof, none gained or lost."""
        crowding = self.mouth.amount(f"{row.arch}-crowding")
        finding = self.mouth.finding(f"{row.arch}-crowding")
        crowded = [contact for contact in row.contacts if contact.crowding > 0]
        if crowding <= 0 or finding is None or finding.contacts or len(crowded) < 2:
            return {}
        found = {
            c.name: self.error_column(f"place {c.name}", crowding * (c.crowding - 1), crowding * c.crowding)
            for c in crowded
        }
        self.system.row(dict.fromkeys(found.values(), 1.0), 0.0, 0.0)
        self._placed |= found
        return found

    def _play_of(self, row: ArchRow) -> None:
        for tooth in row.teeth:
            if any(self._play.outs.get(tooth, ())):
                self._swing(tooth, *self._play.outs[tooth])
            if self._play.arcs.get(tooth):
                self.error_column(f"arc {tooth}", -self._play.arcs[tooth], self._play.arcs[tooth])

    def _swing(self, tooth: str, outwards: float, inwards: float) -> None:
        """The slide of a molar moved sideways."""
        face = self.facing[tooth]
        rate = abs(face.along_x / face.out_x)
        swing = self.error_column(f"swing {tooth}", -rate * outwards, rate * inwards)
        self.swings[tooth] = swing, rate

    def along(self, tooth: str) -> Terms:
        """Travel along the arch, mesial +."""
        return self._with_play(tooth, "along", "swing")

    def height(self, tooth: str) -> Terms:
        """Extrusion of a tooth's edge."""
        return self._with_play(tooth, "vertical", "arc")

    def _with_play(self, tooth: str, variable: Variable, play: str) -> Terms:
        terms = {self.columns[tooth, variable]: 1.0}
        spare = self.errors.get(f"{play} {tooth}")
        if spare:
            terms[spare[0]] = 1.0
        return terms

    def _overlap(self, contact: Contact, errors: Terms) -> int:
        """Overlap left after treatment, never more than before. Inside an ``align`` the sum alone is bound."""
        before = max(0.0, -contact.before)
        crowd = {column: share for column, share in errors.items() if share < 0}
        crowd |= {column: 1.0 for column in errors if column in self._placed.values()}
        aligned = any(contact.name in names for names in self.aligned_contacts.values())
        if not crowd and not aligned:
            return self.system.column(0.0, before)
        overlap = self.system.column(0.0)
        if not aligned:
            self.system.row(plus({overlap: 1.0}, crowd), -inf, before)
        return overlap

    @cached_property
    def aligned_contacts(self) -> dict[str, tuple[str, ...]]:
        """Per ``align`` clause its contacts: between its teeth; a tooth on its own brings both of its."""
        return dict(_aligned(self.mouth))

    def _room_errors(self, row: ArchRow) -> dict[str, int]:
        """Error columns of an arch's crowding and spacing; unknown room is free in a proof."""
        found: dict[str, int] = {}
        for what in ("crowding", "spacing"):
            name = f"{row.arch}-{what}"
            error, value = self.mouth.error(name), self.mouth.amount(name)
            if error > 0:
                found[what] = self.error_column(name, -min(error, value), error)
        if row.contacts and not self.mouth.room_known(row.arch):
            found["unknown"] = self.error_column(f"{row.arch}-room", -inf, inf)
        return found

    # how a tooth moves

    def slide(self, tooth: str) -> Terms:
        """Travel along the arch, from the patient's right to left +."""
        along = self.along(tooth)
        return along if side_of(tooth) == RIGHT else times(-1.0, along)

    def present(self, *teeth: str) -> list[str]:
        """Those of the teeth that stand in line."""
        return [tooth for tooth in teeth if (tooth, "vertical") in self.columns]


def _carries_angle(tooth: str, variable: str) -> bool:
    return variable == "torque" and position(tooth) <= 3


def _share(contact: Contact, error: str) -> float:
    """How much of an arch's error one contact takes; crowding's counts against room."""
    if error == "unknown":
        return 0.2 if position(contact.first) <= 3 and position(contact.second) <= 3 else 0.0
    return -contact.crowding if error == "crowding" else contact.spacing


def _aligned(mouth: Mouth) -> Iterator[tuple[str, tuple[str, ...]]]:
    for clause in mouth.prescription.goals or ():
        if isinstance(clause, Align):
            named = set(clause.align)
            contacts = [contact for arch in ARCHES for contact in mouth.rows[arch].contacts]
            inner = [c for c in contacts if c.first in named and c.second in named]
            lone = named - {tooth for c in inner for tooth in (c.first, c.second)}
            yield (
                clause.id,
                tuple(c.name for c in contacts if c in inner or c.first in lone or c.second in lone),
            )
