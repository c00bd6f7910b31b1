"""Tooth-size analysis: do the lower teeth fit the upper?

ratio = 100 x (sum of the lower widths) / (sum of the upper), over twelve teeth (first molar to first molar) or six
(canine to canine). Bolton 1958 and 1962; the numbers are ``tooth-size.*`` of the norms.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import NamedTuple

from wellposed import norms
from wellposed.model.findings import ToothFinding
from wellposed.model.prescription import Prescription
from wellposed.vocabulary.teeth import ARCHES, LOWER, SIDES, UPPER, tooth_at

WHOLE = 12
FRONT = 6
KEYS: Mapping[int, str] = MappingProxyType({WHOLE: "tooth-size.overall", FRONT: "tooth-size.anterior"})
"""The norm of each analysis, by its number of teeth an arch."""

UNFIT = (
    "crown",
    "veneer",
    "large-filling",
    "bridge-abutment",
    "pontic",
    "implant",
    "to-be-extracted",
    "unerupted",
)
"""States in which a tooth's own width is not there or not the one that will count. A small crown is its own width."""

_PRIMARY_QUADRANTS = 4
_NONE: Mapping[str, str] = MappingProxyType({})


class Fault(NamedTuple):
    """Why the analysis cannot be made: a tooth of the set, and the reason.

    reason  missing, primary, no-width, width-not-positive, measured-twice, or the state that makes it unfit
    """

    tooth: str
    reason: str


@dataclass(frozen=True, slots=True)
class ToothSize:
    """The analysis of one set of teeth.

    teeth         12 or 6, per arch
    upper, lower  sums of the widths, mm
    ratio         lower as percent of upper
    spread_z      standard deviations from the mean; > 0 when the lower teeth are relatively large
    upper_excess  upper - lower / mean ratio, mm in the upper arch; > 0 when the upper teeth are relatively large
    lower_excess  lower - mean ratio x upper, mm in the lower arch; > 0 when the lower teeth are relatively large

    The two have opposite signs and differ in size by the mean ratio: each is in its own arch's terms.
    """

    teeth: int
    upper: float
    lower: float
    ratio: float
    spread_z: float
    upper_excess: float
    lower_excess: float

    @property
    def larger(self) -> str | None:
        """The arch whose teeth are relatively large; None where neither is."""
        if self.lower_excess == 0:
            return None
        return LOWER if self.lower_excess > 0 else UPPER

    @property
    def excess(self) -> float:
        """The excess in the terms of the arch that has it, mm, 0 or more."""
        return max(self.upper_excess, self.lower_excess)

    @property
    def beyond_spread(self) -> bool:
        """Whether the ratio lies further from the mean than the standard deviations that are ordinary."""
        return abs(self.spread_z) > norms.value("tooth-size.spreads")


def teeth_of(count: int) -> tuple[str, ...]:
    """The teeth of a set, both arches, for 12 or 6 an arch."""
    reach = count // 2
    return tuple(tooth_at(arch, side, number) for arch in ARCHES for side in SIDES for number in range(1, reach + 1))


def _primary(tooth: str) -> str:
    """The primary tooth that stood in the place of a permanent one; its number belongs to no tooth behind the fifth."""
    return f"{int(tooth[0]) + _PRIMARY_QUADRANTS}{tooth[1]}"


def analysis(
    widths: Mapping[str, float], count: int, unfit: Mapping[str, str] = _NONE
) -> ToothSize | tuple[Fault, ...]:
    """The analysis of these mesiodistal widths (ISO 3950 number to mm), or every reason why not.

    count  12 (overall) or 6 (anterior)
    unfit  teeth whose width cannot count, and why

    Only measured widths are used. KeyError for another count.
    """
    key = KEYS[count]
    faults = tuple(_faults(widths, count, unfit))
    return faults or _computed(widths, count, norms.norm(key).value, norms.norm(key).spread or 1.0)


def _faults(widths: Mapping[str, float], count: int, unfit: Mapping[str, str]) -> Iterator[Fault]:
    for tooth in teeth_of(count):
        if tooth in unfit:
            yield Fault(tooth, unfit[tooth])
        elif tooth not in widths:
            yield Fault(tooth, "primary" if _primary(tooth) in widths else "no-width")
        elif widths[tooth] <= 0:
            yield Fault(tooth, "width-not-positive")


def _computed(widths: Mapping[str, float], count: int, mean: float, spread: float) -> ToothSize:
    teeth = teeth_of(count)
    upper, lower = (sum(widths[tooth] for tooth in teeth[start : start + count]) for start in (0, count))
    share, ratio = mean / 100, 100 * lower / upper
    return ToothSize(
        teeth=count,
        upper=upper,
        lower=lower,
        ratio=ratio,
        spread_z=(ratio - mean) / spread,
        upper_excess=upper - lower / share,
        lower_excess=lower - upper * share,
    )


class Band(NamedTuple):
    """Least and most, mm."""

    least: float
    most: float


def lower_band(size: ToothSize) -> Band:
    """The lower excess between which the ratio is ordinary, for this sum of upper widths, mm."""
    most = norms.value("tooth-size.spreads") * _spread(size) / 100 * size.upper
    return Band(-most, most)


def upper_band(size: ToothSize) -> Band:
    """The upper excess between which the ratio is ordinary, for this sum of lower widths, mm.

    Not even on both sides of 0: dividing by the ratio bends it.
    """
    mean = norms.value(KEYS[size.teeth])
    reach = norms.value("tooth-size.spreads") * _spread(size)
    ends = (size.lower * (100 / (mean + sign * reach) - 100 / mean) for sign in (1, -1))
    return Band(*ends)


def ratio_band(count: int) -> Band:
    """The ratios that are ordinary, percent."""
    norm = norms.norm(KEYS[count])
    reach = norms.value("tooth-size.spreads") * (norm.spread or 0.0)
    return Band(norm.value - reach, norm.value + reach)


def _spread(size: ToothSize) -> float:
    return norms.norm(KEYS[size.teeth]).spread or 0.0


# of a prescription


def of_prescription(prescription: Prescription, count: int) -> ToothSize | tuple[Fault, ...]:
    """The analysis of the widths a prescription measures, or every reason why not; 12 or 6 teeth an arch."""
    return analysis(widths_of(prescription), count, unfit_of(prescription))


def widths_of(prescription: Prescription) -> dict[str, float]:
    """The measured widths, tooth to mm."""
    return {tooth: values[0] for tooth, values in _measured(prescription).items()}


def _measured(prescription: Prescription) -> dict[str, list[float]]:
    """Every width measured of a tooth, each value once."""
    found: dict[str, list[float]] = {}
    for finding in prescription.findings or ():
        if isinstance(finding, ToothFinding) and finding.tooth_measure == "tooth-width":
            for tooth, value in finding.values.items():
                known = found.setdefault(tooth, [])
                known += [value] if value not in known else []
    return found


def unfit_of(prescription: Prescription) -> dict[str, str]:
    """Permanent teeth whose width cannot count, and why: not there, restored, leaving, or measured twice."""
    listed = {*prescription.teeth.upper, *prescription.teeth.lower}
    states = {entry.tooth: entry.states for entry in prescription.teeth.particulars or ()}
    twice = {tooth for tooth, values in _measured(prescription).items() if len(values) > 1}
    found = {tooth: _why_unfit(tooth, listed, states.get(tooth, ()), twice) for tooth in teeth_of(WHOLE)}
    return {tooth: why for tooth, why in found.items() if why}


def _why_unfit(tooth: str, listed: set[str], states: tuple[str, ...], twice: set[str]) -> str | None:
    if tooth not in listed:
        return "primary" if _primary(tooth) in listed else "missing"
    return next((state for state in UNFIT if state in states), "measured-twice" if tooth in twice else None)
