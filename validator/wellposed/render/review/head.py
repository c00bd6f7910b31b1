"""The first lines of a review: which setup, which order, and how much of it is met."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.render.filled import joined
from wellposed.review.requests import leaning, unopened
from wellposed.review.result import SetupReview

__all__ = ["OTHER", "head", "summary"]

OTHER = ("setup-answers-another", "setup-answers-other-content")
"""The rules that speak where a setup answers another prescription, another revision of it, or other content."""


def head(review: SetupReview) -> str:
    """Ids and revisions, then in one sentence each what is not as ordered, and what is."""
    setup, order = (f"{name}, revision {revision}" for name, revision in (review.setup, review.prescription))
    return f"Setup {setup}, against prescription {order}. {summary(review)}"


def summary(review: SetupReview) -> str:
    """In one sentence each what is not as ordered, and what is."""
    return " ".join(part for part in (*_verdict(review), _not_so(review), _so(review)) if part)


def _verdict(review: SetupReview) -> Iterator[str]:
    if any(one.rule in OTHER for one in review.findings):
        yield "This setup does not answer this prescription."
    if review.verdict != "possible":
        yield f"The order itself is {review.verdict.replace('-', ' ')}: see its check."


def _not_so(review: SetupReview) -> str:
    passed = sum(one.outcome == "beyond" for one in review.clauses)
    stops = {one.rule for one in review.findings if one.severity == Severity.STOP}
    wishes = sum(one.outcome == "not-met" and one.strength == "prefer" for one in review.clauses)
    told = [
        _counted(len(review.unmet) - passed, "clause is not met", "clauses are not met"),
        _counted(passed, "allowance is passed", "allowances are passed"),
        _counted(wishes, "wish is not met", "wishes are not met"),
        _counted(len(unopened(review)), "change was opened by nothing", "changes were opened by nothing"),
        _counted(len(stops - set(OTHER)), "finding stops the setup", "findings stop the setup"),
    ]
    said = [one for one in told if one]
    if said:
        return f"Not as ordered: {joined(said)}."
    if stops:
        return "Nothing else is found to be other than ordered."
    sure = not _count(review, "cannot-be-told") and not _leaning(review)
    return "As ordered." if sure else "Nothing is found to be other than ordered."


def _so(review: SetupReview) -> str:
    counts = [
        _counted(_count(review, "met", "within") - _leaning(review), "clause is met", "clauses are met"),
        _counted(_leaning(review), f"clause {_LEANS.format('is')}", f"clauses {_LEANS.format('are')}"),
        _counted(_count(review, "cannot-be-told"), "clause cannot be told", "clauses cannot be told"),
        _counted(_count(review, "declared"), "is only said by the laboratory", "are only said by the laboratory"),
    ]
    told = "; ".join(one for one in counts if one)
    return f"{told}." if told else ""


_LEANS = "{} met only with changes that are counted on"


def _leaning(review: SetupReview) -> int:
    return sum(map(leaning, review.clauses))


def _count(review: SetupReview, *outcomes: str) -> int:
    return sum(one.outcome in outcomes for one in review.clauses)


def _counted(count: int, one: str, several: str) -> str:
    return f"{count} {one if count == 1 else several}" if count else ""
