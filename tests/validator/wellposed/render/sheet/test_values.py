"""What the drawings show, against values worked out by hand."""

import json
from dataclasses import replace

import pytest
from tests.validator.wellposed.render.sheet.cases import made, setup_for

from wellposed.check import sound, sound_document
from wellposed.derive.space import budget
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.translate import Translation
from wellposed.render.sheet import history_sheet, review_sheet
from wellposed.render.sheet.budget import budget_words
from wellposed.render.sheet.callouts import spread
from wellposed.render.sheet.chart import arch_chart
from wellposed.render.sheet.drawing import number
from wellposed.render.sheet.gauges import Bounds, Gauge, gauge, reached
from wellposed.render.sheet.ordered import ordered
from wellposed.render.sheet.page import Words
from wellposed.render.sheet.parts import room, scale_words
from wellposed.render.sheet.planned import Planning, planned
from wellposed.render.sheet.values import told_of
from wellposed.review import review
from wellposed.review.plan import Plan
from wellposed.review.result import MeasureLine, Nearer, SetupReview, Span
from wellposed.revisions.history import history


def must(name, **what):
    return {"id": name, "strength": "must", **what}


def found(name, measure, value, unit="mm"):
    return {"id": name, "measure": measure, "value": value, "unit": unit}


def tooth(name, **changes):
    """One tooth of the drawing of an order."""
    order = sound(made(**changes))
    arch = "upper" if name[0] in "12" else "lower"
    return next(one for one in ordered(Translation(Mouth(order)), arch).teeth if one.tooth == name)


MOVED = must("m1", teeth=["16"], motion="distal", at_least=1, at_most=1.5, unit="mm")


@pytest.mark.parametrize(
    "sentence, name, changes, standing",
    [
        ("an align names it", "31", {}, "moves"),
        ("a movement names it", "16", {"movements": [MOVED]}, "moves"),
        ("nothing names it", "17", {}, "silent"),
        ("a hold does", "17", {"keep": [must("k1", hold=["17"])]}, "held"),
        ("its arch is not treated", "17", {"treat": {"arches": "lower"}}, "held"),
        ("an implant cannot move", "17", {"teeth_states": ["implant"]}, "fixed"),
        ("it is taken out", "14", {"allow": [{"id": "a1", "use": "extraction", "teeth": ["14"]}]}, "gone"),
        (
            "an allowance names it",
            "36",
            {"allow": [{"id": "a1", "use": "distal-movement", "arch": "lower", "up_to": 1, "unit": "mm"}]},
            "may",
        ),
    ],
)
def test_how_a_tooth_stands(sentence, name, changes, standing):
    changes = dict(changes)
    states = changes.pop("teeth_states", None)
    if states:
        upper, lower = (list(getattr(sound(made()).teeth, arch)) for arch in ("upper", "lower"))
        changes["teeth"] = {"upper": upper, "lower": lower, "particulars": [{"tooth": name, "states": states}]}
    assert (sentence, tooth(name, **changes).standing) == (sentence, standing)


def test_what_is_ordered_of_a_tooth_is_said_and_drawn_its_way():
    one = tooth("16", movements=[MOVED])
    assert one.lines == ("distal 1 to 1.5 mm",)
    assert one.way == (-1, 0)  # distal of a right tooth is towards the patient's right
    assert tooth("26", movements=[{**MOVED, "teeth": ["26"]}]).way == (1, 0)


@pytest.mark.parametrize(
    "sentence, bounds, said",
    [
        ("both ends", {"at_least": 1, "at_most": 1.5}, "intrusion 1 to 1.5 mm"),
        ("from below", {"at_least": 1}, "intrusion 1 mm or more"),
        ("from above", {"at_most": 1.5}, "intrusion up to 1.5 mm"),
        ("exactly", {"at_least": 1, "at_most": 1}, "intrusion 1 mm"),
    ],
)
def test_the_bounds_of_a_movement(sentence, bounds, said):
    moved = must("m1", teeth=["11"], motion="intrusion", unit="mm", **bounds)
    one = tooth("11", movements=[moved])
    assert (sentence, one.lines[0], one.vertical) == (sentence, said, -1)


def test_a_rotation_turns_the_mesial_side_in():
    turned = must("m1", teeth=["13", "23"], motion="mesiolingual-rotation", at_least=5, unit="deg")
    assert [tooth(name, movements=[turned]).turns for name in ("13", "23")] == [1, -1]


def test_a_displaced_and_turned_tooth_is_drawn_so():
    values = [
        {"id": "d1", "tooth_measure": "displacement", "values": {"12": -1.5}, "unit": "mm"},
        {"id": "r1", "tooth_measure": "rotation", "values": {"12": 20, "22": 20}, "unit": "deg"},
    ]
    assert tooth("12", findings=values, goals=[], keep=[]).today == (0.0, -1.5, 20.0)
    assert tooth("22", findings=values, goals=[], keep=[]).today == (0.0, 0.0, -20.0)


def test_how_a_tooth_stands_out_of_line_is_told_in_words_too():
    values = [
        {"id": "d1", "tooth_measure": "displacement", "values": {"12": -1.5}, "unit": "mm"},
        {"id": "r1", "tooth_measure": "rotation", "values": {"12": 20, "22": -15}, "unit": "deg"},
    ]
    changes = {"findings": values, "goals": [], "keep": []}
    assert tooth("12", **changes).lines[:2] == ("stands 1.5 mm in", "turned 20°, mesial in")
    assert tooth("22", **changes).lines[:1] == ("turned 15°, distal in",)


def test_reduction_stands_at_its_contacts():
    order = sound(made())
    lower = ordered(Translation(Mouth(order)), "lower")
    names = [(lower.teeth[one.first].tooth, lower.teeth[one.second].tooth, one.words) for one in lower.contacts]
    expected = [("32", "33"), ("31", "32"), ("41", "31"), ("42", "41"), ("43", "42")]
    assert sorted(names) == sorted((a, b, "0.4") for a, b in expected)


# a setup

OUT = {"allow": [{"id": "a1", "use": "extraction", "teeth": ["14"]}], "goals": [], "attachments": []}


def planned_tooth(name, moved, **more):
    """One tooth of the drawing of a setup that moves teeth so: tooth to mm outwards."""
    order = sound(made(**OUT))
    given = json.loads(setup_for(order, dense=False))
    for member in ("extractions", "unlisted"):
        del given[member]
    given |= {"movements": [{"variable": "out", "unit": "mm", "values": moved}], "attachments": [], **more}
    setup = sound_document(json.dumps(given).encode())
    case = Planning(Mouth(order), Plan(setup), review(order, setup))
    return next(one for one in planned(case, "upper").teeth if one.tooth == name)


@pytest.mark.parametrize(
    "sentence, name, more, standing",
    [
        ("it moves", "11", {}, "moves"),
        ("the setup does not say", "12", {}, "unsaid"),
        ("it says that what is not listed is unmoved", "12", {"unlisted": "unmoved"}, "silent"),
        ("extracted by the order, and nothing said of it", "14", {}, "gone"),
        ("extracted by both", "14", {"extractions": ["14"]}, "gone"),
        ("the setup keeps it", "14", {"extractions": []}, "unsaid"),
        ("the setup takes another", "24", {"extractions": ["24"]}, "gone"),
    ],
)
def test_how_a_tooth_stands_in_a_setup(sentence, name, more, standing):
    assert (sentence, planned_tooth(name, {"11": -1.0}, **more).standing) == (sentence, standing)


def test_the_history_tells_what_moved_unasked_setup_by_setup():
    """Nothing of the order opens 17; what it allows at the lower front opens nothing of it either."""
    first = made()
    given = [("1.json", first)]
    for name, size in (("SU-77", 0.6), ("SU-78", 0.05)):  # the second within the tolerance
        moved = {"id": name, "movements": [{"variable": "out", "unit": "mm", "values": {"17": size}}]}
        setup = json.loads(setup_for(sound(first), dense=False)) | moved | {"attachments": [], "predicted": []}
        given.append((f"{name}.json", json.dumps(setup).encode()))
    page = history_sheet(history(given, review).cases[0])
    section = next(one for one in page.sections if one.heading == "What moved though nothing opened it")
    assert section.blocks[0].rows == (
        ("SU-77, revision 1", "revision 1 of the order", "17 (upper right second molar): 0.6 mm outwards"),
        ("SU-78, revision 1", "revision 1 of the order", "nothing"),
    )


def test_what_is_drawn_at_contacts_and_on_teeth_is_told_in_words_too():
    lower = arch_chart(ordered(Translation(Mouth(sound(made()))), "lower")).desc
    assert "42-41: enamel off, at most 0.4 mm." in lower
    order = sound(made())
    given = json.loads(setup_for(order, dense=False)) | {"movements": [], "attachments": [{"tooth": "33"}]}
    given["reductions"] = [{"contact": "41-31", "amount": 0.2, "unit": "mm"}]
    setup = sound_document(json.dumps(given).encode())
    drawn = arch_chart(planned(Planning(Mouth(order), Plan(setup), review(order, setup)), "lower"), planned=True).desc
    assert "41-31: enamel off, 0.2 mm." in drawn
    assert [one for one in drawn if "carries an attachment" in one and one.startswith("33 ")] != []


def test_a_clause_no_setup_can_meet_says_too_what_another_setup_could_have_done():
    order = sound(made())
    setup = sound_document(setup_for(order, dense=False))
    told = review(order, setup)
    first = replace(told.clauses[0], outcome="not-met", doing="prescription", nearer=Nearer(0.4, "mm"))
    page = review_sheet(order, setup, replace(told, clauses=(first, *told.clauses[1:])))
    table = next(one for one in page.sections if one.heading == "Clause by clause").blocks[0]
    assert table.rows[0][3] == (
        "not met: no setup can meet it\nanother setup could have come 0.4 mm nearer with all else no worse than here"
    )


def test_an_arch_without_teeth_needs_no_room_and_has_no_depth():
    teeth = {"upper": ["13", "12", "11", "21", "22", "23"], "lower": []}
    mouth = Mouth(sound(made(teeth=teeth, treat={"arches": "upper"}, findings=[], goals=[], keep=[], allow=[])))
    assert Words("Lower arch: no teeth in line.") in room(mouth).blocks
    assert "an average depth of the upper arch." in scale_words(mouth)


def test_a_planned_tooth_is_drawn_where_it_goes():
    one = planned_tooth("11", {"11": -1.24})
    assert (one.lines, one.way, one.planned) == (("in 1.2 mm",), (0.0, -1.24), (0.0, -1.24, 0.0))
    assert one.warned == ()  # an extraction opens the way in, and not the way out
    assert planned_tooth("11", {"11": 1.24}).warned == ("not opened",)


# measures


def test_a_measure_today_kept_and_planned():
    """2.5 mm today, kept within 0.5: from 2 to 3."""
    one = gauge(Mouth(sound(made())), "overbite", (2.1, 2.1))
    assert one == Gauge("overbite", 2.5, (Bounds("k1", True, 2.0, 3.0),), (2.1, 2.1))
    assert [told.words for told in told_of(one)] == ["today 2.5 mm", "kept 2.0 to 3.0 mm (k1)", "planned 2.1 mm"]


def test_an_overbite_in_percent_is_drawn_in_mm():
    """40 % of a crown of 8 mm is 3.2 mm; at most 25 % is 2 mm."""
    given = [found("f1", "overbite", 40, "percent"), found("f2", "lower-incisor-crown-height", 8)]
    goal = must("g1", measure="overbite", at_most=25, unit="percent")
    order = sound(made(findings=given, goals=[goal], keep=[], allow=[], attachments=[]))
    assert gauge(Mouth(order), "overbite") == Gauge("overbite", 3.2, (Bounds("g1", False, None, 2.0),))


@pytest.mark.parametrize(
    "sentence, one, words",
    [
        ("to the left", Gauge("upper-midline", 1.0), ["upper today 1.0 mm left"]),
        ("to the right", Gauge("lower-midline", -1.5), ["lower today 1.5 mm right"]),
        ("an open bite", Gauge("overbite", -2.0), ["today -2.0 mm (an open bite)"]),
        ("reverse", Gauge("overjet", -1.0), ["today -1.0 mm (lower incisors in front of the upper)"]),
        ("nothing measured", Gauge("overjet", None), ["today: not stated"]),
        ("a range", Gauge("overbite", None, (), (1.0, 2.0)), ["today: not stated", "planned 1.0 to 2.0 mm"]),
        (
            "counted on",
            Gauge("lower-midline", -2.0, (), None, (Bounds("e1", False, 1.5, 2.0),)),
            ["lower today 2.0 mm right", "lower counted on besides: 1.5 to 2.0 mm left (e1)"],
        ),
        (
            "asked to one side",
            Gauge("upper-midline", None, (Bounds("g1", False, -1.0, -0.5),)),
            ["upper today: not stated", "upper asked 0.5 to 1.0 mm right (g1)"],
        ),
        (
            "a bound on the far side: what lies beyond it is further right, not less",
            Gauge("upper-midline", None, (Bounds("g1", False, -0.5, None),)),
            ["upper today: not stated", "upper asked no further than 0.5 mm right (g1)"],
        ),
        (
            "counted on, and less of it: no value, so no reverse overjet",
            Gauge("overjet", 6.0, (), None, (Bounds("e1", False, -2.0, -2.0),)),
            ["today 6.0 mm", "counted on besides: 2.0 mm less (e1)"],
        ),
        (
            "planned from an open bite to none",
            Gauge("overbite", -1.0, (), (-0.5, 1.0)),
            ["today -1.0 mm (an open bite)", "planned -0.5 mm (an open bite) to 1.0 mm"],
        ),
    ],
)
def test_values_in_words(sentence, one, words):
    assert (sentence, [told.words for told in told_of(one)]) == (sentence, words)


def test_what_a_review_computes_is_what_is_drawn():
    line = MeasureLine("overjet", "", "mm", 3.0, Span(2.0, 2.0), 2.0, None, 0.1, None)
    review = SetupReview(("A", 1), ("S", 1), "possible", (), (), (line,), ())
    assert (reached(review, "overjet"), reached(review, "overbite")) == ((2.0, 2.0), None)


# room: 2 mm of crowding, five contacts at 0.4 mm but 2.0 in all


def test_a_budget_in_words():
    told = budget_words(budget(Mouth(sound(made())), "lower"))
    assert told == (
        "needs: crowding 2.0 mm (f2); may give: enamel reduction up to 2.0 mm (a1); nothing left over, nothing missing."
    )


# placing


@pytest.mark.parametrize(
    "sentence, wanted, heights, tops",
    [
        ("room enough", [0, 10], [5, 5], [0, 10]),
        ("one on the other: half each", [0, 3], [5, 5], [-1, 4]),
        ("three alike", [0, 0, 0], [2, 2, 2], [-2, 0, 2]),
        ("a pool that meets the next", [0, 1, 6], [4, 4, 4], [-5 / 3, 7 / 3, 19 / 3]),
    ],
)
def test_labels_are_spread_as_little_as_can_be(sentence, wanted, heights, tops):
    """Least squares under order, by hand: a pool stands where the mean of what its members want is met."""
    assert (sentence, spread(wanted, heights)) == (sentence, pytest.approx(tops))


@pytest.mark.parametrize("value, text", [(1.0, "1"), (0.126, "0.13"), (-0.001, "0"), (-2.5, "-2.5"), (100.0, "100")])
def test_coordinates_are_short(value, text):
    assert number(value) == text
