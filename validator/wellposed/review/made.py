"""Attachments, staging, and what only the laboratory can say."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

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
from wellposed.review.weighing import exactly, weighed
from wellposed.vocabulary.motions import VARIABLE_UNITS
from wellposed.vocabulary.teeth import arch_of
from wellposed.vocabulary.terms import Arch

_ARCHES: tuple[Arch, ...] = ("upper", "lower")
_YES, _NO, _EITHER = Span(1.0, 1.0), Span(0.0, 0.0), Span(0.0, 1.0)
_STEP_ROUNDING = 0.011
"""Two positions given to two decimals may differ by this much more than their true step."""


def attachment_strength(item: AnyAttachment) -> str | None:
    """``must``, ``prefer``, or None for what is only permitted."""
    if isinstance(item, AttachmentMust | AttachmentMustNot | AttachmentRest):
        return "must"
    return "prefer" if isinstance(item, AttachmentPrefer | AttachmentPreferNot) else None


def attachment_parts(matter: Matter, item: AnyAttachment) -> list[Compared]:
    """Which teeth carry one, against which should."""
    teeth, asked = _carrying(matter, item)
    carriers = matter.plan.carriers
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
    for arch in _ARCHES:
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
    """The largest step of any tooth concerned; without a path, only one that is too large on average can be told."""
    named = {t for other in staging.largest_steps or () if other.variable == step.variable for t in other.teeth or ()}
    line = [tooth for row in matter.mouth.rows.values() for tooth in row.teeth]
    teeth = [t for t in step.teeth or line if t in line and (step.teeth is not None or t not in named)]
    told = [(found, tooth) for tooth in teeth if (found := _largest(matter, tooth, step)) is not None]
    unit, asked = VARIABLE_UNITS[step.variable], Span(None, step.amount)
    if not told:
        return [weighed("step", step.variable, unit, asked, None, 0.0)]
    (most, exact), tooth = max(told)
    delivered = exactly(most) if exact or most > step.amount + _STEP_ROUNDING else None
    return [weighed("step", f"{step.variable} {tooth}", unit, asked, delivered, _STEP_ROUNDING)]


def _largest(matter: Matter, tooth: str, step: LargestStep) -> tuple[float, bool] | None:
    """A tooth's largest step, and whether the path shows it (else the mean); None where it cannot be told."""
    arch: Arch = "upper" if arch_of(tooth) == "upper" else "lower"
    moved, path = matter.plan.movement(tooth, step.variable), matter.plan.path.get(arch)
    if moved is None:
        return None
    if path and any((tooth, step.variable) in placed for placed in path.values()):
        return _along(path, tooth, step), True
    if moved == 0.0:
        return 0.0, True
    count = matter.plan.aligners(arch)
    return (abs(moved) / count, False) if count else None


def _along(path: dict[int, Any], tooth: str, step: LargestStep) -> float:
    """The largest step between stated positions, each shared over the aligners between them."""
    largest, before, reached = 0.0, 0, 0.0
    for aligner, placed in path.items():
        here = placed.get((tooth, step.variable))
        if here is not None:
            largest = max(largest, abs(here - reached) / (aligner - before))
            before, reached = aligner, here
    return largest


def stated_parts(matter: Matter, clause_id: str) -> list[Compared]:
    """What the laboratory says of a clause that teeth do not show."""
    said = next((one for one in matter.setup.statements or () if one.clause == clause_id), None)
    if said is None:
        return [weighed("statement", "", "1", _YES, None, 0.0, why="not-in-a-setup")]
    return [weighed("statement", "", "1", _YES, exactly(1.0 if said.standing == "done" else 0.0), 0.0)]
