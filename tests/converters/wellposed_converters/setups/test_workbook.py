"""Workbooks: what a spreadsheet does to what was typed, and what lies upon cells, is told with its place."""

import datetime as dt
import io
import random
import zipfile

import pytest
from openpyxl.comments import Comment
from openpyxl.styles import Font
from openpyxl.xml.constants import SHEET_MAIN_NS
from tests.converters.wellposed_converters.setups.tables import (
    COLUMNS,
    CSV,
    RX,
    changed,
    csv_faults,
    values_of,
    xlsx,
    xlsx_faults,
)
from tests.converters.wellposed_converters.setups.test_faults import told

from wellposed_converters.setups.declared import mapping_of
from wellposed_converters.setups.faults import UnreadableError
from wellposed_converters.setups.reading import read_table
from wellposed_converters.setups.workbook import LARGEST_UNPACKED, workbook

ROWS = [["Tooth", "Up", "Turn", "Note"], [11, -1.2, 5, "a"], [21, -1.2, -2.5, "b"], [22, "-", "n/a", None]]
NAN, KIND = "not-a-number", "cell-kind"


def put(at, value):
    """Put a value into a cell."""

    def change(book):
        book.active[at] = value

    return change


def upon(at, **marks):
    """Put something upon a cell."""

    def change(book):
        for name, value in marks.items():
            setattr(book.active[at], name, value)

    return change


def hide_row(book):
    book.active.row_dimensions[3].hidden = True


def hide_columns(book):
    book.active.column_dimensions.group("B", "C", hidden=True)


def merge(book):
    book.active.merge_cells("B2:B3")


def add_sheet(book):
    book.create_sheet("Legend")["A1"] = "x"


def hide_sheet(book):
    add_sheet(book)
    book.active = book["Legend"]
    book["Moves"].sheet_state = "hidden"


CASES = [
    (put("A2", dt.date(2026, 3, 1)), [(KIND, 2, "A")]),
    (put("B2", dt.datetime(2026, 3, 1, 8)), [(KIND, 2, "B")]),
    (put("B2", dt.time(1, 2)), [(KIND, 2, "B")]),
    (put("B2", "=1+1"), [(KIND, 2, "B")]),
    (put("B2", "#N/A"), [(KIND, 2, "B")]),
    (put("B2", True), [(KIND, 2, "B")]),
    (put("B2", "-1.2"), [(NAN, 2, "B")]),
    (put("B2", "-1,2"), [(NAN, 2, "B")]),
    (put("B2", None), [(NAN, 2, "B")]),
    (put("B2", 1 / 3), [("decimals", 2, "B")]),
    (put("B2", 1e-7), [("decimals", 2, "B")]),
    (put("B2", 1e9), [("too-large", 2, "B")]),
    (put("A2", 11.5), [("not-a-tooth", 2, "A")]),
    (put("A2", -11), [("not-a-tooth", 2, "A")]),
    (put("E1", "More"), [("column-undeclared", 1, "E")]),
    (put("E3", "x"), [("column-undeclared", 1, "E")]),
    (put("B1", None), [("header-missing", 1, ""), ("column-undeclared", 1, "B")]),
    (upon("B2", number_format="0%"), [("number-format", 2, "B")]),
    (upon("B2", number_format='0.0"E";0.0"I"'), [("number-format", 2, "B")]),
    (upon("B2", number_format="0.0;0.0"), [("number-format", 2, "B")]),
    (upon("B2", font=Font(strike=True)), [("struck-out", 2, "B")]),
    (upon("B2", comment=Comment("turn it round", "x")), [("comment", 2, "B")]),
    (merge, [("merged", 2, "B"), ("merged", 3, "B")]),
    (hide_row, [("hidden", 3, "")]),
    (hide_columns, [("hidden", 1, "B"), ("hidden", 1, "C")]),
    (add_sheet, [("sheet", 0, "")]),
]


def moves(change=lambda book: None):
    return xlsx(("Moves", ROWS), change=change)


@pytest.mark.parametrize("change, expected", CASES)
def test_a_malformed_workbook(change, expected):
    assert told(xlsx_faults(moves(change), COLUMNS)) == expected


DECLARED = [
    (hide_row, 'hidden = "read"'),
    (hide_columns, 'hidden = "read"'),
    (add_sheet, 'ignore_sheets = ["Legend"]'),
    (put("B2", "-1,2"), "numbers_as_text = true"),
    (put("B2", 1 / 3), "round = 2"),
    (put("B1", " Up"), "trim = true"),
    (upon("B2", comment=Comment("x", "x")), 'comments = "ignore"'),
    (upon("B2", number_format="+0.0;-0.0;0.0"), ""),
    (upon("B2", number_format="#,##0.00"), ""),
    (put("A2", "11"), ""),
    (put("A2", 11.0), ""),
]


@pytest.mark.parametrize("change, said", DECLARED)
def test_what_is_declared_is_read(change, said):
    assert xlsx_faults(moves(change), changed(COLUMNS, ("[table]", f"[table]\n{said}"))) == []


def test_a_sheet_is_named_where_there_are_several():
    data = moves(add_sheet)
    declared = changed(COLUMNS, ("[table]", '[table]\nignore_sheets = ["Legend"]'))
    assert told(xlsx_faults(data, COLUMNS, "Moves")) == [("sheet", 0, "")]
    assert xlsx_faults(data, declared, "Moves") == []
    assert told(xlsx_faults(data, declared, "Nowhere")) == [("sheet", 0, "")]
    assert told(xlsx_faults(moves(hide_sheet), declared, "Moves")) == [("hidden", 0, "")]


def test_the_numbers_are_those_of_the_cells():
    read = values_of(workbook(moves(), "t.xlsx"), COLUMNS)
    expected = {("11", "vertical"): -1.2, ("21", "vertical"): -1.2, ("22", "vertical"): 0.0}
    assert read == expected | {("11", "rotation"): 5.0, ("21", "rotation"): -2.5}


def packed(**parts):
    """A packed file of these parts."""
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as book:
        for name, content in parts.items():
            book.writestr(name, content)
    return stream.getvalue()


def test_what_is_no_workbook_is_refused_before_it_is_unpacked():
    cut = moves()[:-200]
    twice = moves() + b"x" * 10
    for data in (b"", b"Tooth;Up\n", cut, packed(a=b"x"), twice[:50]):
        with pytest.raises(UnreadableError) as refused:
            workbook(data, "t.xlsx")
        assert [one.rule for one in refused.value.faults] == ["setup-table-damaged"]


def test_a_workbook_that_unpacks_to_more_than_is_held_is_refused():
    with zipfile.ZipFile(io.BytesIO(moves())) as book:
        parts = {entry.filename: book.read(entry) for entry in book.infolist()}
    bomb = packed(**parts, **{"xl/media/picture.bin": b"0" * LARGEST_UNPACKED})
    assert len(bomb) < LARGEST_UNPACKED / 500
    with pytest.raises(UnreadableError) as refused:
        workbook(bomb, "t.xlsx")
    (fault,) = refused.value.faults
    assert fault.expected == "at most 20000000 bytes unpacked"


SPREAD = [
    '<mergeCells count="1"><mergeCell ref="A5:XFD1048576"/></mergeCells>',
    '<mergeCells count="1"><mergeCell ref="$a$5:$cv$20000"/></mergeCells>',
    '<hyperlinks><hyperlink ref="A5:CV20000" location="x"/></hyperlinks>',
    '<hyperlinks><hyperlink ref="A:A" location="x"/></hyperlinks>',
    f'<y:hyperlinks xmlns:y="{SHEET_MAIN_NS}"><y:hyperlink ref="A:A"/></y:hyperlinks>',
]


@pytest.mark.parametrize("spread", SPREAD)
@pytest.mark.parametrize("encoding", ["utf-8", "utf-16"])
def test_a_range_that_stands_for_millions_of_cells_is_refused_before_it_is_laid_out(spread, encoding):
    with zipfile.ZipFile(io.BytesIO(moves())) as book:
        parts = {entry.filename: book.read(entry) for entry in book.infolist()}
    sheet = parts["xl/worksheets/sheet1.xml"].decode().replace("</sheetData>", f"</sheetData>{spread}")
    parts["xl/worksheets/sheet1.xml"] = sheet.encode(encoding)
    assert refused(packed(**parts)).expected == "at most 1000000 cells"


def test_a_sheet_whose_last_cell_is_far_away_is_refused_before_its_empty_cells_are_made():
    assert refused(moves(put("OJ20000", 1))).expected == "at most 20000 rows, 400 columns and 2500000 cells"


def test_xml_that_only_the_library_could_read_is_refused():
    """In EBCDIC no declaration of a document type can be seen."""
    with zipfile.ZipFile(io.BytesIO(moves())) as book:
        parts = {entry.filename: book.read(entry) for entry in book.infolist()}
    for name, data in parts.items():
        ours = f"<?xml version='1.0' encoding='cp037'?>{data.decode().partition('?>')[2] or data.decode()}".encode(
            "cp037"
        )
        assert refused(packed(**{**parts, name: ours})).found == "what no workbook holds"


def refused(data):
    """The one fault of a workbook that is not read."""
    with pytest.raises(UnreadableError) as error:
        workbook(data, "t.xlsx")
    (fault,) = error.value.faults
    return fault


ROUNDED = [(1.005, 1.01), (-1.005, -1.01), (0.125, 0.13), (1.2349, 1.23), (-0.004, 0.0), (1.2, 1.2)]


@pytest.mark.parametrize("written, expected", ROUNDED)
def test_what_is_rounded_goes_away_from_0_by_halves_and_is_said(written, expected):
    columns = changed(COLUMNS, ("[table]", "[table]\nround = 2"))
    data = moves(put("B2", written))
    assert values_of(workbook(data, "t"), columns)["11", "vertical"] == expected
    read = read_table(workbook(data, "t"), None, mapping_of(columns.encode(), "c"), RX)
    (said,) = [one.said for one in read.final if (one.tooth, one.variable) == ("11", "vertical")]
    assert ("rounded to two decimals" in said) == (written != expected)


def test_entities_are_not_expanded():
    """A document type declaration with nested entities, the known attack on readers of such files."""
    bomb = '<!DOCTYPE w [<!ENTITY a "1"><!ENTITY b "&a;&a;">]>'
    parts = {}
    with zipfile.ZipFile(io.BytesIO(moves())) as book:
        for entry in book.infolist():
            parts[entry.filename] = book.read(entry)
    sheet = parts["xl/worksheets/sheet1.xml"].decode()
    parts["xl/worksheets/sheet1.xml"] = (bomb + sheet.replace("-1.2", "&b;", 1)).encode()
    with pytest.raises(UnreadableError):
        workbook(packed(**parts), "t.xlsx")


def mutated(data, seed):
    """A few bytes changed, taken out or doubled."""
    rng, found = random.Random(seed), bytearray(data)
    for _ in range(rng.randint(1, 4)):
        at = rng.randrange(len(found) or 1)
        kind = rng.randrange(3)
        found[at : at + kind * rng.randint(0, 20)] = found[at : at + rng.randint(0, 9)] if kind else b""
        found[at : at + 1] = bytes([rng.randrange(256)])
    return bytes(found)


def test_damage_is_refused_by_name_or_read_but_never_breaks_the_program():
    with zipfile.ZipFile(io.BytesIO(moves())) as book:
        parts = {entry.filename: book.read(entry) for entry in book.infolist()}
    names = sorted(name for name in parts if name.endswith((".xml", ".rels")))
    outcomes = set()
    for seed in range(300):
        name = names[seed % len(names)]
        data = packed(**{**parts, name: mutated(parts[name], seed)}) if seed % 3 else mutated(moves(), seed)
        outcomes |= {rule for rule, _, _ in told(xlsx_faults(data, COLUMNS))} or {"read"}
    assert {"damaged", "read"} <= outcomes


def test_damaged_text_is_refused_by_name_or_read():
    outcomes = set()
    for seed in range(1000):
        outcomes |= {rule for rule, _, _ in told(csv_faults(mutated(CSV.encode(), seed)))} or {"read"}
    assert {"damaged", "encoding", "not-a-number", "read"} <= outcomes
