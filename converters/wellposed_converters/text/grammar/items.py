"""A segment cut into items: tooth references, quantities and forms of the lexicon, the longest at each place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import product, takewhile
from typing import Any, Final

from wellposed_converters.text.conditions import Condition
from wellposed_converters.text.lexicon import Entry, head, longest
from wellposed_converters.text.lexicon.lexer import Token, tokens
from wellposed_converters.text.places import Place
from wellposed_converters.text.quantity import Amount, Basis, FromTo, Ordinal

SIGNS: Final = {",": "COMMA", ":": "COLON", "(": "LPAR", ")": "RPAR", "-": "DASH", "–": "DASH", "—": "DASH"}
SILENT: Final = frozenset(".;!•*|")
"""Signs that end or frame a segment and say nothing inside one."""


@dataclass(frozen=True)
class Named:
    """Words that state the numbering of the text."""

    start: int
    end: int
    system: str


Found = Place | Amount | FromTo | Basis | Ordinal | Condition | Named


NOTATION: Final = {"kind": "notation", "sort": "notation"}


@dataclass(frozen=True)
class Item:
    """One terminal of the grammar, with its place in the text and what it stands for."""

    category: str
    name: str
    start: int
    end: int
    value: Any = field(default=None, hash=False)
    words: str = ""


MOST_DOUBTS: Final = 4
"""Lone numbers, each a tooth or an amount, that a segment may have."""


def alternatives(items: Sequence[Item]) -> Iterator[tuple[Item, ...]]:
    """The rows of items in which each lone number is a tooth or an amount; none when there are too many."""
    doubts = [item for item in items if item.category == "NUMBER"]
    if len(doubts) > MOST_DOUBTS:
        return
    choices = [item.value if item.category == "NUMBER" else (item,) for item in items]
    yield from product(*choices)


@dataclass(frozen=True)
class Cut:
    """The items of a segment; ``carried`` and ``glue`` are the words that fill no slot, ``unknown`` the rest."""

    items: tuple[Item, ...]
    carried: tuple[tuple[int, int], ...]
    glue: tuple[tuple[int, int], ...]
    unknown: tuple[tuple[int, int], ...]


def cut(text: str, start: int, end: int, found: Iterable[Found]) -> Cut:
    """The items of ``text[start:end]``; what stands in no form and is no sign is unknown."""
    row = tokens(text, start, end)
    things = sorted(found, key=lambda thing: thing.end)
    special = {thing.start: thing for thing in things}
    doubtful = {thing.start: thing for thing in things if isinstance(thing, Place) and thing.bare_number}
    special |= {thing.start: thing for thing in things if isinstance(thing, Amount) and thing.start in doubtful}
    items: list[Item] = []
    apart: dict[str, list[tuple[int, int]]] = {"carried": [], "joining": [], "unknown": []}
    at = 0
    while at < len(row):
        item, sort, at = _next(row, at, special)
        item = _doubt(item, doubtful)
        if item is not None:
            items.append(replace(item, words=text[item.start : item.end]))
        elif sort[0]:
            apart[sort[0]].append(sort[1])
    items = [_settled(items, number) for number in range(len(items))]
    return Cut(tuple(items), tuple(apart["carried"]), tuple(apart["joining"]), tuple(apart["unknown"]))


def _settled(items: Sequence[Item], at: int) -> Item:
    """A word that is asked about, unless what follows settles it: "exp" before an arch."""
    item = items[at]
    basis = item.value.facts.get("with_a_basis") if item.category == "ASKED" else None
    if basis is not None and _counted(items[at + 1 :]):
        return replace(item, category="MEANS", name=basis, value=head(basis))
    after = items[at + 1] if at + 1 < len(items) else None
    known = _by_what_follows(item, after)
    if known is not None:
        return replace(item, category=str(head(known).facts["sort"]).upper(), name=known, value=head(known))
    name = item.value.facts.get("before_an_arch") if item.category == "ASKED" else None
    if name is None or after is None or after.category != "PLACE":
        return item
    alone = (
        all(one.arch and not one.teeth and not one.contacts for one in after.value.meanings) and not after.value.asks
    )
    return replace(item, category="MOTION", name=name, value=head(name)) if alone and after.value.meanings else item


def _by_what_follows(item: Item, after: Item | None) -> str | None:
    """ "BT 31/41" is a black triangle, "BT palatal" a bite turbo."""
    if item.category != "ASKED" or after is None:
        return None
    facts = item.value.facts
    if after.category == "PLACE" and after.value.meanings and all(one.contacts for one in after.value.meanings):
        return facts.get("before_a_contact")
    return facts.get("before_palatal") if after.name == "palatal" else None


def _counted(after: Sequence[Item]) -> bool:
    """Whether an amount per contact or per surface follows in the same statement."""
    rest = list(takewhile(lambda item: item.category not in ("COMMA", "COLON"), after))
    return any(item.category == "BASIS" and item.value.measure in ("per_contact", "per_surface") for item in rest)


def _doubt(item: Item | None, doubtful: dict[int, Place]) -> Item | None:
    """A lone number that is an amount, and a tooth as well."""
    place = doubtful.get(item.start) if item is not None and item.category == "AMOUNT" else None
    if item is None or place is None or place.end != item.end:
        return item
    return Item("NUMBER", "", item.start, item.end, (item, _found(place)))


def _next(
    row: Sequence[Token], at: int, special: dict[int, Found]
) -> tuple[Item | None, tuple[str, tuple[int, int]], int]:
    token = row[at]
    match = longest(row, at, len(row))
    thing = special.get(token.start)
    reach = row[match.last - 1].end if match else -1
    if thing is not None and thing.end >= reach:
        item = _found(thing)
        return item, ("", (0, 0)), _after(row, at, thing.end)
    if match is not None:
        span = (token.start, reach)
        if match.entry.category == "GLUE":
            return _glue(match.entry, span), (match.entry.name, span), match.last
        return _item(match.entry, span), ("", span), match.last
    return _sign(token), ("" if token.norm in SILENT else "unknown", (token.start, token.end)), at + 1


def _found(thing: Found) -> Item:
    if isinstance(thing, Named):
        return Item(
            "FACT", "notation", thing.start, thing.end, Entry("HEAD", "notation", NOTATION | {"of": thing.system})
        )
    if isinstance(thing, Condition):
        return Item("COND", thing.name, thing.start, thing.end, thing)
    return Item(_category(thing), "", thing.start, thing.end, thing)


def _category(thing: Found) -> str:
    if isinstance(thing, Amount) and thing.noun:
        return "STEPS"
    return type(thing).__name__.upper()


def _after(row: Sequence[Token], at: int, end: int) -> int:
    while at < len(row) and row[at].start < end:
        at += 1
    return at


def _item(entry: Entry, span: tuple[int, int]) -> Item:
    category = str(entry.facts["sort"]).upper() if entry.category == "HEAD" else entry.category
    return Item(category, entry.name, *span, value=entry)


def _glue(entry: Entry, span: tuple[int, int]) -> Item | None:
    return None


def _sign(token: Token) -> Item | None:
    category = SIGNS.get(token.norm)
    return Item(category, token.norm, token.start, token.end) if category else None
