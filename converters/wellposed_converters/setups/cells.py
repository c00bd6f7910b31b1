"""A cell to a number or a word, or to what stands against it. Numbers are exact; nothing is trimmed or guessed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import Final

from wellposed_converters.setups.faults import Fault, Place, Tell
from wellposed_converters.setups.grid import NUMBER, RAW, TEXT, Cell, is_blank
from wellposed_converters.setups.mapping import Amount, Table

NUMBERS: Final = {
    "point": re.compile(r"[+-]?[0-9]+(?:[.][0-9]+)?", re.ASCII),
    "comma": re.compile(r"[+-]?[0-9]+(?:,[0-9]+)?", re.ASCII),
}
CENT: Final = Decimal("0.01")
MOST: Final = 400
"""The format's bound on a signed amount."""
_LOOKS: Final = (
    (re.compile(r"="), "a formula"),
    (re.compile(r"#(?:REF|N/A|VALUE|DIV/0|NAME|NUM|NULL)"), "an error value"),
    (re.compile(r"[0-9]{1,4}[-/.][0-9]{1,2}[-/.][0-9]{1,4}$"), "a date"),
    (re.compile(r"[0-9]{1,2}[-./ ]+[^\W\d_]{3,9}[.]?(?:[-./ ]+[0-9]{2,4})?$"), "a date"),
    (re.compile(r"[+-]?[0-9]+[0-9.,' ]*[.,' ][0-9]{3}[.,][0-9]+$"), "a number with marks of thousands"),
    (re.compile(r"[+-]?[0-9]+,[0-9]+$"), "a number with a decimal comma"),
    (re.compile(r"[+-]?[0-9]+[.][0-9]+$"), "a number with a decimal point"),
    (re.compile(r"[+-]?[0-9.,]+[eE][+-]?[0-9]+$"), "a number with an exponent"),
    (re.compile(r"[\u2010-\u2015\u2212]\s*[0-9]"), "a number whose minus is another sign"),
    (re.compile(r"[(]\s*[+-]?[0-9].*[)]$"), "a number in brackets"),
    (re.compile(r"[+-]?[0-9.,]+\s*%$"), "percent"),
    (re.compile(r"[+-]?[0-9.,]+\s*[^\W\d_°µ'\"]*[°µ'\"]?[^\W\d_]*$"), "a number with something behind it"),
)
_MARKS: Final = {
    "merged": ("setup-table-merged", "cells that are not merged", "Split them, each with its own value."),
    "comment": ("setup-table-comment", "no comment", 'Delete it, or declare `comments = "ignore"`.'),
    "struck out": ("setup-table-struck-out", "words that hold", "Delete what is struck out."),
    "format": ("setup-table-number-format", "a format that shows the number stored", "Show it as a plain number."),
}
_INSTEAD: Final = {
    "date": ("a date", "What was typed is not in the file: format the column as text and type it again."),
    "formula": ("a formula", "Put its value in its place: a value stored beside a formula may be an old one."),
    "error": ("an error value", "Mend the cell."),
    "truth value": ("true or false", "Write what is meant."),
}


@dataclass(frozen=True)
class Number:
    """A number as it is written, and what was said of reading it."""

    value: Decimal
    said: tuple[str, ...] = ()


def words(cell: Cell, place: Place, table: Table, tell: Tell) -> str | None:
    """The text of a cell, "" for an empty one; None where it is told that there is none to be had."""
    if not _sound(cell, place, table, tell):
        return None
    if cell.kind not in (RAW, TEXT):
        return cell.text
    trimmed = cell.text.strip()
    if trimmed == cell.text or table.trim:
        return trimmed
    do = "Take them away, or declare `trim = true`."
    tell(Fault("setup-table-blanks", place, "blanks before or after the words", "words without them", do))
    return None


def _sound(cell: Cell, place: Place, table: Table, tell: Tell) -> bool:
    """Whether the cell holds what was typed, and nothing lies upon it."""
    marks = [mark for mark in cell.marks if not (mark == "comment" and table.comments)]
    for mark in marks:
        rule, expected, do = _MARKS[mark]
        found = "a cell that is part of others" if mark == "merged" else f"a cell with a {mark}"
        tell(Fault(rule, place, "struck-out words" if mark == "struck out" else found, expected, do))
    if cell.kind in _INSTEAD:
        found, do = _INSTEAD[cell.kind]
        tell(Fault("setup-table-cell-kind", place, found, "a number or words", do))
    return not marks and cell.kind not in _INSTEAD


def looks(text: str) -> str:
    """What kind of thing a text is, without repeating it."""
    if not text:
        return "an empty cell"
    return next((what for pattern, what in _LOOKS if pattern.match(text)), "words")


def number(text: str, cell: Cell, place: Place, table: Table, tell: Tell) -> Decimal | None:
    """The number that a text is, in the decimal mark declared; None where it is told that it is none.

    A number of a workbook needs no mark; a text there that looks like one needs ``numbers_as_text``.
    """
    if cell.kind == NUMBER and text == cell.text:
        return Decimal(text)
    found = looks(text)
    if NUMBERS[table.decimal].fullmatch(text):
        if cell.kind == RAW or table.numbers_as_text or text != cell.text.strip():
            return Decimal(text.replace(",", "."))
        found = "a number stored as text"
    if found == "a date":
        do = "If a spreadsheet made it of what was typed, format the column as text and type it again."
    elif is_blank(cell):
        do = 'Fill it in, or declare "" under `none` or `not_stated`.'
    else:
        do = "Mend the cell, or declare what it is."
    tell(Fault("setup-table-not-a-number", place, found, _expected(table, cell), do))
    return None


def _expected(table: Table, cell: Cell) -> str:
    if cell.kind == TEXT and not table.numbers_as_text:
        return "a cell with a number, not text (or `numbers_as_text = true`)"
    return f"a number with a decimal {table.decimal}"


def scaled(value: Decimal, amount: Amount, place: Place, table: Table, tell: Tell) -> Number | None:
    """The value in the format's unit, of at most two decimals; None where it is told that it is none such."""
    said: tuple[str, ...] = ()
    if amount.factor is not None:
        factor = Decimal(repr(amount.factor))
        value, said = value * factor, (f"from {amount.written_in}, times {factor}",)
    short = value.quantize(CENT, ROUND_HALF_UP) if abs(value) <= MOST else value
    if abs(value) > MOST:
        do = "Look at the number and its unit."
        tell(Fault("setup-table-too-large", place, f"more than {MOST} {amount.unit}", f"at most {MOST}", do))
        return None
    if short != value:
        if table.round is None:
            do = "Round it in the table, or declare `round = 2`."
            tell(Fault("setup-table-decimals", place, "more than two decimals", "at most two decimals", do))
            return None
        said += ("rounded to two decimals",)
    return Number(short + 0, said)


def whole(cell: Cell, place: Place, table: Table, tell: Tell, least: int = 1) -> int | None:
    """A whole number, such as an aligner's."""
    text = words(cell, place, table, tell)
    if text is None:
        return None
    if re.fullmatch(r"[0-9]{1,3}", text, re.ASCII) and least <= int(text) <= 200:  # noqa: PLR2004 - the format's bound
        return int(text)
    found = "a number that is not whole, or out of bounds" if cell.kind == NUMBER else looks(text)
    expected = f"a whole number from {least} to 200"
    tell(Fault("setup-table-not-whole", place, found, expected, "Mend the cell."))
    return None


def without_unit(text: str, amount: Amount, place: Place, tell: Tell) -> str | None:
    """The text without the unit each cell must carry, where one is declared."""
    if amount.cell_unit is None:
        return text
    if text.endswith(amount.cell_unit):
        return text.removesuffix(amount.cell_unit).rstrip(" ")
    found = f"{looks(text)}, without the unit"
    do = "Write it, or look which unit the cell has."
    tell(Fault("setup-table-unit", place, found, f'a number and "{amount.cell_unit}"', do))
    return None


def parted(text: str, directions: Mapping[str, object], at: str) -> Iterator[tuple[str, str]]:
    """A text as number and direction word, every way it can be taken apart: the longest word first."""
    for word in sorted(directions, key=lambda one: (-len(one), one)):
        if word and at == "after" and text.endswith(word):
            yield text.removesuffix(word).rstrip(" "), word
        elif word and at == "before" and text.startswith(word):
            yield text.removeprefix(word).lstrip(" "), word
