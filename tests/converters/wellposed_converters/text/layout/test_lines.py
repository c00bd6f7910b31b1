import pytest

from wellposed_converters.text.layout.lines import goes_on, is_postscript, lines, list_marks, quoted


def marked(text):
    of = lines(text)
    return [text[a:b] for _, (a, b) in sorted(list_marks(text, of).items())]


def test_every_kind_of_line_end_ends_a_line_and_its_offsets_are_those_of_the_text():
    text = "a\r\n b \rc\n\nd\u2028e"
    assert [text[line.start : line.end] for line in lines(text)] == ["a", "b", "c", "", "d", "e"]


@pytest.mark.parametrize(
    "text, marks",
    [
        ("1. Align\n2. Keep OB", ["1.", "2."]),
        ("1. Align\n a) no\n b) yes\n2. Keep OB", ["1.", "a)", "b)", "2."]),
        ("11. intrude\n12. derotate", []),
        ("1. Align", []),
        ("1. Align\n2. Keep\n12. derotate", ["1.", "2."]),
        ("- 13\n• 23\n* no", ["-", "•", "*"]),
        ("-2 mm\n-", []),
        ("1.1 intrude\n2.1 intrude", []),
        ("(1) Align\n(2) Keep", ["(1)", "(2)"]),
    ],
)
def test_a_number_is_a_list_mark_only_in_a_row_that_counts_from_one(text, marks):
    assert marked(text) == marks


@pytest.mark.parametrize(
    "text, wide, expected",
    [
        ("No movement of\n16 26", 40, True),
        ("Do not move the teeth\n16 26", 40, True),
        ("Keep OB and\nOJ", 40, True),
        ("Attachments on 12,\n22", 40, True),
        ("align 3-3,\noverjet: keep", 40, False),
        ("attachments on premolars\nnot on 14", 40, True),
        ("keep ob\nno ipr", 40, False),
        ("IPR: no\nattachments: yes", 40, False),
        ("rotate 12 mesial in\nkeep ob", 40, False),
        ("Attachments from the third aligner on\nnone on 12", 40, False),
        ("Keep OB.\nof course", 40, False),
        ("Upright the roots of 11 and 13 so that they are parallel there\nsites", 64, True),
        ("Upright the roots of 11 and 13 so that they are parallel there\nIPR no", 64, False),
    ],
)
def test_a_sentence_goes_on_only_where_it_plainly_does(text, wide, expected):
    assert goes_on(text, *lines(text), wide) is expected


def test_a_comparison_among_quoted_lines_is_quoted():
    assert quoted("> Extract 14\n> 13 extrude", lines("> Extract 14\n> 13 extrude")) == {0, 1}


@pytest.mark.parametrize("text, expected", [("PS reduce", True), ("P.S. reduce", True), ("PSR", False), ("", False)])
def test_a_postscript_begins_with_its_letters(text, expected):
    assert is_postscript(text, lines(text)[0]) is expected
