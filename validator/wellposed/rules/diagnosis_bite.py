"""A bite that is called deep or open, against what was measured."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.model.findings import Finding
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._stated import amount, at_its_teeth, ids, in_words, readings, values
from wellposed.rules.chart import Chart
from wellposed.vocabulary.units import MM, PERCENT

CROWN = "lower-incisor-crown-height"
MOST, DEEP = "normal.overbite.most", "normal.overbite-percent.acceptable"
LONG, SLIM = "crown.long.height", "crown.long.ratio"
OPEN_FRONT = "open-bite-anterior"


@rule(
    "deep-bite-not-supported",
    Severity.ASK,
    title="A deep bite is stated, and the overbite measured is not deep.",
    says="A deep bite is stated, yet the overbite is {measured:list}: up to {most:mm} is usual, and up to "
    "{share:percent} of the lower incisor's crown acceptable.",
    do="Measure the overbite again, or take the deep bite and what answers it alone out of the order.",
    change="An overbite above {most:mm}, or above {share:percent} of the lower incisor's crown as measured, would bear "
    "the diagnosis out.",
    figures=(MOST, DEEP),
)
def deep_bite_not_supported(chart: Chart) -> Iterator[Told]:
    """A stated deep bite goes with an overbite above its usual range, in mm or as a share of the lower incisor's crown.

    Intrusion, extrusion of back teeth and bite planes are ordered for it; where the bite is not deep they open a
    usual one, and upper incisors that are intruded without need show less with every year.

    Evidence: schools differ. One text calls 2 to 4 mm and 5 to 25 % ideal, 25 to 40 % acceptable and more deep; in
    Britain a third to a half of the lower crown is average, and grown-ups have about 40 %. The most generous limits
    of the first are used. Contact with gum or palate makes a bite troublesome at any depth and cannot be seen here.

    Passes: {"problems": [{"id": "p1", "problem": "deep-bite", "because": ["f1"]}],
             "findings": [{"id": "f1", "measure": "overbite", "value": 5, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "deep-bite", "because": ["f1"]}],
            "findings": [{"id": "f1", "measure": "overbite", "value": 2.5, "unit": "mm"},
                         {"id": "f2", "measure": "lower-incisor-crown-height", "value": 9, "unit": "mm"}]}
    """
    found = _not_deep(chart)
    lengths, shares = values(chart, found), _shares(chart, found)
    texts = [
        *(amount(one, MM) for one in lengths),
        *(f"{amount(round(one, 1), PERCENT)} of the lower crown" for one in shares),
    ]
    facts = {"measured": list(dict.fromkeys(texts)), "most": chart.limit(MOST), "share": chart.limit(DEEP)}
    missing = () if lengths and shares else (CROWN,)
    for place in chart.problems("deep-bite") if found else ():
        rests = (place.owner, *ids(found), *_crown_ids(chart))
        yield told(place.pointer, *rests, doubts=place.owner, figures=(MOST, DEEP), missing=missing, **facts)


def _not_deep(chart: Chart) -> tuple[Finding, ...]:
    """The readings of overbite, if there are any and none of them is deep in mm or in percent."""
    found = readings(chart, "overbite")
    deep = any(one > chart.limit(MOST) for one in values(chart, found))
    covers = any(one > chart.limit(DEEP) for one in _shares(chart, found))
    return () if deep or covers else found


def _shares(chart: Chart, found: tuple[Finding, ...]) -> list[float]:
    """Overbite in percent of the lower crown: as stated, else from mm and the crown's height."""
    crown = chart.mouth.crown_height
    stated = [one.value for one in found if one.unit == PERCENT]
    return stated or ([100 * one / crown for one in values(chart, found)] if crown else [])


def _crown_ids(chart: Chart) -> tuple[str, ...]:
    return ids(readings(chart, CROWN)) or chart.found("crown-height")


@rule(
    "long-crowns-look-like-a-deep-bite",
    Severity.NOTE,
    title="Long upper central crowns may be why the bite looks deep.",
    says="The upper central crowns are long: {measured:list}. Above {long:mm}, or with a width of less than {slim} of "
    "the length, a usual overbite can look deep.",
    do="Look whether the crowns, and not the bite, give the impression.",
    change="A crown height that was measured along the root or before the gum had receded would change it.",
    figures=(LONG, SLIM),
)
def long_crowns_look_like_a_deep_bite(chart: Chart) -> Iterator[Told]:
    """Where a stated deep bite is not borne out, the upper central crowns are of ordinary length and proportion.

    A long or slim upper central covers the same share of the lower tooth and seems to hang lower. The crown is then
    a matter for the gum line or the edge, not for intrusion.

    Evidence: no published cut-off was found. The limits are working rules over measured means (10.2 mm, width to
    length 0.85) and the least of what is preferred.

    Passes: {"problems": [{"id": "p1", "problem": "deep-bite"}],
             "findings": [{"id": "f1", "measure": "overbite", "value": 2.5, "unit": "mm"},
                          {"id": "f2", "tooth_measure": "crown-height", "values": {"11": 10.4}, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "deep-bite"}],
            "findings": [{"id": "f1", "measure": "overbite", "value": 2.5, "unit": "mm"},
                         {"id": "f2", "tooth_measure": "crown-height", "values": {"11": 12.2}, "unit": "mm"}]}
    """
    measured = [text for tooth in ("11", "21") for text in _long(chart, tooth)]
    facts = {"measured": measured, "long": chart.limit(LONG), "slim": chart.limit(SLIM), "figures": (LONG, SLIM)}
    for place in chart.problems("deep-bite") if measured and _not_deep(chart) else ():
        rests = (place.owner, *chart.found("crown-height", "tooth-width"))
        yield told(place.pointer, *rests, doubts=place.owner, **facts)


def _long(chart: Chart, tooth: str) -> Iterator[str]:
    """What makes the crown of an upper central long, if anything does."""
    height = chart.tooth_values("crown-height").get(tooth, 0.0)
    width = chart.tooth_values("tooth-width").get(tooth, 0.0)
    slim = min(width, height) > 0 and width / height < chart.limit(SLIM)
    if slim:
        yield f"{tooth} with {amount(height, MM)}, its width {round(width / height, 2)} of it"
    elif height > chart.limit(LONG):
        yield f"{tooth} with {amount(height, MM)}"


@rule(
    "deep-bite-and-open-bite-stated",
    Severity.ASK,
    title="A deep bite and an anterior open bite are both stated.",
    says="Of the same front teeth it is stated that they overlap too far and that they do not overlap.",
    do="Say which of the two it is.",
    change="An open bite of other teeth than those of the deep bite, each named, would change it.",
)
def deep_bite_and_open_bite_stated(chart: Chart) -> Iterator[Told]:
    """Of the same front teeth a deep bite and an anterior open bite are not both stated.

    The two ask for opposite movements, and one of them is a slip.

    Evidence: none is needed.

    Passes: {"problems": [{"id": "p1", "problem": "deep-bite"}, {"id": "p2", "problem": "open-bite-posterior"}]}
    Fails: {"problems": [{"id": "p1", "problem": "deep-bite"}, {"id": "p2", "problem": "open-bite-anterior"}]}
    """
    deep, opened = list(chart.problems("deep-bite")), list(chart.problems(OPEN_FRONT))
    for place in opened:
        same = [one for one in deep if _may_share_teeth(one.said("teeth"), place.said("teeth"))]
        if same:
            found = readings(chart, "overbite")
            yield told(place.pointer, *(one.owner for one in same), place.owner, *ids(found))


def _may_share_teeth(one: tuple[str, ...] | None, other: tuple[str, ...] | None) -> bool:
    return not one or not other or bool(set(one) & set(other))


@rule(
    "open-bite-not-supported",
    Severity.ASK,
    title="An anterior open bite is stated, and the front teeth overlap.",
    says="An anterior open bite is stated, yet the front teeth overlap: {measured:list}.",
    do="Measure the overbite again, or take the open bite and what answers it alone out of the order.",
    change="A reading of 0 or less, at other teeth if need be, would bear the diagnosis out.",
)
def open_bite_not_supported(chart: Chart) -> Iterator[Told]:
    """A stated anterior open bite goes with an overbite of nought or less, at the centrals or at teeth that are named.

    Extrusion of the front or intrusion of the back deepens a bite that is already closed.

    Evidence: none is needed; it is what the word means. Teeth that overlap without touching are not an open bite
    here.

    Passes: {"problems": [{"id": "p1", "problem": "open-bite-anterior"}],
             "findings": [{"id": "f1", "measure": "overbite", "value": -1, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "open-bite-anterior"}],
            "findings": [{"id": "f1", "measure": "overbite", "value": 1.5, "unit": "mm"}]}
    """
    for place in chart.problems(OPEN_FRONT):
        found = at_its_teeth(place, readings(chart, "overbite"))
        if found and all(one.value > 0 for one in found):
            yield told(place.pointer, place.owner, *ids(found), doubts=place.owner, measured=in_words(found))


@rule(
    "posterior-open-bite-not-supported",
    Severity.ASK,
    title="A posterior open bite is stated, and none is measured.",
    says="A posterior open bite is stated, yet what is measured of it is 0 mm.",
    do="Measure it again where the back teeth are apart, or take the open bite out of the order.",
    change="Any gap measured between the back teeth would bear the diagnosis out.",
)
def posterior_open_bite_not_supported(chart: Chart) -> Iterator[Told]:
    """A stated posterior open bite goes with a gap that is more than nothing.

    Back teeth that meet are extruded into the bite, and the front opens.

    Evidence: none is needed; it is what the word means.

    Passes: {"problems": [{"id": "p1", "problem": "open-bite-posterior"}],
             "findings": [{"id": "f1", "measure": "posterior-open-bite", "value": 1, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "open-bite-posterior"}],
            "findings": [{"id": "f1", "measure": "posterior-open-bite", "value": 0, "unit": "mm"}]}
    """
    found = readings(chart, "posterior-open-bite")
    for place in chart.problems("open-bite-posterior"):
        if found and all(one.value <= 0 for one in found):
            yield told(place.pointer, place.owner, *ids(found), doubts=place.owner)


RULES = (
    deep_bite_not_supported,
    long_crowns_look_like_a_deep_bite,
    deep_bite_and_open_bite_stated,
    open_bite_not_supported,
    posterior_open_bite_not_supported,
)
