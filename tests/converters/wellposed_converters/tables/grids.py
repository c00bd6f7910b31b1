"""The long table of a small prescription as a grid of cells, and files made of grids without the program's writers."""

import csv
import io
import json
import re
import warnings
import zipfile
from functools import cache

from click.testing import CliRunner
from openpyxl import Workbook
from tests.validator.wellposed.commands.documents import EXAMPLE

from wellposed.check import sound_document
from wellposed.commands import main
from wellposed_converters.tables.forms import CSV

NUMBERS = {
    "entry",
    "inner_entry",
    "revision",
    "age_years",
    "value",
    "within",
    "overcorrection_value",
    "per_contact",
    "in_all",
}
ORDER = EXAMPLE | {
    "staging": {"id": "s1", "strength": "prefer", "order": []},
    "findings": [
        *EXAMPLE["findings"],
        {"id": "f3", "tooth_measure": "tooth-width", "values": {"11": 8.5, "21": 8.4}, "unit": "mm"},
    ],
    "notes": [{"text": "as agreed"}, {"text": "-- call the laboratory"}],
    "extensions": {"org.example.case": {"critical": False, "content": {"shelf": 12}}},
}
TEXT_RULES = {"not-utf-8", "document-too-large", "number-form", "number-too-large", "noncharacter"}


@cache
def document():
    return sound_document(json.dumps(ORDER).encode())


def grid():
    """The table as lists of texts, read by Python's own reader of separated values."""
    text = CSV.write([document()]).data.decode()
    return [list(row) for row in csv.reader(io.StringIO(text, newline=""), strict=True)]


def row_of(cells, section, entry="", key=""):
    """Where the row of a section stands, from 0."""
    heads = cells[0]
    at = {name: heads.index(name) for name in ("section", "entry", "tooth")}
    return next(
        place
        for place, row in enumerate(cells)
        if row[at["section"]] == section and row[at["entry"]] == entry and (not key or row[at["tooth"]] == key)
    )


def put(where, header, value):
    """A change that puts a value into a cell: ``where`` is a section, a space and an entry, or 0 for the header."""

    def change(cells):
        row = 0 if where == 0 else row_of(cells, *where.split(" "))
        if header not in cells[0]:
            for one in cells:
                one.append("")
            cells[0][-1] = header
        cells[row][cells[0].index(header)] = value
        return row + 1, header

    return change


def csv_of(cells):
    """The grid as separated values."""
    stream = io.StringIO(newline="")
    csv.writer(stream, lineterminator="\r\n").writerows(cells)
    return stream.getvalue().encode()


def typed(header, text):
    """What a person would have typed into a workbook: numbers under the headers of numbers."""
    if isinstance(text, str) and header in NUMBERS and re.fullmatch("-?[0-9]+([.][0-9]+)?", text, re.ASCII):
        return float(text) if "." in text else int(text)
    return text


def xlsx_of(cells, change=lambda book: None):
    """The grid as a workbook; text is stored as text."""
    book = Workbook()
    book.active.title = "order"
    for number, row in enumerate(cells, 1):
        for place, text in enumerate(row, 1):
            value = typed(cells[0][place - 1], text) if number > 1 else text
            if value != "":
                cell = book.active.cell(number, place, value)
                if isinstance(text, str) and isinstance(value, str):
                    cell.data_type = "s"
    change(book)
    stream = io.BytesIO()
    book.save(stream)
    return stream.getvalue()


def parts_of(data):
    """The parts of a packed file."""
    with zipfile.ZipFile(io.BytesIO(data)) as book:
        return {entry.filename: book.read(entry) for entry in book.infolist()}


def packed(parts):
    """A packed file of these parts."""
    stream = io.BytesIO()
    with warnings.catch_warnings(), zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as book:
        warnings.simplefilter("ignore")  # of a name that stands twice
        for name, content in parts:
            book.writestr(name, content)
    return stream.getvalue()


def told(form, data, folder):
    """Rule, row and column letter of each finding, as `wellposed convert` tells them; and what it ends with."""
    file, report = folder / f"order{form.suffixes[0]}", folder / "report.json"
    file.write_bytes(data)
    arguments = ["convert", str(file), "--to", "json", "-o", str(folder / "out.json"), "--report", str(report)]
    ran = CliRunner().invoke(main, arguments)
    (one,) = json.loads(report.read_text())["documents"]
    assert (ran.exit_code == 0) == (folder / "out.json").exists() == (one["id"] is not None)
    found = [(f["rule"], f["facts"].get("row", 0), f["facts"].get("column", "")) for f in one["findings"]]
    return found, ran.exit_code


def code(rule):
    """What the command ends with: 3 where a file cannot be read in its form, 1 where its document is not sound."""
    return 3 if rule.startswith("table-") or rule in TEXT_RULES else 1
