"""What a place in the mouth can mean: teeth, contacts, or an arch or a side alone."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Final

from wellposed_converters.text.clause import Contact
from wellposed_converters.text.places.notation import (
    ARCHES,
    BOTH,
    LEFT,
    RIGHT,
    in_mouth_order,
    neighbours,
    side_of,
    tooth,
)

NUMERIC: Final = frozenset(("FDI", "Universal", "Haderup"))
"""Numberings in which the same digits are other teeth; every other system explains itself."""


@dataclass(frozen=True)
class Form:
    """Teeth by their positions from the midline, of an arch that is not said; a run has its contacts in it."""

    right: tuple[int, ...]
    left: tuple[int, ...]
    run: bool = False
    primary: bool = False

    def rows(self, arch: str) -> tuple[tuple[int, ...], ...]:
        """The teeth in ``upper``, ``lower`` or ``both``, one row an arch."""
        arches = ARCHES if arch == BOTH else (arch,)
        return tuple(in_mouth_order(self._teeth(one)) for one in arches)

    def _teeth(self, arch: str) -> Iterable[int]:
        for side, positions in ((RIGHT, self.right), (LEFT, self.left)):
            for position in positions:
                number = tooth(arch, side, position, primary=self.primary)
                if number:
                    yield number

    def of_side(self, side: str) -> Form:
        """The same positions of one side."""
        if side == BOTH:
            return self
        return replace(self, left=()) if side == RIGHT else replace(self, right=())


@dataclass(frozen=True)
class Meaning:
    """One way a place can be meant.

    system     a numbering, or ``position``, ``words``, ``alphanumeric``, ``Palmer``, which explain themselves
    teeth      ISO 3950, in mouth order
    contacts   contacts written as such
    runs       ranges as written, each in mouth order; the contacts in them are ``inner_contacts``
    arch, side only where an arch or a side is all that is said
    inferred   members filled by a convention
    needs      what is still open: ``arch`` (with teeth: they are the reading if no arch is said anywhere), ``side``,
               ``one`` (one of these teeth), ``link`` (a range from arch to arch: its two ends), ``sign``, ``teeth``
    positions  the forms that wait for the arch
    minus      teeth excepted
    links      the two ends of each range from arch to arch, in the order written
    """

    system: str
    teeth: tuple[int, ...] = ()
    contacts: tuple[Contact, ...] = ()
    runs: tuple[tuple[int, ...], ...] = ()
    arch: str | None = None
    side: str | None = None
    inferred: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    positions: tuple[Form, ...] = ()
    surface: str | None = None
    minus: tuple[int, ...] = ()
    links: tuple[Contact, ...] = ()

    def named(self) -> frozenset[int]:
        """Every tooth that is mentioned, in contacts too."""
        return frozenset(self.teeth) | {number for pair in self.contacts for number in pair}


@dataclass(frozen=True)
class Place:
    """A place in a text, as long as it goes; offsets in code points.

    meanings     every meaning; more than one only where the numbering, or the expression, is undecided
    asks, why    the type of the question it is whatever the numbering, and what is odd about it
    bare_number  a lone number that nothing but its slot makes a tooth
    evidence     the numberings that it speaks for (R2)
    signs        how many ``#`` it holds
    loose_tail   its last number follows by mere space: ``12 15`` may be tooth 12 and an amount without unit
    alternatives joined by ``or``: all of them under a negation, one of them under an order
    """

    start: int
    end: int
    meanings: tuple[Meaning, ...]
    asks: str | None = None
    why: str | None = None
    bare_number: bool = False
    evidence: frozenset[str] = field(default_factory=frozenset)
    signs: int = 0
    loose_tail: bool = False
    alternatives: bool = False


def linked(system: str, first: int, last: int) -> Meaning:
    """A range from one arch to the other: its two ends, which an elastic may join and nothing else."""
    return Meaning(system, in_mouth_order((first, last)), needs=("link",), links=((first, last),))


def of_form(form: Form, arch: str | None, system: str, *, whole: bool = False) -> Meaning:
    """The meaning of positions in an arch; without one it needs the arch, and stands for both if ``whole``."""
    if arch is None:
        open_ = Meaning(system, needs=("arch",), positions=(form,))
        return replace(open_, teeth=in_mouth_order(sum(form.rows(BOTH), ())), inferred=("teeth",)) if whole else open_
    rows = form.rows(arch)
    return Meaning(system, in_mouth_order(sum(rows, ())), runs=rows if form.run else ())


def with_arch(meaning: Meaning, arch: str) -> Meaning:
    """The meaning once ``upper``, ``lower`` or ``both`` is known; unchanged where no arch is wanting."""
    if "arch" not in meaning.needs:
        return meaning
    needs = tuple(need for need in meaning.needs if need != "arch")
    assumed = {number for form in meaning.positions for row in form.rows(BOTH) for number in row}
    rows = [(form, row) for form in meaning.positions for row in form.rows(arch)]
    teeth = in_mouth_order((*(set(meaning.teeth) - assumed), *(number for _, row in rows for number in row)))
    runs = (*meaning.runs, *(row for form, row in rows if form.run))
    known = replace(meaning, teeth=teeth, runs=runs, needs=needs, positions=(), minus=())
    return without(known, meaning.minus) if meaning.minus else known


def except_for(meaning: Meaning, other: Meaning) -> Meaning:
    """The meaning less another place; needs ``teeth`` when that is not among it."""
    if other.needs == ("arch",) and not meaning.needs:
        row = {number for form in other.positions for rows in form.rows(BOTH) for number in rows}
        return without(meaning, in_mouth_order(row & set(meaning.teeth)) or in_mouth_order(row))
    if other.needs or (meaning.arch and not meaning.teeth):
        return replace(meaning, needs=("teeth",))
    return (
        without_contacts(meaning, other.contacts)
        if other.contacts and not other.teeth
        else without(meaning, other.teeth)
    )


def without(meaning: Meaning, excepted: Sequence[int]) -> Meaning:
    """The meaning less some of its teeth; needs ``teeth`` when they are not among it."""
    if "arch" in meaning.needs and not meaning.teeth:
        return replace(meaning, minus=(*meaning.minus, *excepted))
    if not set(excepted) <= set(meaning.teeth):
        return replace(meaning, needs=(*meaning.needs, "teeth"))
    teeth = tuple(number for number in meaning.teeth if number not in excepted)
    runs = tuple(part for run in meaning.runs for part in _parts(run, frozenset(excepted)))
    minus = (*meaning.minus, *excepted) if meaning.positions else ()
    return replace(meaning, teeth=teeth, runs=runs, minus=minus)


def _parts(run: tuple[int, ...], excepted: frozenset[int]) -> list[tuple[int, ...]]:
    parts: list[list[int]] = [[]]
    for number in run:
        if number in excepted:
            parts.append([])
        else:
            parts[-1].append(number)
    return [tuple(part) for part in parts if part]


def without_contacts(meaning: Meaning, excepted: Sequence[Contact]) -> Meaning:
    """The contacts in a range less some of them; needs ``teeth`` when they are not among them."""
    inside = inner_contacts(meaning)
    if meaning.needs or not set(excepted) <= set(inside):
        return replace(meaning, needs=(*meaning.needs, "teeth"))
    return replace(meaning, runs=(), contacts=tuple(pair for pair in inside if pair not in excepted))


def inner_contacts(meaning: Meaning) -> tuple[Contact, ...]:
    """The contacts inside each run (R4), in mouth order."""
    pairs = {pair for run in meaning.runs for pair in pairwise(run) if neighbours(*pair)}
    return in_order(pairs)


def in_order(contacts: Iterable[Contact]) -> tuple[Contact, ...]:
    """Contacts once each, each in mouth order, and in mouth order of their first teeth."""
    pairs = {in_mouth_order(pair) for pair in contacts}
    firsts = in_mouth_order(pair[0] for pair in pairs)
    return tuple(sorted(((one, two) for one, two in pairs), key=lambda pair: firsts.index(pair[0])))


def of_side(meaning: Meaning, side: str) -> Meaning:
    """The meaning on one side of the mouth."""
    if side == BOTH:
        return meaning
    runs = tuple(tuple(number for number in run if side_of(number) == side) for run in meaning.runs)
    return replace(
        meaning,
        teeth=tuple(number for number in meaning.teeth if side_of(number) == side),
        runs=tuple(run for run in runs if run),
        positions=tuple(form.of_side(side) for form in meaning.positions),
    )
