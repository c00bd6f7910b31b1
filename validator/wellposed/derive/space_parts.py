"""The lines of a space budget, and how a movement becomes one."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import NamedTuple

from wellposed import norms
from wellposed.derive.room import Moved, room
from wellposed.kinematics.mouth import Mouth
from wellposed.vocabulary.teeth import is_canine, is_incisor

INCISORS = 4


@dataclass(frozen=True, slots=True)
class Line:
    """One need of room, or one means that makes it. Room in mm, 0 or more unless the geometry turns it round.

    what      crowding, levelling, enamel-reduction and so on
    amount    by the geometry of the model at the whole of what is stated; None where it is not stated
    low       the same by the least of the published coefficients
    high      by the largest of them
    from_     ids of the findings and clauses, or the numbers of the teeth, it comes from
    least     what it comes to at the least: 0 for a permission, the order where there is one
    one_side  of a midline: room needed on one side and made on the other
    assumed   teeth whose width is not measured, so that the average stands in
    """

    what: str
    amount: float | None
    low: float | None
    high: float | None
    from_: tuple[str, ...]
    least: float | None
    one_side: float | None = None
    assumed: tuple[str, ...] = ()


class Part(NamedTuple):
    """A line and the teeth it is about; lines about the same teeth do not add up."""

    line: Line
    teeth: frozenset[str] = frozenset()


def exactly(what: str, amount: float | None, *from_: str, error: float = 0.0, least: float | None = None) -> Line:
    """A line whose amount no coefficient stands between, with its measuring error."""
    if amount is None:
        return Line(what, None, None, None, from_, None)
    low = max(0.0, amount - error)
    return Line(what, amount, low, amount + error, from_, low if least is None else least)


class Asked(NamedTuple):
    """A movement that is ordered or allowed: how much at most and at least, mm; None where it is not stated."""

    most: float | None
    least: float
    clause: str


def moved(mouth: Mouth, arch: str, what: str, each: Moved, asked: Asked) -> Part:
    """The line of a movement: ``each`` is 1 mm of it."""
    teeth = frozenset((*each.out, *each.along))
    if asked.most is None:
        return Part(exactly(what, None, asked.clause), teeth)
    row = mouth.rows[arch]
    made = abs(room(row, row.line(0.0), each))
    low, high = _coefficients(what, teeth, made)
    amounts = asked.most * made, asked.most * low, asked.most * high
    return Part(Line(what, *amounts, (asked.clause,), asked.least * low), teeth)


def _coefficients(what: str, teeth: Iterable[str], made: float) -> tuple[float, float]:
    """Least and most room per mm: the published ones and that of the geometry."""
    kinds = list(teeth)
    family = None
    if what in ("incisor-advance", "incisor-retraction") and len([t for t in kinds if is_incisor(t)]) == INCISORS:
        family = "space.advance"
    if what in ("widening", "narrowing") and not all(is_canine(tooth) or is_incisor(tooth) for tooth in kinds):
        family = "space.widening"
    if family is None:
        return made, made
    return min(made, norms.value(f"{family}.least")), max(made, norms.value(f"{family}.most"))
