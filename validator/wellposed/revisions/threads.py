"""Clauses followed through the revisions of a case: asked, changed, met, undone."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Literal

from wellposed.model import Prescription, Setup
from wellposed.norms import Norms
from wellposed.review.requests import leaning
from wellposed.review.result import Doing, Reviewed, SetupReview
from wellposed.revisions.case import Conversation, Held
from wellposed.revisions.clauses import Matched
from wellposed.revisions.meaning import about, items, meaning
from wellposed.revisions.result import Change, ClauseChange, Item
from wellposed.vocabulary.terms import ReviewOutcome

Reviewer = Callable[[Prescription, Setup, Norms], SetupReview]
"""What holds a setup against the prescription it answers."""

StepChange = Change | Literal["asked", "again"]
"""Beside what a comparison says: asked in the first revision at hand; again, after it had been dropped."""

MET, UNMET = ("met", "within"), ("not-met", "beyond")
_FACTS = ("findings", "problems")


@dataclass(frozen=True, slots=True)
class Outcome:
    """What one setup makes of a clause. ``binding``: not a mere wish. ``leaning``: met only with what is counted on."""

    setup: str
    revision: int
    outcome: ReviewOutcome
    binding: bool
    doing: Doing | None = None
    leaning: bool = False

    @property
    def unmet(self) -> bool:
        """Whether it must hold and does not, or is passed."""
        return self.binding and self.outcome in UNMET


@dataclass(frozen=True, slots=True)
class Step:
    """A clause in one revision: how it changed to come there, what the setups answering it make of it.

    item    None in the revision that drops it
    harder  whether it asks more of a setup than in the revision before, or opens less
    """

    revision: int
    change: StepChange
    item: Item | None
    outcomes: tuple[Outcome, ...] = ()
    harder: bool = False


@dataclass(frozen=True, slots=True)
class Undone:
    """Met in one setup, unmet in a later one, and not asked for more in between: setup and revision of each.

    doing  of the later one: whether another setup could have met it by then
    """

    met: tuple[str, int]
    unmet: tuple[str, int]
    doing: Doing | None = None


@dataclass
class Thread:
    """One clause through all revisions."""

    steps: list[Step] = field(default_factory=list)

    @property
    def first(self) -> Item:
        """The clause as it was first said."""
        return next(step.item for step in self.steps if step.item is not None)

    @property
    def last(self) -> Item:
        """The clause as it was last said."""
        return next(step.item for step in reversed(self.steps) if step.item is not None)

    @property
    def standing(self) -> bool:
        """Whether the last revision still says it."""
        return self.steps[-1].item is not None

    def undone(self) -> Iterator[Undone]:
        """Each time it was met and then was not, though no more was asked."""
        met: tuple[str, int] | None = None
        for step in self.steps:
            met = None if step.harder else met
            for one in step.outcomes:
                at = (one.setup, one.revision)
                if one.outcome in MET:
                    met = at
                elif one.outcome in UNMET and met is not None:
                    yield Undone(met, at, one.doing)
                    met = None

    def met_last(self) -> bool:
        """Whether the last setup that can tell meets it."""
        told = [one for step in self.steps for one in step.outcomes if one.outcome in (*MET, *UNMET)]
        return bool(told) and told[-1].outcome in MET

    def still_unmet(self) -> tuple[Outcome, ...]:
        """The last setups in a row that leave it unmet, each revision once; one that cannot tell is passed over."""
        run: dict[tuple[str, int], Outcome] = {}
        for step in self.steps:
            run = {} if step.change == "reversed" or step.item is None else run
            for one in step.outcomes:
                run = {} if one.outcome in MET else run | ({(one.setup, one.revision): one} if one.unmet else {})
        return tuple(run.values())

    def back_and_forth(self) -> tuple[int, ...]:
        """The revisions that ask again what one asked and a later one did not, or turn it round once more."""
        said = [(step.revision, _said(step.item)) for step in self.steps]
        turns = [said[0], *(now for before, now in pairwise(said) if now[1] != before[1])]
        texts = [text for _, text in turns]
        again = {revision for place, (revision, text) in enumerate(turns) if text and text in texts[:place]}
        turned = [step.revision for step in self.steps if step.change == "reversed"]
        return tuple(sorted({*again, *turned[1:]}))


def _said(item: Item | None) -> str | None:
    return None if item is None else repr(sorted(meaning(item.part).items()))


Reviews = dict[str, tuple[SetupReview, ...]]
"""By the digest of a prescription, what its setups make of it, in the order of their revisions."""


def reviewed(case: Conversation, reviewer: Reviewer) -> tuple[Reviews, tuple[Held, ...]]:
    """Every setup held against the prescription it answers; and the setups with which the reviewer failed."""
    found: dict[str, list[SetupReview]] = {}
    failed = []
    for order in case.line:
        for held, setup in case.answering(order):
            try:
                told = reviewer(_order(order), setup, case.numbers)
            except Exception:
                failed.append(held)
            else:
                found.setdefault(order.identity.digest, []).append(told)
    return {digest: tuple(reviews) for digest, reviews in found.items()}, tuple(failed)


def threads(case: Conversation, reviews: Reviews) -> tuple[Thread, ...]:
    """Every clause of a case in the order in which the revisions bring them; findings and problems are left out."""
    found: list[Thread] = []
    before: Held | None = None
    for order in case.line:
        _follow(found, before, order, _outcomes(reviews.get(order.identity.digest, ())))
        before = order
    return tuple(found)


def _follow(found: list[Thread], before: Held | None, order: Held, told: dict[str, tuple[Outcome, ...]]) -> None:
    """Go on with every clause into one more revision."""
    revision = order.identity.revision
    if before is None:
        asked = (item for item in items(_order(order)) if item.section not in _FACTS)
        found.extend(Thread([Step(revision, "asked", item, told.get(item.id, ()))]) for item in asked)
        return
    open_ends = {thread.last.pointer: thread for thread in found if thread.standing}
    ended = [thread for thread in found if not thread.standing]
    for change in Matched(_order(before), _order(order)).changes():
        if change.section not in _FACTS:
            outcomes = told.get(change.after.id, ()) if change.after else ()
            thread, how = _thread(change, open_ends, ended)
            if not thread.steps:
                found.append(thread)
            thread.steps.append(Step(revision, how, change.after, outcomes, _harder(change)))


def _thread(change: ClauseChange, ends: dict[str, Thread], ended: Sequence[Thread]) -> tuple[Thread, StepChange]:
    """The thread a change goes on with; a clause that comes back after it was dropped is the same clause."""
    if change.before is not None:
        return ends[change.before.pointer], change.change
    added = change.after
    back = next((one for one in ended if added and not one.standing and about(one.last) == about(added)), None)
    return (back, "again") if back else (Thread(), "added")


def _harder(change: ClauseChange) -> bool:
    return None in (change.before, change.after) or change.asks in ("more", "both") or change.opens in ("less", "both")


def _order(held: Held) -> Prescription:
    assert isinstance(held.document, Prescription)
    return held.document


def _outcomes(reviews: Iterable[SetupReview]) -> dict[str, tuple[Outcome, ...]]:
    """What the setups that answer a revision make of its clauses, by clause id."""
    found: dict[str, tuple[Outcome, ...]] = {}
    for review in reviews:
        for one in review.clauses:
            told = Outcome(*review.setup, one.outcome, _binds(one), one.doing, leaning(one))
            found[one.id] = (*found.get(one.id, ()), told)
    return found


def _binds(one: Reviewed) -> bool:
    return one.strength != "prefer"
