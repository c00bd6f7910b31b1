"""What is kept against movements that change it; a plan may show that they balance, so these only ask."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import Final

from wellposed_converters.text.checks.amounts import high
from wellposed_converters.text.checks.data import data
from wellposed_converters.text.checks.order import CONFIRM, WANTED, Numbered, Order, ask, said
from wellposed_converters.text.checks.reach import teeth
from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.places.notation import BOTH, LEFT, LOWER, RIGHT, UPPER, arch_of, side_of, tooth

CENTRALS: Final = {
    arch: frozenset(number for side in (RIGHT, LEFT) if (number := tooth(arch, side, 1))) for arch in (UPPER, LOWER)
}
"""The teeth at which overbite and overjet are measured."""
VERTICAL: Final = {"intrude": -1, "extrude": 1}
IN_OUT: Final = ("move", "incline")
FIRST_PREMOLAR: Final = 4


def overbite(order: Order) -> Iterator[Question]:
    """Overbite kept and incisors moved up or down: "Keep overbite. Intrude lower incisors 2 mm." """
    for keep in order.of(("overbite",), ("keep",)):
        moves = [one for arch in CENTRALS for one in _centrals(order, VERTICAL, arch)]
        change = sum((_rise(one.clause) for one in moves), Fraction(0))
        if change:
            way = "increase" if change > 0 else "fall"
            yield ask("keep-and-forced", CONFIRM, [keep, *moves], by=said(abs(change)), way=way)


def _rise(clause: Clause) -> Fraction:
    """What the movement adds to the overbite, as far as it is said."""
    return VERTICAL[clause.kind] * (high(clause) or Fraction(0))


def _centrals(order: Order, kinds: Iterable[str], arch: str) -> Iterator[Numbered]:
    for one in order.of(kinds, WANTED):
        if teeth(one.clause) >= CENTRALS[arch] and not _is_whole(one.clause):
            yield one


def _is_whole(clause: Clause) -> bool:
    return not clause.teeth


def overjet(order: Order) -> Iterator[Question]:
    """Overjet kept and incisors moved in or out, the others staying: "Keep overjet, retract 12-22." """
    for keep in order.of(("overjet",), ("keep",)):
        found = [(one, _sign(one.clause, arch)) for arch in CENTRALS for one in _centrals(order, IN_OUT, arch)]
        signs = {sign for _, sign in found if sign}
        if len(signs) == 1:
            way = "increase" if signs == {1} else "fall"
            moves = [one for one, sign in found if sign]
            yield ask("keep-and-retracted", CONFIRM, [keep, *moves], way=way, by=_by(moves))


def _sign(clause: Clause, arch: str) -> int:
    """1 where the movement makes more overjet, -1 where it makes less, 0 where it does not say."""
    sign: int = data()["overjet"][arch].get(clause.dir, 0)
    return sign


def _by(moves: list[Numbered]) -> str:
    """The change in words, as far as the amounts are millimetres."""
    amounts = [high(one.clause) for one in moves if one.clause.unit == "mm" and one.clause.kind == "move"]
    known = [amount for amount in amounts if amount is not None]
    if len(known) < len(moves):
        return "by an amount that is not said"
    return f"by about {said(sum(known, Fraction(0)))} mm"


def against_finding(order: Order) -> Iterator[Question]:
    """More of what is found: "12 is mesial-in; rotate mesial-in 10° to line up." """
    for now in order.of(("rotate", "position"), ("state",)):
        for change in order.of(None, WANTED):
            if teeth(now.clause) & teeth(change.clause) and change.clause.teeth and _worse(now.clause, change.clause):
                yield ask("direction-against-finding", CONFIRM, [now, change])


def _worse(now: Clause, change: Clause) -> bool:
    if now.kind == "rotate":
        turn = data()["turn"]
        return change.kind == "rotate" and turn.get(now.dir) is not None and turn.get(now.dir) == turn.get(change.dir)
    ways = data()["worse"].get(now.of, {}).get(change.kind)
    return ways is not None and (not ways or change.dir in ways)


def midline(order: Order) -> Iterator[Question]:
    """Midlines kept and one side moved: "Keep midlines. Distalise right side only 2 mm, close to the right." """
    for keep in order.of(("midline",), ("keep",)):
        moves = [one for one in order.of(("move",), WANTED) if _along(one.clause) and _in_arch(keep.clause, one.clause)]
        sides = {side for one in moves for side in _sides(one.clause)}
        if len(sides) == 1:
            yield ask("midline-and-one-side", CONFIRM, [keep, *moves], side=next(iter(sides)))


def _along(clause: Clause) -> bool:
    """Movement along the arch by back teeth, or by all of a side."""
    back = any(number % 10 >= FIRST_PREMOLAR for number in clause.teeth)
    return clause.dir in ("mesial", "distal") and (back or (not clause.teeth and clause.side is not None))


def _sides(clause: Clause) -> frozenset[str]:
    if clause.side in (LEFT, RIGHT) and not clause.teeth:
        return frozenset((str(clause.side),))
    return frozenset((LEFT, RIGHT)) if clause.side == BOTH else frozenset(side_of(number) for number in clause.teeth)


def _in_arch(keep: Clause, move: Clause) -> bool:
    kept = {arch_of(number) for number in teeth(keep)}
    return bool(kept & {arch_of(number) for number in teeth(move)})
