"""Up and down at the back: molars that open or close the bite, and the face they do it in."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed.findings import Severity
from wellposed.rules._acts import acts
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._front import MOLARS
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import SIDES, side_of

BACK_OPEN = "open-bite-posterior"
ANGLES = {
    "mandibular-plane-angle": True,
    "palatal-to-mandibular-plane": False,
    "sella-nasion-to-mandibular-plane": True,
}
"""Angles of the mandible, and whether one at its limit already counts as high."""
STEEP = tuple(f"normal.{measure}.most" for measure in ANGLES)


class Steep(NamedTuple):
    """A high angle of the mandible: its measure, its value and the limit in deg, and the norm of that."""

    measure: str
    value: float
    limit: float
    key: str


def steep(chart: Chart) -> Steep | None:
    """The first of the angles measured that is high."""
    for measure, at_the_limit in ANGLES.items():
        value, key = chart.value(measure), f"normal.{measure}.most"
        if value is not None and (value > chart.limit(key) or (at_the_limit and value == chart.limit(key))):
            return Steep(measure, value, chart.limit(key), key)
    return None


@rule(
    "molar-extrusion-high-angle",
    Severity.CAUTION,
    title="Molars are extruded although the mandibular plane is steep.",
    says="{asked:clause}: {measure:measure} is {angle:deg}, high from {limit:deg}; the jaw swings down and back.",
    do="Weigh opening the bite in front instead.",
    change="An angle below {limit:deg} would change this.",
    figures=STEEP,
)
def molar_extrusion_high_angle(chart: Chart) -> Iterator[Told]:
    """No extrusion of molars is ordered or allowed in a face with a high mandibular plane angle.

    The mandible turns down and back about its joint: the face grows longer, the chin goes back, the lips part.

    Evidence: geometry and texts. What is high differs by plane and school: 30 degrees to the Frankfort plane, 31 to the
    palatal plane, 38 to sella-nasion.

    Passes: {"findings": [{"id": "f1", "measure": "mandibular-plane-angle", "value": 25, "unit": "deg"}],
             "allow": [{"id": "a1", "use": "extrusion", "teeth": ["46"], "up_to": 1, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "mandibular-plane-angle", "value": 34, "unit": "deg"}],
            "allow": [{"id": "a1", "use": "extrusion", "teeth": ["46"], "up_to": 1, "unit": "mm"}]}
    """
    high = steep(chart)
    if high is not None:
        for act in acts(chart, "vertical", 1, MOLARS):
            facts = {"measure": high.measure, "angle": high.value, "limit": high.limit, "figures": (high.key,)}
            yield act.told(*chart.found(high.measure), **facts)


@rule(
    "back-extrusion-in-grown-patient",
    Severity.CAUTION,
    title="Molars of both sides are extruded in a patient who has done growing.",
    says="{asked:clause}: without growth to make room, the muscles press the molars back and the bite deepens.",
    do="Weigh opening the bite in front instead, or say how it is to be held.",
    change="Growth still expected, or a gap between the back teeth to be closed, would change this.",
    figures=STEEP,
)
def back_extrusion_in_grown_patient(chart: Chart) -> Iterator[Told]:
    """No extrusion of molars on both sides is ordered or allowed in a grown patient whose back teeth meet.

    Growth of the ramus makes room for longer molars; where there is none, the muscles undo it.

    Evidence: texts; no figures. Extrusion of premolars to level the curve is not meant, nor of one side alone, nor
    where a gap at the back is measured or diagnosed. With a steep mandibular plane that is said instead.

    Passes: {"patient": {"reference": "P-7F3A", "growth": "growing"},
             "allow": [{"id": "a1", "use": "extrusion", "teeth": ["36", "46"], "up_to": 1, "unit": "mm"}]}
    Fails: {"patient": {"reference": "P-7F3A", "growth": "complete"},
            "allow": [{"id": "a1", "use": "extrusion", "teeth": ["36", "46"], "up_to": 1, "unit": "mm"}]}
    """
    gap = chart.value("posterior-open-bite") or any(chart.problems(BACK_OPEN, "infraocclusion"))
    if chart.growing is not False or gap or steep(chart):
        return
    raising = list(acts(chart, "vertical", 1, MOLARS))
    if len({side_of(tooth) for act in raising for tooth in act.teeth}) == len(SIDES):
        for act in raising:
            yield act.told()


@rule(
    "long-face-still-growing",
    Severity.NOTE,
    title="The mandibular plane is steep and growth is still expected.",
    says="{measure:measure} is {angle:deg}, high from {limit:deg}: as the face grows longer, the bite tends to open.",
    do="Watch the overbite from stage to stage, and plan its retention.",
    change="Growth that is complete, or an angle below {limit:deg}, would change this.",
    figures=STEEP,
)
def long_face_still_growing(chart: Chart) -> Iterator[Told]:
    """A high mandibular plane angle in a growing patient is pointed out.

    The direction of growth stays: the lower face lengthens, and a bite that was closed opens again.

    Evidence: texts. What is high differs by plane and school.

    Passes: {"patient": {"reference": "P-7F3A", "growth": "complete"},
             "findings": [{"id": "f1", "measure": "mandibular-plane-angle", "value": 34, "unit": "deg"}]}
    Fails: {"patient": {"reference": "P-7F3A", "growth": "growing"},
            "findings": [{"id": "f1", "measure": "mandibular-plane-angle", "value": 34, "unit": "deg"}]}
    """
    high = steep(chart)
    if high is not None and chart.growing:
        found = chart.found(high.measure)
        pointer = next(place.pointer for place in chart.of("findings") if place.owner in found)
        yield told(pointer, *found, measure=high.measure, angle=high.value, limit=high.limit, figures=(high.key,))


RULES = (
    molar_extrusion_high_angle,
    back_extrusion_in_grown_patient,
    long_face_still_growing,
)
