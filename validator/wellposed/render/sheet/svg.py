"""The drawings of a page as one SVG, a file of its own."""

from __future__ import annotations

from wellposed.render.sheet.drawing import stacked
from wellposed.render.sheet.page import Page

__all__ = ["svg"]


def svg(page: Page) -> str:
    """Every drawing below the one before, the page's title as that of the whole, ending in a line break."""
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{stacked(page.drawings, "sheet", page.title).markup()}\n'
