"""Findings against orders, and findings against each other."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wellposed_converters.text.checks.order import ACTED, CONFIRM, STOP, WANTED, Numbered, Order, ask
from wellposed_converters.text.checks.reach import is_open, overlap
from wellposed_converters.text.clause import Clause, Contact, Question
from wellposed_converters.text.places.notation import BOTH, LEFT, LOWER, RIGHT, UPPER, arch_of, tooth

CENTRALS: Final = frozenset(number for side in (RIGHT, LEFT) if (number := tooth(UPPER, side, 1)))
SECOND_CLASS: Final = frozenset(("II", "II/1", "II/2"))
THIRD_CLASS: Final = frozenset(("III",))
OPPOSED: Final = {"II": THIRD_CLASS, "III": SECOND_CLASS}
MOLARS: Final = frozenset((6, 7))


def spaced(order: Order) -> Iterator[Question]:
    """Enamel reduction in a spaced arch: "Spaced upper arch. IPR upper 13-23." """
    for now in order.states("space", ("spacing",)):
        if now.clause.maximum == 0:
            continue
        about = [one for one in order.of(("ipr",), {*WANTED, "limit"}) if overlap(now.clause, one.clause)]
        if about:
            yield ask("spaced-and-stripped", CONFIRM, [now, *about])


def class_one(order: Order) -> Iterator[Question]:
    """Class I as found and as asked for: "Class I both sides, no elastics. Distalise to Class I." """
    for now in order.states("sagittal"):
        if now.clause.relation == "I":
            about = [one for one in order.of(("sagittal", "move"), WANTED) if _to_class_one(now.clause, one.clause)]
            if about:
                yield ask("class-one-and-corrected", CONFIRM, [now, *about])


def _to_class_one(now: Clause, one: Clause) -> bool:
    if one.kind == "sagittal":
        return one.relation == "I" and _same_place(now, one)
    molars = is_open(one) or not one.teeth or any(number % 10 in MOLARS for number in one.teeth)
    return one.dir == "distal" and now.of in (None, "molar") and molars and _same_place(now, one)


def _same_place(now: Clause, one: Clause) -> bool:
    sides = now.side in (None, BOTH) or one.side in (None, BOTH, now.side)
    return sides and (one.kind != now.kind or None in (now.of, one.of) or now.of == one.of)


def overjet_and_crossbite(order: Order) -> Iterator[Question]:
    """An overjet and incisors in crossbite: "Overjet 7 mm. Anterior crossbite 11 21." """
    for now in order.states("overjet"):
        for cross in order.states("crossbite"):
            if _is_positive(now.clause) and _at_centrals(cross.clause):
                yield ask("overjet-and-crossbite", STOP, [now, cross])


def _is_positive(now: Clause) -> bool:
    return now.measure == "current" and now.of != "reverse" and now.minimum is not None and now.minimum > 0


def _at_centrals(cross: Clause) -> bool:
    return not is_open(cross) and (set(cross.teeth) >= CENTRALS or (cross.of == "anterior" and not cross.teeth))


def class_and_overjet(order: Order) -> Iterator[Question]:
    """A Class II with a reverse overjet: "Class II/1, reverse overjet 2 mm." """
    for relation in order.states("sagittal"):
        for now in order.states("overjet"):
            second = relation.clause.relation in SECOND_CLASS and relation.clause.of in (None, "incisor")
            reverse = now.clause.of == "reverse" or (now.clause.maximum is not None and now.clause.maximum < 0)
            if second and reverse:
                yield ask("class-against-overjet", CONFIRM, [relation, now])


def open_and_deep(order: Order) -> Iterator[Question]:
    """An anterior open bite and an overbite: "AOB 3 mm, overbite 4 mm." """
    for open_ in order.states("openbite", (None, "anterior")):
        for deep in order.states("overbite"):
            if _is_positive(deep.clause) and open_.clause.mode == "state":
                yield ask("open-bite-and-overbite", CONFIRM, [open_, deep])


def elastics(order: Order) -> Iterator[Question]:
    """Elastics that run against their class: "Class III elastics from 13 to 46"; or against the class that is found."""
    for elastic in order.of(("elastic",), ACTED):
        run = {_pattern(link) for link in _links(elastic.clause)} - {None}
        named = _class_of(elastic.clause)
        if named in OPPOSED and run and named not in run:
            yield ask("elastics-against-class", CONFIRM, [elastic], run=str(next(iter(run))))
        yield from _against_found(order, elastic)


def _against_found(order: Order, elastic: Numbered) -> Iterator[Question]:
    if list(order.states("patient", ("pre_surgical",))):
        return
    for now in order.states("sagittal"):
        if now.clause.relation in OPPOSED.get(_class_of(elastic.clause), ()):
            yield ask("elastics-against-finding", CONFIRM, [now, elastic])


def _class_of(elastic: Clause) -> str:
    """The class that elastics are named after; "" for the rest."""
    return elastic.relation or (elastic.of or "").removeprefix("class_")


def _links(elastic: Clause) -> tuple[Contact, ...]:
    """From where to where; two teeth of two arches are one link."""
    if elastic.links or len(elastic.teeth) != len((UPPER, LOWER)):
        return elastic.links
    return ((elastic.teeth[0], elastic.teeth[1]),)


def _pattern(link: Contact) -> str | None:
    """Class II from the front above to the back below, Class III from the front below to the back above."""
    if arch_of(link[0]) == arch_of(link[1]):
        return None
    above, below = sorted(link, key=lambda number: arch_of(number) == LOWER)
    if above % 10 == below % 10:
        return None
    return "II" if above % 10 < below % 10 else "III"
