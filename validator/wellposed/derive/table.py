"""Every measurement that follows from those of a prescription, in one list."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from wellposed.derive.table_angles import angles
from wellposed.derive.table_grades import grades
from wellposed.derive.table_parts import Derived as Derived
from wellposed.derive.table_sizes import of_widths, sizes
from wellposed.derive.table_space import space
from wellposed.model.prescription import Prescription


def derived(prescription: Prescription) -> tuple[Derived, ...]:
    """All that can be derived, and what was refused though some of it is measured, always in the same order."""
    return tuple(_all(prescription))


def derived_from_widths(widths: Mapping[str, float]) -> tuple[Derived, ...]:
    """What follows from measured widths alone: ISO 3950 number to mm."""
    return tuple(of_widths(widths))


def _all(prescription: Prescription) -> Iterator[Derived]:
    yield from sizes(prescription)
    yield from space(prescription)
    yield from angles(prescription)
    yield from grades(prescription)
