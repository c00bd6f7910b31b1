"""The page as HTML and as PDF: what it is made of, that nothing leaves its place, the same bytes every time."""

import io
import json
import re
from itertools import pairwise
from pathlib import Path

import html5lib
import pypdf
import pytest
from tests.validator.wellposed.render.sheet.boxes import font
from tests.validator.wellposed.render.sheet.cases import EXAMPLES, made, order_page, pages

import wellposed.render.sheet
from wellposed.check import check, sound
from wellposed.digests import digest
from wellposed.findings import CAUTION
from wellposed.model.making import Note
from wellposed.render.readback import sentences
from wellposed.render.sheet import html, order_sheet, svg
from wellposed.render.sheet.page import Line, Listed, Page, Section, Table
from wellposed.render.sheet.parts import findings, notes

PAGES = dict(pages())
X, S = "{http://www.w3.org/1999/xhtml}", "{http://www.w3.org/2000/svg}"
HOSTILE = '</p><script>alert(1)</script><svg onload="x">&amp;"\'{{ 7*7 }}</style>'


def parsed(text):
    """The tree of a page; a ParseError for anything the HTML standard calls a parse error."""
    return html5lib.HTMLParser(strict=True).parse(text)


@pytest.mark.parametrize("name", PAGES)
def test_a_page_is_what_the_html_standard_asks(name):
    tree = parsed(html(PAGES[name]()))
    levels = [int(one.tag[-1]) for one in tree.iter() if re.fullmatch(rf"{X}h[1-6]", str(one.tag))]
    assert tree.get("lang") == "en"
    assert tree.find(f".//{X}title").text == PAGES[name]().title
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))
    assert all(one.get("scope") in ("col", "row") for one in tree.iter(f"{X}th"))
    assert all(table.find(f"{X}caption") is not None for table in tree.iter(f"{X}table"))
    assert all(one.get("role") == "img" and one.find(f"{S}title") is not None for one in tree.iter(f"{S}svg"))
    ids = [one.get("id") for one in tree.iter() if one.get("id")]
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("name", PAGES)
def test_nothing_is_run_and_nothing_fetched(name):
    tree = parsed(html(PAGES[name]()))
    tags = {str(one.tag).rpartition("}")[2] for one in tree.iter()}
    assert tags.isdisjoint({"script", "link", "img", "iframe", "object", "image", "use", "a", "foreignObject"})
    attributes = {str(key) for one in tree.iter() for key in one.attrib}
    assert not [key for key in attributes if key.startswith("on") or key.endswith(("href", "src"))]
    assert "@import" not in html(PAGES[name]())
    assert not re.search(r"url\((?!#)", html(PAGES[name]()))


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_sheet_of_an_order_says_it_all(name):
    order = sound(EXAMPLES[name].read_bytes())
    report = check(EXAMPLES[name].read_bytes())
    told = " ".join("".join(parsed(html(order_page(name))).itertext()).split())
    assert all(one.text in told for one in sentences(order))
    assert all(f"· {one.rule}" in told for one in report.findings)
    assert digest(order) in told
    assert f"{order.id}, revision {order.revision}" in told
    assert report.verdict.replace("-", " ").capitalize() in told
    assert CAUTION in told


@pytest.mark.parametrize("name", PAGES)
def test_the_same_input_gives_the_same_bytes(name):
    page = PAGES[name]()
    assert (html(page), svg(page)) == (html(page), svg(page))
    again = order_sheet(sound(made()), check(made()))
    assert html(again) == html(order_sheet(sound(made()), check(made())))


# nothing gets out of its place


def test_hostile_words_stay_words():
    note = Note.model_validate({"text": HOSTILE})
    listed = Listed(HOSTILE, ((HOSTILE, (Line(HOSTILE),)),))
    table = Table(HOSTILE, (HOSTILE,), ((HOSTILE, HOSTILE),))
    section = Section(HOSTILE, (listed, table))
    page = Page(
        HOSTILE, HOSTILE, ((HOSTILE, HOSTILE),), (HOSTILE, HOSTILE), (section, *notes([note])), (HOSTILE,), HOSTILE
    )
    tree = parsed(html(page))
    assert list(tree.iter(f"{X}script")) + list(tree.iter(f"{S}svg")) == []
    assert "".join(tree.find(f".//{X}h1").itertext()) == HOSTILE
    assert "".join(tree.itertext()).count(HOSTILE) == 17  # every place there is but the two times, which are attributes


def test_hostile_words_of_a_document_stay_words():
    problems = [{"id": "p1", "problem": "other", "words": HOSTILE}]
    data = made(problems=problems, notes=[{"text": HOSTILE}])
    text = html(order_sheet(sound(data), check(data)))
    tree = parsed(text)
    assert not list(tree.iter(f"{X}script"))
    assert "".join(tree.itertext()).count("<script>alert(1)</script>") == 2


def test_hostile_text_in_a_drawing_stays_text():
    page = order_page("several-conflicts")
    drawing = page.drawings[0]
    before, drawing.title = drawing.title, HOSTILE
    try:
        tree = parsed(html(page))
    finally:
        drawing.title = before
    assert not list(tree.iter(f"{X}script"))
    assert HOSTILE in [one.text for one in tree.iter(f"{S}title")]


def test_no_finding_at_all_is_said():
    assert findings(()).blocks[0].words == "Nothing."


# PDF


@pytest.fixture(scope="module")
def printed():
    """Prints a page, and reads it again."""
    font(bold=False)
    weasyprint = pytest.importorskip("weasyprint", exc_type=(ImportError, OSError), reason="the extra wellposed[pdf]")
    assert weasyprint.__version__
    made_before = {}

    def read(name):
        if name not in made_before:
            made_before[name] = wellposed.render.sheet.pdf(html(PAGES[name]()))
        return made_before[name], pypdf.PdfReader(io.BytesIO(made_before[name]))

    return read


PRINTED = ("several-conflicts, order", "class-two-distal-movement, full setup", "history")


@pytest.mark.parametrize("name", PRINTED)
def test_a_pdf_is_tagged_and_says_what_it_is(name, printed):
    _, reader = printed(name)
    root = reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"] is True or str(root["/MarkInfo"]["/Marked"]).lower() == "true"
    assert root["/StructTreeRoot"]["/K"]
    assert root["/Lang"] == "en"
    assert reader.metadata.title == PAGES[name]().title
    assert b"pdfuaid:part" in root["/Metadata"].get_data()


def figures(element):
    """The alternative text of every figure below an element of the structure."""
    element = element.get_object()
    if not isinstance(element, dict):
        return
    if element.get("/S") == "/Figure":
        yield element.get("/Alt")
    kids = element.get("/K", [])
    for kid in kids if isinstance(kids, list) else [kids]:
        if not isinstance(kid, int):
            yield from figures(kid)


@pytest.mark.parametrize("name", PRINTED)
def test_every_drawing_of_a_pdf_has_its_alternative_text(name, printed):
    _, reader = printed(name)
    told = list(figures(reader.trailer["/Root"]["/StructTreeRoot"]["/K"][0]))
    assert told == [drawing.title for drawing in PAGES[name]().drawings]


def test_the_pages_are_few_and_numbered(printed):
    _, reader = printed("several-conflicts, order")
    texts = [page.extract_text() for page in reader.pages]
    assert 3 <= len(texts) <= 6
    assert all(f"page {place} of {len(texts)}" in text for place, text in enumerate(texts, 1))
    assert all("SC-310, revision 1" in text for text in texts)
    assert {
        (round(page.mediabox.width / 72 * 25.4), round(page.mediabox.height / 72 * 25.4)) for page in reader.pages
    } == {(210, 297)}


def test_the_same_page_prints_to_the_same_bytes(printed):
    first, _ = printed("several-conflicts, order")
    assert wellposed.render.sheet.pdf(html(PAGES["several-conflicts, order"]())) == first


def test_its_template_is_part_of_the_package():
    folder = Path(wellposed.render.sheet.__file__).parent / "templates"
    assert sorted(path.name for path in folder.iterdir()) == ["page.css", "page.html"]
    assert json.loads(made())["id"] in order_sheet(sound(made()), check(made())).title
