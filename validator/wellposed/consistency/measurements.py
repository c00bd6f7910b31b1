"""Measurements: likely, given once, and of something teeth can change."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from wellposed import norms
from wellposed.consistency.bounds import TOOTH_SIZES, values_of
from wellposed.consistency.quantities import units_of
from wellposed.consistency.whole import Place, Whole, Written
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.base import Part
from wellposed.model.findings import Finding, ToothFinding
from wellposed.vocabulary.measures import MEASURE_KINDS, SIZES


@rule(
    "implausible-value",
    Severity.ASK,
    title="A value lies outside what mouths have.",
    do="Look at the number again; if it is right, say so with the document.",
)
def implausible_value(whole: Written) -> Iterator[Told]:
    """What is measured, predicted or the bound of a goal lies within the range of the most severe mouths treated.

    The ranges are wide and say nothing of what is normal: outside them a number is most often a slip of the
    keyboard or of the unit.

    Passes: {"findings": [{"id": "f1", "measure": "overjet", "value": 12, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "overjet", "value": 75, "unit": "mm"}]}
    """
    for place in whole.of("findings", "goals", "predicted"):
        measure = place.said("measure") or place.said("tooth_measure")
        if not measure or place.said("unit") not in units_of(place):
            continue
        key = f"plausible.{place.said('unit')}.{measure}"
        least, most = norms.value(f"{key}.least"), norms.value(f"{key}.most")
        floor = 0.0 if measure in SIZES or measure in TOOTH_SIZES else -1e9
        facts = {"measure": measure, "unit": place.said("unit"), "least": least, "most": most}
        for pointer, value in values_of(place):
            if floor <= value and not least <= value <= most:
                yield told(pointer, place.owner, value=value, **facts)


@rule(
    "measured-twice",
    Severity.ASK,
    title="One thing is measured twice, with different values.",
    do="Leave the value that holds, or say in which jaw position each was taken.",
)
def measured_twice(whole: Whole) -> Iterator[Told]:
    """A measure, at one pair of teeth and in one jaw position, has one value; so has a measure of one tooth.

    Of two values the arithmetic cannot choose. The same value twice is no fault.

    Passes: {"findings": [{"id": "f1", "measure": "overjet", "value": 4, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "overjet", "value": 4, "unit": "mm"},
                         {"id": "f2", "measure": "overjet", "value": 6, "unit": "mm"}]}
    """
    seen: dict[tuple[object, ...], tuple[str, float, str]] = {}
    for place in whole.of("findings"):
        for what, pointer, value in _measured(place):
            first, before, owner = seen.setdefault(what, (pointer, value, place.owner))
            if value != before:
                facts = {"measure": what[0], "unit": place.said("unit"), "value": value, "first": first}
                yield told(pointer, owner, place.owner, **facts)


def _measured(place: Place) -> Iterator[tuple[tuple[object, ...], str, float]]:
    """What is measured, where it stands, and its value."""
    part = place.part
    if isinstance(part, ToothFinding):
        for tooth, value in part.values.items():
            yield (part.tooth_measure, tooth, part.unit), f"{place.pointer}/values/{tooth}", value
    if isinstance(part, Finding):
        what = (part.measure, tuple(sorted(part.pair or ())), part.unit, part.jaw_position)
        yield what, f"{place.pointer}/value", part.value


@rule(
    "measured-in-two-jaw-positions",
    Severity.ASK,
    title="A clause rests on a measure that differs by jaw position.",
    do="Leave the value the clause starts from, and state the shift as an expectation.",
)
def measured_in_two_jaw_positions(whole: Whole) -> Iterator[Told]:
    """A goal or a keep on a measure starts from one value: the measure is not given in two jaw positions with
    different values.

    Where the jaw shifts on closing the two differ by as much as is to be corrected, and it is not said from
    which the change is counted.

    Passes: {"findings": [{"id": "f1", "measure": "overjet", "value": 0, "unit": "mm", "jaw_position": "intercuspal"}],
             "keep": [{"id": "k1", "strength": "must", "measure": "overjet", "within": 1, "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "overjet", "value": 0, "unit": "mm", "jaw_position": "intercuspal"},
                         {"id": "f2", "measure": "overjet", "value": 2, "unit": "mm",
                          "jaw_position": "retruded-contact"}],
            "keep": [{"id": "k1", "strength": "must", "measure": "overjet", "within": 1, "unit": "mm"}]}
    """
    shifts = {measure: _shift(found) for measure, found in _by_measure(whole).items()}
    for place in whole.of("goals", "keep"):
        found = shifts.get(_measure_of(place.part), ())
        if found:
            measured = [_in_position(finding) for finding in found]
            ids = [finding.id for finding in found]
            yield told(f"{place.pointer}/measure", *ids, place.owner, measure=found[0].measure, measured=measured)


def _shift(found: list[Finding]) -> tuple[Finding, ...]:
    """The first two findings that differ in value and in jaw position, in one unit; nothing if none do."""
    for one, other in combinations(found, 2):
        if one.unit == other.unit and one.value != other.value and one.jaw_position != other.jaw_position:
            return one, other
    return ()


def _measure_of(part: Part) -> tuple[str, ...]:
    """The measure of a part and the teeth it is taken at; "" where it has none."""
    return (getattr(part, "measure", ""), *sorted(getattr(part, "pair", None) or ()))


def _by_measure(whole: Whole) -> dict[tuple[str, ...], list[Finding]]:
    found: dict[tuple[str, ...], list[Finding]] = {}
    for place in whole.of("findings"):
        if isinstance(place.part, Finding):
            found.setdefault(_measure_of(place.part), []).append(place.part)
    return found


def _in_position(finding: Finding) -> dict[str, object]:
    return {
        "id": finding.id,
        "jaw_position": finding.jaw_position,
        "value": finding.value,
        "unit": finding.unit,
    }


@rule(
    "measure-teeth-do-not-change",
    Severity.ASK,
    title="A clause is on a measure that planned tooth movement does not change here.",
    do="Name a measure that tooth movement changes, or take the clause out.",
)
def measure_teeth_do_not_change(whole: Written) -> Iterator[Told]:
    """A goal or a keep is on a measure that the arithmetic follows from the movement of teeth.

    Jaw angles and tooth sizes are not moved by aligners, and some sums, such as the irregularity of the front
    contacts, are not worked out. Such a clause cannot be checked.

    Passes: {"keep": [{"id": "k1", "strength": "must", "measure": "overjet", "within": 1, "unit": "mm"}]}
    Fails: {"keep": [{"id": "k1", "strength": "must", "measure": "anb-angle", "within": 1, "unit": "deg"}]}
    """
    for place in whole.of("goals", "keep"):
        measure = place.said("measure")
        if measure and not MEASURE_KINDS[measure].moves:
            yield told(f"{place.pointer}/measure", place.owner, measure=measure)


RULES = (implausible_value, measured_twice, measured_in_two_jaw_positions, measure_teeth_do_not_change)
