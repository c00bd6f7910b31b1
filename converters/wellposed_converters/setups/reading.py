"""A table under its declared reading: everything it says, and everything that stands against it, in one run."""

from __future__ import annotations

from collections.abc import Collection
from collections.abc import Mapping as Mappings
from dataclasses import dataclass

from wellposed.kinematics.mouth import Mouth
from wellposed.model.prescription import Prescription
from wellposed.vocabulary.teeth import ARCHES
from wellposed_converters.setups.columns import View, view
from wellposed_converters.setups.enamel import Enamel, Lines, Taken, in_order
from wellposed_converters.setups.faults import Fault, Place, RefusedError, Tell
from wellposed_converters.setups.grid import Book, Grid
from wellposed_converters.setups.mapping import Mapping, Own, Table, columns_of, headers_of
from wellposed_converters.setups.movements import FINAL, Item, Reader, Unsaid
from wellposed_converters.setups.path import at_the_end, cumulated, last_stages, once
from wellposed_converters.setups.teeth import Named, questions
from wellposed_converters.setups.teeth_said import Carrier, Marked, Measured, Single, carriers, taken_out


@dataclass(frozen=True)
class Reading:
    """What a table says; None where it says nothing of that kind at all.

    final   where each variable of a tooth ends
    stages  where it stands after an aligner
    unsaid  cells of movements whose text is declared to say nothing
    said    what is said of the file itself
    """

    final: tuple[Item, ...]
    stages: tuple[Item, ...]
    aligners: Mappings[str, int] | None
    extractions: tuple[str, ...] | None
    reductions: tuple[Taken, ...] | None
    attachments: tuple[Carrier, ...] | None
    predicted: tuple[Measured, ...] | None
    unsaid: tuple[Place, ...]
    said: tuple[str, ...]


def read_table(book: Book, sheet: str | None, mapping: Mapping, prescription: Prescription) -> Reading:
    """Everything a table says.

    sheet  the sheet of the movements; may be None where the file has one only

    Raises:
        RefusedError: with every fault and every question; there is a reading only where there is none
    """
    faults: list[Fault] = []
    chosen = _chosen(book, sheet, mapping, faults.append)
    if chosen is None:
        raise RefusedError(faults)
    made = _Table(book, chosen, mapping, prescription, faults.append).reading()
    if not made.final and not faults:
        do = "Look at the sheet, `header_row`, and what is left out."
        faults.append(Fault("setup-table-empty", Place(chosen), "no movement", "at least one", do))
    if faults:
        raise RefusedError(faults)
    return made


def _chosen(book: Book, sheet: str | None, mapping: Mapping, tell: Tell) -> str | None:
    """The sheet of the movements; every other one must be declared."""
    parts = (mapping.reductions, mapping.attachments, mapping.extractions)
    others = {part.sheet for part in parts if part and part.sheet} | {
        one.sheet for one in mapping.predicted if one.sheet
    }
    left = [name for name in book.sheets if name not in {*others, *mapping.table.ignore_sheets}]
    if sheet is not None and sheet not in book.sheets:
        tell(Fault("setup-table-sheet", Place(sheet), "no such sheet", "a sheet of the file", "Look at its name."))
        return None
    if sheet is None and len(left) != 1:
        found, do = f"{len(left)} sheets", "Name it with --sheet, and the others under `ignore_sheets`."
        tell(Fault("setup-table-sheet", Place(), found, "one sheet that is not declared otherwise", do))
        return None
    chosen = sheet or left[0]
    for name in left:
        if name != chosen:
            do = "Name it under `ignore_sheets`, or declare what it holds."
            tell(
                Fault("setup-table-sheet", Place(name), "a sheet of which nothing is declared", "a declared sheet", do)
            )
    for name in sorted({chosen, *others} & book.hidden_sheets) if not mapping.table.hidden else ():
        do = 'Show it, or declare `hidden = "read"`.'
        tell(Fault("setup-table-hidden", Place(name), "a hidden sheet", "a sheet that is seen", do))
    return chosen


@dataclass
class _Table:
    book: Book
    sheet: str
    mapping: Mapping
    prescription: Prescription
    tell: Tell

    def reading(self) -> Reading:
        table, named = self.mapping.table, list[Named]()
        seen = view(self.grid, table, table.header_row, headers_of(self.mapping), table.ignore_columns, self.tell)
        reader = Reader(self.mapping, seen, self.tell)
        items = once(reader.items(named), self.tell)
        final, stages = self._path(items, reader.unsaid)
        extractions = self._extractions(seen, named)
        reductions = self._reductions(seen, named, extractions)
        attachments = self._attachments(seen, named, extractions)
        single = Single(self.mapping, self.book, self.sheet, self.tell)
        aligners = single.aligners(last_stages((*stages, *reader.unsaid))) or None
        predicted = tuple(single.predicted()) if self.mapping.predicted else None
        mouth, tooth = self._mouth(()), self.mapping.tooth
        for fault in questions(named, tooth.notation, mouth, tooth.confirmed):
            self.tell(fault)
        unsaid = tuple(one.place for one in reader.unsaid)
        return Reading(final, stages, aligners, extractions, reductions, attachments, predicted, unsaid, self.book.said)

    @property
    def grid(self) -> Grid:
        return self.book.sheets[self.sheet]

    def _path(self, items: list[Item], unsaid: list[Unsaid]) -> tuple[tuple[Item, ...], tuple[Item, ...]]:
        """Where each variable ends, and where it stands on the way."""
        asked = self.mapping.stages
        staged = [item for item in items if item.stage != FINAL]
        if asked is None or asked.final == "own-rows":
            return tuple(item for item in items if item.stage == FINAL), tuple(staged)
        if asked.counts == "step":
            staged = cumulated(staged, unsaid, asked, self.tell)
            last = {(one.tooth, one.variable): one for one in sorted(staged, key=lambda one: one.stage)}
            return tuple(last.values()), tuple(staged)
        return tuple(at_the_end(staged, unsaid, asked, self.tell)), tuple(staged)

    def _view(self, part: Own, seen: View) -> View | None:
        """Where the columns of a part stand: in the same table, or in a sheet of its own."""
        if part.sheet is None:
            return seen
        grid = self.book.sheets.get(part.sheet)
        if grid is None:
            do = "Look at its name; give a file of its own with --also."
            self.tell(Fault("setup-table-sheet", Place(part.sheet), "no such sheet", "a sheet of the file", do))
            return None
        return view(grid, self._own_table(), part.header_row or 1, columns_of(part), part.ignore_columns, self.tell)

    def _own_table(self) -> Table:
        """Declared row numbers and headers are those of the table of movements."""
        said = self.mapping.table.model_dump(exclude_unset=True)
        return Table.model_construct(**{**said, "ignore_rows": (), "ignore_columns": (), "ignore_rows_with": None})

    def _extractions(self, seen: View, named: list[Named]) -> tuple[str, ...] | None:
        part = self.mapping.extractions
        where = self._view(part, seen) if part else None
        if part is None or where is None:
            return None
        marked = Marked(self.mapping, part, where, self.tell, part.sheet is not None)
        return tuple(taken_out(marked, part, named, self._mouth(())))

    def _attachments(self, seen: View, named: list[Named], out: Collection[str] | None) -> tuple[Carrier, ...] | None:
        part = self.mapping.attachments
        where = self._view(part, seen) if part else None
        if part is None or where is None:
            return None
        marked = Marked(self.mapping, part, where, self.tell, part.sheet is not None)
        return tuple(carriers(marked, part, named, self._mouth(out or ())))

    def _reductions(self, seen: View, named: list[Named], out: Collection[str] | None) -> tuple[Taken, ...] | None:
        part = self.mapping.reductions
        where = self._view(part, seen) if part else None
        if part is None or where is None:
            return None
        enamel = Enamel(self.mapping, part, where, self._lines(out), self.tell, part.sheet is not None)
        return tuple(in_order(enamel.taken(named)))

    def _lines(self, out: Collection[str] | None) -> Lines:
        """The teeth in line once those are out that the table says, else those that the prescription says."""
        rows = Mouth(self.prescription).rows
        if out is None:
            return [rows[arch].teeth for arch in ARCHES]
        return [tuple(tooth for tooth in rows[arch].initial if tooth not in out) for arch in ARCHES]

    def _mouth(self, out: Collection[str]) -> tuple[str, ...]:
        teeth = self.prescription.teeth
        return tuple(tooth for tooth in (*teeth.upper, *teeth.lower) if tooth not in out)
