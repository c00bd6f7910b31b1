import pytest

from wellposed_converters.text.layout.sentences import sentences


def cut(text):
    return [text[one.start : one.end] for one in sentences(text, 0, len(text))]


@pytest.mark.parametrize(
    "parts",
    [
        ["IPR 0.3 mm.", "Keep OB."],
        ["IPR 0.2 mm. per contact."],
        ["Extrude 22 0.5 mm.", "13 rotate."],
        ["Extrude 22 0.5 mm.", "no IPR."],
        ["max. 0.3 mm"],
        ["Keep OB approx. 3 mm"],
        ["e.g. 12, i.e. the lateral"],
        ["Intrude 1.1 and 2.1 by 1.1 mm.", "Rotate 1.2."],
        ["max .3 per contact"],
        ["tooth no. 12 rotate"],
        [["IPR: no.", ""][0], "14 rotate"],
        ["No ext.", "keep OB"],
        ["IPR upper none;", "lower 0.2"],
        ["Attachment on 12?", "no"],
        ["12. Derotate"],
        ["Do not move 16.", "12. Derotate"],
        ["41 goes (a lower incisor. It is mobile) next week.", "No IPR"],
        ["(See above.)", "No IPR"],
        ["Only (if needed.", "No IPR"],
        ["Dr. Sample decides"],
        ["as discussed... and no IPR"],
        ["No IPR, no attachments, 8 steps max."],
    ],
)
def test_a_sentence_ends_where_it_ends(parts):
    assert cut(" ".join(parts)) == parts


def test_a_full_stop_without_a_space_ends_a_sentence_before_a_capital():
    assert cut("Keep OB.No IPR") == ["Keep OB.", "No IPR"]


def test_only_a_full_stop_closes():
    text = "IPR none; no ext. Keep"
    assert [one.closed for one in sentences(text, 0, len(text))] == [False, True, False]


def test_a_hundred_thousand_doubtful_stops_take_no_time():
    assert len(cut("Dr. " * 100_000)) == 1
