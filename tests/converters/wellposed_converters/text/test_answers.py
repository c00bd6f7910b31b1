import pytest

from wellposed_converters.text.answers import NotAnswered, answered, ask_all
from wellposed_converters.text.read import read_text

CONTRADICTION = "FDI. No IPR. IPR 31/41 0.2 mm."
TWO = "FDI. Attachments on front teeth. OB 2 mm."


def kinds(reading):
    return [(clause.kind, clause.mode) for clause in reading.clauses if clause.kind not in ("note", "notation")]


def test_of_two_that_exclude_each_other_the_chosen_one_stays():
    reading = read_text(CONTRADICTION)
    assert kinds(answered(reading, 0, "1")) == [("ipr", "forbid")]
    assert kinds(answered(reading, 0, "2")) == [("ipr", "do")]
    assert answered(reading, 0, "2").questions == ()


def test_what_excludes_each_other_cannot_both_stay():
    with pytest.raises(NotAnswered, match="exclude each other"):
        answered(read_text(CONTRADICTION), 0, "all")


def test_the_numbering_is_answered_by_its_name_and_the_note_read_again():
    reading = read_text("Intrude 24 25 by 0.5 mm.")
    assert reading.questions[0].type == "notation"
    assert answered(reading, 0, "FDI").clauses[0].teeth == (24, 25)
    assert answered(reading, 0, "universal").clauses[0].teeth == (41, 31)


@pytest.mark.parametrize(
    "words, why",
    [
        ("", "no answer"),
        ("Attachments on front teeth", "leaves something open"),
        ("Keep the overbite.", "must also speak of: attachment"),
        ("blorb", "leaves something open"),
    ],
)
def test_words_that_answer_nothing_are_refused(words, why):
    with pytest.raises(NotAnswered, match=why):
        answered(read_text("FDI. Attachments on front teeth."), 0, words)


def test_an_answer_takes_the_place_of_what_waited_and_points_at_the_words_asked_about():
    reading = read_text("FDI. Attachments on front teeth.")
    done = answered(reading, 0, "Attachments on 12, 11, 21 and 22.")
    (clause,) = [one for one in done.clauses if one.kind == "attachment"]
    assert (clause.teeth, clause.pending, clause.rules) == ((12, 11, 21, 22), (), ("answer",))
    assert clause.spans == reading.questions[0].spans


def test_nothing_withdraws_what_is_asked_about():
    reading = read_text("FDI. Attachments on front teeth.")
    assert kinds(answered(reading, 0, "nothing")) == []


@pytest.mark.parametrize("word, mode", [("now", "state"), ("wanted", "do")])
def test_a_value_is_found_or_wanted(word, mode):
    assert kinds(answered(read_text("OB 2 mm."), 0, word)) == [("overbite", mode)]


def test_every_question_is_put_once_and_open_ones_stay():
    put = []

    def ask(question, _reading, fault):
        put.append((question.type, fault))
        return {"finding_or_request": "now"}.get(question.type, "")

    reading, given = ask_all(read_text(TWO), ask, "c-1", lambda: "2026-01-01T00:00:00+00:00")
    assert [one for one, _ in put] == ["teeth", "finding_or_request"]
    assert [(one.words, one.by, one.at) for one in given] == [("now", "c-1", "2026-01-01T00:00:00+00:00")]
    assert [question.type for question in reading.questions] == ["teeth"]


def test_a_refused_answer_is_put_again_with_the_reason():
    answers, faults = iter(["blorb", "now"]), []

    def ask(_question, _reading, fault):
        faults.append(fault)
        return next(answers)

    reading, given = ask_all(read_text("OB 2 mm."), ask, "c-1", lambda: "t")
    assert faults[0] == ""
    assert "leaves something open" in faults[1]
    assert (reading.questions, len(given)) == ((), 1)
