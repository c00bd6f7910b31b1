"""What landmark points tell, as JSON, described by ``spec/schema/1/points.schema.json``; and ready to be pasted."""

from __future__ import annotations

import json
from typing import Any

from wellposed.landmarks.documents import findings, movement_tables
from wellposed.landmarks.result import Moved, PointsTaken, Taken
from wellposed.measure import PointMeasures
from wellposed.render.json_report import CLOSING, dumped
from wellposed.render.measures_json import derived_object, norm_object

__all__ = ["findings_json", "movements_json", "points_json"]

_DECIMALS = 6


def points_json(measured: PointMeasures, name: str) -> str:
    """All of it; ``name`` is the base name of the file. Amounts to six decimals, those for documents to two."""
    taken = measured.taken
    keys = dict.fromkeys(("space.touching", *(key for one in measured.derived for key in one.keys)))
    whole = {
        "document": {"name": name},
        "moments": list(taken.moments),
        "teeth": taken.teeth,
        "measures": [_measure(one, taken.moments) for one in taken.measures],
        "tooth_measures": [
            {"name": one.measure, "unit": one.unit, "values": _by_moment(taken, [_rounded(v) for v in one.values])}
            for one in taken.of_teeth
        ],
        "room": _by_moment(taken, [_rounded(moment) for moment in taken.room.moments]),
        "movements": [_moved(one) for one in taken.movements],
        "look_again": [
            {"reason": one.reason, "where": one.where, "moment": one.moment, "amount": _six(one.amount)}
            for one in taken.doubts
        ],
        "no_landmark_for": list(taken.untouched),
        "derived": [derived_object(one) for one in measured.derived],
        "norms": [norm_object(key) for key in keys],
        "for_prescription": {"findings": findings(taken)},
        "for_setup": {"movements": movement_tables(taken)},
        **CLOSING,
        "format": "wellposed/points",
    }
    return dumped(whole, indent=2)


def findings_json(measured: PointMeasures) -> str:
    """The section ``findings`` of a prescription."""
    return _section({"findings": findings(measured.taken)})


def movements_json(measured: PointMeasures) -> str:
    """The section ``movements`` of a setup."""
    return _section({"movements": movement_tables(measured.taken)})


def _section(section: dict[str, Any]) -> str:
    return json.dumps(section, indent=2) + "\n"


def _measure(one: Taken, moments: tuple[str, ...]) -> dict[str, Any]:
    told = zip(moments, one.values, one.lacks, strict=True)
    return {
        "name": one.measure,
        "unit": one.unit,
        "values": {
            moment: {"value": _six(value), "lacks": [{"where": lack.where, "what": lack.what} for lack in lacks]}
            for moment, value, lacks in told
        },
        "change": _six(one.change),
    }


def _moved(one: Moved) -> dict[str, Any]:
    return {
        "tooth": one.tooth,
        "why_not": one.why,
        "values": _rounded(one.values),
        "spread_per_tenth": _rounded(one.spread),
        "points": one.points,
        "residual": _six(one.residual),
        "shift": None if one.shift is None else [_six(part) for part in one.shift],
        "turned": _six(one.turned),
    }


def _by_moment(taken: PointsTaken, values: list[dict[str, Any]]) -> dict[str, Any]:
    return dict(zip(taken.moments, values, strict=True))


def _rounded(values: Any) -> dict[str, Any]:
    return {name: _six(value) for name, value in values.items()}


def _six(value: float | None) -> float | None:
    return None if value is None else round(value, _DECIMALS) + 0.0
