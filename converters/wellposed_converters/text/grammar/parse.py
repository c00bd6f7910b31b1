"""All groupings of a segment's items into statements: the derivations of ``grammar.lark``.

The parser is Earley's, which finds every derivation. Items that fill slots are alike to the grammar, so a run of them
is one terminal; segments of one shape have the same derivations, and a shape is parsed once and remembered.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib import resources
from typing import Any, Final

from lark import Lark, Token, Tree
from lark.exceptions import UnexpectedInput
from lark.lexer import Lexer
from lark.visitors import CollapseAmbiguities

LONGEST: Final = 60
"""Items a segment may have: above it the segment is asked about."""
MOST: Final = 64
"""Derivations a segment may have: above it the segment is asked about."""


@dataclass(frozen=True)
class Unit:
    """One statement: at most one head, the slots that are its own, those that govern it, and how it was joined.

    Members are indexes into the segment's items. ``level`` counts the colons before it; ``row`` is the number of the
    grouping it is a member of.
    """

    head: int | None
    slots: tuple[int, ...]
    governors: tuple[int, ...]
    join: str
    level: int
    form: str


class _Items(Lexer):
    """The items are the terminals already."""

    def __init__(self, _conf: Any) -> None:
        pass

    def lex(self, data: Any) -> Iterator[Token]:  # type: ignore[override]  # lark's own stub says str
        return (Token(category, str(index)) for index, category in enumerate(data))


@cache
def _parser() -> Lark:
    text = resources.files(__package__).joinpath("grammar.lark").read_text("utf-8")
    return Lark(text, parser="earley", ambiguity="explicit", lexer=_Items, start="segment", keep_all_tokens=True)


KINDS: Final = {"MEANS": "USE", "MOTION": "USE", "FACT": "STATE"}
"""Heads that the grammar treats alike."""
STRUCTURE: Final = frozenset(
    (
        *("MEASURE", "USE", "STATE", "STEPS", "WHOLE"),
        *("COMMA", "AND", "OR", "BUT", "WITH", "BY", "DASH", "LPAR", "RPAR", "COLON"),
    )
)
"""Terminals of the grammar; every other item fills a slot."""


def derivations(shape: tuple[str, ...]) -> tuple[tuple[Unit, ...], ...] | None:
    """Every different grouping of a row of items; ``()`` if there is none, ``None`` if there are too many."""
    if len(shape) > LONGEST:
        return None
    short, runs = _runs(shape)
    found = _parsed(short)
    return None if found is None else tuple(tuple(_spread(unit, runs) for unit in units) for units in found)


def _runs(shape: tuple[str, ...]) -> tuple[tuple[str, ...], tuple[tuple[int, ...], ...]]:
    """The row with each run of slots as one terminal, and the items of each terminal."""
    short: list[str] = []
    runs: list[tuple[int, ...]] = []
    for at, category in enumerate(shape):
        name = KINDS.get(category, category)
        by_amount = name == "AMOUNT" and at > 0 and shape[at - 1] == "BY"
        name = name if name in STRUCTURE or by_amount else "SLOT"
        if name == "SLOT" and short and short[-1] == "SLOT":
            runs[-1] = (*runs[-1], at)
        else:
            short.append(name)
            runs.append((at,))
    return tuple(short), tuple(runs)


def _spread(unit: Unit, runs: tuple[tuple[int, ...], ...]) -> Unit:
    """A unit of terminals as one of items."""
    head = None if unit.head is None else runs[unit.head][0]
    slots, governors = (tuple(at for run in part for at in runs[run]) for part in (unit.slots, unit.governors))
    return Unit(head, slots, governors, unit.join, unit.level, unit.form)


@lru_cache(maxsize=8192)
def _parsed(shape: tuple[str, ...]) -> tuple[tuple[Unit, ...], ...] | None:
    try:
        forest = _parser().parse(shape)
    except UnexpectedInput:
        return ()
    if _count(forest) > MOST:
        return None
    trees = CollapseAmbiguities().transform(forest)
    return tuple(dict.fromkeys(tuple(_units(tree)) for tree in trees))


def _count(tree: Any) -> int:
    """How many derivations a forest holds; no more than just above the cap."""
    if not isinstance(tree, Tree):
        return 1
    counts = [_count(child) for child in tree.children]
    if tree.data == "_ambig":
        return min(sum(counts), MOST + 1)
    total = 1
    for count in counts:
        total = min(total * count, MOST + 1)
    return total


def _units(segment: Tree[Token]) -> Iterator[Unit]:
    level = 0
    for part in segment.children:
        if isinstance(part, Token):
            level += 1
            continue
        join = "start"
        for child in _branches(part):
            if child.data in JOINS:
                join = child.data
            else:
                yield from _statement(child, join, level)


JOINS: Final = frozenset(("comma", "and", "or", "but", "with", "by"))


def _statement(tree: Tree[Token], join: str, level: int) -> Iterator[Unit]:
    if tree.data == "governed":
        governors = tuple(_leaves(*_branches(tree, "slot")))
        yield from _members(_branches(tree)[-1], governors, join, level)
        return
    heads = [leaf for child in _branches(tree, "head", "heads") for leaf in _heads(child)]
    words = [_word(both) for row in _branches(tree, "heads") for both in _branches(row, "both")]
    slots = tuple(
        _leaves(*(child for child in tree.children if not _named(child, "head") and not _named(child, "heads")))
    )
    if not heads:
        yield Unit(None, slots, (), join, level, str(tree.data))
    for number, head in enumerate(heads):
        yield Unit(head, slots, (), join if number == 0 else f"shared-{words[number - 1]}", level, str(tree.data))


def _members(row: Tree[Token], governors: tuple[int, ...], join: str, level: int) -> Iterator[Unit]:
    head: int | None = None
    slots: list[int] = []
    word = "comma"
    for child in row.children:
        if _named(child, "slot"):
            slots += _leaves(child)
        elif _named(child, "both"):
            word = _word(child)
        else:
            if head is not None:
                yield Unit(head, tuple(slots), governors, join, level, "governed")
                join = f"governed-{word}"
            head, slots = next(iter(_heads(child))), []
    yield Unit(head, tuple(slots), governors, join, level, "governed")


def _word(both: Any) -> str:
    """The word that joins two heads: ``and``, ``or``, or a comma alone."""
    return str(both.children[-1].type).lower()


def _named(child: Any, name: str) -> bool:
    return isinstance(child, Tree) and child.data == name


def _branches(tree: Tree[Token], *names: str) -> list[Tree[Token]]:
    return [child for child in tree.children if isinstance(child, Tree) and (not names or child.data in names)]


def _heads(child: Any) -> Iterator[int]:
    if isinstance(child, Token):
        yield int(child)
    elif child.data != "both":
        for part in child.children:
            yield from _heads(part)


def _leaves(*children: Any) -> Iterator[int]:
    for child in children:
        if isinstance(child, Token):
            yield int(child)
        else:
            yield from _leaves(*child.children)
