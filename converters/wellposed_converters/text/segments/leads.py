"""What stands before a colon or in a heading, and governs what follows."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from wellposed_converters.text.grammar.cut import cut
from wellposed_converters.text.grammar.fold import Part
from wellposed_converters.text.grammar.items import HEADS
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.layout import Block
from wellposed_converters.text.segments.found import found
from wellposed_converters.text.statements.statement import Context, Said
from wellposed_converters.text.statements.where import lead_place

BARE: Final = frozenset(("PLACE", "PERMIT", "GRADE", "RELATION"))
"""What a lead before a colon may hold beside its head and still say nothing by itself."""
ENVELOPE: Final = frozenset(("keep", "envelope"))
"""Verbs of a lead that only announces what follows it: "keep the lower incisors within the present envelope: ..."."""


def bare(part: Part) -> bool:
    """Whether it is a head or a place that says nothing before its colon."""
    if part.head is not None and part.head.category in ("FACT", "STATE", "STEPS"):
        return False
    verbs = {item.name for item in part.items if item.category == "VERB"}
    if verbs == ENVELOPE and part.head is None and not part.asides:
        return part.categories() == {"VERB", "PLACE"}
    return not part.asides and part.categories() <= BARE | HEADS and part.form != "whole"


def lead_said(part: Part, context: Context) -> Said:
    """What the lead names. :raises Refused: when that is two places, or one that cannot be told."""
    places = [item for item in part.items if item.category == "PLACE"]
    if len(places) > 1 or (places and places[0].value.asks):
        raise Refused("two-places")
    place = lead_place(places[0].value, context) if places else None
    return Said(part.head, None, place, (), tuple(part.items))


def arch_alone(said: Said) -> str | None:
    """The arch a lead names, when it names nothing else."""
    place = said.place
    return place.arch if place is not None and not (place.teeth or place.contacts) else None


def lead_of(text: str, block: Block, context: Context) -> Context | None:
    """The context under the block's key or heading: "Lower:", "Overbite:", "12:"; unknown headings say nothing.

    ``None`` when the key names a place that cannot be told.
    """
    if block.key is None or block.start <= block.key[0] < block.end:
        return context
    items = cut(text, *block.key, found(text, block.key, context.numbering))
    kept = [item for item in items.items if item.category != "COLON"]
    part = Part(next((item for item in kept if item.category in HEADS), None), kept, "start", 0, "single")
    if items.unknown or not kept or not bare(part) or sum(item.category in HEADS for item in kept) > 1:
        return context
    if part.head is not None and part.head.name == "space":
        return context
    try:
        said = lead_said(part, context)
    except Refused:
        return None
    carried = said.place is not None and bool(said.place.teeth) and block.key != block.heading
    return context.with_(lead=(replace(said, far=carried),), arch=arch_alone(said))
