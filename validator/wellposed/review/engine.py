"""A setup held against its prescription: every clause, every movement, every measure."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Literal, cast

from wellposed import norms
from wellposed.findings import ordered
from wellposed.model.prescription import Prescription
from wellposed.model.setup import Setup
from wellposed.norms import Norms
from wellposed.review.allowed import allowance_parts, used
from wellposed.review.doing import broken_by, with_doing
from wellposed.review.goals import goal_parts
from wellposed.review.held import Held
from wellposed.review.kept import exclusion_parts, keep_parts, movement_parts
from wellposed.review.lines import measure_lines
from wellposed.review.made import attachment_parts, attachment_strength, staging_parts, stated_parts
from wellposed.review.matter import Matter
from wellposed.review.reach import Reach
from wellposed.review.result import Compared, Reviewed, Section, SetupReview, Unasked
from wellposed.review.rules import setup_findings
from wellposed.review.signs import questions
from wellposed.review.silence import unasked
from wellposed.review.weighing import outcome, telling
from wellposed.vocabulary.terms import ReviewOutcome

Strength = Literal["must", "prefer"] | None
_BY_WORD: tuple[Section, ...] = ("appliance", "process", "retention")


def review(prescription: Prescription, setup: Setup, numbers: Norms | None = None) -> SetupReview:
    """Hold a setup against the prescription it answers. Both must be sound by themselves.

    numbers  norms with a practice profile in place; the published ones by default
    """
    matter = Matter(prescription, setup, numbers or norms.load())
    lines = measure_lines(matter)
    reach = Reach(matter)
    broken = tuple(broken_by(matter.judgement, reach, one) for one in unasked(matter))
    clauses = tuple(with_doing(matter.judgement, reach, one) for one in _clauses(matter, broken))
    return SetupReview(
        (prescription.id, prescription.revision),
        (setup.id, setup.revision),
        matter.judgement.verdict,
        clauses,
        broken,
        lines,
        ordered((*setup_findings(Held(matter, lines)), *questions(matter, lines))),
        matter.numbers.profile,
        tuple((change.key, change.before, change.after) for change in matter.numbers.changes),
    )


def _clauses(matter: Matter, broken: tuple[Unasked, ...]) -> Iterator[Reviewed]:
    rx = matter.prescription
    for number, goal in enumerate(rx.goals or ()):
        yield _told("goals", number, goal.id, goal.strength, goal_parts(matter, goal))
    for number, kept in enumerate(rx.keep or ()):
        yield _told("keep", number, kept.id, kept.strength, keep_parts(matter, kept))
    for number, order in enumerate(rx.movements or ()):
        yield _told("movements", number, order.id, order.strength, movement_parts(matter, order))
    for number, item in enumerate(rx.allow or ()):
        parts = allowance_parts(matter, item, broken)
        yield _made("allow", number, item.id, None, used(item, parts), parts)
    for number, barred in enumerate(rx.exclude or ()):
        yield _told("exclude", number, barred.id, "must", exclusion_parts(matter, barred))
    yield from _making(matter)


def _making(matter: Matter) -> Iterator[Reviewed]:
    rx = matter.prescription
    for number, item in enumerate(rx.attachments or ()):
        strength = cast("Strength", attachment_strength(item))
        parts = attachment_parts(matter, item)
        told = outcome(parts)
        yield _made(
            "attachments", number, item.id, strength, "within" if strength is None and told == "met" else told, parts
        )
    if rx.staging is not None:
        parts = staging_parts(matter, rx.staging)
        yield Reviewed(rx.staging.id, "staging", "/staging", rx.staging.strength, outcome(parts), telling(parts))
    for section in _BY_WORD:
        for number, item in enumerate(cast("tuple[Any, ...]", getattr(rx, section) or ())):
            parts = stated_parts(matter, item.id)
            told = outcome(parts)
            yield _made(section, number, item.id, None, "declared" if told == "met" else told, parts)


def _told(section: Section, number: int, name: str, strength: Strength, parts: list[Compared]) -> Reviewed:
    return _made(section, number, name, strength, outcome(parts) if parts else "cannot-be-told", parts)


def _made(
    section: Section, number: int, name: str, strength: Strength, told: ReviewOutcome, parts: list[Compared]
) -> Reviewed:
    return Reviewed(name, section, f"/{section}/{number}", strength, told, telling(parts))
