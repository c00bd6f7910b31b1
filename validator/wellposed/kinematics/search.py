"""Finding every conflict among members, each irreducible, and the least way out of it. No subject matter."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from wellposed.kinematics.rows import Key, Kind, Strain
from wellposed.kinematics.solve import Model

Members = tuple[Key, ...]
_ORDERS = (
    (Kind.DEMAND, Kind.BAN, Kind.SILENCE, Kind.KEEP, Kind.CEILING, Kind.FIXED, Kind.LIMIT),
    (Kind.DEMAND, Kind.BAN, Kind.KEEP, Kind.SILENCE, Kind.CEILING, Kind.FIXED, Kind.LIMIT),
)


class Variant(NamedTuple):
    """One model under one of its settings."""

    model: Model
    setting: str

    def holds(self, active: Members) -> bool:
        """Whether the members hold together here."""
        return self.model.holds(active, self.setting)


Alternatives = Sequence[Variant]
"""It is enough that one of these holds."""


def holds(group: Alternatives, active: Members) -> bool:
    """Whether the members hold together in one of the alternatives."""
    return any(variant.holds(active) for variant in group)


def failing(groups: Sequence[Alternatives], active: Members) -> Alternatives | None:
    """The first group in which the members cannot hold; None if all of them can."""
    return next((group for group in groups if not holds(group, active)), None)


def conflicts(group: Alternatives, active: Members, kinds: dict[Key, Kind]) -> list[Members]:
    """Every conflict, one after another: each is irreducible, and its demands are put aside for the next.

    A conflict holds in every alternative of the group. Members keep the order of ``active``.
    """
    found: list[Members] = []
    remaining = active
    while not holds(group, remaining):
        conflict = _smallest(group, _without_bans(group, remaining, kinds), kinds)
        found.append(conflict)
        demands = {key for key in conflict if kinds[key] == Kind.DEMAND} or set(conflict)
        remaining = tuple(key for key in remaining if key not in demands)
    return found


def _without_bans(group: Alternatives, active: Members, kinds: dict[Key, Kind]) -> Members:
    """Bans often only repeat what holds anyway: they are left out where the rest cannot hold without them."""
    rest = tuple(key for key in active if kinds[key] != Kind.BAN)
    return active if len(rest) == len(active) or holds(group, rest) else rest


def _smallest(group: Alternatives, active: Members, kinds: dict[Key, Kind]) -> Members:
    """One irreducible conflict; a demand that cannot hold by itself is taken before several that cannot together."""
    suspected = _suspects(group, active)
    demands = [key for key in suspected if kinds[key] == Kind.DEMAND]
    if len(demands) > 1:
        for demand in demands:
            alone = tuple(key for key in active if key == demand or kinds[key] != Kind.DEMAND)
            if not holds(group, alone):
                return _reduced(group, _suspects(group, alone), kinds)
    return _reduced(group, suspected, kinds)


def _suspects(group: Alternatives, active: Members) -> Members:
    """Members that by themselves cannot hold in any alternative."""
    first = group[0].model.suspects(active, group[0].setting)
    if not holds(group[1:], first):
        return first
    named = set(first)
    for variant in group[1:]:
        named |= set(variant.model.suspects(active, variant.setting))
    return tuple(key for key in active if key in named)


def _reduced(group: Alternatives, suspected: Members, kinds: dict[Key, Kind]) -> Members:
    """The better of two deletion filters: fewest demands, then fewest members."""
    candidates = [_irreducible(group, suspected, order, kinds) for order in _ORDERS]
    return min(candidates, key=lambda found: (sum(kinds[key] == Kind.DEMAND for key in found), len(found)))


def _irreducible(group: Alternatives, suspected: Members, order: Sequence[Kind], kinds: dict[Key, Kind]) -> Members:
    """What is irreducible in one alternative, and holds in no other, is irreducible in all together."""
    found = _filtered(group[:1], suspected, order, kinds)
    return _filtered(group, suspected, order, kinds) if holds(group[1:], found) else found


def _filtered(group: Alternatives, suspected: Members, order: Sequence[Kind], kinds: dict[Key, Kind]) -> Members:
    kept = list(suspected)
    for kind in order:
        for key in [key for key in suspected if kinds[key] == kind]:
            without = tuple(other for other in kept if other != key)
            if not holds(group, without):
                kept.remove(key)
    return tuple(kept)


def least(group: Alternatives, active: Members, strain: Strain) -> float | None:
    """The least strain with which the members hold in one of the alternatives; None if none helps."""
    amounts = [variant.model.least_strain(active, strain, variant.setting) for variant in group]
    return min((amount for amount in amounts if amount is not None), default=None)


def settles(groups: Iterable[Alternatives], active: Members, strain: Strain) -> tuple[float, ...] | None:
    """The least strain in each group; None if in one of them none helps."""
    amounts: list[float] = []
    for group in groups:
        amount = least(group, active, strain)
        if amount is None:
            return None
        amounts.append(amount)
    return tuple(amounts)
