"""R6 (units), R8 (basis), R9 (amounts) and slips of the pen; the expected values are those of the reading rules."""

import pytest
from tests.converters.wellposed_converters.text.samples import samples

from wellposed_converters.text.clause import Clause
from wellposed_converters.text.completeness import completeness
from wellposed_converters.text.wording import wording

LOWER = ((43, 42), (42, 41), (41, 31), (31, 32), (32, 33))


def clause(kind, mode="do", value=None, **members):
    amount = {} if value is None else {"minimum": value, "maximum": value}
    return Clause(kind, mode, ((0, 4),), **amount, **members)


def lacks(one, text="none"):
    (full,), questions = completeness([one], text)
    return full, [(question.type, question.asks) for question in questions]


@pytest.mark.parametrize(
    "one, unit",
    [
        (clause("ipr", "limit", 0.3, contacts=LOWER, measure="per_contact"), "mm"),
        (clause("intrude", value=1.0, teeth=(11,), measure="change"), "mm"),
        (clause("extrude", value=1.0, teeth=(11,), measure="change"), "mm"),
        (clause("archwidth", value=1.0, arch="upper", dir="expand", measure="per_side"), "mm"),
        (clause("space", value=7.0, teeth=(12,), dir="leave", measure="target"), "mm"),
        (clause("midline", "state", 2.0, arch="lower", measure="current"), "mm"),
        (clause("overjet", "state", 3.0, measure="current"), "mm"),
        (clause("rotate", value=10.0, teeth=(12,), dir="mesial_in", measure="change"), "deg"),
        (clause("tip", value=4.0, teeth=(33,), dir="distal_crown", measure="change"), "deg"),
        (clause("torque", value=6.0, teeth=(22,), dir="labial_root", measure="change"), "deg"),
        (clause("staging", "limit", 0.2, of="movement_per_step", measure="step"), "mm"),
        (clause("overbite", value=2.0, measure="target"), "mm"),
        (clause("overbite", value=7.9, measure="target"), "mm"),
        (clause("overbite", value=14.1, measure="target"), "pct"),
        (clause("overbite", "state", 50.0, measure="current"), "pct"),
    ],
)
def test_r6_a_missing_unit_is_the_kinds_own_and_marked(one, unit):
    full, asked = lacks(one)
    assert (full.unit, full.inferred, full.pending, asked) == (unit, ("unit",), (), [])


@pytest.mark.parametrize(
    "one",
    [
        clause("overbite", value=8.0, measure="target"),
        clause("overbite", value=10.0, measure="target"),
        clause("overbite", value=14.0, measure="target"),
        clause("incline", value=5.0, teeth=(11, 21), dir="procline", measure="change"),
        clause("move", value=2.0, teeth=(13,), dir="distal", measure="change"),
    ],
)
def test_r6_a_unit_that_nothing_settles_is_asked(one):
    full, asked = lacks(one)
    assert (full.unit, full.pending, asked) == (None, ("unit",), [("missing_unit", "which-unit")])


def test_a_written_unit_and_a_count_of_steps_are_left_alone():
    steps = clause("staging", "limit", 8.0, of="steps", measure="count")
    written = clause("overbite", value=10.0, measure="target", unit="mm")
    assert lacks(steps) == (steps.with_(unit="count"), [])
    assert lacks(written) == (written, [])


@pytest.mark.parametrize(
    "one",
    [
        clause("overbite"),
        clause("overjet"),
        clause("midline", arch="lower"),
        clause("archwidth", arch="upper", dir="expand"),
        clause("space", teeth=(12,), dir="open"),
        clause("intrude", teeth=(11,)),
        clause("extrude", teeth=(11,)),
        clause("move", teeth=(13,), dir="mesial"),
        clause("move", teeth=(13,), dir="distal"),
        clause("torque", teeth=(12,), dir="labial_root"),
        clause("incline", teeth=(12,), dir="procline"),
        clause("ipr", contacts=LOWER),
        clause("ipr", "permit", condition="prn"),
        clause("ipr", "limit", minimum=0.1, measure="per_contact", unit="mm", contacts=LOWER),
        clause("archwidth", "permit", arch="upper", dir="expand"),
        clause("overjet", "prefer"),
    ],
)
def test_r9_a_change_without_amount_or_target_is_asked(one):
    full, asked = lacks(one)
    assert full == one.with_(pending=("amount",))
    assert [kind for kind, _ in asked] == ["missing_amount"]


@pytest.mark.parametrize(
    "one",
    [
        clause("align", teeth=(11, 21)),
        clause("rotate", teeth=(12,), dir="derotate"),
        clause("space", contacts=LOWER, dir="close"),
        clause("crossbite", teeth=(15, 45), dir="correct"),
        clause("openbite", dir="close", of="anterior"),
        clause("intrude", teeth=(42, 41, 31, 32), of="means"),
        clause("move", teeth=(42, 31, 32), of="means"),
        clause("tip", teeth=(33,), dir="upright"),
        clause("tip", teeth=(13, 11), dir="root_upright", of="parallel_roots"),
        clause("midline", arch="lower", ref="upper_midline"),
        clause("attachment", teeth=(13,)),
        clause("attachment", "permit"),
        clause("ipr", "forbid", arch="both"),
        clause("overjet", "keep"),
        clause("overbite", "state", of="complete_to_tooth"),
        clause("incline", "forbid", teeth=(11,), dir="procline"),
        clause("incline", value=90.0, teeth=(41, 31), measure="target", unit="deg", ref="mandibular_plane"),
        clause("overbite", pending=("amount",)),
    ],
)
def test_r9_what_needs_no_amount_is_left_alone(one):
    assert lacks(one) == (one, [])


@pytest.mark.parametrize(
    "one, pending, asks",
    [
        (clause("torque", value=5.0, unit="deg", teeth=(12,), measure="change"), ("dir",), "which-way"),
        (clause("rotate", value=20.0, unit="deg", teeth=(12,), measure="change"), ("dir",), "which-way"),
        (clause("rotate", teeth=(12,)), ("amount", "dir"), "which-way-and-how-much"),
        (clause("tip", teeth=(12,)), ("amount", "dir"), "which-way-and-how-much"),
    ],
)
def test_a_direction_that_is_not_said_is_asked_once(one, pending, asks):
    full, asked = lacks(one)
    assert (full.pending, asked) == (pending, [("missing_amount", asks)])


@pytest.mark.parametrize("mode", ["do", "limit", "permit"])
@pytest.mark.parametrize("place", [{"contacts": LOWER}, {"arch": "lower"}, {"pending": ("contacts",)}])
def test_r8_enamel_reduction_at_several_contacts_needs_its_basis(mode, place):
    full, asked = lacks(clause("ipr", mode, 0.5, unit="mm", **place))
    assert full.pending == (*place.get("pending", ()), "measure")
    assert asked == [("reference", "per-contact-or-total")]


def test_r8_one_contact_has_one_basis_and_a_written_basis_stays():
    one = clause("ipr", value=0.3, contacts=((41, 31),), unit="mm")
    written = clause("ipr", value=1.5, contacts=LOWER, measure="total", unit="mm")
    assert lacks(one) == (one.with_(measure="per_contact"), [])
    assert lacks(written) == (written, [])


def test_a_width_is_per_side_or_in_total():
    full, asked = lacks(clause("archwidth", value=2.0, unit="mm", arch="upper", dir="expand"))
    assert (full.pending, asked) == (("measure",), [("reference", "per-side-or-total")])


def test_enamel_reduction_and_extraction_need_a_place():
    ipr, asked = lacks(clause("ipr", value=0.2, unit="mm", measure="per_contact"))
    assert (ipr.pending, asked) == (("contacts",), [("teeth", "ipr-where")])
    extraction, asked = lacks(clause("extraction", "permit"))
    assert (extraction.pending, asked) == (("teeth",), [("teeth", "extraction-of-which")])
    attachment, asked = lacks(clause("attachment", "prefer"))
    assert (attachment.pending, asked) == (("teeth",), [("teeth", "which-teeth")])
    everywhere = clause("ipr", "limit", maximum=0.3, unit="mm", measure="per_contact")
    assert lacks(everywhere) == (everywhere, [])


@pytest.mark.parametrize(
    "text, approx",
    [
        ("intrude 11 about 1,5 mm", True),
        ("intrude 11 ~1.5 mm", True),
        ("intrude 11 by 1.5 mm or so", True),
        ("intrude 11 1.5 mm-ish", True),
        ("intrude 11 by 1.5 mm", False),
        ("the space around 12: intrude 11 1.5 mm", False),
        ("intrude 11 1.5 mm, roundabout 2", False),
    ],
)
def test_about_beside_the_number_makes_it_approximate(text, approx):
    one = clause("intrude", value=1.5, unit="mm", teeth=(11,), measure="change").with_(spans=((0, len(text)),))
    assert lacks(one, text) == (one.with_(approx=approx), [])


@pytest.mark.parametrize(
    "one",
    [
        clause("ipr", value=5.0, unit="mm", contacts=((41, 31),), measure="per_contact"),
        clause("ipr", "limit", maximum=3.0, unit="mm", contacts=LOWER, measure="per_contact"),
        clause("rotate", value=300.0, unit="deg", teeth=(12,), dir="mesial_in", measure="change"),
        clause("intrude", value=12.0, unit="mm", teeth=(11,), measure="change"),
        clause("intrude", value=0.0, unit="mm", teeth=(11,), measure="change"),
        clause("staging", "limit", maximum=900.0, of="steps", unit="count", measure="count"),
    ],
)
def test_an_amount_that_is_likely_a_slip_is_asked(one):
    full, asked = lacks(one)
    assert (full, asked) == (one, [("implausible", "slip")])


@pytest.mark.parametrize(
    "one",
    [
        clause("ipr", value=0.5, unit="mm", contacts=((41, 31),), measure="per_contact"),
        clause("rotate", value=60.0, unit="deg", teeth=(12,), dir="mesial_in", measure="change"),
        clause("overjet", value=0.0, unit="mm", measure="target"),
        clause("incline", value=110.0, unit="deg", teeth=(11, 21), measure="target", ref="maxillary_plane"),
    ],
)
def test_an_unusual_amount_is_no_slip(one):
    assert lacks(one) == (one, [])


def test_a_minus_is_asked_about():
    assert lacks(clause("overjet", "state", -2.0, unit="mm", measure="current"))[1] == [("meaning", "minus-sign")]


def test_questions_point_at_their_clause_and_its_words():
    text = "Keep OB. IPR prn"
    clauses = [clause("overbite", "keep"), clause("ipr", "permit", condition="prn").with_(spans=((9, 16),))]
    _, (question,) = completeness(clauses, text)
    assert (question.concerns, question.spans) == ((1,), ((9, 16),))
    assert "IPR prn" in wording(question, clauses, text)


@pytest.mark.parametrize("record, clauses", samples())
def test_what_the_samples_expect_is_complete_or_asked_about(record, clauses):
    full, questions = completeness(clauses, record["text"])
    assert full == tuple(clauses)
    assert questions == ()


@pytest.mark.parametrize("record, clauses", samples())
def test_units_that_the_samples_infer_are_filled_again(record, clauses):
    bare = [
        one.with_(unit=None, inferred=tuple(name for name in one.inferred if name != "unit"))
        if "unit" in one.inferred
        else one
        for one in clauses
    ]
    full, questions = completeness(bare, record["text"])
    assert [one.unit for one in full] == [one.unit for one in clauses]
    assert questions == ()
