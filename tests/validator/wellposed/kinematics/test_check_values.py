"""The check values of the kinematic model, within 3 %.

They were computed by hand-made prototypes of the same model before this code was written, and stand in
``spec/semantics.md`` as the table an implementation is held against.
"""

import sys
from pathlib import Path

import pytest

from wellposed.kinematics.arch import arch_line
from wellposed.kinematics.verdict import judge
from wellposed.model import Prescription

sys.path.insert(0, str(Path(__file__).parent))

from documents import LOWER, UPPER, align, allow, document, extract, found, keep, move, reach

WIDTHS = {"upper": (8.5, 6.5, 7.5, 7, 7, 10, 9), "lower": (5, 5.5, 7, 7, 7, 11, 10.5)}
DEPTH = {"upper": 43.0, "lower": 41.0}
FRONT_UP, FRONT_LOW = ["13", "12", "11", "21", "22", "23"], ["43", "42", "41", "31", "32", "33"]
POSITIONS = (7, 6, 5, 4, 3, 2, 1, 1, 2, 3, 4, 5, 6, 7)


def line(arch, offset=0.0):
    widths = (*reversed(WIDTHS[arch]), *WIDTHS[arch])
    return arch_line(widths, (0.0,) * 13, DEPTH[arch] + offset)


def room(arch, vectors, offset=0.0):
    """Room gained over all contacts when teeth move by (x, y) mm."""
    told = line(arch, offset)
    out = [f.out_x * x + f.out_y * y for f, (x, y) in zip(told.facings, vectors, strict=True)]
    slide = [f.along_x * x + f.along_y * y for f, (x, y) in zip(told.facings, vectors, strict=True)]
    total = 0.0
    for first in range(13):
        loses, gains = told.chord(first, first + 1)
        total += slide[first + 1] - slide[first] + gains * out[first + 1] - loses * out[first]
    return total


def outwards(arch, positions, offset=0.0):
    """1 mm ``out`` of the teeth at these positions, both sides."""
    told = line(arch, offset)
    loses_gains = [told.chord(first, first + 1) for first in range(13)]
    moved = [1.0 if position in positions else 0.0 for position in POSITIONS]
    return sum(b * moved[n + 1] - a * moved[n] for n, (a, b) in enumerate(loses_gains))


@pytest.mark.parametrize(
    "arch, positions, offset, expected",
    [
        ("upper", {1, 2}, 0, 1.61),
        ("lower", {1, 2}, 0, 1.35),
        ("upper", {1, 2}, -3, 1.36),
        ("upper", {1, 2}, 3, 1.88),
        ("lower", {1, 2}, -3, 1.09),
        ("lower", {1, 2}, 3, 1.67),
        ("upper", {3}, 0, 0.33),
        ("lower", {3}, 0, 0.42),
        ("upper", {3, 4, 5, 6, 7}, 0, 1.02),
        ("lower", {3, 4, 5, 6, 7}, 0, 1.25),
        ("upper", {4, 5, 6, 7}, 0, 0.70),
        ("lower", {4, 5, 6, 7}, 0, 0.84),
        ("upper", {6}, 0, 0.19),
        ("lower", {6}, 0, 0.22),
    ],
)
def test_room_per_mm_of_out(arch, positions, offset, expected):
    assert outwards(arch, positions, offset) == pytest.approx(expected, rel=0.03)


@pytest.mark.parametrize("arch, expected", [("upper", 1.63), ("lower", 1.55)])
def test_room_of_the_front_moved_straight_forward(arch, expected):
    vectors = [(0, 1) if position <= 3 else (0, 0) for position in POSITIONS]
    assert room(arch, vectors) == pytest.approx(expected, rel=0.03)


@pytest.mark.parametrize("arch, expected", [("upper", 1.38), ("lower", 1.56)])
def test_room_of_the_sides_moved_straight_apart(arch, expected):
    sides = [-1] * 7 + [1] * 7
    vectors = [(side, 0) if position >= 3 else (0, 0) for side, position in zip(sides, POSITIONS, strict=True)]
    assert room(arch, vectors) == pytest.approx(expected, rel=0.03)


@pytest.mark.parametrize("arch, out, along", [("upper", 0.79, 0.62), ("lower", 0.72, 0.70)])
def test_how_a_canine_faces(arch, out, along):
    face = line(arch).facings[POSITIONS.index(3)]
    assert (abs(face.out_x), abs(face.along_x)) == pytest.approx((out, along), rel=0.03)


def judged(**sections):
    return judge(Prescription.model_validate(document(**sections)))


def amount(conflict, what, arch="", member=""):
    """The amount of a way out; the allowance by name and arch, the rest by what gives way."""
    for way in conflict.ways_out:
        facts = dict(way.repair.facts)
        named = way.repair.use if way.repair.what == "allow" else way.repair.what
        if named == what and (not arch or facts.get("arch") == arch) and (not member or member in way.repair.member):
            return way.amount
    return None


CROWDED = [found("f1", "upper-crowding", 2.0), found("f2", "lower-crowding", 2.0)]


def test_both_arches_crowded_and_nothing_else_said():
    """Align 7-7 both, 2.0 mm each: incomplete, two conflicts."""
    got = judged(findings=CROWDED, goals=[align("g1", UPPER), align("g2", LOWER)])

    assert (got.verdict, len(got.conflicts)) == ("incomplete", 2)
    rows = zip(got.conflicts, ("upper", "lower"), (1.27, 1.53), (2.40, 1.89), strict=True)
    for conflict, arch, forward, wider in rows:
        assert amount(conflict, "enamel-reduction", arch) == pytest.approx(2.00, rel=0.03)
        assert amount(conflict, "incisor-advance", arch) == pytest.approx(forward, rel=0.03)
        assert amount(conflict, "widening", arch) == pytest.approx(wider, rel=0.03)
        assert amount(conflict, "distal-movement", arch) == pytest.approx(1.00, rel=0.03)


def test_upper_incisors_up_and_the_overbite_kept():
    got = judged(
        findings=[found("f1", "overbite", 3.0)],
        keep=[keep("k1", "overbite", 0.5)],
        movements=[move("m1", ["12", "11", "21", "22"], "intrusion", 1.8, 2.2)],
    )

    assert (got.verdict, len(got.conflicts), len(got.conflicts[0].members)) == ("contradictory", 1, 5)
    assert [way.amount for way in got.conflicts[0].ways_out] == pytest.approx([1.30] * 5, rel=0.03)
    back = [way for way in got.conflicts[0].ways_out if way.by == ("hinge",)]
    assert [(way.low, way.high) for way in back] == [pytest.approx((0.52, 1.30), rel=0.03)] * 2


def test_upper_molars_up_and_the_overbite_kept():
    got = judged(
        findings=[found("f1", "overbite", 3.0)],
        keep=[keep("k1", "overbite", 0.5)],
        movements=[move("m1", ["16", "17", "26", "27"], "intrusion", 1.5)],
    )
    (conflict,) = got.conflicts

    assert got.verdict == "contradictory"
    assert amount(conflict, "lower-floor") == pytest.approx(1.30, rel=0.03)
    assert amount(conflict, "extrusion", "lower") == pytest.approx(1.30, rel=0.03)
    assert amount(conflict, "posterior-open-bite") == pytest.approx(1.30, rel=0.03)
    assert amount(conflict, "widen-tolerance") == pytest.approx(3.25, rel=0.03)
    assert amount(conflict, "intrusion", "upper") == pytest.approx(3.25, rel=0.03)


def test_upper_spaces_to_close_and_nothing_else_said():
    closing = {"id": "g1", "strength": "must", "close_arch": "upper"}
    got = judged(findings=[found("f1", "upper-spacing", 2.0)], goals=[closing])
    (conflict,) = got.conflicts

    assert got.verdict == "incomplete"
    assert amount(conflict, "incisor-retraction") == pytest.approx(1.22, rel=0.03)
    assert amount(conflict, "mesial-movement") == pytest.approx(1.00, rel=0.03)


def test_lower_crowding_of_3_with_an_advance_of_1():
    got = judged(
        findings=[found("f1", "lower-crowding", 3.0)],
        goals=[align("g1", FRONT_LOW)],
        allow=[allow("a1", "incisor-advance", arch="lower", up_to=1.0)],
    )
    (conflict,) = got.conflicts

    assert got.verdict == "contradictory"
    assert amount(conflict, "raise-ceiling") == pytest.approx(1.35, rel=0.03)
    assert amount(conflict, "enamel-reduction") == pytest.approx(1.72, rel=0.03)
    assert amount(conflict, "distal-movement") == pytest.approx(0.86, rel=0.03)


def test_lower_crowding_of_3_with_a_widening_of_3():
    got = judged(
        findings=[found("f1", "lower-crowding", 3.0)],
        goals=[align("g1", FRONT_LOW)],
        allow=[allow("a1", "widening", arch="lower", up_to=3.0)],
    )

    assert got.verdict == "undecided"
    assert amount(got.conflicts[0], "leave-undone") == pytest.approx(0.92, rel=0.03)


def test_lower_crowding_of_4_with_the_molars_1_5_back():
    got = judged(
        findings=[found("f1", "lower-crowding", 4.0)],
        goals=[align("g1", ["45", "44", *FRONT_LOW, "34", "35"])],
        allow=[allow("a1", "distal-movement", arch="lower", up_to=1.5)],
    )
    (conflict,) = got.conflicts

    assert got.verdict == "contradictory"
    assert amount(conflict, "raise-ceiling") == pytest.approx(0.50, rel=0.03)
    assert amount(conflict, "enamel-reduction") == pytest.approx(1.00, rel=0.03)
    assert amount(conflict, "incisor-advance") == pytest.approx(0.80, rel=0.03)


def test_a_lower_incisor_extracted_for_6_5_mm():
    got = judged(
        findings=[found("f1", "lower-crowding", 6.5)],
        goals=[align("g1", ["43", "42", "31", "32", "33"])],
        allow=[extract("a1", "41")],
    )
    (conflict,) = got.conflicts

    assert got.verdict == "contradictory"
    assert amount(conflict, "enamel-reduction") == pytest.approx(1.50, rel=0.03)
    assert amount(conflict, "incisor-advance") == pytest.approx(1.25, rel=0.03)


def test_intrusion_and_extrusion_both_against_the_overbite():
    got = judged(
        findings=[found("f1", "overbite", 3.0)],
        keep=[keep("k1", "overbite", 0.5)],
        movements=[
            move("m1", ["12", "11", "21", "22"], "intrusion", 2.0, 2.5),
            move("m2", ["16", "26", "36", "46"], "extrusion", 1.0, 1.5),
        ],
    )
    first, second = got.conflicts

    assert got.verdict == "contradictory"
    assert amount(first, "lower-floor") == pytest.approx(1.50, rel=0.03)
    assert amount(first, "extrusion", "lower") == pytest.approx(1.50, rel=0.03)
    assert amount(second, "lower-floor") == pytest.approx(0.90, rel=0.03)
    assert amount(second, "extrusion", "lower") == pytest.approx(4.50, rel=0.03)


def test_an_overbite_that_turns_on_the_hinge():
    got = judged(
        findings=[found("f1", "overbite", 0.0)],
        goals=[reach("g1", "overbite", 1.3, 1.7)],
        movements=[move("m1", ["16", "17", "26", "27"], "intrusion", 0.99, 1.01)],
    )

    assert (got.verdict, got.depends_on) == ("undecided", ("hinge",))


@pytest.mark.parametrize(
    "sections, expected",
    [
        pytest.param(
            {"findings": [found("f1", "upper-crowding", 2.0)], "goals": [align("g1", UPPER)]},
            "incomplete",
            id="molars may not slide by an align",
        ),
        pytest.param(
            {
                "findings": [found("f1", "upper-spacing", 4.0)],
                "goals": [{"id": "g1", "strength": "must", "close_arch": "upper"}],
                "movements": [move("m1", ["12", "11", "21", "22"], "labial", 2.0)],
            },
            "contradictory",
            id="spaces cannot close while the incisors go forward",
        ),
        pytest.param(
            {
                "findings": [found("f1", "upper-crowding", 3.0), found("f2", "lower-crowding", 4.0)],
                "goals": [align("g1", FRONT_UP)],
                "allow": [allow("a1", "incisor-advance", arch="upper", up_to=2.0)],
            },
            "possible",
            id="a lower arch left alone stays crowded",
        ),
        pytest.param(
            {
                "findings": [
                    found("f1", "overjet", 7.0),
                    found("f2", "molar-relation-right", 3.5),
                    found("f3", "molar-relation-left", 3.5),
                    found("f4", "upper-crowding", 0.0),
                ],
                "goals": [reach("g1", "overjet", None, 3.0)],
                "allow": [
                    allow("a1", "distal-movement", arch="upper", up_to=3.0),
                    allow("a2", "incisor-retraction", arch="upper", up_to=4.5),
                ],
            },
            "possible",
            id="teeth between the molars and the front follow",
        ),
        pytest.param(
            {
                "findings": [found("f1", "upper-crowding", 5.0), found("f2", "lower-crowding", 6.0)],
                "goals": [
                    align("g1", FRONT_UP),
                    align("g2", FRONT_LOW),
                    {"id": "g3", "strength": "must", "close_arch": "upper"},
                    {"id": "g4", "strength": "must", "close_arch": "lower"},
                ],
                "keep": [keep("k1", "upper-inter-canine-width", 1.0), keep("k2", "lower-inter-canine-width", 1.0)],
                "allow": [
                    extract("a1", "14", "24", "34", "44"),
                    allow("a2", "mesial-movement", arch="upper", up_to=2.5),
                    allow("a3", "mesial-movement", arch="lower", up_to=2.5),
                ],
            },
            "possible",
            id="the canine goes straight back",
        ),
    ],
)
def test_verdicts(sections, expected):
    assert judged(**sections).verdict == expected


def test_a_tenth_and_two_tenths_are_three_tenths():
    """0.1 + 0.2 mm of reduction against 0.3 mm of crowding measured without error."""
    got = judged(
        findings=[found("f1", "upper-crowding", 0.3, error=0, contacts=["12-11", "11-21"])],
        goals=[align("g1", ["12", "11", "21"])],
        allow=[
            {"id": "a1", "use": "enamel-reduction", "contacts": ["12-11"], "in_all": 0.1, "unit": "mm"},
            {"id": "a2", "use": "enamel-reduction", "contacts": ["11-21"], "in_all": 0.2, "unit": "mm"},
        ],
    )

    assert (got.verdict, got.shortfall) == ("possible", 0.0)
