"""Where a statement applies: its tooth references, completed from what stands around them, or asked about."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from wellposed_converters.text.clause import Clause, Contact, Question
from wellposed_converters.text.grammar.items import Item
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.places import Meaning, Place, in_mouth_order, resolve
from wellposed_converters.text.statements.meant import against_lead, contacts_of, framed, in_arch, inside, united
from wellposed_converters.text.statements.statement import Bag, Context


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


MEANT: Final = {"it": 1, "pair": 2}
"""How many teeth a word that points back must find."""
PLURAL: Final = re.compile(
    r"\b(?:incisors|centrals|laterals|canines|cuspids|premolars|bicuspids|molars|[1-8]s|[c-e]s)\b", re.IGNORECASE
)


def where(bag: Bag, context: Context, wants: str = "teeth") -> Where:
    """The place the statement names; the context's where it names none but points back to one.

    wants  "teeth"; "contacts"; "pair": teeth, but of two neighbours or a run the contacts between them
    :raises Refused: when places do not go together, or nothing is there to point back to
    """
    denied = any(item.category == "NEG" or item.name in ("lock", "avoid") for item in bag.every)
    places = bag.take("PLACE")
    back = bag.take("THERE")
    doubts = _plurals(places, context) or ([] if denied else _choices(places))
    if doubts:
        return _open(*doubts)
    if places:
        union = bag.union or _in_a_row(places, bag)
        return _merged([_place(item.value, context) for item in places], wants, context, union=union)
    if back:
        return _back(context, wants, back[0].name)
    return _led(context, wants, denied=denied)


def _led(context: Context, wants: str, *, denied: bool) -> Where:
    """The place before a colon; whether it still holds is asked for a later sentence, and for a later prohibition."""
    led = next((said for said in reversed(context.lead) if said.place), None)
    if led is None or led.place is None:
        return Where()
    announced = any(item.name == "envelope" for item in led.items)
    again = denied and context.before is not None and not context.before.far and not announced
    if led.place.teeth and (led.far or again):
        return Where(open=True, questions=(Question("scope", "lead-again", ()),), meaning=led.place)
    return _of(led.place, wants, context, said=False)


def _in_a_row(places: Sequence[Item], bag: Bag) -> bool:
    """Tooth numbers with nothing but a space between them."""
    if not all(item in bag.every for item in places):
        return False
    at = [bag.every.index(item) for item in places]
    return len(at) > 1 and at[-1] - at[0] == len(at) - 1 and all(item.value.bare_number for item in places[1:])


def _open(*questions: Question) -> Where:
    return Where(open=True, questions=questions, said=True)


def _plurals(places: Sequence[Item], context: Context) -> list[Question]:
    """A plural that finds one tooth, as in "UL canines", was meant otherwise."""
    return [
        _asks(item.value, "teeth", "ul-mirror") for item in places if _plural_of_one(item.words, item.value, context)
    ]


def _choices(places: Sequence[Item]) -> list[Question]:
    return [_asks(item.value, "teeth", "one-or-the-other") for item in places if item.value.alternatives]


def _plural_of_one(words: str, place: Place, context: Context) -> bool:
    meanings = resolve(place, context.numbering)
    return bool(PLURAL.search(words)) and any(len(one.teeth) == 1 and not one.minus for one in meanings)


def _back(context: Context, wants: str, word: str) -> Where:
    said = context.before
    if said is None or said.place is None or not (said.teeth or said.place.contacts):
        raise Refused("nothing-to-point-to")
    if word in OTHER_ARCH:
        return _other_arch(said.place, word)
    if said.teeth and len(said.teeth) != MEANT.get(word, len(said.teeth)):
        return _open(Question("teeth", "which-of-them", ()))
    return _of(said.place, wants, context, said=True)


OTHER_ARCH: Final = {"above": ("lower", "upper"), "below": ("upper", "lower")}


def _other_arch(meaning: Meaning, word: str) -> Where:
    """The arch that is not that of what was just said: "none above"."""
    own, other = OTHER_ARCH[word]
    if not inside(meaning.named(), own):
        raise Refused("above-what")
    return Where(arch=other, said=True)


def _place(place: Place, context: Context) -> Where:
    if place.asks:
        return _open(_asks(place, place.asks, place.why or "place"))
    meanings = resolve(place, context.numbering)
    undecided = context.numbering.system is None or context.numbering.conflict
    if len(meanings) > 1 or (not meanings and undecided):
        return _open(_asks(place, "notation", "numbering"))
    if not meanings:
        return _open(_asks(place, "implausible", "no-such-tooth"))
    return Where(meaning=meanings[0], said=True)


def _asks(place: Place, sort: str, why: str) -> Question:
    return Question(sort, why, ((place.start, place.end),))


def _merged(parts: Sequence[Where], wants: str, context: Context, *, union: bool) -> Where:
    questions = [question for part in parts if part.open for question in part.questions]
    if any(part.open for part in parts):
        return _open(*questions)
    meanings = [part.meaning for part in parts if part.meaning]
    frame = [one for one in meanings if not (one.teeth or one.contacts or one.needs)]
    real = [one for one in meanings if one not in frame]
    if len(real) > 1 and union and not frame:
        real = [united(real)]
    if len(real) > 1:
        raise Refused("two-places")
    whole = framed(real[0], frame) if real else framed(frame[0], frame[1:])
    return _of(whole, wants, context, said=True)


def lead_place(place: Place, context: Context) -> Meaning | None:
    """The one meaning of a place that governs what follows. :raises Refused: when it is open."""
    meanings = resolve(place, context.numbering)
    if place.asks or len(meanings) != 1:
        raise Refused("open-lead")
    return meanings[0]


def _of(meaning: Meaning, wants: str, context: Context, *, said: bool) -> Where:
    meaning = in_arch(meaning, context)
    question = _doubt(meaning, wants, context, said=said)
    if question is not None:
        return Where(open=True, questions=(question,), meaning=meaning, said=said)
    if meaning.surface:
        return Where(contacts=meaning.contacts, inferred=meaning.inferred, meaning=meaning, said=said)
    contacts = contacts_of(meaning, wants)
    teeth = () if contacts and wants != "teeth" else in_mouth_order(meaning.teeth)
    if wants == "contacts" and meaning.teeth and not contacts:
        question = Question("reference", "contacts-of-a-tooth", ())
        return Where(open=True, questions=(question,), meaning=meaning, said=said)
    arch = None if teeth or contacts else meaning.arch
    return Where(teeth, contacts, arch, meaning.side, inferred=meaning.inferred, meaning=meaning, said=said)


def _doubt(meaning: Meaning, wants: str, context: Context, *, said: bool) -> Question | None:
    if "arch" in meaning.needs:
        return Question("teeth", "which-arch", ())
    if meaning.needs:
        return Question("teeth", "which-teeth", ())
    if meaning.surface and wants != "teeth":
        return Question("reference", "surface-or-contact", ())
    if said and against_lead(meaning, context):
        return Question("contradiction", "lead-and-teeth", ())
    return None


def placed(clause: Clause, where_: Where, member: str) -> Clause:
    """The clause at this place; ``member`` waits for an answer when the place is open."""
    if where_.open:
        return clause.with_(pending=(*clause.pending, member))
    inferred = tuple(dict.fromkeys((*clause.inferred, *where_.inferred)))
    return clause.with_(
        teeth=where_.teeth, contacts=where_.contacts, arch=where_.arch, side=where_.side, inferred=inferred
    )
