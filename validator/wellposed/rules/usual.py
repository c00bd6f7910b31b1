"""Whether what was measured lies in its usual range, for the measures that have one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import NamedTuple

from wellposed.model.findings import Finding
from wellposed.rules.chart import Chart


class Span(NamedTuple):
    """The norms a measure lies between; None: no bound on that side. ``even``: the bound counts either way from 0."""

    least: str | None
    most: str | None
    even: bool = False


_ROOM = Span(None, "kinematics.crowding-error")
_RELATION, _MIDLINE = Span(None, "normal.relation.class-i", True), Span(None, "normal.midline", True)
_BOTH_ENDS = (
    *("overbite", "overjet", "upper-incisor-to-palatal-plane", "upper-incisor-to-sella-nasion"),
    *("lower-incisor-to-mandibular-plane", "mandibular-plane-angle", "palatal-to-mandibular-plane"),
    *("sella-nasion-to-mandibular-plane", "anb-angle", "curve-of-spee"),
)
SPANS: Mapping[str, Span] = MappingProxyType(
    {
        **{name: Span(f"normal.{name}.least", f"normal.{name}.most") for name in _BOTH_ENDS},
        **{f"{arch}-{what}": _ROOM for arch in ("upper", "lower") for what in ("crowding", "spacing")},
        **{f"{tooth}-relation-{side}": _RELATION for tooth in ("molar", "canine") for side in ("right", "left")},
        **{f"{arch}-midline": _MIDLINE for arch in ("upper", "lower")},
        **{f"{arch}-tooth-size-excess": Span(None, "tooth-size.excess") for arch in ("upper", "lower")},
        "interincisal-angle": Span("normal.interincisal.least", "normal.interincisal.most"),
        "gingival-display-on-smiling": Span(None, "normal.gingival-display-on-smiling.excess"),
    }
)
"""By measure, its usual range. Widths and displays that differ by age or sex are left out."""
_OF_TEETH = {"rotation": "achieved.relevant-error.deg", "displacement": "achieved.relevant-error.mm"}
TEETH_FIGURES = tuple(_OF_TEETH.values())
FIGURES = tuple(dict.fromkeys(key for span in SPANS.values() for key in span[:2] if isinstance(key, str)))


def usual(chart: Chart, measure: str) -> bool | None:
    """Whether a measure lies in its usual range; None if it was not measured, or has none."""
    value, span = chart.value(measure), SPANS.get(measure)
    if value is None or span is None:
        return None
    at = abs(value) if span.even else value
    least = span.least is None or at >= chart.limit(span.least)
    return least and (span.most is None or at <= chart.limit(span.most))


def figures_of(*measures: str) -> tuple[str, ...]:
    """The norms these measures were held to."""
    spans = (SPANS[measure] for measure in measures if measure in SPANS)
    keys = dict.fromkeys(key for span in spans for key in (span.least, span.most) if key)
    return (*keys, *(_OF_TEETH[measure] for measure in measures if measure in _OF_TEETH))


def of_teeth(measure: str) -> bool:
    """Whether a measure of single teeth has a usual range."""
    return measure in _OF_TEETH


def measured(chart: Chart) -> list[str]:
    """The measures stated that have a usual range."""
    return [measure for measure in SPANS if chart.value(measure) is not None]


def unusual(chart: Chart) -> Iterator[str]:
    """The measures that lie outside their range; of single teeth those that are turned or out of line."""
    yield from (measure for measure in measured(chart) if not usual(chart, measure))
    for measure, key in _OF_TEETH.items():
        if any(abs(value) > chart.limit(key) for value in chart.tooth_values(measure).values()):
            yield measure
    for side in ("right", "left"):
        if any(finding.value <= 0 for finding in _overlaps(chart, side)):
            yield f"transverse-overlap-{side}"


def _overlaps(chart: Chart, side: str) -> Iterator[Finding]:
    wanted = f"transverse-overlap-{side}"
    return (one for one in chart.rx.findings or () if isinstance(one, Finding) and one.measure == wanted)
