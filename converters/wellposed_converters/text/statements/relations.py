"""The sagittal class of molars, canines or incisors."""

from __future__ import annotations

from typing import Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.items import Item
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.statements.force import force
from wellposed_converters.text.statements.statement import Bag, Context, Read


def class_of(bag: Bag, context: Context, verbs: set[str]) -> Read:
    """Class I, II or III, of molars or canines where the words say so. :raises Refused: when more is said of it."""
    found = bag.named("CLASS")
    bag.take("BE")
    relation = bag.named("RELATION")
    of, side = _relation(bag.take("PLACE"))
    if relation and of - {relation}:
        raise Refused("class-of-teeth")
    if force(bag).stated() or len(verbs) > 1:
        raise Refused("force-of-a-class")
    bag.done()
    names: list[str | None] = [relation] if relation else [*sorted(of, reverse=True)] or [_relation_before(context)]
    clause = Clause("sagittal", "state", bag.spans(), side=side, relation=found)
    clauses = tuple(clause.with_(of=name) for name in names)
    if verbs & {"keep", "accept", "fine"}:
        return Read(tuple(one.with_(mode="keep") for one in clauses))
    unsure = names == [None] and found == "I" and context.section != "findings"
    if verbs or unsure:
        return Read((), (Question("meaning", "class-of-what", bag.spans()),))
    return _stated(bag, clauses, context)


def _stated(bag: Bag, clauses: tuple[Clause, ...], context: Context) -> Read:
    if context.section in (None, "findings", "history"):
        return Read(clauses)
    return Read((), (Question("finding_or_request", "now-or-wanted", bag.spans()),))


def _relation(places: list[Item]) -> tuple[frozenset[str], str | None]:
    """Beside a class, words as in "molars and canines on both sides" name the relations, not the teeth."""
    of, sides = frozenset[str](), set[str]()
    for item in places:
        of |= _of_words(item.words)
        sides |= {side} if (side := _side_words(item.words)) else set()
    if len(sides) > 1:
        raise Refused("two-sides")
    return of, next(iter(sides), None)


BOTH_SIDES: Final = ("bilateral", "right and left", "left and right")


def _side_words(words: str) -> str | None:
    low = words.casefold()
    if any(form in low for form in BOTH_SIDES):
        return "both"
    sides = [side for side in ("both", "right", "left") if side in low.split()]
    if len(sides) > 1:
        raise Refused("two-sides")
    return sides[0] if sides else None


RELATIONS: Final = {"molar": "molar", "canine": "canine", "incisor": "incisor", "cuspid": "canine"}


def _of_words(words: str) -> frozenset[str]:
    low = words.casefold().replace(",", " ").replace("/", " ").replace("&", " ").split()
    if any(char.isdigit() for char in words):
        raise Refused("class-of-teeth")
    return frozenset(relation for word, relation in RELATIONS.items() if word in low or f"{word}s" in low)


def _relation_before(context: Context) -> str | None:
    """The relation of the class before: "Class II canines on the right, Class I on the left"."""
    before = context.before
    if before is None or before.far or not before.clauses or before.clauses[-1].kind != "sagittal":
        return None
    return before.clauses[-1].of
