"""Separated values by RFC 4180: what is refused, with line and column; what is read all the same, and said."""

import random

import pytest
from tests.converters.wellposed_converters.tables.grids import code, csv_of, document, grid, put, told

from wellposed_converters.tables.forms import CSV

DATA = csv_of(grid())
TEXT = DATA.decode()
WIDE = len(grid()[0])
LAST = len(grid())


def changed(old, new):
    assert old in TEXT
    return TEXT.replace(old, new, 1).encode()


def cell(where, header, value):
    cells = grid()
    put(where, header, value)(cells)
    return csv_of(cells)


# what is wrong, the file, rule, row, column
MALFORMED = [
    ("nothing at all", b"", "table-header-missing", 1, ""),
    ("one line break", b"\r\n", "table-header-missing", 1, ""),
    ("no rows below the header", TEXT.partition("\r\n")[0].encode(), "table-section", 1, ""),
    ("not UTF-8: windows-1252", changed("as agreed", "caf\u00e9").decode().encode("cp1252"), "not-utf-8", 0, ""),
    ("UTF-16 with its mark", TEXT.encode("utf-16"), "not-utf-8", 0, ""),
    ("UTF-16 without a mark", TEXT.encode("utf-16-le"), "table-damaged", 1, "A"),
    (
        "UTF-7",
        TEXT.replace("as agreed", "caf+AOk-").replace("section,", "+section,").encode(),
        "table-header-unknown",
        1,
        "A",
    ),
    ("semicolons", TEXT.replace(",", ";").encode(), "table-header-unknown", 1, "A"),
    ("tabs", TEXT.replace(",", "\t").encode(), "table-header-unknown", 1, "A"),
    ("bars", TEXT.replace(",", "|").encode(), "table-header-unknown", 1, "A"),
    ("JSON", b'{"format": "wellposed/prescription"}', "table-damaged", 1, "A"),
    ("a byte 0", changed("as agreed", "as\0agreed"), "table-damaged", LAST - 1, "*"),
    ("an escape character", changed("as agreed", "as\x1bagreed"), "table-damaged", LAST - 1, "*"),
    ("a lone carriage return", TEXT.replace("\r\n", "\r").encode(), "table-damaged", 1, "*"),
    ("quotation marks that do not close", changed("as agreed", '"as agreed'), "table-damaged", LAST - 1, "*"),
    ("quotation marks within a cell", changed("as agreed", 'as "agreed"'), "table-damaged", LAST - 1, "*"),
    ("something behind quotation marks", changed("as agreed", '"as" agreed'), "table-damaged", LAST - 1, "*"),
    ("quotation marks with a blank before them", changed("as agreed", ' "as agreed"'), "table-damaged", LAST - 1, "*"),
    ("backslash before a quotation mark", changed("as agreed", '"as \\"agreed"'), "table-damaged", LAST - 1, "*"),
    ("a cell too few", changed("\r\ngoals,1,", "\r\ngoals,"), "table-row-length", 13, ""),
    ("a cell too many", changed("\r\ngoals,1,", "\r\ngoals,1,,"), "table-row-length", 13, ""),
    ("a decimal comma not in quotation marks", changed(",0.5,", ",0,5,"), "table-row-length", 14, ""),
    ("a remark above the header", b"our order\r\n" + DATA, "table-header-unknown", 1, "A"),
    ("no header", DATA.partition(b"\r\n")[2], "table-header-unknown", 1, "A"),
    ("a header twice", changed(",use,", ",unit,"), "table-header-twice", 1, "*"),
    ("a header in capitals", changed("section,", "Section,"), "table-header-unknown", 1, "A"),
    ("a header with a blank", changed(",use,", ", use,"), "table-header-unknown", 1, "E"),
    ("a header like a formula", changed(",use,", ",=use,"), "table-header-unknown", 1, "E"),
    ("an empty header over cells", changed(",use,", ",,"), "table-header-missing", 15, "E"),
    ("no column of sections", changed("section,", "words,"), "table-header-missing", 1, ""),
    (
        "two documents",
        DATA + DATA.partition(b"\r\n")[2].partition(b"\r\n")[0] + b"\r\n",
        "table-row-twice",
        LAST + 1,
        "",
    ),
    ("no row for the document", changed("\r\ndocument,", "\r\nprescriber,"), "table-section", 1, ""),
    ("a row about nothing", changed("\r\ngoals,1,", "\r\n,1,"), "table-section", 13, ""),
    ("a formula", cell("notes 1", "text", "=1+1"), "table-formula", LAST - 1, "*"),
    ("a formula that calls", cell("notes 1", "text", '=HYPERLINK("x")'), "table-formula", LAST - 1, "*"),
    ("a formula behind a blank", cell("notes 1", "text", " =1+1"), "table-formula", LAST - 1, "*"),
    ("a formula behind a tab", cell("notes 1", "text", "\t=1+1"), "table-formula", LAST - 1, "*"),
    ("a formula behind a quotation mark", cell("notes 1", "text", '"=1+1'), "table-formula", LAST - 1, "*"),
    ("text that begins with plus", cell("notes 1", "text", "+49"), "table-formula", LAST - 1, "*"),
    ("text that begins with minus", cell("notes 1", "text", "-- call"), "table-formula", LAST - 1, "*"),
    ("text that begins with at", cell("notes 1", "text", "@SUM(1)"), "table-formula", LAST - 1, "*"),
    ("a full-width equals sign", cell("notes 1", "text", "\uff1d1"), "table-formula", LAST - 1, "*"),
    ("a formula in an id", cell("goals 1", "id", "=g1"), "table-formula", 13, "C"),
    ("an error value in words", cell("notes 1", "text", "#REF!"), "table-error-value", LAST - 1, "*"),
    ("an error value in a list", cell("goals 1", "align", "#N/A"), "table-error-value", 13, "*"),
    ("an error value for a number", cell("keep 1", "within", "#VALUE!"), "table-not-a-number", 14, "*"),
    ("a formula for a number", cell("keep 1", "within", "=1/2"), "table-not-a-number", 14, "*"),
    ("an apostrophe that marks nothing", cell("notes 1", "text", "'as agreed"), "table-mark", LAST - 1, "*"),
    ("half a character", cell("notes 1", "text", "_xD83D_"), "table-escape", LAST - 1, "*"),
    ("both halves, each escaped", cell("notes 1", "text", "_xD83D__xDE00_"), "table-escape", LAST - 1, "*"),
    ("a noncharacter", cell("notes 1", "text", "\ufffe"), "noncharacter", LAST - 1, "*"),
    ("a noncharacter, escaped", cell("notes 1", "text", "_xFFFF_"), "noncharacter", LAST - 1, "*"),
    ("three decimals", cell("keep 1", "within", "0.500"), "number-form", 14, "*"),
    ("an exponent", cell("keep 1", "within", "5e-1"), "number-form", 14, "*"),
    ("too many digits", cell("keep 1", "within", "1" * 21), "number-form", 14, "*"),
    ("beyond what numbers hold", cell("keep 1", "within", "9" * 17), "number-too-large", 14, "*"),
    ("a number from 01", cell("goals 1", "entry", "01"), "table-entry", 13, "B"),
    ("a number with a point", cell("goals 1", "entry", "1.0"), "table-entry", 13, "B"),
    ("a number in other digits", cell("goals 1", "entry", "\u0661"), "table-entry", 13, "B"),
    ("a tooth as a number with a point", cell("teeth", "upper", "17.0"), "not-one-of", 7, "*"),
    ("the version as a spreadsheet leaves it", cell("document", "version", "1"), "wrong-form", 2, "*"),
]
TRIED = {rule for _, _, rule, _, _ in MALFORMED} | {"table-byte-order-mark"}


@pytest.mark.parametrize("data, rule, row, column", [pytest.param(*case[1:], id=case[0]) for case in MALFORMED])
def test_a_malformed_file(data, rule, row, column, tmp_path):
    found, ended = told(CSV, data, tmp_path)
    assert (rule, row) in [(one, at) for one, at, _ in found]
    assert column in ("*", *(letter for one, _, letter in found if one == rule))
    assert ended == code(found[0][0])


ALL_ALIKE = [
    ("as it is written", DATA),
    ("lines that end with a line feed", TEXT.replace("\r\n", "\n").encode()),
    ("no line break at the end", DATA.removesuffix(b"\r\n")),
    ("columns in another order", csv_of([row[::-1] for row in grid()])),
    ("rows in another order", csv_of([grid()[0], *grid()[:0:-1]])),
    (
        "an empty column more",
        csv_of([[*row, "words" if not place and "words" not in row else ""] for place, row in enumerate(grid())]),
    ),
    ("an empty line within", changed("\r\ngoals", "\r\n\r\ngoals")),
    ("an empty line at the end", DATA + b"\r\n"),
    ("a row with nothing in it", DATA + b"," * (WIDE - 1) + b"\r\n"),
]


@pytest.mark.parametrize("data", [pytest.param(data, id=name) for name, data in ALL_ALIKE])
def test_what_means_the_same_is_read_the_same(data):
    (one,) = CSV.read(data)
    assert (one.document, one.findings) == (document(), ())


def test_a_byte_order_mark_is_left_out_and_said(tmp_path):
    found, ended = told(CSV, b"\xef\xbb\xbf" + DATA, tmp_path)
    assert (found, ended) == ([("table-byte-order-mark", 1, "")], 0)
    (one,) = CSV.read(b"\xef\xbb\xbf" + DATA)
    assert one.document == document()


def test_a_mark_twice_is_no_mark():
    (one,) = CSV.read(b"\xef\xbb\xbf\xef\xbb\xbf" + DATA)
    assert "table-header-unknown" in {finding.rule for finding in one.findings}


def test_line_and_column_are_those_of_the_text():
    """Worked out by hand: the cell begins behind `x,` in the third line of the text, the second row of the table."""
    (one,) = CSV.read('section,words,id\r\n"a\r\nx",é,"b""c"x\r\n'.encode())
    (finding,) = one.findings
    assert (finding.rule, finding.line, finding.column) == ("table-damaged", 3, 6)
    assert (finding.facts["row"], finding.facts["column"]) == (2, "C")


def test_no_more_faults_are_told_than_of_any_document():
    rows = [grid()[0], *([["x"] + [""] * (WIDE - 1)] * 1200), *grid()[1:]]
    (one,) = CSV.read(csv_of(rows))
    assert len(one.findings) == 1001
    assert one.findings[-1].rule == "too-many-faults"


def test_a_table_longer_than_is_held_is_refused():
    (one,) = CSV.read(b"section\r\n" + b"\r\n" * 20_001)
    assert [finding.rule for finding in one.findings] == ["table-damaged"]


def mutated(data, seed):
    """A few bytes changed, taken out or doubled."""
    rng, found = random.Random(seed), bytearray(data)
    for _ in range(rng.randint(1, 3)):
        at = rng.randrange(len(found))
        kind = rng.randrange(3)
        found[at : at + rng.randint(0, 6)] = found[at : at + rng.randint(0, 6)] if kind else b""
        found[at : at + 1] = bytes([rng.randrange(256)])
    return bytes(found)


def test_damage_is_refused_with_its_place_or_read_and_never_breaks_the_program():
    outcomes = {}
    for seed in range(400):
        (one,) = CSV.read(mutated(DATA, seed))
        stops = [finding for finding in one.findings if finding.severity == "stop"]
        assert (one.document is None) == bool(stops)
        assert all(finding.line and finding.column for finding in one.findings if "sheet" not in finding.facts)
        for finding in stops:
            outcomes[finding.rule] = outcomes.get(finding.rule, 0) + 1
    assert {"not-utf-8", "table-row-length", "table-damaged", "not-one-of"} <= outcomes.keys()
