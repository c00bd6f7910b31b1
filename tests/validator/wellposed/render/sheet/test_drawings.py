"""Every drawing of every example: well formed, told in words, no text on another or off the page."""

import random
from itertools import pairwise
from xml.etree import ElementTree as ET

import pytest
from tests.validator.wellposed.render.kit import CASES, distinct
from tests.validator.wellposed.render.sheet.boxes import SVG, advance, box, crossed, outside, overlaps
from tests.validator.wellposed.render.sheet.cases import made, pages, setup_for

from wellposed.check import sound, sound_document
from wellposed.derive.space import budget
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.translate import Translation
from wellposed.render.sheet import svg
from wellposed.render.sheet.budget import budget_drawing
from wellposed.render.sheet.chart import arch_chart
from wellposed.render.sheet.gauges import gauges
from wellposed.render.sheet.metrics import width, wrapped
from wellposed.render.sheet.ordered import ordered
from wellposed.render.sheet.planned import Planning, planned
from wellposed.render.sheet.profiles import MEASURES, profiles
from wellposed.review import review
from wellposed.review.plan import Plan

PAGES = dict(pages())
ARCHES = ("upper", "lower")


def drawings_of(order):
    """Every drawing there is of a prescription."""
    translation = Translation(Mouth(order))
    found = [arch_chart(ordered(translation, arch)) for arch in ARCHES]
    found += [budget_drawing(budget(translation.mouth, arch)) for arch in ARCHES]
    found.append(profiles(gauges(translation.mouth, MEASURES)))
    return [one for one in found if one is not None]


@pytest.mark.parametrize("name", PAGES)
def test_no_text_lies_on_another_or_off_the_page(name):
    for drawing in PAGES[name]().drawings:
        assert (drawing.name, overlaps(drawing), outside(drawing)) == (drawing.name, [], [])


def test_nor_in_any_sound_prescription_of_the_conformance_kit():
    orders = distinct(CASES)
    drawn = ((name, one) for name, order in orders.items() for one in drawings_of(order))
    assert [(name, one.name) for name, one in drawn if overlaps(one) or outside(one)] == []
    assert len(orders) > 200


@pytest.mark.parametrize("name", [name for name in PAGES if name.endswith("order")])
def test_no_leader_runs_through_a_text(name):
    assert [words for one in PAGES[name]().drawings for words in crossed(one)] == []


def test_the_check_on_overlaps_can_fail():
    drawing = PAGES["several-conflicts, order"]().drawings[0]
    element = ET.fromstring(drawing.markup()).find(f".//{SVG}text")
    found = box(element)
    assert found.meets(found._replace(left=found.left + 1, right=found.right + 1))
    assert not found._replace(left=-1.0).inside(0, 0, 182, 200)


@pytest.mark.parametrize("name", PAGES)
def test_every_drawing_is_told_in_words(name):
    for drawing in PAGES[name]().drawings:
        root = ET.fromstring(drawing.markup())
        told = [root.find(f"{SVG}{tag}") for tag in ("title", "desc")]
        assert root.get("role") == "img"
        assert root.get("aria-labelledby") == " ".join(one.get("id") for one in told)
        assert all(one.text.strip() for one in told)
        assert told[1].text != told[0].text


@pytest.mark.parametrize("name", PAGES)
def test_ids_are_used_once_a_page_and_all_there(name):
    root = ET.fromstring(svg(PAGES[name]()).partition("\n")[2])
    ids = [one.get("id") for one in root.iter() if one.get("id")]
    fills = {one.get("fill")[5:-1] for one in root.iter() if (one.get("fill") or "").startswith("url(")}
    assert (len(ids), fills - set(ids)) == (len(set(ids)), set())


def test_the_description_names_every_tooth_and_what_it_does():
    upper = PAGES["several-conflicts, order"]().drawings[0].desc
    assert "11 (upper right central incisor): moves; intrusion 2 to 2.5 mm." in upper
    assert "17 (upper right second molar): stays where it is." in upper
    assert len(upper) == 15


# geometry: Euclid is the other source


def points(order, arch):
    """Tooth to the middle of its number on the page, mm."""
    root = ET.fromstring(arch_chart(ordered(Translation(Mouth(order)), arch)).markup())
    numbers = {}
    for one in root.iter(f"{SVG}text"):
        if one.get("font-weight") == "bold" and (one.text or "").isdecimal():
            numbers[one.text] = (float(one.get("x")), float(one.get("y")))
    return numbers


def test_the_patients_right_is_on_the_left_and_the_front_teeth_are_outermost():
    order = sound(made())
    upper, lower = points(order, "upper"), points(order, "lower")
    assert upper["16"][0] < upper["11"][0] < upper["21"][0] < upper["26"][0]
    assert upper["11"][1] < upper["13"][1] < upper["17"][1]
    assert lower["31"][1] > lower["33"][1] > lower["37"][1]
    assert lower["46"][0] < lower["36"][0]


def test_teeth_are_to_the_scale_of_the_bar():
    """The chords of neighbours' middles add up to a little less than the arc: the sum of the widths between them."""
    widths = {
        "16": 10,
        "15": 7,
        "14": 7,
        "13": 8,
        "12": 7,
        "11": 9,
        "21": 9,
        "22": 7,
        "23": 8,
        "24": 7,
        "25": 7,
        "26": 10,
    }
    finding = {"id": "w1", "tooth_measure": "tooth-width", "values": widths, "unit": "mm"}
    teeth = {"upper": list(widths), "lower": []}
    order = sound(made(teeth=teeth, findings=[finding], goals=[], keep=[], allow=[], attachments=[]))
    found = points(order, "upper")
    places = [found[tooth] for tooth in widths]
    walked = sum(((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2) ** 0.5 for a, b in pairwise(places))
    root = ET.fromstring(arch_chart(ordered(Translation(Mouth(order)), "upper")).markup())
    bar = next(
        one for one in root.iter(f"{SVG}line") if one.get("stroke-width") == "0.35" and one.get("y1") == one.get("y2")
    )
    scale = (float(bar.get("x2")) - float(bar.get("x1"))) / 10
    assert walked / scale == pytest.approx(96 - 10, rel=0.01)


def test_crowding_and_missing_teeth_of_any_size_can_be_drawn():
    rng = random.Random(5)
    for _ in range(40):
        teeth = {
            "upper": [
                t
                for t in ("17", "16", "15", "14", "13", "12", "11", "21", "22", "23", "26", "27")
                if rng.random() < 0.8
            ],
            "lower": [
                t for t in ("47", "46", "45", "43", "42", "41", "31", "32", "33", "34", "36") if rng.random() < 0.8
            ],
        }
        finding = {"id": "f1", "measure": "lower-crowding", "value": round(rng.uniform(0, 14), 1), "unit": "mm"}
        order = sound(made(teeth=teeth, findings=[finding], goals=[], keep=[], allow=[], attachments=[]))
        found = drawings_of(order)
        assert [(overlaps(one), outside(one)) for one in found] == [([], [])] * len(found), finding


def test_setups_of_any_kind_can_be_drawn():
    order = sound(made())
    for seed in range(15):
        setup = sound_document(setup_for(order, dense=seed % 2 == 0, seed=seed))
        case = Planning(Mouth(order), Plan(setup), review(order, setup))
        found = [arch_chart(planned(case, arch), planned=True) for arch in ARCHES]
        assert [(overlaps(one), outside(one)) for one in found] == [([], [])] * 2, seed


# widths of text


@pytest.mark.parametrize("bold", [False, True])
def test_no_printable_character_is_wider_than_it_is_taken_to_be(bold):
    wider = [one for one in map(chr, range(32, 127)) if advance(one, bold) > width(one, 1.0, bold) + 1e-9]
    assert wider == []
    assert all(advance(one, bold) <= width(one, 1.0, bold) for one in "°±≤≥–—“”·×é…")


def test_text_is_broken_between_words_and_no_number_is_parted_from_its_unit():
    assert wrapped("intrusion 2 to 2.5 mm", 1.0, 7.0) == ["intrusion 2 to", "2.5\u00a0mm"]
    assert wrapped("", 1.0, 8.0) == [""]
