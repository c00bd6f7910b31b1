"""Enamel reduction as the rules look at it: how much may go at a contact, in all, and for which stated reason."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import inf
from typing import NamedTuple

from wellposed.consistency.whole import Place
from wellposed.model.means import EnamelReduction
from wellposed.rules._acts import above
from wellposed.rules._declare import Told, said, told
from wellposed.rules.chart import Chart
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.teeth import ARCHES, arch_of, position

FRONT, BACK = "front", "back"
REPLACED = ("implant", "pontic")
PART = "caution.reduction-in-all"
ARCH = "practice.reduction-in-all"
_LAST_OF_FRONT = 3


class Taken(NamedTuple):
    """One allowance of enamel reduction.

    contacts  where, in the order of the arch
    each      most at one contact, both teeth together, mm; None where only a sum is stated
    whole     most in all, mm: the smaller where the sum and the contacts are both bounded
    """

    place: Place
    contacts: tuple[str, ...]
    each: float | None
    whole: float

    @property
    def share(self) -> float:
        """What comes on one contact, mm: the most if it is stated, else an even share."""
        return self.whole / len(self.contacts) if self.each is None else self.each

    def of_arch(self, arch: str) -> float:
        """What comes on one arch by even shares, mm."""
        return self.whole * len([name for name in self.contacts if arch_of_contact(name) == arch]) / len(self.contacts)


def taken(chart: Chart) -> Iterator[Taken]:
    """Every allowance of enamel reduction that reaches a contact."""
    for place in chart.allowed("enamel-reduction"):
        part = place.part
        if isinstance(part, EnamelReduction) and (contacts := tuple(chart.whole.reduced(part))):
            in_all = inf if part.in_all is None else part.in_all
            each = None if part.per_contact is None else min(part.per_contact, in_all)
            bounds = min(in_all, inf if part.per_contact is None else part.per_contact * len(contacts))
            yield Taken(place, contacts, each, bounds if bounds < inf else part.at_least or 0.0)


def named(chart: Chart) -> Iterator[Taken]:
    """Those that name their contacts; of an arch, where to take enamel is left to the laboratory."""
    return (one for one in taken(chart) if one.place.said("contacts"))


def arch_of_contact(contact: str) -> str:
    """``upper`` or ``lower``."""
    return arch_of(teeth_of(contact)[0])


def part_of(*teeth: str) -> str:
    """``front`` where all of these are incisors or canines, else ``back``."""
    return FRONT if all(position(tooth) <= _LAST_OF_FRONT for tooth in teeth) else BACK


def reasons(chart: Chart, place: Place) -> set[str]:
    """The terms of the problems a clause is said to answer."""
    found = (chart.place(one) for one in chart.because(place))
    return {str(at.said("problem")) for at in found if at and at.said("problem")}


# sums over an arch


class Sum(NamedTuple):
    """What may go in an arch or a part of it, mm, by the clauses that take from it, and the key of its ceiling."""

    arch: str
    part: str
    amount: float
    by: list[Taken]
    key: str


def sums(chart: Chart, arch: str) -> Iterator[Sum]:
    """The whole arch, then its front and its back, where more may go than is advised."""
    for part, key in (("", f"{ARCH}.{arch}"), (FRONT, f"{PART}.{FRONT}"), (BACK, f"{PART}.{BACK}")):
        by = [(one, amount) for one in taken(chart) if (amount := share_of(one, arch, part)) > 0]
        amount = sum(amount for _, amount in by)
        if above(amount, chart.limit(key)):
            yield Sum(arch, part, amount, [one for one, _ in by], key)


def share_of(one: Taken, arch: str, part: str) -> float:
    """What comes on an arch, or its front or back, by even shares, mm."""
    here = [name for name in one.contacts if arch_of_contact(name) == arch and part in ("", part_of(*teeth_of(name)))]
    return one.whole * len(here) / len(one.contacts)


def told_by_sum(chart: Chart) -> set[str]:
    """The clauses a rule about the arch speaks of: the single contacts are then not told again."""
    return {one.place.owner for arch in ARCHES for found in sums(chart, arch) for one in found.by}


# single contacts of a clause


def at_contacts(one: Taken, contacts: Iterable[str], *ids: str, **facts: object) -> Told:
    """What is told of a clause at those of its contacts that are meant, with the ids of what else it rests on."""
    asked, where = said(one.place.part), list(contacts)
    return told(one.place.pointer, one.place.owner, *ids, asked=asked, contacts=where, **facts)


def stated(chart: Chart, one: Taken, *states: str) -> dict[str, list[str]]:
    """Contacts of a clause with the teeth there that are in one of these states."""
    found = {name: [tooth for tooth in teeth_of(name) if chart.state(tooth, *states)] for name in one.contacts}
    return {name: teeth for name, teeth in found.items() if teeth}


def flat(found: dict[str, list[str]]) -> list[str]:
    """The teeth of several contacts, each once."""
    return list(dict.fromkeys(tooth for teeth in found.values() for tooth in teeth))


def states_of(chart: Chart, teeth: Iterable[str], states: tuple[str, ...]) -> list[str]:
    """In which of these states the teeth are, each state once."""
    return list(dict.fromkeys(state for tooth in teeth if (state := chart.state(tooth, *states))))
