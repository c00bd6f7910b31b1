import pytest

from wellposed_converters.text.files.notes import NoteError, checked, position


@pytest.mark.parametrize(
    "text, rule",
    [
        ("", "note-empty"),
        (" \n\t", "note-empty"),
        ("no\x00IPR", "note-control-character"),
        ("no IPR\x0c", "note-control-character"),
        ("13-23 \u202e23-13", "note-reordering-character"),
    ],
)
def test_text_that_is_not_all_seen_is_refused(text, rule):
    with pytest.raises(NoteError) as caught:
        checked(text, "a.txt")
    assert caught.value.rule == rule
    assert caught.value.place.startswith("a.txt")


def test_the_place_is_line_and_column():
    with pytest.raises(NoteError, match=r"a\.txt, line 2, column 4 \(U\+0007\)"):
        checked("OB\nkeep\x07".replace("keep", "no "), "a.txt")


@pytest.mark.parametrize("before, expected", [("", (1, 1)), ("a\r\nbc", (2, 3)), ("a\rb\n", (3, 1))])
def test_lines_and_columns_count_from_one(before, expected):
    assert position(before) == f"line {expected[0]}, column {expected[1]}"
