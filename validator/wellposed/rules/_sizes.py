"""Tooth-size analyses as the rules look at them: which can be made, and in which arch the teeth are too wide."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed.derive.tooth_size import FRONT, WHOLE, ToothSize, of_prescription
from wellposed.model.findings import Finding
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import ARCHES, LOWER, UPPER, tooth_at

USUAL, STRICT = "tooth-size.excess", "tooth-size.excess-strict"
PROBLEM = "tooth-size-discrepancy"
RATIOS = {FRONT: "anterior-tooth-size-ratio", WHOLE: "overall-tooth-size-ratio"}
EXCESS = {arch: f"{arch}-tooth-size-excess" for arch in ARCHES}
WIDTHS = "tooth-width"
SMALLER = {UPPER: LOWER, LOWER: UPPER}
FRONT_TEETH = {arch: frozenset(tooth_at(arch, s, n) for s in ("right", "left") for n in (1, 2, 3)) for arch in ARCHES}
_ROUNDING = 1e-6


class Excess(NamedTuple):
    """Teeth of one arch that are too wide for the other's.

    arch    whose teeth are relatively large
    amount  by how much, mm in that arch, 0 or more
    teeth   6 or 12 an arch; 0 where the excess is only stated
    ids     the findings it rests on
    """

    arch: str
    amount: float
    teeth: int
    ids: tuple[str, ...]


def analyses(chart: Chart) -> Iterator[ToothSize]:
    """The analyses that the widths allow, of the front first."""
    for count in RATIOS:
        size = of_prescription(chart.rx, count)
        if isinstance(size, ToothSize):
            yield size


def excesses(chart: Chart) -> Iterator[Excess]:
    """By each analysis the arch with the larger teeth; where none can be made, as stated."""
    sizes = list(analyses(chart))
    for size in sizes:
        if size.larger:
            yield Excess(size.larger, size.excess, size.teeth, chart.found(WIDTHS))
    for arch, measure in EXCESS.items():
        stated = chart.value(measure)
        if not sizes and stated is not None and stated > 0:
            yield Excess(arch, stated, 0, chart.found(measure))


def front_excess(chart: Chart) -> Excess | None:
    """The excess of the six front teeth, or the one that is stated without widths."""
    return next((one for one in excesses(chart) if one.teeth != WHOLE), None)


def reached(amount: float, limit: float) -> bool:
    """Whether an amount is no less than a limit, but for rounding."""
    return amount > limit - _ROUNDING


def stated(chart: Chart, *measures: str) -> tuple[Finding, ...]:
    """Every finding of these measures."""
    return tuple(one for one in chart.rx.findings or () if isinstance(one, Finding) and one.measure in measures)
