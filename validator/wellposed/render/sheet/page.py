"""A page as plain data, and from that as HTML: no script, nothing fetched, every character escaped."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import ClassVar

from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template
from markupsafe import Markup

from wellposed.render.sheet.drawing import Drawing
from wellposed.render.sheet.marks import BLUE, FONTS, GREY, INK, PAPER, TINT

__all__ = ["Block", "Figure", "Line", "Listed", "Page", "Section", "Table", "Words", "html"]

_TEMPLATES = Path(__file__).parent / "templates"


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing with what is to be said of it."""

    kind: ClassVar[str] = "figure"
    drawing: Drawing
    caption: str = ""

    @property
    def markup(self) -> Markup:
        """The drawing as SVG; its texts are escaped where it is written."""
        return Markup(self.drawing.markup())


@dataclass(frozen=True, slots=True)
class Table:
    """A table; the first cell of a row is its head; ``widths`` of the columns in percent."""

    kind: ClassVar[str] = "table"
    caption: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    widths: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Line:
    """A paragraph of an item; ``deeper``: a step in; ``aside``: where it is from."""

    words: str
    deeper: bool = False
    aside: bool = False


@dataclass(frozen=True, slots=True)
class Listed:
    """Items, each with a mark such as the id of a clause, or "", and its lines."""

    kind: ClassVar[str] = "listed"
    heading: str
    items: tuple[tuple[str, tuple[Line, ...]], ...]


@dataclass(frozen=True, slots=True)
class Words:
    """A paragraph."""

    kind: ClassVar[str] = "words"
    words: str


Block = Figure | Table | Listed | Words


@dataclass(frozen=True, slots=True)
class Section:
    """A part of the page under a heading."""

    heading: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Page:
    """The whole.

    title    what it is about
    running  what stands at the foot of every printed sheet beside its number
    facts    what is to be known of the documents: label and value
    answer   a word or two, and a sentence: the verdict
    foot     what closes the page, the caution last
    issued   when the document was, as it says
    """

    title: str
    running: str
    facts: tuple[tuple[str, str], ...]
    answer: tuple[str, str]
    sections: tuple[Section, ...]
    foot: tuple[str, ...]
    issued: str

    @property
    def drawings(self) -> list[Drawing]:
        """Every drawing, in order."""
        blocks: Sequence[Block] = [block for section in self.sections for block in section.blocks]
        return [block.drawing for block in blocks if isinstance(block, Figure)]


def html(page: Page) -> str:
    """The page as an HTML document, the same bytes every time."""
    colours = {"ink": INK, "grey": GREY, "paper": PAPER, "tint": TINT, "blue": BLUE, "fonts": Markup(FONTS)}
    return _template().render(page=page, **colours)


@cache
def _template() -> Template:
    loader = FileSystemLoader(_TEMPLATES)
    made = Environment(loader=loader, autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True)
    return made.get_template("page.html")
