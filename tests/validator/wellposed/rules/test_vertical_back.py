"""Molars and the face: each rule alone, below, at and above its boundary."""

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, found
from tests.validator.wellposed.rules.charts import Case, pointers, table

from wellposed.rules.vertical_back import RULES

STEEP, GROWN, LONG = "molar-extrusion-high-angle", "back-extrusion-in-grown-patient", "long-face-still-growing"
FRANKFORT, PALATAL, NASION = "mandibular-plane-angle", "palatal-to-mandibular-plane", "sella-nasion-to-mandibular-plane"


def raised(*teeth, angle=None, growth=None, use="extrusion", findings=(), **more):
    """Teeth that may be extruded, under an angle of the mandible (measure, value) and a state of growth."""
    measured = [found("f1", *angle, "deg")] if angle else []
    person = {"reference": "P-7F3A", **({"growth": growth} if growth else {})}
    allow = [allowed("a1", use, teeth=list(teeth), up_to=1, unit="mm")] if teeth else []
    return {"patient": person, "findings": [*measured, *findings], "allow": allow, **more}


HERE, FOUND = ("/allow/0",), ("/findings/0",)
CASES = (
    # Texts: high from 30 degrees to the Frankfort plane; ABO Discrepancy Index: from 38 to sella-nasion.
    Case(STEEP, "below 30 to Frankfort", raised("46", angle=(FRANKFORT, 29.99))),
    Case(STEEP, "at 30", raised("46", angle=(FRANKFORT, 30)), HERE),
    Case(STEEP, "above 30", raised("46", angle=(FRANKFORT, 30.01)), HERE),
    Case(STEEP, "below 38 to sella-nasion", raised("16", angle=(NASION, 37.99))),
    Case(STEEP, "at 38", raised("16", angle=(NASION, 38)), HERE),
    Case(STEEP, "above 38", raised("16", angle=(NASION, 38.01)), HERE),
    # Eastman: 27, SD 4; high above 31.
    Case(STEEP, "below 31 to the palatal plane", raised("46", angle=(PALATAL, 30.99))),
    Case(STEEP, "at 31", raised("46", angle=(PALATAL, 31))),
    Case(STEEP, "above 31", raised("46", angle=(PALATAL, 31.01)), HERE),
    Case(STEEP, "a premolar", raised("45", angle=(FRANKFORT, 35))),
    Case(STEEP, "intruded", raised("46", angle=(FRANKFORT, 35), use="intrusion")),
    Case(STEEP, "no angle measured", raised("46")),
    # Proffit: without growth extrusion of back teeth is not stable.
    Case(GROWN, "both sides, grown", raised("36", "46", growth="complete"), HERE),
    Case(GROWN, "both sides, growing", raised("36", "46", growth="growing")),
    Case(GROWN, "both sides, growth not stated", raised("36", "46")),
    Case(GROWN, "both sides, growth not known", raised("36", "46", growth="unknown")),
    Case(GROWN, "one side", raised("36", "37", growth="complete")),
    Case(GROWN, "premolars", raised("35", "45", growth="complete")),
    Case(
        GROWN,
        "a gap at the back",
        raised("36", "46", growth="complete", findings=[found("f2", "posterior-open-bite", 1)]),
    ),
    Case(
        GROWN,
        "no gap at the back, as measured",
        raised("36", "46", growth="complete", findings=[found("f2", "posterior-open-bite", 0)]),
        HERE,
    ),
    Case(
        GROWN,
        "a gap diagnosed",
        raised("36", "46", growth="complete", problems=[{"id": "p1", "problem": "open-bite-posterior"}]),
    ),
    Case(GROWN, "a steep plane, told elsewhere", raised("36", "46", growth="complete", angle=(FRANKFORT, 32))),
    # The same limits, in growth.
    Case(LONG, "below", raised(angle=(FRANKFORT, 29.99), growth="growing")),
    Case(LONG, "at the limit", raised(angle=(FRANKFORT, 30), growth="growing"), FOUND),
    Case(LONG, "above", raised(angle=(FRANKFORT, 30.01), growth="growing"), FOUND),
    Case(LONG, "grown", raised(angle=(FRANKFORT, 34), growth="complete")),
    Case(LONG, "growth not stated", raised(angle=(FRANKFORT, 34))),
)


@pytest.mark.parametrize("case", **table(*CASES))
def test_a_rule_finds_what_it_looks_for_and_nothing_else(case):
    assert pointers(case, RULES) == case.pointers
