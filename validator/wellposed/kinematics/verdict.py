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
from dataclasses import replace
from math import inf

from wellposed import norms
from wellposed.kinematics.case import Case, Groups, must
from wellposed.kinematics.judgement import VERDICTS, Conflict, Judgement, Verdict
from wellposed.kinematics.possible import already_met, assumptions, forced, leans_on, preferences, space_left
from wellposed.kinematics.rows import Kind, Setting, Strain, StrainRow, plus
from wellposed.kinematics.search import Alternatives, Members, conflicts, failing, holds, settles
from wellposed.kinematics.ways_out import explained
from wellposed.model.means import Extraction
from wellposed.model.prescription import Prescription
from wellposed.norms import Norms


def judge(prescription: Prescription, numbers: Norms | None = None) -> Judgement:
    """The verdict on a prescription whose structure and references are sound."""
    return judged(Case(prescription, numbers or norms.load()))


def judged(case: Case) -> Judgement:
    """The verdict on one that is under question already."""
    groups, members = case.quick_groups(), must(case.quick, limits=True)
    judgement = _possible(case, groups, members) if failing(groups, members) is None else _not_possible(case)
    return _with_what_is_missing(case, judgement)


def _possible(case: Case, groups: Groups, members: Members) -> Judgement:
    return Judgement(
        "possible",
        forced=tuple(forced(case.quick, groups, members)),
        preferences=tuple(preferences(case)),
        space_left=tuple(space_left(case, groups, members)),
        already_met=already_met(case.quick),
        leans_on=tuple(leans_on(case.quick, groups, members)),
    )


def _not_possible(case: Case) -> Judgement:
    groups = case.groups()
    within, beyond = must(case.full, limits=True), must(case.full, limits=False)
    short = _shortfall(case, groups, within)
    if short is not None:
        return Judgement("possible", shortfall=short)
    if failing(groups, beyond) is None:
        return _beyond(case, groups, within)
    return _conflicting(case, groups, beyond)


def _conflicting(case: Case, groups: Groups, members: Members) -> Judgement:
    """What is proven first; then, without the demands of that, what holds at the stated values only."""
    proof = case.proof()
    proven = [] if holds(proof, members) else _all_conflicts(case, [_cheapest(case, proof, members)], members)
    settled = {key for conflict in proven for key in conflict if case.kinds[key] == Kind.DEMAND}
    rest = tuple(key for key in members if key not in settled)
    open_groups = [group for group in groups if not holds(group, rest)]
    found = [*proven, *_all_conflicts(case, open_groups, rest)]
    told = tuple(explained(case, one, found, members, one in proven) for one in found)
    if proven and _holds_without_extraction(case):
        return Judgement("undecided", told, extraction_open=True)
    depends = _depends_on(case, rest) if open_groups else ()
    return Judgement(_worst(told), told, depends_on=depends)


def _worst(told: tuple[Conflict, ...]) -> Verdict:
    """The worst that some conflict makes of it."""
    if any(conflict.proven and not conflict.unsaid for conflict in told):
        return "contradictory"
    return "incomplete" if all(conflict.proven for conflict in told) else "undecided"


def _all_conflicts(case: Case, groups: Sequence[Alternatives], members: Members) -> list[Members]:
    """Every conflict of every group, in the order in which their demands stand in the document."""
    found: list[Members] = []
    for group in groups:
        found += [conflict for conflict in conflicts(group, members, case.kinds) if conflict not in found]
    place = {key: number for number, key in enumerate(members)}
    return sorted(found, key=lambda one: [place[key] for key in one if case.kinds[key] == Kind.DEMAND])


def _beyond(case: Case, groups: Groups, members: Members) -> Judgement:
    failed = [group for group in groups if not holds(group, members)]
    if not failed:
        return Judgement("possible")
    found = _all_conflicts(case, failed, members)
    return Judgement("beyond-practice", tuple(explained(case, conflict, found, members) for conflict in found))


def _cheapest(case: Case, proof: Alternatives, members: Members) -> Alternatives:
    """The proof's alternatives; where arch depth cannot matter, those of one depth say the same."""
    suspected = case.nominal.suspects(members, case.full.frame.hinge.proof[0])
    nominal = [variant for variant in proof if variant.model is case.nominal]
    return proof if case.sensitive(suspected) else nominal


def _holds_without_extraction(case: Case) -> bool:
    """Whether leaving the extractions out makes it possible: then it must be asked whether they are decided."""
    if not any(isinstance(clause, Extraction) for clause in case.prescription.allow or ()):
        return False
    other = Case(case.prescription, case.numbers, extracting=False)
    return failing(other.quick_groups(), must(other.quick, limits=False)) is None


def _depends_on(case: Case, members: Members) -> tuple[str, ...]:
    """What the verdict turns on: each uncertainty tried by itself, the others at their stated values."""
    hinge, errors = case.full.frame.hinge, case.full.frame.errors
    still = {name: Setting(False, column, 0.0, 0.0) for name, (column, _, _) in errors.items()}
    if any(case.nominal.holds(members, name, still.values()) for name in hinge.proof):
        return ("hinge",)
    ends = [name for group in hinge.stated for name in group]
    found = ["arch-depth"] if any(model.holds(members, name) for model in case.deeper for name in ends) else []
    for group in dict.fromkeys(_together(name) for name in errors):
        others = [setting for name, setting in still.items() if _together(name) != group]
        if any(case.nominal.holds(members, name, others) for name in hinge.proof):
            found.append(group)
    return tuple(found) or ("several",)


_PLAY = {"swing": "molar-slide", "arc": "edge-arc", "place": "crowding-place"}


def _together(error: str) -> str:
    """What has several columns but is one uncertainty."""
    return _PLAY.get(error.partition(" ")[0], error)


def _shortfall(case: Case, groups: Groups, members: Members) -> float | None:
    """How far align and space goals fall short in all, if by a negligible amount only."""
    parts = [key for key in members if isinstance(key, tuple) and key[0] == "clause" and key[2] in ("align", "close")]
    if not parts:
        return None
    rows = [case.full.asked.demands[key] for key in parts]
    total = plus(*(terms for terms, _, _ in rows))
    row = StrainRow(total, -1.0, -inf, sum(high for _, _, high in rows))
    strain = Strain(tuple(parts), rows=(row,), most=norms.value("kinematics.shortfall"))
    amounts = settles(groups, members, strain)
    return max(amounts) if amounts else None


def _with_what_is_missing(case: Case, judgement: Judgement) -> Judgement:
    """What could not be checked, and what was assumed, added; a missing measurement leaves it undecided."""
    unmet = tuple(dict.fromkeys(case.quick.unmet))
    verdict: Verdict = judgement.verdict
    binding = [lack for lack in unmet if getattr(case.quick.clause(lack.clause_id), "strength", "must") == "must"]
    if binding and VERDICTS.index(verdict) < VERDICTS.index("undecided"):
        verdict = "undecided"
    assumed = tuple(dict.fromkeys((*case.mouth.assumed, *assumptions(case.quick))))
    return replace(judgement, verdict=verdict, unmet=unmet, assumed=assumed)
