"""Single teeth: short roots, injured, loose and half-erupted teeth, and what an order does with them all the same."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.rules._acts import is_done
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.aids import openers, orders
from wellposed.rules.chart import Chart
from wellposed.vocabulary.motions import Variable

_IMAGE = ("mouth.short-root.image-after.least", "mouth.short-root.image-after.most")
_WAITS = ("mouth.wait.minor-injury", "mouth.wait.severe-injury.most")
_STRAINING: tuple[Variable, ...] = ("out", "vertical", "torque")


@rule(
    "moving-short-root",
    Severity.CAUTION,
    title="A tooth with a short root is to go in or out, up or down, or its root is.",
    says="a short root is stated on {teeth:teeth}, moved by {asked:clause}; such a root is looked at on an image "
    "{first:months} to {last:months} after the start.",
    do="Say that the risk was weighed, and when the image is taken; or lessen what is asked of the tooth.",
    change="A root of ordinary length, or no such movement of the tooth, would change it.",
    figures=_IMAGE,
)
def moving_short_root(chart: Chart) -> Iterator[Told]:
    """No clause lets a tooth with a short root go in or out, up or down, or change its torque.

    Roots that are short, blunt or bent shorten more than others, most where the apex travels or the tooth is intruded.

    Evidence: cohorts agree on the risk; the time of the image is a recommendation, recalled from them.

    Passes: {"teeth": {"upper": ["12", "11", "21"], "lower": [],
                       "particulars": [{"tooth": "11", "states": ["short-root"]}]},
             "goals": [{"id": "g1", "strength": "must", "align": ["12", "11", "21"]}]}
    Fails: {"teeth": {"upper": ["12", "11", "21"], "lower": [],
                      "particulars": [{"tooth": "11", "states": ["short-root"]}]},
            "movements": [{"id": "m1", "strength": "must", "teeth": ["11"], "motion": "intrusion", "at_least": 0.5,
                           "unit": "mm"}]}
    """
    first, last = (chart.limit(key) for key in _IMAGE)
    yield from _moved(chart, _in_state(chart, "short-root"), *_STRAINING, first=first, last=last, figures=_IMAGE)


@rule(
    "moving-injured-tooth",
    Severity.CAUTION,
    title="A tooth that was injured is to be moved, and nothing is said of when and how.",
    says="an injury is stated on {teeth:teeth}, moved by {asked:clause}; texts wait {first:months} after a minor "
    "injury and up to {last:months} after a severe one.",
    do="Say in words at the tooth what happened, when, and that it has healed.",
    change="Words at the tooth, or a clause without it, would change it.",
    figures=_WAITS,
)
def moving_injured_tooth(chart: Chart) -> Iterator[Told]:
    """A tooth with an injury in the past that some clause moves has words beside its state.

    A tooth moved too soon may lose its pulp or its root; one that was knocked out may have fused to the bone.

    Evidence: guidance of the United Kingdom, recalled; the times rest on experience more than on trials.

    Passes: {"teeth": {"upper": ["12", "11", "21"], "lower": [],
                       "particulars": [{"tooth": "11", "states": ["injured"], "words": "loosened three years ago"}]},
             "goals": [{"id": "g1", "strength": "must", "align": ["12", "11", "21"]}]}
    Fails: {"teeth": {"upper": ["12", "11", "21"], "lower": [],
                      "particulars": [{"tooth": "11", "states": ["injured"]}]},
            "goals": [{"id": "g1", "strength": "must", "align": ["12", "11", "21"]}]}
    """
    first, last = (chart.limit(key) for key in _WAITS)
    silent = [tooth for tooth in _in_state(chart, "injured") if tooth not in _described(chart)]
    yield from _moved(chart, silent, first=first, last=last, figures=_WAITS)


@rule(
    "moving-mobile-tooth",
    Severity.CAUTION,
    title="A loose tooth is to be moved, and nothing is said of why it is loose.",
    says="{teeth:teeth}: stated as loose, and moved by {asked:clause}.",
    do="Say in words at the tooth why it is loose and that it can be moved.",
    change="Words at the tooth, or a clause without it, would change it.",
)
def moving_mobile_tooth(chart: Chart) -> Iterator[Told]:
    """A loose tooth that some clause moves has words beside its state.

    A tooth is loose from lost support, an injury, a short root or a blow in biting; each asks for something first.

    Evidence: common practice.

    Passes: {"teeth": {"upper": ["12", "11", "21"], "lower": [],
                       "particulars": [{"tooth": "11", "states": ["mobile"], "words": "bites edge to edge"}]},
             "goals": [{"id": "g1", "strength": "must", "align": ["12", "11", "21"]}]}
    Fails: {"teeth": {"upper": ["12", "11", "21"], "lower": [],
                      "particulars": [{"tooth": "11", "states": ["mobile"]}]},
            "goals": [{"id": "g1", "strength": "must", "align": ["12", "11", "21"]}]}
    """
    yield from _moved(chart, [t for t in _in_state(chart, "mobile") if t not in _described(chart)])


@rule(
    "moving-partly-erupted-tooth",
    Severity.CAUTION,
    title="A movement is ordered of a tooth that is only partly in the mouth.",
    says="{teeth:teeth}: stated as partly erupted, and moved by {asked:clause}; an aligner has little hold on it, "
    "and its shape in the scan will change.",
    do="Say when it is to be moved, or leave it out until it has erupted.",
    change="A tooth fully in the mouth, or a new scan stated as a step, would change it.",
)
def moving_partly_erupted_tooth(chart: Chart) -> Iterator[Told]:
    """No movement is ordered of a partly erupted tooth, unless a new scan is stated as a step.

    It comes further out by itself, and the aligners made on its present shape no longer fit it.

    Evidence: common practice.

    Passes: {"teeth": {"upper": ["14", "13", "12"], "lower": [],
                       "particulars": [{"tooth": "13", "states": ["partly-erupted"]}]}}
    Fails: {"teeth": {"upper": ["14", "13", "12"], "lower": [],
                      "particulars": [{"tooth": "13", "states": ["partly-erupted"]}]},
            "movements": [{"id": "m1", "strength": "must", "teeth": ["13"],
                           "motion": "mesiolingual-rotation", "at_least": 5, "unit": "deg"}]}
    """
    teeth = _in_state(chart, "partly-erupted")
    places = [p for p in orders(chart, "movements") if set(teeth) & set(p.said("teeth"))]
    moved = [tooth for tooth in teeth if any(tooth in place.said("teeth") for place in places)]
    if moved and not is_done(chart, "new-scan"):
        yield _of_clauses(places, moved)


def _in_state(chart: Chart, state: str) -> list[str]:
    return [tooth for tooth, states in chart.mouth.states.items() if state in states]


def _described(chart: Chart) -> set[str]:
    return {entry.tooth for entry in chart.rx.teeth.particulars or () if entry.words}


def _moved(chart: Chart, teeth: Iterable[str], *variables: Variable, **facts: object) -> Iterator[Told]:
    """One finding: those of the teeth that some clause moves in these variables (in any), with all such clauses."""
    by = {tooth: openers(chart, tooth, *variables) for tooth in teeth if tooth not in chart.mouth.locked}
    moved = [tooth for tooth, places in by.items() if places]
    if moved:
        yield _of_clauses(dict.fromkeys(place for places in by.values() for place in places), moved, **facts)


def _of_clauses(places: Iterable[Place], teeth: list[str], **facts: object) -> Told:
    listed = list(places)
    asked = [said(place.part) for place in listed]
    return told(listed[0].pointer, *(place.owner for place in listed), asked=asked, teeth=teeth, **facts)


RULES = (moving_short_root, moving_injured_tooth, moving_mobile_tooth, moving_partly_erupted_tooth)
