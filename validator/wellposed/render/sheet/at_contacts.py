"""What a prescription says at contacts: enamel off, a space closed, a space left."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from wellposed.kinematics.means import reduction_contacts
from wellposed.kinematics.mouth import ArchRow, Mouth
from wellposed.model.clauses import Close, CloseArch, Leave
from wellposed.model.means import EnamelReduction
from wellposed.render.sheet.said import ContactSaid
from wellposed.vocabulary.contacts import normal, teeth_of

__all__ = ["contacts_said", "plain"]


def plain(value: float) -> str:
    """A number as it stands, without a unit."""
    return f"{Decimal(repr(float(value))).normalize() + 0:f}"


def contacts_said(mouth: Mouth, row: ArchRow) -> Iterator[ContactSaid]:
    """Everything marked at a contact of the row; each mark of a contact once."""
    found: dict[tuple[str, str], str] = {}
    for clause in mouth.prescription.allow or ():
        if isinstance(clause, EnamelReduction):
            words = "" if clause.per_contact is None else plain(clause.per_contact)
            found |= {("reduction", name): words for name in reduction_contacts(mouth, clause)}
    found |= dict(_spaces(mouth, row))
    for (what, name), words in found.items():
        places = _places(row, name)
        if places is not None:
            yield ContactSaid(*places, what, words)  # type: ignore[arg-type] # the three kinds of mark


def _spaces(mouth: Mouth, row: ArchRow) -> Iterator[tuple[tuple[str, str], str]]:
    for goal in mouth.prescription.goals or ():
        if isinstance(goal, Close):
            yield from ((("close", normal(name)), "") for name in goal.close)
        elif isinstance(goal, CloseArch) and goal.close_arch == row.arch:
            open_now = [contact.name for contact in row.contacts if contact.before > 0 or contact.taken]
            yield from ((("close", name), "") for name in open_now)
        elif isinstance(goal, Leave):
            yield ("leave", normal(goal.leave)), plain(goal.amount)


def _places(row: ArchRow, name: str) -> tuple[int, int] | None:
    """The places of the two teeth in the row as drawn; None for a contact of the other arch."""
    one, other = teeth_of(name)
    if one not in row.initial or other not in row.initial:
        return None
    return row.initial.index(one), row.initial.index(other)
