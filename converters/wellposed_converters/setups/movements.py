"""Rows to signed movements in the format's own variables, each with what was done to it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Final, NamedTuple

from wellposed.vocabulary.motions import Variable
from wellposed_converters.setups.cells import Number, number, parted, scaled, whole, without_unit
from wellposed_converters.setups.columns import View, body
from wellposed_converters.setups.directions import sign_of
from wellposed_converters.setups.faults import Fault, Place, Tell
from wellposed_converters.setups.grid import Cell
from wellposed_converters.setups.mapping import Mapping, Movement
from wellposed_converters.setups.teeth import Named, not_a_tooth, tooth_of

FINAL: Final = 0
"""The place of rows that hold the end rather than a stage."""


@dataclass(frozen=True)
class Item:
    """One movement out of one cell.

    stage  the aligner after which it holds, FINAL for the end
    value  signed, mm or deg, in the variable's own sign
    said   what was done to what is written
    """

    tooth: str
    variable: Variable
    stage: int
    value: Decimal
    place: Place
    said: tuple[str, ...]


class Unsaid(NamedTuple):
    """A movement of which a cell is declared to say nothing."""

    tooth: str
    variable: Variable
    stage: int
    place: Place


class Subject(NamedTuple):
    """Whose row it is, and of which stage."""

    row: int
    tooth: str
    stage: int


@dataclass
class Reader:
    """A table of movements under a declared reading; what is wrong is told, and reading goes on."""

    mapping: Mapping
    view: View
    tell: Tell
    unsaid: list[Unsaid] = field(default_factory=list)

    def items(self, named: list[Named]) -> Iterator[Item]:
        """Every movement; the teeth's names are added to ``named`` as they are met."""
        for row in body(self.view, False, self.tell):
            subject = self._subject(row, named)
            if subject is not None:
                yield from self._long(subject) if self.mapping.rows else self._wide(subject)

    def _subject(self, row: int, named: list[Named]) -> Subject | None:
        tooth = tooth_in(self.view, row, self.mapping.tooth.column, self.mapping, named, self.tell)
        stage = self._stage(row)
        return None if tooth is None or stage is None else Subject(row, tooth, stage)

    def _stage(self, row: int) -> int | None:
        stages = self.mapping.stages
        if stages is None or stages.column not in self.view.at:
            return FINAL
        text = self.view.words(row, stages.column, self.tell)
        if text is None:
            return None
        if text == stages.final_text:
            return FINAL
        cell, place = self.view.cell(row, stages.column), self.view.place(row, stages.column)
        return whole(cell, place, self.view.table, self.tell)

    def _wide(self, of: Subject) -> Iterator[Item]:
        for one in self.mapping.movement:
            if one.column is not None and one.column in self.view.at:
                yield from self._item(of, one, one.column, one.direction_column)

    def _long(self, of: Subject) -> Iterator[Item]:
        rows = self.mapping.rows
        if rows is None or not {rows.movement, rows.value} <= self.view.at.keys():
            return
        name = self.view.words(of.row, rows.movement, self.tell)
        one = next((one for one in self.mapping.movement if one.name == name), None)
        if name is not None and one is None:
            place = self.view.place(of.row, rows.movement)
            do = "Declare it as a [[movement]] with that `name`, or leave such rows out by `ignore_rows_with`."
            found = "a movement of which nothing is declared"
            self.tell(Fault("setup-table-movement-unknown", place, found, "a declared `name`", do))
        elif one is not None and self._unit_agrees(of.row, one):
            yield from self._item(of, one, rows.value, rows.direction)

    def _unit_agrees(self, row: int, one: Movement) -> bool:
        rows = self.mapping.rows
        if rows is None or rows.unit is None or rows.unit not in self.view.at:
            return True
        said = self.view.words(row, rows.unit, self.tell)
        if said is None or (rows.unit_words or {}).get(said) == one.unit:
            return said is not None
        place = self.view.place(row, rows.unit)
        do = "Look which unit the number has; declare the word under `unit_words`."
        self.tell(Fault("setup-table-unit", place, "another unit, or none", f"the word for {one.unit}", do))
        return False

    def _item(self, of: Subject, one: Movement, header: str, direction: str | None) -> Iterator[Item]:
        cell, place = self.view.cell(of.row, header), self.view.place(of.row, header)
        text = self.view.words(of.row, header, self.tell)
        table = self.view.table
        if text is None:
            return
        if text in table.not_stated:
            self.unsaid.append(Unsaid(of.tooth, one.variable, of.stage, place))
        elif text in table.none:
            yield Item(of.tooth, one.variable, of.stage, Decimal(0), place, ("declared to mean none",))
        else:
            written = self._written(of, one, text, cell, place, direction)
            signed = self._signed(of, one, written, place) if written else None
            if signed is not None:
                yield Item(of.tooth, one.variable, of.stage, signed.value, place, signed.said)

    def _written(
        self, of: Subject, one: Movement, text: str, cell: Cell, place: Place, header: str | None
    ) -> tuple[Decimal, str] | None:
        """The number in a cell, and the word that says which way it points."""
        bare = without_unit(text, one, place, self.tell)
        if bare is None:
            return None
        if one.directions is None:
            value = number(bare, cell, place, self.view.table, self.tell)
            return None if value is None else (value, str(one.positive))
        if one.direction_at == "in a column":
            value, word = number(bare, cell, place, self.view.table, self.tell), self._word(of.row, header)
        else:
            bare, word = next(parted(bare, one.directions, str(one.direction_at)), (bare, ""))
            value = number(bare, cell, place, self.view.table, self.tell)
        return self._pointed(one, value, word, bare, place)

    def _word(self, row: int, header: str | None) -> str | None:
        return self.view.words(row, header, self.tell) if header is not None and header in self.view.at else None

    def _pointed(
        self, one: Movement, value: Decimal | None, word: str | None, bare: str, place: Place
    ) -> tuple[Decimal, str] | None:
        """Only an amount of nought needs no word, and a word admits no sign."""
        if value is None or word is None:
            return None
        directions = one.directions or {}
        expected = f"one of the words declared: {', '.join(directions)}"
        if word in directions and bare[:1] in ("+", "-") and value:
            do = "Two readings: take the sign away, or the word."
            self.tell(
                Fault(
                    "setup-table-direction-and-sign", place, "a signed number with a direction", "an unsigned one", do
                )
            )
        elif word in directions:
            return value, directions[word]
        elif value == 0 and word in ("", *self.view.table.none):
            return value, next(iter(directions.values()))
        else:
            found = "a word that is not declared" if word else "no direction"
            self.tell(Fault("setup-table-direction", place, found, expected, "Write it, or declare the word."))
        return None

    def _signed(self, of: Subject, one: Movement, written: tuple[Decimal, str], place: Place) -> Number | None:
        value, direction = written
        amount = scaled(value, one, place, self.view.table, self.tell)
        if amount is None or amount.value == 0:
            return amount
        sign = sign_of(direction, one.variable, of.tooth)
        if sign is None:
            found = f"{direction} of tooth {of.tooth}"
            expected = f"a direction that `{one.variable}` of this tooth has"
            do = "Split the column by tooth, or declare the direction by mesial, distal, labial and the like."
            self.tell(Fault("setup-table-direction-of-tooth", place, found, expected, do))
            return None
        told = f"a positive number is {direction}" if one.directions is None else f"marked {direction}"
        turned = ("sign turned",) if sign < 0 else ()
        return Number(sign * amount.value + 0, (*amount.said, told, *turned))


def tooth_in(view: View, row: int, header: str, mapping: Mapping, named: list[Named], tell: Tell) -> str | None:
    """The tooth a cell names, noted in ``named``; None where it is told that it names none."""
    if header not in view.at:
        return None
    text = view.words(row, header, tell)
    if text is None:
        return None
    place = view.place(row, header)
    named.append(Named(place, text))
    tooth = tooth_of(text, mapping.tooth.notation)
    if tooth is None:
        not_a_tooth(place, mapping.tooth.notation, tell)
    return tooth
