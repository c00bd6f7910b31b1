"""Numbers, amounts and values of measures: two decimals at most, and sides in words, never by a sign."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from math import ceil, floor

from wellposed.render.sides import direction, meaning, sided

__all__ = [
    "UNITS",
    "amount",
    "bounded",
    "change",
    "changes",
    "down",
    "ends",
    "number",
    "rounded",
    "up",
    "value",
    "values",
]

UNITS = {
    "mm": " mm",
    "deg": "°",
    "percent": " %",
    "1": "",
    "mm/mm": " mm a mm",
    "deg/mm": "° a mm",
    "mm/deg": " mm a degree",
    **{unit: f" {unit}" for unit in ("aligners", "years", "months", "days", "hours")},
}
_COUNTED = ("aligners", "years", "months", "days", "hours")


def rounded(size: float) -> float:
    """To hundredths, without a minus before nought."""
    return round(size, 2) + 0.0


def number(size: float) -> str:
    """At most two decimals, at least one: ``1.3``, ``0.86``, ``2.0``."""
    text = f"{rounded(size):.2f}".rstrip("0")
    return f"{text}0" if text.endswith(".") else text


def amount(size: float, unit: str) -> str:
    """A size with its unit, a space between but for degrees: ``1.3 mm``, ``5.0°``, ``20 aligners``."""
    return (f"{size:g}" if unit in _COUNTED else number(size)) + UNITS[unit]


def up(size: float) -> float:
    """The next hundredth that is not less."""
    return ceil(size * 100 - 1e-4) / 100


def down(size: float) -> float:
    """The next hundredth that is not more."""
    return floor(size * 100 + 1e-4) / 100


# values of measures


def value(name: str, size: float, unit: str) -> str:
    """A value of a measure: ``2.5 mm``, ``-1.0 mm (an open bite)``, ``1.0 mm to the patient's right``."""
    size = rounded(size)
    if size and sided(name):
        return f"{amount(abs(size), unit)} {direction(name, size)}"
    told = "" if size > 0 else meaning(name, size)
    return amount(size, unit) + (f" ({told})" if told else "")


def ends(name: str, low: float, high: float, unit: str) -> tuple[str, str]:
    """Two values of a measure; what is so of both stands with the second: ``0.5``, ``1.0 mm towards Class II``."""
    if sided(name) and rounded(low) != rounded(high):
        return _ends(low, high, unit, partial(direction, name))
    told = value(name, low, unit), value(name, high, unit)
    plain = told == (amount(low, unit), amount(high, unit))
    return (number(low), told[1]) if plain else told


def values(name: str, low: float, high: float, unit: str) -> str:
    """Between two values, or at one: ``2.0 to 3.0 mm``, ``0.0 to 0.5 mm to the patient's right``."""
    if rounded(low) == rounded(high):
        return value(name, low, unit)
    return (
        _between(low, high, unit, partial(direction, name)) if sided(name) else " to ".join(ends(name, low, high, unit))
    )


def bounded(name: str, low: float | None, high: float | None, unit: str) -> str:
    """Bounds on the value of a measure that has sides: ``no further than 0.5 mm to the patient's right``."""
    if low is not None and high is not None:
        return _within(name, low, high, unit)
    end, sign = (low, 1) if low is not None else (high or 0.0, -1)
    if not rounded(end):
        return f"{amount(0.0, unit)}, or {direction(name, sign)}"
    return f"{'at least' if end * sign > 0 else 'no further than'} {value(name, end, unit)}"


def _within(name: str, low: float, high: float, unit: str) -> str:
    if rounded(low) != -rounded(high):
        return values(name, low, high, unit)
    middle = meaning(name, 0.0).removeprefix("in ")
    return f"at most {amount(high, unit)} from {middle}" if rounded(high) else amount(0.0, unit)


def change(name: str, size: float, unit: str) -> str:
    """A change of a measure: ``1.3 mm less``, ``0.5 mm to the patient's left``, ``no change``."""
    return changes(name, size, size, unit)


def changes(name: str, low: float, high: float, unit: str) -> str:
    """Between two changes: ``0.8 to 1.0 mm more``, ``between 0.5 mm less and 1.0 mm more``."""
    return _between(low, high, unit, partial(direction, name)) if rounded(low) or rounded(high) else "no change"


def _between(low: float, high: float, unit: str, way: Callable[[float], str]) -> str:
    """Sizes with the way they go: once where it is the same for both."""
    if rounded(low) == rounded(high):
        return f"{amount(abs(low), unit)} {way(low)}"
    first, second = _ends(low, high, unit, way)
    return f"between {first} and {second}" if rounded(low) < 0 < rounded(high) else f"{first} to {second}"


def _ends(low: float, high: float, unit: str, way: Callable[[float], str]) -> tuple[str, str]:
    if rounded(low) < 0 < rounded(high):
        return f"{amount(abs(low), unit)} {way(low)}", f"{amount(high, unit)} {way(high)}"
    near, far = sorted((low, high), key=abs)
    return number(abs(near)), f"{amount(abs(far), unit)} {way(far)}"
