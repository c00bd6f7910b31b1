"""Documents for the tests of the kinematics, built from a few words."""

import json

UPPER = [f"1{n}" for n in range(7, 0, -1)] + [f"2{n}" for n in range(1, 8)]
LOWER = [f"4{n}" for n in range(7, 0, -1)] + [f"3{n}" for n in range(1, 8)]
BASE = {
    "format": "wellposed/prescription",
    "version": "1.0",
    "notation": "ISO 3950",
    "id": "K-1",
    "revision": 1,
    "issued": "2026-03-04T09:30:00+01:00",
    "prescriber": {"id": "clinic-1"},
    "laboratory": {"id": "lab-1"},
    "patient": {"reference": "P-1"},
    "teeth": {"upper": UPPER, "lower": LOWER},
}


def document(**sections):
    return BASE | sections


def as_bytes(**sections):
    return json.dumps(document(**sections)).encode()


def found(ident, measure, value, unit="mm", **more):
    return {"id": ident, "measure": measure, "value": value, "unit": unit, **more}


def align(ident, teeth):
    return {"id": ident, "strength": "must", "align": teeth}


def reach(ident, measure, low=None, high=None, unit="mm"):
    bounds = {"at_least": low, "at_most": high}
    stated = {name: value for name, value in bounds.items() if value is not None}
    return {"id": ident, "strength": "must", "measure": measure, "unit": unit, **stated}


def move(ident, teeth, motion, low=None, high=None, unit="mm"):
    stated = {name: value for name, value in (("at_least", low), ("at_most", high)) if value is not None}
    return {"id": ident, "strength": "must", "teeth": teeth, "motion": motion, "unit": unit, **stated}


def keep(ident, measure, within, unit="mm"):
    return {"id": ident, "strength": "must", "measure": measure, "within": within, "unit": unit}


def allow(ident, use, **more):
    return {"id": ident, "use": use, "unit": "mm", **more}


def extract(ident, *teeth):
    return {"id": ident, "use": "extraction", "teeth": list(teeth)}
