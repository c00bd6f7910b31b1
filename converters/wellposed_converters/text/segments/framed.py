"""A segment without the signs and words that only frame it, read or asked about."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from wellposed_converters.text.clause import Span
from wellposed_converters.text.grammar.items import Cut, Item
from wellposed_converters.text.segments.pieces import Segment, not_understood
from wellposed_converters.text.segments.segment import islands, read_segment
from wellposed_converters.text.statements.statement import Context

MOST_STRANGE: Final = 3
"""Unknown words above which a segment is not looked at by parts."""
POLITE: Final = ("could you", "can you", "would you", "please could you", "please can you")


def trimmed(items: Cut) -> Cut:
    """Signs and joining words at the ends join nothing: "New: ...", "..., please"."""
    kept = list(items.items)
    loose: list[Item] = []
    while kept and kept[0].category in ("COLON", "COMMA", "AND", "BUT", "DASH"):
        loose.append(kept.pop(0))
    while kept and kept[-1].category in ("COMMA", "DASH", "AND"):
        loose.append(kept.pop())
    words = [(item.start, item.end) for item in loose if item.words.isalpha()]
    return replace(items, items=tuple(kept), carried=(*items.carried, *words))


def polite(text: str, items: Cut) -> Cut:
    """The segment as an order if put as "could you send ...?"; any other question mark is a doubt of the writer."""
    if len(items.unknown) != 1 or text[slice(*items.unknown[0])] != "?":
        return items
    first = min((span[0] for span in items.carried), default=-1)
    return replace(items, unknown=()) if first >= 0 and text[first:].casefold().startswith(POLITE) else items


def read_or_ask(items: Cut, context: Context, span: Span) -> Segment:
    """A segment with a word that nobody knows is not read at all."""
    if not items.unknown:
        return read_segment(items.items, context, span)
    if len(items.unknown) > MOST_STRANGE:
        return not_understood(span, "unknown-words")
    strange = [Item("UNKNOWN", "", start, end) for start, end in items.unknown]
    return islands(sorted((*items.items, *strange), key=lambda item: item.start), context, span)
