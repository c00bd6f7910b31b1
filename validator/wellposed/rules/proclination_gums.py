"""Incisors forward: what the gums say to it, and whether they stay there."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.rules._declare import Told, rule
from wellposed.rules._gums import RECESSION, THIN, about
from wellposed.rules._inclining import LOWER_ANGLE, PER_MM_MOST, Outward, of_lower, outwards, planned
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import LOWER, arch_of

ASK = "caution.lower-incisor-to-mandibular-plane.ask"
MARGIN = "caution.thin-gingiva.margin"
STABLE = "caution.advance.lower-incisors"
USUAL = "normal.lower-incisor-to-mandibular-plane.eastman"


@rule(
    "proclination-with-thin-gingiva",
    Severity.CAUTION,
    title="Incisors go forward where the gums are thin.",
    says="{asked:clause}: thin gingiva is stated there. Below {limit:mm} of thickness recession was seen.",
    do="Look whether the gums bear it, or are to be thickened first.",
    change="A step of periodontal treatment in the process, or no travel forward of these teeth, settles it.",
    figures=(MARGIN, ASK),
)
def proclination_with_thin_gingiva(chart: Chart) -> Iterator[Told]:
    """No incisor is moved or may be moved forward, beyond its place in line, where thin gingiva is stated.

    A thin covering gives way more easily when the root comes forward under it.

    Evidence: studies disagree; one, recalled, found recession below half a millimetre of thickness. Where the condition
    names no teeth, the lower incisors are meant.

    Passes: {"conditions": [{"condition": "thin-gingiva", "teeth": ["31", "41"]}],
             "allow": [{"id": "a1", "use": "incisor-advance", "arch": "upper", "up_to": 1, "unit": "mm"}]}
    Fails: {"conditions": [{"condition": "thin-gingiva", "teeth": ["31", "41"]}],
            "allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 1, "unit": "mm"}]}
    """
    yield from _over(chart, THIN, limit=chart.limit(MARGIN), figures=(MARGIN,))


@rule(
    "proclination-with-recession",
    Severity.ASK,
    title="Incisors with exposed roots go further forward.",
    says="{asked:clause}: at {teeth:teeth} gingival recession is stated.",
    do="Say whether the gums are treated first, or leave these teeth out.",
    change="A step of periodontal treatment in the process, or no travel forward of these teeth, settles it.",
    figures=(ASK,),
)
def proclination_with_recession(chart: Chart) -> Iterator[Told]:
    """No incisor is moved or may be moved forward, beyond its place in line, where gingival recession is stated.

    The root is bare already; bringing it further out of its bone cannot help it, and may cost more of its cover.

    Evidence: recession is named among the settings to assess before movement; how much forward movement adds to it is
    disputed. Where the condition names no teeth, the lower incisors are meant.

    Passes: {"conditions": [{"condition": "gingival-recession", "teeth": ["13", "23"]}],
             "allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 1, "unit": "mm"}]}
    Fails: {"conditions": [{"condition": "gingival-recession", "teeth": ["31"]}],
            "allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 1, "unit": "mm"}]}
    """
    yield from _over(chart, RECESSION)


@rule(
    "advance-beyond-stability",
    Severity.CAUTION,
    title="The lower incisors go forward further than they are known to stay.",
    says="{asked:clause}: beyond {limit:mm} forward, lower incisors tend to come back.",
    do="Say how they are held afterwards, or lessen the advance.",
    change="A bonded lower retainer in the order, or incisors that lean back and only come upright, settles it.",
    figures=(STABLE, USUAL),
)
def advance_beyond_stability(chart: Chart) -> Iterator[Told]:
    """The lower incisors go forward, or may, by no more than 2 mm, unless they only come upright or are held by a
    bonded retainer.

    Tongue and lip decide where they stay; what passes their balance comes back as crowding.

    Evidence: textbooks, recalled, with 2 mm or 3 degrees as the rule; single patients hold more. Incisors of a known
    inclination whose advance ends at the usual mean are taken as coming upright.

    Passes: {"allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 2, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "incisor-advance", "arch": "lower", "up_to": 3, "unit": "mm"}]}
    """
    beyond = [one for one in outwards(chart) if of_lower(one) and one.travel > chart.limit(STABLE)]
    held = (p.said("retainer") in ("bonded", "both") and p.said("arch") == LOWER for p in chart.of("retention"))
    beyond = [one for one in beyond if not _uprights(chart, one)]
    if beyond and not any(held):
        yield about(chart, [o.place.owner for o in beyond], limit=chart.limit(STABLE), figures=(STABLE,))


def _over(chart: Chart, name: str, **facts: Any) -> Iterator[Told]:
    """What goes forward over gums in this condition, a finding each; what a limit of the angle says is left out."""
    for condition in chart.condition(name):
        over = {o.place.owner: teeth for o in outwards(chart) if (teeth := _concerned(chart, condition, o))}
        teeth = sorted({tooth for one in over.values() for tooth in one})
        if teeth and not _treated(chart, teeth):
            yield about(chart, over, teeth=teeth, **facts)


def _concerned(chart: Chart, condition: Place, one: Outward) -> list[str]:
    named = condition.said("teeth")
    teeth = [t for t in one.teeth if (t in named if named else arch_of(t) == LOWER)]
    return [t for t in teeth if arch_of(t) != LOWER] if _asked_by_angle(chart) else teeth


def _asked_by_angle(chart: Chart) -> bool:
    """Whether a limit of the lower incisors' angle is passed: it is told there, beside the gums."""
    end = planned(chart, LOWER_ANGLE)
    return end is not None and end.low > max(end.present, chart.limit(ASK))


def _treated(chart: Chart, teeth: list[str]) -> bool:
    steps = (p for p in chart.of("process") if p.said("step") == "periodontal-treatment")
    return any(step.said("teeth") is None or set(step.said("teeth")) & set(teeth) for step in steps)


def _uprights(chart: Chart, one: Outward) -> bool:
    """Whether an advance, tipping as much as it can, ends at the usual inclination at the most."""
    present = chart.value(LOWER_ANGLE)
    return present is not None and present + one.travel * chart.limit(PER_MM_MOST) <= chart.limit(USUAL)


RULES = (proclination_with_thin_gingiva, proclination_with_recession, advance_beyond_stability)
