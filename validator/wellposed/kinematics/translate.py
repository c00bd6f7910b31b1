"""A prescription as a system: bounds for what is opened and what is not, then the clauses as members."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from math import inf
from typing import Any, NamedTuple

from wellposed import norms
from wellposed.kinematics.asked import Asked
from wellposed.kinematics.bounds import Bounds
from wellposed.kinematics.excluded import excluded_senses
from wellposed.kinematics.frame import Frame, Play
from wellposed.kinematics.limits import add_limits
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.opened import Opened
from wellposed.kinematics.openings import Sensed, sensed
from wellposed.kinematics.rows import Key
from wellposed.model.clauses import Hold, KeepMotion, KeepVariable
from wellposed.model.means import IncisorTravel
from wellposed.norms import Norms
from wellposed.vocabulary.motions import MOTIONS, Variable
from wellposed.vocabulary.teeth import is_molar


class Unmet(NamedTuple):
    """A clause that cannot be checked, and the measurement it lacks ("" where teeth are missing)."""

    clause_id: str
    measure: str


class Translation:
    """One prescription at one arch depth.

    offset   added to an assumed depth, mm
    numbers  the practice limits, with those of a profile in place
    whole    what the search for conflicts and ways out needs: silence as members that can be lifted, and the practice
             limits of teeth nothing opens; without it silent movements are simply fixed
    """

    def __init__(self, mouth: Mouth, offset: float = 0.0, numbers: Norms | None = None, whole: bool = False) -> None:
        self.mouth = mouth
        self.rx = mouth.prescription
        self.opened = Opened(mouth)
        self.frame = Frame(mouth, self._extra(), Play(self._outs(), self._arcs()), self._uneven(), offset)
        self.system = self.frame.system
        self.bounds = Bounds(self.frame, self.opened, whole)
        self.asked = Asked(self.frame)
        self.unmet = tuple(Unmet(*lack) for lack in self.asked.unmet)
        add_limits(self.frame, numbers or norms.load(), self.bounds.opened_columns, whole)
        self.frame.finish()

    @property
    def preferred(self) -> list[tuple[str, tuple[Key, ...]]]:
        """Preferences in document order: clause id and the members that are only preferred."""
        return self.asked.preferred

    def clause(self, clause_id: str) -> Any:
        """The clause of this id."""
        return self._clauses[clause_id]

    @cached_property
    def _clauses(self) -> dict[str, Any]:
        sections = (
            self.rx.goals,
            self.rx.keep,
            self.rx.movements,
            self.rx.allow,
            self.rx.exclude,
            self.rx.expect,
        )
        items = [item for section in sections for item in section or ()]
        staged = [self.rx.staging] if self.rx.staging else []
        return {item.id: item for item in (*items, *staged)}

    @cached_property
    def hinge_live(self) -> bool:
        """Whether anything opens a back tooth's height or the gap there, so that the hinge factor matters."""
        hinge = self.frame.hinge
        return bool(hinge.columns & self.bounds.opened_columns) or self.bounds.gap_opened

    def _extra(self) -> set[tuple[str, Variable]]:
        """Angles that some clause bounds, of teeth that stand in line."""
        asked = {(t, MOTIONS[m.motion].variable) for m in self.rx.movements or () for t in m.teeth}
        bound = {at for at in asked if at[1] in ("torque", "tip", "rotation")}
        bound |= {(at.tooth, at.variable) for at in self.opened.table if at.variable == "torque"}
        present = {tooth for row in self.mouth.rows.values() for tooth in row.teeth}
        return {at for at in bound if at[0] in present}

    def _outs(self) -> dict[str, tuple[float, float]]:
        """How far each molar's ``out`` is opened outwards and inwards, mm; by a pair's width where that bounds it."""
        barred = {at for item in self.rx.exclude or () for at in excluded_senses(self.mouth, item)}
        found: dict[str, tuple[float, float]] = {}
        for tooth in {at.tooth for at in self.opened.table if at.variable == "out" and is_molar(at.tooth)}:
            reaches = [self._out_of(sensed(tooth, "out", sign)) for sign in (1, -1)]
            slides = [sensed(tooth, "along", -sign) for sign in (1, -1)]
            out, back = (0.0 if at in barred else reach for at, reach in zip(slides, reaches, strict=True))
            found[tooth] = (out, back)
        return found

    def _out_of(self, at: Sensed) -> float:
        amounts = (one.amount if one.amount < inf else self._width_of(one.owner) for one in self.opened.sources(at))
        return max(amounts, default=0.0)

    def _arcs(self) -> dict[str, float]:
        """How much further than counted on the edges of incisors may sink or rise with their travel, mm."""
        spare = norms.value("kinematics.sink-per-advance-most") - norms.value("kinematics.sink-per-advance")
        travels = {item.id for item in self.rx.allow or () if isinstance(item, IncisorTravel)}
        found: dict[str, float] = {}
        for at, sources in self.opened.table.items() if travels else ():
            amounts = [one.amount for one in sources if one.owner in travels] if at.variable == "out" else []
            if amounts:
                found[at.tooth] = max(spare * max(amounts), found.get(at.tooth, 0.0))
        return found

    def _width_of(self, owner: str) -> float:
        amount = getattr(self._clauses.get(owner), "up_to", None)
        return norms.value("kinematics.molar-out-far") if amount is None else amount

    def _uneven(self) -> bool:
        """Whether the first molars of the two sides are ordered differently up or down."""
        return any(self._height(right) != self._height(left) for right, left in (("16", "26"), ("46", "36")))

    def _height(self, tooth: str) -> object:
        reaches = tuple(self.opened.reach(sensed(tooth, "vertical", sign)) for sign in (1, -1))
        return reaches, sorted(self._height_orders(tooth)), tooth in self.mouth.locked

    def _height_orders(self, tooth: str) -> Iterator[tuple[int, float, float, str]]:
        for order in self.rx.movements or ():
            sense = MOTIONS[order.motion]
            if tooth in order.teeth and sense.variable == "vertical":
                most = inf if order.at_most is None else order.at_most
                yield sense.sign, order.at_least or 0.0, most, order.strength
        for kept in self.rx.keep or ():
            if isinstance(kept, Hold) and tooth in kept.hold:
                yield 0, 0.0, 0.0, kept.strength
            elif isinstance(kept, KeepVariable) and tooth in kept.teeth and kept.variable == "vertical":
                yield 0, 0.0, kept.within, kept.strength
            elif isinstance(kept, KeepMotion) and tooth in kept.teeth and MOTIONS[kept.motion].variable == "vertical":
                yield MOTIONS[kept.motion].sign, 0.0, kept.within, kept.strength
