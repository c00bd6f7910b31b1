"""Taking in what is signed, unsigned or badly signed. Signatures are made without the program, by RFC 7515 by hand."""

import json
from itertools import permutations

import pytest
from tests.validator.wellposed.exchange.arrivals import DOCUMENT, STRANGER, digest, sealed, trust, written
from tests.validator.wellposed.exchange.incoming import LABORATORY, desk, take

from wellposed.exchange.answering import followed, stands
from wellposed.exchange.intake import prescription_case
from wellposed.exchange.kept import holding
from wellposed.exchange.rules import RULES, Asked
from wellposed.exchange.store import Store
from wellposed.findings import Finding, Severity
from wellposed.report import Report

NOW = "2026-03-05T08:00:00Z"
CASE = prescription_case("clinic-17/dr-2", "HR-2031", 1)
DATA, GOOD, FORGED = written(DOCUMENT), sealed(DOCUMENT), sealed(DOCUMENT, STRANGER)
KNOWN = desk(trust=trust())
OTHERS = desk(trust=trust(owners=["clinic-9/dr-1"]))  # no key of the sender is trusted
STRICT = desk(trust=trust(owners=["clinic-9/dr-1"]), must_sign=True)


def told(taking):
    rules = [one["rule"] for one in json.loads(taking.answer.receipt)["findings"]]
    return taking.answer.outcome, str(taking.standing), rules


@pytest.mark.parametrize(
    "on, signature, expected",
    [
        (KNOWN, GOOD, ("accepted", "current", [])),
        (KNOWN, None, ("returned", "set-aside", ["signature-left-out"])),
        (KNOWN, FORGED, ("returned", "set-aside", ["key-not-known"])),
        (KNOWN, GOOD[:-1], ("returned", "set-aside", ["signature-form"])),
        (KNOWN, sealed({**DOCUMENT, "revision": 2}), ("returned", "set-aside", ["signature-does-not-fit"])),
        (OTHERS, GOOD, ("returned", "set-aside", ["key-of-another"])),
        (OTHERS, None, ("accepted", "current", ["not-signed"])),
        (STRICT, None, ("returned", "set-aside", ["signature-required", "not-signed"])),
    ],
)
def test_what_becomes_of_a_signature(store, on, signature, expected):
    assert told(take(store, DATA, signature=signature, on=on)) == expected


DELIVERIES = {"unsigned": None, "signed": GOOD, "forged": FORGED, "in pieces": b"x"}


@pytest.mark.parametrize("order", [*permutations(DELIVERIES)], ids=" ".join)
def test_a_bad_signature_before_or_after_a_good_one_changes_nothing(store, order):
    for name in order:
        answer = take(store, DATA, signature=DELIVERIES[name], on=KNOWN).answer
        done = order.index("signed") <= order.index(name)
        assert answer.outcome == ("accepted" if done else "returned")
    assert dict(stands(store, CASE)) == {digest(DOCUMENT): "current"}
    assert len(store.documents(CASE)) == 1


def test_what_is_not_signed_cannot_stand_in_the_way_of_what_is(store):
    forged = {**DOCUMENT, "revision": 99, "replaces": "0" * 64}
    rival = {**DOCUMENT, "goals": []}
    for document in (forged, rival):
        assert told(take(store, written(document), signature=FORGED, on=KNOWN))[1] == "set-aside"
    assert told(take(store, DATA, signature=GOOD, on=KNOWN)) == ("accepted", "current", [])


def test_what_was_taken_in_unsigned_is_answered_anew_once_it_is_signed(store):
    first = take(store, DATA, on=OTHERS).answer
    signed = take(store, DATA, signature=GOOD, on=KNOWN).answer
    assert (first.authentic, signed.authentic, signed.number) == (False, True, 2)
    for again in (None, GOOD, FORGED):
        assert take(store, DATA, signature=again, on=KNOWN).answer == signed
    assert holding(store.answers(digest(DOCUMENT))) == signed


def test_how_it_stands_is_told_from_the_answer_that_holds(store):
    """A later version of the program may find something in what an earlier one let pass."""
    take(store, DATA, on=OTHERS)
    later = desk(
        trust=trust(), look=lambda _: Report("refused", (Finding("bounds-missing", Severity.STOP, "/goals/0"),))
    )
    assert told(take(store, DATA, signature=GOOD, on=later)) == ("returned", "returned", ["bounds-missing"])
    assert followed(store, CASE, NOW) == ()


def test_a_bad_signature_of_what_was_taken_in_unsigned_is_told_and_stops_nothing(store):
    first = take(store, DATA, on=OTHERS).answer
    forged = take(store, DATA, signature=FORGED, on=OTHERS)
    assert (forged.answer.outcome, forged.answer.number) == ("returned", 2)
    assert take(store, DATA, signature=FORGED, on=OTHERS).answer == forged.answer
    assert take(store, DATA, on=OTHERS).answer == first
    assert dict(stands(store, CASE)) == {digest(DOCUMENT): "current"}


def test_a_key_that_is_trusted_later_lets_the_same_file_in(store):
    assert told(take(store, DATA, signature=GOOD, on=OTHERS))[0] == "returned"
    assert told(take(store, DATA, signature=GOOD, on=KNOWN))[0] == "accepted"


def test_what_is_not_shown_to_be_the_senders_is_not_looked_into(store):
    def refuses(data):
        raise AssertionError(data)

    take(store, DATA, signature=FORGED, on=desk(trust=trust(), look=refuses))


def test_signature_and_bytes_are_kept(tmp_path):
    with Store(str(tmp_path / "x.db"), LABORATORY, NOW) as store:
        take(store, DATA, signature=GOOD, on=KNOWN)
        (kept,), (answer,) = store.documents(CASE), store.answers(digest(DOCUMENT))
        assert (kept.data, answer.signature, answer.authentic) == (DATA, GOOD, True)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_the_examples_of_a_page_are_what_they_say(rule):
    def asked(told):
        return Asked(**{"signed": True, "must_sign": False, "revision": 1, **told})

    assert list(rule.findings(asked(rule.passes))) == []
    assert [(one.rule, one.severity) for one in rule.findings(asked(rule.fails))] == [(rule.id, rule.severity)]
