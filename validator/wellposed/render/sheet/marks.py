"""The colours and the marks of a sheet. What a mark means is never told by its colour: each has a sign of its own."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

__all__ = ["BLUE", "FONTS", "GREY", "INK", "MARKS", "PAIRS", "PAPER", "TINT", "VERMILLION", "Mark"]

INK = "#1a1a1a"
GREY = "#595959"
PAPER = "#ffffff"
TINT = "#f2f2f2"
BLUE = "#0072b2"
VERMILLION = "#d55e00"
"""Blue and vermillion of Okabe and Ito, Color Universal Design (2008): told apart by the colour-blind."""

FONTS = "'DejaVu Sans', 'Noto Sans', 'Liberation Sans', Arial, Helvetica, sans-serif"

PAIRS = (
    ("text", INK, PAPER),
    ("text", INK, TINT),
    ("text", GREY, PAPER),
    ("shape", BLUE, PAPER),
    ("shape", VERMILLION, PAPER),
    ("shape", GREY, PAPER),
    ("shape", INK, PAPER),
)
"""What stands on what: text, and shapes that carry a meaning."""


class Mark(NamedTuple):
    """A mark of a drawing.

    words    what it means
    sign     what tells it from all others without colour
    planned  what it means where a setup is drawn, if something else
    """

    words: str
    sign: str
    planned: str = ""


MARKS: Mapping[str, Mark] = MappingProxyType(
    {
        "moves": Mark("is to move: a clause names it", "white, heavy outline", "moves in the setup"),
        "may": Mark("may move, as far as it is opened", "white, thin outline"),
        "silent": Mark("not mentioned, so it stays", "dots", "does not move in the setup"),
        "held": Mark("must stay: held, or not treated", "slanting lines"),
        "fixed": Mark("cannot move", "crossed lines"),
        "gone": Mark("is taken out", "dashed outline, struck through"),
        "unsaid": Mark("the setup does not say", "upright lines"),
        "arrow": Mark("which way it moves, along or across the arch", "straight arrow"),
        "into": Mark("into the bone (intrusion)", "cross in a ring"),
        "out-of": Mark("out of the bone (extrusion)", "dot in a ring"),
        "turn": Mark("which way it turns", "curved arrow"),
        "attached": Mark("carries an attachment", "filled square"),
        "attachable": Mark("may carry an attachment", "open square"),
        "bare": Mark("carries no attachment", "square struck through"),
        "reduction": Mark("enamel off at the contact, at most mm", "two bars", "enamel off at the contact, mm"),
        "close": Mark("the space closes", "two points meeting"),
        "leave": Mark("space is left, mm", "two brackets"),
        "outline-today": Mark("where the tooth stands today", "thin dashed outline"),
        "outline-planned": Mark("where the setup puts it", "heavy outline over a dashed one"),
        "today": Mark("today", "open ring"),
        "asked": Mark("asked", "hatched bar"),
        "planned": Mark("planned", "filled diamond"),
        "need": Mark("needs room", "bar with slanting lines"),
        "may-need": Mark("may need room, up to", "bar with slanting lines, dashed outline"),
        "give": Mark("gives room", "plain bar, full outline"),
        "may-give": Mark("may give room, up to", "plain bar, dashed outline"),
        "rest": Mark("what is left over, or missing", "filled bar"),
        "between": Mark("by the published coefficients", "thin line with ends"),
    }
)
