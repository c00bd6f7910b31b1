"""What a review has to say, as plain ordered data; the words are made in ``wellposed.render``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from wellposed.findings import Finding
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.terms import ReviewOutcome

Section = Literal[
    "goals",
    "keep",
    "movements",
    "allow",
    "exclude",
    "expect",
    "attachments",
    "staging",
    "appliance",
    "process",
    "retention",
]
Doing = Literal["setup", "prescription", "either"]


@dataclass(frozen=True, slots=True)
class Span:
    """A value known between bounds; both are the same where it is known exactly. Either may be open (None)."""

    low: float | None
    high: float | None


@dataclass(frozen=True, slots=True)
class Compared:
    """One thing a clause asks, beside what the setup delivers.

    what        the kind of thing compared: a variable of a tooth, a measure, or ``gap``, ``overlap``, ``reduction``,
                ``reduction-in-all``, ``alike`` (two incisors that were to go alike), ``width`` (what ``out`` makes of
                a pair's), ``displacement-left``, ``rotation-left``, ``extraction``, ``attachment``, ``statement`` (1
                yes, 0 no), ``aligners``, ``step`` (``where``: variable and tooth), ``wear-interval``, ``order``,
                ``level``
    where       the tooth or contact, arch or tooth pair ("11/41") it is taken at; "" for the mouth
    asked       bounds, in ``unit`` and the sense of ``what``: a variable in its own sign, a measure as its end value
    before      a measure's value at the start; None where it is a movement or not stated; of a measure that is kept
                without one, ``asked`` and ``delivered`` are changes
    delivered   what the setup delivers, likewise; None where that cannot be told
    difference  how far outside the bounds it is at the least, 0 within; signed: + is more than asked; None: not told
    tolerance   how far outside still counts as met
    met         True, False, or None where it cannot be told
    why         None, or why it cannot be told: ``not-stated`` (by the setup), ``no-baseline`` (no measurement in the
                prescription), ``hinge`` (it turns on how far a millimetre at the molars moves the bite),
                ``not-in-a-setup`` (no setup shows it), ``no-amount`` (the clause states none), ``teeth-missing``;
                ``expected`` where it is met only with a change that is counted on, or only without it
    counted_on  that change, in ``unit``; None where it is met without one
    """

    what: str
    where: str
    unit: str
    asked: Span
    before: float | None
    delivered: Span | None
    difference: float | None
    tolerance: float
    met: bool | None
    why: str | None = None
    counted_on: Span | None = None


@dataclass(frozen=True, slots=True)
class Nearer:
    """An amount, more than the tolerance: mm, deg, days ("d") or a count ("1")."""

    amount: float
    unit: str


@dataclass(frozen=True, slots=True)
class Reviewed:
    """One clause of the prescription, and what the setup makes of it.

    id, section, pointer   which clause, and where it stands in the prescription
    strength               ``must``, ``prefer``, or None for what carries none
    outcome                see ``ReviewOutcome``
    parts                  what was compared, tooth by tooth, contact by contact, or one measure
    doing                  of an unmet clause: ``setup``, another setup could have met it with all the rest;
                           ``prescription``, none could; ``either``, it cannot be told which
    against                the other members of the conflict that no setup can meet: clause ids, and the silences
                           ("silence of ...") as the report of the prescription names them
    nearer                 of a clause in a conflict: how much nearer to it another setup could have come with all else
                           no worse than here, so that it is the setup's doing also; None where it could not
    """

    id: str
    section: Section
    pointer: str
    strength: Literal["must", "prefer"] | None
    outcome: ReviewOutcome
    parts: tuple[Compared, ...] = ()
    doing: Doing | None = None
    against: tuple[str, ...] = ()
    nearer: Nearer | None = None


@dataclass(frozen=True, slots=True)
class Unasked:
    """A movement or a reduction that no clause opens, or that goes beyond what is opened.

    what       a variable, ``reduction``, or ``posterior-open-bite`` (of which ``delivered`` is the growth)
    where      tooth or contact; "" for the gap at the back
    delivered  signed as the setup states it, mm or deg
    opened     how far the prescription opens it in that sense, 0: not at all
    owner      the clause whose amount is passed, None where nothing opens it
    doing      as for a clause: ``prescription`` where the order cannot be met without breaking this silence
    nearer     how much of it another setup could have spared with all else no worse than here, where that is some but
               not all; else 0
    """

    what: Variable | Literal["reduction", "posterior-open-bite"]
    where: str
    unit: str
    delivered: float
    opened: float
    tolerance: float
    owner: str | None = None
    doing: Doing = "setup"
    nearer: float = 0.0

    @property
    def beyond(self) -> float:
        """How far beyond what is opened."""
        return abs(self.delivered) - self.opened


@dataclass(frozen=True, slots=True)
class MeasureLine:
    """One measure before, after, and as the laboratory states it.

    before    value today, None if not measured (then ``after`` is a change, ``is_change``)
    after     computed from the movements, exactly; bounds where the hinge leaves room; None if it cannot be told
    linear    the same by the sums of the check, at the middle of its bounds
    claimed   what the setup predicts, None if it says nothing
    agrees    whether the claim agrees within the tolerance; None where there is nothing to compare
    """

    measure: str
    where: str
    unit: str
    before: float | None
    after: Span | None
    linear: float | None
    claimed: float | None
    tolerance: float
    agrees: bool | None
    is_change: bool = False


@dataclass(frozen=True, slots=True)
class SetupReview:
    """A setup held against a prescription.

    prescription, setup   (id, revision) of each
    verdict               that of the check of the prescription
    clauses               in the order of the prescription
    unasked               what moved though nothing opened it, tooth by tooth
    measures              every measure that changes, is asked or is claimed
    profile, changes      the practice profile, and what it changed: (key or rule, from, to)
    findings              on the setup itself: form, staging, what its movements mean clinically; heaviest first
    """

    prescription: tuple[str, int]
    setup: tuple[str, int]
    verdict: str
    clauses: tuple[Reviewed, ...]
    unasked: tuple[Unasked, ...]
    measures: tuple[MeasureLine, ...]
    findings: tuple[Finding, ...]
    profile: str | None = None
    changes: tuple[tuple[str, float | str, float | str], ...] = ()

    @property
    def unmet(self) -> tuple[Reviewed, ...]:
        """Clauses that must hold and do not, and allowances passed."""
        return tuple(
            c for c in self.clauses if (c.outcome == "not-met" and c.strength != "prefer") or c.outcome == "beyond"
        )
