"""What a clause's way through the revisions says: unmet again and again, undone, asked back and forth."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from math import ceil
from typing import TYPE_CHECKING, Any

from wellposed.findings import Severity
from wellposed.norms import Norms
from wellposed.revisions.case import Conversation
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.chart import Chart

if TYPE_CHECKING:
    from wellposed.revisions.threads import Thread  # the rules are listed without what reviews a setup

_UNMET = "caution.revisions-unmet"
_NO_SETUP = " By then no setup could meet it: something else in the order stands against it."
_TERMS = ("problem", "measure", "tooth_measure")


@dataclass(frozen=True)
class Followed:
    """A case with its clauses followed."""

    case: Conversation
    threads: tuple[Thread, ...]

    @property
    def numbers(self) -> Norms:
        """The norms."""
        return self.case.numbers

    @cached_property
    def chart(self) -> Chart:
        """The last revision, looked up."""
        return Chart(self.case.orders[-1], self.numbers)

    def figure(self, key: str) -> dict[str, Any]:
        """A number of the norms as a finding tells it."""
        return self.chart.figure(key)


@rule(
    "look-at-the-diagnosis-again",
    Severity.CAUTION,
    title="A clause is still unmet after several revisions.",
    says="{asked:clause}: unmet in the last {times} setups in a row ({setups:list}). From {least} on this is said."
    "{rests}",
    do="Look at the diagnosis again: is this the right clause, and does what it rests on still hold?",
    change="A setup that meets it, or another clause in its place, would change it.",
    figures=(_UNMET,),
)
def look_at_the_diagnosis_again(followed: Followed) -> Iterator[Told]:
    """No clause that must hold is left unmet by one setup after another, while the order goes on asking for it.

    Where the same thing fails again, the plan is seldom at fault; more often the diagnosis is.

    Evidence: the number is common practice, without a study. Each revision of a setup counts once. A setup that cannot
    tell is passed over; the count begins anew with one that meets the clause, and with a revision that turns it round
    or drops it.

    Passes: {"case": [{"goals": [{"id": "g1", "strength": "must", "level": "lower"}]},
                      {"setup": {"g1": "not-met"}}, {"setup": {"g1": "not-met"}}]}
    Fails: {"case": [{"goals": [{"id": "g1", "strength": "must", "level": "lower"}]},
                     {"setup": {"g1": "not-met"}}, {"setup": {"g1": "not-met"}}, {"setup": {"g1": "not-met"}}]}
    """
    for thread in followed.threads:
        run = thread.still_unmet()
        if thread.standing and len(run) >= followed.numbers.value(_UNMET):
            names = [f"{one.setup} {one.revision}" for one in run]
            rests = _rests(followed, thread)
            facts = {"asked": said(thread.last.part), "times": len(run), "setups": names, "because": list(rests)}
            facts["least"] = ceil(followed.numbers.value(_UNMET))
            yield told(
                thread.last.pointer, thread.last.id, *rests, **facts, rests=_why(followed, rests), figures=(_UNMET,)
            )


def _rests(followed: Followed, thread: Thread) -> tuple[str, ...]:
    """Ids of the findings and problems a clause answers, those behind its problems too."""
    place = followed.chart.place(thread.last.id)
    return followed.chart.because(place) if place else ()


def _why(followed: Followed, rests: tuple[str, ...]) -> str:
    named = [_ground(followed, name) for name in rests]
    return f" It rests on: {', '.join(named)}." if named else " It names nothing that it rests on."


def _ground(followed: Followed, name: str) -> str:
    """A finding or problem by its term and id."""
    place = followed.chart.place(name)
    term = next((one for member in _TERMS if place and (one := place.said(member))), "")
    return f"{str(term).replace('-', ' ')} ({name})" if term else name


@rule(
    "met-then-undone",
    Severity.CAUTION,
    title="A clause was met by one setup and is not by a later one.",
    says="{asked:clause}: met by setup {met}, no longer by setup {unmet}, though of it no more was asked.{could}",
    do="Ask for what was reached before, or say which of the two is wanted.",
    change="A setup that meets it again would change it.",
)
def met_then_undone(followed: Followed) -> Iterator[Told]:
    """What a setup met is still met by the next, unless more was asked in between.

    A later setup is made from the start of treatment again; what had been right is easily lost on the way.

    Evidence: none is needed. A clause that was tightened, turned round or dropped in between is not counted; one met
    again since is not told.

    Passes: {"case": [{"goals": [{"id": "g1", "strength": "must", "level": "lower"}]},
                      {"setup": {"g1": "not-met"}}, {"setup": {"g1": "met"}}]}
    Fails: {"case": [{"goals": [{"id": "g1", "strength": "must", "level": "lower"}]},
                     {"setup": {"g1": "met"}}, {"setup": {"g1": "not-met"}}]}
    """
    for thread in followed.threads:
        undone = list(thread.undone())
        if undone and thread.standing and not thread.met_last():
            met, unmet = (f"{name} {revision}" for name, revision in (undone[-1].met, undone[-1].unmet))
            could = _NO_SETUP if undone[-1].doing == "prescription" else ""
            facts = {"asked": said(thread.last.part), "met": met, "unmet": unmet, "could": could}
            yield told(thread.last.pointer, thread.last.id, **facts)


@rule(
    "asked-back-and-forth",
    Severity.CAUTION,
    title="A clause goes back and forth between revisions.",
    says="{asked:clause}: revision {revisions:list} asks again what an earlier one asked and another took back.",
    do="Say which is meant, and why; look at what was made on the one in between.",
    change="One instruction kept over the revisions would change it.",
)
def asked_back_and_forth(followed: Followed) -> Iterator[Told]:
    """No clause returns to what an earlier revision said after another changed or dropped it, and none is turned round
    twice.

    Each turn costs a setup, and what was made in between is undone.

    Evidence: none is needed. What a clause says is compared without its id and its reasons.

    Passes: {"case": [{"keep": [{"id": "k1", "strength": "must", "hold": ["16"]}]},
                      {"keep": [{"id": "k1", "strength": "must", "hold": ["16", "26"]}]}]}
    Fails: {"case": [{"keep": [{"id": "k1", "strength": "must", "hold": ["16"]}]},
                     {"keep": [{"id": "k1", "strength": "must", "hold": ["16", "26"]}]},
                     {"keep": [{"id": "k1", "strength": "must", "hold": ["16"]}]}]}
    """
    for thread in followed.threads:
        turns = thread.back_and_forth()
        if turns:
            facts = {"asked": said(thread.last.part), "revisions": [str(one) for one in turns]}
            yield told(thread.last.pointer if thread.standing else "", thread.last.id, **facts)


RULES = (look_at_the_diagnosis_again, met_then_undone, asked_back_and_forth)
