"""Comparisons and histories as JSON, described by ``spec/schema/1/comparison.schema.json`` and ``history``."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from wellposed.model.envelope import Answers
from wellposed.render.json_report import CLOSING, dumped, finding_object
from wellposed.render.review.machine import unasked_object
from wellposed.render.revisions.words import part
from wellposed.review.result import SetupReview
from wellposed.revisions.case import Held, Unread
from wellposed.revisions.history import CaseHistory, History
from wellposed.revisions.plans import Amount, SetupComparison
from wellposed.revisions.result import ClauseChange, Comparison, Identity, Item, Lineage
from wellposed.revisions.reviews import ReviewComparison
from wellposed.revisions.threads import Step, Thread

__all__ = ["comparison_json", "history_json"]

Told = Comparison | SetupComparison | ReviewComparison


def comparison_json(told: Told, names: tuple[str, str]) -> str:
    """Everything a comparison says; ``names`` are the base names of the files."""
    whole = {**_head(told, names), **_content(told), **CLOSING, "format": "wellposed/comparison"}
    return dumped(whole, indent=2)


def _head(told: Told, names: tuple[str, str]) -> dict[str, Any]:
    old, new = told.old, told.new
    return {
        "of": old.format.removeprefix("wellposed/"),
        "old": {"name": names[0], **_identity(old)},
        "new": {"name": names[1], **_identity(new)},
        "lineage": _lineage(told.lineage),
    }


def _identity(one: Identity) -> dict[str, Any]:
    return {"id": one.id, "revision": one.revision, "sha256": one.digest}


def _lineage(one: Lineage) -> dict[str, Any]:
    return {"follows": one.follows, **asdict(one)}


def _content(told: Told) -> dict[str, Any]:
    if isinstance(told, SetupComparison):
        return _setups(told)
    return _reviews(told) if isinstance(told, ReviewComparison) else _prescriptions(told)


def _prescriptions(told: Comparison) -> dict[str, Any]:
    weighed = told.weighed
    return {
        "counts": told.counts(),
        "verdicts": {"before": weighed.before, "after": weighed.after},
        "introduced": [finding_object(one) for one in weighed.introduced],
        "settled": [finding_object(one) for one in weighed.settled],
        "standing": [finding_object(one) for one in weighed.standing],
        "clauses": [_clause(one) for one in told.clauses],
        "opposites": [asdict(one) for one in told.opposites],
        "facts": [asdict(one) for one in told.facts],
    }


def _clause(one: ClauseChange) -> dict[str, Any]:
    return {
        "change": one.change,
        "section": one.section,
        "before": _item(one.before),
        "after": _item(one.after),
        "asks": one.asks,
        "opens": one.opens,
        "members": [asdict(member) for member in one.members],
        "id_reused": one.reused,
    }


def _item(one: Item | None) -> dict[str, Any] | None:
    return None if one is None else {"id": one.id, "pointer": one.pointer, "words": part(one.part)}


def _setups(told: SetupComparison) -> dict[str, Any]:
    return {
        "answers": [_answers(one) for one in told.answers],
        "movements": [_amount(one) for one in told.movements],
        "amounts": [_amount(one) for one in told.amounts],
        "path": None if told.path is None else {arch: list(found) for arch, found in told.path.items()},
        "others": [asdict(one) for one in told.others],
    }


def _answers(one: Answers) -> dict[str, Any]:
    return {"id": one.id, "revision": one.revision, "sha256": one.sha256}


def _amount(one: Amount) -> dict[str, Any]:
    difference = None if one.difference is None else round(one.difference, 9)
    return {**asdict(one), "difference": difference, "changed": one.changed}


def _reviews(told: ReviewComparison) -> dict[str, Any]:
    return {
        "answers": [_answers(one) for one in told.answers],
        "prescriptions": [_answers(one) for one in told.prescriptions],
        "differences": [asdict(one) for one in told.differences],
    }


# histories


def history_json(told: History) -> str:
    """Every case with its documents, comparisons, clauses and findings; then the files that could not be used."""
    whole = {
        "cases": [_case(one) for one in told.cases],
        "unread": [_unread(one) for one in told.unread],
        **CLOSING,
        "format": "wellposed/history",
    }
    return dumped(whole, indent=2)


def _case(one: CaseHistory) -> dict[str, Any]:
    return {
        "id": one.id,
        "documents": [_document(held) for held in one.documents],
        "followed": [held.identity.digest for held in one.followed],
        "findings": [finding_object(found) for found in one.findings],
        "comparisons": [
            {
                "from": told.old.revision,
                "to": told.new.revision,
                "lineage": _lineage(told.lineage),
                **_prescriptions(told),
            }
            for told in one.comparisons
        ],
        "clauses": [_thread(thread) for thread in one.threads],
        "setups": [_moved(review) for review in one.reviews],
    }


def _document(one: Held) -> dict[str, Any]:
    return {
        "names": list(one.names),
        "kind": one.identity.format.removeprefix("wellposed/"),
        **_identity(one.identity),
        "issued": one.document.issued,
        "answers": [_answers(answer) for answer in one.answers],
    }


def _moved(review: SetupReview) -> dict[str, Any]:
    name, revision = review.setup
    return {
        "id": name,
        "revision": revision,
        "answers": review.prescription[1],
        "unasked": [unasked_object(one) for one in review.unasked],
    }


def _thread(thread: Thread) -> dict[str, Any]:
    return {
        "id": thread.last.id,
        "section": thread.last.section,
        "words": part(thread.last.part),
        "standing": thread.standing,
        "unmet_in_a_row": len(thread.still_unmet()),
        "undone": [{"met": list(one.met), "unmet": list(one.unmet), "doing": one.doing} for one in thread.undone()],
        "back_and_forth": list(thread.back_and_forth()),
        "steps": [_step(step) for step in thread.steps],
    }


def _step(step: Step) -> dict[str, Any]:
    outcomes = [
        {
            "setup": one.setup,
            "revision": one.revision,
            "outcome": one.outcome,
            "doing": one.doing,
            "leaning": one.leaning,
        }
        for one in step.outcomes
    ]
    item = None if step.item is None else step.item.id
    return {"revision": step.revision, "change": step.change, "clause": item, "outcomes": outcomes}


def _unread(one: Unread) -> dict[str, Any]:
    report = one.report
    return {
        "name": one.name,
        "verdict": report.verdict,
        "findings": [finding_object(found) for found in report.findings],
    }
