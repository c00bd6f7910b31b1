"""Statements without a head: what they lean on, and what they take over from it."""

from __future__ import annotations

from typing import Final

from wellposed_converters.text.clause import Question
from wellposed_converters.text.grammar.fold import Part
from wellposed_converters.text.grammar.items import Item
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.segments.readers import READERS
from wellposed_converters.text.statements.headless import headless
from wellposed_converters.text.statements.staging import interval
from wellposed_converters.text.statements.statement import Bag, Context, Read, Said

OWN: Final = ("lock", "treat", "hold", "move", "leave", "open", "close", "keep", "accept")
ALWAYS_OWN: Final = ("lock", "treat", "hold", "move", "change")
"""Verbs that say something of teeth by themselves, whatever stands before them."""


def headless_rest(bag: Bag, part: Part, context: Context) -> Read:
    """A statement without a head: staging, a verb with teeth, or one that leans on a head before it."""
    head, said = _leans_on(context, bag)
    about = interval(bag)
    if about is not None:
        return about
    if _doubtful(part, context):
        return Read((), (Question("scope", "same-or-not", bag.spans()),))
    own = headless(bag, context) if _by_itself(bag, head) else None
    if own is not None:
        return own
    if head is None:
        raise Refused("no-head")
    bag.items = list(bag.every)
    bag.head = head
    _lead_items(bag, context, head)
    here = _inherits(bag, said, context)
    return _same_way(READERS[head.category](bag, here), said, bag)


def _by_itself(bag: Bag, head: Item | None) -> bool:
    """Whether the words say something without the head before them."""
    if head is None or bag.has("CLASS"):
        return True
    return bag.has("VERB", *(ALWAYS_OWN if head.category == "MEASURE" else OWN))


def _same_way(read: Read, said: Said | None, bag: Bag) -> Read:
    """A rest that does not repeat the direction: is it the same?"""
    if said is None or said.head is not bag.head or len(read.clauses) != 1 or not said.clauses:
        return read
    before, clause = said.clauses[-1], read.clauses[0]
    if before.mode != "do" or clause.mode != "do" or before.dir == clause.dir or clause.dir is not None:
        return read
    asked = Question("meaning", "same-direction", bag.spans(), concerns=(0,))
    return Read((clause.with_(pending=(*clause.pending, "dir")),), (*read.questions, asked), read.said)


def _doubtful(part: Part, context: Context) -> bool:
    """The same again, or the contrary: "16 26 if possible" after an order."""
    before = context.before
    return before is not None and before.head is None and part.categories() == {"PLACE", "PREFER"}


def _lead_items(bag: Bag, context: Context, head: Item) -> None:
    """Permission words that stand in the lead hold for what follows."""
    for said in context.lead:
        bag.items += [item for item in said.items if item.category == "PERMIT" and said.head is head]


def _leans_on(context: Context, bag: Bag) -> tuple[Item | None, Said | None]:
    """The head of the statement before, with that statement; or the head of the lead, whichever is nearer."""
    before = context.before
    led = next((said.head for said in reversed(context.lead) if said.head is not None), None)
    if before is None or before.head is None:
        return led, None
    later = led is None or led.start < before.head.start
    if not before.far or (later and _points_far(bag, before)):
        return before.head, before
    return led, None


def _points_far(bag: Bag, before: Said) -> bool:
    """Words that reach back over a full stop: "none on 12", "reduce to 3 mm"."""
    if before.head is None:
        return False
    if before.head.category == "MEANS":
        return bag.has("NEG", "none")
    measured = before.head.category in ("MEASURE", "STATE") and bag.has("VERB", "reduce", "increase")
    return measured and bag.has("TO") and bag.has("AMOUNT")


def _inherits(bag: Bag, said: Said | None, context: Context) -> Context:
    """What a rest without a place or a force of its own takes over; a prohibition is never taken over in silence."""
    if said is None:
        return context
    if said.mode in ("forbid", "keep") and not (bag.has("NEG") or bag.has("AMOUNT") or bag.has("PERMIT")):
        raise Refused("force-not-said")
    if said.far:
        return context
    waits = bool(said.clauses) and {"teeth", "contacts"} & set(said.clauses[-1].pending)
    if waits and not bag.has("PLACE"):
        raise Refused("place-waits")
    if said.place is not None and not bag.has("PLACE") and not bag.has("NEG"):
        return context.with_(lead=(*context.lead, Said(None, None, said.place)))
    return context
