"""Statements about something measured: overbite, overjet, midline, spaces, widths, relations."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from wellposed_converters.text.clause import Clause, Question
from wellposed_converters.text.grammar.refused import Refused
from wellposed_converters.text.places import in_mouth_order
from wellposed_converters.text.statements.force import force
from wellposed_converters.text.statements.kept_within import says_kept
from wellposed_converters.text.statements.measure_facts import without_verb
from wellposed_converters.text.statements.measure_parts import Reading
from wellposed_converters.text.statements.measure_verbs import KEEPING, denied, softened, with_verb
from wellposed_converters.text.statements.statement import Bag, Context, Read, Said
from wellposed_converters.text.statements.where import Where, placed, where

PLACELESS: Final = frozenset(("overbite", "overjet", "curve_of_spee", "guidance", "skeletal", "openbite"))
PLACED: Final = frozenset(("space", "level", "crossbite", "archwidth", "clearance", "incline"))
"""Measures that are of teeth; a place before a colon says nothing of the others."""
CONTACTS: Final = frozenset(("space",))


def measure(bag: Bag, context: Context) -> Read:
    """What is said of the measure at the head. :raises Refused: when the words make no one statement of it."""
    facts = bag.facts()
    if str(facts.get("of", "")).startswith("?"):
        return _asked(bag, facts["of"][1:])
    if bag.has("VERB", "keep", "accept") and not bag.has("PLACE"):
        bag.take("THERE")
    place = _place(bag, facts, context)
    base = _based(Clause(facts["kind"], "do", bag.spans(), of=facts.get("of"), arch=facts.get("arch")), place, bag)
    if base.kind == "clearance" and not place.said and context.before is not None and context.before.place is not None:
        base = base.with_(teeth=context.before.teeth)
    lost = base.kind == "clearance" and not (base.teeth or base.pending)
    if base.kind == "clearance" and place.said and bag.has("TO"):
        raise Refused("clearance-to-what")
    clauses, questions = _said(bag, base, context)
    if lost:
        clauses = [clause.with_(pending=("teeth",)) for clause in clauses]
        questions = [*questions, Question("teeth", "which-teeth", bag.spans())]
    bag.done()
    return Read(tuple(clauses), (*place.questions, *questions))


def _place(bag: Bag, facts: Mapping[str, Any], context: Context) -> Where:
    kind = facts["kind"]
    place = where(bag, context, "pair" if kind in CONTACTS else "teeth")
    named = bool(place.teeth or place.contacts or place.open)
    if named and not place.said and kind not in PLACED:
        place = Where()
    elif named and place.said and kind in PLACELESS:
        raise Refused("place-of-a-measure")
    return _space_before(facts, place, context) if kind == "space" and not place.said else place


def _based(clause: Clause, place: Where, bag: Bag) -> Clause:
    """The clause at its place, before anything is said of the measure."""
    if clause.kind == "midline":
        return _midline(clause, place)
    site = clause.kind == "space" and place.said and place.teeth and not place.contacts and not clause.of
    if site:
        clause = clause.with_(of="extraction_site" if bag.facts().get("points") else None)
    return placed(clause, place, "teeth")


def _said(bag: Bag, base: Clause, context: Context) -> Reading:
    strength = force(bag)
    verbs = bag.verbs() | ({"keep"} if says_kept(bag) else set())
    if not verbs:
        return without_verb(bag, base, strength, context)
    if len(verbs) > 1 and verbs <= KEEPING | {"leave"}:
        verbs = {"keep"}
    if len(verbs) > 1:
        raise Refused("two-verbs")
    verb = verbs.pop()
    if strength.wished or strength.only or strength.allowed:
        return softened(bag, base, strength, verb)
    return denied(base, verb) if strength.denied else with_verb(bag, base, verb)


def _space_before(facts: Mapping[str, Any], place: Where, context: Context) -> Where:
    """The sites of the extractions before, or nobody knows which: "that space", "all extraction spaces"."""
    sites, points = facts.get("of") == "extraction_site", facts.get("points")
    if not sites and not points:
        return place
    taken = {tooth for one in context.earlier if one.kind == "extraction" and one.mode == "do" for tooth in one.teeth}
    if taken and (sites or _about(context.before, "extraction")):
        return Where(teeth=in_mouth_order(taken), said=True)
    return Where(open=True, questions=(Question("teeth", "which-space", ()),), said=True)


def _about(said: Said | None, kind: str) -> bool:
    return said is not None and bool(said.clauses) and said.clauses[-1].kind == kind


def _midline(base: Clause, place: Where) -> Clause:
    if place.open:
        return base.with_(pending=("arch",))
    if place.teeth or place.contacts:
        raise Refused("midline-of-teeth")
    return base.with_(arch=base.arch or place.arch)


def _asked(bag: Bag, why: str) -> Read:
    bag.items.clear()
    return Read((), (Question("meaning", why, bag.spans()),))
