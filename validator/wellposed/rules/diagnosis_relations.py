"""The Class that is stated, and the molar and canine relations measured, side by side."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Place
from wellposed.findings import Severity
from wellposed.model.findings import Finding
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._stated import RELEVANT_MM, ids, in_words, readings, sides
from wellposed.rules.chart import Chart
from wellposed.vocabulary.teeth import ARCHES, SIDES, tooth_at

CLASS_I, QUARTER = "normal.relation.class-i", "normal.relation.quarter-unit-from"
OVERJET, ANB = "normal.overjet", "normal.anb-angle"
TOWARDS = {"class-i": 0, "class-ii": 1, "class-iii": -1}
NAMES = {"class-i": "Class I", "class-ii": "Class II", "class-iii": "Class III"}
_POSITIONS = (3, 4, 5, 6)  # canine to first molar
_OTHERWISE = ("transposed", "small-crown", "to-be-extracted", "pontic")


@rule(
    "class-not-supported",
    Severity.ASK,
    title="The Class stated is not that of the molar and canine relations measured.",
    says="{stated} is stated ({sides:list}), yet measured is {measured:list}, counted towards Class II; the line is "
    "{limit:mm} from Class I.",
    do="Measure both relations again on each side, or set the Class and what answers it alone right.",
    change="A relation on the other side of that line would bear it out; so would the overjet or the ANB it rests on, "
    "where the Class of the incisors or of the jaws is meant.",
    figures=(CLASS_I, QUARTER, OVERJET, ANB),
)
def class_not_supported(chart: Chart) -> Iterator[Told]:
    """The Class that is stated is that of a molar or canine relation measured, on the side it is stated for.

    Elastics, distal movement and extractions follow from the Class; on teeth that fit they make the fault.

    Evidence: convention. A relation within 1.75 mm is still called Class I, and one below 0.88 mm is nearer to Class I
    than to a quarter of a unit; between the two either may be said. In Britain the Class is that of the incisors:
    a diagnosis that rests on an overjet or an ANB which tells the same is not asked about.

    Passes: {"problems": [{"id": "p1", "problem": "class-ii", "side": "right"}],
             "findings": [{"id": "f1", "measure": "molar-relation-right", "value": 3, "unit": "mm"}]}
    Fails: {"problems": [{"id": "p1", "problem": "class-ii", "side": "right"}],
            "findings": [{"id": "f1", "measure": "molar-relation-right", "value": 0, "unit": "mm"},
                         {"id": "f2", "measure": "canine-relation-right", "value": 0.5, "unit": "mm"}]}
    """
    for place in chart.problems(*TOWARDS):
        stated, concerned = str(place.said("problem")), sides(place)
        if not _contradicted(chart, place, concerned, TOWARDS[stated]):
            continue
        found = _relations(chart, SIDES)
        key = QUARTER if TOWARDS[stated] else CLASS_I
        facts = {"stated": NAMES[stated], "sides": list(concerned), "measured": in_words(found)}
        limit = {"limit": chart.limit(key), "figures": (key,)}
        yield told(place.pointer, place.owner, *ids(found), doubts=place.owner, **facts, **limit)


def _relations(chart: Chart, on: tuple[str, ...]) -> tuple[Finding, ...]:
    return readings(chart, *(f"{kind}-relation-{side}" for side in on for kind in ("molar", "canine")))


def _contradicted(chart: Chart, place: Place, on: tuple[str, ...], towards: int) -> bool:
    """Class I: molars (canines where they are not measured) beyond it. Class II, III: no relation reaches it."""
    if not towards:
        fitting = [readings(chart, f"molar-relation-{s}") or readings(chart, f"canine-relation-{s}") for s in on]
        return any(abs(one.value) > chart.limit(CLASS_I) for found in fitting for one in found)
    measured = [_relations(chart, (side,)) for side in on]
    reached = any(towards * one.value >= chart.limit(QUARTER) for found in measured for one in found)
    return all(measured) and not reached and not _by_jaws(chart, place, towards)


def _by_jaws(chart: Chart, place: Place, towards: int) -> bool:
    """Whether the problem rests on an overjet or an ANB that tells its Class."""
    end = "most" if towards > 0 else "least"
    cited = [one for one in readings(chart, "overjet", "anb-angle") if one.id in chart.because(place)]
    ends = {one.id: chart.limit(f"{OVERJET if one.measure == 'overjet' else ANB}.{end}") for one in cited}
    return any(towards * (one.value - ends[one.id]) > 0 for one in cited)


@rule(
    "relations-disagree",
    Severity.CAUTION,
    title="Molar and canine of one side tell different Classes, and nothing stated explains it.",
    says="On the {side} the molars stand {molar:mm} and the canines {canine:mm} towards Class II: {apart:mm} apart, "
    "with no missing tooth and {room:mm} of crowding and spacing in all to explain it.",
    do="Measure both relations again, and the crowding or spacing between canine and molar.",
    change="A missing, small or displaced tooth, or crowding and spacing of {apart:mm} in all, would explain it.",
    figures=(CLASS_I,),
)
def relations_disagree(chart: Chart) -> Iterator[Told]:
    """Canine and molar of one side tell the same Class, or something stated explains why they do not.

    The premolars between them are about as wide above as below; where nothing is missing, crowded or spaced, the two
    relations go together, and a sign or a side has been mistaken.

    Evidence: arithmetic of the arch; the limits of a Class are convention.

    Passes: {"findings": [{"id": "f1", "measure": "molar-relation-right", "value": 0, "unit": "mm"},
                          {"id": "f2", "measure": "canine-relation-right", "value": 3, "unit": "mm"},
                          {"id": "f3", "measure": "upper-crowding", "value": 4, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "molar-relation-right", "value": 0, "unit": "mm"},
                         {"id": "f2", "measure": "canine-relation-right", "value": 4, "unit": "mm"},
                         {"id": "f3", "measure": "upper-crowding", "value": 0, "unit": "mm"}]}
    """
    line, room = chart.limit(CLASS_I), sum(_room(chart).values())
    for side in SIDES:
        measures = (f"molar-relation-{side}", f"canine-relation-{side}")
        molar, canine = (chart.value(measure) for measure in measures)
        if molar is None or canine is None or _explained(chart, side) or _same_class(molar, canine, line):
            continue
        apart = abs(molar - canine)
        found = readings(chart, *measures)
        if apart > max(line, room):
            facts = {"side": side, "molar": molar, "canine": canine, "apart": apart, "room": room}
            missing = [f"{arch}-crowding" for arch in ARCHES if not chart.mouth.room_stated(arch)]
            rests = (*ids(found), *ids(readings(chart, *_room(chart))))
            yield told(_pointer(chart, found[0]), *rests, figures=(CLASS_I,), missing=missing, **facts)


def _room(chart: Chart) -> dict[str, float]:
    """Crowding and spacing of both arches as far as they are stated, mm."""
    measures = [f"{arch}-{what}" for arch in ARCHES for what in ("crowding", "spacing")]
    return {measure: chart.mouth.amount(measure) for measure in measures if chart.value(measure) is not None}


def _same_class(one: float, other: float, line: float) -> bool:
    return _class(one, line) == _class(other, line)


def _class(relation: float, line: float) -> int:
    """1 for Class II, -1 for Class III, 0 for Class I."""
    return (relation > line) - (relation < -line)


def _explained(chart: Chart, side: str) -> bool:
    """Whether a tooth from canine to first molar is missing, not its own or off the line, or tooth sizes do not fit."""
    teeth = [tooth_at(arch, side, position) for arch in ARCHES for position in _POSITIONS]
    in_line = {tooth for arch in ARCHES for tooth in chart.mouth.rows[arch].teeth}
    displaced = chart.tooth_values("displacement")
    odd = any(tooth not in in_line or chart.state(tooth, *_OTHERWISE) or displaced.get(tooth) for tooth in teeth)
    return odd or any(chart.problems("tooth-size-discrepancy"))


@rule(
    "sides-tell-opposite-classes",
    Severity.ASK,
    title="One side is Class II and the other Class III, with midlines that do not say so.",
    says="{measured:list}, counted towards Class II: one side is Class II and the other Class III, and no midline or "
    "missing tooth stated explains it.",
    do="Look at the signs and the sides of these relations again.",
    change="Midlines more than {error:mm} apart, or a tooth missing on one side, would explain it.",
    figures=(CLASS_I, RELEVANT_MM),
)
def sides_tell_opposite_classes(chart: Chart) -> Iterator[Told]:
    """The relation of one side is not Class II while the same relation of the other is Class III, the midlines together
    and no tooth missing.

    It is what a slip of the sign, or left taken for right, looks like; elastics are then ordered on the wrong side.

    Evidence: convention. Jaws that stand askew do it too, and then the midlines part.

    Passes: {"findings": [{"id": "f1", "measure": "molar-relation-right", "value": 3, "unit": "mm"},
                          {"id": "f2", "measure": "molar-relation-left", "value": 3, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "molar-relation-right", "value": 3, "unit": "mm"},
                         {"id": "f2", "measure": "molar-relation-left", "value": -3, "unit": "mm"}]}
    """
    line, error = chart.limit(CLASS_I), chart.limit(RELEVANT_MM)
    upper, lower = chart.value("upper-midline"), chart.value("lower-midline")
    if _parted(upper, lower, error) or any(_explained(chart, side) for side in SIDES):
        return
    missing = [name for name, value in (("upper-midline", upper), ("lower-midline", lower)) if value is None]
    for kind in ("molar", "canine"):
        measures = tuple(f"{kind}-relation-{side}" for side in SIDES)
        right, left = (chart.value(measure) or 0.0 for measure in measures)
        if _class(right, line) * _class(left, line) < 0:
            found = readings(chart, *measures)
            facts = {"measured": in_words(found), "error": error, "figures": (CLASS_I, RELEVANT_MM)}
            yield told(_pointer(chart, found[0]), *ids(found), missing=missing, **facts)


def _parted(upper: float | None, lower: float | None, error: float) -> bool:
    """Whether the midlines, one not stated taken as on the face, are apart by more than the error of measuring."""
    return abs((upper or 0.0) - (lower or 0.0)) > error


def _pointer(chart: Chart, finding: Finding) -> str:
    place = chart.place(finding.id)
    return place.pointer if place else ""


RULES = (class_not_supported, relations_disagree, sides_tell_opposite_classes)
