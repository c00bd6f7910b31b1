"""A folder of documents as the history of its cases."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from wellposed import norms
from wellposed.declare import RULE_FAILED
from wellposed.findings import Finding, Severity, ordered
from wellposed.norms import Norms
from wellposed.review.result import SetupReview
from wellposed.revisions import chain, told
from wellposed.revisions.case import Conversation, Held, Unread, conversations, opened
from wellposed.revisions.comparing import compared
from wellposed.revisions.result import Comparison
from wellposed.revisions.threads import Reviewer, Thread, reviewed, threads

RULES = (*chain.RULES, *told.RULES)
"""The rules about a case over its documents, in the order they look."""


@dataclass(frozen=True, slots=True)
class CaseHistory:
    """One case.

    id           that of its prescriptions
    documents    all of it that is at hand: prescriptions, receipts, setups, reviews
    followed     the prescriptions followed, one a revision
    comparisons  each of these against the one followed before it
    threads      every clause through the revisions
    reviews      every setup held against the revision it answers, in the order of these
    findings     where the documents do not join up, and what the clauses' ways say; heaviest first
    """

    id: str
    documents: tuple[Held, ...]
    followed: tuple[Held, ...]
    comparisons: tuple[Comparison, ...]
    threads: tuple[Thread, ...]
    findings: tuple[Finding, ...]
    reviews: tuple[SetupReview, ...] = ()


@dataclass(frozen=True, slots=True)
class History:
    """All cases of a folder, and the files that hold no sound document."""

    cases: tuple[CaseHistory, ...]
    unread: tuple[Unread, ...]


def history(files: Iterable[tuple[str, bytes]], reviewer: Reviewer, numbers: Norms | None = None) -> History:
    """Follow every case in some files.

    files     base name and bytes of each
    reviewer  what holds a setup against the prescription it answers
    numbers   norms with a practice profile in place; the published ones by default

    Never raises for what is in a file: one that holds no sound document is listed with its report. A setup with which
    the reviewer fails becomes the finding ``rule-failed``.
    """
    held, unread = opened(files)
    cases = conversations(held, numbers or norms.load())
    return History(tuple(_followed(case, reviewer) for case in cases), unread)


def _followed(case: Conversation, reviewer: Reviewer) -> CaseHistory:
    reviews, failed = reviewed(case, reviewer)
    found = threads(case, reviews)
    broken = [Finding(RULE_FAILED, Severity.STOP, "", {"rule": "review", "names": list(one.names)}) for one in failed]
    told_of = (*broken, *_chain_findings(case), *(_clause_findings(case, found) if case.orders else ()))
    steps = tuple(compared(before, after, case.numbers) for before, after in pairwise(case.orders))
    held = tuple(one for order in case.line for one in reviews.get(order.identity.digest, ()))
    return CaseHistory(case.id, case.held, case.line, steps, found, ordered(told_of), held)


def _chain_findings(case: Conversation) -> Iterator[Finding]:
    for rule in chain.RULES:
        yield from rule.findings(case)


def _clause_findings(case: Conversation, found: tuple[Thread, ...]) -> Iterator[Finding]:
    """What is said of clauses, each with what it rests on."""
    followed = told.Followed(case, found)
    for rule in told.RULES:
        for one in rule.findings(followed):
            rests = tuple((followed.chart.kind(name), name) for name in one.facts.get("because", ()))
            yield replace(one, rests_on=rests)
