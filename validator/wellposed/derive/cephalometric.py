"""Angles between the incisors and the jaws: do those stated close, which one follows, what does the plan make of them?

The four inner angles of the figure that both incisors and two lines of the jaws make are a whole turn: upper incisor to
palatal plane, lower incisor to mandibular plane, palatal to mandibular plane, and interincisal; and the same with
sella-nasion in place of the palatal plane. Plane geometry, all in degrees.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from math import isfinite
from typing import NamedTuple

from wellposed.derive.inclination import Change, arch_change, intersection, measure_bounds
from wellposed.kinematics.measured import Measured
from wellposed.kinematics.mouth import Mouth
from wellposed.model.prescription import Prescription
from wellposed.vocabulary.teeth import ARCHES

WHOLE_TURN = 360.0

PALATAL = (
    "upper-incisor-to-palatal-plane",
    "lower-incisor-to-mandibular-plane",
    "palatal-to-mandibular-plane",
    "interincisal-angle",
)
SELLA_NASION = (
    "upper-incisor-to-sella-nasion",
    "lower-incisor-to-mandibular-plane",
    "sella-nasion-to-mandibular-plane",
    "interincisal-angle",
)
FORMS: Mapping[str, tuple[str, ...]] = {"palatal": PALATAL, "sella-nasion": SELLA_NASION}
"""The measures of each form, by its name."""


class Closure(NamedTuple):
    """Four angles of a form that are all stated.

    form   palatal or sella-nasion
    sum    of the four, deg
    gap    sum - 360, deg
    from_  ids of the findings
    """

    form: str
    sum: float
    gap: float
    from_: tuple[str, ...]


class Fourth(NamedTuple):
    """The one angle of a form that is not stated.

    form     palatal or sella-nasion
    measure  its name
    value    360 less the other three, deg
    from_    ids of the findings
    """

    form: str
    measure: str
    value: float
    from_: tuple[str, ...]


def closure(angles: Iterable[float]) -> tuple[float, float]:
    """The sum of the four angles of a form, and how far it is from a whole turn, deg."""
    total = sum(angles)
    return total, total - WHOLE_TURN


def fourth(three: Iterable[float]) -> float:
    """The angle that the other three of a form leave, deg."""
    return WHOLE_TURN - sum(three)


def closures(prescription: Prescription) -> Iterator[Closure]:
    """Each form whose four angles are stated."""
    for form, stated in _stated(prescription):
        if len(stated) == len(FORMS[form]):
            yield Closure(form, *closure(value for _, value in stated.values()), _ids(stated))


def fourths(prescription: Prescription) -> Iterator[Fourth]:
    """Each angle that three stated ones leave."""
    for form, stated in _stated(prescription):
        lacking = [measure for measure in FORMS[form] if measure not in stated]
        if len(lacking) == 1:
            yield Fourth(form, lacking[0], fourth(value for _, value in stated.values()), _ids(stated))


_Stated = dict[str, tuple[str, float]]


def _stated(prescription: Prescription) -> Iterator[tuple[str, _Stated]]:
    """Per form the angles stated once: measure to finding id and value."""
    measured = Measured(prescription)
    for form, measures in FORMS.items():
        found = {measure: finding for measure in measures if (finding := measured.finding(measure))}
        yield form, {measure: (finding.id, finding.value) for measure, finding in found.items()}


def _ids(stated: _Stated) -> tuple[str, ...]:
    return tuple(ident for ident, _ in stated.values())


# the plan


class Planned(NamedTuple):
    """The interincisal angle at the end of a plan, deg.

    present    as stated, or as the other three angles of a form leave it
    low, high  what the clauses leave it; None where they set no bound
    from_      ids of the findings it starts from
    clauses    ids of the clauses that change or bind it
    """

    present: float
    low: float | None
    high: float | None
    from_: tuple[str, ...]
    clauses: tuple[str, ...]


def planned_interincisal(prescription: Prescription) -> Planned | None:
    """Between which values the clauses bring the interincisal angle; None where it is neither stated nor follows.

    The present angle less the labial crown torque of the upper and of the lower centrals, each arch by the mean of its
    centrals. Where a goal or a keep binds the angle itself, its bounds hold as far as the movements leave them room.
    """
    start = _present(prescription)
    if start is None:
        return None
    present, from_ = start
    mouth = Mouth(prescription)
    changes = [arch_change(mouth, arch) for arch in ARCHES]
    moved = Change(present - sum(c.high for c in changes), present - sum(c.low for c in changes))
    bound = measure_bounds(prescription, "interincisal-angle", present)
    low, high = intersection(moved, bound)[:2]
    clauses = tuple(dict.fromkeys(ident for c in (*changes, bound) for ident in c.clauses))
    return Planned(present, _finite(low), _finite(high), from_, clauses)


def _present(prescription: Prescription) -> tuple[float, tuple[str, ...]] | None:
    finding = Measured(prescription).finding("interincisal-angle")
    if finding is not None:
        return finding.value, (finding.id,)
    derived = (one for one in fourths(prescription) if one.measure == "interincisal-angle")
    return next(((one.value, one.from_) for one in derived), None)


def _finite(angle: float) -> float | None:
    return angle if isfinite(angle) else None
