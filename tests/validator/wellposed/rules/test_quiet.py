"""What is in order passes with notes alone, and where nothing is left to reach, leaving the teeth is an option."""

import json

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, found, must
from tests.validator.wellposed.rules.stories import LOWER_FRONT, moved, order, patient, problem, teeth_of

from wellposed.check import check
from wellposed.derive.cephalometric import planned_interincisal
from wellposed.findings import Severity
from wellposed.model import Prescription
from wellposed.render.text import text

# Nanda: overbite and overjet 2 to 4 mm; Class I within a quarter of a unit; midlines within 2 mm; Steiner 1953: the
# interincisal angle 131 degrees, Mills 1970: 135 with a standard deviation of 10.
USUAL = {
    "overbite": 3,
    "overjet": 2.5,
    "upper-crowding": 0,
    "lower-crowding": 0,
    "upper-midline": 0,
    "lower-midline": 0,
    **{f"{tooth}-relation-{side}": 0 for tooth in ("molar", "canine") for side in ("right", "left")},
}
ANGLES = {"interincisal-angle": 131, "lower-incisor-to-mandibular-plane": 92}
INSIDE = (125, 145)
OPTION = "the teeth as they are is one option to discuss"


def asked(*more, without=(), **sections):
    """An order for a man of 29 in whom all is usual but for what is given."""
    usual = {name: value for name, value in {**USUAL, **ANGLES}.items() if name not in without}
    measured = [found(f"u{n}", name, usual[name], "deg" if name in ANGLES else "mm") for n, name in enumerate(usual, 1)]
    attachments = sections.pop("attachments", [{"id": "t9", "otherwise": "laboratory-decides"}])
    return order(
        patient=patient(29, "male"), findings=[*measured, *more], attachments=attachments, **{"goals": [], **sections}
    )


def turned(**values):
    """Teeth that are turned, deg."""
    return {**teeth_of("rotation", "f1", **values), "unit": "deg"}


KEPT = [must("k1", measure="overbite", within=0.5, unit="mm")]
REDUCED = {"contacts": LOWER_FRONT, "per_contact": 0.3, "in_all": 1.5, "unit": "mm", "because": ["p1"]}
QUIET = {
    "a lower incisor turned by 8 degrees": asked(
        turned(_31=-8),
        problems=[problem("p1", "rotated-teeth", "f1", teeth=["31"])],
        movements=[moved("m1", ["31"], "mesiolingual-rotation", 6, "p1", unit="deg", at_most=8)],
        keep=KEPT,
    ),
    "a lower front short of 1.5 mm": asked(
        found("f1", "lower-crowding", 1.5),
        without=("lower-crowding",),
        problems=[problem("p1", "crowding", "f1", arch="lower")],
        goals=[must("g1", align=["43", "42", "41", "31", "32", "33"], because=["p1"])],
        allow=[allowed("a1", "enamel-reduction", **REDUCED)],
        keep=KEPT,
    ),
    "upper incisors tipped back by 8 degrees": asked(
        found("f1", "upper-incisor-to-palatal-plane", 101, "deg"),
        found("f2", "interincisal-angle", 142, "deg"),
        without=("interincisal-angle",),
        problems=[problem("p1", "retroclined-incisors", "f1", "f2", arch="upper")],
        movements=[
            moved("m1", ["12", "11", "21", "22"], "labial-crown-torque", 5, "p1", unit="deg", at_most=8),
        ],
        attachments=[{"id": "t1", "must": ["12", "11", "21", "22"], "reason": "movement"}],
    ),
    "a gap of 1 mm between the upper central incisors": asked(
        found("f1", "upper-spacing", 1, contacts=["11-21"]),
        without=("upper-crowding",),
        problems=[problem("p1", "spacing", "f1", arch="upper")],
        goals=[must("g1", close_arch="upper", because=["p1"])],
        allow=[allowed("a1", "incisor-retraction", arch="upper", up_to=1, unit="mm", because=["p1"])],
        keep=KEPT,
    ),
}
MET = must("g1", measure="overjet", at_least=2, at_most=4, unit="mm")
FRONT = ["13", "12", "11", "21", "22", "23"]
SETTLED = {
    "no goal, and nothing out of range": asked(),
    "an overjet that is where it is wanted": asked(goals=[MET]),
    "two goals, both met, and a means": asked(
        goals=[MET, must("g2", close_arch="lower")],
        allow=[allowed("a1", "incisor-retraction", arch="upper", up_to=1, unit="mm")],
    ),
    "teeth in line that are in line": asked(goals=[must("g1", align=FRONT)]),
    "a goal that is met beside an overbite that is deep": asked(
        found("f1", "overbite", 5.5), without=("overbite",), goals=[MET]
    ),
}
UNSETTLED = {
    "a goal that is open": asked(goals=[MET, must("g2", measure="overbite", at_most=2, unit="mm")]),
    "an arch to be levelled": asked(found("f1", "curve-of-spee", 4), goals=[must("g1", level="lower")]),
    "a turned tooth to come into line": asked(turned(_12=-20), goals=[must("g1", align=FRONT)]),
    "a tooth off the line to come into it": asked(
        teeth_of("displacement", "f1", _12=-1.5), goals=[must("g1", align=FRONT)]
    ),
    "a tooth stated to be turned": asked(
        problems=[problem("p1", "rotated-teeth", teeth=["12"])], goals=[must("g1", align=FRONT)]
    ),
}


def report(document):
    return check(json.dumps(document).encode())


def told(document):
    return " ".join(text(report(document), "order").split())


@pytest.mark.parametrize("setting", QUIET)
def test_what_the_measurements_justify_gives_notes_alone(setting):
    made = report(QUIET[setting])
    assert made.verdict == "possible"
    assert [one.rule for one in made.findings if one.severity != Severity.NOTE] == []


@pytest.mark.parametrize("setting", QUIET)
def test_and_the_incisors_end_within_the_published_norm(setting):
    plan = planned_interincisal(Prescription.model_validate(QUIET[setting]))
    assert INSIDE[0] <= plan.low <= plan.high <= INSIDE[1]


@pytest.mark.parametrize("setting", SETTLED)
def test_where_nothing_is_left_to_reach_leaving_the_teeth_is_named_once(setting):
    assert told(SETTLED[setting]).count(OPTION) == 1


@pytest.mark.parametrize("setting", UNSETTLED)
def test_and_where_something_is_it_is_not_named(setting):
    assert told(UNSETTLED[setting]).count(OPTION) == 0
