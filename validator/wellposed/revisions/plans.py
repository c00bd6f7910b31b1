"""Two setups compared: tooth by tooth, contact by contact, and what the laboratory says of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from wellposed.model.envelope import Answers
from wellposed.model.setup import Setup
from wellposed.review.plan import Placed, Plan
from wellposed.revisions.comparing import identity, lineage
from wellposed.revisions.result import Identity, Lineage
from wellposed.vocabulary.motions import VARIABLE_UNITS, VARIABLES
from wellposed.vocabulary.teeth import TEETH
from wellposed.vocabulary.terms import Arch

ARCHES: tuple[Arch, ...] = ("upper", "lower")
ROUNDING = 0.01
"""The most by which two amounts can differ that are one: the format has two decimals, and each may be half of one off.

A bound of the format in mm and degrees alike, not a norm.
"""
_NOISE = 1e-9
_UNIT = "mm"


@dataclass(frozen=True, slots=True)
class Amount:
    """One amount in both setups.

    what    a variable, ``reduction``, ``aligners``, ``wear-interval``, or a measure
    where   tooth, contact, arch or tooth pair; "" for the whole
    unit    ``mm``, ``deg``, ``percent``, ``days``, or "" for a count
    before, after  None: not stated
    """

    what: str
    where: str
    unit: str
    before: float | None
    after: float | None

    @property
    def difference(self) -> float | None:
        """After less before; None where either is not stated."""
        return None if self.before is None or self.after is None else self.after - self.before

    @property
    def changed(self) -> bool:
        """Whether it differs by more than rounding, or is stated in one only."""
        if self.difference is None:
            return self.before is not self.after
        return abs(self.difference) > ROUNDING + _NOISE


@dataclass(frozen=True, slots=True)
class Other:
    """Anything else that differs: JSON values; None: not stated, or a text for people, which is not repeated."""

    what: str
    where: str
    before: Any = None
    after: Any = None


@dataclass(frozen=True, slots=True)
class SetupComparison:
    """Two setups.

    answers    the revision of the prescription each of them answers
    movements, amounts  every amount that either states: of teeth, and of all else
    path       aligners of an arch after which teeth stand elsewhere, by arch; None where neither has a path
    others     attachments, extractions, statements and what else differs
    """

    old: Identity
    new: Identity
    lineage: Lineage
    answers: tuple[Answers, Answers]
    movements: tuple[Amount, ...]
    amounts: tuple[Amount, ...]
    path: Mapping[str, tuple[int, ...]] | None
    others: tuple[Other, ...]

    @property
    def changed(self) -> tuple[Amount, ...]:
        """What changed beyond rounding."""
        return tuple(one for one in (*self.movements, *self.amounts) if one.changed)


def setups_compared(old: Setup, new: Setup) -> SetupComparison:
    """Two setups, whatever they answer."""
    before, after = Plan(old), Plan(new)
    return SetupComparison(
        identity(old),
        identity(new),
        lineage(old, new),
        (old.answers, new.answers),
        tuple(_movements(before, after)),
        (*_reductions(before, after), *_counts(old, new), *_predicted(old, new)),
        _path(before, after),
        tuple(_others(old, new)),
    )


def _movements(old: Plan, new: Plan) -> Iterator[Amount]:
    """Teeth in the order of their numbers, each with the variables either setup names."""
    named = {*old.moved, *new.moved}
    for tooth in TEETH:
        for variable in VARIABLES:
            if (tooth, variable) in named:
                ends = old.movement(tooth, variable), new.movement(tooth, variable)
                yield Amount(variable, tooth, VARIABLE_UNITS[variable], *ends)


def _reductions(old: Plan, new: Plan) -> Iterator[Amount]:
    for contact in sorted({*old.reductions, *new.reductions}):
        yield Amount("reduction", contact, _UNIT, old.reduction(contact), new.reduction(contact))


def _counts(old: Setup, new: Setup) -> Iterator[Amount]:
    before, after = Plan(old), Plan(new)
    for arch in ARCHES:
        counts = before.aligners(arch), after.aligners(arch)
        if counts != (None, None):
            yield Amount("aligners", arch, "", *counts)
    days = old.wear_interval_days, new.wear_interval_days
    if days != (None, None):
        yield Amount("wear-interval", "", "days", *days)


def _predicted(old: Setup, new: Setup) -> Iterator[Amount]:
    before, after = _predictions(old), _predictions(new)
    for measure, where, unit in sorted({*before, *after}):
        key = (measure, where, unit)
        yield Amount(measure, where, unit, before.get(key), after.get(key))


def _predictions(setup: Setup) -> dict[tuple[str, str, str], float]:
    return {(one.measure, "/".join(sorted(one.pair or ())), one.unit): one.value for one in setup.predicted or ()}


# the path


def _path(old: Plan, new: Plan) -> dict[str, tuple[int, ...]] | None:
    if not old.path and not new.path:
        return None
    return {arch: tuple(_apart(old.path.get(arch, {}), new.path.get(arch, {}))) for arch in ARCHES}


def _apart(old: Mapping[int, Placed], new: Mapping[int, Placed]) -> Iterator[int]:
    """The aligners after which some tooth stands elsewhere by more than rounding, or is placed in one only."""
    for aligner in sorted({*old, *new}):
        before, after = old.get(aligner, {}), new.get(aligner, {})
        pairs = ((before.get(key), after.get(key)) for key in {*before, *after})
        if any(Amount("", "", "", *pair).changed for pair in pairs):
            yield aligner


# all else


def _others(old: Setup, new: Setup) -> Iterator[Other]:
    yield from _differing("attachment", _attachments(old), _attachments(new))
    yield from _differing("extraction", dict.fromkeys(old.extractions or ()), dict.fromkeys(new.extractions or ()))
    yield from _differing("reduction-before-aligner", _when(old), _when(new))
    yield from _differing("statement", _statements(old), _statements(new))
    if old.unlisted != new.unlisted:
        yield Other("unlisted", "", old.unlisted, new.unlisted)
    for member in ("reductions", "attachments", "extractions", "stages", "predicted", "statements"):
        stated = [getattr(one, member) is not None for one in (old, new)]
        if stated[0] != stated[1]:
            yield Other("stated", member, *stated)
    for member in ("notes", "laboratory", "extensions"):
        if getattr(old, member) != getattr(new, member):
            yield Other(member, "")


def _differing(what: str, before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[Other]:
    """What stands in one only, or differs; a thing that is there without more said of it is an empty object."""
    for name in sorted({*before, *after}):
        was, now = (_there(said, name) for said in (before, after))
        if was != now:
            yield Other(what, name, was, now)


def _there(said: Mapping[str, Any], name: str) -> Any:
    return (said[name] or {}) if name in said else None


def _attachments(setup: Setup) -> dict[str, Any]:
    return {one.tooth: _said(one, "tooth") for one in setup.attachments or ()}


def _statements(setup: Setup) -> dict[str, Any]:
    return {one.clause: _said(one, "clause") for one in setup.statements or ()}


def _when(setup: Setup) -> dict[str, Any]:
    return {one.contact: {"aligner": one.before_aligner} for one in setup.reductions or () if one.before_aligner}


def _said(part: Any, *beside: str) -> dict[str, Any]:
    said: dict[str, Any] = part.model_dump(exclude_none=True, mode="json", exclude=set(beside))
    return said
