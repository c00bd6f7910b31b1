"""The exact measures against the sums of the check, and against models worked out by hand.

To first order they are the same: halve the movement and the difference falls to a quarter (Taylor's theorem).
"""

from math import hypot
from pathlib import Path
from random import Random

import pytest
from tests.spec.prose import tables
from tests.validator.wellposed.kinematics.generate import prescription, read
from tests.validator.wellposed.review.points import document

from wellposed.check import sound
from wellposed.kinematics.measures import measure_row
from wellposed.review.matter import Matter
from wellposed.review.sums import Sums
from wellposed.vocabulary.measures import MEASURE_KINDS
from wellposed.vocabulary.motions import VARIABLE_UNITS, VARIABLES

MOVED = [name for name, kind in MEASURE_KINDS.items() if kind.moves and name != "posterior-open-bite"]
EXAMPLES = Path(__file__).parents[4] / "examples"
DRAWN = 5e-4  # mm; the line is drawn in 600 straight pieces
ROUNDING = 2e-9  # facings are kept to ten decimals


def matter_of(seed, movements):
    """A prescription of a seed with these movements, (tooth, variable) to mm or deg, all else still."""
    return matter_on(read(prescription(seed)), movements)


def matter_on(rx, movements):
    """The same for a prescription at hand."""
    listed = [
        {
            "variable": name,
            "unit": VARIABLE_UNITS[name],
            "values": {tooth: value for (tooth, variable), value in movements.items() if variable == name},
        }
        for name in VARIABLES
    ]
    listed = [table for table in listed if table["values"]]
    taken = sorted(Matter(rx, document(rx, movements=[])).mouth.extracted)
    return Matter(rx, document(rx, movements=listed, unlisted="unmoved", reductions=[], extractions=taken))


def directions(seed, random):
    """A random direction for every tooth in line, up to 1 mm or 4 deg in each variable; heights too."""
    rows = matter_of(seed, {}).mouth.rows.values()
    size = {"mm": 1.0, "deg": 4.0}
    return {
        (tooth, name): random.uniform(-1, 1) * size[VARIABLE_UNITS[name]]
        for row in rows
        for tooth in row.teeth
        for name in VARIABLES
        if tooth not in matter_of(seed, {}).mouth.tooth_values("displacement")
    }


def differences(seed, moved):
    """Exact less linear, of every measure that is no sum of the room and of every contact's room."""
    return compared(matter_of(seed, moved))


def apart(rx, moved):
    """The same for a prescription at hand."""
    return compared(matter_on(rx, moved))


def ordinary():
    """Fourteen teeth of average width in each arch, nothing crowded."""
    return sound((EXAMPLES / "spaced-upper-front" / "prescription.json").read_bytes())


def compared(matter):
    sums, found = Sums(matter), {}
    for name in MOVED:
        reading, row = matter.measures.reading(name), measure_row(matter.translation.frame, name)
        if reading.span and row and not reading.absolute:
            found[name] = (reading.span.low + reading.span.high) / 2 - sums.value(row.terms)
    return found | {name: room - sums.room(name) for name, room in matter.ended.rooms.items()}


@pytest.mark.parametrize("seed", range(0, 60, 2))
def test_exact_and_linear_agree_to_second_order(seed):
    way = directions(seed, Random(seed))
    whole, quarter = (differences(seed, {at: scale * value for at, value in way.items()}) for scale in (1 / 2, 1 / 8))
    assert whole.keys() == quarter.keys()
    wrong = {name: (whole[name], quarter[name]) for name in whole if abs(quarter[name]) > abs(whole[name]) / 8 + DRAWN}
    assert wrong == {}


def test_they_differ_where_they_should():
    """The comparison can fail: at half a millimetre some measure or room is off by more than the rounding."""
    assert any(abs(value) > 1e-3 for value in differences(4, directions(4, Random(4))).values())


def test_no_movement_changes_nothing():
    for seed in range(12):
        assert max(map(abs, differences(seed, {}).values())) < ROUNDING


# by hand: the arch as a circle of teeth is no model of ours, so the places on the line are taken from it, and what the
# movements do to them is worked out with plain trigonometry


PLAIN = 4


def spots(tooth):
    """Where a tooth stands, and its outward normal, on the untouched line."""
    matter = matter_of(PLAIN, {})
    face = matter.translation.frame.facing[tooth]
    return matter.ended.start(tooth), (face.out_x, face.out_y)


def change(name, movements):
    """The change of a measure, mm or deg, known exactly."""
    span = matter_of(PLAIN, movements).measures.reading(name).span
    assert span.low == pytest.approx(span.high)
    return span.low


def test_a_width_grows_by_the_sideways_part_of_both_ways_out():
    (x, _), (nx, _) = spots("13")
    (other, _), (mx, _) = spots("23")
    assert x < 0 < other
    expected = abs((other + 2 * mx) - (x + 1 * nx)) - abs(other - x)
    assert change("upper-inter-canine-width", {("13", "out"): 1.0, ("23", "out"): 2.0}) == pytest.approx(expected)


def test_a_canine_slid_back_goes_where_the_line_goes():
    """3 mm along the curve: the straight way is shorter than the arc and not in the direction of its start."""
    matter = matter_of(PLAIN, {("13", "along"): -3.0})
    (x, y), (a, b) = matter.ended.start("13"), matter.ended.spot("13")
    assert 2.9 < hypot(a - x, b - y) < 3.0
    assert a < x
    assert b < y


def test_incisors_straight_forward_carry_the_overjet_whole():
    out, along = {}, {}
    for tooth in ("11", "21"):
        _, (nx, ny) = spots(tooth)
        out[tooth, "out"] = ny
        along[tooth, "along"] = nx if tooth == "11" else -nx
    moved = {at: 1.5 * value for at, value in (out | {k: -v for k, v in along.items()}).items()}
    straight = matter_of(PLAIN, moved).ended
    assert straight.spot("11")[1] - straight.start("11")[1] == pytest.approx(1.5, abs=0.03)
    assert change("overjet", moved) == pytest.approx(1.5, abs=0.03)


def test_torque_turns_the_interincisal_angle_by_the_mean_of_each_pair():
    moved = {("11", "torque"): 6.0, ("21", "torque"): 4.0, ("31", "torque"): -2.0, ("41", "torque"): -2.0}
    assert change("interincisal-angle", moved) == pytest.approx(-5 + 2)


def test_midline_overbite_and_display_by_hand():
    assert change("upper-midline", {("11", "along"): 1.0, ("21", "along"): -1.0}) == pytest.approx(1.0, abs=0.01)
    assert change("overbite", {("11", "vertical"): -1.0, ("41", "vertical"): 0.5}) == pytest.approx(-0.25)
    assert change("incisor-display-at-rest", {("11", "vertical"): -1.0, ("21", "vertical"): -0.5}) == pytest.approx(
        -0.75
    )


@pytest.mark.parametrize(
    "moved, closing",
    [
        ({"16": -1, "26": -1}, (1.0, 2.5)),  # both sides 1 mm in: closes 1.0 to 2.5 mm by the hinge factor
        ({"16": -1, "46": -0.5, "26": -1, "36": -0.5}, (1.5, 3.75)),
        ({"16": 0.4, "26": 0.4}, (-1.0, -0.4)),  # extruded: opens
    ],
)
def test_the_bite_closes_by_the_hinge_factor(moved, closing):
    """Factors 1.0 and 2.5, as in spec/semantics.md; arithmetic by hand."""
    span = matter_of(PLAIN, {(tooth, "vertical"): value for tooth, value in moved.items()}).measures.closed.closing
    assert (span.low, span.high) == pytest.approx(closing)


def test_room_is_counted_along_the_line_where_the_teeth_have_come_to():
    """Two neighbours apart along the line make as much room; one out makes what its way has in that direction."""
    before = matter_of(PLAIN, {}).ended.rooms["12-11"]
    assert matter_of(PLAIN, {("12", "along"): -0.5}).ended.rooms["12-11"] == pytest.approx(before + 0.5, abs=1e-6)
    (x, y), (nx, ny) = spots("12")
    (a, b), _ = spots("11")
    size = hypot(a - x, b - y)
    part = (nx * (a - x) + ny * (b - y)) / size
    assert matter_of(PLAIN, {("12", "out"): 0.8}).ended.rooms["12-11"] == pytest.approx(before - 0.8 * part, abs=1e-6)


# the table of spec/review.md, worked out again


def _each(variable, teeth, mm):
    return {(tooth, variable): mm for tooth in teeth}


def _slid(mm):
    return {(tooth, "along"): mm if tooth[0] == "1" else -mm for tooth in INCISORS}


INCISORS = ("12", "11", "21", "22")
SIDE = tuple(f"{quadrant}{number}" for quadrant in "12" for number in "34567")
MOVEMENTS = {
    "four upper incisors out": lambda mm: _each("out", INCISORS, mm),
    "upper canines to second molars out": lambda mm: _each("out", SIDE, mm),
    "upper canines distal": lambda mm: _each("along", ("13", "23"), -mm),
    "upper first and second molars distal": lambda mm: _each("along", ("16", "17", "26", "27"), -mm),
    "four upper incisors slid to the left and out, each": lambda mm: _each("out", INCISORS, mm) | _slid(mm),
}
NAMES = {"overjet": "overjet", "midline": "upper-midline"}
(TABLE,) = tables("sums")


@pytest.mark.parametrize("movement, mm, measure, stated", TABLE.rows)
def test_the_specification_says_where_sums_stop_being_good(movement, mm, measure, stated):
    rx = ordinary()
    moved = MOVEMENTS[movement](float(mm))
    found = apart(rx, moved)[NAMES.get(measure, f"upper-{measure.replace(' ', '-')}")]
    assert f"{found:.2f}".replace("-0.00", "0.00") == stated
