"""Tooth-size analysis against the published tables and worked examples."""

import pytest
from tests.validator.wellposed.consistency.ordinary import LOWER, UPPER, prescription, present

from wellposed import norms
from wellposed.derive.tooth_size import (
    FRONT,
    WHOLE,
    Fault,
    analysis,
    lower_band,
    of_prescription,
    ratio_band,
    teeth_of,
    upper_band,
    widths_of,
)

UPPER_12 = [*UPPER[1:-1]]
LOWER_12 = [*LOWER[1:-1]]


def widths(upper, lower):
    return dict(zip(UPPER_12 + LOWER_12, map(float, f"{upper} {lower}".split()), strict=True))


# Means of Nelson, Wheeler's Dental Anatomy.
WHEELER = widths(
    "10.0 7.0 7.0 7.5 6.5 8.5 8.5 6.5 7.5 7.0 7.0 10.0", "11.0 7.0 7.0 7.0 5.5 5.0 5.0 5.5 7.0 7.0 7.0 11.0"
)
# Means of Woelfel's Dental Anatomy, 4572 teeth.
WOELFEL = widths(
    "10.4 6.6 7.1 7.6 6.6 8.6 8.6 6.6 7.6 7.1 6.6 10.4", "11.4 7.1 7.0 6.8 5.7 5.3 5.3 5.7 6.8 7.0 7.1 11.4"
)
SMALL_LATERALS = widths(
    "10.3 6.8 7.0 7.8 5.2 8.6 8.5 5.1 7.9 7.1 6.7 10.2", "10.9 7.1 7.0 6.9 5.9 5.4 5.4 6.0 6.8 7.1 7.2 10.8"
)
BROAD_UPPER_FRONT = widths(
    "10.6 7.0 7.2 8.2 7.4 9.2 9.1 7.3 8.1 7.1 7.1 10.5", "10.8 7.0 6.9 6.6 5.6 5.2 5.2 5.7 6.7 6.9 7.0 10.9"
)
BROAD_LOWER_BACK = widths(
    "10.0 6.6 6.8 7.9 6.8 8.7 8.7 6.8 7.9 6.8 6.6 10.0", "11.6 7.5 7.3 6.9 5.9 5.3 5.3 5.9 6.9 7.3 7.5 11.6"
)

# Worked by hand from the formulas of Bolton 1962: sums, ratio, lower - mean x upper, upper - lower / mean, and
# (ratio - mean) / SD with 91.3 (SD 1.91) and 77.2 (SD 1.65).
WORKED = [
    # widths, teeth, upper, lower, ratio, lower excess, upper excess, z
    (WHEELER, 12, 93.0, 85.0, 91.40, 0.09, -0.10, 0.05),
    (WHEELER, 6, 45.0, 35.0, 77.78, 0.26, -0.34, 0.35),
    (WOELFEL, 12, 93.8, 86.6, 92.32, 0.96, -1.05, 0.54),
    (WOELFEL, 6, 45.6, 35.6, 78.07, 0.40, -0.51, 0.53),
    (SMALL_LATERALS, 12, 91.2, 86.5, 94.85, 3.23, -3.54, 1.86),
    (SMALL_LATERALS, 6, 43.1, 36.4, 84.45, 3.13, -4.05, 4.40),
    (BROAD_UPPER_FRONT, 12, 98.8, 84.5, 85.53, -5.70, 6.25, -3.02),
    (BROAD_UPPER_FRONT, 6, 49.3, 35.0, 70.99, -3.06, 3.96, -3.76),
    (BROAD_LOWER_BACK, 12, 93.6, 89.0, 95.09, 3.54, -3.88, 1.98),
    (BROAD_LOWER_BACK, 6, 46.8, 36.2, 77.35, 0.07, -0.09, 0.09),
]


@pytest.mark.parametrize("measured,count,told", [(widths, count, told) for widths, count, *told in WORKED])
def test_worked_examples(measured, count, told):
    found = analysis(measured, count)
    names = ("upper", "lower", "ratio", "lower_excess", "upper_excess", "spread_z")
    assert [getattr(found, name) for name in names] == pytest.approx(told, abs=0.006)
    assert found.teeth == count


# Bolton 1958 and 1962, the ready tables: upper sum to lower sum, mm.
TWELVE = (
    "85 77.6 86 78.5 87 79.4 88 80.3 89 81.3 90 82.1 91 83.1 92 84.0 93 84.9 94 85.8 95 86.7 96 87.6 97 88.6 98 89.5"
    " 99 90.4 100 91.3 101 92.2 102 93.1 103 94.0 104 95.0 105 95.9 106 96.8 107 97.8 108 98.6 109 99.5 110 100.4"
)
SIX = (
    "40.0 30.9 40.5 31.3 41.0 31.7 41.5 32.0 42.0 32.4 42.5 32.8 43.0 33.2 43.5 33.6 44.0 34.0 44.5 34.4 45.0 34.7"
    " 45.5 35.1 46.0 35.5 46.5 35.9 47.0 36.3 47.5 36.7 48.0 37.1 48.5 37.4 49.0 37.8 49.5 38.2 50.0 38.6 50.5 39.0"
    " 51.0 39.4 51.5 39.8 52.0 40.1 52.5 40.5 53.0 40.9 53.5 41.3 54.0 41.7 54.5 42.1 55.0 42.5"
)


def pairs(table):
    numbers = [float(number) for number in table.split()]
    return list(zip(numbers[::2], numbers[1::2], strict=True))


@pytest.mark.parametrize("count,upper,lower", [(12, *row) for row in pairs(TWELVE)] + [(6, *row) for row in pairs(SIX)])
def test_a_mouth_of_the_ready_tables_has_no_excess(count, upper, lower):
    teeth = teeth_of(count)
    even = dict.fromkeys(teeth[:count], upper / count) | dict.fromkeys(teeth[count:], lower / count)
    found = analysis(even, count)
    assert found.lower_excess == pytest.approx(0, abs=0.15)
    assert found.ratio == pytest.approx(91.3 if count == 12 else 77.2, abs=0.25)


def test_which_arch_is_large_and_by_how_much_in_its_own_terms():
    lateral, front = analysis(SMALL_LATERALS, FRONT), analysis(BROAD_UPPER_FRONT, FRONT)
    assert (lateral.larger, round(lateral.excess, 2)) == ("lower", 3.13)
    assert (front.larger, round(front.excess, 2)) == ("upper", 3.96)


@pytest.mark.parametrize("measured,count,beyond", [(w, c, abs(z) > 2) for w, c, *_, z in WORKED])
def test_two_standard_deviations_are_ordinary(measured, count, beyond):
    assert analysis(measured, count).beyond_spread is beyond


def test_the_bands_are_those_of_two_standard_deviations():
    assert ratio_band(WHOLE) == pytest.approx((87.48, 95.12))  # 91.3 -+ 2 x 1.91
    assert ratio_band(FRONT) == pytest.approx((73.9, 80.5))  # 77.2 -+ 2 x 1.65
    found = analysis(WHEELER, FRONT)
    assert lower_band(found) == pytest.approx((-1.485, 1.485))  # 45 x 0.033
    assert upper_band(found) == pytest.approx((35 / 0.805 - 35 / 0.772, 35 / 0.739 - 35 / 0.772))


def test_an_excess_at_the_end_of_its_band_is_a_ratio_at_the_end_of_its_own():
    most = 45 * 0.805  # a lower front of two standard deviations more
    teeth = teeth_of(FRONT)
    found = analysis(dict.fromkeys(teeth[:6], 7.5) | dict.fromkeys(teeth[6:], most / 6), FRONT)
    assert found.lower_excess == pytest.approx(lower_band(found).most)
    assert found.upper_excess == pytest.approx(upper_band(found).least)


# refusals


def without(*teeth):
    return {tooth: width for tooth, width in WHEELER.items() if tooth not in teeth}


REFUSED = [
    ("no width", without("12"), {}, ["12 no-width"]),
    ("a primary tooth in its place", without("15") | {"55": 8.2}, {}, ["15 primary"]),
    ("a width of nothing", WHEELER | {"46": 0.0}, {}, ["46 width-not-positive"]),
    ("said to be unfit", WHEELER, {"21": "crown"}, ["21 crown"]),
    ("every reason at once", without("11", "31"), {"41": "missing"}, ["11 no-width", "41 missing", "31 no-width"]),
]


@pytest.mark.parametrize("sentence,measured,unfit,faults", REFUSED)
def test_it_is_refused_with_every_reason(sentence, measured, unfit, faults):
    assert (sentence, [" ".join(fault) for fault in analysis(measured, WHOLE, unfit)]) == (sentence, faults)


@pytest.mark.parametrize("tooth", ["15", "16", "45", "46"])
def test_six_teeth_do_without_the_back(tooth):
    assert isinstance(analysis(without(tooth), WHOLE), tuple)
    assert analysis(without(tooth), FRONT) == analysis(WHEELER, FRONT)


# of a prescription


def measured(values, **more):
    finding = {"id": "f1", "tooth_measure": "tooth-width", "values": values, "unit": "mm"}
    return prescription(findings=[finding, *more.pop("findings", ())], **more)


def test_a_prescription_is_analysed_by_its_own_widths():
    assert of_prescription(measured(WOELFEL), WHOLE) == analysis(WOELFEL, WHOLE)


def test_averages_never_stand_in():
    assert norms.value("tooth-width.11") == 8.5
    assert of_prescription(measured(without("11")), FRONT) == (Fault("11", "no-width"),)


@pytest.mark.parametrize(
    "state",
    ["crown", "veneer", "large-filling", "bridge-abutment", "pontic", "implant", "to-be-extracted", "unerupted"],
)
def test_a_state_that_is_not_the_tooth_s_own_width(state):
    found = of_prescription(measured(WHEELER, teeth=present(("12", state))), FRONT)
    assert found == (Fault("12", state),)


@pytest.mark.parametrize("state", ["small-crown", "root-filled", "short-root"])
def test_a_state_that_leaves_the_width_as_it_is(state):
    assert of_prescription(measured(WHEELER, teeth=present(("12", state))), FRONT) == analysis(WHEELER, FRONT)


def test_a_tooth_that_is_not_there_or_is_primary():
    upper = [tooth for tooth in UPPER if tooth not in ("12", "15")]
    teeth = {"upper": [*upper, "55"], "lower": LOWER}
    found = of_prescription(measured(WHEELER, teeth=teeth), WHOLE)
    assert found == (Fault("12", "missing"), Fault("15", "primary"))


def test_two_widths_of_one_tooth_are_not_chosen_between():
    twice = {"id": "f2", "tooth_measure": "tooth-width", "values": {"11": 8.9, "21": 8.5}, "unit": "mm"}
    assert of_prescription(measured(WHEELER, findings=[twice]), FRONT) == (Fault("11", "measured-twice"),)
    assert widths_of(measured(WHEELER, findings=[twice]))["21"] == 8.5
