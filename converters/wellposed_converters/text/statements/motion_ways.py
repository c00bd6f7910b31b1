"""Which way teeth move, and how far."""

from __future__ import annotations

from typing import Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.statements.force import Force, amount, basis, measured, of_amount
from wellposed_converters.text.statements.statement import Bag

NEEDS_DIR: Final = frozenset(("torque",))
SURFACES: Final = ("labial", "buccal", "lingual", "palatal")
TURNS: Final = frozenset(
    (
        *("mesial_in", "mesial_out", "distal_in", "distal_out"),
        *(f"{end}{side}" for end in ("mesio", "disto") for side in SURFACES),
    )
)
ROOTS: Final = frozenset(f"{way}_root" for way in (*SURFACES, "mesial", "distal"))
CROWNS: Final = frozenset(f"{way}_crown" for way in (*SURFACES, "mesial", "distal"))
WAYS: Final = frozenset((*SURFACES, "mesial", "distal"))
FITS: Final = {
    "rotate": TURNS,
    "torque": ROOTS | CROWNS,
    "tip": CROWNS | ROOTS | WAYS,
    "incline": frozenset(),
    "move": WAYS,
    "movement": WAYS,
}
MEASURED_IN_DEGREES: Final = frozenset(("rotate", "tip", "torque", "incline", "overcorrection"))


def loose_number(bag: Bag, kind: str) -> list[Question]:
    """A number that may be a tooth or degrees: "rotate 12 15"."""
    loose = any(item.category == "PLACE" and item.value.loose_tail for item in bag.every)
    if not loose or kind not in MEASURED_IN_DEGREES or bag.facts().get("dir") == "derotate" or bag.has("AMOUNT"):
        return []
    return [Question("teeth", "tooth-or-amount", bag.spans(), concerns=(0,))]


def directed(bag: Bag, clause: Clause) -> tuple[Clause, list[Question]]:
    """The clause with its way. :raises Refused: when the movement has no such way."""
    way = bag.named("DIR")
    if clause.dir is not None and clause.dir.startswith("?"):
        if way is not None:
            raise Refused("direction-does-not-fit")
        return clause.with_(dir=None, pending=("dir",)), [Question("meaning", clause.dir[1:], bag.spans())]
    if way is None:
        if clause.kind in NEEDS_DIR and clause.dir is None:
            return clause.with_(pending=("dir",)), [Question("missing_amount", "which-way", bag.spans())]
        return clause, []
    if way not in FITS.get(clause.kind, frozenset()) or clause.dir not in (None, "derotate"):
        raise Refused("direction-does-not-fit")
    return clause.with_(dir=way), []


def with_amount(bag: Bag, clause: Clause, strength: Force) -> Clause:
    """The clause with its force and its amount. :raises Refused: when these do not go together."""
    per = basis(bag)
    value, by = amount(bag)
    ref, to = bag.named("REF"), bool(bag.take("TO"))
    if strength.denied and value is not None:
        raise Refused("amount-of-nothing")
    if value is None and (per or to):
        raise Refused("basis-without-amount")
    clause = clause.with_(mode=of_amount("do", value, strength), ref=ref)
    if value is None:
        return clause
    return measured(clause, value, _aimed(clause, by=by) if ref or to else _by(clause, per))


def _aimed(clause: Clause, *, by: bool) -> str:
    if clause.kind != "incline" or by:
        raise Refused("target-of-a-movement")
    return "target"


def _by(clause: Clause, per: str | None) -> str:
    if clause.kind in ("align", "extraction", "movement"):
        raise Refused("amount-of-an-alignment")
    if clause.kind == "archwidth":
        return _width(per, clause.side)
    if per not in (None, "each"):
        raise Refused("basis-does-not-fit")
    return "change"


def _width(per: str | None, side: str | None) -> str:
    if per in ("per_side", "total"):
        return per
    if per is None and side in ("left", "right"):
        return "per_side"
    if per is None:
        raise Refused("per-side-or-total")
    raise Refused("basis-does-not-fit")
