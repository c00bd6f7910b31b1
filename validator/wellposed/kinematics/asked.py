"""What is asked, kept, excluded and staged: the clauses as members of a frame's system."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from wellposed.kinematics import asked_measures, room
from wellposed.kinematics.excluded import excluded_senses, excludes_contact
from wellposed.kinematics.frame import Frame
from wellposed.kinematics.keys import clause
from wellposed.kinematics.ledger import Ledger
from wellposed.kinematics.openings import standing
from wellposed.kinematics.rows import Key, Kind
from wellposed.kinematics.ties import hold_still
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
from wellposed.model.means import Exclusion
from wellposed.vocabulary.motions import MOTIONS, Variable

Preferences = list[tuple[str, tuple[Key, ...]]]


class Asked(Ledger):
    """The clauses of a prescription in its frame.

    preferred  preferences in document order: clause id and its members
    """

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        self.preferred: Preferences = []
        rx = self.mouth.prescription
        for item in (*(rx.goals or ()), *(rx.keep or ()), *(rx.movements or ())):
            self._clause(item)
        room.close_sites(self)
        room.ordered_reduction(self)
        for excluded in rx.exclude or ():
            _exclude(self, excluded)
        self._staging()
        room.new_space(self)

    def _clause(self, item: Any) -> None:
        """One goal, keep or movement; of a preference every member, of a preferred movement the floor alone."""
        before = set(self.system.members)
        enter = _FORMS.get(type(item))
        if enter is not None:
            enter(self, item)
        if item.strength == "prefer":
            new = [key for key in self.system.members if key not in before]
            floors = [key for key in new if key == clause(item.id, "floor")]
            chosen = floors if isinstance(item, Movement) else new
            if chosen:
                self.preferred.append((item.id, tuple(chosen)))

    def _staging(self) -> None:
        """No variable goes further than its step times the aligners."""
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


def _hold(ledger: Ledger, kept: Hold) -> None:
    for tooth in standing(ledger.mouth, kept.hold):
        hold_still(ledger.frame, clause(kept.id, "hold"), Kind.KEEP, tooth)


def _keep_variable(ledger: Ledger, kept: KeepVariable) -> None:
    _keep_motion(ledger, kept, kept.variable, (1, -1))


def _keep_sense(ledger: Ledger, kept: KeepMotion) -> None:
    sense = MOTIONS[kept.motion]
    _keep_motion(ledger, kept, sense.variable, (sense.sign,))


def _keep_motion(ledger: Ledger, kept: KeepVariable | KeepMotion, variable: Variable, signs: tuple[int, ...]) -> None:
    for tooth in standing(ledger.mouth, kept.teeth):
        column = ledger.frame.column(tooth, variable)
        if column is None:
            continue
        for sign in signs:
            ledger.system.bind_side(clause(kept.id, "keep"), Kind.KEEP, column, sign, kept.within)
            if variable == "out" and tooth in ledger.frame.travels:
                _keep_displaced(ledger, kept, tooth, column, sign)


def _keep_displaced(ledger: Ledger, kept: KeepVariable | KeepMotion, tooth: str, column: int, sign: int) -> None:
    """What a displaced tooth travels to the line counts as well."""
    total = {column: float(sign), ledger.frame.travels[tooth]: float(sign)}
    ledger.system.bind_row(clause(kept.id, "keep"), Kind.KEEP, total, high=kept.within)


def _order(ledger: Ledger, order: Movement) -> None:
    sense = MOTIONS[order.motion]
    for tooth in standing(ledger.mouth, order.teeth):
        column = ledger.frame.column(tooth, sense.variable)
        if column is not None and sense.variable == "out" and tooth in ledger.frame.travels:
            _order_displaced(ledger, order, tooth, column)
        elif column is not None:
            _order_column(ledger, order, column, order.at_least or 0.0, order.at_most)


def _order_column(ledger: Ledger, order: Movement, column: int, low: float, high: float | None) -> None:
    sign = MOTIONS[order.motion].sign
    if low > 0:
        ledger.system.bind_side(clause(order.id, "floor"), Kind.DEMAND, column, -sign, -low)
    if high is not None:
        ledger.system.bind_side(clause(order.id, "ceiling"), Kind.CEILING, column, sign, high)


def _order_displaced(ledger: Ledger, order: Movement, tooth: str, column: int) -> None:
    """A displaced tooth travels to the line first; what is left of the order moves the arch form."""
    sign = MOTIONS[order.motion].sign
    first = max(0.0, -sign * ledger.mouth.tooth_values("displacement")[tooth])
    total = {column: float(sign), ledger.frame.travels[tooth]: float(sign)}
    low, high = order.at_least or 0.0, order.at_most
    if low > 0:
        ledger.system.bind_row(clause(order.id, "floor"), Kind.DEMAND, total, low=low)
    if high is not None:
        ledger.system.bind_row(clause(order.id, "ceiling"), Kind.CEILING, total, high=high)
    _order_column(ledger, order, column, max(0.0, low - first), None if high is None else max(0.0, high - first))


def _exclude(ledger: Ledger, item: Exclusion) -> None:
    key, frame = clause(item.id, "exclude"), ledger.frame
    if item.means == "enamel-reduction":
        for name, columns in frame.contacts.items():
            if excludes_contact(item, name):
                ledger.system.bind_column(key, Kind.BAN, columns.reduction, high=0.0)
    elif item.means == "posterior-open-bite":
        for row in frame.hinge.shut.values():
            ledger.system.bind_existing_row(key, Kind.BAN, row, high=frame.hinge.before)
    for at in excluded_senses(ledger.mouth, item):
        column = frame.column(at.tooth, at.variable)
        if column is not None:
            ledger.system.bind_side(key, Kind.BAN, column, at.sign, 0.0)


_FORMS: dict[type, Callable[[Ledger, Any], None]] = {
    Align: room.align,
    Close: room.close,
    CloseArch: room.close_arch,
    Leave: room.leave,
    Reach: asked_measures.reach,
    Hold: _hold,
    KeepVariable: _keep_variable,
    KeepMotion: _keep_sense,
    KeepMeasure: asked_measures.keep,
    Movement: _order,
}
