"""Contacts: two teeth that stand beside each other, each named once."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.consistency.whole import Mention, Whole, Written, mentions
from wellposed.declare import Told, rule, told
from wellposed.findings import Severity
from wellposed.model.means import EnamelReduction
from wellposed.vocabulary.contacts import contacts_of, normal, same_arch, teeth_of
from wellposed.vocabulary.teeth import TEETH, arch_of


@rule(
    "no-such-tooth",
    Severity.STOP,
    title="A contact names a tooth that no mouth has.",
    do="Correct the number: ISO 3950 has 1 to 8 for permanent teeth and 1 to 5 for primary ones.",
)
def no_such_tooth(whole: Written) -> Iterator[Told]:
    """Both numbers of a contact are ISO 3950 numbers of teeth.

    A primary tooth past 5 is a slip, or a number of another notation.

    Passes: {"goals": [{"id": "g1", "strength": "must", "close": ["14-15"]}]}
    Fails: {"goals": [{"id": "g1", "strength": "must", "close": ["14-56"]}]}
    """
    for contact in whole.contacts:
        for tooth in teeth_of(contact.name):
            if tooth not in TEETH:
                yield told(contact.pointer, contact.owner, tooth=tooth, contact=contact.name)


@rule(
    "contact-across-arches",
    Severity.STOP,
    title="A contact joins an upper and a lower tooth.",
    do="Name two teeth of one arch.",
)
def contact_across_arches(whole: Written) -> Iterator[Told]:
    """A contact is between two teeth of one arch.

    Side by side is meant, not one above the other: one of the two numbers has the wrong quadrant.

    Passes: {"goals": [{"id": "g1", "strength": "must", "close": ["11-21"]}]}
    Fails: {"goals": [{"id": "g1", "strength": "must", "close": ["11-41"]}]}
    """
    for contact in whole.contacts:
        if not same_arch(contact.name) and all(tooth in TEETH for tooth in teeth_of(contact.name)):
            yield told(contact.pointer, contact.owner, contact=contact.name)


@rule(
    "not-neighbours",
    Severity.STOP,
    title="A contact names two teeth that are not neighbours.",
    do="Name two teeth that stand beside each other; where one between them is missing or goes, they do.",
)
def not_neighbours(whole: Whole) -> Iterator[Told]:
    """The two teeth of a contact stand beside each other: in a finding before extraction, elsewhere after it.

    `13-15` is right where 14 is missing or extracted, and a fault where 14 stands between.

    Passes: {"allow": [{"id": "a1", "use": "extraction", "teeth": ["14"]}],
             "goals": [{"id": "g1", "strength": "must", "close": ["13-15"]}]}
    Fails: {"goals": [{"id": "g1", "strength": "must", "close": ["13-15"]}]}
    """
    for contact in whole.contacts:
        line = whole.line(arch_of(contact.name), before=contact.place.section == "findings")
        beside = contacts_of(line)
        if normal(contact.name) not in beside and same_arch(contact.name) and _stand(whole, contact, line):
            near = [name for name in beside if set(teeth_of(name)) & set(teeth_of(contact.name))]
            hidden = [tooth for tooth in teeth_of(contact.name) if whole.stated(tooth, "unerupted")]
            facts = {"not_in_line": hidden} if hidden else {}
            yield told(contact.pointer, contact.owner, contact=contact.name, expected=near, **facts)


def _stand(whole: Whole, contact: Mention, line: tuple[str, ...]) -> bool:
    """Whether both teeth are in line or unerupted; of those not there, or gone, other rules speak."""
    return all(tooth in line or whole.stated(tooth, "unerupted") for tooth in teeth_of(contact.name))


@rule(
    "contact-listed-twice",
    Severity.STOP,
    title="A list names the same contact twice.",
    do="Name each contact once, or write the contact that was meant.",
)
def contact_listed_twice(whole: Written) -> Iterator[Told]:
    """A list names each contact once; `33-32` and `32-33` are one contact.

    The second was probably meant to be another contact, and amounts are counted by the contact.

    Passes: {"goals": [{"id": "g1", "strength": "must", "close": ["33-32", "32-31"]}]}
    Fails: {"goals": [{"id": "g1", "strength": "must", "close": ["33-32", "32-33"]}]}
    """
    for place in whole.places:
        seen: dict[str, str] = {}
        for contact in mentions(place, ("contacts", "close")):
            first = seen.setdefault(normal(contact.name), contact.pointer)
            if first != contact.pointer:
                yield told(contact.pointer, contact.owner, contact=contact.name, first=first)


@rule(
    "reduction-place",
    Severity.STOP,
    title="An enamel reduction must say where: contacts, or an arch, and not both.",
    do="Name the contacts, or the arch.",
)
def reduction_place(whole: Written) -> Iterator[Told]:
    """An enamel reduction names the contacts, or an arch, which means first molar to first molar.

    With neither nobody knows where to take enamel off; with both, whether the arch or the list counts.

    Passes: {"allow": [{"id": "a1", "use": "enamel-reduction", "arch": "lower", "in_all": 1, "unit": "mm"}]}
    Fails: {"allow": [{"id": "a1", "use": "enamel-reduction", "in_all": 1, "unit": "mm"}]}
    """
    for place in whole.of("allow"):
        part = place.part
        if isinstance(part, EnamelReduction) and (part.contacts is None) == (part.arch is None):
            found = [member for member in ("contacts", "arch") if place.said(member) is not None]
            yield told(place.pointer, place.owner, expected=["contacts", "arch"], found=found)


RULES = (
    *(no_such_tooth, contact_across_arches, not_neighbours),
    *(contact_listed_twice, reduction_place),
)
