"""One revision against those before it: each rule alone, and at its boundary."""

from hashlib import sha256

import pytest
import rfc8785
from tests.validator.wellposed.consistency.ordinary import allowed, document, found, must
from tests.validator.wellposed.rules.charts import Case, pointers, table

from wellposed.rules.revisions import RULES

FIRST = sha256(rfc8785.dumps(document())).hexdigest()


def later(members, *earlier):
    """A revision after these, numbered as they come."""
    numbered = [{"revision": n, "replaces": "ab" * 32 if n > 1 else None, **one} for n, one in enumerate(earlier, 1)]
    return {"revision": len(earlier) + 1, "replaces": "ab" * 32, **members, "earlier": numbered}


CHAIN = (
    Case("other-patient", "the same", later({}, {}, {})),
    Case("other-patient", "another now", later({"patient": {"reference": "P-2"}}, {}), ("/patient/reference",)),
    Case(
        "other-patient", "another at first", later({}, {"patient": {"reference": "P-2"}}, {}), ("/patient/reference",)
    ),
    Case("other-patient", "another age", later({"patient": {"reference": "P-7F3A", "age_years": 31}}, {})),
    Case("other-patient", "nothing before", {}),
    Case("replaces-another-document", "the one before", later({"replaces": FIRST}, {})),
    Case("replaces-another-document", "some other", later({"replaces": "0" * 64}, {}), ("/replaces",)),
    Case(
        "replaces-another-document", "the one before changed", later({"replaces": FIRST}, {"goals": []}), ("/replaces",)
    ),
    Case("replaces-another-document", "the one before is not at hand", {**later({}, {}), "revision": 3}),
    Case("replaces-another-document", "nothing before", {"revision": 2, "replaces": "0" * 64}),
    Case("revision-out-of-order", "the next", later({"issued": "2026-03-04T09:30:01+01:00"}, {})),
    Case("revision-out-of-order", "at the same moment", later({}, {})),
    Case("revision-out-of-order", "the same moment elsewhere", later({"issued": "2026-03-04T08:30:00Z"}, {})),
    Case("revision-out-of-order", "a second before", later({"issued": "2026-03-04T08:29:59Z"}, {}), ("/issued",)),
    Case("revision-out-of-order", "the same number", {**later({}, {}, {}), "revision": 2}, ("/revision",)),
    Case("revision-out-of-order", "one is missing between", {**later({}, {}), "revision": 4}),
    Case("revision-out-of-order", "nothing before", {}),
)
KEEP = must("k1", hold=["16", "26"])
BITE = must("g1", measure="overbite", at_most=3, unit="mm")
DROPPED = (
    Case("clause-dropped-since-last", "gone", later({}, {"keep": [KEEP]}), ("",)),
    Case("clause-dropped-since-last", "there", later({"keep": [KEEP]}, {"keep": [KEEP]})),
    Case("clause-dropped-since-last", "there, changed", later({"keep": [{**KEEP, "hold": ["16"]}]}, {"keep": [KEEP]})),
    Case("clause-dropped-since-last", "there by another id", later({"keep": [{**KEEP, "id": "k9"}]}, {"keep": [KEEP]})),
    Case(
        "clause-dropped-since-last",
        "there by another id, other amounts",
        later({"goals": [{**BITE, "id": "g9", "at_most": 2.5}]}, {"goals": [BITE]}),
    ),
    Case(
        "clause-dropped-since-last",
        "there by another id, its contact the other way round",
        later({"goals": [must("g9", close=["12-11"])]}, {"goals": [must("g1", close=["11-12"])]}),
    ),
    Case(
        "clause-dropped-since-last",
        "named in a note",
        later({"notes": [{"text": "Of k1 we let go."}]}, {"keep": [KEEP]}),
    ),
    Case(
        "clause-dropped-since-last",
        "another id in a note",
        later({"notes": [{"text": "Of k12 we let go."}]}, {"keep": [KEEP]}),
        ("",),
    ),
    Case("clause-dropped-since-last", "gone before the last", later({}, {"keep": [KEEP]}, {})),
    Case(
        "clause-dropped-since-last",
        "a goal that is reached",
        later({"findings": [found("f1", "overbite", 3)]}, {"goals": [BITE]}),
    ),
    Case(
        "clause-dropped-since-last",
        "a goal that is not",
        later({"findings": [found("f1", "overbite", 3.01)]}, {"goals": [BITE]}),
        ("",),
    ),
    Case(
        "clause-dropped-since-last", "a step that is done", later({}, {"process": [{"id": "q1", "step": "new-scan"}]})
    ),
    Case(
        "clause-dropped-since-last",
        "turned round",
        later(
            {"exclude": [{"id": "x1", "means": "widening"}]},
            {"allow": [allowed("a1", "widening", arch="upper", up_to=2, unit="mm")]},
        ),
    ),
    Case("clause-dropped-since-last", "nothing before", {}),
)
REDUCTION = allowed("a1", "enamel-reduction", contacts=["42-41", "41-31"], per_contact=0.4, unit="mm")
NO_REDUCTION = {"id": "x1", "means": "enamel-reduction"}


def bite(value, **bounds):
    return {
        "findings": [found("f1", "overbite", value)],
        "goals": [must("g1", measure="overbite", unit="mm", **bounds)],
    }


def width(value, **bounds):
    measure = "upper-inter-canine-width"
    return {"findings": [found("f1", measure, value)], "goals": [must("g1", measure=measure, unit="mm", **bounds)]}


TURNED = (
    Case(
        "instruction-reversed",
        "excluded, now allowed",
        later({"allow": [REDUCTION]}, {"exclude": [NO_REDUCTION]}),
        ("/allow/0",),
    ),
    Case(
        "instruction-reversed",
        "allowed, now excluded",
        later({"exclude": [NO_REDUCTION]}, {"allow": [REDUCTION]}),
        ("/exclude/0",),
    ),
    Case(
        "instruction-reversed",
        "excluded in the other arch",
        later({"allow": [REDUCTION]}, {"exclude": [{**NO_REDUCTION, "arch": "upper"}]}),
    ),
    Case(
        "instruction-reversed",
        "excluded on other teeth",
        later({"allow": [REDUCTION]}, {"exclude": [{**NO_REDUCTION, "teeth": ["46"]}]}),
    ),
    Case(
        "instruction-reversed",
        "another means excluded",
        later({"allow": [REDUCTION]}, {"exclude": [{"id": "x1", "means": "extraction"}]}),
    ),
    Case(
        "instruction-reversed",
        "an attachment refused",
        later(
            {"attachments": [{"id": "t1", "must_not": ["13"]}]}, {"attachments": [{"id": "t1", "must": ["13", "23"]}]}
        ),
        ("/attachments/0",),
    ),
    Case(
        "instruction-reversed",
        "an attachment on another tooth",
        later({"attachments": [{"id": "t1", "must_not": ["14"]}]}, {"attachments": [{"id": "t1", "must": ["13"]}]}),
    ),
    Case(
        "instruction-reversed",
        "a wish",
        later({"attachments": [{"id": "t1", "prefer_not": ["13"]}]}, {"attachments": [{"id": "t1", "must": ["13"]}]}),
    ),
    Case("instruction-reversed", "down, now up", later(bite(1, at_least=2), bite(5, at_most=3)), ("/goals/0",)),
    Case("instruction-reversed", "down, now at the bound", later(bite(2, at_least=2), bite(5, at_most=3))),
    Case("instruction-reversed", "further down", later(bite(3, at_most=2), bite(5, at_most=3))),
    Case(
        "instruction-reversed",
        "not measured then",
        later(bite(1, at_least=2), {**bite(5, at_most=3), "findings": None}),
    ),
    Case("instruction-reversed", "a width has its own rule", later(width(36, at_most=34), width(32, at_least=34))),
    Case("instruction-reversed", "two revisions ago", later({"allow": [REDUCTION]}, {"exclude": [NO_REDUCTION]}, {})),
)


def crowded(amount):
    return {"findings": [found("f1", "lower-crowding", amount)], "goals": [must("g1", align=["42", "41", "31", "32"])]}


# Three revisions with the same goal unmet: look at the diagnosis again (common practice).
AGAIN = (
    Case("asked-three-times", "twice", later(bite(5, at_most=3), bite(6, at_most=3))),
    Case(
        "asked-three-times",
        "three times",
        later(bite(4, at_most=3), bite(5, at_most=3), bite(6, at_most=3)),
        ("/goals/0",),
    ),
    Case("asked-three-times", "four times", later(bite(4, at_most=3), *[bite(5, at_most=3)] * 3), ("/goals/0",)),
    Case("asked-three-times", "met now", later(bite(3, at_most=3), bite(5, at_most=3), bite(6, at_most=3))),
    Case("asked-three-times", "met between", later(bite(4, at_most=3), bite(3, at_most=3), bite(6, at_most=3))),
    Case(
        "asked-three-times",
        "not measured at first",
        later(bite(4, at_most=3), bite(5, at_most=3), {**bite(6, at_most=3), "findings": None}),
    ),
    Case(
        "asked-three-times",
        "with another amount",
        later(bite(4, at_most=3), bite(5, at_most=2.5), bite(6, at_most=2)),
        ("/goals/0",),
    ),
    Case("asked-three-times", "still crowded", later(crowded(1), crowded(2), crowded(3)), ("/goals/0",)),
    Case("asked-three-times", "in line at last", later(crowded(0), crowded(2), crowded(3))),
)
CASES = (*CHAIN, *DROPPED, *TURNED, *AGAIN)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers
