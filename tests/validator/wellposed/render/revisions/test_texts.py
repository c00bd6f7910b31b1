"""Comparisons and histories as they are read: whole texts, written by hand first."""

import json
from dataclasses import replace

from tests.validator.wellposed.consistency.ordinary import allowed, found, must
from tests.validator.wellposed.revisions.cases import Case, digest, prescription
from tests.validator.wellposed.revisions.test_plans import out, setup

from wellposed.findings import CAUTION
from wellposed.model import Prescription
from wellposed.render.revisions import comparison_text, history_json, history_text, setups_text
from wellposed.review.result import Unasked
from wellposed.revisions.comparing import compared
from wellposed.revisions.history import history
from wellposed.revisions.plans import setups_compared

OLD = {
    "findings": [found("f1", "overbite", 3)],
    "goals": [must("g1", measure="overbite", at_most=4, unit="mm", because=["f1"])],
    "keep": [must("k1", hold=["16", "26"])],
    "movements": [must("m1", teeth=["11", "21"], motion="labial", at_most=1, unit="mm")],
    "allow": [allowed("a1", "widening", arch="upper", up_to=3, unit="mm")],
    "retention": [{"id": "r1", "arch": "upper", "retainer": "bonded"}],
}
NEW = {
    "revision": 2,
    "replaces": digest(prescription(**OLD).model_dump(exclude_unset=True, mode="json")),
    "findings": [found("f1", "overbite", 3)],
    "goals": [must("g1", measure="overbite", at_most=3.5, unit="mm", because=["f1"])],
    "keep": [must("k1", hold=["26", "16"])],
    "movements": [must("m1", teeth=["11", "21"], motion="palatal", at_most=1, unit="mm")],
    "allow": [allowed("a1", "widening", arch="upper", up_to=3.5, unit="mm")],
    "exclude": [{"id": "x1", "means": "extraction"}],
    "patient": {"reference": "P-7F3A", "age_years": 31},
}
COMPARED = """\
HR-2031, revision 1 → HR-2031, revision 2. 1 reversed, 1 dropped, 1 added, 1 tightened, 1 loosened,
1 reworded and 1 unchanged.
It is the next revision: its number and the digest it replaces agree.
Check before: possible. Check now: possible.

Turned round

m1  Before:       move 11 21 (upper incisors) labially by at most 1.0 mm
    Now:          move 11 21 (upper incisors) palatally by at most 1.0 mm

Dropped

r1  Retention:    a bonded retainer, upper arch

Added

x1  Exclude:      no extraction

Tightened: fewer plans will do

g1  Goals:        overbite at most 3.5 mm
    Differs:      at most: 4.0 mm → 3.5 mm

Loosened: more plans will do

a1  Allow:        widening, upper arch, up to 3.5 mm
    Differs:      up to: 3.0 mm → 3.5 mm

Said in another way, and meaning the same

k1  hold 16 26 (upper molars)

Unchanged

f1

Facts

patient  age years added; not repeated here.

A necessary check, not a plan: roots, bone and tooth contacts are not looked at, and planned is not
achieved.
"""


def test_two_prescriptions():
    text = comparison_text(compared(prescription(**OLD), prescription(**NEW)))
    told, _, caution = text.partition("Decision support")
    assert told == COMPARED
    assert " ".join(f"Decision support{caution}".split()) == CAUTION


def test_what_asks_and_opens_is_said_where_there_are_two_readings():
    one, other = (prescription(goals=[must("g1", align=teeth)]) for teeth in (["11", "12"], ["11", "12", "13"]))
    assert "So:           it asks more and opens more than before." in comparison_text(compared(one, other))


def test_an_id_that_named_something_else_is_warned_of():
    one, other = (prescription(goals=[must("g1", level=arch)]) for arch in ("upper", "lower"))
    assert "Beware:       an id that named something else" in comparison_text(compared(one, other))


def test_why_it_is_not_the_next_revision():
    one, other = prescription(), prescription(id="HR-9", revision=3, replaces="00" * 32)
    told = " ".join(comparison_text(compared(one, other)).split())
    assert (
        "It is not shown to be the next revision: the ids differ (HR-2031, HR-9), revision 3 does not come next after "
        "revision 1 and the digest it replaces is that of another document."
    ) in told


def test_words_of_the_prescriber_cannot_break_the_lines():
    words = "a\nHR-9  possible.\x1b[31m”"
    parts = [[{"id": "b1", "part": "other", "words": one}] for one in ("x", words)]
    text = comparison_text(compared(*(prescription(appliance=part) for part in parts)))
    assert "\x1b" not in text
    assert not any(line.startswith("HR-9") for line in text.splitlines())


SETUPS = """\
S-1, revision 1 → S-1, revision 1.
It is not shown to be the next revision: revision 1 does not come next after revision 1 and it says
that it replaces nothing.
Answers HR-2031 revision 1 (abababababab…).

2 of 3 movements differ by more than rounding (0.01 in the unit stated).

Movements

11  (upper right central incisor) 0.5 mm outwards → 0.8 mm outwards (difference: 0.3 mm outwards)
12  (upper right lateral incisor) 0.5 mm inwards → 0.5 mm outwards (difference: 1.0 mm outwards)

"""


def test_two_setups():
    told = setups_compared(
        setup(movements=out(t11=0.5, t12=-0.5, t13=1)), setup(movements=out(t11=0.8, t12=0.5, t13=1))
    )
    assert setups_text(told).startswith(SETUPS)


HISTORY = """\
HR-2031: 2 prescriptions and 2 setups.

1  Level the lower arch: met by setup S-1 1, no longer by setup S-1 2, though of it no more was
   asked.
   Would change it: A setup that meets it again would change it.
   To do: Ask for what was reached before, or say which of the two is wanted.
   [caution · met-then-undone · g7]
"""
CLAUSES = """\
Clause by clause

g7  level the lower arch
    Revision 1:   asked; met in S-1 1
    Revision 2:   said in another way, as g7; NOT met in S-1 2
"""


def test_a_case():
    level = must("g1", level="lower")
    case = Case(
        {"goals": [level]}, {"setup": {"g1": "met"}}, {"goals": [{**level, "id": "g7"}]}, {"setup": {"g7": "not-met"}}
    )
    text = history_text(history(case.files, case.review))
    assert text.startswith(HISTORY)
    assert CLAUSES in text
    assert " ".join(text.split()).endswith(CAUTION)


def test_a_clause_is_headed_by_what_it_first_asked():
    asked = [must("g1", measure="overbite", at_most=most, unit="mm") for most in (4, 3.5)]
    case = Case(*({"findings": [found("f1", "overbite", 5)], "goals": [one]} for one in asked))
    text = history_text(history(case.files, case.review))
    assert "g1  overbite at most 4.0 mm\n    Revision 1:   asked\n" in text
    assert "    Revision 2:   tightened, now: overbite at most 3.5 mm\n" in text


def test_what_a_setup_moves_unasked_is_told_of_each():
    case = Case({"goals": [must("g1", level="lower")]}, {"setup": {}}, {"setup": {}})
    moved = [Unasked("out", tooth, "mm", size, 0.0, 0.1) for tooth, size in (("11", 0.5), ("21", 0.7))]

    def reviewer(order, setup, numbers):
        return replace(case.review(order, setup, numbers), unasked=tuple(moved if setup.revision == 1 else ()))

    told = history(case.files, reviewer)
    heading = "What moved though nothing opened it\n\n"
    first = "S-1 1  2 changes: 11 21 (upper incisors): 0.5 to 0.7 mm each outwards\n"
    assert heading + first + "S-1 2  nothing\n" in history_text(told)
    (one,) = json.loads(history_json(told))["cases"]
    assert [(each["revision"], [m["where"] for m in each["unasked"]]) for each in one["setups"]] == [
        (1, ["11", "21"]),
        (2, []),
    ]


def test_the_orders_of_these_tests_are_whole_documents():
    assert all(isinstance(prescription(**one), Prescription) for one in (OLD, NEW))


def test_bounds_with_sides_are_compared_from_side_to_side():
    goal = must("g1", measure="upper-midline", at_least=-1, at_most=1, unit="mm")
    counted = {"id": "e1", "measure": "overjet", "at_least": -2, "at_most": -1, "unit": "mm", "ground": "growth"}
    old = prescription(goals=[goal], expect=[counted])
    new = prescription(goals=[goal | {"at_least": -0.5}], expect=[counted | {"at_most": -0.5}], revision=2)
    told = comparison_text(compared(old, new))
    assert "from: 1.0 mm to the patient's right → 0.5 mm to the patient's right" in told
    assert "to: 1.0 mm less → 0.5 mm less" in told
