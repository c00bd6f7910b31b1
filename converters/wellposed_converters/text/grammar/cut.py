"""A segment cut into items: tooth references, quantities and forms of the lexicon, the longest at each place."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from wellposed_converters.text.clause import Span
from wellposed_converters.text.grammar.items import Cut, Found, Item, Named
from wellposed_converters.text.grammar.settled import settled
from wellposed_converters.text.lexicon import Entry, longest
from wellposed_converters.text.lexicon.conditions import Condition
from wellposed_converters.text.lexicon.lexer import Token, tokens
from wellposed_converters.text.places import Place
from wellposed_converters.text.quantities import Amount, Basis

SIGNS: Final = {",": "COMMA", ":": "COLON", "(": "LPAR", ")": "RPAR", "-": "DASH", "\u2013": "DASH", "\u2014": "DASH"}
SILENT: Final = frozenset(".;!\u2022*|")
"""Signs that end or frame a segment and say nothing inside one."""
NOTATION: Final = {"kind": "notation", "sort": "notation"}


@dataclass(frozen=True)
class _Rest:
    """What is no item: ``carried`` and ``joining`` words, ``unknown`` ones, ``silent`` signs."""

    sort: str
    span: Span


def cut(text: str, start: int, end: int, found: Iterable[Found]) -> Cut:
    """The items of ``text[start:end]``; what stands in no form and is no sign is unknown."""
    row = tokens(text, start, end)
    special, doubtful = _by_start(found)
    items: list[Item] = []
    apart: dict[str, list[Span]] = {"carried": [], "joining": [], "unknown": [], "silent": []}
    at = 0
    while at < len(row):
        one, at = _next(row, at, special)
        if isinstance(one, _Rest):
            apart[one.sort].append(one.span)
        else:
            items.append(replace(_doubt(one, doubtful), words=text[one.start : one.end]))
    items = [settled(items, number) for number in range(len(items))]
    return Cut(tuple(items), tuple(apart["carried"]), tuple(apart["joining"]), tuple(apart["unknown"]))


def _by_start(found: Iterable[Found]) -> tuple[dict[int, Found], dict[int, Place]]:
    """The longest thing at each offset, amounts before the lone numbers they are; and those lone numbers."""
    things = sorted(found, key=lambda thing: thing.end)
    special: dict[int, Found] = {thing.start: thing for thing in things}
    doubtful = {thing.start: thing for thing in things if isinstance(thing, Place) and thing.bare_number}
    special |= {thing.start: thing for thing in things if isinstance(thing, Amount) and thing.start in doubtful}
    return special, doubtful


def _doubt(item: Item, doubtful: Mapping[int, Place]) -> Item:
    """A lone number that is an amount, and a tooth as well."""
    place = doubtful.get(item.start) if item.category == "AMOUNT" else None
    if place is None or place.end != item.end:
        return item
    return Item("NUMBER", "", item.start, item.end, (item, _found(place)))


def _next(row: Sequence[Token], at: int, special: Mapping[int, Found]) -> tuple[Item | _Rest, int]:
    """What stands at token ``at``, and the token behind it."""
    token = row[at]
    match = longest(row, at, len(row))
    thing = special.get(token.start)
    reach = row[match.last - 1].end if match else -1
    if thing is not None and thing.end >= reach:
        return _found(thing), _after(row, at, thing.end)
    if match is not None:
        return _form(match.entry, (token.start, reach)), match.last
    if token.norm == "." and at + 1 < len(row) and not _counts_on(row[at + 1], special):
        return _Rest("unknown", (token.start, token.end)), at + 1
    return _sign(token, tight=_tight(row, at)), at + 1


def _after(row: Sequence[Token], at: int, end: int) -> int:
    while at < len(row) and row[at].start < end:
        at += 1
    return at


def _found(thing: Found) -> Item:
    if isinstance(thing, Named):
        entry = Entry("HEAD", "notation", NOTATION | {"of": thing.system})
        return Item("FACT", "notation", thing.start, thing.end, entry)
    if isinstance(thing, Condition):
        return Item("COND", thing.name, thing.start, thing.end, thing)
    steps = isinstance(thing, Amount) and thing.noun
    return Item("STEPS" if steps else type(thing).__name__.upper(), "", thing.start, thing.end, thing)


def _form(entry: Entry, span: Span) -> Item | _Rest:
    if entry.category == "GLUE":
        return _Rest(entry.name, span)
    category = str(entry.facts["sort"]).upper() if entry.category == "HEAD" else entry.category
    return Item(category, entry.name, *span, value=entry)


def _counts_on(token: Token, special: Mapping[int, Found]) -> bool:
    """Whether an amount goes on after its full stop: "0.2 mm. per contact"."""
    return isinstance(special.get(token.start), Basis | Amount)


def _tight(row: Sequence[Token], at: int) -> bool:
    """Whether a sign touches what stands before or behind it."""
    before = at > 0 and row[at - 1].end == row[at].start
    return before or (at + 1 < len(row) and row[at + 1].start == row[at].end)


def _sign(token: Token, *, tight: bool) -> Item | _Rest:
    category = SIGNS.get(token.norm)
    if category == "DASH" and tight:  # a range, a minus, a sign of the numbering: never a pause
        return _Rest("unknown", (token.start, token.end))
    if category:
        return Item(category, token.norm, token.start, token.end)
    return _Rest("silent" if token.norm in SILENT else "unknown", (token.start, token.end))
