"""The patterns that areas are filled with: lines and dots that a black-and-white printer keeps apart."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from xml.etree import ElementTree as ET

from wellposed.render.sheet.marks import GREY, PAPER

__all__ = ["PATTERNS", "pattern"]

_SIZE = "2"
_LINE = {"stroke": GREY, "stroke-width": "0.28", "fill": "none"}
_SLANT = "M-0.5,0.5 L0.5,-0.5 M0,2 L2,0 M1.5,2.5 L2.5,1.5"
_COUNTER = "M-0.5,1.5 L0.5,2.5 M0,0 L2,2 M1.5,-0.5 L2.5,0.5"

PATTERNS: Mapping[str, tuple[tuple[str, dict[str, str]], ...]] = MappingProxyType(
    {
        "dots": (("circle", {"cx": "1", "cy": "1", "r": "0.3", "fill": GREY}),),
        "slanting": (("path", {"d": _SLANT, **_LINE}),),
        "crossed": (("path", {"d": f"{_SLANT} {_COUNTER}", **_LINE}),),
        "upright": (("path", {"d": "M1,0 L1,2", **_LINE}),),
    }
)
"""The parts of a tile of 2 mm by 2 mm."""


def pattern(parent: ET.Element, ident: str, name: str) -> None:
    """Define a pattern. KeyError for one that there is not."""
    tile = ET.SubElement(
        parent, "pattern", {"id": ident, "width": _SIZE, "height": _SIZE, "patternUnits": "userSpaceOnUse"}
    )
    ET.SubElement(tile, "rect", {"width": _SIZE, "height": _SIZE, "fill": PAPER})
    for tag, attributes in PATTERNS[name]:
        ET.SubElement(tile, tag, attributes)
