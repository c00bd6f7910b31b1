"""A clause of the prescription in words, for one line of a review."""

from __future__ import annotations

from typing import Any

from wellposed.model import Prescription
from wellposed.model.base import Part
from wellposed.model.making import Retention, Staging
from wellposed.render.amounts import amount
from wellposed.render.phrases import clause
from wellposed.render.readback.making import RETAINERS
from wellposed.render.words import VARIABLE_WORDS
from wellposed.review.named import clause_of
from wellposed.review.result import Reviewed

__all__ = ["in_words", "part_of"]


def part_of(prescription: Prescription, reviewed: Reviewed) -> Any:
    """The clause a review speaks of. KeyError where the prescription has none of this id."""
    return clause_of(prescription, reviewed.section, reviewed.id)


def in_words(part: Part) -> str:
    """The clause, without its id."""
    if isinstance(part, Retention):
        return f"{RETAINERS[part.retainer].rstrip(',')}, {part.arch} arch"
    if isinstance(part, Staging):
        return _staging(part)
    return clause(part.model_dump(exclude_none=True, mode="json"))


def _staging(part: Staging) -> str:
    days = part.wear_interval_days
    told = [f"at most {part.most_aligners} aligners"] if part.most_aligners is not None else []
    told += [f"each worn {days} day{'' if days == 1 else 's'}"] if days is not None else []
    steps = [f"{VARIABLE_WORDS[one.variable]} {amount(one.amount, one.unit)}" for one in part.largest_steps or ()]
    told += [f"largest steps: {', '.join(steps)}"] if steps else []
    return ", ".join(told) or "the order of the clauses"
