"""Statements without a head word: a verb and teeth, or a rest of the statement before."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.statements.force import amount, basis, force, measured
from wellposed_converters.text.statements.relations import class_of
from wellposed_converters.text.statements.statement import Bag, Context, Read
from wellposed_converters.text.statements.where import Where, placed, where

MOVED: Final = frozenset(("mesial", "distal", "labial", "buccal", "lingual", "palatal"))


def headless(bag: Bag, context: Context) -> Read | None:
    """What a verb says of teeth; ``None`` when the statement leans on a head before it.

    :raises Refused: when the words make no one statement
    """
    verbs = bag.verbs()
    if bag.has("CLASS"):
        return class_of(bag, context, verbs)
    if verbs <= {"use", "fine"}:
        bag.items = [item for item in bag.every if item in bag.items or item.category == "VERB"]
        return None if verbs else _scope(bag, context)
    if "lock" in verbs and verbs <= {"lock", "keep", "leave", "accept", "hold"}:
        return _locked(bag, context)
    if len(verbs) > 1:
        raise Refused("two-verbs")
    verb = verbs.pop()
    reader = VERBS.get(verb)
    return reader(bag, context) if reader else _vague(bag, f"{verb}-what")


def _vague(bag: Bag, why: str) -> Read:
    bag.items.clear()
    return Read((), (Question("vague", why, bag.spans()),))


def _locked(bag: Bag, context: Context) -> Read:
    bag.take("BE", "YES")
    place = where(bag, context)
    strength = force(bag)
    if strength.stated():
        raise Refused("two-forces")
    if not (place.teeth or place.open):
        place = Where(teeth=_named_before(context), said=True)
    if not (place.teeth or place.open):
        raise Refused("which-teeth")
    clause = placed(Clause("movement", "forbid", bag.spans()), place, "teeth")
    bag.done()
    return Read((clause,), place.questions)


def _named_before(context: Context) -> tuple[int, ...]:
    """The teeth of a finding just before: "12 is ankylosed, do not move it"."""
    before = context.before
    if before is None or before.head is None or before.head.category != "STATE" or before.far:
        return ()
    return before.teeth


def _treated(bag: Bag, context: Context) -> Read:
    place = where(bag, context)
    strength = force(bag)
    if not (place.arch or place.teeth or place.open):
        raise Refused("which-arch")
    mode = "forbid" if strength.denied else "do"
    clause = placed(Clause("scope", mode, bag.spans(), only=strength.only), place, "teeth")
    bag.done()
    return Read((clause,), place.questions)


LONGEST_SHORT: Final = 4
"""Letters of an abbreviation: "U/L" alone may be a slip, "both arches" is not."""


def _scope(bag: Bag, context: Context) -> Read | None:
    """An arch with a yes or no, or a place alone, with nothing to lean on: "upper arch only", "lower arch: no"."""
    if (context.before is not None and not context.before.far) or context.lead or not bag.has("PLACE"):
        return None
    answered = bag.has("YES") or bag.has("NEG")
    in_words = all(len(item.words) > LONGEST_SHORT for item in bag.every if item.category == "PLACE")
    place = where(bag, context)
    strength = force(bag)
    whole = place.arch is not None and (answered or (place.arch == "both" and in_words))
    if strength.allowed or strength.wished or not (strength.only or whole):
        raise Refused("place-alone")
    mode = "forbid" if strength.denied else "do"
    clause = placed(Clause("scope", mode, bag.spans(), only=strength.only), place, "teeth")
    bag.done()
    return Read((clause,), place.questions)


def _kept(bag: Bag, _: Context) -> Read:
    return _ambiguous(bag, "keep-teeth")


def _held(bag: Bag, _: Context) -> Read:
    return _ambiguous(bag, "hold-teeth")


def _ambiguous(bag: Bag, asks: str) -> Read:
    """Keep, accept or hold with teeth has several meanings (R10, R11)."""
    if not bag.has("PLACE") and not bag.has("THERE"):
        raise Refused("keep-what")
    bag.items.clear()
    return Read((), (Question("meaning", asks, bag.spans()),))


def _closed(bag: Bag, context: Context) -> Read:
    """A space between two teeth, whatever its width: "close 11/21"."""
    purpose = bag.named("FOR")
    place = where(bag, context)
    value, by = amount(bag)
    if purpose or value is not None or by or force(bag).stated() or not place.contacts:
        raise Refused("room-without-amount")
    bag.done()
    return Read((placed(Clause("space", "do", bag.spans(), dir="close"), place, "contacts"),), place.questions)


def _left(bag: Bag, context: Context) -> Read:
    return _room(bag, context, "leave")


def _opened(bag: Bag, context: Context) -> Read:
    return _room(bag, context, "open")


def _room(bag: Bag, context: Context, way: str) -> Read:
    """So much room at a place: "leave 7 mm there for an implant", "open 6.5 mm at each site"."""
    purpose = bag.named("FOR")
    place = where(bag, context)
    value, by = amount(bag)
    if by or value is None or force(bag).stated():
        raise Refused("room-without-amount")
    if not (place.teeth or place.contacts or place.open):
        raise Refused("room-where")
    if basis(bag) not in (None, "each"):
        raise Refused("room-per-what")
    bag.done()
    clause = placed(Clause("space", "do", bag.spans(), dir=way, of=purpose), place, "teeth")
    return Read((measured(clause, value, "target"),), place.questions)


def _moved(bag: Bag, context: Context) -> Read:
    """A way and perhaps an amount: "move 12 distally by 1 mm"."""
    way = bag.named("DIR")
    place = where(bag, context)
    value, _ = amount(bag)
    per = basis(bag)
    strength = force(bag)
    if way not in MOVED or not (place.teeth or place.open) or per not in (None, "each"):
        raise Refused("move-what-where")
    if strength.allowed or strength.wished or strength.only or (strength.denied and value):
        raise Refused("two-forces")
    bag.done()
    clause = Clause("move", "forbid" if strength.denied else "do", bag.spans(), dir=way)
    return Read((measured(placed(clause, place, "teeth"), value, "change"),), place.questions)


VERBS: Final[Mapping[str, Callable[[Bag, Context], Read]]] = {
    "treat": _treated,
    "keep": _kept,
    "accept": _kept,
    "hold": _held,
    "leave": _left,
    "open": _opened,
    "close": _closed,
    "move": _moved,
}
"""What a verb says without a head; every other verb leaves open what it is said of."""
