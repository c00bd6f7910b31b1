"""JSON to the long table and back: the same document, by its digest and member by member.

WELLPOSED_CONVERSIONS sets how many prescriptions are carried in each form.
"""

import csv
import io
import json
import os
import random
from pathlib import Path

import pytest
from python_calamine import CalamineWorkbook
from tests.converters.wellposed_converters.tables.grids import document, grid
from tests.spec import made
from tests.validator.wellposed.kinematics.generate import prescription

from wellposed.check import sound_document
from wellposed.digests import digest
from wellposed.findings import Finding
from wellposed.model import DOCUMENTS
from wellposed.model.envelope import Envelope
from wellposed.schema import document_schema, names
from wellposed_converters.tables.addresses import placed
from wellposed_converters.tables.assembling import assembled
from wellposed_converters.tables.book import from_workbook
from wellposed_converters.tables.forms import CSV, XLSX
from wellposed_converters.tables.header import records
from wellposed_converters.tables.layout import NUMBER, layout, sections
from wellposed_converters.tables.rows import columns_of, rows_of
from wellposed_converters.tables.separated import separated

COUNT = int(os.environ.get("WELLPOSED_CONVERSIONS", "300"))
PARTS = 4
EXAMPLES = sorted((Path(__file__).parents[4] / "examples").rglob("*.json"))
FORMS = [pytest.param(CSV, separated, id="csv"), pytest.param(XLSX, from_workbook, id="xlsx")]


def same(one, other):
    return isinstance(one, Envelope) and one == other and digest(one) == digest(other)


@pytest.mark.parametrize("part", range(PARTS))
@pytest.mark.parametrize("form, _", FORMS)
def test_generated_prescriptions_come_back_the_same(form, _, part):
    seeds = range(part, COUNT, PARTS)
    made_of = {seed: sound_document(json.dumps(prescription(seed)).encode()) for seed in seeds}
    orders = {seed: order for seed, order in made_of.items() if isinstance(order, Envelope)}
    assert len(orders) >= 0.99 * len(seeds)  # of thousands, a few contradict themselves in their parts
    for seed, order in orders.items():
        written = form.write([order])
        (back,) = form.read(written.data)
        assert (written.losses, back.losses, back.findings) == ((), (), ())
        assert same(back.document, order), seed


@pytest.mark.parametrize("form, _", FORMS)
def test_the_examples_come_back_the_same(form, _):
    documents = [found for path in EXAMPLES if isinstance(found := sound_document(path.read_bytes()), Envelope)]
    assert {one.format for one in documents} >= {"wellposed/prescription", "wellposed/setup"}
    assert all(same(form.read(form.write([one]).data)[0].document, one) for one in documents)


def rebuilt(opened, data, named):
    """The document of a table, without a look at how its parts go together."""
    told: list[Finding] = []
    rows = [placed(one, sections(named), told.append) for one in records(opened(data), told.append)]
    made = assembled(rows, layout(named), told.append)
    assert told == []
    return DOCUMENTS[named].model_validate_json(made.text)


class Maker(made.Maker):
    """Makes no numbers that a reader of JSON refuses."""

    def content(self, *_):
        return self.random.choice([one for one in made.CONTENT if one != 10**20])


@pytest.mark.parametrize("kind", names())
@pytest.mark.parametrize("form, opened", FORMS)
def test_whatever_a_schema_allows_comes_back_the_same(form, opened, kind):
    """Documents of every kind made out of the published schema: every member, branch and term, odd texts among them."""
    maker = Maker(document_schema(kind), random.Random(f"{kind} tables"))
    for _ in range(60 if form is CSV else 15):
        one = DOCUMENTS[f"wellposed/{kind}"].model_validate_json(json.dumps(maker.document()))
        written = form.write([one])
        assert written.losses == ()
        assert rebuilt(opened, written.data, f"wellposed/{kind}") == one


# a second reader


def cells_of(order):
    rows = rows_of(order)
    return columns_of(rows), rows


@pytest.mark.parametrize("seed", range(12))
def test_python_reads_the_same_cells_from_separated_values(seed):
    order = sound_document(json.dumps(prescription(seed)).encode())
    heads, rows = cells_of(order)
    text = CSV.write([order]).data.decode()
    found = [*csv.reader(io.StringIO(text, newline=""), strict=True)]
    assert found == [list(heads), *([row.cells.get(head, ("", ""))[1] for head in heads] for row in rows)]


@pytest.mark.parametrize("seed", range(12))
def test_another_reader_reads_the_same_cells_from_a_workbook(seed):
    """calamine, a reader in Rust that shares no code with the writer."""
    order = sound_document(json.dumps(prescription(seed)).encode())
    heads, rows = cells_of(order)
    book = CalamineWorkbook.from_filelike(io.BytesIO(XLSX.write([order]).data))
    assert book.sheet_names == ["prescription"]
    found = book.get_sheet_by_index(0).to_python()
    assert found == [list(heads), *([seen(row.cells.get(head, ("", ""))) for head in heads] for row in rows)]


def seen(cell):
    """What a workbook holds for a cell: numbers as numbers, all else as text."""
    kind, text = cell
    return float(text) if kind == NUMBER and text != "(none)" else text


ODD = [
    "=1+1",
    "'",
    "'=x",
    "-",
    "#REF!",
    "_x0041_",
    "_x005F_x0041_",
    "\x01",
    "a\rb",
    "a\r\nb",
    '"',
    ",",
    "x\ty",
    " x ",
    "+1",
]


@pytest.mark.parametrize(
    "text", [*ODD, "@x", "\t=1", "\ufeff=1", "(none)", "1", "1e5", "TRUE", "2026-03-04", "12-11", "\x00"]
)
def test_texts_that_a_spreadsheet_would_change_are_kept(text):
    order = document().model_copy(update={"notes": (document().notes[0].model_copy(update={"text": text}),)})
    for form in (CSV, XLSX):
        (back,) = form.read(form.write([order]).data)
        assert back.document.notes[0].text == text


@pytest.mark.parametrize("text", ["=1+1", "+1", "-x", "@x", "\t=1", "\r=1", " =1", '"=1', "'x", "＝1", "#N/A"])
def test_no_cell_of_words_begins_like_a_formula(text):
    order = document().model_copy(update={"notes": (document().notes[0].model_copy(update={"text": text}),)})
    row = rows_of(order)[-1]
    assert row.cells["text"][1] == f"'{text}"


def test_the_same_document_makes_the_same_bytes():
    assert [CSV.write([document()]).data == CSV.write([document()]).data] == [True]
    assert XLSX.write([document()]).data == XLSX.write([document()]).data


def test_a_content_too_long_for_a_cell_is_a_loss_and_the_rest_is_kept():
    long = {"critical": False, "content": "x" * 40_000}
    order = sound_document(
        json.dumps(
            document().model_dump(exclude_unset=True, mode="json")
            | {"extensions": {"org.example.long": long, "org.example.short": long | {"content": 1}}}
        ).encode()
    )
    assert CSV.write([order]).losses == ()
    written = XLSX.write([order])
    assert [(one.pointer, one.what) for one in written.losses] == [
        ("/extensions/org.example.long", "too-long-for-a-cell")
    ]
    (back,) = XLSX.read(written.data)
    assert [*back.document.extensions] == ["org.example.short"]


@pytest.mark.parametrize("form, _", FORMS)
def test_one_table_carries_one_document(form, _):
    with pytest.raises(ValueError, match="too many"):
        form.write([document(), document()])
    with pytest.raises(ValueError, match="not enough"):
        form.write([])


def test_only_columns_with_something_in_them_are_written():
    cells = grid()
    assert [head for place, head in enumerate(cells[0]) if not any(row[place] for row in cells[1:])] == []
