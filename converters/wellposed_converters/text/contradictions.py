"""What cannot hold together between the clauses of one note, and what is unusual enough to be confirmed.

Both clauses always stay; a question links them (R15). Each class of contradiction is a generator of ``checks``.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from wellposed_converters.text.checks import (
    findings,
    forced,
    locked,
    numbers,
    room,
    same_item,
    same_parameter,
    scope,
    spaces,
    staged,
    sums,
    teeth_used,
)
from wellposed_converters.text.checks.order import STOP, Order, Rule
from wellposed_converters.text.clause import Clause, Question

RULES: Final[tuple[Rule, ...]] = (
    same_item.forbidden,
    same_item.restricted,
    same_item.conditional,
    spaces.too_small,
    spaces.widths,
    spaces.space_kept,
    spaces.closed_and_left,
    same_parameter.kept,
    same_parameter.targets,
    same_parameter.direction,
    same_parameter.sides,
    numbers.crossed,
    numbers.extractions,
    numbers.asked_twice,
    numbers.opposed,
    sums.sum_against_total,
    sums.never_reached,
    sums.surfaces,
    sums.two_units,
    locked.locked_moved,
    locked.locked_widened,
    locked.locked_loaded,
    locked.immovable,
    locked.bridged,
    locked.retained,
    locked.bodily,
    teeth_used.gone,
    teeth_used.restored,
    teeth_used.unbonded,
    scope.outside,
    scope.side_against_teeth,
    scope.arch_against_teeth,
    room.no_source,
    room.budget,
    forced.overbite,
    forced.overjet,
    forced.against_finding,
    forced.midline,
    findings.spaced,
    findings.class_one,
    findings.overjet_and_crossbite,
    findings.class_and_overjet,
    findings.open_and_deep,
    findings.elastics,
    staged.timing,
    staged.too_few,
    staged.too_long,
)

REMARKS: Final[tuple[Rule, ...]] = (numbers.repeated, sums.total_governs)
"""What is worth a remark and never an answer."""


def contradictions(clauses: Sequence[Clause], text: str = "") -> tuple[Question, ...]:
    """The questions that clauses raise together, in the order of the text; ``text`` is what their spans point into.

    The level among a question's facts is ``stop`` (they cannot both hold) or ``confirm`` (they can, but one swallows
    the other or the sum is odd). Without the text nothing that hangs on its words is found: a correction of something
    said before, a direction beside a target.
    """
    order = Order(tuple(clauses), text)
    return _one_a_cause([question for rule in RULES for question in rule(order)])


def remarks(clauses: Sequence[Clause], text: str = "") -> tuple[Question, ...]:
    """What may be said of clauses together that needs no answer; the level is ``note``."""
    order = Order(tuple(clauses), text)
    return tuple(question for rule in REMARKS for question in rule(order))


def _one_a_cause(found: Sequence[Question]) -> tuple[Question, ...]:
    """One question for the same clauses, the first rule's; none for some of the clauses of a question no weaker."""
    kept: list[Question] = []
    for number, question in enumerate(found):
        others = [*kept, *found[number + 1 :]]
        if not any(question.concerns == other.concerns for other in kept) and not _is_covered(question, others):
            kept.append(question)
    return tuple(sorted(kept, key=lambda question: question.spans))


def _is_covered(question: Question, others: Iterable[Question]) -> bool:
    return any(set(question.concerns) < set(other.concerns) and _is_no_weaker(other, question) for other in others)


def _is_no_weaker(one: Question, other: Question) -> bool:
    return dict(one.facts)["level"] == STOP or dict(other.facts)["level"] != STOP
