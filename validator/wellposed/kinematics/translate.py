"""A prescription's clauses as members of a system: bounds for what is opened, rows for what is asked."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cached_property
from math import inf
from typing import Any, NamedTuple

from wellposed import norms
from wellposed.kinematics import openings as opening
from wellposed.kinematics.frame import Frame, MeasureRow
from wellposed.kinematics.limits import add_limits
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.openings import Sensed, Source
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
from wellposed.model.means import EnamelReduction, Exclusion, PosteriorOpenBite, WidthChange
from wellposed.norms import Norms
from wellposed.vocabulary.contacts import normal
from wellposed.vocabulary.motions import MOTIONS, Variable
from wellposed.vocabulary.teeth import ARCHES, arch_of, is_canine, is_incisor, is_molar, is_premolar, position

Table = dict[Sensed, list[Source]]


def clause(clause_id: str, part: str) -> Key:
    """Key of a part of a clause."""
    return ("clause", clause_id, part)


def silence(arch: str, group: str) -> Key:
    """Key of what is not mentioned in an arch."""
    return ("silence", arch, group)


def tooth_class(tooth: str) -> str:
    """incisor, canine or posterior."""
    return "incisor" if is_incisor(tooth) else "canine" if is_canine(tooth) else "posterior"


def silent_group(tooth: str, variable: str) -> str:
    """The group of silent variables one belongs to."""
    if variable == "along":
        return "along"
    if variable == "out":
        return "incisor-out" if is_incisor(tooth) else "side-out"
    return f"{tooth_class(tooth)}-{variable}"


class Unmet(NamedTuple):
    """A clause that cannot be checked, and the measurement it lacks ("" where a tooth is missing)."""

    clause_id: str
    measure: str


class Ceiling(NamedTuple):
    """An opening bounded by a clause's amount."""

    column: int
    sign: int
    rate: float
    amount: float


class Translation:
    """One prescription at one arch depth.

    offset   added to an assumed depth, mm
    numbers  the practice limits, with those of a profile in place
    whole    bind the practice limits of teeth nothing opens too, as the search for ways out needs
    """

    def __init__(
        self, mouth: Mouth, offset: float = 0.0, numbers: Norms | None = None, whole: bool = False
    ) -> None:
        self.mouth = mouth
        self.rx = mouth.prescription
        self.table: Table = {}
        self.said: set[tuple[str, str]] = set()
        self.amounts: dict[str, float] = {}
        self._collect()
        self.frame = Frame(mouth, self._extra(), self._uneven(), offset)
        self.system = self.frame.system
        self.ceilings: dict[str, list[Ceiling]] = {}
        self.width_rows: dict[str, list[tuple[Terms, float]]] = {}
        self.gap_rates: dict[str, float] = {}
        self.reductions: dict[str, list[str]] = {}
        self.preferred: list[tuple[str, tuple[Key, ...]]] = []
        self.unmet: list[Unmet] = []
        self.demands: dict[Key, tuple[Terms, float, float]] = {}
        self.opened_columns: set[int] = set()
        self._bind()
        add_limits(self.frame, numbers or norms.load(), lambda column: whole or column in self.opened_columns)
        self.frame.finish()

    def clause(self, clause_id: str) -> Any:
        """The clause of this id."""
        return self._clauses[clause_id]

    @cached_property
    def _clauses(self) -> dict[str, Any]:
        sections = (self.rx.goals, self.rx.keep, self.rx.movements, self.rx.allow, self.rx.exclude, self.rx.expect)
        found = {item.id: item for section in sections for item in section or ()}
        if self.rx.staging:
            found[self.rx.staging.id] = self.rx.staging
        return found

    @cached_property
    def hinge_live(self) -> bool:
        """Whether anything opens a back tooth's height or the gap there, so that the hinge factor matters."""
        columns = getattr(self.frame, "hinge_columns", set())
        return any(column in self.opened_columns for column in columns) or bool(self.gap_rates)

    # what is opened

    def _collect(self) -> None:
        for allowance in self.rx.allow or ():
            amount, opened = opening.allowance_opens(self.mouth, allowance)
            self.amounts[allowance.id] = amount
            self._note(opened, allowance.id, amount, True)
        for item in (*(self.rx.goals or ()), *(self.rx.keep or ()), *(self.rx.movements or ())):
            self._note(opening.clause_opens(self.mouth, item), item.id, 1.0, isinstance(item, Movement))
        for tooth, owner in self.mouth.extracted.items():
            if owner is None:
                self._note(opening.extraction_of(self.mouth, tooth), tooth, inf, True)
        for at, source in list(opening.followers(self.mouth, self.table)):
            self.table.setdefault(at, []).append(source)
        for at, source in list(opening.straight_back(self.table)):
            self.table.setdefault(at, []).append(source)
            for more in opening.both(at.tooth, "along"):
                self.table.setdefault(more.at, []).append(source._replace(rate=inf, amount=inf, drawn=False))

    def _note(self, opened: Iterable[opening.Opening], owner: str, amount: float, said: bool) -> None:
        for o in opened:
            reach = inf if o.rate == inf else o.rate * amount
            source = Source(owner, o.rate, reach, o.soft, o.drawn, o.alike, o.slack)
            self.table.setdefault(o.at, []).append(source)
            if said:
                self.said.add((arch_of(o.at.tooth), silent_group(o.at.tooth, o.at.variable)))

    def _extra(self) -> set[tuple[str, str]]:
        extra = {(at.tooth, at.variable) for at in self.table if at.variable in ("torque", "tip", "rotation")}
        asked = {(t, MOTIONS[m.motion].variable) for m in self.rx.movements or () for t in m.teeth}
        named = {at for at in asked if at[1] in ("torque", "tip", "rotation")}
        bound = named | {at for at in extra if at[1] == "torque"}
        present = {tooth for row in self.mouth.rows.values() for tooth in row.teeth}
        return {at for at in bound if at[0] in present}

    def _uneven(self) -> bool:
        return any(self._vertical(f"{q}6") != self._vertical(f"{o}6") for q, o in (("1", "2"), ("4", "3")))

    def _vertical(self, tooth: str) -> object:
        opened = tuple(self._reach(Sensed(tooth, "vertical", sign)) for sign in (1, -1))
        orders = sorted(
            (MOTIONS[m.motion].sign, m.at_least or 0.0, inf if m.at_most is None else m.at_most, m.strength)
            for m in self.rx.movements or ()
            if tooth in m.teeth and MOTIONS[m.motion].variable == "vertical"
        )
        kept = sorted(
            (k.within, k.strength) for k in self.rx.keep or () if isinstance(k, KeepVariable | KeepMotion)
            and tooth in k.teeth and (k.variable if isinstance(k, KeepVariable) else MOTIONS[k.motion].variable)
            == "vertical"
        )  # fmt: skip
        held = any(isinstance(k, Hold) and tooth in k.hold for k in self.rx.keep or ())
        return opened, orders, kept, held, tooth in self.mouth.locked

    def deciding(self, at: Sensed) -> Source | None:
        """The source that bounds a sensed variable: infinite beats stated, stated beats soft; None: silent."""
        sources = self.table.get(at, ())
        hard = [source for source in sources if not (source.soft and source.amount == inf)]
        chosen = hard or list(sources)
        return max(chosen, key=lambda source: source.amount) if chosen else None

    def _reach(self, at: Sensed) -> float:
        source = self.deciding(at)
        return source.amount if source else 0.0

    # bounds and rows

    def _bind(self) -> None:
        self._movement_bounds()
        self._alike()
        self._widths()
        self._reductions()
        self._gaps()
        self._locks()
        for goal in self.rx.goals or ():
            self._goal(goal)
        self._sites()
        for kept in self.rx.keep or ():
            self._keep(kept)
        for order in self.rx.movements or ():
            self._order(order)
        for excluded in self.rx.exclude or ():
            self._exclude(excluded)
        self._staging()
        self._space()

    def _movement_bounds(self) -> None:
        for (tooth, variable), column in self.frame.columns.items():
            for sign in (1, -1):
                at = Sensed(tooth, _variable(variable), sign)
                source = self.deciding(at)
                if source is not None:
                    self.opened_columns.add(column)
                if source is None:
                    self._bound(silence(arch_of(tooth), silent_group(tooth, variable)), Kind.SILENCE, column, sign, 0.0)
                elif source.amount < inf and source.owner is not None:
                    self._bound(self.ceiling(source.owner), Kind.CEILING, column, sign, source.amount)
                    held = Ceiling(column, sign, source.rate, source.amount)
                    self.ceilings.setdefault(source.owner, []).append(held)
        for tooth, column in self.frame.travels.items():
            self._travel(tooth, column)

    def ceiling(self, owner: str) -> Key:
        """Key of the part of a clause that holds its amount."""
        for item in self.rx.allow or ():
            if item.id == owner and isinstance(item, EnamelReduction):
                return clause(owner, "per-contact" if item.in_all is None else "in-all")
        return clause(owner, "ceiling")

    def _travel(self, tooth: str, column: int) -> None:
        """A displaced tooth may come to the line where an ``align`` or anything that opens its ``out`` says so."""
        sign = -1 if self.mouth.tooth_values("displacement")[tooth] > 0 else 1
        aligned = any(isinstance(goal, Align) and tooth in goal.align for goal in self.rx.goals or ())
        if not aligned and self.deciding(Sensed(tooth, "out", sign)) is None:
            key = silence(arch_of(tooth), silent_group(tooth, "out"))
            self._bound(key, Kind.SILENCE, column, sign, 0.0)

    def _bound(self, key: Key, kind: Kind, column: int, sign: int, value: float) -> None:
        low, high = (-inf, value) if sign > 0 else (-value, inf)
        self.system.bind_column(key, kind, column, low, high)

    def _alike(self) -> None:
        apart = norms.value("kinematics.incisors-alike")
        for arch in ARCHES:
            teeth = opening.incisors(self.mouth, arch)
            sources = [
                source for tooth in teeth for sign in (1, -1) for source in self.table.get(Sensed(tooth, "out", sign), ())
            ]
            if sources and all(source.alike for source in sources):
                for terms in alike(self.frame, teeth):
                    self.system.row(terms, -apart, apart)

    def _widths(self) -> None:
        """Widening and narrowing bound the width of each pair; what else opens those teeth adds to the bound."""
        for item in self.rx.allow or ():
            if not isinstance(item, WidthChange):
                continue
            sign = 1 if item.use == "widening" else -1
            teeth = opening.standing(self.mouth, item.teeth or opening.side_teeth(self.mouth, item.arch))
            for number in sorted({position(tooth) for tooth in teeth}):
                self._pair_width(item, [tooth for tooth in teeth if position(tooth) == number], sign)

    def _pair_width(self, item: WidthChange, pair: list[str], sign: int) -> None:
        others = [
            source.amount * abs(self.frame.facing[tooth].out_x)
            for tooth in pair
            for source in self.table.get(Sensed(tooth, "out", sign), ())
            if source.owner != item.id
        ]
        spare = sum(others)
        if spare == inf:
            return
        terms = {self.frame.columns[t, "out"]: sign * abs(self.frame.facing[t].out_x) for t in pair}
        key = clause(item.id, "ceiling")
        self.system.bind_row(key, Kind.CEILING, terms, high=item.up_to + spare)
        self.width_rows.setdefault(item.id, []).append((terms, item.up_to + spare))

    def _reductions(self) -> None:
        free: dict[str, list[int]] = {arch: [] for arch in ARCHES}
        opened = {
            name: item.id
            for item in self.rx.allow or ()
            if isinstance(item, EnamelReduction)
            for name in opening.reduction_contacts(self.mouth, item)
        }
        for arch in ARCHES:
            for contact in self.mouth.rows[arch].contacts:
                if contact.name not in opened:
                    free[arch].append(self.frame.contacts[contact.name].reduction)
            if free[arch]:
                terms = dict.fromkeys(free[arch], 1.0)
                self.system.bind_row(silence(arch, "reduction"), Kind.SILENCE, terms, high=0.0)
        for item in self.rx.allow or ():
            if isinstance(item, EnamelReduction):
                self._reduction(item)

    def _reduction(self, item: EnamelReduction) -> None:
        names = opening.reduction_contacts(self.mouth, item)
        self.reductions[item.id] = names
        columns = [self.frame.contacts[name].reduction for name in names]
        self.opened_columns.update(columns)
        total = dict.fromkeys(columns, 1.0)
        if item.per_contact is not None:
            for column in columns:
                self.system.bind_column(clause(item.id, "per-contact"), Kind.CEILING, column, high=item.per_contact)
        if item.in_all is not None:
            self.system.bind_row(clause(item.id, "in-all"), Kind.CEILING, total, high=item.in_all)
        if item.at_least is not None:
            self._demand(clause(item.id, "floor"), total, low=item.at_least)

    def _gaps(self) -> None:
        """Silence shuts the posterior gap; an allowance, or teeth that act as stops, open it."""
        if not self.frame.gaps:
            return
        opened = {a.id: a.up_to for a in self.rx.allow or () if isinstance(a, PosteriorOpenBite)}
        stops: dict[str, tuple[float, float]] = {key: (value, 1.0) for key, value in opened.items()}
        for (tooth, variable, sign), _ in self.table.items():
            if variable == "vertical" and sign > 0 and (is_premolar(tooth) or position(tooth) == 7):
                source = self.deciding(Sensed(tooth, "vertical", 1))
                if source and source.owner is not None:
                    stops[source.owner] = max(stops.get(source.owner, (0.0, 0.0)), self._stop(source, tooth))
        shut = self.frame.shut_gaps()
        if not stops:
            for row in shut.values():
                self._bound_row(silence("both", "gap"), Kind.SILENCE, row, 0.0)
            return
        owner, (most, rate) = max(stops.items(), key=lambda item: item[1][0])
        if most < inf:
            self.gap_rates[owner] = rate
            for row in shut.values():
                self._bound_row(clause(owner, "ceiling"), Kind.CEILING, row, most)

    def _stop(self, source: Source, tooth: str) -> tuple[float, float]:
        orders = [
            m.at_most
            for m in self.rx.movements or ()
            if m.id == source.owner and tooth in m.teeth and m.at_most is not None
        ]
        return (min(orders), 1.0) if orders and source.amount == inf else (source.amount, source.rate)

    def _bound_row(self, key: Key, kind: Kind, row: int, high: float) -> None:
        self.system._bind(self.system.member(key, kind), True, row, -inf, high)

    def _locks(self) -> None:
        for tooth in self.mouth.locked:
            self._still(("state", tooth), Kind.FIXED, tooth)

    def _still(self, key: Key, kind: Kind, tooth: str) -> None:
        for (name, _), column in self.frame.columns.items():
            if name == tooth:
                self.system.bind_column(key, kind, column, 0.0, 0.0)
        for contact, columns in self.frame.contacts.items():
            if tooth in contact.split("-"):
                self.system.bind_column(key, kind, columns.reduction, high=0.0)

    def _demand(self, key: Key, terms: Terms, low: float = -inf, high: float = inf) -> None:
        """A demand over terms; a single column is bound directly."""
        self.demands[key] = (terms, low, high)
        if len(terms) == 1:
            ((column, factor),) = terms.items()
            ends = sorted((low / factor, high / factor))
            self.system.bind_column(key, Kind.DEMAND, column, *ends)
        else:
            self.system.bind_row(key, Kind.DEMAND, terms, low, high)

    # goals

    def _goal(self, goal: object) -> None:
        before = set(self.system.members)
        match goal:
            case Align():
                self._align(goal)
            case Close():
                self._closed(goal.id, goal.close)
            case CloseArch():
                self._close_arch(goal)
            case Leave():
                self._leave(goal)
            case Reach():
                self._reach_goal(goal)
        self._prefer(goal, before)

    def _prefer(self, item: object, before: set[Key]) -> None:
        if getattr(item, "strength", "must") == "prefer":
            new = tuple(key for key in self.system.members if key not in before)
            if new:
                self.preferred.append((str(getattr(item, "id", "")), new))

    def _align(self, goal: Align) -> None:
        names = self.frame.aligned_contacts()[goal.id]
        overlaps = dict.fromkeys((self.frame.contacts[name].overlap for name in names), 1.0)
        if not names:
            return
        self._missing_room(goal.id, {arch_of(name.split("-")[0]) for name in names}, "crowding")
        contacts = [self.mouth.rows[arch_of(name.split("-")[0])].contact(name) for name in names]
        before = sum(max(0.0, -contact.before) for contact in contacts if contact)
        errors = [
            {self.frame.errors[f"{arch}-crowding"][0]: -sum(c.crowding for c in contacts if c and arch_of(c.first) == arch)}
            for arch in ARCHES
            if f"{arch}-crowding" in self.frame.errors
        ]
        self.system.row(plus(overlaps, *errors), -inf, before)
        self._demand(clause(goal.id, "align"), overlaps, high=0.0)

    def _missing_room(self, clause_id: str, arches: set[str], what: str) -> None:
        for arch in sorted(arches):
            if not self.mouth.room_stated(arch) or self.mouth.room_unclear(arch):
                self.unmet.append(Unmet(clause_id, f"{arch}-{what}"))

    def _closed(self, clause_id: str, contacts: Iterable[str]) -> None:
        columns = [self.frame.contacts[n].gap for n in map(normal, contacts) if n in self.frame.contacts]
        if columns:
            arches = {arch_of(contact.split("-")[0]) for contact in contacts}
            self._missing_room(clause_id, arches, "spacing")
            self._demand(clause(clause_id, "close"), dict.fromkeys(columns, 1.0), high=0.0)

    def _close_arch(self, goal: CloseArch) -> None:
        left = {normal(g.leave) for g in self.rx.goals or () if isinstance(g, Leave)}
        names = [c.name for c in self.mouth.rows[goal.close_arch].contacts if c.name not in left]
        self._closed(goal.id, names)

    def _leave(self, goal: Leave) -> None:
        columns = self.frame.contacts.get(normal(goal.leave))
        if columns:
            self._missing_room(goal.id, {arch_of(goal.leave.split("-")[0])}, "spacing")
            self._demand(clause(goal.id, "leave"), {columns.gap: 1.0}, goal.amount, goal.amount)

    def _change(self, measure: str, pair: tuple[str, ...] | None) -> tuple[MeasureRow | None, float | None]:
        """Terms of a measure and its baseline (0 for absolute ones)."""
        row = self.frame.measure(measure, pair)
        if row is not None and row.absolute:
            return row, 0.0 if self.mouth.room_stated(measure.split("-")[0]) else None
        return row, self.mouth.baseline(measure, pair)

    def _reach_goal(self, goal: Reach) -> None:
        row, baseline = self._change(goal.measure, goal.pair)
        scale = self._scale(goal.measure, goal.unit)
        if row is None or baseline is None or scale is None:
            lacking = "" if row is None else goal.measure if scale is not None else "lower-incisor-crown-height"
            self.unmet.append(Unmet(goal.id, lacking))
            return
        terms = self._with_error(row, goal.measure, goal.pair)
        if goal.at_least is not None:
            self._demand(clause(goal.id, "floor"), terms, low=goal.at_least * scale - baseline)
        if goal.at_most is not None:
            self._demand(clause(goal.id, "ceiling"), terms, high=goal.at_most * scale - baseline)

    def _scale(self, measure: str, unit: str) -> float | None:
        """mm (or the measure's own unit) per unit of the clause."""
        if unit != "percent" or measure != "overbite":
            return 1.0
        return self.mouth.crown_height / 100 if self.mouth.crown_height else None

    def _with_error(self, row: MeasureRow, measure: str, pair: tuple[str, ...] | None) -> Terms:
        error = self.mouth.error(measure, pair)
        if row.absolute or error == 0:
            return row.terms
        name = measure if pair is None else f"{measure}@{'-'.join(sorted(pair))}"
        return plus(row.terms, {self.frame.error_column(name, -error, error): 1.0})

    def _sites(self) -> None:
        """The place of an extracted tooth closes unless a goal leaves it."""
        left = {normal(g.leave) for g in self.rx.goals or () if isinstance(g, Leave)}
        for row in self.mouth.rows.values():
            for contact in row.contacts:
                owners = [tooth for tooth in contact.taken if tooth in self.mouth.extracted]
                if owners and contact.name not in left:
                    owner = self.mouth.extracted[owners[0]]
                    key = clause(owner, f"site {contact.name}") if owner else ("state", owners[0], "site")
                    self._demand(key, {self.frame.contacts[contact.name].gap: 1.0}, high=0.0)

    # keep, movements, exclusions

    def _keep(self, kept: object) -> None:
        before = set(self.system.members)
        match kept:
            case Hold():
                for tooth in opening.standing(self.mouth, kept.hold):
                    self._still(clause(kept.id, "hold"), Kind.KEEP, tooth)
            case KeepVariable():
                self._keep_motion(kept, kept.variable, (1, -1))
            case KeepMotion():
                sense = MOTIONS[kept.motion]
                self._keep_motion(kept, sense.variable, (sense.sign,))
            case KeepMeasure():
                self._keep_measure(kept)
        self._prefer(kept, before)

    def _keep_motion(self, kept: KeepVariable | KeepMotion, variable: Variable, signs: tuple[int, ...]) -> None:
        for tooth in opening.standing(self.mouth, kept.teeth):
            column = self.frame.column(tooth, variable)
            if column is not None:
                for sign in signs:
                    self._bound(clause(kept.id, "keep"), Kind.KEEP, column, sign, kept.within)

    def _keep_measure(self, kept: KeepMeasure) -> None:
        row = self.frame.measure(kept.measure, kept.pair)
        scale = self._scale(kept.measure, kept.unit)
        if row is None or scale is None:
            self.unmet.append(Unmet(kept.id, "" if row is None else "lower-incisor-crown-height"))
            return
        within, middle, terms = kept.within * scale, 0.0, row.terms
        if row.absolute:
            arch, _, what = kept.measure.partition("-")
            if not self.mouth.room_stated(arch):
                self.unmet.append(Unmet(kept.id, kept.measure))
                return
            contacts = self.mouth.rows[arch].contacts
            sign = -1 if what == "crowding" else 1
            middle = sum(max(0.0, sign * contact.before) for contact in contacts)
            if kept.measure in self.frame.errors:
                share = sum(c.crowding if what == "crowding" else c.spacing for c in contacts if sign * c.before > 0)
                terms = plus(terms, {self.frame.errors[kept.measure][0]: -share})
        self.demands[clause(kept.id, "keep")] = (terms, middle - within, middle + within)
        self.system.bind_row(clause(kept.id, "keep"), Kind.KEEP, terms, middle - within, middle + within)

    def _order(self, order: Movement) -> None:
        before = set(self.system.members)
        sense = MOTIONS[order.motion]
        for tooth in opening.standing(self.mouth, order.teeth):
            column = self.frame.column(tooth, sense.variable)
            if column is not None:
                self._ordered(order, tooth, column, sense.sign)
        floors = tuple(k for k in self.system.members if k not in before and k == clause(order.id, "floor"))
        if order.strength == "prefer" and floors:
            self.preferred.append((order.id, floors))

    def _ordered(self, order: Movement, tooth: str, column: int, sign: int) -> None:
        low = order.at_least or 0.0
        high = inf if order.at_most is None else order.at_most
        if MOTIONS[order.motion].variable == "out" and tooth in self.frame.travels:
            self._ordered_displaced(order, tooth, column, sign)
            return
        if low > 0:
            self._bound(clause(order.id, "floor"), Kind.DEMAND, column, -sign, -low)
        if high < inf:
            self._bound(clause(order.id, "ceiling"), Kind.CEILING, column, sign, high)

    def _ordered_displaced(self, order: Movement, tooth: str, column: int, sign: int) -> None:
        """A displaced tooth travels to the line first; what is left of the order moves the arch form."""
        travel = self.frame.travels[tooth]
        way = -sign * self.mouth.tooth_values("displacement")[tooth]
        first = max(0.0, way)
        total = {column: float(sign), travel: float(sign)}
        low = order.at_least or 0.0
        if low > 0:
            self.system.bind_row(clause(order.id, "floor"), Kind.DEMAND, total, low=low)
            self._bound(clause(order.id, "floor"), Kind.DEMAND, column, -sign, -max(0.0, low - first))
        if order.at_most is not None:
            self.system.bind_row(clause(order.id, "ceiling"), Kind.CEILING, total, high=order.at_most)
            self._bound(clause(order.id, "ceiling"), Kind.CEILING, column, sign, max(0.0, order.at_most - first))

    def _exclude(self, item: Exclusion) -> None:
        key = clause(item.id, "exclude")
        if item.means == "enamel-reduction":
            for name, columns in self.frame.contacts.items():
                if self._covers(item, name.split("-")):
                    self.system.bind_column(key, Kind.KEEP, columns.reduction, high=0.0)
        elif item.means == "posterior-open-bite":
            for row in self.frame.shut_gaps().values():
                self._bound_row(key, Kind.KEEP, row, 0.0)
        for at in excluded_senses(self.mouth, item):
            column = self.frame.column(at.tooth, at.variable)
            if column is not None:
                self._bound(key, Kind.KEEP, column, at.sign, 0.0)

    @staticmethod
    def _covers(item: Exclusion, teeth: list[str]) -> bool:
        if item.teeth is not None:
            return any(tooth in item.teeth for tooth in teeth)
        return item.arch is None or arch_of(teeth[0]) == item.arch

    # staging, space left over

    def _staging(self) -> None:
        staging = self.rx.staging
        if staging is None or staging.most_aligners is None:
            return
        before = set(self.system.members)
        for (tooth, variable), column in self.frame.columns.items():
            step = self.step(tooth, variable)
            if step is not None:
                key = clause(staging.id, "aligners")
                reach = step * staging.most_aligners
                self.system.bind_column(key, Kind.CEILING, column, -reach, reach)
        self._prefer(staging, before)

    def step(self, tooth: str, variable: str) -> float | None:
        """The largest step per aligner the prescription states for a variable of a tooth."""
        steps = (self.rx.staging.largest_steps or ()) if self.rx.staging else ()
        fitting = [s for s in steps if s.variable == variable and (s.teeth is None or tooth in s.teeth)]
        named = [s.amount for s in fitting if s.teeth is not None]
        return min(named or [s.amount for s in fitting], default=None)

    def _space(self) -> None:
        """New space that no goal closes or leaves, kept apart: a question, not a demand of the prescriber."""
        spare = norms.value("kinematics.space-left-over")
        spoken: set[str] = {g.close_arch for g in self.rx.goals or () if isinstance(g, CloseArch)}
        named = [c for g in self.rx.goals or () if isinstance(g, Close) for c in g.close]
        named += [g.leave for g in self.rx.goals or () if isinstance(g, Leave)]
        spoken |= {arch_of(contact[:2]) for contact in named}
        for arch in ARCHES:
            row = self.mouth.rows[arch]
            if arch in spoken or not row.contacts:
                continue
            gaps = dict.fromkeys((self.frame.contacts[c.name].gap for c in row.contacts), 1.0)
            before = sum(max(0.0, c.before) for c in row.contacts if not c.taken)
            self._demand(("space", arch), gaps, high=before + spare)


def alike(frame: Frame, teeth: list[str]) -> Iterator[Terms]:
    """The difference in ``out`` of every two of these teeth."""
    for number, first in enumerate(teeth):
        for second in teeth[number + 1 :]:
            yield {frame.columns[first, "out"]: 1.0, frame.columns[second, "out"]: -1.0}


def excluded_senses(mouth: Mouth, item: Exclusion) -> Iterator[Sensed]:
    """The movements an excluded means would have been used for."""
    senses: dict[str, tuple[Variable, int]] = {
        "incisor-advance": ("out", 1),
        "incisor-retraction": ("out", -1),
        "widening": ("out", 1),
        "narrowing": ("out", -1),
        "distal-movement": ("along", -1),
        "mesial-movement": ("along", 1),
        "intrusion": ("vertical", -1),
        "extrusion": ("vertical", 1),
    }
    if item.means not in senses:
        return
    variable, sign = senses[item.means]
    for row in mouth.rows.values():
        for tooth in row.teeth:
            named = tooth in item.teeth if item.teeth is not None else item.arch in (None, row.arch)
            if named and _meant(item.means, tooth):
                yield Sensed(tooth, variable, sign)


def _meant(means: str, tooth: str) -> bool:
    if means.startswith("incisor"):
        return is_incisor(tooth)
    if means in ("widening", "narrowing"):
        return not is_incisor(tooth)
    return is_molar(tooth) if means in ("distal-movement", "mesial-movement") else True


def _variable(name: str) -> Variable:
    return name  # type: ignore[return-value]
