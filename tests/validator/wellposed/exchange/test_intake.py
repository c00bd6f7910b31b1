"""Taking in: once, in any order to the same end, never acknowledged and not stored."""

import json
from itertools import permutations

import pytest
from tests.validator.wellposed.commands.documents import DOCUMENTS, EXAMPLE, written
from tests.validator.wellposed.consistency.answering import review_document, setup_document
from tests.validator.wellposed.exchange.incoming import (
    LABORATORY,
    NOW,
    PRESCRIBER,
    chain,
    desk,
    digest_of,
    faulty,
    order,
    state,
    take,
)

from wellposed.check import check, sound_document
from wellposed.digests import digest
from wellposed.exchange.audit import audited
from wellposed.exchange.intake import NotTaken, prescription_case, withdrawn
from wellposed.exchange.kept import holding
from wellposed.exchange.order import RULES as ORDER
from wellposed.exchange.store import Store
from wellposed.model import Receipt

LATER = "2026-03-06T08:00:00Z"
CASE = prescription_case(PRESCRIBER, EXAMPLE["id"], 1)


def told(taking):
    """Outcome, how it stands, and what must be answered first, by the receipt itself."""
    content = json.loads(taking.answer.receipt)
    grave = [one["rule"] for one in content["findings"] if one["severity"] in ("stop", "ask")]
    return content["outcome"], str(taking.standing), grave


def receipts(store, data):
    return [one.receipt for one in store.answers(digest_of(data))]


def test_an_order_is_accepted_and_its_receipt_names_it_exactly(store):
    data = order()
    taking = take(store, data)
    receipt = sound_document(taking.answer.receipt)
    assert isinstance(receipt, Receipt)
    assert receipt.answers.model_dump() == {"id": "HR-2031", "revision": 1, "sha256": digest_of(data)}
    assert (receipt.outcome, receipt.received, receipt.issued, receipt.laboratory.id) == (
        "accepted",
        NOW,
        NOW,
        LABORATORY,
    )
    assert store.kept(digest_of(data)).data == data


@pytest.mark.parametrize("name", ["possible", "incomplete", "contradictory"])
def test_a_receipt_says_what_the_check_says_and_is_sound_itself(store, name):
    data = DOCUMENTS[name]
    taking = take(store, data, on=desk(look=check))
    content, report = json.loads(taking.answer.receipt), check(data)
    expected = {(one.rule, one.severity, one.pointer, one.clauses) for one in report.findings}
    listed = {(o["rule"], o["severity"], o["pointer"], tuple(o.get("clauses", ()))) for o in content["findings"]}
    assert listed - expected == {("not-signed", "caution", "", ())}
    assert expected <= listed
    assert content["outcome"] == ("accepted" if report.fit_to_send else "returned")
    about = check(taking.answer.receipt)
    assert (about.verdict, about.findings) == ("not-judged", ())


def test_a_thousand_repeats_are_one_order_and_one_receipt(store):
    data = order()
    first = take(store, data).answer.receipt
    answers = {take(store, data, at=LATER).answer.receipt for _ in range(1000)}
    assert (answers, len(store.documents(CASE)), len(store.log())) == ({first}, 1, 2)


def test_another_spelling_of_the_same_content_is_the_same_document(store):
    first = take(store, order())
    spelt = json.dumps(json.loads(order()), indent=7, sort_keys=True).encode()
    again = take(store, spelt)
    assert (again.again, again.answer.receipt) == (True, first.answer.receipt)
    assert store.kept(digest_of(spelt)).data == order()


@pytest.mark.parametrize(
    "data, kind, readable",
    [
        (DOCUMENTS["unreadable"], None, False),
        (DOCUMENTS["refused"], None, True),
        (written(setup_document()), "wellposed/setup", True),
        (b"", None, False),
        (b"\xff\xfe", None, False),
        (b"[]", None, False),
    ],
)
def test_what_is_not_for_a_laboratory_is_neither_stored_nor_answered(store, data, kind, readable):
    found = take(store, data)
    assert (type(found), found.kind, found.readable) == (NotTaken, kind, readable)
    assert (store.cases(), len(store.log())) == ((), 1)


def test_a_receipt_is_never_answered_by_a_receipt(store):
    receipt = take(store, order()).answer.receipt
    assert take(store, receipt) == NotTaken("wellposed/receipt")


def test_a_review_is_taken_in_as_an_order_is(store):
    assert told(take(store, written(review_document()), on=desk(look=check))) == ("accepted", "current", [])


def test_an_order_for_another_laboratory_has_no_effect(store):
    mine, other = order(), order(2, digest_of(order()), laboratory={"id": "lab-5"})
    take(store, mine)
    assert told(take(store, other)) == ("returned", "set-aside", ["addressed-elsewhere"])
    assert told(take(store, mine)) == ("accepted", "current", [])


# revisions


def test_each_revision_in_order_takes_the_place_of_the_one_before(store):
    ends = [told(take(store, data)) for data in chain(4)]
    assert ends == [("accepted", "current", [])] * 4


def test_a_revision_that_comes_too_early_is_held_and_answered_anew_when_the_other_comes(store):
    first, second = chain(2)
    assert told(take(store, second)) == ("returned", "held", ["revision-ahead"])
    taking = take(store, first, at=LATER)
    assert told(taking) == ("returned", "overtaken", ["revision-overtaken"])
    assert [(one.sha256, one.number, one.outcome) for one in taking.changed] == [(digest_of(second), 2, "accepted")]
    old, new = (json.loads(one) for one in receipts(store, second))
    assert (new["revision"], new["received"], new["issued"]) == (2, NOW, LATER)
    assert new["replaces"] == digest(Receipt.model_validate(old))
    assert told(take(store, second)) == ("accepted", "current", [])


def test_two_contents_of_one_revision_are_both_kept_and_neither_holds(store):
    one, other = order(), order(goals=[])
    take(store, one)
    taking = take(store, other)
    assert told(taking) == ("returned", "in-conflict", ["revision-conflict"])
    assert [json.loads(answer.receipt)["outcome"] for answer in taking.changed] == ["returned"]
    assert told(take(store, one)) == ("returned", "in-conflict", ["revision-conflict"])
    assert {kept.data for kept in store.documents(CASE)} == {one, other}


def test_a_withdrawn_revision_never_comes_back(tmp_path):
    first, second = chain(2)
    with Store(str(tmp_path / "x.db"), LABORATORY, NOW) as store:
        take(store, first, second)
        _, changed = withdrawn(store, CASE, 2, LATER)
        assert [(one.sha256, one.outcome) for one in changed] == [(digest_of(second), "returned")]
        assert told(take(store, second)) == ("returned", "withdrawn", ["revision-withdrawn"])
        assert withdrawn(store, CASE, 2, LATER)[1] == ()
    with Store(str(tmp_path / "x.db"), None, NOW) as store:
        assert told(take(store, second)) == ("returned", "withdrawn", ["revision-withdrawn"])
        third = order(3, digest_of(second))
        assert told(take(store, third)) == ("accepted", "current", [])
        assert str(take(store, first).standing) == "overtaken"


def test_a_revision_withdrawn_before_it_comes_is_dead_on_arrival(store):
    first, second = chain(2)
    withdrawn(store, CASE, 2, NOW)
    assert told(take(store, first)) == ("returned", "overtaken", ["revision-withdrawn"])
    assert told(take(store, second)) == ("returned", "withdrawn", ["revision-withdrawn"])


ONE, TWO, THREE = chain(3)
RIVAL = order(2, digest_of(ONE), goals=[])  # the number of the second, another content
FAULTY = order(4, digest_of(THREE), **faulty())
ASTRAY = order(5, "1" * 64)  # replaces what nobody has
SETS = {
    "the first withdrawn, two of one revision, a faulty one": (
        [ONE, TWO, RIVAL, THREE, FAULTY],
        1,
        ["withdrawn", "in-conflict", "in-conflict", "overtaken", "returned"],
    ),
    "a gap, a stale rival, one that follows nothing": (
        [ONE, RIVAL, TWO, THREE, ASTRAY],
        3,
        ["overtaken", "in-conflict", "in-conflict", "withdrawn", "held"],
    ),
}


@pytest.mark.parametrize("documents, gone, expected", SETS.values(), ids=SETS)
def test_all_orders_of_five_revisions_end_in_the_same_state(in_memory, documents, gone, expected):
    """All 120 orders of the five; the withdrawal comes at each place among them in turn."""
    ends = {digest_of(data): (data, how, outcome(how)) for data, how in zip(documents, expected, strict=True)}
    for number, arrival in enumerate(permutations(documents)):
        with Store(str(in_memory / f"{number}.db"), LABORATORY, NOW) as store:
            for place, data in enumerate([*arrival, None]):
                if place == number % 6:
                    withdrawn(store, CASE, gone, NOW)
                if data is not None:
                    take(store, data)
            assert state(store) == {CASE: {gone}, **ends}
            assert number % 10 or audited(store).faults == ()
    assert number == 119


def outcome(how):
    """Accepted if and only if it may be worked from; of one that was overtaken nothing is asked."""
    return {"overtaken": None, "current": "accepted"}.get(how, "returned")


ORDERED = {rule.id for rule in ORDER}


def test_no_order_of_arrival_leaves_an_answer_that_how_it_stands_denies(store):
    for data in (ASTRAY, FAULTY, THREE, RIVAL, TWO, ONE):
        take(store, data)
        for kept in store.documents(CASE):
            last = json.loads(holding(store.answers(kept.received.digest)).receipt)
            assert last["outcome"] == "returned" or not {one["rule"] for one in last["findings"]} & ORDERED
