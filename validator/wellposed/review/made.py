"""Attachments, staging, and what only the laboratory can say."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import NamedTuple

from wellposed.model.making import (
    AnyAttachment,
    AttachmentMay,
    AttachmentMust,
    AttachmentMustNot,
    AttachmentPrefer,
    AttachmentPreferNot,
    AttachmentRest,
    LargestStep,
    Staging,
)
from wellposed.review.matter import Matter
from wellposed.review.result import Compared, Span
from wellposed.review.travel import JAWS, Way, largest
from wellposed.review.weighing import exactly, weighed
from wellposed.vocabulary.motions import VARIABLE_UNITS, Variable
from wellposed.vocabulary.teeth import arch_of

_YES, _NO, _EITHER = Span(1.0, 1.0), Span(0.0, 0.0), Span(0.0, 1.0)
_STEP_ROUNDING = 0.011
"""Two positions given to two decimals may differ by this much more than their true step."""


def attachment_strength(item: AnyAttachment) -> str | None:
    """``must``, ``prefer``, or None for what is only permitted."""
    if isinstance(item, AttachmentMust | AttachmentMustNot | AttachmentRest):
        return "must"
    return "prefer" if isinstance(item, AttachmentPrefer | AttachmentPreferNot) else None


def attachment_parts(matter: Matter, item: AnyAttachment) -> list[Compared]:
    """Which teeth carry one, against which should; where either will do, nothing need be stated."""
    teeth, asked = _carrying(matter, item)
    carriers = matter.plan.carriers
    if carriers is None and asked == _EITHER:
        return []
    parts = []
    for tooth in teeth:
        delivered = None if carriers is None else exactly(1.0 if tooth in carriers else 0.0)
        parts.append(weighed("attachment", tooth, "1", asked, delivered, 0.0))
    return parts


def _carrying(matter: Matter, item: AnyAttachment) -> tuple[tuple[str, ...], Span]:
    if isinstance(item, AttachmentMust):
        return item.must, _YES
    if isinstance(item, AttachmentPrefer):
        return item.prefer, _YES
    if isinstance(item, AttachmentMustNot):
        return item.must_not, _NO
    if isinstance(item, AttachmentPreferNot):
        return item.prefer_not, _NO
    if isinstance(item, AttachmentMay):
        return item.may, _EITHER
    return _the_rest(matter), _NO if item.otherwise == "none" else _EITHER


def _the_rest(matter: Matter) -> tuple[str, ...]:
    """The teeth no other attachment clause names."""
    others = (one for one in matter.prescription.attachments or () if not isinstance(one, AttachmentRest))
    named = {tooth for one in others for tooth in _carrying(matter, one)[0]}
    line = [tooth for row in matter.mouth.rows.values() for tooth in row.teeth]
    return tuple(tooth for tooth in line if tooth not in named)


def staging_parts(matter: Matter, staging: Staging) -> list[Compared]:
    """Number of aligners, steps, wear; the order between clauses cannot be seen in positions."""
    parts = list(_counts(matter, staging)) + list(_interval(matter, staging))
    for step in staging.largest_steps or ():
        parts += _steps(matter, step, staging)
    parts += [
        weighed("order", one.id, "1", Span(None, None), None, 0.0, why="not-in-a-setup") for one in staging.order or ()
    ]
    return parts


def _counts(matter: Matter, staging: Staging) -> Iterator[Compared]:
    if staging.most_aligners is None:
        return
    for arch in JAWS:
        if matter.mouth.rows[arch].teeth:
            count = matter.plan.aligners(arch)
            delivered = None if count is None else exactly(float(count))
            yield weighed("aligners", arch, "1", Span(None, float(staging.most_aligners)), delivered, 0.0)


def _interval(matter: Matter, staging: Staging) -> Iterator[Compared]:
    if staging.wear_interval_days is not None:
        days = matter.setup.wear_interval_days
        asked = exactly(float(staging.wear_interval_days))
        yield weighed("wear-interval", "", "d", asked, None if days is None else exactly(float(days)), 0.0)


def _steps(matter: Matter, step: LargestStep, staging: Staging) -> list[Compared]:
    """The largest step of any tooth concerned; where a step is not shown, only that it is too large can be told."""
    found = {tooth: _largest(matter, tooth, step.variable) for tooth in _stepping(matter, step, staging)}
    known = {tooth: one.amount for tooth, one in found.items() if one is not None}
    unit, asked = VARIABLE_UNITS[step.variable], Span(None, step.amount)
    if known:
        tooth = max(known, key=lambda one: known[one])
        where = f"{step.variable} {tooth}"
        told = weighed("step", where, unit, asked, exactly(known[tooth]), _STEP_ROUNDING)
        if told.met is False or all(one is not None and one.shown for one in found.values()):
            return [told]
    hidden = next((f" {tooth}" for tooth in known if (one := found[tooth]) and not one.shown), "")
    return [weighed("step", f"{step.variable}{hidden}", unit, asked, None, _STEP_ROUNDING)]


def _stepping(matter: Matter, step: LargestStep, staging: Staging) -> list[str]:
    """The teeth in line that a largest step is about: those it names, or all that no other names."""
    named = {t for other in staging.largest_steps or () if other.variable == step.variable for t in other.teeth or ()}
    line = [tooth for row in matter.mouth.rows.values() for tooth in row.teeth]
    return [t for t in line if (t not in named if step.teeth is None else t in step.teeth)]


class _Step(NamedTuple):
    """A tooth's largest step at the least, mm or deg; ``shown``: every step is, so that it is no larger."""

    amount: float
    shown: bool


def _largest(matter: Matter, tooth: str, variable: Variable) -> _Step | None:
    """None where it cannot be told: where the tooth comes to stand, or in how many aligners, is not stated."""
    moved, way = matter.plan.movement(tooth, variable), matter.ways.get((tooth, variable))
    if moved is None:
        return None
    if way is None and moved == 0.0:
        return _Step(0.0, True)
    count = next(matter.plan.aligners(arch) for arch in JAWS if arch == arch_of(tooth))
    if way is None and count:
        way = Way((0, count), (0.0, moved))
    return None if way is None else _Step(largest(way).each, _shown(way))


def _shown(way: Way) -> bool:
    """Whether each aligner in which the tooth moves is told by itself."""
    legs = zip(pairwise(way.aligners), pairwise(way.places), strict=True)
    return all(last - first == 1 or there == here for (first, last), (there, here) in legs)


def stated_parts(matter: Matter, clause_id: str) -> list[Compared]:
    """What the laboratory says of a clause that teeth do not show."""
    said = next((one for one in matter.setup.statements or () if one.clause == clause_id), None)
    if said is None:
        return [weighed("statement", "", "1", _YES, None, 0.0, why="not-in-a-setup")]
    return [weighed("statement", "", "1", _YES, exactly(1.0 if said.standing == "done" else 0.0), 0.0)]
