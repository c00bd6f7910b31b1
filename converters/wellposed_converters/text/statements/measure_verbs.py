"""A measure with a verb: kept, changed to or by an amount, closed, opened, moved, levelled, or not to be."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.statements.force import Force, amount, measured
from wellposed_converters.text.statements.kept_within import kept_within, spread
from wellposed_converters.text.statements.measure_parts import Reading, from_to, in_class
from wellposed_converters.text.statements.statement import Bag

KEEPING: Final = frozenset(("keep", "accept", "fine", "lock", "hold"))
HOLDING: Final = frozenset(("keep", "hold"))
"""Of these, those with which an allowance is one of change; what is accepted within it may be the value at the end."""
CHANGING: Final = ("reduce", "increase")
ROOMS: Final = frozenset(("space", "clearance"))
LEVELLED: Final = ("curve_of_spee", "level")
GAINING: Final = {"close": "close", "open": "open", "leave": "leave"}


def softened(bag: Bag, base: Clause, strength: Force, verb: str) -> Reading:
    """A wish or a permission with a verb: a wish to keep is asked about, the others keep their force."""
    if strength.only or strength.denied or (strength.allowed and verb in KEEPING):
        raise Refused("two-forces")
    clauses, questions = with_verb(bag, base, verb)
    if strength.wished and verb in KEEPING:
        return [], [Question("condition", "wish-to-keep", bag.spans())]
    soft = "prefer" if strength.wished else "permit"
    return [clause.with_(mode=soft) if clause.mode == "do" else clause for clause in clauses], questions


def with_verb(bag: Bag, base: Clause, verb: str) -> Reading:
    """What the verb says of the measure. :raises Refused: when it says nothing of this one."""
    if verb in KEEPING or (verb == "leave" and base.kind not in ROOMS):
        return _kept(bag, base, verb)
    if base.kind in ROOMS:
        return _room(bag, base, verb)
    reader = VERBS.get((base.kind, verb)) or VERBS.get(("", verb))
    if reader is None:
        raise Refused("verb-does-not-fit")
    return reader(bag, base, verb)


def denied(base: Clause, verb: str) -> Reading:
    """A change that is forbidden: "do not increase the overjet", "do not close the space"."""
    if verb in (*CHANGING, "close", "open", "move"):
        return [base.with_(mode="forbid", dir=None if verb == "move" else verb)], []
    if verb == "level" and base.kind in LEVELLED:
        return [base.with_(mode="forbid")], []
    raise Refused("denied-verb")


def _kept(bag: Bag, base: Clause, verb: str) -> Reading:
    """A number beside "keep" is the present value (R12); a bound beside it is a limit, of the end or of the change."""
    allowance = spread(bag)
    if allowance is not None:
        return kept_within(bag, _both_midlines(base), allowance, sure=verb in HOLDING)
    value, by = amount(bag)
    bag.take("WHEN", name="current")
    bag.take("BE")
    if by or bag.has("TO"):
        raise Refused("keep-to")
    side, ref = bag.named("DIR"), bag.named("REF")
    kept = _both_midlines(base.with_(mode="keep"))
    if base.kind == "sagittal":
        kept = in_class(bag, kept)
    if value is None:
        if side or ref:
            raise Refused("left-over")
        return [kept], []
    if value.bound != "exact":
        return [measured(base.with_(mode="limit", dir=side, ref=ref), value, "target")], []
    return [measured(base.with_(mode="state", dir=side, ref=ref), value, "current"), kept], []


def _both_midlines(clause: Clause) -> Clause:
    """A midline of no arch is that of both."""
    if clause.kind != "midline" or clause.arch:
        return clause
    return clause.with_(arch="both", inferred=(*clause.inferred, "arch"))


def _changed(bag: Bag, base: Clause, way: str) -> Reading:
    """To an amount is a target, by an amount is a change, neither is asked about."""
    to = bool(bag.take("TO"))
    bag.take("WHEN", name="target")
    pair = bag.take("FROMTO")
    value, by = amount(bag)
    if pair and value is None:
        return from_to(base, pair[0].value.before, pair[0].value.after)
    if pair:
        raise Refused("two-amounts")
    if value is None:
        return [base.with_(dir=way, pending=("amount",))], [Question("missing_amount", "how-much", bag.spans())]
    if by or (value.bound == "at_most" and not to):
        mode = "limit" if value.bound == "at_most" else "do"
        return [measured(base.with_(dir=way, mode=mode), value, "change")], []
    if to:
        return [measured(base, value, "target")], []
    waiting = measured(base.with_(dir=way, pending=("measure",)), value, None)
    return [waiting], [Question("reference", "to-or-by", bag.spans())]


def _room(bag: Bag, base: Clause, verb: str) -> Reading:
    """Spaces: close, open, leave, and what they are for."""
    if verb not in GAINING and verb != "correct":
        raise Refused("verb-does-not-fit")
    purpose = bag.named("FOR")
    to = bool(bag.take("TO"))
    ref = bag.named("REF")
    value, by = amount(bag)
    if to and (value is None or GAINING.get(verb) != "open"):
        raise Refused("room-to-what")
    if base.kind == "clearance":
        if verb not in ("leave", "open") or value is None:
            raise Refused("clearance")
        return [measured(base.with_(ref=ref), value, "target")], []
    clause = base.with_(dir=GAINING.get(verb, "close"), of=purpose or base.of, ref=ref)
    if value is None:
        return _room_without(bag, clause)
    if clause.dir == "close":
        if by or not clause.contacts:
            raise Refused("close-by-amount")
        return [measured(clause.with_(mode="state", dir=None), value, "current"), clause], []
    return [measured(clause, value, "change" if by else "target")], []


def _room_without(bag: Bag, clause: Clause) -> Reading:
    if clause.dir == "close":
        return [clause], []
    if clause.dir == "leave":
        return [clause.with_(mode="keep", dir=None)], []
    return [clause.with_(pending=("amount",))], [Question("missing_amount", "how-much", bag.spans())]


def _moved(bag: Bag, base: Clause, verb: str) -> Reading:
    """A midline with an amount and a side: moved only when the verb says so, otherwise asked."""
    value, _ = amount(bag)
    way, ref = bag.named("DIR"), bag.named("REF")
    clause = base.with_(dir=way, ref=ref)
    if verb == "move" and value is not None and way is not None and base.arch in ("upper", "lower"):
        return [measured(clause, value, "change")], []
    if value is None and way is None and ref and base.arch:
        return [clause], []
    waiting = measured(base.with_(pending=("arch", "dir")), value, "change")
    return [waiting], [Question("reference", "midline-which-way", bag.spans())]


def _levelled(bag: Bag, base: Clause, _: str) -> Reading:
    to = bool(bag.take("TO"))
    value, by = amount(bag)
    return [measured(base, value, "target" if to and not by else "change")], []


def _corrected(bag: Bag, base: Clause, _: str) -> Reading:
    bag.take("WHEN", name="target")
    return [base.with_(dir="correct" if base.kind == "crossbite" else "close")], []


def _coordinated(_: Bag, base: Clause, __: str) -> Reading:
    return [base.with_(of="coordinate")], []


VERBS: Final[Mapping[tuple[str, str], Callable[[Bag, Clause, str], Reading]]] = {
    **{("midline", verb): _moved for verb in ("move", "correct", "match", "coordinate")},
    **{(kind, verb): _corrected for kind in ("crossbite", "openbite") for verb in ("correct", "close")},
    **{(kind, "level"): _levelled for kind in LEVELLED},
    ("archform", "coordinate"): _coordinated,
    **{("", verb): _changed for verb in CHANGING},
}
"""Kind, empty for any, and verb; what the verb says of it."""
