"""Crossbites, scissors bites and narrow arches that are stated, against what was measured across the mouth."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.model.findings import Finding
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._stated import arches, at_its_teeth, ids, in_words, readings, sides
from wellposed.rules.chart import Chart
from wellposed.vocabulary.measures import MEASURES
from wellposed.vocabulary.teeth import ARCHES, LOWER, UPPER, arch_of, is_canine, is_incisor, side_of

FRONT, BACK, SCISSORS = "crossbite-anterior", "crossbite-posterior", "scissors-bite"
NAMES = {FRONT: "an anterior crossbite", BACK: "a posterior crossbite", SCISSORS: "a scissors bite"}
USUAL_OVERLAP = "normal.transverse-overlap.most"
NORMED = ("inter-canine-width", "inter-first-molar-width")
_WIDTHS = {arch: tuple(m for m in MEASURES if m.startswith(f"{arch}-inter-")) for arch in ARCHES}
_SEXES = ("female", "male")


def _overlaps(side: str) -> str:
    return f"transverse-overlap-{side}"


@rule(
    "crossbite-not-measured",
    Severity.CAUTION,
    title="A crossbite or scissors bite is stated, and nothing measured tells how far it goes.",
    says="{stated} is stated, and there is no measurement of it: {needed:measure} would tell.",
    do="Measure it and add the finding, with the pair of teeth it is taken at.",
    change="A finding of it, or of an arch width where it is posterior, settles it.",
)
def crossbite_not_measured(chart: Chart) -> Iterator[Told]:
    """A posterior crossbite or scissors bite comes with a transverse measurement, an anterior one with an overjet or a
    displacement.

    How many teeth are concerned, on which side and by how much decides between tipping a tooth and widening a jaw.

    Evidence: none is needed.

    Passes: {"problems": [{"id": "p1", "problem": "crossbite-posterior", "side": "left"}],
             "findings": [{"id": "f1", "measure": "transverse-overlap-left", "value": -2, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "crossbite-posterior", "side": "left"}],
            "findings": [{"id": "f1", "measure": "transverse-overlap-right", "value": 2, "unit": "mm"}]}
    """
    for place in chart.problems(FRONT, BACK, SCISSORS):
        stated = str(place.said("problem"))
        needed = ["overjet"] if stated == FRONT else [_overlaps(side) for side in sides(place)]
        enough = ("displacement",) if stated == FRONT else (*_WIDTHS[UPPER], *_WIDTHS[LOWER])
        if not chart.found(*needed, *enough):
            yield told(place.pointer, place.owner, stated=NAMES[stated], needed=needed, missing=needed)


@rule(
    "crossbite-not-supported",
    Severity.ASK,
    title="A crossbite is stated, and the upper teeth measured stand outside the lower.",
    says="{stated} is stated, yet measured is {measured:list}: above 0 mm the upper teeth are outside the lower.",
    do="Say which teeth are in crossbite and measure there, or take it and what answers it alone out.",
    change="A reading of 0 or less at any of its teeth, or one of them off the arch line that way, would bear it out.",
)
def crossbite_not_supported(chart: Chart) -> Iterator[Told]:
    """Where a crossbite is stated some overlap measured at its teeth is nought or less.

    Widening or tipping for a crossbite that is not there makes a scissors bite.

    Evidence: none is needed; it is what the word means. Teeth edge to edge are counted with it.

    Passes: {"problems": [{"id": "p1", "problem": "crossbite-posterior", "side": "right"}],
             "findings": [{"id": "f1", "measure": "transverse-overlap-right", "value": -1, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "crossbite-posterior", "side": "right"}],
            "findings": [{"id": "f1", "measure": "transverse-overlap-right", "value": 2, "unit": "mm"}]}
    """
    for place in chart.problems(FRONT, BACK):
        stated = str(place.said("problem"))
        measures = ("overjet",) if stated == FRONT else tuple(_overlaps(side) for side in sides(place))
        found = _at_every(chart, place, measures)
        if found and all(one.value > 0 for one in found) and not _displaced(chart, place, stated == FRONT):
            facts = {"stated": NAMES[stated], "measured": in_words(found)}
            yield told(place.pointer, place.owner, *ids(found), doubts=place.owner, **facts)


def _at_every(chart: Chart, place: Place, measures: tuple[str, ...]) -> tuple[Finding, ...]:
    """The readings at the teeth of a problem; none where one of several measures has none."""
    per_measure = [at_its_teeth(place, readings(chart, measure)) for measure in measures]
    return tuple(one for found in per_measure for one in found) if all(per_measure) else ()


def _displaced(chart: Chart, place: Place, front: bool) -> bool:
    """Whether a tooth it may be about stands off its line the way of a crossbite."""
    named, on = place.said("teeth"), sides(place)
    return any(
        (off < 0 if arch_of(tooth) == UPPER else off > 0)
        and (tooth in named if named else front == (is_incisor(tooth) or is_canine(tooth)) and side_of(tooth) in on)
        for tooth, off in chart.tooth_values("displacement").items()
    )


@rule(
    "scissors-bite-not-supported",
    Severity.ASK,
    title="A scissors bite is stated, and the upper teeth measured overlap as usual or less.",
    says="A scissors bite is stated, yet measured is {measured:list}: up to {most:mm} is usual.",
    do="Say which teeth are in scissors bite and measure there, or take it and what answers it alone out.",
    change="A reading above {most:mm} at any of its teeth would bear it out.",
    figures=(USUAL_OVERLAP,),
)
def scissors_bite_not_supported(chart: Chart) -> Iterator[Told]:
    """Where a scissors bite is stated some overlap measured at its teeth is more than the usual half cusp.

    Narrowing the upper or widening the lower arch without need makes a crossbite.

    Evidence: common practice. The usual overlap is about half a cusp; no published range was found.

    Passes: {"problems": [{"id": "p1", "problem": "scissors-bite", "side": "right"}],
             "findings": [{"id": "f1", "measure": "transverse-overlap-right", "value": 7, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "scissors-bite", "side": "right"}],
            "findings": [{"id": "f1", "measure": "transverse-overlap-right", "value": 2, "unit": "mm"}]}
    """
    most = chart.limit(USUAL_OVERLAP)
    for place in chart.problems(SCISSORS):
        found = _at_every(chart, place, tuple(_overlaps(side) for side in sides(place)))
        if found and all(one.value <= most for one in found):
            facts = {"measured": in_words(found), "most": most, "figures": (USUAL_OVERLAP,)}
            yield told(place.pointer, place.owner, *ids(found), doubts=place.owner, **facts)


@rule(
    "narrow-arch-not-measured",
    Severity.NOTE,
    title="A narrow arch is stated, and no width of it is measured.",
    says="A narrow {arches:list} arch is stated, and no width of it is among the findings.",
    do="Measure the width between the canines or the first molars, and say between which points.",
    change="Any width of the arch that is measured settles it.",
)
def narrow_arch_not_measured(chart: Chart) -> Iterator[Told]:
    """An arch that is called narrow has a width that was measured.

    Without it neither the need for widening nor its amount can be followed.

    Evidence: none is needed.

    Passes: {"problems": [{"id": "p1", "problem": "narrow-arch", "arch": "upper"}],
             "findings": [{"id": "f1", "measure": "upper-inter-canine-width", "value": 29, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "narrow-arch", "arch": "upper"}],
            "findings": [{"id": "f1", "measure": "lower-inter-canine-width", "value": 25, "unit": "mm"}]}
    """
    for place in chart.problems("narrow-arch"):
        concerned = arches(place)
        if not any(chart.found(*_WIDTHS[arch]) for arch in concerned):
            missing = [f"{arch}-{width}" for arch in concerned for width in NORMED]
            yield told(place.pointer, place.owner, arches=list(concerned), missing=missing)


@rule(
    "narrow-arch-not-supported",
    Severity.CAUTION,
    title="An arch is called narrow, and the widths measured are usual for grown-ups.",
    says="A narrow arch is stated, yet measured is {measured:list}: narrow would be less than {least:mm}.",
    do="Look at the landmarks of the measurement and at the other arch again.",
    change="A width below that, or a crossbite measured on either side, would bear it out.",
    figures=tuple(f"normal.{arch}-{width}" for arch in ARCHES for width in NORMED),
)
def narrow_arch_not_supported(chart: Chart) -> Iterator[Told]:
    """An arch that is called narrow is narrower, between canines or first molars, than is usual for grown-ups.

    A usual arch that is widened tips its side teeth, thins the bone beside them and tends back.

    Evidence: means of adults less one standard deviation, recalled and sure to 1 or 2 mm only; another landmark gives
    another width. Where the sex is not stated the wider limit holds. An arch can be narrow for its own lower arch
    at any width: a crossbite measured is taken for that.

    Passes: {"problems": [{"id": "p1", "problem": "narrow-arch", "arch": "upper"}],
             "findings": [{"id": "f1", "measure": "upper-inter-canine-width", "value": 29, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "narrow-arch", "arch": "upper"}],
            "findings": [{"id": "f1", "measure": "upper-inter-canine-width", "value": 36, "unit": "mm"}]}
    """
    crossed = any(one.value <= 0 for one in readings(chart, *(_overlaps(side) for side in ("right", "left"))))
    for place in chart.problems("narrow-arch") if not crossed else ():
        per_arch = [readings(chart, *(f"{arch}-{width}" for width in NORMED)) for arch in arches(place)]
        found = tuple(one for measured in per_arch for one in measured)
        keys = [_least(chart, one.measure) for one in found]
        if all(per_arch) and all(one.value >= chart.limit(key) for one, key in zip(found, keys, strict=True)):
            facts = {"measured": in_words(found), "least": [chart.limit(key) for key in keys], "figures": tuple(keys)}
            yield told(place.pointer, place.owner, *ids(found), doubts=place.owner, **facts)


def _least(chart: Chart, measure: str) -> str:
    """The norm of the least usual width: of the patient's sex if it is stated, else the wider one."""
    sex = chart.rx.patient.sex
    keys = [f"normal.{measure}.{one}.least" for one in ([sex] if sex else _SEXES)]
    return max(keys, key=chart.limit)


RULES = (
    crossbite_not_measured,
    crossbite_not_supported,
    scissors_bite_not_supported,
    narrow_arch_not_measured,
    narrow_arch_not_supported,
)
