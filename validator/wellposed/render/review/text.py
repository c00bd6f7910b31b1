"""A review as text for a dentist: what is not met first, what is met in short, the measures, the caution."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from textwrap import wrap

from wellposed.findings import CAUTION, Finding
from wellposed.model import Prescription
from wellposed.model.setup import Setup
from wellposed.render.review.clause_words import part_of
from wellposed.render.review.head import OTHER, head
from wellposed.render.review.laid import listed, section, wrapped
from wellposed.render.review.lists import claims, declared, met, unasked, untold
from wellposed.render.review.table import table
from wellposed.render.review.unmet import unmet_block
from wellposed.render.review.words import DOING
from wellposed.render.text import SCOPE, headings, numbered, profile_line
from wellposed.review.requests import unopened
from wellposed.review.result import Reviewed, SetupReview

__all__ = ["review_text"]

_HEADINGS = headings("setup")


def review_text(review: SetupReview, prescription: Prescription, setup: Setup, width: int = 100) -> str:
    """The whole review, ending in a line break; ``width`` is the longest line, in characters."""
    parts = [
        "\n".join(wrap(head(review), width)) + "\n",
        *_findings([one for one in review.findings if one.rule in OTHER], width),
        *_unmet(review, prescription, width),
        *_clauses("Wishes not met", _wishes(review), prescription, width),
        section("What moved though nothing opened it", _bullets(unasked(unopened(review)), width)),
        section("What the laboratory states otherwise", _bullets(claims(review), width)),
        *_findings([one for one in review.findings if one.rule not in OTHER], width),
        section("What cannot be told", _bullets(untold(review.clauses, prescription), width)),
        section("What only the laboratory says", listed(declared(review.clauses, prescription, setup), width)),
        section("What is met", listed(met(review.clauses, prescription), width)),
        section("Measures", table(review.measures, width)),
        _foot(review, width),
    ]
    return "\n".join(part for part in parts if part) + "\n"


def _unmet(review: SetupReview, prescription: Prescription, width: int) -> Iterator[str]:
    """By whose doing it is; what must hold before allowances passed."""
    for doing, heading in DOING.items():
        told = [one for one in review.unmet if one.doing == doing]
        told.sort(key=lambda one: one.outcome == "beyond")
        yield from _clauses(heading, told, prescription, width)


def _wishes(review: SetupReview) -> Iterator[Reviewed]:
    return (one for one in review.clauses if one.outcome == "not-met" and one.strength == "prefer")


def _clauses(heading: str, clauses: Iterable[Reviewed], prescription: Prescription, width: int) -> Iterator[str]:
    told = [unmet_block(one, part_of(prescription, one), width) for one in clauses]
    if told:
        yield "\n".join(wrap(heading, width)) + "\n"
        yield from told


def _bullets(lines: Iterable[str], width: int) -> Iterator[str]:
    return (line for told in lines for line in wrapped("- ", told, width))


def _findings(findings: list[Finding], width: int) -> Iterator[str]:
    """The findings on the setup, as those of a report."""
    if len([one for one in findings if not one.under]) == 1:
        yield f"{_HEADINGS[findings[0].severity]}\n"
    yield from numbered(findings, width, headings=_HEADINGS)


def _foot(review: SetupReview, width: int) -> str:
    profile = [profile_line(review.profile, review.changes)] if review.profile else []
    return "\n".join(line for part in (*profile, SCOPE, CAUTION) for line in wrap(part, width))
