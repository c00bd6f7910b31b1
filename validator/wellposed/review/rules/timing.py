"""When enamel goes: not told, too late, when nothing moves any more, or before a contact is in reach."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed.findings import Severity
from wellposed.kinematics.mouth import Contact
from wellposed.model.setup import PlannedReduction
from wellposed.review.held import Facts, Held, grouped
from wellposed.review.rules.path_room import made_by_enamel, made_by_movement, told_after
from wellposed.review.travel import arrived
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, rule, told
from wellposed.rules.enamel_when import REACH, out_of_line
from wellposed.vocabulary.contacts import normal
from wellposed.vocabulary.motions import VARIABLES
from wellposed.vocabulary.teeth import ARCHES, arch_of

_SHORT = "kinematics.shortfall"
_STILL = ("review.within-mm", "review.within-deg")


def reductions(held: Held) -> Iterator[tuple[str, PlannedReduction, str]]:
    """Every planned reduction of more than nought: where it stands, and its contact from the patient's right."""
    for number, one in enumerate(held.setup.reductions or ()):
        if one.amount > 0:
            yield f"/reductions/{number}", one, normal(one.contact)


@rule(
    "reduction-not-timed",
    Severity.CAUTION,
    title="The setup does not say when enamel is to be taken.",
    says="It is not said before which aligner enamel is to be taken at {contacts:contacts}.",
    do="Ask before which aligner each contact is to be reduced.",
    change="The aligner before which it is to be done would change it.",
)
def reduction_not_timed(held: Held) -> Iterator[Told]:
    """Each planned reduction says before which aligner it is done.

    Whoever wears the aligners comes to the chair for it; done late, the teeth collide in the aligner, done early, the
    contact may not be in reach.

    Evidence: none is needed.

    Passes: {"reductions": [{"contact": "41-31", "amount": 0.3, "unit": "mm", "before_aligner": 3}]}
    Fails: {"reductions": [{"contact": "41-31", "amount": 0.3, "unit": "mm"}]}
    """
    open_ones = [(pointer, name) for pointer, one, name in reductions(held) if one.before_aligner is None]
    if open_ones:
        yield told(open_ones[0][0], contacts=list(dict.fromkeys(name for _, name in open_ones)))


class _Meeting(NamedTuple):
    """A contact whose teeth overlap, mm more than at the start, after an aligner; its enamel goes before another."""

    pointer: str
    name: str
    overlap: float
    aligner: int
    before: int


@rule(
    "teeth-meet-before-reduction",
    Severity.CAUTION,
    title="Teeth are moved into each other before the enamel between them is taken.",
    says="{contacts:contacts}: after aligner {aligner} the teeth overlap by {overlap:mm} more than at the start, and"
    " enamel is taken there before aligner {before} only.",
    do="Ask for the reduction before the teeth need the room, or for the movement after it.",
    change="The reduction before aligner {aligner}, or an overlap of {limit:mm} or less, would change it.",
    figures=(_SHORT,),
)
def teeth_meet_before_reduction(held: Held) -> Iterator[Told]:
    """As long as the enamel of a contact is not taken, its teeth overlap no more than they did at the start.

    The aligner then asks for two teeth in one place: the teeth fall behind it, or others are pushed forward.

    Evidence: the room that the path makes, by the sums of the check; below the shortfall that the check lets pass it is
    silent. Teeth whose place along the path is not told are not looked at.

    Passes: {"movements": [{"variable": "along", "unit": "mm", "values": {"41": 0.4}}], "unlisted": "unmoved",
             "reductions": [{"contact": "41-31", "amount": 0.4, "unit": "mm", "before_aligner": 1}],
             "stages": [{"aligner": 4, "arch": "lower",
                         "movements": [{"variable": "along", "unit": "mm", "values": {"41": 0.4}}]}]}
    Fails: {"movements": [{"variable": "along", "unit": "mm", "values": {"41": 0.4}}], "unlisted": "unmoved",
            "reductions": [{"contact": "41-31", "amount": 0.4, "unit": "mm", "before_aligner": 5}],
            "stages": [{"aligner": 4, "arch": "lower",
                        "movements": [{"variable": "along", "unit": "mm", "values": {"41": 0.4}}]}]}
    """
    for meetings in grouped(_meetings(held)).values():
        worst = max(meetings, key=lambda one: one.overlap)
        facts: Facts = {"contacts": list(dict.fromkeys(one.name for one in meetings)), "overlap": worst.overlap}
        facts |= {"aligner": worst.aligner, "before": worst.before, "limit": held.limit(_SHORT)}
        yield told(meetings[0].pointer, figures=(_SHORT,), **facts)


def _meetings(held: Held) -> Iterator[tuple[str, _Meeting]]:
    """By arch, the contacts whose teeth meet too early, each where it is worst."""
    for pointer, one, name in reductions(held):
        contact, before = held.contact(name), one.before_aligner or 0
        overlaps = dict(_overlaps(held, contact, before)) if contact else {}
        aligner = max(overlaps, key=lambda number: overlaps[number], default=0)
        if contact and aligner and above(overlaps[aligner], held.limit(_SHORT)):
            yield arch_of(contact.first), _Meeting(pointer, name, overlaps[aligner], aligner, before)


def _overlaps(held: Held, contact: Contact, before: int) -> Iterator[tuple[int, float]]:
    """By aligner before a reduction, how far the teeth overlap beyond what they did at the start, mm."""
    for aligner in (number for number in told_after(held, contact) if number < before):
        made = made_by_movement(held, contact, aligner)
        if made is not None:
            room = contact.before + made + made_by_enamel(held, contact, aligner)
            yield aligner, min(contact.before, 0.0) - room


class _Late(NamedTuple):
    """A contact reduced before an aligner, though its teeth stand still after an earlier one."""

    pointer: str
    name: str
    aligner: int
    before: int


@rule(
    "reduction-after-last-movement",
    Severity.CAUTION,
    title="Enamel is taken where the teeth no longer move.",
    says="{contacts:contacts}: enamel is to be taken before aligner {before}, and after aligner {aligner} both teeth"
    " stand where they stay.",
    do="Ask what the room is for, or for the reduction before the teeth move.",
    change="A movement of one of the two teeth after the reduction would change it.",
    figures=_STILL,
)
def reduction_after_last_movement(held: Held) -> Iterator[Told]:
    """Of the two teeth of a contact, at least one still moves after the enamel between them is taken.

    Room is used by the teeth beside it. If neither moves any more, it was used before it was there, or a gap is left.

    Evidence: none is needed; movements within the tolerance of the review count as none.

    Passes: {"movements": [{"variable": "rotation", "unit": "deg", "values": {"41": 8}}],
             "reductions": [{"contact": "41-31", "amount": 0.3, "unit": "mm", "before_aligner": 5}],
             "stages": [{"aligner": 4, "arch": "lower",
                         "movements": [{"variable": "rotation", "unit": "deg", "values": {"41": 4}}]},
                        {"aligner": 8, "arch": "lower",
                         "movements": [{"variable": "rotation", "unit": "deg", "values": {"41": 8}}]}]}
    Fails: {"movements": [{"variable": "rotation", "unit": "deg", "values": {"41": 8}}],
            "reductions": [{"contact": "41-31", "amount": 0.3, "unit": "mm", "before_aligner": 9}],
            "stages": [{"aligner": 8, "arch": "lower",
                        "movements": [{"variable": "rotation", "unit": "deg", "values": {"41": 8}}]}]}
    """
    for late in grouped(_late(held)).values():
        latest = max(late, key=lambda one: one.before - one.aligner)
        contacts = list(dict.fromkeys(one.name for one in late))
        facts: Facts = {"contacts": contacts, "before": latest.before, "aligner": latest.aligner}
        yield told(late[0].pointer, figures=_STILL, **facts)


def _late(held: Held) -> Iterator[tuple[str, _Late]]:
    """By arch, the reductions after which neither tooth moves."""
    for pointer, one, name in reductions(held):
        contact, before = held.contact(name), one.before_aligner or 0
        stopped = _stopped(held, contact) if contact else None
        if contact and stopped and stopped < before:
            yield arch_of(contact.first), _Late(pointer, name, stopped, before)


def _stopped(held: Held, contact: Contact) -> int | None:
    """The aligner after which neither tooth of a contact moves; None if they never do, or their path is not told."""
    moved = [(tooth, v) for tooth in (contact.first, contact.second) for v in VARIABLES if held.going(tooth, v)]
    if not moved or any(at not in held.ways for at in moved):
        return None
    ways = ((held.ways[at], held.within(at[1])) for at in moved)
    return max(arrived(way, within)[0] for way, within in ways)


@rule(
    "reduction-planned-before-reach",
    Severity.NOTE,
    title="Enamel is to be taken before the first aligner at contacts that are far out of line.",
    says="Enamel is to be taken before the first aligner at {contacts:contacts}, where the teeth are up to {amount:mm}"
    " out of line or overlapped.",
    do="Look whether these contacts are in reach, or ask for the reduction after some alignment.",
    change="A later aligner, or contacts no more than {limit:mm} out of line, would change it.",
    figures=(REACH,),
)
def reduction_planned_before_reach(held: Held) -> Iterator[Told]:
    """Enamel that goes before the first aligner goes at contacts that are in reach as the teeth stand now.

    Where teeth overlap, no strip or disc passes between the surfaces that are to meet; another surface is cut.

    Evidence: unaligned contacts stand in a published list of contraindications, which is recalled; the amount is common
    practice, without a source. It is seen only where all six front teeth are measured, or crowding names its contacts.

    Passes: {"prescription": {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 1.5, "unit": "mm",
                                            "contacts": ["41-31"]}]},
             "reductions": [{"contact": "41-31", "amount": 0.4, "unit": "mm", "before_aligner": 1}]}
    Fails: {"prescription": {"findings": [{"id": "f1", "measure": "lower-crowding", "value": 2.5, "unit": "mm",
                                           "contacts": ["41-31"]}]},
            "reductions": [{"contact": "41-31", "amount": 0.4, "unit": "mm", "before_aligner": 1}]}
    """
    early = [(pointer, name) for pointer, one, name in reductions(held) if one.before_aligner == 1]
    off = {name: amount for arch in ARCHES for name, amount in out_of_line(held.chart, arch)} if early else {}
    far = [(pointer, name) for pointer, name in early if above(off.get(name, 0.0), held.limit(REACH))]
    if far:
        contacts = list(dict.fromkeys(name for _, name in far))
        facts: Facts = {"amount": max(off[name] for name in contacts), "limit": held.limit(REACH)}
        yield told(far[0][0], contacts=contacts, figures=(REACH,), **facts)


RULES = (
    *(reduction_not_timed, teeth_meet_before_reduction, reduction_after_last_movement),
    *(reduction_planned_before_reach,),
)
