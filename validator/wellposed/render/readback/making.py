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
from wellposed.render.readback.sentence import Context, Sentence, Teller, said, saying
from wellposed.render.readback.terms import gloss
from wellposed.render.readback.words import amount, ids, teeth, tooth, where

__all__ = ["MAKING", "REASONS", "REST", "RETAINERS", "STAGED_LISTS"]

REASONS = {"movement": ", for a movement", "retention": ", to hold the aligner"}
REST = {"none": "no attachments", "laboratory-decides": "the laboratory decides on attachments"}
_ORDERS = {
    "before": "{} begins before {}",
    "together-with": "{} goes together with {}",
    "not-before-done": "{} is done before {} begins",
    "only-if": "{} counts only if {} holds",
}
RETAINERS = {
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
    return shape + ("" if part.reason is None else REASONS[part.reason])


def _rest(part: AttachmentRest, ctx: Context) -> str:
    del ctx
    return REST[part.otherwise] + _why(part)


# staging


def _staging(place: Place, ctx: Context) -> Iterator[Sentence]:
    """One sentence a member: the steps and the orders are parts of their own; an order does not name its staging."""
    for member, phrase in _STAGED.items():
        if place.said(member) is not None:
            inner = place._replace(pointer=f"{place.pointer}/{member}")
            yield from saying("made", None, phrase)(inner, ctx)
    for member, words in STAGED_LISTS.items():
        if place.said(member) == ():
            yield said(place._replace(pointer=f"{place.pointer}/{member}"), "made", f"Stated as none: {words}")
    if not place.said("largest_steps") and all(place.said(member) is None for member in _STAGED):
        yield from saying("made", None, _bare)(place, ctx)


def _bare(part: Staging, ctx: Context) -> str:
    del ctx
    return f"staging, of which nothing{' but the order' if part.order else ''} is stated"


def _most(part: Staging, ctx: Context) -> str:
    del ctx
    return f"at most {part.most_aligners} aligners"


def _worn(part: Staging, ctx: Context) -> str:
    del ctx
    days = part.wear_interval_days
    return f"wear each aligner for exactly {days} day{'' if days == 1 else 's'}"


_STAGED = {"most_aligners": _most, "wear_interval_days": _worn}
STAGED_LISTS = {"largest_steps": "largest steps per aligner", "order": "an order of clauses"}


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
    return f"{RETAINERS[part.retainer]} in the {part.arch} arch{where(part.teeth)}"


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
