"""Malformed tables of separated values, each with the rule that speaks and the place it names, as a user counts."""

import pytest
from tests.converters.wellposed_converters.setups.tables import COLUMNS, CSV, LONG, LONG_CSV, changed, csv_faults
from tests.validator.wellposed.consistency.ordinary import LOWER, prescription

from wellposed_converters.setups.cells import looks

NAN = "not-a-number"


def told(found):
    """Rules without what all begin with."""
    return [(rule.removeprefix("setup-table-").removeprefix("setup-"), row, column) for rule, row, column in found]


AMOUNTS = [
    *("-1.2", "1.000,5", "1,2E1", "\u22121,2", "(1,2)", "12%", "1,2 mm", "\u0661,2", "1_2", "nan", "inf", "--", ",5"),
    *("01.03.2026", "1. Mrz", "1-Mar", "2026-03-01", "3/1/26", "=SUMME(A1:A2)", "#REF!", "", "0x1", "1,", "1'000,5"),
]


@pytest.mark.parametrize("amount", AMOUNTS)
def test_what_is_no_number_is_refused_where_it_stands(amount):
    assert told(csv_faults(changed(CSV, ("-1,2;5", f"{amount};5")))) == [(NAN, 2, "B")]


def test_brackets_around_words_are_not_called_a_number():
    assert (looks("(none)"), looks("(1,2)")) == ("words", "a number in brackets")


# (what is put into the table, what is put into the reading, what is told)
CASES = [
    ([("-1,2;5", "1,2 ;5")], [], [("blanks", 2, "B")]),
    ([("-1,2;5", "\u00a01,2;5")], [], [("blanks", 2, "B")]),
    ([("11;", " 11;")], [], [("blanks", 2, "A")]),
    ([("Up;", "Up ;")], [], [("blanks", 1, "B")]),
    ([("-1,2;5", "-1,234;5")], [], [("decimals", 2, "B")]),
    ([("-1,2;5", "-1200;5")], [], [("too-large", 2, "B")]),
    ([("11;", "99;")], [], [("not-a-tooth", 2, "A")]),
    ([("11;", "011;")], [], [("not-a-tooth", 2, "A")]),
    ([("11;", "1.1;")], [], [("not-a-tooth", 2, "A")]),
    ([("11;", "59;")], [], [("not-a-tooth", 2, "A")]),
    ([("11;", "1-3;")], [], [("not-a-tooth", 2, "A")]),
    ([("11;", ";")], [], [("not-a-tooth", 2, "A")]),
    ([("11;", "38;")], [], [("tooth-not-in-mouth", 2, "A")]),
    ([("11;", "55;")], [], [("tooth-not-in-mouth", 2, "A")]),
    ([("21;", "11;")], [], [("movement-twice", 3, "B"), ("movement-twice", 3, "C")]),
    ([("Up;", "Height;")], [], [("header-missing", 1, ""), ("column-undeclared", 1, "B")]),
    ([("Up;", "up;")], [], [("header-missing", 1, ""), ("column-undeclared", 1, "B")]),
    ([("Note", "Up")], [], [("header-twice", 1, "")]),
    ([("Note", "Remark")], [], [("column-undeclared", 1, "D")]),
    ([("Note", "")], [], [("column-undeclared", 1, "D")]),
    ([("-1,2;5;a", "-1,2;5;a;7")], [], [("column-undeclared", 1, "E"), ("row-length", 2, "")]),
    ([("-1,2;5;a", "-1,2;5")], [], [("row-length", 2, "")]),
    ([("Tooth;", "Export;;;\nTooth;")], [("header_row = 1", "header_row = 2")], [("row-undeclared", 1, "")]),
    ([("22;-;n/a;", "22;-;n/a;\nTotal;-;n/a;")], [], [("not-a-tooth", 5, "A")]),
    ([], [("header_row = 1", "header_row = 9")], [("row-undeclared", 1, ""), *[("header-missing", 9, "")] * 3]),
    ([("11;-1,2;5;a\n21;-1,2;-2,5;b\n22;-;n/a;\n", "")], [], [("empty", 0, "")]),
    ([], [('none = ["-"]\n', "")], [(NAN, 4, "B")]),
    ([], [('not_stated = ["n/a"]\n', "")], [(NAN, 4, "C")]),
    ([], [('decimal = "comma"', 'decimal = "point"')], [(NAN, 2, "B"), (NAN, 3, "B"), (NAN, 3, "C")]),
    ([], [('delimiter = ";"\n', "")], [("columns-missing", 0, "")]),
    ([("-1,2;5", "\x001,2;5")], [], [("damaged", 2, "")]),
    ([("-1,2;5", '"1,2;5')], [], [("damaged", 2, "")]),
    ([("-1,2;5", '"1,2"x;5')], [], [("damaged", 2, "")]),
]
IN_CELL = [('positive = "extrusion"', 'directions = { I = "intrusion", E = "extrusion" }\ndirection_at = "after"')]
ABOVE_0 = ("-1,2;-2,5", "1,2 E;-2,5")
CASES += [
    ([("-1,2;5", "1,2;5"), ABOVE_0], IN_CELL, [("direction", 2, "B")]),
    ([("-1,2;5", "1,2 L;5"), ABOVE_0], IN_CELL, [(NAN, 2, "B")]),
    ([("-1,2;5", "1,2 i;5"), ABOVE_0], IN_CELL, [(NAN, 2, "B")]),
    ([("-1,2;5", "-1,2 I;5"), ABOVE_0], IN_CELL, [("direction-and-sign", 2, "B")]),
    ([("-1,2;5", "I 1,2;5"), ABOVE_0], IN_CELL, [(NAN, 2, "B")]),
    ([("-1,2;5", "1,2 mm;5")], [('unit = "mm"', 'unit = "mm"\ncell_unit = "mm"')], [("unit", 3, "B")]),
    (
        [],
        [('"vertical"', '"out"'), ('"extrusion"', '"left"')],
        [("direction-of-tooth", 2, "B"), ("direction-of-tooth", 3, "B")],
    ),
]


@pytest.mark.parametrize("table, reading, expected", CASES)
def test_a_malformed_table(table, reading, expected):
    assert told(csv_faults(changed(CSV, *table), changed(COLUMNS, *reading))) == expected


LONG_CASES = [
    ([("height;1,2", "tilt;1,2")], [("movement-unknown", 2, "B")]),
    ([("1,2;I", "-1,2;I")], [("direction-and-sign", 2, "C")]),
    ([("1,2;I", "1,2;X")], [("direction", 2, "C")]),
    ([("1,2;I", "1,2;")], [("direction", 2, "C")]),
    ([("1,2;I", "0;X")], [("direction", 2, "C")]),
    ([("1,2;I", "0;")], []),
    ([("1,2;I", "1,2;M")], [("direction", 2, "C")]),
    ([("I;mm", "I;grad")], [("unit", 2, "E")]),
    ([("I;mm", "I;inch")], [("unit", 2, "E")]),
    ([("21;height", "11;height")], [("movement-twice", 3, "C")]),
    ([("1,2;I", "1,2 ;I")], [("blanks", 2, "C")]),
]


@pytest.mark.parametrize("table, expected", LONG_CASES)
def test_a_malformed_table_with_a_row_for_each_movement(table, expected):
    assert told(csv_faults(changed(LONG_CSV, *table), LONG)) == expected


BYTES = [
    (CSV.encode("utf-16"), [], [("encoding", 0, "")]),
    (CSV.encode("utf-8-sig"), [('delimiter = ";"', 'delimiter = ";"\nencoding = "utf-16"')], [("encoding", 0, "")]),
    (CSV.encode("utf-16-le"), [('delimiter = ";"', 'delimiter = ";"\nencoding = "utf-16"')], [("encoding", 0, "")]),
    (CSV.replace(";b", ";\u00e9").encode("cp1252"), [], [("encoding", 3, "")]),
]


@pytest.mark.parametrize("data, reading, expected", BYTES)
def test_an_encoding_is_never_guessed(data, reading, expected):
    assert told(csv_faults(data, changed(COLUMNS, *reading))) == expected


READINGS = [
    [('layout = "row-a-tooth"', 'layout = "row-a-tooth"\nlayuot = "x"')],
    [('layout = "row-a-tooth"\n', "")],
    [('layout = "row-a-tooth"', 'layout = "row-a-movement"')],
    [('decimal = "comma"', 'decimal = ","')],
    [("header_row = 1", "header_row = 0")],
    [('notation = "ISO 3950"', 'notation = "FDI"')],
    [('unit = "mm"', 'unit = "inch"')],
    [('unit = "mm"', 'unit = "deg"')],
    [('unit = "mm"', 'unit = "mm"\nwritten_in = "um"')],
    [('unit = "mm"', 'unit = "mm"\nwritten_in = "um"\nfactor = -0.001')],
    [('positive = "extrusion"\n', "")],
    [('positive = "extrusion"', 'positive = "mesial"')],
    [('positive = "extrusion"', 'positive = "clockwise"')],
    [('positive = "extrusion"', 'directions = { I = "intrusion" }')],
    [('column = "Up"', 'name = "Up"')],
    [('not_stated = ["n/a"]', 'not_stated = ["n/a", "-"]')],
    [("[tooth]", "[tooth")],
    [('["Note"]', '["Note", "Turn"]')],
    [('["Note"]', '["Note", "Tooth"]')],
    [('none = ["-"]', 'none = ["-"]\nignore_rows_with = { Note = ["b"] }')],
    [('none = ["-"]', f"none = {'[' * 3000}{']' * 3000}")],
    [("header_row = 1", f"header_row = {'1' * 5000}")],
]


@pytest.mark.parametrize("reading", READINGS)
def test_a_reading_that_is_not_clear_is_refused_before_the_table_is_read(reading):
    found = csv_faults(CSV, changed(COLUMNS, *reading))
    assert found
    assert all(rule.startswith("setup-columns-") for rule, _, _ in found)


def test_a_line_that_is_no_toml_is_named():
    assert told(csv_faults(CSV, changed(COLUMNS, ("\n[table]", "[table]\nx = y")))) == [("columns-unreadable", 2, "")]


def test_a_name_that_stands_for_two_movements_is_refused():
    assert told(csv_faults(LONG_CSV, changed(LONG, ('name = "turn"', 'name = "height"')))) == [("columns-amiss", 0, "")]


def test_everything_is_told_in_one_run_and_in_the_same_order():
    table = changed(CSV, ("-1,2;5", "1.2;x"), ("21;", "99;"), ("22;-;n/a", "22;=A1;1,234"))
    expected = [(NAN, 2, "B"), (NAN, 2, "C"), ("not-a-tooth", 3, "A"), (NAN, 4, "B"), ("decimals", 4, "C")]
    assert told(csv_faults(table)) == expected


def test_a_table_in_another_numbering_is_asked_about_as_a_whole():
    """8 and 9 are the upper central incisors in the Universal numbering, and no teeth in ISO 3950."""
    table = changed(CSV, ("11;", "8;"), ("21;", "9;"), ("22;", "10;"))
    rules = [rule for rule, _, _ in told(csv_faults(table))]
    assert rules.count("notation-questioned") == 1
    shown = changed(COLUMNS, ('"ISO 3950"', '"Universal"'))
    assert csv_faults(table, shown) == []


def test_a_table_that_fits_both_numberings_but_the_mouth_only_in_one_is_asked_about():
    """21, 22 and 23 are 34, 33 and 32 in the Universal numbering; a mouth without upper teeth has these alone."""
    lower = prescription(teeth={"upper": [], "lower": LOWER})
    table = changed(CSV, ("11;", "23;"))
    assert told(csv_faults(table, rx=lower)) == [("notation-questioned", 2, "A")]


def test_a_confirmed_tooth_is_read():
    confirmed = changed(COLUMNS, ('notation = "ISO 3950"', 'notation = "ISO 3950"\nconfirmed = ["38"]'))
    assert csv_faults(changed(CSV, ("11;", "38;")), confirmed) == []
