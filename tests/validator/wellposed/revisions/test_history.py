"""Folders followed: chains that join up and that do not, clauses asked, met and undone.

Expected values are written out by hand; digests are computed by hashlib over rfc8785, not by the program.
"""

import json

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, found, must
from tests.validator.wellposed.revisions.cases import Case, digest, prescription, written

from wellposed import norms
from wellposed.review import review
from wellposed.revisions.history import RULES, history
from wellposed.revisions.threads import Outcome, Step, Thread

KEEP = must("k1", hold=["16", "26"])
LEVEL = must("g1", level="lower", because=["p1"])
ROUND = {
    "findings": [found("f1", "curve-of-spee", 4)],
    "problems": [{"id": "p1", "problem": "deep-curve-of-spee", "because": ["f1"]}],
    "goals": [LEVEL],
}
UNMET = {"setup": {"g1": "not-met"}}


def told(*steps):
    case = Case(*steps)
    return history(case.files, case.review)


def rules_of(*steps):
    (one,) = told(*steps).cases
    return [finding.rule for finding in one.findings]


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_the_examples_of_a_page_are_what_they_say(rule):
    assert rule.id not in rules_of(*rule.passes["case"])
    assert rule.id in rules_of(*rule.fails["case"])


FOLDERS = {
    "an empty folder": ((), []),
    "one order": (({},), []),
    "two revisions": (({}, {}), []),
    "the second alone": (({"revision": 2},), ["revision-not-at-hand"]),
    "the first and the fourth": (({}, {"revision": 4}), ["revision-not-at-hand"]),
    "another digest": (({}, {"replaces": "00" * 32}), ["replaces-not-at-hand"]),
    "two of one number": (({}, {"revision": 1, "goals": []}), ["two-documents-of-one-revision"]),
    "the same twice": (({}, {"revision": 1}), []),
    "another patient": (({}, {"patient": {"reference": "P-2"}}), ["patients-differ"]),
    "earlier than the one before": (({}, {"issued": "2026-03-03T09:30:00Z"}), ["issued-before-its-predecessor"]),
    "two cases": (({}, {"id": "HR-9", "revision": 1}), []),
    "a setup of another version": (
        ({}, {"setup": {}, "answers": {"id": "HR-2031", "revision": 1, "sha256": "00" * 32}}),
        ["answers-another-version"],
    ),
    "a setup of a revision that is not there": (
        ({}, {"setup": {}, "answers": {"id": "HR-2031", "revision": 2, "sha256": "00" * 32}}),
        ["answered-not-at-hand"],
    ),
    "a setup that replaces another": (
        ({}, {"setup": {}}, {"setup": {}, "replaces": "00" * 32}),
        ["replaces-not-at-hand"],
    ),
    "setups of which one is not there": (({}, {"setup": {}}, {"setup": {}, "revision": 3}), ["revision-not-at-hand"]),
    "two setups of one number": (
        ({}, {"setup": {}}, {"setup": {}, "revision": 1, "unlisted": "unmoved"}),
        ["two-documents-of-one-revision"],
    ),
}


@pytest.mark.parametrize("steps, expected", FOLDERS.values(), ids=FOLDERS)
def test_where_documents_do_not_join_up_is_told(steps, expected):
    case = Case(*steps)
    found_of = [one.rule for one_case in history(case.files, case.review).cases for one in one_case.findings]
    assert found_of == expected


@pytest.mark.parametrize("there, absent", [([9999], ["1 to 9998"]), ([2, 3, 5, 9], ["1", "4", "6 to 8"])])
def test_revisions_that_are_not_at_hand_are_told_in_runs(there, absent):
    (case,) = told(*({"revision": number} for number in there)).cases
    assert [one.facts["absent"] for one in case.findings if one.rule == "revision-not-at-hand"] == [absent]


def test_the_same_document_in_two_files_is_one_document():
    (case,) = told({}, {"revision": 1}).cases
    assert [one.names for one in case.documents] == [("order-1.json", "order-2.json")]


def test_a_setup_whose_order_is_not_in_the_folder_is_a_case_without_orders():
    case = Case({}, {"setup": {}})
    (only,) = history(case.files[1:], case.review).cases
    assert (only.id, only.followed, only.threads) == ("HR-2031", (), ())
    assert [one.rule for one in only.findings] == ["answered-not-at-hand"]


def test_unreadable_files_are_listed_and_the_rest_goes_on():
    case = Case({})
    files = [("a.json", b"{"), *case.files, ("b.json", b'{"format": "x"}'), ("c.json", b""), ("d.json", b"\xff")]
    found_of = history(files, case.review)
    assert [(one.name, one.report.verdict) for one in found_of.unread] == [
        *(("a.json", "unreadable"), ("b.json", "refused"), ("c.json", "unreadable"), ("d.json", "unreadable")),
    ]
    assert [one.id for one in found_of.cases] == ["HR-2031"]


def test_receipts_and_reviews_belong_to_the_case_of_their_prescription():
    case = Case({}, {"setup": {}})
    order, setup = case.orders[0], case.setups[0]
    head = {name: order[name] for name in ("version", "issued")} | {"revision": 1}
    of_order = {"id": "HR-2031", "revision": 1, "sha256": digest(order)}
    receipt = {**head, "format": "wellposed/receipt", "id": "R-1", "answers": of_order, "outcome": "accepted"}
    answers = {"id": "S-1", "revision": 1, "sha256": digest(setup)}
    answer = {**head, "format": "wellposed/review", "notation": "ISO 3950", "id": "V-1", "answers": answers}
    answer |= {"prescription": of_order, "outcome": "approved", "clauses": []}
    files = [*case.files, ("receipt.json", written(receipt)), ("review.json", written(answer))]
    (only,) = history(files, case.review).cases
    kinds = [one.identity.format.removeprefix("wellposed/") for one in only.documents]
    assert (kinds, only.findings) == (["prescription", "receipt", "setup", "review"], ())
    lost = history([one for one in files if not one[0].startswith("setup")], case.review).cases[0]
    assert [(one.rule, one.pointer) for one in lost.findings] == [("answered-not-at-hand", "/answers")]


def test_of_two_orders_of_one_number_the_one_that_is_replaced_is_followed():
    case = Case({"goals": []}, {"revision": 1, "keep": []}, {"revision": 2})
    (only,) = history(case.files, case.review).cases
    assert [one.names for one in only.followed] == [("order-2.json",), ("order-3.json",)]
    (one,) = only.findings
    assert one.facts["followed"] == "The next revision replaces order-2.json, which is followed here."


def test_where_nothing_tells_which_of_two_was_meant_neither_is_followed():
    case = Case({"goals": []}, {"revision": 1, "keep": []}, {"revision": 2, "replaces": "00" * 32})
    (only,) = history(case.files, case.review).cases
    assert [one.names for one in only.followed] == [("order-3.json",)]
    assert {one.rule for one in only.findings} == {"two-documents-of-one-revision", "replaces-not-at-hand"}


# clauses followed


def ways(*steps):
    (one,) = told(*steps).cases
    return {thread.last.id: [(step.revision, step.change) for step in thread.steps] for thread in one.threads}


@pytest.mark.parametrize(
    "steps, expected",
    [
        ([{"keep": [KEEP]}, {"keep": [KEEP]}], {"k1": [(1, "asked"), (2, "unchanged")]}),
        ([{"keep": [KEEP]}, {"keep": [{**KEEP, "id": "k9"}]}], {"k9": [(1, "asked"), (2, "reworded")]}),
        ([{"keep": [KEEP]}, {}], {"k1": [(1, "asked"), (2, "dropped")]}),
        (
            [{"keep": [KEEP]}, {}, {"keep": [{**KEEP, "id": "k2"}]}],
            {"k2": [(1, "asked"), (2, "dropped"), (3, "again")]},
        ),
        ([{}, {"keep": [KEEP]}], {"k1": [(2, "added")]}),
        ([{"keep": [KEEP]}, {"keep": [must("k1", hold=["16"])]}], {"k1": [(1, "asked"), (2, "loosened")]}),
    ],
)
def test_a_clause_is_followed_through_the_revisions(steps, expected):
    assert ways(*steps) == expected


def clause_rules(*steps):
    found_of = rules_of(*steps)
    return [
        one for one in found_of if one in ("look-at-the-diagnosis-again", "met-then-undone", "asked-back-and-forth")
    ]


LOOK, UNDONE, BACK = "look-at-the-diagnosis-again", "met-then-undone", "asked-back-and-forth"
MET, UNTOLD = {"setup": {"g1": "met"}}, {"setup": {"g1": "cannot-be-told"}}
WISH = {**ROUND, "goals": [{**LEVEL, "strength": "prefer"}]}
BITE = {**ROUND, "findings": [found("f1", "overbite", 5)], "problems": None}


def bite(**bounds):
    return {**BITE, "goals": [must("g1", measure="overbite", unit="mm", **bounds)]}


STORIES = {
    "unmet twice": ([ROUND, UNMET, ROUND, UNMET], []),
    "unmet in three revisions": ([ROUND, UNMET, ROUND, UNMET, ROUND, UNMET], [LOOK]),
    "unmet in three setups of one revision": ([ROUND, UNMET, UNMET, UNMET], [LOOK]),
    "met in between": ([ROUND, UNMET, UNMET, MET, UNMET, UNMET], [UNDONE]),
    "not to be told in between": ([ROUND, UNMET, UNTOLD, UNMET, UNMET], [LOOK]),
    "unmet in two documents of one revision": (
        [ROUND, UNMET, {**UNMET, "revision": 1, "unlisted": "unmoved"}, UNMET],
        [],
    ),
    "met by the later of two ids, which sorts first": (
        [ROUND, {**UNMET, "id": "S-9"}, {**MET, "id": "S-10", "revision": 1, "issued": "2026-04-01T09:30:00Z"}],
        [],
    ),
    "met by the earlier of two ids, which sorts last": (
        [ROUND, {**MET, "id": "S-9"}, {**UNMET, "id": "S-10", "revision": 1, "issued": "2026-04-01T09:30:00Z"}],
        [UNDONE],
    ),
    "a revision issued before the one it follows": (
        [ROUND, MET, {**UNMET, "issued": "2026-03-09T09:30:00Z"}],
        [UNDONE],
    ),
    "a wish": ([WISH, UNMET, UNMET, UNMET], []),
    "a wish that was met": ([WISH, MET, UNMET], [UNDONE]),
    "unmet three times, then met": ([ROUND, UNMET, UNMET, UNMET, MET], []),
    "unmet three times, then dropped": ([ROUND, UNMET, UNMET, UNMET, {**ROUND, "goals": []}], []),
    "unmet, asked for less, unmet": ([bite(at_most=3), UNMET, bite(at_most=3.5), UNMET, UNMET], [LOOK]),
    "met, then more asked": ([bite(at_most=4), MET, bite(at_most=3), UNMET], []),
    "met, then less asked, and undone": ([bite(at_most=3), MET, bite(at_most=4), UNMET], [UNDONE]),
    "met, undone, met again": ([ROUND, MET, UNMET, MET], []),
    "there and back": ([bite(at_most=4), bite(at_most=3), bite(at_most=4)], [BACK]),
    "dropped and put back": ([{"keep": [KEEP]}, {}, {"keep": [KEEP]}], [BACK]),
    "tightened twice": ([bite(at_most=4), bite(at_most=3.5), bite(at_most=3)], []),
}


@pytest.mark.parametrize("steps, expected", STORIES.values(), ids=STORIES)
def test_what_the_way_of_a_clause_says(steps, expected):
    assert clause_rules(*steps) == expected


def moved(motion, least):
    order = must("m1", teeth=["11", "21"], motion=motion, at_least=least, unit="mm")
    return {"movements": [order], "goals": [], "findings": None, "problems": None}


def test_turned_round_twice_is_back_and_forth_though_the_amounts_differ():
    steps = [moved("intrusion", 1), moved("extrusion", 1), moved("intrusion", 2)]
    assert clause_rules(*steps) == [BACK]
    assert clause_rules(*steps[:2]) == []


def test_turned_round_is_counted_anew():
    unmet = {"setup": {"m1": "not-met"}}
    assert clause_rules(moved("intrusion", 1), unmet, unmet, moved("extrusion", 1), unmet) == []


def test_an_allowance_passed_three_times_counts_as_unmet():
    allow = {"allow": [allowed("a1", "widening", arch="upper", up_to=2, unit="mm")]}
    beyond = {"setup": {"a1": "beyond"}}
    assert clause_rules(allow, beyond, beyond, beyond) == [LOOK]


def test_looking_at_the_diagnosis_again_names_what_the_clause_rests_on():
    (case,) = told(ROUND, UNMET, UNMET, UNMET).cases
    (one,) = case.findings
    assert (one.pointer, one.clauses) == ("/goals/0", ("g1", "p1", "f1"))
    assert one.rests_on == (("diagnosis", "p1"), ("measurement", "f1"))
    assert one.facts["rests"] == " It rests on: deep curve of spee (p1), curve of spee (f1)."
    assert [figure["key"] for figure in one.facts["figures"]] == ["caution.revisions-unmet"]


def test_the_number_of_revisions_is_that_of_the_norms():
    assert norms.value("caution.revisions-unmet") == 3


def test_the_last_that_can_tell_decides_whether_a_clause_is_met():
    met, untold = (Outcome("S", n, what, True) for n, what in ((1, "met"), (2, "cannot-be-told")))
    assert Thread([Step(1, "asked", None, (met, untold))]).met_last()


def test_the_review_of_the_program_can_be_given():
    case = Case(ROUND, {"setup": {}}, {"setup": {}}, {"setup": {}})
    (one,) = history(case.files, review).cases
    assert [len(step.outcomes) for thread in one.threads for step in thread.steps] == [3]


def test_a_review_that_fails_is_told_and_the_rest_goes_on():
    case = Case(ROUND, MET, MET)

    def failing(order, setup, numbers):
        if setup.revision == 1:
            raise ValueError("a word of a document")
        return case.review(order, setup, numbers)

    (only,) = history(case.files, failing).cases
    assert [(one.rule, one.facts["names"]) for one in only.findings] == [("rule-failed", ["setup-2.json"])]
    assert [(one.setup, one.revision) for one in only.threads[0].steps[0].outcomes] == [("S-1", 2)]


def test_the_order_of_the_files_does_not_matter():
    case = Case(ROUND, UNMET, ROUND, UNMET, ROUND, UNMET)
    straight, turned = (history(files, case.review) for files in (case.files, case.files[::-1]))
    assert straight.cases[0].findings == turned.cases[0].findings
    assert [one.identity for one in straight.cases[0].documents] == [one.identity for one in turned.cases[0].documents]


def test_documents_made_for_these_tests_are_sound():
    assert prescription(**ROUND).goals is not None
    assert json.loads(Case(ROUND).files[0][1])["id"] == "HR-2031"
