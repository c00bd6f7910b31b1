"""Statements about what teeth do: align, rotate, tip, torque, incline, intrude, extrude, move, widen, extract."""

from __future__ import annotations

from typing import Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.statements.force import (
    Force,
    amount,
    basis,
    conditional,
    force,
    measured,
    of_amount,
    only,
)
from wellposed_converters.text.statements.statement import Bag, Context, Read
from wellposed_converters.text.statements.where import Where, placed, where

ARCHWISE: Final = frozenset(("archwidth", "align", "overcorrection", "extraction"))
"""Kinds that may name an arch, or no place at all, instead of teeth."""
NEEDS_DIR: Final = frozenset(("torque",))
TURNS: Final = frozenset(
    ("mesial_in", "mesial_out", "distal_in", "distal_out")
    + tuple(f"{end}{side}" for end in ("mesio", "disto") for side in ("labial", "buccal", "lingual", "palatal"))
)
ROOTS: Final = frozenset(f"{way}_root" for way in ("labial", "palatal", "lingual", "buccal", "mesial", "distal"))
CROWNS: Final = frozenset(f"{way}_crown" for way in ("labial", "palatal", "lingual", "buccal", "mesial", "distal"))
WAYS: Final = frozenset(("mesial", "distal", "labial", "buccal", "lingual", "palatal"))
TURNED: Final = {"rotate": "rotation", "tip": "tip", "incline": "inclination"}
FITS: Final = {
    "rotate": TURNS,
    "torque": ROOTS | CROWNS,
    "tip": CROWNS | ROOTS | WAYS,
    "incline": frozenset(),
    "move": WAYS,
    "movement": WAYS,
}


def motion(bag: Bag, context: Context) -> Read:
    """What is said of the movement at the head. :raises Refused: when the words make no one statement of it."""
    facts = bag.head.value.facts  # type: ignore[union-attr]  # a movement has a head
    kind = facts["kind"]
    bag.take("BE")
    place = where(bag, context)
    verbs = {item.name for item in bag.take("VERB")}
    manner = bag.one("MANNER")
    if verbs == {"use"} and bag.every[-1].category == "PLACE" and bag.every[-2].category == "TO":
        bag.take("TO")
    if not verbs <= {"use", "fine"}:
        raise Refused("verb-does-not-fit")
    strength = force(bag)
    if "fine" in verbs:
        strength = Force(strength.denied, True, strength.wished, strength.only)
    clause = Clause(kind, "do", bag.spans(), dir=facts.get("dir"), of=facts.get("of"))
    clause, asked = _directed(bag, clause)
    asked += _loose(bag, kind)
    clause, open_ = _placed(bag, clause, place, strength, context)
    clause = _amounts(bag, clause, strength)
    condition = bag.one("COND")
    questions = [*place.questions, *asked, *open_]
    if condition:
        clause, undecided = conditional(clause, condition, bag)
        questions += undecided
    if strength.denied and kind == "movement" and clause.dir:
        clause = clause.with_(kind="move")
    if kind == "overcorrection" and context.before is not None and context.before.clauses:
        clause = clause.with_(of=TURNED.get(context.before.clauses[-1].kind))
    if manner:
        if kind not in ("move", "movement"):
            raise Refused("manner")
        clause = clause.with_(of=manner.name)
    if bag.join == "by" and clause.measure is None:
        clause = clause.with_(of="means")
    bag.done()
    clause, doubt = only(bag, clause, strength)
    return Read((clause,), (*questions, *doubt))


MEASURED_IN_DEGREES: Final = frozenset(("rotate", "tip", "torque", "incline", "overcorrection"))


def _loose(bag: Bag, kind: str) -> list[Question]:
    """ "Rotate 12 15": is 15 a tooth or degrees?"""
    loose = any(item.category == "PLACE" and item.value.loose_tail for item in bag.every)
    head = bag.head.value.facts if bag.head else {}
    if not loose or kind not in MEASURED_IN_DEGREES or head.get("dir") == "derotate" or bag.has("AMOUNT"):
        return []
    return [Question("teeth", "tooth-or-amount", bag.spans(), concerns=(0,))]


def _directed(bag: Bag, clause: Clause) -> tuple[Clause, list[Question]]:
    way = bag.one("DIR")
    if clause.dir is not None and clause.dir.startswith("?"):
        if way is not None:
            raise Refused("direction-does-not-fit")
        return clause.with_(dir=None, pending=("dir",)), [Question("meaning", clause.dir[1:], bag.spans())]
    if way is None:
        if clause.kind in NEEDS_DIR and clause.dir is None:
            return clause.with_(pending=("dir",)), [Question("missing_amount", "which-way", bag.spans())]
        return clause, []
    if way.name not in FITS.get(clause.kind, frozenset()) or clause.dir not in (None, "derotate"):
        raise Refused("direction-does-not-fit")
    return clause.with_(dir=way.name), []


def _placed(bag: Bag, clause: Clause, place: Where, strength: Force, context: Context) -> tuple[Clause, list[Question]]:
    clause = placed(clause, place, "teeth")
    if clause.teeth or place.open:
        return clause, []
    if clause.contacts:
        raise Refused("movement-of-a-contact")
    before = context.before
    subject = before is not None and before.head is not None and not before.far and before.place is not None
    stated = subject and before is not None and before.head is not None and before.head.category == "STATE"
    if subject and before is not None and before.place is not None and before.place.teeth:
        if (stated and not clause.arch) or clause.kind == "overcorrection":
            return clause.with_(teeth=before.place.teeth), []
    if clause.kind in ARCHWISE:
        return _archwise(bag, clause, place, strength)
    if clause.arch or clause.side:
        raise Refused("which-teeth")
    if clause.kind == "movement":
        raise Refused("which-teeth")
    if (
        strength.denied
        and before is not None
        and before.place is not None
        and before.place.teeth
        and bag.join != "start"
    ):
        return clause.with_(teeth=before.place.teeth), []
    return clause.with_(pending=("teeth",)), [Question("teeth", "which-teeth", bag.spans())]


def _archwise(bag: Bag, clause: Clause, place: Where, strength: Force) -> tuple[Clause, list[Question]]:
    if clause.arch or clause.side:
        return clause, []
    if clause.kind == "archwidth" and strength.denied:
        return clause.with_(arch="both"), []
    if clause.kind == "extraction" and strength.denied:
        return clause, []
    return clause.with_(pending=("teeth",)), [Question("teeth", "which-teeth", bag.spans())]


def _amounts(bag: Bag, clause: Clause, strength: Force) -> Clause:
    per = basis(bag)
    value, by = amount(bag)
    ref, to = bag.one("REF"), bool(bag.take("TO"))
    mode = of_amount("do", value, strength)
    if strength.denied and value is not None:
        raise Refused("amount-of-nothing")
    clause = clause.with_(mode=mode, ref=ref.name if ref else None)
    if value is None:
        if per or to:
            raise Refused("basis-without-amount")
        return clause
    if clause.kind in ("align", "extraction", "movement"):
        raise Refused("amount-of-an-alignment")
    if ref or to:
        if clause.kind != "incline" or by:
            raise Refused("target-of-a-movement")
        return measured(clause, value, "target")
    if clause.kind == "archwidth":
        return measured(clause, value, _width(per, clause.side))
    if per not in (None, "each"):
        raise Refused("basis-does-not-fit")
    return measured(clause, value, "change")


def _width(per: str | None, side: str | None) -> str:
    if per in ("per_side", "total"):
        return per
    if per is None and side in ("left", "right"):
        return "per_side"
    if per is None:
        raise Refused("per-side-or-total")
    raise Refused("basis-does-not-fit")
