"""What was allowed, and how much of it the setup uses."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import inf

from wellposed.kinematics.means import allowance_opens
from wellposed.kinematics.openings import Sensed, incisors, sensed
from wellposed.kinematics.room import left_open
from wellposed.model.means import (
    AnyAllowance,
    AuxiliaryUse,
    Elastics,
    EnamelReduction,
    Extraction,
    IncisorTravel,
    PosteriorOpenBite,
    WidthChange,
)
from wellposed.review.bite import GAP
from wellposed.review.goals import gap_at
from wellposed.review.kept import gap_part
from wellposed.review.made import stated_parts
from wellposed.review.matter import Matter
from wellposed.review.result import Compared, Span, Unasked
from wellposed.review.silence import gap_opened, reductions_opened
from wellposed.review.weighing import exactly, weighed
from wellposed.vocabulary.motions import VARIABLE_UNITS
from wellposed.vocabulary.terms import ReviewOutcome
from wellposed.vocabulary.units import MM

_CEILING_SIDE = 1


def allowance_parts(matter: Matter, item: AnyAllowance, beyond: Sequence[Unasked]) -> list[Compared]:
    """How much of an allowance is used, against its amount; what the setup passes it by is in ``beyond``."""
    passed = [_passed(one) for one in beyond if one.owner == item.id]
    if isinstance(item, EnamelReduction):
        return passed + _enamel(matter, item)
    if isinstance(item, Extraction):
        return [*(_taken(matter, tooth) for tooth in item.teeth), *_sites(matter, item)]
    if isinstance(item, WidthChange):
        return passed + _widths(matter, item)
    if isinstance(item, Elastics | AuxiliaryUse):
        return stated_parts(matter, item.id)
    if isinstance(item, PosteriorOpenBite):
        return passed or [_gap(matter)]
    return [*passed, *_used(matter, item), *_alike(matter, item)]


def used(item: AnyAllowance, parts: Sequence[Compared]) -> ReviewOutcome:
    """Within the allowance, beyond it, or not to be told; an order inside it that is not met is not met, nor is a
    place of an extracted tooth that stays open.

    What moves nothing by itself is used if the laboratory says so.
    """
    if isinstance(item, Elastics | AuxiliaryUse):
        return "declared" if parts[0].met is not None else "cannot-be-told"
    failed = [part for part in parts if part.met is False]
    if any(part.what == "gap" or (part.what == "reduction-in-all" and (part.difference or 0.0) < 0) for part in failed):
        return "not-met"
    if failed:
        return "beyond"
    return "cannot-be-told" if any(part.met is None for part in parts) else "within"


def _passed(one: Unasked) -> Compared:
    sign = 1.0 if one.delivered > 0 else -1.0
    asked = Span(None, one.opened) if sign > 0 else Span(-one.opened, None)
    return weighed(one.what, one.where, one.unit, asked, exactly(one.delivered), one.tolerance)


def _gap(matter: Matter) -> Compared:
    reach = gap_opened(matter).reach
    return gap_part(matter, None if reach == inf else matter.mouth.amount(GAP) + reach)


def _enamel(matter: Matter, item: EnamelReduction) -> list[Compared]:
    """All of it together against the total, and against the order where ``at_least`` makes one."""
    names = [name for name, found in reductions_opened(matter).items() if found.owner == item.id]
    amounts = [matter.plan.reduction(name) for name in names]
    told = all(amount is not None for amount in amounts)
    total = exactly(sum(amount or 0.0 for amount in amounts)) if told else None
    most = item.in_all
    if most is None and item.per_contact is not None:
        most = item.per_contact * len(names)
    return [weighed("reduction-in-all", "", MM, Span(item.at_least, most), total, matter.within(MM))]


def _taken(matter: Matter, tooth: str) -> Compared:
    taken = matter.setup.extractions
    delivered = None if taken is None else exactly(1.0 if tooth in taken else 0.0)
    return weighed("extraction", tooth, "1", Span(0.0, 1.0), delivered, 0.0)


def _sites(matter: Matter, item: Extraction) -> Iterator[Compared]:
    """The place of a tooth taken out closes unless a goal leaves it."""
    left = left_open(matter.prescription)
    for row in matter.mouth.rows.values():
        for contact in row.contacts:
            if set(contact.taken) & set(item.teeth) and contact.name not in left:
                yield gap_at(matter, contact.name, 0.0)


def _widths(matter: Matter, item: WidthChange) -> list[Compared]:
    """What the pairs' ``out`` makes of their width, against the amount and what else opens them."""
    system, frame, parts = matter.translation.system, matter.translation.frame, []
    at = {column: tooth for (tooth, variable), column in frame.columns.items() if variable == "out"}
    for ceiling in matter.translation.bounds.ceilings.get(item.id, ()):
        if ceiling.is_row:
            terms = {at[column]: factor for column, factor in system.row_terms[ceiling.at].items()}
            most = _bound(matter, item.id, ceiling.at)
            outs = {tooth: matter.ended.out(tooth) for tooth in terms}
            told = all(out is not None for out in outs.values())
            total = exactly(sum(factor * (outs[tooth] or 0.0) for tooth, factor in terms.items()))
            where, asked = "/".join(terms), Span(None, most)
            parts.append(weighed("width", where, MM, asked, total if told else None, matter.within(MM)))
    return parts


def _bound(matter: Matter, owner: str, row: int) -> float:
    members = matter.translation.system.members
    bounds = members[matter.translation.bounds.amount_key(owner)].bounds
    return next(bound.value for bound in bounds if bound.is_row and bound.at == row and bound.side == _CEILING_SIDE)


def _used(matter: Matter, item: AnyAllowance) -> Iterator[Compared]:
    """The most any tooth uses of what the allowance opens by name."""
    amount, opened = allowance_opens(matter.mouth, item)
    primary = [one.at for one in opened if one.rate == 1.0 and not one.soft and not one.per]
    if not primary or amount == inf:
        return
    values = {at: _in_sense(matter, at) for at in primary}
    if any(value is None for value in values.values()):
        yield weighed(primary[0].variable, "", VARIABLE_UNITS[primary[0].variable], Span(None, amount), None, 0.0)
        return
    at, value = max(values.items(), key=lambda one: one[1] or 0.0)
    unit = VARIABLE_UNITS[at.variable]
    # what passes the amount is told of each tooth; other clauses may open it further
    within = min(max(0.0, value or 0.0), amount)
    asked, delivered = Span(0.0, amount), exactly(within)
    if at.sign < 0:
        asked, delivered = Span(-amount, 0.0), exactly(-within)
    yield weighed(at.variable, at.tooth, unit, asked, delivered, matter.within(unit))


def _in_sense(matter: Matter, at: Sensed) -> float | None:
    value = matter.ended.out(at.tooth) if at.variable == "out" else matter.plan.movement(at.tooth, at.variable)
    return None if value is None else value * at.sign


def _alike(matter: Matter, item: AnyAllowance) -> Iterator[Compared]:
    """Incisors moved as a group move alike, unless something names them singly; told where they do not."""
    if not isinstance(item, IncisorTravel) or item.teeth is not None:
        return
    teeth = [tooth for tooth in incisors(matter.mouth, item.arch) if tooth not in matter.mouth.locked]
    opened = matter.translation.opened
    sources = [one for tooth in teeth for sign in (1, -1) for one in opened.sources(sensed(tooth, "out", sign))]
    outs = {tooth: out for tooth in teeth if (out := matter.ended.out(tooth)) is not None}
    if not outs or not all(one.alike for one in sources):
        return
    most, least = max(outs, key=lambda t: outs[t]), min(outs, key=lambda t: outs[t])
    apart = matter.numbers.value("kinematics.incisors-alike")
    told = weighed(
        "alike", f"{least}/{most}", MM, Span(None, apart), exactly(outs[most] - outs[least]), matter.within(MM)
    )
    if told.met is False:
        yield told
