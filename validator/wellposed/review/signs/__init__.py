"""Whether a setup counts a variable the other way round: asked, never repaired.

A sign that was turned on the way from one program to another leaves every number in its place and means the reverse.
Three things can show it: the senses that were asked for, the measures the laboratory states, and left against right.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from wellposed.declare import Rule, Told, rule, told
from wellposed.findings import Finding, Severity
from wellposed.model.prescription import Prescription
from wellposed.model.setup import Setup
from wellposed.norms import Norms, load
from wellposed.review.result import MeasureLine
from wellposed.review.signs.turning import (
    LEAST_PAIRS,
    NEARLY_ALL,
    TWO_SIDED,
    Group,
    Signs,
    groups,
    mirror,
    one_sided,
    pairs_of,
    questioned,
    turned,
)
from wellposed.vocabulary.motions import VARIABLES, Variable
from wellposed.vocabulary.teeth import ARCHES

if TYPE_CHECKING:
    from wellposed.review.matter import Matter


@rule(
    "sign-against-the-order",
    Severity.ASK,
    title="A variable goes the other way than the prescription asks, in all or nearly all of the teeth it speaks of.",
    do="Ask the laboratory which way its numbers count; a setup that counts the other way is to be sent again.",
)
def against_the_order(signs: Signs) -> Iterator[Told]:
    """No variable goes against what is ordered, allowed in one sense only, or measured off the line, in nine teeth of
    ten or more, over all teeth, an arch, a side or a quadrant.

    A sign turned on the way between programs makes of every intrusion an extrusion, and nothing else shows it.

    Passes: {"prescription": {"movements": [{"id": "m1", "strength": "must", "teeth": ["12", "11", "21", "22"],
                                             "motion": "intrusion", "at_least": 1, "at_most": 2, "unit": "mm"}]},
             "movements": [{"variable": "vertical", "unit": "mm",
                            "values": {"12": -1.5, "11": -1.5, "21": -1.5, "22": -1.5}}]}
    Fails: {"prescription": {"movements": [{"id": "m1", "strength": "must", "teeth": ["12", "11", "21", "22"],
                                            "motion": "intrusion", "at_least": 1, "at_most": 2, "unit": "mm"}]},
            "movements": [{"variable": "vertical", "unit": "mm",
                           "values": {"12": 1.5, "11": 1.5, "21": 1.5, "22": 1.5}}]}
    """
    for variable in VARIABLES:
        opposed = signs.opposed(variable)
        for group in questioned(opposed):
            against = [tooth for tooth in opposed if tooth in group.teeth and opposed[tooth]]
            owners = dict.fromkeys(signs.asked[tooth, variable].owner for tooth in against)
            facts = {"name": variable, "where": group.name, "teeth": against, "of": _count(opposed, group)}
            yield told(signs.table(variable), *owners, **facts)


def _count(opposed: dict[str, bool], group: Group) -> int:
    return sum(tooth in group.teeth for tooth in opposed)


@rule(
    "sign-against-the-prediction",
    Severity.ASK,
    title="The movements make a measure go the other way than the setup says.",
    do="Ask the laboratory which of the two counts the other way.",
)
def against_the_prediction(signs: Signs) -> Iterator[Told]:
    """A measure the setup predicts goes the way its movements take it.

    Where it goes the other way, and would agree if one variable counted in the other sense, that variable, or the
    measure, is most likely written in another convention.

    Passes: {"prescription": {"findings": [{"id": "f1", "measure": "incisor-display-at-rest", "value": 5,
                                            "unit": "mm"}]},
             "movements": [{"variable": "vertical", "unit": "mm", "values": {"11": -1.5, "21": -1.5}}],
             "predicted": [{"measure": "incisor-display-at-rest", "value": 3.5, "unit": "mm"}]}
    Fails: {"prescription": {"findings": [{"id": "f1", "measure": "incisor-display-at-rest", "value": 5,
                                           "unit": "mm"}]},
            "movements": [{"variable": "vertical", "unit": "mm", "values": {"11": 1.5, "21": 1.5}}],
            "predicted": [{"measure": "incisor-display-at-rest", "value": 3.5, "unit": "mm"}]}
    """
    for line in signs.lines:
        if not _turned_about(line):
            continue
        for variable, group in _explaining(signs, line):
            facts = {"name": variable, "where": group.name, "measure": line.measure, "value": line.claimed}
            yield told(_claim(signs, line), unit=line.unit, **facts)


def _claim(signs: Signs, line: MeasureLine) -> str:
    """Where a measure is predicted that is taken at its usual teeth."""
    claims = enumerate(signs.setup.predicted or ())
    return next(f"/predicted/{n}" for n, one in claims if one.measure == line.measure and not one.pair)


def _turned_about(line: MeasureLine) -> bool:
    """Whether what is stated and what the movements give lie on different sides of the start."""
    if line.agrees is not False or line.before is None or line.linear is None or line.claimed is None or line.where:
        return False
    return (line.claimed - line.before) * (line.linear - line.before) < 0


def _explaining(signs: Signs, line: MeasureLine) -> list[tuple[Variable, Group]]:
    """The variables, in the largest groups, that would make it agree if they counted the other way."""
    stated = [tooth for tooth, _ in signs.matter.plan.moved]
    for level in groups(list(dict.fromkeys(stated))):
        found = [(name, group) for group in level for name in VARIABLES if _agrees(signs, name, group, line)]
        if found:
            return found
    return []


def _agrees(signs: Signs, variable: Variable, group: Group, line: MeasureLine) -> bool:
    if not any(tooth in group.teeth for tooth in signs.values(variable)):
        return False
    other = signs.matter.of(turned(signs.setup, variable, group.teeth))
    reading, base = other.measures.reading(line.measure), line.before or 0.0
    if reading.span is None or reading.span.low is None or reading.span.high is None or line.claimed is None:
        return False
    start = 0.0 if reading.absolute else base
    return start + reading.span.low - line.tolerance <= line.claimed <= start + reading.span.high + line.tolerance


@rule(
    "sign-mirrored",
    Severity.ASK,
    title="Left and right teeth of an arch move in opposite senses, pair by pair.",
    do="Ask the laboratory whether its numbers count to the patient's left, or clockwise, rather than mesially.",
)
def mirrored_sides(signs: Signs) -> Iterator[Told]:
    """No variable has opposite values left and right throughout an arch, unless the prescription asks for it.

    Counted to one side, or clockwise, a movement that is alike on both sides gets opposite signs. Read by mesial and
    distal, as this format counts, one side then goes the wrong way. A case that does move to one side looks the same.

    Passes: {"movements": [{"variable": "along", "unit": "mm",
                            "values": {"17": -1, "16": -1, "15": -0.8, "14": -0.6,
                                       "24": -0.6, "25": -0.8, "26": -1, "27": -1}}]}
    Fails: {"movements": [{"variable": "along", "unit": "mm",
                           "values": {"17": -1, "16": -1, "15": -0.8, "14": -0.6,
                                      "24": 0.6, "25": 0.8, "26": 1, "27": 1}}]}
    """
    for variable in VARIABLES:
        for arch in ARCHES if variable in TWO_SIDED else ():
            pairs = pairs_of(signs.values(variable), arch)
            opposite = [one for one in pairs if mirror(*one)]
            many = len(opposite) >= LEAST_PAIRS and len(opposite) >= NEARLY_ALL * len(pairs)
            if many and not one_sided(signs, variable, arch):
                facts = {"name": variable, "where": arch, "value": len(opposite), "of": len(pairs)}
                yield told(signs.table(variable), **facts)


RULES: tuple[Rule[Signs], ...] = (against_the_order, against_the_prediction, mirrored_sides)


def sign_questions(setup: Setup, prescription: Prescription, numbers: Norms | None = None) -> tuple[Finding, ...]:
    """What is to be asked about the signs of a setup. Nothing is said where there is too little to tell.

    numbers  norms with a practice profile in place; the published ones by default

    Pointers are those of the setup, clauses those of the prescription.
    """
    # the solver behind these is loaded by those who look at a setup, not by those who only read the rules
    from wellposed.review.lines import measure_lines  # noqa: PLC0415
    from wellposed.review.matter import Matter  # noqa: PLC0415

    matter = Matter(prescription, setup, numbers or load())
    return questions(matter, measure_lines(matter))


def questions(matter: Matter, lines: tuple[MeasureLine, ...]) -> tuple[Finding, ...]:
    """The same of a setup that is under review, with its measures."""
    return tuple(finding for one in RULES for finding in one.findings(Signs(matter, lines)))


__all__ = ["RULES", "Signs", "questions", "sign_questions"]
