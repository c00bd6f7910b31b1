"""How far everything may go: silence, the amounts of allowances, locked teeth, the gap at the back."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf
from typing import NamedTuple

from wellposed.kinematics.frame import Frame
from wellposed.kinematics.keys import clause, silence, state
from wellposed.kinematics.means import reduction_contacts, width_teeth
from wellposed.kinematics.opened import Opened, silent_group
from wellposed.kinematics.openings import Sensed, sensed
from wellposed.kinematics.rows import Key, Kind, Terms
from wellposed.kinematics.ties import hold_still, tie_alike, ties
from wellposed.model.clauses import Align
from wellposed.model.means import EnamelReduction, PosteriorOpenBite, WidthChange
from wellposed.vocabulary.teeth import arch_of, is_premolar, position


class Ceiling(NamedTuple):
    """A bound held by a clause's amount, growing by ``rate`` with it."""

    is_row: bool
    at: int
    sign: int
    rate: float


class Bounds:
    """The bounds of a frame.

    opened_columns  columns that something lets move
    ceilings        per clause the bounds its amount holds
    reductions      per reduction the contacts it is allowed at
    widths          per change of width the rows of its pairs
    tied            per silent sense the rows that hold only while it is silent
    gap_opened      whether something opens the gap at the back
    """

    def __init__(self, frame: Frame, opened: Opened, whole: bool) -> None:
        self.whole = whole
        self.frame = frame
        self.opened = opened
        self.rx = frame.mouth.prescription
        self.opened_columns: set[int] = set()
        self.ceilings: dict[str, list[Ceiling]] = {}
        self.reductions: dict[str, list[str]] = {}
        self.widths: dict[str, list[Terms]] = {}
        self.tied: dict[Sensed, list[int]] = {}
        self.gap_opened = False
        self._kept = {item.id: item.strength for item in self.rx.keep or ()}
        self._parts = {item.id: _amount_part(item) for item in self.rx.allow or ()}
        self._movements()
        self._ties()
        self._travels()
        tie_alike(frame, opened)
        self._width_rows()
        self._silent_reduction()
        self._allowed_reduction()
        self._gap()
        for tooth in frame.mouth.locked:
            hold_still(frame, state(tooth), Kind.FIXED, tooth)

    def said_of_silence(self) -> set[tuple[str, str]]:
        """(arch, group) of which an allowance or a movement opens something, reduction included."""
        reduced = {(arch_of(name[:2]), "reduction") for names in self.reductions.values() for name in names}
        return self.opened.said | reduced

    def amount_key(self, owner: str) -> Key:
        """The member that holds an allowance's amount."""
        return clause(owner, self._parts.get(owner, "ceiling"))

    def _movements(self) -> None:
        """Each sense of each variable: silent, or open to the amount that decides. Most are silent."""
        system, table = self.frame.system, self.opened.table
        for (tooth, variable), column in self.frame.columns.items():
            for sign in (1, -1):
                if (tooth, variable, sign) in table:
                    self._opened(sensed(tooth, variable, sign), column, sign)
                elif self.whole:
                    key = silence(arch_of(tooth), silent_group(tooth, variable))
                    system.bind_side(key, Kind.SILENCE, column, sign, 0.0)
                else:
                    (system.column_high if sign > 0 else system.column_low)[column] = 0.0

    def _ties(self) -> None:
        """What comes in proportion to a movement, while its other sense is silent."""
        system = self.frame.system
        for tie in ties(self.frame, self.opened):
            row = system.row(tie.terms)
            if self.whole:
                key = silence(arch_of(tie.silent.tooth), silent_group(tie.silent.tooth, tie.silent.variable))
                system.bind_existing_row(key, Kind.SILENCE, row, high=0.0)
                self.tied.setdefault(tie.silent, []).append(row)
            else:
                system.row_high[row] = 0.0

    def _opened(self, at: Sensed, column: int, sign: int) -> None:
        found = self.opened.deciding(at)
        self.opened_columns.add(column)
        if found is None:
            return
        if found.owner in self._kept:
            self._wished(found.owner, column, sign, found.amount)
        elif found.amount < inf:
            key = self.amount_key(found.owner)
            self.frame.system.bind_side(key, Kind.CEILING, column, sign, found.amount)
            self.ceilings.setdefault(found.owner, []).append(Ceiling(False, column, sign, found.rate))

    def _wished(self, owner: str, column: int, sign: int, within: float) -> None:
        """A keep replaces silence within its tolerance, by itself; one only preferred lets the motion go no further."""
        system = self.frame.system
        if self._kept[owner] == "must":
            return
        if sign > 0:
            system.column_high[column] = min(within, system.column_high[column])
        else:
            system.column_low[column] = max(-within, system.column_low[column])

    def _travels(self) -> None:
        """A displaced tooth may come to the line where an ``align`` or anything that opens its ``out`` says so."""
        aligned = {tooth for goal in self.rx.goals or () if isinstance(goal, Align) for tooth in goal.align}
        displaced = self.frame.mouth.tooth_values("displacement")
        for tooth, column in self.frame.travels.items():
            sign = -1 if displaced[tooth] > 0 else 1
            found = self.opened.deciding(sensed(tooth, "out", sign))
            if tooth in aligned:
                continue
            if found is None:
                key = silence(arch_of(tooth), silent_group(tooth, "out"))
                self.frame.system.bind_side(key, Kind.SILENCE, column, sign, 0.0)
            elif found.owner in self._kept:
                self._wished(found.owner, column, sign, found.amount)

    def _width_rows(self) -> None:
        for item in self.rx.allow or ():
            if isinstance(item, WidthChange):
                teeth = width_teeth(self.frame.mouth, item)
                for number in sorted({position(tooth) for tooth in teeth}):
                    self._pair_width(item, [tooth for tooth in teeth if position(tooth) == number])

    def _pair_width(self, item: WidthChange, pair: list[str]) -> None:
        """The amount bounds the width of the pair; what else opens these teeth adds to it."""
        sign = 1 if item.use == "widening" else -1
        faces = {tooth: abs(self.frame.facing[tooth].out_x) for tooth in pair}
        spare = sum(
            one.amount * faces[tooth]
            for tooth in pair
            for one in self.opened.sources(sensed(tooth, "out", sign))
            if one.owner != item.id
        )
        if spare == inf:
            return
        terms = {self.frame.columns[tooth, "out"]: sign * face for tooth, face in faces.items()}
        key = clause(item.id, "ceiling")
        row = self.frame.system.bind_row(key, Kind.CEILING, terms, high=item.up_to + spare)
        self.ceilings.setdefault(item.id, []).append(Ceiling(True, row, 1, 1.0))
        self.widths.setdefault(item.id, []).append(terms)

    def _silent_reduction(self) -> None:
        """Enamel at contacts no allowance names is kept, as one sum an arch."""
        opened = {
            name
            for item in self.rx.allow or ()
            if isinstance(item, EnamelReduction)
            for name in reduction_contacts(self.frame.mouth, item)
        }
        for arch, row in self.frame.mouth.rows.items():
            columns = [self.frame.contacts[c.name].reduction for c in row.contacts if c.name not in opened]
            if columns:
                terms = dict.fromkeys(columns, 1.0)
                self.frame.system.bind_row(silence(arch, "reduction"), Kind.SILENCE, terms, high=0.0)

    def _allowed_reduction(self) -> None:
        for item in self.rx.allow or ():
            if isinstance(item, EnamelReduction):
                names = self.reductions[item.id] = reduction_contacts(self.frame.mouth, item)
                columns = [self.frame.contacts[name].reduction for name in names]
                self.opened_columns.update(columns)
                self._reduction(item, columns)

    def _reduction(self, item: EnamelReduction, columns: list[int]) -> None:
        held = self.ceilings.setdefault(item.id, [])
        if item.per_contact is not None:
            for column in columns:
                key = clause(item.id, "per-contact")
                self.frame.system.bind_column(key, Kind.CEILING, column, high=item.per_contact)
                held.append(Ceiling(False, column, 1, 1.0))
        if item.in_all is not None and columns:
            key, total = clause(item.id, "in-all"), dict.fromkeys(columns, 1.0)
            row = self.frame.system.bind_row(key, Kind.CEILING, total, high=item.in_all)
            held.append(Ceiling(True, row, 1, 1.0))

    def _gap(self) -> None:
        """Silence shuts the gap at the back; an allowance, or teeth that act as stops, open it."""
        stops = dict(self.stops())
        if not stops:
            for row in self.frame.hinge.shut.values():
                self.frame.system.bind_existing_row(
                    silence("both", "gap"), Kind.SILENCE, row, high=self.frame.hinge.before
                )
            return
        self.gap_opened = True
        owner, (most, rate) = max(stops.items(), key=lambda stop: stop[1][0])
        if most < inf:
            for row in self.frame.hinge.shut.values():
                high = self.frame.hinge.before + most
                self.frame.system.bind_existing_row(self.amount_key(owner), Kind.CEILING, row, high=high)
                self.ceilings.setdefault(owner, []).append(Ceiling(True, row, 1, rate))

    def stops(self) -> Iterator[tuple[str, tuple[float, float]]]:
        """Who opens the gap at the back, to what amount, and the rate of it."""
        best: dict[str, tuple[float, float]] = {}
        for item in self.rx.allow or ():
            if isinstance(item, PosteriorOpenBite):
                best[item.id] = (item.up_to, 1.0)
        for at in self.opened.table:
            if at.variable == "vertical" and at.sign > 0 and (is_premolar(at.tooth) or position(at.tooth) == 7):
                found = self.opened.deciding(at)
                if found is not None and found.owner not in self._kept:
                    stop = found.amount, found.rate
                    best[found.owner] = max(stop, best.get(found.owner, (0.0, 0.0)))
        yield from best.items()


def _amount_part(item: object) -> str:
    if isinstance(item, EnamelReduction):
        return "per-contact" if item.in_all is None else "in-all"
    return "ceiling"
