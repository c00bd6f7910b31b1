"""Reviews as text: read by eye when written down (by goldens.py), the same ever since; what must stand in each."""

import re
from dataclasses import replace
from pathlib import Path

import pytest
from tests.validator.wellposed.render.review.made import (
    REVIEWS,
    SHORT_OF,
    STEPS,
    fulfilled,
    line,
    order,
    part,
    review,
    setup,
    unmet,
)

from wellposed.findings import CAUTION, Finding, Severity
from wellposed.model.clauses import Align, Hold
from wellposed.render.review import review_text
from wellposed.render.review.amounts import reached
from wellposed.render.review.delivered import delivered, grouped
from wellposed.render.review.head import head
from wellposed.render.review.lists import claims
from wellposed.render.review.table import table
from wellposed.render.text import SCOPE
from wellposed.review.result import Nearer, Span, Unasked

GOLDEN = Path(__file__).parent / "golden"
PAGE = 80  # lines of a page in small print


def told(reviewed, width=1000):
    return review_text(reviewed, order(), setup(), width)


@pytest.mark.parametrize("name", REVIEWS)
def test_a_review_reads_as_it_was_read(name):
    assert review_text(*REVIEWS[name]) == (GOLDEN / f"{name}.txt").read_text("utf-8")


def test_every_text_written_down_is_that_of_a_review():
    assert {path.stem for path in GOLDEN.glob("*.txt")} == REVIEWS.keys()


@pytest.mark.parametrize("name", REVIEWS)
@pytest.mark.parametrize("width", [60, 80, 100])
def test_no_line_is_longer_than_asked_and_a_page_is_enough(name, width):
    lines = review_text(*REVIEWS[name], width).splitlines()
    assert [text for text in lines if len(text) > width] == []
    assert width < 100 or len(lines) <= PAGE


@pytest.mark.parametrize("name", REVIEWS)
def test_every_review_closes_with_what_it_is_and_the_caution(name):
    text = " ".join(review_text(*REVIEWS[name]).split())
    assert text.endswith(f"{SCOPE} {CAUTION}")


@pytest.mark.parametrize("name", REVIEWS)
def test_every_clause_is_told_once(name):
    reviewed, prescription, plan = REVIEWS[name]
    text = review_text(reviewed, prescription, plan)
    marked = re.findall(r"(?m)^([a-z][0-9]+) {2,}\S", text)
    untold = re.findall(r"(?::|;) ([a-z][0-9]+) ", " ".join(text.partition("What cannot be told")[2].split()))
    assert sorted([*marked, *untold]) == sorted(one.id for one in reviewed.clauses)


def test_no_movement_has_a_bare_sign():
    assert re.findall(r"[-+−][0-9.]+(?: mm|°)", told(SHORT_OF).replace("-0.3 to 0.3", "")) == []
    assert re.findall(r"(?<!\S)[-+−][0-9.]+(?: mm|°)", told(STEPS).replace("-0.3 to 0.3", "")) == []


def only(clause, *parts, **more):
    return review(order(), **{clause: unmet(*parts, **more)})


@pytest.mark.parametrize(
    "sentence, clause, off, words",
    [
        (
            "too little of what was ordered",
            "m1",
            part("vertical", "41", "mm", (-2.2, -1.8), -1.2, off=0.6, met=False),
            "41 (lower right central incisor): 1.2 mm of intrusion, 0.6 mm less intrusion than asked",
        ),
        (
            "too much of it",
            "m1",
            part("vertical", "41", "mm", (-2.2, -1.8), -2.6, off=-0.4, met=False),
            "2.6 mm of intrusion, 0.4 mm more intrusion than asked",
        ),
        (
            "the other way",
            "m1",
            part("vertical", "41", "mm", (-2.2, -1.8), 0.4, off=2.2, met=False),
            "0.4 mm of extrusion, 2.2 mm less intrusion than asked",
        ),
        (
            "not moved at all",
            "m1",
            part("vertical", "41", "mm", (-2.2, -1.8), 0.0, off=1.8, met=False),
            "not moved, 1.8 mm less intrusion than asked",
        ),
        (
            "a measure above its goal",
            "g2",
            part("overbite", "", "mm", (2.0, 3.0), 3.5, off=0.5, met=False, before=4.5),
            "4.5 mm → 3.5 mm, 0.5 mm more than asked",
        ),
        (
            "an open bite",
            "g2",
            part("overbite", "", "mm", (2.0, 3.0), -0.5, off=-2.5, met=False, before=4.5),
            "4.5 mm → -0.5 mm (an open bite), 2.5 mm less than asked",
        ),
        (
            "a midline left where it was",
            "g3",
            part("lower-midline", "", "mm", (-0.3, 0.3), -1.0, off=-0.7, met=False, before=-1.0),
            "right → 1.0 mm to the patient's right, 0.7 mm further to the patient's right than asked",
        ),
        (
            "a bound that the hinge leaves open is told from its near end",
            "g2",
            part("overbite", "", "mm", (2.0, 3.0), (3.4, 4.0), off=0.4, met=False, before=4.5),
            "4.5 mm → 3.4 to 4.0 mm, 0.4 mm more than asked",
        ),
        (
            "a keep of a measure",
            "k1",
            part("overjet", "", "mm", (2.0, 4.0), 1.7, off=-0.3, met=False, before=3.0),
            "3.0 mm → 1.7 mm, 0.3 mm more change than tolerated",
        ),
        (
            "a keep of a measure nobody measured",
            "k2",
            part("lower-inter-canine-width", "", "mm", (-0.5, 0.5), 0.9, off=0.4, met=False),
            "0.9 mm more, 0.4 mm more change than tolerated",
        ),
        (
            "a tooth on hold",
            "k3",
            part("torque", "16", "deg", (0.0, 0.0), 4.0, off=4.0, tolerance=1.0, met=False),
            "16 (upper right first molar): 4.0° of torque, crown outwards",
        ),
        (
            "an amount passed",
            "a1",
            part("reduction", "43-42", "mm", (None, 0.4), 0.6, off=0.2, met=False),
            "43-42 (lower): 0.6 mm of enamel taken off, 0.2 mm more than allowed",
        ),
        (
            "less enamel than was ordered",
            "a1",
            part("reduction-in-all", "", "mm", (1.0, 2.0), 0.4, off=-0.6, met=False),
            "0.4 mm of enamel taken off in all, 0.6 mm less than asked",
        ),
        (
            "incisors that were to go alike",
            "a2",
            part("alike", "42/31", "mm", (None, 0.5), 0.8, off=0.3, met=False),
            "42/31: 0.8 mm apart, 0.3 mm more than allowed",
        ),
        (
            "a rotation turned too far",
            "g1",
            part("rotation-left", "33", "deg", (0.0, 0.0), -6.0, off=-6.0, tolerance=5.0, met=False, before=20.0),
            "33 (lower left canine): rotation of 20.0° corrected, and 6.0° beyond",
        ),
        (
            "a step too large",
            "s1",
            part("step", "vertical 42", "mm", (None, 0.2), 0.31, off=0.11, tolerance=0.011, met=False),
            "42 (lower right lateral incisor): a step of 0.31 mm, height, 0.11 mm more than asked",
        ),
        (
            "too many aligners",
            "s1",
            part("aligners", "lower", "1", (None, 20.0), 21.0, off=1.0, tolerance=0.0, met=False),
            "lower arch: 21 aligners, 1 more than asked",
        ),
    ],
)
def test_what_is_off_is_said_in_words_of_the_trade(sentence, clause, off, words):
    assert (sentence, words in told(only(clause, off))) == (sentence, True)


@pytest.mark.parametrize(
    "sentence, doing, against, words",
    [
        ("another setup can", "setup", (), "another setup can meet it with all the rest: ask for it"),
        ("none can", "prescription", ("k1",), "no setup can meet it: change the order first"),
        ("against a clause", "prescription", ("k1",), "Against it:   k1\n"),
        (
            "against silence, both arches together",
            "prescription",
            ("silence upper posterior-vertical", "silence lower posterior-vertical"),
            "what is not mentioned and so kept: upper and lower back teeth up or down",
        ),
        (
            "against a tooth that cannot move",
            "prescription",
            ("state 16 still",),
            "16 (upper right first molar), which cannot be moved",
        ),
        (
            "against a usual limit",
            "prescription",
            ("practice practice.torque.upper-incisors 11",),
            "the usual limit (torque, upper incisors: at most 20.0°, common practice (11))",
        ),
        ("it cannot be told", "either", (), "whether another setup could meet it cannot be told"),
    ],
)
def test_whose_doing_it_is_is_said(sentence, doing, against, words):
    off = part("overbite", "", "mm", (2.0, 3.0), 3.5, off=0.5, met=False, before=4.5)
    assert (sentence, words in told(only("g2", off, doing=doing, against=against))) == (sentence, True)


@pytest.mark.parametrize(
    "rule, words",
    [
        ("extraction-not-ordered", "Not as ordered: 1 finding stops the setup."),
        ("setup-answers-another", "Nothing else is found to be other than ordered."),
    ],
)
def test_what_is_stopped_is_not_called_as_ordered(rule, words):
    page = head(replace(review(order()), findings=(Finding(rule, Severity.STOP, "/extractions"),)))
    assert (words in page, " As ordered." in page) == (True, False)


@pytest.mark.parametrize(
    "nearer, words",
    [
        (None, None),
        (Nearer(0.5, "mm"), "another setup could have come 0.5 mm nearer with all else no worse than here\n"),
        (Nearer(8.0, "1"), "another setup could have come 8 aligners nearer with all else no worse than here\n"),
    ],
)
def test_that_another_setup_could_have_come_nearer_is_said(nearer, words):
    off = part("overbite", "", "mm", (2.0, 3.0), 3.5, off=0.5, met=False, before=4.5)
    clauses = tuple(replace(one, nearer=nearer) for one in only("g2", off, doing="prescription").clauses)
    page = told(replace(only("g2", off), clauses=clauses))
    assert ("All the same: " in page, words is None or words in page) == (words is not None, True)


@pytest.mark.parametrize(
    "sentence, moved, words",
    [
        (
            "teeth of an arch, a variable and a sense together",
            [Unasked("out", "13", "mm", 0.6, 0.0, 0.1), Unasked("out", "14", "mm", 1.1, 0.0, 0.1)],
            "- 14 to 13 (upper right first premolar to upper right canine): 0.6 to 1.1 mm each outwards\n",
        ),
        (
            "the two senses apart",
            [Unasked("out", "13", "mm", 0.6, 0.0, 0.1), Unasked("out", "23", "mm", -0.6, 0.0, 0.1)],
            "- 23 (upper left canine): 0.6 mm inwards\n- 13 (upper right canine): 0.6 mm outwards\n",
        ),
        (
            "what goes beyond a clause that is met otherwise",
            [Unasked("along", "35", "mm", -1.3, 1.0, 0.1, "m1")],
            "1.3 mm distally, 0.3 mm beyond m1\n",
        ),
        (
            "the gap at the back",
            [Unasked("posterior-open-bite", "", "mm", 0.8, 0.0, 0.1)],
            "- back teeth: 0.8 mm further apart than at the start\n",
        ),
        (
            "what the order itself needs",
            [Unasked("vertical", "46", "mm", -1.0, 0.0, 0.1, doing="prescription")],
            "1.0 mm of intrusion; the order cannot be met without it\n",
        ),
        (
            "of which it needs some",
            [Unasked("vertical", "46", "mm", -2.0, 0.0, 0.1, doing="prescription", nearer=1.25)],
            "2.0 mm of intrusion; the order needs some of it, but could be met as far with 1.25 mm less\n",
        ),
        ("nothing", [], "As ordered."),
    ],
)
def test_what_moved_unasked_is_told_in_few_lines(sentence, moved, words):
    every = {one: {"outcome": "met"} for one in ("g4", "v1", "v2", "r1")}
    assert (sentence, words in told(review(order(), unasked=moved, **every))) == (sentence, True)


@pytest.mark.parametrize(
    "sentence, measured, words",
    [
        (
            "stated otherwise",
            line("overjet", 3.0, 2.1, claimed=2.5, agrees=False),
            "- overjet: stated 2.5 mm, its movements give 2.1 mm (tolerance 0.2 mm)",
        ),
        ("stated alike", line("overjet", 3.0, 2.4, claimed=2.5, agrees=True), None),
        (
            "not to be compared",
            line("overjet", None, -0.4, claimed=2.5, is_change=True),
            "- stated, but not to be compared: overjet",
        ),
        ("not stated", line("overjet", 3.0, 2.4), None),
    ],
)
def test_a_claim_is_held_against_the_movements(sentence, measured, words):
    text = told(review(order(), measures=[measured]))
    shown = "What the laboratory states otherwise" in text
    assert (sentence, shown, words is None or words in text) == (sentence, words is not None, True)


def test_a_met_clause_outside_its_bounds_says_within_the_tolerance():
    near = part("overjet", "", "mm", (2.0, 4.0), 4.08, before=3.0)
    assert "overjet within 1.0 mm: 3.0 mm → 4.08 mm, within the tolerance\n" in told(
        review(order(), k1=fulfilled(near))
    )


LEANING = [
    (4.3, (-1.5, -0.5), "3.0 mm → 4.3 mm by the movements, 2.8 to 3.8 mm with what is counted on"),
    ((4.2, 4.4), (-1, -1), "3.0 mm → 4.2 to 4.4 mm by the movements, 3.2 to 3.4 mm with what is counted on"),
    (-0.5, (2.5, 2.5), "lower incisors in front of the upper) by the movements, 2.0 mm with what is counted on"),
]


@pytest.mark.parametrize("end, change, words", LEANING)
def test_a_met_clause_that_leans_on_growth_says_what_it_comes_to_with_it(end, change, words):
    leaning = replace(part("overjet", "", "mm", (2.0, 4.0), end, before=3.0), why="expected", counted_on=Span(*change))
    text = told(review(order(), k1=fulfilled(leaning)))
    assert words in text
    assert "As ordered." not in text
    assert "1 clause is met only with changes that are counted on" in text


def test_a_claim_that_a_finding_tells_is_not_told_twice():
    off_by = line("overjet", 3.0, 2.1, claimed=2.5, agrees=False)
    finding = Finding("prediction-differs", Severity.ASK, "/predicted/0")
    assert [list(claims(review(order(), measures=[off_by], findings=found))) != [] for found in ((), (finding,))] == [
        True,
        False,
    ]


def test_of_what_was_not_measured_the_change_is_never_told_as_where_it_ends():
    measures = [line("molar-relation-right", None, 0.2, is_change=True), line("overjet", 3.0, 2.0)]
    assert list(table(measures, 100)) == [
        "                      before        after      change",
        "right molar relation  not measured  not known  0.2 mm towards Class II",
        "overjet               3.0 mm        2.0 mm     1.0 mm less",
    ]
    assert "not measured → a change of 0.2 mm towards Class II" in " ".join(" ".join(table(measures, 40)).split())


def test_a_rotation_that_grows_is_not_told_as_left_of_itself():
    grown = part("rotation-left", "33", "deg", (0.0, 5.0), 44.3, before=30.0)
    assert delivered(grown, "goals", Align(id="g1", strength="must", align=("33",))) == "rotation of 30.0° made 44.3°"


def test_what_is_said_of_one_tooth_stands_in_one_line():
    parts = [part("out", "43", "mm", (0.0, 0.0), -0.4), part("vertical", "43", "mm", (0.0, 0.0), 0.6)]
    hold = Hold(id="k1", strength="must", hold=("43",))
    assert list(grouped(parts, "keep", hold)) == ["43 (lower right canine): 0.4 mm inwards; 0.6 mm of extrusion"]


@pytest.mark.parametrize(
    "measure, span, told",
    [
        # Left of the patient is +, so nothing below -0.5 mm is no further to the right than that.
        ("lower-midline", Span(-0.5, None), "no further than 0.5 mm to the patient's right"),
        ("lower-midline", Span(None, -0.5), "at least 0.5 mm to the patient's right"),
        ("lower-midline", Span(0.5, None), "at least 0.5 mm to the patient's left"),
        ("overjet", Span(2.5, None), "at least 2.5 mm"),
        ("overjet", Span(None, 2.5), "at most 2.5 mm"),
    ],
)
def test_one_end_of_a_measure_with_sides_is_told_from_the_middle(measure, span, told):
    assert reached(measure, span, "mm", is_change=False) == told
