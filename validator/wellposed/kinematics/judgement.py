"""The answer of the kinematics, as data."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from wellposed.kinematics.mouth import Assumption
from wellposed.kinematics.repair import Repair
from wellposed.kinematics.rows import Key, Kind
from wellposed.kinematics.search import Members
from wellposed.kinematics.translate import Unmet

Verdict = Literal["possible", "beyond-practice", "incomplete", "undecided", "contradictory"]
VERDICTS: tuple[Verdict, ...] = ("possible", "beyond-practice", "incomplete", "undecided", "contradictory")
"""Best first."""


@dataclass(frozen=True)
class WayOut:
    """A repair with its amount: what settles the conflict for sure, and the span over hinge and arch depth.

    by      what the span comes from: ``hinge``, ``arch-depth``
    passed  the practice limits it has to pass, if any
    """

    repair: Repair
    amount: float
    low: float
    high: float
    by: tuple[str, ...] = ()
    passed: tuple[Key, ...] = ()


@dataclass(frozen=True)
class Conflict:
    """Members that cannot hold together; drop any one and the rest can.

    said_alone  the stated clauses conflict by themselves, without what was not mentioned
    proven      it holds for every value within the errors, every hinge factor and arch depth
    unsaid      only goals and silence, and nothing said about how: a question rather than a contradiction
    """

    members: Members
    kinds: dict[Key, Kind]
    ways_out: tuple[WayOut, ...]
    said_alone: bool
    unsaid: bool
    proven: bool


@dataclass(frozen=True)
class Range:
    """What a possible plan must use of an allowance at the least and can at the most, or reach of a measure."""

    clause_id: str
    what: str
    least: float
    most: float
    unit: str


@dataclass(frozen=True)
class Judgement:
    """The whole answer.

    preferences      a preference that gives way, with its conflict
    space_left       an arch in which every plan opens new space, with its conflict
    unmet            what could not be checked
    depends_on       what an undecided verdict turns on
    shortfall        mm by which align and space goals fall short in all, taken as met
    already_met      every goal holds with the teeth where they are
    leans_on         expectations the verdict rests on
    extraction_open  possible without the extractions, not with them
    """

    verdict: Verdict
    conflicts: tuple[Conflict, ...] = ()
    forced: tuple[Range, ...] = ()
    preferences: tuple[tuple[str, Conflict], ...] = ()
    space_left: tuple[tuple[str, Conflict], ...] = ()
    unmet: tuple[Unmet, ...] = ()
    assumed: tuple[Assumption, ...] = ()
    depends_on: tuple[str, ...] = ()
    shortfall: float = 0.0
    already_met: bool = False
    leans_on: tuple[str, ...] = ()
    extraction_open: bool = False
