"""Derived from single teeth: tooth-size ratios, proportions of crowns, irregularity."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from wellposed import norms
from wellposed.derive import irregularity as contacts
from wellposed.derive.crowns import CENTRALS, crowns
from wellposed.derive.indices import grade
from wellposed.derive.indices import keys as index_keys
from wellposed.derive.table_parts import Derived, measuring
from wellposed.derive.tooth_size import (
    FRONT,
    KEYS,
    WHOLE,
    Band,
    Fault,
    ToothSize,
    analysis,
    lower_band,
    of_prescription,
    ratio_band,
    teeth_of,
    upper_band,
    widths_of,
)
from wellposed.model.prescription import Prescription
from wellposed.vocabulary.teeth import ARCHES, LOWER, mirrored
from wellposed.vocabulary.units import MM, PERCENT

_NAMES = {WHOLE: "overall", FRONT: "anterior"}
_DECIMALS = 9
_EXCESS = "tooth-size.excess"
_SPREADS = "tooth-size.spreads"


def sizes(prescription: Prescription) -> Iterator[Derived]:
    """All of it, of a prescription."""
    from_ = measuring(prescription, "tooth-width")
    if any(tooth in teeth_of(WHOLE) for tooth in widths_of(prescription)):
        for count in (WHOLE, FRONT):
            yield from _tooth_size(of_prescription(prescription, count), count, from_)
    yield from _crowns(prescription)
    for arch in ARCHES:
        yield from _irregularity(prescription, arch)


def of_widths(widths: Mapping[str, float]) -> Iterator[Derived]:
    """The tooth-size ratios of widths alone."""
    for count in (WHOLE, FRONT):
        yield from _tooth_size(analysis(widths, count), count, ())


# tooth size


def _tooth_size(found: ToothSize | tuple[Fault, ...], count: int, from_: tuple[str, ...]) -> Iterator[Derived]:
    name = f"{_NAMES[count]}-tooth-size-ratio"
    if not isinstance(found, ToothSize):
        faults = [{"tooth": fault.tooth, "reason": fault.reason} for fault in found]
        yield Derived(name, None, PERCENT, from_=from_, refused="teeth-not-fit", facts={"teeth": faults})
        return
    keys, facts = (KEYS[count], _SPREADS), {"upper": found.upper, "lower": found.lower, "spreads": found.spread_z}
    yield Derived(name, found.ratio, PERCENT, keys=keys, from_=from_, usual=ratio_band(count), facts=facts)
    yield _excess(found, "upper", found.upper_excess, upper_band(found), from_)
    yield _excess(found, "lower", found.lower_excess, lower_band(found), from_)


def _excess(found: ToothSize, arch: str, amount: float, band: Band, from_: tuple[str, ...]) -> Derived:
    name = f"{_NAMES[found.teeth]}-{arch}-tooth-size-excess"
    keys = (KEYS[found.teeth], _SPREADS, _EXCESS)
    facts = {"counts_clinically": round(amount, _DECIMALS) >= norms.value(_EXCESS)}
    return Derived(name, amount, MM, keys=keys, from_=from_, usual=band, facts=facts)


# crowns


def _crowns(prescription: Prescription) -> Iterator[Derived]:
    from_ = measuring(prescription, "tooth-width", "crown-height")
    for crown in crowns(prescription):
        central = crown.tooth in CENTRALS
        keys = ("crown.long.ratio", "crown.short.ratio", "crown.long.height", "crown.short.height") if central else ()
        right = crown.tooth if crown.tooth < mirrored(crown.tooth) else mirrored(crown.tooth)
        mean = f"crown.ratio.{right}"
        facts = {"tooth": crown.tooth, "mean": norms.value(mean), "long": crown.long, "short": crown.short}
        usual = (norms.value(keys[0]), norms.value(keys[1])) if keys else None
        name = f"crown-width-to-height-{crown.tooth}"
        yield Derived(name, crown.ratio, "1", keys=(mean, *keys), from_=from_, usual=usual, facts=facts)


# irregularity


def _irregularity(prescription: Prescription, arch: str) -> Iterator[Derived]:
    """Of a front of which at least one displacement or rotation is measured."""
    from_ = measuring(prescription, "displacement", "rotation", "tooth-width")
    if not contacts.begun(prescription, arch):
        return
    name, found = f"{arch}-irregularity", contacts.of_prescription(prescription, arch)
    lacking = [
        {"tooth": one.tooth, "reason": f"no-{one.measure}"} for one in found if isinstance(one, contacts.Lacking)
    ]
    if lacking:
        yield Derived(name, None, MM, from_=from_, refused="not-every-tooth-measured", facts={"teeth": lacking})
        return
    parts = [one for one in found if isinstance(one, contacts.Contact)]
    total = contacts.irregularity([part.displacement for part in parts])
    facts = {"contacts": {part.name: part.displacement for part in parts}}
    graded = {"grade": grade("irregularity", total)} if arch == LOWER else {}
    keys = index_keys("irregularity") if arch == LOWER else ()
    yield Derived(name, total, MM, keys=keys, from_=from_, facts={**facts, **graded})
