"""Statements without a head word: a verb and teeth, or a rest of the statement before."""

from __future__ import annotations

from typing import Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.items import Item
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.statements.force import Force, amount, basis, force, measured
from wellposed_converters.text.statements.statement import Bag, Context, Read
from wellposed_converters.text.statements.where import Where, placed, where

MOVED: Final = frozenset(("mesial", "distal", "labial", "buccal", "lingual", "palatal"))


def headless(bag: Bag, context: Context) -> Read | None:
    """What a verb says of teeth; ``None`` when the statement leans on a head before it."""
    verbs = {item.name for item in bag.take("VERB")}
    if bag.has("CLASS"):
        return _class(bag, context, verbs)
    if not verbs or verbs <= {"use", "fine"}:
        bag.items = [item for item in bag.every if item in bag.items or item.category == "VERB"]
        return _scope(bag, context) if not verbs else None
    if "lock" in verbs and verbs <= {"lock", "keep", "leave", "accept", "hold"}:
        return _locked(bag, context)
    if len(verbs) > 1:
        raise Refused("two-verbs")
    verb = next(iter(verbs))
    if verb == "treat":
        return _treated(bag, context)
    if verb in ("keep", "accept", "hold"):
        return _held(bag, context, verb)
    if verb in ("leave", "open", "close"):
        return _room(bag, context, verb)
    if verb == "level":
        return _vague(bag, "level-what")
    if verb == "move":
        return _moved(bag, context)
    return _vague(bag, f"{verb}-what")


def _vague(bag: Bag, why: str) -> Read:
    bag.items.clear()
    return Read((), (Question("vague", why, bag.spans()),))


def _locked(bag: Bag, context: Context) -> Read:
    bag.take("BE", "YES")
    place = where(bag, context)
    strength = force(bag)
    if strength.denied or strength.allowed or strength.wished or strength.only:
        raise Refused("two-forces")
    before = context.before
    named = before is not None and before.head is not None and before.head.category == "STATE" and not before.far
    if not (place.teeth or place.open) and named and before is not None and before.place is not None:
        place = Where(teeth=before.place.teeth, said=True)
    if not (place.teeth or place.open):
        raise Refused("which-teeth")
    clause = placed(Clause("movement", "forbid", bag.spans()), place, "teeth")
    bag.done()
    return Read((clause,), place.questions)


def _treated(bag: Bag, context: Context) -> Read:
    place = where(bag, context)
    strength = force(bag)
    if not (place.arch or place.teeth or place.open):
        raise Refused("which-arch")
    clause = placed(
        Clause("scope", "forbid" if strength.denied else "do", bag.spans(), only=strength.only), place, "teeth"
    )
    bag.done()
    return Read((clause,), place.questions)


def _scope(bag: Bag, context: Context) -> Read | None:
    """ "Upper arch only", "lower arch: no": an arch with a yes or no, or a place alone, with nothing to lean on."""
    if (context.before is not None and not context.before.far) or context.lead or not bag.has("PLACE"):
        return None
    answered = bag.has("YES") or bag.has("NEG")
    place = where(bag, context)
    strength = force(bag)
    whole = place.arch is not None and (answered or place.arch == "both")
    if strength.allowed or strength.wished or not (strength.only or whole):
        raise Refused("place-alone")
    mode = "forbid" if strength.denied else "do"
    clause = placed(Clause("scope", mode, bag.spans(), only=strength.only), place, "teeth")
    bag.done()
    return Read((clause,), place.questions)


def _held(bag: Bag, context: Context, verb: str) -> Read:
    """Keep, accept or hold with teeth has several meanings (R10, R11)."""
    if not bag.has("PLACE") and not bag.has("THERE"):
        raise Refused("keep-what")
    bag.items.clear()
    return Read((), (Question("meaning", f"{'hold' if verb == 'hold' else 'keep'}-teeth", bag.spans()),))


def _room(bag: Bag, context: Context, verb: str) -> Read:
    """ "Leave 7 mm there for an implant", "open 6.5 mm at each site"."""
    purpose = bag.one("FOR")
    place = where(bag, context)
    value, by = amount(bag)
    strength = force(bag)
    if verb == "close" and value is None and place.contacts and not (by or _forced(strength)):
        bag.done()
        return Read((placed(Clause("space", "do", bag.spans(), dir="close"), place, "contacts"),), place.questions)
    if (
        by
        or strength.denied
        or strength.allowed
        or strength.wished
        or strength.only
        or value is None
        or verb == "close"
    ):
        raise Refused("room-without-amount")
    if not (place.teeth or place.contacts or place.open):
        raise Refused("room-where")
    bag.take("EACH")
    bag.take("BASIS")
    clause = Clause("space", "do", bag.spans(), dir=verb, of=purpose.name if purpose else None)
    clause = measured(placed(clause, place, "teeth"), value, "target")
    bag.done()
    return Read((clause,), place.questions)


def _forced(strength: Force) -> bool:
    return strength.denied or strength.allowed or strength.wished or strength.only


def _moved(bag: Bag, context: Context) -> Read:
    """ "Move 12 distally by 1 mm"."""
    way = bag.one("DIR")
    place = where(bag, context)
    value, _ = amount(bag)
    per = basis(bag)
    strength = force(bag)
    if way is None or way.name not in MOVED or not (place.teeth or place.open) or per not in (None, "each"):
        raise Refused("move-what-where")
    mode = "forbid" if strength.denied else "do"
    if strength.allowed or strength.wished or strength.only or (strength.denied and value):
        raise Refused("two-forces")
    clause = measured(placed(Clause("move", mode, bag.spans(), dir=way.name), place, "teeth"), value, "change")
    bag.done()
    return Read((clause,), place.questions)


def _class(bag: Bag, context: Context, verbs: set[str]) -> Read:
    """Class I, II or III, of molars or canines where the words say so."""
    found = bag.one("CLASS")
    bag.take("BE")
    relation = bag.one("RELATION")
    places: list[Item] = bag.take("PLACE")
    of, side = _relation(places)
    strength = force(bag)
    if strength.denied or strength.allowed or strength.wished or strength.only or len(verbs) > 1:
        raise Refused("force-of-a-class")
    verb = next(iter(verbs), None)
    name = (relation.name if relation else of) or _relation_before(context)
    clause = Clause("sagittal", "state", bag.spans(), of=name, side=side, relation=found.name if found else None)
    bag.done()
    if verb is None and name is None and clause.relation == "I" and context.section != "findings":
        return Read((), (Question("meaning", "class-of-what", bag.spans()),))
    if verb is None:
        return _stated(bag, clause, context)
    if verb in ("keep", "accept", "fine"):
        return Read((clause.with_(mode="keep"),))
    return Read((), (Question("meaning", "class-of-what", bag.spans()),))


def _stated(bag: Bag, clause: Clause, context: Context) -> Read:
    if context.section in (None, "findings", "history"):
        return Read((clause,))
    return Read((), (Question("finding_or_request", "now-or-wanted", bag.spans()),))


def _relation(places: list[Item]) -> tuple[str | None, str | None]:
    """ "molars on both sides" beside a class names the relation, not the teeth."""
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
