"""The ways out of a conflict: for each member the one amount by which it can give way."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf
from typing import Any

from wellposed import norms
from wellposed.kinematics.keys import clause
from wellposed.kinematics.repair import Repair
from wellposed.kinematics.rows import Key, Strain, StrainRow, loosened
from wellposed.kinematics.silences import ways_of_silence
from wellposed.kinematics.translate import Translation
from wellposed.model.clauses import Movement, Reach
from wellposed.model.means import EnamelReduction

Facts = tuple[tuple[str, Any], ...]


def repairs(translation: Translation, key: Key) -> Iterator[Repair]:
    """The ways in which one member could give way; none for what no words can change."""
    match key:
        case ("clause", str(clause_id), str(part)):
            yield _of_clause(translation, key, translation.clause(clause_id), part)
        case ("silence", str(arch), str(group)):
            yield from ways_of_silence(translation, key, arch, group)
        case ("space", str(arch)):
            yield Repair("leave-space", key, _plain(translation, key), "mm", facts=(("arch", arch),))
        case ("practice", str(norm), _):
            yield Repair("pass-limit", key, _plain(translation, key), norms.norm(norm).unit)


def last_resort(translation: Translation, key: Key) -> Iterator[Repair]:
    """What helps where one amount alone does not: giving up an order, or raising both limits of a reduction."""
    match key:
        case ("clause", str(clause_id), "per-contact" | "in-all"):
            item = translation.clause(clause_id)
            if item.per_contact is not None and item.in_all is not None:
                yield _both_limits(translation, key, item)
        case ("clause", str(clause_id), "floor") if isinstance(translation.clause(clause_id), Movement):
            yield Repair("give-up", key, Strain(drops=(key,)), "mm", facts=(("clause", clause_id), ("part", "floor")))


def _both_limits(translation: Translation, key: Key, item: EnamelReduction) -> Repair:
    """More enamel in all, and at each contact its share of that."""
    share = 1 / len(translation.bounds.reductions[item.id])
    keys = clause(item.id, "in-all"), clause(item.id, "per-contact")
    rows = (*loosened(translation.system, keys[0]), *loosened(translation.system, keys[1], share))
    facts: Facts = (("clause", item.id), ("part", "both"), ("share", share))
    return Repair("raise-ceiling", key, Strain(keys, rows=rows), item.unit, facts=facts, irreversible=True)


def _plain(translation: Translation, key: Key, rate: float = 1.0, most: float = inf) -> Strain:
    return Strain(drops=(key,), rows=loosened(translation.system, key, rate), most=most)


def _of_clause(translation: Translation, key: Key, item: Any, part: str) -> Repair:
    unit = getattr(item, "unit", None) or "mm"
    facts: Facts = (("clause", item.id),)
    scale = _scale(translation, item)
    if part == "aligners":
        return _aligners(translation, key, facts)
    if part == "hold":
        return Repair("give-up", key, Strain(drops=(key,)), "mm", facts=facts)
    if part == "floor":
        most = inf if isinstance(item, Reach) else item.at_least or 0.0
        return Repair("lower-floor", key, _plain(translation, key, scale, most), unit, facts=facts)
    if part == "keep":
        return Repair("widen-tolerance", key, _plain(translation, key, scale), unit, facts=facts)
    if part in _SIMPLE or part.startswith("site"):
        what = _SIMPLE.get(part, "leave-undone")
        return Repair(what, key, _plain(translation, key), "mm", facts=(*facts, ("part", part)))
    return _ceiling(translation, key, item, part, unit, scale)


_SIMPLE = {
    "align": "leave-undone",
    "close": "leave-undone",
    "leave": "change-amount",
    "exclude": "lift-exclusion",
}


def _scale(translation: Translation, item: Any) -> float:
    measure, unit = getattr(item, "measure", ""), getattr(item, "unit", "mm")
    return translation.mouth.scale(measure, unit) or 1.0


def _ceiling(translation: Translation, key: Key, item: Any, part: str, unit: str, scale: float) -> Repair:
    facts: Facts = (("clause", item.id), ("part", part))
    if isinstance(item, Reach | Movement):
        return Repair("raise-ceiling", key, _plain(translation, key, scale), unit, facts=facts)
    strain = Strain(drops=(key,), rows=tuple(_amount_rows(translation, key, item.id)))
    reduces = isinstance(item, EnamelReduction)
    return Repair("raise-ceiling", key, strain, unit, facts=facts, irreversible=reduces)


def _amount_rows(translation: Translation, key: Key, owner: str) -> Iterator[StrainRow]:
    """Every bound an allowance's amount holds, each loosened at its own rate."""
    held = translation.bounds.ceilings.get(owner, ())
    rates = {(ceiling.is_row, ceiling.at, ceiling.sign): ceiling.rate for ceiling in held}
    for bound in translation.system.members[key].bounds:
        terms = translation.system.row_terms[bound.at] if bound.is_row else {bound.at: 1.0}
        rate = rates.get((bound.is_row, bound.at, bound.side), 1.0)
        low, high = (bound.value, inf) if bound.side < 0 else (-inf, bound.value)
        yield StrainRow(terms, -bound.side * rate, low, high)


def _aligners(translation: Translation, key: Key, facts: Facts) -> Repair:
    """More aligners: every variable's reach grows by its step."""
    rows = []
    staging = translation.rx.staging
    number = (staging.most_aligners if staging else None) or 0
    for (tooth, variable), column in translation.frame.columns.items():
        step = translation.asked.step(tooth, variable)
        if step is not None:
            rows.append(StrainRow({column: 1.0}, -step, -inf, step * number))
            rows.append(StrainRow({column: 1.0}, step, -step * number, inf))
    return Repair("more-aligners", key, Strain((key,), rows=tuple(rows)), "aligners", facts=facts, whole=True)
