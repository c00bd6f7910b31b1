"""One statement on its way to clauses: its items, taken one by one, and what came before it.

A reader takes the slots it understands out of the bag. What is left at the end was not understood, and then the
whole statement is refused: no piece of a half-understood statement becomes a clause.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from wellposed_converters.text.clause import Clause, Question, Span
from wellposed_converters.text.grammar.items import Item
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.places import Meaning, Numbering


@dataclass(frozen=True)
class Said:
    """What a later statement may lean on: the head, the force and the place of one before it."""

    head: Item | None
    mode: str | None
    place: Meaning | None
    clauses: tuple[Clause, ...] = ()
    items: tuple[Item, ...] = ()
    far: bool = False

    @property
    def teeth(self) -> tuple[int, ...]:
        """The teeth of its place."""
        return self.place.teeth if self.place is not None else ()


@dataclass(frozen=True)
class Context:
    """Where a statement stands."""

    numbering: Numbering
    section: str | None = None
    before: Said | None = None
    lead: tuple[Said, ...] = ()
    arch: str | None = None
    stated: frozenset[str] = frozenset()
    earlier: tuple[Clause, ...] = ()

    def with_(self, **changes: Any) -> Context:
        """The same context with other members."""
        return replace(self, **changes)


@dataclass(frozen=True)
class Read:
    """What one statement says."""

    clauses: tuple[Clause, ...] = ()
    questions: tuple[Question, ...] = ()
    said: Said | None = None
    again: tuple[Span, ...] = ()
    """Words that only say the first clause again."""


@dataclass
class Bag:
    """The items of a statement that nobody has taken yet, in the order of the text."""

    items: list[Item]
    head: Item | None
    join: str = "start"
    every: tuple[Item, ...] = field(default=())
    union: bool = False

    def facts(self) -> Mapping[str, Any]:
        """What the data say of the head."""
        facts: Mapping[str, Any] = self.head.value.facts if self.head is not None else {}
        return facts

    def verbs(self) -> set[str]:
        """The names of all verbs, taken out."""
        return {item.name for item in self.take("VERB")}

    def named(self, *categories: str) -> str | None:
        """The name of the one item of these categories, taken out. :raises Refused: when there are two."""
        item = self.one(*categories)
        return item.name if item else None

    def take(self, *categories: str, name: str | None = None) -> list[Item]:
        """All items of these categories, taken out."""
        found = [item for item in self.items if item.category in categories and name in (None, item.name)]
        self.items = [item for item in self.items if item not in found]
        return found

    def has(self, category: str, *names: str) -> bool:
        """Whether such an item is still there."""
        return any(item.category == category and (not names or item.name in names) for item in self.items)

    def one(self, *categories: str) -> Item | None:
        """The one item of these categories, taken out. :raises Refused: when there are two different ones."""
        found = self.take(*categories)
        if len({(item.category, item.name, item.value) for item in found}) > 1:
            raise Refused("two-of-a-kind")
        return found[0] if found else None

    def spans(self) -> tuple[Span, ...]:
        """Where the statement stands."""
        return spans(self.every)

    def done(self) -> None:
        """:raises Refused: when something was not taken."""
        if self.items:
            raise Refused("left-over")


def spans(items: Sequence[Item]) -> tuple[Span, ...]:
    """The places of items, in order, without repeats."""
    return tuple(sorted({(item.start, item.end) for item in items}))
