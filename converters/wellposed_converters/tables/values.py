"""A cell to the value it stands for, as JSON spells it; or what stands against that."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final, TypeAlias

from wellposed.reading import Document, read_document
from wellposed_converters.setups.cells import looks
from wellposed_converters.setups.grid import RAW
from wellposed_converters.tables.cells import NONE, RISKY, unescaped, unmarked
from wellposed_converters.tables.faults import Tell, fault
from wellposed_converters.tables.layout import CONTENT, LIST, NUMBER, TRUTH
from wellposed_converters.tables.sheet import Box


@dataclass(frozen=True, slots=True)
class Spelled:
    """A value as JSON spells it."""

    text: str


Value: TypeAlias = "str | list[str] | Spelled"

_NUMBER: Final = re.compile(r"-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?", re.ASCII)
_ERROR: Final = re.compile(r"#[A-Z/0]+[!?]?", re.ASCII)
_INSTEAD: Final = {
    "date": "table-date",
    "formula": "table-formula",
    "error": "table-error-value",
    "truth value": "table-cell-kind",
}
_UPON: Final = {
    "merged": "table-merged",
    "comment": "table-comment",
    "struck out": "table-struck-out",
    "format": "table-number-format",
}


def value_of(box: Box, kind: str, tell: Tell) -> Value | None:
    """What a filled cell stands for; None where it is told that it stands for nothing."""
    if not _sound(box, tell):
        return None
    if kind == NUMBER:
        return _number(box, tell)
    text = _words(box, tell)
    if text is None:
        return None
    if kind == LIST:
        return _list(text, box, tell)
    if kind == TRUTH:
        return _truth(text, box, tell)
    return _content(text, box, tell) if kind == CONTENT else text


def count_of(box: Box, tell: Tell) -> str | None:
    """The text of a cell that counts: a number, or words that mean none."""
    return box.cell.text if _sound(box, tell) else None


def text_of(box: Box, tell: Tell) -> str | None:
    """The text of a cell; None where it is told that there is none to be had."""
    return _words(box, tell) if _sound(box, tell) else None


def _sound(box: Box, tell: Tell) -> bool:
    """Whether the cell holds what was typed, and nothing lies upon it."""
    clear = upon(box, tell)
    if box.cell.kind in _INSTEAD:
        tell(fault(_INSTEAD[box.cell.kind], box.spot, found=f"a {box.cell.kind}", expected="text, or a number"))
    return clear and box.cell.kind not in _INSTEAD


def upon(box: Box, tell: Tell) -> bool:
    """Whether nothing lies upon the cell that could change what it says."""
    for mark in box.cell.marks:
        tell(fault(_UPON[mark], box.spot))
    return not box.cell.marks


def _words(box: Box, tell: Tell) -> str | None:
    """The text of a cell, without its mark and its escapes."""
    if box.half:
        tell(fault("table-escape", box.spot, found="an escape that stands for half a character"))
        return None
    if not box.worded:
        tell(fault("table-cell-kind", box.spot, found="a number", expected="a cell of text"))
        return None
    raw, separated = box.cell.text, box.cell.kind == RAW
    if separated and RISKY.match(raw) and not raw.startswith("'"):
        rule = "table-error-value" if _ERROR.fullmatch(raw) else "table-formula"
        tell(fault(rule, box.spot, expected="an apostrophe before it, if it is text"))
        return None
    text = unmarked(raw)
    if text is None:
        tell(fault("table-mark", box.spot, found="an apostrophe that marks nothing", expected="two, if one is meant"))
        return None
    plain = unescaped(text) if separated else text
    if plain is None:
        tell(fault("table-escape", box.spot, found="an escape that stands for half a character"))
    return plain


def _number(box: Box, tell: Tell) -> Spelled | None:
    text = box.cell.text
    if box.half or (box.worded and box.cell.kind != RAW):
        tell(fault("table-not-a-number", box.spot, found="text", expected="a cell with a number"))
    elif not _NUMBER.fullmatch(text):
        tell(fault("table-not-a-number", box.spot, found=looks(text), expected="a number with a decimal point"))
    else:
        return Spelled(text)
    return None


def _list(text: str, box: Box, tell: Tell) -> list[str] | None:
    if text == NONE:
        return []
    found = text.split(" ")
    if "" not in found:
        return found
    tell(fault("table-list", box.spot, found="blanks too many", expected="one space between two entries"))
    return None


def _truth(text: str, box: Box, tell: Tell) -> Spelled | None:
    if text in ("true", "false"):
        return Spelled(text)
    tell(fault("table-truth-value", box.spot, expected=["true", "false"]))
    return None


def _content(text: str, box: Box, tell: Tell) -> Spelled | None:
    """One JSON value, held to the rules of the text; nothing in it can reach beyond it."""
    read = read_document(f'{{"content":{text}\n}}'.encode("utf-8", "surrogatepass"))
    if isinstance(read, Document) and read.value.keys() == {"content"}:
        return Spelled(text)
    found = "more than one" if isinstance(read, Document) else read[0].rule
    tell(fault("table-content", box.spot, expected="one JSON value", found=found))
    return None
