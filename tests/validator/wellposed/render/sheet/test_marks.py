"""Colours and marks: contrast, colour blindness, and that no meaning hangs on a colour."""

from itertools import combinations
from xml.etree import ElementTree as ET

import pytest
from tests.validator.wellposed.render.sheet.cases import pages

from wellposed.render.sheet import html
from wellposed.render.sheet.drawing import Drawing, Point
from wellposed.render.sheet.legend import SAMPLES
from wellposed.render.sheet.marks import BLUE, GREY, INK, MARKS, PAIRS, PAPER, TINT, VERMILLION
from wellposed.render.sheet.patterns import PATTERNS

LEAST = {"text": 4.5, "shape": 3.0}
"""WCAG 2.2, success criteria 1.4.3 (text) and 1.4.11 (what is needed to understand a graphic)."""

# Okabe and Ito, Color Universal Design, 2008, as 8-bit values: blue (0, 114, 178), vermillion (213, 94, 0).
PUBLISHED = {"#0072b2": (0, 114, 178), "#d55e00": (213, 94, 0)}

# Machado, Oliveira and Fernandes, IEEE Trans Vis Comput Graph 2009;15:1291-8, severity 1.0, in linear RGB.
DEUTERANOPIA = ((0.367322, 0.860646, -0.227968), (0.280085, 0.672501, 0.047413), (-0.011820, 0.042940, 0.968881))


def channels(colour):
    """Red, green and blue, 0 to 255."""
    return tuple(int(colour[place : place + 2], 16) for place in (1, 3, 5))


def linear(colour):
    """Linear light, as WCAG 2.2 defines it for sRGB."""
    shares = [one / 255 for one in channels(colour)]
    return [one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in shares]


def luminance(light):
    """Relative luminance of linear light."""
    red, green, blue = light
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    """The contrast ratio of WCAG 2.2."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def seen(light):
    """Linear light as someone without the green-sensitive cones sees it."""
    return [min(max(sum(a * b for a, b in zip(row, light, strict=True)), 0.0), 1.0) for row in DEUTERANOPIA]


def test_the_contrast_of_black_on_white_is_that_of_the_standard():
    assert contrast(linear("#000000"), linear("#ffffff")) == pytest.approx(21)
    assert contrast(linear("#777777"), linear("#ffffff")) == pytest.approx(4.48, abs=0.01)  # the known near miss


@pytest.mark.parametrize("kind, front, back", PAIRS)
def test_every_pair_has_contrast_enough_for_all_eyes(kind, front, back):
    assert contrast(linear(front), linear(back)) >= LEAST[kind]
    assert contrast(seen(linear(front)), seen(linear(back))) >= LEAST[kind]


def test_the_two_colours_are_those_published():
    assert {colour: channels(colour) for colour in (BLUE, VERMILLION)} == PUBLISHED


@pytest.mark.parametrize("page", dict(pages()).values(), ids=dict(pages()))
def test_no_other_colour_is_used(page):
    drawn = page().drawings
    named = {value for one in drawn for part in one.element().iter() for value in part.attrib.values()}
    assert {one for one in named if one.startswith("#")} <= {INK, GREY, PAPER, BLUE, VERMILLION}
    assert TINT in html(page())


# marks


def test_every_mark_has_a_sign_of_its_own_without_colour():
    signs = [mark.sign for mark in MARKS.values()]
    assert len(set(signs)) == len(signs)
    coloured = ("blue", "vermillion", "orange", "red", "green", "grey", "gray")
    assert [sign for sign in signs if any(colour in sign for colour in coloured)] == []


def greyed(mark):
    """What a mark looks like in one ink: its shapes, every colour but that of the paper made black."""
    drawing = Drawing("sample", "x", 10, 10)
    SAMPLES[mark](drawing, Point(5, 5))
    drawing.used.clear()
    text = ET.tostring(drawing.element(), encoding="unicode")
    for colour in (BLUE, VERMILLION, GREY, INK):
        text = text.replace(colour, "black")
    return text


def test_no_two_marks_look_alike_in_one_ink():
    alike = [pair for pair in combinations(MARKS, 2) if greyed(pair[0]) == greyed(pair[1])]
    assert (set(SAMPLES), alike) == (set(MARKS), [])


def test_no_two_patterns_are_alike():
    assert len({str(parts) for parts in PATTERNS.values()}) == len(PATTERNS)


@pytest.mark.parametrize("page", dict(pages()).values(), ids=dict(pages()))
def test_every_mark_used_is_in_a_legend_or_keyed_in_words(page):
    drawn = page().drawings
    told = {one.name: " ".join(one.desc) for one in drawn}
    for one in drawn:
        if one.name.endswith("arch"):
            assert all(MARKS[mark].sign.capitalize() in told["arch-marks"] for mark in one.used)
        if one.name.endswith("room"):
            assert all(MARKS[mark].sign.capitalize() in told["room-marks"] for mark in one.used)
