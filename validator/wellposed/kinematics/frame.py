"""The movements of a mouth as columns, room and hinge as defining rows, measures as sums of columns."""

from __future__ import annotations

from collections.abc import Iterable
from math import inf
from typing import NamedTuple

from wellposed import norms
from wellposed.kinematics.arch import Facing
from wellposed.kinematics.mouth import ArchRow, Contact, Mouth
from wellposed.kinematics.rows import Setting, System, Terms, mean, plus, times
from wellposed.model.means import Expectation
from wellposed.vocabulary.contacts import normal
from wellposed.vocabulary.motions import VARIABLES
from wellposed.vocabulary.teeth import ARCHES, LEFT, LOWER, RIGHT, SIDES, UPPER, arch_of, position, side_of, tooth_at

STATED = "stated"
PROOF = "proof"
_ALWAYS = ("along", "out", "vertical")
_WIDTH_TEETH = {
    "inter-canine-width": 3,
    "inter-first-premolar-width": 4,
    "inter-second-premolar-width": 5,
    "inter-first-molar-width": 6,
    "inter-second-molar-width": 7,
}


class ContactColumns(NamedTuple):
    """The columns of one contact."""

    reduction: int
    gap: int
    overlap: int


class MeasureRow(NamedTuple):
    """A measure as terms: its change, or with ``absolute`` its final value."""

    terms: Terms
    absolute: bool = False


class Frame:
    """Columns and defining rows for one arch depth. ``uneven``: the two sides of the bite are ordered differently."""

    def __init__(self, mouth: Mouth, extra: Iterable[tuple[str, str]], uneven: bool, offset: float) -> None:
        self.mouth = mouth
        self.system = System()
        self.uneven = uneven
        self.columns: dict[tuple[str, str], int] = {}
        self.travels: dict[str, int] = {}
        self.contacts: dict[str, ContactColumns] = {}
        self.facing: dict[str, Facing] = {}
        self.errors: dict[str, tuple[int, float, float]] = {}
        self.expected: dict[str, list[int]] = {}
        self.gaps: dict[str, int] = {}
        self._teeth(set(extra))
        room = self._expectations()
        for row in mouth.rows.values():
            self._room(row, offset, room)
        self._hinge()

    def column(self, tooth: str, variable: str) -> int | None:
        """The column of a tooth's variable; None where nothing could ever move it."""
        return self.columns.get((tooth, variable))

    def _teeth(self, extra: set[tuple[str, str]]) -> None:
        displaced = self.mouth.tooth_values("displacement")
        for row in self.mouth.rows.values():
            for tooth in row.teeth:
                for variable in VARIABLES:
                    if variable in _ALWAYS or (tooth, variable) in extra or _carries_angle(tooth, variable):
                        self.columns[tooth, variable] = self.system.column()
                if displaced.get(tooth):
                    away = displaced[tooth]
                    self.travels[tooth] = self.system.column(min(0.0, -away), max(0.0, -away))

    def error_column(self, name: str, low: float, high: float) -> int:
        """A measuring error: 0 at the stated values, free between bounds in a proof."""
        if name not in self.errors:
            self.errors[name] = (self.system.column(), low, high)
        return self.errors[name][0]

    def _expectations(self) -> dict[str, list[int]]:
        """Columns for changes that are counted on; those of crowding and spacing are room, contact to columns."""
        room: dict[str, list[int]] = {}
        for clause in self.mouth.prescription.expect or ():
            if clause.measure.endswith(("crowding", "spacing")):
                self._expected_room(clause, room)
            else:
                column = self.system.column(clause.at_least, clause.at_most)
                self.expected.setdefault(clause.measure, []).append(column)
        return room

    def _expected_room(self, clause: Expectation, room: dict[str, list[int]]) -> None:
        sign = -1 if clause.measure.endswith("crowding") else 1
        arch = clause.measure.split("-")[0]
        places = self._expected_at(clause, self.mouth.rows[arch])
        low, high = sorted((sign * clause.at_least, sign * clause.at_most))
        parts = [self.system.column(min(low, 0.0), max(high, 0.0)) for _ in places]
        if parts:
            self.system.row(dict.fromkeys(parts, 1.0), low, high)
        for name, part in zip(places, parts, strict=True):
            room.setdefault(name, []).append(part)

    @staticmethod
    def _expected_at(clause: Expectation, row: ArchRow) -> list[str]:
        if clause.contacts:
            named = {normal(contact) for contact in clause.contacts}
            return [contact.name for contact in row.contacts if contact.name in named]
        crowded = [contact.name for contact in row.contacts if contact.crowding > 0 or contact.spacing > 0]
        return crowded or [contact.name for contact in row.contacts]

    def _room(self, row: ArchRow, offset: float, expected: dict[str, list[int]]) -> None:
        line = row.line(offset)
        place = {tooth: number for number, tooth in enumerate(row.initial)}
        self.facing |= {tooth: line.facings[place[tooth]] for tooth in row.teeth}
        errors = self._room_errors(row)
        for contact in row.contacts:
            loses, gains = self._chord(line.points, line.facings, place[contact.first], place[contact.second])
            columns = ContactColumns(self.system.column(0.0), self.system.column(0.0), self._overlap(contact, errors))
            self.contacts[contact.name] = columns
            room = plus(
                self._slide(contact.second),
                times(-1.0, self._slide(contact.first)),
                {self.columns[contact.second, "out"]: gains, self.columns[contact.first, "out"]: -loses},
                {columns.reduction: 1.0},
                dict.fromkeys(expected.get(contact.name, ()), 1.0),
                {column: share for name, column in errors.items() if (share := _share(contact, name))},
            )
            self.system.row(
                plus({columns.gap: 1.0, columns.overlap: -1.0}, times(-1.0, room)), contact.before, contact.before
            )

    @staticmethod
    def _chord(
        points: tuple[tuple[float, float], ...], facings: tuple[Facing, ...], first: int, second: int
    ) -> tuple[float, float]:
        """Room lost by 1 mm ``out`` of the first tooth, and gained by 1 mm of the second, along their chord."""
        x, y = points[second][0] - points[first][0], points[second][1] - points[first][1]
        size = (x * x + y * y) ** 0.5
        a, b = facings[first], facings[second]
        return (a.out_x * x + a.out_y * y) / size, (b.out_x * x + b.out_y * y) / size

    def _overlap(self, contact: Contact, errors: dict[str, int]) -> int:
        """Overlap left after treatment, never more than before. Inside an ``align`` the sum alone is bound."""
        before = max(0.0, -contact.before)
        terms = {column: share for name, column in errors.items() if (share := _share(contact, name)) < 0}
        aligned = any(contact.name in names for names in self.aligned_contacts().values())
        if not terms and not aligned:
            return self.system.column(0.0, before)
        overlap = self.system.column(0.0)
        if not aligned:
            self.system.row(plus({overlap: 1.0}, terms), -inf, before)
        return overlap

    def aligned_contacts(self) -> dict[str, tuple[str, ...]]:
        """Per ``align`` clause its contacts: between its teeth; a tooth on its own brings both of its."""
        if not hasattr(self, "_aligned"):
            self._aligned = dict(_aligned(self.mouth))
        return self._aligned

    def _room_errors(self, row: ArchRow) -> dict[str, int]:
        """Error columns of an arch's crowding and spacing; unknown room is free in a proof."""
        found: dict[str, int] = {}
        for what in ("crowding", "spacing"):
            name = f"{row.arch}-{what}"
            error, value = self.mouth.error(name), self.mouth.amount(name)
            if error > 0:
                found[what] = self.error_column(name, -min(error, value), error)
        if not self.mouth.room_stated(row.arch) and row.contacts:
            found["unknown"] = self.error_column(f"{row.arch}-room", -inf, inf)
        return found

    def _slide(self, tooth: str) -> Terms:
        """Travel along the arch from the patient's right to left."""
        return {self.columns[tooth, "along"]: 1.0 if side_of(tooth) == RIGHT else -1.0}

    def _hinge(self) -> None:
        pairs = {side: pair for side in SIDES if (pair := self._opposed(side))}
        self.hinged = bool(pairs)
        self.closing = self.system.column()
        low, high = norms.value("kinematics.hinge.least"), norms.value("kinematics.hinge.most")
        if not pairs:
            self.system.settings = dict.fromkeys((STATED, PROOF), ())
            self.system.row({self.closing: 1.0}, 0.0, 0.0)
            self.settings_stated, self.settings_proof = ((STATED,),), (PROOF,)
            self._with_errors({STATED: (), PROOF: ()})
            return
        m = self.system.column()
        self._lever(m, pairs)
        least, most = (self.system.row({self.closing: 1.0, m: -factor}) for factor in (low, high))
        lifted = self.system.row({m: 1.0})
        free = Setting(True, lifted, -inf, inf)
        self._variants(
            {
                "least": (Setting(True, least, 0.0, 0.0), Setting(True, most, -inf, inf), free),
                "most": (Setting(True, least, -inf, inf), Setting(True, most, 0.0, 0.0), free),
                "closes": (Setting(True, least, 0, inf), Setting(True, most, -inf, 0), Setting(True, lifted, 0, inf)),
                "opens": (Setting(True, least, -inf, 0), Setting(True, most, 0, inf), Setting(True, lifted, -inf, 0)),
            }
        )

    def _opposed(self, side: str) -> tuple[str, str] | None:
        upper, lower = tooth_at(UPPER, side, 6), tooth_at(LOWER, side, 6)
        return (upper, lower) if {upper, lower} <= {t for t, v in self.columns if v == "vertical"} else None

    def _lever(self, m: int, pairs: dict[str, tuple[str, str]]) -> None:
        heights = {
            side: plus(*({self.columns[tooth, "vertical"]: 1.0} for tooth in pair)) for side, pair in pairs.items()
        }
        self.hinge_columns = {column for terms in heights.values() for column in terms}
        if self.uneven and len(pairs) == 2:
            for side, terms in heights.items():
                self.gaps[side] = self.system.column(0.0)
                self.system.row(plus({m: 1.0, self.gaps[side]: 1.0}, terms), 0.0, 0.0)
        else:
            self.gaps["both"] = self.system.column(0.0)
            self.system.row(plus({m: 1.0, self.gaps["both"]: 1.0}, mean(list(heights.values()))), 0.0, 0.0)
        self.hinge_columns |= set(self.gaps.values())

    def shut_gaps(self) -> dict[str, int]:
        """Rows that a silent posterior gap bounds from above, one a side where the sides differ."""
        if not hasattr(self, "_shut"):
            self._shut = {side: self.system.row({column: 1.0}) for side, column in self.gaps.items()}
        return self._shut

    def _variants(self, hinge: dict[str, tuple[Setting, ...]]) -> None:
        """With uneven sides silence means that one of the two gaps is shut: one variant each."""
        shut = self.shut_gaps()
        sides = list(shut) if len(shut) == 2 else [""]
        names = {
            (name, side): (*settings, *(Setting(True, shut[s], -inf, inf) for s in shut if side and s != side))
            for name, settings in hinge.items()
            for side in sides
        }
        self._with_errors({_name(*key): settings for key, settings in names.items()})
        self.settings_stated = tuple(tuple(_name(end, side) for side in sides) for end in ("least", "most"))
        self.settings_proof = tuple(_name(cone, side) for cone in ("closes", "opens") for side in sides)

    def _with_errors(self, named: dict[str, tuple[Setting, ...]]) -> None:
        self._named = named

    def finish(self) -> None:
        """Fix the errors at 0 in the stated variants and free them in the proofs."""
        stated = {name for group in self.settings_stated for name in group}
        for name, settings in self._named.items():
            errors = tuple(
                Setting(False, column, *((0.0, 0.0) if name in stated else (low, high)))
                for column, low, high in self.errors.values()
            )
            self.system.settings[name] = settings + errors

    def forward(self, tooth: str) -> Terms:
        """Anteroposterior travel of a tooth, forward +."""
        face = self.facing[tooth]
        slide = times(face.along_y, self._slide(tooth))
        return plus({self.columns[tooth, "out"]: face.out_y}, slide)

    def sideways(self, tooth: str) -> Terms:
        """Transverse travel of a tooth, patient's left +."""
        face = self.facing[tooth]
        return plus({self.columns[tooth, "out"]: face.out_x}, times(face.along_x, self._slide(tooth)))

    def outward(self, tooth: str) -> Terms:
        """What a tooth adds to the width of its pair: its ``out`` and its distal travel."""
        face = self.facing[tooth]
        return {self.columns[tooth, "out"]: abs(face.out_x), self.columns[tooth, "along"]: -abs(face.along_x)}

    def present(self, *teeth: str) -> list[str]:
        """Those of the teeth that stand in line."""
        return [tooth for tooth in teeth if (tooth, "vertical") in self.columns]

    def centrals(self, arch: str) -> list[str]:
        """The central incisors standing in an arch."""
        return self.present(*(tooth_at(arch, side, 1) for side in SIDES))

    def _mean_of(self, teeth: list[str], variable: str) -> Terms | None:
        return mean([{self.columns[t, variable]: 1.0} for t in teeth]) if teeth else None

    def measure(self, name: str, pair: tuple[str, ...] | None = None) -> MeasureRow | None:
        """A measure as terms; None if the teeth it is taken at are not there, or teeth do not change it."""
        terms = self._measure(name, pair)
        if terms is None:
            return None
        absolute = name.endswith(("crowding", "spacing"))
        if absolute or pair:
            return MeasureRow(terms, absolute)
        return MeasureRow(plus(terms, dict.fromkeys(self.expected.get(name, ()), 1.0)))

    def _measure(self, name: str, pair: tuple[str, ...] | None) -> Terms | None:
        arch, _, what = name.partition("-")
        if what in ("crowding", "spacing"):
            return self._sum_of(arch, "overlap" if what == "crowding" else "gap")
        if what in _WIDTH_TEETH:
            teeth = self.present(*(tooth_at(arch, side, _WIDTH_TEETH[what]) for side in SIDES))
            return plus(*(self.outward(t) for t in teeth)) if len(teeth) == 2 else None
        if name.startswith(("molar-relation", "canine-relation", "transverse-overlap")):
            return self._of_side(name, pair)
        return self._front(name, pair)

    def _sum_of(self, arch: str, part: str) -> Terms | None:
        rows = self.mouth.rows[arch].contacts
        columns = [getattr(self.contacts[contact.name], part) for contact in rows]
        return dict.fromkeys(columns, 1.0) if columns else None

    def _of_side(self, name: str, pair: tuple[str, ...] | None) -> Terms | None:
        what, _, side = name.rpartition("-")
        number = 3 if what == "canine-relation" else 6
        upper, lower = pair or (tooth_at(UPPER, side, number), tooth_at(LOWER, side, number))
        if arch_of(upper) == LOWER:
            upper, lower = lower, upper
        if len(self.present(upper, lower)) < 2:
            return None
        if what == "transverse-overlap":
            return {self.columns[upper, "out"]: 1.0, self.columns[lower, "out"]: -1.0}
        return plus(self.forward(upper), times(-1.0, self.forward(lower)))

    def _front(self, name: str, pair: tuple[str, ...] | None) -> Terms | None:
        if name in ("upper-midline", "lower-midline"):
            teeth = self.centrals(name[:5])
            return mean([self.sideways(t) for t in teeth]) if len(teeth) == 2 else None
        if name == "posterior-open-bite":
            gaps = list(self.gaps.values())
            return mean([{gap: 1.0} for gap in gaps]) if gaps else None
        if name == "curve-of-spee":
            return self._curve()
        upper, lower = self._fronts(pair)
        return self._front_change(name, upper, lower)

    def _fronts(self, pair: tuple[str, ...] | None) -> tuple[list[str], list[str]]:
        if pair is None:
            return self.centrals(UPPER), self.centrals(LOWER)
        named = self.present(*pair)
        return [t for t in named if arch_of(t) == UPPER], [t for t in named if arch_of(t) == LOWER]

    def _front_change(self, name: str, upper: list[str], lower: list[str]) -> Terms | None:
        if name in ("overbite", "overjet", "interincisal-angle") and not (upper and lower):
            return None
        if name == "overbite":
            heights = [mean([{self.columns[t, "vertical"]: 1.0} for t in teeth]) for teeth in (upper, lower)]
            return plus(*heights, {self.closing: 1.0})
        if name == "overjet":
            fronts = [mean([self.forward(t) for t in teeth]) for teeth in (upper, lower)]
            return plus(fronts[0], times(-1.0, fronts[1]))
        angle = {"upper": self._angle(upper), "lower": self._angle(lower)}
        if name == "interincisal-angle":
            return times(-1.0, plus(angle["upper"] or {}, angle["lower"] or {}))
        if name.startswith(("upper-incisor-to", "lower-incisor-to")):
            return angle[name[:5]]
        if name == "incisor-display-at-rest":
            return self._mean_of(upper, "vertical")
        if name == "gingival-display-on-smiling":
            return self._mean_of(upper, "vertical")
        return None

    def _angle(self, teeth: list[str]) -> Terms | None:
        return self._mean_of([t for t in teeth if (t, "torque") in self.columns], "torque")

    def _curve(self) -> Terms | None:
        line = self.mouth.rows[LOWER].teeth
        incisors = [t for t in line if position(t) <= 2]
        molars = [t for t in line if position(t) == 7]
        premolars = [t for t in line if position(t) in (4, 5)]
        if not (incisors and molars and premolars):
            return None
        heights = [self._mean_of(teeth, "vertical") or {} for teeth in (incisors, molars, premolars)]
        return plus(times(0.5, heights[0]), times(0.5, heights[1]), times(-1.0, heights[2]))


def _carries_angle(tooth: str, variable: str) -> bool:
    return variable == "torque" and position(tooth) <= 3


def _share(contact: Contact, error: str) -> float:
    """How much of an arch's error one contact takes; crowding's counts against room."""
    if error == "unknown":
        return 0.2 if position(contact.first) <= 3 and position(contact.second) <= 3 else 0.0
    return -contact.crowding if error == "crowding" else contact.spacing


def _name(variant: str, side: str) -> str:
    return f"{variant}-{side}" if side else variant


def _aligned(mouth: Mouth) -> Iterable[tuple[str, tuple[str, ...]]]:
    from wellposed.model.clauses import Align

    for clause in mouth.prescription.goals or ():
        if isinstance(clause, Align):
            named = set(clause.align)
            chosen: list[str] = []
            for arch in ARCHES:
                contacts = mouth.rows[arch].contacts
                inner = [c for c in contacts if c.first in named and c.second in named]
                joined = {tooth for c in inner for tooth in (c.first, c.second)}
                lone = named - joined
                chosen += [c.name for c in contacts if c in inner or c.first in lone or c.second in lone]
            yield clause.id, tuple(chosen)


__all__ = ["LEFT", "ContactColumns", "Frame", "MeasureRow"]
