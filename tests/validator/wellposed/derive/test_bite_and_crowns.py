"""Overbite in both units, crown proportions, irregularity, display: by hand and from the published rows."""

from math import sqrt

import pytest
from tests.validator.wellposed.consistency.ordinary import prescription

from wellposed.derive import irregularity as contacts
from wellposed.derive.crowns import crown, crowns
from wellposed.derive.display import display_at_rest, gingival_display, lip_still_grows
from wellposed.derive.irregularity import irregularity, offset
from wellposed.derive.overbite import mm_of, percent_of


def tooth_finding(name, measure, values, unit="mm"):
    return {"id": name, "tooth_measure": measure, "values": values, "unit": unit}


# Overbite of a lower crown of 9 mm, the mean of Nelson, Wheeler's Dental Anatomy: 1 mm is a ninth.
OVERBITES = [(1.0, 11), (2.0, 22), (3.0, 33), (4.5, 50), (-1.8, -20), (0.0, 0)]


@pytest.mark.parametrize("mm,percent", OVERBITES)
def test_overbite_in_percent_and_back(mm, percent):
    assert round(percent_of(mm, 9.0)) == percent
    assert mm_of(percent_of(mm, 9.0), 9.0) == pytest.approx(mm)


@pytest.mark.parametrize("height", [0.0, -9.0])
def test_a_crown_has_a_height(height):
    for convert in (percent_of, mm_of):
        with pytest.raises(ValueError, match="more than 0"):
            convert(3.0, height)


# Orozco-Varo et al. 2015: 8.71 to 10.23 is 85 %, 6.75 to 8.59 is 79 %, 7.81 to 9.93 is 79 %.
@pytest.mark.parametrize(
    "tooth,width,height,percent", [("11", 8.71, 10.23, 85), ("12", 6.75, 8.59, 79), ("13", 7.81, 9.93, 79)]
)
def test_mean_crowns_have_their_mean_ratio(tooth, width, height, percent):
    found = crown(tooth, width, height)
    assert round(100 * found.ratio) == percent
    assert (found.long, found.short) == (False, False)


CENTRALS = [
    # width, height, long, short: 11.5 mm or 0.75; 9.5 mm or 0.90
    (9.0, 11.5, False, False),
    (9.0, 11.6, True, False),
    (7.5, 10.0, False, False),
    (7.4, 10.0, True, False),
    (8.5, 9.5, False, False),
    (8.4, 9.4, False, True),
    (9.0, 10.0, False, False),
    (9.1, 10.0, False, True),
]


@pytest.mark.parametrize("width,height,long,short", CENTRALS)
def test_a_long_or_short_central(width, height, long, short):
    found = crown("21", width, height)
    assert (found.long, found.short) == (long, short)


def test_no_other_tooth_is_long_or_short():
    assert (crown("13", 6.0, 12.0).long, crown("12", 9.0, 8.0).short) == (False, False)


def test_a_crown_needs_both_its_measures():
    widths, heights = {"11": 8.5, "21": 8.5, "31": 5.0, "22": 0.0}, {"11": 10.0, "31": 9.0, "22": 9.0}
    found = prescription(
        findings=[tooth_finding("f1", "tooth-width", widths), tooth_finding("f2", "crown-height", heights)]
    )
    assert [one.tooth for one in crowns(found)] == ["11"]


# irregularity

STRAIGHT = dict.fromkeys(("43", "42", "41", "31", "32", "33"), 0.0)
WIDTHS = {"43": 7.0, "42": 6.0, "41": 5.0, "31": 5.0, "32": 6.0, "33": 7.0}


def front(displacement, rotation):
    values = {"tooth-width": WIDTHS, "displacement": STRAIGHT | displacement, "rotation": STRAIGHT | rotation}
    return {one.name: one.displacement for one in contacts.contacts(values, "lower")}


def test_a_straight_front_has_none():
    assert front({}, {}) == dict.fromkeys(("43-42", "42-41", "41-31", "31-32", "32-33"), 0.0)


def test_a_tooth_out_of_line_counts_at_both_its_contacts():
    found = front({"41": 1.5}, {})
    assert found == {"43-42": 0.0, "42-41": 1.5, "41-31": 1.5, "31-32": 0.0, "32-33": 0.0}
    assert irregularity([*found.values()]) == 3.0


@pytest.mark.parametrize("tooth,mesial,distal", [("42", "42-41", "43-42"), ("32", "31-32", "32-33")])
def test_a_rotation_of_thirty_degrees_puts_each_end_a_quarter_width_out(tooth, mesial, distal):
    found = front({}, {tooth: 30.0})  # 6 / 2 x sin 30 deg = 1.5
    assert {name: round(apart, 9) for name, apart in found.items() if apart} == {mesial: 1.5, distal: 1.5}


def test_the_mesial_surface_goes_towards_the_tongue_and_the_distal_away():
    assert offset(0.5, 6.0, 30.0, mesial=True) == pytest.approx(-1.0)
    assert offset(0.5, 6.0, 30.0, mesial=False) == pytest.approx(2.0)
    assert front({"42": 1.5}, {"42": 30.0})["42-41"] == pytest.approx(0.0)  # 1.5 labially, mesial 1.5 back
    assert front({"42": 1.5}, {"42": 30.0})["43-42"] == pytest.approx(3.0)


def test_two_centrals_winged_alike_meet():
    assert front({}, {"41": 45.0, "31": 45.0})["41-31"] == pytest.approx(0.0)
    assert front({}, {"41": 45.0, "31": -45.0})["41-31"] == pytest.approx(5 * sqrt(0.5))


def test_signs_do_not_matter_and_five_contacts_do():
    assert irregularity([1.0, -2.0, 0.0, 0.5, -0.5]) == 4.0
    with pytest.raises(ValueError, match="five"):
        irregularity([1.0])


def test_what_is_not_stated_is_not_taken_as_straight():
    found = prescription(
        findings=[tooth_finding("f1", "tooth-width", WIDTHS), tooth_finding("f2", "displacement", {"41": 1.0})]
    )
    lacking = contacts.of_prescription(found, "lower")
    assert ("41", "displacement") not in lacking
    assert {("41", "rotation"), ("33", "displacement")} <= {tuple(one) for one in lacking}
    assert (contacts.begun(found, "lower"), contacts.begun(found, "upper")) == (True, False)


# display: Vig and Brundo 1978 by decade and by sex, da Motta et al. 2010 by sex at both ends

RESTS = [
    (24, None, 3.37),
    (29.9, "male", 3.37),
    (30, None, 1.58),
    (45, None, 0.95),
    (59, None, 0.46),
    (60, None, -0.04),
    (None, "female", 3.40),
    (None, "male", 1.91),
    (12, "female", 4.45),
    (15.9, "male", 3.35),
    (13, None, (4.45 + 3.35) / 2),
    (51, "female", 1.32),
    (70, "male", 0.57),
    (16, "female", 3.37),
]


@pytest.mark.parametrize("age,sex,mean", RESTS)
def test_incisor_shown_at_rest(age, sex, mean):
    found = display_at_rest(age, sex)
    assert found.mean == pytest.approx(mean)
    assert found.low < found.mean < found.high


def test_the_range_is_as_far_as_the_norm_says_and_wider_where_the_sex_is_open():
    assert (display_at_rest(24, None).low, display_at_rest(24, None).high) == pytest.approx((1.87, 4.87))
    assert (display_at_rest(13, None).low, display_at_rest(13, None).high) == pytest.approx((1.85, 5.95))


@pytest.mark.parametrize("age,sex", [(None, None), (11.9, "male"), (6, None)])
def test_no_number_where_there_is_none(age, sex):
    assert display_at_rest(age, sex) is None


def test_gum_on_smiling():
    told = {sex: gingival_display(sex) for sex in ("female", "male", None)}
    ends = {sex: (usual.low, usual.high) for sex, usual in told.items()}
    assert ends == {"female": (1.0, 2.0), "male": (-0.5, 0.5), None: (-0.5, 2.0)}  # Sabri 2005; women 1.5 above men


# Vig and Cohen 1979, Nanda 1990: girls nearly done by about 14, boys by about 18.
@pytest.mark.parametrize(
    "age,sex,grows",
    [
        (13, "female", True),
        (14, "female", False),
        (17, "male", True),
        (18, "male", False),
        (16, None, None),
        (12, None, True),
        (20, None, False),
        (None, "male", None),
    ],
)
def test_the_upper_lip_may_still_grow(age, sex, grows):
    assert lip_still_grows(age, sex) is grows
