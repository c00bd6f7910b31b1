"""Workbooks: what a spreadsheet does to what was typed, what lies upon cells or out of sight, and packed traps."""

import datetime as dt
import io
import random
import zipfile

import pytest
from openpyxl import Workbook, load_workbook
from openpyxl.chart import BarChart, Reference
from openpyxl.comments import Comment
from openpyxl.styles import Font
from tests.converters.wellposed_converters.tables.grids import (
    code,
    document,
    grid,
    packed,
    parts_of,
    row_of,
    told,
    xlsx_of,
)

from wellposed_converters.setups.grid import letter
from wellposed_converters.tables.forms import XLSX

CELLS = grid()
HEADS = CELLS[0]
LAST = len(CELLS)


def at(where, header):
    """The address of a cell."""
    return f"{letter(HEADS.index(header))}{row_of(CELLS, *where.split(' ')) + 1}"


ALIGN, TEETH, WITHIN = at("goals 1", "align"), at("teeth", "upper"), at("keep 1", "within")
CONTACTS, ISSUED, TOOTH = at("allow 1", "contacts"), at("document", "issued"), at("findings/values 3 11", "tooth")
TEXT, ENTRY, CRITICAL = at("notes 1", "text"), at("goals 1", "entry"), at("extensions", "critical")
EMPTY = at("goals 1", "issued")


def put(place, value, **more):
    """Put a value into a cell, and something upon it."""

    def change(book):
        book.active[place] = value
        for name, one in more.items():
            setattr(book.active[place], name, one)

    return change


def upon(place, **marks):
    def change(book):
        for name, one in marks.items():
            setattr(book.active[place], name, one)

    return change


def on_sheet(do):
    return lambda book: do(book.active)


def sheets(*names, state="visible", value="x"):
    def change(book):
        for name in names:
            other = book.create_sheet(name)
            other["A1"] = value
            other.sheet_state = state

    return change


def hide_all(book):
    sheets("Legend", value=None)(book)
    book.active = book["Legend"]
    book["order"].sheet_state = "hidden"


def hide_columns(sheet):
    sheet.column_dimensions.group("B", "C", hidden=True)


def row(number):
    return on_sheet(lambda sheet: setattr(sheet.row_dimensions[number], "hidden", True))


# what is done to the workbook, rule, place
MALFORMED = [
    ("a contact that became a date", put(CONTACTS, dt.datetime(2026, 11, 12)), "table-date", CONTACTS),
    ("a list that became a date", put(ALIGN, dt.date(2026, 3, 1)), "table-date", ALIGN),
    ("a time", put(ALIGN, dt.time(11, 12)), "table-date", ALIGN),
    ("a span of time", put(ALIGN, dt.timedelta(hours=30)), "table-date", ALIGN),
    ("a number shown as a date", put(WITHIN, 46000, number_format="d-mmm"), "table-date", WITHIN),
    ("a moment that became a date", put(ISSUED, dt.datetime(2026, 3, 4, 9, 30)), "table-date", ISSUED),
    ("a formula for a number", put(WITHIN, "=1/2"), "table-formula", WITHIN),
    ("a formula for words", put(TEXT, '="as "&"agreed"'), "table-formula", TEXT),
    ("a formula that gives a list", put(ALIGN, "=B2"), "table-formula", ALIGN),
    ("a formula that counts", put(ENTRY, "=ROW()"), "table-formula", ENTRY),
    ("an error value", put(WITHIN, "#N/A"), "table-error-value", WITHIN),
    ("an error value in words", put(TEXT, "#REF!"), "table-error-value", TEXT),
    ("a truth value of the spreadsheet", put(CRITICAL, True), "table-cell-kind", CRITICAL),
    ("a truth value for a number", put(WITHIN, True), "table-cell-kind", WITHIN),
    ("a number for teeth", put(TEETH, 17), "table-cell-kind", TEETH),
    ("a number for a tooth", put(TOOTH, 11), "table-cell-kind", TOOTH),
    ("a number for the version", put(at("document", "version"), 1.0), "table-cell-kind", at("document", "version")),
    (
        "a number for the kind of document",
        put(at("document", "format"), 1),
        "table-cell-kind",
        at("document", "format"),
    ),
    ("a number for words", put(TEXT, 12), "table-cell-kind", TEXT),
    ("a number for a section", put(at("goals 1", "section"), 1), "table-cell-kind", at("goals 1", "section")),
    ("a number stored as text", put(WITHIN, "0.5"), "table-not-a-number", WITHIN),
    ("a count stored as text", put(ENTRY, "one"), "table-entry", ENTRY),
    ("a count that is not whole", put(ENTRY, 1.5), "table-entry", ENTRY),
    ("a third", put(WITHIN, 1 / 3), "number-form", WITHIN),
    ("a small number", put(WITHIN, 1e-7), "number-form", WITHIN),
    ("a large number", put(WITHIN, 1e17), "number-too-large", WITHIN),
    ("beyond the bounds", put(WITHIN, 1e9), "out-of-range", WITHIN),
    ("percent", upon(WITHIN, number_format="0%"), "table-number-format", WITHIN),
    ("a format that hides the sign", upon(WITHIN, number_format="0.0;0.0"), "table-number-format", WITHIN),
    ("a format that adds words", upon(WITHIN, number_format='0.0" cm"'), "table-number-format", WITHIN),
    ("a format that hides the number", upon(WITHIN, number_format=";;;"), "table-number-format", WITHIN),
    ("a comment", upon(WITHIN, comment=Comment("1.5 after all", "x")), "table-comment", WITHIN),
    ("a comment on an empty cell", upon(EMPTY, comment=Comment("and 14", "x")), "table-comment", EMPTY),
    ("a comment on a header", upon("A1", comment=Comment("x", "x")), "table-comment", "A1"),
    ("words struck out", upon(TEXT, font=Font(strike=True)), "table-struck-out", TEXT),
    ("a number struck out", upon(WITHIN, font=Font(strike=True)), "table-struck-out", WITHIN),
    ("merged downwards", on_sheet(lambda sheet: sheet.merge_cells("A13:A14")), "table-merged", "A13"),
    ("merged sideways", on_sheet(lambda sheet: sheet.merge_cells("A13:B13")), "table-merged", "A13"),
    ("merged headers", on_sheet(lambda sheet: sheet.merge_cells("A1:B1")), "table-merged", "A1"),
    ("a hidden row", row(13), "table-hidden", "13"),
    ("a hidden header", row(1), "table-hidden", "1"),
    ("hidden columns", on_sheet(hide_columns), "table-hidden", "B1"),
    ("a hidden sheet", sheets("Old", state="hidden"), "table-sheet", ""),
    ("a hidden sheet without a cell", sheets("Old", state="hidden", value=None), "table-hidden", ""),
    ("a very hidden sheet", sheets("Old", state="veryHidden", value=None), "table-hidden", ""),
    ("the order itself hidden", hide_all, "table-hidden", ""),
    ("a second sheet", sheets("Legend"), "table-sheet", ""),
    ("a cell beside the table", put("BA3", "x"), "table-header-missing", "BA3"),
    ("a header twice", put("E1", "unit"), "table-header-twice", f"{letter(HEADS.index('unit'))}1"),
    ("a header that is a number", put("E1", 5), "table-header-unknown", "E1"),
    ("a header that is a date", put("E1", dt.date(2026, 3, 1)), "table-header-unknown", "E1"),
    ("a header that is a formula", put("E1", "=A1"), "table-header-unknown", "E1"),
    ("a header in capitals", put("A1", "Section"), "table-header-unknown", "A1"),
    ("a header with a blank", put("A1", "section "), "table-header-unknown", "A1"),
    ("a title above the header", on_sheet(lambda sheet: sheet.insert_rows(1)), "table-header-missing", "1"),
    ("half a character", put(TEXT, "_xD83D_"), "table-escape", TEXT),
    ("half a character in a section", put("A13", "_xD83D_"), "table-escape", "A13"),
    ("half a character for a number", put(WITHIN, "_xD83D_"), "table-not-a-number", WITHIN),
    ("a noncharacter, escaped", put(TEXT, "_xFFFF_"), "noncharacter", TEXT),
    ("an apostrophe that marks nothing", put(TEXT, "'as agreed"), "table-mark", TEXT),
]
PACKED = parts_of(xlsx_of(CELLS))
SHEET = "xl/worksheets/sheet1.xml"


def with_part(name, data):
    return packed([*((one, part) for one, part in PACKED.items() if one != name), (name, data)])


def without(name):
    return packed([(one, part) for one, part in PACKED.items() if one != name])


def entities():
    """A document type declaration with nested entities, the known attack on readers of such files."""
    bomb = b'<!DOCTYPE w [<!ENTITY a "1"><!ENTITY b "&a;&a;">]>'
    return with_part(SHEET, bomb + PACKED[SHEET].replace(b"0.5", b"&b;", 1))


TRAPS = [
    ("nothing", b""),
    ("text", b"section,entry\r\n"),
    ("a packed file of something else", packed([("a.txt", b"x")])),
    ("cut off", xlsx_of(CELLS)[:-200]),
    ("bytes in the middle lost", xlsx_of(CELLS)[:2000] + xlsx_of(CELLS)[2100:]),
    ("a part twice", packed([*PACKED.items(), (SHEET.replace("1", "2"), b"x"), (SHEET.replace("1", "2"), b"y")])),
    ("without its sheet", without(SHEET)),
    ("without its list of parts", without("[Content_Types].xml")),
    ("without its book", without("xl/workbook.xml")),
    ("a sheet that is no XML", with_part(SHEET, b"section")),
    ("a sheet that does not end", with_part(SHEET, PACKED[SHEET][:-30])),
    ("entities", entities()),
    ("more than is unpacked", with_part("xl/media/picture.bin", b"0" * 20_000_001)),
    ("a workbook of the old kind", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(600)),
    ("one without rows", packed(list(parts_of(xlsx_of([])).items()))),
]
TRIED = {rule for _, _, rule, _ in MALFORMED} | {"table-damaged"}


@pytest.mark.parametrize("change, rule, place", [pytest.param(*case[1:], id=case[0]) for case in MALFORMED])
def test_a_malformed_workbook(change, rule, place, tmp_path):
    found, ended = told(XLSX, xlsx_of(CELLS, change), tmp_path)
    places = {f"{column}{at or ''}" for one, at, column in found if one == rule}
    assert place in places
    assert ended == code(rule)


@pytest.mark.parametrize("data", [pytest.param(data, id=name) for name, data in TRAPS])
def test_what_is_no_workbook_of_a_table_is_refused(data, tmp_path):
    found, ended = told(XLSX, data, tmp_path)
    assert {rule for rule, _, _ in found} <= {"table-damaged", "table-sheet", "table-section"}
    assert ended == 3


READ = [
    ("an empty sheet beside it", sheets("Sheet2", value=None)),
    ("an empty hidden row", row(LAST + 3)),
    ("an empty hidden column", on_sheet(lambda sheet: setattr(sheet.column_dimensions["BZ"], "hidden", True))),
    ("plain formats", upon(WITHIN, number_format="#,##0.00")),
    ("bold", upon(WITHIN, font=Font(bold=True))),
    ("a filter that hides nothing", on_sheet(lambda sheet: setattr(sheet.auto_filter, "ref", "A1:B9"))),
    ("rows apart", on_sheet(lambda sheet: sheet.insert_rows(9))),
    ("a count stored as the text of its digits", put(ENTRY, "1")),
    ("a whole number with its point", put(WITHIN, 0.50)),
    ("text that begins with minus", put(at("notes 2", "text"), "-- call the laboratory", data_type="s")),
]


@pytest.mark.parametrize("change", [pytest.param(change, id=name) for name, change in READ])
def test_what_changes_nothing_is_read(change):
    (one,) = XLSX.read(xlsx_of(CELLS, change))
    assert (one.document, one.findings, one.losses) == (document(), (), ())


def chart(book):
    drawn = BarChart()
    drawn.add_data(Reference(book.active, min_col=2, min_row=2, max_row=5))
    book.active.add_chart(drawn, "A40")


def test_what_is_drawn_beside_the_cells_is_a_loss():
    (one,) = XLSX.read(xlsx_of(CELLS, chart))
    assert one.document == document()
    assert [(loss.pointer, loss.what) for loss in one.losses] == [("", "not-in-cells")]


def test_a_number_stored_with_its_error_is_not_rounded(tmp_path):
    """0.1 + 0.2, as the arithmetic of IEEE 754 leaves it; 1.1 as programs of spreadsheets store it, with 17 digits."""
    data = with_part(SHEET, PACKED[SHEET].replace(b"<v>0.5</v>", b"<v>0.30000000000000004</v>", 1))
    assert told(XLSX, data, tmp_path)[0] == [("number-form", 14, letter(HEADS.index("within")))]
    (one,) = XLSX.read(with_part(SHEET, PACKED[SHEET].replace(b"<v>0.5</v>", b"<v>1.1000000000000001</v>", 1)))
    assert one.document.keep[0].within == 1.1


def test_what_is_typed_below_stays_text():
    """A whole column is formatted, so a tooth typed into a new row is not taken for a number by the spreadsheet."""
    sheet = load_workbook(io.BytesIO(XLSX.write([document()]).data)).active
    heads = [cell.value for cell in sheet[1]]
    for name in ("teeth", "tooth", "align", "contacts", "version"):
        if name in heads:
            assert sheet.column_dimensions[letter(heads.index(name))].number_format == "@"


def test_only_the_table_and_its_writer_are_in_the_properties():
    book = load_workbook(io.BytesIO(XLSX.write([document()]).data))
    assert (book.properties.creator, book.properties.title, book.sheetnames) == ("wellposed", None, ["prescription"])


def test_damage_is_refused_or_read_and_never_breaks_the_program():
    names = sorted(name for name in PACKED if name.endswith((".xml", ".rels")))
    outcomes = set()
    for seed in range(120):
        rng, name = random.Random(seed), names[seed % len(names)]
        found = bytearray(PACKED[name] if seed % 3 else xlsx_of(CELLS[:3]))
        for _ in range(rng.randint(1, 3)):
            found[rng.randrange(len(found))] = rng.randrange(256)
        (one,) = XLSX.read(with_part(name, bytes(found)) if seed % 3 else bytes(found))
        assert (one.document is None) == any(finding.severity == "stop" for finding in one.findings)
        outcomes |= {finding.rule for finding in one.findings} or {"read"}
    assert {"table-damaged", "read"} <= outcomes


def test_a_workbook_of_one_cell_far_away_is_refused():
    book, stream = Workbook(), io.BytesIO()
    book.active["XFD1048576"] = "x"
    book.save(stream)
    (one,) = XLSX.read(stream.getvalue())
    assert [finding.rule for finding in one.findings] == ["table-damaged"]


def test_the_parts_are_packed_without_a_moment():
    with zipfile.ZipFile(io.BytesIO(XLSX.write([document()]).data)) as book:
        assert {entry.date_time for entry in book.infolist()} == {(1980, 1, 1, 0, 0, 0)}
