"""Attachments, extractions, numbers of aligners and predicted measures: what a table says beside the movements."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from wellposed.vocabulary.teeth import ARCHES
from wellposed_converters.setups.cells import Number, number, scaled, whole, without_unit, words
from wellposed_converters.setups.columns import View, body
from wellposed_converters.setups.faults import Fault, Place, Tell
from wellposed_converters.setups.grid import Book, Cell, address, letter
from wellposed_converters.setups.mapping import Attachments, Carried, Extractions, Mapping, Predicted, sides_of
from wellposed_converters.setups.movements import tooth_in
from wellposed_converters.setups.teeth import Named


class Carrier(NamedTuple):
    """A tooth that carries an attachment."""

    tooth: str
    carried: Carried
    begins: int | None
    place: Place


class Measured(NamedTuple):
    """A predicted measure, in the sign of the format."""

    asked: Predicted
    number: Number
    place: Place


@dataclass
class Marked:
    """A column that says something of a tooth by a text: read tooth by tooth."""

    mapping: Mapping
    asked: Attachments | Extractions
    view: View
    tell: Tell
    own: bool

    def texts(self, named: list[Named]) -> Iterator[tuple[int, str, str]]:
        """Row, tooth and text; a tooth that stands twice is told."""
        header = self.asked.tooth or self.mapping.tooth.column
        seen: set[str] = set()
        for row in body(self.view, self.own, self.tell):
            tell = self.tell if self.own else lambda fault: None
            tooth = tooth_in(self.view, row, header, self.mapping, named if self.own else [], tell)
            text = self.view.words(row, self.asked.column, self.tell) if self.asked.column in self.view.at else None
            if tooth is None or text is None:
                continue
            if tooth in seen:
                at, do = self.view.place(row, self.asked.column), "Leave the one that holds."
                self.tell(Fault("setup-table-tooth-twice", at, f"tooth {tooth} a second time", "each tooth once", do))
                continue
            seen.add(tooth)
            yield row, tooth, text

    def unknown(self, row: int, text: str) -> None:
        """Tell that a cell says nothing that is declared here."""
        found = "a text of which nothing is declared"
        do = "Declare what it means, or that it means none (`none` under [table])."
        if text in self.view.table.not_stated:
            found, do = "a text declared to say nothing", "State it, or declare the text under `none` of [table]."
        place = self.view.place(row, self.asked.column)
        self.tell(Fault("setup-table-text-unknown", place, found, "a text that is declared", do))

    def rest(self, told: set[str], mouth: tuple[str, ...]) -> None:
        """Tell the teeth that nothing is said of, unless that is declared to mean none."""
        lacking = [tooth for tooth in mouth if tooth not in told]
        if lacking and self.asked.not_listed is None:
            found, do = f"nothing of {', '.join(lacking)}", 'State it, or declare `not_listed = "none"`.'
            place = Place(self.view.grid.sheet, 0, "", self.asked.column)
            self.tell(Fault("setup-table-tooth-not-told", place, found, "a text for every tooth", do))


def carriers(marked: Marked, asked: Attachments, named: list[Named], mouth: tuple[str, ...]) -> list[Carrier]:
    """The teeth that carry an attachment."""
    found, told = [], set()
    for row, tooth, text in marked.texts(named):
        told.add(tooth)
        if text in asked.carries:
            place = marked.view.place(row, asked.column)
            found.append(Carrier(tooth, asked.carries[text], _begins(marked, asked, row), place))
        elif text not in marked.view.table.none:
            marked.unknown(row, text)
    marked.rest(told, mouth)
    return found


def _begins(marked: Marked, asked: Attachments, row: int) -> int | None:
    header = asked.from_aligner
    if header is None or header not in marked.view.at:
        return None
    text = marked.view.words(row, header, marked.tell)
    if text is None or text in marked.view.table.not_stated:
        return None
    cell, place = marked.view.cell(row, header), marked.view.place(row, header)
    return whole(cell, place, marked.view.table, marked.tell)


def taken_out(marked: Marked, asked: Extractions, named: list[Named], mouth: tuple[str, ...]) -> list[str]:
    """The teeth that are taken out."""
    found, told = [], set()
    for row, tooth, text in marked.texts(named):
        told.add(tooth)
        if text in asked.taken:
            found.append(tooth)
        elif text not in marked.view.table.none:
            marked.unknown(row, text)
    marked.rest(told, mouth)
    return found


@dataclass
class Single:
    """Cells that are named by their address."""

    mapping: Mapping
    book: Book
    sheet: str
    tell: Tell

    def aligners(self, last: dict[str, int]) -> dict[str, int]:
        """How many aligners each arch gets, as far as it is said; ``last`` is the greatest stage of each that has any.

        An arch without stages is not said to get none: they may stand in another table.
        """
        asked = self.mapping.aligners
        if asked is None or asked.from_stages:
            return last if asked else {}
        said: dict[str, int] = {}
        for arch in ARCHES:
            at = getattr(asked, arch)
            cell, place = self._cell(at, self.sheet) if at else (None, Place())
            count = whole(cell, place, self.mapping.table, self.tell, least=0) if cell else None
            said |= {} if count is None else {arch: count}
        return said

    def predicted(self) -> Iterator[Measured]:
        """The measures the table predicts."""
        table = self.mapping.table
        for one in self.mapping.predicted:
            cell, place = self._cell(one.cell, one.sheet or self.sheet)
            text = words(cell, place, table, self.tell) if cell else None
            if cell is None or text is None or text in table.not_stated:
                continue
            bare = without_unit(text, one, place, self.tell)
            value = None if bare is None else number(bare, cell, place, table, self.tell)
            amount = None if value is None else scaled(value, one, place, table, self.tell)
            if amount is not None:
                yield Measured(one, _in_sign(one, amount), place)

    def _cell(self, at: str, sheet: str) -> tuple[Cell | None, Place]:
        where, grid = address(at), self.book.sheets.get(sheet)
        place = Place(sheet, *(where[0], letter(where[1])) if where else (0, ""))
        if where is None or grid is None:
            do = "Look at the sheet and the cell that are declared."
            self.tell(Fault("setup-table-no-such-cell", place, "no such sheet or cell", "a cell such as B3", do))
            return None, place
        if (where[0] in grid.hidden_rows or where[1] in grid.hidden_columns) and not self.mapping.table.hidden:
            do = 'Show it, or declare `hidden = "read"`.'
            self.tell(Fault("setup-table-hidden", place, "a hidden cell", "a cell that is seen", do))
            return None, place
        return grid.cell(*where), place


def _in_sign(asked: Predicted, amount: Number) -> Number:
    """Turned where the table counts the other way."""
    sides = sides_of(asked.measure)
    if not sides or asked.positive == sides[0]:
        return amount
    turned = ("sign turned",) if amount.value else ()
    return Number(-amount.value + 0, (*amount.said, f"a positive number is {asked.positive}", *turned))
