"""A review as the rules look at it: clauses with their outcomes, and requests as the clauses of a prescription."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from functools import cached_property

from wellposed.consistency.whole import Mention, Place, Section, Written
from wellposed.model.review import Requests, Review

_TO_CLAUSES = ("because", "accepted", "revising")


@dataclass(frozen=True)
class WholeReview(Written):
    """A review, looked up."""

    document: Review

    def sections(self) -> Iterable[Section]:
        """The clauses, each section of the requests under its own name, and the notes."""
        review = self.document
        yield Section("clauses", "/clauses", review.clauses)
        for name in Requests.model_fields:
            yield Section(name, f"/requests/{name}", getattr(review.requests, name, None))
        yield Section("notes", "/notes", review.notes)

    def whole(self) -> Iterable[Place]:
        """The review itself names the clauses that are accepted, and those that are revised."""
        return (Place("", "", "", self.document),)

    @cached_property
    def listed(self) -> dict[str, str]:
        """Every clause of the prescription that the review lists: where it first stands."""
        found: dict[str, str] = {}
        for at, one in enumerate(self.document.clauses):
            found.setdefault(one.clause, f"/clauses/{at}/clause")
        return found

    def named(self, reference: Mention) -> Collection[str]:
        """Reasons, and what is accepted or revised, are clauses it lists; the rest may be a request as well."""
        return self.listed if reference.member in _TO_CLAUSES else {**self.listed, **self.ids}

    @property
    def asks(self) -> bool:
        """Whether anything is requested; requests that are all empty ask nothing."""
        requests = self.document.requests
        return requests is not None and any(getattr(requests, name) for name in Requests.model_fields)
