"""A review as JSON, described by ``spec/schema/1/setup-review.schema.json``. Amounts are as computed."""

from __future__ import annotations

from collections import Counter
from typing import Any, get_args

from wellposed.model import Prescription
from wellposed.render.json_report import CLOSING, dumped, finding_object, profile_object
from wellposed.render.review.clause_words import in_words, part_of
from wellposed.render.review.delivered import grouped
from wellposed.review.requests import unopened
from wellposed.review.result import Compared, MeasureLine, Reviewed, SetupReview, Span, Unasked
from wellposed.vocabulary.terms import ReviewOutcome

__all__ = ["review_json", "unasked_object"]

FORMAT = "wellposed/setup-review"
OUTCOMES = get_args(ReviewOutcome)


def review_json(review: SetupReview, prescription: Prescription, names: tuple[str, str]) -> str:
    """Everything a review says; ``names`` are the base names of the files of prescription and setup."""
    counts = Counter(one.outcome for one in review.clauses)
    whole = {
        "unmet": [one.id for one in review.unmet],
        "counts": {outcome: counts[outcome] for outcome in OUTCOMES} | {"unasked": len(unopened(review))},
        "setup": _document(names[1], review.setup),
        "prescription": _document(names[0], review.prescription) | {"verdict": review.verdict},
        "clauses": [_clause(one, prescription) for one in review.clauses],
        "unasked": [unasked_object(one) for one in review.unasked],
        "measures": [_measure(one) for one in review.measures],
        "findings": [finding_object(one) for one in review.findings],
        "profile": profile_object(review.profile, review.changes),
        **CLOSING,
        "format": FORMAT,
    }
    return dumped(whole, indent=2)


def _document(name: str, named: tuple[str, int]) -> dict[str, Any]:
    return {"name": name, "id": named[0], "revision": named[1]}


def _clause(one: Reviewed, prescription: Prescription) -> dict[str, Any]:
    clause = part_of(prescription, one)
    return {
        "clause": one.id,
        "section": one.section,
        "pointer": one.pointer,
        "strength": one.strength,
        "outcome": one.outcome,
        "asked": in_words(clause),
        "delivered": list(grouped(one.parts, one.section, clause)),
        "doing": one.doing,
        "against": list(one.against),
        "nearer": None if one.nearer is None else {"amount": one.nearer.amount, "unit": one.nearer.unit},
        "parts": [_part(part) for part in one.parts],
    }


def _part(part: Compared) -> dict[str, Any]:
    return {
        "what": part.what,
        "where": part.where,
        "unit": part.unit,
        "asked": _span(part.asked),
        "before": part.before,
        "delivered": _span(part.delivered),
        "difference": part.difference,
        "tolerance": part.tolerance,
        "met": part.met,
        "why": part.why,
        "counted_on": _span(part.counted_on),
    }


def _span(span: Span | None) -> dict[str, float | None] | None:
    return None if span is None else {"least": span.low, "most": span.high}


def unasked_object(one: Unasked) -> dict[str, Any]:
    """What moved unasked, as JSON."""
    return {
        "what": one.what,
        "where": one.where,
        "unit": one.unit,
        "delivered": one.delivered,
        "opened": one.opened,
        "beyond": one.beyond,
        "tolerance": one.tolerance,
        "owner": one.owner,
        "doing": one.doing,
        "nearer": one.nearer,
    }


def _measure(line: MeasureLine) -> dict[str, Any]:
    return {
        "measure": line.measure,
        "where": line.where,
        "unit": line.unit,
        "before": line.before,
        "after": _span(line.after),
        "is_change": line.is_change,
        "linear": line.linear,
        "claimed": line.claimed,
        "tolerance": line.tolerance,
        "agrees": line.agrees,
    }
