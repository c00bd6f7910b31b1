"""A clause spelt out: what it asks, bound by bound, and what it opens, amount by amount.

``asks`` holds an interval for each thing bound: a plan outside it does not meet the clause. ``opens`` holds the
greatest amount for each thing allowed: what is not there is not opened by this clause. Both are those of
``spec/semantics.md``; what opens is taken from the arithmetic itself.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable
from math import inf
from typing import Any, NamedTuple

from wellposed.kinematics.excluded import excluded_senses, excludes_contact
from wellposed.kinematics.means import reduction_contacts
from wellposed.kinematics.mouth import Mouth
from wellposed.model import clauses, making, means
from wellposed.revisions.opens import Opens, opens
from wellposed.vocabulary.contacts import normal
from wellposed.vocabulary.motions import MOTIONS, VARIABLES
from wellposed.vocabulary.teeth import arch_of

Span = tuple[float, float]
Asks = dict[Hashable, Span]
STILL: Span = (0.0, 0.0)


class Admits(NamedTuple):
    """What one clause asks and opens."""

    asks: Asks
    opens: Opens


def admits(part: Any, mouth: Mouth) -> Admits:
    """What a clause asks and opens in a mouth; nothing for what no plan shows."""
    asks = _ASKS.get(type(part))
    return Admits(asks(part, mouth) if asks else {}, opens(part, mouth))


# what is asked


def _align(part: clauses.Align, mouth: Mouth) -> Asks:
    del mouth
    return {("aligned", tooth): STILL for tooth in part.align}


def _level(part: clauses.Level, mouth: Mouth) -> Asks:
    del mouth
    return {("level", part.level): STILL}


def _close(part: clauses.Close, mouth: Mouth) -> Asks:
    del mouth
    return {("gap", normal(contact)): STILL for contact in part.close}


def _close_arch(part: clauses.CloseArch, mouth: Mouth) -> Asks:
    del mouth
    return {("gaps", part.close_arch): STILL}


def _leave(part: clauses.Leave, mouth: Mouth) -> Asks:
    del mouth
    return {("gap", normal(part.leave)): (part.amount, part.amount)}


def _reach(part: clauses.Reach, mouth: Mouth) -> Asks:
    del mouth
    low = -inf if part.at_least is None else part.at_least
    return {("measure", *_taken_at(part)): (low, inf if part.at_most is None else part.at_most)}


def _keep_measure(part: clauses.KeepMeasure, mouth: Mouth) -> Asks:
    del mouth
    return {("change", *_taken_at(part)): (-part.within, part.within)}


def _taken_at(part: Any) -> tuple[Any, ...]:
    return part.measure, tuple(sorted(part.pair or ())), part.unit


def _hold(part: clauses.Hold, mouth: Mouth) -> Asks:
    del mouth
    moved: Asks = {("moved", tooth, variable): STILL for tooth in part.hold for variable in VARIABLES}
    return {**moved, **{("held", tooth): STILL for tooth in part.hold}}


def _keep_variable(part: clauses.KeepVariable, mouth: Mouth) -> Asks:
    del mouth
    return {("moved", tooth, part.variable): (-part.within, part.within) for tooth in part.teeth}


def _keep_motion(part: clauses.KeepMotion, mouth: Mouth) -> Asks:
    del mouth
    variable, sign = MOTIONS[part.motion]
    return {("moved", tooth, variable): _sensed(-inf, part.within, sign) for tooth in part.teeth}


def _movement(part: clauses.Movement, mouth: Mouth) -> Asks:
    del mouth
    variable, sign = MOTIONS[part.motion]
    span = _sensed(part.at_least or -inf, inf if part.at_most is None else part.at_most, sign)
    return {("moved", tooth, variable): span for tooth in part.teeth}


def _sensed(low: float, high: float, sign: int) -> Span:
    """Bounds counted in a sense, as bounds of the variable."""
    return (low, high) if sign > 0 else (-high, -low)


def _reduction(part: means.EnamelReduction, mouth: Mouth) -> Asks:
    if not part.at_least:
        return {}
    return {("reduced", *sorted(reduction_contacts(mouth, part))): (part.at_least, inf)}


def _extraction(part: means.Extraction, mouth: Mouth) -> Asks:
    del mouth
    return {("taken out", tooth): (1.0, 1.0) for tooth in part.teeth}


def _travel(part: means.IncisorTravel, mouth: Mouth) -> Asks:
    """Not named singly, incisors move alike."""
    del mouth
    return {} if part.teeth else {("alike", part.arch): STILL}


def _exclusion(part: means.Exclusion, mouth: Mouth) -> Asks:
    senses: Asks = {
        ("moved", at.tooth, at.variable): _sensed(-inf, 0.0, at.sign) for at in excluded_senses(mouth, part)
    }
    return {**senses, **{("barred", part.means, where): STILL for where in _barred(part, mouth)}}


def _barred(part: means.Exclusion, mouth: Mouth) -> Iterable[str]:
    """The contacts or teeth an exclusion is about; of one that moves teeth the teeth stand for themselves."""
    rows = mouth.rows.values()
    if part.means == "enamel-reduction":
        return [one.name for row in rows for one in row.contacts if excludes_contact(part, one.name)]
    if part.means == "posterior-open-bite":
        return ["both"]
    if part.teeth is not None:
        return part.teeth
    return [tooth for row in rows for tooth in row.initial if part.arch in (None, arch_of(tooth))]


def _carried(part: Any, mouth: Mouth) -> Asks:
    del mouth
    teeth, carries = carrying(part)
    return {("attachment", tooth): (carries, carries) for tooth in teeth}


def carrying(part: making.Attachment) -> tuple[tuple[str, ...], float]:
    """The teeth an attachment clause is decided about, and whether they carry one (1) or none (0)."""
    for member, carries in (("must", 1.0), ("prefer", 1.0), ("must_not", 0.0), ("prefer_not", 0.0)):
        if teeth := getattr(part, member, None):
            return teeth, carries
    return ("others",) if getattr(part, "otherwise", None) == "none" else (), 0.0


def _staging(part: making.Staging, mouth: Mouth) -> Asks:
    asks: Asks = {("order", one.first, one.relation, one.then): STILL for one in part.order or ()}
    if part.most_aligners is not None:
        asks["aligners"] = (0.0, float(part.most_aligners))
    teeth = [tooth for row in mouth.rows.values() for tooth in row.teeth]
    for variable in VARIABLES:
        for tooth in teeth:
            step = _step(part, variable, tooth)
            if step is not None:
                asks["step", variable, tooth] = (0.0, step)
    return asks


def _step(part: making.Staging, variable: str, tooth: str) -> float | None:
    """The step of a tooth: the smallest that names it, else the smallest that names no tooth."""
    steps = [one for one in part.largest_steps or () if one.variable == variable]
    named = [one.amount for one in steps if tooth in (one.teeth or ())]
    return min(named or [one.amount for one in steps if one.teeth is None], default=None)


_ASKS: dict[type, Callable[[Any, Mouth], Asks]] = {
    clauses.Align: _align,
    clauses.Level: _level,
    clauses.Close: _close,
    clauses.CloseArch: _close_arch,
    clauses.Leave: _leave,
    clauses.Reach: _reach,
    clauses.KeepMeasure: _keep_measure,
    clauses.Hold: _hold,
    clauses.KeepVariable: _keep_variable,
    clauses.KeepMotion: _keep_motion,
    clauses.Movement: _movement,
    means.EnamelReduction: _reduction,
    means.Extraction: _extraction,
    means.IncisorTravel: _travel,
    means.Exclusion: _exclusion,
    making.AttachmentMust: _carried,
    making.AttachmentMustNot: _carried,
    making.AttachmentPrefer: _carried,
    making.AttachmentPreferNot: _carried,
    making.AttachmentRest: _carried,
    making.Staging: _staging,
}
