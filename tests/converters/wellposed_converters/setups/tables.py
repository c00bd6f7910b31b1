"""A small table and its declared reading, to be changed; and what reading it says."""

import io

from openpyxl import Workbook
from tests.validator.wellposed.consistency.ordinary import prescription

from wellposed_converters.setups.csv_file import csv_book
from wellposed_converters.setups.declared import mapping_of
from wellposed_converters.setups.faults import RefusedError, in_order
from wellposed_converters.setups.reading import read_table
from wellposed_converters.setups.workbook import workbook

CSV = "Tooth;Up;Turn;Note\n11;-1,2;5;a\n21;-1,2;-2,5;b\n22;-;n/a;\n"
COLUMNS = """
[table]
layout = "row-a-tooth"
header_row = 1
decimal = "comma"
delimiter = ";"
ignore_columns = ["Note"]
none = ["-"]
not_stated = ["n/a"]
[tooth]
column = "Tooth"
notation = "ISO 3950"
[[movement]]
column = "Up"
variable = "vertical"
unit = "mm"
positive = "extrusion"
[[movement]]
column = "Turn"
variable = "rotation"
unit = "deg"
positive = "mesiolingual-rotation"
"""
LONG_CSV = "Tooth;What;Amount;Way;Unit\n11;height;1,2;I;mm\n21;height;0,3;E;mm\n21;turn;4;M;grad\n"
LONG = """
[table]
layout = "row-a-movement"
header_row = 1
decimal = "comma"
delimiter = ";"
[tooth]
column = "Tooth"
notation = "ISO 3950"
[rows]
movement = "What"
value = "Amount"
direction = "Way"
unit = "Unit"
unit_words = { mm = "mm", grad = "deg" }
[[movement]]
name = "height"
variable = "vertical"
unit = "mm"
directions = { I = "intrusion", E = "extrusion" }
direction_at = "in a column"
[[movement]]
name = "turn"
variable = "rotation"
unit = "deg"
directions = { M = "mesiolingual-rotation", D = "distolingual-rotation" }
direction_at = "in a column"
"""
RX = prescription()


def changed(text, *changes):
    """The text with each (before, after) put in once; what is not there is a fault of the test."""
    for before, after in changes:
        assert before in text, before
        text = text.replace(before, after, 1)
    return text


def faults_of(book, columns, sheet=None, rx=RX):
    """Every fault as (rule, row, column); none where it is read."""
    try:
        read_table(book(), sheet, mapping_of(columns.encode(), "columns.toml"), rx)
    except RefusedError as refused:
        return [(one.rule, one.place.row, one.place.column) for one in in_order(refused.faults)]
    return []


def csv_faults(text, columns=COLUMNS, encoding="utf-8", rx=RX):
    """The same of a file of separated values, declared to be in the encoding that ``columns`` says."""
    data = text if isinstance(text, bytes) else text.encode(encoding)
    declared = "utf-16" if 'encoding = "utf-16"' in columns else None
    delimiter = ";" if 'delimiter = ";"' in columns else None
    return faults_of(lambda: csv_book(data, "t.csv", declared, delimiter), columns, rx=rx)


def values_of(book, columns, sheet=None, rx=RX):
    """What is read: tooth, variable to value."""
    read = read_table(book, sheet, mapping_of(columns.encode(), "columns.toml"), rx)
    return {(one.tooth, one.variable): float(one.value) for one in read.final}


def xlsx(*sheets, change=lambda book: None):
    """A workbook of sheets, each (name, rows), as bytes."""
    book = Workbook()
    book.remove(book.active)
    for name, rows in sheets:
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(row)
    change(book)
    stream = io.BytesIO()
    book.save(stream)
    return stream.getvalue()


def xlsx_faults(data, columns, sheet=None, rx=RX):
    """Every fault of a workbook."""
    return faults_of(lambda: workbook(data, "t.xlsx"), columns, sheet, rx)
