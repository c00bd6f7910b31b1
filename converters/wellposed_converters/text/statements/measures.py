"""Statements about something measured: overbite, overjet, midline, spaces, widths, relations."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.places import in_mouth_order
from wellposed_converters.text.quantity import Amount
from wellposed_converters.text.statements.force import Force, amount, basis, force, measured
from wellposed_converters.text.statements.statement import Bag, Context, Read, Said
from wellposed_converters.text.statements.where import Where, placed, where

PLACELESS: Final = frozenset(("overbite", "overjet", "curve_of_spee", "guidance", "skeletal", "openbite"))
PLACED: Final = frozenset(("space", "level", "crossbite", "archwidth", "clearance", "incline"))
"""Measures that are of teeth; a place before a colon says nothing of the others."""
CONTACTS: Final = frozenset(("space",))
BOTH_ARCHES: Final = frozenset(("midline",))
KEEPING: Final = frozenset(("keep", "accept", "fine", "lock"))
CHANGING: Final = {"reduce": "reduce", "increase": "increase"}
GAINING: Final = {"close": "close", "open": "open", "leave": "leave"}


def measure(bag: Bag, context: Context) -> Read:
    """What is said of the measure at the head. :raises Refused: when the words make no one statement of it."""
    facts = bag.head.value.facts  # type: ignore[union-attr]  # a measure has a head
    if str(facts.get("of", "")).startswith("?"):
        return _asked(bag, facts["of"][1:])
    if bag.has("VERB", "keep", "accept") and not bag.has("PLACE"):
        bag.take("THERE")
    place = where(bag, context, "pair" if facts["kind"] in CONTACTS else "teeth")
    if not place.said and (place.teeth or place.contacts or place.open) and facts["kind"] not in PLACED:
        place = Where()
    if place.said and (place.teeth or place.contacts or place.open) and facts["kind"] in PLACELESS:
        raise Refused("place-of-a-measure")
    if facts["kind"] == "space" and not place.said:
        place = _space_before(facts, place, context)
    base = Clause(facts["kind"], "do", bag.spans(), of=facts.get("of"), arch=facts.get("arch"))
    if facts["kind"] == "space" and place.said and place.teeth and not place.contacts and not facts.get("of"):
        base = base.with_(of="extraction_site" if facts.get("points") else None)
    base = placed(base, place, "teeth") if facts["kind"] != "midline" else _midline(base, place, facts.get("arch"))
    if (
        facts["kind"] == "clearance"
        and not place.said
        and context.before is not None
        and context.before.place is not None
    ):
        base = base.with_(teeth=context.before.place.teeth)
    strength = force(bag)
    verbs = [item.name for item in bag.take("VERB")]
    if set(verbs) <= KEEPING | {"leave"} and len(set(verbs)) > 1:
        verbs = ["keep"]
    if len(set(verbs)) > 1:
        raise Refused("two-verbs")
    if verbs and (strength.wished or strength.only or strength.allowed):
        reading = _softened(bag, base, strength, verbs[0], context)
    else:
        reading = (
            _with_verb(bag, base, strength, verbs[0], context) if verbs else _without(bag, base, strength, context)
        )
    bag.done()
    return Read(tuple(reading[0]), (*place.questions, *reading[1]))


Reading = tuple[list[Clause], list[Question]]


def _space_before(facts: Mapping[str, Any], place: Where, context: Context) -> Where:
    """ "That space", "all extraction spaces": those of the extractions before, or nobody knows which."""
    before = context.before
    taken = [clause for clause in context.earlier if clause.kind == "extraction" and clause.mode == "do"]
    if facts.get("of") == "extraction_site" or (
        facts.get("points") and before is not None and _about(before, "extraction")
    ):
        teeth = tuple(in_mouth_order({tooth for clause in taken for tooth in clause.teeth}))
        if teeth:
            return Where(teeth=teeth, said=True)
    if facts.get("points") or facts.get("of") == "extraction_site":
        return Where(open=True, questions=(Question("teeth", "which-space", ()),), said=True)
    return place


def _about(said: Said, kind: str) -> bool:
    return bool(said.clauses) and said.clauses[-1].kind == kind


def _midline(base: Clause, place: Where, arch: str | None) -> Clause:
    if place.open:
        return base.with_(pending=("arch",))
    if place.teeth or place.contacts:
        raise Refused("midline-of-teeth")
    return base.with_(arch=arch or place.arch)


def _asked(bag: Bag, why: str) -> Read:
    bag.items.clear()
    return Read((), (Question("meaning", why, bag.spans()),))


def _with_verb(bag: Bag, base: Clause, strength: Force, verb: str, context: Context) -> Reading:
    if strength.denied:
        return _denied(bag, base, verb)
    if verb in KEEPING or (verb == "leave" and base.kind not in ("space", "clearance")):
        return _kept(bag, base)
    if base.kind == "space" or base.kind == "clearance":
        return _room(bag, base, verb)
    if base.kind == "midline" and verb in ("move", "correct", "match", "coordinate"):
        return _moved(bag, base, verb)
    if verb in CHANGING:
        return _changed(bag, base, CHANGING[verb])
    if verb in ("correct", "close") and base.kind in ("crossbite", "openbite"):
        bag.take("WHEN")
        return [base.with_(dir="correct" if base.kind == "crossbite" else "close")], []
    if verb == "level" and base.kind in ("curve_of_spee", "level"):
        return _levelled(bag, base)
    if verb == "coordinate" and base.kind == "archform":
        return [base.with_(of="coordinate")], []
    raise Refused("verb-does-not-fit")


def _softened(bag: Bag, base: Clause, strength: Force, verb: str, context: Context) -> Reading:
    """A wish or a permission with a verb: a wish to keep is asked about, the others keep their force."""
    if strength.only or strength.denied or (strength.allowed and verb in KEEPING):
        raise Refused("two-forces")
    clauses, questions = _with_verb(bag, base, strength, verb, context)
    if strength.wished and verb in KEEPING:
        return [], [Question("condition", "wish-to-keep", bag.spans())]
    soft = "prefer" if strength.wished else "permit"
    return [clause.with_(mode=soft) if clause.mode == "do" else clause for clause in clauses], questions


def _denied(bag: Bag, base: Clause, verb: str) -> Reading:
    """A change that is forbidden: "do not increase the overjet", "do not close the space"."""
    if verb in CHANGING or verb in ("close", "open", "move"):
        return [base.with_(mode="forbid", dir=CHANGING.get(verb, verb if verb != "move" else None))], []
    if verb == "level" and base.kind in ("curve_of_spee", "level"):
        return [base.with_(mode="forbid")], []
    raise Refused("denied-verb")


def _kept(bag: Bag, base: Clause) -> Reading:
    """A number beside "keep" is the present value (R12); a bound beside it is a limit."""
    value, by = amount(bag)
    bag.take("WHEN", name="current")
    bag.take("BE")
    if by or bag.has("TO"):
        raise Refused("keep-to")
    side = bag.one("DIR")
    ref = bag.one("REF")
    arch = base.arch
    if base.kind == "midline":
        arch = arch or "both"
    kept = base.with_(mode="keep", arch=arch, inferred=_inferred(base, arch))
    if base.kind == "sagittal":
        kept, _ = _class(bag, kept)
    if value is None:
        if side or ref:
            raise Refused("left-over")
        return [kept], []
    if value.bound != "exact":
        return [measured(base.with_(mode="limit"), value, "target")], []
    state = measured(
        base.with_(mode="state", dir=side.name if side else None, ref=ref.name if ref else None), value, "current"
    )
    return [state, kept], []


def _inferred(base: Clause, arch: str | None) -> tuple[str, ...]:
    return (
        (*base.inferred, "arch") if base.kind == "midline" and base.arch is None and arch == "both" else base.inferred
    )


def _changed(bag: Bag, base: Clause, way: str) -> Reading:
    """To an amount is a target, by an amount is a change, neither is asked about."""
    to = bool(bag.take("TO"))
    bag.take("WHEN")
    pair = bag.take("FROMTO")
    value, by = amount(bag)
    if pair and value is None:
        return _from_to(base, pair[0].value.before, pair[0].value.after)
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


def _from_to(base: Clause, before: Amount, after: Amount) -> Reading:
    return [
        measured(base.with_(mode="state"), before, "current"),
        measured(base, after, "target"),
    ], []


def _room(bag: Bag, base: Clause, verb: str) -> Reading:
    """Spaces: close, open, leave, and what they are for."""
    if verb not in GAINING and verb != "correct":
        raise Refused("verb-does-not-fit")
    purpose = bag.one("FOR")
    bag.take("TO")
    ref = bag.one("REF")
    value, by = amount(bag)
    clause = base.with_(
        dir=GAINING.get(verb, "close"), of=purpose.name if purpose else base.of, ref=ref.name if ref else None
    )
    if base.kind == "clearance":
        if verb not in ("leave", "open") or value is None:
            raise Refused("clearance")
        return [measured(base.with_(ref=ref.name if ref else None), value, "target")], []
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
    value, by = amount(bag)
    way = bag.one("DIR")
    ref = bag.one("REF")
    bag.take("TO")
    clause = base.with_(dir=way.name if way else None, ref=ref.name if ref else None)
    if verb == "move" and value is not None and way is not None and base.arch in ("upper", "lower"):
        return [measured(clause, value, "change")], []
    if verb in ("correct", "match", "coordinate", "move") and value is None and way is None and ref and base.arch:
        return [clause], []
    waiting = measured(base.with_(pending=("arch", "dir")), value, "change" if value else None)
    return [waiting], [Question("reference", "midline-which-way", bag.spans())]


def _levelled(bag: Bag, base: Clause) -> Reading:
    to = bool(bag.take("TO"))
    value, by = amount(bag)
    if value is None:
        return [base], []
    return [measured(base, value, "target" if to and not by else "change")], []


def _without(bag: Bag, base: Clause, strength: Force, context: Context) -> Reading:
    """No verb: a fact, an order, or a question, by the section and by what the findings say (R12)."""
    if strength.denied or strength.wished or strength.only:
        raise Refused("force-without-verb")
    be = bool(bag.take("BE"))
    coincident = bag.one("COINCIDENT")
    if coincident:
        ref = bag.one("REF")
        arch = base.arch or (None if ref else "both")
        return [base.with_(mode="state", of="coincident", arch=arch, ref=ref.name if ref else None)], []
    when = bag.one("WHEN")
    to = bool(bag.take("TO"))
    pair = bag.take("FROMTO")
    if pair:
        return _from_to(base, pair[0].value.before, pair[0].value.after)
    side, ref = bag.one("DIR"), bag.one("REF")
    clause = base.with_(dir=side.name if side else None, ref=ref.name if ref else None)
    if base.kind in ("sagittal", "skeletal"):
        clause, found = _class(bag, clause)
        if not found:
            raise Refused("no-class")
        return _fact_or_order(bag, clause, None, context, be)
    per = basis(bag)
    value, by = amount(bag)
    if per not in (None, "each") or by:
        raise Refused("basis-of-a-measure")
    if strength.allowed:
        return _allowed(clause, value)
    return _timed(bag, clause, value, when.name if when else None, to, context, be)


def _allowed(clause: Clause, value: Amount | None) -> Reading:
    if value is None or value.bound != "at_most":
        raise Refused("allowed-without-bound")
    return [measured(clause.with_(mode="limit"), value, "target")], []


def _timed(
    bag: Bag, clause: Clause, value: Amount | None, when: str | None, to: bool, context: Context, be: bool
) -> Reading:
    if value is None:
        return [], [Question("vague", "no-action", bag.spans())]
    if when == "target" or to:
        return [measured(clause, value, "target")], []
    if when == "current":
        return [measured(clause.with_(mode="state"), value, "current")], []
    return _fact_or_order(bag, clause, value, context, be)


def _fact_or_order(bag: Bag, clause: Clause, value: Amount | None, context: Context, be: bool) -> Reading:
    fact = measured(clause.with_(mode="state"), value, "current")
    if context.section == "findings" or be:
        return [fact], []
    if value is not None and context.section == "plan" and clause.kind in context.stated:
        return [measured(clause.with_(inferred=(*clause.inferred, "mode")), value, "target")], []
    if clause.kind in ("sagittal", "skeletal"):
        return [fact], []
    return [], [Question("finding_or_request", "now-or-wanted", bag.spans())]


def _class(bag: Bag, clause: Clause) -> tuple[Clause, bool]:
    found = bag.one("CLASS")
    return clause.with_(relation=found.name if found else None), found is not None
