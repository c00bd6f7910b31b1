"""Derived: components of published indices, of what is measured. Nothing is summed."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wellposed.derive import irregularity as contacts
from wellposed.derive.indices import grade, keys
from wellposed.derive.table_parts import Derived, measuring, once
from wellposed.kinematics.measured import Measured
from wellposed.model.prescription import Prescription
from wellposed.vocabulary.teeth import ARCHES
from wellposed.vocabulary.units import MM


class Graded(NamedTuple):
    """An amount to grade on some scales, its unit, and the findings it comes from."""

    amount: float
    scales: tuple[str, ...]
    from_: tuple[str, ...]
    unit: str = MM
    about: str = ""


_LOWER_INCISORS = ("42", "41", "31", "32")
_OVERJET = ("iotn-overjet-lips-competent", "iotn-overjet-lips-incompetent", "par-overjet", "abo-overjet")
_REVERSE = ("iotn-reverse-overjet", "iotn-reverse-overjet-with-trouble")
_OVERBITE = ("iotn-overbite", "abo-overbite")
_OPEN = ("iotn-open-bite", "par-open-bite")
_CROWDING = ("crowding", "abo-crowding")
_DISPLACEMENT = ("iotn-contact-displacement", "par-contact-displacement")
_ANGLES = {
    "lower-incisor-to-mandibular-plane": ("abo-lower-incisor",),
    "sella-nasion-to-mandibular-plane": ("abo-mandibular-plane-high", "abo-mandibular-plane-low"),
    "anb-angle": ("abo-anb-high", "abo-anb-low"),
}


def grades(prescription: Prescription) -> Iterator[Derived]:
    """Each scale for which its amount is measured."""
    measured = Measured(prescription)
    for one in (*_bite(measured), *_arches(measured), *_midline(measured), *_angled(measured)):
        for scale in one.scales:
            facts = {"amount": one.amount, "grade": grade(scale, one.amount)}
            name = f"{one.about}{scale}"
            yield Derived(name, None, one.unit, keys=keys(scale), from_=one.from_, facts=facts)


def _bite(measured: Measured) -> Iterator[Graded]:
    """Overjet and overbite, or reverse overjet and open bite, by their sign."""
    overjet, overbite = measured.baseline("overjet"), measured.baseline("overbite")
    ids = {name: measuring(measured.prescription, name) for name in ("overjet", "overbite")}
    if overjet is not None:
        yield Graded(abs(overjet), _OVERJET if overjet >= 0 else _REVERSE, ids["overjet"])
    if overbite is None:
        return
    yield Graded(abs(overbite), _OVERBITE if overbite >= 0 else _OPEN, ids["overbite"])
    if overbite >= 0 and measured.crown_height:
        crown = measuring(measured.prescription, "lower-incisor-crown-height", "crown-height")
        yield Graded(overbite / measured.crown_height, ("par-overbite",), (*ids["overbite"], *crown), "1")


def _arches(measured: Measured) -> Iterator[Graded]:
    """Crowding and the worst contact displacement of each arch, and the lower irregularity if it is stated."""
    for arch in ARCHES:
        name = f"{arch}-crowding"
        crowding = measured.baseline(name)
        if crowding is not None and crowding > 0:
            yield Graded(crowding, _CROWDING, measuring(measured.prescription, name), about=f"{arch}-")
        found = contacts.of_prescription(measured.prescription, arch)
        apart = [one.displacement for one in found if isinstance(one, contacts.Contact)]
        if apart:
            ids = measuring(measured.prescription, "displacement", "rotation", "tooth-width")
            yield Graded(max(apart), _DISPLACEMENT, ids, about=f"{arch}-")
    stated = measured.baseline("lower-irregularity")
    if stated is not None and stated >= 0:
        yield Graded(stated, ("irregularity",), measuring(measured.prescription, "lower-irregularity"))


def _midline(measured: Measured) -> Iterator[Graded]:
    """Upper midline against lower, also as a share of the narrowest lower incisor that is measured."""
    upper, lower = measured.baseline("upper-midline"), measured.baseline("lower-midline")
    if upper is None or lower is None:
        return
    ids, apart = measuring(measured.prescription, "upper-midline", "lower-midline"), abs(upper - lower)
    yield Graded(apart, ("abo-midline",), ids)
    widths = measured.tooth_values("tooth-width")
    incisors = [w for tooth, w in widths.items() if tooth in _LOWER_INCISORS and w > 0]
    if incisors:
        ids = once((*ids, *measuring(measured.prescription, "tooth-width")))
        yield Graded(apart / min(incisors), ("par-centreline",), ids, "1")


def _angled(measured: Measured) -> Iterator[Graded]:
    for name, scales in _ANGLES.items():
        value = measured.baseline(name)
        if value is not None:
            yield Graded(value, scales, measuring(measured.prescription, name), "deg")
