"""The data of ``plausible.toml``: units not written, amounts needed, amounts that are likely slips."""

from __future__ import annotations

from functools import cache
from typing import Any

from wellposed_converters.text.clause import Clause
from wellposed_converters.text.tables import read_table


@cache
def _data() -> dict[str, Any]:
    return read_table(__package__, "plausible.toml")


@cache
def listed(table: str, key: str) -> frozenset[str]:
    """A list of the file as a set."""
    return frozenset(_data()[table][key])


def crown_heights() -> tuple[float, float]:
    """The least and greatest height of a lower incisor's crown, in millimetres."""
    found = _data()["crown_height"]
    return found["least"], found["most"]


def unit_of(kind: str) -> str | None:
    """The unit of a kind's amounts where none is written (R6); None where it must be asked."""
    return next((unit for unit, kinds in _data()["unit"].items() if kind in kinds), None)


def overbite_unit(least: float, most: float) -> str | None:
    """The unit of an overbite between these numbers; None where both are possible."""
    bounds = _data()["overbite"]
    if most < bounds["mm_below"]:
        return "mm"
    return "pct" if least > bounds["pct_above"] else None


def surely_of_change(kind: str, amount: float, unit: str | None) -> bool:
    """Whether "keep it within" this amount can only mean how far it changes, as no such value is wanted at the end."""
    written = unit or (overbite_unit(amount, amount) if kind == "overbite" else unit_of(kind))
    rows = [row for row in _data()["kept"] if kind in row["kinds"] and written == row["unit"]]
    return any(amount <= row["most"] for row in rows)


def most_of(clause: Clause) -> float | None:
    """The greatest plausible amount of a clause like this one; None where nothing is known of it."""
    for row in _data()["most"]:
        if clause.kind in row["kinds"] and clause.measure in row["measures"] and clause.unit == row["unit"]:
            most: float = row["most"]
            return most
    return None
