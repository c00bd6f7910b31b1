"""What a possible plan must use and can reach, which preferences give way, and what was taken as so."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed import norms
from wellposed.kinematics.case import Case, Groups, is_space, must
from wellposed.kinematics.judgement import Conflict, Range
from wellposed.kinematics.means import allowance_opens
from wellposed.kinematics.measures import measure_row
from wellposed.kinematics.mouth import Assumption, Contact
from wellposed.kinematics.rows import Kind, Terms, mean
from wellposed.kinematics.search import Members, conflicts, failing
from wellposed.kinematics.translate import Translation
from wellposed.kinematics.ways_out import explained
from wellposed.model.clauses import Align, AnyGoal, KeepMeasure, Level, Reach
from wellposed.model.means import AnyAllowance, ClassElastics, EnamelReduction, WidthChange
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.teeth import place

_TURNED = {"rotation": "achieved.relevant-error.deg", "displacement": "achieved.relevant-error.mm"}
_OFF_LINE = ("rotated-teeth", "displaced-teeth", "tilted-teeth")


def forced(translation: Translation, groups: Groups, members: Members) -> Iterator[Range]:
    """For every allowance its least and greatest use, for every goal and kept measure its reachable range."""
    for allowance in translation.rx.allow or ():
        use = usage(translation, allowance)
        if use:
            unit = getattr(allowance, "unit", None) or "mm"
            yield Range(allowance.id, "use", *_span(groups, members, use), unit)
    for item in (*(translation.rx.goals or ()), *(translation.rx.keep or ())):
        if isinstance(item, Reach | KeepMeasure):
            yield from _reached(translation, groups, members, item)


def _reached(translation: Translation, groups: Groups, members: Members, item: Reach | KeepMeasure) -> Iterator[Range]:
    row = measure_row(translation.frame, item.measure, item.pair)
    base = 0.0 if row and row.absolute else translation.mouth.baseline(item.measure, item.pair)
    if row and base is not None:
        low, high = _span(groups, members, row.terms)
        yield Range(item.id, item.measure, low + base, high + base, MEASURE_KINDS[item.measure].unit)


def _span(groups: Groups, members: Members, terms: Terms) -> tuple[float, float]:
    """Least and most of the terms that some plan reaches at either end of the hinge."""
    lows, highs = [], []
    for group in groups:
        least = [v.model.extreme(members, terms, 1, v.setting) for v in group]
        most = [v.model.extreme(members, terms, -1, v.setting) for v in group]
        lows.append(min(value for value in least if value is not None))
        highs.append(max(value for value in most if value is not None))
    return min(lows), max(highs)


def usage(translation: Translation, allowance: AnyAllowance) -> Terms | None:
    """What of an allowance a plan uses: all the enamel, the mean width of the pairs, or the mean of the teeth."""
    frame = translation.frame
    if isinstance(allowance, EnamelReduction):
        columns = [frame.contacts[name].reduction for name in translation.bounds.reductions[allowance.id]]
        return dict.fromkeys(columns, 1.0) or None
    if isinstance(allowance, WidthChange):
        rows = translation.bounds.widths.get(allowance.id)
        return mean(rows) if rows else None
    _, opened = allowance_opens(frame.mouth, allowance)
    primary = [o.at for o in opened if o.rate == 1.0 and not o.soft]
    if len({(at.variable, at.sign) for at in primary}) != 1:
        return None
    moved = [column for at in primary if (column := frame.column(at.tooth, at.variable)) is not None]
    return mean([{column: float(primary[0].sign)} for column in moved]) if moved else None


def preferences(case: Case) -> Iterator[tuple[str, Conflict]]:
    """Preferences in document order, each on top of all that must hold and of those granted before."""
    if not case.full.preferred:
        return
    granted = must(case.full, limits=True)
    for clause_id, keys in case.full.preferred:
        tried = tuple(key for key in case.kinds if key in {*granted, *keys})
        failed = failing(case.groups(), tried)
        if failed is None:
            granted = tried
        else:
            found = conflicts(failed, tried, case.kinds)
            yield clause_id, explained(case, found[0], found, tried)


def space_left(case: Case, groups: Groups, members: Members) -> Iterator[tuple[str, Conflict]]:
    """Arches in which every plan opens new space that no goal closes or leaves."""
    for key in case.quick.system.members:
        if is_space(key) and failing(groups, (*members, key)) is not None:
            active = tuple(k for k in case.kinds if k == key or k in set(must(case.full, limits=True)))
            failed = failing(case.groups(), active)
            found = conflicts(failed, active, case.kinds) if failed else []
            if found and isinstance(key, tuple):
                yield str(key[1]), explained(case, found[0], found, active)


def leans_on(translation: Translation, groups: Groups, members: Members) -> Iterator[str]:
    """Expectations without whose change no plan would be left."""
    for clause_id, unmoved in translation.frame.leanings.items():
        for group in groups:
            if not any(variant.model.holds(members, variant.setting, unmoved) for variant in group):
                yield clause_id
                break


def already_met(translation: Translation) -> bool:
    """Whether every goal holds with the teeth where they are, there is one, and the sums hold all that it asks."""
    goals = translation.rx.goals or ()
    if not goals or translation.unmet or any(_beyond_sums(translation, goal) for goal in goals):
        return False
    members = translation.system.members
    asked = [key for key in translation.asked.demands if members[key].kind == Kind.DEMAND and not is_space(key)]
    rows = (translation.asked.demands[key] for key in asked)
    return all(low - 1e-9 <= _at_rest(translation, terms) <= high + 1e-9 for terms, low, high in rows)


def _beyond_sums(translation: Translation, goal: AnyGoal) -> bool:
    """Whether a goal asks for what no sum tells: an arch levelled, or teeth in line that are stated to stand off it."""
    if not isinstance(goal, Align):
        return isinstance(goal, Level)
    asked, mouth = set(goal.align), translation.mouth
    limits = ((mouth.tooth_values(measure), norms.value(key)) for measure, key in _TURNED.items())
    measured = {tooth for values, limit in limits for tooth, value in values.items() if abs(value) > limit}
    stated = (one.teeth or goal.align for one in translation.rx.problems or () if one.problem in _OFF_LINE)
    return not asked.isdisjoint(measured) or any(not asked.isdisjoint(teeth) for teeth in stated)


def _at_rest(translation: Translation, terms: Terms) -> float:
    """The terms' value with no tooth moved: overlaps and gaps as they are, all else 0."""
    value = 0.0
    for row in translation.mouth.rows.values():
        for contact in row.contacts:
            columns = translation.frame.contacts[contact.name]
            value += terms.get(columns.gap, 0.0) * max(0.0, contact.before)
            value += terms.get(columns.overlap, 0.0) * max(0.0, -contact.before)
    gaps = translation.frame.hinge.gaps.values()
    return value + sum(terms.get(gap, 0.0) * translation.frame.hinge.before for gap in gaps)


def assumptions(translation: Translation) -> Iterator[Assumption]:
    """What the arithmetic took as so where the prescription is silent and it matters."""
    mouth, frame, moving = translation.mouth, translation.frame, translation.bounds.opened_columns
    for arch, row in mouth.rows.items():
        columns = {frame.columns[tooth, variable] for tooth in row.teeth for variable in ("along", "out")}
        if columns & moving:
            yield from _of_arch(translation, arch)
    for allowance in translation.rx.allow or ():
        if isinstance(allowance, ClassElastics) and allowance.up_to is None:
            yield Assumption("elastics", allowance.id)
    taken = [tooth for tooth, owner in mouth.extracted.items() if owner is not None]
    if taken:
        yield Assumption("extraction", " ".join(taken))
    heights = {column for (_, variable), column in frame.columns.items() if variable == "vertical"}
    if not frame.hinge.rests and heights & moving:
        yield Assumption("no-hinge", "")


def _of_arch(translation: Translation, arch: str) -> Iterator[Assumption]:
    mouth, row = translation.mouth, translation.mouth.rows[arch]
    if row.measured_depth is None:
        yield Assumption("arch-depth", arch)
    measured = mouth.tooth_values("tooth-width")
    unmeasured = [tooth for tooth in row.initial if tooth not in measured]
    if unmeasured:
        yield Assumption("tooth-widths", f"{len(unmeasured)} {arch} teeth")
    if not mouth.room_stated(arch):
        yield Assumption("no-crowding", arch)
    yield from (Assumption("closed-gap", contact.name) for contact in row.contacts if _skips(contact))


def _skips(contact: Contact) -> bool:
    """Neighbours with a tooth missing between them and no space stated there."""
    first, second = (place(tooth) - (place(tooth) > 0) for tooth in (contact.first, contact.second))
    return second - first > 1 and not contact.taken and contact.before <= 0
