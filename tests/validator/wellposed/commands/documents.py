"""One document for each way a check can end, by its verdict."""

import json

EXAMPLE = {
    "format": "wellposed/prescription",
    "version": "1.0",
    "notation": "ISO 3950",
    "id": "HR-2031",
    "revision": 1,
    "issued": "2026-03-04T09:30:00+01:00",
    "prescriber": {"id": "clinic-17/dr-2", "licence": "OR-55821", "jurisdiction": "EU"},
    "laboratory": {"id": "lab-4"},
    "patient": {"reference": "P-7F3A", "age_years": 24, "growth": "complete", "dentition": "permanent"},
    "teeth": {
        "upper": ["17", "16", "15", "14", "13", "12", "11", "21", "22", "23", "24", "25", "26", "27"],
        "lower": ["47", "46", "45", "44", "43", "42", "41", "31", "32", "33", "34", "35", "36", "37"],
    },
    "findings": [
        {"id": "f1", "measure": "overbite", "value": 2.5, "unit": "mm"},
        {"id": "f2", "measure": "lower-crowding", "value": 2.0, "unit": "mm"},
    ],
    "goals": [{"id": "g1", "strength": "must", "align": ["33", "32", "31", "41", "42", "43"], "because": ["f2"]}],
    "keep": [{"id": "k1", "strength": "must", "measure": "overbite", "within": 0.5, "unit": "mm"}],
    "allow": [
        {
            "id": "a1",
            "use": "enamel-reduction",
            "contacts": ["33-32", "32-31", "31-41", "41-42", "42-43"],
            "per_contact": 0.4,
            "in_all": 2.0,
            "unit": "mm",
        }
    ],
    "attachments": [{"id": "t1", "must_not": ["11", "21"]}, {"id": "t2", "otherwise": "laboratory-decides"}],
}
INTRUSION = {
    "id": "m1",
    "strength": "must",
    "teeth": ["12", "11", "21", "22"],
    "motion": "intrusion",
    "at_least": 1.8,
    "unit": "mm",
}


def written(document):
    return json.dumps(document, indent=1).encode()


DOCUMENTS = {
    "possible": written(EXAMPLE),
    "incomplete": written({name: value for name, value in EXAMPLE.items() if name != "allow"}),
    "contradictory": written(EXAMPLE | {"movements": [INTRUSION]}),
    "refused": written(EXAMPLE | {"colour": "blue", "revision": 0}),
    "unreadable": b'{"id": 1,\n "id": 2}',
}
