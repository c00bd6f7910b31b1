"""The mouth a prescription describes: rows of teeth, contacts, baselines, and what had to be assumed."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise
from typing import NamedTuple

from wellposed import norms
from wellposed.kinematics.arch import ArchLine, arch_length, arch_line
from wellposed.kinematics.measured import Measured
from wellposed.model.means import Extraction
from wellposed.vocabulary.contacts import contacts_of, normal, teeth_of
from wellposed.vocabulary.teeth import ARCHES, along_arch, is_canine, is_incisor

_LOCKING = ("implant", "ankylosed", "pontic")


def _shallow() -> float:
    """The least depth of an arch line as a share of its length."""
    return norms.value("arch.depth-to-length-least")


def _deep() -> float:
    """The greatest: the line cannot be deeper than half its length."""
    return norms.value("arch.depth-to-length-most")


class Assumption(NamedTuple):
    """Something not stated that the arithmetic had to take as so: ``what`` about ``where``."""

    what: str
    where: str


class Contact(NamedTuple):
    """Two neighbours once extractions are done.

    before    space (+) or overlap (-) between them at the start, mm
    crowding  share of the arch's crowding at this contact, 0 to 1
    spacing   share of its spacing
    taken     teeth extracted between the two
    """

    name: str
    first: str
    second: str
    before: float
    crowding: float
    spacing: float
    taken: tuple[str, ...]


@dataclass(frozen=True)
class ArchRow:
    """One arch: the teeth in line before extraction, those that stay, and the contacts between these."""

    arch: str
    initial: tuple[str, ...]
    teeth: tuple[str, ...]
    contacts: tuple[Contact, ...]
    widths: tuple[float, ...]
    between: tuple[float, ...]
    measured_depth: float | None

    @cached_property
    def length(self) -> float:
        """Length of the arch line, mm."""
        return arch_length(self.widths, self.between)

    def depth(self, offset: float) -> float:
        """Measured depth, else that of the average arch scaled to this length plus ``offset``, mm."""
        if self.measured_depth is not None:
            return self.measured_depth
        scale = self.length / norms.family("arch.full-length")[self.arch]
        assumed = norms.family("arch.full-depth")[self.arch] * scale + offset
        return min(max(assumed, _shallow() * self.length), _deep() * self.length)

    def line(self, offset: float) -> ArchLine:
        """The geometry of the row before extraction."""
        return arch_line(self.widths, self.between, self.depth(offset))

    def contact(self, name: str) -> Contact | None:
        """The contact of this name, in either order."""
        return next((contact for contact in self.contacts if contact.name == normal(name)), None)


@dataclass(frozen=True)
class Mouth(Measured):
    """A prescription's mouth, with the extractions done or (``extracting`` false) left out.

    taken  the teeth that are taken out in fact, whatever the prescription says; None: as it says
    """

    extracting: bool = True
    assumed: list[Assumption] = field(default_factory=list)
    taken: frozenset[str] | None = None

    @cached_property
    def states(self) -> dict[str, tuple[str, ...]]:
        """What is not ordinary, per tooth."""
        return {entry.tooth: entry.states for entry in self.prescription.teeth.particulars or ()}

    @cached_property
    def extracted(self) -> dict[str, str | None]:
        """Teeth taken out, and the allowance that says so (None where only the tooth's state does)."""
        allowed = {
            tooth: clause.id
            for clause in self.prescription.allow or ()
            if isinstance(clause, Extraction)
            for tooth in clause.teeth
        }
        if self.taken is not None:
            return {tooth: allowed.get(tooth) for tooth in sorted(self.taken)}
        stated = {tooth: None for tooth, states in self.states.items() if "to-be-extracted" in states}
        return {**stated, **(allowed if self.extracting else {})}

    @cached_property
    def locked(self) -> dict[str, str]:
        """Teeth that cannot be moved, and the state that says so."""
        locks = {
            tooth: next(state for state in states if state in _LOCKING)
            for tooth, states in self.states.items()
            if any(state in _LOCKING for state in states)
        }
        for arch in ARCHES:
            locks |= self._held_by_bridge(self._in_line(arch), locks)
        return locks

    def _held_by_bridge(self, line: tuple[str, ...], locks: dict[str, str]) -> dict[str, str]:
        """Abutments joined to a pontic move only with it, so not at all."""
        held: dict[str, str] = {}
        for step in (1, -1):
            joined = False
            for tooth in line[::step]:
                abutment = "bridge-abutment" in self.states.get(tooth, ())
                if joined and abutment and tooth not in locks:
                    held[tooth] = "bridge-abutment"
                joined = locks.get(tooth) == "pontic" or (joined and abutment)
        return held

    @cached_property
    def rows(self) -> dict[str, ArchRow]:
        """Both arches."""
        return {arch: self._row(arch) for arch in ARCHES}

    def _in_line(self, arch: str) -> tuple[str, ...]:
        listed = self.prescription.teeth.upper if arch == "upper" else self.prescription.teeth.lower
        return along_arch([tooth for tooth in listed if "unerupted" not in self.states.get(tooth, ())])

    def _row(self, arch: str) -> ArchRow:
        initial = self._in_line(arch)
        teeth = tuple(tooth for tooth in initial if tooth not in self.extracted)
        crowding, spacing = self.amount(f"{arch}-crowding"), self.amount(f"{arch}-spacing")
        crowded = self._shares(arch, initial, "crowding", self._named_spaces(arch))
        spaced = self._shares(arch, initial, "spacing", ())
        names = contacts_of(initial)
        between = tuple(spacing * spaced.get(name, 0.0) - crowding * crowded.get(name, 0.0) for name in names)
        widths = tuple(self.width(tooth) for tooth in initial)
        contacts = tuple(self._merged(initial, teeth, widths, between, crowded, spaced))
        depth = self.baseline(f"{arch}-arch-depth")
        if depth is not None and not _shallow() < depth / max(sum(widths), 1.0) < _deep():
            self.assumed.append(Assumption("arch-depth-implausible", arch))
            depth = None
        return ArchRow(arch, initial, teeth, contacts, widths, between, depth)

    @staticmethod
    def _merged(
        initial: tuple[str, ...],
        teeth: tuple[str, ...],
        widths: tuple[float, ...],
        between: tuple[float, ...],
        crowded: dict[str, float],
        spaced: dict[str, float],
    ) -> list[Contact]:
        names = contacts_of(initial)
        contacts = []
        for first, second in pairwise(teeth):
            start, end = initial.index(first), initial.index(second)
            before = sum(between[start:end]) + sum(widths[start + 1 : end])
            crowd = sum(crowded.get(name, 0.0) for name in names[start:end])
            space = sum(spaced.get(name, 0.0) for name in names[start:end])
            name = f"{first}-{second}"
            contacts.append(Contact(name, first, second, before, crowd, space, initial[start + 1 : end]))
        return contacts

    def _named_spaces(self, arch: str) -> tuple[str, ...]:
        finding = self.finding(f"{arch}-spacing")
        return tuple(normal(name) for name in (finding.contacts or ())) if finding and finding.value > 0 else ()

    def _shares(self, arch: str, line: tuple[str, ...], what: str, without: tuple[str, ...]) -> dict[str, float]:
        """Contact to share of the arch's crowding or spacing; canine to canine unless the finding names contacts."""
        finding = self.finding(f"{arch}-{what}")
        names = contacts_of(line)
        if finding is not None and finding.contacts:
            chosen = [name for name in names if name in {normal(contact) for contact in finding.contacts}]
        else:
            chosen = [name for name in names if all(is_incisor(t) or is_canine(t) for t in teeth_of(name))]
            chosen = [name for name in chosen if name not in without] or chosen
        locked = self.locked
        free = [name for name in chosen if not all(tooth in locked for tooth in teeth_of(name))]
        return {name: 1 / len(free) for name in free}

    def width(self, tooth: str) -> float:
        """Mesiodistal width, mm: measured, else the published average. A width of nothing is none."""
        measured = self.tooth_values("tooth-width").get(tooth, 0.0)
        if measured > 0:
            return measured
        return norms.family("tooth-width")[tooth]
