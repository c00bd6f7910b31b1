"""What tells who somebody is, planted wherever an order or a review has room for words, names and files."""

import json
from itertools import count

from tests.validator.wellposed.commands.documents import EXAMPLE
from tests.validator.wellposed.consistency.answering import review_document

NAMES = ("Zzyzxandra", "Qwimbley", "Vroxhilde", "Mxylotta", "Pfnurgen")


def canaries():
    """Names, telephone numbers, notes and names of files, no two alike; the letters of none stand in the program."""
    number = count(7_301_551)
    for name in NAMES:
        yield f"Mrs {name} Canary"
        yield f"+44 20 {next(number)}"
        yield f"note of {name}: shy of needles"
        yield f"{name}_Canary_born_1984.stl"
        yield f"{name}-Canary-1984"


CANARIES = tuple(canaries())
TRACES = (*NAMES, *(one.removeprefix("+44 20 ") for one in CANARIES if one.startswith("+")), "needles", "Canary")
"""What is looked for: any part of a canary, so that a cut or a changed one is found as well."""


def planted():
    """An order that is sound, with every canary in it but those that only a fault makes room for."""
    words = iter([one for one in CANARIES if not one.endswith(("-1984", ".stl"))])
    ids = iter([one for one in CANARIES if one.endswith("-1984")])
    files = [one for one in CANARIES if one.endswith(".stl")]
    clauses = {
        "process": [{"id": f"s{number}", "step": "other", "words": next(words)} for number in range(3)],
        "findings": [{**EXAMPLE["findings"][0], "method": next(words)}, EXAMPLE["findings"][1]],
    }
    people = {
        "patient": {**EXAMPLE["patient"], "reference": next(ids)},
        "prescriber": {"id": next(ids), "licence": next(ids)},
    }
    records = [{"kind": "model-scan", "date": "2026-03-01", "name": name} for name in files]
    extension = {"org.example.case": {"critical": False, "content": {next(ids): next(ids)}}}
    return (
        EXAMPLE
        | clauses
        | people
        | {"records": records, "extensions": extension}
        | {"notes": [{"text": one} for one in words]}
    )


ORDER = planted()
REVIEW = review_document(
    reviewer={"id": CANARIES[4], "licence": CANARIES[9]}, notes=[{"text": one} for one in CANARIES]
)
assert all(one in json.dumps(ORDER, ensure_ascii=False) for one in CANARIES)

MISPLACED = {
    "a name twice": '{"#": 1, "#": 2}'.replace("#", CANARIES[0]),
    "a member nobody knows": json.dumps({**ORDER, CANARIES[5]: 1}),
    "a name for a motion": json.dumps({**ORDER, "movements": [{"id": "m1", "motion": CANARIES[0]}]}),
    "a name for a tooth": json.dumps({**ORDER, "teeth": {"upper": [CANARIES[1]], "lower": [CANARIES[2]]}}),
    "a name for a unit": json.dumps({**ORDER, "findings": [{**ORDER["findings"][0], "unit": CANARIES[3]}]}),
}
"""Canaries where the format has names of members and terms of its own. The check quotes what it does not know there, as
nobody could mend it otherwise; the intake does not."""

WRONG = {
    "not JSON": json.dumps(ORDER).replace(",", ";", 1),
    "cut off": json.dumps(ORDER)[:-300],
    "a number of the wrong form": json.dumps(ORDER).replace("24", "2.400"),
    "a text for a list": json.dumps({**ORDER, "notes": CANARIES[2]}),
    "a name for a reference": json.dumps({**ORDER, "patient": {"reference": CANARIES[0]}}),
    "a file for a licence": json.dumps({**ORDER, "prescriber": {"id": "x", "licence": CANARIES[3] * 9}}),
    "a note without its text": json.dumps({**ORDER, "notes": [{"txet": CANARIES[2]}]}),
    "for another laboratory": json.dumps({**ORDER, "laboratory": {"id": CANARIES[4]}}),
    "a name for a reason": json.dumps({**ORDER, "keep": [{**ORDER["keep"][0], "because": [CANARIES[6]]}]}),
    "a name for the kind": json.dumps({**ORDER, "format": CANARIES[7]}),
    "a name for an id": json.dumps({**ORDER, "id": CANARIES[8] * 9}),
    "a name for a time": json.dumps({**ORDER, "issued": CANARIES[10]}),
    "a name for an amount": json.dumps({**ORDER, "keep": [{**ORDER["keep"][0], "within": CANARIES[11]}]}),
    "a day that is none": json.dumps({**ORDER, "records": [{**ORDER["records"][0], "date": "2026-02-31"}]}),
}
"""Faulty documents, each full of canaries."""
