"""A setup as the rules look at it: what it says of each tooth, at the end and on the way."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from wellposed.consistency.whole import Place, Section, Written, existing, mentions
from wellposed.model.setup import MovementTable, Setup
from wellposed.vocabulary.teeth import ARCHES, arch_of

SETUP_SECTIONS = ("movements", "reductions", "attachments", "stages", "predicted", "statements", "notes")
What = tuple[str, str]
"""A tooth and one of its variables."""


class Moved(NamedTuple):
    """A movement a table states: where it stands, of what, how far, and in which unit."""

    pointer: str
    what: What
    value: float
    unit: str


@dataclass(frozen=True)
class WholeSetup(Written):
    """A setup, looked up."""

    document: Setup

    def sections(self) -> Iterable[Section]:
        """The sections of a setup that have parts."""
        return (Section(name, f"/{name}", getattr(self.document, name)) for name in SETUP_SECTIONS)

    def whole(self) -> Iterable[Place]:
        """The setup itself names the teeth that are taken out."""
        return (Place("", "", "", self.document),)

    def moved(self, *sections: str) -> Iterator[Moved]:
        """Every movement stated in the tables of these sections."""
        for place in self.of(*sections):
            if isinstance(place.part, MovementTable):
                for tooth in mentions(place, ("values",)):
                    what = (tooth.name, place.part.variable)
                    yield Moved(tooth.pointer, what, place.part.values[tooth.name], place.part.unit)

    @cached_property
    def stated(self) -> dict[What, float]:
        """Where each tooth is to stand in the end, as far as a table says it."""
        return {one.what: one.value for one in self.moved("movements")}

    def final(self, what: What) -> float | None:
        """Where a tooth is to stand in the end, mm or deg; None where it is not stated."""
        return self.stated.get(what, 0.0 if self.document.unlisted == "unmoved" else None)

    @cached_property
    def gone(self) -> dict[str, str]:
        """The teeth that are taken out, and where it is said."""
        return {tooth: f"/extractions/{at}" for at, tooth in enumerate(self.document.extractions or ())}

    @cached_property
    def standing(self) -> frozenset[str]:
        """The teeth that the setup speaks of, but for those that are taken out."""
        at_contacts = (tooth for contact in self.contacts for tooth in existing(contact))
        return frozenset((*(tooth.name for tooth in self.teeth), *at_contacts)) - self.gone.keys()

    def aligners(self, arch: str) -> int | None:
        """How many aligners an arch gets; None where it is not stated."""
        stated = self.document.aligners
        return None if stated is None else getattr(stated, arch)

    @cached_property
    def path(self) -> dict[str, list[int]]:
        """The aligners of each arch after which the setup says where teeth stand, in order; an arch without is out."""
        stages = self.document.stages or ()
        found = {arch: sorted({stage.aligner for stage in stages if stage.arch == arch}) for arch in ARCHES}
        return {arch: numbers for arch, numbers in found.items() if numbers}

    def end(self, arch: str) -> int:
        """The last aligner of an arch that has a path: the number stated, else the last on the path."""
        stated = self.aligners(arch)
        return self.path[arch][-1] if stated is None else stated


def arch_of_contact(place: Place) -> str | None:
    """The arch of the contact a part names; None where no mouth has its teeth."""
    teeth = (tooth for contact in mentions(place, ("contact",)) for tooth in existing(contact))
    return next((arch_of(tooth) for tooth in teeth), None)
