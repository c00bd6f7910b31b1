"""By how much the clauses of a prescription tip the front teeth of an arch, as a range."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import inf
from typing import NamedTuple

from wellposed import norms
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.openings import incisors, standing
from wellposed.model.clauses import KeepMeasure, Movement, Reach
from wellposed.model.means import AnyMovement, IncisorTravel, LaboratoryChoice
from wellposed.model.prescription import Prescription
from wellposed.vocabulary.motions import MOTIONS
from wellposed.vocabulary.teeth import LOWER, UPPER, arch_of, position

_MEASURES = {
    UPPER: ("upper-incisor-to-palatal-plane", "upper-incisor-to-sella-nasion"),
    LOWER: ("lower-incisor-to-mandibular-plane",),
}


class Change(NamedTuple):
    """Least and most of an angle or of its change, deg; infinite where no clause bounds it.

    clauses  ids of the clauses it comes from
    """

    low: float
    high: float
    clauses: tuple[str, ...] = ()


_NONE = Change(0.0, 0.0)
_FREE = Change(-inf, inf)


def arch_change(mouth: Mouth, arch: str) -> Change:
    """Labial crown torque of the central incisors of an arch, deg: their mean.

    An ordered torque counts as ordered. Where there is none, a labial or lingual movement, an advance or a retraction
    tips the tooth by anything from nothing (bodily) to ``kinematics.torque-per-advance``. A goal or a keep on the
    inclination itself holds as far as that leaves it room, and where nothing is said of movement it holds alone.
    """
    centrals = [tooth for tooth in mouth.rows[arch].teeth if position(tooth) == 1]
    moved = _mean([_tooth(mouth, tooth) for tooth in centrals])
    for measure in _MEASURES[arch]:
        present = mouth.baseline(measure)
        if present is not None:
            bound = measure_bounds(mouth.prescription, measure, present)
            moved = intersection(moved, Change(bound.low - present, bound.high - present, bound.clauses))
    return moved


def intersection(moved: Change, bound: Change) -> Change:
    """What both leave; the bound alone where they have nothing in common."""
    low, high = max(moved.low, bound.low), min(moved.high, bound.high)
    clauses = tuple(dict.fromkeys((*moved.clauses, *bound.clauses)))
    return Change(low, high, clauses) if low <= high else Change(bound.low, bound.high, clauses)


def measure_bounds(prescription: Prescription, measure: str, present: float) -> Change:
    """Between which values goals and keeps hold a measure that now is ``present``; free where none speaks of it."""
    held = _FREE
    for clause in (*(prescription.goals or ()), *(prescription.keep or ())):
        if isinstance(clause, Reach) and clause.measure == measure:
            low = -inf if clause.at_least is None else clause.at_least
            high = inf if clause.at_most is None else clause.at_most
            held = intersection(held, Change(low, high, (clause.id,)))
        if isinstance(clause, KeepMeasure) and clause.measure == measure:
            held = intersection(held, Change(present - clause.within, present + clause.within, (clause.id,)))
    return held


# one tooth


def _mean(changes: list[Change]) -> Change:
    if not changes:
        return _NONE
    low, high = (sum(ends) / len(changes) for ends in ([c.low for c in changes], [c.high for c in changes]))
    return Change(low, high, tuple(dict.fromkeys(ident for change in changes for ident in change.clauses)))


def _tooth(mouth: Mouth, tooth: str) -> Change:
    """The torque of one tooth: as ordered, else what travel and permissions may make of it."""
    if tooth in mouth.locked:
        return _NONE
    ordered = [_ranged(m, *_bounds(m)) for m in _about(mouth, tooth, "torque")]
    if ordered:
        return _together(ordered)
    per_mm = norms.value("kinematics.torque-per-advance")
    travelled = [_ranged(m, 0.0, per_mm * _bounds(m)[1]) for m in _about(mouth, tooth, "out")]
    return _hull([*travelled, *_allowed(mouth, tooth, per_mm)])


def _about(mouth: Mouth, tooth: str, variable: str) -> Iterator[Movement]:
    for movement in mouth.prescription.movements or ():
        if tooth in movement.teeth and MOTIONS[movement.motion].variable == variable:
            yield movement


def _bounds(movement: Movement) -> tuple[float, float]:
    return movement.at_least or 0.0, inf if movement.at_most is None else movement.at_most


def _ranged(clause: Movement | AnyMovement, least: float, most: float) -> Change:
    """An amount counted in the sense of a motion, as a change with its sign."""
    low, high = sorted(MOTIONS[clause.motion].sign * amount for amount in (least, most))
    return Change(low, high, (clause.id,))


def _allowed(mouth: Mouth, tooth: str, per_mm: float) -> Iterator[Change]:
    """What each permission lets the tooth tip by."""
    for clause in mouth.prescription.allow or ():
        if isinstance(clause, IncisorTravel) and tooth in _travelling(mouth, clause):
            most = per_mm * clause.up_to * (1 if clause.use == "incisor-advance" else -1)
            yield Change(min(0.0, most), max(0.0, most), (clause.id,))
        elif isinstance(clause, AnyMovement) and tooth in clause.teeth:
            variable = MOTIONS[clause.motion].variable
            if variable in ("torque", "out"):
                yield _ranged(clause, 0.0, clause.up_to * (per_mm if variable == "out" else 1.0))
        elif isinstance(clause, LaboratoryChoice) and _chosen(clause, tooth):
            yield Change(-inf, inf, (clause.id,))


def _travelling(mouth: Mouth, clause: IncisorTravel) -> list[str]:
    return standing(mouth, clause.teeth) if clause.teeth else incisors(mouth, clause.arch)


def _chosen(clause: LaboratoryChoice, tooth: str) -> bool:
    """Whether the laboratory may choose the torque of a tooth."""
    here = clause.arch in (None, arch_of(tooth)) and (clause.teeth is None or tooth in clause.teeth)
    return here and (clause.variables is None or "torque" in clause.variables)


def _together(changes: Iterable[Change]) -> Change:
    """Orders about one tooth, all of which hold."""
    held = _FREE
    for change in changes:
        held = intersection(held, change)
    return held


def _hull(changes: list[Change]) -> Change:
    """From the least to the most that any permission reaches, and nothing among it."""
    low = min((change.low for change in changes), default=0.0)
    high = max((change.high for change in changes), default=0.0)
    clauses = tuple(dict.fromkeys(ident for change in changes for ident in change.clauses))
    return Change(min(low, 0.0), max(high, 0.0), clauses)
