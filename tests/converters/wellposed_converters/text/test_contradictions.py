"""The 53 classes of contradiction inside one note, each with a near miss that is none.

The examples are sentences of the table of classes; the clauses are what they say, written by hand. A class that no
clause can show (teeth that are read wrongly) is asked about where the place is read, and stands in the last table.
"""

import pytest
from tests.converters.wellposed_converters.text.samples import samples

from wellposed_converters.text.clause import Clause
from wellposed_converters.text.contradictions import contradictions, remarks
from wellposed_converters.text.read import read_text
from wellposed_converters.text.wording import option_words, wording

LOWER = ((43, 42), (42, 41), (41, 31), (31, 32), (32, 33))
UPPER = ((13, 12), (12, 11), (11, 21), (21, 22), (22, 23))
LOWER_FRONT = (43, 42, 41, 31, 32, 33)
SPELLED = {"min": "minimum", "max": "maximum", "class_": "relation", "if_": "condition"}


def c(kind, mode, **members):
    value = members.pop("v", None)
    if value is not None:
        members |= {"min": value, "max": value}
    return Clause(kind, mode, ((0, 1),), **{SPELLED.get(name, name): said for name, said in members.items()})


def do(kind, **members):
    return c(kind, "do", **members)


def state(kind, **members):
    return c(kind, "state", **members)


def no(kind, **members):
    return c(kind, "forbid", **members)


def keep(kind, **members):
    return c(kind, "keep", **members)


def limit(kind, **members):
    return c(kind, "limit", **members)


def change(kind, teeth, amount, unit="mm", **members):
    return do(kind, teeth=teeth, measure="change", v=amount, unit=unit, **members)


def target(kind, amount, unit="mm", **members):
    return do(kind, measure="target", v=amount, unit=unit, **members)


def now(kind, amount, unit="mm", **members):
    return state(kind, measure="current", v=amount, unit=unit, **members)


def per_contact(amount, contacts, **members):
    return do("ipr", contacts=contacts, measure="per_contact", v=amount, unit="mm", **members)


def at_most(amount, contacts, measure="per_contact", **members):
    return limit("ipr", contacts=contacts, measure=measure, max=amount, unit="mm", **members)


def status(of, *teeth):
    return state("tooth_status", teeth=teeth, of=of)


LOCK_36 = no("movement", teeth=(36,))
CLOSE_ALL = do("space", dir="close")
STEPS_10 = limit("staging", of="steps", measure="count", max=10, unit="count")
TENTH = limit("staging", of="movement_per_step", measure="step", max=0.1, unit="mm")
STEPS_20 = do("staging", of="steps", measure="count", v=20, unit="count")
FORTNIGHT = do("staging", of="change_interval", measure="interval", v=14, unit="day")
NOTHING_GAINS = (no("ipr", arch="both"), no("archwidth", arch="both", dir="expand"), no("incline", dir="procline"))
CROWDED = now("crowding", 5, arch="lower")
LOWER_MIDLINE = do("midline", arch="lower", dir="patient_right", measure="change", v=1, unit="mm")
IN_MONTHS = {"of": "duration", "measure": "duration", "unit": "month"}
CLASS_I = state("sagittal", side="both", class_="I")

# class, what is said, (question, level, clauses), what is said in the near miss
CLASSES = [
    (1, [no("ipr", arch="both"), per_contact(0.2, ((41, 31),))], ("forbid-and-asked", "stop", (0, 1)),
     [no("ipr", arch="upper"), per_contact(0.2, LOWER)]),
    (1, [do("attachment", teeth=(13, 23)), no("attachment", teeth=(13,))], ("forbid-and-asked", "stop", (0, 1)),
     [do("attachment"), no("attachment", teeth=(12, 11, 21, 22))]),
    (2, [no("ipr", arch="lower"), at_most(0.3, LOWER)], ("forbid-and-limited", "stop", (0, 1)),
     [at_most(0.3, LOWER), no("ipr", contacts=((41, 31),))]),
    (3, [no("attachment"), c("attachment", "permit")], ("forbid-and-permitted", "stop", (0, 1)),
     [c("attachment", "permit", teeth=(15, 14, 24, 25)), no("attachment", teeth=(12, 11, 21, 22))]),
    (3, [no("attachment"), c("attachment", "permit", teeth=(15, 14))], ("forbid-and-permitted", "stop", (0, 1)),
     [c("attachment", "permit"), no("attachment", pending=("teeth",))]),
    (4, [keep("overjet"), target("overjet", 2)], ("keep-and-changed", "stop", (0, 1)),
     [now("overjet", 2), keep("overjet"), target("overjet", 2)]),
    (4, [keep("midline", arch="both"), LOWER_MIDLINE], ("keep-and-changed", "stop", (0, 1)),
     [keep("midline", arch="upper"), LOWER_MIDLINE]),
    (5, [keep("overbite"), change("intrude", (42, 41, 31, 32), 2)], ("keep-and-forced", "confirm", (0, 1)),
     [keep("overbite"), change("intrude", (42, 41, 31, 32), 2), change("extrude", (12, 11, 21, 22), 2)]),
    (6, [keep("overjet"), do("move", teeth=(12, 11, 21, 22), dir="retract")], ("keep-and-retracted", "confirm", (0, 1)),
     [keep("overjet"), do("move", teeth=(12, 11, 21, 22), dir="retract"),
      do("move", teeth=(42, 41, 31, 32), dir="lingual")]),
    (7, [LOCK_36, change("move", (47, 46, 36, 37), 1, dir="distal")], ("locked-and-moved", "stop", (0, 1)),
     [LOCK_36, do("align", arch="both")]),
    (8, [no("movement", teeth=(16, 26, 46, 36)),
         do("archwidth", teeth=(16, 15, 14, 24, 25, 26), dir="expand", measure="per_side", v=2, unit="mm")],
     ("locked-and-widened", "stop", (0, 1)),
     [no("movement", teeth=(17, 27)),
      do("archwidth", teeth=(16, 15, 14, 24, 25, 26), dir="expand", measure="per_side", v=2, unit="mm")]),
    (9, [no("movement", teeth=(46,)), do("elastic", class_="II", links=((13, 46),))],
     ("locked-and-loaded", "confirm", (0, 1)),
     [no("movement", teeth=(47,)), do("elastic", class_="II", links=((13, 46),))]),
    (10, [status("missing", 12), do("attachment", teeth=(12,))], ("absent-and-used", "stop", (0, 1)),
     [status("missing", 12), do("pontic", teeth=(12,)), do("space", teeth=(12,), dir="leave", measure="target", v=7)]),
    (10, [do("extraction", teeth=(14,)), do("ipr", contacts=((14, 13),), measure="per_contact", v=0.2, unit="mm")],
     ("absent-and-used", "stop", (0, 1)),
     [do("extraction", teeth=(41,)), do("space", teeth=(41,), dir="close", of="extraction_site")]),
    (11, [status("ankylosed", 75), change("extrude", (75,), 1)], ("immovable-and-moved", "stop", (0, 1)),
     [status("ankylosed", 75), no("movement", teeth=(75,)), change("extrude", (85,), 1)]),
    (12, [status("bridge", 16, 15, 14), do("rotate", teeth=(15,), dir="derotate")],
     ("bridge-moved-apart", "stop", (0, 1)),
     [status("bridge", 16, 15, 14), change("intrude", (16, 15, 14), 0.5)]),
    (13, [status("veneer", 11), do("attachment", teeth=(11,))], ("restored-and-bonded", "stop", (0, 1)),
     [status("crown", 46), no("attachment", teeth=(11, 21, 46)), do("attachment", teeth=(14, 24))]),
    (14, [do("scope", arch="upper", only=True), per_contact(0.2, LOWER)], ("outside-scope", "stop", (0, 1)),
     [do("scope", arch="upper", only=True), do("space", contacts=((11, 21),), dir="close"), no("ipr", arch="both")]),
    (14, [no("scope", arch="lower"), do("align", arch="both")], ("outside-scope", "stop", (0, 1)),
     [no("scope", arch="lower"), c("attachment", "permit")]),
    (14, [do("scope", teeth=(12, 11, 21, 22), only=True), do("rotate", teeth=(13,), dir="derotate")],
     ("outside-scope", "stop", (0, 1)),
     [do("scope", teeth=(12, 11, 21, 22), only=True), do("attachment", teeth=(14, 24)),
      do("ipr", contacts=((13, 12),), measure="per_contact", v=0.2, unit="mm")]),
    (15, [do("align", teeth=LOWER_FRONT, only=True), do("rotate", teeth=(35,), dir="derotate")],
     ("only-and-wider", "stop", (0, 1)),
     [do("align", teeth=LOWER_FRONT, only=True), do("rotate", teeth=(33,), dir="derotate")]),
    (16, [target("overjet", 2), target("overjet", 3)], ("two-targets", "stop", (0, 1)),
     [now("overbite", 60, "pct"), target("overbite", 30, "pct"),
      limit("overbite", measure="target", max=40, unit="pct")]),
    (17, [now("overbite", 6), now("overbite", 20, "pct")], ("units-disagree", "confirm", (0, 1)),
     [now("overbite", 6), now("overbite", 70, "pct")]),
    (18, [at_most(0.3, LOWER), at_most(2, LOWER, "total")], ("total-never-reached", "confirm", (0, 1)),
     [at_most(0.3, LOWER), at_most(1.5, LOWER, "total")]),
    (19, [per_contact(0.3, LOWER), at_most(1, LOWER, "total")], ("sum-against-total", "stop", (0, 1)),
     [per_contact(0.3, LOWER), at_most(1.5, LOWER, "total")]),
    (20, [do("ipr", contacts=LOWER, measure="per_contact", min=0.4, unit="mm"), at_most(0.3, LOWER)],
     ("bounds-cross", "stop", (0, 1)),
     [do("ipr", contacts=LOWER, measure="per_contact", min=0.2, unit="mm"), at_most(0.3, LOWER)]),
    (20, [do("ipr", contacts=LOWER, measure="per_contact", min=0.4, max=0.3, unit="mm")],
     ("least-above-most", "stop", (0,)),
     [do("ipr", contacts=LOWER, measure="per_contact", min=0.3, max=0.3, unit="mm")]),
    (21, [at_most(0.5, LOWER, "per_surface"), at_most(0.5, LOWER)], ("contact-against-surface", "stop", (0, 1)),
     [at_most(0.25, LOWER, "per_surface"), at_most(0.5, LOWER)]),
    (22, [now("midline", 1, arch="lower", dir="patient_left"), do("midline", arch="lower", dir="patient_left")],
     ("same-side", "stop", (0, 1)),
     [now("midline", 1, arch="lower", dir="patient_left"), do("midline", arch="lower", dir="patient_right")]),
    (22, [change("intrude", (11, 21), 1), change("extrude", (11,), 0.5)], ("opposite-directions", "stop", (0, 1)),
     [change("intrude", (11, 21), 1), change("extrude", (12, 22), 0.5)]),
    (24, [state("rotate", teeth=(12,), dir="mesial_in"), change("rotate", (12,), 10, "deg", dir="mesial_in")],
     ("direction-against-finding", "confirm", (0, 1)),
     [state("rotate", teeth=(12,), dir="mesial_in"), change("rotate", (12,), 10, "deg", dir="mesial_out")]),
    (24, [state("position", teeth=(11,), of="over_erupted"), change("extrude", (11,), 1)],
     ("direction-against-finding", "confirm", (0, 1)),
     [state("position", teeth=(11,), of="over_erupted"), change("intrude", (11,), 1)]),
    (25, [state("space", arch="upper", of="spacing"), per_contact(0.2, UPPER)],
     ("spaced-and-stripped", "confirm", (0, 1)),
     [state("space", arch="upper", of="spacing"), per_contact(0.2, LOWER)]),
    (26, [CLASS_I, no("elastic"), do("move", dir="distal", pending=("teeth",))],
     ("class-one-and-corrected", "confirm", (0, 2)),
     [CLASS_I, no("elastic"), change("move", (13, 12), 1, dir="distal")]),
    (27, [now("overjet", 7), state("crossbite", teeth=(11, 21), of="anterior")],
     ("overjet-and-crossbite", "stop", (0, 1)),
     [now("overjet", 7), state("crossbite", teeth=(15, 45))]),
    (28, [state("sagittal", class_="II/1"), state("overjet", of="reverse", measure="current", v=2, unit="mm")],
     ("class-against-overjet", "confirm", (0, 1)),
     [state("sagittal", class_="III"), state("overjet", of="reverse", measure="current", v=2, unit="mm")]),
    (29, [now("openbite", 3, of="anterior"), now("overbite", 4)], ("open-bite-and-overbite", "confirm", (0, 1)),
     [now("openbite", 3, of="anterior"), target("overbite", 1)]),
    (31, [do("rotate", teeth=(23,), dir="derotate", side="right")], ("side-against-teeth", "stop", (0,)),
     [do("rotate", teeth=(13,), dir="derotate", side="right")]),
    (32, [do("rotate", teeth=(14,), dir="derotate", arch="lower")], ("arch-against-teeth", "stop", (0,)),
     [do("rotate", teeth=(44,), dir="derotate", arch="lower")]),
    (35, [do("elastic", class_="III", links=((13, 46),))], ("elastics-against-class", "confirm", (0,)),
     [do("elastic", class_="II", links=((13, 46),))]),
    (35, [do("elastic", of="class_III", links=((13, 46),))], ("elastics-against-class", "confirm", (0,)),
     [do("elastic", of="class_II", links=((13, 46),))]),
    (35, [state("sagittal", class_="III"), do("elastic", of="class_II")],
     ("elastics-against-finding", "confirm", (0, 1)),
     [state("sagittal", class_="II"), do("elastic", of="class_II")]),
    (35, [state("sagittal", class_="III"), do("elastic", class_="II")], ("elastics-against-finding", "confirm", (0, 1)),
     [state("sagittal", class_="II"), do("elastic", class_="II")]),
    (36, [*NOTHING_GAINS, no("extraction"), CROWDED], ("no-source-of-space", "stop", (0, 1, 2, 3, 4)),
     [*NOTHING_GAINS, CROWDED]),
    (37, [now("crowding", 6, arch="lower"), at_most(1, LOWER, "total", only=True)], ("space-budget", "confirm", (0, 1)),
     [now("crowding", 6, arch="lower"), at_most(1, LOWER, "total"),
      limit("incline", teeth=(42, 41, 31, 32), dir="procline", measure="change", max=3, unit="deg")]),
    (38, [CLOSE_ALL, do("space", contacts=((13, 12), (22, 23)), dir="leave", measure="target", v=1, unit="mm")],
     ("closed-with-exception", "confirm", (0, 1)),
     [do("space", contacts=LOWER, dir="close"), do("space", contacts=((13, 12),), dir="leave", measure="target", v=1)]),
    (38, [do("space", contacts=((11, 21),), dir="close"), keep("space", contacts=((11, 21),))],
     ("closed-and-left", "stop", (0, 1)),
     [do("space", contacts=((11, 21),), dir="close"), keep("space", contacts=((13, 12),))]),
    (39, [now("space", 5, teeth=(12,)), keep("space", teeth=(12,)),
          do("space", teeth=(12,), dir="open", of="implant", measure="target", v=7, unit="mm")],
     ("space-too-small", "stop", (0, 1, 2)),
     [now("space", 7, teeth=(12,)), keep("space", teeth=(12,)),
      state("restoration", teeth=(12,), of="implant", min=7, unit="mm")]),
    (40, [do("attachment", if_="from stage 1"), no("attachment", if_="before stage 4")],
     ("begun-before-allowed", "stop", (0, 1)),
     [do("attachment", if_="from stage 4"), no("attachment", if_="before stage 4")]),
    (40, [do("ipr", contacts=LOWER, if_="from the third step on"),
          do("staging", of="ipr_not_before_step", measure="step", min=4, unit="count")],
     ("begun-before-allowed", "stop", (0, 1)),
     [c("attachment", "permit", if_="only from the third aligner on"), no("attachment", teeth=(12, 11, 21, 22))]),
    (41, [STEPS_10, TENTH, change("move", (16,), 3, dir="distal")], ("steps-too-few", "confirm", (0, 1, 2)),
     [STEPS_10, TENTH, change("move", (16,), 1, dir="distal")]),
    (42, [STEPS_20, FORTNIGHT, do("staging", v=4, **IN_MONTHS)],
     ("duration-too-short", "confirm", (0, 1, 2)),
     [STEPS_20, FORTNIGHT, do("staging", v=9, **IN_MONTHS)]),
    (43, [no("extraction"), do("extraction", teeth=(41,))], ("extraction-and-none", "stop", (0, 1)),
     [no("extraction", teeth=(14, 24)), do("extraction", teeth=(41,))]),
    (44, [do("extraction", teeth=(14, 24)), do("extraction", teeth=(14, 24, 44, 34))],
     ("extraction-lists-differ", "stop", (0, 1)),
     [do("extraction", teeth=(14, 24)), do("extraction", teeth=(44, 34))]),
    (45, [keep("retainer", teeth=LOWER_FRONT, of="bonded"), do("align", teeth=LOWER_FRONT)],
     ("retained-and-moved", "stop", (0, 1)),
     [do("retainer", teeth=LOWER_FRONT, of="bonded"), do("align", teeth=LOWER_FRONT)]),
    (46, [do("archwidth", arch="upper", dir="expand", measure="per_side", v=2, unit="mm"),
          keep("archwidth", of="intercanine"), keep("archwidth", of="intermolar")],
     ("width-kept-and-changed", "stop", (0, 1, 2)),
     [do("archwidth", teeth=(15, 14, 24, 25), dir="expand", measure="per_side", v=2, unit="mm"),
      keep("archwidth", of="intercanine"), keep("archwidth", arch="lower")]),
    (46, [do("archwidth", teeth=(16, 15, 14, 24, 25, 26), dir="expand"),
          keep("archwidth", arch="upper", of="intermolar")],
     ("width-kept-and-changed", "stop", (0, 1)),
     [do("archwidth", arch="upper", dir="expand"), keep("archwidth", arch="upper", of="intercanine")]),
    (47, [limit("movement", of="bodily", only=True), change("tip", (13,), 5, "deg", dir="distal_crown")],
     ("bodily-and-tipped", "stop", (0, 1)),
     [limit("movement", of="bodily", only=True), change("move", (13,), 1, dir="distal")]),
    (48, [c("ipr", "permit", if_="only if needed"), per_contact(0.2, LOWER)],
     ("condition-and-plain", "confirm", (0, 1)),
     [c("ipr", "permit", arch="upper", if_="only if needed"), per_contact(0.2, LOWER)]),
    (50, [change("intrude", (11,), 0.5), change("intrude", (11,), 1)], ("asked-twice", "stop", (0, 1)),
     [change("intrude", (11,), 0.5), change("intrude", (21,), 1)]),
    (50, [at_most(0.3, LOWER), at_most(0.5, LOWER)], ("two-limits", "stop", (0, 1)),
     [at_most(0.3, LOWER), at_most(0.2, ((41, 31),))]),
    (52, [keep("midline", arch="both"), change("move", (17, 16, 15, 14), 2, dir="distal")],
     ("midline-and-one-side", "confirm", (0, 1)),
     [keep("midline", arch="both"), change("move", (17, 16, 26, 27), 2, dir="distal")]),
    (53, [state("patient", of="bonding_allergy"), do("button", teeth=(46, 36))],
     ("no-bonding-and-bonded", "stop", (0, 1)),
     [state("patient", of="thin_bone"), do("button", teeth=(46, 36))]),
]  # fmt: skip


def found(clauses, text=""):
    return [(one.asks, dict(one.facts)["level"], one.concerns) for one in contradictions(clauses, text)]


@pytest.mark.parametrize("clauses, expected", [row[1:3] for row in CLASSES])
def test_a_contradiction_is_one_question_about_its_clauses(clauses, expected):
    assert found(clauses) == [expected]


@pytest.mark.parametrize("near", [row[3] for row in CLASSES])
def test_what_holds_together_is_not_asked_about(near):
    assert found(near) == []


def at(text, words, clause):
    start = text.index(words)
    return clause.with_(spans=((start, start + len(words)),))


def test_class_23_a_target_against_its_direction_is_seen_in_the_words():
    wrong, right = "Overjet is 2, reduce to 3.", "Overjet is 4, reduce to 3."
    said = [(wrong, 2), (right, 4)]
    clauses = [
        [at(text, f"Overjet is {value}", now("overjet", value)), at(text, "reduce to 3", target("overjet", 3))]
        for text, value in said
    ]
    assert found(clauses[0], wrong) == [("direction-against-target", "stop", (0, 1))]
    assert found(clauses[1], right) == []


def test_class_49_a_correction_is_confirmed_as_one():
    text = "Overjet: keep.\nPS reduce the overjet to 3"
    clauses = [at(text, "Overjet: keep", keep("overjet")), at(text, "reduce the overjet to 3", target("overjet", 3))]
    assert found(clauses, text) == [("corrected-later", "confirm", (0, 1))]
    assert found(clauses, text.replace("PS", "   ")) == [("keep-and-changed", "stop", (0, 1))]


@pytest.mark.parametrize(
    "clauses, expected",
    [
        ([at_most(0.5, LOWER), at_most(1, LOWER, "total")], ["total-governs"]),
        ([at_most(0.2, LOWER), at_most(1, LOWER, "total")], []),
        ([change("intrude", (11,), 1), change("intrude", (11,), 1)], ["said-twice"]),
        ([change("intrude", (11,), 1), change("intrude", (21,), 1)], []),
    ],
)
def test_remarks_are_never_questions(clauses, expected):
    assert [one.asks for one in remarks(clauses)] == expected
    assert all(dict(one.facts)["level"] == "note" for one in remarks(clauses))
    assert found(clauses) == []


@pytest.mark.parametrize("clauses, facts",
    [
        ([keep("overbite"), change("intrude", (42, 41, 31, 32), 2)], {"by": "2", "way": "fall"}),
        ([keep("overjet"), change("move", (12, 11, 21, 22), 2, dir="retract")],
         {"by": "by about 2 mm", "way": "fall"}),
        ([now("overbite", 6), now("overbite", 20, "pct")], {"height": "30"}),
        ([at_most(0.3, LOWER), at_most(2, LOWER, "total")],
         {"sum": "1.5", "contacts": "5", "total": "at most 2 mm"}),
        ([per_contact(0.3, LOWER), at_most(1, LOWER, "total")], {"sum": "1.5", "total": "at most 1 mm"}),
        ([now("crowding", 6, arch="lower"), at_most(1, LOWER, "total")], {"needed": "6 mm", "gained": "1"}),
        ([STEPS_10, TENTH, change("move", (16,), 3, dir="distal")], {"needed": "30", "way": "3 mm"}),
        ([STEPS_20, FORTNIGHT, do("staging", v=4, **IN_MONTHS)], {"needed": "9"}),
    ],
)  # fmt: skip
def test_the_arithmetic_is_among_the_facts(clauses, facts):
    (question,) = contradictions(clauses)
    assert facts.items() <= dict(question.facts).items()


def test_one_prohibition_is_one_question_whatever_it_meets():
    clauses = [no("ipr", arch="both"), per_contact(0.2, LOWER), per_contact(0.1, UPPER)]
    assert found(clauses) == [("forbid-and-asked", "stop", (0, 1, 2))]


def test_spans_are_those_of_both_clauses_in_order():
    clauses = [keep("overjet").with_(spans=((20, 24), (30, 32))), target("overjet", 2).with_(spans=((0, 9),))]
    assert contradictions(clauses)[0].spans == ((0, 9), (20, 24), (30, 32))


@pytest.mark.parametrize("record, clauses", samples())
def test_the_samples_hold_exactly_the_contradictions_written_beside_them(record, clauses):
    expected = [tuple(one["for"]) for one in record["ask"] if one["type"] == "contradiction"]
    assert [one.concerns for one in contradictions(clauses, record["text"])] == expected


@pytest.mark.parametrize("clauses", [row[1] for row in CLASSES])
def test_every_question_and_choice_has_words(clauses):
    (question,) = contradictions(clauses, "x")
    sentence = wording(question, clauses, "x")
    assert sentence.strip().endswith("?")
    assert "{" not in sentence
    assert all(option_words(question, clauses, "x"))


@pytest.mark.parametrize(
    "text, types",
    [
        ("Attachment on the upper left canine (13).", {"teeth"}),
        ("Right: derotate 23, 33.", {"teeth", "not_understood"}),
        ("FDI. Lower: derotate 14.", {"teeth", "notation", "contradiction", "not_understood"}),
        ("FDI. Intrude 19 by 1 mm.", {"implausible"}),
        ("Align 6-11, IPR 33-43 0.2 mm per contact.", {"notation", "implausible"}),
    ],
)
def test_teeth_that_contradict_themselves_are_asked_about_where_they_are_read(text, types):
    reading = read_text(text)
    asked = {index for question in reading.questions for index in question.concerns}
    orders = {index for index, clause in enumerate(reading.clauses) if clause.kind != "notation"}
    assert {question.type for question in reading.questions} & types
    assert orders <= asked


def test_every_class_has_its_row():
    elsewhere = {23, 30, 33, 34, 49, 51}
    assert {row[0] for row in CLASSES} | elsewhere == set(range(1, 54))
