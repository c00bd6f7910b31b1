"""A drawing as SVG, in mm of the page, y downwards; every drawing has a title and a description in words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple
from xml.etree import ElementTree as ET

from wellposed.render.sheet.marks import FONTS, INK
from wellposed.render.sheet.patterns import pattern

__all__ = ["TEXT", "Drawing", "Point", "number", "stacked"]

TEXT = 3.0
"""Size of type in drawings, mm: 8.5 points."""
_SVG = "http://www.w3.org/2000/svg"
_GAP = 6.0


class Point(NamedTuple):
    """A place on the page, or a way from one to another, mm."""

    x: float
    y: float

    def plus(self, other: Point, times: float = 1.0) -> Point:
        """This place, and from there so many times a way."""
        return Point(self.x + other.x * times, self.y + other.y * times)


def number(value: float) -> str:
    """A coordinate as it is written: two decimals at most, so that the same input gives the same bytes."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def _told(attributes: Mapping[str, str | float]) -> dict[str, str]:
    return {
        name.replace("_", "-"): value if isinstance(value, str) else number(value) for name, value in attributes.items()
    }


class Drawing:
    """A drawing under way.

    name         what its parts are called by, so that several can stand in one page
    title, desc  what it is, in a line, and all it shows, in words
    width        of the picture, mm; ``height``, and the ``top`` it begins at, are set when they are known
    """

    def __init__(self, name: str, title: str, width: float, height: float = 0.0) -> None:
        self.name = name
        self.title = title
        self.desc: list[str] = []
        self.width = width
        self.height = height
        self.top = 0.0
        self.body = ET.Element("g")
        self.used: set[str] = set()
        """Names of the marks of the legend that it uses."""

    # parts

    def add(self, tag: str, **attributes: str | float) -> ET.Element:
        """An element; underscores in the names of attributes stand for hyphens."""
        return ET.SubElement(self.body, tag, _told(attributes))

    def line(self, one: Point, other: Point, **how: str | float) -> None:
        """A straight line."""
        self.add("line", x1=one.x, y1=one.y, x2=other.x, y2=other.y, **how)

    def path(self, data: str, **how: str | float) -> None:
        """A path; its data as SVG writes it."""
        self.add("path", d=data, **how)

    def polygon(self, points: Iterable[Point], **how: str | float) -> None:
        """A closed shape with straight sides."""
        self.add("polygon", points=" ".join(f"{number(p.x)},{number(p.y)}" for p in points), **how)

    def text(
        self, at: Point, words: str, anchor: str = "start", size: float = TEXT, bold: bool = False, begins: str = ""
    ) -> None:
        """A line of text, ``at`` on its baseline; bold, or only what it begins with."""
        weight = {"font_weight": "bold"} if bold else {}
        line = self.add("text", x=at.x, y=at.y, text_anchor=anchor, font_size=size, fill=INK, **weight)
        if not begins:
            line.text = words
            return
        first = ET.SubElement(line, "tspan", {"font-weight": "bold"})
        first.text, first.tail = begins, words.removeprefix(begins)

    def middled(self, at: Point, words: str, anchor: str = "middle", size: float = TEXT, bold: bool = False) -> None:
        """A line of text whose digits are centred on a height."""
        self.text(Point(at.x, at.y + size * 0.36), words, anchor, size, bold)

    # whole

    def element(self, at: Point | None = None) -> ET.Element:
        """The drawing as an ``svg`` element; inside another, at a place."""
        root = ET.Element("svg", self._head(at))
        for tag, words in (("title", self.title), ("desc", " ".join(self.desc) or self.title)):
            told = ET.SubElement(root, tag, {"id": f"{self.name}-{tag}"})
            told.text = words
        self._patterns(root)
        root.append(self.body)
        return root

    def _head(self, at: Point | None) -> dict[str, str]:
        wide, high = number(self.width), number(self.height)
        place = {"width": f"{wide}mm", "height": f"{high}mm", "xmlns": _SVG}
        if at is not None:
            place = {"x": number(at.x), "y": number(at.y), "width": wide, "height": high}
        return {
            **place,
            "viewBox": f"0 {number(self.top)} {wide} {high}",
            "role": "img",
            "aria-labelledby": f"{self.name}-title {self.name}-desc",
            "font-family": FONTS,
        }

    def _patterns(self, root: ET.Element) -> None:
        begins = f"url(#{self.name}-"
        used = {value for each in self.body.iter() for value in each.attrib.values() if value.startswith(begins)}
        defs = ET.SubElement(root, "defs") if used else root
        for url in sorted(used):
            pattern(defs, url[5:-1], url[len(begins) : -1])

    def fill(self, name: str) -> str:
        """A pattern as a fill."""
        return f"url(#{self.name}-{name})"

    def markup(self) -> str:
        """The drawing as text."""
        return ET.tostring(self.element(), encoding="unicode")


def stacked(drawings: Sequence[Drawing], name: str, title: str) -> Drawing:
    """Drawings one below the other in one; each keeps its title and description."""
    whole = Drawing(name, title, max(one.width for one in drawings) + 2 * _GAP)
    reached = _GAP
    for one in drawings:
        whole.body.append(one.element(Point(_GAP, reached)))
        reached += one.height + _GAP
    whole.height = reached
    whole.desc = [one.title for one in drawings]
    return whole
