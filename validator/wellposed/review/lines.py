"""Every measure before and after, as computed and as the setup states it."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.kinematics.measures import measure_row
from wellposed.model.clauses import KeepMeasure, Level, Reach
from wellposed.review.goals import start_of
from wellposed.review.matter import Matter, unit_of
from wellposed.review.result import MeasureLine, Span
from wellposed.review.sums import Sums
from wellposed.review.weighing import ROUNDING
from wellposed.vocabulary.measures import MEASURE_KINDS, MEASURES
from wellposed.vocabulary.teeth import LOWER
from wellposed.vocabulary.units import DEG

_SHOWN = 0.05
Pair = tuple[str, ...] | None


def measure_lines(matter: Matter) -> tuple[MeasureLine, ...]:
    """Measures that change, are asked for or are stated, in the order of the vocabulary."""
    named, sums = set(_named(matter)), Sums(matter)
    pairs = {measure: [None, *(p for m, p in sorted(named, key=str) if m == measure and p)] for measure in MEASURES}
    lines = (_line(matter, sums, measure, pair) for measure in MEASURES for pair in pairs[measure])
    return tuple(line for line in lines if line and (_changes(line) or _wanted(line, named)))


def _named(matter: Matter) -> Iterator[tuple[str, Pair]]:
    """Measures that a clause or the setup names; of a lower arch to be levelled its curve."""
    for item in (*(matter.prescription.goals or ()), *(matter.prescription.keep or ())):
        if isinstance(item, Level) and item.level == LOWER:
            yield "curve-of-spee", None
        if isinstance(item, Reach | KeepMeasure):
            yield item.measure, _sorted(item.pair)
    for one in matter.setup.predicted or ():
        yield one.measure, _sorted(one.pair)


def _sorted(pair: Pair) -> Pair:
    return tuple(sorted(pair)) if pair else None


def _wanted(line: MeasureLine, named: set[tuple[str, Pair]]) -> bool:
    return (line.measure, tuple(line.where.split("/")) if line.where else None) in named


def _changes(line: MeasureLine) -> bool:
    if line.after is None or line.after.low is None or line.after.high is None:
        return False
    start = 0.0 if line.is_change else line.before
    return start is not None and max(abs(line.after.low - start), abs(line.after.high - start)) > _SHOWN


def _line(matter: Matter, sums: Sums, measure: str, pair: Pair) -> MeasureLine | None:
    claimed, unit = _claimed(matter, measure, pair), unit_of(measure)
    if not MEASURE_KINDS[measure].moves and claimed is None:
        return None
    reading, start = matter.measures.reading(measure, pair), start_of(matter, measure, pair)
    base = None if start is None and not reading.absolute else 0.0 if reading.absolute else start
    after = reading.span and _from(reading.span, base or 0.0)
    row = measure_row(matter.translation.frame, measure, pair)
    linear = None if row is None or after is None else sums.value(row.terms)
    within = matter.numbers.value("review.claim-deg" if unit == DEG else "review.claim-mm")
    agrees = None if base is None else _agrees(after, claimed, within, matter.expected(measure))
    middle = None if linear is None else linear + (base or 0.0)
    where = "/".join(pair or ())
    return MeasureLine(measure, where, unit, start, after, middle, claimed, within, agrees, base is None)


def _from(span: Span, base: float) -> Span:
    return Span(None if span.low is None else base + span.low, None if span.high is None else base + span.high)


def _agrees(after: Span | None, claimed: float | None, within: float, expected: Span) -> bool | None:
    """Whether the value stated is one that the movements can give, with what is counted on or without."""
    if after is None or claimed is None or after.low is None or after.high is None:
        return None
    low = after.low + min(0.0, expected.low or 0.0)
    high = after.high + max(0.0, expected.high or 0.0)
    return low - within - ROUNDING <= claimed <= high + within + ROUNDING


def _claimed(matter: Matter, measure: str, pair: Pair) -> float | None:
    """What the setup states, in the model's unit."""
    for one in matter.setup.predicted or ():
        if one.measure == measure and _sorted(one.pair) == pair:
            scale = matter.mouth.scale(measure, one.unit)
            return None if scale is None else one.value * scale
    return None
