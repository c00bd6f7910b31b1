"""What a place means where it stands: in the arch that governs, with the words around it, as teeth or as contacts."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise
from typing import Final

from wellposed_converters.text.clause import Contact
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.places import Meaning, in_mouth_order, inner_contacts, neighbours, with_arch
from wellposed_converters.text.statements.statement import Context

PAIR: Final = 2


def united(meanings: list[Meaning]) -> Meaning:
    """Places of one list. :raises Refused: when one is open or names no teeth."""
    if any(one.needs or not one.teeth for one in meanings):
        raise Refused("two-places")
    first = meanings[0]
    return replace(
        first,
        teeth=tuple(in_mouth_order({tooth for one in meanings for tooth in one.teeth})),
        contacts=tuple(pair for one in meanings for pair in one.contacts),
        runs=tuple(run for one in meanings for run in one.runs),
        inferred=tuple(dict.fromkeys(word for one in meanings for word in one.inferred)),
    )


def framed(meaning: Meaning, frame: list[Meaning]) -> Meaning:
    """A reference with the arch or side words that stand elsewhere in the statement."""
    for words in frame:
        if words.arch and "arch" in meaning.needs:
            meaning = with_arch(meaning, words.arch)
        elif words.arch and meaning.teeth and not inside(meaning.teeth, words.arch):
            raise Refused("arch-and-teeth-differ")
        elif words.arch and not meaning.teeth and not meaning.contacts:
            meaning = replace(meaning, arch=_same(meaning.arch, words.arch))
        if words.side:
            meaning = replace(meaning, side=_same(meaning.side, words.side))
    return meaning


def _same(one: str | None, other: str) -> str:
    if one not in (None, other):
        raise Refused("two-sides")
    return other


def inside(teeth: Iterable[int], arch: str) -> bool:
    """Whether all teeth are of the arch."""
    upper = [tooth // 10 in (1, 2, 5, 6) for tooth in teeth]
    return arch == "both" or all(upper) if arch != "lower" else not any(upper)


def in_arch(meaning: Meaning, context: Context) -> Meaning:
    """The meaning in the arch that governs; without one, teeth that are whole as they stand need none."""
    if "arch" not in meaning.needs:
        return meaning
    if context.arch is not None:
        return with_arch(meaning, context.arch)
    left = tuple(need for need in meaning.needs if need != "arch")
    return replace(meaning, needs=left) if meaning.teeth else meaning


def contacts_of(meaning: Meaning, wants: str) -> tuple[Contact, ...]:
    """The contacts of a place, written or between its teeth; ``wants`` as for ``where``."""
    if wants == "teeth":
        return meaning.contacts
    between = meaning.contacts or inner_contacts(meaning)
    row = in_mouth_order(meaning.teeth)
    if wants == "pair" and not between and len(row) >= PAIR and all(neighbours(*pair) for pair in pairwise(row)):
        return tuple(pairwise(row))
    return between


def against_lead(meaning: Meaning, context: Context) -> bool:
    """Whether the words before the colon and the tooth differ: "lower: 14", "right side: 23"."""
    teeth = meaning.named()
    sides = {
        said.place.side for said in context.lead if said.place is not None and said.place.side in ("left", "right")
    }
    left = {tooth // 10 in (2, 3, 6, 7) for tooth in teeth}
    arch = context.arch in ("upper", "lower") and not inside(teeth, str(context.arch))
    return bool(teeth) and (arch or any(left != {side == "left"} for side in sides))
