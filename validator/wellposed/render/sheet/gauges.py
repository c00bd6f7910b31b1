"""The values of a measure side by side: today, what is asked, what a setup reaches."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import NamedTuple

from wellposed.kinematics.mouth import Mouth
from wellposed.model.clauses import KeepMeasure, Reach
from wellposed.review.result import MeasureLine, SetupReview
from wellposed.vocabulary.units import MM

__all__ = ["Bounds", "Gauge", "gauge", "gauges", "reached"]

PAIRED = ("overbite", "overjet")


class Bounds(NamedTuple):
    """What a clause asks of a measure, in its own unit; an end that is not bounded is None."""

    clause: str
    kept: bool
    low: float | None
    high: float | None


@dataclass(frozen=True, slots=True)
class Gauge:
    """One measure, in mm.

    today    as measured, None where it is not
    asked    what the goals and the keeps say of it, in the order of the document
    counted  changes of it that are counted on and not ordered
    planned  between what values a setup ends, both the same where that is exact; None where no setup is drawn or told
    """

    measure: str
    today: float | None
    asked: tuple[Bounds, ...] = ()
    planned: tuple[float, float] | None = None
    counted: tuple[Bounds, ...] = ()

    @property
    def empty(self) -> bool:
        """Whether there is nothing to draw."""
        return self.today is None and not self.asked and self.planned is None

    @property
    def values(self) -> tuple[float, ...]:
        """Every value there is."""
        bounds = [end for one in self.asked for end in (one.low, one.high)]
        return tuple(v for v in (self.today, *bounds, *(self.planned or ())) if v is not None)


def gauges(mouth: Mouth, measures: Iterable[str], review: SetupReview | None = None) -> dict[str, Gauge]:
    """The measures by their names."""
    return {name: gauge(mouth, name, reached(review, name)) for name in measures}


def gauge(mouth: Mouth, measure: str, planned: tuple[float, float] | None = None) -> Gauge:
    """One measure as it is measured, asked and planned."""
    expected = [one for one in mouth.prescription.expect or () if one.measure == measure and one.unit == MM]
    counted = tuple(Bounds(one.id, False, one.at_least, one.at_most) for one in expected)
    return Gauge(measure, mouth.baseline(measure), tuple(_asked(mouth, measure)), planned, counted)


def _asked(mouth: Mouth, measure: str) -> Iterator[Bounds]:
    today, rx = mouth.baseline(measure), mouth.prescription
    for item in (*(rx.goals or ()), *(rx.keep or ())):
        if getattr(item, "measure", None) != measure or getattr(item, "pair", None):
            continue
        if isinstance(item, Reach):
            scale = mouth.scale(measure, item.unit)
            if scale is not None:
                yield Bounds(item.id, False, *(_times(end, scale) for end in (item.at_least, item.at_most)))
        elif isinstance(item, KeepMeasure) and today is not None:
            scale = mouth.scale(measure, item.unit)
            if scale is not None:
                yield Bounds(item.id, True, today - item.within * scale, today + item.within * scale)


def _times(value: float | None, scale: float) -> float | None:
    return None if value is None else value * scale


def reached(review: SetupReview | None, measure: str) -> tuple[float, float] | None:
    """What a setup makes of a measure at the usual teeth, None where that cannot be told."""
    for line in review.measures if review else ():
        if line.measure == measure and line.where in ("", "mouth") and not line.is_change:
            return _span(line)
    return None


def _span(line: MeasureLine) -> tuple[float, float] | None:
    if line.after is None or line.after.low is None or line.after.high is None:
        return None
    return line.after.low, line.after.high
