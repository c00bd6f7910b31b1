"""What is treated at all, and places whose words contradict their numbers."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed_converters.text.checks.data import names
from wellposed_converters.text.checks.order import ACTED, STOP, WANTED, Numbered, Order, ask, teeth_said
from wellposed_converters.text.checks.reach import contacts, is_everywhere, is_open, teeth
from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.places.notation import ARCHES, LEFT, RIGHT, arch_of, side_of


def outside(order: Order) -> Iterator[Question]:
    """An order outside what is treated: "Treat upper only. IPR lower 3-3." """
    for scope in order.of(("scope",), {*WANTED, "forbid"}):
        if scope.clause.mode == "forbid" or scope.clause.only:
            about = [act for act in order.of(names("scoped"), ACTED) if _is_outside(scope.clause, act.clause)]
            yield from _asked(scope, about)


def _asked(scope: Numbered, about: list[Numbered]) -> Iterator[Question]:
    if about:
        yield ask("outside-scope", STOP, [scope, *about])


def _is_outside(scope: Clause, act: Clause) -> bool:
    if is_open(scope) or is_open(act) or (is_everywhere(act) and act.arch is None) or act.kind in _anchors(scope):
        return False
    if scope.mode == "forbid":
        return bool(teeth(scope) & teeth(act)) and bool(act.teeth or act.contacts or act.arch or act.side)
    if act.contacts:
        return any(not set(pair) & teeth(scope) for pair in contacts(act))
    return not teeth(act) <= teeth(scope)


def _anchors(scope: Clause) -> frozenset[str]:
    """Attachments may stand on teeth beside those that are treated."""
    return frozenset(("attachment",)) if scope.teeth else frozenset()


def side_against_teeth(order: Order) -> Iterator[Question]:
    """A side against its teeth: "right: 23"."""
    for one in order.of(None, {*ACTED, "keep", "forbid", "state"}):
        side = one.clause.side
        wrong = [tooth for tooth in one.clause.teeth if side in (LEFT, RIGHT) and side_of(tooth) != side]
        if wrong:
            yield ask("side-against-teeth", STOP, [one], side=str(side), teeth=teeth_said(wrong))


def arch_against_teeth(order: Order) -> Iterator[Question]:
    """An arch against its teeth: "Lower: derotate 14"."""
    for one in order.of(None, {*ACTED, "keep", "forbid", "state"}):
        arch = one.clause.arch
        wrong = [tooth for tooth in one.clause.teeth if arch in ARCHES and arch_of(tooth) != arch]
        if wrong:
            yield ask("arch-against-teeth", STOP, [one], arch=str(arch), teeth=teeth_said(wrong))
