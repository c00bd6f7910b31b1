"""Words that are asked about, unless what follows settles them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from itertools import takewhile
from typing import Any, Final

from wellposed_converters.text.grammar.items import Item
from wellposed_converters.text.lexicon import head


def settled(items: Sequence[Item], at: int) -> Item:
    """The item ``at``, as the head it is where what follows leaves it no other reading."""
    item = items[at]
    if item.category != "ASKED":
        return item
    for member, follows in SETTLES.items():
        name = item.value.facts.get(member)
        if name is not None and follows(items[at + 1 :]):
            entry = head(name)
            return replace(item, category=str(entry.facts["sort"]).upper(), name=name, value=entry)
    return item


def _counted(after: Sequence[Item]) -> bool:
    """Whether an amount per contact or per surface follows in the same statement."""
    rest = takewhile(lambda item: item.category not in ("COMMA", "COLON"), after)
    return any(item.category == "BASIS" and item.value.measure in ("per_contact", "per_surface") for item in rest)


def _contact(after: Sequence[Item]) -> bool:
    return _place(after, lambda meaning: bool(meaning.contacts))


def _palatal(after: Sequence[Item]) -> bool:
    return bool(after) and after[0].name == "palatal"


def _arch(after: Sequence[Item]) -> bool:
    """An arch alone, sure."""
    whole = _place(after, lambda meaning: meaning.arch and not meaning.teeth and not meaning.contacts)
    return whole and not after[0].value.asks


def _place(after: Sequence[Item], test: Callable[[Any], Any]) -> bool:
    """Whether a place follows directly, and each of its meanings is such a one."""
    meanings = after[0].value.meanings if after and after[0].category == "PLACE" else ()
    return bool(meanings) and all(test(meaning) for meaning in meanings)


SETTLES: Final[Mapping[str, Callable[[Sequence[Item]], bool]]] = {
    "with_a_basis": _counted,
    "before_a_contact": _contact,
    "before_palatal": _palatal,
    "before_an_arch": _arch,
}
"""Members of an entry of ``asked.toml``: the head it is, and when."""
