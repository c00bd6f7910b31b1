"""A word-processor document to text: paragraphs a line each, tables as rows between bars, in the order of the document.

What cannot be told from the words alone is refused by name: changes still tracked, comments, text boxes, struck-out
words, form fields, symbols, footnotes, merged cells. As a last check every run of text must have been read once.
"""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterator
from typing import Any, Final

from docx import Document
from docx.exceptions import PythonDocxError
from docx.oxml.ns import qn
from docx.table import Table
from docx.text.paragraph import Paragraph

from wellposed_converters.text.files.notes import NoteError

LARGEST_UNPACKED: Final = 20_000_000
REFUSED: Final = (
    (("ins", "del", "moveFrom", "moveTo"), "tracked changes", "Accept or reject all changes"),
    (
        ("commentReference", "commentRangeStart"),
        "comments",
        "Write what the comments say into the text and delete them",
    ),
    (("txbxContent",), "text boxes", "Move the words of the text boxes into the text"),
    (("strike", "dstrike"), "struck-out words", "Delete what is struck out"),
    (("vanish",), "hidden words", "Show or delete the hidden words"),
    (("sdt", "ffData", "altChunk"), "form fields or content controls", "Turn the fields into plain text"),
    (("sym",), "symbols of a special font", "Write the symbols as words"),
    (("footnoteReference", "endnoteReference"), "footnotes or endnotes", "Move the notes into the text"),
    (("gridSpan", "vMerge"), "merged table cells", "Split the cells, each with its own words"),
)
PICTURES: Final = ("drawing", "pict", "object")


def document_text(data: bytes, name: str) -> tuple[str, tuple[str, ...]]:
    """The text, and a warning for each kind of thing that has no words.

    Raises:
        NoteError: "note-document-damaged", "note-document-refused", "note-document-out-of-reach"
    """
    document = _opened(data, name)
    stories = _stories(document)
    for story in stories:
        _refuse(story, name)
    blocks = ["\n".join(line for item in _items(story, document) for line in _lines(item, name)) for story in stories]
    _reached(stories, blocks, name)
    seen = any(list(story.iter(qn(f"w:{tag}"))) for story in stories for tag in PICTURES)
    return "\n\n".join(block for block in blocks if block.strip()), ("pictures are not read",) if seen else ()


def _opened(data: bytes, name: str) -> Any:
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as packed:
            unpacked = sum(entry.file_size for entry in packed.infolist())
        if unpacked <= LARGEST_UNPACKED:
            return Document(io.BytesIO(data))
    except (zipfile.BadZipFile, KeyError, ValueError, SyntaxError, PythonDocxError) as fault:
        advice = "Save it again as a .docx without a password, or as plain text"
        raise NoteError("note-document-damaged", name, "a document that can be opened", advice) from fault
    expected = f"a document of at most {LARGEST_UNPACKED} bytes unpacked"
    raise NoteError("note-too-large", name, expected, "Take the pictures out")


def _stories(document: Any) -> list[Any]:
    """The elements that hold text: headers, the body, footers; each once, though sections may share them."""
    ends: dict[str, list[Any]] = {"header": [], "footer": []}
    for section in document.sections:
        for end, found in ends.items():
            parts = [getattr(section, f"{page}{end}") for page in ("", "first_page_", "even_page_")]
            found += [part._element for part in parts if not part.is_linked_to_previous]
    return [*ends["header"], document.element.body, *ends["footer"]]


def _refuse(story: Any, name: str) -> None:
    for tags, what, advice in REFUSED:
        for tag in tags:
            if any(_on(found) for found in story.iter(qn(f"w:{tag}"))):
                raise NoteError("note-document-refused", f"{name} ({what})", f"a document without {what}", advice)


def _on(element: Any) -> bool:
    """Whether a property such as struck-out is not switched off."""
    return element.get(qn("w:val")) not in ("0", "false", "off")


def _items(story: Any, document: Any) -> Iterator[Paragraph | Table]:
    for child in story.iterchildren():
        if child.tag == qn("w:p"):
            yield Paragraph(child, document)
        elif child.tag == qn("w:tbl"):
            yield Table(child, document)


def _lines(item: Paragraph | Table, name: str) -> Iterator[str]:
    if isinstance(item, Paragraph):
        listed = any(True for _ in item._element.iter(qn("w:numPr")))
        yield f"- {item.text}" if listed and item.text.strip() else item.text
        return
    for row in item.rows:
        cells = [
            " ".join("; ".join(part.text for part in cell.paragraphs if part.text.strip()).split())
            for cell in row.cells
        ]
        if any("|" in cell for cell in cells):
            advice = "Name the teeth in that cell in another way"
            raise NoteError("note-document-refused", f"{name} (a bar in a table cell)", "cells without a bar", advice)
        yield f"| {' | '.join(cells)} |"


def _reached(stories: list[Any], blocks: list[str], name: str) -> None:
    """Every letter and figure of every run of text stands in what was read, and no other."""
    for story, block in zip(stories, blocks, strict=True):
        held = "".join(run.text or "" for run in story.iter(qn("w:t")))
        if sorted(filter(str.isalnum, held)) != sorted(filter(str.isalnum, block)):
            advice = "Save the document as plain text and look whether all words are there"
            raise NoteError("note-document-out-of-reach", name, "words in paragraphs and simple tables only", advice)
