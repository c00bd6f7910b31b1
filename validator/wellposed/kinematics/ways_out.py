"""A conflict with its ways out: each the least amount that settles it, checked against practice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import inf

from wellposed import norms
from wellposed.kinematics.case import Case, Groups
from wellposed.kinematics.judgement import Conflict, WayOut
from wellposed.kinematics.repair import Repair
from wellposed.kinematics.repairs import last_resort, repairs
from wellposed.kinematics.rows import Key, Kind
from wellposed.kinematics.search import Members, holds, settles
from wellposed.kinematics.translate import Translation
from wellposed.model.clauses import Align, Close, CloseArch, Leave, Level, Reach

NEGLIGIBLE = 1e-6
_SPAN = 0.05
_NEAR = 1.25
_GOALS = (Align, Close, CloseArch, Leave, Level, Reach)


def explained(
    case: Case, members: Members, found: Sequence[Members], active: Members, proven: bool = False
) -> Conflict:
    """A conflict with its ways out, computed against all of ``active`` but the other conflicts' demands."""
    kinds = {key: case.kinds[key] for key in members}
    others = {key for other in found for key in other if case.kinds[key] == Kind.DEMAND} - set(members)
    rest = tuple(key for key in active if key not in others)
    silent = any(kind == Kind.SILENCE for kind in kinds.values())
    ways = tuple(_ways(case, members, rest))
    return Conflict(members, kinds, ways, not silent, _unsaid(case.full, kinds), proven)


def _ways(case: Case, members: Members, active: Members) -> Iterator[WayOut]:
    groups = case.groups(case.full.frame.hinge.rests)
    failed = [group for group in groups if not holds(group, active)] or groups
    for key in members:
        found = [_way_out(case, repair, members, active, failed) for repair in repairs(case.full, key)]
        if found == [None]:
            found = [_way_out(case, repair, members, active, failed) for repair in last_resort(case.full, key)]
        yield from _worth_saying([way for way in found if way is not None and not _absurd(way)])


def _worth_saying(found: list[WayOut]) -> Iterator[WayOut]:
    """Of the ways in which one silence could give way, those near the least; the others go the long way round."""
    least = min((way.amount for way in found), default=0.0)
    for way in found:
        if way.repair.what != "allow" or way.amount <= _NEAR * least:
            yield way


def _absurd(way: WayOut) -> bool:
    """An allowance beyond anything anybody would order; the sooner where it passes a practice limit."""
    if way.repair.what not in ("allow", "raise-ceiling"):
        return False
    if way.repair.unit == "deg":
        return way.amount > norms.value("kinematics.way-out-angle")
    return way.amount > norms.value(f"kinematics.way-out-travel{'-unusual' if way.passed else ''}")


def _unsaid(translation: Translation, kinds: dict[Key, Kind]) -> bool:
    """Only goals and silence, and no allowance or movement opens a motion the silence is about."""
    if Kind.SILENCE not in kinds.values():
        return False
    for key, kind in kinds.items():
        match key:
            case ("silence", str(arch), str(group)) if (
                arch,
                group,
            ) not in translation.bounds.said_of_silence():
                continue
            case ("clause", str(clause_id), _) if kind == Kind.DEMAND:
                if not isinstance(translation.clause(clause_id), _GOALS):
                    return False
            case _:
                return False
    return True


def _way_out(case: Case, repair: Repair, members: Members, active: Members, failed: Groups) -> WayOut | None:
    groups = failed if _touches_hinge(case, repair, members) else failed[:1]
    amounts = settles(groups, active, repair.strain)
    if amounts is None or (max(amounts) < NEGLIGIBLE and repair.what != "give-up"):
        return None
    depths = _at_other_depths(case, repair, members, active, len(groups) > 1)
    spread = (("hinge", amounts), ("arch-depth", (max(amounts), *depths)))
    by = tuple(name for name, values in spread if max(values) - min(values) > _SPAN)
    limits = (*active, *(key for key, kind in case.kinds.items() if kind == Kind.LIMIT and key not in active))
    passed = () if repair.what == "pass-limit" else _passed(groups, limits, repair, max(amounts))
    span = (*amounts, *depths)
    return WayOut(repair, max(amounts), min(span), max(span), by, passed)


def _passed(groups: Groups, limits: Members, repair: Repair, amount: float) -> tuple[Key, ...]:
    """The practice limits that a repair of this amount has to pass, by one proof."""
    strain = replace(repair.strain, most=min(repair.strain.most, amount + NEGLIGIBLE))
    for group in groups:
        against = [variant.model.against(limits, strain, variant.setting) for variant in group]
        if all(against):
            kinds = group[0].model.system.members
            return tuple(key for key in limits if key in against[0] and kinds[key].kind == Kind.LIMIT)
    return ()


def _at_other_depths(
    case: Case, repair: Repair, members: Members, active: Members, both_ends: bool
) -> tuple[float, ...]:
    """The repair's amount at the other arch depths; infinite where it would not do."""
    if not case.sensitive(members):
        return ()
    found = [settles(case.groups(both_ends, model), active, repair.strain) for model in case.deeper]
    return tuple(inf if amounts is None else max(amounts) for amounts in found)


def _touches_hinge(case: Case, repair: Repair, members: Members) -> bool:
    """Whether the hinge factor can matter to a repair."""
    if not case.full.frame.hinge.rests:
        return False
    if case.full.hinge_live or repair.use == "posterior-open-bite":
        return True
    columns = case.full.frame.hinge.columns
    opened = {release.at for release in repair.strain.releases if not release.is_row}
    dropped = (case.columns_of(key) for key in repair.strain.drops if key in members)
    return bool(opened & columns) or any(bool(found & columns) for found in dropped)
