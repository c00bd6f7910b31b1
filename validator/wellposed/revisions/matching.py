"""Which clause of one revision is which of the other: by what they say, what they are about, their id, their places."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple

from wellposed.model.clauses import Hold, KeepMotion, KeepVariable
from wellposed.model.means import AnyMovement, VerticalMovement
from wellposed.revisions.meaning import about, form, meaning
from wellposed.revisions.opposite import Side, opposite
from wellposed.revisions.result import Item
from wellposed.rules.chart import Chart
from wellposed.rules.clauses_kept import subject

FAMILIES = (
    *(("findings",), ("problems",), ("goals",), ("keep",), ("movements",), ("allow", "exclude"), ("expect",)),
    *(("attachments",), ("staging",), ("appliance",), ("process",), ("retention",)),
)
"""Sections whose clauses may be the same clause."""

_PLACES = ("teeth", "align", "hold", "must", "must_not", "may", "prefer", "prefer_not", "contacts", "close")
_BESIDE = {*_PLACES, "arch", "pair", "jaw_position", "sides", "side", "variables", "start", "end", "tooth", "ground"}
_KINDRED = ((Hold, KeepVariable, KeepMotion), (VerticalMovement, AnyMovement))
"""Forms that say the same kind of thing of teeth, and may stand for each other under one id."""

Score = Callable[["Known", "Known"], int]


class Known(NamedTuple):
    """An item with what it is compared by, computed once."""

    item: Item
    side: Side
    meaning: str
    about: tuple[str, str]
    rest: str
    places: frozenset[str]


def pairs(old: Iterable[Item], new: Iterable[Item], charts: tuple[Chart, Chart]) -> list[tuple[Item, Item]]:
    """Each clause with the one it was before, each once; the same pairs whichever revision is the older."""
    before, after = ([_known(item, chart) for item in given] for given, chart in zip((old, new), charts, strict=True))
    found: list[tuple[Item, Item]] = []
    for family in FAMILIES:
        here = [one for one in before if one.item.section in family]
        there = [one for one in after if one.item.section in family]
        found += _paired(here, there)
    return found


def _known(item: Item, chart: Chart) -> Known:
    said = repr(sorted(meaning(item.part).items()))
    rest = {name: value for name, value in subject(item.part).items() if name not in _BESIDE}
    named = [one for name in _PLACES for one in getattr(item.part, name, None) or ()]
    side = Side(item.part, chart)
    return Known(item, side, said, about(item), repr(sorted(rest.items(), key=str)), frozenset(named))


def _paired(old: list[Known], new: list[Known]) -> list[tuple[Item, Item]]:
    found: list[tuple[Item, Item]] = []
    for score in _PASSES:
        for one, other in _best(old, new, score):
            found.append((one.item, other.item))
            old, new = [k for k in old if k is not one], [k for k in new if k is not other]
    return found


def _best(old: Sequence[Known], new: Sequence[Known], score: Score) -> list[tuple[Known, Known]]:
    """The pairs of this pass: the best first, then those that stand earliest.

    Pairs of one score and one sum of places never share a clause, so that the order of the two lists does not matter.
    """
    scored = [
        (-points, i + j, i, j)
        for i, one in enumerate(old)
        for j, other in enumerate(new)
        if (points := score(one, other))
    ]
    taken: tuple[set[int], set[int]] = (set(), set())
    found = []
    for _, _, i, j in sorted(scored):
        if i not in taken[0] and j not in taken[1]:
            taken[0].add(i)
            taken[1].add(j)
            found.append((old[i], new[j]))
    return found


# how well two clauses agree; 0: not at all


def _says_the_same(one: Known, other: Known) -> int:
    if one.meaning != other.meaning or form(one.item) != form(other.item):
        return 0
    return 2 if one.item.id == other.item.id else 1


def _about_the_same(one: Known, other: Known) -> int:
    if one.about != other.about:
        return 0
    return 2 if one.item.id == other.item.id else 1


def _called_the_same(one: Known, other: Known) -> int:
    alike = one.item.id == other.item.id and form(one.item) == form(other.item)
    return int(alike and one.rest == other.rest)


def _kindred(one: Known, other: Known) -> int:
    """How many teeth two clauses of one id share whose forms are of one kind."""
    parts = one.item.part, other.item.part
    alike = one.item.id == other.item.id and any(all(isinstance(p, kinds) for p in parts) for kinds in _KINDRED)
    return len(one.places & other.places) if alike else 0


def _shares_places(one: Known, other: Known) -> int:
    """How many teeth or contacts two clauses of one form share that agree in all but these and their amounts."""
    alike = form(one.item) == form(other.item) and one.rest == other.rest
    return len(one.places & other.places) if alike else 0


def _says_the_opposite(one: Known, other: Known) -> int:
    return int(opposite(one.side, other.side))


def _one_of_a_kind(one: Known, other: Known) -> int:
    """A staging is always the staging."""
    return int(one.item.section == other.item.section == "staging")


_PASSES: tuple[Score, ...] = (
    *(_says_the_same, _about_the_same, _called_the_same, _kindred),
    *(_shares_places, _says_the_opposite, _one_of_a_kind),
)
