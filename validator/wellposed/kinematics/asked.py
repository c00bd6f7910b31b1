"""What is asked, kept, excluded and staged: the clauses as members of a frame's system."""

from __future__ import annotations

from collections.abc import Iterable
from math import inf
from typing import Any

from wellposed import norms
from wellposed.kinematics.bounds import bound_one_way, hold_still
from wellposed.kinematics.excluded import excluded_senses, excludes_contact
from wellposed.kinematics.frame import Frame
from wellposed.kinematics.keys import clause, space, state
from wellposed.kinematics.means import reduction_contacts
from wellposed.kinematics.measures import MeasureRow, measure_row
from wellposed.kinematics.openings import standing
from wellposed.kinematics.rows import Key, Kind, Terms, plus
from wellposed.model.clauses import (
    Align,
    Close,
    CloseArch,
    Hold,
    KeepMeasure,
    KeepMotion,
    KeepVariable,
    Leave,
    Movement,
    Reach,
)
from wellposed.model.means import EnamelReduction, Exclusion
from wellposed.vocabulary.contacts import normal, teeth_of
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import ARCHES, arch_of

Demand = tuple[Terms, float, float]


def arch_of_contact(contact: str) -> str:
    """The arch of a contact."""
    return arch_of(teeth_of(contact)[0])


class Asked:
    """The clauses of a prescription in its frame.

    demands    terms and bounds of every demand and kept measure, by member
    preferred  preferences in document order: clause id and its members
    unmet      clauses that cannot be checked: clause id and the measure they lack ("" for teeth)
    """

    def __init__(self, frame: Frame) -> None:
        self.frame = frame
        self.mouth = frame.mouth
        self.system = frame.system
        self.demands: dict[Key, Demand] = {}
        self.preferred: list[tuple[str, tuple[Key, ...]]] = []
        self.unmet: list[tuple[str, str]] = []
        rx = self.mouth.prescription
        for item in (*(rx.goals or ()), *(rx.keep or ()), *(rx.movements or ())):
            self._clause(item)
        self._sites()
        for allowance in rx.allow or ():
            if isinstance(allowance, EnamelReduction) and allowance.at_least is not None:
                self._ordered_reduction(allowance, allowance.at_least)
        for excluded in rx.exclude or ():
            self._exclude(excluded)
        self._staging()
        for arch in ARCHES:
            self._new_space(arch)

    def _clause(self, item: Any) -> None:
        """One goal, keep or movement; of a preference every member, of a preferred movement the floor alone."""
        before = set(self.system.members)
        form = _FORMS.get(type(item))
        if form is not None:
            form(self, item)
        if item.strength == "prefer":
            new = [key for key in self.system.members if key not in before]
            if isinstance(item, Movement):
                new = [key for key in new if key == clause(item.id, "floor")]
            if new:
                self.preferred.append((item.id, tuple(new)))

    def _demand(self, key: Key, terms: Terms, low: float = -inf, high: float = inf) -> None:
        """A demand over terms; a single column is bound directly."""
        self.demands[key] = (terms, low, high)
        if len(terms) == 1:
            ((column, factor),) = terms.items()
            self.system.bind_column(key, Kind.DEMAND, column, *sorted((low / factor, high / factor)))
        else:
            self.system.bind_row(key, Kind.DEMAND, terms, low, high)

    # room

    def _align(self, goal: Align) -> None:
        names = self.frame.aligned_contacts[goal.id]
        if not names:
            return
        self._need_room(goal.id, names, "crowding")
        contacts = [
            contact for name in names if (contact := self.mouth.rows[arch_of_contact(name)].contact(name))
        ]
        overlaps = dict.fromkeys((self.frame.contacts[contact.name].overlap for contact in contacts), 1.0)
        errors = [
            {self.frame.errors[f"{arch_of(contact.first)}-crowding"][0]: -contact.crowding}
            for contact in contacts
            if contact.crowding and f"{arch_of(contact.first)}-crowding" in self.frame.errors
        ]
        self.system.row(plus(overlaps, *errors), -inf, sum(max(0.0, -contact.before) for contact in contacts))
        self._demand(clause(goal.id, "align"), overlaps, high=0.0)

    def _need_room(self, clause_id: str, contacts: Iterable[str], what: str) -> None:
        for arch in sorted({arch_of_contact(contact) for contact in contacts}):
            if not self.mouth.room_stated(arch) or self.mouth.room_unclear(arch):
                self.unmet.append((clause_id, f"{arch}-{what}"))

    def _close(self, goal: Close) -> None:
        self._shut(goal.id, [normal(contact) for contact in goal.close])

    def _close_arch(self, goal: CloseArch) -> None:
        self._shut(
            goal.id, [c.name for c in self.mouth.rows[goal.close_arch].contacts if c.name not in self._left()]
        )

    def _shut(self, clause_id: str, names: list[str]) -> None:
        columns = [self.frame.contacts[name].gap for name in names if name in self.frame.contacts]
        if columns:
            self._need_room(clause_id, names, "spacing")
            self._demand(clause(clause_id, "close"), dict.fromkeys(columns, 1.0), high=0.0)

    def _left(self) -> set[str]:
        """Contacts at which a goal leaves room."""
        return {normal(goal.leave) for goal in self.mouth.prescription.goals or () if isinstance(goal, Leave)}

    def _leave(self, goal: Leave) -> None:
        columns = self.frame.contacts.get(normal(goal.leave))
        if columns:
            self._need_room(goal.id, [goal.leave], "spacing")
            self._demand(clause(goal.id, "leave"), {columns.gap: 1.0}, goal.amount, goal.amount)

    def _sites(self) -> None:
        """The place of an extracted tooth closes unless a goal leaves it."""
        left, extracted = self._left(), self.mouth.extracted
        for row in self.mouth.rows.values():
            for contact in row.contacts:
                taken = [tooth for tooth in contact.taken if tooth in extracted]
                if taken and contact.name not in left:
                    owner = extracted[taken[0]]
                    key = (
                        clause(owner, f"site {contact.name}")
                        if owner
                        else state(taken[0], f"site {contact.name}")
                    )
                    self._demand(key, {self.frame.contacts[contact.name].gap: 1.0}, high=0.0)

    def _ordered_reduction(self, item: EnamelReduction, least: float) -> None:
        names = reduction_contacts(self.mouth, item)
        total = dict.fromkeys((self.frame.contacts[name].reduction for name in names), 1.0)
        if total:
            self._demand(clause(item.id, "floor"), total, low=least)

    def _new_space(self, arch: str) -> None:
        """New space that no goal closes or leaves, kept apart: a question, not a demand of the prescriber."""
        rx, row = self.mouth.prescription, self.mouth.rows[arch]
        spoken: set[str] = {g.close_arch for g in rx.goals or () if isinstance(g, CloseArch)}
        spoken |= {arch_of_contact(c) for g in rx.goals or () if isinstance(g, Close) for c in g.close}
        spoken |= {arch_of_contact(contact) for contact in self._left()}
        if arch in spoken or not row.contacts:
            return
        gaps = dict.fromkeys((self.frame.contacts[contact.name].gap for contact in row.contacts), 1.0)
        before = sum(max(0.0, contact.before) for contact in row.contacts if not contact.taken)
        self._demand(space(arch), gaps, high=before + norms.value("kinematics.space-left-over"))

    # measures

    def _reach(self, goal: Reach) -> None:
        row, baseline = self._measured(goal.measure, goal.pair)
        scale = self.mouth.scale(goal.measure, goal.unit)
        if row is None or baseline is None or scale is None:
            lacking = "" if row is None else "lower-incisor-crown-height" if scale is None else goal.measure
            self.unmet.append((goal.id, lacking))
            return
        terms = self._with_error(row, goal)
        if goal.at_least is not None:
            self._demand(clause(goal.id, "floor"), terms, low=goal.at_least * scale - baseline)
        if goal.at_most is not None:
            self._demand(clause(goal.id, "ceiling"), terms, high=goal.at_most * scale - baseline)

    def _measured(self, measure: str, pair: tuple[str, ...] | None) -> tuple[MeasureRow | None, float | None]:
        """Terms of a measure and its baseline; 0 for one that stands for its final value."""
        row = measure_row(self.frame, measure, pair)
        if row is not None and row.absolute:
            arch = measure.split("-")[0]
            known = self.mouth.room_stated(arch) and not self.mouth.room_unclear(arch)
            return row, 0.0 if known else None
        return row, self.mouth.baseline(measure, pair)

    def _with_error(self, row: MeasureRow, goal: Reach) -> Terms:
        error = self.mouth.error(goal.measure, goal.pair)
        if row.absolute or error == 0:
            return row.terms
        name = goal.measure if goal.pair is None else f"{goal.measure}@{'-'.join(sorted(goal.pair))}"
        return plus(row.terms, {self.frame.error_column(name, -error, error): 1.0})

    def _keep_measure(self, kept: KeepMeasure) -> None:
        row, scale = (
            measure_row(self.frame, kept.measure, kept.pair),
            self.mouth.scale(kept.measure, kept.unit),
        )
        if row is None or scale is None:
            self.unmet.append((kept.id, "" if row is None else "lower-incisor-crown-height"))
            return
        terms, middle = self._about(kept, row) if row.absolute else (row.terms, 0.0)
        if middle is None:
            self.unmet.append((kept.id, kept.measure))
            return
        within = kept.within * scale
        self.demands[clause(kept.id, "keep")] = (terms, middle - within, middle + within)
        self.system.bind_row(clause(kept.id, "keep"), Kind.KEEP, terms, middle - within, middle + within)

    def _about(self, kept: KeepMeasure, row: MeasureRow) -> tuple[Terms, float | None]:
        """Crowding or spacing as a change: the terms less their error, and the value they start from."""
        arch, _, what = kept.measure.partition("-")
        if self._measured(kept.measure, kept.pair)[1] is None:
            return row.terms, None
        sign = -1 if what == "crowding" else 1
        there = [contact for contact in self.mouth.rows[arch].contacts if sign * contact.before > 0]
        middle = sum(sign * contact.before for contact in there)
        if kept.measure not in self.frame.errors:
            return row.terms, middle
        share = sum(contact.crowding if what == "crowding" else contact.spacing for contact in there)
        return plus(row.terms, {self.frame.errors[kept.measure][0]: -share}), middle

    # teeth

    def _hold(self, kept: Hold) -> None:
        for tooth in standing(self.mouth, kept.hold):
            hold_still(self.frame, clause(kept.id, "hold"), Kind.KEEP, tooth)

    def _keep_variable(self, kept: KeepVariable) -> None:
        self._keep_motion(kept, kept.variable, (1, -1))

    def _keep_sense(self, kept: KeepMotion) -> None:
        sense = MOTIONS[kept.motion]
        self._keep_motion(kept, sense.variable, (sense.sign,))

    def _keep_motion(self, kept: KeepVariable | KeepMotion, variable: str, signs: tuple[int, ...]) -> None:
        for tooth in standing(self.mouth, kept.teeth):
            column = self.frame.column(tooth, variable)
            if column is not None:
                for sign in signs:
                    bound_one_way(self.system, clause(kept.id, "keep"), Kind.KEEP, column, sign, kept.within)

    def _order(self, order: Movement) -> None:
        sense = MOTIONS[order.motion]
        for tooth in standing(self.mouth, order.teeth):
            column = self.frame.column(tooth, sense.variable)
            if column is not None and sense.variable == "out" and tooth in self.frame.travels:
                self._order_displaced(order, tooth, column, sense.sign)
            elif column is not None:
                self._order_tooth(order, column, sense.sign, order.at_least or 0.0, order.at_most)

    def _order_tooth(self, order: Movement, column: int, sign: int, low: float, high: float | None) -> None:
        if low > 0:
            bound_one_way(self.system, clause(order.id, "floor"), Kind.DEMAND, column, -sign, -low)
        if high is not None:
            bound_one_way(self.system, clause(order.id, "ceiling"), Kind.CEILING, column, sign, high)

    def _order_displaced(self, order: Movement, tooth: str, column: int, sign: int) -> None:
        """A displaced tooth travels to the line first; what is left of the order moves the arch form."""
        first = max(0.0, -sign * self.mouth.tooth_values("displacement")[tooth])
        total = {column: float(sign), self.frame.travels[tooth]: float(sign)}
        low, high = order.at_least or 0.0, order.at_most
        if low > 0:
            self.system.bind_row(clause(order.id, "floor"), Kind.DEMAND, total, low=low)
        if high is not None:
            self.system.bind_row(clause(order.id, "ceiling"), Kind.CEILING, total, high=high)
        rest = None if high is None else max(0.0, high - first)
        self._order_tooth(order, column, sign, max(0.0, low - first), rest)

    # exclusions and staging

    def _exclude(self, item: Exclusion) -> None:
        key = clause(item.id, "exclude")
        if item.means == "enamel-reduction":
            for name, columns in self.frame.contacts.items():
                if excludes_contact(item, name):
                    self.system.bind_column(key, Kind.KEEP, columns.reduction, high=0.0)
        elif item.means == "posterior-open-bite":
            for row in self.frame.hinge.shut.values():
                self.system.bind_existing_row(key, Kind.KEEP, row, high=0.0)
        for at in excluded_senses(self.mouth, item):
            column = self.frame.column(at.tooth, at.variable)
            if column is not None:
                bound_one_way(self.system, key, Kind.KEEP, column, at.sign, 0.0)

    def _staging(self) -> None:
        staging = self.mouth.prescription.staging
        if staging is None or staging.most_aligners is None:
            return
        key = clause(staging.id, "aligners")
        for (tooth, variable), column in self.frame.columns.items():
            step = self.step(tooth, variable)
            if step is not None:
                reach = step * staging.most_aligners
                self.system.bind_column(key, Kind.CEILING, column, -reach, reach)
        if staging.strength == "prefer" and key in self.system.members:
            self.preferred.append((staging.id, (key,)))

    def step(self, tooth: str, variable: str) -> float | None:
        """The largest step per aligner the prescription states for a variable of a tooth."""
        staging = self.mouth.prescription.staging
        steps = (staging.largest_steps or ()) if staging else ()
        fitting = [s for s in steps if s.variable == variable and (s.teeth is None or tooth in s.teeth)]
        named = [s.amount for s in fitting if s.teeth is not None]
        return min(named or [s.amount for s in fitting], default=None)


_FORMS: dict[type, Any] = {
    Align: Asked._align,
    Close: Asked._close,
    CloseArch: Asked._close_arch,
    Leave: Asked._leave,
    Reach: Asked._reach,
    Hold: Asked._hold,
    KeepVariable: Asked._keep_variable,
    KeepMotion: Asked._keep_sense,
    KeepMeasure: Asked._keep_measure,
    Movement: Asked._order,
}
