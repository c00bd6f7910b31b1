import json
from pathlib import Path

import pytest

from wellposed_converters.text.scoring import agrees, score

SAMPLES = [
    json.loads(line) for line in (Path(__file__).parent / "corpus" / "samples.jsonl").read_text("utf-8").splitlines()
]


def clause(kind, mode, *spans, **members):
    return {"kind": kind, "mode": mode, "spans": [list(span) for span in spans]} | members


def question(kind, *spans, concerns=()):
    return {"type": kind, "spans": [list(span) for span in spans], "for": list(concerns)}


def sorts(found):
    return [(silent.sort, silent.weights) for silent in found.silent]


# "No IPR on 12. Rotate 12 mesial-in 10 deg. ext 14."
NO_IPR = clause("ipr", "forbid", (0, 12), teeth=[12])
ROTATE = clause("rotate", "do", (14, 41), teeth=[12], dir="mesial_in", measure="change", min=10, max=10, unit="deg")
EXT = question("meaning", (43, 49))
GOLD = ([NO_IPR, ROTATE], [EXT])


@pytest.mark.parametrize("sample", SAMPLES, ids=[sample["id"] for sample in SAMPLES])
def test_the_expected_reading_is_perfect_against_itself(sample):
    clauses, questions = sample["expected"], sample["ask"]
    found = score(clauses, questions, clauses, questions)
    assert found.right == tuple((n, n) for n in range(len(clauses)))
    assert found.questions_right == tuple(range(len(questions)))
    assert (found.asked, found.lost, found.wrong_made, found.silent) == ((), (), (), ())
    assert (found.questions_covered, found.questions_missed, found.questions_needless) == ((), (), ())


@pytest.mark.parametrize("sample", SAMPLES, ids=[sample["id"] for sample in SAMPLES])
def test_an_empty_reading_loses_everything_silently(sample):
    found = score(sample["expected"], sample["ask"], [], [])
    assert len(found.silent) == len(sample["expected"]) + len(sample["ask"])
    assert {silent.sort for silent in found.silent} <= {"missing", "swallowed"}


@pytest.mark.parametrize("sample", SAMPLES, ids=[sample["id"] for sample in SAMPLES])
def test_asking_about_the_whole_text_is_never_silent(sample):
    whole = question("not_understood", (0, len(sample["text"])))
    found = score(sample["expected"], sample["ask"], [], [whole])
    assert (found.silent, len(found.asked)) == ((), len(sample["expected"]))


@pytest.mark.parametrize(
    "change, weights",
    [
        ({"teeth": [13]}, ("wrong tooth",)),
        ({"dir": "mesial_out"}, ("wrong direction",)),
        ({"max": 12}, ()),
        ({"unit": "mm"}, ()),
        ({"kind": "tip"}, ()),
        ({"mode": "forbid"}, ()),
        ({"only": True}, ()),
        ({"if": "if needed"}, ()),
        ({"kind": "extraction"}, ("extraction",)),
    ],
)
def test_a_clause_wrong_in_one_hard_field_is_one_silent_error(change, weights):
    found = score(*GOLD, [NO_IPR, ROTATE | change], [EXT])
    assert sorts(found) == [("wrong", weights)]
    assert (found.lost, found.wrong_made, found.right) == ((1,), (1,), ((0, 0),))


def test_a_lost_negation_weighs_more():
    found = score(*GOLD, [NO_IPR | {"mode": "do"}, ROTATE], [EXT])
    assert sorts(found) == [("wrong", ("ipr", "lost negation"))]


def test_a_missing_prohibition_is_a_lost_negation():
    assert sorts(score(*GOLD, [ROTATE], [EXT])) == [("missing", ("ipr", "lost negation"))]


def test_a_clause_swallowed_by_a_note_is_lost_and_the_note_is_wrong():
    found = score(*GOLD, [NO_IPR, clause("note", "state", (14, 41))], [EXT])
    assert sorts(found) == [("wrong", ())]


def test_a_clause_nothing_expects_is_invented():
    extra = clause("attachment", "do", (50, 60), teeth=[14])
    assert sorts(score(*GOLD, [NO_IPR, ROTATE, extra], [EXT])) == [("invented", ())]


def test_a_question_answered_by_a_firm_clause_is_silent():
    extracted = clause("extraction", "do", (43, 49), teeth=[14])
    found = score(*GOLD, [NO_IPR, ROTATE, extracted], [])
    assert sorts(found) == [("invented", ("extraction",)), ("answered", ("extraction",))]
    assert found.questions_missed == (0,)


def test_a_question_that_vanishes_is_swallowed():
    assert sorts(score(*GOLD, [NO_IPR, ROTATE], [])) == [("swallowed", ())]


@pytest.mark.parametrize("put", [question("vague", (14, 20)), question("vague", (60, 61), concerns=[1])])
def test_a_wrong_clause_that_a_question_points_at_is_not_silent(put):
    found = score(*GOLD, [NO_IPR, ROTATE | {"max": 12}], [EXT, put])
    assert (found.silent, found.asked, found.questions_needless) == ((), (1,), (1,))


def test_a_question_of_another_type_covers():
    found = score(*GOLD, [NO_IPR, ROTATE], [question("missing_amount", (43, 46))])
    assert (found.silent, found.questions_right, found.questions_covered) == ((), (), (0,))


def test_a_question_over_shared_words_alone_covers_no_clause():
    # "Keep OB + OJ": asking about "Keep OB" says nothing about the overjet
    overbite, overjet = clause("overbite", "keep", (0, 7)), clause("overjet", "keep", (0, 4), (10, 12))
    found = score([overbite, overjet], [], [], [question("meaning", (0, 7))])
    assert (found.asked, sorts(found)) == ((0,), [("missing", ())])


def test_saying_a_right_clause_twice_is_no_error_but_a_second_other_one_is():
    assert score(*GOLD, [NO_IPR, ROTATE, ROTATE], [EXT]).silent == ()
    assert sorts(score(*GOLD, [NO_IPR, ROTATE, ROTATE | {"teeth": [11]}], [EXT])) == [("invented", ())]


def test_words_elsewhere_do_not_make_a_clause_right():
    found = score(*GOLD, [NO_IPR, ROTATE | {"spans": [[43, 49]]}], [EXT])
    assert found.lost == (1,)


PENDING = clause("torque", "do", (0, 10), teeth=[11], unit="deg", min=5, max=5, measure="change", pending=["dir"])
LRT = question("meaning", (0, 10), concerns=[0])


def test_a_waiting_clause_is_right_only_when_a_question_points_at_it():
    made = {name: value for name, value in PENDING.items() if name != "pending"}
    assert score([PENDING], [LRT], [made], [LRT]).right == ((0, 0),)
    assert sorts(score([PENDING], [LRT], [made], [])) == [("wrong", ()), ("answered", ())]


def test_a_waiting_clause_must_agree_in_what_does_not_wait():
    found = score([PENDING], [LRT], [PENDING | {"teeth": [21]}], [LRT])
    assert (found.right, found.asked, found.silent) == ((), (0,), ())


def test_two_notes_may_be_made_as_one_and_one_as_two():
    one, two, both = (clause("note", "state", span) for span in ((0, 5), (6, 9), (0, 9)))
    assert score([one, two], [], [both], []).silent == ()
    assert score([both], [], [one, two], []).silent == ()


@pytest.mark.parametrize(
    "one, other, expected",
    [
        ({"teeth": [11, 12]}, {"teeth": [12, 11]}, True),
        ({"contacts": [[11, 21]]}, {"contacts": [[21, 11]]}, True),
        ({"min": 1}, {"min": 1.0}, True),
        ({"min": 0}, {}, False),
        ({"approx": False}, {}, True),
        ({"ref": "facial_midline"}, {"ref": "upper_midline"}, True),
        ({"of": "black_triangle"}, {"of": "diastema"}, True),
        ({"if": "if needed"}, {"if": "when needed"}, True),
        ({"arch": "upper"}, {"arch": "lower"}, False),
        ({"arch": "upper", "teeth": [11]}, {"teeth": [11]}, True),
        ({}, {"teeth": [11]}, False),
    ],
)
def test_hard_fields_are_compared_by_value_and_soft_ones_not(one, other, expected):
    assert agrees(clause("space", "do", (0, 1), **one), clause("space", "do", (0, 1), **other)) is expected


def test_the_sub_type_counts_for_the_kinds_for_which_it_is_hard():
    margins, edges = (clause("level", "do", (0, 1), of=of) for of in ("gingival_margins", "incisal_edges"))
    assert not agrees(margins, edges)
