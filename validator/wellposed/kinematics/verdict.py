"""From a prescription to a verdict: can its ``must`` clauses hold together, and if not, why not and what would help.

=============== =================================================================================
verdict         means
=============== =================================================================================
possible        a plan satisfies every must clause within practice limits, at both ends of the hinge
beyond-practice only by passing a practice limit
incomplete      goals without means: it is not said how
undecided       a measurement is missing, or it depends on the measuring error, arch depth or hinge
contradictory   a proof: for every value within the errors, every hinge factor and arch depth
=============== =================================================================================
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property
from math import inf
from typing import Literal

from wellposed import norms
from wellposed.kinematics import openings as opening
from wellposed.kinematics.mouth import Assumption, Mouth
from wellposed.kinematics.repairs import Repair, repairs
from wellposed.kinematics.rows import Key, Kind, Strain, StrainRow, Terms, mean, plus
from wellposed.kinematics.search import Alternatives, Members, Variant, conflicts, failing, holds, settles
from wellposed.kinematics.solve import Model
from wellposed.kinematics.translate import Translation, Unmet
from wellposed.model.clauses import Align, Close, CloseArch, Leave, Level, Reach
from wellposed.model.means import EnamelReduction, Extraction, WidthChange
from wellposed.model.prescription import Prescription
from wellposed.norms import Norms

Verdict = Literal["possible", "beyond-practice", "incomplete", "undecided", "contradictory"]
VERDICTS: tuple[Verdict, ...] = ("possible", "beyond-practice", "incomplete", "undecided", "contradictory")
_NEGLIGIBLE = 1e-6
_GOALS = (Align, Close, CloseArch, Leave, Level, Reach)


@dataclass(frozen=True)
class WayOut:
    """A repair with its amount: what settles the conflict for sure, and the span over hinge and arch depth."""

    repair: Repair
    amount: float
    low: float
    high: float
    beyond_practice: bool


@dataclass(frozen=True)
class Conflict:
    """Members that cannot hold together; drop any one and the rest can.

    said_alone  the stated clauses conflict by themselves, without what was not mentioned
    unsaid      only goals and silence, and nothing said about how: a question rather than a contradiction
    """

    members: Members
    kinds: dict[Key, Kind]
    ways_out: tuple[WayOut, ...]
    said_alone: bool
    unsaid: bool


@dataclass(frozen=True)
class Range:
    """What a possible plan must use of an allowance at the least and can at the most, or reach of a measure."""

    clause_id: str
    what: str
    least: float
    most: float
    unit: str


@dataclass(frozen=True)
class Judgement:
    """The whole answer, as data."""

    verdict: Verdict
    conflicts: tuple[Conflict, ...] = ()
    forced: tuple[Range, ...] = ()
    preferences: tuple[tuple[str, Conflict], ...] = ()
    space_left: tuple[tuple[str, Conflict], ...] = ()
    unmet: tuple[Unmet, ...] = ()
    assumed: tuple[Assumption, ...] = ()
    depends_on: tuple[str, ...] = ()
    shortfall: float = 0.0
    already_met: bool = False
    leans_on: tuple[str, ...] = ()
    extraction_open: bool = False
    hinged: bool = True


@dataclass
class Case:
    """One prescription under question. Models are made when first asked for."""

    prescription: Prescription
    numbers: Norms = field(default_factory=norms.load)
    extracting: bool = True

    @cached_property
    def mouth(self) -> Mouth:
        """The mouth, extractions done unless ``extracting`` is false."""
        return Mouth(self.prescription, self.extracting)

    @cached_property
    def quick(self) -> Translation:
        """The translation a feasible prescription needs: practice limits of opened movements only."""
        return Translation(self.mouth, 0.0, self.numbers)

    @cached_property
    def plain(self) -> Model:
        """The model of ``quick``."""
        return Model(self.quick.system)

    @cached_property
    def full(self) -> Translation:
        """The translation the search for conflicts and ways out needs."""
        return Translation(self.mouth, 0.0, self.numbers, whole=True)

    @cached_property
    def nominal(self) -> Model:
        """The model of ``full``."""
        return Model(self.full.system)

    @cached_property
    def deeper(self) -> tuple[Model, ...]:
        """The same at the other arch depths within the uncertainty of an assumed depth."""
        if all(row.measured_depth is not None for row in self.mouth.rows.values()):
            return ()
        error = norms.value("arch.depth-error")
        return tuple(Model(Translation(self.mouth, o, self.numbers, whole=True).system) for o in (-error, error))

    def stated(self, model: Model, translation: Translation, both_ends: bool) -> tuple[Alternatives, ...]:
        """Per end of the hinge the variants at the stated values."""
        groups = translation.frame.settings_stated
        chosen = groups if both_ends else groups[:1]
        return tuple(tuple(Variant(model, name) for name in group) for group in chosen)

    def proof(self) -> Alternatives:
        """Every variant in which the prescription might yet hold."""
        names = self.full.frame.settings_proof
        return [Variant(model, name) for model in (self.nominal, *self._depths()) for name in names]

    def _depths(self) -> tuple[Model, ...]:
        return self.deeper

    def sensitive(self, members: Members) -> bool:
        """Whether arch depth can matter to a conflict: some member bounds a column whose coefficients change."""
        if not self.deeper:
            return False
        return not self._changing.isdisjoint(column for key in members for column in self._columns_of(key))

    @cached_property
    def _changing(self) -> set[int]:
        here, there = self.nominal.system.row_terms, self.deeper[0].system.row_terms
        return {column for a, b in zip(here, there, strict=True) if dict(a) != dict(b) for column in a}

    def _columns_of(self, key: Key) -> set[int]:
        system = self.nominal.system
        return {
            column
            for bound in system.members[key].bounds
            for column in (system.row_terms[bound.index] if bound.is_row else (bound.index,))
        }


def must(translation: Translation, limits: bool) -> Members:
    """The members that count: no preference, no question about space; practice limits if asked for."""
    optional = {key for _, keys in translation.preferred for key in keys}
    return tuple(
        key
        for key, member in translation.system.members.items()
        if key not in optional and not _is_space(key) and (limits or member.kind != Kind.LIMIT)
    )


def _is_space(key: Key) -> bool:
    return isinstance(key, tuple) and key[0] == "space"


def judge(prescription: Prescription, numbers: Norms | None = None) -> Judgement:
    """The verdict on a prescription whose structure and references are sound."""
    case = Case(prescription, numbers or norms.load())
    groups = case.stated(case.plain, case.quick, case.quick.hinge_live)
    members = must(case.quick, limits=True)
    if failing(groups, members) is None:
        return _possible(case, groups, members)
    return _not_possible(case)


def _not_possible(case: Case) -> Judgement:
    translation = case.full
    groups = case.stated(case.nominal, translation, translation.hinge_live)
    within, beyond = must(translation, limits=True), must(translation, limits=False)
    short = _shortfall(translation, groups, within)
    if short is not None:
        return _worst(case, Judgement("possible", shortfall=short))
    if failing(groups, beyond) is None:
        return _beyond(case, groups, within)
    proof = case.proof()
    proven = not holds(proof, beyond)
    failed_groups = [_cheapest(case, proof, beyond)] if proven else [g for g in groups if not holds(g, beyond)]
    found = _all_conflicts(case, failed_groups, beyond)
    told = tuple(_explained(case, members, found, beyond) for members in found)
    unsaid = bool(told) and all(conflict.unsaid for conflict in told)
    verdict: Verdict = "undecided" if not proven else "incomplete" if unsaid else "contradictory"
    depends = () if proven else _depends_on(case, beyond)
    judgement = Judgement(verdict, told, depends_on=depends)
    if proven and _holds_without_extraction(case):
        judgement = Judgement("undecided", told, extraction_open=True)
    return _worst(case, judgement)


def _all_conflicts(case: Case, groups: Sequence[Alternatives], members: Members) -> list[Members]:
    found: list[Members] = []
    for group in groups:
        found += [conflict for conflict in conflicts(group, members, case.nominal.kinds) if conflict not in found]
    return found


def _cheapest(case: Case, proof: Alternatives, members: Members) -> Alternatives:
    """The proof's alternatives; where arch depth cannot matter, those of one depth say the same."""
    suspected = case.nominal.suspects(members, case.full.frame.settings_proof[0])
    nominal = [variant for variant in proof if variant.model is case.nominal]
    return proof if case.sensitive(suspected) else nominal


def _holds_without_extraction(case: Case) -> bool:
    """Whether leaving the extractions out makes it possible: then it must be asked whether they are decided."""
    if not any(isinstance(clause, Extraction) for clause in case.prescription.allow or ()):
        return False
    other = Case(case.prescription, case.numbers, extracting=False)
    groups = other.stated(other.plain, other.quick, other.quick.hinge_live)
    return failing(groups, must(other.quick, limits=False)) is None


def _depends_on(case: Case, members: Members) -> tuple[str, ...]:
    """What the verdict turns on: each uncertainty tried by itself, the others at their stated values."""
    translation = case.full
    errors = {name: column for name, column in translation.frame.errors.items()}
    still = tuple((column, 0.0, 0.0) for column, _, _ in errors.values())
    settings = translation.frame.settings_proof
    ends = [name for group in translation.frame.settings_stated for name in group]
    found = ["hinge"] if case.nominal.holds_with(members, settings, still) else []
    if any(model.holds(members, name) for model in case.deeper for name in ends):
        found.append("arch-depth")
    for name, (column, _, _) in errors.items():
        others = tuple(fixed for fixed in still if fixed[0] != column)
        if "hinge" not in found and case.nominal.holds_with(members, settings, others):
            found.append(name)
    return tuple(found) or ("several together",)


def _shortfall(translation: Translation, groups: Sequence[Alternatives], members: Members) -> float | None:
    """How far align and space goals fall short in all, if by a negligible amount only."""
    parts = [key for key in members if isinstance(key, tuple) and key[0] == "clause" and key[2] in ("align", "close")]
    if not parts:
        return None
    rows = [translation.demands[key] for key in parts]
    total = plus(*(terms for terms, _, _ in rows))
    strain = Strain(tuple(parts), rows=(StrainRow(total, -1.0, -inf, sum(high for _, _, high in rows)),))
    strain = Strain(strain.drops, (), strain.rows, norms.value("kinematics.shortfall"))
    amounts = settles(groups, members, strain)
    return max(amounts) if amounts else None


def _beyond(case: Case, groups: Sequence[Alternatives], members: Members) -> Judgement:
    group = failing(groups, members)
    if group is None:
        return _worst(case, Judgement("possible"))
    found = conflicts(group, members, case.nominal.kinds)
    told = tuple(_explained(case, conflict, found, members) for conflict in found)
    return _worst(case, Judgement("beyond-practice", told))


def _explained(case: Case, members: Members, found: list[Members], active: Members) -> Conflict:
    translation, kinds = case.full, case.nominal.kinds
    others = {key for other in found if other != members for key in other if kinds[key] == Kind.DEMAND} - set(members)
    field_of = tuple(key for key in active if key not in others)
    kind_of = {key: kinds[key] for key in members}
    silent = any(kind == Kind.SILENCE for kind in kind_of.values())
    ways = (_way_out(case, repair, members, field_of) for key in members for repair in repairs(translation, key))
    return Conflict(members, kind_of, tuple(way for way in ways if way), not silent, _unsaid(translation, kind_of))


def _unsaid(translation: Translation, kinds: dict[Key, Kind]) -> bool:
    """Only goals and silence, and no allowance or movement opens a motion the silence is about."""
    for key, kind in kinds.items():
        if not isinstance(key, tuple):
            return False
        goal = key[0] == "clause" and isinstance(translation.clause(key[1]), _GOALS)
        if kind == Kind.SILENCE and ((key[1], key[2]) in translation.said or _reduction_said(translation, key)):
            return False
        if kind != Kind.SILENCE and not (kind == Kind.DEMAND and goal):
            return False
    return True


def _reduction_said(translation: Translation, key: tuple[object, ...]) -> bool:
    if key[2] != "reduction":
        return False
    arches = {translation.mouth.rows[key[1]].arch} if key[1] in translation.mouth.rows else set()
    said = {name for names in translation.reductions.values() for name in names}
    return any(contact.name in said for arch in arches for contact in translation.mouth.rows[arch].contacts)


def _way_out(case: Case, repair: Repair, members: Members, active: Members) -> WayOut | None:
    groups = case.stated(case.nominal, case.full, case.full.frame.hinged and _touches_hinge(case, repair, members))
    groups = tuple(group for group in groups if not holds(group, active)) or groups
    amounts = settles(groups, active, repair.strain)
    if amounts is None or (max(amounts) < _NEGLIGIBLE and repair.what != "give-up"):
        return None
    span = [*amounts]
    if case.sensitive(members):
        for model in case.deeper:
            there = settles(case.stated(model, case.full, len(groups) > 1), active, repair.strain)
            span += there or (inf,)
    limits = (*active, *(key for key, kind in case.nominal.kinds.items() if kind == Kind.LIMIT))
    usual = settles(groups, limits, repair.strain)
    beyond = usual is None or max(usual) > max(amounts) + _NEGLIGIBLE
    return WayOut(repair, max(amounts), min(span), max(span), beyond and repair.what != "pass-limit")


def _touches_hinge(case: Case, repair: Repair, members: Members) -> bool:
    if case.full.hinge_live:
        return True
    columns = case.full.frame.hinge_columns
    opened = {release.index for release in repair.strain.releases if not release.is_row}
    gap = repair.use == "posterior-open-bite"
    return gap or bool(opened & columns) or any(case._columns_of(key) & columns for key in repair.strain.drops if key in members)


# a possible plan

def _possible(case: Case, groups: Sequence[Alternatives], members: Members) -> Judgement:
    translation = case.quick
    return _worst(
        case,
        Judgement(
            "possible",
            forced=tuple(_forced(translation, groups, members)),
            preferences=tuple(_preferences(case, members)),
            space_left=tuple(_space_left(case, groups, members)),
            already_met=_already_met(translation, groups, members),
            leans_on=_leans_on(translation, groups, members),
        ),
    )


def _span(groups: Sequence[Alternatives], members: Members, terms: Terms) -> tuple[float, float]:
    """Least and most of the terms over the ends of the hinge, taking the best variant of each end."""
    spans = []
    for group in groups:
        least = [v.model.extreme(members, terms, 1, v.setting) for v in group]
        most = [v.model.extreme(members, terms, -1, v.setting) for v in group]
        spans.append((min(x for x in least if x is not None), max(x for x in most if x is not None)))
    return max(low for low, _ in spans), min(high for _, high in spans)


def _forced(translation: Translation, groups: Sequence[Alternatives], members: Members) -> list[Range]:
    ranges = []
    for allowance in translation.rx.allow or ():
        use = usage(translation, allowance)
        if use:
            ranges.append(Range(allowance.id, "use", *_span(groups, members, use), getattr(allowance, "unit", "mm") or "mm"))
    for item in (*(translation.rx.goals or ()), *(translation.rx.keep or ())):
        measure = getattr(item, "measure", None)
        row = translation.frame.measure(measure, item.pair) if measure else None
        base = 0.0 if row and row.absolute else translation.mouth.baseline(measure, item.pair) if measure else None
        if row and base is not None:
            low, high = _span(groups, members, row.terms)
            ranges.append(Range(item.id, measure, low + base, high + base, _own_unit(measure)))
    return ranges


def _own_unit(measure: str) -> str:
    from wellposed.vocabulary.measures import MEASURE_KINDS

    return MEASURE_KINDS[measure].unit


def usage(translation: Translation, allowance: object) -> Terms | None:
    """What of an allowance a plan uses: all the enamel, the mean width of the pairs, or the mean of the teeth."""
    frame, mouth = translation.frame, translation.mouth
    if isinstance(allowance, EnamelReduction):
        columns = [frame.contacts[name].reduction for name in translation.reductions[allowance.id]]
        return dict.fromkeys(columns, 1.0) or None
    if isinstance(allowance, WidthChange):
        rows = [terms for terms, _ in translation.width_rows.get(allowance.id, ())]
        return mean(list(rows)) if rows else None
    amount, opened = opening.allowance_opens(mouth, allowance)  # type: ignore[arg-type]
    primary = [o.at for o in opened if o.rate == 1.0 and not o.soft] if amount < inf else []
    variables = {at.variable for at in primary}
    if len(variables) != 1 or len({at.sign for at in primary}) != 1:
        return None
    columns_ = [frame.column(at.tooth, at.variable) for at in primary]
    return mean([{column: float(primary[0].sign)} for column in columns_ if column is not None]) if all(
        column is not None for column in columns_
    ) else None


def _preferences(case: Case, members: Members) -> list[tuple[str, Conflict]]:
    """Preferences in document order, each on top of all that must hold and of those granted before."""
    if not case.full.preferred:
        return []
    groups = case.stated(case.nominal, case.full, case.full.hinge_live)
    granted, unmet = must(case.full, limits=True), []
    for clause_id, keys in case.full.preferred:
        tried = tuple(key for key in case.nominal.keys if key in {*granted, *keys})
        failed = failing(groups, tried)
        if failed is None:
            granted = tried
        else:
            found = conflicts(failed, tried, case.nominal.kinds)
            unmet.append((clause_id, _explained(case, found[0], found, tried)))
    return unmet


def _space_left(case: Case, groups: Sequence[Alternatives], members: Members) -> list[tuple[str, Conflict]]:
    asked = []
    for key in case.quick.system.members:
        if _is_space(key) and failing(groups, (*members, key)) is not None:
            full = case.stated(case.nominal, case.full, case.full.hinge_live)
            active = (*must(case.full, limits=True), key)
            failed = failing(full, active)
            found = conflicts(failed, active, case.nominal.kinds) if failed else []
            if found:
                asked.append((str(key[1]), _explained(case, found[0], found, active)))
    return asked


def _already_met(translation: Translation, groups: Sequence[Alternatives], members: Members) -> bool:
    """Every goal holds with the teeth where they are, and there is one."""
    rows = [translation.demands[key] for key in members if key in translation.demands and translation.system.members[key].kind == Kind.DEMAND]
    at_rest = all(low <= _at_rest(translation, terms) <= high for terms, low, high in rows)
    return bool(translation.rx.goals) and at_rest and not translation.unmet


def _at_rest(translation: Translation, terms: Terms) -> float:
    """The terms' value with no tooth moved: overlaps and gaps as they are, all else 0."""
    value = 0.0
    for row in translation.mouth.rows.values():
        for contact in row.contacts:
            columns = translation.frame.contacts[contact.name]
            value += terms.get(columns.gap, 0.0) * max(0.0, contact.before)
            value += terms.get(columns.overlap, 0.0) * max(0.0, -contact.before)
    return value


def _leans_on(translation: Translation, groups: Sequence[Alternatives], members: Members) -> tuple[str, ...]:
    return tuple(clause.id for clause in translation.rx.expect or ())


def _worst(case: Case, judgement: Judgement) -> Judgement:
    """What could not be checked, and what was assumed, added; a missing measurement leaves it undecided."""
    translation = case.quick
    unmet = tuple(dict.fromkeys(translation.unmet))
    verdict = judgement.verdict
    if unmet and VERDICTS.index(verdict) < VERDICTS.index("undecided"):
        verdict = "undecided"
    return Judgement(
        **{
            **{name: getattr(judgement, name) for name in judgement.__dataclass_fields__},
            "verdict": verdict,
            "unmet": unmet,
            "assumed": tuple(dict.fromkeys(case.mouth.assumed)),
            "hinged": translation.frame.hinged,
        }
    )
