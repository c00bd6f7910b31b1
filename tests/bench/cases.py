"""Prescriptions the measurements are taken on; invented."""

import json

UPPER = [f"1{n}" for n in range(7, 0, -1)] + [f"2{n}" for n in range(1, 8)]
LOWER = [f"4{n}" for n in range(7, 0, -1)] + [f"3{n}" for n in range(1, 8)]
BASE = {
    "format": "wellposed/prescription",
    "version": "1.0",
    "notation": "ISO 3950",
    "id": "BENCH-1",
    "revision": 1,
    "issued": "2026-03-04T09:30:00+01:00",
    "prescriber": {"id": "clinic-1/dr-1", "licence": "L-1", "jurisdiction": "EU"},
    "laboratory": {"id": "lab-1", "needed_by": "2026-04-01"},
    "treat": {"arches": "both"},
    "patient": {"reference": "P-1", "age_years": 31, "growth": "complete", "dentition": "permanent"},
    "teeth": {"upper": UPPER, "lower": LOWER},
}


def measured(number, measure, value, unit="mm"):
    return {"id": f"f{number}", "measure": measure, "value": value, "unit": unit}


def ordinary():
    """A sound plan as they come: crowding in both arches, measures kept, means stated."""
    return BASE | {
        "findings": [
            measured(1, "upper-crowding", 2.0),
            measured(2, "lower-crowding", 3.0),
            measured(3, "overbite", 3.0),
            measured(4, "overjet", 3.0),
            measured(5, "lower-inter-canine-width", 26.0),
        ],
        "goals": [
            {"id": "g1", "strength": "must", "align": ["13", "12", "11", "21", "22", "23"], "because": ["f1"]},
            {"id": "g2", "strength": "must", "align": ["43", "42", "41", "31", "32", "33"], "because": ["f2"]},
        ],
        "keep": [
            {"id": "k1", "strength": "must", "measure": "overbite", "within": 1.0, "unit": "mm"},
            {"id": "k2", "strength": "must", "measure": "overjet", "within": 1.0, "unit": "mm"},
            {"id": "k3", "strength": "must", "measure": "lower-inter-canine-width", "within": 1.0, "unit": "mm"},
        ],
        "allow": [
            {"id": "a1", "use": "enamel-reduction", "arch": "upper", "per_contact": 0.4, "in_all": 2.0, "unit": "mm"},
            {"id": "a2", "use": "enamel-reduction", "arch": "lower", "per_contact": 0.4, "in_all": 2.5, "unit": "mm"},
            {"id": "a3", "use": "incisor-advance", "arch": "lower", "up_to": 1.0, "unit": "mm"},
        ],
        "attachments": [{"id": "t1", "must_not": ["11", "21"]}, {"id": "t2", "otherwise": "laboratory-decides"}],
    }


def contradictory():
    """Two conflicts of different kinds, with all their ways out."""
    return ordinary() | {
        "keep": [{"id": "k1", "strength": "must", "measure": "overbite", "within": 0.5, "unit": "mm"}],
        "movements": [
            {"id": "m1", "strength": "must", "teeth": ["12", "11", "21", "22"], "motion": "intrusion",
             "at_least": 1.8, "at_most": 2.2, "unit": "mm"},
        ],
        "allow": [{"id": "a1", "use": "enamel-reduction", "arch": "upper", "per_contact": 0.4, "in_all": 2.0,
                   "unit": "mm"},
                  {"id": "a3", "use": "incisor-advance", "arch": "lower", "up_to": 1.0, "unit": "mm"}],
    }  # fmt: skip


def of_clauses(number):
    """A sound plan of ``number`` clauses: small movements allowed to one tooth after another."""
    motions = ["mesial", "distal", "buccal", "lingual", "extrusion", "intrusion"]
    teeth = UPPER + LOWER
    movements = [
        {"id": f"m{n}", "strength": "must", "teeth": [teeth[n % 28]], "motion": motions[n // 28 % 6],
         "at_most": 0.5, "unit": "mm"}
        for n in range(number)
    ]  # fmt: skip
    findings = [measured(1, "upper-crowding", 0.0), measured(2, "lower-crowding", 0.0)]
    return BASE | {"findings": findings, "movements": movements}


def as_bytes(document):
    return json.dumps(document, indent=1).encode()
