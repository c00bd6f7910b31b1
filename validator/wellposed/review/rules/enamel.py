"""Enamel that the plan takes where there is none to take, or where one asks first."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.findings import Severity
from wellposed.review.held import Held
from wellposed.review.rules.timing import reductions
from wellposed.rules._declare import Told, rule, told
from wellposed.rules._enamel import REPLACED, named
from wellposed.rules.enamel_places import gap_at
from wellposed.rules.enamel_restored import RESTORED
from wellposed.vocabulary.contacts import normal, teeth_of
from wellposed.vocabulary.teeth import is_primary

_DOUBTFUL = ("partly-erupted", "small-crown", *RESTORED)


@rule(
    "reduction-planned-without-contact",
    Severity.ASK,
    title="The plan takes enamel where teeth do not touch or have none.",
    says="The plan takes enamel at {contacts:contacts}, and there is {why:list}.",
    do="Ask which contact is meant, or what the enamel is taken for.",
    change="Another contact, or one that the prescription names, would change it.",
)
def reduction_planned_without_contact(held: Held) -> Iterator[Told]:
    """The plan takes enamel at contacts, not at a measured space, an extraction site, a space to be left, an implant or
    a pontic, unless the prescription names that contact; nor between teeth that do not stand beside each other.

    At a gap it makes the gap wider; at an implant all of it comes from the neighbour. Often the contact beside it was
    meant.

    Evidence: common practice, without a source. A prescription that names such a contact is asked about in its own
    check.

    Passes: {"prescription": {"findings": [{"id": "f1", "measure": "upper-spacing", "value": 1, "unit": "mm",
                                            "contacts": ["11-21"]}]},
             "reductions": [{"contact": "12-11", "amount": 0.3, "unit": "mm", "before_aligner": 1}]}
    Fails: {"prescription": {"findings": [{"id": "f1", "measure": "upper-spacing", "value": 1, "unit": "mm",
                                           "contacts": ["11-21"]}]},
            "reductions": [{"contact": "11-21", "amount": 0.3, "unit": "mm", "before_aligner": 1}]}
    """
    why = {name: (pointer, gap) for pointer, name in _chosen(held) if (gap := _nothing_at(held, name))}
    if why:
        pointers, gaps = zip(*why.values(), strict=True)
        yield told(pointers[0], contacts=list(why), why=list(dict.fromkeys(gaps)))


def _nothing_at(held: Held, contact: str) -> str | None:
    replaced = (held.chart.state(tooth, *REPLACED) for tooth in teeth_of(contact))
    state = next((state for state in replaced if state), None)
    if state:
        return f"a tooth without enamel ({state})"
    return _apart(held, contact) or gap_at(held.chart, contact)


def _apart(held: Held, contact: str) -> str | None:
    """Why the two teeth do not stand beside each other in line, if they do not."""
    if held.contact(contact):
        return None
    absent = [tooth for tooth in teeth_of(contact) if tooth not in held.standing]
    return f"a tooth that is not in line ({', '.join(absent)})" if absent else "another tooth between the two"


@rule(
    "reduction-planned-at-doubtful-tooth",
    Severity.CAUTION,
    title="The plan takes enamel at teeth where one asks first.",
    says="The plan takes enamel at {contacts:contacts}; stated of {teeth:teeth}: {states:words}.",
    do="Say that it is meant, or ask for other contacts.",
    change="Other contacts, or contacts that the prescription names, would change it.",
    sources=("pinheiro-2002",),
)
def reduction_planned_at_doubtful_tooth(held: Held) -> Iterator[Told]:
    """The plan takes no enamel at a primary, partly erupted, small or restored tooth, unless the prescription names
    that contact.

    Of a primary or erupting tooth the contact is not yet the one that counts; a small crown becomes smaller; beside a
    restoration one surface may have to give all.

    Evidence: small teeth stand in a published list of contraindications, recalled; the rest is common practice.

    Passes: {"reductions": [{"contact": "12-11", "amount": 0.3, "unit": "mm", "before_aligner": 1}]}
    Fails: {"prescription": {"teeth": {"upper": ["13", "12", "11", "21"], "lower": ["31", "41"],
                                       "particulars": [{"tooth": "12", "states": ["small-crown"]}]}},
            "reductions": [{"contact": "12-11", "amount": 0.3, "unit": "mm", "before_aligner": 1}]}
    """
    states = {(pointer, name): _doubts(held, name) for pointer, name in _chosen(held)}
    found = {at: doubts for at, doubts in states.items() if doubts}
    if found:
        teeth = {tooth: state for doubts in found.values() for tooth, state in doubts.items()}
        contacts, states_there = (list(dict.fromkeys(listed)) for listed in ((n for _, n in found), teeth.values()))
        yield told(next(iter(found))[0], contacts=contacts, teeth=list(teeth), states=states_there)


def _doubts(held: Held, contact: str) -> dict[str, str]:
    states = {t: "primary" if is_primary(t) else held.chart.state(t, *_DOUBTFUL) for t in teeth_of(contact)}
    return {tooth: state for tooth, state in states.items() if state}


def _chosen(held: Held) -> Iterator[tuple[str, str]]:
    """The planned reductions at contacts that the prescription does not name itself."""
    asked = {normal(contact) for one in named(held.chart) for contact in one.contacts}
    return ((pointer, name) for pointer, _, name in reductions(held) if name not in asked)


RULES = (reduction_planned_without_contact, reduction_planned_at_doubtful_tooth)
