"""Every class of clause in its sentence, written out by hand; names of teeth are those of ISO 3950 and the trade."""

import typing
from types import UnionType

import pytest
from tests.validator.wellposed.consistency.ordinary import allowed, document, found, must, present

from wellposed import norms
from wellposed.check import sound
from wellposed.model import PRIVATE, Prescription
from wellposed.model.base import Part, Quantity
from wellposed.model.means import EnamelReduction
from wellposed.render.json_report import dumped
from wellposed.render.readback import HEADINGS, sentences
from wellposed.render.readback.told import TELLERS

T11, T21 = "11 (upper right central incisor)", "21 (upper left central incisor)"
T13, T23 = "13 (upper right canine)", "23 (upper left canine)"
T12, T22 = "12 (upper right lateral incisor)", "22 (upper left lateral incisor)"
T41, T31 = "41 (lower right central incisor)", "31 (lower left central incisor)"
C4131 = "41/31 (lower right central incisor and lower left central incisor)"
C3132 = "31/32 (lower left central incisor and lower left lateral incisor)"


def read(**sections):
    made = sound(dumped(document(**sections)).encode())
    assert isinstance(made, Prescription), made
    return made


def told(**sections):
    """Pointer to (heading, sentence), of what stands in the document."""
    return {one.pointer: (one.heading, one.text) for one in sentences(read(**sections)) if one.pointer}


def only(**sections):
    """The sentence of the one part of the one section."""
    (name, parts), *_ = sections.items()
    return told(**sections)[f"/{name}/0" if isinstance(parts, list) else f"/{name}"]


CHANGE = [
    ({"goals": [must("g1", align=["21", "11"])]}, f"Must: align {T11} and {T21}."),
    (
        {"goals": [must("g1", align=["11"], overcorrection={"value": 0.25, "unit": "mm"})]},
        f"Must: align {T11}, with an overcorrection of exactly 0.25 mm.",
    ),
    ({"goals": [must("g1", level="lower")]}, "Must: level the lower arch (levelling by itself states no amount)."),
    ({"goals": [must("g1", close=["32-31", "31-41"])]}, f"Must: close the space at {C4131} and {C3132}."),
    ({"goals": [must("g1", close_arch="upper")]}, "Must: close all spaces in the upper arch."),
    (
        {"goals": [must("g1", close_arch="lower"), must("g2", leave="31-41", amount=0.5, unit="mm")]},
        "Must: close all spaces in the lower arch but those a goal leaves.",
    ),
    (
        {"goals": [must("g1", leave="31-41", amount=0, unit="mm")]},
        f"Must: leave a space of exactly 0 mm at {C4131}.",
    ),
    (
        {"goals": [must("g1", measure="overjet", at_least=2, at_most=2.75, unit="mm")]},
        "Must: bring the overjet to at least 2 mm and at most 2.75 mm.",
    ),
    (
        {"goals": [must("g1", measure="overjet", at_least=1, at_most=1, unit="mm", pair=["42", "12"])]},
        f"Must: bring the overjet at 12/42 ({T12[4:-1]} and lower right lateral incisor) to exactly 1 mm.",
    ),
    (
        {"goals": [must("g1", measure="upper-midline", at_least=-0.5, at_most=0, unit="mm")]},
        (
            "Must: bring the upper centreline to at least -0.5 mm (to the patient's right of the face) and at most 0 mm"
            " (in the middle of the face)."
        ),
    ),
    (
        {"goals": [must("g1", measure="molar-relation-left", at_most=1, unit="mm")]},
        "Must: bring the left molar relation to at most 1 mm (towards Class II).",
    ),
    (
        {"movements": [must("m1", teeth=["11", "21"], motion="intrusion", at_least=0.5, at_most=1, unit="mm")]},
        f"Must: intrude (into the bone) {T11} and {T21}, each by at least 0.5 mm and at most 1 mm.",
    ),
    (
        {"movements": [must("m1", teeth=["11"], motion="extrusion", at_least=0.5, unit="mm")]},
        f"Must: extrude (out of the bone) {T11}, by at least 0.5 mm.",
    ),
    (
        {
            "movements": [
                {
                    **must("m1", teeth=["13"], motion="mesiolingual-rotation", at_least=10, at_most=10, unit="deg"),
                    "strength": "prefer",
                    "overcorrection": {"value": 20, "unit": "percent"},
                }
            ]
        },
        (
            f"Preferably: rotate {T13}, mesial side towards the tongue, by exactly 10°,"
            " with an overcorrection of exactly 20 % of the movement."
        ),
    ),
    (
        {"movements": [must("m1", teeth=["11"], motion="palatal-root-torque", at_most=5, unit="deg")]},
        f"Must: torque the roots of {T11} palatally (crown outwards, root inwards), by at most 5°.",
    ),
]
STAY = [
    (
        {"keep": [must("k1", measure="overbite", within=10, unit="percent")]},
        "Must: keep the overbite, at most 10 % of change either way.",
    ),
    (
        {"keep": [must("k1", variable="vertical", teeth=["13"], within=0.25, unit="mm")]},
        f"Must: limit movement up or down (into or out of the bone) of {T13}, to at most 0.25 mm either way.",
    ),
    (
        {"keep": [must("k1", motion="distal", teeth=["13", "23"], within=0, unit="mm")]},
        f"Must: limit distal movement (along the arch, away from its middle) of {T13} and {T23}, each to at most 0 mm.",
    ),
    (
        {"keep": [{"id": "k1", "strength": "prefer", "hold": ["13"]}]},
        f"Preferably: do not move {T13} at all, and take no enamel off there.",
    ),
]
MEANS = [
    (
        allowed("a1", "enamel-reduction", contacts=["31-41"], per_contact=0.3, in_all=0.3, at_least=0.1, unit="mm"),
        (
            f"Allowed: enamel reduction at {C4131}, both teeth together, at most 0.3 mm per contact,"
            " at most 0.3 mm in all over these contacts, at least 0.1 mm in all over these contacts, which is ordered."
        ),
    ),
    (
        allowed("a1", "enamel-reduction", arch="lower", in_all=2, unit="mm"),
        (
            "Allowed: enamel reduction in the lower arch, first molar to first molar, both teeth together,"
            " at most 2 mm in all over these contacts."
        ),
    ),
    (
        allowed("a1", "incisor-advance", arch="upper", up_to=1.5, unit="mm"),
        (
            f"Allowed: advance (forwards) the incisors of the upper arch: {T12}, {T11}, {T21} and {T22},"
            " all alike by at most 1.5 mm."
        ),
    ),
    (
        allowed("a1", "incisor-retraction", arch="upper", teeth=["11", "21"], up_to=1.5, unit="mm"),
        f"Allowed: retract (backwards; nothing is extracted by it) {T11} and {T21}, each by at most 1.5 mm.",
    ),
    (
        allowed("a1", "widening", arch="upper", teeth=["13", "23"], up_to=2, unit="mm"),
        f"Allowed: widen (the teeth of a pair apart) {T13} and {T23}, by at most 2 mm per pair, both teeth together.",
    ),
    (
        allowed("a1", "distal-movement", arch="upper", sides=["right"], up_to=2, unit="mm"),
        (
            "Allowed: distal movement (along the arch, away from its middle) in the upper arch, on the right, first and"
            " second molars: 17 (upper right second molar) and 16 (upper right first molar), each by at most 2 mm."
        ),
    ),
    (
        allowed("a1", "mesial-movement", arch="upper", teeth=["13"], up_to=2, unit="mm"),
        f"Allowed: mesial movement (along the arch, towards its middle) of {T13}, by at most 2 mm.",
    ),
    (
        allowed("a1", "movement", teeth=["13"], motion="mesial", up_to=2, unit="mm"),
        f"Allowed: move {T13} mesially (along the arch, towards its middle), by at most 2 mm.",
    ),
    (
        allowed("a1", "laboratory-choice", teeth=["13"]),
        (
            "Allowed: the laboratory chooses every movement: movement along the arch (mesial or distal), movement in or"
            " out (towards the tongue or away from it), movement up or down (into or out of the bone), torque (crown"
            f" inwards or outwards), tip (crown mesial or distal) and rotation (either way) of {T13}; never enamel"
            " reduction or extraction."
        ),
    ),
    (
        allowed("a1", "intrusion", teeth=["13"], up_to=0.5, unit="mm"),
        f"Allowed: intrusion (into the bone) of {T13}, by at most 0.5 mm.",
    ),
    (
        allowed("a1", "movement", teeth=["13"], motion="buccal", up_to=0.5, unit="mm"),
        f"Allowed: move {T13} buccally (outwards, away from the tongue), by at most 0.5 mm.",
    ),
    (
        allowed("a1", "posterior-open-bite", up_to=0.5, unit="mm"),
        "Allowed: a posterior open bite (the back teeth apart), by at most 0.5 mm more than there is.",
    ),
    (
        allowed("a1", "extraction", teeth=["41"]),
        f"Allowed: extract {T41}; counted as done, and its place closes unless a goal leaves room.",
    ),
    (
        allowed("a1", "class-iii-elastics", sides=["left", "right"], up_to=1, unit="mm"),
        (
            "Allowed: Class III elastics (upper teeth forwards, lower teeth backwards) on the right and left,"
            " each tooth by at most 1 mm."
        ),
    ),
    (
        allowed("a1", "elastics", pattern="vertical", teeth=["13"]),
        f"Allowed: elastics, vertical (straight up and down) at {T13}; no tooth moves by this alone.",
    ),
    (
        allowed("a1", "auxiliary", auxiliary="other", words="a spring"),
        "Allowed: other; no tooth moves by this alone, “a spring”.",
    ),
    (
        allowed("a1", "laboratory-choice", variables=["tip"], arch="upper"),
        (
            "Allowed: the laboratory chooses tip (crown mesial or distal) of all teeth of the upper arch;"
            " never enamel reduction or extraction."
        ),
    ),
]
EXCLUDED = [
    ({"id": "x1", "means": "extraction"}, "Not allowed: extraction (teeth taken out) anywhere."),
    (
        {"id": "x1", "means": "incisor-advance", "arch": "lower"},
        "Not allowed: incisor advance (forwards) in the lower arch.",
    ),
    ({"id": "x1", "means": "intrusion", "teeth": ["13"]}, f"Not allowed: intrusion (into the bone) at {T13}."),
]
ATTACHED = [
    (
        {"id": "t1", "must": ["13"], "reason": "retention", "shape": "bevelled-gingival"},
        f"Must: attachments on {T13}, bevelled towards the gum, to hold the aligner.",
    ),
    ({"id": "t1", "must_not": ["13"]}, f"Not allowed: attachments on {T13}."),
    ({"id": "t1", "may": ["13"]}, f"Allowed: attachments on {T13}."),
    ({"id": "t1", "prefer": ["13"]}, f"Preferably: attachments on {T13}."),
    ({"id": "t1", "prefer_not": ["13"]}, f"Preferably: no attachments on {T13}."),
    ({"id": "t1", "otherwise": "none"}, "On all other teeth: no attachments."),
    ({"id": "t1", "otherwise": "laboratory-decides"}, "On all other teeth: the laboratory decides on attachments."),
]
AROUND = [
    (
        "there",
        {"treat": {"arches": "upper", "passive_appliance": "wanted"}},
        (
            "Treat: the upper arch only; in the lower arch no tooth is moved and no enamel taken off;"
            " a passive appliance (moves nothing) is wanted."
        ),
    ),
    ("there", {"conditions": [{"condition": "thin-gingiva", "teeth": ["31"]}]}, f"Condition: thin gingiva at {T31}."),
    (
        "found",
        {"findings": [found("f1", "overbite", -1, error=0.5, method="eye", date="2026-03-04")]},
        "Found: overbite -1 mm (an open bite), measuring error at most 0.5 mm either way, taken “eye”, on 2026-03-04.",
    ),
    (
        "found",
        {"findings": [{"id": "f1", "tooth_measure": "displacement", "values": {"22": 1, "12": -2.5}, "unit": "mm"}]},
        (
            f"Found: displacement from the arch line of {T12} -2.5 mm (inwards, towards the tongue) and"
            f" {T22} 1 mm (outwards, away from the tongue)."
        ),
    ),
    (
        "found",
        {"problems": [{"id": "p1", "problem": "class-ii", "side": "right", "grade": "mild"}]},
        "Diagnosis: mild Class II, right side.",
    ),
    (
        "expected",
        {
            "expect": [
                {
                    "id": "e1",
                    "measure": "overjet",
                    "at_least": -2,
                    "at_most": -0.5,
                    "unit": "mm",
                    "ground": "growth",
                }
            ]
        },
        (
            "Counted on, not ordered: the overjet changes by at least -2 mm (less) and at most -0.5 mm (less),"
            " by growth of the jaws."
        ),
    ),
    ("made", {"staging": must("s1")}, "Must: staging, of which nothing is stated."),
    (
        "made",
        {"appliance": [{"id": "b1", "part": "elastic", "start": "13", "end": "41", "wear": "night"}]},
        f"Make: elastic, from {T13} to {T41}, worn at night.",
    ),
    (
        "made",
        {"process": [{"id": "v1", "step": "new-scan", "date": "2026-03-04", "words": "again"}]},
        "Step: new scan, on 2026-03-04, “again”.",
    ),
    (
        "made",
        {"retention": [{"id": "r1", "arch": "lower", "retainer": "none"}]},
        "At the end: no retainer, which is decided, in the lower arch.",
    ),
    ("open", {"notes": [{"text": "Align 11."}]}, "Not binding: a note is not repeated here, and is no instruction."),
]
SENTENCES = [
    *(("change", sections, text) for sections, text in CHANGE),
    *(("stay", sections, text) for sections, text in STAY),
    *(("means", {"allow": [clause]}, text) for clause, text in MEANS),
    *(("means", {"exclude": [clause]}, text) for clause, text in EXCLUDED),
    *(("means", {"attachments": [clause]}, text) for clause, text in ATTACHED),
    *AROUND,
]


@pytest.mark.parametrize("heading, sections, text", SENTENCES)
def test_a_part_in_its_sentence(heading, sections, text):
    assert only(**sections) == (heading, text)


ORDER = [{"id": "o1", "first": "g1", "relation": "not-before-done", "then": "g2"}]


def test_the_members_of_staging_have_a_sentence_each():
    steps = [{"variable": "out", "amount": 0.25, "unit": "mm", "teeth": ["13"]}]
    staging = must("s1", most_aligners=20, wear_interval_days=1, largest_steps=steps, order=ORDER)
    goals = [must("g1", align=["11"]), must("g2", level="lower")]
    found_ = told(goals=goals, staging=staging)
    assert {pointer: text for pointer, (_, text) in found_.items() if pointer.startswith("/staging")} == {
        "/staging/most_aligners": "Must: at most 20 aligners.",
        "/staging/wear_interval_days": "Must: wear each aligner for exactly 1 day.",
        "/staging/largest_steps/0": "Must: at most 0.25 mm per aligner of movement in or out (towards the tongue or"
        f" away from it) of {T13}.",
        "/staging/order/0": "Must: [g1] is done before [g2] begins.",
    }


@pytest.mark.parametrize(
    "members, sentences_",
    [
        ({"order": ORDER}, {"/staging": "Must: staging, of which nothing but the order is stated."}),
        (
            {"largest_steps": [], "order": []},
            {
                "/staging": "Must: staging, of which nothing is stated.",
                "/staging/largest_steps": "Stated as none: largest steps per aligner.",
                "/staging/order": "Stated as none: an order of clauses.",
            },
        ),
    ],
)
def test_the_id_and_strength_of_staging_are_told_whatever_it_holds(members, sentences_):
    goals = [must("g1", align=["11"]), must("g2", level="lower")]
    found_ = told(goals=goals, staging=must("s1", **members))
    assert {pointer: found_[pointer][1] for pointer in sentences_} == sentences_


def test_a_group_of_teeth_that_is_not_there():
    teeth = present(upper=["13", "23"], lower=["31"])
    allow = [
        allowed("a1", "incisor-retraction", arch="upper", up_to=1, unit="mm"),
        allowed("a2", "narrowing", arch="lower", up_to=1, unit="mm"),
        allowed("a3", "mesial-movement", arch="lower", up_to=1, unit="mm"),
    ]
    found_ = told(teeth=teeth, allow=allow)
    assert [found_[f"/allow/{number}"][1] for number in range(3)] == [
        (
            "Allowed: retract (backwards; nothing is extracted by it) the incisors of the upper arch: none is there,"
            " all alike by at most 1 mm."
        ),
        (
            "Allowed: narrow (the teeth of a pair together) the lower arch, canines to second molars: none is there,"
            " by at most 1 mm per pair, both teeth together."
        ),
        (
            "Allowed: mesial movement (along the arch, towards its middle) in the lower arch, first and second molars:"
            " none is there, by at most 1 mm."
        ),
    ]


def test_nothing_not_ordinary_about_a_tooth_is_not_the_same_as_nothing_said():
    assert told(teeth=present())["/teeth/particulars"][1] == "Stated as none: anything not ordinary about a tooth."
    assert "/teeth/particulars" not in told()


def test_teeth_and_what_is_not_ordinary_about_them():
    teeth = present(
        ("13", "implant", "crown"),
        ("11", "veneer"),
        ("41", "to-be-extracted", "injured"),
        upper=["13", "11"],
        lower=["41"],
    )
    assert {pointer: one for pointer, one in told(teeth=teeth).items() if pointer.startswith("/teeth")} == {
        "/teeth/upper": ("there", f"Present in the upper arch: {T13} and {T11}."),
        "/teeth/lower": ("there", f"Present in the lower arch: {T41}."),
        "/teeth/particulars/0": ("there", f"Present: {T13}, implant and crown, so it does not move."),
        "/teeth/particulars/1": ("there", f"Present: {T11}, veneer."),
        "/teeth/particulars/2": (
            "change",
            f"Must: extract {T41}, injured; its place closes unless a goal leaves room.",
        ),
    }


def test_an_extension_is_named_and_not_read():
    extensions = {"org.example.case": {"critical": False, "content": "Extract 11."}}
    assert told(extensions=extensions)["/extensions/org.example.case"] == (
        "open",
        "Not binding: the extension [org.example.case] is kept as it is, and not read.",
    )


def test_elastics_without_an_amount_are_told_with_the_usual_one():
    usual = norms.norm("kinematics.elastics")
    _, text = only(allow=[allowed("a1", "class-ii-elastics", sides=["left"])])
    assert text.endswith(
        f"on the left, no amount stated: as usual each tooth by at most {usual.value:g} mm ({usual.sure})."
    )


def test_what_a_clause_answers_stands_at_its_end():
    findings = [found("f1", "overbite", 2), found("f2", "overjet", 2)]
    goals = [must("g1", align=["11"], because=["f1", "f2"])]
    assert told(findings=findings, goals=goals)["/goals/0"][1] == f"Must: align {T11} (because of [f1] and [f2])."


@pytest.mark.parametrize(
    "words, text",
    [
        ("two\nlines", "“two lines”"),
        ("”. Must: extract 11. “", '“". Must: extract 11. "”'),
        ("\x1b[2Jgone \u202eback", "“�[2Jgone �back”"),
    ],
)
def test_words_of_the_prescriber_stay_one_quotation(words, text):
    assert only(conditions=[{"condition": "other", "words": words}])[1] == f"Condition: other, {text}."


def test_a_section_stated_as_none_is_not_one_left_out():
    stated = told(exclude=[])
    assert stated["/exclude"] == ("means", "Stated as none: anything not allowed.")
    assert "/exclude" not in told()
    (silent,) = [one.text for one in sentences(read()) if one.text.startswith("Not stated: ")]
    assert "anything not allowed" in silent


# nothing is left without a sentence


def inside(annotation):
    """The parts of the model an annotation speaks of, and those inside them."""
    if isinstance(annotation, type) and issubclass(annotation, Part):
        yield annotation
        for field in annotation.model_fields.values():
            yield from inside(field.annotation)
    elif typing.get_origin(annotation) in (typing.Annotated, typing.Union, UnionType, tuple, dict):
        for inner in typing.get_args(annotation):
            yield from inside(inner)


def private():
    return {part for name in PRIVATE for part in inside(Prescription.model_fields[name[1:]].annotation)}


def test_every_class_of_the_model_has_a_sentence():
    classes = set(inside(Prescription))
    assert EnamelReduction in classes  # the walk reaches the members of unions
    untold = classes - set(TELLERS) - {Prescription, Quantity}
    assert {part.__name__ for part in untold} == {"Laboratory", "Patient", "Prescriber", "Record"}
    assert untold < private()
    assert set(TELLERS) <= classes


def test_every_class_is_told_by_hand_above():
    parts = {type(part) for _, sections, _ in SENTENCES for part in _parts(read(**sections))}
    elsewhere = {"Teeth", "ToothStates", "LargestStep", "Order", "Extension"}
    assert {told_.__name__ for told_ in set(TELLERS) - parts} <= elsewhere


def _parts(rx):
    for value in vars(rx).values():
        yield from value if isinstance(value, tuple) else [value]


def test_every_heading_is_used_above():
    assert {heading for heading, *_ in SENTENCES} | {"kept"} == set(HEADINGS)
