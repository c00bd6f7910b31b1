"""Documents to carry, and what is done with a bundle in the tests."""

import copy
import json

from tests.validator.wellposed.consistency.answering import review_document, setup_document

from wellposed.check import sound_document
from wellposed.digests import digest
from wellposed_converters.fhir.form import read, write

FULL = {
    "format": "wellposed/prescription",
    "version": "1.0",
    "notation": "ISO 3950",
    "id": "HR-2031",
    "revision": 2,
    "replaces": "0" * 64,
    "issued": "2026-03-04T09:30:00+01:00",
    "prescriber": {"id": "clinic-17/dr-2", "licence": "OR-55821", "jurisdiction": "EU"},
    "laboratory": {"id": "lab-4", "needed_by": "2026-04-01"},
    "treat": {"arches": "both"},
    "patient": {
        "reference": "P-7F3A",
        "age_years": 24.5,
        "sex": "female",
        "growth": "complete",
        "dentition": "permanent",
    },
    "teeth": {
        "upper": ["17", "16", "15", "14", "13", "12", "11", "21", "22", "23", "24", "25", "26", "27"],
        "lower": ["47", "46", "45", "44", "43", "42", "41", "31", "32", "33", "34", "35", "36", "37"],
        "particulars": [
            {"tooth": "26", "states": ["crown", "root-filled"], "words": "temporary crown"},
            {"tooth": "47", "states": ["large-filling"]},
        ],
    },
    "conditions": [{"condition": "thin-gingiva", "teeth": ["31", "41"], "words": "lower front"}],
    "records": [
        {
            "kind": "intraoral-scan",
            "date": "2026-03-02",
            "sha256": "1" * 64,
            "name": "scan of the lower arch",
            "arch": "lower",
        }
    ],
    "findings": [
        {
            "id": "f1",
            "measure": "overbite",
            "value": 3.5,
            "unit": "mm",
            "error": 0.5,
            "method": "gauge",
            "date": "2026-03-01",
        },
        {"id": "f2", "measure": "lower-crowding", "value": 2, "unit": "mm", "contacts": ["32-31", "31-41"]},
        {"id": "f3", "tooth_measure": "tooth-width", "values": {"31": 5.4, "41": 5.35}, "unit": "mm", "error": 0.1},
        {"id": "f4", "measure": "overjet", "value": 2.5, "unit": "mm", "jaw_position": "intercuspal"},
    ],
    "problems": [
        {"id": "p1", "problem": "crowding", "because": ["f2"], "arch": "lower", "grade": "mild"},
        {"id": "p2", "problem": "rotated-teeth", "because": ["p1"], "teeth": ["31"], "words": "turned inwards"},
    ],
    "goals": [
        {
            "id": "g1",
            "strength": "must",
            "align": ["33", "32", "31", "41", "42", "43"],
            "because": ["p1"],
            "overcorrection": {"value": 0.2, "unit": "mm"},
        },
        {"id": "g2", "strength": "prefer", "measure": "overbite", "at_least": 2, "at_most": 3.25, "unit": "mm"},
    ],
    "keep": [{"id": "k1", "strength": "must", "measure": "overjet", "within": 0.5, "unit": "mm"}],
    "movements": [
        {
            "id": "m1",
            "strength": "must",
            "teeth": ["31"],
            "motion": "labial",
            "at_least": 0.5,
            "at_most": 1,
            "unit": "mm",
        }
    ],
    "allow": [
        {
            "id": "a1",
            "use": "enamel-reduction",
            "contacts": ["32-31", "31-41"],
            "per_contact": 0.4,
            "in_all": 0.8,
            "unit": "mm",
        },
        {"id": "a2", "use": "class-ii-elastics", "sides": ["right", "left"]},
    ],
    "exclude": [{"id": "x1", "means": "extraction"}],
    "expect": [],
    "attachments": [{"id": "t1", "must_not": ["11", "21"]}, {"id": "t2", "otherwise": "laboratory-decides"}],
    "staging": {
        "id": "s1",
        "strength": "must",
        "largest_steps": [{"variable": "rotation", "amount": 1.5, "unit": "deg", "teeth": ["31"]}],
        "wear_interval_days": 14,
        "most_aligners": 20,
        "order": [{"id": "o1", "first": "a1", "relation": "before", "then": "g1"}],
    },
    "appliance": [{"id": "b1", "part": "bite-plane", "arch": "upper", "size": 1.5, "unit": "mm"}],
    "process": [{"id": "c1", "step": "approval-before-making", "date": "2026-03-20", "before": "g1"}],
    "retention": [{"id": "r1", "arch": "lower", "retainer": "bonded", "teeth": ["33", "43"]}],
    "notes": [{"text": "Thank you.\nThe patient travels in May.", "about": ["g1"]}],
    "extensions": {"org.example.colour": {"critical": False, "content": {"shade": [1, None]}}},
}
PLAIN = {name: value for name, value in FULL.items() if name != "extensions"}
"""The same without what FHIR has no place for."""

RECEIPT = {
    "format": "wellposed/receipt",
    "version": "1.0",
    "id": "R-9",
    "revision": 1,
    "issued": "2026-03-05T08:00:00Z",
    "answers": {"id": "HR-2031", "revision": 2, "sha256": "2" * 64},
    "outcome": "returned",
}
DOCUMENTS = {"full": FULL, "plain": PLAIN, "setup": setup_document(), "review": review_document(), "receipt": RECEIPT}


def made(document):
    """The document as its model; it must be sound."""
    found = sound_document(json.dumps(document).encode())
    assert not hasattr(found, "findings") or hasattr(found, "issued"), found
    return found


def bundle_of(document):
    """The bundle as it is written, parsed."""
    return json.loads(write([made(document)]).data)


def carried(bundle):
    """What reading a parsed bundle gives."""
    (found,) = read(json.dumps(bundle).encode())
    return found


def without_original(bundle):
    """The bundle with the projection alone."""
    left = copy.deepcopy(bundle)
    left["entry"] = [one for one in left["entry"] if one["resource"]["resourceType"] != "DocumentReference"]
    return left


def resource(bundle, kind, number=0):
    """A resource of a type."""
    return [one["resource"] for one in bundle["entry"] if one["resource"]["resourceType"] == kind][number]


def places(value, at=""):
    """Every pointer of a JSON value with what stands there, containers before what they hold."""
    yield at, value
    pairs = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for step, inner in pairs:
        yield from places(inner, f"{at}/{step}")


def at(value, pointer):
    """What stands at a place."""
    for step in pointer.split("/")[1:]:
        value = value[int(step)] if isinstance(value, list) else value[step]
    return value


def changed(value, pointer, *new):
    """A copy with another value there, or with nothing there; what is not on the way is shared."""
    _, first, *rest = pointer.split("/")
    copied = copy.copy(value)
    step = int(first) if isinstance(value, list) else first
    if rest:
        copied[step] = changed(value[step], "/" + "/".join(rest), *new)
    elif new:
        copied[step] = new[0]
    else:
        del copied[step]
    return copied


def taken_out(value, pointer):
    """A copy without that place."""
    return changed(value, pointer)


def same(one, other):
    """Whether two documents are the same, digest and all."""
    return one == other and digest(one) == digest(other)
