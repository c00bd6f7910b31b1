"""Reductions out of columns by tooth surface, or out of a table by contact."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any, NamedTuple

from wellposed.vocabulary.contacts import contact_between, contacts_of
from wellposed.vocabulary.teeth import arch_of, place, side_of
from wellposed_converters.setups.cells import Number, number, scaled, whole, without_unit
from wellposed_converters.setups.columns import View, body
from wellposed_converters.setups.faults import Fault, Place, Tell
from wellposed_converters.setups.mapping import Mapping, Reductions
from wellposed_converters.setups.movements import tooth_in
from wellposed_converters.setups.teeth import Named, not_a_tooth, tooth_of

Lines = Sequence[tuple[str, ...]]
"""The teeth in line of each arch once extractions are done, from the patient's right to left."""
SURFACES = ("mesial", "distal")
NONE_SAID = "declared to mean none"


class Taken(NamedTuple):
    """Enamel at a contact."""

    contact: str
    amount: Decimal
    before: int | None
    place: Place
    said: tuple[str, ...]


class Side(NamedTuple):
    """What one tooth's cell says of the contact."""

    tooth: str
    amount: Number
    place: Place


@dataclass
class Enamel:
    """Reductions under a declared reading; what is wrong is told, and reading goes on."""

    mapping: Mapping
    asked: Reductions
    view: View
    lines: Lines
    tell: Tell
    own: bool
    seen: set[str] = field(default_factory=set)

    def taken(self, named: list[Named]) -> list[Taken]:
        """What is taken off, contact by contact; a contact that nothing is said of is told."""
        found = list(self._by_contact(named) if self.asked.contact else self._by_surface(named))
        if self.asked.not_listed is None:
            for contact in (name for line in self.lines for name in contacts_of(line) if name not in self.seen):
                expected = "an amount, or a text declared to mean none, at every contact"
                do = 'State it, or declare `not_listed = "none"`.'
                at = Place(self.view.grid.sheet)
                self.tell(Fault("setup-table-contact-not-told", at, f"nothing of {contact}", expected, do))
        return found

    def _amount(self, row: int, header: str) -> Number | None:
        """An amount; a text that means none is one of nought."""
        text = self.view.words(row, header, self.tell) if header in self.view.at else None
        if text is None:
            return None
        place, table = self.view.place(row, header), self.view.table
        if text in table.none:
            return Number(Decimal(0), (NONE_SAID,))
        if text in table.not_stated:
            expected = "an amount, or a text declared to mean none"
            do = "State it, or declare the text under `none` of [table]."
            self.tell(Fault("setup-table-contact-not-told", place, "a text declared to say nothing", expected, do))
            return None
        bare = without_unit(text, self.asked, place, self.tell)
        value = None if bare is None else number(bare, self.view.cell(row, header), place, table, self.tell)
        if value is not None and value < 0:
            self.tell(
                Fault("setup-table-negative", place, "an amount below 0", "an amount taken off", "Mend the cell.")
            )
            return None
        return None if value is None else scaled(value, self.asked, place, table, self.tell)

    # by contact

    def _by_contact(self, named: list[Named]) -> Iterator[Taken]:
        for row in body(self.view, self.own, self.tell):
            contact = self._contact(row, named)
            amount = self._amount(row, str(self.asked.amount))
            if contact and amount:
                place = self.view.place(row, str(self.asked.amount))
                yield from [Taken(contact, amount.value, self._before(row), place, amount.said)] if amount.value else []

    def _contact(self, row: int, named: list[Named]) -> str | None:
        header = str(self.asked.contact)
        text = self.view.words(row, header, self.tell) if header in self.view.at else None
        if text is None:
            return None
        place, notation = self.view.place(row, header), self.mapping.tooth.notation
        parts = text.split(str(self.asked.separator))
        teeth = [tooth for part in parts if (tooth := tooth_of(part.strip(" "), notation))]
        if len(parts) != 2 or len(teeth) != 2:  # noqa: PLR2004 - two teeth touch
            not_a_tooth(place, notation, self.tell)
            return None
        named += [Named(place, part.strip(" ")) for part in parts]
        name = contact_between(teeth[0], teeth[1]) if arch_of(teeth[0]) == arch_of(teeth[1]) else ""
        if not any(name in contacts_of(line) for line in self.lines):
            do = "Look at the two teeth, and at those taken out between them."
            self.tell(Fault("setup-table-contact", place, "two teeth that do not touch", "two neighbours", do))
            return None
        if name in self.seen and self.asked.before_aligner is None:
            do = "Leave the one that holds, or declare `before_aligner`."
            self.tell(Fault("setup-table-contact-twice", place, f"{name} a second time", "each contact once", do))
            return None
        self.seen.add(name)
        return name

    def _before(self, row: int) -> int | None:
        header = self.asked.before_aligner
        if header is None or header not in self.view.at:
            return None
        text = self.view.words(row, header, self.tell)
        if text is None or text in self.view.table.not_stated:
            return None
        return whole(self.view.cell(row, header), self.view.place(row, header), self.view.table, self.tell)

    # by surface

    def _by_surface(self, named: list[Named]) -> Iterator[Taken]:
        sides: dict[str, list[Side]] = {}
        header = self.asked.tooth or self.mapping.tooth.column
        for row in body(self.view, self.own, self.tell):
            tooth = tooth_in(self.view, row, header, self.mapping, named if self.own else [], _silent(self))
            for surface in SURFACES if tooth else ():
                self._side(row, str(tooth), surface, sides)
        for contact, found in sides.items():
            self.seen.add(contact)
            yield from self._joined(contact, found)

    def _side(self, row: int, tooth: str, surface: str, sides: dict[str, list[Side]]) -> None:
        header = str(getattr(self.asked, surface))
        amount = self._amount(row, header)
        if amount is None:
            return
        contact = self._beside(tooth, surface)
        if contact:
            sides.setdefault(contact, []).append(Side(tooth, amount, self.view.place(row, header)))
        elif amount.value:
            at, do = self.view.place(row, header), "Look at the tooth and the surface."
            self.tell(Fault("setup-table-contact", at, f"enamel {surface} of {tooth}", "a neighbour there", do))

    def _beside(self, tooth: str, surface: str) -> str | None:
        """The contact at a surface of a tooth that stands in line."""
        line = next((line for line in self.lines if tooth in line), ())
        if not line:
            return None
        at = line.index(tooth)
        to_the_left = (surface == "mesial") == (side_of(tooth) == "right")
        other = at + 1 if to_the_left else at - 1
        return contact_between(tooth, line[other]) if 0 <= other < len(line) else None

    def _joined(self, contact: str, sides: list[Side]) -> Iterator[Taken]:
        first, amounts = sides[0], {side.amount.value for side in sides}
        if len({side.tooth for side in sides}) < len(sides):
            self._told(first, f"{first.tooth} twice", "each tooth once")
        elif self.asked.counts == "contact" and len(amounts) > 1:
            self._told(first, f"two amounts for {contact}", "one amount, said of both teeth alike")
        elif self.asked.counts == "surface" and len(sides) == 1 and self.asked.not_listed is None:
            self._told(first, f"one of the two surfaces at {contact}", "an amount for both")
        else:
            total = sum(amounts) if self.asked.counts == "contact" else sum(side.amount.value for side in sides)
            said = tuple(dict.fromkeys(word for side in sides for word in side.amount.said))
            both = ("both surfaces together",) if self.asked.counts == "surface" and len(sides) > 1 else ()
            yield from [Taken(contact, Decimal(total), None, first.place, (*said, *both))] if total else []

    def _told(self, side: Side, found: str, expected: str) -> None:
        self.tell(Fault("setup-table-contact-not-clear", side.place, found, expected, "Look at both teeth's cells."))


def _silent(enamel: Enamel) -> Any:
    """What is wrong with a tooth's name is told once, where movements are read."""
    return enamel.tell if enamel.own else lambda fault: None


def in_order(taken: list[Taken]) -> list[Taken]:
    """From the patient's right to left, the upper arch first."""
    return sorted(taken, key=lambda one: (arch_of(one.contact[:2]) == "lower", place(one.contact[:2]), one.before or 0))
