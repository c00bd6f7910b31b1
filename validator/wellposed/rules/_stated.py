"""Measurements as the rules of diagnosis compare them: every reading of a measure, where it was taken, how it is told.

A reading is a finding of the whole mouth. Several of one measure are all looked at: another pair of teeth or another
bite can bear out a diagnosis that the usual one does not.
"""

from __future__ import annotations

from collections.abc import Iterable

from wellposed.consistency.whole import Place
from wellposed.model.findings import Finding
from wellposed.rules.chart import Chart
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.teeth import ARCHES, SIDES, arch_of, side_of
from wellposed.vocabulary.units import DEG, MM, PERCENT

RELEVANT_MM, RELEVANT_DEG = "achieved.relevant-error.mm", "achieved.relevant-error.deg"
"""What is no larger than a clinically relevant error is taken for none."""

_FORMS = {MM: " mm", DEG: "°", PERCENT: " %"}
_CENTRALS = ("11", "21", "31", "41")
_TAKEN_AT = {
    "overbite": _CENTRALS,
    "overjet": _CENTRALS,
    "transverse-overlap-right": ("16", "46"),
    "transverse-overlap-left": ("26", "36"),
}
_DECIMALS = 2


def readings(chart: Chart, *measures: str) -> tuple[Finding, ...]:
    """Every finding of these measures, measure by measure, at whatever teeth and in whatever bite."""
    found = [one for one in chart.rx.findings or () if isinstance(one, Finding)]
    return tuple(one for measure in measures for one in found if one.measure == measure)


def at_its_teeth(place: Place, found: Iterable[Finding]) -> tuple[Finding, ...]:
    """The readings taken at a tooth that the problem names; all of them where it names none."""
    named: tuple[str, ...] = place.said("teeth") or ()
    return tuple(one for one in found if not named or set(named) & set(one.pair or _TAKEN_AT.get(one.measure, named)))


def values(chart: Chart, found: Iterable[Finding]) -> list[float]:
    """The readings in the unit of their measure; those that cannot be turned into it are left out."""
    scaled = ((one.value, chart.mouth.scale(one.measure, one.unit)) for one in found)
    return [value * scale for value, scale in scaled if scale is not None]


def amount(value: float, unit: str) -> str:
    """``2.5 mm``, ``109.0°``, ``27.78 %``."""
    return f"{round(float(value), _DECIMALS)}{_FORMS.get(unit, '')}"


def in_words(found: Iterable[Finding]) -> list[str]:
    """Each reading with its name: ``right molar relation 0.5 mm``, ``overjet at 12/42 -1.0 mm``."""
    return [f"{MEASURE_KINDS[one.measure].words}{_where(one)} {amount(one.value, one.unit)}" for one in found]


def ids(found: Iterable[Finding]) -> tuple[str, ...]:
    """The ids of the readings."""
    return tuple(one.id for one in found)


def sides(place: Place) -> tuple[str, ...]:
    """The side a problem states, else those of its teeth, else both."""
    stated = place.said("side")
    named = {side_of(tooth) for tooth in place.said("teeth") or ()}
    return (stated,) if stated else tuple(side for side in SIDES if not named or side in named)


def arches(place: Place) -> tuple[str, ...]:
    """The arch a problem states, else those of its teeth, else both."""
    stated = place.said("arch")
    named = {arch_of(tooth) for tooth in place.said("teeth") or ()}
    return (stated,) if stated else tuple(arch for arch in ARCHES if not named or arch in named)


def _where(one: Finding) -> str:
    return f" at {'/'.join(one.pair)}" if one.pair else ""
