"""A document as the rules look at it: every part with its place, and every tooth and contact named."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Any, NamedTuple

from wellposed.model.base import Part
from wellposed.model.envelope import Envelope
from wellposed.model.means import EnamelReduction, WidthChange
from wellposed.model.prescription import Prescription
from wellposed.vocabulary.contacts import contacts_of, normal, teeth_of
from wellposed.vocabulary.teeth import ARCHES, SIDES, TEETH, along_arch, arch_of, tooth_at

if TYPE_CHECKING:
    from wellposed.kinematics.mouth import Mouth

SECTIONS = (
    *("teeth", "conditions", "findings", "problems", "goals", "keep", "movements", "allow", "exclude"),
    *("expect", "attachments", "staging", "appliance", "process", "retention", "notes"),
)
TOOTH_MEMBERS = (
    *("teeth", "align", "hold", "must", "must_not", "may", "prefer", "prefer_not"),
    *("pair", "tooth", "start", "end", "values", "extractions"),
)
CONTACT_MEMBERS = ("contacts", "contact", "close", "leave")
REFERENCE_MEMBERS = ("because", "about", "first", "then", "before", "accepted", "revising")
_REDUCED_TO, _WIDENED = 6, range(3, 8)


class Place(NamedTuple):
    """A part of the document: where it stands, and the id of the clause it is or belongs to ("" if none)."""

    pointer: str
    section: str
    owner: str
    part: Part

    def said(self, member: str) -> Any:
        """What the part says under this name; None if it does not, or has no such member."""
        return vars(self.part).get(member)  # every member stands there, said or not; much faster than getattr


class Mention(NamedTuple):
    """A name in a part: a tooth, a contact or an id, and the member it stands in."""

    pointer: str
    name: str
    member: str
    place: Place

    @property
    def owner(self) -> str:
        """The id of the clause that names it."""
        return self.place.owner


def mentions(place: Place, members: Iterable[str]) -> Iterator[Mention]:
    """The names that stand in these members of a part, in order."""
    for member in members:
        said, pointer = place.said(member), f"{place.pointer}/{member}"
        if isinstance(said, str):
            yield Mention(pointer, said, member, place)
        elif isinstance(said, Mapping):
            yield from (Mention(f"{pointer}/{name}", name, member, place) for name in said)
        else:
            named = enumerate(said or ())
            yield from (Mention(f"{pointer}/{index}", name, member, place) for index, name in named)


def existing(contact: Mention) -> tuple[str, ...]:
    """The teeth of a contact that any mouth can have; two digits alone are not always a tooth."""
    return tuple(tooth for tooth in teeth_of(contact.name) if tooth in TEETH)


class Section(NamedTuple):
    """A section of a document: its name, where it stands, what stands there."""

    name: str
    pointer: str
    value: object


@dataclass(frozen=True)
class Written:
    """A document with what the rules look up in it. Nothing here changes it."""

    document: Envelope

    def sections(self) -> Iterable[Section]:
        """The sections that have parts, in the order of the model; none in a document that is only an envelope."""
        return ()

    def whole(self) -> Iterable[Place]:
        """The document as a part of its own, where it names teeth or clauses itself."""
        return ()

    @cached_property
    def places(self) -> tuple[Place, ...]:
        """Every part, sections in the order of the model, a part before those inside it."""
        inside = (place for one in self.sections() for place in _inside(one.value, one.pointer, one.name, ""))
        return (*self.whole(), *inside)

    def of(self, *sections: str) -> Iterator[Place]:
        """The parts of these sections."""
        return (place for place in self.places if place.section in sections)

    @cached_property
    def teeth(self) -> tuple[Mention, ...]:
        """Every tooth a part names, but for those of contacts and the lists of teeth present."""
        return tuple(name for place in self.places for name in mentions(place, TOOTH_MEMBERS))

    @cached_property
    def contacts(self) -> tuple[Mention, ...]:
        """Every contact a part names."""
        return tuple(name for place in self.places for name in mentions(place, CONTACT_MEMBERS))

    @cached_property
    def references(self) -> tuple[Mention, ...]:
        """Every id a part refers to."""
        return tuple(name for place in self.places for name in mentions(place, REFERENCE_MEMBERS))

    @cached_property
    def ids(self) -> dict[str, str]:
        """Every id, and where it first stands."""
        found: dict[str, str] = {}
        for place in self.places:
            if place.said("id"):
                found.setdefault(place.owner, f"{place.pointer}/id")
        return found

    def named(self, reference: Mention) -> Collection[str]:  # noqa: ARG002 - a review tells members apart
        """The ids that a reference may name."""
        return self.ids

    def reduced(self, reduction: EnamelReduction) -> list[str]:
        """The contacts a reduction is allowed at; of an arch whose teeth are not told, as many as it can have."""
        return [normal(name) for name in reduction.contacts or _all_contacts(str(reduction.arch))]

    def widened(self, change: WidthChange) -> list[str]:
        """The teeth a widening or narrowing is allowed for; where teeth are not told, all there can be."""
        return list(change.teeth or (tooth_at(change.arch, side, number) for side in SIDES for number in _WIDENED))


@dataclass(frozen=True)
class Whole(Written):
    """A prescription, looked up."""

    document: Prescription

    @property
    def prescription(self) -> Prescription:
        """The prescription itself."""
        return self.document

    def sections(self) -> Iterable[Section]:
        """The sections of a prescription that have parts."""
        return (Section(name, f"/{name}", getattr(self.document, name)) for name in SECTIONS)

    @cached_property
    def mouth(self) -> Mouth:
        """The mouth as the arithmetic reads it, loaded when first asked for."""
        from wellposed.kinematics.mouth import Mouth  # noqa: PLC0415 - the rules are listed without it

        return Mouth(self.prescription)

    def reduced(self, reduction: EnamelReduction) -> list[str]:
        """The contacts a reduction is allowed at."""
        from wellposed.kinematics.means import reduction_contacts  # noqa: PLC0415 - the same

        return reduction_contacts(self.mouth, reduction)

    def widened(self, change: WidthChange) -> list[str]:
        """The teeth a widening or narrowing is allowed for."""
        from wellposed.kinematics.openings import side_teeth  # noqa: PLC0415 - the same

        return list(change.teeth or side_teeth(self.mouth, change.arch))

    def line(self, arch: str, before: bool = False) -> tuple[str, ...]:
        """The teeth in line in an arch, right to left: after extraction, or before it."""
        row = self.mouth.rows[arch]
        return tuple(dict.fromkeys(t for t in (row.initial if before else row.teeth) if arch_of(t) == arch))

    def stated(self, tooth: str, state: str) -> bool:
        """Whether a tooth is said to be in this state."""
        entries = self.prescription.teeth.particulars or ()
        return any(entry.tooth == tooth and state in entry.states for entry in entries)

    @cached_property
    def present(self) -> frozenset[str]:
        """The teeth that are there: those listed, and those said to be unerupted."""
        teeth = self.prescription.teeth
        hidden = (entry.tooth for entry in teeth.particulars or () if "unerupted" in entry.states)
        return frozenset((*teeth.upper, *teeth.lower, *hidden))


def _all_contacts(arch: str) -> tuple[str, ...]:
    """The contacts of a full permanent arch from first molar to first molar; none of no arch."""
    if arch not in ARCHES:
        return ()
    row = (tooth_at(arch, side, number) for side in SIDES for number in range(1, _REDUCED_TO + 1))
    return contacts_of(along_arch(tuple(row)))


def _inside(value: object, pointer: str, section: str, owner: str) -> Iterator[Place]:
    if isinstance(value, Part):
        owner = getattr(value, "id", owner)
        yield Place(pointer, section, owner, value)
        for name in type(value).model_fields:
            yield from _inside(getattr(value, name), f"{pointer}/{name}", section, owner)
    elif isinstance(value, tuple):
        for index, inner in enumerate(value):
            yield from _inside(inner, f"{pointer}/{index}", section, owner)
