"""Single teeth: turned or displaced as stated, and widths that look like a slip."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Place
from wellposed.derive.tooth_size import UNFIT
from wellposed.findings import Severity
from wellposed.model.findings import ToothFinding
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._stated import RELEVANT_DEG, RELEVANT_MM, amount
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import RIGHT, is_primary, mirrored, position, side_of
from wellposed.vocabulary.units import DEG, MM

TURNED = {"rotated-teeth": ("rotation", RELEVANT_DEG, DEG), "displaced-teeth": ("displacement", RELEVANT_MM, MM)}
APART = "crown.left-right-width"
WIDTH, SPREAD, SPREADS = "normal.tooth-width", "normal.tooth-width-spread", "normal.tooth-width-spreads"
_LATERAL, _THIRD_MOLAR = 2, 8
_SEXES = ("female", "male")
_DECIMALS = 2


@rule(
    "tooth-position-not-supported",
    Severity.ASK,
    title="Teeth are called rotated or displaced, and what is measured shows them in place.",
    says="{stated:words} are stated, yet the {what} measured is {measured:list}: no more than the error of measuring, "
    "{error:list}.",
    do="Measure these teeth again, or take the diagnosis and what answers it alone out.",
    change="More than {error:list} at one of these teeth would bear it out.",
    figures=(RELEVANT_DEG, RELEVANT_MM),
)
def tooth_position_not_supported(chart: Chart) -> Iterator[Told]:
    """Some tooth that is called rotated or displaced is measured to be so by more than the error of measuring.

    A tooth in place that is turned for nothing has to be held there for good.

    Evidence: half a millimetre and two degrees count as clinically relevant errors by convention.

    Passes: {"problems": [{"id": "p1", "problem": "rotated-teeth", "teeth": ["13"]}],
             "findings": [{"id": "f1", "tooth_measure": "rotation", "values": {"13": -12}, "unit": "deg"}]}
    Fails: {"problems": [{"id": "p1", "problem": "rotated-teeth", "teeth": ["13"]}],
            "findings": [{"id": "f1", "tooth_measure": "rotation", "values": {"13": 1, "23": -15}, "unit": "deg"}]}
    """
    for place in chart.problems(*TURNED):
        what, key, unit = TURNED[str(place.said("problem"))]
        measured = chart.tooth_values(what)
        teeth = place.said("teeth") or tuple(measured)
        offs = [measured.get(tooth) for tooth in teeth]
        if offs and all(off is not None and abs(off) <= chart.limit(key) for off in offs):
            texts = [f"{tooth} at {amount(measured[tooth], unit)}" for tooth in teeth]
            facts = {"stated": place.said("problem"), "what": what, "measured": texts, "figures": (key,)}
            error = [amount(chart.limit(key), unit)]
            yield told(place.pointer, place.owner, *chart.found(what), doubts=place.owner, error=error, **facts)


@rule(
    "sides-differ-much",
    Severity.ASK,
    title="The same tooth is typed with a very different width on the other side.",
    says="Widths typed right and left differ by more than {limit:mm}: {measured:list}.",
    do="Measure these teeth again; if the widths are right, say what is not ordinary about the tooth.",
    change="A crown, a large filling or a small crown stated of one of them explains it.",
    figures=(APART,),
)
def sides_differ_much(chart: Chart) -> Iterator[Told]:
    """A tooth and the same tooth of the other side, lateral incisors apart, differ in width by no more than 1 mm.

    More is most often a slip of the keyboard or a width typed for the wrong tooth, and every sum of widths carries it.

    Evidence: right and left are alike in samples; the limit is common practice. Lateral incisors do differ.

    Passes: {"findings": [{"id": "f1", "tooth_measure": "tooth-width", "values": {"11": 8.5, "21": 8.7}, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "tooth_measure": "tooth-width", "values": {"11": 8.5, "21": 6.8}, "unit": "mm"}]}
    """
    widths, limit = _own_widths(chart), chart.limit(APART)
    pairs = [
        (t, mirrored(t)) for t in widths if side_of(t) == RIGHT and mirrored(t) in widths and position(t) != _LATERAL
    ]
    unlike = [(r, left) for r, left in sorted(pairs) if round(abs(widths[r] - widths[left]), _DECIMALS) > limit]
    if unlike:
        measured = [f"{r} at {amount(widths[r], MM)} beside {left} at {amount(widths[left], MM)}" for r, left in unlike]
        facts = {"measured": measured, "teeth": [tooth for pair in unlike for tooth in pair], "limit": limit}
        yield told(_pointer(chart), *chart.found("tooth-width"), figures=(APART,), **facts)


@rule(
    "width-outside-its-spread",
    Severity.CAUTION,
    title="A tooth is typed with a width that hardly any such tooth has.",
    says="Widths that hardly any such tooth has: {measured:list}.",
    do="Measure these teeth again; if the widths are right, say so, or state a small crown.",
    change="A width within {spreads} standard deviations of the mean settles it.",
    figures=(WIDTH, SPREAD, SPREADS),
)
def width_outside_its_spread(chart: Chart) -> Iterator[Told]:
    """The width typed for a tooth lies within three standard deviations of the mean of such teeth.

    Beyond that it is most often another tooth's width, or a slip of the keyboard, and every sum of widths carries it.

    Evidence: one growth study, recalled and sure to 0.2 or 0.3 mm, its deviations rounded. Where the sex is not stated
    the range runs from the women's to the men's. Peoples differ a little.

    Passes: {"findings": [{"id": "f1", "tooth_measure": "tooth-width", "values": {"11": 8.5}, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "tooth_measure": "tooth-width", "values": {"11": 5.8}, "unit": "mm"}]}
    """
    measured, figures = [], [SPREADS]
    for tooth, width in sorted(_own_widths(chart).items()):
        means, spread = _norms(chart, tooth)
        around = chart.limit(SPREADS) * chart.limit(spread)
        least = round(min(chart.limit(key) for key in means) - around, _DECIMALS)
        most = round(max(chart.limit(key) for key in means) + around, _DECIMALS)
        if not least <= width <= most:
            measured.append(f"{tooth} at {amount(width, MM)}, not within {least} to {amount(most, MM)}")
            figures += [*means, spread]
    if measured:
        facts = {"measured": measured, "spreads": int(chart.limit(SPREADS)), "figures": tuple(figures)}
        yield told(_pointer(chart), *chart.found("tooth-width"), **facts)


def _norms(chart: Chart, tooth: str) -> tuple[list[str], str]:
    """The norms of the mean width of a tooth, by sex, and of its spread."""
    sex = chart.rx.patient.sex
    return [f"{WIDTH}.{one}.{tooth}" for one in ([sex] if sex else _SEXES)], f"{SPREAD}.{tooth}"


def _own_widths(chart: Chart) -> dict[str, float]:
    """The widths of permanent teeth, third molars apart, that stand as they grew and are not said to be small."""
    return {
        tooth: width
        for tooth, width in chart.tooth_values("tooth-width").items()
        if not is_primary(tooth) and position(tooth) < _THIRD_MOLAR and not chart.state(tooth, *UNFIT, "small-crown")
    }


def _pointer(chart: Chart) -> str:
    """The first list of widths."""
    return next((place.pointer for place in chart.of("findings") if _is_widths(place)), "/findings")


def _is_widths(place: Place) -> bool:
    return isinstance(place.part, ToothFinding) and place.part.tooth_measure == "tooth-width"


RULES = (tooth_position_not_supported, sides_differ_much, width_outside_its_spread)
