"""Clauses about room: align, close, leave, extraction sites, ordered reduction, new space."""

from __future__ import annotations

from wellposed import norms
from wellposed.kinematics.keys import clause, space, state
from wellposed.kinematics.ledger import Ledger, arch_of_contact
from wellposed.kinematics.means import reduction_contacts
from wellposed.kinematics.rows import plus
from wellposed.model.clauses import Align, Close, CloseArch, Leave
from wellposed.model.means import EnamelReduction
from wellposed.model.prescription import Prescription
from wellposed.vocabulary.contacts import normal
from wellposed.vocabulary.teeth import ARCHES, arch_of


def align(ledger: Ledger, goal: Align) -> None:
    """No overlap left at the contacts of the goal; whatever is left there is never more than before."""
    frame = ledger.frame
    names = frame.aligned_contacts[goal.id]
    if not names:
        return
    ledger.need_room(goal.id, names, "crowding")
    contacts = [contact for name in names if (contact := ledger.mouth.rows[arch_of_contact(name)].contact(name))]
    overlaps = dict.fromkeys((frame.contacts[contact.name].overlap for contact in contacts), 1.0)
    errors = [
        {frame.errors[f"{arch_of(contact.first)}-crowding"][0]: -contact.crowding}
        for contact in contacts
        if contact.crowding and f"{arch_of(contact.first)}-crowding" in frame.errors
    ]
    errors += [{column: 1.0} for contact in contacts if (column := frame.place_column(contact.name)) is not None]
    ledger.system.row(plus(overlaps, *errors), high=sum(max(0.0, -contact.before) for contact in contacts))
    ledger.demand(clause(goal.id, "align"), overlaps, high=0.0)


def close(ledger: Ledger, goal: Close) -> None:
    """No gap at the named contacts."""
    _shut(ledger, goal.id, [normal(contact) for contact in goal.close])


def close_arch(ledger: Ledger, goal: CloseArch) -> None:
    """No gap in the arch but where a goal leaves one."""
    left = left_open(ledger.mouth.prescription)
    _shut(ledger, goal.id, [c.name for c in ledger.mouth.rows[goal.close_arch].contacts if c.name not in left])


def _shut(ledger: Ledger, clause_id: str, names: list[str]) -> None:
    columns = [ledger.frame.contacts[name].gap for name in names if name in ledger.frame.contacts]
    if columns:
        ledger.need_room(clause_id, names, "spacing")
        ledger.demand(clause(clause_id, "close"), dict.fromkeys(columns, 1.0), high=0.0)


def leave(ledger: Ledger, goal: Leave) -> None:
    """Exactly this gap at one contact."""
    columns = ledger.frame.contacts.get(normal(goal.leave))
    if columns:
        ledger.need_room(goal.id, [goal.leave], "spacing")
        # where a gap is left, nothing overlaps
        terms = {columns.gap: 1.0} | ({columns.overlap: -1.0} if goal.amount > 0 else {})
        ledger.demand(clause(goal.id, "leave"), terms, goal.amount, goal.amount)


def left_open(prescription: Prescription) -> set[str]:
    """Contacts at which a goal leaves room."""
    return {normal(goal.leave) for goal in prescription.goals or () if isinstance(goal, Leave)}


def close_sites(ledger: Ledger) -> None:
    """The place of an extracted tooth closes unless a goal leaves it."""
    left, extracted = left_open(ledger.mouth.prescription), ledger.mouth.extracted
    for row in ledger.mouth.rows.values():
        for contact in row.contacts:
            taken = [tooth for tooth in contact.taken if tooth in extracted]
            if taken and contact.name not in left:
                owner, part = extracted[taken[0]], f"site {contact.name}"
                key = clause(owner, part) if owner else state(taken[0], part)
                ledger.demand(key, {ledger.frame.contacts[contact.name].gap: 1.0}, high=0.0)


def ordered_reduction(ledger: Ledger) -> None:
    """A reduction with ``at_least`` is an order."""
    for item in ledger.mouth.prescription.allow or ():
        if isinstance(item, EnamelReduction) and item.at_least is not None:
            names = reduction_contacts(ledger.mouth, item)
            total = dict.fromkeys((ledger.frame.contacts[name].reduction for name in names), 1.0)
            if total:
                ledger.demand(clause(item.id, "floor"), total, low=item.at_least)


def new_space(ledger: Ledger) -> None:
    """New space that no goal closes or leaves, kept apart: a question, not a demand of the prescriber."""
    goals = ledger.mouth.prescription.goals or ()
    closed = {goal.close_arch for goal in goals if isinstance(goal, CloseArch)}
    spoken = {normal(contact) for goal in goals if isinstance(goal, Close) for contact in goal.close}
    spoken |= left_open(ledger.mouth.prescription)
    for arch in ARCHES:
        contacts = [contact for contact in ledger.mouth.rows[arch].contacts if contact.name not in spoken]
        if arch not in closed and contacts:
            gaps = dict.fromkeys((ledger.frame.contacts[contact.name].gap for contact in contacts), 1.0)
            before = sum(max(0.0, contact.before) for contact in contacts if not contact.taken)
            ledger.demand(space(arch), gaps, high=before + norms.value("kinematics.space-left-over"))
