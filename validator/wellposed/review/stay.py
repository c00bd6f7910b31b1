"""What moved unasked, asked to stay: the silence of a prescription said as clauses."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import floor
from typing import Any, NamedTuple, cast

from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.opened import Opened
from wellposed.kinematics.openings import sensed
from wellposed.model.clauses import KeepMeasure, KeepMotion, KeepVariable
from wellposed.model.means import EnamelReduction
from wellposed.model.prescription import Prescription
from wellposed.review.bite import GAP
from wellposed.review.result import Unasked
from wellposed.review.travel import motion_of
from wellposed.vocabulary.motions import VARIABLES, Variable

__all__ = ["Stay", "staying"]

_NEW = "r0"


class Stay(NamedTuple):
    """A clause for the requests, and the section it belongs to."""

    section: str
    clause: Any


class _Bound(NamedTuple):
    """How a tooth is to stay: ``motion`` is one sense of the variable where the other is open, "" for both."""

    variable: Variable
    motion: str
    within: float
    unit: str


def staying(prescription: Prescription, moved: Iterable[Unasked]) -> Iterator[Stay]:
    """A keep for each way teeth are to stay, an allowance of what may be taken at contacts, a keep of the gap."""
    told = list(moved)
    teeth: dict[_Bound, list[str]] = {}
    opened = Opened(Mouth(prescription)) if told else None
    for one in told:
        if one.what in VARIABLES and opened is not None:
            teeth.setdefault(_bound(one, opened), []).append(one.where)
    yield from (Stay("keep", _keep(bound, tuple(named))) for bound, named in teeth.items())
    yield from _enamel([one for one in told if one.what == "reduction"])
    for one in told:
        if one.what == GAP:
            members = {"measure": GAP, "within": _within(one), "unit": one.unit}
            yield Stay("keep", KeepMeasure.model_validate({"id": _NEW, "strength": "must", **members}))


def _bound(one: Unasked, opened: Opened) -> _Bound:
    variable = cast("Variable", one.what)
    sign = 1 if one.delivered > 0 else -1
    open_back = sensed(one.where, variable, -sign) in opened.table
    motion = motion_of(one.where, variable, one.delivered) if one.opened > 0 or open_back else ""
    return _Bound(variable, motion, _within(one), one.unit)


def _within(one: Unasked) -> float:
    """The amount that is opened, to hundredths and never more: the next review adds its tolerance to it again."""
    return floor(one.opened * 100 + _ROUNDING) / 100


_ROUNDING = 1e-6


def _keep(bound: _Bound, teeth: tuple[str, ...]) -> KeepVariable | KeepMotion:
    members: dict[str, Any] = {"id": _NEW, "strength": "must", "teeth": teeth}
    members |= {"within": bound.within, "unit": bound.unit}
    if bound.motion:
        return KeepMotion.model_validate(members | {"motion": bound.motion})
    return KeepVariable.model_validate(members | {"variable": bound.variable})


def _enamel(taken: Iterable[Unasked]) -> Iterator[Stay]:
    """What may be taken at each contact, 0 where nothing may."""
    contacts: dict[float, list[str]] = {}
    for one in taken:
        contacts.setdefault(_within(one), []).append(one.where)
    for most, named in contacts.items():
        members = {"id": _NEW, "use": "enamel-reduction", "contacts": tuple(named), "per_contact": most, "unit": "mm"}
        yield Stay("allow", EnamelReduction.model_validate(members))
