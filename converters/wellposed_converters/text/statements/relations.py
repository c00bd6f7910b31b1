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
    if force(bag).stated() or len(verbs) > 1:
        raise Refused("force-of-a-class")
    bag.done()
    name = (relation or of) or _relation_before(context)
    clause = Clause("sagittal", "state", bag.spans(), of=name, side=side, relation=found)
    if verbs & {"keep", "accept", "fine"}:
        return Read((clause.with_(mode="keep"),))
    unsure = name is None and found == "I" and context.section != "findings"
    if verbs or unsure:
        return Read((), (Question("meaning", "class-of-what", bag.spans()),))
    return _stated(bag, clause, context)


def _stated(bag: Bag, clause: Clause, context: Context) -> Read:
    if context.section in (None, "findings", "history"):
        return Read((clause,))
    return Read((), (Question("finding_or_request", "now-or-wanted", bag.spans()),))


def _relation(places: list[Item]) -> tuple[str | None, str | None]:
    """Beside a class, words as in "molars on both sides" name the relation, not the teeth."""
    of = side = None
    for item in places:
        of = _of_words(item.words) or of
        side = _side_words(item.words) or side
    return of, side


def _side_words(words: str) -> str | None:
    low = words.casefold()
    sides = [side for side in ("both", "right", "left") if side in low.split()]
    if len(sides) > 1:
        raise Refused("two-sides")
    return sides[0] if sides else None


RELATIONS: Final = {"molar": "molar", "canine": "canine", "incisor": "incisor", "cuspid": "canine"}


def _of_words(words: str) -> str | None:
    low = words.casefold().split()
    found = {relation for word, relation in RELATIONS.items() if word in low or f"{word}s" in low}
    if len(found) > 1 or any(char.isdigit() for char in words):
        raise Refused("class-of-teeth")
    return next(iter(found), None)


def _relation_before(context: Context) -> str | None:
    """The relation of the class before: "Class II canines on the right, Class I on the left"."""
    before = context.before
    if before is None or before.far or not before.clauses or before.clauses[-1].kind != "sagittal":
        return None
    return before.clauses[-1].of
