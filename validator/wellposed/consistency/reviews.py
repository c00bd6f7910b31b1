"""A review: does what it decides agree with what it lists, accepts and asks for?"""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import mentions
from wellposed.consistency.whole_review import WholeReview
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity

_FALLS_SHORT = ("not-met", "beyond")
_HOLDS = ("met", "within")


@rule(
    "answers-the-prescription",
    Severity.STOP,
    title="The review answers the prescription instead of the setup.",
    do="Name in `answers` the setup that was reviewed, and in `prescription` what it was held against.",
)
def answers_the_prescription(whole: WholeReview) -> Iterator[Told]:
    """`answers` names a setup and `prescription` another document.

    With one digest in both places nobody can tell which setup is approved or returned.

    Passes: {"answers": {"id": "ST-9", "revision": 1,
                         "sha256": "1111111111111111111111111111111111111111111111111111111111111111"},
             "prescription": {"id": "HR-2031", "revision": 1,
                              "sha256": "2222222222222222222222222222222222222222222222222222222222222222"}}
    Fails: {"answers": {"id": "HR-2031", "revision": 1,
                        "sha256": "2222222222222222222222222222222222222222222222222222222222222222"},
            "prescription": {"id": "HR-2031", "revision": 1,
                             "sha256": "2222222222222222222222222222222222222222222222222222222222222222"}}
    """
    if whole.document.answers.sha256 == whole.document.prescription.sha256:
        yield told("/answers/sha256", first="/prescription/sha256")


@rule(
    "clause-reviewed-twice",
    Severity.STOP,
    title="A clause is listed twice.",
    do="List each clause once, or name the clause that was meant.",
)
def clause_reviewed_twice(whole: WholeReview) -> Iterator[Told]:
    """A clause of the prescription is listed once, with one outcome.

    Of two outcomes nobody can tell which holds; of two alike, one was probably meant for another clause.

    Passes: {"clauses": [{"clause": "g1", "outcome": "met"}, {"clause": "k1", "outcome": "met"}]}
    Fails: {"clauses": [{"clause": "g1", "outcome": "met"}, {"clause": "g1", "outcome": "declared"}]}
    """
    for at, one in enumerate(whole.document.clauses):
        first = whole.listed[one.clause]
        if first != f"/clauses/{at}/clause":
            yield told(f"/clauses/{at}/clause", one.clause, name=one.clause, first=first)


@rule(
    "approved-and-asked-for",
    Severity.STOP,
    title="The setup is approved, and something is still to be changed.",
    do="Return the setup, or take out what is asked for.",
)
def approved_and_asked_for(whole: WholeReview) -> Iterator[Told]:
    """An approved setup has no requests, and no clauses that are to be revised first.

    The laboratory would make the aligners, or wait: both can be read from it.

    Passes: {"outcome": "approved"}
    Fails: {"outcome": "approved", "requests": {"keep": [{"id": "r1", "strength": "must", "hold": ["17"]}]}}
    """
    if whole.document.outcome == "approved":
        if whole.asks:
            yield told("/requests", name="requests")
        if whole.document.revising:
            yield told("/revising", *whole.document.revising, name="revising")


@rule(
    "approved-though-not-met",
    Severity.STOP,
    title="The setup is approved though a clause is not met and not accepted so.",
    do="Name the clause in `accepted`, or return the setup.",
)
def approved_though_not_met(whole: WholeReview) -> Iterator[Told]:
    """Of an approved setup every clause that is not met, and every allowance passed, is named in `accepted`.

    Whether it was accepted or overlooked must not be guessed.

    Passes: {"outcome": "approved", "clauses": [{"clause": "g1", "outcome": "not-met"}], "accepted": ["g1"]}
    Fails: {"outcome": "approved", "clauses": [{"clause": "g1", "outcome": "not-met"}]}
    """
    if whole.document.outcome != "approved":
        return
    for at, one in enumerate(whole.document.clauses):
        if one.outcome in _FALLS_SHORT and one.clause not in (whole.document.accepted or ()):
            yield told(f"/clauses/{at}/outcome", one.clause, name=one.clause, found=one.outcome, expected="accepted")


@rule(
    "returned-without-reason",
    Severity.ASK,
    title="The setup is returned, and nothing is asked for.",
    do="Say what the next setup is asked for, or which clauses are revised first.",
)
def returned_without_reason(whole: WholeReview) -> Iterator[Told]:
    """A setup is returned with requests, or with clauses that are revised first.

    Otherwise the next setup can only be the same again, or a guess. Notes do not bind.

    Passes: {"outcome": "returned", "clauses": [{"clause": "k1", "outcome": "not-met"}], "revising": ["k1"]}
    Fails: {"outcome": "returned"}
    """
    if whole.document.outcome == "returned" and not whole.asks and not whole.document.revising:
        yield told("/outcome", name="returned", expected=["requests", "revising"])


@rule(
    "accepted-though-met",
    Severity.ASK,
    title="A clause is accepted as not met, and listed as met.",
    do="Take it out, correct its outcome, or name the clause that was meant.",
)
def accepted_though_met(whole: WholeReview) -> Iterator[Told]:
    """What is accepted fell short: its outcome is not `met`, and not `within`.

    Another clause was probably meant, and that one is not accepted then.

    Passes: {"clauses": [{"clause": "g1", "outcome": "cannot-be-told"}], "accepted": ["g1"]}
    Fails: {"clauses": [{"clause": "g1", "outcome": "met"}], "accepted": ["g1"]}
    """
    outcomes = {one.clause: one.outcome for one in whole.document.clauses}
    for at, name in enumerate(whole.document.accepted or ()):
        if outcomes.get(name) in _HOLDS:
            yield told(f"/accepted/{at}", name, name=name, found=outcomes[name])


@rule(
    "accepted-and-revised",
    Severity.STOP,
    title="A clause is accepted as it is, and to be revised.",
    do="Name it in one of the two.",
)
def accepted_and_revised(whole: WholeReview) -> Iterator[Told]:
    """No clause is both accepted and to be revised.

    The laboratory would keep what it planned, or wait for another order: both can be read from it.

    Passes: {"outcome": "returned", "clauses": [{"clause": "g1", "outcome": "not-met"},
                                                {"clause": "k1", "outcome": "not-met"}],
             "accepted": ["g1"], "revising": ["k1"]}
    Fails: {"outcome": "returned", "clauses": [{"clause": "g1", "outcome": "not-met"}],
            "accepted": ["g1"], "revising": ["g1"]}
    """
    accepted = whole.document.accepted or ()
    for at, name in enumerate(whole.document.revising or ()):
        if name in accepted:
            yield told(f"/revising/{at}", name, name=name, first=f"/accepted/{accepted.index(name)}")


@rule(
    "requested-and-revised",
    Severity.STOP,
    title="A request rests on a clause that is to be revised first.",
    do="Take out the request, or the clause from what is revised.",
)
def requested_and_revised(whole: WholeReview) -> Iterator[Told]:
    """No request says in `because` that it answers a clause in `revising`.

    A clause is revised because no setup could meet it. To ask for it again asks for what cannot be made.

    Passes: {"outcome": "returned", "clauses": [{"clause": "g1", "outcome": "not-met"},
                                                {"clause": "k1", "outcome": "not-met"}], "revising": ["k1"],
             "requests": {"goals": [{"id": "r1", "strength": "must", "align": ["31", "41"], "because": ["g1"]}]}}
    Fails: {"outcome": "returned", "clauses": [{"clause": "g1", "outcome": "not-met"}], "revising": ["g1"],
            "requests": {"goals": [{"id": "r1", "strength": "must", "align": ["31", "41"], "because": ["g1"]}]}}
    """
    for place in whole.places:
        for reason in mentions(place, ("because",)):
            if reason.name in (whole.document.revising or ()):
                yield told(reason.pointer, reason.owner, name=reason.name)


RULES = (
    *(answers_the_prescription, clause_reviewed_twice, approved_and_asked_for, approved_though_not_met),
    *(returned_without_reason, accepted_though_met, accepted_and_revised, requested_and_revised),
)
