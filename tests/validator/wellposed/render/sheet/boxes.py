"""Where the text of a drawing stands, measured with the font itself: DejaVu Sans through fontTools.

The box of a line goes from its left to its right by the advances of its letters (`hmtx`), and from the ascent to the
descent of the font (`hhea`): a little more than the ink.
"""

from functools import cache
from itertools import combinations, pairwise
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree as ET

import pytest
from fontTools.ttLib import TTFont

SVG = "{http://www.w3.org/2000/svg}"
FOLDERS = ("/usr/share/fonts/truetype/dejavu", "/usr/share/fonts/dejavu-sans-fonts", "/usr/share/fonts/TTF")
SLACK = 0.02


@cache
def font(bold):
    """The metrics of DejaVu Sans. The test is skipped, by name, where the font is not installed."""
    file = f"DejaVuSans{'-Bold' if bold else ''}.ttf"
    found = next((Path(folder) / file for folder in FOLDERS if (Path(folder) / file).exists()), None)
    if found is None:
        pytest.skip(f"{file} is not installed (Debian: fonts-dejavu-core)")
    opened = TTFont(found)
    return opened["hmtx"], opened.getBestCmap(), opened["hhea"], opened["head"].unitsPerEm


def advance(text, bold):
    """The width of a line in ems."""
    widths, characters, _, units = font(bold)
    return sum(widths[characters[ord(one)]][0] for one in text) / units


class Box(NamedTuple):
    """A line of text on the page, mm."""

    words: str
    left: float
    top: float
    right: float
    foot: float

    def meets(self, other):
        """Whether the two lie on each other."""
        apart = (
            self.right <= other.left + SLACK
            or other.right <= self.left + SLACK
            or self.foot <= other.top + SLACK
            or other.foot <= self.top + SLACK
        )
        return not apart

    def inside(self, left, top, width, height):
        """Whether it lies on the page."""
        across = self.left >= left - SLACK and self.right <= left + width + SLACK
        return across and self.top >= top - SLACK and self.foot <= top + height + SLACK


def box(element):
    """The box of a `text` element."""
    whole = element.get("font-weight") == "bold"
    pieces = [(element.text or "", whole)]
    for part in element:
        pieces += [(part.text or "", part.get("font-weight") == "bold"), (part.tail or "", whole)]
    size, x, y = (float(element.get(name)) for name in ("font-size", "x", "y"))
    wide = sum(advance(words, bold) for words, bold in pieces) * size
    left = x - {"start": 0.0, "middle": wide / 2, "end": wide}[element.get("text-anchor")]
    _, _, heights, units = font(whole)
    top, foot = y - heights.ascent / units * size, y - heights.descent / units * size
    return Box("".join(words for words, _ in pieces), left, top, left + wide, foot)


def boxes(drawing):
    """Every line of a drawing, and its `viewBox`."""
    root = ET.fromstring(drawing.markup())
    return [box(one) for one in root.iter(f"{SVG}text")], tuple(map(float, root.get("viewBox").split()))


def overlaps(drawing):
    """Pairs of lines that lie on each other."""
    found, _ = boxes(drawing)
    return [(a.words, b.words) for a, b in combinations(found, 2) if a.meets(b)]


def outside(drawing):
    """Lines that do not lie wholly on the drawing."""
    found, size = boxes(drawing)
    return [one.words for one in found if not one.inside(*size)]


def leaders(drawing):
    """The straight pieces of every leader of a drawing."""
    for path in ET.fromstring(drawing.markup()).iter(f"{SVG}path"):
        if path.get("stroke-width") == "0.22":
            points = [tuple(map(float, one[1:].split(","))) for one in path.get("d").split(" ")]
            yield from pairwise(points)


def crossed(drawing):
    """Lines of text that a leader runs through: 40 points of each piece are tried."""
    found, _ = boxes(drawing)
    for (x, y), (u, v) in leaders(drawing):
        for share in range(41):
            at = x + (u - x) * share / 40, y + (v - y) * share / 40
            for one in found:
                if one.left < at[0] < one.right and one.top < at[1] < one.foot:
                    yield one.words
