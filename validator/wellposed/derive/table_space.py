"""Derived: the space budget of each arch."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from wellposed.derive.space import Budget, Line, budget
from wellposed.derive.space_needs import STEPS
from wellposed.derive.table_parts import Derived, once
from wellposed.kinematics.mouth import Mouth
from wellposed.model.prescription import Prescription
from wellposed.vocabulary.teeth import ARCHES
from wellposed.vocabulary.units import MM

_STEPS = tuple(f"{head}.{step}" for head in ("space.levelling-depth", "space.levelling") for step in STEPS)
_KEYS = {
    "levelling": ("space.levelling-per-depth", *_STEPS),
    "incisor-advance": ("space.advance.least", "space.advance.most"),
    "incisor-retraction": ("space.advance.least", "space.advance.most"),
    "widening": ("space.widening.least", "space.widening.most"),
    "narrowing": ("space.widening.least", "space.widening.most"),
}


def space(prescription: Prescription) -> Iterator[Derived]:
    """The budget of each arch of which something is stated."""
    mouth = Mouth(prescription)
    for arch in ARCHES:
        found = budget(mouth, arch)
        if any(line.amount is not None for line in (*found.needs, *found.means)):
            yield _budget(found)


def _budget(found: Budget) -> Derived:
    lines = (*found.needs, *found.means)
    facts: dict[str, Any] = {
        "needs": [_line(line) for line in found.needs],
        "means": [_line(line) for line in found.means],
        "unknown": list(found.unknown),
    }
    return Derived(
        f"{found.arch}-space-budget",
        found.remainder,
        MM,
        found.low,
        found.high,
        keys=once(key for line in lines for key in _KEYS.get(line.what, ())),
        from_=once(ident for line in lines for ident in line.from_),
        refused="amount-not-stated" if found.remainder is None else None,
        facts=facts,
    )


def _line(line: Line) -> dict[str, Any]:
    """A line as plain data."""
    more = {"one_side": line.one_side} if line.one_side is not None else {}
    assumed = {"assumed": list(line.assumed)} if line.assumed else {}
    return {
        "what": line.what,
        "amount": line.amount,
        "low": line.low,
        "high": line.high,
        "least": line.least,
        "from": list(line.from_),
        **more,
        **assumed,
    }
