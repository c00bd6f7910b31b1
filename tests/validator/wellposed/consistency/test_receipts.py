"""A receipt: outcome against findings, times against each other. Expected places follow from spec/receipt.md."""

import pytest
from tests.validator.wellposed.consistency.answering import noted, receipt, told_of_receipt
from tests.validator.wellposed.consistency.ordinary import rows

from wellposed.consistency import receipt_faults, receipts

STOPS, ASKS = noted("bounds-crossed", "stop", "/keep/0", "k1"), noted("means-not-said", "ask", "/goals/0", "g1")
LIGHT = [noted("not-signed", "caution"), noted("treat-not-stated", "note")]


def at(number):
    return (f"/findings/{number}/severity", (), {})


LATE = [("/received", (), {"expected": "a moment no later than issued"})]


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Accepted, and nothing heavy.", {"findings": LIGHT}, []),
        ("Accepted, two heavy ones.", {"findings": [STOPS, LIGHT[0], ASKS]}, [at(0), at(2)]),
        ("Returned.", {"outcome": "returned", "findings": [STOPS]}, []),
        ("Accepted without any.", {"findings": None}, []),
    ),
)
def test_accepted_though_stopped(changes, expected):
    assert told_of_receipt(receipts.accepted_though_stopped, **changes) == expected


WITHOUT = [("/outcome", (), {"name": "returned", "expected": "a finding that weighs stop or ask"})]


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("Accepted.", {"outcome": "accepted"}, []),
        ("One that stops.", {"findings": [*LIGHT, STOPS]}, []),
        ("One that asks.", {"findings": [ASKS]}, []),
        ("Light ones only.", {"findings": LIGHT}, WITHOUT),
        ("None.", {"findings": []}, WITHOUT),
        ("Not stated.", {"findings": None}, WITHOUT),
    ),
)
def test_returned_without_finding(changes, expected):
    assert told_of_receipt(receipts.returned_without_finding, **{"outcome": "returned", **changes}) == expected


@pytest.mark.parametrize(
    "changes, expected",
    **rows(
        ("A second before.", {"received": "2026-03-05T09:00:01+01:00"}, []),
        ("At once.", {"received": "2026-03-05T09:00:02+01:00"}, []),
        ("A second after.", {"received": "2026-03-05T09:00:03+01:00"}, LATE),
        ("Later by the clock, earlier in time.", {"received": "2026-03-05T12:00:00+12:00"}, []),
        ("Not stated.", {"received": None}, []),
        ("No day of the calendar.", {"received": "2026-02-31T09:00:00Z"}, []),
    ),
)
def test_received_after_receipt(changes, expected):
    assert told_of_receipt(receipts.received_after_receipt, **changes) == expected


@pytest.mark.parametrize("member", ["received", "issued"])
def test_a_day_that_is_none_is_told_once(member):
    found = [(one.rule, one.pointer) for one in receipt_faults(receipt(**{member: "2026-02-31T09:00:00Z"}))]
    assert found == [("no-such-date", f"/{member}")]
