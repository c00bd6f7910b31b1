"""A review: decision, clauses, what is accepted, revised and asked for. Expected places follow from spec/setup.md."""

import pytest
from tests.validator.wellposed.consistency.answering import ANSWERED, outcomes, told_of_review
from tests.validator.wellposed.consistency.ordinary import must, rows

from wellposed.consistency import (
    arches,
    asking,
    bounds,
    contacts,
    identity,
    making,
    means,
    measurements,
    quantities,
    reviews,
    teeth,
)

HOLD = {"keep": [must("r1", hold=["17"])]}


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Two documents.", {}, []),
        (
            "One document twice.",
            {"answers": ANSWERED},
            [("/answers/sha256", (), {"first": "/prescription/sha256"})],
        ),
        ("Two of one id, as setups and prescriptions may have.", {"answers": ANSWERED | {"sha256": "ef" * 32}}, []),
    ),
)
def test_answers_the_prescription(changes, expected):
    assert told_of_review(reviews.answers_the_prescription, **changes) == expected


def test_clause_reviewed_twice():
    clauses = [*outcomes(g1="met", k1="met"), *outcomes(k1="met"), *outcomes(g1="beyond")]
    assert told_of_review(reviews.clause_reviewed_twice, clauses=clauses) == [
        ("/clauses/2/clause", ("k1",), {"name": "k1", "first": "/clauses/1/clause"}),
        ("/clauses/3/clause", ("g1",), {"name": "g1", "first": "/clauses/0/clause"}),
    ]


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Approved and no more.", {}, []),
        ("Requests in which nothing is asked.", {"requests": {"keep": [], "goals": []}}, []),
        ("Approved, with a request.", {"requests": HOLD}, [("/requests", (), {"name": "requests"})]),
        (
            "Approved, with staging asked for.",
            {"requests": {"staging": must("r1", most_aligners=20)}},
            [("/requests", (), {"name": "requests"})],
        ),
        ("Approved, to be revised.", {"revising": ["k1"]}, [("/revising", ("k1",), {"name": "revising"})]),
        ("Returned.", {"outcome": "returned", "revising": ["k1"], "requests": HOLD}, []),
    ),
)
def test_approved_and_asked_for(changes, expected):
    said = {"clauses": outcomes(k1="met"), **changes}
    assert told_of_review(reviews.approved_and_asked_for, **said) == expected


def overlooked(at, name, found="not-met"):
    return (f"/clauses/{at}/outcome", (name,), {"name": name, "found": found, "expected": "accepted"})


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Accepted.", {"accepted": ["g1", "a1"]}, []),
        ("One of two accepted.", {"accepted": ["g1"]}, [overlooked(2, "a1", "beyond")]),
        ("None accepted.", {}, [overlooked(1, "g1"), overlooked(2, "a1", "beyond")]),
        ("Returned.", {"outcome": "returned"}, []),
        (
            "What cannot be told, or is only said, needs none.",
            {"clauses": outcomes(k1="cannot_be_told", b1="declared")},
            [],
        ),
    ),
)
def test_approved_though_not_met(changes, expected):
    said = {"clauses": outcomes(k1="met", g1="not-met", a1="beyond"), **changes}
    assert told_of_review(reviews.approved_though_not_met, **said) == expected


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Approved.", {"outcome": "approved"}, []),
        ("Returned with a request.", {"requests": HOLD}, []),
        ("Returned, to be revised.", {"revising": ["k1"]}, []),
        (
            "Returned with nothing in the requests, and a note.",
            {"requests": {}, "notes": [{"text": "Once more."}]},
            [("/outcome", (), {"name": "returned", "expected": ["requests", "revising"]})],
        ),
    ),
)
def test_returned_without_reason(changes, expected):
    assert told_of_review(reviews.returned_without_reason, **{"outcome": "returned", **changes}) == expected


def test_accepted_though_met():
    clauses = outcomes(g1="not-met", k1="met", a1="within", a2="beyond", b1="declared", g2="cannot-be-told")
    accepted = ["g1", "k1", "a1", "a2", "b1", "g2", "x9"]
    assert told_of_review(reviews.accepted_though_met, clauses=clauses, accepted=accepted) == [
        ("/accepted/1", ("k1",), {"name": "k1", "found": "met"}),
        ("/accepted/2", ("a1",), {"name": "a1", "found": "within"}),
    ]


def test_accepted_and_revised():
    said = {"outcome": "returned", "accepted": ["g1", "k1"], "revising": ["m1", "k1"]}
    assert told_of_review(reviews.accepted_and_revised, **said) == [
        ("/revising/1", ("k1",), {"name": "k1", "first": "/accepted/1"})
    ]
    assert told_of_review(reviews.accepted_and_revised, **said | {"accepted": ["g1"]}) == []


@pytest.mark.parametrize(
    "because, expected",
    **rows(
        ("Of another clause.", ["g1"], []),
        (
            "Of one that is revised, among others.",
            ["g1", "m1"],
            [("/requests/keep/0/because/1", ("r1",), {"name": "m1"})],
        ),
    ),
)
def test_requested_and_revised(because, expected):
    said = {"outcome": "returned", "revising": ["m1"], "requests": {"keep": [must("r1", hold=["17"], because=because)]}}
    assert told_of_review(reviews.requested_and_revised, **said) == expected


def unknown(pointer, *owner, name, near=None):
    return (pointer, owner, {"name": name} | ({"nearest": near} if near else {}))


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("A clause it lists.", {"requests": {"keep": [must("r1", hold=["17"], because=["goal-one"])]}}, []),
        (
            "A request is no reason.",
            {"requests": {"keep": [must("r1", hold=["17"]), must("r2", hold=["27"], because=["r1"])]}},
            [unknown("/requests/keep/1/because/0", "r2", name="r1")],
        ),
        ("Accepted.", {"accepted": ["goal-one", "goal-on"]}, [unknown("/accepted/1", name="goal-on", near="goal-one")]),
        ("Revised.", {"revising": ["k9"]}, [unknown("/revising/0", name="k9")]),
        (
            "An order may name clauses and requests.",
            {
                "requests": {
                    "keep": [must("r1", hold=["17"])],
                    "staging": must(
                        "s1", order=[{"id": "o1", "first": "r1", "relation": "before", "then": "goal-one"}]
                    ),
                }
            },
            [],
        ),
        (
            "A note about nothing listed.",
            {"notes": [{"text": "Well done.", "about": ["k9"]}]},
            [("/notes/0/about/0", (), {})],
        ),
    ),
)
def test_a_review_refers_to_clauses_it_lists(changes, expected):
    said = {"outcome": "returned", "clauses": outcomes(**{"goal-one": "not-met"}), **changes}
    assert told_of_review(identity.unknown_reference, **said) == expected


def reduction(name, **said):
    return {"id": name, "use": "enamel-reduction", "unit": "mm", **said}


def widening(name, **said):
    return {"id": name, "use": "widening", "arch": "upper", "up_to": 1, "unit": "mm", **said}


SHARED = [
    (identity.duplicate_id, {"keep": [must("r1", hold=["17"]), must("r1", hold=["27"])]}, "/keep/1/id"),
    (
        identity.term_listed_twice,
        {"allow": [{"id": "r1", "use": "class-ii-elastics", "sides": ["left", "left"]}]},
        "/allow/0/sides/1",
    ),
    (teeth.tooth_listed_twice, {"keep": [must("r1", hold=["17", "17"])]}, "/keep/0/hold/1"),
    (arches.arch_mismatch, {"allow": [widening("r1", teeth=["34"])]}, "/allow/0/teeth/0"),
    (contacts.contact_listed_twice, {"goals": [must("r1", close=["11-21", "21-11"])]}, "/goals/0/close/1"),
    (contacts.reduction_place, {"allow": [reduction("r1", in_all=1)]}, "/allow/0"),
    (
        quantities.unit_not_allowed,
        {"goals": [must("r1", measure="overjet", at_most=3, unit="deg")]},
        "/goals/0/unit",
    ),
    (bounds.bounds_missing, {"goals": [must("r1", measure="overjet", unit="mm")]}, "/goals/0"),
    (
        bounds.bounds_crossed,
        {"allow": [reduction("r1", arch="upper", per_contact=0.1, at_least=1.2)]},
        "/allow/0/at_least",
    ),
    (
        measurements.implausible_value,
        {"goals": [must("r1", measure="overjet", at_most=75, unit="mm")]},
        "/goals/0/at_most",
    ),
    (
        measurements.measure_teeth_do_not_change,
        {"keep": [must("r1", measure="anb-angle", within=1, unit="deg")]},
        "/keep/0/measure",
    ),
    (
        means.reduction_said_twice,
        {"allow": [reduction("r1", contacts=["21-11"], in_all=0.2), reduction("r2", arch="upper", in_all=1)]},
        "/allow/1",
    ),
    (means.width_said_twice, {"allow": [widening("r1"), widening("r2", teeth=["23"])]}, "/allow/1"),
    (
        means.excluded_and_allowed,
        {"allow": [widening("r1")], "exclude": [{"id": "r2", "means": "widening"}]},
        "/allow/0",
    ),
    (
        making.attachments_disagree,
        {"attachments": [{"id": "r1", "must": ["11"]}, {"id": "r2", "must_not": ["11"]}]},
        "/attachments/1/must_not/0",
    ),
    (
        making.order_cycle,
        {"staging": must("r1", order=[{"id": "o1", "first": "g1", "relation": "before", "then": "g1"}])},
        "/staging/order/0",
    ),
]


@pytest.mark.parametrize("declared, requests, pointer", SHARED, ids=[rule.id for rule, *_ in SHARED])
def test_rules_about_clauses_look_into_requests(declared, requests, pointer):
    told = told_of_review(declared, outcome="returned", requests=requests)
    assert [where for where, *_ in told] == [f"/requests{pointer}"]
    assert told_of_review(declared, outcome="returned", requests=HOLD) == []


@pytest.mark.parametrize(
    "requests",
    [
        {"allow": [reduction("r1", arch="upper", per_contact=0.1, at_least=1.1)]},  # eleven contacts, molar to molar
        {"allow": [reduction("r1", contacts=["17-16"], in_all=0.2), reduction("r2", arch="upper", in_all=1)]},
        {"allow": [widening("r1", teeth=["14"]), widening("r2", teeth=["13"])]},
    ],
    ids=["as much as an arch can have", "behind the first molar", "two pairs"],
)
def test_of_an_arch_whose_teeth_are_not_told_only_what_is_certain_is_said(requests):
    for declared in (bounds.bounds_crossed, means.reduction_said_twice, means.width_said_twice):
        assert told_of_review(declared, outcome="returned", requests=requests) == []


def test_a_note_with_an_instruction_is_pointed_out():
    notes = [{"text": "Thank you."}, {"text": "Please intrude 11 a little more."}]
    assert told_of_review(asking.note_may_instruct, notes=notes) == [("/notes/1/text", (), {})]
