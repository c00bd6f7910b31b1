"""Means said twice, allowed and excluded at once, or counted on without ground."""

import pytest
from tests.validator.wellposed.consistency.ordinary import UPPER, allowed, expected, present, rows, told_by

from wellposed.consistency import means


def reduced(name, **said):
    return allowed(name, "enamel-reduction", in_all=1, unit="mm", **said)


def twice(first, later, **facts):
    return [(f"/allow/{later}", (f"a{first + 1}", f"a{later + 1}"), {**facts, "first": f"/allow/{first}"})]


@pytest.mark.parametrize(
    "allow, expected",
    **rows(
        (
            "Either way round it is one contact.",
            [reduced("a1", contacts=["12-11", "11-21"]), reduced("a2", contacts=["21-11", "21-22"])],
            twice(0, 1, contacts=["11-21"]),
        ),
        (
            "An arch stands for its contacts.",
            [reduced("a1", arch="upper"), reduced("a2", contacts=["11-21", "17-16", "12-11"])],
            twice(0, 1, contacts=["12-11", "11-21"]),
        ),
        (
            "But not for those behind the first molars.",
            [reduced("a1", arch="upper"), reduced("a2", contacts=["17-16"])],
            [],
        ),
        (
            "Each earlier one is told by itself.",
            [
                reduced("a1", contacts=["12-11"]),
                reduced("a2", contacts=["21-22"]),
                reduced("a3", contacts=["12-11", "21-22"]),
            ],
            twice(0, 2, contacts=["12-11"]) + twice(1, 2, contacts=["21-22"]),
        ),
        ("Nowhere is no place to share.", [reduced("a1"), reduced("a2")], []),
    ),
)
def test_reduction_said_twice(allow, expected):
    assert told_by(means.reduction_said_twice, allow=allow) == expected


def width(name, use="widening", arch="upper", **said):
    return allowed(name, use, arch=arch, up_to=1, unit="mm", **said)


@pytest.mark.parametrize(
    "allow, expected",
    **rows(
        (
            "An arch stands for canines to second molars.",
            [width("a1"), width("a2", teeth=["14"])],
            twice(0, 1, teeth=["14", "24"], use="widening"),
        ),
        (
            "Either tooth is of the pair.",
            [width("a1", "narrowing", teeth=["14", "16"]), width("a2", "narrowing", teeth=["24"])],
            twice(0, 1, teeth=["14", "24"], use="narrowing"),
        ),
        ("Widening and narrowing are two things.", [width("a1"), width("a2", "narrowing")], []),
        ("The arches are two.", [width("a1"), width("a2", arch="lower")], []),
        ("Third molars are not in the usual ones.", [width("a1"), width("a2", teeth=["18"])], []),
    ),
)
def test_width_said_twice(allow, expected):
    teeth = present(upper=["18", *UPPER])
    assert told_by(means.width_said_twice, teeth=teeth, allow=allow) == expected


BOTH = [("/allow/0", ("a1", "x1"), {"name": "widening", "first": "/exclude/0"})]


@pytest.mark.parametrize(
    "allowance, exclusion, expected",
    **rows(
        ("Everywhere.", width("a1"), {"means": "widening"}, BOTH),
        ("In the arch.", width("a1"), {"means": "widening", "arch": "upper"}, BOTH),
        ("In the other arch.", width("a1"), {"means": "widening", "arch": "lower"}, []),
        ("At a tooth named in both.", width("a1", teeth=["13", "23"]), {"means": "widening", "teeth": ["13"]}, BOTH),
        ("At other teeth.", width("a1", teeth=["13", "23"]), {"means": "widening", "teeth": ["14"]}, []),
        ("Named teeth except from an arch.", width("a1"), {"means": "widening", "teeth": ["14"]}, []),
        (
            "At teeth of the other arch.",
            allowed("a1", "intrusion", teeth=["31"], up_to=1, unit="mm"),
            {"means": "intrusion", "arch": "upper"},
            [],
        ),
        ("Another means.", width("a1"), {"means": "narrowing"}, []),
    ),
)
def test_excluded_and_allowed(allowance, exclusion, expected):
    exclude = [{"id": "x1", **exclusion}]
    assert told_by(means.excluded_and_allowed, allow=[allowance], exclude=exclude) == expected


def move(motion):
    return allowed("a1", "movement", teeth=["11"], motion=motion, up_to=1, unit="mm")


@pytest.mark.parametrize(
    "allowance, exclusion, name",
    **rows(
        ("A movement by its motion.", move("distal"), {"means": "distal-movement"}, "distal-movement"),
        ("One in its arch.", move("intrusion"), {"means": "intrusion", "arch": "upper"}, "intrusion"),
        (
            "A reduction at one of the two teeth.",
            reduced("a1", contacts=["12-11"]),
            {"means": "enamel-reduction", "teeth": ["12"]},
            "enamel-reduction",
        ),
        (
            "Elastics are of both arches.",
            allowed("a1", "class-ii-elastics", sides=["left"]),
            {"means": "class-ii-elastics", "arch": "lower"},
            "class-ii-elastics",
        ),
        (
            "A posterior open bite is nowhere else.",
            allowed("a1", "posterior-open-bite", up_to=1, unit="mm"),
            {"means": "posterior-open-bite"},
            "posterior-open-bite",
        ),
    ),
)
def test_excluded_and_allowed_under_another_name(allowance, exclusion, name):
    expected = [("/allow/0", ("a1", "x1"), {"name": name, "first": "/exclude/0"})]
    exclude = [{"id": "x1", **exclusion}]
    assert told_by(means.excluded_and_allowed, allow=[allowance], exclude=exclude) == expected


MESIAL = ["16-15", "25-26"]


def turned(at_least, *contacts, measure="upper-crowding", **said):
    named = {"contacts": list(contacts)} if contacts else {}
    return expected("e1", measure, at_least, ground="derotation", **named, **said)


@pytest.mark.parametrize(
    "expectation, expected",
    **rows(
        ("At the limit of one side.", turned(-2, "15-16"), []),
        (
            "Just beyond it.",
            turned(-2.01, "16-15"),
            [("/expect/0/at_least", ("e1",), {"value": -2.01, "most": 2, "unit": "mm"})],
        ),
        ("At the limit of both sides.", turned(-4, "16-15", "25-26"), []),
        (
            "Just beyond them.",
            turned(-4.01, "16-15", "25-26"),
            [("/expect/0/at_least", ("e1",), {"value": -4.01, "most": 4, "unit": "mm"})],
        ),
        (
            "At another contact.",
            turned(-1, "16-15", "16-17"),
            [("/expect/0/contacts/1", ("e1",), {"contact": "16-17", "expected": MESIAL})],
        ),
        ("At no contact.", turned(-1), [("/expect/0", ("e1",), {"expected": MESIAL})]),
        (
            "In the other arch.",
            turned(-1, "46-45", measure="lower-crowding"),
            [("/expect/0/measure", ("e1",), {"measure": "lower-crowding", "expected": "upper-crowding"})],
        ),
        ("Of a wrong unit another rule speaks.", turned(-9, "16-15") | {"unit": "deg"}, []),
        ("On another ground.", expected("e1", "upper-crowding", -9, ground="leeway-space"), []),
    ),
)
def test_derotation_room(expectation, expected):
    assert told_by(means.derotation_room, expect=[expectation]) == expected


def test_room_from_derotation_is_at_the_tooth_that_stands_mesial_after_extraction():
    allow = [allowed("a1", "extraction", teeth=["15", "25"])]
    assert told_by(means.derotation_room, allow=allow, expect=[turned(-2, "16-14", "26-24")]) == []


@pytest.mark.parametrize(
    "said, expected",
    **rows(
        ("No words.", {}, [("/expect/0/ground", ("e1",), {"expected": "words"})]),
        ("Blank words.", {"words": " "}, [("/expect/0/ground", ("e1",), {"expected": "words"})]),
        ("Some words.", {"words": "a plate worn until the spring"}, []),
    ),
)
def test_ground_not_said(said, expected):
    assert told_by(means.ground_not_said, expect=[_other(said)]) == expected


def _other(said):
    return expected("e1", "overjet", -2, ground="other", **said)
