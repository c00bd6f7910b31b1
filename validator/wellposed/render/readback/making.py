"""Attachments, staging, what is built beside the movement, process and retention."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from wellposed.consistency.whole import Place
from wellposed.model.making import (
    Appliance,
    Attachment,
    AttachmentMay,
    AttachmentMust,
    AttachmentMustNot,
    AttachmentPrefer,
    AttachmentPreferNot,
    AttachmentRest,
    LargestStep,
    Order,
    ProcessStep,
    Retention,
    Staging,
)
from wellposed.render.readback.senses import BOTH_WAYS
from wellposed.render.readback.sentence import Context, Sentence, Teller, saying
from wellposed.render.readback.terms import gloss
from wellposed.render.readback.words import amount, ids, teeth, tooth, where

__all__ = ["MAKING"]

_REASONS = {"movement": ", for a movement", "retention": ", to hold the aligner"}
_REST = {"none": "no attachments", "laboratory-decides": "the laboratory decides on attachments"}
_ORDERS = {
    "before": "{} begins before {}",
    "together-with": "{} goes together with {}",
    "not-before-done": "{} is done before {} begins",
    "only-if": "{} counts only if {} holds",
}
_RETAINERS = {
    "removable": "a removable retainer",
    "bonded": "a bonded retainer",
    "both": "a removable and a bonded retainer",
    "none": "no retainer, which is decided,",
}


def _attachment(member: str, heading_prefix: str, what: str = "attachments on") -> Teller:
    def phrase(part: Attachment, ctx: Context) -> str:
        del ctx
        return f"{what} {teeth(getattr(part, member))}{_why(part)}"

    return saying("means", heading_prefix, phrase)


def _why(part: Attachment) -> str:
    shape = "" if part.shape is None else f", {gloss(part.shape)}"
    return shape + ("" if part.reason is None else _REASONS[part.reason])


def _rest(part: AttachmentRest, ctx: Context) -> str:
    del ctx
    return _REST[part.otherwise] + _why(part)


# staging


def _staging(place: Place, ctx: Context) -> Iterator[Sentence]:
    """One sentence a member: the steps and the orders are parts of their own."""
    staging = ctx.rx.staging
    if staging is None:
        return
    for member, phrase in _STAGED.items():
        if place.said(member) is not None:
            inner = place._replace(pointer=f"{place.pointer}/{member}")
            yield from saying("made", None, phrase)(inner, ctx)
    if not any(place.said(member) is not None for member in (*_STAGED, "largest_steps", "order")):
        yield from saying("made", None, lambda part, ctx: "staging, of which nothing is stated")(place, ctx)


def _most(part: Staging, ctx: Context) -> str:
    del ctx
    return f"at most {part.most_aligners} aligners"


def _worn(part: Staging, ctx: Context) -> str:
    del ctx
    days = part.wear_interval_days
    return f"wear each aligner for exactly {days} day{'' if days == 1 else 's'}"


_STAGED = {"most_aligners": _most, "wear_interval_days": _worn}


def _step(part: LargestStep, ctx: Context) -> str:
    del ctx
    which = f" of {teeth(part.teeth)}" if part.teeth else ""
    return f"at most {amount(part.amount, part.unit)} per aligner of {BOTH_WAYS[part.variable]}{which}"


def _order(part: Order, ctx: Context) -> str:
    del ctx
    return _ORDERS[part.relation].format(ids([part.first]), ids([part.then]))


# what is built, what happens, what stays


def _appliance(part: Appliance, ctx: Context) -> str:
    del ctx
    told = [gloss(part.part) + where(part.teeth)]
    told += [f"{part.arch} arch"] if part.arch else []
    ends = (("from", part.start), ("to", part.end))
    told += [" ".join(f"{word} {tooth(end)}" for word, end in ends if end)] if part.start or part.end else []
    told += [f"worn {gloss(part.wear)}"] if part.wear else []
    told += [f"edge {gloss(part.trimming)}"] if part.trimming else []
    told += [f"size exactly {amount(part.size, part.unit)}"] if part.size is not None and part.unit else []
    return ", ".join(told)


def _process(part: ProcessStep, ctx: Context) -> str:
    del ctx
    date = f", on {part.date}" if part.date else ""
    return gloss(part.step) + where(part.teeth) + date + (f", before {ids([part.before])}" if part.before else "")


def _retention(part: Retention, ctx: Context) -> str:
    del ctx
    return f"{_RETAINERS[part.retainer]} in the {part.arch} arch{where(part.teeth)}"


MAKING: Mapping[type, Teller] = MappingProxyType(
    {
        AttachmentMust: _attachment("must", "Must: "),
        AttachmentMustNot: _attachment("must_not", "Not allowed: "),
        AttachmentMay: _attachment("may", "Allowed: "),
        AttachmentPrefer: _attachment("prefer", "Preferably: "),
        AttachmentPreferNot: _attachment("prefer_not", "Preferably: ", "no attachments on"),
        AttachmentRest: saying("means", "On all other teeth: ", _rest),
        Staging: _staging,
        LargestStep: saying("made", None, _step),
        Order: saying("made", None, _order),
        Appliance: saying("made", "Make: ", _appliance),
        ProcessStep: saying("made", "Step: ", _process),
        Retention: saying("made", "At the end: ", _retention),
    }
)
"""What tells each part of the making."""
