"""What was measured, in the format's own form: findings for a prescription, movement tables for a setup.

The format writes at most two decimals, so every amount is rounded to them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from wellposed import norms
from wellposed.landmarks.result import PointsTaken, Taken
from wellposed.reading.limits import MOST_DECIMALS
from wellposed.vocabulary.motions import VARIABLE_UNITS, VARIABLES
from wellposed.vocabulary.units import PERCENT

_METHOD = "from landmark points"
_TOUCHING = "space.touching"


def findings(taken: PointsTaken) -> list[dict[str, Any]]:
    """Every measure taken before, f1, f2, … in their order.

    Overbite is given in mm; its percentage follows from the crown height. Crowding and spacing name their contacts.
    """
    made = [*_of_mouth(taken), *_of_teeth(taken)]
    return [{"id": f"f{number}", **one} for number, one in enumerate(made, 1)]


def _of_mouth(taken: PointsTaken) -> Iterator[dict[str, Any]]:
    for one in taken.measures:
        value = one.values[0]
        if value is None or one.unit == PERCENT:
            continue
        where = {"contacts": contacts} if (contacts := _contacts(taken, one)) else {}
        yield {"measure": one.measure, "value": rounded(value), "unit": one.unit, **where, "method": _METHOD}


def _contacts(taken: PointsTaken, one: Taken) -> list[str]:
    """Where an arch's crowding or spacing is."""
    arch, _, what = one.measure.partition("-")
    if what not in ("crowding", "spacing"):
        return []
    sign, quadrants = (1 if what == "spacing" else -1), ("1256" if arch == "upper" else "3478")
    room = taken.room.moments[0]
    return [name for name, at in room.items() if name[0] in quadrants and sign * at > norms.value(_TOUCHING)]


def _of_teeth(taken: PointsTaken) -> Iterator[dict[str, Any]]:
    for one in taken.of_teeth:
        if one.values[0]:
            yield {"tooth_measure": one.measure, "values": _table(one.values[0]), "unit": one.unit, "method": _METHOD}


def movement_tables(taken: PointsTaken) -> list[dict[str, Any]]:
    """One table a variable, of the teeth whose movement can be told; empty if there are none."""
    told = [one for one in taken.movements if one.values]
    if not told:
        return []
    rows = {name: _table({one.tooth: one.values[name] for one in told}) for name in VARIABLES}
    return [{"variable": name, "unit": VARIABLE_UNITS[name], "values": row} for name, row in rows.items()]


def _table(values: Mapping[str, float]) -> dict[str, float]:
    return {tooth: rounded(value) for tooth, value in values.items()}


def rounded(value: float) -> float:
    """To the decimals of the format, and never minus nothing."""
    return round(value, MOST_DECIMALS) + 0.0
