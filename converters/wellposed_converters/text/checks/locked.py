"""Teeth that must not, or cannot, move, and orders that move or load them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wellposed_converters.text.checks.data import names
from wellposed_converters.text.checks.order import ACTED, CONFIRM, STOP, WANTED, Numbered, Order, ask, teeth_said
from wellposed_converters.text.checks.reach import is_named, teeth
from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.places.notation import in_mouth_order


def _locks(order: Order) -> Iterator[Numbered]:
    for lock in order.of(("movement",), ("forbid",)):
        if lock.clause.dir is None and lock.clause.condition is None and is_named(lock.clause):
            yield lock


def locked_moved(order: Order) -> Iterator[Question]:
    """A locked tooth moved: "36 must not move. Distalise lower molars 1 mm." """
    for lock in _locks(order):
        yield from _used("locked-and-moved", STOP, lock, order.of(names("moving"), ACTED))


def locked_widened(order: Order) -> Iterator[Question]:
    """A locked tooth among those of an expansion: "Lock 6s. Expand 2 mm at 14-16." """
    for lock in _locks(order):
        yield from _used("locked-and-widened", STOP, lock, order.of(("archwidth",), ACTED))


def locked_loaded(order: Order) -> Iterator[Question]:
    """A locked tooth that elastics pull on: "Do not move 46. Class II elastics 13 to 46." """
    for lock in _locks(order):
        yield from _used("locked-and-loaded", CONFIRM, lock, order.of(("elastic",), ACTED))


def immovable(order: Order) -> Iterator[Question]:
    """An implant or an ankylosed tooth moved: "75 ankylosed. Extrude 75 1 mm."; locked ones are asked about as such."""
    locked = frozenset(tooth for lock in _locks(order) for tooth in teeth(lock.clause))
    for state in order.states("tooth_status", names("immovable")):
        left = state.clause.with_(teeth=tuple(tooth for tooth in state.clause.teeth if tooth not in locked))
        if left.teeth:
            moves = order.of(names("moving") | {"archwidth"}, ACTED)
            yield from _used("immovable-and-moved", STOP, Numbered(state.at, left), moves)


def bridged(order: Order) -> Iterator[Question]:
    """Units of a bridge moved apart: "Bridge 14-16. Rotate 15." """
    for bridge in order.states("tooth_status", ("bridge",)):
        units = teeth(bridge.clause)
        moves = [move for move in order.of(names("moving"), ACTED) if not units <= teeth(move.clause)]
        yield from _used("bridge-moved-apart", STOP, bridge, moves)


def retained(order: Order) -> Iterator[Question]:
    """Teeth held by a retainer that stays: "Bonded retainer 33-43 stays. Align 33-43." """
    for retainer in order.of(("retainer",), ("keep", "state")):
        yield from _used("retained-and-moved", STOP, retainer, order.of(names("moving"), WANTED))


def bodily(order: Order) -> Iterator[Question]:
    """Bodily movement only, and tipping: "Bodily movement only, tip 13 crown distal 5°." """
    for only in order.of(("movement", "move"), ACTED):
        if only.clause.of == "bodily":
            tips = [tip for tip in order.of(("tip", "incline"), WANTED) if not _root(tip.clause)]
            yield from _used("bodily-and-tipped", STOP, only, tips, anywhere=True)


def _root(clause: Clause) -> bool:
    """Whether it moves the roots to where the crowns are."""
    return clause.dir is not None and "root" in clause.dir


def _used(
    asks: str, level: str, state: Numbered, orders: Iterable[Numbered], *, anywhere: bool = False
) -> Iterator[Question]:
    """One question about the finding or prohibition and every order that names a tooth of it."""
    held = teeth(state.clause)
    about = [one for one in orders if (anywhere or _names_teeth(one.clause)) and held & teeth(one.clause)]
    if about:
        common = in_mouth_order(tooth for one in about for tooth in held & teeth(one.clause))
        yield ask(asks, level, [state, *about], teeth=teeth_said(common))


def _names_teeth(one: Clause) -> bool:
    return bool(one.teeth or one.contacts or one.links)
