"""Orders that need a tooth which is not there, or enamel which cannot be bonded to."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wellposed_converters.text.checks.data import names
from wellposed_converters.text.checks.order import ACTED, STOP, WANTED, Numbered, Order, ask, teeth_said
from wellposed_converters.text.checks.reach import teeth
from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.places.notation import in_mouth_order


def gone(order: Order) -> Iterator[Question]:
    """A missing or extracted tooth used: "12 missing. Attachment on 12."; "Extract 14. IPR 13/14." """
    for absent in [*order.states("tooth_status", names("gone")), *order.of(("extraction",), ("do",))]:
        if absent.clause.teeth:
            users = [use for use in order.of(names("needs_tooth"), ACTED) if _needs(use.clause)]
            yield from _using("absent-and-used", absent, users)


def _needs(use: Clause) -> bool:
    """A permission for a group of teeth asks nothing of one that is not there."""
    return use.mode != "permit" or bool(use.links or use.contacts)


def restored(order: Order) -> Iterator[Question]:
    """Bonding to a crown, a veneer or where it is forbidden: "No bonding on 11 (veneer). Att 11." """
    for state in order.states("tooth_status", names("restored")):
        yield from _using("restored-and-bonded", state, order.of(names("bonded"), WANTED))


def unbonded(order: Order) -> Iterator[Question]:
    """A patient for whom nothing may be bonded: "No bonding allowed (allergy). Buttons on 36 46." """
    for fact in order.states("patient", names("no_bonding")):
        about = [use for use in order.of({*names("bonded"), "retainer"}, ACTED) if _is_bonded(use.clause)]
        if about:
            yield ask("no-bonding-and-bonded", STOP, [fact, *about])


def _is_bonded(use: Clause) -> bool:
    return use.kind != "retainer" or use.of == "bonded"


def _using(asks: str, state: Numbered, users: Iterable[Numbered]) -> Iterator[Question]:
    named = teeth(state.clause)
    about = [use for use in users if _names_teeth(use.clause) and named & teeth(use.clause)]
    if about:
        every = in_mouth_order(tooth for use in about for tooth in named & teeth(use.clause))
        yield ask(asks, STOP, [state, *about], teeth=teeth_said(every))


def _names_teeth(use: Clause) -> bool:
    return bool(use.teeth or use.contacts or use.links)
