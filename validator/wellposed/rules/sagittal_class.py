"""Class II and III: what could correct them, and elastics that pull the wrong way or open the bite."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.rules._declare import Told, rule, said, told
from wellposed.rules.answers import answers
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import SIDES, side_of

CLASS_I = "normal.relation.class-i"
ANGLES = ("mandibular-plane-angle", "sella-nasion-to-mandibular-plane", "palatal-to-mandibular-plane")
HIGH = tuple(f"normal.{angle}.most" for angle in ANGLES)
_NAMES = {"class-ii": "Class II", "class-iii": "Class III"}
_CLASSES = tuple(_NAMES)
_OTHER = {"class-ii": "class-iii", "class-iii": "class-ii"}
_TOWARDS = {"class-ii": 1, "class-iii": -1}
_RELATIONS = tuple(f"{what}-relation-{side}" for what in ("molar", "canine") for side in SIDES)
_BESIDE = ("enamel-reduction", "elastics", "laboratory-choice", "class-ii-elastics", "class-iii-elastics")
_FORWARD = {"class-ii": "lower", "class-iii": "upper"}
_SHIFTS = ("growth", "functional-shift")


@rule(
    "class-without-means",
    Severity.ASK,
    title="A Class II or III is to be corrected, and nothing that could correct it is ordered or allowed.",
    says="{asked:clause}: {name} is to be corrected, and no elastics, movement of one arch, extraction or reduction is"
    " ordered or allowed.",
    do="Say by what means the relation is corrected, or that it stays as it is.",
    change="A means that moves one arch against the other, or a keep of the relation, settles it.",
)
def class_without_means(chart: Chart) -> Iterator[Told]:
    """A stated Class II or III that a clause answers, or whose relation is wished to change, has means: elastics,
    movement of one arch, extraction, reduction, surgery or a change that is counted on.

    Silence keeps the molars where they are: without means the teeth are set straight on the same relation.

    Evidence: the format itself. What must be reached of a measured relation is weighed by the arithmetic, not here.

    Passes: {"problems": [{"id": "p1", "problem": "class-ii"}],
             "goals": [{"id": "g1", "strength": "prefer", "measure": "overjet", "at_most": 3, "unit": "mm",
                        "because": ["p1"]}],
             "allow": [{"id": "a1", "use": "class-ii-elastics", "sides": ["right", "left"]}]}
    Fails: {"problems": [{"id": "p1", "problem": "class-ii"}],
            "goals": [{"id": "g1", "strength": "prefer", "measure": "molar-relation-right", "at_most": 0, "unit": "mm",
                       "because": ["p1"]}]}
    """
    for problem in _without(chart):
        asked = [*_citing(chart, problem), *_wishes(chart, problem)]
        places = tuple(dict.fromkeys(asked))
        if places:
            told_of = [said(place.part) for place in places]
            owners = (place.owner for place in places)
            facts = {"asked": told_of, "name": _NAMES[problem.said("problem")]}
            yield told(places[0].pointer, problem.owner, *owners, **facts)


@rule(
    "class-left-as-it-is",
    Severity.NOTE,
    title="A Class II or III is stated, and nothing answers it: it stays as it is.",
    says="{name} is stated, and no goal, keep or means is about it: it stays as it is.",
    do="Keep the relation in so many words if that is meant.",
    change="A keep of the relation, or a clause that answers the problem, settles it.",
)
def class_left_as_it_is(chart: Chart) -> Iterator[Told]:
    """A stated Class II or III is answered by a goal, a keep or a means.

    Silence means no change. A diagnosis that nothing answers is often meant so, and now and then forgotten.

    Evidence: the format itself.

    Passes: {"problems": [{"id": "p1", "problem": "class-ii"}],
             "keep": [{"id": "k1", "strength": "must", "measure": "molar-relation-right", "within": 0.5, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "class-ii"}]}
    """
    for problem in _without(chart):
        if not _citing(chart, problem) and not _wishes(chart, problem):
            yield told(problem.pointer, problem.owner, name=_NAMES[problem.said("problem")])


@rule(
    "elastics-with-high-angle",
    Severity.CAUTION,
    title="Elastics from jaw to jaw are allowed where the face is long.",
    says="{asked:clause}: {measure:measure} is {value:deg}; {limit:deg} counts as high. The elastics extrude molars.",
    do="Say how the molars are held in height, or whether the elastics are needed.",
    change="A bite block, intrusion of molars or an anchor in the bone in the order, settles it.",
    figures=HIGH,
)
def elastics_with_high_angle(chart: Chart) -> Iterator[Told]:
    """Class II or III elastics are not allowed with a high mandibular plane angle, unless molars are held in height.

    Their pull has a vertical part: molars come out, the jaw turns down and back, the bite opens and the chin falls
    behind.

    Evidence: mechanics and textbooks; how much aligners that cover the molars hold them back is not known. Where an
    angle counts as high differs by school and by plane.

    Passes: {"findings": [{"id": "f1", "measure": "mandibular-plane-angle", "value": 25, "unit": "deg"}],
             "allow": [{"id": "a1", "use": "class-ii-elastics", "sides": ["right", "left"]}]}
    Fails: {"findings": [{"id": "f1", "measure": "mandibular-plane-angle", "value": 34, "unit": "deg"}],
            "allow": [{"id": "a1", "use": "class-ii-elastics", "sides": ["right", "left"]}]}
    """
    places = tuple(chart.allowed("class-ii-elastics", "class-iii-elastics"))
    high = [angle for angle in ANGLES if _is_high(chart, angle)]
    if places and high and not _held_in_height(chart):
        facts = {"measure": high[0], "value": chart.value(high[0]), "limit": chart.limit(f"normal.{high[0]}.most")}
        ids = (*chart.found(high[0]), *(place.owner for place in places))
        asked, figures = [said(place.part) for place in places], (f"normal.{high[0]}.most",)
        yield told(places[0].pointer, *ids, asked=asked, figures=figures, **facts)


@rule(
    "elastics-against-the-class",
    Severity.ASK,
    title="Elastics are allowed that pull away from the correction.",
    says="{asked:clause}: the relation there is {name}, and these elastics pull it further that way.",
    do="Look at the direction of the elastics, and at the sign of the relation measured.",
    change="Elastics of the other class, or a relation within {limit:mm} of Class I, settles it.",
    figures=(CLASS_I,),
)
def elastics_against_the_class(chart: Chart) -> Iterator[Told]:
    """Class II elastics are not allowed on a side in Class III, nor Class III elastics on a side in Class II.

    The two are easily confused in writing, and six months of the wrong ones undo the plan.

    Evidence: mechanics. In Class I they are used to hold, and are not spoken of. A side's relation is the one measured;
    where none is, the problem that is stated.

    Passes: {"problems": [{"id": "p1", "problem": "class-iii"}],
             "allow": [{"id": "a1", "use": "class-iii-elastics", "sides": ["right", "left"]}]}
    Fails: {"problems": [{"id": "p1", "problem": "class-iii"}],
            "allow": [{"id": "a1", "use": "class-ii-elastics", "sides": ["right", "left"]}]}
    """
    for place in chart.allowed("class-ii-elastics", "class-iii-elastics"):
        wrong = _OTHER[str(place.said("use")).removesuffix("-elastics")]
        ids = [one for side in place.said("sides") for one in _in_class(chart, wrong, side)]
        if ids:
            facts = {"name": _NAMES[wrong], "limit": chart.limit(CLASS_I), "figures": (CLASS_I,)}
            yield told(place.pointer, *ids, place.owner, asked=said(place.part), **facts)


# what answers a class


def _without(chart: Chart) -> Iterator[Place]:
    """The stated Class II and III that are not kept, not bound by a goal the arithmetic weighs, and have no means."""
    for problem in chart.problems(*_CLASSES):
        if not (_kept(chart) or _weighed(chart) or chart.mouth.extracted) and not _has_means(chart, problem):
            yield problem


def _kept(chart: Chart) -> bool:
    return any(place.said("measure") in (*_RELATIONS, "overjet") for place in chart.of("keep"))


def _goals(chart: Chart) -> Iterator[Place]:
    return (place for place in chart.of("goals") if place.said("measure") in (*_RELATIONS, "overjet"))


def _weighed(chart: Chart) -> bool:
    goals = (place for place in _goals(chart) if place.said("strength") == "must")
    return any(chart.value(place.said("measure")) is not None for place in goals)


def _wishes(chart: Chart, problem: Place) -> list[Place]:
    """Goals on relations of the problem's side that the arithmetic does not weigh as binding."""
    side = problem.said("side")
    return [p for p in _goals(chart) if side is None or not p.said("measure").endswith(tuple({*SIDES} - {side}))]


def _citing(chart: Chart, problem: Place) -> list[Place]:
    """Goals and movements that give the problem as their reason."""
    return [place for place in chart.of("goals", "movements") if problem.owner in (place.said("because") or ())]


def _has_means(chart: Chart, problem: Place) -> bool:
    name, side = str(problem.said("problem")), problem.said("side")
    counted = any(place.said("ground") in _SHIFTS for place in chart.of("expect"))
    operated = any(place.said("step") == "surgery" for place in chart.of("process"))
    places = chart.of("allow", "movements", "appliance")
    return counted or operated or any(_is_means(name, place) and _on(side, place) for place in places)


def _is_means(name: str, place: Place) -> bool:
    """Whether an instruction can bring one arch against the other; elastics of the wrong class are told elsewhere."""
    along = place.said("use") == "mesial-movement" and place.said("arch") == _FORWARD[name]
    elastic = place.said("part") in ("elastic", "elastic-notch")
    return along or elastic or place.said("use") in _BESIDE or answers(name, place)


def _on(side: str | None, place: Place) -> bool:
    """Whether a means reaches a side: it names the side, or a tooth of it, or none."""
    teeth = {side_of(tooth) for tooth in place.said("teeth") or ()}
    return side is None or side in (place.said("sides") or teeth or (side,))


# elastics


def _is_high(chart: Chart, angle: str) -> bool:
    value, most = chart.value(angle), chart.limit(f"normal.{angle}.most")
    if value is None:
        return False
    return value > most if angle == ANGLES[-1] else value >= most


def _held_in_height(chart: Chart) -> bool:
    """Whether molars are intruded, blocked, or anchored in the bone."""
    blocks = (place.said("auxiliary") or place.said("part") for place in chart.of("allow", "appliance"))
    intruded = any(chart.reach(tooth, "vertical", -1) > 0 for tooth in ("16", "26", "36", "46"))
    return intruded or any(block in ("bite-block", "bone-screw") for block in blocks)


def _in_class(chart: Chart, name: str, side: str) -> tuple[str, ...]:
    """The ids that say a side is in this class: of the relations measured, else of the problems stated."""
    measures = [f"{what}-relation-{side}" for what in ("molar", "canine")]
    values = [value for measure in measures if (value := chart.value(measure)) is not None]
    if values:
        there = any(value * _TOWARDS[name] > chart.limit(CLASS_I) for value in values)
        away = any(value * _TOWARDS[name] < -chart.limit(CLASS_I) for value in values)
        return chart.found(*measures) if there and not away else ()
    stated = [place for place in chart.problems(*_CLASSES) if place.said("side") in (None, side)]
    return tuple(p.owner for p in stated) if {p.said("problem") for p in stated} == {name} else ()


RULES = (class_without_means, class_left_as_it_is, elastics_with_high_angle, elastics_against_the_class)
