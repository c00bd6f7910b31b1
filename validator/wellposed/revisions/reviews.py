"""Two reviews compared: the outcome, what is said of each clause, what is asked for next."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from wellposed.model.base import Part
from wellposed.model.envelope import Answers
from wellposed.model.review import Requests, Review
from wellposed.revisions.comparing import identity, lineage
from wellposed.revisions.meaning import meaning, referred
from wellposed.revisions.result import Identity, Lineage


@dataclass(frozen=True, slots=True)
class Said:
    """One thing two reviews differ in.

    what    ``outcome``, ``unopened``, ``clause``, ``accepted``, ``revising``, ``request``, or a member that is not
            repeated
    name    the clause or request it is of; "" for the review as a whole
    before, after  JSON values; None: not there, or not repeated
    """

    what: str
    name: str
    before: Any = None
    after: Any = None


@dataclass(frozen=True, slots=True)
class ReviewComparison:
    """Two reviews; ``answers`` are the setups, ``prescriptions`` the orders they are about."""

    old: Identity
    new: Identity
    lineage: Lineage
    answers: tuple[Answers, Answers]
    prescriptions: tuple[Answers, Answers]
    differences: tuple[Said, ...]


def reviews_compared(old: Review, new: Review) -> ReviewComparison:
    """Two reviews, whatever they answer."""
    return ReviewComparison(
        identity(old),
        identity(new),
        lineage(old, new),
        (old.answers, new.answers),
        (old.prescription, new.prescription),
        tuple(_differences(old, new)),
    )


def _differences(old: Review, new: Review) -> Iterator[Said]:
    for member in ("outcome", "unopened"):
        said = [getattr(review, member) for review in (old, new)]
        if said[0] != said[1]:
            yield Said(member, "", *said)
    before, after = ({one.clause: one.outcome for one in review.clauses} for review in (old, new))
    yield from _apart("clause", before, after)
    for member in ("accepted", "revising"):
        named = (dict.fromkeys(getattr(review, member) or (), True) for review in (old, new))
        yield from _apart(member, *named)
    yield from _requests(old, new)
    for member in ("reviewer", "notes", "extensions"):
        if getattr(old, member) != getattr(new, member):
            yield Said(member, "")


def _requests(old: Review, new: Review) -> Iterator[Said]:
    """Requests by their ids; those that say the same in another order of their lists are no difference."""
    before, after = _asked(old.requests), _asked(new.requests)
    for name in dict.fromkeys((*before, *after)):
        if _meant(before.get(name)) != _meant(after.get(name)):
            yield Said("request", name, *(_plain(asked.get(name)) for asked in (before, after)))


def _asked(requests: Requests | None) -> dict[str, Part]:
    if requests is None:
        return {}
    lists = (getattr(requests, name) or () for name in type(requests).model_fields)
    parts = (part for value in lists for part in (value if isinstance(value, tuple) else (value,)))
    return {part.id: part for part in parts}


def _meant(part: Part | None) -> dict[str, Any] | None:
    return None if part is None else meaning(part, {name: name for name in referred(part)})


def _plain(part: Part | None) -> dict[str, Any] | None:
    return None if part is None else part.model_dump(exclude_none=True, mode="json")


def _apart(what: str, before: dict[str, Any], after: dict[str, Any]) -> Iterator[Said]:
    for name in dict.fromkeys((*before, *after)):
        if before.get(name) != after.get(name):
            yield Said(what, name, before.get(name), after.get(name))
