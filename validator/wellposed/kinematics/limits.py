"""Practice limits as members of a system, kept apart from what the prescriber said."""

from __future__ import annotations

from collections.abc import Callable, Container, Iterator
from math import pi
from typing import NamedTuple

from wellposed.kinematics.directions import outward
from wellposed.kinematics.frame import Frame
from wellposed.kinematics.keys import practice
from wellposed.kinematics.rows import Kind, Terms, plus
from wellposed.norms import Norms
from wellposed.vocabulary.contacts import teeth_of
from wellposed.vocabulary.teeth import (
    ARCHES,
    UPPER,
    arch_of,
    is_canine,
    is_incisor,
    is_molar,
    is_premolar,
    is_primary,
    position,
)


class Limit(NamedTuple):
    """One published or customary maximum: low <= terms <= high."""

    norm: str
    place: str
    terms: Terms
    low: float
    high: float


def add_limits(frame: Frame, norms: Norms, opened: Container[int], whole: bool) -> None:
    """Bind every practice limit over a column that may move at all; with ``whole`` over all the others too.

    The root apex is limited only where the torque may change: where it is kept, the crown's travel says it.
    """
    for limit in (*_limits(frame, norms, lambda column: whole or column in opened), *_apexes(frame, norms, opened)):
        key = practice(limit.norm, limit.place)
        terms = {column: factor for column, factor in limit.terms.items() if factor}
        if not terms:  # a lone tooth across the middle has no midline to shift
            continue
        if len(terms) == 1:
            ((column, factor),) = terms.items()
            low, high = sorted((limit.low / factor, limit.high / factor))
            frame.system.bind_column(key, Kind.LIMIT, column, low, high)
        else:
            frame.system.bind_row(key, Kind.LIMIT, terms, limit.low, limit.high)


def every_limit(frame: Frame, norms: Norms, turned: Container[int]) -> Iterator[Limit]:
    """Every practice limit over the columns of a frame; of the root apex, where the torque changes (``turned``)."""
    yield from _limits(frame, norms, lambda column: True)
    yield from _apexes(frame, norms, turned)


def _limits(frame: Frame, norms: Norms, concerned: Callable[[int], bool]) -> Iterator[Limit]:
    for contact, columns in frame.contacts.items():
        if not concerned(columns.reduction):
            continue
        norm = f"practice.reduction-per-contact.{region(contact)}"
        yield _within(norms, norm, contact, {columns.reduction: 1.0}, -1.0)
    for arch in ARCHES:
        taken = {frame.contacts[c.name].reduction: 1.0 for c in frame.mouth.rows[arch].contacts}
        if any(concerned(column) for column in taken):
            yield _within(norms, f"practice.reduction-in-all.{arch}", arch, taken, -1.0)
        yield from _widths(frame, norms, arch, concerned)
    for (tooth, variable), column in frame.columns.items():
        if concerned(column):
            yield from _movement(norms, tooth, variable, column)


def _within(norms: Norms, norm: str, place: str, terms: Terms, low_sign: float) -> Limit:
    most = norms.value(norm)
    return Limit(norm, place, terms, low_sign * most, most)


def region(contact: str) -> str:
    """The name of the group of contacts a limit of enamel reduction is for (``spec/norms/README.md``)."""
    first, second = teeth_of(contact)
    numbers = sorted((position(first), position(second)))
    if numbers[1] <= 3:
        if arch_of(first) == UPPER:
            return "upper-front"
        return "lower-incisors" if numbers[1] <= 2 else "lower-lateral-canine"
    if numbers[0] <= 3:
        return "canine-premolar"
    return "premolars" if numbers[1] <= 5 else "premolar-molar" if numbers[0] <= 5 else "molars"


def _widths(frame: Frame, norms: Norms, arch: str, concerned: Callable[[int], bool]) -> Iterator[Limit]:
    """Widening counts what teeth go outwards; narrowing what the pair loses in width, slide along the arch included."""
    teeth = [tooth for tooth in frame.mouth.rows[arch].teeth if 3 <= position(tooth) <= 7]
    for number in sorted({position(tooth) for tooth in teeth}):
        pair = [tooth for tooth in teeth if position(tooth) == number]
        outwards = {frame.columns[tooth, "out"]: abs(frame.facing[tooth].out_x) for tooth in pair}
        if not any(concerned(column) for column in outwards):
            continue
        norm, place = _width_norm(arch, number), f"{arch} {number}"
        yield Limit(norm, place, outwards, -float("inf"), norms.value(norm))
        if len(pair) > 1:
            width = plus(*(outward(frame, tooth) for tooth in pair))
            yield Limit(norm, f"{place} narrowed", width, -norms.value(norm), float("inf"))


def _width_norm(arch: str, number: int) -> str:
    if arch == UPPER:
        return "practice.widening.upper"
    return f"practice.widening.lower-{'canines' if number == 3 else 'premolars-molars'}"


def _movement(norms: Norms, tooth: str, variable: str, column: int) -> Iterator[Limit]:
    arch, front, terms = arch_of(tooth), is_incisor(tooth), {column: 1.0}
    if variable == "vertical":
        low = norms.value(f"practice.intrusion.{arch}-{_vertical_class(tooth)}")
        yield Limit(f"practice.intrusion.{arch}-{_vertical_class(tooth)}", tooth, terms, -low, float("inf"))
        yield Limit("practice.extrusion", tooth, terms, -float("inf"), norms.value("practice.extrusion"))
    elif variable == "along" and is_molar(tooth):
        most = norms.value(f"practice.distal.{arch}-molars")
        yield Limit(f"practice.distal.{arch}-molars", tooth, terms, -most, float("inf"))
    elif variable == "out" and front:
        yield from _front_travel(norms, tooth, terms)
    elif variable in ("tip", "rotation"):
        yield _within(norms, f"practice.{variable}", tooth, terms, -1.0)
    elif variable == "torque":
        yield _within(norms, f"practice.torque.{_torque_class(tooth)}", tooth, terms, -1.0)


def _apexes(frame: Frame, norms: Norms, opened: Container[int]) -> Iterator[Limit]:
    for (tooth, variable), column in frame.columns.items():
        if variable == "torque" and column in opened and position(tooth) <= 3 and not is_primary(tooth):
            yield _apex(frame, norms, tooth, column)


def _front_travel(norms: Norms, tooth: str, terms: Terms) -> Iterator[Limit]:
    arch = arch_of(tooth)
    forward, back = f"practice.advance.{arch}-incisors", f"practice.retraction.{arch}-incisors"
    yield Limit(forward, tooth, terms, -float("inf"), norms.value(forward))
    yield Limit(back, tooth, terms, -norms.value(back), float("inf"))


def _apex(frame: Frame, norms: Norms, tooth: str, torque: int) -> Limit:
    """Travel of the root apex: out - length x torque x pi / 180."""
    norm = f"practice.apex-travel.{'incisors' if is_incisor(tooth) else 'canines'}"
    length = norms.value(f"tooth-length.{tooth}")
    terms = {frame.columns[tooth, "out"]: 1.0, torque: -length * pi / 180}
    return _within(norms, norm, tooth, terms, -1.0)


def _vertical_class(tooth: str) -> str:
    return "incisors" if is_incisor(tooth) else "canines" if is_canine(tooth) else "posterior"


def _torque_class(tooth: str) -> str:
    if is_incisor(tooth):
        return f"{arch_of(tooth)}-incisors"
    return "canines" if is_canine(tooth) else "premolars" if is_premolar(tooth) else "molars"
