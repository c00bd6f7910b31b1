"""The units of one grouping made into bags: parentheses taken apart, rests joined to the statement they belong to."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any, Final

from wellposed_converters.text.grammar.items import Item
from wellposed_converters.text.grammar.parse import Unit
from wellposed_converters.text.grammar.refused import Refused

GOVERNING: Final = frozenset(("NEG", "VERB", "PERMIT", "PREFER", "ONLY", "YES"))
SUBJECT: Final = frozenset(("PLACE", "BE", "NEG"))
"""What governs a row of states: the teeth they are the states of."""
FILLED_ONCE: Final = frozenset(("PLACE", "AMOUNT", "BASIS", "FROMTO", "DIR", "NEG", "PERMIT", "VERB", "REASON"))
FILLING: Final = frozenset(("AMOUNT", "BASIS", "PLACE", "DIR", "REF", "FOR", "COND", "WHEN", "ORDINAL", "TO", "REASON"))
SAYING: Final = frozenset(("NEG", "PERMIT", "VERB", "CLASS", "YES"))


@dataclass
class Part:
    """One statement: its head, its items in the order of the text, and the asides in parentheses."""

    head: Item | None
    items: list[Item]
    join: str
    level: int
    form: str
    asides: list[list[Item]] = field(default_factory=list)
    after: list[Item | None] = field(default_factory=list)
    union: bool = False

    def categories(self) -> frozenset[str]:
        """What its items are."""
        return frozenset(item.category for item in self.items)


def parts(units: Sequence[Unit], items: Sequence[Item]) -> list[Part]:
    """The statements of a grouping; rests that only go on are joined. :raises Refused: when a rest is no means."""
    made: list[Part] = []
    for unit in units:
        part = _part(unit, items)
        if part.join == "by" and part.head is None:
            raise Refused("by-what")
        join = next((join for fits, join in JOINED if made and fits(made[-1], part)), None)
        if join is None:
            made.append(part)
        else:
            join(made[-1], part)
    return made


def _part(unit: Unit, items: Sequence[Item]) -> Part:
    head = items[unit.head] if unit.head is not None else None
    governors = [items[at] for at in unit.governors]
    if unit.join.startswith("governed"):
        state = head is not None and head.category in ("STATE", "FACT")
        governors = [item for item in governors if item.category in (SUBJECT if state else GOVERNING)]
    own = sorted(governors + [items[at] for at in unit.slots] + ([head] if head else []), key=lambda item: item.start)
    part = Part(head, [], unit.join, unit.level, unit.form)
    _asides(part, own)
    _own_amount(part)
    return part


def _own_amount(part: Part) -> None:
    """An amount in parentheses after a finding is the finding's own: "mild crowding (1 mm)"."""
    lone = [number for number, aside in enumerate(part.asides) if [item.category for item in aside] == ["AMOUNT"]]
    finding = part.head is None or part.head.category == "STATE"
    if len(lone) == 1 and finding and "AMOUNT" not in part.categories():
        part.items += part.asides.pop(lone[0])
        part.after.pop(lone[0])


def _asides(part: Part, own: list[Item]) -> None:
    """What stands in parentheses is said of the item before them."""
    inside: list[Item] | None = None
    for item in own:
        if item.category == "LPAR":
            inside = []
            part.after.append(part.items[-1] if part.items else None)
        elif item.category == "RPAR" and inside is not None:
            part.asides.append(inside)
            inside = None
        elif inside is not None:
            inside.append(item)
        else:
            part.items.append(item)


def _goes_on(before: Part, part: Part) -> bool:
    """Whether a rest only fills slots the statement before it has left open, or adds places to its last one."""
    if part.head is not None or before.level != part.level or part.form == "whole":
        return False
    adds = (_more_places, _linked, _kept, _frame, _second_step, _fills)
    return any(test(before, part) for test in adds)


def _more_places(before: Part, part: Part) -> bool:
    """More places for the last one: "IPR 13 to 23, 33 to 43"."""
    joined = part.join in ("comma", "and", "or") and "AMOUNT" not in before.categories()
    return joined and _only_places(part) and _ends_with_place(before)


def _fills(before: Part, part: Part) -> bool:
    """Slots alone, none of them filled already, none that says something by itself."""
    here, there = part.categories(), before.categories()
    narrowed = {"ONLY"} if "PLACE" in there or "PLACE" not in here else set()
    if here & (SAYING | narrowed):
        return False
    return bool(here & FILLING) and not here & there & FILLED_ONCE


def _shape(before: Part, part: Part) -> bool:
    """The shape of what was just named: "attachments on 12-22, horizontal rectangles"."""
    alone = part.items == [part.head] and not part.asides and part.join == "comma" and part.form == "single"
    named, shaped = _means(before), _means(part)
    if not alone or named is None or shaped is None:
        return False
    return bool(named["kind"] == shaped["kind"] and not named.get("of") and shaped.get("of"))


def _means(part: Part) -> Mapping[str, Any] | None:
    """What the data say of the means at the head."""
    if part.head is None or part.head.category != "MEANS":
        return None
    facts: Mapping[str, Any] = part.head.value.facts
    return facts


def _take_shape(before: Part, part: Part) -> None:
    """The head that says the shape is the head; the other one is a word that adds nothing."""
    before.items = [replace(item, category="YES") if item is before.head else item for item in before.items]
    before.head = part.head
    before.items += part.items


def _named_place(before: Part, part: Part) -> bool:
    """A tooth named by its state belongs to the list before it: "on 11 or on the crown 46"."""
    alone = (
        part.head is not None
        and part.head.category == "STATE"
        and sorted(item.category for item in part.items) == ["PLACE", "STATE"]
    )
    return alone and not part.asides and part.join in ("or", "and", "comma") and _ends_with_place(before)


def _join_named(before: Part, part: Part) -> None:
    place = next(item for item in part.items if item.category == "PLACE")
    before.items.append(place)
    before.union = True
    before.asides.append([item for item in part.items if item.category == "STATE"])
    before.after.append(place)


def _answers(before: Part, part: Part) -> bool:
    """What stands after the colon answers what stands before it: "treat upper: yes"."""
    said = part.head is None and not part.asides and part.categories() <= {"YES", "NEG"}
    arch = before.head is None and _frame(before, before)
    return said and part.level == before.level + 1 and ("VERB" in before.categories() or before.form == "whole" or arch)


def _kept(before: Part, part: Part) -> bool:
    """A verb alone keeps what was just said: "overjet: 3 mm now, fine", "upper 1 mm right, leave"."""
    verbs = {item.name for item in part.items if item.category == "VERB"}
    alone = part.categories() <= {"VERB", "BE"} and verbs <= {"keep", "accept", "fine", "leave"} and bool(verbs)
    return alone and before.form != "whole" and "VERB" not in before.categories()


def _second_step(before: Part, part: Part) -> bool:
    """A second amount a step: "per step 0.2 mm and 2 degrees"."""
    steps = any(item.category == "BASIS" and item.value.measure == "step" for item in before.items)
    return steps and before.head is None and part.categories() == {"AMOUNT"}


def _linked(before: Part, part: Part) -> bool:
    """More elastics: "elastics from 13 to 46 and from 23 to 36"."""
    means = _means(before)
    elastic = means is not None and means["kind"] == "elastic"
    return elastic and "PLACE" in part.categories() and part.categories() <= {"FROM", "TO", "PLACE"}


def _frame(_: Part, part: Part) -> bool:
    """Arch words by themselves: "social six only, upper and lower"."""
    places = [item.value for item in part.items] if _only_places(part) else []
    return bool(places) and all(not one.teeth and not one.contacts for place in places for one in place.meanings)


def _only_places(part: Part) -> bool:
    return bool(part.items) and part.categories() == {"PLACE"}


def _ends_with_place(part: Part) -> bool:
    return bool(part.items) and part.items[-1].category == "PLACE"


def _join(before: Part, part: Part) -> None:
    if _only_places(part) and "PLACE" in before.categories():
        before.union = True
    before.items += part.items
    before.asides += part.asides
    before.after += part.after


JOINED: Final[tuple[tuple[Callable[[Part, Part], bool], Callable[[Part, Part], None]], ...]] = (
    (_goes_on, _join),
    (_answers, _join),
    (_shape, _take_shape),
    (_named_place, _join_named),
)
"""When a rest belongs to the statement before it, and how it is joined; the first that fits."""
