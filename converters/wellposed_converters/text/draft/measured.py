"""Statements about one measure of the mouth: findings, goals and keeps, with the signs of the format."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from typing import Final

from wellposed.vocabulary.measures import MEASURE_KINDS, allowed_units
from wellposed.vocabulary.units import MM
from wellposed_converters.text.clause import Clause
from wellposed_converters.text.draft.part import UNITS, Amount, Facts, NotCarried, Order, Part, decimal, plain

WAYS: Final = {"increase": 1, "reduce": -1, "patient_left": 1, "patient_right": -1}
ARCHES: Final = ("upper", "lower")
FACE: Final = "facial_midline"


def named(clause: Clause) -> tuple[str, int] | None:
    """The measure of the format that a present value is of, and the sign it has there; ``None`` if it is none."""
    maker = _NAMES.get(clause.kind)
    return maker(clause) if maker and not (clause.teeth or clause.contacts or clause.side) else None


def _overjet(clause: Clause) -> tuple[str, int] | None:
    return {None: ("overjet", 1), "increased": ("overjet", 1), "reverse": ("overjet", -1)}.get(clause.of)


def _open_bite(clause: Clause) -> tuple[str, int] | None:
    """An anterior open bite is a negative overbite, by the definition of the measure."""
    return {"anterior": ("overbite", -1), "posterior": ("posterior-open-bite", 1)}.get(clause.of or "")


def _midline(clause: Clause) -> tuple[str, int] | None:
    """Only against the facial midline: the format measures against nothing else."""
    known = clause.arch in ARCHES and clause.ref == FACE
    if known and clause.of == "coincident" and clause.dir is None:
        return f"{clause.arch}-midline", 1
    return (f"{clause.arch}-midline", WAYS[clause.dir]) if known and clause.dir in WAYS and not clause.of else None


def _of_arch(what: str, *names: str | None) -> Callable[[Clause], tuple[str, int] | None]:
    return lambda one: (f"{one.arch}-{what}", 1) if one.arch in ARCHES and one.of in names else None


_NAMES: Final[dict[str, Callable[[Clause], tuple[str, int] | None]]] = {
    "overbite": lambda one: ("overbite", 1) if one.of is None else None,
    "overjet": _overjet,
    "openbite": _open_bite,
    "midline": _midline,
    "curve_of_spee": lambda one: ("curve-of-spee", 1) if one.arch in (None, "lower") and one.of is None else None,
    "crowding": _of_arch("crowding", None, "none"),
    "space": _of_arch("spacing", None, "spacing", "none"),
}
NOUGHT: Final = frozenset(("coincident", "none"))
"""Findings in words that are the value 0."""


def stated(clause: Clause) -> tuple[str, Decimal, str] | None:
    """Measure, signed value and unit of an exact present value."""
    found = named(clause)
    if found is None or clause.mode != "state" or clause.condition or clause.approx:
        return None
    if clause.minimum is None and clause.of in NOUGHT:
        return found[0], Decimal(0), MEASURE_KINDS[found[0]].unit
    unit = UNITS.get(clause.unit or "")
    if unit is None or clause.measure != "current" or clause.minimum is None or clause.minimum != clause.maximum:
        return None
    value = decimal(clause.minimum)
    return (found[0], found[1] * value, unit) if value is not None else None


def now(order: Order, name: str, unit: str) -> tuple[Decimal, tuple[int, ...]] | None:
    """The present value of a measure and the clauses that say it; ``None`` if not exactly one value is said."""
    values: dict[Decimal, list[int]] = {}
    for at, clause in order.of(tuple(_NAMES), ("state",)):
        found = stated(clause)
        if found and (found[0], found[2]) == (name, unit):
            values.setdefault(found[1], []).append(at)
    return (next(iter(values)), tuple(next(iter(values.values())))) if len(values) == 1 else None


def statement(facts: Facts, name: str, sign: int = 1, **members: object) -> tuple[Part, ...]:
    """The clause on a measure in the words of the format; ``sign`` is what its numbers are multiplied with."""
    makers = {"state": finding, "keep": keep, "do": goal, "prefer": goal, "limit": limit, "forbid": forbid}
    if facts.mode not in makers:
        raise NotCarried("force-does-not-fit")
    part = makers[facts.mode](facts, name, sign)
    return (part.with_(**members),)


def finding(facts: Facts, name: str, sign: int) -> Part:
    """A present value. Of one that is "about", the error is open."""
    if facts.clause.minimum is None and facts.clause.of in NOUGHT:
        facts.take("of")
        return Part("findings", {"measure": name, "value": 0, "unit": MEASURE_KINDS[name].unit}).assuming(
            "value", "none-is-nought"
        )
    amount = _amount(facts, name, "current")
    if amount.low is None or amount.low != amount.high:
        raise NotCarried("not-one-value")
    value = {"measure": name, "value": plain(sign * amount.low), "unit": amount.unit}
    return Part("findings", value, ("error",) if amount.about else ())


def keep(facts: Facts, name: str, _: int) -> Part:
    """A measure that is kept; how far it may change is said by an amount, never by the word alone."""
    if facts.clause.measure == "change":
        return _kept_within(facts, name)
    unit = _unit_of_keep(facts.order, name)
    value = {"strength": facts.strength, "measure": name} | ({"unit": unit} if unit else {})
    return Part("keep", value, ("within",) if unit else ("within", "unit"))


def _unit_of_keep(order: Order, name: str) -> str | None:
    """The one unit of the measure, or that in which the note measures it."""
    units = allowed_units(name)
    said = [unit for unit in units if now(order, name, unit)]
    return units[0] if len(units) == 1 else (said[0] if len(said) == 1 else None)


def goal(facts: Facts, name: str, sign: int) -> Part:
    """A value at the end; of a change it follows from the present value, if that is said exactly."""
    amount = _amount(facts, name, "target", "change")
    if amount.about:
        raise NotCarried("about")
    if facts.clause.measure == "change":
        return _changed(facts, name, amount)
    low, high = (amount.low, amount.high) if sign > 0 else (_negative(amount.high), _negative(amount.low))
    return reach(facts, name, low, high, amount)


def reach(facts: Facts, name: str, low: Decimal | None, high: Decimal | None, amount: Amount) -> Part:
    """A goal on a measure between bounds."""
    bounds = {"at_least": low, "at_most": high}
    said = {key: plain(bound) for key, bound in bounds.items() if bound is not None}
    part = Part("goals", {"strength": facts.strength, "measure": name, **said, "unit": amount.unit})
    return part.assuming("at_most", "bound-included") if amount.below else part


def _changed(facts: Facts, name: str, amount: Amount) -> Part:
    way = _way(facts)
    if way is None:
        raise NotCarried("which-way")
    before = now(facts.order, name, amount.unit)
    if before is None:
        raise NotCarried("change-without-present")
    ends = [None if bound is None else before[0] + way * bound for bound in (amount.low, amount.high)]
    low, high = ends if way > 0 else reversed(ends)
    return _from(reach(facts, name, low, high, amount), before[1])


def _from(part: Part, because: tuple[int, ...]) -> Part:
    members = [member for member in ("at_least", "at_most") if member in part.value]
    for member in members:
        part = part.assuming(member, "present-value-and-change")
    return Part(part.section, part.value, part.open, part.assumed, because)


def limit(facts: Facts, name: str, sign: int) -> Part:
    """A bound on the end, or on the change: either way it is a keep, one way only it is a goal."""
    if facts.clause.measure != "change":
        return goal(facts, name, sign)
    if facts.clause.dir is None:
        return _kept_within(facts, name)
    return _bounded(facts, name, _most(facts, name))


def _kept_within(facts: Facts, name: str) -> Part:
    """Changed by at most the amount, either way."""
    amount = _most(facts, name)
    if amount.high is None:
        raise NotCarried("not-one-value")
    value = {"strength": facts.strength, "measure": name, "within": plain(amount.high), "unit": amount.unit}
    part = Part("keep", value)
    return part.assuming("within", "bound-included") if amount.below else part


def _most(facts: Facts, name: str) -> Amount:
    """The greatest change. :raises NotCarried: when the clause says another amount, or about how much."""
    amount = _amount(facts, name, "change")
    if amount.about:
        raise NotCarried("about")
    if amount.low is not None:
        raise NotCarried("not-one-value")
    return amount


def forbid(facts: Facts, name: str, _: int) -> Part:
    """It must not grow, or not shrink: a goal at the present value."""
    units = [unit for unit in allowed_units(name) if now(facts.order, name, unit)]
    if len(units) != 1:
        raise NotCarried("change-without-present")
    return _bounded(facts, name, Amount(None, Decimal(0), units[0]))


def _bounded(facts: Facts, name: str, amount: Amount) -> Part:
    """Changed one way by at most the amount."""
    way = _way(facts)
    before = now(facts.order, name, amount.unit)
    if way is None or before is None or amount.high is None:
        raise NotCarried("change-without-present" if way else "which-way")
    end = before[0] + way * amount.high
    low, high = (None, end) if way > 0 else (end, None)
    return _from(reach(facts, name, low, high, amount), before[1])


def _amount(facts: Facts, name: str, *measures: str) -> Amount:
    amount = facts.amount(*measures)
    if amount is None:
        raise NotCarried("no-amount")
    if amount.unit not in allowed_units(name):
        raise NotCarried("unit-unknown")
    return amount


def _way(facts: Facts) -> int | None:
    way = facts.take("dir")
    if way is not None and way not in WAYS:
        raise NotCarried("which-way")
    return WAYS.get(way) if way else None


def _negative(value: Decimal | None) -> Decimal | None:
    return None if value is None else -value


def nought(facts: Facts, name: str, *, least: bool = True, most: bool = True) -> Part:
    """A goal of 0, from below, from above, or exactly."""
    bound = Decimal(0)
    return reach(facts, name, bound if least else None, bound if most else None, Amount(bound, bound, MM))
