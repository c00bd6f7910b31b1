"""What makes room in an arch: spaces, reduction, advance, widening, distal movement, extraction, what is expected."""

from __future__ import annotations

from collections.abc import Iterator

from wellposed.derive.space_moves import moves
from wellposed.derive.space_parts import Line, Part, exactly
from wellposed.kinematics.means import reduction_contacts
from wellposed.kinematics.mouth import Mouth
from wellposed.model.means import EnamelReduction, LaboratoryChoice
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.teeth import arch_of


def means(mouth: Mouth, arch: str) -> Iterator[Part]:
    """Every means of the arch, in a fixed order."""
    yield from _spacing(mouth, arch)
    yield from _reduction(mouth, arch)
    yield from (part for sign, part in moves(mouth, arch) if sign > 0)
    yield from _extraction(mouth, arch)
    yield from _expected(mouth, arch)
    yield from _delegated(mouth, arch)


def _spacing(mouth: Mouth, arch: str) -> Iterator[Part]:
    name = f"{arch}-spacing"
    finding = mouth.finding(name)
    if finding is not None:
        yield Part(exactly("spacing", mouth.amount(name), finding.id, error=mouth.error(name)))


def _reduction(mouth: Mouth, arch: str) -> Iterator[Part]:
    for clause in mouth.prescription.allow or ():
        if not isinstance(clause, EnamelReduction):
            continue
        contacts = reduction_contacts(mouth, clause)
        here = [name for name in contacts if arch_of(teeth_of(name)[0]) == arch]
        if here:
            least = (clause.at_least or 0.0) if len(here) == len(contacts) else 0.0
            line = exactly("enamel-reduction", _enamel(clause, len(here)), clause.id, least=least)
            yield Part(line, frozenset(here))


def _enamel(clause: EnamelReduction, contacts: int) -> float | None:
    """The enamel allowed at so many contacts, mm; None where no amount is stated."""
    per_contact = None if clause.per_contact is None else clause.per_contact * contacts
    stated = [amount for amount in (clause.in_all, per_contact) if amount is not None]
    return min(stated) if stated else clause.at_least


def _extraction(mouth: Mouth, arch: str) -> Iterator[Part]:
    """The width of each tooth taken out; the average where it is not measured, which is said."""
    measured = mouth.tooth_values("tooth-width")
    for tooth, clause in mouth.extracted.items():
        if arch_of(tooth) == arch and tooth in mouth.rows[arch].initial:
            width = mouth.width(tooth)
            assumed = () if measured.get(tooth, 0.0) > 0 else (tooth,)
            yield Part(Line("extraction", width, width, width, (clause or tooth,), width, assumed=assumed))


def _expected(mouth: Mouth, arch: str) -> Iterator[Part]:
    """A change of crowding or spacing that is counted on: less crowding and more spacing are room."""
    for clause in mouth.prescription.expect or ():
        if clause.measure in (f"{arch}-crowding", f"{arch}-spacing"):
            sign = -1 if clause.measure.endswith("crowding") else 1
            low, high = sorted((sign * clause.at_least, sign * clause.at_most))
            yield Part(Line("expected", low, low, high, (clause.id,), low))


def _delegated(mouth: Mouth, arch: str) -> Iterator[Part]:
    """What the laboratory may choose of travel in the arch: its amount is not stated."""
    for clause in mouth.prescription.allow or ():
        if not isinstance(clause, LaboratoryChoice) or clause.arch not in (None, arch):
            continue
        here = clause.teeth is None or any(arch_of(tooth) == arch for tooth in clause.teeth)
        if here and (clause.variables is None or {"out", "along"} & set(clause.variables)):
            yield Part(exactly("laboratory-choice", None, clause.id))
