"""Where a clause holds: the teeth or contacts it names, or all of an arch, a side or the mouth."""

from __future__ import annotations

from functools import lru_cache
from itertools import combinations
from typing import Final

from wellposed.vocabulary.teeth import TEETH
from wellposed_converters.text.checks.data import data, names
from wellposed_converters.text.clause import Clause, Contact
from wellposed_converters.text.places.notation import (
    BOTH,
    LEFT,
    RIGHT,
    arch_of,
    in_mouth_order,
    is_primary,
    neighbours,
    side_of,
)

CONTACTWISE: Final = frozenset(("ipr", "space"))
POSITIONS: Final = {"intercanine": (3,), "interpremolar": (4, 5), "intermolar": (6,)}
FRONT: Final = (1, 2, 3)
REMEMBERED: Final = 4096
"""How many clauses are remembered; a note has fewer."""
PENDING: Final = frozenset(("teeth", "contacts", "arch", "side"))

Reach = frozenset[int] | frozenset[Contact]

MOUTH: Final = in_mouth_order(int(tooth) for tooth in TEETH)
CONTACTS: Final = tuple(pair for pair in combinations(MOUTH, 2) if neighbours(*pair))


def is_named(clause: Clause) -> bool:
    """Whether it names teeth or contacts, and not only an arch, a side or nothing."""
    return bool(clause.teeth or clause.contacts)


def is_open(clause: Clause) -> bool:
    """Whether its place waits for an answer."""
    return bool(PENDING & set(clause.pending))


def is_everywhere(clause: Clause) -> bool:
    """Whether it holds in the whole mouth."""
    return not (is_named(clause) or is_open(clause) or clause.side in (LEFT, RIGHT)) and clause.arch in (None, BOTH)


@lru_cache(maxsize=REMEMBERED)
def teeth(clause: Clause) -> frozenset[int]:
    """The teeth it is about; none while its place is open."""
    if is_open(clause):
        return frozenset()
    named = frozenset(clause.teeth) | {tooth for pair in (*clause.contacts, *clause.links) for tooth in pair}
    return named or frozenset(tooth for tooth in MOUTH if _within(tooth, clause) and _of(tooth, clause.of))


@lru_cache(maxsize=REMEMBERED)
def contacts(clause: Clause) -> frozenset[Contact]:
    """The contacts it is about, each in mouth order; those at the teeth where it names only teeth."""
    if is_open(clause):
        return frozenset()
    if clause.contacts:
        return frozenset(pair if pair[0] == in_mouth_order(pair)[0] else (pair[1], pair[0]) for pair in clause.contacts)
    at = teeth(clause)
    both = clause.arch is not None and not clause.teeth
    return frozenset(pair for pair in CONTACTS if (set(pair) <= at if both else set(pair) & at))


def reach(clause: Clause) -> Reach:
    """Teeth, or contacts for enamel reduction and spaces; empty while its place is open."""
    return contacts(clause) if clause.kind in CONTACTWISE else teeth(clause)


def overlap(one: Clause, other: Clause) -> bool:
    """Whether two clauses of one kind meet somewhere, for certain."""
    if is_open(one) or is_open(other):
        closed = other if is_open(one) else one
        return is_everywhere(closed) and not (is_open(one) and is_open(other))
    if CONTACTWISE & {one.kind, other.kind}:
        return bool(contacts(one) & contacts(other))
    return bool(teeth(one) & teeth(other))


def same_sort(one: Clause, other: Clause) -> bool:
    """Whether what ``one`` says of a sort or a direction is meant by ``other`` too; one that names none means every."""
    of = one.of in (None, other.of) or one.of in names("places")
    return of and one.dir in (None, other.dir) and one.relation in (None, other.relation)


def alike(one: Clause, other: Clause) -> bool:
    """Whether two clauses speak of the same thing: kind, sort, direction and place."""
    sorts = _plain(one.of) == _plain(other.of)
    ways = one.dir == other.dir or None in (one.dir, other.dir) or _turn(one.dir) == _turn(other.dir) is not None
    return one.kind == other.kind and sorts and ways and one.relation == other.relation and overlap(one, other)


def _plain(of: str | None) -> str | None:
    return None if of in names("places") else of


def _turn(way: str | None) -> str | None:
    turn: str | None = data()["turn"].get(way)
    return turn


def _within(tooth: int, clause: Clause) -> bool:
    return clause.arch in (None, BOTH, arch_of(tooth)) and clause.side in (None, BOTH, side_of(tooth))


def _of(tooth: int, of: str | None) -> bool:
    """Whether the sort says that it holds here: canines for the width between them, the front for an anterior ramp."""
    position = tooth % 10
    if of == "primary_teeth":
        return is_primary(tooth)
    if of in ("anterior", "posterior"):
        return (position in FRONT) is (of == "anterior")
    return of not in POSITIONS or position in POSITIONS[of]
