"""The rules on arrival: each speaks where its page says so, and alone; what is let through."""

import pytest
from tests.validator.wellposed.exchange.arrivals import DOCUMENT, KID, NOW, arrived, digest, sealed, trust, written

from wellposed.exchange.verification import RULES, verified
from wellposed.findings import Severity

REVOKED = {"since": "2026-03-05T00:00:00Z", "recorded": "2026-03-05T07:00:00Z"}


def rules_of(told):
    return [one.rule for one in told.findings]


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_the_examples_of_a_page_are_what_they_say(rule):
    assert rule.id not in rules_of(arrived(**rule.passes))
    failed = arrived(**rule.fails)
    assert [(one.rule, one.severity) for one in failed.findings if one.rule == rule.id] == [(rule.id, rule.severity)]


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_in_the_example_of_a_page_nothing_else_stops(rule):
    stops = [one.rule for one in arrived(**rule.fails).findings if one.severity == Severity.STOP]
    assert stops == ([rule.id] if rule.severity == Severity.STOP else [])


def test_what_is_signed_by_its_sender_is_authentic():
    told = arrived()
    assert (told.authentic, told.accepted, told.signer, told.key) == (True, True, "clinic-17/dr-2", KID)
    assert (told.digest, told.findings, told.document.id) == (digest(DOCUMENT), (), "HR-2031")


LATER = "2026-03-04T09:30:01+01:00"
ARRIVALS = {
    "issued at the very moment a key begins": ({"key": {"since": "2026-03-04T08:30:00Z"}}, []),
    "issued a second before": ({"key": {"since": LATER}}, ["key-not-in-force"]),
    "received at the very moment a key ends": ({"key": {"until": NOW}}, ["key-not-in-force"]),
    "received a second before": ({"key": {"until": "2026-03-05T08:00:01Z"}}, []),
    "compromised after it was received": (
        {"key": {"revoked": {**REVOKED, "since": "2026-03-05T08:00:01Z", "reason": "compromised"}}},
        [],
    ),
    "compromised when it was received": (
        {"key": {"revoked": {**REVOKED, "since": NOW, "reason": "compromised"}}},
        ["key-revoked"],
    ),
    "compromised, and received before by an archive": (
        {"now": "2026-03-04T23:00:00Z", "key": {"revoked": {**REVOKED, "reason": "compromised"}}},
        [],
    ),
    "superseded before it was issued": (
        {"key": {"revoked": {**REVOKED, "since": "2026-03-04T08:30:00Z", "reason": "superseded"}}},
        ["key-revoked"],
    ),
    "superseded a second after": (
        {"key": {"revoked": {**REVOKED, "since": LATER, "reason": "superseded"}}},
        ["key-was-replaced"],
    ),
    "ended on the way": ({"key": {"revoked": {**REVOKED, "reason": "ended"}}}, ["key-was-replaced"]),
    "a key whose end is no day": ({"key": {"until": "2027-02-30T00:00:00Z"}}, ["key-not-in-force"]),
    "a key whose revocation is no day": (
        {"key": {"revoked": {**REVOKED, "since": "2027-02-30T00:00:00Z", "reason": "ended"}}},
        ["key-not-in-force"],
    ),
    "one key of several owners": ({"key": {"owners": ["clinic-9/dr-1", "clinic-17/dr-2"]}}, []),
    "an owner that only begins like the sender": ({"key": {"owners": ["clinic-17/dr-22"]}}, ["key-of-another"]),
    "a sender that only begins like the owner": ({"key": {"owners": ["clinic-17"]}}, ["key-of-another"]),
    "issued five minutes ahead": ({"now": "2026-03-04T08:25:00Z"}, []),
    "issued a second more ahead": ({"now": "2026-03-04T08:24:59Z"}, ["issued-in-the-future"]),
    "a setup that names its maker": (
        {"setup": {"laboratory": {"id": "lab-4"}}, "now": "2026-04-01T08:00:00Z", "key": {"owners": ["lab-4"]}},
        [],
    ),
    "a first revision sent again": ({"earlier": [{}]}, ["received-before"]),
    "sent again after the second": (
        {"earlier": [{}, {"revision": 2, "digest": "2" * 64, "replaces": "BASE"}]},
        ["revision-overtaken", "received-before"],
    ),
    "of another sender with the same id": ({"earlier": [{"sender": "clinic-9/dr-1", "digest": "0" * 64}]}, []),
    "another kind with the same id": ({"earlier": [{"format": "wellposed/setup", "digest": "0" * 64}]}, []),
    "another id": ({"earlier": [{"id": "HR-1", "digest": "0" * 64}]}, []),
    "a second revision in its turn": ({"document": {"revision": 2, "replaces": "BASE"}, "earlier": [{}]}, []),
    "a third after the first": (
        {"document": {"revision": 3, "replaces": "3" * 64}, "earlier": [{}]},
        ["revision-ahead"],
    ),
    "a second alone": ({"document": {"revision": 2, "replaces": "BASE"}}, ["revision-ahead"]),
    "a first after the second that replaces it": (
        {"earlier": [{"revision": 2, "digest": "2" * 64, "replaces": "BASE"}]},
        ["revision-overtaken"],
    ),
    "a first after a second that replaces another": (
        {"earlier": [{"revision": 2, "digest": "2" * 64, "replaces": "1" * 64}]},
        ["replaces-another", "revision-overtaken"],
    ),
    "sent again, and signed by another: nothing is told of its place": (
        {"key": {"owners": ["clinic-9/dr-1"]}, "earlier": [{}]},
        ["key-of-another"],
    ),
    "out of turn, and addressed elsewhere: nothing is told of its place": (
        {"document": {"laboratory": {"id": "lab-5"}, "revision": 2, "replaces": "BASE"}},
        ["addressed-elsewhere"],
    ),
    "one revision twice, and again": (
        {"earlier": [{}, {"digest": "0" * 64}]},
        ["revision-conflict", "received-before"],
    ),
}


@pytest.mark.parametrize("told, expected", ARRIVALS.values(), ids=ARRIVALS)
def test_what_is_said_of_an_arrival(told, expected):
    assert rules_of(arrived(**told)) == expected


@pytest.mark.parametrize("told, expected", ARRIVALS.values(), ids=ARRIVALS)
def test_authentic_is_what_key_and_sender_say_and_accepted_what_all_says(told, expected):
    stopping = {"key-not-in-force", "key-revoked", "key-of-another", "addressed-elsewhere"} & set(expected)
    harmless = {"key-was-replaced", "received-before", "issued-in-the-future"}
    found = arrived(**told)
    assert (found.authentic, found.accepted) == (not stopping, set(expected) <= harmless)


def test_unsigned_is_never_the_same_as_signed():
    told = arrived(signature=None, sender="clinic-9/dr-1")
    assert (told.authentic, told.accepted, told.signer, told.key) == (False, False, None, None)
    assert rules_of(told) == ["not-signed"]


def test_where_the_sender_has_signed_before_an_unsigned_document_stops():
    assert rules_of(arrived(signature=None)) == ["signature-left-out"]


def test_with_a_key_that_is_gone_nothing_is_left_out():
    gone = {"revoked": {**REVOKED, "reason": "ended"}}
    assert rules_of(arrived(signature=None, key=gone)) == ["not-signed"]


def test_what_is_wrong_with_the_content_is_told_only_of_what_is_signed():
    broken = {**DOCUMENT, "colour": "blue"}
    good = verified(written(broken), sealed(broken), trust(), NOW)
    assert ([one.rule for one in good.findings], good.key, good.signer) == (["unknown-member"], KID, None)
    bad = verified(written(broken), sealed(DOCUMENT), trust(), NOW)
    assert [one.rule for one in bad.findings] == ["signature-does-not-fit"]


@pytest.mark.parametrize(
    "changes, rule", [({"version": "2.0"}, "wrong-form"), ({"format": "wellposed/x-ray"}, "unknown-format")]
)
def test_of_an_unknown_version_the_signature_says_nothing(changes, rule):
    other = {**DOCUMENT, **changes}
    told = verified(written(other), sealed(other), trust(), NOW)
    assert ([one.rule for one in told.findings], told.key, told.document) == ([rule], None, None)


def test_a_place_in_the_document_has_its_line():
    (one,) = arrived(key={"owners": ["clinic-9/dr-1"]}).findings
    assert (one.pointer, one.line) == ("/prescriber/id", 1)


def test_no_finding_repeats_who_sends_or_receives():
    for rule in RULES:
        told = arrived(**rule.fails)
        said = repr([(one.facts, one.clauses) for one in told.findings])
        assert [name for name in ("clinic-", "lab-", "P-7F3A", "HR-2031") if name in said] == []


def test_what_is_not_read_has_no_digest():
    told = verified(b'{"id": 1, "id": 2}', None, trust(), NOW)
    assert ([one.rule for one in told.findings], told.digest, told.document) == (["duplicate-member"], None, None)


@pytest.mark.parametrize("now", ["yesterday", "2026-03-05", "2026-03-05T08:00:00", "2026-02-30T08:00:00Z", ""])
def test_a_moment_of_receipt_that_is_none_is_the_callers_fault(now):
    with pytest.raises(ValueError, match="now is not"):
        verified(written(DOCUMENT), None, trust(), now)


@pytest.mark.parametrize("now", ["9999-12-31T23:59:59Z", "9999-12-31T23:59:59-23:59"])
def test_received_at_the_end_of_the_calendar(now):
    assert arrived(now=now).findings == ()


@pytest.mark.parametrize("issued", ["0001-01-01T00:00:00+23:59", "9999-12-31T23:59:59-23:59"])
def test_times_at_the_ends_of_the_calendar_are_compared(issued):
    assert arrived(document={"issued": issued}).authentic
