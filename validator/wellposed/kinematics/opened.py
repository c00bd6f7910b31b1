"""All that a prescription opens, gathered: for each sensed variable where it comes from and how far it reaches."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache
from math import inf
from typing import NamedTuple

from wellposed import norms
from wellposed.kinematics.means import allowance_opens, clause_opens
from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.openings import Opening, Sensed, both, extraction_of, sensed
from wellposed.model.clauses import Movement
from wellposed.vocabulary.motions import Variable
from wellposed.vocabulary.teeth import arch_of, is_canine, is_incisor, is_molar


class Source(NamedTuple):
    """Where an opening comes from; ``amount`` is its reach, and ``rate`` what that grows by with the owner's amount."""

    owner: str
    rate: float
    amount: float
    soft: bool
    drawn: bool
    alike: bool
    slack: bool
    usual: bool = False
    per: float = 0.0
    by: Variable = "out"


Table = dict[Sensed, list[Source]]


def source(opening: Opening, owner: str, amount: float) -> Source:
    """An opening at its owner's amount."""
    reach = inf if opening.rate == inf else opening.rate * amount
    return tuple.__new__(Source, (owner, opening.rate, reach, *opening[2:]))  # Source(...), without its cost


def tooth_class(tooth: str) -> str:
    """incisor, canine or posterior."""
    return "incisor" if is_incisor(tooth) else "canine" if is_canine(tooth) else "posterior"


@cache
def silent_group(tooth: str, variable: str) -> str:
    """The group of silent variables one belongs to."""
    if variable == "along":
        return "along"
    if variable == "out":
        return "incisor-out" if is_incisor(tooth) else "side-out"
    return f"{tooth_class(tooth)}-{variable}"


class Opened:
    """What is opened.

    table  sources by sensed variable
    said   (arch, silent group) that an allowance or a movement opens something of
    """

    def __init__(self, mouth: Mouth) -> None:
        self.table: Table = {}
        self.said: set[tuple[str, str]] = set()
        self._allowances(mouth)
        self._clauses(mouth)
        for tooth, owner in mouth.extracted.items():
            if owner is None:
                self._note(extraction_of(mouth, tooth), tooth, inf, said=True)
        self._add(list(followers(mouth, self.table)))
        self._add(list(straight_back(self.table)))

    def _allowances(self, mouth: Mouth) -> None:
        for allowance in mouth.prescription.allow or ():
            amount, opened = allowance_opens(mouth, allowance)
            self._note(opened, allowance.id, amount, said=True)

    def _clauses(self, mouth: Mouth) -> None:
        rx = mouth.prescription
        for item in (*(rx.goals or ()), *(rx.keep or ()), *(rx.movements or ())):
            self._note(clause_opens(mouth, item), item.id, 1.0, said=isinstance(item, Movement))

    def _note(self, opened: Iterable[Opening], owner: str, amount: float, said: bool) -> None:
        for opening in opened:
            self.table.setdefault(opening.at, []).append(source(opening, owner, amount))
            if said:
                self.said.add((arch_of(opening.at.tooth), silent_group(opening.at.tooth, opening.at.variable)))

    def _add(self, more: Iterable[tuple[Sensed, Source]]) -> None:
        for at, found in more:
            self.table.setdefault(at, []).append(found)

    def sources(self, at: Sensed) -> list[Source]:
        """Every source of a sensed variable."""
        return self.table.get(at, [])

    def deciding(self, at: Sensed) -> Source | None:
        """The source that bounds a sensed variable; None: silent.

        The largest counts. What an extraction or a delegation opens without an amount yields to one that is stated;
        a customary amount is not stated, so nothing yields to it.
        """
        found = self.table.get(at)
        if found is None:
            return None
        if any(not (one.usual or (one.soft and one.amount == inf)) for one in found):
            found = [one for one in found if not (one.soft and one.amount == inf)]
        return max(found, key=_amount)

    def reach(self, at: Sensed) -> float:
        """How far a sensed variable may go, before any row."""
        found = self.deciding(at)
        return found.amount if found else 0.0


def _amount(found: Source) -> float:
    return found.amount


def _amount_then_hard(found: Source) -> tuple[float, bool]:
    return found.amount, not found.soft


def followers(mouth: Mouth, table: Table) -> Iterator[tuple[Sensed, Source]]:
    """Non-molar teeth between two whose ``along`` is opened may follow, to the largest amount stated."""
    for row in mouth.rows.values():
        opened = list(_opened_along(row.teeth, table))
        if len({place for place, _ in opened}) < 2:
            continue
        kinds = ([one for _, one in opened], [one for _, one in opened if one.drawn])
        largest = [max(kind, key=_amount_then_hard) for kind in kinds if kind]
        first, last = min(place for place, _ in opened), max(place for place, _ in opened)
        for tooth in row.teeth[first + 1 : last]:
            if not is_molar(tooth):
                yield from ((sensed(tooth, "along", sign), one) for sign in (1, -1) for one in largest)


def _opened_along(teeth: tuple[str, ...], table: Table) -> Iterator[tuple[int, Source]]:
    for place, tooth in enumerate(teeth):
        for sign in (1, -1):
            for one in table.get(sensed(tooth, "along", sign), ()):
                if not one.slack:
                    yield place, one


def straight_back(table: Table) -> Iterator[tuple[Sensed, Source]]:
    """A canine drawn distally may go straight back: inwards by a share of the amount, along without bound."""
    share = norms.value("kinematics.canine-out-per-distal")
    for at, found in table.items():
        if at.variable != "along" or at.sign > 0 or not is_canine(at.tooth):
            continue
        for one in found:
            if one.drawn:
                yield (
                    sensed(at.tooth, "out", -1),
                    one._replace(rate=one.rate * share, amount=one.amount * share),
                )
                freed = one._replace(rate=inf, amount=inf, drawn=False)
                yield from ((more.at, freed) for more in both(at.tooth, "along"))
