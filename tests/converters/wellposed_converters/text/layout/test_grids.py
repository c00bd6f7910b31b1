import pytest

from wellposed_converters.text.layout.grids import rows
from wellposed_converters.text.layout.lines import lines


def table(text):
    found = rows(text, lines(text))
    return {at: (row.sort, [text[c.start : c.end] for c in row.cells]) for at, row in sorted(found.items())}


@pytest.mark.parametrize(
    "text",
    ["Upper: 21|12 align", "21 | 12\n321 | 123", "|6 derotate", "Overjet ... 3", "Keep OB.......", "\tIPR none"],
)
def test_teeth_around_a_bar_and_lone_signs_are_no_table(text):
    assert table(text) == {}


def test_a_dotted_leader_makes_two_cells():
    assert table("Overjet ........ 3 mm") == {0: ("row", ["Overjet", "3 mm"])}


def test_tabs_make_rows_when_two_lines_have_them():
    assert table("OB\t4 mm\nML\tok") == {0: ("row", ["OB", "4 mm"]), 1: ("row", ["ML", "ok"])}


def test_bars_with_space_around_make_rows_without_a_frame():
    text = "tooth | move | mm\n13 | extrude | 1"
    assert table(text) == {0: ("row", ["tooth", "move", "mm"]), 1: ("row", ["13", "extrude", "1"])}


def test_an_empty_cell_keeps_its_place():
    text = "| tooth | amount | att |\n| 13 | | yes |"
    assert table(text)[1] == ("row", ["13", "", "yes"])


def test_a_drawn_line_makes_the_first_row_a_head_and_is_no_row():
    text = "| tooth | remark of mine |\n|---|---|\n| 13 | tip |"
    assert [sort for sort, _ in table(text).values()] == ["table_head", "numbering", "row"]


@pytest.mark.parametrize("first", ["| upper | lock | yes |", "| 13 | extrude | 1 mm |"])
def test_a_first_row_that_orders_something_is_a_row_even_when_underlined(first):
    assert table(f"{first}\n|---|---|---|\n| 12 | tip | 2 |")[0][0] == "row"


def test_a_row_with_more_cells_than_the_head_has_no_columns():
    text = "| tooth | amount | att |\n| 13 | 1 | 2 | yes |\n| 12 | 1 | yes |"
    found = rows(text, lines(text))
    assert {cell.column_end for cell in found[1].cells} == {0}
    assert [text[c.column_start : c.column_end] for c in found[2].cells] == ["tooth", "amount", "att"]
