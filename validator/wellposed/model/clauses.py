"""What must be reached, what must stay, what moves: the clauses that bind."""

from __future__ import annotations

from typing import Annotated

from pydantic import Discriminator, Tag

from wellposed.model.base import (
    Amount,
    ClauseId,
    ContactList,
    ContactName,
    Part,
    Quantity,
    References,
    Signed,
    Stated,
    ToothList,
    Unit,
    told_by,
)
from wellposed.model.findings import Pair
from wellposed.vocabulary.measures import Measure
from wellposed.vocabulary.motions import Motion, Variable
from wellposed.vocabulary.terms import Arch, Strength


class Clause(Part):
    """What every binding clause has."""

    id: ClauseId
    strength: Strength
    because: Stated[References] = None


class Align(Clause):
    """Bring these teeth into line: no overlap left at the contacts between them."""

    align: ToothList
    overcorrection: Stated[Quantity] = None


class Level(Clause):
    """Level this arch."""

    level: Arch


class Close(Clause):
    """Close the gaps at these contacts."""

    close: ContactList


class CloseArch(Clause):
    """Close every gap of this arch."""

    close_arch: Arch


class Leave(Clause):
    """Leave exactly this much room at one contact, or at the place of a missing or extracted tooth."""

    leave: ContactName
    amount: Amount
    unit: Unit


class Reach(Clause):
    """A measure between bounds at the end; one bound may be left out."""

    measure: Measure
    pair: Stated[Pair] = None
    at_least: Stated[Signed] = None
    at_most: Stated[Signed] = None
    unit: Unit


AnyGoal = Annotated[
    Annotated[Align, Tag("align")]
    | Annotated[Level, Tag("level")]
    | Annotated[Close, Tag("close")]
    | Annotated[CloseArch, Tag("close_arch")]
    | Annotated[Leave, Tag("leave")]
    | Annotated[Reach, Tag("measure")],
    Discriminator(told_by("align", "level", "close", "close_arch", "leave", "measure")),
]


class KeepMeasure(Clause):
    """A measure that may change by ``within`` at most, either way."""

    measure: Measure
    pair: Stated[Pair] = None
    within: Amount
    unit: Unit


class KeepVariable(Clause):
    """A movement variable of these teeth that may change by ``within`` at most, either way."""

    variable: Variable
    teeth: ToothList
    within: Amount
    unit: Unit


class KeepMotion(Clause):
    """A motion of these teeth, in its one sense, of ``within`` at most."""

    motion: Motion
    teeth: ToothList
    within: Amount
    unit: Unit


class Hold(Clause):
    """Teeth that must not be moved or reduced at all."""

    hold: ToothList


AnyKeep = Annotated[
    Annotated[Hold, Tag("hold")]
    | Annotated[KeepVariable, Tag("variable")]
    | Annotated[KeepMotion, Tag("motion")]
    | Annotated[KeepMeasure, Tag("measure")],
    Discriminator(told_by("hold", "variable", "motion", "measure")),
]


class Movement(Clause):
    """A motion of these teeth, each of them, between bounds counted in the sense of the motion."""

    teeth: ToothList
    motion: Motion
    at_least: Stated[Amount] = None
    at_most: Stated[Amount] = None
    unit: Unit
    overcorrection: Stated[Quantity] = None
