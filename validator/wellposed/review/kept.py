"""What must stay, what is ordered, what is barred; and what of it is so."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.kinematics.excluded import SENSES, excluded_senses, excludes_contact
from wellposed.kinematics.openings import standing
from wellposed.model.clauses import AnyKeep, Hold, KeepMeasure, KeepMotion, KeepVariable, Movement
from wellposed.model.means import Exclusion
from wellposed.review.bite import GAP
from wellposed.review.goals import counted_on, measured, scaled, start_of
from wellposed.review.matter import Matter, unit_of
from wellposed.review.result import Compared, Span
from wellposed.review.weighing import exactly, weighed
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.motions import MOTIONS, VARIABLE_UNITS, VARIABLES, Variable
from wellposed.vocabulary.teeth import arch_of
from wellposed.vocabulary.units import MM

TEETH_MISSING = "teeth-missing"


def moved(matter: Matter, tooth: str, variable: Variable, asked: Span) -> Compared:
    """A movement against bounds in the variable's own sign."""
    value, unit = matter.plan.movement(tooth, variable), VARIABLE_UNITS[variable]
    delivered = None if value is None else exactly(value)
    return weighed(variable, tooth, unit, asked, delivered, matter.within(unit))


def _in_sense(sign: int, low: float | None, high: float | None) -> Span:
    """Bounds counted in a sense, in the variable's own sign."""
    if sign > 0:
        return Span(low, high)
    return Span(None if high is None else -high, None if low is None else -low)


def movement_parts(matter: Matter, order: Movement) -> list[Compared]:
    """Each tooth between the bounds of an order."""
    sense = MOTIONS[order.motion]
    over = order.overcorrection.value if order.overcorrection else 0.0
    most = None if order.at_most is None else order.at_most + over
    asked = _in_sense(sense.sign, order.at_least, most)
    return _each(matter, order.teeth, sense.variable, asked)


def _each(matter: Matter, teeth: tuple[str, ...], variable: Variable, asked: Span) -> list[Compared]:
    parts = [moved(matter, tooth, variable, asked) for tooth in standing(matter.mouth, teeth)]
    unit = VARIABLE_UNITS[variable]
    return parts or [weighed(variable, " ".join(teeth), unit, asked, None, 0.0, why=TEETH_MISSING)]


def keep_parts(matter: Matter, kept: AnyKeep) -> list[Compared]:
    """What a keep holds, part by part."""
    if isinstance(kept, Hold):
        return list(_held(matter, kept))
    if isinstance(kept, KeepVariable):
        return _each(matter, kept.teeth, kept.variable, Span(-kept.within, kept.within))
    if isinstance(kept, KeepMotion):
        sense = MOTIONS[kept.motion]
        return _each(matter, kept.teeth, sense.variable, _in_sense(sense.sign, None, kept.within))
    return [_measure_kept(matter, kept)]


def _held(matter: Matter, kept: Hold) -> Iterator[Compared]:
    """Nothing of a tooth on hold moves, and no enamel is taken at its contacts."""
    for tooth in standing(matter.mouth, kept.hold):
        for variable in VARIABLES:
            yield moved(matter, tooth, variable, exactly(0.0))
    for name in matter.ended.rooms:
        if set(teeth_of(name)) & set(kept.hold):
            yield reduced(matter, name, 0.0)


def reduced(matter: Matter, contact: str, most: float) -> Compared:
    """Enamel taken at one contact against the most that is allowed there."""
    amount = matter.plan.reduction(contact)
    delivered = None if amount is None else exactly(amount)
    return weighed("reduction", contact, MM, Span(None, most), delivered, matter.within(MM))


def _measure_kept(matter: Matter, kept: KeepMeasure) -> Compared:
    start = start_of(matter, kept.measure, kept.pair)
    scale = matter.mouth.scale(kept.measure, kept.unit)
    if start is None and kept.measure == GAP:  # one that was not measured counts as none
        start = 0.0
    if start is not None and scale is not None:
        middle = start / scale
        asked = Span(middle - kept.within, middle + kept.within)
        return measured(matter, kept, asked, start)
    return _change_kept(matter, kept, scale)


def _change_kept(matter: Matter, kept: KeepMeasure, scale: float | None) -> Compared:
    """Of a measure without a value today only the change can be told."""
    reading, within = matter.measures.reading(kept.measure, kept.pair), matter.within(unit_of(kept.measure))
    where, asked = "/".join(kept.pair or ()), Span(-kept.within, kept.within)
    if scale is None or reading.absolute:
        return weighed(kept.measure, where, kept.unit, asked, None, within, why="no-baseline")
    change, helped = scaled(reading.span, 0.0, scale), counted_on(matter, kept.measure, kept.pair, scale)
    return weighed(kept.measure, where, kept.unit, asked, change, within / scale, why=reading.why, expected=helped)


def exclusion_parts(matter: Matter, item: Exclusion) -> list[Compared]:
    """What an excluded means would have moved, reduced or taken out."""
    if item.means == "enamel-reduction":
        return [reduced(matter, name, 0.0) for name in matter.ended.rooms if excludes_contact(item, name)]
    if item.means == "extraction":
        return [_extracted(matter, item)]
    if item.means == GAP:
        return [gap_part(matter, matter.mouth.amount(GAP))]
    senses = list(excluded_senses(matter.mouth, item))
    if not senses:
        why = TEETH_MISSING if item.means in SENSES else "not-in-a-setup"
        return [weighed(item.means, "", MM, Span(None, None), None, 0.0, why=why)]
    return [moved(matter, at.tooth, at.variable, _in_sense(at.sign, None, 0.0)) for at in senses]


def _extracted(matter: Matter, item: Exclusion) -> Compared:
    taken = matter.setup.extractions
    named = [t for t in taken or () if (item.teeth is None or t in item.teeth) and item.arch in (None, arch_of(t))]
    delivered = None if taken is None else exactly(float(len(named)))
    return weighed("extraction", " ".join(named), "1", exactly(0.0), delivered, 0.0)


def gap_part(matter: Matter, most: float | None) -> Compared:
    """The gap at the back, on the side with less of it, against the most there may be."""
    gap, rests = matter.measures.closed.lesser, matter.translation.frame.hinge.rests
    asked, why = Span(None, most), "not-stated" if rests else TEETH_MISSING
    return weighed(GAP, "", MM, asked, gap, matter.within(MM), before=matter.mouth.amount(GAP), why=why)
