"""Where a statement applies: its tooth references, completed from what stands around them, or asked about."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final

from wellposed_converters.text.clause import Clause, Contact, Question
from wellposed_converters.text.places import (
    Meaning,
    Place,
    in_mouth_order,
    inner_contacts,
    neighbours,
    resolve,
    with_arch,
)
from wellposed_converters.text.statements.statement import Bag, Context, Refused


@dataclass(frozen=True)
class Where:
    """A place in the mouth; ``questions`` say what of it is open, ``pending`` which member waits for the answer."""

    teeth: tuple[int, ...] = ()
    contacts: tuple[Contact, ...] = ()
    arch: str | None = None
    side: str | None = None
    open: bool = False
    inferred: tuple[str, ...] = ()
    questions: tuple[Question, ...] = ()
    meaning: Meaning | None = None
    said: bool = False


def where(bag: Bag, context: Context, *, contacts: bool | str = False) -> Where:
    """The place the statement names; the context's where it names none but points back to one."""
    denied = any(item.category == "NEG" or item.name in ("lock", "avoid") for item in bag.every)
    places = bag.take("PLACE")
    back = bag.take("THERE")
    plural = [item for item in places if _plural_of_one(item.words, item.value, context)]
    if plural:
        return Where(open=True, questions=tuple(_asks(item.value, "teeth", "ul-mirror") for item in plural), said=True)
    either = [item.value for item in places if item.value.alternatives]
    if either and not denied:
        return Where(
            open=True, questions=tuple(_asks(place, "teeth", "one-or-the-other") for place in either), said=True
        )
    if places:
        return _merged([_place(item.value, context) for item in places], contacts, context, union=bag.union)
    if back:
        return _back(context, contacts, back[0].name)
    lead = next((said.place for said in reversed(context.lead) if said.place), None)
    return _of(lead, contacts, context, said=False) if lead else Where()


PAIR: Final = 2
MEANT: Final = {"it": 1, "pair": 2}
"""How many teeth a word that points back must find."""


PLURAL: Final = re.compile(
    r"\b(?:incisors|centrals|laterals|canines|cuspids|premolars|bicuspids|molars|[1-8]s|[c-e]s)\b", re.IGNORECASE
)


def _plural_of_one(words: str, place: Place, context: Context) -> bool:
    """ "UL canines": a plural that finds one tooth was meant otherwise."""
    meanings = resolve(place, context.numbering)
    return bool(PLURAL.search(words)) and any(len(one.teeth) == 1 and not one.minus for one in meanings)


def _back(context: Context, contacts: bool | str, word: str) -> Where:
    said = context.before
    if said is None or said.place is None or not (said.place.teeth or said.place.contacts):
        raise Refused("nothing-to-point-to")
    if said.place.teeth and len(said.place.teeth) != MEANT.get(word, len(said.place.teeth)):
        return Where(open=True, questions=(Question("teeth", "which-of-them", ()),), said=True)
    return _of(said.place, contacts, context, said=True)


def _place(place: Place, context: Context) -> Where:
    if place.asks:
        return Where(open=True, questions=(_asks(place, place.asks, place.why or "place"),), said=True)
    meanings = resolve(place, context.numbering)
    if not meanings and (context.numbering.system is None or context.numbering.conflict):
        return Where(open=True, questions=(_asks(place, "notation", "numbering"),), said=True)
    if not meanings:
        return Where(open=True, questions=(_asks(place, "implausible", "no-such-tooth"),), said=True)
    if len(meanings) > 1:
        return Where(open=True, questions=(_asks(place, "notation", "numbering"),), said=True)
    return Where(meaning=meanings[0], said=True)


def _asks(place: Place, sort: str, why: str) -> Question:
    return Question(sort, why, ((place.start, place.end),))


def _merged(parts: list[Where], contacts: bool | str, context: Context, *, union: bool) -> Where:
    open_ = [part for part in parts if part.open]
    if open_:
        return Where(open=True, questions=tuple(q for part in open_ for q in part.questions), said=True)
    meanings = [part.meaning for part in parts if part.meaning]
    frame = [one for one in meanings if not (one.teeth or one.contacts or one.needs)]
    real = [one for one in meanings if one not in frame]
    if len(real) > 1 and union and not frame:
        real = [_united(real)]
    if len(real) > 1:
        raise Refused("two-places")
    whole = _framed(real[0], frame) if real else _framed(frame[0], frame[1:])
    return _of(whole, contacts, context, said=True)


def _united(meanings: list[Meaning]) -> Meaning:
    """Places of one list."""
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


def lead_place(place: Place, context: Context) -> Meaning | None:
    """The one meaning of a place that governs what follows. :raises Refused: when it is open."""
    meanings = resolve(place, context.numbering)
    if place.asks or len(meanings) != 1:
        raise Refused("open-lead")
    return meanings[0]


def _framed(meaning: Meaning, frame: list[Meaning]) -> Meaning:
    """A reference with the arch or side words that stand elsewhere in the statement."""
    for words in frame:
        if words.arch and "arch" in meaning.needs:
            meaning = with_arch(meaning, words.arch)
        elif words.arch and meaning.teeth and not _inside(meaning.teeth, words.arch):
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


def _inside(teeth: Iterable[int], arch: str) -> bool:
    upper = [tooth // 10 in (1, 2, 5, 6) for tooth in teeth]
    return arch == "both" or all(upper) if arch != "lower" else not any(upper)


def _of(meaning: Meaning, contacts: bool | str, context: Context, *, said: bool) -> Where:
    if "arch" in meaning.needs and context.arch is not None:
        meaning = with_arch(meaning, context.arch)
    elif "arch" in meaning.needs and meaning.teeth:
        meaning = replace(meaning, needs=tuple(need for need in meaning.needs if need != "arch"))
    elif "arch" in meaning.needs:
        return Where(open=True, questions=(Question("teeth", "which-arch", ()),), meaning=meaning, said=said)
    if meaning.needs:
        return Where(open=True, questions=(Question("teeth", "which-teeth", ()),), meaning=meaning, said=said)
    if meaning.surface and contacts:
        return Where(
            open=True, questions=(Question("reference", "surface-or-contact", ()),), meaning=meaning, said=said
        )
    if said and _against_lead(meaning, context):
        return Where(
            open=True, questions=(Question("contradiction", "lead-and-teeth", ()),), meaning=meaning, said=said
        )
    if meaning.surface:
        return Where((), meaning.contacts, None, None, False, meaning.inferred, (), meaning, said)
    between = (meaning.contacts or inner_contacts(meaning)) if contacts else meaning.contacts
    if contacts == "pair" and not between and len(meaning.teeth) == PAIR and neighbours(*meaning.teeth):
        between = ((meaning.teeth[0], meaning.teeth[1]),)
    if contacts == "pair" and not between:
        contacts = False
    teeth = () if between and contacts else in_mouth_order(meaning.teeth)
    if contacts and meaning.teeth and not between:
        return Where(
            open=True, questions=(Question("reference", "contacts-of-a-tooth", ()),), meaning=meaning, said=said
        )
    arch = None if teeth or between else meaning.arch
    return Where(teeth, between, arch, meaning.side, False, meaning.inferred, (), meaning, said)


def _against_lead(meaning: Meaning, context: Context) -> bool:
    """ "Lower: 14", "right side: 23": the words before the colon and the tooth differ."""
    teeth = meaning.named()
    sides = {
        said.place.side for said in context.lead if said.place is not None and said.place.side in ("left", "right")
    }
    left = {tooth // 10 in (2, 3, 6, 7) for tooth in teeth}
    arch = context.arch in ("upper", "lower") and not _inside(teeth, str(context.arch))
    return bool(teeth) and (arch or any(left != {side == "left"} for side in sides))


def placed(clause: Clause, where_: Where, member: str) -> Clause:
    """The clause at this place; ``member`` waits for an answer when the place is open."""
    if where_.open:
        return clause.with_(pending=(*clause.pending, member))
    inferred = tuple(dict.fromkeys((*clause.inferred, *where_.inferred)))
    return clause.with_(
        teeth=where_.teeth, contacts=where_.contacts, arch=where_.arch, side=where_.side, inferred=inferred
    )
