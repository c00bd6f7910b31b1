"""Spaces: what is there, what is closed, what is left or opened, and for what."""

from __future__ import annotations

from typing import Final

from wellposed.vocabulary.teeth import arch_of, is_primary, position, tooth_at
from wellposed.vocabulary.units import MM
from wellposed_converters.text.draft.bites import arches, diagnosis, told, unmeasured
from wellposed_converters.text.draft.measured import statement
from wellposed_converters.text.draft.part import Facts, NotCarried, Order, Part, plain

ABSENT: Final = ("missing", "extracted")
PURPOSES: Final = ("implant", "pontic", "veneer", "bridge", "crown")
PLAIN: Final = (None, "diastema", "spacing")
SECOND_MOLAR: Final = 7


def space(facts: Facts) -> tuple[Part, ...]:
    """A space as a finding, as one to be closed, or as one to be left."""
    if facts.mode == "state":
        return _found(facts)
    if facts.mode == "keep":
        return _kept(facts)
    if facts.mode not in ("do", "prefer"):
        raise NotCarried("force-does-not-fit")
    way = facts.take("dir")
    if way == "close":
        return _closed(facts)
    if way in ("leave", "open"):
        return _left(facts, way)
    raise NotCarried("which-way")


def _found(facts: Facts) -> tuple[Part, ...]:
    of = facts.clause.of
    if of == "black_triangle":
        return told(facts, "open-gingival-embrasures")
    if of not in (*PLAIN, "none", "mild", "moderate", "severe"):
        return told(facts)
    if facts.clause.contacts:
        return (_gap(facts),)
    if unmeasured(facts) and of != "none":
        if of in PLAIN:
            facts.take("of")
        return tuple(diagnosis(facts, "spacing", arch=arch)[0] for arch in arches(facts))
    named = arches(facts)
    if len(named) > 1 and of != "none":
        raise NotCarried("which-arch")
    if of != "none":
        facts.take("of")
    return tuple(part for arch in named for part in statement(facts, f"{arch}-spacing"))


def _gap(facts: Facts) -> Part:
    """The space at one contact is the spacing of its arch, there."""
    contacts = facts.contacts()
    facts.take("of")
    if unmeasured(facts):
        return Part("problems", {"problem": "spacing", "teeth": _teeth_of(contacts)})
    if len(contacts) != 1:
        raise NotCarried("not-one-value")
    (part,) = statement(facts, f"{arch_of(contacts[0][:2])}-spacing", contacts=contacts)
    return part


def _teeth_of(contacts: list[str]) -> list[str]:
    return list(dict.fromkeys(tooth for contact in contacts for tooth in contact.split("-")))


def _kept(facts: Facts) -> tuple[Part, ...]:
    if facts.take("of") not in PLAIN or facts.clause.contacts or facts.clause.teeth:
        raise NotCarried("no-such-clause")
    return tuple(part for arch in arches(facts) for part in statement(facts, f"{arch}-spacing"))


def _closed(facts: Facts) -> tuple[Part, ...]:
    of = facts.take("of")
    if of == "black_triangle":
        raise NotCarried("black-triangle")
    if of not in (*PLAIN, "extraction_site"):
        raise NotCarried("more-than-the-format-says")
    if facts.amount("target", "change", "current") is not None:
        raise NotCarried("amount-of-something-else")
    goal = {"strength": facts.strength}
    contacts, sites = facts.contacts(), facts.teeth()
    if contacts:
        return (Part("goals", {**goal, "close": contacts}),)
    if sites:
        return (Part("goals", {**goal, "close": [beside(facts.order, site) for site in sites]}),)
    return tuple(Part("goals", {**goal, "close_arch": arch}) for arch in arches(facts))


def _left(facts: Facts, way: str) -> tuple[Part, ...]:
    """Exactly so much room; by an amount only where the present space is said exactly."""
    amount = facts.amount("target", "change")
    purpose = facts.take("of")
    if amount is None:
        raise NotCarried("no-amount")
    if amount.exact is None or amount.unit != MM:
        raise NotCarried("about" if amount.about else "not-one-value")
    if purpose not in (*PLAIN, *PURPOSES, "extraction_site") or (way == "leave" and facts.clause.measure == "change"):
        raise NotCarried("more-than-the-format-says")
    if facts.clause.measure == "change":
        raise NotCarried("change-without-present")
    contacts = facts.contacts() or [beside(facts.order, site) for site in facts.teeth()]
    if not contacts:
        raise NotCarried("space-without-place")
    value = {"strength": facts.strength, "amount": plain(amount.exact), "unit": MM}
    goals = tuple(Part("goals", {**value, "leave": contact}) for contact in contacts)
    return (*goals, *_purpose(facts)) if purpose in PURPOSES else goals


def _purpose(facts: Facts) -> tuple[Part, ...]:
    """What the room is for has no member: it is noted beside the clause."""
    return (Part("notes", {"text": f"Purpose: {facts.clause.of}."}),)


def beside(order: Order, site: str) -> str:
    """The contact of the teeth beside the place of a missing or extracted tooth.

    Raises:
        NotCarried: when the tooth is there as far as the note says, or it is not certain which teeth stand beside it
    """
    gone = gone_teeth(order)
    if site not in gone or is_primary(site):
        raise NotCarried("space-without-place")
    row = _row(arch_of(site))
    at = row.index(site)
    before = next((tooth for tooth in reversed(row[:at]) if tooth not in gone), None)
    after = next((tooth for tooth in row[at + 1 :] if tooth not in gone), None)
    if before is None or after is None or max(map(position, (before, after))) > SECOND_MOLAR:
        raise NotCarried("space-without-place")
    return f"{before}-{after}"


def gone_teeth(order: Order) -> frozenset[str]:
    """Teeth that are missing, or are to be extracted."""
    missing = [one for _, one in order.of(("tooth_status",), ("state",)) if one.of in ABSENT]
    leaving = [one for _, one in order.of(("extraction",), ("do",))]
    return frozenset(str(number) for one in (*missing, *leaving) for number in one.teeth)


def _row(arch: str) -> list[str]:
    """The permanent teeth of an arch from the patient's right to left."""
    right = [tooth_at(arch, "right", number) for number in range(8, 0, -1)]
    return right + [tooth_at(arch, "left", number) for number in range(1, 9)]
