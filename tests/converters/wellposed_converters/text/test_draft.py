"""Clauses to the format. The expected members are written by hand from spec/prescription.md and spec/semantics.md."""

import hashlib
import json
import re
from pathlib import Path

import pytest

from wellposed.check import check
from wellposed.vocabulary.teeth import PERMANENT_TEETH, arch_of
from wellposed_converters.text.clause import Clause, Question, quoted
from wellposed_converters.text.draft import NotFinished, answered, draft, finish, part, restored
from wellposed_converters.text.draft.data import data
from wellposed_converters.text.draft.drafting import ENVELOPE
from wellposed_converters.text.draft.makers import ADMINISTRATIVE

CORPUS = Path(__file__).parent / "corpus"
NAMES = {"class": "relation", "min": "minimum", "max": "maximum", "if": "condition"}
UPPER_FRONT = (13, 12, 11, 21, 22, 23)
LOWER_FRONT = ((43, 42), (42, 41), (41, 31), (31, 32), (32, 33))
LOWER_NAMES = ["43-42", "42-41", "41-31", "31-32", "32-33"]


def gold_clause(entry):
    """A clause of the samples."""
    said = {NAMES.get(name, name): value for name, value in entry.items() if name != "quote"}
    for name in said.keys() & {"teeth", "inferred", "pending"}:
        said[name] = tuple(said[name])
    for name in said.keys() & {"contacts", "links", "spans"}:
        said[name] = tuple(map(tuple, said[name]))
    return Clause(**said)


def gold_question(entry):
    spans = tuple(map(tuple, entry["spans"]))
    return Question(entry["type"], entry["type"], spans, tuple(entry.get("options", ())), tuple(entry.get("for", ())))


def gold():
    for name in ("samples", "ordinary", "adversarial"):
        path = CORPUS / f"{name}.jsonl"
        for line in path.read_text("utf-8").splitlines() if path.exists() else ():
            sample = json.loads(line)
            clauses = [gold_clause(entry) for entry in sample["expected"]]
            questions = [gold_question(entry) for entry in sample["ask"]]
            yield pytest.param(sample["text"], clauses, questions, id=sample["id"])


GOLD = list(gold())


def one(kind, mode, /, **members):
    return Clause(kind, mode, ((0, 4),), **members)


def exactly(value, unit="mm", measure="change", **members):
    return {"minimum": value, "maximum": value, "unit": unit, "measure": measure, **members}


def at_most(value, unit="mm", measure="change", **members):
    return {"maximum": value, "unit": unit, "measure": measure, **members}


def drafted(*clauses):
    return draft("note", clauses, ())


def entries(made):
    """Section and members of every entry, the ids and the strength ``must`` left out."""
    found = []
    for section, value in made.document.items():
        for entry in value if isinstance(value, list) else [value]:
            kept = {name: what for name, what in entry.items() if name != "id" and what != "must"}
            found.append((section, kept))
    return found


@pytest.mark.parametrize("text, clauses, questions", GOLD)
def test_every_clause_is_in_exactly_one_account(text, clauses, questions):
    made = draft(text, clauses, questions)
    carried = {at for source in made.sources.values() for at in source["clauses"]}
    left = {entry.clause for entry in made.uncarried}
    administrative = {at for at, clause in enumerate(clauses) if clause.kind in ADMINISTRATIVE}
    assert set(made.administrative) == administrative
    assert not carried & left
    assert not (carried | left) & administrative
    assert carried | left | administrative == set(range(len(clauses)))


@pytest.mark.parametrize("text, clauses, questions", GOLD)
def test_what_is_not_carried_is_noted_whole_and_asked_about(text, clauses, questions):
    made = draft(text, clauses, questions)
    asked = {at for question in made.questions for at in question["for"]}
    for entry in made.uncarried:
        notes = "".join(made.document["notes"][int(pointer.rpartition("/")[2])]["text"] for pointer in entry.pointers)
        assert notes == quoted(text, clauses[entry.clause].spans)
        assert entry.clause in asked


@pytest.mark.parametrize("text, clauses, questions", GOLD)
def test_no_member_of_a_clause_is_lost(text, clauses, questions):
    """Each member added to a clause changes the draft, unless the clause is carried in its own words."""
    base = draft(text, clauses, questions)
    told = {at for at in range(len(clauses)) if in_its_own_words(base, text, clauses, at)}
    told |= {entry.clause for entry in base.uncarried}
    marks = {
        "side": "right",
        "ref": "x",
        "of": "x",
        "dir": "x",
        "links": ((13, 43),),
        "only": True,
        "condition": "if x",
    }
    for at, clause in enumerate(clauses):
        if clause.kind in ADMINISTRATIVE or at in told or clause.pending:
            continue
        amount = {"approx": True} if clause.maximum or clause.minimum else {}
        amount |= {"max_open": True} if clause.maximum and not clause.minimum else {}
        for name, value in (marks | amount).items():
            # where another clause excludes the other arch, "only" says no more
            if getattr(clause, name) in (None, (), False) and (clause.kind, name) != ("scope", "only"):
                changed = [*clauses[:at], clause.with_(**{name: value}), *clauses[at + 1 :]]
                made = draft(text, changed, questions)
                assert outcome(made) != outcome(base), (at, name)


def outcome(made):
    return made.document, made.assumed, made.questions


def in_its_own_words(made, text, clauses, at):
    words = " ".join(quoted(text, clauses[at].spans).split())
    placed = [pointer for pointer, source in made.sources.items() if at in source["clauses"]]
    return any(value_at(made.document, pointer).get("words") == words for pointer in placed if pointer.count("/") > 1)


def value_at(document, pointer):
    for step in pointer.split("/")[1:]:
        document = document[int(step)] if isinstance(document, list) else document.get(step, {})
    return document if isinstance(document, dict) else {}


FINDINGS = [
    (
        one("overbite", "state", **exactly(70, "pct", "current")),
        {"measure": "overbite", "value": 70, "unit": "percent"},
    ),
    (
        one("overjet", "state", of="reverse", **exactly(2, measure="current")),
        {"measure": "overjet", "value": -2, "unit": "mm"},
    ),
    # prescription.md, measures: a negative overbite is an open bite; a midline is positive to the patient's left
    (
        one("openbite", "state", of="anterior", **exactly(2, measure="current")),
        {"measure": "overbite", "value": -2, "unit": "mm"},
    ),
    (
        one(
            "midline", "state", arch="upper", dir="patient_right", ref="facial_midline", **exactly(1, measure="current")
        ),
        {"measure": "upper-midline", "value": -1, "unit": "mm"},
    ),
    (
        one("crowding", "state", arch="lower", **exactly(1.5, measure="current")),
        {"measure": "lower-crowding", "value": 1.5, "unit": "mm"},
    ),
    (
        one("space", "state", contacts=((11, 21),), of="diastema", **exactly(2, measure="current")),
        {"measure": "upper-spacing", "value": 2, "unit": "mm", "contacts": ["11-21"]},
    ),
    # rotation is positive with the mesial surface towards the tongue: towards the lip it is negative
    (
        one("rotate", "state", teeth=(12,), dir="mesiolabial", **exactly(20, "deg", "current")),
        {"tooth_measure": "rotation", "values": {"12": -20}, "unit": "deg"},
    ),
    (
        one("position", "state", teeth=(12,), of="palatally_placed", **exactly(2.5, measure="current")),
        {"tooth_measure": "displacement", "values": {"12": -2.5}, "unit": "mm"},
    ),
]


@pytest.mark.parametrize("clause, expected", FINDINGS)
def test_findings_have_the_signs_of_the_format(clause, expected):
    assert entries(drafted(clause)) == [("findings", expected)]


MOVES = [
    ("intrude", None, "mm", "intrusion"),
    ("extrude", None, "mm", "extrusion"),
    ("move", "distal", "mm", "distal"),
    ("move", "retract", "mm", "lingual"),
    ("torque", "palatal_root", "deg", "palatal-root-torque"),
    ("incline", "procline", "deg", "labial-crown-torque"),
    ("incline", "retrocline", "deg", "lingual-crown-torque"),
    ("tip", "distal_crown", "deg", "distal-crown-tip"),
    # the root goes mesially when the crown goes distally
    ("tip", "mesial_root", "deg", "distal-crown-tip"),
    ("rotate", "mesial_in", "deg", "mesiolingual-rotation"),
    ("rotate", "mesiolabial", "deg", "distolingual-rotation"),
    ("rotate", "distal_out", "deg", "mesiolingual-rotation"),
]


@pytest.mark.parametrize("kind, way, unit, motion", MOVES)
def test_an_amount_of_movement_is_least_and_most(kind, way, unit, motion):
    made = drafted(one(kind, "do", teeth=(11, 21), dir=way, **exactly(1, unit)))
    expected = {"teeth": ["11", "21"], "motion": motion, "unit": unit, "at_least": 1, "at_most": 1}
    assert entries(made) == [("movements", expected)]


@pytest.mark.parametrize("kind, way, unit, motion", MOVES)
def test_a_limit_permits_and_binds(kind, way, unit, motion):
    made = drafted(one(kind, "limit", teeth=(11,), dir=way, **at_most(1, unit)))
    use = {"use": motion} if motion in ("intrusion", "extrusion") else {"use": "movement", "motion": motion}
    assert dict(entries(made)) == {
        "allow": {**use, "teeth": ["11"], "unit": unit, "up_to": 1},
        "keep": {"motion": motion, "teeth": ["11"], "within": 1, "unit": unit},
    }


TABLE = [
    (one("align", "do", teeth=(12, 11)), [("goals", {"align": ["12", "11"]})]),
    (one("align", "prefer", teeth=(12, 11)), [("goals", {"strength": "prefer", "align": ["12", "11"]})]),
    (one("rotate", "do", teeth=(33,), dir="derotate"), [("goals", {"align": ["33"]})]),
    (one("level", "do", arch="lower"), [("goals", {"level": "lower"})]),
    (
        one("curve_of_spee", "do", arch="lower", **exactly(1, measure="target")),
        [
            ("goals", {"level": "lower"}),
            ("goals", {"measure": "curve-of-spee", "at_least": 1, "at_most": 1, "unit": "mm"}),
        ],
    ),
    (one("space", "do", dir="close", contacts=((11, 21),)), [("goals", {"close": ["11-21"]})]),
    (
        one("space", "do", dir="close", arch="both"),
        [("goals", {"close_arch": "upper"}), ("goals", {"close_arch": "lower"})],
    ),
    (
        one("space", "do", dir="leave", contacts=((12, 11),), **exactly(1, measure="target")),
        [("goals", {"leave": "12-11", "amount": 1, "unit": "mm"})],
    ),
    (
        one("overjet", "do", **exactly(3, measure="target")),
        [("goals", {"measure": "overjet", "at_least": 3, "at_most": 3, "unit": "mm"})],
    ),
    (
        one("overjet", "limit", **at_most(3, measure="target")),
        [("goals", {"measure": "overjet", "at_most": 3, "unit": "mm"})],
    ),
    (one("overjet", "limit", **at_most(1)), [("keep", {"measure": "overjet", "within": 1, "unit": "mm"})]),
    (
        one("midline", "do", arch="lower", ref="facial_midline"),
        [("goals", {"measure": "lower-midline", "at_least": 0, "at_most": 0, "unit": "mm"})],
    ),
    (
        one("openbite", "do", of="anterior", dir="close"),
        [("goals", {"measure": "overbite", "at_least": 0, "unit": "mm"})],
    ),
    (
        one("incline", "do", teeth=(42, 41, 31, 32), ref="mandibular_plane", **exactly(90, "deg", "target")),
        [("goals", {"measure": "lower-incisor-to-mandibular-plane", "at_least": 90, "at_most": 90, "unit": "deg"})],
    ),
    (one("movement", "forbid", teeth=(46, 36)), [("keep", {"hold": ["46", "36"]})]),
    (
        one("incline", "forbid", teeth=(41, 31), dir="procline"),
        [("keep", {"motion": "labial-crown-torque", "teeth": ["41", "31"], "within": 0, "unit": "deg"})],
    ),
    (
        one("rotate", "forbid", teeth=(12,)),
        [("keep", {"variable": "rotation", "teeth": ["12"], "within": 0, "unit": "deg"})],
    ),
    (one("extrude", "forbid", teeth=(16, 26)), [("exclude", {"means": "extrusion", "teeth": ["16", "26"]})]),
    (one("archwidth", "forbid", dir="expand", arch="upper"), [("exclude", {"means": "widening", "arch": "upper"})]),
    (one("archwidth", "forbid", dir="expand", arch="both"), [("exclude", {"means": "widening"})]),
    (
        one("archwidth", "do", dir="expand", teeth=(15, 25), **exactly(1, measure="per_side")),
        [("movements", {"teeth": ["15", "25"], "motion": "buccal", "unit": "mm", "at_least": 1, "at_most": 1})],
    ),
    (
        one("archwidth", "limit", dir="expand", arch="upper", **at_most(3, measure="total")),
        [("allow", {"use": "widening", "arch": "upper", "unit": "mm", "up_to": 3})],
    ),
    (one("ipr", "forbid", arch="both"), [("exclude", {"means": "enamel-reduction"})]),
    (one("ipr", "forbid", arch="upper"), [("exclude", {"means": "enamel-reduction", "arch": "upper"})]),
    # an excluded tooth keeps both of its contacts: the three inner teeth of four contacts are exactly those four
    (
        one("ipr", "forbid", contacts=((12, 11), (11, 21), (21, 22), (22, 23))),
        [("exclude", {"means": "enamel-reduction", "teeth": ["11", "21", "22"]})],
    ),
    (
        one("attachment", "do", teeth=(14, 24), ref="retention"),
        [("attachments", {"must": ["14", "24"], "reason": "retention"})],
    ),
    (
        one("attachment", "do", teeth=(14,), of="horizontal_rectangle"),
        [("attachments", {"must": ["14"], "shape": "rectangular-horizontal"})],
    ),
    (one("attachment", "forbid"), [("attachments", {"otherwise": "none"})]),
    (one("attachment", "permit"), [("attachments", {"otherwise": "laboratory-decides"})]),
    (
        one("attachment", "permit", teeth=(14,), only=True),
        [("attachments", {"may": ["14"]}), ("attachments", {"otherwise": "none"})],
    ),
    (one("attachment", "forbid", teeth=(11,)), [("attachments", {"must_not": ["11"]})]),
    (one("attachment", "prefer", teeth=(11,)), [("attachments", {"prefer": ["11"]})]),
    (one("staging", "limit", of="steps", **at_most(14, "count", "count")), [("staging", {"most_aligners": 14})]),
    (
        one("staging", "do", of="change_interval", **exactly(2, "week", "interval")),
        [("staging", {"wear_interval_days": 14})],
    ),
    (
        one("staging", "limit", of="movement_per_step", **at_most(2, "deg", "step")),
        [
            (
                "staging",
                {
                    "largest_steps": [
                        {"variable": name, "amount": 2, "unit": "deg"} for name in ("torque", "tip", "rotation")
                    ]
                },
            )
        ],
    ),
    (
        one("extraction", "do", teeth=(41,)),
        [("teeth", {"particulars": [{"tooth": "41", "states": ["to-be-extracted"]}]})],
    ),
    (one("extraction", "permit", teeth=(41,)), [("allow", {"use": "extraction", "teeth": ["41"]})]),
    (one("extraction", "forbid"), [("exclude", {"means": "extraction"})]),
    (
        one("elastic", "forbid"),
        [("exclude", {"means": means}) for means in ("elastics", "class-ii-elastics", "class-iii-elastics")],
    ),
    (
        one("elastic", "do", relation="II", links=((13, 46),)),
        [
            ("allow", {"use": "class-ii-elastics", "sides": ["right"]}),
            ("appliance", {"part": "elastic", "start": "13", "end": "46"}),
        ],
    ),
    (
        one("bite_ramp", "do", teeth=(11, 21), of="palatal"),
        [("appliance", {"part": "bite-plane", "teeth": ["11", "21"]})],
    ),
    (
        one("pontic", "do", teeth=(12,), condition="from the first stage"),
        [("appliance", {"part": "pontic", "teeth": ["12"], "words": "from the first stage"})],
    ),
    (
        one("retainer", "do", teeth=(33, 32), of="bonded"),
        [("retention", {"arch": "lower", "retainer": "bonded", "teeth": ["33", "32"]})],
    ),
    (one("process", "do", of="approval_before_manufacture"), [("process", {"step": "approval-before-making"})]),
    (one("scope", "do", arch="upper", only=True), [("treat", {"arches": "upper"})]),
    (
        one("tooth_status", "state", teeth=(46,), of="crown"),
        [("teeth", {"particulars": [{"tooth": "46", "states": ["crown"]}]})],
    ),
    (one("patient", "state", of="mixed_dentition"), [("patient", {"dentition": "mixed"})]),
    (one("patient", "state", of="thin_biotype"), [("conditions", {"condition": "thin-gingiva", "words": "note"})]),
    (
        one("sagittal", "state", relation="II", side="left", of="molar"),
        [("problems", {"problem": "class-ii", "side": "left"})],
    ),
    (
        one("crowding", "state", arch="upper", of="mild"),
        [("problems", {"problem": "crowding", "arch": "upper", "grade": "mild"})],
    ),
    (
        one("crossbite", "state", teeth=(15, 45)),
        [("problems", {"problem": "crossbite-posterior", "teeth": ["15", "45"]})],
    ),
    (one("history", "state"), [("notes", {"text": "note"})]),
]


@pytest.mark.parametrize("clause, expected", TABLE)
def test_a_clause_in_the_format(clause, expected):
    made = drafted(clause)
    assert (entries(made), made.uncarried, made.questions) == (expected, (), ())


OPEN = [
    (one("overjet", "keep"), [("keep", {"measure": "overjet", "unit": "mm"})], ["within"]),
    (one("overbite", "keep"), [("keep", {"measure": "overbite"})], ["within", "unit"]),
    (
        one("midline", "keep", arch="both"),
        [("keep", {"measure": "upper-midline", "unit": "mm"}), ("keep", {"measure": "lower-midline", "unit": "mm"})],
        ["within"],
    ),
    (
        one("incline", "keep", teeth=(41, 31)),
        [("keep", {"variable": "torque", "teeth": ["41", "31"], "unit": "deg"})],
        ["within"],
    ),
    (
        one("intrude", "do", teeth=(41, 31), of="means"),
        [("allow", {"use": "intrusion", "teeth": ["41", "31"], "unit": "mm"})],
        ["up_to"],
    ),
    (
        one("ipr", "permit", contacts=((11, 21),)),
        [("allow", {"use": "enamel-reduction", "contacts": ["11-21"], "unit": "mm"})],
        ["per_contact"],
    ),
    (
        one("crossbite", "do", teeth=(15, 45), dir="correct"),
        [("goals", {"measure": "transverse-overlap-right", "pair": ["15", "45"], "unit": "mm"})],
        ["at_least"],
    ),
    (
        one("sagittal", "do", of="canine", relation="I", side="left"),
        [("goals", {"measure": "canine-relation-left", "unit": "mm"})],
        ["at_least", "at_most"],
    ),
    (
        one("overjet", "state", approx=True, **exactly(5, measure="current")),
        [("findings", {"measure": "overjet", "value": 5, "unit": "mm"})],
        ["error"],
    ),
    (one("scope", "do", arch="upper"), [("treat", {})], ["arches"]),
    (one("retainer", "do", arch="lower"), [("retention", {"arch": "lower"})], ["retainer"]),
]


@pytest.mark.parametrize("clause, expected, members", OPEN)
def test_what_the_format_needs_and_the_note_does_not_say_is_asked(clause, expected, members):
    made = drafted(clause)
    assert (entries(made), made.uncarried) == (expected, ())
    assert [question["members"] for question in made.questions] == [members]


REASONS = [
    (one("overjet", "do", approx=True, **exactly(2, measure="target")), "about"),
    (one("overjet", "do", dir="reduce", **exactly(2)), "change-without-present"),
    (one("overjet", "limit", dir="increase", **at_most(1)), "change-without-present"),
    (one("overjet", "permit"), "force-does-not-fit"),
    (one("overjet", "keep", side="left"), "more-than-the-format-says"),
    (one("overjet", "keep", condition="if possible"), "condition"),
    (one("overjet", "do", **exactly(2.125, measure="target")), "too-many-decimals"),
    (one("midline", "state", arch="lower", dir="patient_left", **exactly(1, measure="current")), "midline-to-what"),
    (one("midline", "do", arch="lower", ref="upper_midline", dir="patient_left", **exactly(1)), "midline-to-what"),
    (one("tip", "do", teeth=(33,), dir="upright"), "how-far-upright"),
    (one("tip", "do", teeth=(33,), dir="mesial", **exactly(4, "deg")), "crown-or-root"),
    (one("incline", "do", teeth=(11,), dir="procline", **exactly(2, "mm")), "which-unit-of-movement"),
    (one("move", "do", teeth=UPPER_FRONT, dir="retract", **exactly(2)), "which-way"),
    (one("rotate", "do", teeth=(33,), dir="derotate", **exactly(10, "deg")), "which-way"),
    (one("ipr", "do", contacts=LOWER_FRONT, **exactly(0.2, measure="per_surface")), "per-surface"),
    (
        one("ipr", "do", contacts=LOWER_FRONT, minimum=0.2, maximum=0.3, unit="mm", measure="per_contact"),
        "each-contact-from-to",
    ),
    # a single contact has no tooth that touches it alone
    (one("ipr", "forbid", contacts=((11, 21),)), "which-contacts"),
    (one("ipr", "do", arch="lower", **exactly(0.2, measure="per_contact")), "which-contacts"),
    (one("archwidth", "do", arch="upper", side="right", dir="expand", **exactly(1, measure="per_side")), "which-teeth"),
    (one("archwidth", "limit", arch="upper", dir="expand", **at_most(1, measure="per_side")), "which-teeth"),
    (one("space", "do", dir="leave", teeth=(12,), **exactly(7, measure="target")), "space-without-place"),
    (one("space", "do", dir="close", of="black_triangle", contacts=((11, 21),)), "black-triangle"),
    (one("tooth_status", "state", teeth=(16, 15, 14), of="bridge"), "bridge"),
    (one("tooth_status", "state", teeth=(16,), of="no_bonding"), "no-such-state"),
    (one("staging", "do", of="steps", **exactly(12, "count", "count")), "exactly-or-at-most"),
    (one("overcorrection", "do", teeth=(12,), of="rotation", **exactly(3, "deg")), "nothing-to-overcorrect"),
    (one("process", "permit", of="lab_discretion"), "delegation"),
    (one("button", "forbid"), "no-such-clause"),
    (one("anchorage", "do", teeth=(16,)), "no-such-clause"),
    (one("intrude", "do", pending=("teeth",), **exactly(1)), "waits-for-an-answer"),
    (one("scope", "do", teeth=(12, 11)), "more-than-the-format-says"),
]


@pytest.mark.parametrize("clause, reason", REASONS)
def test_in_doubt_a_clause_is_noted_and_asked_about(clause, reason):
    made = drafted(clause)
    assert [(entry.clause, entry.reason) for entry in made.uncarried] == [(0, reason)]
    assert made.document == {"notes": [{"text": "note"}]}
    assert [question["for"] for question in made.questions] == [[0]]


def test_every_reason_and_open_member_has_words():
    sources = "".join(path.read_text("utf-8") for path in Path(part.__file__).parent.glob("*.py"))
    assert set(re.findall(r'NotCarried\(\s*"([a-z-]+)"', sources)) <= set(data()["reason"])
    assert all(f'"{reason}"' in sources for reason in data()["reason"])


def test_a_means_with_an_amount_is_an_order():
    made = drafted(one("intrude", "do", teeth=(41,), of="means", **exactly(1)))
    assert [section for section, _ in entries(made)] == ["movements"]


def test_what_waits_is_not_asked_about_twice():
    made = draft(
        "note", [one("align", "do", pending=("teeth",))], [Question("teeth", "which-teeth", ((0, 4),), (), (0,))]
    )
    assert [question["asks"] for question in made.questions] == ["which-teeth"]


# prescription.md: with at_least that much in all is ordered; five contacts of 0.2 are 1.0
@pytest.mark.parametrize(
    "clauses, expected",
    [
        (
            [one("ipr", "do", contacts=LOWER_FRONT, **exactly(0.2, measure="per_contact"))],
            {"per_contact": 0.2, "at_least": 1},
        ),
        ([one("ipr", "do", contacts=LOWER_FRONT, **exactly(1, measure="total"))], {"in_all": 1, "at_least": 1}),
        (
            [
                one("ipr", "limit", contacts=LOWER_FRONT, **at_most(0.3, measure="per_contact")),
                one("ipr", "limit", contacts=LOWER_FRONT, **at_most(1, measure="total")),
            ],
            {"per_contact": 0.3, "in_all": 1},
        ),
    ],
)
def test_reductions_of_the_same_contacts_are_one_allowance(clauses, expected):
    made = drafted(*clauses)
    assert entries(made) == [("allow", {"use": "enamel-reduction", "contacts": LOWER_NAMES, "unit": "mm"} | expected)]
    assert made.sources["/allow/0"]["clauses"] == list(range(len(clauses)))


def test_reductions_that_share_a_contact_otherwise_are_asked_about():
    wide = one("ipr", "limit", arch="lower", **at_most(1, measure="total"))
    made = drafted(one("ipr", "limit", contacts=LOWER_FRONT, **at_most(0.3, measure="per_contact")), wide)
    assert [(entry.clause, entry.reason) for entry in made.uncarried] == [(1, "reduction-said-twice")]


# 6 less 2 is 4; of a midline 2 mm to the right, 1 mm to the left is 1 mm to the right
@pytest.mark.parametrize(
    "state, change, expected",
    [
        (
            one("overjet", "state", **exactly(6, measure="current")),
            one("overjet", "do", dir="reduce", **exactly(2)),
            {"at_least": 4, "at_most": 4},
        ),
        (
            one("overjet", "state", **exactly(3, measure="current")),
            one("overjet", "limit", dir="increase", **at_most(1)),
            {"at_most": 4},
        ),
        (
            one("overjet", "state", **exactly(3, measure="current")),
            one("overjet", "forbid", dir="increase"),
            {"at_most": 3},
        ),
        (
            one("overjet", "state", **exactly(6, measure="current")),
            one("overjet", "do", dir="reduce", minimum=1, maximum=2, unit="mm", measure="change"),
            {"at_least": 4, "at_most": 5},
        ),
        (
            one(
                "midline",
                "state",
                arch="upper",
                dir="patient_right",
                ref="facial_midline",
                **exactly(2, measure="current"),
            ),
            one("midline", "do", arch="upper", dir="patient_left", **exactly(1)),
            {"at_least": -1, "at_most": -1},
        ),
    ],
)
def test_a_change_from_an_exact_present_value_is_a_goal_with_its_reason(state, change, expected):
    made = drafted(state, change)
    (goal,) = made.document["goals"]
    assert {name: goal[name] for name in ("at_least", "at_most") if name in goal} == expected
    assert goal["because"] == ["c1"]
    assert "present-value-and-change" in {entry["rule"] for entry in made.assumed}


@pytest.mark.parametrize("more", [{"approx": True}, {"maximum": 7}])
def test_a_change_from_a_present_value_that_is_not_exact_is_asked(more):
    state = one("overjet", "state", **exactly(6, measure="current") | more)
    made = drafted(state, one("overjet", "do", dir="reduce", **exactly(2)))
    assert (1, "change-without-present") in [(entry.clause, entry.reason) for entry in made.uncarried]


def test_the_place_of_a_missing_tooth_is_named_by_its_neighbours():
    missing = one("tooth_status", "state", teeth=(12, 22), of="missing")
    made = drafted(
        missing, one("space", "do", dir="open", of="implant", teeth=(12, 22), **exactly(6.5, measure="target"))
    )
    assert [goal["leave"] for goal in made.document["goals"]] == ["13-11", "21-23"]
    assert made.document["notes"] == [{"text": "Purpose: implant.", "about": ["c2", "c2.2"]}]
    assert made.absent == ("12", "22")
    assert made.sources["/teeth/upper"]["clauses"] == [0]


# semantics.md: hold forbids reduction at the contacts as well, which the note asks for here
def test_a_locked_tooth_that_is_reduced_is_kept_and_not_held():
    reduction = one("ipr", "limit", contacts=LOWER_FRONT, **at_most(0.3, measure="per_contact"))
    made = drafted(reduction, one("movement", "forbid", teeth=(33,)))
    kept = [(entry["variable"], entry["within"]) for entry in made.document["keep"]]
    assert kept == [(name, 0) for name in ("along", "out", "vertical", "torque", "tip", "rotation")]


def test_an_overcorrection_joins_the_movement_it_is_of():
    turned = one("rotate", "do", teeth=(12,), dir="derotate")
    made = drafted(one("overcorrection", "do", teeth=(12,), of="rotation", **exactly(3, "deg")), turned)
    assert entries(made) == [("goals", {"align": ["12"], "overcorrection": {"value": 3, "unit": "deg"}})]
    assert made.sources["/goals/0"]["clauses"] == [0, 1]


def test_derotation_by_an_amount_goes_against_the_finding():
    state = one("rotate", "state", teeth=(12,), dir="mesiolabial", approx=True, **exactly(20, "deg", "current"))
    made = drafted(state, one("rotate", "do", teeth=(12,), dir="derotate", **exactly(15, "deg")))
    assert [entry["motion"] for entry in made.document["movements"]] == ["mesiolingual-rotation"]


def test_all_that_is_said_of_the_arches_is_one_answer():
    made = drafted(one("scope", "do", arch="upper"), one("scope", "forbid", arch="lower"))
    assert (made.document, made.questions) == ({"treat": {"arches": "upper"}}, ())
    made = drafted(one("scope", "do", arch="upper", only=True), one("scope", "do", arch="lower"))
    assert [entry.reason for entry in made.uncarried] == ["said-otherwise"] * 2


def test_ids_are_those_of_the_clauses():
    made = drafted(one("note", "state"), one("align", "do", teeth=(12,)), one("midline", "keep", arch="both"))
    assert made.document["goals"][0]["id"] == "c2"
    assert [entry["id"] for entry in made.document["keep"]] == ["c3", "c3.2"]


def test_what_was_filled_is_shown():
    made = drafted(one("align", "do", teeth=(12,), inferred=("spelling",), only=True))
    assert {(entry["pointer"], entry["member"], entry["rule"]) for entry in made.assumed} == {
        ("/goals/0", "spelling", "read-by-convention"),
        ("/goals/0", "only", "silence-is-no-change"),
    }


def test_nothing_of_the_envelope_has_a_default():
    made = drafted(one("patient", "state", of="mixed_dentition"))
    assert set(ENVELOPE) - set(made.missing) == {"/patient/dentition"}


def test_a_draft_is_no_prescription():
    report = check(json.dumps(drafted(one("align", "do", teeth=(12,))).record()).encode())
    assert (report.verdict, [finding.rule for finding in report.findings]) == ("refused", ["unknown-format"])


def test_a_draft_names_its_note_and_can_be_read_back():
    made = drafted(one("overjet", "keep"), one("button", "forbid"))
    record = json.loads(json.dumps(made.record()))
    assert (record["format"], record["note_sha256"]) == ("wellposed/draft", hashlib.sha256(b"note").hexdigest())
    assert restored(record).record() == made.record()


def particulars(absent=(), **more):
    teeth = [tooth for tooth in PERMANENT_TEETH if tooth[1] != "8" and tooth not in absent]
    return {
        "id": "N-1",
        "revision": 1,
        "issued": "2026-03-04T09:30:00+01:00",
        "prescriber": {"id": "dr-2"},
        "laboratory": {"id": "lab-4"},
        "patient": {"reference": "P-7", "age_years": 24, "growth": "complete", "dentition": "permanent"},
        "teeth": {arch: [tooth for tooth in teeth if arch_of(tooth) == arch] for arch in ("upper", "lower")},
    } | more


def lacks(made, given):
    with pytest.raises(NotFinished) as caught:
        finish(made, given)
    return [tuple(one) for one in caught.value.lacks]


def test_nothing_is_finished_while_a_question_is_open():
    made = drafted(one("overjet", "keep"), one("button", "forbid"))
    assert lacks(made, particulars()) == [("question-open", "q1"), ("question-open", "q2")]
    made = answered(made, "q1", {"within": 0.5})
    assert lacks(made, particulars()) == [("question-open", "q2")]
    whole = finish(answered(made, "q2", "as-note"), particulars())
    assert whole["keep"] == [{"id": "c1", "strength": "must", "measure": "overjet", "unit": "mm", "within": 0.5}]
    assert whole["notes"] == [{"text": "note"}]


@pytest.mark.parametrize("pointer", ENVELOPE)
def test_nothing_is_finished_without_each_particular(pointer):
    given = particulars()
    *sections, member = pointer.split("/")[1:]
    del (given[sections[0]] if sections else given)[member]
    assert ("particular-missing", pointer) in lacks(drafted(one("align", "do", teeth=(12,))), given)


def test_particulars_do_not_overrule_the_note():
    made = drafted(
        one("tooth_status", "state", teeth=(12,), of="missing"),
        one("tooth_status", "state", teeth=(46,), of="crown"),
        one("patient", "state", of="growing"),
    )
    given = particulars(goals=[])
    given["teeth"]["particulars"] = []
    assert lacks(made, given) == [
        ("particular-unknown", "/goals"),
        ("said-to-be-missing", "12"),
        ("said-by-the-note", "/teeth/particulars"),
        ("said-by-the-note", "/patient/growth"),
    ]


MEASURED = [
    {"id": "f1", "measure": "overjet", "value": 6.12, "unit": "mm"},
    {"id": "f2", "measure": "upper-crowding", "value": 2.4, "unit": "mm", "contacts": ["12-11"]},
    {"id": "f3", "tooth_measure": "tooth-width", "values": {"11": 8.4}, "unit": "mm"},
]


def test_what_was_measured_stands_beside_what_the_note_measures():
    made = drafted(one("overjet", "state", **exactly(6, measure="current")))
    findings = finish(made, particulars(findings=MEASURED[1:]))["findings"]
    assert [entry["id"] for entry in findings] == ["c1", "f2", "f3"]
    assert finish(drafted(one("align", "do", teeth=(12,))), particulars(findings=MEASURED))["findings"] == MEASURED


def test_what_the_note_measures_too_is_asked_about():
    made = drafted(one("overjet", "state", **exactly(6, measure="current")))
    assert lacks(made, particulars(findings=MEASURED)) == [("said-by-the-note", "/findings/0")]


@pytest.mark.parametrize("findings", [{}, "f1", 3])
def test_findings_that_are_no_list_are_not_dropped(findings):
    made = drafted(one("overjet", "state", **exactly(6, measure="current")))
    assert lacks(made, particulars(findings=findings)) == [("wrong-kind", "/findings")]


def test_faults_of_the_particulars_are_named_by_place():
    made = drafted(one("align", "do", teeth=(12,)))
    assert lacks(made, particulars(revision=0)) == [("out-of-range", "/revision")]


def test_the_teeth_of_a_whole_arch_are_those_present():
    made = drafted(one("align", "do", arch="upper"))
    assert made.fills == ({"pointer": "/goals/0/align", "teeth_of": "upper"},)
    given = particulars(absent=("12",))
    assert finish(made, given)["goals"][0]["align"] == given["teeth"]["upper"]


def test_an_answer_fits_its_question():
    made = draft("note", [one("overjet", "keep")], [Question("vague", "vague", ((0, 4),))])
    for question, answer in [("q2", {"up_to": 1}), ("q2", "as-note"), ("q2", {}), ("q1", "as-note")]:
        with pytest.raises(ValueError, match=question):
            answered(made, question, answer)
    with pytest.raises(KeyError):
        answered(made, "q9", "as-note")
    with pytest.raises(ValueError, match="already"):
        answered(answered(made, "q2", {"within": 1}), "q2", {"within": 2})


ANSWERS = {"within": 0.5, "unit": "mm", "up_to": 1, "per_contact": 0.2, "in_all": 1, "at_least": 0.5, "at_most": 1}


@pytest.mark.parametrize("text, clauses, questions", [sample for sample in GOLD if not sample.values[2]])
def test_what_is_finished_is_read_by_the_check(text, clauses, questions):
    """Everything answered, the result is a sound prescription: it is weighed, and not refused."""
    made = draft(text, clauses, questions)
    for question in made.questions:
        filled = {member: ANSWERS[member] for member in question.get("members", ())}
        made = answered(made, question["id"], filled or "as-note")
    primary = {str(tooth) for clause in clauses for tooth in clause.teeth if tooth > 50}
    given = particulars(made.absent)
    for arch in given["teeth"]:
        given["teeth"][arch] += sorted(tooth for tooth in primary if arch_of(tooth) == arch)
    given["patient"] |= made.document.get("patient", {})
    report = check(json.dumps(finish(made, given)).encode())
    assert report.verdict not in ("unreadable", "refused")
