"""The review document: what was decided, digests of what it speaks of, and nothing our own reader would refuse."""

import json

import pytest
from tests.validator.wellposed.render.review.made import REVIEWS, SHORT_OF, order, part, review, setup, unmet
from tests.validator.wellposed.review.test_requests import cases

from wellposed.check import sound_document
from wellposed.digests import digest
from wellposed.model import Review
from wellposed.review import review as held_against
from wellposed.review.document import Decision, review_content, review_document

RETURNED = Decision("returned", "RW-1", "2026-03-12T09:00:00+01:00")
FAR = part("overbite", "", "mm", (2.0, 3.0), 3.3, off=0.3, met=False, before=4.5)
TWICE = review(order(), g2=unmet(FAR), k1=unmet(FAR, doing="prescription"))


@pytest.mark.parametrize("name", REVIEWS)
@pytest.mark.parametrize("outcome", ["approved", "returned"])
def test_every_document_is_one_our_own_reader_takes(name, outcome):
    reviewed, prescription, plan = REVIEWS[name]
    accepted = tuple(one.id for one in reviewed.clauses if one.outcome in ("not-met", "beyond"))
    decision = Decision(outcome, "RW-1", RETURNED.issued, accepted if outcome == "approved" else ())
    content = review_content(reviewed, prescription, plan, decision)
    found = sound_document(json.dumps(content).encode())
    assert (found, type(found)) == (review_document(reviewed, prescription, plan, decision), Review)


@pytest.mark.slow
def test_the_documents_of_generated_cases_are_sound_too():
    for seed, rx, _good, spoilt in cases():
        content = review_content(held_against(rx, spoilt), rx, spoilt, RETURNED)
        assert (seed, type(sound_document(json.dumps(content).encode()))) == (seed, Review)


def test_it_names_both_documents_by_their_digests():
    made = review_document(SHORT_OF, order(), setup(), RETURNED)
    assert (made.answers.id, made.answers.sha256) == ("RV-12-S", digest(setup()))
    assert (made.prescription.id, made.prescription.revision, made.prescription.sha256) == ("RV-12", 1, digest(order()))


def test_every_clause_stands_there_with_its_outcome_in_the_order_of_the_prescription():
    made = review_document(SHORT_OF, order(), setup(), RETURNED)
    assert [(one.clause, one.outcome) for one in made.clauses] == [(one.id, one.outcome) for one in SHORT_OF.clauses]


@pytest.mark.parametrize(
    "sentence, decision, expected",
    [
        ("returned", RETURNED, (None, ("k1",), True)),
        ("one accepted", Decision("returned", "RW-1", RETURNED.issued, ("g2",)), (("g2",), ("k1",), False)),
        (
            "what is accepted is not revised",
            Decision("returned", "RW-1", RETURNED.issued, ("k1",)),
            (("k1",), None, True),
        ),
        ("approved", Decision("approved", "RW-1", RETURNED.issued, ("k1", "g2")), (("g2", "k1"), None, False)),
    ],
)
def test_what_is_accepted_revised_and_asked_follows_from_the_decision(sentence, decision, expected):
    made = review_document(TWICE, order(), setup(), decision)
    assert (sentence, (made.accepted, made.revising, made.requests is not None)) == (sentence, expected)


def test_the_same_decision_makes_the_same_document():
    one, two = (review_content(SHORT_OF, order(), setup(), RETURNED) for _ in range(2))
    assert json.dumps(one) == json.dumps(two)


@pytest.mark.parametrize("change", [{"id": "no id"}, {"issued": "yesterday"}])
def test_what_is_no_id_or_no_time_is_refused(change):
    given = {"outcome": "returned", "id": "RW-1", "issued": RETURNED.issued} | change
    with pytest.raises(ValueError, match="1 validation error"):
        review_document(SHORT_OF, order(), setup(), Decision(**given))
