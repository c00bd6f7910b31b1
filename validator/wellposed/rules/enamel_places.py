"""Contacts at which there is no enamel to take, or too little."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wellposed.findings import Severity
from wellposed.model.clauses import Leave
from wellposed.model.findings import Finding
from wellposed.rules._declare import Told, rule
from wellposed.rules._enamel import (
    FRONT,
    REPLACED,
    arch_of_contact,
    at_contacts,
    flat,
    named,
    part_of,
    reasons,
    stated,
    states_of,
)
from wellposed.rules.chart import Chart
from wellposed.vocabulary.contacts import normal, teeth_of
from wellposed.vocabulary.teeth import is_primary, place

SPACE, LEFT, SITE, MISSING = (
    *("a measured space", "a space to be left", "an extraction site"),
    "the place of a missing tooth",
)
_REASONS = {
    SPACE: {"tooth-size-discrepancy", "open-gingival-embrasures"},
    SITE: {"tooth-size-discrepancy", "open-gingival-embrasures"},
    MISSING: {"tooth-size-discrepancy", "open-gingival-embrasures", "missing-teeth"},
}
"""Problems for which enamel is reasonably taken where no contact is yet."""


@rule(
    "reduction-at-a-gap",
    Severity.ASK,
    title="Enamel is to be taken where the teeth do not touch, or are to stand apart.",
    says="{asked:clause}: at {contacts:contacts} there is {why:list}.",
    do="Say why enamel is to go at a gap, or name the contact that was meant.",
    change="Another contact would settle it; so would tooth size or open embrasures as its reason, if the gap closes.",
)
def reduction_at_a_gap(chart: Chart) -> Iterator[Told]:
    """Enamel is taken at contacts, not at a measured space, an extraction site, the place of a missing tooth or a space
    to be left.

    There it makes a gap wider instead of room for crowded teeth. Often the contact beside it was meant.

    Evidence: common practice, without a source. To fit a tooth's size or shape, or to close a dark triangle, enamel is
    taken at such places too; stated as the reason, it is let through. The place of a missing front tooth counts as
    closed where the arch is measured as crowded and no space is stated in it.

    Passes: {"findings": [{"id": "f1", "measure": "upper-spacing", "value": 1, "unit": "mm", "contacts": ["11-21"]}],
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["12-11"], "per_contact": 0.3,
                        "unit": "mm"}]}
    Fails: {"findings": [{"id": "f1", "measure": "upper-spacing", "value": 1, "unit": "mm", "contacts": ["11-21"]}],
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["11-21"], "per_contact": 0.3,
                       "unit": "mm"}]}
    """
    for one in named(chart):
        given = reasons(chart, one.place)
        why = {
            name: gap for name in one.contacts if (gap := gap_at(chart, name)) and not given & _REASONS.get(gap, set())
        }
        if why:
            yield at_contacts(one, why, *_spaces(chart, why), why=list(dict.fromkeys(why.values())))


def gap_at(chart: Chart, contact: str) -> str | None:
    """What kind of gap a contact is, if it is one."""
    at = chart.mouth.rows[arch_of_contact(contact)].contact(contact)
    if any(
        goal.amount > 0 and normal(goal.leave) == contact for goal in chart.rx.goals or () if isinstance(goal, Leave)
    ):
        return LEFT
    if at and at.taken:
        return SITE
    if _apart(contact) and not _closed(chart, contact):
        return MISSING
    return SPACE if _spaces(chart, [contact]) else None


def _apart(contact: str) -> bool:
    """Whether a tooth is missing between the two."""
    first, second = (where - (where > 0) for where in map(place, teeth_of(contact)))
    return second - first > 1


def _closed(chart: Chart, contact: str) -> bool:
    """Whether the place of a missing front tooth is closed: its arch is crowded, and no space is stated in it."""
    crowding, spacing = (chart.value(f"{arch_of_contact(contact)}-{what}") for what in ("crowding", "spacing"))
    return part_of(*teeth_of(contact)) == FRONT and bool(crowding) and not spacing


def _spaces(chart: Chart, contacts: Iterable[str]) -> list[str]:
    """The ids of the findings that say there is a space at one of these contacts."""
    spaced = (f for f in chart.rx.findings or () if isinstance(f, Finding) and f.measure.endswith("-spacing"))
    return [f.id for f in spaced if f.value > 0 and {normal(name) for name in f.contacts or ()} & set(contacts)]


@rule(
    "reduction-at-an-implant",
    Severity.ASK,
    title="Enamel is to be taken at an implant or a bridge's pontic.",
    says="{asked:clause}: there is no enamel on {teeth:teeth}, and no movement ({states:words}).",
    do="Say on which tooth, and how much, or leave the contact out.",
    change="If the tooth is not replaced, correct its state.",
)
def reduction_at_an_implant(chart: Chart) -> Iterator[Told]:
    """No enamel is to be taken at a contact with an implant or a pontic.

    All of it would come from the neighbour, toward a tooth that cannot follow, and the contact would open.

    Evidence: that they have no enamel and do not move needs none; that it is asked about is common practice.

    Passes: {"teeth": {"upper": ["13", "12", "11", "21"], "lower": ["31", "41"],
                       "particulars": [{"tooth": "13", "states": ["implant"]}]},
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["12-11"], "per_contact": 0.3,
                        "unit": "mm"}]}
    Fails: {"teeth": {"upper": ["13", "12", "11", "21"], "lower": ["31", "41"],
                      "particulars": [{"tooth": "13", "states": ["implant"]}]},
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["13-12"], "per_contact": 0.3,
                       "unit": "mm"}]}
    """
    for one in named(chart):
        if found := stated(chart, one, *REPLACED):
            teeth = flat(found)
            yield at_contacts(one, found, teeth=teeth, states=states_of(chart, teeth, REPLACED))


@rule(
    "reduction-at-a-primary-tooth",
    Severity.CAUTION,
    title="Enamel is to be taken at a primary or a partly erupted tooth.",
    says="{asked:clause}: a primary tooth, or one not fully erupted, stands there: {teeth:teeth}.",
    do="Say that it is meant, or leave out the contact until the permanent tooth stands.",
    change="Without {contacts:contacts}, or with the state of the tooth corrected, this no longer applies.",
)
def reduction_at_a_primary_tooth(chart: Chart) -> Iterator[Told]:
    """No enamel is to be taken at a primary tooth, or at one that has not fully erupted.

    Primary enamel is thinner, and the tooth takes its contact with it when it goes. Of an erupting tooth the contact
    is not yet in reach, and its pulp is wide.

    Evidence: common practice, without a source. Slicing of primary canines and molars is an old means to guide
    eruption; then it is meant.

    Passes: {"teeth": {"upper": ["11", "21"], "lower": ["83", "42", "41", "31"]},
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["42-41"], "per_contact": 0.3,
                        "unit": "mm"}]}
    Fails: {"teeth": {"upper": ["11", "21"], "lower": ["83", "42", "41", "31"]},
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["83-42"], "per_contact": 0.3,
                       "unit": "mm"}]}
    """
    for one in named(chart):
        young = {
            t for name in one.contacts for t in teeth_of(name) if is_primary(t) or chart.state(t, "partly-erupted")
        }
        if young:
            contacts = [name for name in one.contacts if young & set(teeth_of(name))]
            yield at_contacts(one, contacts, teeth=sorted(young))


@rule(
    "reduction-at-a-small-crown",
    Severity.CAUTION,
    title="Enamel is to be taken at a tooth with a small crown.",
    says="{asked:clause}: a small crown is stated of {teeth:teeth}.",
    do="Say that it is meant, or leave out the contact.",
    change="Without {contacts:contacts}, or with the state of the tooth corrected, this no longer applies.",
    sources=("pinheiro-2002",),
)
def reduction_at_a_small_crown(chart: Chart) -> Iterator[Told]:
    """No enamel is to be taken at a tooth that is stated to have a small crown.

    It makes a narrow tooth narrower, and what is lacking there is usually made up by adding to it.

    Evidence: small teeth stand in a published list of contraindications; the list itself is recalled.

    Passes: {"teeth": {"upper": ["13", "12", "11", "21"], "lower": ["31", "41"],
                       "particulars": [{"tooth": "12", "states": ["small-crown"]}]},
             "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["11-21"], "per_contact": 0.3,
                        "unit": "mm"}]}
    Fails: {"teeth": {"upper": ["13", "12", "11", "21"], "lower": ["31", "41"],
                      "particulars": [{"tooth": "12", "states": ["small-crown"]}]},
            "allow": [{"id": "a1", "use": "enamel-reduction", "contacts": ["12-11"], "per_contact": 0.3,
                       "unit": "mm"}]}
    """
    for one in named(chart):
        if found := stated(chart, one, "small-crown"):
            yield at_contacts(one, found, teeth=flat(found))


RULES = (reduction_at_a_gap, reduction_at_an_implant, reduction_at_a_primary_tooth, reduction_at_a_small_crown)
