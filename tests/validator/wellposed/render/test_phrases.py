"""Teeth, amounts and clauses in the trade's words. Names of teeth: ISO 3950 and the trade."""

import pytest

from wellposed.render.amounts import amount, changes, down, ends, number, up
from wellposed.render.phrases import clause, contacts, teeth


@pytest.mark.parametrize(
    "value, expected",
    [
        pytest.param(1.3, "1.3", id="one decimal stays one"),
        pytest.param(2.0, "2.0", id="a whole number keeps its decimal"),
        pytest.param(0.864, "0.86", id="two decimals at most"),
        pytest.param(0.0, "0.0", id="nothing"),
    ],
)
def test_a_number_has_one_or_two_decimals(value, expected):
    assert number(value) == expected


@pytest.mark.parametrize(
    "value, unit, expected",
    [(0.5, "mm", "0.5 mm"), (5, "deg", "5.0°"), (30, "percent", "30.0 %"), (3, "aligners", "3 aligners")],
)
def test_an_amount_carries_its_unit(value, unit, expected):
    assert amount(value, unit) == expected


@pytest.mark.parametrize(
    "value, more, less",
    [
        pytest.param(1.261, 1.27, 1.26, id="between two hundredths"),
        pytest.param(1.26, 1.26, 1.26, id="on a hundredth"),
        pytest.param(0.1 + 0.2, 0.3, 0.3, id="a hair over a hundredth counts as on it"),
    ],
)
def test_amounts_that_loosen_are_rounded_towards_loose(value, more, less):
    assert (up(value), down(value)) == (more, less)


@pytest.mark.parametrize(
    "listed, expected",
    [
        pytest.param(["13"], "13 (upper right canine)", id="one tooth by its full name"),
        pytest.param(["22", "11", "12", "21"], "12 11 21 22 (upper incisors)", id="a class of teeth by its name"),
        pytest.param(["16", "17"], "17 16 (upper right molars)", id="a class of one side"),
        pytest.param(
            ["33", "32", "31", "41", "42", "43"],
            "43 to 33 (lower right canine to lower left canine)",
            id="an unbroken row by its ends",
        ),
        pytest.param(
            ["13", "23"],
            "13 23 (upper canines)",
            id="two of a class",
        ),
        pytest.param(
            ["16", "36"],
            "16 (upper right first molar) and 36 (lower left first molar)",
            id="both arches",
        ),
        pytest.param(
            ["11", "25"],
            "11 (upper right central incisor) and 25 (upper left second premolar)",
            id="few and apart",
        ),
        pytest.param(["11", "13", "25", "27"], "13 11 25 27 (upper teeth)", id="many and apart"),
    ],
)
def test_teeth_are_named_in_numbers_and_words(listed, expected):
    assert teeth(listed) == expected


def test_contacts_name_their_arch():
    assert contacts(["33-32", "32-31"]) == "33-32 32-31 (lower)"


@pytest.mark.parametrize(
    "said, part, expected",
    [
        (
            {"teeth": ["11"], "motion": "intrusion", "at_least": 1.8, "at_most": 2.2, "unit": "mm"},
            "floor",
            "intrude 11 (upper right central incisor) by at least 1.8 mm",
        ),
        (
            {"teeth": ["13"], "motion": "mesiolingual-rotation", "at_most": 10, "unit": "deg"},
            "",
            "rotate 13 (upper right canine), mesial side towards the tongue, by at most 10.0°",
        ),
        ({"measure": "overjet", "at_least": 2, "at_most": 3, "unit": "mm"}, "", "overjet 2.0 to 3.0 mm"),
        ({"measure": "upper-midline", "at_least": 0, "at_most": 0, "unit": "mm"}, "", "upper midline 0.0 mm"),
        (
            {"measure": "upper-midline", "at_least": -1, "at_most": -0.5, "unit": "mm"},
            "",
            "upper midline 0.5 to 1.0 mm to the patient's right",
        ),
        (
            {"measure": "upper-midline", "at_least": -0.5, "at_most": 1, "unit": "mm"},
            "",
            "upper midline between 0.5 mm to the patient's right and 1.0 mm to the patient's left",
        ),
        (
            {"measure": "upper-midline", "at_least": -0.5, "at_most": 1, "unit": "mm"},
            "floor",
            "upper midline no further than 0.5 mm to the patient's right",
        ),
        (
            {"measure": "upper-midline", "at_least": -0.5, "at_most": 1, "unit": "mm"},
            "ceiling",
            "upper midline no further than 1.0 mm to the patient's left",
        ),
        (
            {"measure": "lower-midline", "at_most": -1, "unit": "mm"},
            "",
            "lower midline at least 1.0 mm to the patient's right",
        ),
        (
            {"measure": "lower-midline", "at_least": 0, "unit": "mm"},
            "",
            "lower midline 0.0 mm, or to the patient's left",
        ),
        (
            {"measure": "molar-relation-right", "at_least": -0.5, "at_most": 0.5, "unit": "mm"},
            "",
            "right molar relation at most 0.5 mm from Class I",
        ),
        ({"measure": "overbite", "within": 0.5, "unit": "mm"}, "keep", "overbite within 0.5 mm"),
        (
            {"measure": "overjet", "pair": ["12", "42"], "at_least": 1, "unit": "mm"},
            "",
            "overjet at 12/42 at least 1.0 mm",
        ),
        ({"align": ["11", "21"]}, "align", "align 11 21 (upper incisors)"),
        ({"close_arch": "upper"}, "close", "close every space of the upper arch"),
        ({"leave": "13-11", "amount": 7, "unit": "mm"}, "leave", "leave 7.0 mm at 13-11 (upper)"),
        ({"hold": ["16"]}, "hold", "hold 16 (upper right first molar)"),
        (
            {"use": "enamel-reduction", "arch": "lower", "per_contact": 0.3, "in_all": 2, "unit": "mm"},
            "in-all",
            "enamel reduction, lower arch, up to 2.0 mm in all",
        ),
        ({"means": "extraction"}, "exclude", "no extraction"),
        (
            {"measure": "overjet", "at_least": -3, "at_most": -1, "unit": "mm", "ground": "growth"},
            "",
            "overjet to change, 1.0 to 3.0 mm less (growth)",
        ),
        (
            {"measure": "lower-midline", "at_least": 1.5, "at_most": 2, "unit": "mm", "ground": "functional-shift"},
            "",
            "lower midline to change, 1.5 to 2.0 mm to the patient's left (functional shift)",
        ),
    ],
)
def test_a_clause_in_words(said, part, expected):
    assert clause(said, part) == expected


@pytest.mark.parametrize(
    "name, low, high, expected",
    [
        pytest.param("upper-midline", -0.5, 0.0, ("0.0", "0.5 mm to the patient's right"), id="one side"),
        pytest.param(
            "upper-midline",
            -0.5,
            0.3,
            ("0.5 mm to the patient's right", "0.3 mm to the patient's left"),
            id="both sides, the patient's right first",
        ),
        pytest.param("molar-relation-left", 0.5, 1.0, ("0.5", "1.0 mm towards Class II"), id="one sense"),
        pytest.param("overbite", -1.0, 2.0, ("-1.0 mm (an open bite)", "2.0 mm"), id="a sign that is told"),
        pytest.param("overjet", 2.0, 3.0, ("2.0", "3.0 mm"), id="plain numbers share their unit"),
    ],
)
def test_between_what_values_a_measure_can_end(name, low, high, expected):
    assert ends(name, low, high, "mm") == expected


@pytest.mark.parametrize(
    "low, high, expected",
    [
        pytest.param(0.8, 1.0, "0.8 to 1.0 mm more", id="more"),
        pytest.param(-3.0, -1.0, "1.0 to 3.0 mm less", id="less"),
        pytest.param(-0.5, 1.0, "between 0.5 mm less and 1.0 mm more", id="either"),
        pytest.param(0.0, 1.0, "0.0 to 1.0 mm more", id="from none"),
        pytest.param(-2.0, -2.0, "2.0 mm less", id="just so much"),
        pytest.param(-0.004, 0.004, "no change", id="none to speak of"),
    ],
)
def test_changes_are_told_without_a_sign(low, high, expected):
    assert changes("overjet", low, high, "mm") == expected
