"""Amounts as intervals of exact numbers."""

from __future__ import annotations

from fractions import Fraction

from wellposed_converters.text.checks.order import exact
from wellposed_converters.text.clause import Clause


def low(clause: Clause) -> Fraction | None:
    """The least amount; None where nothing bounds it."""
    return None if clause.minimum is None else exact(clause.minimum)


def high(clause: Clause) -> Fraction | None:
    """The greatest amount; None where nothing bounds it."""
    return None if clause.maximum is None else exact(clause.maximum)


def is_exact(clause: Clause) -> bool:
    """Whether it is one number."""
    return clause.minimum is not None and clause.minimum == clause.maximum


def has_amount(clause: Clause) -> bool:
    """Whether it has a bound."""
    return clause.minimum is not None or clause.maximum is not None


def comparable(one: Clause, other: Clause) -> bool:
    """Whether both have amounts of one measure in one unit."""
    return has_amount(one) and has_amount(other) and (one.measure, one.unit) == (other.measure, other.unit)


def apart(one: Clause, other: Clause) -> bool:
    """Whether no number satisfies both."""
    return _above(one, other) or _above(other, one)


def _above(one: Clause, other: Clause) -> bool:
    least, most = low(one), high(other)
    return least is not None and most is not None and least > most


def amount_said(clause: Clause) -> str:
    """Its amount in figures: ``0.2``, ``0.2 to 0.3``, ``at most 0.3``, with the unit."""
    unit = {"pct": " %", "deg": "°", None: "", "count": ""}.get(clause.unit, f" {clause.unit}")
    if is_exact(clause):
        return f"{clause.minimum:g}{unit}"
    if clause.minimum is None:
        return f"at most {clause.maximum:g}{unit}"
    if clause.maximum is None:
        return f"at least {clause.minimum:g}{unit}"
    return f"{clause.minimum:g} to {clause.maximum:g}{unit}"
